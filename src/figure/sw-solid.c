/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What does not let the body through, and how near the body is to it. The floor is none of them. */
#include "config.h"

#include <glib/gi18n.h>
#include <string.h>

#include "sw-ball-draw.h"
#include "sw-furniture.h"
#include "sw-pad-draw.h"
#include "sw-solid.h"

/* Cushions and big balls give way. */
#define CUSHION_SOFT 0.014
#define BALL_SOFT 0.034
#define WALL_BEHIND 1.0

static void
add_solid (SwSolid    *solids,
           int        *n,
           const char *name,
           SwVector    low,
           SwVector    high,
           double      radius,
           double      soft)
{
  if (*n < SW_MAX_SOLIDS)
    solids[(*n)++] = (SwSolid){ name, low, high, radius, soft };
}

/* A wall is drawn thin; what is behind its face is in it all the same. */
static void
thicken_wall (SwSolid       *solid,
              SwFigureWhere  where)
{
  if (where == SW_FIGURE_WHERE_FRONT)
    solid->high.x += WALL_BEHIND;
  else if (where == SW_FIGURE_WHERE_BEHIND)
    solid->low.x -= WALL_BEHIND;
  else if (where == SW_FIGURE_WHERE_LEFT)
    solid->high.y += WALL_BEHIND;
  else
    solid->low.y -= WALL_BEHIND;
}

/**
 * sw_solids_find:
 * @solver: a solved figure
 * @body: one of its bodies: balls and rollers roll with it
 * @solids: (out): the things
 *
 * Returns: how many there are
 */
int
sw_solids_find (const SwSolver *solver,
                const SwBody   *body,
                SwSolid         solids[SW_MAX_SOLIDS])
{
  SwBox boxes[SW_MAX_BOXES];
  SwGround ground;
  int n_boxes;
  int n = 0;

  sw_ground_measure (&ground, solver);
  n_boxes = sw_furniture_get_boxes (solver, &ground, boxes);
  for (int i = 0; i < n_boxes; i++)
    if (boxes[i].high.z > 0)
      {
        add_solid (solids, &n, boxes[i].name, boxes[i].low, boxes[i].high, 0, 0);
        if (strcmp (boxes[i].name, "wall") == 0)
          thicken_wall (&solids[n - 1], solver->scene.wall_where);
      }

  for (int i = 0; i < solver->content->n_props; i++)
    {
      const SwFigurePropSpec *prop = &solver->content->props[i];
      SwVector low;
      SwVector high;
      double radius;

      if (prop->kind == SW_FIGURE_PROP_BALL && sw_ball_is_big (prop))
        {
          low = sw_ball_find_big (solver, prop, body, &radius);
          add_solid (solids, &n, N_ ("ball"), low, low, radius, BALL_SOFT);
        }
      else if (prop->kind == SW_FIGURE_PROP_ROLLER)
        {
          radius = sw_pad_find_roller (solver, prop, body, &low, &high);
          add_solid (solids, &n, N_ ("roller"), low, high, radius, 0);
        }
      else if (prop->kind == SW_FIGURE_PROP_CUSHION && prop->between == SW_FIGURE_BETWEEN_NONE)
        {
          sw_pad_find_cushion (solver, prop, &low, &high);
          add_solid (solids, &n, N_ ("cushion"), low, high, 0, CUSHION_SOFT);
        }
    }
  return n;
}

/* The way out of the core for a place in it: through the nearest side. */
static double
find_way_out (const SwSolid *self,
              const SwBody  *body,
              const SwBlob  *from,
              const SwBlob  *to,
              double         t,
              SwVector       at,
              SwVector      *normal)
{
  const double ways[6] = { self->high.x - at.x, at.x - self->low.x, self->high.y - at.y,
                           at.y - self->low.y,  self->high.z - at.z, at.z - self->low.z };
  static const SwVector normals[6]
      = { { 1, 0, 0 }, { -1, 0, 0 }, { 0, 1, 0 }, { 0, -1, 0 }, { 0, 0, 1 }, { 0, 0, -1 } };
  double least = G_MAXDOUBLE;

  for (int i = 0; i < 6; i++)
    {
      double reach
          = (1 - t) * sw_blob_get_reach (body, from, normals[i]) + t * sw_blob_get_reach (body, to, normals[i]);

      /* Nothing leaves what stands on the floor downwards. */
      if (ways[i] + reach < least && !(i == 5 && self->low.z - self->radius < 1e-6))
        {
          least = ways[i] + reach;
          *normal = normals[i];
        }
    }
  return -least - self->radius;
}

/**
 * sw_solid_get_gap:
 * @self: a thing
 * @body: a solved body
 * @from: one of its ellipsoids
 * @to: another one of the same hull
 * @t: 0 for the first, 1 for the second, or what lies in between
 * @normal: (out): from the thing to the body where they are nearest
 *
 * Returns: how far apart they are, parts of stature; negative by how deep the body is in it
 */
double
sw_solid_get_gap (const SwSolid *self,
                  const SwBody  *body,
                  const SwBlob  *from,
                  const SwBlob  *to,
                  double         t,
                  SwVector      *normal)
{
  SwVector at = sw_mix (sw_place (body->pieces[from->piece], from->centre),
                        sw_place (body->pieces[to->piece], to->centre), t);
  SwVector near = sw_vector (CLAMP (at.x, self->low.x, self->high.x), CLAMP (at.y, self->low.y, self->high.y),
                             CLAMP (at.z, self->low.z, self->high.z));
  SwVector away = sw_sub (at, near);
  double distance = sw_length (away);

  if (distance < 1e-9)
    return find_way_out (self, body, from, to, t, at, normal);

  *normal = sw_scale (away, 1 / distance);
  return distance - self->radius - (1 - t) * sw_blob_get_reach (body, from, *normal)
         - t * sw_blob_get_reach (body, to, *normal);
}
