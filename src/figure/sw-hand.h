/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-angle.h"
#include "sw-vector.h"

G_BEGIN_DECLS

/**
 * SwDigit:
 *
 * Thumb and fingers.
 */
typedef enum
{
  SW_DIGIT_THUMB,
  SW_DIGIT_INDEX,
  SW_DIGIT_MIDDLE,
  SW_DIGIT_RING,
  SW_DIGIT_LITTLE,
  SW_N_DIGITS,
} SwDigit;

/**
 * SwHand:
 *
 * How fingers and thumb are bent; the angles are those of sw-angle.c. @more_deg is how much more than all alike index,
 * middle and ring finger bend.
 */
typedef struct
{
  double knuckle_deg;
  double curl_deg;
  double tips_deg;
  double spread_deg;
  double more_deg[3];
  double thumb_out_deg;
  double thumb_across_deg;
  double thumb_bend_deg;
} SwHand;

#define SW_DIGIT_BONES 3

/**
 * SwDigitBones:
 * @joints: where each bone begins, and the tip
 * @backs: of each bone, the unit vector that leads out of its back, where the nail is
 * @across: of each bone, the unit vector from its little-finger side to its thumb side
 * @radii: how thick the finger is at each of @joints
 *
 * A finger or the thumb in the frame of the hand.
 */
typedef struct
{
  SwVector joints[SW_DIGIT_BONES + 1];
  SwVector backs[SW_DIGIT_BONES];
  SwVector across[SW_DIGIT_BONES];
  double radii[SW_DIGIT_BONES + 1];
} SwDigitBones;

SwHand sw_hand_fist (void);
SwHand sw_hand_round_ball (void);
void sw_hand_get_digit (const SwHand *hand,
                        SwFigureSide  side,
                        SwDigit       digit,
                        SwDigitBones *bones);
SwVector sw_hand_get_tip (const SwHand *hand,
                          SwFigureSide  side,
                          SwDigit       digit);

G_END_DECLS
