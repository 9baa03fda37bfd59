/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lines on paper of straight pieces and cubic curves, and what is left of them when parts are left out. */
#include "config.h"

#include <math.h>

#include "sw-curve.h"

/* Halvings that find where a curve is cut. */
#define N_HALVINGS 8
/* Runs of one convex curve inside another. */
#define MAX_SHARED 4

/**
 * sw_curve_clear:
 *
 * Empties the curve.
 */
void
sw_curve_clear (SwCurve *self)
{
  self->n_pieces = 0;
  self->bent = 0;
  self->closed = FALSE;
}

/**
 * sw_curve_begin:
 * @x: where it begins
 * @y: where it begins
 *
 * Begins the curve anew.
 */
void
sw_curve_begin (SwCurve *self,
                double   x,
                double   y)
{
  sw_curve_clear (self);
  self->x = x;
  self->y = y;
}

/**
 * sw_curve_line:
 *
 * Adds a straight piece; more than SW_CURVE_MAX are dropped.
 */
void
sw_curve_line (SwCurve *self,
               double   x,
               double   y)
{
  if (self->n_pieces == SW_CURVE_MAX)
    return;

  self->pieces[self->n_pieces].x = x;
  self->pieces[self->n_pieces].y = y;
  self->n_pieces++;
}

/**
 * sw_curve_bend:
 * @x1: the handle of where the piece begins
 * @y1: the handle of where the piece begins
 * @x2: the handle of where it ends
 * @y2: the handle of where it ends
 * @x: its end
 * @y: its end
 *
 * Adds a cubic curve; more than SW_CURVE_MAX pieces are dropped.
 */
void
sw_curve_bend (SwCurve *self,
               double   x1,
               double   y1,
               double   x2,
               double   y2,
               double   x,
               double   y)
{
  int n = self->n_pieces;

  if (n == SW_CURVE_MAX)
    return;

  sw_curve_line (self, x, y);
  self->pieces[n].x1 = x1;
  self->pieces[n].y1 = y1;
  self->pieces[n].x2 = x2;
  self->pieces[n].y2 = y2;
  self->bent |= 1u << n;
}

/**
 * sw_curve_arc:
 * @middle: of an ellipse
 * @a: from its middle to where its angle is 0
 * @b: from its middle to where its angle is a quarter round
 * @from: the angle where the arc begins, in radians
 * @to: where it ends
 * @n_pieces: how many bends make it
 *
 * Adds an arc of an ellipse; where the curve is empty, it begins with the arc.
 */
void
sw_curve_arc (SwCurve *self,
              SwSpot   middle,
              SwSpot   a,
              SwSpot   b,
              double   from,
              double   to,
              int      n_pieces)
{
  double handle = 4.0 / 3.0 * tan ((to - from) / n_pieces / 4);
  double c = cos (from);
  double s = sin (from);

  if (self->n_pieces == 0)
    sw_curve_begin (self, middle.x + a.x * c + b.x * s, middle.y + a.y * c + b.y * s);
  for (int i = 1; i <= n_pieces; i++)
    {
      double c1 = c - handle * s;
      double s1 = s + handle * c;
      double c2;
      double s2;

      c = cos (from + (to - from) * i / n_pieces);
      s = sin (from + (to - from) * i / n_pieces);
      c2 = c + handle * s;
      s2 = s - handle * c;
      sw_curve_bend (self, middle.x + a.x * c1 + b.x * s1, middle.y + a.y * c1 + b.y * s1, middle.x + a.x * c2 + b.x * s2,
                     middle.y + a.y * c2 + b.y * s2, middle.x + a.x * c + b.x * s, middle.y + a.y * c + b.y * s);
    }
}

static gboolean
is_bent (const SwCurve *self,
         int            piece)
{
  return (self->bent >> piece & 1) != 0;
}

static double
start_x (const SwCurve *self,
         int            piece)
{
  return piece == 0 ? self->x : self->pieces[piece - 1].x;
}

