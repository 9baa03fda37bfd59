/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Session time against times worked by hand: tests/reference/session-time.csv and what follows from it. */
#include "config.h"

#include <string.h>

#include "sample.h"
#include "sw-dose-time.h"
#include "sw-time.h"

static void
assert_span (SwSpan span,
             double low_s,
             double high_s)
{
  g_assert_cmpfloat (span.low_s, ==, low_s);
  g_assert_cmpfloat (span.high_s, ==, high_s);
}

static SwSpan
time_of_line (const char *line,
              double      pace_s)
{
  g_autoptr (GError) error = NULL;
  SwDose dose;

  if (!sw_dose_from_line (line, NULL, &dose, &error))
    g_error ("“%s”: %s", line, error->message);

  return sw_dose_time_of (&dose, pace_s).total;
}

/* Every row of the table: dose line, pace, low, high. */
static void
test_reference (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "session-time.csv", NULL);
  g_autofree char *text = NULL;
  g_auto (GStrv) lines = NULL;
  g_autoptr (GError) error = NULL;
  int n = 0;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  lines = g_strsplit (text, "\n", -1);
  for (guint i = 1; lines[i] != NULL; i++)
    {
      g_auto (GStrv) fields = g_strsplit (lines[i], ";", -1);
      SwSpan span;

      if (*lines[i] == '\0')
        continue;
      g_assert_cmpuint (g_strv_length (fields), ==, 6);
      span = time_of_line (fields[0], g_ascii_strtod (fields[1], NULL));
      g_test_message ("%s: %g to %g s", fields[0], span.low_s, span.high_s);
      assert_span (span, g_ascii_strtod (fields[2], NULL), g_ascii_strtod (fields[3], NULL));
      n++;
    }
  g_assert_cmpint (n, >=, 15);
}

/* Times a day, days, limits and load lengthen nothing. */
static void
test_does_not_lengthen (void)
{
  SwSpan plain = time_of_line ("3 x 12, rest 60 s", 4.0);

  assert_span (time_of_line ("3 x 12, rest 60 s, 3 times a day, 5 days a week, 5 kg, effort 6, pain 3", 4.0),
               plain.low_s, plain.high_s);
}

/* For all doses: never negative, low never above high, more of anything never takes less. */
static void
test_order (void)
{
  guint32 seed = g_random_int ();
  g_autoptr (GRand) rand = g_rand_new_with_seed (seed);

  g_test_message ("seed %u", seed);
  for (int i = 0; i < 20000; i++)
    {
      SwDose dose, more;
      SwSpan span, longer;
      double pace_s = g_rand_double_range (rand, 1.0, 60.0);

      sw_dose_init (&dose);
      dose.sets = g_rand_int_range (rand, 1, 20);
      dose.reps_low = g_rand_int_range (rand, 0, 30);
      dose.reps_high = dose.reps_low == 0 ? 0 : dose.reps_low + g_rand_int_range (rand, 0, 10);
      dose.hold_s = g_rand_int_range (rand, 0, 60);
      dose.rest_s = g_rand_int_range (rand, 0, 300);
      dose.side = g_rand_int_range (rand, 0, 5);
      dose.directions = g_rand_int_range (rand, 1, 8);
      dose.extra_sets = g_rand_int_range (rand, 0, 4);
      dose.extra_side = dose.extra_sets == 0 ? SW_BODY_SIDE_NONE : SW_BODY_SIDE_LEFT;
      g_assert_true (sw_dose_check (&dose, NULL));
      span = sw_dose_time_of (&dose, pace_s).total;
      g_assert_cmpfloat (span.low_s, >=, 0.0);
      g_assert_cmpfloat (span.low_s, <=, span.high_s + 1e-9);

      for (int what = 0; what < 4; what++)
        {
          more = dose;
          more.sets += what == 0;
          more.hold_s += what == 1;
          more.rest_s += what == 2;
          more.directions += what == 3;
          longer = sw_dose_time_of (&more, pace_s).total;
          g_assert_cmpfloat (longer.low_s, >=, span.low_s - 1e-9);
          g_assert_cmpfloat (longer.high_s, >=, span.high_s - 1e-9);
        }
    }
}

static SwItem *
item_in (const char *id,
         SwPosition  position,
         SwSet       equipment)
{
  g_autoptr (SwExercise) exercise = NULL;
  SwExerciseFacts facts;

  sample_facts_init (&facts, id);
  facts.position = position;
  facts.equipment = equipment;
  g_assert_true (sw_dose_from_line ("1 x 10, tempo 1-0-1-0", NULL, &facts.dose, NULL));
  exercise = sample_exercise_from (&facts, id);
  return sw_item_new_for_exercise (exercise, id);
}

