/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Outlines of hulls of ellipsoids, without a mesh: in each direction on paper the farthest of the ellipsoids' farthest
 * points. */
#include "config.h"

#include <string.h>

#include "sw-outline.h"

#define N_DIRECTIONS 48

static double cosines[N_DIRECTIONS];
static double sines[N_DIRECTIONS];

static void
prepare_directions (void)
{
  static gsize ready = 0;

  if (!g_once_init_enter (&ready))
    return;

  for (int i = 0; i < N_DIRECTIONS; i++)
    {
      cosines[i] = cos (2 * G_PI * i / N_DIRECTIONS);
      sines[i] = sin (2 * G_PI * i / N_DIRECTIONS);
    }
  g_once_init_leave (&ready, 1);
}

/**
 * sw_egg:
 * @camera: the view
 * @frame: where the piece lies
 * @centre: of the ellipsoid, within the piece
 * @half: its half-axes along the piece's axes; one may be 0 for a disc
 *
 * Returns: the ellipsoid as seen
 */
SwEgg
sw_egg (const SwCamera *camera,
        SwPlacement     frame,
        SwVector        centre,
        SwVector        half)
{
  SwSpot a = sw_see (camera, sw_scale (frame.axes.x, half.x));
  SwSpot b = sw_see (camera, sw_scale (frame.axes.y, half.y));
  SwSpot c = sw_see (camera, sw_scale (frame.axes.z, half.z));

  return (SwEgg){ .at = sw_see (camera, sw_place (frame, centre)),
                  .xx = a.x * a.x + b.x * b.x + c.x * c.x,
                  .xy = a.x * a.y + b.x * b.y + c.x * c.y,
                  .yy = a.y * a.y + b.y * b.y + c.y * c.y,
                  .xd = a.x * a.depth + b.x * b.depth + c.x * c.depth,
                  .yd = a.y * a.depth + b.y * b.depth + c.y * c.depth,
                  .dd = a.depth * a.depth + b.depth * b.depth + c.depth * c.depth };
}

/**
 * sw_egg_get_front:
 * @egg: an ellipsoid
 * @x: on paper
 * @y: on paper
 * @depth: (out): how near its surface comes there
 *
 * Returns: whether the ellipsoid is there at all
 */
gboolean
sw_egg_get_front (const SwEgg *egg,
                  double       x,
                  double       y,
                  double      *depth)
{
  double dx = x - egg->at.x;
  double dy = y - egg->at.y;
  double det = egg->xx * egg->yy - egg->xy * egg->xy;
  double u;
  double v;
  double inside;

  /* Most are passed by at once: outside the box round them. */
  if (dx * dx > egg->xx || dy * dy > egg->yy || det < 1e-14)
    return FALSE;

  u = (egg->yy * dx - egg->xy * dy) / det;
  v = (egg->xx * dy - egg->xy * dx) / det;
  inside = 1.0 - (dx * u + dy * v);
  if (inside < 0)
    return FALSE;

  *depth = egg->at.depth + egg->xd * u + egg->yd * v
           + sqrt (inside * MAX (0.0, egg->dd - (egg->xd * (egg->yy * egg->xd - egg->xy * egg->yd)
                                                 + egg->yd * (egg->xx * egg->yd - egg->xy * egg->xd)) / det));
  return TRUE;
}

/**
 * sw_outline_clear:
 */
void
sw_outline_clear (SwOutline *outline)
{
  outline->n_points = 0;
  outline->extent = sw_extent_empty ();
}

/**
 * sw_outline_add:
 *
 * Adds a point; more than SW_OUTLINE_MAX are dropped.
 */
void
sw_outline_add (SwOutline *outline,
                double     x,
                double     y)
{
  if (outline->n_points == SW_OUTLINE_MAX)
    return;

  outline->points[outline->n_points].x = x;
  outline->points[outline->n_points].y = y;
  outline->n_points++;
  sw_extent_add (&outline->extent, x, y);
}

/* Adds a point unless the last is next to it, and drops the last when the line runs through it anyway. */
static void
add_simplified (SwOutline *outline,
                double     x,
                double     y,
                double     tolerance)
{
  int n = outline->n_points;

  if (n >= 1 && hypot (x - outline->points[n - 1].x, y - outline->points[n - 1].y) < tolerance)
    return;
  if (n >= 2)
    {
      double ax = outline->points[n - 2].x;
      double ay = outline->points[n - 2].y;
      double bx = outline->points[n - 1].x - ax;
      double by = outline->points[n - 1].y - ay;
      double length = hypot (x - ax, y - ay);

      if (fabs (bx * (y - ay) - by * (x - ax)) < tolerance * length)
        {
          outline->points[n - 1].x = x;
          outline->points[n - 1].y = y;
          sw_extent_add (&outline->extent, x, y);
          return;
        }
    }
  sw_outline_add (outline, x, y);
}

