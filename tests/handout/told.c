/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * That the pages tell how much, how often and when to stop as the programme means it, wherever an item stands. */
#include "config.h"

#include <string.h>

#include "handout-sample.h"
#include "sw-data-dir.h"
#include "sw-handout.h"
#include "sw-programme-file.h"

#define DAY "2026-11-20"

static SwItem *
find (SwProgramme *programme,
      const char  *id)
{
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);

  for (guint i = 0; i < items->len; i++)
    if (g_str_equal (sw_item_get_id (items->pdata[i]), id))
      return items->pdata[i];

  g_error ("no item “%s”", id);
}

static char *
tell_parts (SwProgramme *programme,
            SwLayout     layout,
            SwSet        parts)
{
  g_autoptr (SwHandout) handout = NULL;
  g_autoptr (GError) error = NULL;
  SwHandoutOptions options;

  sw_handout_options_init (&options, programme, DAY);
  options.layout = layout;
  options.parts = parts;
  handout = sw_handout_new (programme, &options, &error);
  g_assert_no_error (error);
  return sw_handout_dump (handout);
}

static char *
tell (SwProgramme *programme,
      SwLayout     layout)
{
  return tell_parts (programme, layout, SW_PAGE_PARTS_USUAL);
}

static void
set_times_a_day (SwProgramme *programme,
                 const char  *id,
                 int          times)
{
  SwDose dose = *sw_item_get_dose (find (programme, id));

  dose.times_a_day = times;
  g_object_set (find (programme, id), "dose", &dose, NULL);
}

/* "3 times a day" is said of the session only when all of it is done so often, its circuits too. */
static void
test_times_a_day_of_session (void)
{
  static const char *const ids[] = { "i1", "i2", "i3", "i4", "i5", "i8", "i9" };
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autofree char *alike = NULL;
  g_autofree char *other = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    set_times_a_day (programme, ids[i], 3);
  alike = tell (programme, SW_LAYOUT_FULL);
  g_assert_nonnull (strstr (alike, "Friday, 3\u00a0times a\u00a0day. About"));

  set_times_a_day (programme, "i9", 1);
  other = tell (programme, SW_LAYOUT_FULL);
  g_assert_null (strstr (other, "Friday, 3\u00a0times a\u00a0day"));
  g_assert_nonnull (strstr (other, "Friday. About"));
}

/* The tick sheet's part of a dump. */
static const char *
find_sheet (const char *dump)
{
  const char *sheet = strstr (dump, "Your tick sheet");

  g_assert_nonnull (sheet);
  return sheet;
}

/* The sheet has a box on each of the session's days: what is done on fewer of them says so in its row. */
static void
test_days_a_week_on_sheet (void)
{
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  SwItem *item = find (programme, "i4");

  for (int days = 0; days <= 7; days++)
    for (int every_day = 0; every_day < 2; every_day++)
      {
        g_autoptr (SwSession) session
            = g_list_model_get_item (G_LIST_MODEL (sw_programme_get_sessions (programme)), 0);
        SwDose dose = *sw_item_get_dose (item);
        g_autofree char *dump = NULL;

        dose.days_a_week = days;
        g_object_set (item, "dose", &dose, NULL);
        g_object_set (session, "days", every_day ? 0 : SW_SET (SW_DAY_MONDAY) | SW_SET (SW_DAY_THURSDAY), NULL);
        dump = tell (programme, SW_LAYOUT_FULL);
        g_assert_cmpint (strstr (find_sheet (dump), "Do it on") != NULL, ==, days > 0 && days < (every_day ? 7 : 2));
      }
}

/* An instruction for what to heed, longer than any name: its end counts as much as its beginning. */
#define LONG_TITLE                                                                                                     \
  "Sit on the chair with the back against the wall, breathe out slowly, and do not stand up again before the "         \
  "dizziness has gone"

/* On the pages, joined over the lines that a title takes. */
static gboolean
has_words (const char *dump,
           const char *words)
{
  g_auto (GStrv) parts = g_strsplit_set (dump, "|\n", -1);
  g_autofree char *joined = g_strjoinv (" ", parts);

  return strstr (joined, words) != NULL;
}

static void
test_whole_titles (void)
{
  static const SwLayout layouts[] = { SW_LAYOUT_FULL, SW_LAYOUT_COMPACT, SW_LAYOUT_LARGE_PRINT };
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autoptr (SwSession) session = g_list_model_get_item (G_LIST_MODEL (sw_programme_get_sessions (programme)), 0);
  g_autoptr (SwSection) section = g_list_model_get_item (G_LIST_MODEL (sw_session_get_sections (session)), 1);

  g_object_set (session, "title", LONG_TITLE " one", NULL);
  g_object_set (section, "title", LONG_TITLE " two", NULL);
  g_object_set (find (programme, "i6"), "title", LONG_TITLE " three", NULL);
  g_object_set (find (programme, "i7"), "title", LONG_TITLE " four", NULL);
  for (guint i = 0; i < G_N_ELEMENTS (layouts); i++)
    {
      g_autofree char *dump = tell (programme, layouts[i]);

      g_assert_true (has_words (dump, "has gone one"));
      g_assert_true (has_words (dump, "has gone two"));
      g_assert_true (has_words (dump, "has gone three: 90"));
      g_assert_true (has_words (dump, "has gone four"));
    }
}

/* Of a circuit that holds nothing yet, or nothing but rests, the rounds are told. */
static void
test_empty_circuit (void)
{
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autofree char *dump = NULL;

  g_list_store_remove_all (sw_item_get_items (find (programme, "i7")));
  dump = tell (programme, SW_LAYOUT_FULL);
  g_assert_nonnull (strstr (dump, "\"2\u00a0rounds\""));
  g_assert_null (strstr (dump, "these 0"));
}

