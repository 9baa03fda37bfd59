/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The look of the body: each part of the drawing as hulls of ellipsoids that sit on the skeleton's pieces. A broader
 * body would be another set of these numbers, all of which are our own drawing. */
#include "config.h"

#include "sw-shape.h"

/* The first ball of a limb is smaller than the trunk's ball there, so that the trunk's outline survives. */
#define SHOULDER_BALL 0.035
/* Fingers bent by less are drawn straight; bent by so much they are a fist. */
#define FINGERS_BEND_DEG 12.0
#define FINGERS_CLOSE_DEG 150.0

static void
add_shoulder_balls (SwHull       *hull,
                    const SwBody *body)
{
  for (int side = 0; side < 2; side++)
    {
      SwVector at = sw_unplace (body->pieces[SW_PIECE_RIBCAGE], body->pieces[SW_SIDED (SW_PIECE_UPPER_ARM, side)].at);

      sw_hull_add (hull, SW_PIECE_RIBCAGE, sw_add (at, sw_vector (0, 0, -0.002)),
                   sw_vector (0.034, 0.030, SHOULDER_BALL));
    }
}

static void
shape_trunk (SwShape      *shape,
             const SwBody *body)
{
  SwVector waist_at = { 0.006, 0, 0.055 };
  SwVector waist = { 0.054, 0.074, 0.045 };
  SwVector chest_at = { 0.008, 0, 0.065 };
  SwVector chest = { 0.066, 0.086, 0.070 };
  SwVector belly_at = { 0.006 + body->belly, 0, 0.042 };
  SwVector belly = { 0.052, 0.066, 0.034 };
  SwHull *hull = sw_shape_next_hull (shape);

  sw_hull_add (hull, SW_PIECE_PELVIS, sw_vector (-0.012, 0, 0.022), sw_vector (0.066, 0.096, 0.062));
  sw_hull_add (hull, SW_PIECE_LOW_BACK, waist_at, waist);
  if (body->belly > 0)
    sw_hull_add (hull, SW_PIECE_LOW_BACK, belly_at, belly);
  hull = sw_shape_next_hull (shape);
  sw_hull_add (hull, SW_PIECE_LOW_BACK, waist_at, waist);
  sw_hull_add (hull, SW_PIECE_RIBCAGE, chest_at, chest);
  if (body->belly > 0)
    sw_hull_add (hull, SW_PIECE_LOW_BACK, belly_at, belly);
  hull = sw_shape_next_hull (shape);
  sw_hull_add (hull, SW_PIECE_RIBCAGE, chest_at, chest);
  sw_hull_add (hull, SW_PIECE_RIBCAGE, sw_vector (-0.006, 0, 0.118), sw_vector (0.045, 0.060, 0.030));
  add_shoulder_balls (hull, body);
}

static void
shape_neck (SwShape *shape)
{
  SwHull *hull = sw_shape_next_hull (shape);

  sw_hull_add (hull, SW_PIECE_RIBCAGE, sw_vector (-0.008, 0, 0.150), sw_vector (0.031, 0.034, 0.012));
  sw_hull_add (hull, SW_PIECE_HEAD, sw_vector (-0.004, 0, 0.012), sw_vector (0.030, 0.030, 0.020));
}

static void
shape_head (SwShape *shape)
{
  SwHull *hull = sw_shape_next_hull (shape);

  sw_hull_add (hull, SW_PIECE_HEAD, sw_vector (0.006, 0, 0.056), sw_vector (0.062, 0.052, 0.060));
  sw_hull_add (hull, SW_PIECE_HEAD, sw_vector (0.032, 0, 0.006), sw_vector (0.026, 0.026, 0.022));
  hull = sw_shape_next_hull (shape);
  sw_hull_add_ball (hull, SW_PIECE_HEAD, sw_vector (0.050, 0, 0.052), 0.011);
  sw_hull_add_ball (hull, SW_PIECE_HEAD, sw_vector (0.079, 0, 0.034), 0.007);
}

static double
fingers_bent_deg (const SwHand *hand)
{
  return hand->knuckle_deg + hand->curl_deg;
}

static gboolean
is_closed (const SwBody *body,
           int           side)
{
  return body->fists[side] || fingers_bent_deg (&body->hands[side]) >= FINGERS_CLOSE_DEG;
}

