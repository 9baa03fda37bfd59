/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The look of hands and feet in close pictures: palm, single fingers and a thumb, a foot with its arch, a big toe and the
 * four small ones. Soles and palms lie where those of the plain shapes do. All numbers are our own drawing. */
#include "config.h"

#include "sw-shape.h"

/* The web between the fingers, as a share of their first bone. */
#define WEB 0.45
#define N_SMALL_TOES 4

static void
shape_palm (SwShape      *shape,
            SwPiece       hand,
            const SwBody *body,
            SwFigureSide  side)
{
  double palm = -sw_side_sign (side);
  SwHull *hull = sw_shape_next_hull (shape);
  SwDigitBones index;
  SwDigitBones little;
  SwDigitBones thumb;

  sw_body_get_digit (body, side, SW_DIGIT_INDEX, &index);
  sw_body_get_digit (body, side, SW_DIGIT_LITTLE, &little);
  sw_body_get_digit (body, side, SW_DIGIT_THUMB, &thumb);

  sw_hull_add (hull, hand, sw_vector (0, 0, 0), sw_vector (0.0165, 0.0145, 0.0150));
  sw_hull_add (hull, hand, sw_vector (-0.0135, palm * 0.003, -0.022), sw_vector (0.0120, 0.0115, 0.0140));
  sw_hull_add_ball (hull, hand, index.joints[0], 0.0090);
  sw_hull_add_ball (hull, hand, little.joints[0], 0.0085);

  hull = sw_shape_next_hull (shape);
  sw_hull_add_ball (hull, hand, index.joints[0], 0.0085);
  sw_hull_add_ball (hull, hand, little.joints[0], 0.0080);
  sw_hull_add_ball (hull, hand, sw_mix (index.joints[0], index.joints[1], WEB), 0.0062);
  sw_hull_add_ball (hull, hand, sw_mix (little.joints[0], little.joints[1], WEB), 0.0056);

  /* The ball of the thumb and the web beside it. */
  hull = sw_shape_next_hull (shape);
  sw_hull_add_ball (hull, hand, thumb.joints[0], 0.0120);
  sw_hull_add_ball (hull, hand, sw_mix (thumb.joints[0], thumb.joints[1], 0.55), 0.0105);
  sw_hull_add (hull, hand, sw_vector (0.004, palm * 0.004, -0.026), sw_vector (0.0110, 0.0100, 0.0110));
}

static void
shape_digit (SwShape      *shape,
             SwPiece       hand,
             const SwBody *body,
             SwFigureSide  side,
             SwDigit       digit)
{
  SwDigitBones bones;

  sw_body_get_digit (body, side, digit, &bones);
  for (int n = 0; n < SW_DIGIT_BONES; n++)
    {
      SwVector end = bones.joints[n + 1];
      SwHull *hull = sw_shape_next_hull (shape);

      if (n + 1 == SW_DIGIT_BONES)
        {
          SwVector back = sw_unit (sw_sub (bones.joints[n], end), sw_vector (0, 0, 1));

          end = sw_add (end, sw_scale (back, bones.radii[n + 1]));
        }
      sw_hull_add_ball (hull, hand, bones.joints[n], bones.radii[n]);
      sw_hull_add_ball (hull, hand, end, bones.radii[n + 1]);
    }
}

static void
shape_foot (SwShape *shape,
            SwPiece  foot)
{
  SwHull *hull = sw_shape_next_hull (shape);
  SwVector middle = { 0.017, 0, -0.0115 };

  sw_hull_add_ball (hull, foot, sw_vector (0, 0, 0), 0.0215);
  sw_hull_add_ball (hull, foot, sw_vector (SW_HEEL_X, 0, -0.016), 0.023);
  sw_hull_add (hull, foot, middle, sw_vector (0.0280, 0.0220, 0.0165));
  hull = sw_shape_next_hull (shape);
  sw_hull_add_ball (hull, foot, sw_vector (0.010, 0, -0.001), 0.0180);
  sw_hull_add (hull, foot, middle, sw_vector (0.0280, 0.0220, 0.0165));
  sw_hull_add (hull, foot, sw_vector (0.062, 0, -0.024), sw_vector (0.018, 0.028, 0.015));
}

