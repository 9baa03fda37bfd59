/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The body as rigid pieces, and where joint angles put them (forward kinematics). Unit: stature = 1. Zero pose:
 * standing with hanging arms, palms to the thighs, thumbs forward. */
#include "config.h"

#include "sw-skeleton.h"

/* Joints in the frame of the piece before, drawn so that heights of hip (0.530) and shoulder (0.818) are those of
 * Drillis and Contini; how the trunk is divided is our own choice. */
static const SwVector low_back_at = { -0.008, 0, 0.050 };
static const SwVector ribcage_at = { 0, 0, 0.100 };
static const SwVector neck_at = { -0.012, 0, 0.155 };
static const SwVector head_at = { 0.012, 0, 0.055 };
static const SwVector breastbone_at = { 0.020, 0.014, 0.128 };
static const SwVector collarbone = { -0.024, 0.098, 0.010 };
static const double hip_y = 0.052;

/* Masses as fractions of the body's, and centres along the segment from its near end: Dempster, in Winter. */
static const struct
{
  SwPiece piece;
  gboolean sided;
  double mass;
  SwVector centre;
} masses[] = {
  { SW_PIECE_HAND, TRUE, 0.006, { 0, 0, -0.506 * SW_HAND } },
  { SW_PIECE_FOREARM, TRUE, 0.016, { 0, 0, -0.430 * SW_FOREARM } },
  { SW_PIECE_UPPER_ARM, TRUE, 0.028, { 0, 0, -0.436 * SW_UPPER_ARM } },
  { SW_PIECE_FOOT, TRUE, 0.0145, { 0.5 * SW_TOE_JOINT_X, 0, 0.5 * SW_TOE_JOINT_Z } },
  { SW_PIECE_SHANK, TRUE, 0.0465, { 0, 0, -0.433 * SW_SHANK } },
  { SW_PIECE_THIGH, TRUE, 0.100, { 0, 0, -0.433 * SW_THIGH } },
  { SW_PIECE_HEAD, FALSE, 0.081, { 0.006, 0, 0.040 } },
  { SW_PIECE_RIBCAGE, FALSE, 0.216, { 0.004, 0, 0.060 } },
  { SW_PIECE_LOW_BACK, FALSE, 0.139, { 0.006, 0, 0.045 } },
  { SW_PIECE_PELVIS, FALSE, 0.142, { -0.006, 0, 0.015 } },
};

/**
 * sw_joints_set_hand:
 * @side: whose
 * @hand: how fingers and thumb are to be bent
 */
void
sw_joints_set_hand (SwJoints     *joints,
                    SwFigureSide  side,
                    const SwHand *hand)
{
  sw_joints_set (joints, SW_ANGLE_FINGERS_KNUCKLE, side, hand->knuckle_deg);
  sw_joints_set (joints, SW_ANGLE_FINGERS_CURL, side, hand->curl_deg);
  sw_joints_set (joints, SW_ANGLE_FINGERS_TIPS, side, hand->tips_deg);
  sw_joints_set (joints, SW_ANGLE_FINGERS_SPREAD, side, hand->spread_deg);
  for (int i = 0; i < 3; i++)
    sw_joints_set (joints, (SwAngle) (SW_ANGLE_FINGERS_INDEX + i), side, hand->more_deg[i]);
  sw_joints_set (joints, SW_ANGLE_THUMB_OUT, side, hand->thumb_out_deg);
  sw_joints_set (joints, SW_ANGLE_THUMB_ACROSS, side, hand->thumb_across_deg);
  sw_joints_set (joints, SW_ANGLE_THUMB_BEND, side, hand->thumb_bend_deg);
}

/* How the pelvis lies after lean, roll, turn and twist. */
static SwMatrix
root_matrix (const double root_deg[SW_FIGURE_N_ROOT])
{
  SwMatrix turned = sw_multiply (sw_turn_z (root_deg[SW_FIGURE_ROOT_TURN]), sw_turn_y (root_deg[SW_FIGURE_ROOT_LEAN]));
  SwMatrix rolled = sw_multiply (sw_turn_x (root_deg[SW_FIGURE_ROOT_ROLL]), sw_turn_z (root_deg[SW_FIGURE_ROOT_TWIST]));

  return sw_multiply (turned, rolled);
}

