/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What carries the body, against places worked out by hand. */
#include "config.h"

#include <string.h>

#include "case.h"
#include "sw-figure.h"
#include "sw-pad-draw.h"
#include "sw-support.h"

/* Of the last pose. */
static double
outside (const char *xml,
         gboolean    mirrored)
{
  g_autoptr (SwFigureSpec) spec = test_case_parse (xml);
  g_autoptr (SwFigureSpec) mirror = sw_figure_spec_new_mirrored (spec);
  g_autofree SwSolver *solver = g_new0 (SwSolver, 1);

  sw_solver_init (solver, sw_figure_spec_get_content (mirrored ? mirror : spec));
  return sw_solved_get_balance (solver, &solver->keys[solver->n_keys - 1]);
}

/* A square, and the same with something that pushes it from the far side. */
static void
test_hull (void)
{
  SwSupport square = { .spots = { { 0, 0, 0 }, { 1, 0, 0 }, { 1, 1, 0 }, { 0.5, 0.5, 0 }, { 0, 1, 0 } }, .n_spots = 5 };
  SwSupport none = { .n_spots = 0 };

  g_assert_cmpfloat_with_epsilon (sw_support_get_outside (&square, sw_vector (0.5, 0.5, 9)), -0.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_support_get_outside (&square, sw_vector (0.9, 0.5, 0)), -0.1, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_support_get_outside (&square, sw_vector (1.2, 0.5, 0)), 0.2, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_support_get_outside (&none, sw_vector (0, 0, 0)), 1.0, 1e-12);

  square.pushes[square.n_pushes++] = sw_vector (0.3, 0, 0);
  g_assert_cmpfloat_with_epsilon (sw_support_get_outside (&square, sw_vector (1.2, 0.5, 0)), -0.1, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_support_get_outside (&square, sw_vector (-0.1, 0.5, 0)), 0.1, 1e-12);
}

/* On one leg the weight stays in the middle, 0.052 from the ankle. Of that the ball of the foot, half 0.028 broad and 0.015
 * high, flattened by 0.010, reaches 0.028 sqrt (1 - (1/3)²), and the heel, a ball of 0.023, 0.023 sqrt (1 - (13/23)²);
 * the weight is between the two. Hands on the own hips carry nothing. */
static void
test_one_leg (void)
{
  static const char legs[] = "<hip side='left' out='0'/><hip side='right' bend='40' out='0'/><knee side='right' bend='60'/>"
                             "<foot side='right' pitch='free'/>";
  g_autofree char *hanging = g_strdup_printf ("<pose base='standing' anchor='left-foot'>%s</pose>", legs);
  g_autofree char *on_hips
      = g_strdup_printf ("<pose base='standing' anchor='left-foot'>%s<pin part='hand' side='both' to='hip'/></pose>", legs);
  g_autofree char *at_counter = g_strdup_printf ("<pose base='standing' anchor='left-foot'>%s<pin part='hand' side='right' "
                                                 "to='counter'/></pose><prop kind='counter' where='right'/>",
                                                 legs);
  double at_ball = 0.052 - 0.028 * sqrt (1 - 1.0 / 9);
  double at_heel = 0.052 - 0.023 * sqrt (1 - 169.0 / 529);

  for (int mirrored = 0; mirrored < 2; mirrored++)
    {
      g_assert_cmpfloat (outside (hanging, mirrored), >, at_ball);
      g_assert_cmpfloat (outside (hanging, mirrored), <, at_heel);
      g_assert_cmpfloat_with_epsilon (outside (on_hips, mirrored), outside (hanging, mirrored), 1e-3);
      g_assert_cmpfloat (outside (at_counter, mirrored), <, 0);
    }
}

