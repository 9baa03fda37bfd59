/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * That the handout's words are all there, in every form a language needs, and are chosen by the client's language. */
#include "config.h"

#include <locale.h>
#include <string.h>

#include <glib/gstdio.h>

#include "sw-data-dir.h"
#include "sw-phrases.h"

static SwPhrases *
load_english (void)
{
  g_autoptr (GError) error = NULL;
  SwPhrases *phrases = sw_phrases_new ("en", &error);

  g_assert_no_error (error);
  return phrases;
}

static void
test_fallback (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwPhrases) phrases = sw_phrases_new ("en-GB-oxendict", &error);

  g_assert_no_error (error);
  g_assert_cmpstr (sw_phrases_get_language (phrases), ==, "en");
}

static void
test_unknown_language (void)
{
  static const char *const tags[] = { "xx", "", "../en", "en/../en", "a-b-c-d" };

  for (guint i = 0; i < G_N_ELEMENTS (tags); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_null (sw_phrases_new (tags[i], &error));
      g_assert_error (error, SW_PHRASES_ERROR, SW_PHRASES_ERROR_LANGUAGE);
      g_assert_nonnull (strstr (error->message, "Choose another language"));
    }
}

/* A language that lacks a phrase, or one form of it, is refused as a whole: no page with half its words. */
static void
test_incomplete_language (void)
{
  g_autofree char *english_path = sw_data_path ("phrases", "en.ini", NULL);
  g_autofree char *folder = g_dir_make_tmp ("phrases-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "zz.ini", NULL);
  g_autofree char *text = NULL;
  g_autoptr (GString) other = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (SwPhrases) phrases = NULL;

  g_assert_true (g_file_get_contents (english_path, &text, NULL, NULL));
  other = g_string_new (text);
  g_string_replace (other, "code=en", "code=zz", 1);
  g_assert_true (g_file_set_contents (path, other->str, -1, NULL));
  phrases = sw_phrases_new_from_file (path, &error);
  g_assert_no_error (error);
  g_clear_pointer (&phrases, sw_phrases_unref);

  g_string_replace (other, "\nseconds.one=", "\nseconds.none=", 1);
  g_assert_true (g_file_set_contents (path, other->str, -1, NULL));
  g_assert_null (sw_phrases_new_from_file (path, &error));
  g_assert_error (error, SW_PHRASES_ERROR, SW_PHRASES_ERROR_LANGUAGE);
  g_assert_nonnull (strstr (error->message, "time.seconds.one"));
  g_clear_error (&error);

  g_string_assign (other, text);
  g_string_replace (other, "code=en\nrule=one", "code=zz\nrule=polish", 1);
  g_assert_true (g_file_set_contents (path, other->str, -1, NULL));
  g_assert_null (sw_phrases_new_from_file (path, &error));
  g_assert_error (error, SW_PHRASES_ERROR, SW_PHRASES_ERROR_LANGUAGE);
  g_assert_nonnull (strstr (error->message, ".few"));

  g_remove (path);
  g_rmdir (folder);
}

/* Adds the phrases that the sources in @folder name to @used. */
static guint
collect_used (SwPhrases  *phrases,
              const char *folder,
              GHashTable *used)
{
  g_autoptr (GRegex) regex = g_regex_new ("\"([a-z][a-z-]*\\.[a-z0-9-]+)\"", 0, 0, NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n_used = 0;

  g_assert_nonnull (dir);
  for (const char *name = g_dir_read_name (dir); name != NULL; name = g_dir_read_name (dir))
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_autofree char *text = NULL;
      g_autoptr (GMatchInfo) match = NULL;

      if (!g_str_has_suffix (name, ".c"))
        continue;
      g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
      for (g_regex_match (regex, text, 0, &match); g_match_info_matches (match); g_match_info_next (match, NULL))
        {
          g_autofree char *key = g_match_info_fetch (match, 1);
          g_autofree char *counted = g_strconcat (key, ".other", NULL);

          if (g_str_has_suffix (key, ".ini") || g_str_has_suffix (key, ".h")
              || g_str_equal (key, "language.not-for")) /* most languages need none */
            continue;
          if (!sw_phrases_has (phrases, key) && !sw_phrases_has (phrases, counted))
            g_error ("%s uses the phrase “%s”, which is not there", name, key);
          g_hash_table_add (used, g_steal_pointer (&key));
          n_used++;
        }
    }
  return n_used;
}

/* Every phrase the sources name is in the file, and every phrase in the file is named by a source, but for those that
 * stand one for each value of a type. */
static void
test_used_keys (void)
{
  g_autoptr (SwPhrases) phrases = load_english ();
  g_autoptr (GHashTable) used = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_auto (GStrv) keys = sw_phrases_dup_keys (phrases);

  g_assert_cmpuint (collect_used (phrases, SW_SOURCE_DIR "/handout", used), >, 100);
  g_assert_cmpuint (collect_used (phrases, SW_SOURCE_DIR "/figure", used), >, 10);
  g_assert_cmpuint (collect_used (phrases, SW_SOURCE_DIR "/base", used), >, 5);

  for (guint i = 0; keys[i] != NULL; i++)
    {
      g_autofree char *stem = g_strdup (keys[i]);
      char *form = strrchr (stem, '.');

      if (form != strchr (stem, '.'))
        *form = '\0';
      if (!g_hash_table_contains (used, stem) && !g_str_has_prefix (stem, "month.")
          && !g_str_has_prefix (stem, "figure-"))
        g_error ("no source uses the phrase “%s”", keys[i]);
    }
}

static void
test_numbers (void)
{
  g_autoptr (SwPhrases) phrases = load_english ();
  g_autofree char *below = sw_phrases_number (phrases, -2.25, 1);
  g_autofree char *hardly = sw_phrases_number (phrases, -0.01, 1);
  g_autofree char *range = sw_phrases_count_range (phrases, "time.seconds", 1, 2, NULL);
  g_autofree char *one = sw_phrases_count_range (phrases, "time.seconds", 1, 1, NULL);

  g_assert_cmpstr (below, ==, "-2.2");
  g_assert_cmpstr (hardly, ==, "0");
  g_assert_cmpstr (range, ==, "1 to\302\2402\302\240seconds");
  g_assert_cmpstr (one, ==, "1\302\240second");
}

static void
test_sentences (void)
{
  g_autoptr (SwPhrases) phrases = load_english ();
  const char *const none[] = { NULL };
  const char *const three[] = { "A.", "B.", "C.", NULL };
  g_autofree char *nothing = sw_phrases_sentences (phrases, none);
  g_autofree char *all = sw_phrases_sentences (phrases, three);
  g_autofree char *greek = sw_phrases_capitalise ("ένα");
  g_autofree char *empty = sw_phrases_capitalise ("");

  g_assert_cmpstr (nothing, ==, "");
  g_assert_cmpstr (all, ==, "A. B. C.");
  g_assert_cmpstr (greek, ==, "Ένα");
  g_assert_cmpstr (empty, ==, "");
}

static void
test_filling_in (void)
{
  g_autoptr (SwPhrases) phrases = load_english ();
  g_autofree char *one = sw_phrases_count (phrases, "time.seconds", 1, NULL);
  g_autofree char *many = sw_phrases_time (phrases, 90);
  g_autofree char *minutes = sw_phrases_time (phrases, 120);
  g_autofree char *same = sw_phrases_range (phrases, 12, 12);
  g_autofree char *range = sw_phrases_range (phrases, 8, 12);
  g_autofree char *day = sw_phrases_date (phrases, "2026-11-20");
  g_autofree char *no_day = sw_phrases_date (phrases, "soon");
  g_autofree char *number = sw_phrases_number (phrases, 2.5, 2);
  /* A value that looks like a place to fill in is not filled in again. */
  g_autofree char *tricky = sw_phrases_format (phrases, "front.for", "name", "{name} {n} %s", NULL);

  g_assert_cmpstr (one, ==, "1\302\240second");
  g_assert_cmpstr (many, ==, "90\302\240seconds");
  g_assert_cmpstr (minutes, ==, "2\302\240minutes");
  g_assert_cmpstr (same, ==, "12");
  g_assert_cmpstr (range, ==, "8 to\302\24012");
  g_assert_cmpstr (day, ==, "20\302\240November\302\2402026");
  g_assert_cmpstr (no_day, ==, "soon");
  g_assert_cmpstr (number, ==, "2.5");
  g_assert_cmpstr (tricky, ==, "For {name} {n} %s");
}

static void
test_lists (void)
{
  g_autoptr (SwPhrases) phrases = load_english ();
  const char *const none[] = { NULL };
  const char *const one[] = { "a", NULL };
  const char *const two[] = { "a", "b", NULL };
  const char *const four[] = { "a", "b", "c", "d", NULL };
  g_autofree char *text_none = sw_phrases_list (phrases, none);
  g_autofree char *text_one = sw_phrases_list (phrases, one);
  g_autofree char *text_two = sw_phrases_list (phrases, two);
  g_autofree char *text_four = sw_phrases_list (phrases, four);

  g_assert_cmpstr (text_none, ==, "");
  g_assert_cmpstr (text_one, ==, "a");
  g_assert_cmpstr (text_two, ==, "a and b");
  g_assert_cmpstr (text_four, ==, "a, b, c and d");
}

int
main (int   argc,
      char *argv[])
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/phrases/fallback", test_fallback);
  g_test_add_func ("/phrases/unknown-language", test_unknown_language);
  g_test_add_func ("/phrases/incomplete-language", test_incomplete_language);
  g_test_add_func ("/phrases/used-keys", test_used_keys);
  g_test_add_func ("/phrases/filling-in", test_filling_in);
  g_test_add_func ("/phrases/lists", test_lists);
  g_test_add_func ("/phrases/numbers", test_numbers);
  g_test_add_func ("/phrases/sentences", test_sentences);
  return g_test_run ();
}