/* Standing, standing with a band, sitting on a chair, on the back on a mat, and turned to the side there. */
static void
test_clock (void)
{
  g_autoptr (SwClinic) clinic = sw_clinic_new ();
  g_autoptr (SwSession) session = sw_session_new ("Morning", 0);
  SwSection *section = sample_section (session, SW_SECTION_MAIN);
  g_autoptr (SwClock) clock = NULL;
  const SwClockEntry *entries;
  double low_s, high_s;

  sample_append (section, item_in ("a", SW_POSITION_STANDING, 0));
  sample_append (section, item_in ("b", SW_POSITION_STANDING, SW_SET (SW_EQUIPMENT_BAND)));
  sample_append (section, item_in ("c", SW_POSITION_SITTING, SW_SET (SW_EQUIPMENT_CHAIR)));
  sample_append (section, item_in ("d", SW_POSITION_ON_BACK, SW_SET (SW_EQUIPMENT_MAT)));
  sample_append (section, item_in ("e", SW_POSITION_ON_SIDE, SW_SET (SW_EQUIPMENT_MAT)));

  clock = sw_clock_new (session, clinic);
  g_assert_cmpuint (clock->entries->len, ==, 5);
  entries = (const SwClockEntry *) (void *) clock->entries->data;
  assert_span (entries[0].start, 0.0, 0.0);
  assert_span (entries[0].change, 0.0, 0.0);
  assert_span (entries[0].length, 20.0, 20.0);
  g_assert_false (entries[0].moves);
  g_assert_false (entries[1].moves);
  g_assert_true (entries[2].moves);
  g_assert_true (entries[3].moves);
  g_assert_true (entries[4].moves);
  g_assert_cmpint (entries[3].position, ==, SW_POSITION_ON_BACK);
  g_assert_cmpint (clock->n_changes, ==, 3);

  /* Common practice: 30 to 60 s from one exercise to the next; the whole of it is moving to the floor with
   * something to fetch, and nothing takes longer. */
  assert_span (entries[3].change, 30.0, 60.0);
  low_s = high_s = 0.0;
  for (guint i = 0; i < clock->entries->len; i++)
    {
      g_assert_cmpfloat (entries[i].change.low_s, <=, 30.0);
      g_assert_cmpfloat (entries[i].change.high_s, <=, 60.0);
      low_s += entries[i].change.low_s;
      high_s += entries[i].change.high_s;
      assert_span (entries[i].start, low_s + 20.0 * i, high_s + 20.0 * i);
    }
  assert_span (clock->total, low_s + 100.0, high_s + 100.0);
  g_assert_cmpfloat (clock->change_s, ==, entries[2].change.high_s + entries[3].change.high_s + entries[4].change.high_s);
  g_assert_cmpfloat (entries[1].change.high_s, <, entries[3].change.high_s);
  g_assert_cmpfloat (entries[4].change.high_s, <, entries[3].change.high_s);
}

/* Two members of 20 s, three rounds, 60 s between rounds; the same position and no equipment: 5 to 15 s to
 * read a card. A round is 20 + (5..15) + 20; the way back runs with the rest at best and after it at worst. */
static void
test_circuit (void)
{
  g_autoptr (SwClinic) clinic = sw_clinic_new ();
  g_autoptr (SwSession) session = sw_session_new ("Morning", 0);
  SwSection *section = sample_section (session, SW_SECTION_MAIN);
  SwItem *circuit = sw_item_new (SW_ITEM_CIRCUIT, "c");
  g_autoptr (SwItem) first = item_in ("a", SW_POSITION_STANDING, 0);
  g_autoptr (SwItem) second = item_in ("b", SW_POSITION_STANDING, 0);
  g_autoptr (SwClock) clock = NULL;
  const SwClockEntry *entries;

  g_object_set (circuit, "rounds", 3, "rest-seconds", 60, NULL);
  g_list_store_append (sw_item_get_items (circuit), first);
  g_list_store_append (sw_item_get_items (circuit), second);
  sample_append (section, circuit);
  assert_span (sw_time_of_item (circuit, clinic), 3 * 45.0 + 2 * 60.0, 3 * 55.0 + 2 * 75.0);

  clock = sw_clock_new (session, clinic);
  entries = (const SwClockEntry *) (void *) clock->entries->data;
  g_assert_cmpuint (clock->entries->len, ==, 3);
  g_assert_true (entries[0].item == circuit);
  g_assert_null (entries[0].circuit);
  g_assert_true (entries[1].circuit == circuit);
  assert_span (entries[0].length, 255.0, 315.0);
  assert_span (entries[2].start, 25.0, 35.0);
  assert_span (clock->total, 255.0, 315.0);
  g_assert_cmpint (clock->n_changes, ==, 0);
}