/**
 * sw_shoulder_matrix:
 * @side: whose
 * @raise_deg: from hanging
 * @direction_deg: 0 sideways, 90 forward
 * @turn_deg: about the upper arm, + outward
 *
 * The hanging arm is swung in one go and then turned about itself: without the swing's single rotation, direction
 * would turn a hanging arm.
 *
 * Returns: the upper arm in the ribcage's frame
 */
SwMatrix
sw_shoulder_matrix (SwFigureSide side,
                    double       raise_deg,
                    double       direction_deg,
                    double       turn_deg)
{
  double s = sw_side_sign (side);
  SwVector u = sw_vector (sin (SW_RAD (direction_deg)), s * cos (SW_RAD (direction_deg)), 0);
  SwVector axis = sw_cross (sw_vector (0, 0, -1), u);

  return sw_multiply (sw_turn_axis (axis, raise_deg), sw_turn_z (s * turn_deg));
}

static SwMatrix
spine_matrix (const SwJoints *joints,
              SwAngle         bend)
{
  const double *deg = &joints->slots_deg[bend];

  return sw_multiply (sw_multiply (sw_turn_y (deg[0]), sw_turn_x (-deg[1])), sw_turn_z (deg[2]));
}

static SwPlacement
attach (SwPlacement to,
        SwVector    at,
        SwMatrix    axes)
{
  return (SwPlacement){ sw_multiply (to.axes, axes), sw_place (to, at) };
}

static SwVector
for_side (SwVector     v,
          SwFigureSide side)
{
  return sw_vector (v.x, v.y * sw_side_sign (side), v.z);
}

/**
 * sw_body_get_shoulder:
 * @body: a body whose trunk is solved
 * @joints: its angles
 * @side: whose
 *
 * Returns: the shoulder joint, moved by the shoulder blade
 */
SwVector
sw_body_get_shoulder (const SwBody   *body,
                      const SwJoints *joints,
                      SwFigureSide    side)
{
  double s = sw_side_sign (side);
  double forward = sw_joints_get (joints, SW_ANGLE_BLADE_FORWARD, side);
  double up = sw_joints_get (joints, SW_ANGLE_BLADE_UP, side);
  SwMatrix blade = sw_multiply (sw_turn_z (-s * forward), sw_turn_x (s * up));
  SwVector local = sw_add (for_side (breastbone_at, side), sw_apply (blade, for_side (collarbone, side)));

  return sw_place (body->pieces[SW_PIECE_RIBCAGE], local);
}

/**
 * sw_body_get_hip:
 *
 * Returns: the hip joint
 */
SwVector
sw_body_get_hip (const SwBody *body,
                 SwFigureSide  side)
{
  return sw_place (body->pieces[SW_PIECE_PELVIS], sw_vector (0, sw_side_sign (side) * hip_y, 0));
}

/**
 * sw_body_solve_arm:
 *
 * Places one arm again, after its angles changed.
 */
