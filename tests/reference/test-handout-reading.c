/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The programmes of the handout's reading: whole, in step with the catalogue, free to be handed over, laid out
 * without a loss, and every answer of handout-reading.csv and handout-checklists.csv stands on their pages. */
#include "config.h"

#include <string.h>

#include "sw-catalogue-folder.h"
#include "sw-data-dir.h"
#include "sw-finding.h"
#include "sw-handout.h"
#include "sw-programme-xml.h"

#define DAY "2026-11-23"
#define TODAY "2026-11-25"
#define N_QUESTIONS 12

/* Fails the test and goes on, so that one run names every fault. */
#define complain(...)              \
  G_STMT_START                      \
  {                                 \
    g_test_message (__VA_ARGS__);   \
    g_test_fail ();                 \
  }                                 \
  G_STMT_END

static const char *const names[] = { "sample", "rowing-shoulder", "desk-neck" };

static GBytes *
read_bytes (const char *name)
{
  g_autofree char *file = g_strconcat (name, ".setwright", NULL);
  g_autofree char *path = g_str_equal (name, "sample")
                            ? sw_data_path ("samples", file, NULL)
                            : g_test_build_filename (G_TEST_DIST, "handouts", file, NULL);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  gsize length;

  g_file_get_contents (path, &text, &length, &error);
  g_assert_no_error (error);
  return g_bytes_new_take (g_steal_pointer (&text), length);
}

static SwProgramme *
load (const char *name)
{
  g_autoptr (GBytes) bytes = read_bytes (name);
  g_autoptr (GError) error = NULL;
  SwProgramme *programme = sw_programme_from_bytes (bytes, name, &error);

  g_assert_no_error (error);
  return programme;
}

static SwHandout *
lay_out (SwProgramme *programme)
{
  g_autoptr (GError) error = NULL;
  SwHandoutOptions options;
  SwHandout *handout;

  sw_handout_options_init (&options, programme, DAY);
  handout = sw_handout_new (programme, &options, &error);
  g_assert_no_error (error);
  return handout;
}

/* What the client reads, without the places: no-break spaces as spaces, soft hyphens gone, one space for many. */
static char *
dup_text (SwHandout *handout)
{
  g_autofree char *dump = sw_handout_dump (handout);
  g_autoptr (GString) text = g_string_new (dump);
  g_auto (GStrv) words = NULL;
  g_autoptr (GPtrArray) kept = g_ptr_array_new ();

  g_string_replace (text, "\302\240", " ", 0);
  g_string_replace (text, "\302\255", "", 0);
  g_string_replace (text, "\n", " ", 0);
  words = g_strsplit (text->str, " ", -1);
  for (guint i = 0; words[i] != NULL; i++)
    if (words[i][0] != '\0')
      g_ptr_array_add (kept, words[i]);
  g_ptr_array_add (kept, NULL);

  return g_strjoinv (" ", (char **) kept->pdata);
}

/* The rows of a table of this folder, without comments and heading. */
static GPtrArray *
read_rows (const char *file,
           guint       n_fields)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, file, NULL);
  GPtrArray *rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);
  g_autofree char *text = NULL;
  g_auto (GStrv) lines = NULL;
  g_autoptr (GError) error = NULL;
  gboolean heading = TRUE;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  lines = g_strsplit (text, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    {
      g_auto (GStrv) fields = NULL;

      if (lines[i][0] == '\0' || lines[i][0] == '#')
        continue;
      if (heading)
        {
          heading = FALSE;
          continue;
        }
      fields = g_strsplit (lines[i], ";", -1);
      if (g_strv_length (fields) != n_fields)
        {
          complain ("%s:%u has %u fields", file, i + 1, g_strv_length (fields));
          continue;
        }
      g_ptr_array_add (rows, g_steal_pointer (&fields));
    }

  return rows;
}

/* Where the exercise of that number begins: its number stands alone, as in the bar of the session before it. */
static const char *
find_exercise (const char *text,
               guint64     number)
{
  g_autofree char *alone = g_strdup_printf (" \"%" G_GUINT64_FORMAT "\" ", number);

  return g_strrstr (text, alone);
}

/* What @words asks for and where: "5> words" is looked for in exercise 5, up to the next one; else anywhere. */
static void
expect_words (const char *text,
              const char *words,
              const char *what)
{
  g_auto (GStrv) parts = g_strsplit (words, " | ", -1);

  for (guint i = 0; parts[i] != NULL; i++)
    {
      char *wanted = parts[i];
      guint64 number = g_ascii_strtoull (parts[i], &wanted, 10);
      const char *begin = text;
      const char *end = NULL;

      if (number > 0 && g_str_has_prefix (wanted, "> "))
        {
          wanted += strlen ("> ");
          begin = find_exercise (text, number);
          end = find_exercise (text, number + 1);
        }
      else
        {
          wanted = parts[i];
        }
      if (end == NULL)
        end = text + strlen (text);
      if (begin == NULL || begin > end || g_strstr_len (begin, end - begin, wanted) == NULL)
        complain ("%s: the pages do not say “%s”", what, parts[i]);
    }
}

