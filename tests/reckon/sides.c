/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The symmetry index against a table that was not made here. */
#include "config.h"

#include <math.h>
#include <string.h>

#include <json-glib/json-glib.h>

#include "sample.h"
#include "sw-course.h"
#include "sw-finding.h"
#include "sw-numbers.h"

static void
test_index (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "side-to-side.csv", NULL);
  g_autofree char *text = NULL;
  g_auto (GStrv) lines = NULL;
  guint n = 0;

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  lines = g_strsplit (text, "\n", -1);
  for (guint i = 1; lines[i] != NULL && *lines[i] != '\0'; i++)
    {
      g_auto (GStrv) cells = g_strsplit (lines[i], ";", 6);
      SwBetter better = strcmp (cells[2], "lower") == 0 ? SW_BETTER_LOWER : SW_BETTER_HIGHER;
      double index = sw_symmetry_get_index (g_ascii_strtod (cells[0], NULL), g_ascii_strtod (cells[1], NULL), better);

      if (strcmp (cells[3], "undefined") == 0)
        g_assert_true (isnan (index));
      else
        {
          g_assert_cmpfloat_with_epsilon (index, g_ascii_strtod (cells[3], NULL), 0.0501);
          g_assert_true ((strcmp (cells[4], "yes") == 0) == (index >= 90.0 - 1e-9));
        }
      n++;
    }
  g_assert_cmpuint (n, ==, 8);
}

static void
assert_symmetry (double     left,
                 double     right,
                 SwBetter   better,
                 SwBodySide lesser,
                 double     difference)
{
  SwSymmetry symmetry;

  g_assert_true (sw_symmetry_compare (left, right, better, &symmetry));
  g_assert_cmpint (symmetry.lesser, ==, lesser);
  g_assert_cmpfloat_with_epsilon (symmetry.difference_percent, difference, 0.005);
  g_assert_cmpfloat_with_epsilon (symmetry.index_percent + symmetry.difference_percent, 100.0, 1e-9);
}

static void
test_compare (void)
{
  SwSymmetry symmetry;

  assert_symmetry (44.0, 50.0, SW_BETTER_HIGHER, SW_BODY_SIDE_LEFT, 12.0);
  assert_symmetry (50.0, 44.0, SW_BETTER_HIGHER, SW_BODY_SIDE_RIGHT, 12.0);
  assert_symmetry (2.2, 2.0, SW_BETTER_LOWER, SW_BODY_SIDE_LEFT, 9.09);
  assert_symmetry (2.0, 2.2, SW_BETTER_LOWER, SW_BODY_SIDE_RIGHT, 9.09);
  assert_symmetry (0.0, 10.0, SW_BETTER_HIGHER, SW_BODY_SIDE_LEFT, 100.0);
  assert_symmetry (7.0, 7.0, SW_BETTER_HIGHER, SW_BODY_SIDE_NONE, 0.0);

  g_assert_false (sw_symmetry_compare (0.0, 0.0, SW_BETTER_HIGHER, &symmetry));
  g_assert_false (sw_symmetry_compare (NAN, 5.0, SW_BETTER_HIGHER, &symmetry));
  g_assert_false (sw_symmetry_compare (5.0, NAN, SW_BETTER_LOWER, &symmetry));
  g_assert_false (sw_symmetry_compare (-5.0, 5.0, SW_BETTER_HIGHER, &symmetry));
  g_assert_false (sw_symmetry_compare (5.0, 6.0, SW_BETTER_NOT_STATED, &symmetry));
}

/* 90 of 100 is alike at a threshold of 10 %, 89.99 is not, however it is shown. */
static void
test_threshold (void)
{
  SwSymmetry symmetry;

  g_assert_true (sw_symmetry_compare (90.0, 100.0, SW_BETTER_HIGHER, &symmetry));
  g_assert_true (sw_symmetry_is_alike (&symmetry, 10));
  g_assert_true (sw_symmetry_compare (89.99, 100.0, SW_BETTER_HIGHER, &symmetry));
  g_assert_false (sw_symmetry_is_alike (&symmetry, 10));
  g_assert_true (sw_symmetry_is_alike (&symmetry, 15));
}

/* Heel raises of each side, for which the test "Raises" counts. */
static SwProgramme *
make_programme (SwItem **item)
{
  SwProgramme *programme = sw_programme_new ("test");
  g_autoptr (SwSession) session = sw_session_new ("Day", SW_SET (SW_DAY_MONDAY));
  SwSection *section = sample_section (session, SW_SECTION_MAIN);

  g_list_store_append (sw_programme_get_sessions (programme), session);
  *item = sample_item ("i1", "2 x 10, each side, rest 60 s");
  g_object_set (*item, "test", "Raises", NULL);
  sample_append (section, *item);
  return programme;
}

static void
measure (SwProgramme *programme,
         const char  *date,
         double       left,
         double       right)
{
  g_autoptr (SwMeasurement) measurement = sw_measurement_new (date, "Raises", SW_MEASURE_REPETITIONS);

  g_object_set (measurement, "left", left, "right", right, NULL);
  g_list_store_append (sw_programme_get_measurements (programme), measurement);
}

