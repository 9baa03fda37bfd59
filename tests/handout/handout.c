/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The pages: that nothing is missing, torn, off the paper or different the second time. With --regenerate the
 * expected dumps of tests/handout/cases are written anew, for a person to read the difference. */
#include "config.h"

#include <stdlib.h>
#include <string.h>

#include "handout-sample.h"
#include "sw-data-dir.h"
#include "sw-handout.h"
#include "sw-programme-file.h"

#define DAY "2026-11-20"

static gboolean regenerate;

static SwHandout *
lay_out (SwProgramme *programme,
         SwPaper      paper,
         double       text_points)
{
  g_autoptr (GError) error = NULL;
  SwHandoutOptions options;
  SwHandout *handout;

  sw_handout_options_init (&options, programme, DAY);
  options.paper = paper;
  options.text_points = text_points;
  handout = sw_handout_new (programme, &options, &error);
  g_assert_no_error (error);
  return handout;
}

/* Everything drawn lies between the margins: at every text size, on both papers. */
static void
assert_on_paper (SwHandout *handout)
{
  double width_pt = sw_handout_get_page_width_pt (handout);
  double height_pt = sw_handout_get_page_height_pt (handout);
  g_autofree char *dump = sw_handout_dump (handout);
  g_auto (GStrv) lines = g_strsplit (dump, "\n", -1);
  guint n = 0;

  for (guint i = 0; lines[i] != NULL; i++)
    {
      g_auto (GStrv) words = g_strsplit (lines[i], " ", 6);
      double box[4];

      if (g_strv_length (words) < 6)
        continue;
      for (guint j = 0; j < 4; j++)
        box[j] = g_ascii_strtod (words[j + 1], NULL);
      g_assert_cmpfloat (box[0], >=, 36.0);
      g_assert_cmpfloat (box[1], >=, 28.0);
      if (!g_str_equal (words[0], "text") && box[0] + box[2] > width_pt - 36.0)
        g_error ("beyond the margin: %s", lines[i]);
      if (!g_str_equal (words[0], "text"))
        g_assert_cmpfloat (box[0] + box[2], <=, width_pt - 36.0);
      if (box[3] < height_pt)
        g_assert_cmpfloat (box[1] + box[3], <=, height_pt - 28.0);
      n++;
    }
  g_assert_cmpuint (n, >, 20);
}

static void
test_on_paper (void)
{
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);

  for (double points = 12.0; points <= 28.0; points += 2.0)
    {
      g_autoptr (SwHandout) a4 = lay_out (programme, SW_PAPER_A4, points);
      g_autoptr (SwHandout) letter = lay_out (programme, SW_PAPER_LETTER, points);

      assert_on_paper (a4);
      assert_on_paper (letter);
      g_assert_cmpint (sw_handout_get_n_pages (a4), >=, 5);
    }
}

static void
test_paper_sizes (void)
{
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autoptr (SwHandout) a4 = lay_out (programme, SW_PAPER_A4, 14.0);
  g_autoptr (SwHandout) letter = lay_out (programme, SW_PAPER_LETTER, 14.0);

  /* ISO 216: 210 mm x 297 mm; ANSI/ASME Y14.1: 8.5 in x 11 in. */
  g_assert_cmpfloat_with_epsilon (sw_handout_get_page_width_pt (a4), 210.0 / 25.4 * 72.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (sw_handout_get_page_height_pt (a4), 297.0 / 25.4 * 72.0, 1e-9);
  g_assert_cmpfloat (sw_handout_get_page_width_pt (letter), ==, 612.0);
  g_assert_cmpfloat (sw_handout_get_page_height_pt (letter), ==, 792.0);
}

static void
test_items_in_order (void)
{
  static const char *const ids[] = { "i1", "i2", "i3", "i6", "i4", "i7", "i8", "i9", "i5", "i10" };
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autoptr (SwHandout) handout = lay_out (programme, SW_PAPER_A4, 14.0);
  int before = 0;

  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    {
      int page = sw_handout_find_page_of_item (handout, ids[i]);

      g_assert_cmpint (page, >=, before);
      before = page;
    }
  g_assert_cmpint (before, <, sw_handout_get_n_pages (handout));
  g_assert_cmpint (sw_handout_find_page_of_item (handout, "nobody"), ==, -1);
  g_assert_cmpint (sw_handout_find_page_of_item (handout, NULL), ==, -1);
}

static void
test_same_again (void)
{
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autoptr (SwHandout) first = lay_out (programme, SW_PAPER_A4, 14.0);
  g_autoptr (SwHandout) second = lay_out (programme, SW_PAPER_A4, 14.0);
  g_autofree char *first_dump = sw_handout_dump (first);
  g_autofree char *second_dump = sw_handout_dump (second);
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) first_pdf = sw_handout_to_pdf (first, &error);
  g_autoptr (GBytes) second_pdf = sw_handout_to_pdf (second, &error);
  g_autoptr (GBytes) third_pdf = sw_handout_to_pdf (first, &error);

  g_assert_no_error (error);
  g_assert_cmpstr (first_dump, ==, second_dump);
  g_assert_true (g_bytes_equal (first_pdf, second_pdf));
  g_assert_true (g_bytes_equal (first_pdf, third_pdf));
}

