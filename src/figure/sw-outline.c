/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Outlines of hulls of ellipsoids, without a mesh: in each direction on paper the farthest of the ellipsoids' farthest
 * points. */
#include "config.h"

#include "sw-outline-private.h"

/* More than is lost by keeping seven digits: what touches the outline is still held. */
#define ROUNDED 6e-7
#define N_DIRECTIONS SW_OUTLINE_DIRECTIONS
#define HALF_ROUND (N_DIRECTIONS / 2)
/* Steps towards the line that touches two ellipsoids. */
#define N_SECANTS 4
/* Of the tolerance, what is kept to in the sampled directions; the rest is for those in between. */
#define WITHIN 0.9
#define N_COARSER 8
/* The part of the tolerance that the outline may bulge between two places, and the least part of a step that is looked
 * into. */
#define BULGE 0.5
#define LEAST_STEP (1.0 / 16)
/* Places nearer to each other than this part of the tolerance are a corner. */
#define CORNER 0.1

static double cosines[N_DIRECTIONS];
static double sines[N_DIRECTIONS];
static float near_cosines[HALF_ROUND];
static float near_sines[HALF_ROUND];

static void
prepare_directions (void)
{
  static gsize ready = 0;

  if (!g_once_init_enter (&ready))
    return;

  for (int i = 0; i < HALF_ROUND; i++)
    {
      cosines[i] = cos (2 * G_PI * i / N_DIRECTIONS);
      sines[i] = sin (2 * G_PI * i / N_DIRECTIONS);
      cosines[HALF_ROUND + i] = -cosines[i];
      sines[HALF_ROUND + i] = -sines[i];
      near_cosines[i] = (float) cosines[i];
      near_sines[i] = (float) sines[i];
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

/* How far an ellipsoid goes towards x, y, and where it does so. */
static inline double
reach_of (const SwEgg *egg,
          double       x,
          double       y,
          double      *at_x,
          double      *at_y)
{
  double sx = egg->xx * x + egg->xy * y;
  double sy = egg->xy * x + egg->yy * y;
  double root = sqrt (MAX (1e-18, sx * x + sy * y));

  *at_x = egg->at.x + sx / root;
  *at_y = egg->at.y + sy / root;
  return egg->at.x * x + egg->at.y * y + root;
}

/* The one of the ellipsoids that goes farthest towards x, y. */
static const SwEgg *
find_farthest (const SwEgg *eggs,
               int          n_eggs,
               double       x,
               double       y,
               double      *reach)
{
  const SwEgg *farthest = eggs;

  *reach = -G_MAXDOUBLE;
  for (int i = 0; i < n_eggs; i++)
    {
      const SwEgg *egg = &eggs[i];
      double here = egg->at.x * x + egg->at.y * y
                    + sqrt (MAX (1e-18, egg->xx * x * x + 2 * egg->xy * x * y + egg->yy * y * y));

      if (here <= *reach)
        continue;
      *reach = here;
      farthest = egg;
    }
  return farthest;
}

/* How far they go in each of the sampled directions, and which of them goes farthest. Each is as far from its middle one
 * way as the other. */
static void
find_reaches (const SwEgg *eggs,
              int          n_eggs,
              double       reaches[N_DIRECTIONS],
              int          farthest[N_DIRECTIONS])
{
  for (int i = 0; i < HALF_ROUND; i++)
    {
      double x = cosines[i];
      double y = sines[i];

      reaches[i] = reaches[HALF_ROUND + i] = -G_MAXDOUBLE;
      for (int k = 0; k < n_eggs; k++)
        {
          const SwEgg *egg = &eggs[k];
          double middle = egg->at.x * x + egg->at.y * y;
          double root = sqrt (MAX (1e-18, egg->xx * x * x + 2 * egg->xy * x * y + egg->yy * y * y));

          if (root + middle > reaches[i])
            {
              reaches[i] = root + middle;
              farthest[i] = k;
            }
          if (root - middle > reaches[HALF_ROUND + i])
            {
              reaches[HALF_ROUND + i] = root - middle;
              farthest[HALF_ROUND + i] = k;
            }
        }
    }
}

static gboolean
is_corner (const SwOutlineNodes *self,
           const SwOutlineNode  *node,
           double                x,
           double                y)
{
  double near = CORNER * self->tolerance;

  return (x - node->x) * (x - node->x) + (y - node->y) * (y - node->y) <= near * near;
}

static void
add_node (SwOutlineNodes *self,
          double          x,
          double          y,
          double          turn,
          double          facing_x,
          double          facing_y)
{
  SwOutlineNode *last = self->n > 0 ? &self->nodes[self->n - 1] : NULL;

  if (last == NULL || !is_corner (self, last, x, y))
    {
      if (self->n < SW_OUTLINE_MAX_NODES)
        self->nodes[self->n++] = (SwOutlineNode){ x, y, turn, facing_x, facing_y, turn, facing_x, facing_y, FALSE, 0 };
      return;
    }
  last->out_turn = turn;
  last->out_x = facing_x;
  last->out_y = facing_y;
  last->bridge = FALSE;
}

/* The direction that is @t of the way from the sampled one @turn to the next. */
static void
find_direction (int     turn,
                double  t,
                double *x,
                double *y)
{
  int next = (turn + 1) % N_DIRECTIONS;
  double length;

  if (t <= 0 || t >= 1)
    {
      *x = cosines[t <= 0 ? turn : next];
      *y = sines[t <= 0 ? turn : next];
      return;
    }
  *x = cosines[turn] + (cosines[next] - cosines[turn]) * t;
  *y = sines[turn] + (sines[next] - sines[turn]) * t;
  length = sqrt (*x * *x + *y * *y);
  *x /= length;
  *y /= length;
}

static void add_step (SwOutlineNodes *self,
                      int             turn,
                      double          low,
                      const SwEgg    *a,
                      double          high,
                      const SwEgg    *b);

/* Where one ellipsoid is so flat that the outline bulges between the two directions, places in between. */
static void
add_bulge (SwOutlineNodes *self,
           int             turn,
           double          low,
           double          high,
           const SwEgg    *egg)
{
  double flat = BULGE * self->tolerance / ((high - low) * 2 * G_PI / N_DIRECTIONS / 8);
  double middle = (low + high) / 2;
  double x;
  double y;
  double ax;
  double ay;
  double bx;
  double by;
  double reach;
  const SwEgg *farthest;

  find_direction (turn, low, &x, &y);
  reach_of (egg, x, y, &ax, &ay);
  find_direction (turn, high, &x, &y);
  reach_of (egg, x, y, &bx, &by);
  if (high - low < LEAST_STEP || (bx - ax) * (bx - ax) + (by - ay) * (by - ay) < flat * flat)
    return;

  find_direction (turn, middle, &x, &y);
  farthest = find_farthest (self->eggs, self->n_eggs, x, y, &reach);
  reach_of (farthest, x, y, &ax, &ay);
  add_step (self, turn, low, egg, middle, farthest);
  add_node (self, ax, ay, turn + middle, x, y);
  add_step (self, turn, middle, farthest, high, egg);
}

/* The line that touches @a and then @b, between the parts @low, where @a goes farther, and @high, where @b does, of the
 * step from the sampled direction @turn to the next. Others may come in between. */
static void
add_bridge (SwOutlineNodes *self,
            int             turn,
            double          low,
            const SwEgg    *a,
            double          high,
            const SwEgg    *b)
{
  double from = low;
  double to = high;
  double t = low;
  double x = 0;
  double y = 0;
  double ax = 0;
  double ay = 0;
  double bx = 0;
  double by = 0;
  double reach = 0;
  double lead_low;
  double lead_high;
  const SwEgg *between;
  double farthest;

  find_direction (turn, low, &x, &y);
  lead_low = reach_of (a, x, y, &ax, &ay) - reach_of (b, x, y, &bx, &by);
  find_direction (turn, high, &x, &y);
  lead_high = reach_of (a, x, y, &ax, &ay) - reach_of (b, x, y, &bx, &by);
  for (int i = 0; i < N_SECANTS; i++)
    {
      double lead;

      t = lead_low - lead_high > 0 ? low + (high - low) * lead_low / (lead_low - lead_high) : (low + high) / 2;
      find_direction (turn, t, &x, &y);
      reach = reach_of (a, x, y, &ax, &ay);
      lead = reach - reach_of (b, x, y, &bx, &by);
      if (lead > 0)
        {
          low = t;
          lead_low = lead;
        }
      else
        {
          high = t;
          lead_high = lead;
        }
    }

  between = find_farthest (self->eggs, self->n_eggs, x, y, &farthest);
  if (between != a && between != b && farthest > reach + CORNER * self->tolerance && to - from > LEAST_STEP)
    {
      add_step (self, turn, from, a, t, between);
      add_step (self, turn, t, between, to, b);
      return;
    }
  add_bulge (self, turn, from, t, a);
  add_node (self, ax, ay, turn + t, x, y);
  self->nodes[self->n - 1].bridge = TRUE;
  add_node (self, bx, by, turn + t, x, y);
  add_bulge (self, turn, t, to, b);
}

/* What is between the parts @low, where @a goes farthest, and @high, where @b does, of the step from the sampled direction
 * @turn to the next. */
static void
add_step (SwOutlineNodes *self,
          int             turn,
          double          low,
          const SwEgg    *a,
          double          high,
          const SwEgg    *b)
{
  if (a == b)
    add_bulge (self, turn, low, high, a);
  else
    add_bridge (self, turn, low, a, high, b);
}

static void
find_bridges (SwOutlineNodes *self)
{
  int to_bridge = SW_OUTLINE_MAX_NODES;

  for (int i = 2 * self->n - 1; i >= 0; i--)
    {
      SwOutlineNode *node = &self->nodes[i % self->n];

      to_bridge = node->bridge ? 0 : to_bridge + 1;
      node->to_bridge = to_bridge;
    }
}

/* Finds the places of the outline: the farthest in all directions, and where straight lines begin and end. */
static void
find_nodes (SwOutlineNodes *self)
{
  double reaches[N_DIRECTIONS];
  int farthest[N_DIRECTIONS];
  const SwOutlineNode *last;
  SwOutlineNode *first;

  find_reaches (self->eggs, self->n_eggs, reaches, farthest);
  for (int i = 0; i < N_DIRECTIONS; i++)
    {
      const SwEgg *egg = &self->eggs[farthest[i]];
      double x;
      double y;

      reach_of (egg, cosines[i], sines[i], &x, &y);
      add_node (self, x, y, i, cosines[i], sines[i]);
      add_step (self, i, 0, egg, 1, &self->eggs[farthest[(i + 1) % N_DIRECTIONS]]);
    }

  first = &self->nodes[0];
  last = &self->nodes[self->n - 1];
  if (self->n > 1 && is_corner (self, last, first->x, first->y))
    {
      first->in_turn = last->in_turn - N_DIRECTIONS;
      first->in_x = last->in_x;
      first->in_y = last->in_y;
      self->n--;
    }
  find_bridges (self);
}

/**
 * sw_outline_nodes_get_reach:
 *
 * Returns: how far the outline goes towards x, y
 */
double
sw_outline_nodes_get_reach (const SwOutlineNodes *self,
                            double                x,
                            double                y)
{
  double reach;

  find_farthest (self->eggs, self->n_eggs, x, y, &reach);
  return reach;
}

/**
 * sw_outline_from_eggs:
 * @outline: (out): the outline; free what it holds with sw_outline_clear()
 * @eggs: ellipsoids
 * @n_eggs: how many
 * @tolerance: how far the curve may leave the true outline, parts of stature
 */
void
sw_outline_from_eggs (SwOutline   *outline,
                      const SwEgg *eggs,
                      int          n_eggs,
                      double       tolerance)
{
  double reaches[N_DIRECTIONS];
  int farthest[N_DIRECTIONS];

  prepare_directions ();
  find_reaches (eggs, n_eggs, reaches, farthest);
  for (int i = 0; i < N_DIRECTIONS; i++)
    outline->reaches[i] = (float) (reaches[i] + ROUNDED);
  outline->extent = (SwExtent){ -outline->reaches[HALF_ROUND], -outline->reaches[3 * N_DIRECTIONS / 4],
                                outline->reaches[0], outline->reaches[N_DIRECTIONS / 4] };
  outline->eggs = g_memdup2 (eggs, (gsize) n_eggs * sizeof *eggs);
  outline->n_eggs = n_eggs;
  outline->tolerance = tolerance;
  outline->curve = NULL;
}

/**
 * sw_outline_from_hull:
 * @outline: (out): the outline; free what it holds with sw_outline_clear()
 * @body: a solved body
 * @hull: one of its hulls
 * @camera: the view
 * @tolerance: how far the curve may leave the true outline, parts of stature
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

void
sw_outline_clear (SwOutline *outline)
{
  g_clear_pointer (&outline->eggs, g_free);
  g_clear_pointer (&outline->curve, g_free);
}

/**
 * sw_outline_get_curve:
 *
 * Returns: (transfer none): the outline as it is drawn, counter-clockwise
 */
const SwCurve *
sw_outline_get_curve (SwOutline *outline)
{
  SwOutlineNodes nodes;

  if (outline->curve != NULL)
    return outline->curve;

  nodes.eggs = outline->eggs;
  nodes.n_eggs = outline->n_eggs;
  nodes.tolerance = WITHIN * outline->tolerance;
  nodes.n = 0;
  find_nodes (&nodes);
  outline->curve = g_new (SwCurve, 1);
  /* Coarser when that would be more pieces than there is room for. */
  for (int i = 0; i < N_COARSER && !sw_outline_nodes_lay_curve (&nodes, outline->curve); i++)
    nodes.tolerance *= 2;
  g_clear_pointer (&outline->eggs, g_free);
  return outline->curve;
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
  const float *ahead = outline->reaches;
  const float *behind = outline->reaches + HALF_ROUND;
  float near_x = (float) x;
  float near_y = (float) y;
  int outside = 0;

  if (x < outline->extent.left || x > outline->extent.right || y < outline->extent.bottom || y > outline->extent.top)
    return FALSE;

  /* Without leaving early: so several directions are looked at in one. */
  for (int i = 0; i < HALF_ROUND; i++)
    {
      float far = near_cosines[i] * near_x + near_sines[i] * near_y;

      outside |= (far > ahead[i]) | (-far > behind[i]);
    }
  return !outside;
}