/* A wall carries who leans on it, not who leans away. */
static void
test_wall (void)
{
  static const char wall[] = "<prop kind='wall' where='behind' distance='0.15'/>";
  g_autofree char *back = g_strdup_printf ("<pose base='standing' lean='-14'/>%s", wall);
  static const char hands[] = "<pin part='hand' side='both' to='wall'/>";
  g_autofree char *to_hands = g_strdup_printf ("<pose base='standing' lean='18'>%s</pose>", hands);
  g_autofree char *from_hands = g_strdup_printf ("<pose base='standing' lean='-14'>%s</pose>", hands);

  g_assert_cmpfloat (outside ("<pose base='standing' lean='-14'/>", FALSE), >, 0.05);
  g_assert_cmpfloat (outside (back, FALSE), <, 0);
  g_assert_cmpfloat (outside ("<pose base='standing' lean='18'/>", FALSE), >, 0.05);
  g_assert_cmpfloat (outside (to_hands, FALSE), <, 0);
  g_assert_cmpfloat (outside (from_hands, FALSE), >, 0.05);
}

static void
test_seat (void)
{
  g_assert_cmpfloat (outside ("<pose base='sitting'/>", FALSE), <, -0.04);
  /* Nothing below the feet: the seat alone carries, and not who leans far ahead. */
  g_assert_cmpfloat (outside ("<pose base='sitting'/><pose lean='-8'><hip side='both' bend='90'/><knee side='both' bend='60'/>"
                              "<foot side='both' pitch='free'/></pose>",
                              FALSE),
                     <, 0);
  g_assert_cmpfloat (outside ("<pose base='sitting'/><pose lean='48'><hip side='both' bend='138'/><knee side='both' bend='30'/>"
                              "<foot side='both' pitch='free'/><pin part='hand' side='both' to='chest'/></pose>",
                              FALSE),
                     >, 0.04);
  /* Both feet in the air. */
  g_assert_cmpfloat_with_epsilon (
      outside ("<pose base='standing'><pin part='foot' side='both' to='floor' up='0.1'/></pose>", FALSE), 1.0, 1e-12);
}

/* A pillow is as high as the gap under the knee where the knee is lowest, however high the knee is lifted. */
static void
test_pillow (void)
{
  g_autoptr (SwFigureSpec) spec = test_case_parse ("<pose base='on-back'><hip side='right' bend='40'/><knee side='right' "
                                                   "bend='70'/></pose><pose><hip side='right' bend='10'/><knee side='right' "
                                                   "bend='20'/></pose><prop kind='pillow' under='right-knee'/>");
  g_autofree SwSolver *solver = g_new0 (SwSolver, 1);
  const SwFigurePropSpec *pillow = &sw_figure_spec_get_content (spec)->props[0];
  double least;

  sw_solver_init (solver, sw_figure_spec_get_content (spec));
  least = solver->keys[1].body.pieces[SW_PIECE_SHANK].at.z - 0.036;
  g_assert_cmpfloat (least, >, 0.02);
  g_assert_cmpfloat_with_epsilon (sw_pad_get_pillow_height (solver, pillow), least, 1e-12);
  g_assert_cmpfloat (sw_pad_get_pillow_gap (pillow, &solver->keys[0].body), >, least + 0.05);
}

/* A stride whose front foot is pinned to the floor: the front leg spans from the hip, which sinks, to the ankle; the other
 * foot stays. */
static void
test_stride (void)
{
  g_autoptr (SwFigureSpec) spec = test_case_parse ("<pose base='standing' anchor='left-foot'/><pose><hip side='right' "
                                                   "bend='34'/><pin part='foot' side='right' to='floor'/></pose>");
  g_autofree SwSolver *solver = g_new0 (SwSolver, 1);
  const SwBody *start = &solver->keys[0].body;
  const SwBody *end = &solver->keys[1].body;
  double leg;

  sw_solver_init (solver, sw_figure_spec_get_content (spec));
  leg = sw_length (sw_sub (end->pieces[SW_PIECE_FOOT].at, end->pieces[SW_PIECE_THIGH].at));
  g_assert_cmpfloat_with_epsilon (end->pieces[SW_PIECE_FOOT].at.z, SW_ANKLE_HEIGHT, 1e-3);
  g_assert_cmpfloat_with_epsilon (leg, SW_REACH_STRETCH * (SW_THIGH + SW_SHANK), 1e-3);
  g_assert_cmpfloat (solver->keys[1].missed[SW_LIMB_RIGHT_LEG], <, 1e-3);
  /* Straight ahead by 34 degrees the foot would be 0.491 (1 - cos 34) above the floor; the hip is lower by about as much. */
  g_assert_cmpfloat_with_epsilon (start->pieces[SW_PIECE_PELVIS].at.z - end->pieces[SW_PIECE_PELVIS].at.z,
                                  0.491 - sqrt (0.491 * 0.491 - pow (0.491 * sin (SW_RAD (34)), 2)), 6e-3);
  g_assert_cmpfloat (sw_length (sw_sub (start->pieces[SW_PIECE_FOOT + 1].at, end->pieces[SW_PIECE_FOOT + 1].at)), <, 2e-3);
}

