/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib.h>

#include "sw-dose.h"
#include "sw-labels.h"
#include "sw-review-words.h"

/* Every value of every vocabulary has a word that begins with a capital (units do not) and is no other's. */
static void
test_every_value (void)
{
  const GType types[] = {
    SW_TYPE_REGION, SW_TYPE_POSITION, SW_TYPE_EQUIPMENT, SW_TYPE_AIM, SW_TYPE_MUSCLE, SW_TYPE_SIDE,
    SW_TYPE_REVIEW_STATE,
    SW_TYPE_BODY_SIDE, SW_TYPE_DIRECTION_KIND, SW_TYPE_CAUTION, SW_TYPE_PRECAUTION, SW_TYPE_UNITS,
    SW_TYPE_PAPER, SW_TYPE_COMPANY, SW_TYPE_LAYOUT, SW_TYPE_PAGE_PART, SW_TYPE_SECTION_KIND,
    SW_TYPE_ITEM_KIND, SW_TYPE_MEASURE, SW_TYPE_BETTER, SW_TYPE_SETTLED, SW_TYPE_MAX_FORMULA,
    SW_TYPE_DAY, SW_TYPE_LIMIT_KIND, SW_TYPE_MOVEMENT, SW_TYPE_BEARING,
  };

  for (guint i = 0; i < G_N_ELEMENTS (types); i++)
    {
      g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

      for (int value = 0; value < sw_term_get_n_values (types[i]); value++)
        {
          const char *label = sw_label (types[i], value);

          g_assert_cmpstr (label, !=, "");
          g_assert_true (g_unichar_isupper (g_utf8_get_char (label)));
          g_assert_true (g_hash_table_add (seen, (gpointer) label));
        }
    }

  for (int unit = 0; unit < sw_term_get_n_values (SW_TYPE_LOAD_UNIT); unit++)
    g_assert_cmpstr (sw_label (SW_TYPE_LOAD_UNIT, unit), !=, "");
  g_assert_cmpstr (sw_label (SW_TYPE_LOAD_UNIT, SW_LOAD_KG), ==, "kg");
  g_assert_cmpstr (sw_label (SW_TYPE_SIDE, SW_SIDE_EACH), ==, "Each side");
}

static void
test_sets (void)
{
  g_autofree char *none = sw_label_set (SW_TYPE_EQUIPMENT, 0);
  g_autofree char *one = sw_label_set (SW_TYPE_PRECAUTION, SW_SET (SW_PRECAUTION_FALL_RISK));
  g_autofree char *more = sw_label_set (SW_TYPE_EQUIPMENT, SW_SET (SW_EQUIPMENT_TOWEL)
                                        | SW_SET (SW_EQUIPMENT_CHAIR) | SW_SET (SW_EQUIPMENT_FOAM_ROLLER));

  g_assert_cmpstr (none, ==, "");
  g_assert_cmpstr (one, ==, "Risk of falling");
  g_assert_cmpstr (more, ==, "Chair, towel, foam roller");
}

static void
test_days (void)
{
  for (int day = SW_DAY_MONDAY; day <= SW_DAY_SUNDAY; day++)
    g_assert_true (g_str_has_prefix (sw_label (SW_TYPE_DAY, day), sw_label_day_short ((SwDay) day)));
}

static void
test_durations (void)
{
  const struct
  {
    double low_s, high_s;
    const char *words;
  } cases[] = {
    { 0, 0, "0 s" },
    { 45, 45, "45 s" },
    { 40.4, 55.2, "40–55 s" },
    { 60, 89, "60–89 s" },
    { 75, 100, "1–2 min" },
    { 264, 264, "4 min" },
    { 295, 310, "5 min" },
    { 18 * 60, 21 * 60, "18–21 min" },
    { 3600, 3900, "60–65 min" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *words = sw_label_duration (cases[i].low_s, cases[i].high_s);

      g_assert_cmpstr (words, ==, cases[i].words);
    }
}

/* A session is told in minutes that hold it, as on the handout. */
static void
test_session (void)
{
  g_autofree char *minutes = sw_label_session ((SwSpan){ 1276.0, 1625.0 });
  g_autofree char *short_one = sw_label_session ((SwSpan){ 40.0, 80.0 });
  g_autofree char *hardly = sw_label_session ((SwSpan){ 50.0, 100.0 });

  g_assert_cmpstr (minutes, ==, "21–28 min");
  g_assert_cmpstr (short_one, ==, "40–80 s");
  g_assert_cmpstr (hardly, ==, "1–2 min");
}

static void
test_clock (void)
{
  const struct
  {
    double seconds;
    const char *words;
  } cases[] = {
    { 0, "0:00" }, { 9.4, "0:09" }, { 130, "2:10" }, { 599.6, "10:00" }, { 3599, "59:59" },
    { 3730, "1:02:10" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *words = sw_clock_to_words (cases[i].seconds);

      g_assert_cmpstr (words, ==, cases[i].words);
    }
}

static void
test_takes (void)
{
  g_autofree char *exact = sw_label_takes ((SwSpan){ 264.0, 264.3 });
  g_autofree char *range = sw_label_takes ((SwSpan){ 124.0, 140.0 });

  g_assert_cmpstr (exact, ==, "Takes 4:24 min");
  g_assert_cmpstr (range, ==, "Takes 2:04–2:20 min");
}

/* What is approved, or not stated, is not pointed out on a card; the details say all that is known. */
static void
test_review (void)
{
  const struct
  {
    gboolean stated;
    SwReviewState state;
    const char *due, *tag, *sentence;
  } cases[] = {
    { FALSE, SW_REVIEW_STATE_DRAFT, "2027-05-31", NULL, NULL },
    { TRUE, SW_REVIEW_STATE_DRAFT, "2027-05-31", "Draft", "Draft, to be reviewed by a clinician by 31 May 2027" },
    { TRUE, SW_REVIEW_STATE_DRAFT, "", "Draft", "Draft, not yet reviewed by a clinician" },
    { TRUE, SW_REVIEW_STATE_IN_REVIEW, "", "In review", "In review by a clinician" },
    { TRUE, SW_REVIEW_STATE_APPROVED, "2028-02-29", NULL,
      "Approved by a clinician, to be reviewed again by 29 February 2028" },
    { TRUE, SW_REVIEW_STATE_RETIRED, "", "Retired", "Retired: no longer recommended" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      SwExerciseFacts facts = { .has_review = cases[i].stated, .review = cases[i].state,
                                .review_due = (char *) cases[i].due };
      g_autofree char *sentence = sw_review_sentence (&facts);

      g_assert_cmpstr (sw_review_tag (&facts), ==, cases[i].tag);
      g_assert_cmpstr (sentence, ==, cases[i].sentence);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/labels/every-value", test_every_value);
  g_test_add_func ("/labels/sets", test_sets);
  g_test_add_func ("/labels/days", test_days);
  g_test_add_func ("/labels/durations", test_durations);
  g_test_add_func ("/labels/session", test_session);
  g_test_add_func ("/labels/clock", test_clock);
  g_test_add_func ("/labels/takes", test_takes);
  g_test_add_func ("/labels/review", test_review);

  return g_test_run ();
}
