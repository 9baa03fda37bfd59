/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The big exercise ball that carries or backs the body, and what is squeezed between two parts of it. All sizes are our
 * own drawing; a ball of 0.32 is 55 cm for a person of 1.72 m. */
#include "config.h"

#include "sw-ball-draw.h"

#define BALL_TONE 0.92
#define LEAST_RADIUS 0.03
#define MOST_RADIUS 0.22
#define FRONT_RADIUS 0.16
/* How far a body presses into it. */
#define PRESS 0.012
/* Smaller ones have no grooves. */
#define SMALL_RADIUS 0.05
#define GROOVE_DEG 32.0
#define N_GROOVE 7
#define SQUEEZED_HALF 0.062

static SwVector
middle_of (const SwBody *body,
           SwFigureMark  right,
           SwFigureMark  left)
{
  return sw_mix (sw_body_get_mark (body, right), sw_body_get_mark (body, left), 0.5);
}

/**
 * sw_ball_is_big:
 * @prop: a ball
 *
 * Returns: whether it carries or backs the body, rather than being held
 */
gboolean
sw_ball_is_big (const SwFigurePropSpec *prop)
{
  return prop->in == SW_FIGURE_MARK_NONE && prop->between == SW_FIGURE_BETWEEN_NONE;
}

/* A ball that lies on the floor under a place: as high as the gap, or as high as the prop says. */
static SwVector
on_floor (const SwFigurePropSpec *prop,
          SwVector                at,
          double                  gap,
          double                 *radius)
{
  *radius = CLAMP ((isnan (prop->height) ? gap : prop->height) / 2, LEAST_RADIUS, MOST_RADIUS);
  return sw_vector (at.x, at.y, *radius);
}

/**
 * sw_ball_find_big:
 * @solver: the solved figure
 * @prop: a ball that sw_ball_is_big()
 * @now: the body that is on it
 * @radius: (out): its radius, parts of stature
 *
 * It rolls half as far as what is on it goes.
 *
 * Returns: the middle of the ball
 */
SwVector
sw_ball_find_big (const SwSolver         *solver,
                  const SwFigurePropSpec *prop,
                  const SwBody           *now,
                  double                 *radius)
{
  const SwScene *scene = &solver->scene;
  const SwBody *start = &solver->keys[0].body;
  SwFigureWhere where = prop->where;
  SwVector rested;
  SwVector moved;
  SwVector at;

  if (where == SW_FIGURE_WHERE_BEHIND)
    {
      double back = sw_body_get_mark (start, SW_FIGURE_MARK_LOW_BACK).x;
      double rise = now->pieces[SW_PIECE_PELVIS].at.z - start->pieces[SW_PIECE_PELVIS].at.z;

      *radius = CLAMP ((back - scene->wall_at + PRESS) / 2, LEAST_RADIUS, MOST_RADIUS);
      return sw_vector (scene->wall_at + *radius, 0, sw_body_get_mark (start, SW_FIGURE_MARK_LOW_BACK).z + rise / 2);
    }
  if (where == SW_FIGURE_WHERE_UNDER && scene->seat == SW_FIGURE_PROP_BALL)
    {
      rested = start->pieces[SW_PIECE_PELVIS].at;
      moved = now->pieces[SW_PIECE_PELVIS].at;
      at = on_floor (prop, rested, scene->seat_height + PRESS, radius);
    }
  else if (where == SW_FIGURE_WHERE_UNDER)
    {
      rested = middle_of (start, SW_FIGURE_MARK_RIGHT_HEEL, SW_FIGURE_MARK_LEFT_HEEL);
      moved = middle_of (now, SW_FIGURE_MARK_RIGHT_HEEL, SW_FIGURE_MARK_LEFT_HEEL);
      at = on_floor (prop, rested, rested.z - 0.012, radius);
    }
  else if (prop->under != SW_FIGURE_MARK_NONE)
    {
      SwLimb limb = sw_scene_get_limb (prop->under);
      gboolean stands = limb >= SW_LIMB_RIGHT_LEG && limb < SW_N_LIMBS && solver->keys[0].stand[limb % 2] > 0;

      rested = sw_body_get_mark (start, prop->under);
      moved = sw_body_get_mark (now, prop->under);
      at = on_floor (prop, rested, stands ? solver->keys[0].stand[limb % 2] : rested.z - 0.024, radius);
    }
  else
    {
      rested = middle_of (start, SW_FIGURE_MARK_RIGHT_HAND, SW_FIGURE_MARK_LEFT_HAND);
      moved = middle_of (now, SW_FIGURE_MARK_RIGHT_HAND, SW_FIGURE_MARK_LEFT_HAND);
      at = on_floor (prop, rested, MIN (rested.z, 2 * FRONT_RADIUS), radius);
    }
  at.x += (moved.x - rested.x) / 2;
  return at;
}

