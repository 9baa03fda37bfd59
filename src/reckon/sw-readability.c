/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How hard English text is to read, as a school grade.
 *
 * A word is what stands between blanks and holds a letter or a digit, so that a lone dash is none and a word with
 * hyphens is one. A sentence ends at a full stop, question or exclamation mark before a capital, a digit or the end
 * of the text, unless the stop belongs to an abbreviation.
 *
 * Syllables are groups of vowels, less the silent ones at the end of a word and within compounds, plus one wherever
 * two vowels side by side are spoken apart; the few words of handouts that keep to no rule are listed. Against the
 * published counts in tests/reference this is right within 3 of 100. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "sw-readability.h"

/* Vowels that are written and not spoken: "place", "moves", "pushed", "knees" in "kneeless", "technique". */
static const char silent_end[] = "(?:[^aeiouylr]|[aeiouy][lr]|(?<=[^aeiouy])r)e$|[gq]ue$"
                                 "|(?:[^aeiouylsxzgch]|[aeiouy]l|[^cs]h)es$"
                                 "|(?:[^aeiouytdlr]|[aeiouylr][lr])ed$";
static const char silent_within[] = "[^aeiouy](?<!l)e(?:ly|ful|less|ness|ments?|where|times?|thing|body|one)$"
                                    "|[aeiouy]le(?:ly|ful|less|ness|ments?|where|times?|thing|body|one)$";

/* Vowels side by side that are two syllables: "create", "idea", "fluid", "easier", "rhythm". */
static const char apart[] = "ia(?!l$|n$|lly$|ge|r$)|eo(?!u)|io(?!n|u)|[^cgstx]iou|(?<!q)ua(?!r)|uou|ii|io[^n]us|[^q]uet|ying"
                            "|[^aeiou]ier|(?<!q)uing|[^gq]uity|creat|[^tscgxh]ion|[^tscg]ian$|[^tc]ial|oing|dience"
                            "|[^tcs]ient|ea(?=tor)|sm$|thm$";

/* Words of handouts whose syllables no rule above counts rightly. */
static const struct
{
  const char *word;
  guint n;
} listed[] = {
  { "area", 3 },   { "drawer", 1 }, { "fire", 2 },     { "forehead", 2 }, { "legged", 2 },
  { "people", 2 }, { "safety", 2 }, { "sideways", 2 }, { "tired", 2 },    { "union", 2 },
};

/* Their full stop never ends a sentence. */
static const char *const abbreviations[] = { "approx", "dr", "e.g", "fig", "i.e", "mr", "mrs", "ms", "no", "st", "vs", NULL };

static gboolean
is_vowel (const char *word,
          gsize       i)
{
  if (word[i] == 'y')
    return i > 0;
  if (word[i] == 'u')
    return i == 0 || word[i - 1] != 'q';

  return strchr ("aeio", word[i]) != NULL;
}

static int
count_matches (GRegex     *regex,
               const char *word)
{
  g_autoptr (GMatchInfo) match = NULL;
  int n = 0;

  for (g_regex_match (regex, word, 0, &match); g_match_info_matches (match); g_match_info_next (match, NULL))
    n++;

  return n;
}

/* Made once and kept; compiled patterns may be shared by threads. */
static GRegex *
get_regex (GRegex     **place,
           const char  *pattern)
{
  if (g_once_init_enter (place))
    g_once_init_leave (place, g_regex_new (pattern, G_REGEX_OPTIMIZE, 0, NULL));

  return *place;
}

static guint
find_listed (const char *word)
{
  gsize length = strlen (word);

  for (gsize i = 0; i < G_N_ELEMENTS (listed); i++)
    if (strcmp (listed[i].word, word) == 0
        || (length > 1 && word[length - 1] == 's' && strlen (listed[i].word) == length - 1
            && strncmp (listed[i].word, word, length - 1) == 0))
      return listed[i].n;

  return 0;
}

/* Of one word in small letters a to z. */
static guint
count_part (const char *word)
{
  static GRegex *end, *within, *more;
  guint known = find_listed (word);
  gboolean before = FALSE;
  int n = 0;

  if (*word == '\0')
    return 0;
  if (known > 0)
    return known;

  for (gsize i = 0; word[i] != '\0'; i++)
    {
      gboolean vowel = is_vowel (word, i);

      n += vowel && !before;
      before = vowel;
    }
  n -= count_matches (get_regex (&end, silent_end), word);
  n -= count_matches (get_regex (&within, silent_within), word);
  n += count_matches (get_regex (&more, apart), word);
  return (guint) MAX (n, 1);
}

/**
 * sw_readability_count_syllables:
 * @word: an English word, with hyphens or punctuation as it comes
 *
 * Returns: how many syllables are spoken; at least 1 for a word with a letter a to z, 0 for one without
 */