/* A handout made after another one takes over what was measured, and is the same as one made from nothing; also
 * when paper, text size, layout or the programme are other ones. */
static void
test_after_another (void)
{
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
  g_autoptr (SwHandout) shown = lay_out (programme, SW_PAPER_A4, 14.0);
  SwDose dose = *sw_item_get_dose (g_ptr_array_index (items, 0));

  for (int i = 0; i < 8; i++)
    {
      g_autoptr (SwMeasured) before = sw_handout_dup_measured (shown);
      SwPaper paper = i == 3 ? SW_PAPER_LETTER : SW_PAPER_A4;
      double text_points = i >= 4 ? 18.0 : 14.0;
      SwLayout layout = i == 6 ? SW_LAYOUT_LARGE_PRINT : SW_LAYOUT_FULL;
      g_autoptr (SwHandout) anew = NULL;
      g_autoptr (SwHandout) after = NULL;
      g_autoptr (GError) error = NULL;
      g_autofree char *anew_dump = NULL;
      g_autofree char *after_dump = NULL;
      g_autoptr (GBytes) anew_pdf = NULL;
      g_autoptr (GBytes) after_pdf = NULL;
      SwHandoutOptions options;

      dose.reps_low = dose.reps_high = 21 + i;
      g_object_set (g_ptr_array_index (items, 0), "dose", &dose, NULL);
      sw_handout_options_init (&options, programme, DAY);
      options.paper = paper;
      options.text_points = text_points;
      options.layout = layout;
      anew = sw_handout_new (programme, &options, &error);
      g_assert_no_error (error);
      after = sw_handout_new_after (programme, &options, before, &error);
      g_assert_no_error (error);

      anew_dump = sw_handout_dump (anew);
      after_dump = sw_handout_dump (after);
      g_assert_cmpstr (after_dump, ==, anew_dump);
      anew_pdf = sw_handout_to_pdf (anew, &error);
      g_assert_no_error (error);
      after_pdf = sw_handout_to_pdf (after, &error);
      g_assert_no_error (error);
      g_assert_cmpuint (g_bytes_get_size (after_pdf), >, 1000);
      g_assert_cmpuint (g_bytes_get_size (anew_pdf), >, 1000);
      g_set_object (&shown, after);
    }
}

static char *
repeat (const char *text,
        guint       times)
{
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < times; i++)
    g_string_append (out, text);
  return g_string_free (out, FALSE);
}

/* Whatever is typed, however long, is on the paper, and the whole becomes a PDF. */
static void
test_absurd_texts (void)
{
  g_autofree char *words = repeat ("slowly and with care ", 400);
  g_autofree char *one_word = repeat ("Donau", 200);
  g_autofree char *lines = repeat ("one goal\n", 120);

  for (double points = 12.0; points <= 28.0; points += 16.0)
    {
      g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
      g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
      g_autoptr (SwHandout) handout = NULL;
      g_autoptr (GBytes) pdf = NULL;
      g_autoptr (GError) error = NULL;

      g_object_set (sw_programme_get_client (programme), "name", one_word, "goals", lines, NULL);
      g_object_set (programme, "title", words, NULL);
      for (guint i = 0; i < items->len; i++)
        g_object_set (g_ptr_array_index (items, i), "note", i % 2 == 0 ? words : one_word, NULL);

      handout = lay_out (programme, SW_PAPER_A4, points);
      assert_on_paper (handout);
      pdf = sw_handout_to_pdf (handout, &error);
      g_assert_no_error (error);
      g_assert_cmpuint (g_bytes_get_size (pdf), >, 10000);
    }
}

static void
test_empty_programme (void)
{
  g_autoptr (SwProgramme) programme = sw_programme_new (NULL);
  g_autoptr (SwHandout) handout = lay_out (programme, SW_PAPER_A4, 14.0);
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) pdf = sw_handout_to_pdf (handout, &error);
  g_autofree char *dump = sw_handout_dump (handout);

  g_assert_no_error (error);
  g_assert_nonnull (pdf);
  g_assert_nonnull (strstr (dump, "Stop and get help"));
  g_assert_nonnull (strstr (dump, "your local emergency number"));
}

