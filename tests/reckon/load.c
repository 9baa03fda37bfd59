/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What could be moved once, efforts and starting loads, against tables that were not made here. */
#include "config.h"

#include <math.h>
#include <string.h>

#include <json-glib/json-glib.h>

#include "sample.h"
#include "sw-effort.h"
#include "sw-finding.h"
#include "sw-load-chart.h"
#include "sw-loads.h"
#include "sw-numbers.h"
#include "sw-one-max.h"
#include "sw-starting-load.h"

typedef void (*RowFunc) (char **cells);

static void
for_each_row (const char *name,
              guint       n_cells,
              guint       n_rows,
              RowFunc     check)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, name, NULL);
  g_autofree char *text = NULL;
  g_auto (GStrv) lines = NULL;
  guint n = 0;

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  lines = g_strsplit (text, "\n", -1);
  for (guint i = 1; lines[i] != NULL && *lines[i] != '\0'; i++)
    {
      g_auto (GStrv) cells = g_strsplit (lines[i], ";", (int) n_cells);

      g_assert_cmpuint (g_strv_length (cells), ==, n_cells);
      check (cells);
      n++;
    }
  g_assert_cmpuint (n, ==, n_rows);
}

static SwMaxFormula
find_formula (const char *name)
{
  static const char * const names[SW_N_MAX_FORMULAS]
    = { "Brzycki", "Epley", "Lander", "Lombardi", "Mayhew", "OConner", "Wathan" };

  for (int i = 0; i < SW_N_MAX_FORMULAS; i++)
    {
      if (strcmp (names[i], name) == 0)
        return (SwMaxFormula) i;
    }
  g_assert_not_reached ();
}

static void
check_one_max (char **cells)
{
  SwMaxFormula formula = find_formula (cells[0]);
  double load = g_ascii_strtod (cells[1], NULL);
  int repetitions = atoi (cells[2]);
  double one_max = sw_one_max_reckon (formula, load, repetitions);
  double low;
  double high;

  sw_one_max_get_spread (load, repetitions, &low, &high);
  g_assert_cmpfloat (low, <=, one_max);
  g_assert_cmpfloat (high, >=, one_max);
  g_assert_cmpfloat_with_epsilon (one_max * sw_one_max_get_percent (formula, repetitions) / 100.0, load, 1e-9);
  /* One repetition needs no formula. */
  g_assert_cmpfloat_with_epsilon (one_max, repetitions == 1 ? load : g_ascii_strtod (cells[3], NULL), 5e-5);
}

static void
test_one_max (void)
{
  for_each_row ("one-max.csv", 5, 70, check_one_max);

  g_assert_true (isnan (sw_one_max_reckon (SW_MAX_FORMULA_EPLEY, 20.0, 0)));
  g_assert_true (isnan (sw_one_max_reckon (SW_MAX_FORMULA_EPLEY, 20.0, SW_ONE_MAX_MOST_REPS + 1)));
  g_assert_true (isnan (sw_one_max_reckon (SW_MAX_FORMULA_EPLEY, 0.0, 5)));
  g_assert_true (isnan (sw_one_max_get_percent (SW_MAX_FORMULA_BRZYCKI, 37)));
}

/* More repetitions always mean a higher maximum and a lighter load, in every formula. */
static void
test_one_way (void)
{
  for (int formula = 0; formula < SW_N_MAX_FORMULAS; formula++)
    {
      for (int r = 2; r <= SW_ONE_MAX_MOST_REPS; r++)
        {
          g_assert_cmpfloat (sw_one_max_reckon ((SwMaxFormula) formula, 10.0, r), >,
                             sw_one_max_reckon ((SwMaxFormula) formula, 10.0, r - 1));
          g_assert_cmpfloat (sw_one_max_get_percent ((SwMaxFormula) formula, r), <,
                             sw_one_max_get_percent ((SwMaxFormula) formula, r - 1));
        }
    }
}

static void
check_percent (char **cells)
{
  int repetitions = atoi (cells[1]);

  g_assert_cmpfloat_with_epsilon (sw_load_chart_get_percent (repetitions), g_ascii_strtod (cells[2], NULL), 1e-9);
  if (repetitions == 1)
    return;
  g_assert_cmpfloat_with_epsilon (sw_one_max_get_percent (SW_MAX_FORMULA_EPLEY, repetitions),
                                  g_ascii_strtod (cells[3], NULL), 0.0501);
  g_assert_cmpfloat_with_epsilon (sw_one_max_get_percent (SW_MAX_FORMULA_BRZYCKI, repetitions),
                                  g_ascii_strtod (cells[4], NULL), 0.0501);
  g_assert_cmpfloat_with_epsilon (sw_one_max_get_percent (SW_MAX_FORMULA_WATHAN, repetitions),
                                  g_ascii_strtod (cells[5], NULL), 0.0501);
}

