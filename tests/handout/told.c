/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * That the pages tell how much, how often and when to stop as the programme means it, wherever an item stands. */
#include "config.h"

#include <string.h>

#include "handout-sample.h"
#include "sw-handout.h"

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
tell (SwProgramme *programme,
      SwLayout     layout)
{
  g_autoptr (SwHandout) handout = NULL;
  g_autoptr (GError) error = NULL;
  SwHandoutOptions options;

  sw_handout_options_init (&options, programme, DAY);
  options.layout = layout;
  options.parts = SW_PAGE_PARTS_USUAL;
  handout = sw_handout_new (programme, &options, &error);
  g_assert_no_error (error);
  return sw_handout_dump (handout);
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

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/told/times-a-day-of-session", test_times_a_day_of_session);
  g_test_add_func ("/told/days-a-week-on-sheet", test_days_a_week_on_sheet);
  return g_test_run ();
}
