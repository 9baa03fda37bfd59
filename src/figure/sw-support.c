/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What carries the body: where it touches the floor and things. The own body carries nothing. */
#include "config.h"

#include <string.h>

#include "sw-pad-draw.h"
#include "sw-solid.h"
#include "sw-support.h"

/* What is this near touches. */
#define TOUCH 0.020
/* Flesh and soles that touch give way by this much, which makes a patch of a round part. */
#define FLATTENED 0.010
/* A face that looks up more than that carries; the others only push. */
#define CARRIES 0.7
/* Of shoes on the floor: what ANSI/ASSE A1264.2 asks of walking surfaces, from memory. A push from beside is only as
 * strong as the feet's grip. */
#define FRICTION 0.5
/* A hand on furniture holds its edge and pulls or pushes level with so much of the body's weight, our own choice; what
 * is lower than that height is nothing to hold on to. */
#define HOLD 0.05
#define HOLD_HEIGHT 0.20
/* The dent a head makes in a pillow. */
#define PILLOW_HALF 0.03

static void
add_spot (SwSupport *self,
          double     x,
          double     y)
{
  if (self->n_spots < SW_MAX_SUPPORT_SPOTS)
    self->spots[self->n_spots++] = sw_vector (x, y, 0);
}

/* The patch that a round part makes where it lies, as far as the thing below it goes. */
static void
add_patch (SwSupport     *self,
           const SwBody  *body,
           const SwBlob  *blob,
           const SwSolid *below)
{
  SwVector at = sw_place (body->pieces[blob->piece], blob->centre);
  double high = sw_blob_get_reach (body, blob, sw_vector (0, 0, 1));
  double share = high > FLATTENED ? sqrt (1 - (1 - FLATTENED / high) * (1 - FLATTENED / high)) : 1;
  double along = share * sw_blob_get_reach (body, blob, sw_vector (1, 0, 0));
  double across = share * sw_blob_get_reach (body, blob, sw_vector (0, 1, 0));

  for (int i = 0; i < 4; i++)
    {
      double x = at.x + (i < 2 ? along : -along);
      double y = at.y + (i % 2 == 0 ? across : -across);

      if (below != NULL)
        {
          x = CLAMP (x, below->low.x - below->radius, below->high.x + below->radius);
          y = CLAMP (y, below->low.y - below->radius, below->high.y + below->radius);
        }
      add_spot (self, x, y);
    }
}

static void
add_push (SwSupport *self,
          SwVector   by)
{
  if (self->n_pushes < SW_MAX_SUPPORT_PUSHES)
    self->pushes[self->n_pushes++] = by;
}

/* Weight w beyond the feet by d is held by a push p at the height h, w d = p h, and the feet slide when p is more than
 * friction times w: d is friction times h at most. */
static void
lean_on (SwSupport *self,
         SwVector   normal,
         double     height)
{
  SwVector level = sw_unit (sw_vector (normal.x, normal.y, 0), sw_vector (1, 0, 0));

  add_push (self, sw_scale (level, -FRICTION * MAX (0.0, height)));
}

/* Likewise, but both ways. */
static void
hold_on (SwSupport *self,
         double     height)
{
  double by = HOLD * height;

  if (height < HOLD_HEIGHT)
    return;

  add_push (self, sw_vector (by, 0, 0));
  add_push (self, sw_vector (-by, 0, 0));
  add_push (self, sw_vector (0, by, 0));
  add_push (self, sw_vector (0, -by, 0));
}

static gboolean
touch_things (SwSupport     *self,
              const SwSolid *solids,
              int            n_solids,
              const SwBody  *body,
              const SwBlob  *blob)
{
  SwVector at = sw_place (body->pieces[blob->piece], blob->centre);
  gboolean is_hand = blob->piece == SW_PIECE_HAND || blob->piece == SW_SIDED (SW_PIECE_HAND, 1);
  gboolean any = FALSE;

  for (int i = 0; i < n_solids; i++)
    {
      SwVector normal;

      if (sw_solid_get_gap (&solids[i], body, blob, blob, 0, &normal) > TOUCH)
        continue;
      any = TRUE;
      if (normal.z > CARRIES)
        add_patch (self, body, blob, &solids[i]);
      else if (normal.z > -CARRIES)
        lean_on (self, normal, at.z - normal.z * sw_blob_get_reach (body, blob, normal));
      if (normal.z > CARRIES && is_hand)
        hold_on (self, at.z);
    }
  return any;
}

/* Pillows and towels under a part of the body carry it. */
static void
touch_pillows (SwSupport      *self,
               const SwSolver *solver,
               const SwBody   *body)
{
  for (int i = 0; i < solver->content->n_props; i++)
    {
      const SwFigurePropSpec *prop = &solver->content->props[i];
      SwVector at = sw_body_get_mark (body, prop->under);
      gboolean is_pillow = prop->kind == SW_FIGURE_PROP_PILLOW || prop->kind == SW_FIGURE_PROP_TOWEL;

      if (!is_pillow || prop->under == SW_FIGURE_MARK_NONE || prop->under == SW_FIGURE_MARK_RIGHT_ELBOW
          || prop->under == SW_FIGURE_MARK_LEFT_ELBOW
          || sw_pad_get_pillow_gap (prop, body) > sw_pad_get_pillow_height (solver, prop) + TOUCH)
        continue;
      for (int k = 0; k < 4; k++)
        add_spot (self, at.x + (k < 2 ? PILLOW_HALF : -PILLOW_HALF), at.y + (k % 2 == 0 ? PILLOW_HALF : -PILLOW_HALF));
    }
}

