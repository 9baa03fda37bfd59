/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Outlines as they are drawn, held against the hulls themselves: the farthest of very many places on the ellipsoids'
 * surfaces in very many directions. */
#include "config.h"

#include <math.h>

#include "sw-outline.h"

#define TOLERANCE 0.0008
/* A fifth more than the tolerance, which is kept to in 48 directions and their like, not in all. */
#define ALLOWED (1.2 * TOLERANCE)
#define N_DIRECTIONS 720
#define N_AROUND 90
#define N_ALONG 60
#define N_BEND 40
#define MAX_EGGS 4
/* What the places on a surface that is not smooth but sampled may be short of, as part of its size. */
#define SAMPLED 0.0015

typedef struct
{
  SwPlacement frame;
  SwVector centre;
  SwVector half;
} Ellipsoid;

static double
size_of (const Ellipsoid *ellipsoid)
{
  return MAX (ellipsoid->half.x, MAX (ellipsoid->half.y, ellipsoid->half.z));
}

/* How far the ellipsoids go on paper towards x, y. */
static double
true_reach (const SwCamera  *camera,
            const Ellipsoid *ellipsoids,
            int              n,
            double           x,
            double           y)
{
  double farthest = -G_MAXDOUBLE;

  for (int i = 0; i < n; i++)
    for (int along = 0; along <= N_ALONG; along++)
      for (int around = 0; around < N_AROUND; around++)
        {
          double theta = G_PI * along / N_ALONG;
          double phi = 2 * G_PI * around / N_AROUND;
          SwVector unit = sw_vector (sin (theta) * cos (phi), sin (theta) * sin (phi), cos (theta));
          SwVector local = sw_vector (unit.x * ellipsoids[i].half.x, unit.y * ellipsoids[i].half.y,
                                      unit.z * ellipsoids[i].half.z);
          SwSpot spot = sw_see (camera, sw_place (ellipsoids[i].frame, sw_add (ellipsoids[i].centre, local)));

          farthest = MAX (farthest, spot.x * x + spot.y * y);
        }
  return farthest;
}

static double
drawn_reach (const SwCurve *curve,
             double         x,
             double         y)
{
  double farthest = -G_MAXDOUBLE;

  for (int i = 0; i < curve->n_pieces; i++)
    for (int k = 0; k <= N_BEND; k++)
      {
        double at_x;
        double at_y;

        sw_curve_get (curve, i, (double) k / N_BEND, &at_x, &at_y);
        farthest = MAX (farthest, at_x * x + at_y * y);
      }
  return farthest;
}

/* Every place of the curve turns left: it is convex. */
static void
check_convex (const SwCurve *curve)
{
  double last_x = curve->x;
  double last_y = curve->y;
  double way_x = 0;
  double way_y = 0;

  for (int i = 0; i < curve->n_pieces; i++)
    for (int k = 1; k <= N_BEND; k++)
      {
        double x;
        double y;

        sw_curve_get (curve, i, (double) k / N_BEND, &x, &y);
        if (hypot (x - last_x, y - last_y) < 1e-5)
          continue;
        g_assert_cmpfloat (way_x * (y - last_y) - way_y * (x - last_x), >=, -0.25 * TOLERANCE * hypot (way_x, way_y));
        way_x = x - last_x;
        way_y = y - last_y;
        last_x = x;
        last_y = y;
      }
}