/* All fingers as one, bent like the middle one. */
static void
shape_bent_fingers (SwShape      *shape,
                    SwPiece       hand,
                    const SwBody *body,
                    SwFigureSide  side)
{
  SwDigitBones bones;
  SwHull *hull;

  sw_body_get_digit (body, side, SW_DIGIT_MIDDLE, &bones);
  hull = sw_shape_next_hull (shape);
  sw_hull_add (hull, hand, sw_vector (0, 0, -0.052), sw_vector (0.030, 0.015, 0.014));
  sw_hull_add (hull, hand, sw_vector (-0.001, bones.joints[1].y, bones.joints[1].z), sw_vector (0.027, 0.013, 0.013));
  hull = sw_shape_next_hull (shape);
  sw_hull_add (hull, hand, sw_vector (-0.001, bones.joints[1].y, bones.joints[1].z), sw_vector (0.027, 0.013, 0.013));
  sw_hull_add (hull, hand, sw_vector (-0.002, bones.joints[2].y, bones.joints[2].z), sw_vector (0.024, 0.012, 0.012));
  sw_hull_add (hull, hand, sw_mix (bones.joints[2], sw_vector (-0.010, bones.joints[3].y, bones.joints[3].z), 0.4),
               sw_vector (0.022, 0.011, 0.011));
}

static void
shape_hand (SwShape      *shape,
            SwPiece       hand,
            const SwBody *body,
            SwFigureSide  side)
{
  double palm = -sw_side_sign (side);
  SwHull *hull = sw_shape_next_hull (shape);

  sw_hull_add_ball (hull, hand, sw_vector (0, 0, 0), 0.018);
  if (is_closed (body, side))
    {
      sw_hull_add (hull, hand, sw_vector (0, palm * 0.006, -0.042), sw_vector (0.032, 0.027, 0.030));
      hull = sw_shape_next_hull (shape);
      sw_hull_add_ball (hull, hand, sw_vector (0.020, palm * 0.010, -0.024), 0.012);
      sw_hull_add_ball (hull, hand, sw_vector (0.024, palm * 0.030, -0.048), 0.010);
      return;
    }

  sw_hull_add (hull, hand, sw_vector (0, 0, -0.052), sw_vector (0.030, 0.015, 0.014));
  if (fabs (fingers_bent_deg (&body->hands[side])) > FINGERS_BEND_DEG)
    shape_bent_fingers (shape, hand, body, side);
  else
    sw_hull_add (hull, hand, sw_vector (-0.002, palm * 0.006, -0.096), sw_vector (0.021, 0.012, 0.012));
  hull = sw_shape_next_hull (shape);
  sw_hull_add_ball (hull, hand, sw_vector (0.016, 0, -0.022), 0.011);
  sw_hull_add_ball (hull, hand, sw_vector (0.047, palm * 0.008, -0.058), 0.0095);
}

static void
shape_leg (SwShape      *shape,
           SwPart        kind,
           SwFigureSide  side)
{
  SwPiece piece = SW_SIDED (sw_part_get_piece (kind), side);
  SwHull *hull = sw_shape_next_hull (shape);

  switch (kind)
    {
    case SW_PART_THIGH:
      sw_hull_add (hull, piece, sw_vector (-0.006, 0, 0), sw_vector (0.056, 0.048, 0.050));
      sw_hull_add (hull, piece, sw_vector (0.002, 0, -0.090), sw_vector (0.050, 0.046, 0.060));
      sw_hull_add_ball (hull, piece, sw_vector (0, 0, -SW_THIGH), 0.035);
      break;
    case SW_PART_SHANK:
      sw_hull_add_ball (hull, piece, sw_vector (0, 0, 0), 0.034);
      sw_hull_add (hull, piece, sw_vector (-0.008, 0, -0.075), sw_vector (0.036, 0.033, 0.045));
      hull = sw_shape_next_hull (shape);
      sw_hull_add (hull, piece, sw_vector (-0.008, 0, -0.075), sw_vector (0.036, 0.033, 0.045));
      sw_hull_add_ball (hull, piece, sw_vector (0, 0, -SW_SHANK), 0.022);
      break;
    case SW_PART_FOOT:
    default:
      sw_hull_add_ball (hull, piece, sw_vector (0, 0, 0), 0.023);
      sw_hull_add_ball (hull, piece, sw_vector (SW_HEEL_X, 0, -0.016), 0.023);
      sw_hull_add (hull, piece, sw_vector (0.062, 0, -0.024), sw_vector (0.018, 0.028, 0.015));
      hull = sw_shape_next_hull (shape);
      sw_hull_add (hull, piece, sw_vector (0.062, 0, -0.024), sw_vector (0.018, 0.028, 0.015));
      sw_hull_add (hull, SW_SIDED (SW_PIECE_TOES, side), sw_vector (0.028, 0, -0.003), sw_vector (0.013, 0.024, 0.011));
      break;
    }
}

