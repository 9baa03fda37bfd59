/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How times come about: the parts add up to what is told everywhere else. */
#include "config.h"

#include <string.h>

#include "sample.h"
#include "sw-time-working.h"
#include "sw-time.h"

static void
assert_span (SwSpan span,
             SwSpan wanted)
{
  g_assert_cmpfloat_with_epsilon (span.low_s, wanted.low_s, 1e-6);
  g_assert_cmpfloat_with_epsilon (span.high_s, wanted.high_s, 1e-6);
}

/* The parts that the working lists. */
static void
assert_adds_up (const SwClock *clock,
                SwClinic      *clinic)
{
  SwSpan sum = sw_span_add (clock->exercises, sw_span_add (clock->rests, clock->round_rests));
  SwSpan exercises = { 0.0, 0.0 };

  for (int i = 0; i < SW_N_TRANSITIONS; i++)
    sum = sw_span_add (sum, sw_clock_get_transition (clock, (SwTransition) i, clinic));
  assert_span (sum, clock->total);
  for (guint i = 0; i < clock->entries->len; i++)
    {
      const SwClockEntry *entry = &g_array_index (clock->entries, SwClockEntry, i);

      if (sw_item_get_exercise (entry->item) != NULL)
        exercises = sw_span_add (exercises, sw_span_times (entry->length, entry->circuit != NULL
                                                                          ? sw_item_get_rounds (entry->circuit) : 1));
    }
  assert_span (exercises, clock->exercises);
}

/* A working as text: a line for each step, its source in brackets. */
static char *
working_to_text (SwWorking *working)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < sw_working_get_n_lines (working); i++)
    {
      const SwWorkingLine *line = sw_working_get_line (working, i);

      g_string_append_printf (text, "%s: %s", line->words, line->figures);
      if (line->source != NULL)
        g_string_append_printf (text, " (%s)", line->source);
      g_string_append_c (text, '\n');
    }
  return g_string_free (text, FALSE);
}

static SwDose
random_dose (void)
{
  static const SwSide sides[] = { SW_SIDE_BOTH, SW_SIDE_RIGHT, SW_SIDE_LEFT, SW_SIDE_EACH, SW_SIDE_ALTERNATING };
  SwDose dose;

  sw_dose_init (&dose);
  dose.sets = g_test_rand_int_range (1, 6);
  dose.reps_low = g_test_rand_int_range (0, 13);
  dose.reps_high = dose.reps_low == 0 ? 0 : dose.reps_low + g_test_rand_int_range (0, 5);
  dose.hold_s = g_test_rand_int_range (dose.reps_low == 0 ? 1 : 0, 30);
  dose.rest_s = g_test_rand_int_range (0, 90);
  dose.side = sides[g_test_rand_int_range (0, G_N_ELEMENTS (sides))];
  dose.directions = g_test_rand_int_range (1, 4);
  if (dose.reps_low > 0 && g_test_rand_bit ())
    dose.tempo = (SwTempo){ TRUE, 2, 1, g_test_rand_bit () ? -1 : 3, 0 };
  if (dose.side == SW_SIDE_EACH && g_test_rand_bit ())
    {
      dose.extra_sets = g_test_rand_int_range (1, 3);
      dose.extra_side = g_test_rand_bit () ? SW_BODY_SIDE_LEFT : SW_BODY_SIDE_RIGHT;
    }
  return dose;
}

static SwItem *
random_item (guint i)
{
  g_autofree char *id = g_strdup_printf ("i%u", i);
  g_autoptr (SwExercise) exercise = NULL;
  SwExerciseFacts facts;

  sample_facts_init (&facts, id);
  facts.position = (SwPosition) g_test_rand_int_range (0, SW_POSITION_FACE_DOWN + 1);
  facts.equipment = g_test_rand_bit () ? SW_SET (SW_EQUIPMENT_MAT) : 0;
  facts.pace_s = g_test_rand_int_range (2, 9);
  facts.dose = random_dose ();
  exercise = sample_exercise_from (&facts, id);
  return sw_item_new_for_exercise (exercise, id);
}

/* The parts are all of the time, in sessions of all that there is. */
static void
test_adds_up (void)
{
  g_autoptr (SwClinic) clinic = sw_clinic_new ();

  for (int n = 0; n < 200; n++)
    {
      g_autoptr (SwSession) session = sw_session_new ("Morning", 0);
      SwSection *section = sample_section (session, SW_SECTION_MAIN);
      g_autoptr (SwClock) clock = NULL;

      for (guint i = 0; i < 5; i++)
        {
          SwItem *rest = sw_item_new (SW_ITEM_REST, "r");
          SwItem *circuit = sw_item_new (SW_ITEM_CIRCUIT, "c");
          g_autoptr (SwItem) member = random_item (100 + i);
          g_autoptr (SwItem) other = random_item (200 + i);

          g_object_set (rest, "rest-seconds", 30, NULL);
          g_object_set (circuit, "rounds", g_test_rand_int_range (1, 5), "rest-seconds", g_test_rand_int_range (0, 90),
                        NULL);
          g_list_store_append (sw_item_get_items (circuit), member);
          g_list_store_append (sw_item_get_items (circuit), other);
          sample_append (section, random_item (i));
          sample_append (section, rest);
          sample_append (section, sw_item_new (SW_ITEM_SELF_CHECK, "k"));
          sample_append (section, circuit);
        }
      clock = sw_clock_new (session, clinic);
      assert_adds_up (clock, clinic);
    }
}