static int
check_outline (const Ellipsoid *ellipsoids,
               int              n,
               double           turn_deg,
               double           tilt_deg)
{
  SwCamera camera = sw_camera (turn_deg, tilt_deg);
  SwEgg eggs[MAX_EGGS];
  g_auto (SwOutline) outline = { 0 };
  const SwCurve *curve;
  double sampled = 0;
  double off = 0;

  for (int i = 0; i < n; i++)
    {
      eggs[i] = sw_egg (&camera, ellipsoids[i].frame, ellipsoids[i].centre, ellipsoids[i].half);
      sampled = MAX (sampled, SAMPLED * size_of (&ellipsoids[i]));
    }
  sw_outline_from_eggs (&outline, eggs, n, TOLERANCE);
  curve = sw_outline_get_curve (&outline);
  g_assert_true (curve->closed);
  check_convex (curve);

  for (int i = 0; i < N_DIRECTIONS; i += 5)
    {
      double x = cos (2 * G_PI * i / N_DIRECTIONS);
      double y = sin (2 * G_PI * i / N_DIRECTIONS);
      double reach = true_reach (&camera, ellipsoids, n, x, y);
      double drawn = drawn_reach (curve, x, y);

      off = MAX (off, fabs (drawn - reach));
      g_assert_cmpfloat (drawn, <, reach + ALLOWED + sampled);
      g_assert_cmpfloat (drawn, >, reach - ALLOWED);
      /* Just inside and just outside. */
      g_assert_false (sw_outline_holds (&outline, x * (reach + 1), y * (reach + 1)));
    }
  for (int i = 0; i < n; i++)
    g_assert_true (sw_outline_holds (&outline, eggs[i].at.x, eggs[i].at.y));
  g_test_message ("%d pieces, off by %.5f", curve->n_pieces, off);
  return curve->n_pieces;
}

static Ellipsoid
ball_at (double x,
         double y,
         double z,
         double radius)
{
  return (Ellipsoid){ { sw_identity (), { 0, 0, 0 } }, sw_vector (x, y, z), sw_vector (radius, radius, radius) };
}

static void
test_round (void)
{
  Ellipsoid ball = ball_at (0.3, 0.1, 0.8, 0.06);

  g_assert_cmpint (check_outline (&ball, 1, 30, 20), <=, 4);
  ball = ball_at (0.3, 0.1, 0.8, 0.3);
  g_assert_cmpint (check_outline (&ball, 1, 30, 20), <=, 6);
  ball.half = sw_vector (0.2, 0.05, 0.01);
  g_assert_cmpint (check_outline (&ball, 1, 30, 20), <=, 6);
  /* A disc from its side is a line. */
  ball.half = sw_vector (0.2, 0.2, 0);
  check_outline (&ball, 1, 0, 0);
}

static void
test_limb (void)
{
  const Ellipsoid capsule[] = { ball_at (0, 0, 0, 0.03), ball_at (0.25, 0.02, 0.1, 0.02) };
  const Ellipsoid thigh[] = { ball_at (0, 0, 0, 0.065), ball_at (0.1, 0, 0.01, 0.058), ball_at (0.24, 0, 0, 0.042) };
  const Ellipsoid corners[] = { ball_at (0, 0, 0, 2e-5), ball_at (0.3, 0, 0, 2e-5), ball_at (0.3, 0, 0.4, 2e-5),
                                ball_at (0, 0, 0.4, 2e-5) };

  g_assert_cmpint (check_outline (capsule, 2, 10, 5), <=, 6);
  g_assert_cmpint (check_outline (thigh, 3, 10, 5), <=, 10);
  g_assert_cmpint (check_outline (corners, 4, 10, 5), ==, 4);
}

/* Bodies of all kinds, the same ones every time. */
static void
test_any (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (48);

  for (int i = 0; i < 60; i++)
    {
      Ellipsoid ellipsoids[MAX_EGGS];
      int n = g_rand_int_range (random, 1, MAX_EGGS + 1);

      for (int k = 0; k < n; k++)
        {
          SwMatrix axes = sw_multiply (sw_turn_x (g_rand_double_range (random, -180, 180)),
                                       sw_turn_z (g_rand_double_range (random, -180, 180)));

          ellipsoids[k] = (Ellipsoid){ { axes, { 0, 0, g_rand_double_range (random, 0, 0.1) } },
                                       sw_vector (g_rand_double_range (random, -0.15, 0.15),
                                                  g_rand_double_range (random, -0.05, 0.05), 0),
                                       sw_vector (g_rand_double_range (random, 0.012, 0.09),
                                                  g_rand_double_range (random, 0.012, 0.09),
                                                  g_rand_double_range (random, 0.012, 0.09)) };
        }
      check_outline (ellipsoids, n, g_rand_double_range (random, -180, 180), g_rand_double_range (random, -80, 80));
    }
}

static gboolean
is_right (gconstpointer data,
          double        x,
          double        y)
{
  (void) y;
  return x > *(const double *) data;
}