/* Applies the fix of the finding whose key begins so; NULL: there is to be none about the sides. */
static void
fix (SwProgramme *programme,
     SwItem      *item,
     const char  *prefix)
{
  g_autoptr (GPtrArray) findings = sw_findings_collect (programme, NULL, "2026-11-25");
  const SwFinding *found = NULL;

  for (guint i = 0; i < findings->len; i++)
    {
      const SwFinding *finding = g_ptr_array_index (findings, i);

      if (g_str_has_prefix (finding->key, "sides-"))
        {
          g_assert_null (found);
          found = finding;
        }
    }
  g_assert_true ((found == NULL) == (prefix == NULL));
  if (prefix == NULL)
    return;

  g_assert_true (g_str_has_prefix (found->key, prefix));
  g_assert_cmpint (found->fix, ==, SW_FIX_SET_DOSE);
  /* Sides differ; nobody is ill for it. */
  g_assert_null (strstr (found->text, "impair"));
  g_assert_null (strstr (found->text, "weak"));
  g_object_set (item, "dose", &found->fix_dose, NULL);
}

static void
test_extra_sets (void)
{
  SwItem *item;
  g_autoptr (SwProgramme) programme = make_programme (&item);

  fix (programme, item, NULL);
  measure (programme, "2026-03-01", 12.0, 15.0);
  fix (programme, item, "sides-differ:");
  g_assert_cmpint (sw_dose_get_sets_for (sw_item_get_dose (item), SW_BODY_SIDE_LEFT), ==, 3);
  g_assert_cmpint (sw_dose_get_sets_for (sw_item_get_dose (item), SW_BODY_SIDE_RIGHT), ==, 2);
  fix (programme, item, NULL);

  /* Later in time, earlier in the document: the day counts. */
  measure (programme, "2026-05-01", 18.0, 15.0);
  measure (programme, "2026-04-01", 15.0, 15.0);
  fix (programme, item, "sides-other:");
  g_assert_cmpint (sw_item_get_dose (item)->extra_side, ==, SW_BODY_SIDE_RIGHT);

  measure (programme, "2026-06-01", 16.0, 15.0);
  fix (programme, item, "sides-alike:");
  g_assert_cmpint (sw_item_get_dose (item)->extra_sets, ==, 0);
  fix (programme, item, NULL);

  /* What is alike is the clinic's to say. */
  g_object_set (sw_programme_get_clinic (programme), "alike-percent", 5, NULL);
  fix (programme, item, "sides-differ:");
}

static void
test_course (void)
{
  SwItem *item;
  g_autoptr (SwProgramme) programme = make_programme (&item);
  g_autoptr (SwMeasurement) other = sw_measurement_new ("2026-03-02", "Raises", SW_MEASURE_SECONDS);
  g_autoptr (GPtrArray) tests = NULL;
  g_autoptr (GPtrArray) course = NULL;
  SwLoad load;

  measure (programme, "2026-04-01", 2.0, 3.0);
  g_list_store_append (sw_programme_get_measurements (programme), other);
  measure (programme, "2026-03-01", 1.0, 2.0);
  tests = sw_course_dup_tests (programme);
  course = sw_course_collect (programme, "Raises");
  g_assert_cmpuint (tests->len, ==, 1);
  g_assert_cmpuint (course->len, ==, 2);
  g_assert_cmpfloat (sw_measurement_get_left (course->pdata[0]), ==, 1.0);
  g_assert_true (sw_course_find_latest (programme, "Raises") == course->pdata[1]);
  g_assert_null (sw_course_find_latest (programme, ""));
  g_assert_false (sw_course_get_load (course->pdata[1], &load));

  g_object_set (other, "measure", SW_MEASURE_POUNDS, "left", 12.0, "right", 10.0, NULL);
  g_assert_true (sw_course_get_load (other, &load));
  g_assert_cmpint (load.unit, ==, SW_LOAD_LB);
  g_assert_cmpfloat (load.value, ==, 10.0);
  g_object_set (other, "measure", SW_MEASURE_RATING_0_TO_10, "better", SW_BETTER_LOWER, NULL);
  g_assert_cmpint (sw_course_get_better (other), ==, SW_BETTER_NOT_STATED);
}

static void
test_numbers (void)
{
  SwItem *item;
  g_autoptr (SwProgramme) programme = make_programme (&item);
  g_autofree char *text = NULL;
  g_autoptr (JsonNode) root = NULL;
  JsonObject *sides;
  JsonArray *items;

  measure (programme, "2026-03-01", 12.0, 16.0);
  measure (programme, "2026-04-01", 15.0, 16.0);
  text = sw_numbers_to_json (programme, NULL, "2026-11-25");
  g_assert_null (strstr (text, "Raises"));
  root = json_from_string (text, NULL);
  items = json_object_get_array_member (json_array_get_object_element (
    json_object_get_array_member (json_node_get_object (root), "sessions"), 0), "items");
  sides = json_object_get_object_member (json_array_get_object_element (items, 0), "sides");
  g_assert_cmpfloat (json_object_get_double_member (sides, "symmetry-index-percent"), ==, 93.75);
  g_assert_cmpfloat (json_object_get_double_member (sides, "difference-percent"), ==, 6.25);
  g_assert_cmpstr (json_object_get_string_member (sides, "lesser-side"), ==, "left");
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (sides, "visits")), ==, 2);
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (sides, "working")), >=, 9);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/reckon/sides/index", test_index);
  g_test_add_func ("/reckon/sides/compare", test_compare);
  g_test_add_func ("/reckon/sides/threshold", test_threshold);
  g_test_add_func ("/reckon/sides/extra-sets", test_extra_sets);
  g_test_add_func ("/reckon/sides/course", test_course);
  g_test_add_func ("/reckon/sides/numbers", test_numbers);
  return g_test_run ();
}
