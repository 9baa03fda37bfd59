/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Syllables of German words: every vowel bears one, but two letters of one sound (ei, au, ie, aa ...) bear one
 * together. Where such letters meet at the joint of a prefix or a compound, or are spoken apart in a word of foreign
 * origin ("be-enden", "Fa-mi-li-e", "Pro-te-in"), they are put apart before counting; where a foreign word writes more
 * vowels than it speaks ("Niveau"), the rest is taken off.
 *
 * "-tion" counts two syllables, as it is divided in writing. */
#include "config.h"

#include <string.h>

#include "sw-syllables.h"

/* What stands before a joint between two vowels that look like one sound: prefixes and compounds, then stems and
 * endings of foreign origin. */
static const char joint[]
    = "be(?=inhalt|irr|un|ur[tlk]|e(?!t|r(?!d|ben|bt)))|ge(?=imp|irr|ur[tl]|e(?!st))|re(?=inte|infe)"
      "|[kz]o(?=op|ord|olog)|klima(?=a)|gummi(?=e)"
      "|(?:famil|lin|stud|ser|arter|bakter|mater|fol|fasz|akt|präm|kastan|petersil|komöd|tragöd|hern|spez)i(?=e(?!r))"
      "|(?:med|kriter|prinzip|fer|kalor)i(?=en)|^(?:span|ital|as|ind)i(?=e[nr])|(?:barr|karr|prem)i(?=er)"
      "|[tlzr]i(?=en[tz])|i(?=ell)|hygi(?=e)|[srlnktz]e(?=ums?$)|lä(?=ums?$)|nukle(?=us)|(?:prot|koff|kas|nukl)e(?=in)"
      "|the(?=ist)|mosa(?=ik)|na(?=iv)|koka(?=in)|(?<!m)a(?=isch)|e(?=en$)";

/* Each takes one vowel off that is written and not spoken, or joins two that are not among the pairs. */
static const char silent[] = "eaus?$|ieur|team|phones?(?=$|h)|online|bike|boil|toile";

static const char *const pairs[] = {
  "aa", "ee", "oo", "ie", "ei", "ai", "ey", "ay", "oy", "au", "äu", "eu", "ou", NULL,
};

/* The length of the vowel, alone or with its second letter, at @at, or 0. */
static gsize
take_vowel (const char *at,
            gunichar    before)
{
  gunichar c = g_utf8_get_char (at);
  gunichar next = g_utf8_get_char (g_utf8_next_char (at));

  for (guint i = 0; pairs[i] != NULL; i++)
    if (g_str_has_prefix (at, pairs[i]))
      return strlen (pairs[i]);

  if (c == 'u' && before == 'q')
    return 0;
  if (c == 'y' && before == 0 && next != 0 && g_utf8_strchr ("aeiouäöü", -1, next) != NULL)
    return 0;

  return g_utf8_strchr ("aeiouyäöüáàâéèêíóôúû", -1, c) != NULL ? (gsize) (g_utf8_next_char (at) - at) : 0;
}

/* Plurals as in "Therapien": a vowel, then consonants, stand before the ending; not in "Wien" and "Parteien". */
static gboolean
ends_in_plural_of_i (const char *part)
{
  gsize stem = strlen (part) - strlen (g_str_has_suffix (part, "s") ? "iens" : "ien");

  if (!(g_str_has_suffix (part, "ien") || g_str_has_suffix (part, "iens")) || g_str_has_suffix (part, "schien")
      || strcspn (part, "aeiouy\xc3") >= stem)
    return FALSE;

  return strchr ("aeiouy", part[stem - 1]) == NULL;
}

static guint
count_part (const char *part)
{
  static GRegex *joint_regex, *silent_regex;
  g_autofree char *apart = g_regex_replace (sw_syllables_get_regex (&joint_regex, joint), part, -1, 0, "\\0'", 0, NULL);
  gunichar before = 0;
  int n = 0;

  for (const char *at = apart; *at != '\0';)
    {
      gsize length = take_vowel (at, before);

      n += length > 0;
      before = g_utf8_get_char (at);
      at = length > 0 ? at + length : g_utf8_next_char (at);
    }
  if (ends_in_plural_of_i (apart))
    n++;
  n -= sw_syllables_count_matches (sw_syllables_get_regex (&silent_regex, silent), part);
  return (guint) MAX (n, 1);
}

/**
 * sw_syllables_count_german:
 * @word: a German word, with hyphens or punctuation as it comes
 *
 * Returns: how many syllables it has; at least 1 for a word with a letter, 0 for one without
 */
guint
sw_syllables_count_german (const char *word)
{
  return sw_syllables_count_parts (word, count_part);
}
