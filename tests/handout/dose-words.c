/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A dose in words against a table that a person reads: tests/handout/dose-words.csv. */
#include "config.h"

#include <string.h>

#include "sw-dose-words.h"

static SwPhrases *
load_english (void)
{
  g_autoptr (GError) error = NULL;
  SwPhrases *phrases = sw_phrases_new ("en", &error);

  g_assert_no_error (error);
  return phrases;
}

static SwUnits
units_from_word (const char *word)
{
  int units;

  g_assert_true (sw_term_from_nick (SW_TYPE_UNITS, word, &units));
  return (SwUnits) units;
}

static char *
with_plain_spaces (const char *text)
{
  g_auto (GStrv) parts = g_strsplit (text, "\302\240", -1);

  return g_strjoinv (" ", parts);
}

/* Everything in one line. */
static char *
join (SwDoseWords *words,
      SwPhrases   *phrases)
{
  g_autofree char *details = sw_dose_words_join_details (words, phrases, FALSE);
  const char *const parts[] = { words->amount, *details != '\0' ? details : NULL, NULL };

  return g_strdelimit (sw_phrases_sentences (phrases, parts), "\n", ' ');
}

static void
test_table (void)
{
  g_autoptr (SwPhrases) phrases = load_english ();
  g_autofree char *text = NULL;
  g_auto (GStrv) lines = NULL;
  guint n = 0;

  g_assert_true (g_file_get_contents (SW_TEST_DIR "/dose-words.csv", &text, NULL, NULL));
  lines = g_strsplit (text, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    {
      g_auto (GStrv) cells = g_strsplit (lines[i], "|", 3);
      g_autoptr (GError) error = NULL;
      g_autoptr (SwDoseWords) words = NULL;
      g_autofree char *told = NULL;
      g_autofree char *plain = NULL;
      SwDose neutral;
      SwDose dose;

      if (*lines[i] == '#' || g_strv_length (cells) != 3)
        continue;
      sw_dose_init (&neutral);
      sw_dose_from_line (g_strstrip (cells[0]), &neutral, &dose, &error);
      g_assert_no_error (error);
      words = sw_dose_words_new (phrases, &dose, SW_DOSE_LIMB_NONE, units_from_word (g_strstrip (cells[1])));
      told = join (words, phrases);
      plain = with_plain_spaces (told);
      g_assert_cmpstr (plain, ==, g_strstrip (cells[2]));
      n++;
    }
  g_assert_cmpuint (n, >=, 30);
}

/* No line may end between a number and what it counts. */
static void
test_no_break_spaces (void)
{
  g_autoptr (SwPhrases) phrases = load_english ();
  g_autoptr (GRegex) loose = g_regex_new ("[0-9] (kg|lb|N|seconds?|minutes?|sets?|times?|out)\\b", 0, 0, NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwDoseWords) words = NULL;
  g_autofree char *told = NULL;
  SwDose neutral;
  SwDose dose;

  sw_dose_init (&neutral);
  sw_dose_from_line ("3 x 8-12, hold 5 s, 2.5 kg, rest 60 s, tempo 2-1-2-0, effort 6, pain 3, 2 times a day",
                     &neutral, &dose, &error);
  g_assert_no_error (error);
  words = sw_dose_words_new (phrases, &dose, SW_DOSE_LIMB_NONE, SW_UNITS_BOTH);
  told = join (words, phrases);
  g_assert_false (g_regex_match (loose, told, 0, NULL));
  g_assert_nonnull (strstr (told, "3\302\240sets"));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/dose-words/table", test_table);
  g_test_add_func ("/dose-words/no-break-spaces", test_no_break_spaces);
  return g_test_run ();
}