static void
make_circle (SwOutline *outline,
             double     x,
             double     radius)
{
  SwCamera camera = sw_camera (0, 0);
  SwEgg egg = sw_egg (&camera, (SwPlacement){ sw_identity (), { 0, 0, 0 } }, sw_vector (0, 0, 0),
                      sw_vector (radius, radius, radius));

  egg.at = (SwSpot){ x, 0, 0 };
  sw_outline_from_eggs (outline, &egg, 1, TOLERANCE);
}

static void
test_keep (void)
{
  g_auto (SwOutline) circle = { 0 };
  SwCurve runs[3];
  double edge = -2;

  make_circle (&circle, 0, 0.1);
  g_assert_cmpint (sw_curve_keep (sw_outline_get_curve (&circle), 0.01, is_right, &edge, runs, 3), ==, 1);
  g_assert_true (runs[0].closed);
  edge = 2;
  g_assert_cmpint (sw_curve_keep (sw_outline_get_curve (&circle), 0.01, is_right, &edge, runs, 3), ==, 0);
  for (edge = -0.09; edge < 0.095; edge += 0.03)
    {
      double least = 1;
      int end;

      g_assert_cmpint (sw_curve_keep (sw_outline_get_curve (&circle), 0.01, is_right, &edge, runs, 3), ==, 1);
      g_assert_false (runs[0].closed);
      end = runs[0].n_pieces - 1;
      g_assert_cmpfloat (fabs (runs[0].x - edge), <, 0.0002);
      g_assert_cmpfloat (fabs (runs[0].pieces[end].x - edge), <, 0.0002);
      g_assert_cmpfloat (runs[0].y, <, 0);
      g_assert_cmpfloat (runs[0].pieces[end].y, >, 0);
      for (int i = 0; i <= end; i++)
        for (int k = 0; k <= N_BEND; k++)
          {
            double x;
            double y;

            sw_curve_get (&runs[0], i, (double) k / N_BEND, &x, &y);
            g_assert_cmpfloat (fabs (hypot (x, y) - 0.1), <, ALLOWED);
            least = MIN (least, x);
          }
      g_assert_cmpfloat (least, >, edge - 0.0005);
    }
}

static gboolean
is_inside (gconstpointer data,
           double        x,
           double        y)
{
  return sw_outline_holds (data, x, y);
}

static double
area_of (const SwCurve *curve)
{
  double last_x = curve->x;
  double last_y = curve->y;
  double sum = 0;

  for (int i = 0; i < curve->n_pieces; i++)
    for (int k = 1; k <= N_BEND; k++)
      {
        double x;
        double y;

        sw_curve_get (curve, i, (double) k / N_BEND, &x, &y);
        sum += (last_x * y - last_y * x) / 2;
        last_x = x;
        last_y = y;
      }
  return sum;
}

/* What two circles share is as large as a lens of that breadth is, in whatever order they are given. */
static void
test_share (void)
{
  for (double apart = 0.02; apart < 0.25; apart += 0.04)
    {
      const double a = 0.1;
      const double b = 0.07;
      g_auto (SwOutline) one = { 0 };
      g_auto (SwOutline) other = { 0 };
      SwCurve shared;
      double lens = 0;

      make_circle (&one, 0, a);
      make_circle (&other, apart, b);
      if (apart <= a - b)
        lens = G_PI * b * b;
      else if (apart < a + b)
        {
          double at = (apart * apart + a * a - b * b) / (2 * apart);
          double half = sqrt (a * a - at * at);

          lens = a * a * acos (at / a) + b * b * acos ((apart - at) / b) - apart * half;
        }
      for (int i = 0; i < 2; i++)
        {
          SwOutline *first = i == 0 ? &one : &other;
          SwOutline *second = i == 0 ? &other : &one;
          gboolean any = sw_curve_share (sw_outline_get_curve (first), sw_outline_get_curve (second), 0.005, is_inside,
                                         first, second, &shared);

          g_assert_cmpint (any, ==, lens > 0);
          if (any)
            g_assert_cmpfloat (fabs (area_of (&shared) - lens), <, 0.5 * TOLERANCE);
        }
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/outline/round", test_round);
  g_test_add_func ("/outline/limb", test_limb);
  g_test_add_func ("/outline/any", test_any);
  g_test_add_func ("/outline/keep", test_keep);
  g_test_add_func ("/outline/share", test_share);
  return g_test_run ();
}
