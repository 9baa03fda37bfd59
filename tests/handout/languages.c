/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The handout's words in every language there is: none missing, numbers and days as Unicode CLDR has them, and doses in
 * the forms that go with their numbers. */
#include "config.h"

#include <stdlib.h>
#include <string.h>

#include "sw-data-dir.h"
#include "sw-dose-words.h"
#include "sw-phrases.h"
#include "sw-plural.h"

#define REVIEW "awaits review by a\n# native-speaking clinician"

static SwPhrases *
load (const char *language)
{
  g_autoptr (GError) error = NULL;
  SwPhrases *phrases = sw_phrases_new (language, &error);

  g_assert_no_error (error);
  return phrases;
}

/* The lines of a table that begin with @what, split at the bars. */
static GPtrArray *
read_table (const char *path,
            const char *what)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);
  g_autofree char *text = NULL;
  g_auto (GStrv) lines = NULL;

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  lines = g_strsplit (text, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    {
      g_auto (GStrv) cells = g_strsplit (lines[i], "|", -1);

      if (*lines[i] != '\0' && *lines[i] != '#' && (what == NULL || g_str_equal (cells[0], what)))
        g_ptr_array_add (rows, g_steal_pointer (&cells));
    }
  g_assert_cmpuint (rows->len, >, 0);
  return rows;
}

/* The rule of a language, from its file or, for a rule that no file needs yet, from here. */
static char *
dup_rule (const char *language)
{
  static const char *const others[][2]
      = { { "cs", "czech" }, { "ja", "none" }, { "ru", "east-slavic" }, { "uk", "east-slavic" } };

  for (guint i = 0; i < G_N_ELEMENTS (others); i++)
    if (g_str_equal (others[i][0], language))
      return g_strdup (others[i][1]);
  {
    g_autoptr (SwPhrases) phrases = load (language);

    return g_strdup (sw_phrases_get (phrases, "language.rule"));
  }
}

static void
test_files (void)
{
  g_auto (GStrv) languages = sw_phrases_list_languages ();

  g_assert_cmpuint (g_strv_length (languages), >=, 9);
  for (guint i = 0; languages[i] != NULL; i++)
    {
      const char *language = languages[i];
      g_autofree char *name = g_strconcat (language, ".ini", NULL);
      g_autofree char *path = sw_data_path ("phrases", name, NULL);
      g_autofree char *text = NULL;
      g_autoptr (SwPhrases) phrases = load (language);

      g_assert_true (g_str_has_prefix (sw_phrases_get_language (phrases), language));
      g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
      g_assert_true (g_str_equal (language, "en") || strstr (text, REVIEW) != NULL);
    }
}

static void
test_other_scripts (void)
{
  static const char *const others[] = { "zh-Hant", "zh-TW", "zh-hk", "zh-Hant-MO" };
  static const char *const fine[] = { "zh", "zh-CN", "zh-Hans-SG" };

  for (guint i = 0; i < G_N_ELEMENTS (others); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_null (sw_phrases_new (others[i], &error));
      g_assert_error (error, SW_PHRASES_ERROR, SW_PHRASES_ERROR_LANGUAGE);
    }
  for (guint i = 0; i < G_N_ELEMENTS (fine); i++)
    {
      g_autoptr (SwPhrases) phrases = load (fine[i]);

      g_assert_cmpstr (sw_phrases_get_language (phrases), ==, "zh-Hans");
    }
}

/* Every number of the table has the form that CLDR gives it, and the rule names no form that is never used. */
static void
test_plurals (void)
{
  g_autoptr (GPtrArray) rows = read_table (SW_REFERENCE_DIR "/cldr.csv", "plural");
  guint n = 0;

  for (guint i = 0; i < rows->len; i++)
    {
      char **cells = rows->pdata[i];
      g_autofree char *rule = dup_rule (cells[1]);
      g_auto (GStrv) runs = g_strsplit (cells[3], " ", -1);
      guint n_forms = 0;

      g_assert_true (g_strv_contains (sw_plural_forms (rule), cells[2]));
      for (guint j = 0; j < rows->len; j++)
        n_forms += g_str_equal (((char **) rows->pdata[j])[1], cells[1]);
      g_assert_cmpuint (g_strv_length ((char **) sw_plural_forms (rule)), ==, n_forms);
      for (guint j = 0; runs[j] != NULL; j++)
        {
          char *dash = strchr (runs[j], '-');

          for (int number = atoi (runs[j]); number <= atoi (dash + 1); number++, n++)
            g_assert_cmpstr (sw_plural_form (rule, number), ==, cells[2]);
        }
    }
  g_assert_cmpuint (n, ==, 13 * 201);
}

