/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where the moving picture is. It goes back only where the exercise does: getting up from the floor is not also shown as
 * going down, nor a circle the other way round. The pace is for the eye, not the exercise's. */
#include "config.h"

#include "sw-figure-private.h"

#define MOVE_S 1.2
#define STOP_S 0.5
#define ROUND_S 2.4
#define STEP_S 1.3

static double
eased (double x)
{
  return x * x * (3.0 - 2.0 * x);
}

/* There, a stop, and back or begun anew, a stop. */
static double
there (double   seconds,
       double   move_s,
       gboolean back)
{
  double whole_s = back ? 2 * move_s + 2 * STOP_S : move_s + 2 * STOP_S;
  double t = fmod (seconds, whole_s);

  if (t < STOP_S)
    return 0.0;
  if (t < STOP_S + move_s)
    return eased ((t - STOP_S) / move_s);
  if (t < 2 * STOP_S + move_s)
    return 1.0;

  return eased (1.0 - (t - 2 * STOP_S - move_s) / move_s);
}

static double
rounds (double   seconds,
        gboolean both_ways)
{
  double turns = seconds / ROUND_S;
  double part = turns - floor (turns);

  return both_ways && fmod (floor (turns), 4.0) >= 2.0 ? 1.0 - part : part;
}

/**
 * sw_figure_get_phase:
 * @self: a figure
 * @seconds: since the picture began to move, 0 or more
 *
 * Returns: the moment to be drawn by sw_figure_draw_at(), 0..1
 */
double
sw_figure_get_phase (SwFigure *self,
                     double    seconds)
{
  const SwFigureContent *content;

  g_return_val_if_fail (SW_IS_FIGURE (self), 0.0);

  content = self->solver.content;
  switch (content->motion)
    {
    case SW_FIGURE_MOTION_CIRCLE:
      return rounds (seconds, content->both_ways);
    case SW_FIGURE_MOTION_STEPS:
      return fmod (seconds / (STEP_S * content->n_poses), 1.0);
    case SW_FIGURE_MOTION_ONE_WAY:
      return there (seconds, MOVE_S * MAX (1, content->n_poses - 1), FALSE);
    case SW_FIGURE_MOTION_THERE_AND_BACK:
    case SW_FIGURE_MOTION_STILL:
    case SW_FIGURE_MOTION_PRESS:
    default:
      return there (seconds, MOVE_S, TRUE);
    }
}
