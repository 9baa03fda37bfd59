/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sets a week for each muscle and side, and the numbers as JSON, against a week counted by hand. */
#include "config.h"

#include <string.h>

#include <json-glib/json-glib.h>

#include "sample.h"
#include "sw-balance.h"
#include "sw-numbers.h"
#include "sw-volume.h"

/* Mondays, Wednesdays, Fridays: heel raises of each side with an extra set left, 3 and 4 sets on 3 days, are 9
 * and 12; squats on 5 days twice a day, 2 sets, are 20 and 20; in a circuit of 2 rounds bridges, 1 set on 3
 * days, are 6 and 6 for two muscles, one of which the squats work too. */
static SwProgramme *
make_programme (void)
{
  SwProgramme *programme = sw_programme_new ("test");
  g_autoptr (SwSession) session = sw_session_new ("Day", SW_SET (SW_DAY_MONDAY) | SW_SET (SW_DAY_WEDNESDAY)
                                                         | SW_SET (SW_DAY_FRIDAY));
  SwSection *section = sample_section (session, SW_SECTION_MAIN);
  g_autoptr (SwExercise) raise = NULL;
  g_autoptr (SwExercise) squat = NULL;
  g_autoptr (SwExercise) bridge = NULL;
  g_autoptr (SwItem) member = NULL;
  SwItem *circuit = sw_item_new (SW_ITEM_CIRCUIT, "c");
  SwExerciseFacts facts;

  sample_facts_init (&facts, "raise");
  facts.muscles = SW_SET (SW_MUSCLE_CALF);
  facts.aims = SW_SET (SW_AIM_STRENGTH);
  facts.position = SW_POSITION_STANDING;
  g_assert_true (sw_dose_from_line ("3 x 8-12, tempo 2-0-2, 10 lb, each side, +1 set left, rest 60 s",
                                    NULL, &facts.dose, NULL));
  raise = sample_exercise_from (&facts, "Raise");
  facts.id = (char *) "squat";
  facts.muscles = SW_SET (SW_MUSCLE_QUADRICEPS) | SW_SET (SW_MUSCLE_GLUTEALS);
  g_assert_true (sw_dose_from_line ("2 x 10, 5 days a week, 2 times a day", NULL, &facts.dose, NULL));
  squat = sample_exercise_from (&facts, "Squat");
  facts.id = (char *) "bridge";
  facts.muscles = SW_SET (SW_MUSCLE_GLUTEALS) | SW_SET (SW_MUSCLE_HAMSTRINGS);
  facts.aims = SW_SET (SW_AIM_MOBILITY);
  facts.position = SW_POSITION_ON_BACK;
  g_assert_true (sw_dose_from_line ("1 x 10", NULL, &facts.dose, NULL));
  bridge = sample_exercise_from (&facts, "Bridge");

  g_list_store_append (sw_programme_get_sessions (programme), session);
  sample_append (section, sw_item_new_for_exercise (raise, "i1"));
  sample_append (section, sw_item_new_for_exercise (squat, "i2"));
  member = sw_item_new_for_exercise (bridge, "i3");
  g_list_store_append (sw_item_get_items (circuit), member);
  g_object_set (circuit, "rounds", 2, NULL);
  sample_append (section, circuit);
  return programme;
}

static void
test_week (void)
{
  static const SwVolume wanted[] = {
    { SW_MUSCLE_GLUTEALS, 26.0, 26.0, 20.0, 20.0 },
    { SW_MUSCLE_QUADRICEPS, 20.0, 20.0, 20.0, 20.0 },
    { SW_MUSCLE_CALF, 12.0, 9.0, 12.0, 9.0 },
    { SW_MUSCLE_HAMSTRINGS, 6.0, 6.0, 0.0, 0.0 },
  };
  g_autoptr (SwProgramme) programme = make_programme ();
  g_autoptr (GArray) volumes = sw_volume_of_week (programme);

  g_assert_cmpuint (volumes->len, ==, G_N_ELEMENTS (wanted));
  for (guint i = 0; i < volumes->len; i++)
    {
      const SwVolume *volume = &g_array_index (volumes, SwVolume, i);

      g_assert_cmpint (volume->muscle, ==, wanted[i].muscle);
      g_assert_cmpfloat (volume->sets_left, ==, wanted[i].sets_left);
      g_assert_cmpfloat (volume->sets_right, ==, wanted[i].sets_right);
      g_assert_cmpfloat (volume->strength_left, ==, wanted[i].strength_left);
      g_assert_cmpfloat (volume->strength_right, ==, wanted[i].strength_right);
    }
}

/* Each part by its key and sets. */
static void
expect_parts (SwProgramme *programme,
              SwBalance    balance,
              const char  *wanted)
{
  g_autoptr (GArray) parts = sw_balance_of_week (programme, balance);
  g_autoptr (GString) found = g_string_new (NULL);

  for (guint i = 0; i < parts->len; i++)
    {
      const SwBalancePart *part = &g_array_index (parts, SwBalancePart, i);

      g_string_append_printf (found, "%s%s %g", i > 0 ? ", " : "", part->key, part->sets);
      g_assert_cmpstr (part->name, !=, "");
    }
  g_assert_cmpstr (found->str, ==, wanted);
  g_assert_cmpstr (sw_balance_get_name (balance), !=, "");
  g_assert_cmpstr (sw_balance_get_rule (balance), !=, "");
}