guint
sw_readability_count_syllables (const char *word)
{
  g_autofree char *lower = g_utf8_strdown (word, -1);
  g_autoptr (GString) part = g_string_new (NULL);
  guint n = 0;

  for (const char *at = lower;; at = g_utf8_next_char (at))
    {
      gunichar c = g_utf8_get_char (at);

      if (c >= 'a' && c <= 'z')
        g_string_append_c (part, (char) c);
      else if (c == '\0' || c == '-' || c == '/' || c == 0x2010 || c == 0x2013 || c == 0x2014)
        {
          n += count_part (part->str);
          g_string_truncate (part, 0);
        }
      if (c == '\0')
        return n;
    }
}

static gboolean
is_word (const char *token)
{
  for (; *token != '\0'; token = g_utf8_next_char (token))
    if (g_unichar_isalnum (g_utf8_get_char (token)))
      return TRUE;

  return FALSE;
}

static gboolean
is_closing (gunichar c)
{
  return c == '"' || c == '\'' || c == ')' || c == ']' || c == 0x201d || c == 0x2019;
}

/* Whether a sentence may end after @token when @next, "" at the end of the text, follows. */
static gboolean
ends_sentence (const char *token,
               const char *next)
{
  const char *end = token + strlen (token);
  g_autofree char *stem = NULL;
  gunichar mark;

  while (end > token && is_closing (g_utf8_get_char (g_utf8_prev_char (end))))
    end = g_utf8_prev_char (end);
  if (end == token)
    return FALSE;

  mark = g_utf8_get_char (g_utf8_prev_char (end));
  if (mark != '.' && mark != '!' && mark != '?' && mark != 0x2026)
    return FALSE;
  while (*next != '\0' && !g_unichar_isalnum (g_utf8_get_char (next)) && !g_ascii_isspace (*next))
    next = g_utf8_next_char (next);
  if (g_unichar_islower (g_utf8_get_char (next)))
    return FALSE;
  if (mark != '.' || *next == '\0')
    return TRUE;

  stem = g_ascii_strdown (token, end - 1 - token);
  return !g_strv_contains (abbreviations, stem + strspn (stem, "(\""));
}

/**
 * sw_readability_take_sentence:
 * @text: (inout): English text; moved behind the sentence
 * @counts: takes the sentence's counts, added to what is there
 *
 * Returns: (transfer full) (nullable): the sentence's words with single spaces; NULL when no more is left
 */
char *
sw_readability_take_sentence (const char    **text,
                              SwReadability  *counts)
{
  g_autoptr (GString) sentence = g_string_new (NULL);
  gboolean has_word = FALSE;

  for (;;)
    {
      g_autofree char *token = NULL;
      gsize length;

      *text += strspn (*text, " \t\r\n");
      length = strcspn (*text, " \t\r\n");
      if (length == 0)
        break;

      token = g_strndup (*text, length);
      *text += length;
      *text += strspn (*text, " \t\r\n");
      g_string_append_printf (sentence, "%s%s", sentence->len > 0 ? " " : "", token);
      if (is_word (token))
        {
          guint n = sw_readability_count_syllables (token);

          has_word = TRUE;
          counts->words++;
          counts->syllables += n;
          counts->polysyllables += n >= 3;
        }
      if (has_word && ends_sentence (token, *text))
        break;
    }

  if (!has_word)
    return NULL;

  counts->sentences++;
  return g_string_free (g_steal_pointer (&sentence), FALSE);
}

/**
 * sw_readability_add:
 * @self: counts
 * @text: (nullable): English text; its end is the end of a sentence, whether a mark stands there or not
 */
void
sw_readability_add (SwReadability *self,
                    const char    *text)
{
  char *sentence;

  if (text == NULL)
    return;

  while ((sentence = sw_readability_take_sentence (&text, self)) != NULL)
    g_free (sentence);
}

/**
 * sw_readability_get_grade:
 * @self: counts
 *
 * The Flesch-Kincaid grade: 0.39 words/sentence + 11.8 syllables/word - 15.59 (Kincaid, Fishburne, Rogers, Chissom,
 * Naval Technical Training Command Research Branch Report 8-75, 1975).
 *
 * Returns: the school grade; very easy text has one below 0, and no text has 0
 */
double
sw_readability_get_grade (const SwReadability *self)
{
  if (self->words == 0)
    return 0.0;

  return 0.39 * self->words / self->sentences + 11.8 * self->syllables / self->words - 15.59;
}

/**
 * sw_readability_get_smog:
 * @self: counts
 *
 * The SMOG grade: 1.0430 sqrt (30 words of three or more syllables/sentence) + 3.1291 (McLaughlin, Journal of Reading
 * 1969;12:639-646). It was made for 30 sentences or more.
 *
 * Returns: the school grade at which all of it is understood; no text has 0
 */
double
sw_readability_get_smog (const SwReadability *self)
{
  if (self->sentences == 0)
    return 0.0;

  return 1.0430 * sqrt (30.0 * self->polysyllables / self->sentences) + 3.1291;
}
