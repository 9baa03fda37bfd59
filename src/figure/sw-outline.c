/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Outlines of hulls of ellipsoids, without a mesh: in each direction on paper the farthest of the ellipsoids' farthest
 * points. */
#include "config.h"

#include <string.h>

#include "sw-outline.h"

#define N_DIRECTIONS SW_OUTLINE_DIRECTIONS
#define MAX_NODES (4 * N_DIRECTIONS)
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
/* What is nearly straight is drawn straight: within this part of the tolerance, and bent by no more than a little. */
#define STRAIGHT 0.5
#define STRAIGHT_SIN 0.05
#define LARGE_TURN 6

/**
 * Node:
 * @x: where it is
 * @y: where it is
 * @in_turn: the direction that the outline faces where it arrives, in steps of the sampled ones
 * @in_x: that direction
 * @in_y: that direction
 * @out_turn: the direction it faces where it leaves; another one at a corner
 * @out_x: that direction
 * @out_y: that direction
 * @bridge: whether a straight line leads from here to the next, touching two ellipsoids
 *
 * A place of an outline.
 */
typedef struct
{
  double x;
  double y;
  double in_turn;
  double in_x;
  double in_y;
  double out_turn;
  double out_x;
  double out_y;
  gboolean bridge;
} Node;

/**
 * Nodes:
 *
 * The places of an outline, counter-clockwise, while a curve is laid through them.
 */
typedef struct
{
  const SwEgg *eggs;
  int n_eggs;
  double tolerance;
  Node nodes[MAX_NODES];
  int n;
} Nodes;

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

static gboolean
is_corner (const Nodes *self,
           const Node  *node,
           double       x,
           double       y)
{
  double near = CORNER * self->tolerance;

  return (x - node->x) * (x - node->x) + (y - node->y) * (y - node->y) <= near * near;
}

