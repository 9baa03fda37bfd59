/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Puts hands and feet where they have to be (two-bone inverse kinematics) and reads the angles back, so that a limb
 * held in place is described by the same joint angles as any other. */
#include "config.h"

#include "sw-reach.h"

#define SWIVEL_STEP_DEG 15.0
#define FINGER_LIMIT_DEG 75.0

/* The middle joint of a limb from @root to @end, on the side of @toward. */
static SwVector
find_middle (SwVector  root,
             SwVector *end,
             double    upper,
             double    lower,
             SwVector  toward,
             SwVector  fallback)
{
  SwVector line = sw_sub (*end, root);
  double length = sw_length (line);
  double most = (upper + lower) * SW_REACH_STRETCH;
  double least = fabs (upper - lower) + 1e-3;
  SwVector along = sw_unit (line, sw_vector (0, 0, -1));
  SwVector side;
  double x;
  double y;

  if (length > most || length < least)
    {
      length = CLAMP (length, least, most);
      *end = sw_add (root, sw_scale (along, length));
    }

  side = sw_unit (sw_across (toward, along), sw_unit (sw_across (fallback, along), sw_vector (1, 0, 0)));
  x = (upper * upper - lower * lower + length * length) / (2 * length);
  y = sqrt (MAX (0.0, upper * upper - x * x));
  return sw_add (root, sw_add (sw_scale (along, x), sw_scale (side, y)));
}

/* Frame of a bone that points from @from to @to (its -z) and bends towards @bend (its x, up to @sign). */
static SwMatrix
bone_axes (SwVector from,
           SwVector to,
           SwVector bend,
           double   sign)
{
  SwVector z = sw_unit (sw_sub (from, to), sw_vector (0, 0, 1));
  SwVector x = sw_scale (sw_unit (sw_across (bend, z), sw_vector (1, 0, 0)), sign);

  return (SwMatrix){ x, sw_cross (z, x), z };
}

static double
whole_turn (double deg)
{
  return deg > 180 ? deg - 360 : deg <= -180 ? deg + 360 : deg;
}

/* The hand within the forearm is turned about z, then x, then y. Of the two ways to say so the one that tips the hand
 * less is meant; with the wrist at a right angle turning and tipping are the same, and it is all called turning. */
static void
read_wrist (SwJoints     *joints,
            SwFigureSide  side,
            SwMatrix      wrist)
{
  double s = sw_side_sign (side);
  double turn = SW_DEG (atan2 (-wrist.y.x, wrist.y.y));
  double bend = SW_DEG (asin (CLAMP (wrist.y.z, -1, 1)));
  double tip = SW_DEG (atan2 (-wrist.x.z, wrist.z.z));

  if (fabs (tip) > 90)
    {
      turn = whole_turn (turn + 180);
      bend = whole_turn (180 - bend);
      tip = whole_turn (tip + 180);
    }
  if (fabs (fabs (bend) - 90) < 6)
    {
      turn = whole_turn (turn + (bend > 0 ? tip : -tip));
      tip = 0;
    }
  sw_joints_set (joints, SW_ANGLE_FOREARM_PALM_UP, side, s * turn);
  sw_joints_set (joints, SW_ANGLE_WRIST_BEND, side, -s * bend);
  sw_joints_set (joints, SW_ANGLE_WRIST_THUMBWARD, side, -tip);
}

/**
 * sw_joints_read_arm:
 * @body: a body with trunk and arm in place
 * @joints: (inout): gets the arm's angles from it
 * @side: whose
 */