void
sw_body_solve_arm (SwBody         *body,
                   const SwJoints *joints,
                   SwFigureSide    side)
{
  double s = sw_side_sign (side);
  SwPlacement *upper = &body->pieces[SW_SIDED (SW_PIECE_UPPER_ARM, side)];
  SwPlacement *fore = &body->pieces[SW_SIDED (SW_PIECE_FOREARM, side)];
  SwMatrix wrist;

  upper->at = sw_body_get_shoulder (body, joints, side);
  upper->axes = sw_multiply (body->pieces[SW_PIECE_RIBCAGE].axes,
                             sw_shoulder_matrix (side, sw_joints_get (joints, SW_ANGLE_SHOULDER_RAISE, side),
                                                 sw_joints_get (joints, SW_ANGLE_SHOULDER_DIRECTION, side),
                                                 sw_joints_get (joints, SW_ANGLE_SHOULDER_TURN, side)));
  *fore = attach (*upper, sw_vector (0, 0, -SW_UPPER_ARM), sw_turn_y (-sw_joints_get (joints, SW_ANGLE_ELBOW_BEND, side)));
  wrist = sw_multiply (sw_turn_z (s * sw_joints_get (joints, SW_ANGLE_FOREARM_PALM_UP, side)),
                       sw_multiply (sw_turn_x (-s * sw_joints_get (joints, SW_ANGLE_WRIST_BEND, side)),
                                    sw_turn_y (-sw_joints_get (joints, SW_ANGLE_WRIST_THUMBWARD, side))));
  body->pieces[SW_SIDED (SW_PIECE_HAND, side)] = attach (*fore, sw_vector (0, 0, -SW_FOREARM), wrist);
  body->hands[side] = (SwHand){ .knuckle_deg = sw_joints_get (joints, SW_ANGLE_FINGERS_KNUCKLE, side),
                                .curl_deg = sw_joints_get (joints, SW_ANGLE_FINGERS_CURL, side),
                                .tips_deg = sw_joints_get (joints, SW_ANGLE_FINGERS_TIPS, side),
                                .spread_deg = sw_joints_get (joints, SW_ANGLE_FINGERS_SPREAD, side),
                                .more_deg = { sw_joints_get (joints, SW_ANGLE_FINGERS_INDEX, side),
                                              sw_joints_get (joints, SW_ANGLE_FINGERS_MIDDLE, side),
                                              sw_joints_get (joints, SW_ANGLE_FINGERS_RING, side) },
                                .thumb_out_deg = sw_joints_get (joints, SW_ANGLE_THUMB_OUT, side),
                                .thumb_across_deg = sw_joints_get (joints, SW_ANGLE_THUMB_ACROSS, side),
                                .thumb_bend_deg = sw_joints_get (joints, SW_ANGLE_THUMB_BEND, side) };
}

/**
 * sw_ankle_matrix:
 * @side: whose
 * @up_deg: toes up
 * @in_deg: sole to the other foot
 *
 * Returns: the foot in the shank's frame
 */
SwMatrix
sw_ankle_matrix (SwFigureSide side,
                 double       up_deg,
                 double       in_deg)
{
  /* The joint under the ankle, 42 degrees up from the sole (Inman, from memory); its 16 degrees inward are left out. */
  SwVector axis = sw_vector (cos (SW_RAD (42)), 0, sin (SW_RAD (42)));

  return sw_multiply (sw_turn_y (-up_deg), sw_turn_axis (axis, -sw_side_sign (side) * in_deg));
}

/**
 * sw_body_solve_leg:
 *
 * Places one leg again, after its angles changed.
 */
void
sw_body_solve_leg (SwBody         *body,
                   const SwJoints *joints,
                   SwFigureSide    side)
{
  double s = sw_side_sign (side);
  SwPlacement *thigh = &body->pieces[SW_SIDED (SW_PIECE_THIGH, side)];
  SwPlacement *shank = &body->pieces[SW_SIDED (SW_PIECE_SHANK, side)];
  SwPlacement *foot = &body->pieces[SW_SIDED (SW_PIECE_FOOT, side)];
  SwMatrix hip = sw_multiply (sw_turn_y (-sw_joints_get (joints, SW_ANGLE_HIP_BEND, side)),
                              sw_multiply (sw_turn_x (s * sw_joints_get (joints, SW_ANGLE_HIP_OUT, side)),
                                           sw_turn_z (s * sw_joints_get (joints, SW_ANGLE_HIP_TURN, side))));

  *thigh = attach (body->pieces[SW_PIECE_PELVIS], sw_vector (0, s * hip_y, 0), hip);
  *shank = attach (*thigh, sw_vector (0, 0, -SW_THIGH), sw_turn_y (sw_joints_get (joints, SW_ANGLE_KNEE_BEND, side)));
  *foot = attach (*shank, sw_vector (0, 0, -SW_SHANK),
                  sw_ankle_matrix (side, sw_joints_get (joints, SW_ANGLE_ANKLE_UP, side),
                                   sw_joints_get (joints, SW_ANGLE_ANKLE_IN, side)));
  body->pieces[SW_SIDED (SW_PIECE_TOES, side)] = attach (*foot, sw_vector (SW_TOE_JOINT_X, 0, SW_TOE_JOINT_Z),
                                                         sw_turn_y (-sw_joints_get (joints, SW_ANGLE_TOES_UP, side)));
}

/**
 * sw_body_solve_head:
 *
 * Places neck and head again, after their angles changed.
 */