static void
test_ranges (void)
{
  g_autoptr (GPtrArray) rows = read_table (SW_REFERENCE_DIR "/cldr.csv", "range-unlike-last");

  for (guint i = 0; i < rows->len; i++)
    {
      char **cells = rows->pdata[i];
      g_autofree char *rule = dup_rule (cells[1]);
      g_auto (GStrv) unlike = g_strsplit (cells[3], ", ", -1);

      for (int low = 1; low < 30; low++)
        for (int high = low + 1; high <= 30; high++)
          {
            g_autofree char *start = g_strdup_printf ("%d-%d ", low, high);
            const char *form = sw_plural_form (rule, high);

            for (guint j = 0; unlike[j] != NULL; j++)
              if (g_str_has_prefix (unlike[j], start))
                form = unlike[j] + strlen (start);
            g_assert_cmpstr (sw_plural_range_form (rule, low, high), ==, form);
          }
      g_assert_cmpstr (sw_plural_range_form (rule, 2, 2), ==, sw_plural_form (rule, 2));
    }
}

/* Whether both are the same but for the kind of spaces, capitals and marks that keep a direction. */
static void
assert_alike (const char *text,
              const char *expected)
{
  g_autoptr (GString) plain = g_string_new (text);
  g_autofree char *folded = NULL;
  g_autofree char *expected_folded = g_utf8_casefold (expected, -1);

  g_string_replace (plain, "\302\240", " ", 0);
  g_string_replace (plain, "\342\201\250", "", 0);
  g_string_replace (plain, "\342\201\251", "", 0);
  folded = g_utf8_casefold (plain->str, -1);
  g_assert_cmpstr (folded, ==, expected_folded);
}

static void
check_row (SwPhrases *phrases,
           char     **cells)
{
  static const char *const days[]
      = { "sunday", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday" };
  const char *const words[] = { "A", "B", "C", "D", NULL };
  const char *const two[] = { "A", "B", NULL };
  g_autofree char *text = NULL;
  g_autofree char *key = NULL;

  if (g_str_has_prefix (cells[0], "day"))
    key = g_strconcat (cells[0], ".", days[atoi (cells[2]) - 1], NULL);

  if (g_str_equal (cells[0], "date"))
    text = sw_phrases_date (phrases, cells[2]);
  else if (g_str_equal (cells[0], "number"))
    text = sw_phrases_number (phrases, g_ascii_strtod (cells[2], NULL), 1);
  else if (g_str_equal (cells[0], "list"))
    text = sw_phrases_list (phrases, g_str_equal (cells[2], "2") ? two : words);
  else if (key != NULL)
    text = g_strdup (sw_phrases_get (phrases, key));
  if (text != NULL)
    assert_alike (text, cells[3]);
}

/* Where our pages do otherwise: English for most countries, no comma before "and" in Hindi, no hyphen after the Hebrew
 * "and", since the words of our lists are Hebrew, and Arabic days without the article in columns. */
static gboolean
differs (char **cells)
{
  return g_str_equal (cells[1], "en") || (g_str_equal (cells[0], "day-short") && g_str_equal (cells[1], "ar"))
         || (g_str_equal (cells[0], "list") && g_str_equal (cells[1], "he"))
         || (g_str_equal (cells[0], "list") && g_str_equal (cells[1], "hi") && g_str_equal (cells[2], "4"));
}

static void
test_days_and_numbers (void)
{
  static const char *const kinds[] = { "day", "day-short", "date", "number", "list" };
  guint n = 0;

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autoptr (GPtrArray) rows = read_table (SW_REFERENCE_DIR "/cldr.csv", kinds[i]);

      for (guint j = 0; j < rows->len; j++)
        {
          g_autoptr (SwPhrases) phrases = load (((char **) rows->pdata[j])[1]);

          if (differs (rows->pdata[j]))
            continue;
          check_row (phrases, rows->pdata[j]);
          n++;
        }
    }
  g_assert_cmpuint (n, ==, 8 * (7 + 7 + 2 + 1 + 2) - 3 - 7);
}