/**
 * sw_shape_get:
 * @body: a solved body
 * @part: a part
 * @shape: (out): its hulls
 */
void
sw_shape_get (const SwBody *body,
              SwPart        part,
              SwShape      *shape)
{
  int side = sw_part_get_side (part);
  SwPiece piece = sw_part_get_piece (part);
  SwHull *hull;

  shape->n_hulls = 0;
  if (body->fine && sw_shape_get_fine (body, part, shape))
    return;
  if (part == SW_PART_TRUNK)
    shape_trunk (shape, body);
  else if (part == SW_PART_NECK)
    shape_neck (shape);
  else if (part == SW_PART_HEAD)
    shape_head (shape);
  else if (part < SW_PART_FOREARM)
    {
      hull = sw_shape_next_hull (shape);
      sw_hull_add_ball (hull, piece, sw_vector (0, 0, 0), 0.030);
      sw_hull_add (hull, piece, sw_vector (0, 0, -0.080), sw_vector (0.031, 0.030, 0.050));
      sw_hull_add_ball (hull, piece, sw_vector (0, 0, -SW_UPPER_ARM), 0.025);
    }
  else if (part < SW_PART_HAND)
    {
      hull = sw_shape_next_hull (shape);
      sw_hull_add_ball (hull, piece, sw_vector (0, 0, 0), 0.025);
      sw_hull_add (hull, piece, sw_vector (0, 0, -0.040), sw_vector (0.026, 0.026, 0.030));
      sw_hull_add_ball (hull, piece, sw_vector (0, 0, -SW_FOREARM), 0.017);
    }
  else if (part < SW_PART_THIGH)
    shape_hand (shape, piece, body, (SwFigureSide) side);
  else
    shape_leg (shape, (SwPart) ((int) part - side), (SwFigureSide) side);
}

/**
 * sw_part_get_side:
 *
 * Returns: a #SwFigureSide; right for parts in the middle
 */
int
sw_part_get_side (SwPart part)
{
  return part < SW_PART_UPPER_ARM ? 0 : ((int) part - (int) SW_PART_UPPER_ARM) % 2;
}

/**
 * sw_part_get_piece:
 *
 * Returns: the piece whose origin is the joint the part hangs on
 */
SwPiece
sw_part_get_piece (SwPart part)
{
  switch (part)
    {
    case SW_PART_TRUNK:
      return SW_PIECE_PELVIS;
    case SW_PART_NECK:
      return SW_PIECE_NECK;
    case SW_PART_HEAD:
      return SW_PIECE_HEAD;
    default:
      break;
    }
  if (part >= SW_PART_BIG_TOE)
    return SW_SIDED (SW_PIECE_TOES, sw_part_get_side (part));
  if (part >= SW_PART_THUMB)
    return SW_SIDED (SW_PIECE_HAND, sw_part_get_side (part));

  return (SwPiece) ((int) SW_PIECE_UPPER_ARM + (int) part - (int) SW_PART_UPPER_ARM);
}

/**
 * sw_part_get_digit:
 * @part: the thumb's part or a finger's
 *
 * Returns: which it is
 */
SwDigit
sw_part_get_digit (SwPart part)
{
  return (SwDigit) (((int) part - (int) SW_PART_THUMB) / 2);
}

/**
 * sw_part_get_limb:
 *
 * Returns: 0 and 1 for parts of the right and left arm, 2 and 3 for those of the legs, -1 in the middle
 */
int
sw_part_get_limb (SwPart part)
{
  gboolean arm = part < SW_PART_THIGH || (part >= SW_PART_THUMB && part < SW_PART_BIG_TOE);

  return part < SW_PART_UPPER_ARM ? -1 : (arm ? 0 : 2) + sw_part_get_side (part);
}

/**
 * sw_part_get_parent:
 *
 * Returns: the part it hangs on, -1 for the trunk
 */
int
sw_part_get_parent (SwPart part)
{
  int side = sw_part_get_side (part);

  switch ((int) part - side)
    {
    case SW_PART_TRUNK:
      return -1;
    case SW_PART_HEAD:
      return SW_PART_NECK;
    case SW_PART_NECK:
    case SW_PART_UPPER_ARM:
    case SW_PART_THIGH:
      return SW_PART_TRUNK;
    case SW_PART_BIG_TOE:
    case SW_PART_SMALL_TOES:
      return SW_SIDED (SW_PART_FOOT, side);
    default:
      return part < SW_PART_THUMB ? (int) part - 2 : SW_SIDED (SW_PART_HAND, side);
    }
}