static void
test_chart (void)
{
  for_each_row ("percent-max.csv", 7, 13, check_percent);

  g_assert_cmpfloat_with_epsilon (sw_load_chart_get_percent (13.5), 66.0, 1e-9);
  g_assert_true (isnan (sw_load_chart_get_percent (0.5)));
  g_assert_true (isnan (sw_load_chart_get_percent (16.0)));
}

static void
check_effort (char **cells)
{
  g_assert_cmpint (sw_effort_get_reserve (atoi (cells[0])), ==, atoi (cells[1]));
}

static void
test_effort (void)
{
  for_each_row ("effort.csv", 3, 4, check_effort);

  g_assert_cmpint (sw_effort_get_reserve (5), ==, 5);
  g_assert_cmpint (sw_effort_get_reserve (4), ==, -1);
  g_assert_cmpint (sw_effort_get_reserve (11), ==, -1);
}

static void
test_loads (void)
{
  static const struct
  {
    const char *text;
    const char *understood; /* NULL: not */
  } cases[] = {
    { "", "" },
    { "1, 2.5, 5 kg", "1 kg, 2.5 kg, 5 kg" },
    { "5 lb and 2 kg", "2 kg, 5 lb" },
    { "3; 1", "1 kg, 3 kg" },
    { "2,5 kg", "2.5 kg" },
    { "40 N", "40 N" },
    { "a few", NULL },
    { "0 kg", NULL },
    { "600 kg", NULL },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GArray) loads = sw_loads_from_text (cases[i].text, SW_LOAD_KG);
      g_autofree char *text = loads != NULL ? sw_loads_to_text (loads) : NULL;

      g_assert_cmpstr (text, ==, cases[i].understood);
    }
}

/* 20 kg 8 times, after Brzycki: 20 * 36 / 29 = 24.828 kg once. 10 times with 3 left is 13 possible: 24 / 36 = 66.667 %,
 * that is 16.552 kg. */
static SwStartingLoadQuestion
usual_question (void)
{
  return (SwStartingLoadQuestion) {
    .tested = { SW_LOAD_KG, 20.0 },
    .tested_repetitions = 8,
    .repetitions = 10,
    .effort = 7,
    .formula = SW_MAX_FORMULA_BRZYCKI,
    .exercise_limit = { SW_LOAD_KG, 50.0 },
  };
}

static void
assert_load (const SwStartingLoadQuestion *question,
             const char                   *wanted)
{
  g_autoptr (SwStartingLoad) answer = sw_starting_load_new (question);
  g_autofree char *text = sw_load_to_text (answer->load);

  g_assert_cmpstr (text, ==, wanted);
  g_assert_true ((answer->refusal != NULL) == (*wanted == '\0'));
  if (*wanted == '\0')
    return;
  g_assert_cmpfloat (sw_load_to_kg (answer->load), <=, answer->wanted_kg);
  g_assert_cmpfloat (sw_load_to_kg (answer->load), <=, sw_load_to_kg (question->exercise_limit) + 1e-9);
  g_assert_cmpfloat (answer->low_kg, <=, answer->wanted_kg + 1e-9);
  g_assert_cmpfloat (answer->high_kg, >=, answer->wanted_kg - 1e-9);
}

static void
test_starting_load (void)
{
  SwStartingLoadQuestion question = usual_question ();
  g_autoptr (SwStartingLoad) answer = sw_starting_load_new (&question);
  g_autoptr (GArray) owned = sw_loads_from_text ("2, 5, 10 kg, 40 lb", SW_LOAD_KG);

  g_assert_cmpfloat_with_epsilon (answer->one_max_kg, 24.8276, 5e-5);
  g_assert_cmpfloat_with_epsilon (answer->one_max_low_kg, 24.0, 5e-5);
  g_assert_cmpfloat_with_epsilon (answer->one_max_high_kg, 25.5343, 5e-5);
  g_assert_cmpfloat_with_epsilon (answer->percent, 66.6667, 5e-5);
  g_assert_cmpfloat_with_epsilon (answer->wanted_kg, 16.5517, 5e-5);
  g_assert_true (answer->rough);
  assert_load (&question, "16.5 kg");

  question.units = SW_UNITS_LB;
  assert_load (&question, "36 lb");
  question.owned = owned;
  assert_load (&question, "10 kg");
  question.client_limit = (SwLoad) { SW_LOAD_LB, 12.0 };
  assert_load (&question, "5 kg");
  question.exercise_limit = (SwLoad) { SW_LOAD_KG, 2.0 };
  assert_load (&question, "2 kg");
  question.client_limit = (SwLoad) { SW_LOAD_KG, 1.0 };
  assert_load (&question, "");
}