/**
 * sw_outline_from_eggs:
 * @outline: (out): the outline
 * @eggs: ellipsoids
 * @n_eggs: how many
 * @tolerance: how far points may leave the true outline, parts of stature
 */
void
sw_outline_from_eggs (SwOutline   *outline,
                      const SwEgg *eggs,
                      int          n_eggs,
                      double       tolerance)
{
  prepare_directions ();
  sw_outline_clear (outline);

  for (int i = 0; i < N_DIRECTIONS; i++)
    {
      double dx = cosines[i];
      double dy = sines[i];
      double farthest = -G_MAXDOUBLE;
      double x = 0;
      double y = 0;

      for (int k = 0; k < n_eggs; k++)
        {
          const SwEgg *egg = &eggs[k];
          double sx = egg->xx * dx + egg->xy * dy;
          double sy = egg->xy * dx + egg->yy * dy;
          double root = sqrt (MAX (1e-18, sx * dx + sy * dy));
          double reach = egg->at.x * dx + egg->at.y * dy + root;

          if (reach <= farthest)
            continue;
          farthest = reach;
          x = egg->at.x + sx / root;
          y = egg->at.y + sy / root;
        }
      add_simplified (outline, x, y, tolerance);
    }
}

/**
 * sw_outline_from_hull:
 * @outline: (out): the outline
 * @body: a solved body
 * @hull: one of its hulls
 * @camera: the view
 * @tolerance: how far points may leave the true outline, parts of stature
 */
void
sw_outline_from_hull (SwOutline      *outline,
                      const SwBody   *body,
                      const SwHull   *hull,
                      const SwCamera *camera,
                      double          tolerance)
{
  SwEgg eggs[SW_MAX_HULL_BLOBS];

  for (int i = 0; i < hull->n_blobs; i++)
    eggs[i] = sw_egg (camera, body->pieces[hull->blobs[i].piece], hull->blobs[i].centre, hull->blobs[i].half);
  sw_outline_from_eggs (outline, eggs, hull->n_blobs, tolerance);
}

/**
 * sw_outline_holds:
 *
 * Returns: whether the point is inside
 */
gboolean
sw_outline_holds (const SwOutline *outline,
                  double           x,
                  double           y)
{
  int n = outline->n_points;

  if (n < 3 || x < outline->extent.left || x > outline->extent.right || y < outline->extent.bottom
      || y > outline->extent.top)
    return FALSE;

  for (int i = 0; i < n; i++)
    {
      int k = i + 1 < n ? i + 1 : 0;
      double ex = outline->points[k].x - outline->points[i].x;
      double ey = outline->points[k].y - outline->points[i].y;

      if (ex * (y - outline->points[i].y) - ey * (x - outline->points[i].x) < 0)
        return FALSE;
    }
  return TRUE;
}

/**
 * sw_outline_cut:
 * @outline: a convex outline
 * @x: a point of the cut
 * @y: a point of the cut
 * @normal_x: towards the side that stays
 * @normal_y: towards the side that stays
 * @kept: (out): what is left, possibly nothing
 */
void
sw_outline_cut (const SwOutline *outline,
                double           x,
                double           y,
                double           normal_x,
                double           normal_y,
                SwOutline       *kept)
{
  int n = outline->n_points;

  sw_outline_clear (kept);
  for (int i = 0; i < n; i++)
    {
      int k = i + 1 < n ? i + 1 : 0;
      double ax = outline->points[i].x;
      double ay = outline->points[i].y;
      double bx = outline->points[k].x;
      double by = outline->points[k].y;
      double a = (ax - x) * normal_x + (ay - y) * normal_y;
      double b = (bx - x) * normal_x + (by - y) * normal_y;

      if (a >= 0)
        sw_outline_add (kept, ax, ay);
      if ((a >= 0) != (b >= 0))
        sw_outline_add (kept, ax + (bx - ax) * a / (a - b), ay + (by - ay) * a / (a - b));
    }
}

/**
 * sw_outline_clip:
 * @outline: a convex outline
 * @to: another
 * @clipped: (out): where both are, possibly nothing
 */
void
sw_outline_clip (const SwOutline *outline,
                 const SwOutline *to,
                 SwOutline       *clipped)
{
  SwOutline other;

  *clipped = *outline;
  for (int i = 0; i < to->n_points && clipped->n_points > 0; i++)
    {
      int k = i + 1 < to->n_points ? i + 1 : 0;

      other = *clipped;
      sw_outline_cut (&other, to->points[i].x, to->points[i].y, to->points[i].y - to->points[k].y,
                      to->points[k].x - to->points[i].x, clipped);
    }
}