/* But for Chinese, whose dates number the months. */
static void
test_months (void)
{
  g_autoptr (GPtrArray) rows = read_table (SW_REFERENCE_DIR "/cldr.csv", "month");

  for (guint i = 0; i < rows->len; i++)
    {
      char **cells = rows->pdata[i];
      g_autoptr (SwPhrases) phrases = load (cells[1]);
      g_autofree char *key = g_strconcat ("month.", cells[2], NULL);

      if (!g_str_equal (cells[1], "zh"))
        g_assert_cmpstr (sw_phrases_get (phrases, key), ==, cells[3]);
    }
  g_assert_cmpuint (rows->len, ==, 9 * 12);
}

static void
test_first_of_month (void)
{
  g_autoptr (SwPhrases) phrases = load ("fr");
  g_autofree char *first = sw_phrases_date (phrases, "2026-02-01");

  assert_alike (first, "1er février 2026");
}

static int
compare_texts (const void *a,
               const void *b)
{
  return strcmp (*(const char *const *) a, *(const char *const *) b);
}

/* The places of a phrase to fill in, sorted, without {n}. */
static char *
dup_places (const char *text)
{
  g_autoptr (GRegex) regex = g_regex_new ("\\{[a-z]+\\}", 0, 0, NULL);
  g_autoptr (GMatchInfo) match = NULL;
  g_autoptr (GPtrArray) places = g_ptr_array_new_with_free_func (g_free);

  for (g_regex_match (regex, text, 0, &match); g_match_info_matches (match); g_match_info_next (match, NULL))
    {
      char *place = g_match_info_fetch (match, 0);

      if (g_str_equal (place, "{n}"))
        g_free (place);
      else
        g_ptr_array_add (places, place);
    }
  g_ptr_array_sort (places, compare_texts);
  g_ptr_array_add (places, NULL);
  return g_strjoinv (" ", (char **) places->pdata);
}

static gboolean
is_of_one_number (const char *rule,
                  const char *form)
{
  int n = 0;

  for (int number = 1; number <= 200; number++)
    n += g_str_equal (sw_plural_form (rule, number), form);
  return n == 1 && !g_str_equal (sw_plural_form (rule, 0), form);
}

/* A phrase of any language fills in what the English one does. Only a form that stands for a single number may leave
 * out the number. */
static void
test_places (void)
{
  g_auto (GStrv) languages = sw_phrases_list_languages ();
  g_autoptr (SwPhrases) english = load ("en");

  for (guint i = 0; languages[i] != NULL; i++)
    {
      g_autoptr (SwPhrases) phrases = load (languages[i]);
      g_auto (GStrv) keys = sw_phrases_dup_keys (phrases);

      for (guint j = 0; keys[j] != NULL; j++)
        {
          const char *form = strrchr (keys[j], '.');
          g_autofree char *stem = g_strndup (keys[j], (gsize) (form - keys[j]));
          g_autofree char *counted = g_strconcat (stem, ".other", NULL);
          gboolean plural = strchr (keys[j], '.') != form;
          gboolean single = plural && is_of_one_number (sw_phrases_get (phrases, "language.rule"), form + 1);
          const char *reference = NULL;
          const char *text = NULL;
          g_autofree char *places = NULL;
          g_autofree char *expected = NULL;

          if (g_str_equal (stem, "language"))
            continue;
          reference = sw_phrases_get (english, plural ? counted : keys[j]);
          text = sw_phrases_get (phrases, keys[j]);
          places = dup_places (text);
          expected = dup_places (reference);
          if (!g_str_equal (places, expected)
              || (!single && (strstr (text, "{n}") != NULL) != (strstr (reference, "{n}") != NULL)))
            g_error ("%s: “%s” should fill in what “%s” does", languages[i], text, reference);
        }
    }
}