void
sw_joints_read_arm (const SwBody *body,
                    SwJoints     *joints,
                    SwFigureSide  side)
{
  double s = sw_side_sign (side);
  const SwPlacement *upper = &body->pieces[SW_SIDED (SW_PIECE_UPPER_ARM, side)];
  const SwPlacement *fore = &body->pieces[SW_SIDED (SW_PIECE_FOREARM, side)];
  const SwPlacement *hand = &body->pieces[SW_SIDED (SW_PIECE_HAND, side)];
  SwMatrix rel = sw_multiply (sw_transpose (body->pieces[SW_PIECE_RIBCAGE].axes), upper->axes);
  SwVector along = sw_scale (rel.z, -1);
  double flat = hypot (along.x, along.y);
  double raise = SW_DEG (atan2 (flat, -along.z));
  double direction = flat > 1e-9 ? SW_DEG (atan2 (along.x, s * along.y))
                                 : sw_joints_get (joints, SW_ANGLE_SHOULDER_DIRECTION, side);
  SwMatrix turned;
  SwMatrix bent;

  if (direction < -45 && raise < 75)
    {
      raise = -raise;
      direction += 180;
    }
  sw_joints_set (joints, SW_ANGLE_SHOULDER_RAISE, side, raise);
  sw_joints_set (joints, SW_ANGLE_SHOULDER_DIRECTION, side, direction);
  turned = sw_multiply (sw_transpose (sw_shoulder_matrix (side, raise, direction, 0)), rel);
  sw_joints_set (joints, SW_ANGLE_SHOULDER_TURN, side, s * SW_DEG (atan2 (turned.x.y, turned.x.x)));

  bent = sw_multiply (sw_transpose (upper->axes), fore->axes);
  sw_joints_set (joints, SW_ANGLE_ELBOW_BEND, side, SW_DEG (atan2 (bent.x.z, bent.x.x)));

  read_wrist (joints, side, sw_multiply (sw_transpose (fore->axes), hand->axes));
}

/**
 * sw_joints_read_leg:
 * @body: a body with pelvis and leg in place
 * @joints: (inout): gets the leg's angles from it; how far the sole is turned in is taken from there
 * @side: whose
 */
void
sw_joints_read_leg (const SwBody *body,
                    SwJoints     *joints,
                    SwFigureSide  side)
{
  double s = sw_side_sign (side);
  const SwPlacement *thigh = &body->pieces[SW_SIDED (SW_PIECE_THIGH, side)];
  const SwPlacement *shank = &body->pieces[SW_SIDED (SW_PIECE_SHANK, side)];
  const SwPlacement *foot = &body->pieces[SW_SIDED (SW_PIECE_FOOT, side)];
  SwMatrix rel = sw_multiply (sw_transpose (body->pieces[SW_PIECE_PELVIS].axes), thigh->axes);
  SwMatrix knee = sw_multiply (sw_transpose (thigh->axes), shank->axes);
  SwMatrix turned = sw_ankle_matrix (side, 0, sw_joints_get (joints, SW_ANGLE_ANKLE_IN, side));
  SwMatrix ankle = sw_multiply (sw_multiply (sw_transpose (shank->axes), foot->axes), sw_transpose (turned));

  sw_joints_set (joints, SW_ANGLE_HIP_BEND, side, -SW_DEG (atan2 (rel.z.x, rel.z.z)));
  sw_joints_set (joints, SW_ANGLE_HIP_OUT, side, s * SW_DEG (asin (CLAMP (-rel.z.y, -1, 1))));
  sw_joints_set (joints, SW_ANGLE_HIP_TURN, side, s * SW_DEG (atan2 (rel.x.y, rel.y.y)));
  sw_joints_set (joints, SW_ANGLE_KNEE_BEND, side, SW_DEG (atan2 (-knee.x.z, knee.x.x)));
  sw_joints_set (joints, SW_ANGLE_ANKLE_UP, side, SW_DEG (atan2 (ankle.x.z, ankle.x.x)));
}

/**
 * sw_grip_for_palm:
 * @side: whose hand
 * @fist: whether it is closed
 * @contact: where the palm touches
 * @normal: unit vector the palm faces along, into the thing touched
 * @fingers: where the fingers point
 *
 * Returns: the hand that does so
 */
SwGrip
sw_grip_for_palm (SwFigureSide side,
                  gboolean     fist,
                  SwVector     contact,
                  SwVector     normal,
                  SwVector     fingers)
{
  double palm = -sw_side_sign (side);
  SwVector z = sw_scale (sw_unit (sw_across (fingers, normal), sw_vector (1, 0, 0)), -1);
  SwVector y = sw_scale (normal, palm);
  SwMatrix axes = { sw_cross (y, z), y, z };
  SwVector palm_at = sw_vector (0, palm * (fist ? 0.030 : 0.016), fist ? -0.042 : -0.050);

  return (SwGrip){ axes, sw_sub (contact, sw_apply (axes, palm_at)) };
}

