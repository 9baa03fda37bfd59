/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The symmetry index against a table that was not made here. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "sw-symmetry.h"

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

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/reckon/sides/index", test_index);
  g_test_add_func ("/reckon/sides/compare", test_compare);
  g_test_add_func ("/reckon/sides/threshold", test_threshold);
  return g_test_run ();
}