/* No line ends between a number and what it counts, nor before a French colon. */
static void
test_spaces (void)
{
  g_auto (GStrv) languages = sw_phrases_list_languages ();
  g_autoptr (GRegex) loose = g_regex_new ("\\{n\\} | [:;?!]|  |^ | $|~", 0, 0, NULL);

  for (guint i = 0; languages[i] != NULL; i++)
    {
      g_autoptr (SwPhrases) phrases = load (languages[i]);
      g_auto (GStrv) keys = sw_phrases_dup_keys (phrases);

      for (guint j = 0; keys[j] != NULL; j++)
        if (g_regex_match (loose, sw_phrases_get (phrases, keys[j]), 0, NULL))
          g_error ("%s: a loose space in “%s”", languages[i], keys[j]);
    }
}

/* Whom to call in an emergency differs between countries that share a language: only the clinic can know the number. */
static void
test_no_numbers_to_call (void)
{
  g_auto (GStrv) languages = sw_phrases_list_languages ();

  for (guint i = 0; languages[i] != NULL; i++)
    {
      g_autoptr (SwPhrases) phrases = load (languages[i]);
      g_auto (GStrv) keys = sw_phrases_dup_keys (phrases);

      for (guint j = 0; keys[j] != NULL; j++)
        if (g_str_has_prefix (keys[j], "stop.") && !g_str_has_prefix (keys[j], "stop.pain"))
          g_assert_null (strpbrk (sw_phrases_get (phrases, keys[j]), "0123456789"));
    }
}

/* In a line from right to left a telephone number stays as it is dialled. */
static void
test_right_to_left (void)
{
  g_autoptr (SwPhrases) arabic = load ("ar");
  g_autoptr (SwPhrases) german = load ("de");
  g_autofree char *foreign = sw_phrases_format (arabic, "page.phone", "phone", "020 7946 0000", NULL);
  g_autofree char *own = sw_phrases_format (arabic, "front.for", "name", "ليلى", NULL);
  g_autofree char *digits = sw_phrases_format (arabic, "page.number", "page", "1", "pages", "12", NULL);
  g_autofree char *left = sw_phrases_format (german, "page.phone", "phone", "020 7946 0000", NULL);

  g_assert_nonnull (strstr (foreign, "\342\201\250020 7946 0000\342\201\251"));
  g_assert_null (strstr (own, "\342\201\250"));
  g_assert_null (strstr (digits, "\342\201\250"));
  g_assert_cmpstr (left, ==, "Fragen? 020 7946 0000");
}

static void
test_doses (void)
{
  g_autoptr (GPtrArray) rows = read_table (SW_TEST_DIR "/dose-words-languages.csv", NULL);

  for (guint i = 0; i < rows->len; i++)
    {
      char **cells = rows->pdata[i];
      g_autoptr (SwPhrases) phrases = load (g_strstrip (cells[0]));
      g_autoptr (GError) error = NULL;
      g_autoptr (SwDoseWords) words = NULL;
      g_autofree char *details = NULL;
      g_autofree char *told = NULL;
      g_auto (GStrv) parts = NULL;
      g_autofree char *plain = NULL;
      SwDose neutral;
      SwDose dose;

      sw_dose_init (&neutral);
      sw_dose_from_line (g_strstrip (cells[1]), &neutral, &dose, &error);
      g_assert_no_error (error);
      words = sw_dose_words_new (phrases, &dose, SW_DOSE_LIMB_NONE, SW_UNITS_KG);
      details = sw_dose_words_join_details (words, phrases, FALSE);
      told = g_strconcat (words->amount, *details != '\0' ? " / " : "", details, NULL);
      parts = g_strsplit_set (told, "\n", -1);
      plain = g_strjoinv (" / ", parts);
      assert_alike (plain, g_strstrip (cells[2]));
    }
  g_assert_cmpuint (rows->len, >=, 50);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/languages/files", test_files);
  g_test_add_func ("/languages/other-scripts", test_other_scripts);
  g_test_add_func ("/languages/plurals", test_plurals);
  g_test_add_func ("/languages/ranges", test_ranges);
  g_test_add_func ("/languages/days-and-numbers", test_days_and_numbers);
  g_test_add_func ("/languages/months", test_months);
  g_test_add_func ("/languages/first-of-month", test_first_of_month);
  g_test_add_func ("/languages/places", test_places);
  g_test_add_func ("/languages/spaces", test_spaces);
  g_test_add_func ("/languages/no-numbers-to-call", test_no_numbers_to_call);
  g_test_add_func ("/languages/right-to-left", test_right_to_left);
  g_test_add_func ("/languages/doses", test_doses);
  return g_test_run ();
}