/* Each round changes the position twice, the way back included. */
static void
test_circuit_changes (void)
{
  g_autoptr (SwClinic) clinic = sw_clinic_new ();
  g_autoptr (SwSession) session = sw_session_new ("Morning", 0);
  SwSection *section = sample_section (session, SW_SECTION_MAIN);
  SwItem *circuit = sw_item_new (SW_ITEM_CIRCUIT, "c");
  g_autoptr (SwItem) first = item_in ("a", SW_POSITION_STANDING, 0);
  g_autoptr (SwItem) second = item_in ("b", SW_POSITION_ON_BACK, 0);
  g_autoptr (SwClock) clock = NULL;

  g_object_set (circuit, "rounds", 3, NULL);
  g_list_store_append (sw_item_get_items (circuit), first);
  g_list_store_append (sw_item_get_items (circuit), second);
  sample_append (section, circuit);
  clock = sw_clock_new (session, clinic);
  g_assert_cmpint (clock->n_changes, ==, 5);
  g_assert_cmpfloat (clock->change_s, ==, 5 * 45.0);
}

static void
test_rest_and_empty (void)
{
  g_autoptr (SwClinic) clinic = sw_clinic_new ();
  g_autoptr (SwSession) session = sw_session_new ("Morning", 0);
  SwSection *section = sample_section (session, SW_SECTION_MAIN);
  g_autoptr (SwClock) empty = sw_clock_new (session, clinic);
  g_autoptr (SwClock) clock = NULL;
  SwItem *rest = sw_item_new (SW_ITEM_REST, "r");
  const SwClockEntry *entries;

  assert_span (empty->total, 0.0, 0.0);
  g_object_set (rest, "rest-seconds", 90, NULL);
  sample_append (section, item_in ("a", SW_POSITION_ON_SIDE, 0));
  sample_append (section, rest);
  sample_append (section, sw_item_new (SW_ITEM_CIRCUIT, "c"));
  clock = sw_clock_new (session, clinic);
  entries = (const SwClockEntry *) (void *) clock->entries->data;
  g_assert_cmpuint (clock->entries->len, ==, 3);
  g_assert_cmpint (entries[1].position, ==, SW_POSITION_ON_SIDE);
  g_assert_false (entries[1].moves);
  assert_span (clock->total, 110.0, 110.0);
}

/* Self-checks are done before visits only: what they take stands by itself, and the rest is as if they were not there. */
static void
test_checks_apart (void)
{
  g_autoptr (SwClinic) clinic = sw_clinic_new ();
  g_autoptr (SwSession) session = sw_session_new ("Morning", 0);
  SwSection *section = sample_section (session, SW_SECTION_MAIN);
  SwItem *rest = sw_item_new (SW_ITEM_REST, "r");
  SwItem *circuit = sw_item_new (SW_ITEM_CIRCUIT, "c");
  g_autoptr (SwItem) first = sw_item_new (SW_ITEM_SELF_CHECK, "k");
  g_autoptr (SwItem) inner = sw_item_new (SW_ITEM_SELF_CHECK, "i");
  g_autoptr (SwItem) member = item_in ("b", SW_POSITION_STANDING, 0);
  g_autoptr (SwClock) usual = NULL;
  g_autoptr (SwClock) checked = NULL;
  const SwClockEntry *entries;

  g_object_set (rest, "rest-seconds", 90, NULL);
  g_object_set (circuit, "rounds", 2, NULL);
  g_list_store_append (sw_item_get_items (circuit), member);
  sample_append (section, item_in ("a", SW_POSITION_ON_SIDE, 0));
  sample_append (section, rest);
  sample_append (section, circuit);
  usual = sw_clock_new (session, clinic);
  assert_span (usual->checks, 0.0, 0.0);

  g_list_store_insert (sw_section_get_items (section), 0, first);
  g_list_store_append (sw_item_get_items (circuit), inner);
  sample_append (section, sw_item_new (SW_ITEM_SELF_CHECK, "l"));
  checked = sw_clock_new (session, clinic);
  entries = (const SwClockEntry *) (void *) checked->entries->data;
  g_assert_cmpuint (checked->entries->len, ==, 7);
  g_assert_true (entries[0].apart);
  assert_span (entries[0].length, 30.0, 60.0);
  g_assert_false (entries[1].apart);
  assert_span (entries[1].start, 0.0, 0.0);
  g_assert_true (entries[2].item == rest);
  assert_span (entries[2].start, 20.0, 20.0);
  assert_span (checked->total, usual->total.low_s, usual->total.high_s);
  /* Two by themselves and one in each of two rounds. */
  assert_span (checked->checks, 120.0, 240.0);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/reckon/time/reference", test_reference);
  g_test_add_func ("/reckon/time/does-not-lengthen", test_does_not_lengthen);
  g_test_add_func ("/reckon/time/order", test_order);
  g_test_add_func ("/reckon/time/clock", test_clock);
  g_test_add_func ("/reckon/time/circuit", test_circuit);
  g_test_add_func ("/reckon/time/circuit-changes", test_circuit_changes);
  g_test_add_func ("/reckon/time/rest-and-empty", test_rest_and_empty);
  g_test_add_func ("/reckon/time/checks-apart", test_checks_apart);

  return g_test_run ();
}