/**
 * sw_ball_add_big:
 * @motifs: (inout): grows by the ball
 * @nth: number of the prop
 * @camera: the view
 * @solver: the solved figure
 * @body: the body that is on it
 * @tolerance: of outlines, parts of stature
 */
void
sw_ball_add_big (SwMotifs       *motifs,
                 int             nth,
                 const SwCamera *camera,
                 const SwSolver *solver,
                 const SwBody   *body,
                 double          tolerance)
{
  static const int sizes[] = { 1 };
  SwLimb limb = sw_scene_get_limb (solver->content->props[nth].under);
  double radius;
  SwVector at = sw_ball_find_big (solver, &solver->content->props[nth], body, &radius);
  SwEgg egg = sw_egg (camera, (SwPlacement){ sw_identity (), at }, sw_vector (0, 0, 0),
                      sw_vector (radius, radius, radius));
  SwMotif *motif = sw_motifs_add_thing (motifs, nth, &egg, sizes, 1, tolerance);

  motif->tone = BALL_TONE;
  motif->under = limb >= SW_LIMB_RIGHT_LEG && limb < SW_N_LIMBS
                     ? (1u << SW_PART_THIGH | 1u << SW_PART_SHANK | 1u << SW_PART_FOOT) << limb % 2
                     : ~0u;
  if (radius < SMALL_RADIUS)
    return;

  /* Its grooves, seen a little from above. */
  for (int k = -1; k <= 1; k++)
    for (int i = 0; i < N_GROOVE; i++)
      {
        SwVector ends[2];

        for (int end = 0; end < 2; end++)
          {
            double round = SW_RAD (20.0 + 140.0 * (i + end) / N_GROOVE);
            double level = SW_RAD (GROOVE_DEG * k);

            ends[end] = sw_add (at, sw_add (sw_scale (camera->right, radius * cos (level) * cos (round)),
                                            sw_scale (camera->up, radius * (sin (level) - 0.16 * sin (round)))));
          }
        sw_motif_add_seam (motif, camera, ends[0], ends[1]);
      }
}

/**
 * sw_ball_add_between:
 * @motifs: (inout): grows by the thing
 * @nth: number of the prop
 * @prop: a ball, pillow, cushion or towel that two parts hold
 * @camera: the view
 * @body: the body that holds it
 * @tolerance: of outlines, parts of stature
 */
void
sw_ball_add_between (SwMotifs               *motifs,
                     int                     nth,
                     const SwFigurePropSpec *prop,
                     const SwCamera         *camera,
                     const SwBody           *body,
                     double                  tolerance)
{
  static const int sizes[] = { 1 };
  static const struct
  {
    SwPiece piece;
    SwVector at;
    double radius;
  } places[] = {
    [SW_FIGURE_BETWEEN_KNEES] = { SW_PIECE_THIGH, { 0.004, 0, -0.222 }, 0.034 },
    [SW_FIGURE_BETWEEN_FEET] = { SW_PIECE_FOOT, { 0.020, 0, -0.005 }, 0.026 },
    [SW_FIGURE_BETWEEN_HANDS] = { SW_PIECE_HAND, { 0, 0, -0.060 }, 0.014 },
  };
  SwPlacement right = body->pieces[SW_SIDED (places[prop->between].piece, 0)];
  SwPlacement left = body->pieces[SW_SIDED (places[prop->between].piece, 1)];
  SwVector a = sw_place (right, places[prop->between].at);
  SwVector b = sw_place (left, places[prop->between].at);
  double half = MAX (0.016, sw_length (sw_sub (b, a)) / 2 - places[prop->between].radius + 0.006);
  gboolean ball = prop->kind == SW_FIGURE_PROP_BALL;
  double other = ball ? MAX (SQUEEZED_HALF, half) : SQUEEZED_HALF;
  SwPlacement frame;
  SwMotif *motif;
  SwEgg egg;

  frame.at = sw_mix (a, b, 0.5);
  frame.axes.y = sw_unit (sw_sub (b, a), right.axes.y);
  frame.axes.z = sw_unit (sw_across (sw_add (right.axes.z, left.axes.z), frame.axes.y), right.axes.z);
  frame.axes.x = sw_cross (frame.axes.y, frame.axes.z);
  egg = sw_egg (camera, frame, sw_vector (0, 0, 0), sw_vector (ball ? other : 1.2 * other, half, ball ? other : 1.7 * other));
  motif = sw_motifs_add_thing (motifs, nth, &egg, sizes, 1, tolerance);
  motif->tone = BALL_TONE;
  motif->folds = !ball;
}