static void
test_unknown_language (void)
{
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autoptr (GError) error = NULL;
  SwHandoutOptions options;

  sw_handout_options_init (&options, programme, DAY);
  options.language = "tlh";
  g_assert_null (sw_handout_new (programme, &options, &error));
  g_assert_error (error, SW_PHRASES_ERROR, SW_PHRASES_ERROR_LANGUAGE);
}

/* The fonts of the tests have Arabic letters, but no Chinese ones: better no page than one of empty boxes. */
static void
test_no_font (void)
{
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwHandout) arabic = NULL;
  SwHandoutOptions options;

  sw_handout_options_init (&options, programme, DAY);
  options.language = "ar";
  arabic = sw_handout_new (programme, &options, &error);
  g_assert_no_error (error);
  g_assert_nonnull (arabic);

  options.language = "zh";
  g_assert_null (sw_handout_new (programme, &options, &error));
  g_assert_error (error, SW_HANDOUT_ERROR, SW_HANDOUT_ERROR_FONT);
}

static char *
dump_with_figure (SwFigureMotion motion,
                  SwFigureBreath breath)
{
  g_autoptr (SwFigureSpec) spec = handout_sample_new_figure (motion, breath);
  g_autoptr (SwProgramme) programme = handout_sample_new (spec);
  g_autoptr (SwHandout) handout = NULL;

  handout = lay_out (programme, SW_PAPER_A4, 14.0);
  return sw_handout_dump (handout);
}

/* Marks are in the key when a picture has them, and only then. */
static void
test_key (void)
{
  g_autofree char *plain = dump_with_figure (SW_FIGURE_MOTION_STILL, SW_FIGURE_BREATH_NONE);
  g_autofree char *press = dump_with_figure (SW_FIGURE_MOTION_PRESS, SW_FIGURE_BREATH_NONE);
  g_autofree char *breath = dump_with_figure (SW_FIGURE_MOTION_STILL, SW_FIGURE_BREATH_IN);

  g_assert_null (strstr (plain, "key-"));
  g_assert_nonnull (strstr (press, "key-press"));
  g_assert_null (strstr (press, "key-arrow"));
  g_assert_null (strstr (press, "key-breath"));
  g_assert_nonnull (strstr (breath, "key-breath"));
  g_assert_null (strstr (breath, "key-press"));
}

/* What every handout must carry, whoever it is for. */
static void
test_safety (void)
{
  static const char *const wanted[] = {
    "Stop and get help", "chest pain", "out of breath", "dizzy", "pounding heartbeat", "numbness, pins and needles",
    "bladder or bowel", "pop with swelling", "swollen calf", "drooping face", "cold sweat", "If an exercise hurts",
    "Call 112 now", "01632 960123", "advice of your clinician and surgeon", "do not replace it",
    "Take care every time", "Do this next to a counter",
  };
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autoptr (SwHandout) handout = lay_out (programme, SW_PAPER_A4, 14.0);
  g_autofree char *dump = sw_handout_dump (handout);

  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    if (strstr (dump, wanted[i]) == NULL)
      {
        g_test_message ("not on the pages: %s", wanted[i]);
        g_test_fail ();
      }
  g_assert_null (strstr (dump, "maternity"));

  g_object_set (sw_programme_get_client (programme), "precautions", SW_SET (SW_PRECAUTION_PREGNANCY), NULL);
  g_clear_object (&handout);
  g_clear_pointer (&dump, g_free);
  handout = lay_out (programme, SW_PAPER_A4, 14.0);
  dump = sw_handout_dump (handout);
  g_assert_nonnull (strstr (dump, "maternity"));
}

/* The shipped sample with every exercise on one side; what the pictures say, one after the other. */
static char *
tell_pictures (SwSide side)
{
  g_autofree char *path = sw_data_path ("samples", "sample.setwright", NULL);
  g_autoptr (SwProgrammeFile) file = sw_programme_file_new (path);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwProgramme) programme = sw_programme_file_load (file, &error);
  g_autoptr (GPtrArray) items = NULL;
  g_autoptr (SwHandout) handout = NULL;
  g_autofree char *dump = NULL;
  g_auto (GStrv) lines = NULL;
  GString *told = g_string_new (NULL);

  g_assert_no_error (error);
  items = sw_programme_dup_items (programme);
  for (guint i = 0; i < items->len; i++)
    {
      SwItem *item = g_ptr_array_index (items, i);
      SwDose dose = *sw_item_get_dose (item);

      dose.side = side;
      g_object_set (item, "dose", &dose, NULL);
    }

  handout = lay_out (programme, SW_PAPER_A4, 14.0);
  dump = sw_handout_dump (handout);
  lines = g_strsplit (dump, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    if (g_str_has_prefix (lines[i], "figure") || strstr (lines[i], "side shown") != NULL)
      g_string_append_printf (told, "%s\n", strchr (lines[i], '"'));
  return g_string_free (told, FALSE);
}

