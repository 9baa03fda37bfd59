/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Syllables of Spanish words, by the rules of the orthography (Real Academia Española, Ortografía de la lengua
 * española, 2010, chapter II, on diphthongs, triphthongs and hiatus for the purpose of spelling): each open vowel
 * (a, e, o) and each closed vowel with an accent (í, ú) bears a syllable; a closed vowel without accent (i, u, ü, and
 * y for i) joins the vowel beside it; two different closed vowels are one syllable, two equal ones two. An h between
 * vowels changes nothing but in hue and hui; the u of que, qui, gue and gui is silent.
 *
 * Some speakers say vowels apart that this joins ("guion", "cruel", "jesuita"); the orthography leaves that aside, and
 * so do the counts the formula was made with. */
#include "config.h"

#include <string.h>

#include "sw-syllables.h"

typedef enum
{
  CONSONANT,
  OPEN,
  CLOSED,
} Sound;

/* What the letter @at stands for, between the letters @before and @after; 0 for none. */
static Sound
find_sound (gunichar before,
            gunichar at,
            gunichar after)
{
  switch (at)
    {
    case 'a': case 0xe1: case 0xe0: case 0xe2: case 0xe4:
    case 'e': case 0xe9: case 0xe8: case 0xea: case 0xeb:
    case 'o': case 0xf3: case 0xf2: case 0xf4: case 0xf6:
    case 0xed: case 0xfa: case 0xef:
      return OPEN;

    case 'i': case 0xfc:
      return CLOSED;

    case 'u':
      if (before == 'q' || (before == 'g' && (after == 'e' || after == 'i' || after == 0xe9 || after == 0xed)))
        return CONSONANT;
      return CLOSED;

    case 'y':
      return after == 'a' || after == 'e' || after == 'i' || after == 'o' || after == 'u' || after == 0xe1
                     || after == 0xe9 || after == 0xed || after == 0xf3 || after == 0xfa
                 ? CONSONANT
                 : CLOSED;

    default:
      return CONSONANT;
    }
}

/* A group of vowels side by side. */
typedef struct
{
  guint n_open;
  guint n_closed;   /* syllables of the closed ones by themselves */
  gunichar closed;  /* the last of them */
} Group;

static guint
end_group (Group *group)
{
  guint n = group->n_open > 0 ? group->n_open : group->n_closed;

  *group = (Group) { 0 };
  return n;
}

static void
add_closed (Group    *group,
            gunichar  letter)
{
  if (letter == 'y')
    letter = 'i';
  if (group->n_closed == 0 || letter == group->closed)
    group->n_closed++;
  group->closed = letter;
}

/* "hue", "hui" begin a syllable of their own ("vihuela"); "hu" before a consonant does not ("ahumar"). */
static gboolean
begins_with_glide (const char *part)
{
  return part[1] == 'u' && ((part[2] != '\0' && strchr ("aeio", part[2]) != NULL) || g_str_has_prefix (part + 2, "é"));
}

static guint
count_part (const char *part)
{
  Group group = { 0 };
  gunichar before = 0;
  guint n = 0;

  for (; *part != '\0'; part = g_utf8_next_char (part))
    {
      gunichar at = g_utf8_get_char (part);
      gunichar after = g_utf8_get_char (g_utf8_next_char (part));

      if (at == 'h' && before != 'c' && !begins_with_glide (part))
        continue;

      switch (find_sound (before, at, after))
        {
        case OPEN:
          group.n_open++;
          break;

        case CLOSED:
          add_closed (&group, at);
          break;

        case CONSONANT:
          if (at != 'u')
            n += end_group (&group);
          break;
        }
      before = at;
    }

  n += end_group (&group);
  return MAX (n, 1);
}

/**
 * sw_syllables_count_spanish:
 * @word: a Spanish word, with hyphens or punctuation as it comes
 *
 * Returns: how many syllables it has; at least 1 for a word with a letter, 0 for one without
 */
guint
sw_syllables_count_spanish (const char *word)
{
  return sw_syllables_count_parts (word, count_part);
}