void
sw_body_solve_head (SwBody         *body,
                    const SwJoints *joints)
{
  SwPlacement *pieces = body->pieces;

  pieces[SW_PIECE_NECK] = attach (pieces[SW_PIECE_RIBCAGE], neck_at, spine_matrix (joints, SW_ANGLE_NECK_BEND));
  pieces[SW_PIECE_HEAD] = attach (pieces[SW_PIECE_NECK], head_at, spine_matrix (joints, SW_ANGLE_HEAD_BEND));
}

/**
 * sw_body_solve:
 * @body: (out): where the pieces come to lie; fists are left alone
 * @joints: the angles
 */
void
sw_body_solve (SwBody         *body,
               const SwJoints *joints)
{
  SwPlacement *pieces = body->pieces;

  pieces[SW_PIECE_PELVIS] = (SwPlacement){ root_matrix (joints->root_deg), joints->root_at };
  pieces[SW_PIECE_LOW_BACK]
      = attach (pieces[SW_PIECE_PELVIS], low_back_at, spine_matrix (joints, SW_ANGLE_LOW_BACK_BEND));
  pieces[SW_PIECE_RIBCAGE] = attach (pieces[SW_PIECE_LOW_BACK], ribcage_at,
                                     spine_matrix (joints, SW_ANGLE_UPPER_BACK_BEND));
  sw_body_solve_head (body, joints);
  for (int side = 0; side < 2; side++)
    {
      sw_body_solve_arm (body, joints, (SwFigureSide) side);
      sw_body_solve_leg (body, joints, (SwFigureSide) side);
    }
}

/**
 * sw_body_move:
 * @by: how far everything is shifted
 */
void
sw_body_move (SwBody   *body,
              SwVector  by)
{
  for (int i = 0; i < SW_N_PIECES; i++)
    body->pieces[i].at = sw_add (body->pieces[i].at, by);
}

/**
 * sw_body_get_ball:
 *
 * Returns: the place under the ball of the foot that stays where it is when the heel rises
 */
SwVector
sw_body_get_ball (const SwBody *body,
                  SwFigureSide  side)
{
  return sw_place (body->pieces[SW_SIDED (SW_PIECE_FOOT, side)], sw_vector (SW_BALL_X, 0, -SW_ANKLE_HEIGHT));
}

/**
 * sw_body_get_digit:
 * @side: whose
 * @digit: a finger or the thumb
 * @bones: (out): where it lies in the frame of the hand
 */
void
sw_body_get_digit (const SwBody *body,
                   SwFigureSide  side,
                   SwDigit       digit,
                   SwDigitBones *bones)
{
  sw_hand_get_digit (&body->hands[side], side, digit, bones);
}

static SwVector
tip_of (const SwBody *body,
        SwFigureSide  side,
        SwDigit       digit)
{
  SwDigitBones bones;

  sw_body_get_digit (body, side, digit, &bones);
  return sw_place (body->pieces[SW_SIDED (SW_PIECE_HAND, side)], bones.joints[SW_DIGIT_BONES]);
}

/**
 * sw_body_get_mark:
 * @mark: a place on the body
 *
 * Returns: where it is
 */
