/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Measurements of the same test belong together: what was measured last decides, what was measured before shows where
 * it goes. */
#include "config.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n.h>

#include "sw-course.h"
#include "sw-units.h"

/**
 * sw_course_dup_tests:
 * @programme: a programme
 *
 * Returns: (transfer full) (element-type utf8): the tests that were measured, by name, each once, in the order of the
 *   document
 */
GPtrArray *
sw_course_dup_tests (SwProgramme *programme)
{
  GListModel *measurements = G_LIST_MODEL (sw_programme_get_measurements (programme));
  GPtrArray *tests = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < g_list_model_get_n_items (measurements); i++)
    {
      g_autoptr (SwMeasurement) measurement = g_list_model_get_item (measurements, i);
      const char *test = sw_measurement_get_test (measurement);

      if (*test != '\0' && !g_ptr_array_find_with_equal_func (tests, test, g_str_equal, NULL))
        g_ptr_array_add (tests, g_strdup (test));
    }

  return tests;
}

static int
compare_dates (gconstpointer a,
               gconstpointer b,
               gpointer      order)
{
  SwMeasurement *first = *(SwMeasurement * const *) a;
  SwMeasurement *second = *(SwMeasurement * const *) b;
  int by_date = strcmp (sw_measurement_get_date (first), sw_measurement_get_date (second));

  return by_date != 0 ? by_date : GPOINTER_TO_INT (g_hash_table_lookup (order, first))
                                  - GPOINTER_TO_INT (g_hash_table_lookup (order, second));
}

/**
 * sw_course_collect:
 * @programme: a programme
 * @test: name of a test
 *
 * Returns: (transfer full) (element-type SwMeasurement): its measurements, the earliest first; only those that are
 *   counted as the latest one is, since others cannot be compared
 */
GPtrArray *
sw_course_collect (SwProgramme *programme,
                   const char  *test)
{
  GListModel *measurements = G_LIST_MODEL (sw_programme_get_measurements (programme));
  GPtrArray *course = g_ptr_array_new_with_free_func (g_object_unref);
  g_autoptr (GHashTable) order = g_hash_table_new (NULL, NULL);
  SwMeasurement *latest;

  for (guint i = 0; i < g_list_model_get_n_items (measurements); i++)
    {
      g_autoptr (SwMeasurement) measurement = g_list_model_get_item (measurements, i);

      g_hash_table_insert (order, measurement, GINT_TO_POINTER ((int) i));
      if (*test != '\0' && strcmp (sw_measurement_get_test (measurement), test) == 0)
        g_ptr_array_add (course, g_steal_pointer (&measurement));
    }
  if (course->len == 0)
    return course;

  g_ptr_array_sort_with_data (course, compare_dates, order);
  latest = g_ptr_array_index (course, course->len - 1);
  for (guint i = course->len - 1; i-- > 0;)
    {
      SwMeasurement *earlier = g_ptr_array_index (course, i);

      if (sw_measurement_get_measure (earlier) != sw_measurement_get_measure (latest)
          || sw_measurement_get_repetitions (earlier) != sw_measurement_get_repetitions (latest))
        g_ptr_array_remove_index (course, i);
    }
  return course;
}

/**
 * sw_course_find_latest:
 * @programme: a programme
 * @test: name of a test
 *
 * Returns: (transfer none) (nullable): its last measurement; of several on one day the last in the document
 */
SwMeasurement *
sw_course_find_latest (SwProgramme *programme,
                       const char  *test)
{
  g_autoptr (GPtrArray) course = sw_course_collect (programme, test);

  /* The programme holds it. */
  return course->len > 0 ? g_ptr_array_index (course, course->len - 1) : NULL;
}

/**
 * sw_course_get_better:
 * @measurement: a measurement
 *
 * Returns: which result is the better one, as stated; else more seconds of a hold, repetitions, degrees and strength. A
 *   length may be either, and ratings have no ratio
 */
SwBetter
sw_course_get_better (SwMeasurement *measurement)
{
  SwMeasure measure = sw_measurement_get_measure (measurement);

  if (measure == SW_MEASURE_RATING_0_TO_10)
    return SW_BETTER_NOT_STATED;
  if (sw_measurement_get_better (measurement) != SW_BETTER_NOT_STATED || measure == SW_MEASURE_CENTIMETRES)
    return sw_measurement_get_better (measurement);

  return SW_BETTER_HIGHER;
}

