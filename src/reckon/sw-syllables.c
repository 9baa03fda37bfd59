/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What counting syllables needs in every language: the parts of a word, and patterns. */
#include "config.h"

#include "sw-syllables.h"

static gboolean
is_joint (gunichar c)
{
  return c == '-' || c == '/' || c == 0x2010 || c == 0x2011 || c == 0x2013 || c == 0x2014;
}

/**
 * sw_syllables_count_parts:
 * @word: a word, with hyphens or punctuation as it comes
 * @count_part: counts a part between hyphens or slashes: composed small letters, at least one
 *
 * Returns: the syllables of all parts
 */
guint
sw_syllables_count_parts (const char  *word,
                          guint      (*count_part) (const char *part))
{
  g_autofree char *small = g_utf8_strdown (word, -1);
  g_autofree char *composed = g_utf8_normalize (small, -1, G_NORMALIZE_DEFAULT_COMPOSE);
  g_autoptr (GString) part = g_string_new (NULL);
  guint n = 0;

  for (const char *at = composed; at != NULL; at = *at != '\0' ? g_utf8_next_char (at) : NULL)
    {
      gunichar c = g_utf8_get_char (at);

      if (g_unichar_isalpha (c))
        g_string_append_unichar (part, c);
      else if ((c == '\0' || is_joint (c)) && part->len > 0)
        {
          n += count_part (part->str);
          g_string_truncate (part, 0);
        }
    }

  return n;
}

/**
 * sw_syllables_get_regex:
 * @place: where it is kept, NULL at first
 * @pattern: the pattern
 *
 * Compiles a pattern once; it may be shared by threads.
 *
 * Returns: (transfer none): the compiled pattern
 */
GRegex *
sw_syllables_get_regex (GRegex     **place,
                        const char  *pattern)
{
  if (g_once_init_enter (place))
    g_once_init_leave (place, g_regex_new (pattern, G_REGEX_OPTIMIZE, 0, NULL));

  return *place;
}

/**
 * sw_syllables_count_matches:
 * @regex: a pattern
 * @word: a word
 *
 * Returns: in how many places it matches
 */
int
sw_syllables_count_matches (GRegex     *regex,
                            const char *word)
{
  g_autoptr (GMatchInfo) match = NULL;
  int n = 0;

  for (g_regex_match (regex, word, 0, &match); g_match_info_matches (match); g_match_info_next (match, NULL))
    n++;

  return n;
}
