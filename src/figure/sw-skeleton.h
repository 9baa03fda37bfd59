/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-figure-spec.h"
#include "sw-hand.h"

G_BEGIN_DECLS

/**
 * SwPiece:
 *
 * The rigid pieces of the body. Those of the limbs stand in pairs, right before left.
 */
typedef enum
{
  SW_PIECE_PELVIS,
  SW_PIECE_LOW_BACK,
  SW_PIECE_RIBCAGE,
  SW_PIECE_NECK,
  SW_PIECE_HEAD,
  SW_PIECE_UPPER_ARM,
  SW_PIECE_FOREARM = SW_PIECE_UPPER_ARM + 2,
  SW_PIECE_HAND = SW_PIECE_FOREARM + 2,
  SW_PIECE_THIGH = SW_PIECE_HAND + 2,
  SW_PIECE_SHANK = SW_PIECE_THIGH + 2,
  SW_PIECE_FOOT = SW_PIECE_SHANK + 2,
  SW_PIECE_TOES = SW_PIECE_FOOT + 2,
  SW_N_PIECES = SW_PIECE_TOES + 2,
} SwPiece;

#define SW_SIDED(piece, side) ((piece) + (int) (side))

/* Segment lengths in parts of stature: Drillis and Contini 1966, as drawn in Winter, Biomechanics and Motor Control of
 * Human Movement, 4th ed. 2009, fig. 4.1. */
#define SW_UPPER_ARM 0.186
#define SW_FOREARM 0.146
#define SW_HAND 0.108
#define SW_THIGH 0.245
#define SW_SHANK 0.246
#define SW_ANKLE_HEIGHT 0.039

/* From the ankle to the joint of the toes and to the heel's lowest point, in the foot. */
#define SW_TOE_JOINT_X 0.066
#define SW_TOE_JOINT_Z (-0.025)
#define SW_BALL_X 0.060
#define SW_HEEL_X (-0.028)

/**
 * SwJoints:
 * @slots_deg: every joint angle
 * @root_deg: lean, roll, turn, twist of the pelvis, absolute
 * @root_at: the middle between the hip joints
 *
 * A pose as bare numbers.
 */
typedef struct
{
  double slots_deg[SW_N_SLOTS];
  double root_deg[SW_FIGURE_N_ROOT];
  SwVector root_at;
} SwJoints;

/**
 * SwBody:
 * @pieces: where every piece lies
 * @fists: by side, whether the hand is closed
 * @hands: by side, how fingers and thumb are bent
 * @belly: how far the belly is blown out
 * @eyes_closed: whether the eyes are
 * @fine: whether it is drawn with single fingers and toes
 *
 * A solved pose.
 */
typedef struct
{
  SwPlacement pieces[SW_N_PIECES];
  gboolean fists[2];
  SwHand hands[2];
  double belly;
  gboolean eyes_closed;
  gboolean fine;
} SwBody;

/**
 * SwBlob:
 * @piece: the piece it belongs to
 * @centre: within the piece
 * @half: half-axes along the piece's axes
 *
 * An ellipsoid. Parts of the drawing are hulls of a few of them.
 */
typedef struct
{
  SwPiece piece;
  SwVector centre;
  SwVector half;
} SwBlob;

static inline double
sw_side_sign (SwFigureSide side)
{
  return side == SW_FIGURE_LEFT ? 1.0 : -1.0;
}

static inline double
sw_joints_get (const SwJoints *joints,
               SwAngle         angle,
               SwFigureSide    side)
{
  return joints->slots_deg[sw_angle_get_slot (angle, side)];
}

static inline void
sw_joints_set (SwJoints     *joints,
               SwAngle       angle,
               SwFigureSide  side,
               double        value_deg)
{
  joints->slots_deg[sw_angle_get_slot (angle, side)] = value_deg;
}

void sw_joints_set_hand (SwJoints     *joints,
                         SwFigureSide  side,
                         const SwHand *hand);
SwMatrix sw_shoulder_matrix (SwFigureSide side,
                             double       raise_deg,
                             double       direction_deg,
                             double       turn_deg);
SwMatrix sw_ankle_matrix (SwFigureSide side,
                          double       up_deg,
                          double       in_deg);
void sw_body_solve (SwBody         *body,
                    const SwJoints *joints);
void sw_body_solve_head (SwBody         *body,
                         const SwJoints *joints);
void sw_body_solve_arm (SwBody         *body,
                        const SwJoints *joints,
                        SwFigureSide    side);
void sw_body_solve_leg (SwBody         *body,
                        const SwJoints *joints,
                        SwFigureSide    side);
void sw_body_move (SwBody   *body,
                   SwVector  by);
SwVector sw_body_get_shoulder (const SwBody   *body,
                               const SwJoints *joints,
                               SwFigureSide    side);
SwVector sw_body_get_hip (const SwBody *body,
                          SwFigureSide  side);
SwVector sw_body_get_mark (const SwBody *body,
                           SwFigureMark  mark);
SwVector sw_body_get_ball (const SwBody *body,
                           SwFigureSide  side);
SwVector sw_body_get_mass_centre (const SwBody *body);
void sw_body_get_digit (const SwBody *body,
                        SwFigureSide  side,
                        SwDigit       digit,
                        SwDigitBones *bones);
double sw_blob_get_reach (const SwBody *body,
                          const SwBlob *blob,
                          SwVector      way);
double sw_blob_get_lowest (const SwBody *body,
                           const SwBlob *blob);

G_END_DECLS
