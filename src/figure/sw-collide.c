/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bodies in furniture and other things, and bodies that stay away from what carries them. */
#include "config.h"

#include <glib/gi18n.h>
#include <string.h>

#include "sw-collide.h"

/* Flesh and clothes give way by this much, more what one sits on; all in parts of stature. */
#define GIVES 0.012
#define GIVES_SEAT 0.034
/* What should touch may stay away by no more. */
#define AWAY 0.012
/* A hand that the author lifts by more than this is meant to hover. */
#define LIFTED 0.005
/* A sole that is higher than that is lifted. */
#define HOVERS 0.024
#define HOVERS_LYING 0.050
#define N_SAMPLES 6

static double
gap_of_hull (const SwSolid *solid,
             const SwBody  *body,
             const SwHull  *hull)
{
  double least = G_MAXDOUBLE;
  SwVector normal;

  for (int i = 0; i < hull->n_blobs; i++)
    for (int k = i; k < hull->n_blobs; k++)
      for (int n = 0; n <= (i == k ? 0 : N_SAMPLES); n++)
        least = MIN (least, sw_solid_get_gap (solid, body, &hull->blobs[i], &hull->blobs[k], (double) n / N_SAMPLES,
                                              &normal));

  return least;
}

/**
 * sw_solid_get_part_gap:
 * @solid: a thing
 * @body: a solved body
 * @part: a part of it
 *
 * Returns: how far apart they are, parts of stature; negative by how deep the part is in the thing
 */
double
sw_solid_get_part_gap (const SwSolid *solid,
                       const SwBody  *body,
                       SwPart         part)
{
  double least = G_MAXDOUBLE;
  SwShape shape;

  sw_shape_get (body, part, &shape);
  for (int i = 0; i < shape.n_hulls; i++)
    least = MIN (least, gap_of_hull (solid, body, &shape.hulls[i]));

  return least;
}

static gboolean
is_called (const SwSolid *solid,
           const char    *name)
{
  return strcmp (solid->name, name) == 0;
}

static gboolean
is_seat (const SwSolid *solid)
{
  return is_called (solid, "chair") || is_called (solid, "bed");
}

static double
get_allowed (const SwSolid *solid,
             int            part)
{
  gboolean sits = part == (int) SW_PART_TRUNK || part == (int) SW_PART_THIGH || part == (int) SW_PART_THIGH + 1;

  return MAX (is_seat (solid) && sits ? GIVES_SEAT : GIVES, solid->soft);
}

static void
add (SwCollision *collisions,
     int         *n,
     const char  *thing,
     int          part,
     double       depth)
{
  for (int i = 0; i < *n; i++)
    if (collisions[i].part == (SwPart) part && strcmp (collisions[i].thing, thing) == 0
        && (collisions[i].depth > 0) == (depth > 0))
      {
        if (fabs (depth) > fabs (collisions[i].depth))
          collisions[i].depth = depth;
        return;
      }
  if (*n < SW_MAX_COLLISIONS)
    collisions[(*n)++] = (SwCollision){ thing, (SwPart) part, depth };
}

static const char *
get_thing (SwFigurePlace to)
{
  switch (to)
    {
    case SW_FIGURE_PLACE_COUNTER:
      return "counter";
    case SW_FIGURE_PLACE_TABLE:
      return "table";
    case SW_FIGURE_PLACE_STEP:
      return "step";
    case SW_FIGURE_PLACE_WALL:
      return "wall";
    case SW_FIGURE_PLACE_CHAIR_BACK:
      return "chair";
    default:
      return NULL;
    }
}

/* A hand or foot that is pinned to a thing has to be at it. */
static void
find_far_limbs (const SwSolver *solver,
                const SwPose   *pose,
                const SwSolved *solved,
                const SwSolid  *solids,
                int             n_solids,
                SwCollision    *collisions,
                int            *n)
{
  for (int limb = 0; limb < SW_N_LIMBS; limb++)
    {
      const SwFigurePin *pin = &pose->pins[limb];
      const SwFigurePin *first = &solver->poses[0].pins[limb];
      gboolean kept = pin->to == SW_FIGURE_PLACE_START && solver->poses[0].pinned[limb];
      const char *thing = get_thing (kept ? first->to : pin->to);
      int part = limb < (int) SW_LIMB_RIGHT_LEG ? (int) SW_PART_HAND + limb : (int) SW_PART_FOOT + limb % 2;
      double least = G_MAXDOUBLE;

      if (!pose->pinned[limb] || !solved->held[limb] || thing == NULL || pin->offset[2] > LIFTED
          || (kept && first->offset[2] > LIFTED) || pin->limb == SW_FIGURE_LIMB_FOREARM)
        continue;
      for (int i = 0; i < n_solids; i++)
        if (is_called (&solids[i], thing))
          least = MIN (least, sw_solid_get_part_gap (&solids[i], &solved->body, (SwPart) part));
      if (least < G_MAXDOUBLE && least > AWAY)
        add (collisions, n, thing, part, -least);
    }
}

