/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reading grades against passages counted by other programs (readability*.csv), syllables against a dictionary and
 * other programs (syllables*.csv), and the formulas against published values and values worked by hand. */
#include "config.h"

#include <stdlib.h>
#include <string.h>

#include "sw-sentence.h"
#include "sw-syllables.h"

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

static SwReadability
count (const char *language,
       const char *text)
{
  const SwReadabilityScale *scale = sw_readability_scale_get (language);
  SwReadability counts = { 0 };
  char *sentence;

  while ((sentence = sw_sentence_take (&text, scale, &counts)) != NULL)
    g_free (sentence);

  return counts;
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
      SwReadability counts = count ("en", text);
      double syllables = g_ascii_strtod (row[3], NULL);

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

/* @tolerance: of the value, in its own unit */
static void
check_passages (const char *language,
                const char *name,
                guint       n_passages,
                double      tolerance)
{
  const SwReadabilityScale *scale = sw_readability_scale_get (language);
  g_autoptr (GPtrArray) rows = read_rows (name);

  g_assert_cmpuint (rows->len, ==, n_passages);
  for (guint i = 0; i < rows->len; i++)
    {
      char **row = rows->pdata[i];
      g_autofree char *text = read_passage (row[0]);
      SwReadability counts = count (language, text);
      double syllables = g_ascii_strtod (row[3], NULL);

      g_test_message ("%s: %u sentences, %u words, %u syllables, value %.2f", row[0], counts.sentences, counts.words,
                      counts.syllables, scale->reckon (&counts));
      g_assert_cmpuint (counts.sentences, ==, (guint) atoi (row[1]));
      g_assert_cmpuint (counts.words, ==, (guint) atoi (row[2]));
      g_assert_cmpfloat_with_epsilon (counts.syllables, syllables, 0.03 * syllables);
      g_assert_cmpfloat_with_epsilon (scale->reckon (&counts), g_ascii_strtod (row[4], NULL), tolerance);
    }
}

/* The syllables are the same, so the values are. */
static void
test_spanish_passages (void)
{
  check_passages ("es", "readability-es.csv", 6, 0.01);
}

/* Words with "-tion" have a syllable less by the other count. */
static void
test_german_passages (void)
{
  check_passages ("de", "readability-de.csv", 7, 0.01);
}

/* How many words have another count than in that column. */
static guint
count_differences (GPtrArray  *rows,
                   guint       column,
                   guint       other_column,
                   guint     (*count_syllables) (const char *word))
{
  guint n_different = 0;

  for (guint i = 0; i < rows->len; i++)
    {
      char **row = rows->pdata[i];
      guint n = count_syllables (row[0]);

      if (n == (guint) atoi (row[column]) || n == (guint) atoi (row[other_column]))
        continue;
      g_test_message ("%s: %u, not %s", row[0], n, row[column]);
      n_different++;
    }

  return n_different;
}

/* By the orthography just as silabea; espeak-ng speaks apart some vowels that are written together ("trienio"). */
static void
test_spanish_syllables (void)
{
  g_autoptr (GPtrArray) rows = read_rows ("syllables-es.csv");

  g_assert_cmpuint (rows->len, >=, 1300);
  g_assert_cmpuint (count_differences (rows, 1, 1, sw_syllables_count_spanish), ==, 0);
  g_assert_cmpfloat (count_differences (rows, 2, 2, sw_syllables_count_spanish), <=, 0.03 * rows->len);
}

/* What neither of the two says is above all "-tion", in words that the patterns do not know well either. */
static void
test_german_syllables (void)
{
  g_autoptr (GPtrArray) rows = read_rows ("syllables-de.csv");

  g_assert_cmpuint (rows->len, >=, 1400);
  g_assert_cmpfloat (count_differences (rows, 1, 1, sw_syllables_count_german), <=, 0.03 * rows->len);
  g_assert_cmpfloat (count_differences (rows, 1, 2, sw_syllables_count_german), <=, 0.015 * rows->len);
}

/* Where two vowels meet at a joint, or are spoken apart: by the division that dictionaries of German print. */
static void
test_german_joints (void)
{
  const struct
  {
    const char *word;
    guint n;
  } cases[] = {
    { "be-enden", 3 },  { "beenden", 3 },    { "Beine", 2 },     { "beinhalten", 4 }, { "Beeren", 2 },
    { "geehrt", 2 },    { "Geist", 1 },      { "Patient", 3 },   { "dient", 1 },      { "Familie", 4 },
    { "Therapie", 3 },  { "Therapien", 4 },  { "Wien", 1 },      { "Knie", 1 },       { "Knieinnenseite", 5 },
    { "Partei", 2 },    { "Parteien", 3 },   { "Museum", 3 },    { "Raum", 1 },       { "Koordination", 6 },
    { "Boot", 1 },      { "Protein", 3 },    { "Niveau", 2 },    { "Steuer", 2 },     { "Quelle", 2 },
    { "Yoga", 2 },      { "Rhythmus", 2 },   { "Station", 3 },   { "30", 0 },         { "Übung", 2 },
    { "U\xcc\x88" "bung", 2 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_test_message ("%s", cases[i].word);
      g_assert_cmpuint (sw_syllables_count_german (cases[i].word), ==, cases[i].n);
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
      guint n = sw_syllables_count_english (row[0]);

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
    { { .sentences = 5, .words = 100, .syllables = 150, .polysyllables = 10 }, 9.910, 11.2081 },
    { { .sentences = 10, .words = 100, .syllables = 130, .polysyllables = 5 }, 3.650, 7.1686 },
    { { .sentences = 3, .words = 60, .syllables = 120, .polysyllables = 20 }, 15.810, 17.8793 },
    { { .sentences = 1, .words = 10, .syllables = 10, .polysyllables = 0 }, 0.110, 3.1291 },
    { { .sentences = 30, .words = 300, .syllables = 450, .polysyllables = 30 }, 6.010, 8.8418 },
  };
  const SwReadability nothing = { 0 };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_assert_cmpfloat_with_epsilon (sw_readability_get_grade (&cases[i].counts), cases[i].grade, 0.0005);
      g_assert_cmpfloat_with_epsilon (sw_readability_get_smog (&cases[i].counts), cases[i].smog, 0.0001);
    }
  g_assert_cmpfloat (sw_readability_get_grade (&nothing), ==, 0.0);
  g_assert_cmpfloat (sw_readability_get_smog (&nothing), ==, 0.0);
  g_assert_cmpfloat (sw_readability_get_perspicuity (&nothing), ==, 0.0);
  g_assert_cmpfloat (sw_readability_get_sachtext (&nothing), ==, 0.0);
  g_assert_cmpfloat (sw_readability_get_sentence_words (&nothing), ==, 0.0);
}

/* 206.835 - 62.3 syllables/word - words/sentence, worked by hand. */
static void
test_perspicuity (void)
{
  const SwReadability plain = { .sentences = 10, .words = 100, .syllables = 200 };
  const SwReadability hard = { .sentences = 4, .words = 100, .syllables = 240 };

  g_assert_cmpfloat_with_epsilon (sw_readability_get_perspicuity (&plain), 72.235, 0.0005);
  g_assert_cmpfloat_with_epsilon (sw_readability_get_perspicuity (&hard), 32.315, 0.0005);
}

static void
test_inflesz (void)
{
  const SwReadabilityScale *scale = sw_readability_scale_get ("es");
  g_autoptr (GPtrArray) rows = read_rows ("readability-scales.csv");

  g_assert_cmpuint (rows->len, ==, 8);
  for (guint i = 0; i < rows->len; i++)
    {
      char **row = rows->pdata[i];
      g_autofree char *words = sw_readability_scale_describe (scale, g_ascii_strtod (row[1], NULL));
      g_autofree char *step = g_strdup_printf (", %s (", row[2]);

      g_test_message ("%s", words);
      g_assert_nonnull (strstr (words, step));
    }
}

/* The tests of the Python package textstat (MIT license) expect 3.77 and 13.913 for two sentences with these counts;
 * the third is worked by hand. */
static void
test_sachtext (void)
{
  const SwReadability rhyme = { .sentences = 1, .words = 14, .monosyllables = 6, .long_words = 4 };
  const SwReadability news = { .sentences = 1, .words = 16, .monosyllables = 4, .polysyllables = 6, .long_words = 7 };
  const SwReadability third = { 5, 50, 90, 20, 10, 15 };

  g_assert_cmpfloat_with_epsilon (sw_readability_get_sachtext (&rhyme), 3.770, 0.0005);
  g_assert_cmpfloat_with_epsilon (sw_readability_get_sachtext (&news), 13.913, 0.0005);
  g_assert_cmpfloat_with_epsilon (sw_readability_get_sachtext (&third), 7.250, 0.0005);
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
      SwReadability counts = count ("en", cases[i].text);

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
  const SwReadabilityScale *scale = sw_readability_scale_get ("en-GB");
  SwReadability counts = { 0 };
  g_autofree char *first = sw_sentence_take (&text, scale, &counts);
  g_autofree char *second = sw_sentence_take (&text, scale, &counts);

  g_assert_cmpstr (first, ==, "Lift your heels.");
  g_assert_cmpstr (second, ==, "Stop if it hurts!");
  g_assert_null (sw_sentence_take (&text, scale, &counts));
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
  g_test_add_func ("/readability/spanish/passages", test_spanish_passages);
  g_test_add_func ("/readability/spanish/syllables", test_spanish_syllables);
  g_test_add_func ("/readability/spanish/perspicuity", test_perspicuity);
  g_test_add_func ("/readability/spanish/inflesz", test_inflesz);
  g_test_add_func ("/readability/german/passages", test_german_passages);
  g_test_add_func ("/readability/german/syllables", test_german_syllables);
  g_test_add_func ("/readability/german/joints", test_german_joints);
  g_test_add_func ("/readability/german/sachtext", test_sachtext);
  g_test_add_func ("/readability/formulas", test_formulas);
  g_test_add_func ("/readability/sentences", test_sentences);
  g_test_add_func ("/readability/take", test_take);

  return g_test_run ();
}
