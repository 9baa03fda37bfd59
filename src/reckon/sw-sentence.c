/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Cuts text into sentences and counts what is in them.
 *
 * A word is what stands between blanks and holds a letter or a digit, so that a lone dash is none and a word with
 * hyphens is one. A sentence ends at a full stop, question or exclamation mark (of the Latin, Arabic, Armenian and
 * Indic scripts) before a capital, a digit, a letter without case or the end of the text, unless the stop belongs to
 * an abbreviation. A German ordinal ("am 3. Tag") ends one too, as a number at the end of a sentence looks the same. */
#include "config.h"

#include <string.h>

#include "sw-sentence.h"

/* Beyond this a word is long, in the first Wiener Sachtextformel. */
#define LETTERS_OF_A_SHORT_WORD 6

#define BLANKS " \t\r\n"

static gboolean
is_word (const char *token)
{
  for (; *token != '\0'; token = g_utf8_next_char (token))
    if (g_unichar_isalnum (g_utf8_get_char (token)))
      return TRUE;

  return FALSE;
}

static guint
count_letters (const char *token)
{
  guint n = 0;

  for (; *token != '\0'; token = g_utf8_next_char (token))
    n += g_unichar_isalpha (g_utf8_get_char (token));

  return n;
}

static gboolean
is_closing (gunichar c)
{
  return c == '"' || c == '\'' || c == ')' || c == ']' || c == 0x201d || c == 0x2019 || c == 0x201c || c == 0xbb;
}

static gboolean
is_end_mark (gunichar c)
{
  return c == '.' || c == '!' || c == '?' || c == 0x2026 || c == 0x61f || c == 0x6d4 || c == 0x589 || c == 0x964;
}

/* Whether a sentence may end after @token when @next, "" at the end of the text, follows. */
static gboolean
ends_sentence (const char               *token,
               const char               *next,
               const SwReadabilityScale *scale)
{
  const char *end = token + strlen (token);
  g_autofree char *stem = NULL;
  gunichar mark;

  while (end > token && is_closing (g_utf8_get_char (g_utf8_prev_char (end))))
    end = g_utf8_prev_char (end);
  if (end == token)
    return FALSE;

  mark = g_utf8_get_char (g_utf8_prev_char (end));
  if (!is_end_mark (mark))
    return FALSE;
  while (*next != '\0' && !g_unichar_isalnum (g_utf8_get_char (next)) && !g_ascii_isspace (*next))
    next = g_utf8_next_char (next);
  if (g_unichar_islower (g_utf8_get_char (next)))
    return FALSE;
  if (mark != '.' || *next == '\0' || scale->abbreviations == NULL)
    return TRUE;

  stem = g_utf8_strdown (token, end - 1 - token);
  return !g_strv_contains (scale->abbreviations, stem + strspn (stem, "(\""));
}

static void
count_word (const char               *token,
            const SwReadabilityScale *scale,
            SwReadability            *counts)
{
  guint n = scale->count_syllables != NULL ? scale->count_syllables (token) : 0;

  counts->words++;
  counts->syllables += n;
  counts->monosyllables += n == 1;
  counts->polysyllables += n >= 3;
  counts->long_words += count_letters (token) > LETTERS_OF_A_SHORT_WORD;
}

/**
 * sw_sentence_take:
 * @text: (inout): text; moved behind the sentence. Its end is the end of a sentence, with a mark or without.
 * @scale: the scale of its language
 * @counts: takes the sentence's counts, added to what is there
 *
 * Returns: (transfer full) (nullable): the sentence's words with single spaces; NULL when no more is left
 */
char *
sw_sentence_take (const char              **text,
                  const SwReadabilityScale *scale,
                  SwReadability            *counts)
{
  g_autoptr (GString) sentence = g_string_new (NULL);
  gboolean has_word = FALSE;

  for (;;)
    {
      g_autofree char *token = NULL;
      gsize length;

      *text += strspn (*text, BLANKS);
      length = strcspn (*text, BLANKS);
      if (length == 0)
        break;

      token = g_strndup (*text, length);
      *text += length;
      *text += strspn (*text, BLANKS);
      g_string_append_printf (sentence, "%s%s", sentence->len > 0 ? " " : "", token);
      if (is_word (token))
        {
          has_word = TRUE;
          count_word (token, scale, counts);
        }
      if (has_word && ends_sentence (token, *text, scale))
        break;
    }

  if (!has_word)
    return NULL;

  counts->sentences++;
  return g_string_free (g_steal_pointer (&sentence), FALSE);
}