/* 100 N as a greatest pull: 10.197 kg. 8 with 3 left is 11 possible: 26 / 36 = 72.222 %, that is 72.2 N. */
static void
test_dynamometer (void)
{
  SwStartingLoadQuestion question = usual_question ();

  question.tested = (SwLoad) { SW_LOAD_NEWTON, 100.0 };
  question.tested_repetitions = 0;
  question.repetitions = 8;
  assert_load (&question, "7 kg");
  question.exercise_limit = (SwLoad) { SW_LOAD_NEWTON, 200.0 };
  assert_load (&question, "70 N");
  question.exercise_limit = (SwLoad) { SW_LOAD_NEWTON, 40.0 };
  assert_load (&question, "40 N");
}

static void
test_bands (void)
{
  g_autoptr (GPtrArray) bands = sw_bands_from_text ("1: 15 N\n\nB 2: 15 N at 50 %, 25 N at 100 %\n3: 60 N at 100 %");
  g_autoptr (GPtrArray) none = sw_bands_from_text ("");
  SwStartingLoadQuestion question = usual_question ();
  g_autoptr (SwStartingLoad) answer = NULL;

  g_assert_cmpuint (bands->len, ==, 4);
  g_assert_cmpuint (none->len, ==, 0);
  g_assert_null (sw_bands_from_text ("red"));
  g_assert_null (sw_bands_from_text (": 15 N"));
  g_assert_null (sw_bands_from_text ("1: 15 kg"));
  g_assert_null (sw_bands_from_text ("1: 15 N at 500 %"));
  g_assert_null (sw_bands_from_text ("1: 15 N, and more"));
  g_assert_cmpstr (sw_bands_find_force (bands, 25.0)->name, ==, "B 2");
  g_assert_null (sw_bands_find_force (bands, 26.0));

  /* 72.2 N of 100: the 60 N band would do, but the exercise ends at 40 N. */
  question.tested = (SwLoad) { SW_LOAD_NEWTON, 100.0 };
  question.tested_repetitions = 0;
  question.repetitions = 8;
  question.exercise_limit = (SwLoad) { SW_LOAD_NEWTON, 40.0 };
  question.bands = bands;
  question.stretch_percent = 100;
  assert_load (&question, "25 N");
  answer = sw_starting_load_new (&question);
  g_assert_cmpstr (answer->band->name, ==, "B 2");
  question.exercise_limit.value = 100.0;
  assert_load (&question, "60 N");
  question.stretch_percent = 50;
  assert_load (&question, "15 N");
  question.stretch_percent = 75;
  assert_load (&question, "");
}

static gboolean
is_found (SwProgramme *programme,
          const char  *prefix,
          SwDose      *fixed)
{
  g_autoptr (GPtrArray) findings = sw_findings_collect (programme, NULL, "2026-11-25");

  for (guint i = 0; i < findings->len; i++)
    {
      const SwFinding *finding = g_ptr_array_index (findings, i);

      if (g_str_has_prefix (finding->key, prefix))
        {
          *fixed = finding->fix_dose;
          return TRUE;
        }
    }

  return FALSE;
}

/* A programme with one item that has a test of strength: 20 kg 8 times, of the lesser side. */
static void
test_programme (void)
{
  g_autoptr (SwProgramme) programme = sw_programme_new ("test");
  SwClient *client = sw_programme_get_client (programme);
  g_autoptr (SwSession) session = sw_session_new ("Day", SW_SET (SW_DAY_MONDAY));
  SwSection *section = sample_section (session, SW_SECTION_MAIN);
  g_autoptr (SwMeasurement) measurement = sw_measurement_new ("2026-03-01", "Press", SW_MEASURE_KILOGRAMS);
  g_autoptr (SwExercise) exercise = NULL;
  g_autofree char *text = NULL;
  g_autoptr (JsonNode) root = NULL;
  SwExerciseFacts facts;
  JsonObject *load;
  SwDose fixed;
  SwItem *item;

  sample_facts_init (&facts, "press");
  facts.load_limit = (SwLoad) { SW_LOAD_KG, 50.0 };
  g_assert_true (sw_dose_from_line ("2 x 8-10, 30 lb, rest 60 s, effort 7", NULL, &facts.dose, NULL));
  exercise = sample_exercise_from (&facts, "Press");
  item = sw_item_new_for_exercise (exercise, "i1");
  g_object_set (item, "test", "Press", NULL);
  sample_append (section, item);
  g_list_store_append (sw_programme_get_sessions (programme), session);
  g_object_set (measurement, "repetitions", 8, "left", 20.0, "right", 24.0, NULL);
  g_list_store_append (sw_programme_get_measurements (programme), measurement);
  g_object_set (client, "loads", "2, 5, 10 kg", NULL);

  text = sw_numbers_to_json (programme, NULL, "2026-11-25");
  root = json_from_string (text, NULL);
  load = json_object_get_object_member (json_array_get_object_element (json_object_get_array_member (
    json_array_get_object_element (json_object_get_array_member (json_node_get_object (root), "sessions"), 0),
    "items"), 0), "starting-load");
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (load, "one-maximum-kilograms"), 24.8276, 5e-5);
  g_assert_cmpfloat (json_object_get_double_member (load, "kilograms"), ==, 10.0);

  g_assert_false (is_found (programme, "client-load-limit:", &fixed));
  g_object_set (client, "load-limit", "12 kg", NULL);
  g_assert_true (is_found (programme, "client-load-limit:", &fixed));
  g_assert_cmpint (fixed.load.unit, ==, SW_LOAD_LB);
  g_assert_cmpfloat (fixed.load.value, ==, 26.0);
  g_assert_false (is_found (programme, "load-limit-unread", &fixed));
  g_object_set (client, "load-limit", "5 kg or so", "loads", "some", NULL);
  g_assert_true (is_found (programme, "load-limit-unread", &fixed));
  g_assert_true (is_found (programme, "loads-unread", &fixed));
  g_object_set (sw_programme_get_clinic (programme), "bands", "red", NULL);
  g_assert_true (is_found (programme, "bands-unread", &fixed));
}