static double
start_y (const SwCurve *self,
         int            piece)
{
  return piece == 0 ? self->y : self->pieces[piece - 1].y;
}

static double
bend_at (double a,
         double b,
         double c,
         double d,
         double t)
{
  double s = 1 - t;

  return s * s * s * a + 3 * s * t * (s * b + t * c) + t * t * t * d;
}

/**
 * sw_curve_get:
 * @piece: one of its pieces
 * @t: 0 where the piece begins, 1 where it ends
 * @x: (out): the place
 * @y: (out): the place
 */
void
sw_curve_get (const SwCurve *self,
              int            piece,
              double         t,
              double        *x,
              double        *y)
{
  double ax = start_x (self, piece);
  double ay = start_y (self, piece);
  double bx = self->pieces[piece].x;
  double by = self->pieces[piece].y;

  if (is_bent (self, piece))
    {
      *x = bend_at (ax, self->pieces[piece].x1, self->pieces[piece].x2, bx, t);
      *y = bend_at (ay, self->pieces[piece].y1, self->pieces[piece].y2, by, t);
    }
  else
    {
      *x = ax + (bx - ax) * t;
      *y = ay + (by - ay) * t;
    }
}

/* The handles of the part from @from to @to of a cubic. */
static void
cut_handles (double  a,
             double  b,
             double  c,
             double  d,
             double  from,
             double  to,
             double *first,
             double *second)
{
  double third = (to - from) / 3;
  double start = 1 - from;
  double end = 1 - to;

  *first = bend_at (a, b, c, d, from)
           + 3 * third * (start * start * (b - a) + 2 * start * from * (c - b) + from * from * (d - c));
  *second = bend_at (a, b, c, d, to)
            - 3 * third * (end * end * (b - a) + 2 * end * to * (c - b) + to * to * (d - c));
}

/* Adds the part from @from to @to of a piece. */
static void
add_part (SwCurve       *run,
          const SwCurve *self,
          int            piece,
          double         from,
          double         to)
{
  double x;
  double y;

  sw_curve_get (self, piece, to, &x, &y);
  if (is_bent (self, piece))
    {
      double x1;
      double y1;
      double x2;
      double y2;

      cut_handles (start_x (self, piece), self->pieces[piece].x1, self->pieces[piece].x2, self->pieces[piece].x, from, to,
                   &x1, &x2);
      cut_handles (start_y (self, piece), self->pieces[piece].y1, self->pieces[piece].y2, self->pieces[piece].y, from, to,
                   &y1, &y2);
      sw_curve_bend (run, x1, y1, x2, y2, x, y);
    }
  else
    sw_curve_line (run, x, y);
}

/**
 * sw_curve_append:
 *
 * Goes on with the pieces of @other, which begins where the curve ends.
 */
void
sw_curve_append (SwCurve       *self,
                 const SwCurve *other)
{
  for (int i = 0; i < other->n_pieces; i++)
    add_part (self, other, i, 0, 1);
}

static double
length_of (const SwCurve *self,
           int            piece)
{
  double ax = start_x (self, piece);
  double ay = start_y (self, piece);
  double bx = self->pieces[piece].x;
  double by = self->pieces[piece].y;
  double x1 = self->pieces[piece].x1;
  double y1 = self->pieces[piece].y1;
  double x2 = self->pieces[piece].x2;
  double y2 = self->pieces[piece].y2;

  if (!is_bent (self, piece))
    return hypot (bx - ax, by - ay);

  return hypot (x1 - ax, y1 - ay) + hypot (x2 - x1, y2 - y1) + hypot (bx - x2, by - y2);
}

/* Where between @low and @high of a piece the keeper changes its mind. */
static double
find_change (const SwCurve *self,
             int            piece,
             double         low,
             double         high,
             SwCurveKeeper  keeper,
             gconstpointer  data,
             gboolean       low_kept)
{
  for (int i = 0; i < N_HALVINGS; i++)
    {
      double t = (low + high) / 2;
      double x;
      double y;

      sw_curve_get (self, piece, t, &x, &y);
      if (keeper (data, x, y) == low_kept)
        low = t;
      else
        high = t;
    }
  return (low + high) / 2;
}

