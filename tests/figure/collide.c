/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bodies in things and away from them, against distances worked out by hand. */
#include "config.h"

#include <string.h>

#include "case.h"
#include "sw-collide.h"
#include "sw-figure.h"

/* A ball of 0.05 at the hips, 0.53 high, and another of 0.03 that is 0.10 below it. */
static void
test_gap (void)
{
  SwJoints joints = { .root_at = { 0, 0, 0.53 } };
  SwBody body = { .fists = { FALSE, FALSE } };
  SwBlob upper = { SW_PIECE_PELVIS, { 0, 0, 0 }, { 0.05, 0.05, 0.05 } };
  SwBlob lower = { SW_PIECE_PELVIS, { 0, 0, -0.10 }, { 0.03, 0.03, 0.03 } };
  SwSolid box = { "counter", { 0.20, -1, 0 }, { 1, 1, 1 }, 0, 0 };
  SwSolid ball = { "ball", { 0.20, 0, 0.53 }, { 0.20, 0, 0.53 }, 0.10, 0 };
  SwVector normal;

  sw_body_solve (&body, &joints);
  g_assert_cmpfloat_with_epsilon (sw_solid_get_gap (&box, &body, &upper, &upper, 0, &normal), 0.15, 1e-12);
  g_assert_cmpfloat_with_epsilon (normal.x, -1, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_solid_get_gap (&box, &body, &upper, &lower, 0.5, &normal), 0.16, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_solid_get_gap (&box, &body, &upper, &lower, 1, &normal), 0.17, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_solid_get_gap (&ball, &body, &upper, &upper, 0, &normal), 0.05, 1e-12);

  /* Half in; its middle in by 0.01; under an edge, 3 4 5. */
  box.low.x = 0.03;
  g_assert_cmpfloat_with_epsilon (sw_solid_get_gap (&box, &body, &upper, &upper, 0, &normal), -0.02, 1e-12);
  box.low.x = -0.01;
  g_assert_cmpfloat_with_epsilon (sw_solid_get_gap (&box, &body, &upper, &upper, 0, &normal), -0.06, 1e-12);
  g_assert_cmpfloat_with_epsilon (normal.x, -1, 1e-12);
  box.low = sw_vector (0.06, -1, 0);
  box.high.z = 0.45;
  g_assert_cmpfloat_with_epsilon (sw_solid_get_gap (&box, &body, &upper, &upper, 0, &normal), 0.05, 1e-12);
  g_assert_cmpfloat_with_epsilon (normal.z, 0.8, 1e-12);
}

static int
find (const char  *xml,
      gboolean     mirrored,
      SwCollision  found[SW_MAX_COLLISIONS])
{
  g_autoptr (SwFigureSpec) spec = test_case_parse (xml);
  g_autoptr (SwFigureSpec) mirror = sw_figure_spec_new_mirrored (spec);
  g_autofree SwSolver *solver = g_new0 (SwSolver, 1);

  sw_solver_init (solver, sw_figure_spec_get_content (mirrored ? mirror : spec));
  return sw_collisions_find (solver, &solver->poses[0], &solver->keys[0], TRUE, found);
}

/* What is said of one part and one thing; 0 for nothing. */
static double
depth_of (const char *xml,
          gboolean    mirrored,
          int         part,
          const char *thing)
{
  SwCollision found[SW_MAX_COLLISIONS];
  int n = find (xml, mirrored, found);

  for (int i = 0; i < n; i++)
    if (found[i].part == (SwPart) part && strcmp (found[i].thing, thing) == 0)
      return found[i].depth;

  return 0;
}

/* The thigh's first ellipsoid is 0.056 deep, its middle 0.006 behind the hip, which is as high as the counter: of one whose
 * edge is 0.02 ahead it is in by 0.056 - 0.026. A hand whose palm is 0.16 - 0.035 short of the edge, and whose fingers
 * reach 0.058 farther, stays away by 0.067. */