static void
test_refusals (void)
{
  SwStartingLoadQuestion question = usual_question ();

  question.exercise_limit = (SwLoad) { SW_LOAD_NONE, 0.0 };
  assert_load (&question, "");
  question = usual_question ();
  question.tested.value = 0.0;
  assert_load (&question, "");
  question = usual_question ();
  question.tested_repetitions = 21;
  assert_load (&question, "");
  question = usual_question ();
  question.repetitions = 0;
  assert_load (&question, "");
  question = usual_question ();
  question.effort = 4;
  assert_load (&question, "");
  question = usual_question ();
  question.repetitions = 18;
  assert_load (&question, "");
  question.repetitions = 17;
  assert_load (&question, "11.5 kg");
}

static SwLoad
random_load (SwLoadUnit first_unit,
             double     most)
{
  return (SwLoad) { (SwLoadUnit) g_test_rand_int_range ((int) first_unit, SW_LOAD_NEWTON + 1),
                    g_test_rand_double_range (0.1, most) };
}

/* Whatever is asked, a load is never above a limit or what was tested to be possible once. */
static void
test_never_above (void)
{
  for (int i = 0; i < 10000; i++)
    {
      SwStartingLoadQuestion question = {
        .tested = random_load (SW_LOAD_KG, 500.0),
        .tested_repetitions = g_test_rand_int_range (0, 22),
        .repetitions = g_test_rand_int_range (0, 25),
        .effort = g_test_rand_int_range (0, 11),
        .formula = (SwMaxFormula) g_test_rand_int_range (0, SW_N_MAX_FORMULAS),
        .exercise_limit = random_load (SW_LOAD_NONE, 100.0),
        .client_limit = random_load (SW_LOAD_NONE, 100.0),
        .units = (SwUnits) g_test_rand_int_range (SW_UNITS_KG, SW_UNITS_BOTH + 1),
      };
      g_autoptr (SwStartingLoad) answer = sw_starting_load_new (&question);
      double load_kg = sw_load_to_kg (answer->load);

      g_assert_true ((answer->refusal == NULL) == (load_kg > 0.0));
      if (load_kg <= 0.0)
        continue;
      g_assert_cmpfloat (load_kg, <=, sw_load_to_kg (question.exercise_limit) + 1e-6);
      if (question.client_limit.unit != SW_LOAD_NONE)
        g_assert_cmpfloat (load_kg, <=, sw_load_to_kg (question.client_limit) + 1e-6);
      g_assert_cmpfloat (load_kg, <=, answer->one_max_kg + 1e-6);
      g_assert_cmpuint (sw_working_get_n_lines (answer->working), >=, 6);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/reckon/load/one-max", test_one_max);
  g_test_add_func ("/reckon/load/one-way", test_one_way);
  g_test_add_func ("/reckon/load/chart", test_chart);
  g_test_add_func ("/reckon/load/effort", test_effort);
  g_test_add_func ("/reckon/load/loads", test_loads);
  g_test_add_func ("/reckon/load/starting-load", test_starting_load);
  g_test_add_func ("/reckon/load/dynamometer", test_dynamometer);
  g_test_add_func ("/reckon/load/bands", test_bands);
  g_test_add_func ("/reckon/load/programme", test_programme);
  g_test_add_func ("/reckon/load/refusals", test_refusals);
  g_test_add_func ("/reckon/load/never-above", test_never_above);
  return g_test_run ();
}