static void
place_arm (SwBody       *body,
           SwFigureSide  side,
           SwGrip        grip,
           SwVector      toward)
{
  SwPlacement *upper = &body->pieces[SW_SIDED (SW_PIECE_UPPER_ARM, side)];
  SwPlacement *fore = &body->pieces[SW_SIDED (SW_PIECE_FOREARM, side)];
  SwPlacement *hand = &body->pieces[SW_SIDED (SW_PIECE_HAND, side)];
  SwVector wrist = grip.at;
  SwVector elbow = find_middle (upper->at, &wrist, SW_UPPER_ARM, SW_FOREARM, toward, sw_vector (0, 0, -1));
  SwVector bend = sw_sub (wrist, elbow);

  upper->axes = bone_axes (upper->at, elbow, bend, 1.0);
  fore->at = elbow;
  fore->axes.y = upper->axes.y;
  fore->axes.z = sw_unit (sw_sub (elbow, wrist), sw_vector (0, 0, 1));
  fore->axes.x = sw_cross (fore->axes.y, fore->axes.z);
  hand->at = wrist;
  hand->axes = grip.axes;
}

/**
 * sw_reach_arm:
 * @body: a body whose trunk is in place
 * @joints: (inout): gets the arm's angles
 * @side: whose arm
 * @grip: where the hand has to be; nearer when out of reach
 * @toward: where the elbow points
 */
void
sw_reach_arm (SwBody       *body,
              SwJoints     *joints,
              SwFigureSide  side,
              SwGrip        grip,
              SwVector      toward)
{
  body->pieces[SW_SIDED (SW_PIECE_UPPER_ARM, side)].at = sw_body_get_shoulder (body, joints, side);
  place_arm (body, side, grip, toward);
  sw_joints_read_arm (body, joints, side);
}

/* How badly an arm fits the ranges: squared, so that one bad joint counts more than several slight ones. */
static double
arm_cost (const SwBody   *body,
          const SwJoints *joints,
          SwFigureSide    side)
{
  double cost = 0.0;
  double elbow_z = body->pieces[SW_SIDED (SW_PIECE_FOREARM, side)].at.z;

  for (int i = SW_ANGLE_SHOULDER_RAISE; i <= SW_ANGLE_WRIST_THUMBWARD; i++)
    {
      double value = sw_joints_get (joints, (SwAngle) i, side);
      const SwAngleInfo *info = sw_angle_get_info ((SwAngle) i);
      double excess = sw_angle_get_excess ((SwAngle) i, value);
      double middle = (info->low_deg + info->high_deg) / 2;
      double reach = (value - middle) / (info->high_deg - info->low_deg);

      cost += excess * excess + 12.0 * reach * reach * reach * reach;
    }
  if (elbow_z < 0.024)
    cost += 4e6 * (0.024 - elbow_z) * (0.024 - elbow_z);

  return cost;
}

/**
 * sw_reach_arm_searching:
 * @body: a body whose trunk is in place
 * @joints: (inout): gets the arm's angles
 * @side: whose arm
 * @grip: where the hand has to be
 * @toward: where the elbow should point
 * @fingers_free: whether the fingers may turn about the palm's normal
 *
 * Like sw_reach_arm(), but tries elbows round the wished one and fingers round the given ones, and takes what the
 * joints like best. Wrist and palm stay where they have to be.
 */
void
sw_reach_arm_searching (SwBody       *body,
                        SwJoints     *joints,
                        SwFigureSide  side,
                        SwGrip        grip,
                        SwVector      toward,
                        gboolean      fingers_free)
{
  SwVector shoulder = sw_body_get_shoulder (body, joints, side);
  SwVector line = sw_sub (grip.at, shoulder);
  SwVector along = sw_unit (line, sw_vector (0, 0, -1));
  double swivel_limit = sw_length (line) > 0.97 * (SW_UPPER_ARM + SW_FOREARM) ? 90 : 30;
  double finger_limit = fingers_free ? FINGER_LIMIT_DEG : 0;
  SwVector palm_contact = sw_add (grip.at, sw_scale (grip.axes.z, -0.050));
  double best = G_MAXDOUBLE;
  SwGrip best_grip = grip;
  SwVector best_toward = toward;

  body->pieces[SW_SIDED (SW_PIECE_UPPER_ARM, side)].at = shoulder;
  for (double finger = -finger_limit; finger <= finger_limit + 1e-6; finger += SWIVEL_STEP_DEG)
    {
      SwMatrix turn = sw_turn_axis (grip.axes.y, finger);
      SwGrip tried = { sw_multiply (turn, grip.axes), grip.at };

      tried.at = sw_add (palm_contact, sw_scale (tried.axes.z, 0.050));
      for (double swivel = -swivel_limit; swivel <= swivel_limit + 1e-6; swivel += SWIVEL_STEP_DEG)
        {
          SwVector elbow = sw_turn_about (toward, along, swivel);
          double cost;

          place_arm (body, side, tried, elbow);
          sw_joints_read_arm (body, joints, side);
          cost = arm_cost (body, joints, side) + 0.004 * (swivel * swivel + finger * finger);
          if (cost < best)
            {
              best = cost;
              best_grip = tried;
              best_toward = elbow;
            }
        }
    }

  place_arm (body, side, best_grip, best_toward);
  sw_joints_read_arm (body, joints, side);
}