/* The same week: raises (back) count the 12 of the side with more; squats are quadriceps in front and gluteals behind, 10
 * each; bridges gluteals and hamstrings, 6 behind. Sides: 9, 20 and 6 right, 12, 20 and 6 left. None has a figure. */
static void
test_balance (void)
{
  g_autoptr (SwProgramme) programme = make_programme ();

  expect_parts (programme, SW_BALANCE_SIDES, "right 35, left 38");
  expect_parts (programme, SW_BALANCE_PUSH_PULL, "push 0, pull 0");
  expect_parts (programme, SW_BALANCE_FRONT_BACK, "front 10, back 28, flanks 0");
  expect_parts (programme, SW_BALANCE_PLANES, "still 38");
  expect_parts (programme, SW_BALANCE_POSITIONS, "standing 32, on-back 6");
}

static double
number_at (JsonNode   *root,
           const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) result = json_path_query (path, root, &error);
  JsonArray *hits;

  g_assert_no_error (error);
  hits = json_node_get_array (result);
  if (json_array_get_length (hits) != 1)
    g_error ("%s: %u hits", path, json_array_get_length (hits));
  return json_array_get_double_element (hits, 0);
}

static void
test_numbers (void)
{
  g_autoptr (SwProgramme) programme = make_programme ();
  g_autofree char *text = NULL;
  g_autofree char *again = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) root = NULL;

  g_object_set (sw_programme_get_client (programme), "name", "Ada Secret", NULL);
  text = sw_numbers_to_json (programme, NULL, "2026-11-25");
  again = sw_numbers_to_json (programme, NULL, "2026-11-25");
  g_assert_cmpstr (text, ==, again);
  g_assert_null (strstr (text, "Secret"));
  root = json_from_string (text, &error);
  g_assert_no_error (error);

  g_assert_cmpfloat (number_at (root, "$.sessions[0]['days-a-week']"), ==, 3.0);
  g_assert_cmpfloat (number_at (root, "$.sessions[0].items[0]['sets-left']"), ==, 4.0);
  g_assert_cmpfloat (number_at (root, "$.sessions[0].items[0]['sets-a-week-left']"), ==, 12.0);
  g_assert_cmpfloat (number_at (root, "$.sessions[0].items[0]['repetitions-high-a-week-left']"), ==, 144.0);
  g_assert_cmpfloat (number_at (root, "$.sessions[0].items[1]['sets-a-week-right']"), ==, 20.0);
  g_assert_cmpfloat (number_at (root, "$.sessions[0].items[3]['sets-a-week-right']"), ==, 6.0);
  g_assert_cmpfloat (number_at (root, "$.week.muscles[0]['sets-left']"), ==, 26.0);
  g_assert_cmpfloat (number_at (root, "$.week.muscles[0]['strength-sets-left']"), ==, 20.0);
  g_assert_cmpfloat (number_at (root, "$.week['front-back']['back-sets']"), ==, 28.0);

  /* 10 lb = 4.5359237 kg by the exact definition. */
  g_assert_cmpfloat_with_epsilon (number_at (root, "$.sessions[0].items[0]['load-kilograms']"), 4.5359237, 1e-12);
  g_assert_cmpfloat_with_epsilon (number_at (root, "$.sessions[0].items[0]['load-pounds']"), 10.0, 1e-12);

  /* Left 4 sets, right 3, of 32 to 48 s, 60 s rest: 7 x 32 + 3 x 28 at best; 192 + 180 + 144 + 120 at worst. */
  g_assert_cmpfloat (number_at (root, "$.sessions[0].items[0]['length-low-seconds']"), ==, 308.0);
  g_assert_cmpfloat (number_at (root, "$.sessions[0].items[0]['length-high-seconds']"), ==, 636.0);
  g_assert_cmpfloat (number_at (root, "$.week['sessions-low-seconds']"), ==,
                     3.0 * number_at (root, "$.sessions[0]['length-low-seconds']"));
}

/* Nothing chosen yet: nothing counted, valid JSON. */
static void
test_empty (void)
{
  g_autoptr (SwProgramme) programme = sw_programme_new_standard ();
  g_autoptr (GArray) volumes = sw_volume_of_week (programme);
  g_autofree char *text = sw_numbers_to_json (programme, NULL, "2026-11-25");
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) root = json_from_string (text, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (volumes->len, ==, 0);
  g_assert_cmpfloat (number_at (root, "$.sessions[0]['length-high-seconds']"), ==, 0.0);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/reckon/volume/week", test_week);
  g_test_add_func ("/reckon/volume/balance", test_balance);
  g_test_add_func ("/reckon/volume/numbers", test_numbers);
  g_test_add_func ("/reckon/volume/empty", test_empty);

  return g_test_run ();
}
