/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Poses placed on the floor: contact, anchors, holds, what lies in between, balance. */
#include "config.h"

#include <string.h>

#include "case.h"
#include "sw-support.h"
#include "sw-figure-range.h"
#include "sw-figure.h"
#include "sw-solver.h"

static SwSolver *
solve (SwFigureSpec *spec)
{
  SwSolver *solver = g_new0 (SwSolver, 1);

  sw_solver_init (solver, sw_figure_spec_get_content (spec));
  return solver;
}

static void
test_faultless (void)
{
  g_autoptr (GPtrArray) paths = test_case_list ();

  for (guint i = 0; i < paths->len; i++)
    for (int mirrored = 0; mirrored < 2; mirrored++)
      {
        g_autoptr (SwFigureSpec) spec = test_case_load (paths->pdata[i]);
        g_autoptr (SwFigure) figure = sw_figure_new (spec, mirrored, NULL);
        g_autoptr (GPtrArray) faults = sw_figure_check (figure);

        for (guint k = 0; k < faults->len; k++)
          g_test_message ("%s: %s", (char *) paths->pdata[i], (char *) faults->pdata[k]);
        g_assert_cmpuint (faults->len, ==, 0);
      }
}

static void
test_faults_are_found (void)
{
  static const struct
  {
    const char *xml;
    const char *word;
  } wrong[] = {
    { "<pose base='standing'><knee side='right' bend='150'/></pose>", "right knee" },
    { "<pose base='standing' lean='30'/>", "fall" },
    { "<pose base='standing'><fingers side='left' knuckle='100'/></pose>", "left knuckles" },
    { "<pose base='standing'><fingers side='right' spread='5'/></pose><pose><fingers side='right' spread='30'/></pose>",
      "right fingers" },
    { "<pose base='standing'><thumb side='right' out='45'/></pose>", "right thumb" },
    { "<pose base='kneeling'><shoulder side='left' raise='0'/></pose><pose><hip side='both' bend='60'/><low-back "
      "bend='60'/>"
      "<upper-back bend='35'/></pose>",
      "back's bend" },
    { "<pose base='standing'><pin part='hand' side='right' to='point' forward='1.2' up='0.6'/></pose>",
      "right hand misses" },
    { "<pose base='standing'><shoulder side='right' raise='0'/></pose><pose lean='90'><shoulder side='both' "
      "raise='90' "
      "direction='90'/><hip side='both' bend='90'/><knee side='both' bend='0'/><foot side='both' "
      "pitch='free'/></pose>",
      "fall" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      g_autoptr (SwFigureSpec) spec = test_case_parse (wrong[i].xml);
      g_autoptr (SwFigure) figure = sw_figure_new (spec, FALSE, NULL);
      g_autoptr (GPtrArray) faults = sw_figure_check (figure);
      gboolean found = FALSE;

      for (guint k = 0; k < faults->len; k++)
        found |= strstr (faults->pdata[k], wrong[i].word) != NULL;
      if (!found)
        g_test_message ("%s: nothing about %s", wrong[i].xml, wrong[i].word);
      g_assert_true (found);
    }
}

/* An arm raised sideways, turning on the way, stays in the sideways plane: angles are interpolated, not rotations. */
static void
test_plane (void)
{
  g_autoptr (SwFigureSpec) spec = test_case_parse ("<pose base='standing'><shoulder side='right' raise='10' "
                                                   "direction='0' turn='0'/><elbow side='right' bend='0'/></pose>"
                                                   "<pose><shoulder side='right' raise='170' turn='80'/></pose>");
  g_autofree SwSolver *solver = solve (spec);

  for (int i = 0; i <= 16; i++)
    {
      SwSolved now;
      SwVector arm;

      sw_solver_get (solver, i / 16.0, &now);
      arm = sw_sub (now.body.pieces[SW_PIECE_FOREARM].at, now.body.pieces[SW_PIECE_UPPER_ARM].at);
      g_assert_cmpfloat_with_epsilon (arm.x, 0, 1e-9);
      g_assert_cmpfloat_with_epsilon (SW_DEG (atan2 (-arm.y, -arm.z)), 10 + 10 * i, 1e-6);
    }
}

static double
lowest_foot (const SwSolved *solved)
{
  return MIN (sw_part_get_lowest (&solved->body, SW_PART_FOOT), sw_part_get_lowest (&solved->body, SW_PART_FOOT + 1));
}

static void
test_feet_stay (void)
{
  g_autoptr (SwFigureSpec) spec = test_case_parse (
      "<pose base='standing'/><pose lean='34'><hip side='both' bend='78'/><knee side='both' bend='66'/></pose>");
  g_autofree SwSolver *solver = solve (spec);
  SwVector ball = sw_body_get_ball (&solver->keys[0].body, SW_FIGURE_RIGHT);

  for (int i = 0; i <= 8; i++)
    {
      SwSolved now;
      SwVector here;

      sw_solver_get (solver, i / 8.0, &now);
      here = sw_body_get_ball (&now.body, SW_FIGURE_RIGHT);
      g_assert_cmpfloat_with_epsilon (lowest_foot (&now), 0, 1e-9);
      g_assert_cmpfloat_with_epsilon (here.x, ball.x, 2e-3);
      g_assert_cmpfloat_with_epsilon (now.body.pieces[SW_PIECE_FOOT].axes.x.z, 0, 1e-9);
    }
}

static void
test_heel_raise_on_ball (void)
{
  g_autoptr (SwFigureSpec) spec
      = test_case_parse ("<pose base='standing'/><pose><foot side='both' pitch='30'/></pose>");
  g_autofree SwSolver *solver = solve (spec);
  const SwBody *start = &solver->keys[0].body;
  const SwBody *end = &solver->keys[1].body;
  double rise = end->pieces[SW_PIECE_PELVIS].at.z - start->pieces[SW_PIECE_PELVIS].at.z;

  /* The ankle turns about the ball of the foot, 0.060 ahead and 0.039 below it; the ball is round and lifts a little. */
  g_assert_cmpfloat_with_epsilon (rise, 0.060 * sin (SW_RAD (30)) + 0.039 * (cos (SW_RAD (30)) - 1), 6e-3);
  g_assert_cmpfloat_with_epsilon (sw_joints_get (&solver->keys[1].joints, SW_ANGLE_ANKLE_UP, SW_FIGURE_RIGHT), -30,
                                  0.2);
}

/* In the air the feet are as high as asked, half way up half as high, and land where they left. */
static void
test_jump (void)
{
  g_autoptr (SwFigureSpec) spec = test_case_parse (
      "<pose base='standing'><hip side='both' bend='45'/><knee side='both' bend='60'/></pose>"
      "<pose lift='0.1'><hip side='both' bend='0'/><knee side='both' bend='0'/></pose><pose/>");
  g_autofree SwSolver *solver = solve (spec);
  SwVector ball = sw_body_get_ball (&solver->keys[0].body, SW_FIGURE_RIGHT);
  SwSolved now;

  g_assert_cmpfloat_with_epsilon (lowest_foot (&solver->keys[0]), 0, 1e-9);
  g_assert_cmpfloat_with_epsilon (lowest_foot (&solver->keys[1]), 0.1, 1e-9);
  sw_solver_get (solver, 0.25, &now);
  g_assert_cmpfloat_with_epsilon (lowest_foot (&now), 0.05, 1e-9);
  g_assert_cmpfloat_with_epsilon (sw_body_get_ball (&solver->keys[1].body, SW_FIGURE_RIGHT).x, ball.x, 2e-3);
  g_assert_cmpfloat_with_epsilon (sw_length (sw_sub (sw_body_get_ball (&solver->keys[2].body, SW_FIGURE_RIGHT), ball)), 0,
                                  1e-9);
}

static void
test_hands_stay_on_floor (void)
{
  g_autoptr (SwFigureSpec) spec = test_case_parse (
      "<pose base='hands-and-knees'/><pose><upper-back bend='26'/><shoulder-blade side='both' forward='30'/></pose>");
  g_autofree SwSolver *solver = solve (spec);
  SwVector hand = solver->keys[0].body.pieces[SW_PIECE_HAND].at;

  for (int i = 0; i <= 8; i++)
    {
      SwSolved now;

      sw_solver_get (solver, i / 8.0, &now);
      g_assert_cmpfloat (sw_length (sw_sub (now.body.pieces[SW_PIECE_HAND].at, hand)), <, 4e-3);
    }
}

static void
test_balance (void)
{
  g_autoptr (SwFigureSpec) upright = test_case_parse ("<pose base='standing'/>");
  g_autoptr (SwFigureSpec) ahead = test_case_parse ("<pose base='standing' lean='20'/>");
  g_autofree SwSolver *standing = solve (upright);
  g_autofree SwSolver *leaning = solve (ahead);

  g_assert_cmpfloat (sw_solved_get_balance (standing, &standing->keys[0]), <, 0);
  g_assert_cmpfloat (sw_solved_get_balance (leaning, &leaning->keys[0]), >, 0.02);
}

static void
test_mirrored_bodies (void)
{
  g_autoptr (GPtrArray) paths = test_case_list ();

  for (guint i = 0; i < paths->len; i++)
    {
      g_autoptr (SwFigureSpec) spec = test_case_load (paths->pdata[i]);
      g_autoptr (SwFigureSpec) mirror = sw_figure_spec_new_mirrored (spec);
      g_autoptr (SwFigureSpec) back = sw_figure_spec_new_mirrored (mirror);
      g_autofree SwSolver *one = solve (spec);
      g_autofree SwSolver *other = solve (mirror);

      g_assert_true (sw_figure_spec_equal (spec, back));
      for (int step = 0; step <= 4; step++)
        {
          SwSolved a;
          SwSolved b;

          sw_solver_get (one, step / 4.0, &a);
          sw_solver_get (other, step / 4.0, &b);
          for (int piece = 0; piece < SW_N_PIECES; piece++)
            {
              int twin = piece < (int) SW_PIECE_UPPER_ARM
                             ? piece
                             : (int) SW_PIECE_UPPER_ARM + ((piece - (int) SW_PIECE_UPPER_ARM) ^ 1);

              g_assert_cmpfloat_with_epsilon (a.body.pieces[piece].at.x, b.body.pieces[twin].at.x, 1e-6);
              g_assert_cmpfloat_with_epsilon (a.body.pieces[piece].at.y, -b.body.pieces[twin].at.y, 1e-6);
              g_assert_cmpfloat_with_epsilon (a.body.pieces[piece].at.z, b.body.pieces[twin].at.z, 1e-6);
            }
        }
    }
}

/* What was written, on the side it was written for, and the other way round in the mirror; what holds still has one angle. */
static void
test_range (void)
{
  g_autoptr (SwFigureSpec) spec = test_case_parse ("<pose base='sitting'><knee side='right' bend='85'/></pose>"
                                                   "<pose><knee side='right' bend='5'/></pose>");
  g_autoptr (SwFigureSpec) mirrored = sw_figure_spec_new_mirrored (spec);
  int right = sw_angle_get_slot (SW_ANGLE_KNEE_BEND, SW_FIGURE_RIGHT);
  int left = sw_angle_get_slot (SW_ANGLE_KNEE_BEND, SW_FIGURE_LEFT);
  SwFigureRange range, other;

  sw_figure_range_init (&range, spec);
  g_assert_cmpfloat_with_epsilon (range.low_deg[right], 5, 1e-6);
  g_assert_cmpfloat_with_epsilon (range.high_deg[right], 85, 1e-6);
  g_assert_cmpfloat_with_epsilon (range.low_deg[left], range.high_deg[left], 1e-6);

  sw_figure_range_init (&other, mirrored);
  g_assert_cmpfloat_with_epsilon (other.low_deg[left], 5, 1e-6);
  g_assert_cmpfloat_with_epsilon (other.high_deg[left], 85, 1e-6);
  g_assert_cmpfloat_with_epsilon (other.low_deg[right], range.low_deg[left], 1e-6);
}

/* The feet stay on the floor: what a squat asks of the ankles comes out, though nobody wrote it. */
static void
test_range_of_what_is_held (void)
{
  g_autoptr (SwFigureSpec) spec = test_case_parse ("<pose base='standing'/><pose><hip side='both' bend='60'/>"
                                                   "<knee side='both' bend='80'/></pose>");
  int ankle = sw_angle_get_slot (SW_ANGLE_ANKLE_UP, SW_FIGURE_RIGHT);
  SwFigureRange range;

  sw_figure_range_init (&range, spec);
  g_assert_cmpfloat (range.high_deg[ankle] - range.low_deg[ankle], >, 10);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/solver/faultless", test_faultless);
  g_test_add_func ("/solver/faults-are-found", test_faults_are_found);
  g_test_add_func ("/solver/plane", test_plane);
  g_test_add_func ("/solver/feet-stay", test_feet_stay);
  g_test_add_func ("/solver/heel-raise-on-ball", test_heel_raise_on_ball);
  g_test_add_func ("/solver/jump", test_jump);
  g_test_add_func ("/solver/hands-stay-on-floor", test_hands_stay_on_floor);
  g_test_add_func ("/solver/balance", test_balance);
  g_test_add_func ("/solver/mirrored-bodies", test_mirrored_bodies);
  g_test_add_func ("/solver/range", test_range);
  g_test_add_func ("/solver/range-of-what-is-held", test_range_of_what_is_held);
  return g_test_run ();
}