/* Every toe turns about its own root; bent down, it claws, so that it stays on the floor. */
static void
shape_toe (SwShape      *shape,
           const SwBody *body,
           SwFigureSide  side,
           double        y,
           double        from_x,
           double        length,
           double        radius)
{
  SwPiece foot = SW_SIDED (SW_PIECE_FOOT, side);
  SwVector toes = body->pieces[SW_SIDED (SW_PIECE_TOES, side)].axes.x;
  double up = atan2 (sw_dot (toes, body->pieces[foot].axes.z), sw_dot (toes, body->pieces[foot].axes.x));
  double middle_up = up < 0 ? -0.4 * up : up;
  double tip_up = up < 0 ? 2.4 * up : up;
  SwVector root = { SW_TOE_JOINT_X + from_x, y, SW_TOE_JOINT_Z };
  SwVector middle = sw_add (root, sw_scale (sw_vector (cos (middle_up), 0, sin (middle_up)), 0.5 * length));
  SwVector tip = sw_add (middle, sw_scale (sw_vector (cos (tip_up), 0, sin (tip_up)), 0.5 * length));
  SwHull *hull = sw_shape_next_hull (shape);

  sw_hull_add_ball (hull, foot, root, 1.12 * radius);
  sw_hull_add_ball (hull, foot, sw_add (middle, sw_vector (0, 0, -0.0005)), radius);
  sw_hull_add_ball (hull, foot, sw_add (tip, sw_vector (0, 0, -0.0020)), 0.94 * radius);
}

/**
 * sw_shape_get_fine:
 * @body: a solved body
 * @part: a part
 * @shape: (inout): its hulls are added
 *
 * Returns: whether the part looks other than in plain pictures
 */
gboolean
sw_shape_get_fine (const SwBody *body,
                   SwPart        part,
                   SwShape      *shape)
{
  static const double small_toes[N_SMALL_TOES][4] = { { 0.0020, -0.001, 0.0270, 0.0070 },
                                                      { -0.0075, -0.004, 0.0250, 0.0066 },
                                                      { -0.0160, -0.008, 0.0235, 0.0062 },
                                                      { -0.0235, -0.013, 0.0215, 0.0060 } };
  SwFigureSide side = (SwFigureSide) sw_part_get_side (part);
  SwPiece piece = sw_part_get_piece (part);
  double inner = -sw_side_sign (side);
  SwHull *hull;

  switch ((int) part - (int) side)
    {
    case SW_PART_FOREARM:
      hull = sw_shape_next_hull (shape);
      sw_hull_add (hull, piece, sw_vector (0, 0, -SW_FOREARM_CUT), sw_vector (0.0215, 0.0215, 0));
      sw_hull_add_ball (hull, piece, sw_vector (0, 0, -SW_FOREARM), 0.0150);
      return TRUE;
    case SW_PART_HAND:
      shape_palm (shape, piece, body, side);
      return TRUE;
    case SW_PART_SHANK:
      hull = sw_shape_next_hull (shape);
      sw_hull_add (hull, piece, sw_vector (-0.004, 0, -SW_SHANK_CUT), sw_vector (0.0300, 0.0275, 0));
      sw_hull_add_ball (hull, piece, sw_vector (0, 0, -0.212), 0.0205);
      sw_hull_add_ball (hull, piece, sw_vector (0, 0, -SW_SHANK), 0.0215);
      return TRUE;
    case SW_PART_FOOT:
      shape_foot (shape, piece);
      return TRUE;
    case SW_PART_BIG_TOE:
      shape_toe (shape, body, side, inner * 0.0150, 0.002, 0.0245, 0.0100);
      return TRUE;
    case SW_PART_SMALL_TOES:
      for (int i = 0; i < N_SMALL_TOES; i++)
        shape_toe (shape, body, side, inner * small_toes[i][0], small_toes[i][1], small_toes[i][2], small_toes[i][3]);
      return TRUE;
    default:
      break;
    }
  if (part < SW_PART_THUMB)
    return FALSE;

  shape_digit (shape, piece, body, side, sw_part_get_digit (part));
  return TRUE;
}
