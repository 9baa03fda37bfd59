/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * In which plane of the body an exercise moves, by the angles of its figure. */
#include "config.h"

#include <math.h>

#include "sw-balance.h"
#include "sw-figure-range.h"

/* Less than that is no motion: an ankle by 8 degrees. */
#define STILL (8.0 * FOOT)

/* Parts of the body's mass that hang on a joint: sums of Dempster's segments (in Winter, Biomechanics and Motor Control of
 * Human Movement, 4th ed. 2009; tests/reference/segments.csv). Fingers and toes are a guess; half of the abdomen goes with
 * the low back. */
#define FINGERS 0.003
#define HAND 0.006
#define FOREARM (0.016 + HAND)
#define ARM (0.028 + FOREARM)
#define TOES 0.003
#define FOOT 0.0145
#define SHANK (0.0465 + FOOT)
#define LEG (0.1 + SHANK)
#define HEAD 0.081
#define CHEST (0.216 + HEAD + 2.0 * ARM)
#define TRUNK (0.139 / 2.0 + CHEST)

/* The plane of each angle and the mass it moves, in the anatomical position (axes: Wu and others, J Biomech
 * 2002;35:543-548 and 2005;38:981-992). The raise of an arm is not here: it is shared out by where the arm goes. */
static const struct
{
  SwPlane plane;
  double mass;
} angles[SW_N_ANGLES] = {
  [SW_ANGLE_LOW_BACK_BEND] = { SW_PLANE_SAGITTAL, TRUNK },
  [SW_ANGLE_LOW_BACK_SIDE] = { SW_PLANE_FRONTAL, TRUNK },
  [SW_ANGLE_LOW_BACK_TURN] = { SW_PLANE_TRANSVERSE, TRUNK },
  [SW_ANGLE_UPPER_BACK_BEND] = { SW_PLANE_SAGITTAL, CHEST },
  [SW_ANGLE_UPPER_BACK_SIDE] = { SW_PLANE_FRONTAL, CHEST },
  [SW_ANGLE_UPPER_BACK_TURN] = { SW_PLANE_TRANSVERSE, CHEST },
  [SW_ANGLE_NECK_BEND] = { SW_PLANE_SAGITTAL, HEAD },
  [SW_ANGLE_NECK_SIDE] = { SW_PLANE_FRONTAL, HEAD },
  [SW_ANGLE_NECK_TURN] = { SW_PLANE_TRANSVERSE, HEAD },
  [SW_ANGLE_HEAD_BEND] = { SW_PLANE_SAGITTAL, HEAD },
  [SW_ANGLE_HEAD_SIDE] = { SW_PLANE_FRONTAL, HEAD },
  [SW_ANGLE_HEAD_TURN] = { SW_PLANE_TRANSVERSE, HEAD },
  [SW_ANGLE_BLADE_FORWARD] = { SW_PLANE_TRANSVERSE, ARM },
  [SW_ANGLE_BLADE_UP] = { SW_PLANE_FRONTAL, ARM },
  [SW_ANGLE_SHOULDER_TURN] = { SW_PLANE_TRANSVERSE, FOREARM },
  [SW_ANGLE_ELBOW_BEND] = { SW_PLANE_SAGITTAL, FOREARM },
  [SW_ANGLE_FOREARM_PALM_UP] = { SW_PLANE_TRANSVERSE, FOREARM },
  [SW_ANGLE_WRIST_BEND] = { SW_PLANE_SAGITTAL, HAND },
  [SW_ANGLE_WRIST_THUMBWARD] = { SW_PLANE_FRONTAL, HAND },
  [SW_ANGLE_HIP_BEND] = { SW_PLANE_SAGITTAL, LEG },
  [SW_ANGLE_HIP_OUT] = { SW_PLANE_FRONTAL, LEG },
  [SW_ANGLE_HIP_TURN] = { SW_PLANE_TRANSVERSE, LEG },
  [SW_ANGLE_KNEE_BEND] = { SW_PLANE_SAGITTAL, SHANK },
  [SW_ANGLE_ANKLE_UP] = { SW_PLANE_SAGITTAL, FOOT },
  [SW_ANGLE_ANKLE_IN] = { SW_PLANE_FRONTAL, FOOT },
  [SW_ANGLE_TOES_UP] = { SW_PLANE_SAGITTAL, TOES },
  [SW_ANGLE_FINGERS_KNUCKLE] = { SW_PLANE_SAGITTAL, FINGERS },
  [SW_ANGLE_FINGERS_CURL] = { SW_PLANE_SAGITTAL, FINGERS },
  [SW_ANGLE_FINGERS_SPREAD] = { SW_PLANE_FRONTAL, FINGERS },
};