/**
 * sw_curve_keep:
 * @self: a closed curve
 * @step_most: it is looked at in steps of this length at most
 * @keeper: asked for each step whether it is kept
 * @data: for @keeper
 * @runs: (out): what is kept, in one piece each; the whole curve, closed, when all is kept
 * @n_runs_most: room for so many, at least 1
 *
 * Returns: how many runs
 */
int
sw_curve_keep (const SwCurve *self,
               double         step_most,
               SwCurveKeeper  keeper,
               gconstpointer  data,
               SwCurve       *runs,
               int            n_runs_most)
{
  gboolean kept = self->n_pieces > 0 && keeper (data, self->x, self->y);
  gboolean begins_kept = kept;
  SwCurve head;
  SwCurve *run = &head;
  int n_runs = 0;

  /* What is kept from the very beginning goes on where the end is kept. */
  sw_curve_begin (&head, self->x, self->y);
  for (int i = 0; i < self->n_pieces; i++)
    {
      int steps = (int) ceil (length_of (self, i) / step_most) + 1;
      double from = 0;

      for (int step = 1; step <= steps; step++)
        {
          double to = (double) step / steps;
          double x;
          double y;

          sw_curve_get (self, i, to, &x, &y);
          if (keeper (data, x, y) == kept)
            continue;

          to = find_change (self, i, (double) (step - 1) / steps, to, keeper, data, kept);
          if (kept)
            add_part (run, self, i, from, to);
          else if (n_runs == n_runs_most)
            return n_runs;
          else
            {
              run = &runs[n_runs++];
              sw_curve_get (self, i, to, &x, &y);
              sw_curve_begin (run, x, y);
            }
          from = to;
          kept = !kept;
        }
      if (kept)
        add_part (run, self, i, from, 1);
    }

  if (begins_kept && run == &head)
    runs[n_runs++] = *self;
  else if (begins_kept)
    sw_curve_append (run, &head);

  return n_runs;
}

/* Whether a run begins later on the way round x, y, counter-clockwise. */
static gboolean
is_later (const SwCurve *run,
          const SwCurve *than,
          double         x,
          double         y)
{
  return atan2 (run->y - y, run->x - x) > atan2 (than->y - y, than->x - x);
}

/**
 * sw_curve_share:
 * @a: a closed convex curve, counter-clockwise
 * @b: another
 * @step_most: they are looked at in steps of this length at most
 * @keeper: tells whether a place is inside
 * @inside_a: given to @keeper for @a
 * @inside_b: given to @keeper for @b
 * @shared: (out): round what is inside both
 *
 * Returns: whether they share anything
 */
gboolean
sw_curve_share (const SwCurve *a,
                const SwCurve *b,
                double         step_most,
                SwCurveKeeper  keeper,
                gconstpointer  inside_a,
                gconstpointer  inside_b,
                SwCurve       *shared)
{
  SwCurve runs[2 * MAX_SHARED];
  int n = sw_curve_keep (a, step_most, keeper, inside_b, runs, MAX_SHARED);
  double x = 0;
  double y = 0;

  if (n == 0 || !runs[0].closed)
    n += sw_curve_keep (b, step_most, keeper, inside_a, runs + n, MAX_SHARED);
  if (n == 0)
    return FALSE;

  for (int i = 0; i < n; i++)
    {
      x += runs[i].x / n;
      y += runs[i].y / n;
    }
  for (int i = 1; i < n; i++)
    for (int k = i; k > 0 && is_later (&runs[k - 1], &runs[k], x, y); k--)
      {
        SwCurve swapped = runs[k];

        runs[k] = runs[k - 1];
        runs[k - 1] = swapped;
      }
  *shared = runs[0];
  for (int i = 1; i < n; i++)
    sw_curve_append (shared, &runs[i]);
  if (!shared->closed)
    sw_curve_line (shared, shared->x, shared->y);
  shared->closed = TRUE;
  return TRUE;
}
