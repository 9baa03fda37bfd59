/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The dose: ranges, equality, the line in both directions. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "sw-dose.h"
#include "sw-units.h"

/* A dose from a line that must be readable. */
static SwDose
read_line (const char *line)
{
  g_autoptr (GError) error = NULL;
  SwDose dose;

  if (!sw_dose_from_line (line, NULL, &dose, &error))
    g_error ("“%s”: %s", line, error->message);

  return dose;
}

/* Reads a line tolerantly written and compares with the line the program would write. */
static void
assert_reads_as (const char *written,
                 const char *canonical)
{
  SwDose dose = read_line (written);
  g_autofree char *line = sw_dose_to_line (&dose);

  g_assert_cmpstr (line, ==, canonical);
}

static void
assert_refused (const char *line,
                int         code,
                const char *quoted)
{
  g_autoptr (GError) error = NULL;
  SwDose dose, before;

  sw_dose_init (&dose);
  dose.sets = 7;
  before = dose;
  if (sw_dose_from_line (line, NULL, &dose, &error))
    g_error ("“%s” was read", line);

  g_assert_error (error, SW_DOSE_ERROR, code);
  if (strstr (error->message, quoted) == NULL)
    g_error ("“%s” is not named in “%s”", quoted, error->message);
  g_assert_true (sw_dose_equal (&dose, &before));
}

static void
test_neutral (void)
{
  SwDose dose;

  sw_dose_init (&dose);
  g_assert_true (sw_dose_check (&dose, NULL));
  g_assert_cmpint (dose.sets, ==, 1);
  g_assert_cmpint (dose.reps_low, ==, 10);
  g_assert_cmpint (dose.reps_high, ==, 10);
  g_assert_cmpint (dose.side, ==, SW_SIDE_BOTH);
  g_assert_cmpint (dose.directions, ==, 1);
  g_assert_cmpint (dose.times_a_day, ==, 1);
  g_assert_cmpint (dose.pain_limit, ==, -1);
  g_assert_false (dose.tempo.set);
}

static void
test_read (void)
{
  SwDose dose = read_line ("3 x 8-12, hold 5 s, tempo 2-1-X-0, 2.5 kg, each side, 2 directions, +1 set left, "
                           "rest 60 s, 5 days a week, 2 times a day, effort 6, pain 3");

  g_assert_cmpint (dose.sets, ==, 3);
  g_assert_cmpint (dose.reps_low, ==, 8);
  g_assert_cmpint (dose.reps_high, ==, 12);
  g_assert_cmpint (dose.hold_s, ==, 5);
  g_assert_true (dose.tempo.set);
  g_assert_cmpint (dose.tempo.lower_s, ==, 2);
  g_assert_cmpint (dose.tempo.low_pause_s, ==, 1);
  g_assert_cmpint (dose.tempo.lift_s, ==, -1);
  g_assert_cmpint (dose.tempo.top_pause_s, ==, 0);
  g_assert_cmpint (dose.load.unit, ==, SW_LOAD_KG);
  g_assert_cmpfloat (dose.load.value, ==, 2.5);
  g_assert_cmpint (dose.side, ==, SW_SIDE_EACH);
  g_assert_cmpint (dose.directions, ==, 2);
  g_assert_cmpint (dose.extra_sets, ==, 1);
  g_assert_cmpint (dose.extra_side, ==, SW_BODY_SIDE_LEFT);
  g_assert_cmpint (dose.rest_s, ==, 60);
  g_assert_cmpint (dose.days_a_week, ==, 5);
  g_assert_cmpint (dose.times_a_day, ==, 2);
  g_assert_cmpint (dose.effort_limit, ==, 6);
  g_assert_cmpint (dose.pain_limit, ==, 3);
}