/**
 * sw_reach_leg:
 * @body: a body whose pelvis is in place
 * @joints: (inout): gets the leg's angles; the toes keep theirs
 * @side: whose leg
 * @grip: where the foot has to be; nearer when out of reach
 * @toward: where the knee points
 */
void
sw_reach_leg (SwBody       *body,
              SwJoints     *joints,
              SwFigureSide  side,
              SwGrip        grip,
              SwVector      toward)
{
  SwPlacement *thigh = &body->pieces[SW_SIDED (SW_PIECE_THIGH, side)];
  SwPlacement *shank = &body->pieces[SW_SIDED (SW_PIECE_SHANK, side)];
  SwPlacement *foot = &body->pieces[SW_SIDED (SW_PIECE_FOOT, side)];
  SwPlacement *toes = &body->pieces[SW_SIDED (SW_PIECE_TOES, side)];
  SwVector ankle = grip.at;
  SwVector knee;

  thigh->at = sw_body_get_hip (body, side);
  knee = find_middle (thigh->at, &ankle, SW_THIGH, SW_SHANK, toward, body->pieces[SW_PIECE_PELVIS].axes.x);
  thigh->axes = bone_axes (thigh->at, knee, sw_sub (ankle, knee), -1.0);
  shank->at = knee;
  shank->axes.y = thigh->axes.y;
  shank->axes.z = sw_unit (sw_sub (knee, ankle), sw_vector (0, 0, 1));
  shank->axes.x = sw_cross (shank->axes.y, shank->axes.z);
  foot->at = ankle;
  foot->axes = grip.axes;
  sw_joints_set (joints, SW_ANGLE_ANKLE_IN, side, 0);
  sw_joints_read_leg (body, joints, side);
  toes->at = sw_place (*foot, sw_vector (SW_TOE_JOINT_X, 0, SW_TOE_JOINT_Z));
  toes->axes = sw_multiply (foot->axes, sw_turn_y (-sw_joints_get (joints, SW_ANGLE_TOES_UP, side)));
}

/**
 * sw_grip_mix:
 * @a: where a hand or foot is
 * @b: where it goes
 * @t: 0..1
 *
 * Returns: where it is on its way
 */
SwGrip
sw_grip_mix (SwGrip a,
             SwGrip b,
             double t)
{
  SwMatrix axes;

  axes.z = sw_unit (sw_mix (a.axes.z, b.axes.z, t), a.axes.z);
  axes.y = sw_unit (sw_across (sw_mix (a.axes.y, b.axes.y, t), axes.z), a.axes.y);
  axes.x = sw_cross (axes.y, axes.z);
  return (SwGrip){ axes, sw_mix (a.at, b.at, t) };
}

/**
 * sw_grip_mix_feet:
 * @a: where a foot is
 * @b: where it goes
 * @pitch_a: slope of its sole there
 * @pitch_b: slope of its sole in the end
 * @t: 0..1
 *
 * A foot that rolls over its ball or heel goes round that point, not along the chord.
 *
 * Returns: where it is on its way
 */
SwGrip
sw_grip_mix_feet (SwGrip a,
                  SwGrip b,
                  double pitch_a,
                  double pitch_b,
                  double t)
{
  SwGrip grip = sw_grip_mix (a, b, t);
  SwVector pivot = sw_vector (MIN (pitch_a, pitch_b) < 0 ? SW_HEEL_X : SW_BALL_X, 0, -SW_ANKLE_HEIGHT);

  if (fabs (pitch_a - pitch_b) > 0.1)
    grip.at = sw_sub (sw_mix (sw_place (a, pivot), sw_place (b, pivot), t), sw_apply (grip.axes, pivot));
  return grip;
}
