/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words as search compares them, and how near two of them are. */
#include "config.h"

#include <string.h>

#include "sw-word.h"

/**
 * sw_word_hash:
 * @key: (type SwWord): a word
 *
 * Returns: a hash of its letters
 */
guint
sw_word_hash (gconstpointer key)
{
  const SwWord *word = key;
  guint hash = 5381;

  for (guint i = 0; i < word->n_letters; i++)
    hash = hash * 33 + word->letters[i];

  return hash;
}

/**
 * sw_word_compare:
 * @a: a word
 * @b: another
 *
 * Returns: below, at or above 0 as @a comes before, with or after @b; a beginning comes before the whole
 */
int
sw_word_compare (const SwWord *a,
                 const SwWord *b)
{
  guint n = MIN (a->n_letters, b->n_letters);

  for (guint i = 0; i < n; i++)
    {
      if (a->letters[i] != b->letters[i])
        return a->letters[i] < b->letters[i] ? -1 : 1;
    }

  return (int) a->n_letters - (int) b->n_letters;
}

/**
 * sw_word_equal:
 * @a: (type SwWord): a word
 * @b: (type SwWord): another
 *
 * Returns: whether they have the same letters
 */
gboolean
sw_word_equal (gconstpointer a,
               gconstpointer b)
{
  return sw_word_compare (a, b) == 0;
}

/* A small letter without accent, or 0 for what is no letter or digit; accents alone give G_MAXUINT32. */
static gunichar
simplify (gunichar c)
{
  gunichar parts[G_UNICHAR_MAX_DECOMPOSITION_LENGTH];

  if (c < 0x80)
    return g_ascii_isalnum (c) ? (gunichar) g_ascii_tolower ((char) c) : 0;
  if (g_unichar_ismark (c))
    return G_MAXUINT32;
  if (!g_unichar_isalnum (c))
    return 0;

  g_unichar_fully_decompose (c, FALSE, parts, G_N_ELEMENTS (parts));
  return g_unichar_tolower (parts[0]);
}

/**
 * sw_word_take:
 * @text: (inout): valid UTF-8; moved on behind the word
 * @word: (out): the next word in it, of at most %SW_WORD_MAX_LETTERS letters
 *
 * Returns: whether there was one
 */
gboolean
sw_word_take (const char **text,
              SwWord      *word)
{
  const char *p = *text;

  word->n_letters = 0;
  for (; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar letter = simplify (g_utf8_get_char (p));

      if (letter == G_MAXUINT32)
        continue;
      if (letter != 0 && word->n_letters < SW_WORD_MAX_LETTERS)
        word->letters[word->n_letters++] = letter;
      else if (letter == 0 && word->n_letters > 0)
        break;
    }
  *text = p;
  if (word->n_letters == 0)
    return FALSE;

  word->letters[word->n_letters] = 0;
  word->signature = 0;
  for (guint i = 0; i < word->n_letters; i++)
    word->signature |= 1u << (word->letters[i] % 32);
  return TRUE;
}

/**
 * sw_word_drop_plural:
 * @word: a word
 *
 * Makes "raises" and "raise" one word; "press", "pelvis" and "radius" keep their s.
 */
void
sw_word_drop_plural (SwWord *word)
{
  guint n = word->n_letters;

  if (n < 4 || word->letters[n - 1] != 's')
    return;
  if (word->letters[n - 2] == 's' || word->letters[n - 2] == 'u' || word->letters[n - 2] == 'i')
    return;

  word->letters[--word->n_letters] = 0;
}

/**
 * sw_word_get_allowed_errors:
 * @word: a word as typed
 *
 * Returns: how many typing errors it may hold: none below four letters, one below eight, else two
 */
guint
sw_word_get_allowed_errors (const SwWord *word)
{
  if (word->n_letters < 4)
    return 0;

  return word->n_letters < 8 ? 1 : 2;
}

static guint
count_bits (guint32 bits)
{
  guint n = 0;

  for (; bits != 0; bits &= bits - 1)
    n++;

  return n;
}

/* Each error accounts for one letter that the other word lacks; this rules out almost all words. */
static gboolean
is_hopeless (const SwWord *typed,
             const SwWord *word,
             guint         limit,
             gboolean      as_beginning)
{
  return word->n_letters + limit < typed->n_letters
         || count_bits (typed->signature & ~word->signature) > limit
         || (!as_beginning && (word->n_letters > typed->n_letters + limit
                               || count_bits (word->signature & ~typed->signature) > limit));
}

/**
 * sw_word_is_within:
 * @typed: a word as typed
 * @word: a word of the index
 * @limit: how many errors count as near
 * @as_beginning: whether @typed may be near to a beginning of @word
 *
 * An error is a letter more, a letter fewer, another letter, or two neighbours swapped (the restricted edit
 * distance of Damerau).
 *
 * Returns: whether @typed becomes @word by at most @limit of them
 */
gboolean
sw_word_is_within (const SwWord *typed,
                   const SwWord *word,
                   guint         limit,
                   gboolean      as_beginning)
{
  guint8 rows[3][SW_WORD_MAX_LETTERS + 1];
  guint8 *before = rows[0], *last = rows[1], *row = rows[2];
  guint n = word->n_letters;

  if (is_hopeless (typed, word, limit, as_beginning))
    return FALSE;

  if (as_beginning)
    n = MIN (n, typed->n_letters + limit);
  for (guint j = 0; j <= n; j++)
    last[j] = (guint8) j;
  memset (before, SW_WORD_MAX_LETTERS, sizeof rows[0]);

  for (guint i = 1; i <= typed->n_letters; i++)
    {
      guint8 least = row[0] = (guint8) i;
      guint8 *spare;

      for (guint j = 1; j <= n; j++)
        {
          gboolean same = typed->letters[i - 1] == word->letters[j - 1];
          guint cost = MIN (last[j], row[j - 1]) + 1u;

          cost = MIN (cost, last[j - 1] + (same ? 0u : 1u));
          if (i > 1 && j > 1 && typed->letters[i - 1] == word->letters[j - 2]
              && typed->letters[i - 2] == word->letters[j - 1])
            cost = MIN (cost, before[j - 2] + 1u);
          row[j] = (guint8) cost;
          least = MIN (least, row[j]);
        }
      if (least > limit)
        return FALSE;
      spare = before;
      before = last;
      last = row;
      row = spare;
    }

  if (!as_beginning)
    return last[n] <= limit;

  for (guint j = 0; j <= n; j++)
    {
      if (last[j] <= limit)
        return TRUE;
    }
  return FALSE;
}