/* Each kind of dose, word for word. */
static void
test_doses (void)
{
  const struct
  {
    const char *dose;
    const char *working;
  } cases[] = {
    { "2 x 8-10, tempo 2-1-1-0, each side, +1 set right, rest 60 s",
      "A repetition by its tempo: lowering, pause, lifting, pause: 2 + 1 + 1 + 0 = 4 s\n"
      "A set: 8–10 × 4 s = 32–40 s\n"
      "All sets: 3 right, 2 left: 5 × 32–40 s = 2:40–3:20\n"
      "Rests between the sets of a side: at best the other side works meanwhile, at most one side comes after the "
      "other: 0:56–3:00 (Common practice)\n"
      "Together: 3:36–6:20 min\n" },
    { "3 x 12, hold 2 s, 2 directions, rest 45 s, 2 times a day",
      "A repetition at its usual pace: 4 s (From the exercise)\n"
      "Each repetition is held: 2 s\n"
      "A set, in 2 directions: 2 × 12 × 6 s = 2:24\n"
      "All sets: 3 × 2:24 = 7:12\n"
      "Rests between sets: 2 × 45 s = 1:30\n"
      "Together, each time of the day: 8:42 min\n" },
    { "2 x hold 20 s, alternating",
      "The hold: 20 s\n"
      "All sets: 2 right, 2 left: 4 × 20 s = 1:20\n"
      "Together: 1:20 min\n" },
  };
  g_autoptr (SwClinic) clinic = sw_clinic_new ();

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (SwItem) item = sample_item ("Step up", cases[i].dose);
      g_autoptr (SwWorking) working = sw_time_working_of_item (item, clinic);
      g_autofree char *text = working_to_text (working);

      g_assert_cmpstr (text, ==, cases[i].working);
    }
}

/* A session with all that can take time in it. */
static void
test_session (void)
{
  g_autoptr (SwClinic) clinic = sw_clinic_new ();
  g_autoptr (SwSession) session = sw_session_new ("Morning", 0);
  SwSection *section = sample_section (session, SW_SECTION_MAIN);
  SwItem *rest = sw_item_new (SW_ITEM_REST, "r");
  SwItem *circuit = sw_item_new (SW_ITEM_CIRCUIT, "c");
  g_autoptr (SwItem) member = sample_item ("Heel raise", "1 x 10");
  g_autoptr (SwWorking) working = NULL;
  g_autoptr (SwWorking) own = NULL;
  g_autofree char *text = NULL;
  g_autofree char *own_text = NULL;

  g_object_set (rest, "rest-seconds", 90, NULL);
  g_object_set (circuit, "rounds", 2, "rest-seconds", 60, NULL);
  g_list_store_append (sw_item_get_items (circuit), member);
  sample_append (section, sample_item ("Step up", "1 x 8-10"));
  sample_append (section, rest);
  sample_append (section, circuit);
  sample_append (section, sw_item_new (SW_ITEM_SELF_CHECK, "k"));
  working = sw_time_working_of_session (session, clinic);
  text = working_to_text (working);
  g_assert_cmpstr (text, ==,
                   "Step up: 32–40 s\n"
                   "Heel raise: 2 × 40 s = 1:20\n"
                   "All exercises, with the rests between their sets: 1:52–2:00 min\n"
                   "Rests between exercises: 1:30\n"
                   "Rests between rounds; at best the way back is part of them: 0:55–1:00\n"
                   "Reading what comes next: 2 × 5–15 s = 10–30 s (Common practice: 30 to 60 s from one exercise to the "
                   "next, shared out)\n"
                   "Together: everything goes quickly, or nothing does: 4:27–5:00 min\n"
                   "Not counted: the self-checks, on the first day and before the next visit: 0:30–1:00 (Common "
                   "practice)\n");

  g_object_set (clinic, "card-high-seconds", 5, NULL);
  own = sw_time_working_of_item (circuit, clinic);
  own_text = working_to_text (own);
  g_assert_cmpstr (own_text, ==,
                   "Heel raise: 2 × 40 s = 1:20\n"
                   "All exercises, with the rests between their sets: 1:20 min\n"
                   "Rests between rounds; at best the way back is part of them: 0:55–1:00\n"
                   "Reading what comes next: 1 × 5 s = 5 s (The clinic's own figures)\n"
                   "Together: everything goes quickly, or nothing does: 2:20–2:25 min\n");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/reckon/working/adds-up", test_adds_up);
  g_test_add_func ("/reckon/working/doses", test_doses);
  g_test_add_func ("/reckon/working/session", test_session);

  return g_test_run ();
}