static void
test_bytes (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (GBytes) before = read_bytes (names[i]);
      g_autoptr (SwProgramme) programme = load (names[i]);
      g_autoptr (GBytes) after = sw_programme_to_bytes (programme);

      g_assert_cmpmem (g_bytes_get_data (before, NULL), g_bytes_get_size (before),
                       g_bytes_get_data (after, NULL), g_bytes_get_size (after));
    }
}

/* Nothing stops the handout, what was answered is found, and the exercises are those of the catalogue. */
static void
test_check (void)
{
  g_autoptr (GPtrArray) problems = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (SwCatalogue) catalogue = sw_catalogue_load_shipped (&problems, &error);

  g_assert_no_error (error);
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (SwProgramme) programme = load (names[i]);
      g_autoptr (GPtrArray) findings = sw_findings_collect (programme, catalogue, TODAY);
      g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
      guint n_answered = 0;

      for (guint k = 0; k < findings->len; k++)
        n_answered += ((SwFinding *) findings->pdata[k])->answer != NULL;
      g_assert_cmpuint (sw_findings_count_open (findings, SW_FINDING_STOP), ==, 0);
      g_assert_cmpuint (n_answered, ==, g_list_model_get_n_items (G_LIST_MODEL (sw_programme_get_answers (programme))));

      for (guint k = 0; k < items->len; k++)
        {
          SwExercise *snapshot = sw_item_get_exercise (items->pdata[k]);
          SwExercise *shipped;

          if (snapshot == NULL)
            continue;
          shipped = sw_catalogue_lookup (catalogue, sw_exercise_get_id (snapshot));
          if (shipped == NULL || !sw_exercise_equal (snapshot, shipped))
            complain ("%s: %s differs from the catalogue", names[i], sw_exercise_get_id (snapshot));
        }
    }
}

/* Numbers set aside for drama by the British regulator: 01632 960000 to 960999 (Ofcom, numbers for drama). */
static void
test_nobody_real (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (SwProgramme) programme = load (names[i]);
      SwClinic *clinic = sw_programme_get_clinic (programme);

      g_assert_true (g_str_has_prefix (sw_clinic_get_phone (clinic), "01632 960"));
      g_assert_true (g_str_has_suffix (sw_clinic_get_email (clinic), "@example.org"));
    }
}

/* Every layout the client may be given tells every exercise, in the client's own text size. */
static void
test_layout (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (SwProgramme) programme = load (names[i]);
      g_autoptr (SwHandout) handout = lay_out (programme);
      g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
      int page = 0;

      g_test_message ("%s: %d pages", names[i], sw_handout_get_n_pages (handout));
      for (guint k = 0; k < items->len; k++)
        {
          int next;

          if (sw_item_get_kind (items->pdata[k]) != SW_ITEM_EXERCISE)
            continue;
          next = sw_handout_find_page_of_item (handout, sw_item_get_id (items->pdata[k]));
          g_assert_cmpint (next, >=, page);
          page = next;
        }
      g_assert_cmpstr (sw_handout_get_missing (handout), ==, "");
    }
}

/* Each programme has its 12 questions, and their answers stand on its pages. */
static void
test_answers (void)
{
  g_autoptr (GPtrArray) rows = read_rows ("handout-reading.csv", 6);

  g_assert_cmpuint (rows->len, ==, N_QUESTIONS * G_N_ELEMENTS (names));
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (SwProgramme) programme = load (names[i]);
      g_autoptr (SwHandout) handout = lay_out (programme);
      g_autofree char *text = dup_text (handout);

      for (guint k = 0; k < N_QUESTIONS; k++)
        {
          char **row = rows->pdata[i * N_QUESTIONS + k];
          g_autofree char *what = g_strdup_printf ("%s, question %s", row[0], row[1]);

          g_assert_cmpstr (row[0], ==, names[i]);
          g_assert_cmpuint (g_ascii_strtoull (row[1], NULL, 10), ==, k + 1);
          g_assert_true (g_str_has_suffix (row[2], "?"));
          expect_words (text, row[5], what);
        }
    }
}

/* What the handout is to tell by the lists for reporting exercise and for written material. */
static void
test_checklists (void)
{
  g_autoptr (GPtrArray) rows = read_rows ("handout-checklists.csv", 6);
  g_autoptr (SwProgramme) programme = load ("sample");
  g_autoptr (SwHandout) handout = lay_out (programme);
  g_autofree char *text = dup_text (handout);
  guint n_told = 0;

  for (guint i = 0; i < rows->len; i++)
    {
      char **row = rows->pdata[i];
      g_autofree char *what = g_strdup_printf ("%s, item %s", row[0], row[1]);

      g_assert_cmpstr (row[3], !=, "");
      if (row[4][0] == '\0')
        continue;
      expect_words (text, row[4], what);
      n_told++;
    }
  g_assert_cmpuint (rows->len, ==, 55);
  g_assert_cmpuint (n_told, >=, 30);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/handout-reading/bytes", test_bytes);
  g_test_add_func ("/handout-reading/check", test_check);
  g_test_add_func ("/handout-reading/nobody-real", test_nobody_real);
  g_test_add_func ("/handout-reading/layout", test_layout);
  g_test_add_func ("/handout-reading/answers", test_answers);
  g_test_add_func ("/handout-reading/checklists", test_checklists);

  return g_test_run ();
}
