/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A thrown ball: dashed where its flight turns, with an arrow from the hands and back. */
#include "config.h"

#include "sw-throw.h"

#define RADIUS 0.062
#define MOST_RADIUS 0.16
#define HAND_THICK 0.008
#define THROWN_TONE 1.0
/* How far up it goes, and how far ahead of the hands it meets the floor. */
#define RISE 0.42
#define AHEAD 0.10
/* Between hand and arrow, arrow and ball. */
#define CLEAR 0.045

static const SwVector palm = { 0, 0, -0.060 };

/* The middle of the ball in the hand or hands. */
static SwVector
find_held (const SwFigurePropSpec *ball,
           const SwBody           *body)
{
  SwVector right = sw_place (body->pieces[SW_SIDED (SW_PIECE_HAND, SW_FIGURE_RIGHT)], palm);
  SwVector left = sw_place (body->pieces[SW_SIDED (SW_PIECE_HAND, SW_FIGURE_LEFT)], palm);

  if (ball->between == SW_FIGURE_BETWEEN_HANDS)
    return sw_mix (right, left, 0.5);

  return ball->in == SW_FIGURE_MARK_LEFT_HAND ? left : right;
}

/* As large as both hands hold it at the start. */
static double
find_radius (const SwFigurePropSpec *ball,
             const SwBody           *start)
{
  SwVector right = sw_place (start->pieces[SW_SIDED (SW_PIECE_HAND, SW_FIGURE_RIGHT)], palm);
  SwVector left = sw_place (start->pieces[SW_SIDED (SW_PIECE_HAND, SW_FIGURE_LEFT)], palm);

  if (ball->between != SW_FIGURE_BETWEEN_HANDS)
    return RADIUS;

  return CLAMP (sw_length (sw_sub (left, right)) / 2 - HAND_THICK, RADIUS, MOST_RADIUS);
}

static SwVector
find_flown (const SwSolver         *solver,
            const SwFigurePropSpec *ball,
            SwVector                held,
            double                  radius)
{
  const SwScene *scene = &solver->scene;
  double wall = scene->wall_at - copysign (radius, scene->wall_at);

  switch (ball->thrown)
    {
    case SW_FIGURE_THROWN_UP:
      return sw_add (held, sw_vector (0, 0, RISE));
    case SW_FIGURE_THROWN_WALL:
      if (scene->wall_where == SW_FIGURE_WHERE_RIGHT || scene->wall_where == SW_FIGURE_WHERE_LEFT)
        return sw_vector (held.x, wall, held.z);
      return sw_vector (wall, held.y, held.z);
    case SW_FIGURE_THROWN_NONE:
    case SW_FIGURE_THROWN_FLOOR:
    default:
      return sw_vector (held.x + AHEAD, held.y, radius);
    }
}

/**
 * sw_throw_get:
 * @solver: the solved figure
 * @now: the pose of a picture
 * @flight: (out): the ball's flight
 *
 * Returns: whether a ball is thrown from that pose: the last one
 */
gboolean
sw_throw_get (const SwSolver *solver,
              const SwSolved *now,
              SwThrow        *flight)
{
  if (now != &solver->keys[solver->n_keys - 1])
    return FALSE;

  for (int i = 0; i < solver->content->n_props; i++)
    {
      const SwFigurePropSpec *ball = &solver->content->props[i];

      if (ball->kind != SW_FIGURE_PROP_BALL || ball->thrown == SW_FIGURE_THROWN_NONE)
        continue;
      flight->prop = i;
      flight->held = find_held (ball, &now->body);
      flight->radius = find_radius (ball, &solver->keys[0].body);
      flight->flown = find_flown (solver, ball, flight->held, flight->radius);
      return TRUE;
    }
  return FALSE;
}

/**
 * sw_throw_has_left:
 * @solver: the solved figure
 * @now: the pose of a picture
 * @prop: number of a ball
 *
 * Returns: whether the ball is not in the hands there; a single picture shows it in the hands, too
 */
gboolean
sw_throw_has_left (const SwSolver *solver,
                   const SwSolved *now,
                   int             prop)
{
  SwThrow flight;

  return solver->n_keys > 1 && sw_throw_get (solver, now, &flight) && flight.prop == prop;
}

/**
 * sw_throw_add:
 * @items: (inout): grows by the dashed ball
 * @camera: the view
 * @solver: the solved figure
 * @now: the pose of the picture
 * @tolerance: of outlines, parts of stature
 */
void
sw_throw_add (SwMotifs       *items,
              const SwCamera *camera,
              const SwSolver *solver,
              const SwSolved *now,
              double          tolerance)
{
  static const int sizes[] = { 1 };
  SwThrow flight;
  SwMotif *item;
  SwEgg egg;

  if (!sw_throw_get (solver, now, &flight))
    return;

  egg = sw_egg (camera, (SwPlacement){ sw_identity (), flight.flown }, sw_vector (0, 0, 0),
                sw_vector (flight.radius, flight.radius, flight.radius));
  item = sw_motifs_add_thing (items, flight.prop, &egg, sizes, 1, tolerance);
  item->style = SW_INK_START;
  item->tone = THROWN_TONE;
}

/**
 * sw_throw_get_path:
 * @flight: a ball's flight
 * @camera: the view
 * @path: (out): from the hands to the ball as seen, with some air at both ends
 */
void
sw_throw_get_path (const SwThrow  *flight,
                   const SwCamera *camera,
                   SwSpot          path[SW_THROW_PLACES])
{
  SwVector by = sw_sub (flight->flown, flight->held);
  SwVector way = sw_unit (by, sw_vector (0, 0, 1));
  SwVector from = sw_add (flight->held, sw_scale (way, flight->radius));
  SwVector to = sw_sub (flight->flown, sw_scale (way, flight->radius + CLEAR));

  for (int i = 0; i < SW_THROW_PLACES; i++)
    path[i] = sw_see (camera, sw_mix (from, to, (double) i / (SW_THROW_PLACES - 1)));
}