/**
 * sw_course_compare:
 * @measurement: a measurement
 * @symmetry: (out): how its sides compare; left alone on failure
 *
 * Returns: whether both sides were measured and can be compared
 */
gboolean
sw_course_compare (SwMeasurement *measurement,
                   SwSymmetry    *symmetry)
{
  return sw_symmetry_compare (sw_measurement_get_left (measurement), sw_measurement_get_right (measurement),
                              sw_course_get_better (measurement), symmetry);
}

/**
 * sw_course_explain:
 * @measurement: a measurement whose sides can be compared
 * @alike_percent: the greatest difference the clinic calls alike
 * @dominant: the client's dominant side
 *
 * Returns: (transfer full): how the symmetry index was reckoned, and what is known of the sides of people without
 *   complaints
 */
SwWorking *
sw_course_explain (SwMeasurement *measurement,
                   int            alike_percent,
                   SwBodySide     dominant)
{
  SwWorking *working = sw_working_new ();
  gboolean lower = sw_course_get_better (measurement) == SW_BETTER_LOWER;
  g_autofree char *left = sw_number_to_string (sw_measurement_get_left (measurement), 2);
  g_autofree char *right = sw_number_to_string (sw_measurement_get_right (measurement), 2);
  g_autofree char *index = NULL;
  g_autofree char *difference = NULL;
  SwSymmetry symmetry;
  const SwSymmetryFact *facts;
  gboolean left_first;
  guint n_facts;

  if (!sw_course_compare (measurement, &symmetry))
    return working;

  left_first = (symmetry.lesser == SW_BODY_SIDE_LEFT) != lower;
  index = sw_number_to_string (symmetry.index_percent, 1);
  difference = sw_number_to_string (symmetry.difference_percent, 1);
  sw_working_add (working, _("Measured"), NULL, _("right %s, left %s"), right, left);
  sw_working_add (working, lower ? _("Symmetry index; the lower result is the better one, so the ratio is turned round")
                  : _("Symmetry index: the lesser side in percent of the other"),
                  _("Common practice; 90 % as in Kyritsis and others, Br J Sports Med 2016;50:946-951"),
                  "100 × %s / %s = %s %%", left_first ? left : right, left_first ? right : left, index);
  sw_working_add (working, _("Difference between the sides"), NULL, "100 − %s = %s %%", index, difference);
  sw_working_add (working, _("The clinic calls alike"), _("Set by the clinic"), _("up to %d %%"), alike_percent);
  if (dominant != SW_BODY_SIDE_NONE)
    sw_working_add (working, _("The client’s dominant side"), NULL, "%s",
                    dominant == SW_BODY_SIDE_LEFT ? _("left") : _("right"));
  facts = sw_symmetry_get_facts (&n_facts);
  for (guint i = 0; i < n_facts; i++)
    sw_working_add (working, _(facts[i].words), _(facts[i].source), "%s", _(facts[i].figures));
  return working;
}

/**
 * sw_course_get_load:
 * @measurement: a measurement
 * @load: (out): the load it was done with; of the sides the lesser one, since one load serves both. Left alone on
 *   failure
 *
 * Returns: whether it measured strength
 */
gboolean
sw_course_get_load (SwMeasurement *measurement,
                    SwLoad        *load)
{
  double value = fmin (fmin (sw_measurement_get_left (measurement), sw_measurement_get_right (measurement)),
                       sw_measurement_get_both (measurement));
  SwMeasure measure = sw_measurement_get_measure (measurement);
  SwLoadUnit unit = measure == SW_MEASURE_KILOGRAMS ? SW_LOAD_KG
                    : measure == SW_MEASURE_POUNDS ? SW_LOAD_LB
                    : measure == SW_MEASURE_NEWTONS ? SW_LOAD_NEWTON : SW_LOAD_NONE;

  if (unit == SW_LOAD_NONE || !(value > 0.0))
    return FALSE;

  *load = (SwLoad) { unit, value };
  return TRUE;
}