/* A foot whose sole is meant to lie at a slope, just above the ground, should be on it. */
static void
find_hovering_feet (const SwSolver *solver,
                    const SwSolved *solved,
                    const SwSolid  *solids,
                    int             n_solids,
                    SwCollision    *collisions,
                    int            *n)
{
  SwFigureBase base = solver->content->poses[0].base;
  gboolean lies = base == SW_FIGURE_BASE_ON_BACK || base == SW_FIGURE_BASE_ON_BACK_KNEES_BENT;

  if ((solver->base->on_mat && !lies) || solved->lift > 0)
    return;

  for (int side = 0; side < 2; side++)
    {
      SwPart part = (SwPart) SW_SIDED (SW_PART_FOOT, side);
      double gap = sw_part_get_lowest (&solved->body, part);

      for (int i = 0; i < n_solids; i++)
        gap = MIN (gap, sw_solid_get_part_gap (&solids[i], &solved->body, part));
      if (solved->level[side] && gap > AWAY && gap < (lies ? HOVERS_LYING : HOVERS))
        add (collisions, n, N_ ("floor"), (int) part, -gap);
    }
}

/* Who sits, anchored by the hips, touches the seat. */
static void
find_far_seat (const SwSolver *solver,
               const SwSolved *solved,
               const SwSolid  *solids,
               int             n_solids,
               SwCollision    *collisions,
               int            *n)
{
  const SwFigurePose *first = &solver->content->poses[0];
  double least = G_MAXDOUBLE;
  const char *thing = NULL;

  if (first->base != SW_FIGURE_BASE_SITTING || solver->keys[0].body.fine
      || (first->anchor != SW_FIGURE_ANCHOR_AUTO && first->anchor != SW_FIGURE_ANCHOR_HIPS))
    return;

  for (int i = 0; i < n_solids; i++)
    for (int part = 0; part < SW_N_PARTS && (is_seat (&solids[i]) || is_called (&solids[i], "ball")); part++)
      if (part == (int) SW_PART_TRUNK || part == (int) SW_PART_THIGH || part == (int) SW_PART_THIGH + 1)
        {
          least = MIN (least, sw_solid_get_part_gap (&solids[i], &solved->body, (SwPart) part));
          thing = solids[i].name;
        }
  if (thing != NULL && least > AWAY)
    add (collisions, n, thing, SW_PART_TRUNK, -least);
}

/**
 * sw_collisions_find:
 * @solver: a solved figure
 * @pose: the written pose whose pins count
 * @solved: where it has the body
 * @is_written: whether that is the written pose rather than one on the way
 * @collisions: (out): what is wrong, the worst of each part and thing
 *
 * Returns: how many there are
 */
int
sw_collisions_find (const SwSolver *solver,
                    const SwPose   *pose,
                    const SwSolved *solved,
                    gboolean        is_written,
                    SwCollision     collisions[SW_MAX_COLLISIONS])
{
  SwSolid solids[SW_MAX_SOLIDS];
  int n_solids = sw_solids_find (solver, &solved->body, solids);
  int n = 0;

  for (int i = 0; i < n_solids; i++)
    for (int part = 0; part < SW_N_PARTS; part++)
      {
        double depth = -sw_solid_get_part_gap (&solids[i], &solved->body, (SwPart) part);

        if (depth > get_allowed (&solids[i], part))
          add (collisions, &n, solids[i].name, part, depth);
      }
  find_far_limbs (solver, pose, solved, solids, n_solids, collisions, &n);
  if (is_written)
    find_hovering_feet (solver, solved, solids, n_solids, collisions, &n);
  find_far_seat (solver, solved, solids, n_solids, collisions, &n);
  return n;
}