SwVector
sw_body_get_mark (const SwBody *body,
                  SwFigureMark  mark)
{
  SwFigureSide side = ((int) mark - (int) SW_FIGURE_MARK_RIGHT_SHOULDER) % 2 == 1 ? SW_FIGURE_LEFT : SW_FIGURE_RIGHT;
  const SwPlacement *p = body->pieces;

  switch (mark)
    {
    case SW_FIGURE_MARK_LOW_BACK:
      return sw_place (p[SW_PIECE_LOW_BACK], sw_vector (-0.045, 0, 0.030));
    case SW_FIGURE_MARK_UPPER_BACK:
      return sw_place (p[SW_PIECE_RIBCAGE], sw_vector (-0.056, 0, 0.080));
    case SW_FIGURE_MARK_CHEST:
      return sw_place (p[SW_PIECE_RIBCAGE], sw_vector (0.070, 0, 0.080));
    case SW_FIGURE_MARK_NECK:
      return p[SW_PIECE_NECK].at;
    case SW_FIGURE_MARK_HEAD:
      return sw_place (p[SW_PIECE_HEAD], sw_vector (0.006, 0, 0.056));
    case SW_FIGURE_MARK_NOSE:
      return sw_place (p[SW_PIECE_HEAD], sw_vector (0.085, 0, 0.035));
    case SW_FIGURE_MARK_RIGHT_SHOULDER:
    case SW_FIGURE_MARK_LEFT_SHOULDER:
      return p[SW_SIDED (SW_PIECE_UPPER_ARM, side)].at;
    case SW_FIGURE_MARK_RIGHT_ELBOW:
    case SW_FIGURE_MARK_LEFT_ELBOW:
      return p[SW_SIDED (SW_PIECE_FOREARM, side)].at;
    case SW_FIGURE_MARK_RIGHT_HAND:
    case SW_FIGURE_MARK_LEFT_HAND:
      return sw_place (p[SW_SIDED (SW_PIECE_HAND, side)], sw_vector (0, 0, -0.055));
    case SW_FIGURE_MARK_RIGHT_FINGERS:
    case SW_FIGURE_MARK_LEFT_FINGERS:
      return tip_of (body, side, SW_DIGIT_MIDDLE);
    case SW_FIGURE_MARK_RIGHT_THUMB:
    case SW_FIGURE_MARK_LEFT_THUMB:
      return tip_of (body, side, SW_DIGIT_THUMB);
    case SW_FIGURE_MARK_RIGHT_HIP:
    case SW_FIGURE_MARK_LEFT_HIP:
      return p[SW_SIDED (SW_PIECE_THIGH, side)].at;
    case SW_FIGURE_MARK_RIGHT_KNEE:
    case SW_FIGURE_MARK_LEFT_KNEE:
      return p[SW_SIDED (SW_PIECE_SHANK, side)].at;
    case SW_FIGURE_MARK_RIGHT_FOOT:
    case SW_FIGURE_MARK_LEFT_FOOT:
      return p[SW_SIDED (SW_PIECE_FOOT, side)].at;
    case SW_FIGURE_MARK_RIGHT_HEEL:
    case SW_FIGURE_MARK_LEFT_HEEL:
      return sw_place (p[SW_SIDED (SW_PIECE_FOOT, side)], sw_vector (SW_HEEL_X - 0.020, 0, -0.017));
    case SW_FIGURE_MARK_RIGHT_TOES:
    case SW_FIGURE_MARK_LEFT_TOES:
      return sw_place (p[SW_SIDED (SW_PIECE_TOES, side)], sw_vector (0.034, 0, 0));
    case SW_FIGURE_MARK_NONE:
    case SW_FIGURE_MARK_HIPS:
    default:
      return p[SW_PIECE_PELVIS].at;
    }
}

/**
 * sw_body_get_mass_centre:
 *
 * Returns: the centre of mass of the whole body
 */
SwVector
sw_body_get_mass_centre (const SwBody *body)
{
  SwVector sum = { 0, 0, 0 };
  double mass = 0.0;

  for (gsize i = 0; i < G_N_ELEMENTS (masses); i++)
    for (int side = 0; side < (masses[i].sided ? 2 : 1); side++)
      {
        SwVector at = sw_place (body->pieces[SW_SIDED (masses[i].piece, side)], masses[i].centre);

        sum = sw_add (sum, sw_scale (at, masses[i].mass));
        mass += masses[i].mass;
      }

  return sw_scale (sum, 1.0 / mass);
}

/**
 * sw_blob_get_reach:
 * @body: a solved body
 * @blob: one of its ellipsoids
 * @way: a unit vector in the world
 *
 * Returns: how far it reaches that way from its centre
 */
double
sw_blob_get_reach (const SwBody *body,
                   const SwBlob *blob,
                   SwVector      way)
{
  SwMatrix axes = body->pieces[blob->piece].axes;

  return sw_length (sw_vector (sw_dot (axes.x, way) * blob->half.x, sw_dot (axes.y, way) * blob->half.y,
                               sw_dot (axes.z, way) * blob->half.z));
}

/**
 * sw_blob_get_lowest:
 * @body: a solved body
 * @blob: one of its ellipsoids
 *
 * Returns: the height of its lowest point
 */
double
sw_blob_get_lowest (const SwBody *body,
                    const SwBlob *blob)
{
  return sw_place (body->pieces[blob->piece], blob->centre).z - sw_blob_get_reach (body, blob, sw_vector (0, 0, 1));
}