/**
 * sw_part_get_joint_radius:
 *
 * Returns: how wide the body is where the part joins its parent, parts of stature
 */
double
sw_part_get_joint_radius (SwPart part)
{
  switch ((int) part - sw_part_get_side (part))
    {
    case SW_PART_UPPER_ARM:
      return 0.040;
    case SW_PART_FOREARM:
      return 0.031;
    case SW_PART_HAND:
      return 0.021;
    case SW_PART_THIGH:
      return 0.068;
    case SW_PART_SHANK:
      return 0.043;
    case SW_PART_FOOT:
      return 0.028;
    case SW_PART_THUMB:
      return 0.0145;
    case SW_PART_INDEX:
    case SW_PART_MIDDLE:
    case SW_PART_RING:
    case SW_PART_LITTLE:
      return 0.0080;
    case SW_PART_BIG_TOE:
    case SW_PART_SMALL_TOES:
      return 0.021;
    default:
      return 0.030;
    }
}

/**
 * sw_part_get_line:
 * @from: (out): where the part begins
 * @to: (out): where it ends
 *
 * The bone within a part.
 */
void
sw_part_get_line (const SwBody *body,
                  SwPart        part,
                  SwVector     *from,
                  SwVector     *to)
{
  int side = sw_part_get_side (part);
  SwPlacement frame = body->pieces[sw_part_get_piece (part)];
  SwDigitBones bones;

  *from = frame.at;
  switch ((int) part - side)
    {
    case SW_PART_TRUNK:
      *to = body->pieces[SW_PIECE_NECK].at;
      break;
    case SW_PART_NECK:
      *to = body->pieces[SW_PIECE_HEAD].at;
      break;
    case SW_PART_HEAD:
      *to = sw_place (frame, sw_vector (0.006, 0, 0.110));
      break;
    case SW_PART_HAND:
      *to = sw_place (frame, sw_vector (0, 0, is_closed (body, side) ? -0.060 : -0.100));
      if (body->fine)
        *to = sw_place (frame, sw_vector (0, 0, -0.050));
      else if (!is_closed (body, side) && fabs (fingers_bent_deg (&body->hands[side])) > FINGERS_BEND_DEG)
        {
          sw_body_get_digit (body, (SwFigureSide) side, SW_DIGIT_MIDDLE, &bones);
          *to = sw_place (frame, sw_vector (0, bones.joints[2].y, bones.joints[2].z));
        }
      break;
    case SW_PART_THUMB:
    case SW_PART_INDEX:
    case SW_PART_MIDDLE:
    case SW_PART_RING:
    case SW_PART_LITTLE:
      sw_body_get_digit (body, (SwFigureSide) side, sw_part_get_digit (part), &bones);
      *from = sw_place (frame, bones.joints[0]);
      *to = sw_place (frame, bones.joints[SW_DIGIT_BONES]);
      break;
    case SW_PART_BIG_TOE:
    case SW_PART_SMALL_TOES:
      *to = sw_place (frame, sw_vector (0.030, 0, 0));
      break;
    case SW_PART_FOOT:
      *to = body->pieces[SW_SIDED (SW_PIECE_TOES, side)].at;
      break;
    default:
      *to = body->pieces[sw_part_get_piece (part) + 2].at;
    }
}

/**
 * sw_part_get_hem:
 * @ring: (out): the disc where the sleeve or trouser leg ends
 *
 * Returns: whether the part wears any
 */
gboolean
sw_part_get_hem (SwPart  part,
                 SwBlob *ring)
{
  int side = sw_part_get_side (part);

  if ((int) part - side == SW_PART_UPPER_ARM)
    *ring = (SwBlob){ sw_part_get_piece (part), { 0, 0, -0.45 * SW_UPPER_ARM }, { 0.031, 0.030, 0.0 } };
  else if ((int) part - side == SW_PART_THIGH)
    *ring = (SwBlob){ sw_part_get_piece (part), { 0.001, 0, -0.52 * SW_THIGH }, { 0.0475, 0.0445, 0.0 } };
  else
    return FALSE;

  return TRUE;
}

/**
 * sw_part_get_lowest:
 *
 * Returns: the height of the part's lowest point
 */
double
sw_part_get_lowest (const SwBody *body,
                    SwPart        part)
{
  double lowest = G_MAXDOUBLE;
  SwShape shape;

  sw_shape_get (body, part, &shape);
  for (int i = 0; i < shape.n_hulls; i++)
    for (int k = 0; k < shape.hulls[i].n_blobs; k++)
      lowest = MIN (lowest, sw_blob_get_lowest (body, &shape.hulls[i].blobs[k]));

  return lowest;
}
