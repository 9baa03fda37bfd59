/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lays a curve of few pieces along the places of an outline, whose directions there are known. */
#include "config.h"

#include <string.h>

#include "sw-outline-private.h"

/* What is nearly straight is drawn straight: within this part of the tolerance, and bent by no more than a little. */
#define STRAIGHT 0.5
#define STRAIGHT_SIN 0.05

static const SwOutlineNode *
node_at (const SwOutlineNodes *self,
         int                   i)
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
is_near_bridge (const SwOutlineNodes *self,
                int                   from,
                int                   i,
                int                   to)
{
  if (node_at (self, i)->bridge)
    return FALSE;

  for (int k = MAX (from, i - 2); k < MIN (to, i + 3); k++)
    if (node_at (self, k)->bridge)
      return TRUE;
  return FALSE;
}

/* How far a bend leaves the outline, inwards below 0. */
typedef struct
{
  double least;
  double most;
} Deviation;

static void
note (Deviation *self,
      double     off)
{
  self->least = MIN (self->least, off);
  self->most = MAX (self->most, off);
}

/* Notes how far the bend leaves the outline where the node is. */
static void
note_node (Deviation           *self,
           const double         bend[8],
           const SwOutlineNode *node)
{
  note (self, bend_reach (bend, node->out_x, node->out_y) - (node->x * node->out_x + node->y * node->out_y));
  if (node->out_turn > node->in_turn)
    note (self, bend_reach (bend, node->in_x, node->in_y) - (node->x * node->in_x + node->y * node->in_y));
}

/* The same on the way from a node to the next. */
static void
note_between (Deviation           *self,
              const double         bend[8],
              const SwOutlineNode *node,
              const SwOutlineNode *next)
{
  double x = node->out_x + next->in_x;
  double y = node->out_y + next->in_y;
  double length = sqrt (x * x + y * y);

  note (self, (bend_reach (bend, x, y) - MAX (node->x * x + node->y * y, next->x * x + next->y * y)) / length);
}

/* Whether the bend leaves the outline nowhere by more than the tolerance, were it moved by as much as is best. Near a
 * straight line it is looked at between the nodes, too: a bend may still be straight there where the outline no longer
 * is. */
static gboolean
follows (const SwOutlineNodes *self,
         const double          bend[8],
         int                   from,
         int                   to,
         Deviation            *deviation)
{
  gboolean any_bridge = node_at (self, from)->to_bridge < to - from;

  for (int i = from; i < to && deviation->most - deviation->least <= 2 * self->tolerance; i++)
    {
      if (i > from)
        note_node (deviation, bend, node_at (self, i));
      if (any_bridge && is_near_bridge (self, from, i, to))
        note_between (deviation, bend, node_at (self, i), node_at (self, i + 1));
    }
  return deviation->most - deviation->least <= 2 * self->tolerance;
}

/* The same of three nodes only: most bends that go too far are found out there. */
static gboolean
follows_roughly (const SwOutlineNodes *self,
                 const double          bend[8],
                 int                   from,
                 int                   to,
                 Deviation            *deviation)
{
  for (int quarter = 1; quarter < 4; quarter++)
    if (quarter * (to - from) / 4 > 0)
      note_node (deviation, bend, node_at (self, from + quarter * (to - from) / 4));
  return deviation->most - deviation->least <= 2 * self->tolerance;
}

/* Lays a cubic from node @from to node @to that has the outline's directions at both ends and its height above the chord,
 * moved a little so that it leaves the outline as far inwards as outwards. Returns whether it stays within the tolerance. */
static gboolean
find_bend (const SwOutlineNodes *self,
           int                   from,
           int                   to,
           double                bend[8])
{
  const SwOutlineNode *a = node_at (self, from);
  const SwOutlineNode *b = node_at (self, to);
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

  height = sw_outline_nodes_get_reach (self, facing_x, facing_y)
           - ((a->x + b->x) * facing_x + (a->y + b->y) * facing_y) / 2;
  for (int attempt = 0; attempt < 3; attempt++)
    {
      double k = 4.0 / 3.0 * (height + moved) / slope;
      Deviation deviation = { moved, moved };

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
      if (!(attempt == 0 ? follows_roughly : follows) (self, bend, from, to, &deviation))
        return FALSE;
      if (attempt > 0 && deviation.most <= self->tolerance && deviation.least >= -self->tolerance)
        return TRUE;
      moved -= (deviation.most + deviation.least) / 2;
    }
  return FALSE;
}

/* The last node that one piece from node @from may reach: half round, and no farther than @end. */
static int
half_round (const SwOutlineNodes *self,
            int                   from,
            int                   end)
{
  double most = node_at (self, from)->out_turn + SW_OUTLINE_DIRECTIONS / 2 + (from < self->n ? 0 : SW_OUTLINE_DIRECTIONS);

  while (end > from + 1 && node_at (self, end)->in_turn + (end < self->n ? 0 : SW_OUTLINE_DIRECTIONS) > most)
    end--;
  return end;
}

/* How far one bend goes from node @from, to node @end at most. */
static int
bend_far (const SwOutlineNodes *self,
          int                   from,
          int                   end,
          double                bend[8])
{
  int good = from + 1;
  int high = half_round (self, from, end);
  gboolean any = FALSE;

  while (good < high)
    {
      double attempt[8];
      /* Most go far, and those that go too far are soon found out. */
      int to = good + (2 * (high - good) + 2) / 3;

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
bend_evenly (const SwOutlineNodes *self,
             int                   from,
             int                   far,
             int                   end,
             double                bend[8])
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
line_far (const SwOutlineNodes *self,
          int                   from,
          int                   end)
{
  const SwOutlineNode *a = node_at (self, from);
  int last = half_round (self, from, end);
  int good = from;

  for (int to = from + 1; to <= last; to++)
    {
      const SwOutlineNode *b = node_at (self, to);
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
              const SwOutlineNode *node = node_at (self, i);

              if (fabs (x * (node->y - a->y) - y * (node->x - a->x)) > STRAIGHT * self->tolerance * length)
                return good;
            }
        }
      good = to;
    }
  return good;
}

/**
 * sw_outline_nodes_lay_curve:
 * @self: the places of an outline
 * @curve: (out): a closed curve along them
 *
 * Draws along the nodes: straight where they are nearly so, in bends that reach as far as they can elsewhere.
 *
 * Returns: FALSE when that takes too many pieces
 */
gboolean
sw_outline_nodes_lay_curve (const SwOutlineNodes *self,
                            SwCurve              *curve)
{
  /* Begun where the longest straight line ends, which closing then draws. */
  int start = 0;
  double longest = 0;
  int end;

  for (int i = 0; i < self->n; i++)
    {
      const SwOutlineNode *a = node_at (self, i);
      const SwOutlineNode *b = node_at (self, i + 1);
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