static void
test_tolerant (void)
{
  static const struct { const char *written, *canonical; } cases[] = {
    { "3x12", "3 x 12" },
    { "3 × 12", "3 x 12" },
    { "3 X 12", "3 x 12" },
    { "3*12", "3 x 12" },
    { "3 sets of 12", "3 x 12" },
    { "3 sets of 12 repetitions", "3 x 12" },
    { "three sets of ten", "3 x 10" },
    { "3 sets, 12 reps", "3 x 12" },
    { "12 reps, 3 sets", "3 x 12" },
    { "3 x 8-12", "3 x 8-12" },
    { "3 x 8–12", "3 x 8-12" },
    { "3 x 8 to 12 reps", "3 x 8-12" },
    { "3 x 30 s", "3 x hold 30 s" },
    { "3 x hold 30 s", "3 x hold 30 s" },
    { "3 x hold for 30 seconds", "3 x hold 30 s" },
    { "3 x 1 min hold", "3 x hold 60 s" },
    { "hold 30 s x 3", "3 x hold 30 s" },
    { "30 s hold x 3, right", "3 x hold 30 s, right" },
    { "3x12 @ 2kg", "3 x 12, 2 kg" },
    { "3x12 R, +1 set L", "3 x 12, right, +1 set left" },
    { "3x10 3x/wk", "3 x 10, 3 days a week" },
    { "3x12 hold 5s", "3 x 12, hold 5 s" },
    { "3 x 12, 5 s hold", "3 x 12, hold 5 s" },
    { "3 x 12, 5 lb", "3 x 12, 5 lb" },
    { "3 x 12, 5 pounds", "3 x 12, 5 lb" },
    { "3 x 12, 2,5 kg", "3 x 12, 2.5 kg" },
    { "3x12,5 kg", "3 x 12, 5 kg" },
    { "3 x 12, rest 60,2 kg", "3 x 12, 2 kg, rest 60 s" },
    { "3 x 12 with 2 kg", "3 x 12, 2 kg" },
    { "3 x 12, 20 newton", "3 x 12, 20 N" },
    { "3 x 12, bodyweight", "3 x 12" },
    { "3 x 12 each side", "3 x 12, each side" },
    { "3 x 12 per leg", "3 x 12, each side" },
    { "3 x 12 / side", "3 x 12, each side" },
    { "3 x 12, both sides", "3 x 12" },
    { "3 x 12, alternating sides", "3 x 12, alternating" },
    { "3 x 12, right leg only", "3 x 12, right" },
    { "3 x 12 left", "3 x 12, left" },
    { "3 x 12, tempo 2-0-2", "3 x 12, tempo 2-0-2-0" },
    { "3 x 12, tempo 202", "3 x 12, tempo 2-0-2-0" },
    { "3 x 12, tempo 30X1", "3 x 12, tempo 3-0-X-1" },
    { "3 x 12, 2-0-2-0", "3 x 12, tempo 2-0-2-0" },
    { "3 x 12, tempo 2/0/2/0", "3 x 12, tempo 2-0-2-0" },
    { "3 x 12, rest 60", "3 x 12, rest 60 s" },
    { "3 x 12, rest 1 min", "3 x 12, rest 60 s" },
    { "3 x 12, rest 1.5 min", "3 x 12, rest 90 s" },
    { "3 x 12, rest 1:30", "3 x 12, rest 90 s" },
    { "3 x 12, 60 s rest", "3 x 12, rest 60 s" },
    { "3 x 12, rest 60 s between sets", "3 x 12, rest 60 s" },
    { "3 x 12, no rest", "3 x 12" },
    { "3 x 12, 2 directions", "3 x 12, 2 directions" },
    { "3 x 12, two ways", "3 x 12, 2 directions" },
    { "3 x 12, +1 set left", "3 x 12, +1 set left" },
    { "3 x 12, 2 extra sets on the right side", "3 x 12, +2 sets right" },
    { "3 x 12, 1 more set for the left leg", "3 x 12, +1 set left" },
    { "3 x 12, extra set left", "3 x 12, +1 set left" },
    { "3 x 12, 5 days a week", "3 x 12, 5 days a week" },
    { "3 x 12, 5 days per week", "3 x 12, 5 days a week" },
    { "3 x 12, 3 times a week", "3 x 12, 3 days a week" },
    { "3 x 12, 3x/week", "3 x 12, 3 days a week" },
    { "3 x 12, daily", "3 x 12, 7 days a week" },
    { "3 x 12, every day", "3 x 12, 7 days a week" },
    { "3 x 12, once a week", "3 x 12, 1 day a week" },
    { "3 x 12, 2 times a day", "3 x 12, 2 times a day" },
    { "3 x 12, twice a day", "3 x 12, 2 times a day" },
    { "3 x 12, 2x a day", "3 x 12, 2 times a day" },
    { "3 x 12, 2 times daily", "3 x 12, 2 times a day" },
    { "3 x 12, effort 6", "3 x 12, effort 6" },
    { "3 x 12, effort up to 6/10", "3 x 12, effort 6" },
    { "3 x 12, effort at most 6 out of 10", "3 x 12, effort 6" },
    { "3 x 12, pain ≤ 3", "3 x 12, pain 3" },
    { "3 x 12, no pain", "3 x 12, pain 0" },
    { "  3 x 12 ; HOLD 5 S. ", "3 x 12, hold 5 s" },
    { "3 x 12 hold 5 s 2 kg each side rest 60 s", "3 x 12, hold 5 s, 2 kg, each side, rest 60 s" },
    { "each side, rest 60 s, 3 x 12, 2 kg, hold 5 s", "3 x 12, hold 5 s, 2 kg, each side, rest 60 s" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    assert_reads_as (cases[i].written, cases[i].canonical);
}

static void
test_refused (void)
{
  assert_refused ("", SW_DOSE_ERROR_SYNTAX, "empty");
  assert_refused ("3 x", SW_DOSE_ERROR_SYNTAX, "3 x 12");
  assert_refused ("3 x 12, hop", SW_DOSE_ERROR_SYNTAX, "“hop”");
  assert_refused ("3 x 12, rest soon", SW_DOSE_ERROR_SYNTAX, "rest 60 s");
  assert_refused ("3 x 12, 5", SW_DOSE_ERROR_SYNTAX, "“5”");
  assert_refused ("3 x 12, hold 5 kg s", SW_DOSE_ERROR_SYNTAX, "kg");
  assert_refused ("3 x 12, tempo 2-0", SW_DOSE_ERROR_SYNTAX, "tempo 2-0-2-0");
  assert_refused ("3 x 12, +1 set", SW_DOSE_ERROR_SYNTAX, "+1 set left");
  assert_refused ("3 x 12, rest 60 s, rest 90 s", SW_DOSE_ERROR_SYNTAX, "rest 90 s");
  assert_refused ("3 x 12, every other day", SW_DOSE_ERROR_SYNTAX, "every other day");
  assert_refused ("3 x 12, hold 30 s x 3", SW_DOSE_ERROR_SYNTAX, "twice");
  assert_refused ("3 x 12, 4 x 10", SW_DOSE_ERROR_SYNTAX, "twice");
  assert_refused ("3 x 12, pain 3 of 7", SW_DOSE_ERROR_SYNTAX, "pain");
  assert_refused ("3 x \xff", SW_DOSE_ERROR_SYNTAX, "understood");
  assert_refused ("3 x 0", SW_DOSE_ERROR_RANGE, "no repetitions and no hold");
  assert_refused ("3 x hold 0 s", SW_DOSE_ERROR_RANGE, "no repetitions and no hold");
  assert_refused ("3 x 0, hold 0 s, each side", SW_DOSE_ERROR_RANGE, "3 x hold 30 s");
  assert_refused ("0 x 12", SW_DOSE_ERROR_RANGE, "1 to 20");
  assert_refused ("3 x 12000000000", SW_DOSE_ERROR_RANGE, "0 to 200");
  assert_refused ("3 x 12-8", SW_DOSE_ERROR_RANGE, "12 to 200");
  assert_refused ("3 x 12, hold 11 min", SW_DOSE_ERROR_RANGE, "0 to 600");
  assert_refused ("3 x 12, 501 kg", SW_DOSE_ERROR_RANGE, "500");
  assert_refused ("3 x 12, -5 kg", SW_DOSE_ERROR_SYNTAX, "-5 kg");
  assert_refused ("3 x 12, 8 days a week", SW_DOSE_ERROR_RANGE, "0 to 7");
  assert_refused ("3 x 12, effort 11", SW_DOSE_ERROR_RANGE, "0 to 10");
}

static void
test_defaults (void)
{
  SwDose defaults = read_line ("4 x 6-8, rest 90 s, 5 kg");
  SwDose dose;
  g_autofree char *line = NULL;

  g_assert_true (sw_dose_from_line ("hold 5 s", &defaults, &dose, NULL));
  line = sw_dose_to_line (&dose);
  g_assert_cmpstr (line, ==, "4 x 6-8, hold 5 s");
}

static SwDose
random_dose (GRand *rand)
{
  static const double max_load[] = { 0.0, 500.0, 1100.0, 5000.0 };
  SwDose dose;

  sw_dose_init (&dose);
  dose.sets = g_rand_int_range (rand, 1, 21);
  dose.reps_low = g_rand_int_range (rand, 0, 201);
  dose.reps_high = dose.reps_low == 0 ? 0
                   : g_rand_boolean (rand) ? dose.reps_low : g_rand_int_range (rand, dose.reps_low, 201);
  dose.hold_s = dose.reps_high > 0 && g_rand_boolean (rand) ? 0 : g_rand_int_range (rand, 1, 601);
  if (g_rand_boolean (rand))
    dose.tempo = (SwTempo) { TRUE, g_rand_int_range (rand, 0, 61), g_rand_int_range (rand, 0, 61),
                             g_rand_int_range (rand, -1, 61), g_rand_int_range (rand, 0, 61) };
  dose.load.unit = g_rand_int_range (rand, 0, 4);
  dose.load.value = dose.load.unit == SW_LOAD_NONE ? 0.0
                    : g_rand_double_range (rand, 0.0, max_load[dose.load.unit]);
  dose.rest_s = g_rand_boolean (rand) ? 0 : g_rand_int_range (rand, 0, 901);
  dose.side = g_rand_int_range (rand, 0, 5);
  dose.directions = g_rand_int_range (rand, 1, 9);
  dose.extra_sets = g_rand_boolean (rand) ? 0 : g_rand_int_range (rand, 1, 11);
  dose.extra_side = dose.extra_sets == 0 ? SW_BODY_SIDE_NONE : g_rand_int_range (rand, 1, 3);
  dose.days_a_week = g_rand_int_range (rand, 0, 8);
  dose.times_a_day = g_rand_int_range (rand, 1, 11);
  dose.effort_limit = g_rand_int_range (rand, 0, 11);
  dose.pain_limit = g_rand_int_range (rand, -1, 11);
  return dose;
}

/* Every valid dose that asks for something comes back from its own line, in whatever locale. */
static void
test_round_trip (void)
{
  guint32 seed = g_random_int ();
  g_autoptr (GRand) rand = g_rand_new_with_seed (seed);

  g_test_message ("seed %u", seed);
  for (int i = 0; i < 20000; i++)
    {
      SwDose dose = random_dose (rand);
      g_autofree char *line = sw_dose_to_line (&dose);
      g_autoptr (GError) error = NULL;
      SwDose read;

      g_assert_true (sw_dose_check (&dose, NULL));
      if (!sw_dose_from_line (line, NULL, &read, &error))
        g_error ("seed %u: “%s”: %s", seed, line, error->message);
      if (!sw_dose_equal (&dose, &read))
        g_error ("seed %u: “%s” came back as another dose", seed, line);
    }
}

/* Whatever is typed: never a crash, and either a dose in range or an error. */
static void
test_garbage (void)
{
  static const char * const pieces[] = {
    "3", "x", "12", "hold", "tempo", "2-0-2", "-", "kg", "rest", ",", " ", "each", "side", "left", "+", "1:30",
    "a", "day", "week", "/", "effort", "pain", "×", "–", "ä", ".", "2,5", "extra", "set", "of", "no", "twice",
  };
  guint32 seed = g_random_int ();
  g_autoptr (GRand) rand = g_rand_new_with_seed (seed);
  int n_read = 0;

  g_test_message ("seed %u", seed);
  for (int i = 0; i < 20000; i++)
    {
      g_autoptr (GString) line = g_string_new (NULL);
      g_autoptr (GError) error = NULL;
      SwDose dose;

      for (int n = g_rand_int_range (rand, 0, 9); n > 0; n--)
        {
          g_string_append (line, pieces[g_rand_int_range (rand, 0, G_N_ELEMENTS (pieces))]);
          if (g_rand_boolean (rand))
            g_string_append_c (line, ' ');
        }
      if (sw_dose_from_line (line->str, NULL, &dose, &error))
        {
          n_read++;
          g_assert_no_error (error);
          g_assert_true (sw_dose_check (&dose, NULL));
        }
      else
        g_assert_nonnull (error);
    }
  g_assert_cmpint (n_read, >, 0);
}

static void
test_tempo (void)
{
  SwTempo tempo;
  g_autofree char *text = NULL;

  g_assert_true (sw_tempo_from_string ("3-1-X-2", &tempo));
  text = sw_tempo_to_string (&tempo);
  g_assert_cmpstr (text, ==, "3-1-X-2");
  g_assert_true (sw_tempo_from_string ("", &tempo));
  g_assert_false (tempo.set);
  g_assert_true (sw_tempo_from_string (" 2 - 0 - 2 ", &tempo));
  g_assert_cmpint (tempo.top_pause_s, ==, 0);
  g_assert_false (sw_tempo_from_string ("2-0", &tempo));
  g_assert_false (sw_tempo_from_string ("2-0-2-0-1", &tempo));
  g_assert_false (sw_tempo_from_string ("61-0-2-0", &tempo));
  g_assert_false (sw_tempo_from_string ("X-0-2-0", &tempo));
}

static void
test_ranges (void)
{
  g_autoptr (GError) error = NULL;
  SwDose dose = read_line ("3 x 12");

  dose.load = (SwLoad) { SW_LOAD_NONE, 3.0 };
  g_assert_false (sw_dose_check (&dose, &error));
  g_assert_error (error, SW_DOSE_ERROR, SW_DOSE_ERROR_RANGE);
  dose.load = (SwLoad) { SW_LOAD_KG, (double) NAN };
  g_assert_false (sw_dose_check (&dose, NULL));
  dose.load = (SwLoad) { SW_LOAD_KG, 500.0 };
  g_assert_true (sw_dose_check (&dose, NULL));
  dose.extra_side = SW_BODY_SIDE_LEFT;
  g_assert_false (sw_dose_check (&dose, NULL));
  dose.extra_sets = 1;
  g_assert_true (sw_dose_check (&dose, NULL));
  dose.reps_low = 0;
  g_assert_false (sw_dose_check (&dose, NULL));
  dose.reps_high = 0;
  g_assert_true (sw_dose_check (&dose, NULL));
}

/* 1 lb = 0.45359237 kg exactly (international yard and pound agreement, 1959); a kilogram weighs 9.80665 N
 * at standard gravity (3rd CGPM, 1901). */
static void
test_load (void)
{
  g_assert_cmpfloat_with_epsilon (sw_load_to_kg ((SwLoad) { SW_LOAD_LB, 1.0 }), 0.45359237, 1e-15);
  g_assert_cmpfloat_with_epsilon (sw_load_to_kg ((SwLoad) { SW_LOAD_LB, 100.0 }), 45.359237, 1e-12);
  g_assert_cmpfloat (sw_load_to_kg ((SwLoad) { SW_LOAD_KG, 2.5 }), ==, 2.5);
  g_assert_cmpfloat_with_epsilon (sw_load_to_kg ((SwLoad) { SW_LOAD_NEWTON, 9.80665 }), 1.0, 1e-15);
  g_assert_cmpfloat (sw_load_to_kg ((SwLoad) { SW_LOAD_NONE, 0.0 }), ==, 0.0);
}

static void
test_sets_for (void)
{
  SwDose dose = read_line ("3 x 12, each side, +2 sets left");

  g_assert_cmpint (sw_dose_get_sets_for (&dose, SW_BODY_SIDE_LEFT), ==, 5);
  g_assert_cmpint (sw_dose_get_sets_for (&dose, SW_BODY_SIDE_RIGHT), ==, 3);
  g_assert_cmpint (sw_dose_get_sets_for (&dose, SW_BODY_SIDE_NONE), ==, 3);
  dose = read_line ("3 x 12, right");
  g_assert_cmpint (sw_dose_get_sets_for (&dose, SW_BODY_SIDE_LEFT), ==, 0);
  g_assert_cmpint (sw_dose_get_sets_for (&dose, SW_BODY_SIDE_RIGHT), ==, 3);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/model/dose/neutral", test_neutral);
  g_test_add_func ("/model/dose/read", test_read);
  g_test_add_func ("/model/dose/tolerant", test_tolerant);
  g_test_add_func ("/model/dose/refused", test_refused);
  g_test_add_func ("/model/dose/defaults", test_defaults);
  g_test_add_func ("/model/dose/round-trip", test_round_trip);
  g_test_add_func ("/model/dose/garbage", test_garbage);
  g_test_add_func ("/model/dose/tempo", test_tempo);
  g_test_add_func ("/model/dose/ranges", test_ranges);
  g_test_add_func ("/model/dose/load", test_load);
  g_test_add_func ("/model/dose/sets-for", test_sets_for);

  return g_test_run ();
}