/* The page for the wall is what a client looks at: it keeps within what the therapist has set. */
static void
test_wall_tells_limits (void)
{
  static const char *const wanted[] = {
    "Up and down, 2\u00a0rounds  Rest 60\u00a0seconds between rounds.",
    "Hold each for 4\u00a0seconds.",
    "Use 2.5\u00a0kg",
    "Do it on 2\u00a0days a\u00a0week.",
    "Do it 2\u00a0times a\u00a0day.",
    "Effort:\u00a06\u00a0at most.",
    "Pain:\u00a03\u00a0at most.",
    "Take care every time",
    "Stop and get help",
  };
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  SwDose dose = *sw_item_get_dose (find (programme, "i1"));
  g_autofree char *dump = NULL;

  dose.hold_s = 4;
  dose.days_a_week = 2;
  g_object_set (find (programme, "i1"), "dose", &dose, NULL);
  dump = tell (programme, SW_LAYOUT_SUMMARY);
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    if (!has_words (dump, wanted[i]))
      {
        g_test_message ("not on the wall: %s", wanted[i]);
        g_test_fail ();
      }
}

static guint
count (const char *dump,
       const char *words)
{
  guint n = 0;

  for (const char *at = strstr (dump, words); at != NULL; at = strstr (at + 1, words))
    n++;
  return n;
}

/* All of the shipped sample fits one page, at the sizes most clients get. */
static void
test_wall_is_one_page (void)
{
  static const struct
  {
    double text_points;
    gboolean landscape;
  } cases[] = { { 12.0, FALSE }, { 14.0, FALSE }, { 12.0, TRUE }, { 14.0, TRUE } };
  g_autofree char *path = sw_data_path ("samples", "sample.setwright", NULL);
  g_autoptr (SwProgrammeFile) file = sw_programme_file_new (path);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwProgramme) programme = sw_programme_file_load (file, &error);

  g_assert_no_error (error);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (SwHandout) handout = NULL;
      SwHandoutOptions options;

      sw_handout_options_init (&options, programme, DAY);
      options.layout = SW_LAYOUT_SUMMARY;
      options.parts = SW_PAGE_PARTS_USUAL;
      options.text_points = cases[i].text_points;
      options.landscape = cases[i].landscape;
      handout = sw_handout_new (programme, &options, &error);
      g_assert_no_error (error);
      g_assert_cmpint (sw_handout_get_n_pages (handout), ==, 1);
    }
}

/* A limit that all exercises share is said once for all of them, and for each as soon as one has another. */
static void
test_wall_common_limits (void)
{
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
  g_autofree char *alike = NULL;
  g_autofree char *other = NULL;
  guint n = 0;

  for (guint i = 0; i < items->len; i++)
    {
      SwDose dose = *sw_item_get_dose (items->pdata[i]);

      dose.pain_limit = 4;
      n += sw_item_get_kind (items->pdata[i]) == SW_ITEM_EXERCISE;
      g_object_set (items->pdata[i], "dose", &dose, NULL);
    }
  alike = tell (programme, SW_LAYOUT_SUMMARY);
  g_assert_cmpuint (count (alike, "Pain:\u00a04\u00a0at most."), ==, 1);
  g_assert_nonnull (strstr (alike, "minutes. Pain:\u00a04\u00a0at most."));

  for (guint i = 0; i < items->len; i++)
    if (g_str_equal (sw_item_get_id (items->pdata[i]), "i9"))
      {
        SwDose dose = *sw_item_get_dose (items->pdata[i]);

        dose.pain_limit = -1;
        g_object_set (items->pdata[i], "dose", &dose, NULL);
      }
  other = tell (programme, SW_LAYOUT_SUMMARY);
  g_assert_cmpuint (count (other, "Pain:\u00a04\u00a0at most."), ==, n - 1);
}

/* Whoever is pregnant has signs of her own to stop for, however short the pages are. */
static void
test_maternity_signs (void)
{
  static const SwLayout layouts[] = { SW_LAYOUT_FULL, SW_LAYOUT_COMPACT, SW_LAYOUT_SUMMARY, SW_LAYOUT_LARGE_PRINT };
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autofree char *plain = tell (programme, SW_LAYOUT_SUMMARY);

  g_assert_null (strstr (plain, "maternity"));
  g_object_set (sw_programme_get_client (programme), "precautions", SW_SET (SW_PRECAUTION_PREGNANCY), NULL);
  for (guint i = 0; i < G_N_ELEMENTS (layouts); i++)
    for (int whole = 0; whole < 2; whole++)
      {
        g_autofree char *dump = tell_parts (programme, layouts[i], whole ? SW_PAGE_PARTS_USUAL : 0);

        g_assert_true (has_words (dump, "maternity team"));
        g_assert_true (has_words (dump, "bleeding or loss of fluid"));
        g_assert_true (has_words (dump, "your baby moving less"));
      }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/told/times-a-day-of-session", test_times_a_day_of_session);
  g_test_add_func ("/told/days-a-week-on-sheet", test_days_a_week_on_sheet);
  g_test_add_func ("/told/whole-titles", test_whole_titles);
  g_test_add_func ("/told/empty-circuit", test_empty_circuit);
  g_test_add_func ("/told/wall-tells-limits", test_wall_tells_limits);
  g_test_add_func ("/told/wall-is-one-page", test_wall_is_one_page);
  g_test_add_func ("/told/wall-common-limits", test_wall_common_limits);
  g_test_add_func ("/told/maternity-signs", test_maternity_signs);
  return g_test_run ();
}