static void
add_node (Nodes  *self,
          double  x,
          double  y,
          double  turn,
          double  facing_x,
          double  facing_y)
{
  Node *last = self->n > 0 ? &self->nodes[self->n - 1] : NULL;

  if (last == NULL || !is_corner (self, last, x, y))
    {
      if (self->n < MAX_NODES)
        self->nodes[self->n++] = (Node){ x, y, turn, facing_x, facing_y, turn, facing_x, facing_y, FALSE };
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

  *x = cosines[turn] + (cosines[next] - cosines[turn]) * t;
  *y = sines[turn] + (sines[next] - sines[turn]) * t;
  length = sqrt (*x * *x + *y * *y);
  *x /= length;
  *y /= length;
}

static void add_step (Nodes       *self,
                      int          turn,
                      double       low,
                      const SwEgg *a,
                      double       high,
                      const SwEgg *b);

/* Where one ellipsoid is so flat that the outline bulges between the two directions, places in between. */
static void
add_bulge (Nodes       *self,
           int          turn,
           double       low,
           double       high,
           const SwEgg *egg)
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
add_bridge (Nodes       *self,
            int          turn,
            double       low,
            const SwEgg *a,
            double       high,
            const SwEgg *b)
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
add_step (Nodes       *self,
          int          turn,
          double       low,
          const SwEgg *a,
          double       high,
          const SwEgg *b)
{
  if (a == b)
    add_bulge (self, turn, low, high, a);
  else
    add_bridge (self, turn, low, a, high, b);
}

/* Finds the places of the outline: the farthest in all directions, and where straight lines begin and end. */
static void
find_nodes (Nodes     *self,
            SwOutline *outline)
{
  const SwEgg *last_egg = NULL;
  const Node *last;
  Node *first;

  for (int i = 0; i <= N_DIRECTIONS; i++)
    {
      int k = i % N_DIRECTIONS;
      double reach;
      const SwEgg *egg = find_farthest (self->eggs, self->n_eggs, cosines[k], sines[k], &reach);
      double x;
      double y;

      if (last_egg != NULL)
        add_step (self, i - 1, 0, last_egg, 1, egg);
      last_egg = egg;
      if (i == N_DIRECTIONS)
        break;
      outline->reaches[i] = reach;
      reach_of (egg, cosines[k], sines[k], &x, &y);
      add_node (self, x, y, i, cosines[k], sines[k]);
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
  outline->extent = (SwExtent){ -outline->reaches[N_DIRECTIONS / 2], -outline->reaches[3 * N_DIRECTIONS / 4],
                                outline->reaches[0], outline->reaches[N_DIRECTIONS / 4] };
}

static const Node *
node_at (const Nodes *self,
         int          i)
{
  return &self->nodes[i < self->n ? i : i - self->n];
}

/* How far a cubic goes towards x, y, where it faces that way somewhere. */
static double
bend_reach (const double bend[8],
            double       x,
            double       y)
{
  double a = bend[0] * x + bend[1] * y;
  double b = bend[2] * x + bend[3] * y;
  double c = bend[4] * x + bend[5] * y;
  double d = bend[6] * x + bend[7] * y;
  double rise = b - a;
  double half = c - b - rise;
  double square = d - c - (c - b) - half;
  double below = sqrt (MAX (0.0, half * half - square * rise)) - half;
  double t = below > 1e-12 ? CLAMP (rise / below, 0.0, 1.0) : 0.5;
  double s = 1 - t;

  return s * s * s * a + 3 * s * t * (s * b + t * c) + t * t * t * d;
}

/* Whether the bend from node @from to node @to goes along a straight line just before node @i or just after the next. */
static gboolean
is_near_bridge (const Nodes *self,
                int          from,
                int          i,
                int          to)
{
  if (node_at (self, i)->bridge)
    return FALSE;

  for (int k = MAX (from, i - 2); k < MIN (to, i + 3); k++)
    if (node_at (self, k)->bridge)
      return TRUE;
  return FALSE;
}

/* Notes how far the bend leaves the outline where node @i is, and on the way to the next node near a straight line: a bend
 * may still be straight there where the outline no longer is. */
static void
note_deviation (const Nodes *self,
                const double bend[8],
                int          from,
                int          i,
                int          to,
                double      *least,
                double      *most)
{
  const Node *node = node_at (self, i);
  const Node *next = node_at (self, i + 1);

  if (i > from)
    {
      double off = bend_reach (bend, node->out_x, node->out_y) - (node->x * node->out_x + node->y * node->out_y);

      *least = MIN (*least, off);
      *most = MAX (*most, off);
      if (node->out_turn > node->in_turn)
        {
          off = bend_reach (bend, node->in_x, node->in_y) - (node->x * node->in_x + node->y * node->in_y);
          *least = MIN (*least, off);
          *most = MAX (*most, off);
        }
    }
  if (is_near_bridge (self, from, i, to))
    {
      double x = node->out_x + next->in_x;
      double y = node->out_y + next->in_y;
      double length = sqrt (x * x + y * y);
      double off = (bend_reach (bend, x, y) - MAX (node->x * x + node->y * y, next->x * x + next->y * y)) / length;

      *least = MIN (*least, off);
      *most = MAX (*most, off);
    }
}

/* Lays a cubic from node @from to node @to that has the outline's directions at both ends and its height above the chord,
 * moved a little so that it leaves the outline as far inwards as outwards. Returns whether it stays within the tolerance. */
static gboolean
find_bend (const Nodes *self,
           int          from,
           int          to,
           double       bend[8])
{
  const Node *a = node_at (self, from);
  const Node *b = node_at (self, to);
  double chord_x = b->x - a->x;
  double chord_y = b->y - a->y;
  double length = sqrt (chord_x * chord_x + chord_y * chord_y);
  double facing_x = chord_y / length;
  double facing_y = -chord_x / length;
  /* Tangents are the directions faced, a quarter turn on. */
  double p = chord_x * b->in_x + chord_y * b->in_y;
  double q = -chord_x * a->out_x - chord_y * a->out_y;
  double corner = a->out_x * b->in_y - a->out_y * b->in_x;
  double slope_x = (-p * a->out_y + q * b->in_y) / 2;
  double slope_y = (p * a->out_x - q * b->in_x) / 2;
  double slope = slope_x * facing_x + slope_y * facing_y;
  double moved = 0;
  double height;

  if (length <= 0 || p <= 0 || q <= 0 || slope < 1e-4 * length * length)
    return FALSE;

  find_farthest (self->eggs, self->n_eggs, facing_x, facing_y, &height);
  height -= (a->x + b->x) / 2 * facing_x + (a->y + b->y) / 2 * facing_y;
  for (int attempt = 0; attempt < 2; attempt++)
    {
      double k = 4.0 / 3.0 * (height + moved) / slope;
      double least = moved;
      double most = moved;

      if (k <= 0 || k * corner > 1)
        return FALSE;
      bend[0] = a->x;
      bend[1] = a->y;
      bend[2] = a->x - k * p * a->out_y;
      bend[3] = a->y + k * p * a->out_x;
      bend[4] = b->x + k * q * b->in_y;
      bend[5] = b->y - k * q * b->in_x;
      bend[6] = b->x;
      bend[7] = b->y;
      for (int i = from; i < to; i++)
        {
          note_deviation (self, bend, from, i, to, &least, &most);
          if (most - least > 2 * self->tolerance)
            return FALSE;
        }
      if (most <= self->tolerance && least >= -self->tolerance)
        return TRUE;
      moved = -(most + least) / 2;
    }
  return FALSE;
}

/* The last node that one piece from node @from may reach: half round, and no farther than @end. */
static int
half_round (const Nodes *self,
            int          from,
            int          end)
{
  double most = node_at (self, from)->out_turn + N_DIRECTIONS / 2 + (from < self->n ? 0 : N_DIRECTIONS);

  while (end > from + 1 && node_at (self, end)->in_turn + (end < self->n ? 0 : N_DIRECTIONS) > most)
    end--;
  return end;
}

/* How far one bend goes from node @from, to node @end at most. */
static int
bend_far (const Nodes *self,
          int          from,
          int          end,
          double       bend[8])
{
  int good = from + 1;
  int high = half_round (self, from, end);
  gboolean any = FALSE;

  while (good < high)
    {
      double attempt[8];
      int to = (good + high + 1) / 2;

      if (find_bend (self, from, to, attempt))
        {
          good = to;
          any = TRUE;
          memcpy (bend, attempt, sizeof attempt);
        }
      else
        high = to - 1;
    }
  return any ? good : from;
}

/* How far one of several alike bends goes from node @from, where the longest possible one would reach @far: no further
 * than to the next straight line, and so that none of them is a mere rest. */
static int
bend_evenly (const Nodes *self,
             int          from,
             int          far,
             int          end,
             double       bend[8])
{
  double attempt[8];
  int stop = from + 1;
  int n_bends = 1;
  int to;

  while (stop < end && !node_at (self, stop)->bridge)
    stop++;
  if (far >= stop)
    return far;

  for (int at = far; at < stop; n_bends++)
    at = MAX (bend_far (self, at, stop, attempt), at + 1);
  to = from + (stop - from + n_bends - 1) / n_bends;
  if (to >= far || to == from + 1 || !find_bend (self, from, to, attempt))
    return far;

  memcpy (bend, attempt, sizeof attempt);
  return to;
}

/* How far a straight line goes from node @from, to node @end at most. */
static int
line_far (const Nodes *self,
          int          from,
          int          end)
{
  const Node *a = node_at (self, from);
  int last = half_round (self, from, end);
  int good = from;

  for (int to = from + 1; to <= last; to++)
    {
      const Node *b = node_at (self, to);
      double x = b->x - a->x;
      double y = b->y - a->y;
      double length = sqrt (x * x + y * y);

      if (to > from + 1 || !a->bridge)
        {
          if (fabs (x * a->out_x + y * a->out_y) > STRAIGHT_SIN * length
              || fabs (x * b->in_x + y * b->in_y) > STRAIGHT_SIN * length)
            continue;
          for (int i = from + 1; i < to; i++)
            {
              const Node *node = node_at (self, i);

              if (fabs (x * (node->y - a->y) - y * (node->x - a->x)) > STRAIGHT * self->tolerance * length)
                return good;
            }
        }
      good = to;
    }
  return good;
}

/* Draws along the nodes: straight where they are nearly so, in bends that reach as far as they can elsewhere. Returns
 * FALSE when that takes too many pieces. */
static gboolean
lay_curve (const Nodes *self,
           SwCurve     *curve)
{
  /* Begun where the longest straight line ends, which closing then draws. */
  int start = 0;
  double longest = 0;
  int end;

  for (int i = 0; i < self->n; i++)
    {
      const Node *a = node_at (self, i);
      const Node *b = node_at (self, i + 1);
      double length = (b->x - a->x) * (b->x - a->x) + (b->y - a->y) * (b->y - a->y);

      if (a->bridge && length > longest)
        {
          longest = length;
          start = (i + 1) % self->n;
        }
    }
  end = start + self->n;
  sw_curve_begin (curve, self->nodes[start].x, self->nodes[start].y);
  curve->closed = TRUE;
  for (int at = start; at < end;)
    {
      double bend[8];
      double after[8];
      int straight = line_far (self, at, end);
      int bent = bend_far (self, at, end, bend);
      int to;

      /* Two to keep free for what is cut at both ends. */
      if (curve->n_pieces == SW_CURVE_MAX - 2)
        return FALSE;
      if (straight >= bent || (straight > at && bend_far (self, straight, end, after) > bent + 1))
        {
          to = MAX (straight, at + 1);
          sw_curve_line (curve, node_at (self, to)->x, node_at (self, to)->y);
        }
      else
        {
          to = bend_evenly (self, at, bent, end, bend);
          sw_curve_bend (curve, bend[2], bend[3], bend[4], bend[5], bend[6], bend[7]);
        }
      at = to;
    }
  return TRUE;
}

/**
 * sw_outline_from_eggs:
 * @outline: (out): the outline
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
  Nodes nodes;

  nodes.eggs = eggs;
  nodes.n_eggs = n_eggs;
  nodes.tolerance = WITHIN * tolerance;
  nodes.n = 0;
  prepare_directions ();
  find_nodes (&nodes, outline);
  /* Coarser when that would be more pieces than there is room for. */
  for (int i = 0; i < N_COARSER && !lay_curve (&nodes, &outline->curve); i++)
    nodes.tolerance *= 2;
}

/**
 * sw_outline_from_hull:
 * @outline: (out): the outline
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
  if (x < outline->extent.left || x > outline->extent.right || y < outline->extent.bottom || y > outline->extent.top)
    return FALSE;

  /* In large turns: what is outside is so in many directions, and found out early. */
  for (int first = 0; first < LARGE_TURN; first++)
    for (int i = first; i < N_DIRECTIONS; i += LARGE_TURN)
      if (cosines[i] * x + sines[i] * y > outline->reaches[i])
        return FALSE;
  return TRUE;
}