static double
get_travel_deg (const SwFigureRange *range,
                SwAngle              angle,
                SwFigureSide         side)
{
  int slot = sw_angle_get_slot (angle, side);

  return range->high_deg[slot] - range->low_deg[slot];
}

static double
get_middle_deg (const SwFigureRange *range,
                SwAngle              angle,
                SwFigureSide         side)
{
  int slot = sw_angle_get_slot (angle, side);

  return (range->high_deg[slot] + range->low_deg[slot]) / 2.0;
}

/* A raise goes up to the front or to the side by its direction, 0 out to the side, 90 forward; another direction of the
 * raised arm goes round level, the more the nearer to level the arm is. */
static void
add_shoulder (const SwFigureRange *range,
              SwFigureSide         side,
              double              *travels)
{
  double raise = ARM * get_travel_deg (range, SW_ANGLE_SHOULDER_RAISE, side);
  double direction = get_middle_deg (range, SW_ANGLE_SHOULDER_DIRECTION, side) * G_PI / 180.0;
  double raised = get_middle_deg (range, SW_ANGLE_SHOULDER_RAISE, side) * G_PI / 180.0;

  travels[SW_PLANE_FRONTAL] += raise * cos (direction) * cos (direction);
  travels[SW_PLANE_SAGITTAL] += raise * sin (direction) * sin (direction);
  travels[SW_PLANE_TRANSVERSE]
      += ARM * get_travel_deg (range, SW_ANGLE_SHOULDER_DIRECTION, side) * fabs (sin (raised));
}

/**
 * sw_plane_of:
 * @exercise: an exercise
 *
 * Adds up how far the joints of its figure travel in each plane, in degrees times the part of the body's mass that hangs on
 * the joint, and takes the plane with the most: a trunk that turns counts for more than the arms that go with it. Whole-body
 * turns and walking are not in it: only what the joints do.
 *
 * Returns: the plane; still for less than an ankle does in 8 degrees, and for an exercise without a figure
 */
SwPlane
sw_plane_of (SwExercise *exercise)
{
  double travels[SW_PLANE_TRANSVERSE + 1] = { 0.0 };
  SwFigureSpec *figure = sw_exercise_get_figure (exercise);
  SwPlane most = SW_PLANE_SAGITTAL;
  SwFigureRange range;

  if (figure == NULL)
    return SW_PLANE_STILL;

  sw_figure_range_init (&range, figure);
  for (int side = SW_FIGURE_RIGHT; side <= SW_FIGURE_LEFT; side++)
    {
      for (int angle = 0; angle < SW_N_ANGLES; angle++)
        if (side == SW_FIGURE_RIGHT || sw_angle_is_sided ((SwAngle) angle))
          travels[angles[angle].plane] += angles[angle].mass
                                          * get_travel_deg (&range, (SwAngle) angle, (SwFigureSide) side);
      add_shoulder (&range, (SwFigureSide) side, travels);
    }

  for (int plane = SW_PLANE_SAGITTAL; plane <= SW_PLANE_TRANSVERSE; plane++)
    if (travels[plane] > travels[most])
      most = (SwPlane) plane;

  return travels[SW_PLANE_SAGITTAL] + travels[SW_PLANE_FRONTAL] + travels[SW_PLANE_TRANSVERSE] < STILL ? SW_PLANE_STILL
                                                                                                    : most;
}