static void
test_counter (void)
{
  static const char near[] = "<pose base='standing'><hip side='both' out='0'/></pose><prop kind='counter' where='front' "
                             "distance='0.02'/>";
  static const char clear[] = "<pose base='standing'/><prop kind='counter' where='front' distance='0.17'/>";
  static const char short_of[] = "<pose base='standing'><pin part='hand' side='right' to='counter' forward='-0.16'/></pose>";

  for (int mirrored = 0; mirrored < 2; mirrored++)
    {
      SwCollision found[SW_MAX_COLLISIONS];

      g_assert_cmpfloat_with_epsilon (depth_of (near, mirrored, SW_PART_THIGH, "counter"), 0.030, 2e-3);
      g_assert_cmpfloat_with_epsilon (depth_of (near, mirrored, SW_PART_THIGH + 1, "counter"), 0.030, 2e-3);
      g_assert_cmpint (find (clear, mirrored, found), ==, 0);
      g_assert_cmpfloat_with_epsilon (depth_of (short_of, mirrored, SW_PART_HAND + mirrored, "counter"), -0.067, 0.012);
      g_assert_cmpint (find (short_of, mirrored, found), ==, 1);
    }
}

/* A thigh that slopes down moves the sitter to the front of the seat, rather than into it; one arm in a wall. */
static void
test_seat (void)
{
  static const char sloping[] = "<pose base='sitting'><hip side='right' bend='64'/><knee side='right' bend='2'/></pose>";
  static const char wall[] = "<pose base='sitting'><shoulder side='right' raise='90' direction='0'/><elbow side='right' "
                             "bend='0'/></pose><prop kind='wall' where='right' distance='0.35'/>";

  for (int mirrored = 0; mirrored < 2; mirrored++)
    {
      SwCollision found[SW_MAX_COLLISIONS];

      g_assert_cmpint (find ("<pose base='sitting'/>", mirrored, found), ==, 0);
      g_assert_cmpint (find (sloping, mirrored, found), ==, 0);
      g_assert_cmpfloat (depth_of (wall, mirrored, SW_PART_FOREARM + mirrored, "wall"), >, 0.02);
      g_assert_cmpfloat_with_epsilon (depth_of (wall, mirrored, SW_PART_FOREARM + !mirrored, "wall"), 0, 1e-12);
      g_assert_cmpfloat_with_epsilon (depth_of (wall, mirrored, SW_PART_FOREARM + mirrored, "wall"),
                                      depth_of (wall, !mirrored, SW_PART_FOREARM + !mirrored, "wall"), 1e-9);
    }
}

/* Thigh and shank slope by 15 degrees each, so that the level sole is above the floor by 0.491 (1 - cos 15); one that is
 * pinned is on it, one that is lifted is meant to be. */
static void
test_hovering (void)
{
  static const char leg[] = "<hip side='both' out='0'/><hip side='right' bend='15'/><knee side='right' bend='30'/>";
  g_autofree char *hovers = g_strdup_printf ("<pose base='standing' anchor='left-foot'>%s</pose>", leg);
  g_autofree char *stands
      = g_strdup_printf ("<pose base='standing'>%s<pin part='foot' side='right' to='floor'/></pose>", leg);
  static const char lifted[] = "<pose base='standing'><hip side='right' bend='50'/><knee side='right' bend='50'/></pose>";

  for (int mirrored = 0; mirrored < 2; mirrored++)
    {
      int foot = (int) SW_PART_FOOT + mirrored;

      g_assert_cmpfloat_with_epsilon (depth_of (hovers, mirrored, foot, "floor"), -0.491 * (1 - cos (SW_RAD (15))), 1e-3);
      g_assert_cmpfloat_with_epsilon (depth_of (stands, mirrored, foot, "floor"), 0, 1e-12);
      g_assert_cmpfloat_with_epsilon (depth_of (lifted, mirrored, foot, "floor"), 0, 1e-12);
    }
}

static void
test_said (void)
{
  g_autoptr (SwFigureSpec) spec = test_case_parse ("<pose base='standing'/><pose lean='24'/><prop kind='wall' where='front' "
                                                   "distance='0.2'/>");

  for (int mirrored = 0; mirrored < 2; mirrored++)
    {
      g_autoptr (SwFigure) figure = sw_figure_new (spec, mirrored, NULL);
      g_autoptr (GPtrArray) faults = sw_figure_check (figure);
      gboolean said = FALSE;

      for (guint i = 0; i < faults->len; i++)
        said |= g_str_has_prefix (faults->pdata[i], "The head is ") && strstr (faults->pdata[i], "in the wall in pose 2") != NULL;
      g_assert_true (said);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/collide/gap", test_gap);
  g_test_add_func ("/collide/counter", test_counter);
  g_test_add_func ("/collide/seat", test_seat);
  g_test_add_func ("/collide/hovering", test_hovering);
  g_test_add_func ("/collide/said", test_said);
  return g_test_run ();
}