/* A foot that stands on the heel and then on the ball has rolled over its sole: the ball is as far ahead of where the heel
 * was as in the foot, and on the floor. */
static void
test_roll (void)
{
  g_autoptr (SwFigureSpec) spec = test_case_parse ("<pose base='sitting'><foot side='both' pitch='-20'/></pose>"
                                                   "<pose><foot side='both' pitch='30'/></pose>");
  g_autofree SwSolver *solver = g_new0 (SwSolver, 1);
  SwVector heel;
  SwVector ball;

  sw_solver_init (solver, sw_figure_spec_get_content (spec));
  heel = sw_place (solver->keys[0].body.pieces[SW_PIECE_FOOT], sw_vector (SW_HEEL_X, 0, -SW_ANKLE_HEIGHT));
  ball = sw_body_get_ball (&solver->keys[1].body, SW_FIGURE_RIGHT);
  g_assert_cmpfloat_with_epsilon (hypot (ball.x - heel.x, ball.y - heel.y), SW_BALL_X - SW_HEEL_X, 1e-6);
  g_assert_cmpfloat_with_epsilon (ball.z, heel.z, 1e-6);
}

static guint
count_falls (const char *xml,
             gboolean    mirrored)
{
  g_autoptr (SwFigureSpec) spec = test_case_parse (xml);
  g_autoptr (SwFigure) figure = sw_figure_new (spec, mirrored, NULL);
  g_autoptr (GPtrArray) faults = sw_figure_check (figure);
  guint n = 0;

  for (guint i = 0; i < faults->len; i++)
    n += strstr (faults->pdata[i], "fall") != NULL;

  return n;
}

/* Flight between two poses on the ground is no fault, a single pose in the air is; nor is a step on the way, but where it
 * ends has to stand. */
static void
test_motion (void)
{
  static const char ground[] = "<pose base='standing'/>";
  static const char air[] = "<pin part='foot' side='both' to='floor' up='0.1'/>";
  static const char step[] = "<hip side='right' bend='34'/><knee side='right' bend='20'/><knee side='left' bend='30'/>";
  g_autofree char *jump = g_strdup_printf ("%s<pose>%s</pose>", ground, air);
  g_autofree char *floats = g_strdup_printf ("<pose base='standing'>%s</pose>", air);
  g_autofree char *lands
      = g_strdup_printf ("<pose base='standing' anchor='left-foot'/><pose>%s<pin part='foot' side='right' to='floor'/></pose>", step);
  g_autofree char *hangs = g_strdup_printf ("<pose base='standing' anchor='left-foot'/><pose>%s<foot side='right' "
                                            "pitch='free'/></pose>", "<hip side='right' bend='70'/><hip side='left' bend='-10'/>");

  for (int mirrored = 0; mirrored < 2; mirrored++)
    {
      g_assert_cmpuint (count_falls (jump, mirrored), ==, 0);
      g_assert_cmpuint (count_falls (floats, mirrored), ==, 1);
      g_assert_cmpuint (count_falls (lands, mirrored), ==, 0);
      g_assert_cmpuint (count_falls (hangs, mirrored), ==, 1);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/support/hull", test_hull);
  g_test_add_func ("/support/one-leg", test_one_leg);
  g_test_add_func ("/support/wall", test_wall);
  g_test_add_func ("/support/seat", test_seat);
  g_test_add_func ("/support/pillow", test_pillow);
  g_test_add_func ("/support/stride", test_stride);
  g_test_add_func ("/support/roll", test_roll);
  g_test_add_func ("/support/motion", test_motion);
  return g_test_run ();
}