/**
 * sw_support_find:
 * @self: (out caller-allocates): what carries the body
 * @solver: the solved figure
 * @solved: one of its poses
 */
void
sw_support_find (SwSupport      *self,
                 const SwSolver *solver,
                 const SwSolved *solved)
{
  SwSolid solids[SW_MAX_SOLIDS];
  int n_solids = sw_solids_find (solver, &solved->body, solids);

  self->n_spots = 0;
  self->n_pushes = 0;
  memset (self->touching, 0, sizeof self->touching);
  touch_pillows (self, solver, &solved->body);
  for (int part = 0; part < SW_N_PARTS; part++)
    {
      SwShape shape;

      sw_shape_get (&solved->body, (SwPart) part, &shape);
      for (int i = 0; i < shape.n_hulls; i++)
        for (int k = 0; k < shape.hulls[i].n_blobs; k++)
          {
            const SwBlob *blob = &shape.hulls[i].blobs[k];

            gboolean on_floor = sw_blob_get_lowest (&solved->body, blob) < TOUCH;
            int bit = (part * SW_MAX_HULLS + i) * SW_MAX_HULL_BLOBS + k;

            if (on_floor)
              add_patch (self, &solved->body, blob, NULL);
            if (touch_things (self, solids, n_solids, &solved->body, blob) || on_floor)
              self->touching[bit / 64] |= G_GUINT64_CONSTANT (1) << bit % 64;
          }
    }
}

/**
 * sw_support_is_same:
 *
 * Returns: whether the same of the body touches something
 */
gboolean
sw_support_is_same (const SwSupport *self,
                    const SwSupport *other)
{
  return memcmp (self->touching, other->touching, sizeof self->touching) == 0;
}

static double
turn_of (SwVector a,
         SwVector b,
         SwVector c)
{
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

static int
compare_spots (const void *a,
               const void *b)
{
  const SwVector *p = a;
  const SwVector *q = b;

  if (p->x < q->x || p->x > q->x)
    return p->x < q->x ? -1 : 1;

  return p->y < q->y ? -1 : p->y > q->y;
}

/* Convex hull by monotone chain; @hull has room for one more than twice as many. Returns its size. */
static int
find_hull (SwVector *spots,
           int       n,
           SwVector *hull)
{
  int k = 0;

  qsort (spots, (gsize) n, sizeof *spots, compare_spots);
  for (int i = 0; i < n; i++)
    {
      while (k >= 2 && turn_of (hull[k - 2], hull[k - 1], spots[i]) <= 0)
        k--;
      hull[k++] = spots[i];
    }
  for (int i = n - 2, low = k + 1; i >= 0; i--)
    {
      while (k >= low && turn_of (hull[k - 2], hull[k - 1], spots[i]) <= 0)
        k--;
      hull[k++] = spots[i];
    }
  return MAX (0, k - 1);
}

/**
 * sw_support_get_outside:
 * @self: what carries a body
 * @place: where its weight is
 *
 * How far the weight is outside the base of support: the convex hull of all that carries, widened towards what pushes
 * from beside as far as the feet's grip allows.
 *
 * Returns: parts of stature; negative when inside, by the distance to the nearest edge; 1 when nothing carries it
 */
double
sw_support_get_outside (const SwSupport *self,
                        SwVector         place)
{
  int n = self->n_spots * (1 + self->n_pushes);
  g_autofree SwVector *spots = g_new (SwVector, (gsize) MAX (n, 1));
  g_autofree SwVector *hull = g_new (SwVector, (gsize) (2 * n + 1));
  double outside = -G_MAXDOUBLE;
  int size;

  for (int i = 0; i < n; i++)
    {
      int push = i / MAX (self->n_spots, 1) - 1;
      SwVector spot = self->spots[i % self->n_spots];

      spots[i] = push < 0 ? spot : sw_add (spot, self->pushes[push]);
    }
  size = find_hull (spots, n, hull);
  if (size < 3)
    return 1.0;

  for (int i = 0; i < size; i++)
    {
      SwVector a = hull[i];
      SwVector b = hull[(i + 1) % size];
      double length = MAX (1e-9, hypot (b.x - a.x, b.y - a.y));

      outside = MAX (outside, -turn_of (a, b, place) / length);
    }
  return outside;
}

/**
 * sw_solved_get_balance:
 * @solver: a solved figure
 * @solved: one of its poses
 *
 * How far the centre of mass is outside the base of support. Masses: Dempster, in Winter.
 *
 * Returns: parts of stature; negative when inside
 */
double
sw_solved_get_balance (const SwSolver *solver,
                       const SwSolved *solved)
{
  SwSupport support;

  sw_support_find (&support, solver, solved);
  return sw_support_get_outside (&support, sw_body_get_mass_centre (&solved->body));
}
