/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reading grades against passages counted by other programs (readability.csv), syllables against a dictionary
 * (syllables.csv), and the formulas against values worked by hand. */
#include "config.h"

#include <stdlib.h>

#include "sw-readability.h"

/* The rows of a table beside the tests, each split at semicolons; the heading and remarks are left out. */
static GPtrArray *
read_rows (const char *name)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, name, NULL);
  g_autofree char *text = NULL;
  g_auto (GStrv) lines = NULL;
  g_autoptr (GError) error = NULL;
  GPtrArray *rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  lines = g_strsplit (text, "\n", -1);
  for (guint i = 1; lines[i] != NULL; i++)
    if (*lines[i] != '\0' && *lines[i] != '#')
      g_ptr_array_add (rows, g_strsplit (lines[i], ";", -1));

  return rows;
}

/* The passages hold a sentence a line; as running text the program has to find them. */
static char *
read_passage (const char *name)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "passages", name, NULL);
  g_autoptr (GError) error = NULL;
  char *text = NULL;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  return g_strdelimit (text, "\n", ' ');
}

static void
test_passages (void)
{
  g_autoptr (GPtrArray) rows = read_rows ("readability.csv");

  g_assert_cmpuint (rows->len, ==, 11);
  for (guint i = 0; i < rows->len; i++)
    {
      char **row = rows->pdata[i];
      g_autofree char *text = read_passage (row[0]);
      SwReadability counts = { 0 };
      double syllables = g_ascii_strtod (row[3], NULL);

      sw_readability_add (&counts, text);
      g_test_message ("%s: %u sentences, %u words, %u syllables, grade %.2f, SMOG %.2f", row[0], counts.sentences,
                      counts.words, counts.syllables, sw_readability_get_grade (&counts),
                      sw_readability_get_smog (&counts));
      g_assert_cmpuint (counts.sentences, ==, (guint) atoi (row[1]));
      g_assert_cmpuint (counts.words, ==, (guint) atoi (row[2]));
      g_assert_cmpfloat_with_epsilon (counts.syllables, syllables, 0.03 * syllables);
      g_assert_cmpfloat_with_epsilon (sw_readability_get_grade (&counts), g_ascii_strtod (row[4], NULL), 0.5);
      g_assert_cmpfloat_with_epsilon (sw_readability_get_smog (&counts), g_ascii_strtod (row[5], NULL), 1.0);
    }
}

static void
test_syllables (void)
{
  g_autoptr (GPtrArray) rows = read_rows ("syllables.csv");
  guint n_wrong = 0;

  g_assert_cmpuint (rows->len, >=, 900);
  for (guint i = 0; i < rows->len; i++)
    {
      char **row = rows->pdata[i];
      guint n = sw_readability_count_syllables (row[0]);

      if (n == (guint) atoi (row[1]))
        continue;
      g_test_message ("%s: %u, not %s", row[0], n, row[1]);
      n_wrong++;
    }

  g_assert_cmpfloat (n_wrong, <=, 0.02 * rows->len);
}

/* The formulas alone, worked by hand. */
static void
test_formulas (void)
{
  const struct
  {
    SwReadability counts;
    double grade, smog;
  } cases[] = {
    { { 5, 100, 150, 10 }, 9.910, 11.2081 },  { { 10, 100, 130, 5 }, 3.650, 7.1686 },
    { { 3, 60, 120, 20 }, 15.810, 17.8793 },  { { 1, 10, 10, 0 }, 0.110, 3.1291 },
    { { 30, 300, 450, 30 }, 6.010, 8.8418 },
  };
  const SwReadability nothing = { 0 };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_assert_cmpfloat_with_epsilon (sw_readability_get_grade (&cases[i].counts), cases[i].grade, 0.0005);
      g_assert_cmpfloat_with_epsilon (sw_readability_get_smog (&cases[i].counts), cases[i].smog, 0.0001);
    }
  g_assert_cmpfloat (sw_readability_get_grade (&nothing), ==, 0.0);
  g_assert_cmpfloat (sw_readability_get_smog (&nothing), ==, 0.0);
}

static void
test_sentences (void)
{
  const struct
  {
    const char *text;
    guint sentences, words;
  } cases[] = {
    { "", 0, 0 },
    { " – … ", 0, 0 },
    { "No stop at the end", 1, 5 },
    { "One. Two! Three? Four… Five", 5, 5 },
    { "Use 1.5 kg, e.g. A can. Then rest.", 2, 8 },
    { "At 9 a.m. or later. “Sit.” Then (stand.) Go", 4, 9 },
    { "Dr. Example calls. 2 sets. Ask Mr. Other.", 3, 8 },
    { "Up-and-down – it’s 3/10 or less", 1, 5 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      SwReadability counts = { 0 };

      sw_readability_add (&counts, cases[i].text);
      g_test_message ("%s", cases[i].text);
      g_assert_cmpuint (counts.sentences, ==, cases[i].sentences);
      g_assert_cmpuint (counts.words, ==, cases[i].words);
    }
}

/* Sentence by sentence it is the same as at once. */
static void
test_take (void)
{
  const char *text = "  Lift  your heels.\nStop if it hurts!  ";
  SwReadability counts = { 0 };
  g_autofree char *first = sw_readability_take_sentence (&text, &counts);
  g_autofree char *second = sw_readability_take_sentence (&text, &counts);

  g_assert_cmpstr (first, ==, "Lift your heels.");
  g_assert_cmpstr (second, ==, "Stop if it hurts!");
  g_assert_null (sw_readability_take_sentence (&text, &counts));
  g_assert_cmpuint (counts.sentences, ==, 2);
  g_assert_cmpuint (counts.words, ==, 7);
  g_assert_cmpuint (counts.syllables, ==, 7);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/readability/passages", test_passages);
  g_test_add_func ("/readability/syllables", test_syllables);
  g_test_add_func ("/readability/formulas", test_formulas);
  g_test_add_func ("/readability/sentences", test_sentences);
  g_test_add_func ("/readability/take", test_take);

  return g_test_run ();
}