static void
test_working_side (void)
{
  g_autofree char *right = tell_pictures (SW_SIDE_RIGHT);
  g_autofree char *left = tell_pictures (SW_SIDE_LEFT);

  g_assert_nonnull (strstr (right, "Right knee straightens"));
  g_assert_null (strstr (right, "Left knee straightens"));
  g_assert_nonnull (strstr (left, "Left knee straightens"));
  g_assert_null (strstr (left, "Right knee straightens"));

  /* On one leg the side that works is not the one that moves. */
  g_assert_nonnull (strstr (right, "Right side shown. The right leg moves."));
  g_assert_nonnull (strstr (right, "Right side shown. The left leg moves."));
  g_assert_null (strstr (right, "Left side shown"));
  g_assert_nonnull (strstr (left, "Left side shown. The left leg moves."));
  g_assert_nonnull (strstr (left, "Left side shown. The right leg moves."));
  g_assert_null (strstr (left, "Right side shown"));
}

static SwProgramme *
make_case_programme (GKeyFile *file)
{
  int n = g_key_file_get_integer (file, "case", "exercises", NULL);

  return n > 0 ? handout_sample_new_long ((guint) n, NULL) : handout_sample_new (NULL);
}

static void
test_case (gconstpointer data)
{
  const char *path = data;
  g_autoptr (GKeyFile) file = g_key_file_new ();
  g_autofree char *stem = g_strndup (path, strlen (path) - strlen (".ini"));
  g_autofree char *expected_path = g_strconcat (stem, ".txt", NULL);
  g_autofree char *expected = NULL;
  g_autofree char *dump = NULL;
  g_autofree char *paper = NULL;
  g_autoptr (SwProgramme) programme = NULL;
  g_autoptr (SwHandout) handout = NULL;

  g_assert_true (g_key_file_load_from_file (file, path, G_KEY_FILE_NONE, NULL));
  paper = g_key_file_get_string (file, "case", "paper", NULL);
  programme = make_case_programme (file);
  handout = lay_out (programme, g_strcmp0 (paper, "letter") == 0 ? SW_PAPER_LETTER : SW_PAPER_A4,
                     g_key_file_get_double (file, "case", "text-points", NULL));
  dump = sw_handout_dump (handout);
  if (regenerate)
    g_assert_true (g_file_set_contents (expected_path, dump, -1, NULL));

  g_assert_true (g_file_get_contents (expected_path, &expected, NULL, NULL));
  g_assert_cmpstr (dump, ==, expected);
}

static void
add_cases (void)
{
  g_autoptr (GDir) dir = g_dir_open (SW_TEST_DIR "/cases", 0, NULL);

  g_assert_nonnull (dir);
  for (const char *name = g_dir_read_name (dir); name != NULL; name = g_dir_read_name (dir))
    {
      g_autofree char *test = NULL;

      if (!g_str_has_suffix (name, ".ini"))
        continue;
      test = g_strconcat ("/handout/case/", name, NULL);
      g_test_add_data_func_full (test, g_build_filename (SW_TEST_DIR, "cases", name, NULL), test_case, g_free);
    }
}

int
main (int   argc,
      char *argv[])
{
  regenerate = argc > 1 && g_str_equal (argv[argc - 1], "--regenerate");
  if (regenerate)
    argc--;
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/handout/on-paper", test_on_paper);
  g_test_add_func ("/handout/paper-sizes", test_paper_sizes);
  g_test_add_func ("/handout/items-in-order", test_items_in_order);
  g_test_add_func ("/handout/same-again", test_same_again);
  g_test_add_func ("/handout/after-another", test_after_another);
  g_test_add_func ("/handout/absurd-texts", test_absurd_texts);
  g_test_add_func ("/handout/empty-programme", test_empty_programme);
  g_test_add_func ("/handout/unknown-language", test_unknown_language);
  g_test_add_func ("/handout/no-font", test_no_font);
  g_test_add_func ("/handout/key", test_key);
  g_test_add_func ("/handout/safety", test_safety);
  g_test_add_func ("/handout/working-side", test_working_side);
  add_cases ();
  return g_test_run ();
}
