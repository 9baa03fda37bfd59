/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where the bones of fingers and thumb lie. Lengths are parts of stature, drawn so that the open hand is as long as that
 * of Drillis and Contini (0.108) and a little broader than life, or single fingers would not be seen in print. */
#include "config.h"

#include "sw-hand.h"

/* The end joint follows the middle one, the thumb's middle joint its end joint. */
#define END_SHARE (2.0 / 3.0)
#define THUMB_MIDDLE_SHARE 0.6
/* A finger alone bends no further than all of them may. */
#define MOST_KNUCKLE_DEG 90.0
#define MOST_CURL_DEG 100.0
/* The open hand's thumb, against the hand's long axis and against the palm. */
#define THUMB_OUT_DEG 32.0
#define THUMB_ACROSS_DEG 10.0

/**
 * Measures:
 * @at: the first joint in a right hand: x to the thumb, y out of the palm, z to the elbow
 * @lengths: of the bones, the last one to the tip's end
 * @radii: at the joints and at the tip
 * @spread: in which direction and by how many times the spread it goes
 */
typedef struct
{
  SwVector at;
  double lengths[SW_DIGIT_BONES];
  double radii[SW_DIGIT_BONES + 1];
  double spread;
} Measures;

static const Measures measures[SW_N_DIGITS] = {
  [SW_DIGIT_THUMB] = { { 0.018, 0.004, -0.014 }, { 0.026, 0.018, 0.016 }, { 0.0115, 0.0095, 0.0080, 0.0072 }, 0 },
  [SW_DIGIT_INDEX] = { { 0.0200, 0, -0.0490 }, { 0.0250, 0.0145, 0.0130 }, { 0.0074, 0.0068, 0.0063, 0.0057 }, 1 },
  [SW_DIGIT_MIDDLE] = { { 0.0066, 0, -0.0500 }, { 0.0270, 0.0170, 0.0140 }, { 0.0074, 0.0068, 0.0063, 0.0057 }, 0 },
  [SW_DIGIT_RING] = { { -0.0068, 0, -0.0475 }, { 0.0250, 0.0160, 0.0140 }, { 0.0072, 0.0066, 0.0061, 0.0056 }, -1 },
  [SW_DIGIT_LITTLE] = { { -0.0196, 0, -0.0430 }, { 0.0200, 0.0120, 0.0125 }, { 0.0066, 0.0060, 0.0055, 0.0051 }, -2 },
};

static SwVector
for_side (SwVector     v,
          SwFigureSide side)
{
  return sw_vector (v.x, side == SW_FIGURE_LEFT ? -v.y : v.y, v.z);
}

/* Sets bone @n of a right hand, which leads along @along and bends about @axis. */
static void
set_bone (SwDigitBones   *bones,
          const Measures *size,
          int             n,
          SwVector        along,
          SwVector        axis)
{
  bones->across[n] = axis;
  bones->backs[n] = sw_cross (along, axis);
  bones->joints[n + 1] = sw_add (bones->joints[n], sw_scale (along, size->lengths[n]));
}

static void
bend_finger (const SwHand   *hand,
             SwDigit         digit,
             const Measures *size,
             SwDigitBones   *bones)
{
  double more_deg = digit == SW_DIGIT_LITTLE ? 0.0 : hand->more_deg[digit - SW_DIGIT_INDEX];
  double knuckle_deg = CLAMP (hand->knuckle_deg + more_deg, MIN (hand->knuckle_deg, 0.0), MOST_KNUCKLE_DEG);
  double curl_deg = CLAMP (hand->curl_deg + more_deg, 0.0, MOST_CURL_DEG);
  double bends[SW_DIGIT_BONES] = { knuckle_deg, curl_deg, END_SHARE * curl_deg + hand->tips_deg };
  SwMatrix spread = sw_turn_y (-size->spread * hand->spread_deg);
  double bend = 0;

  for (int n = 0; n < SW_DIGIT_BONES; n++)
    {
      bend += bends[n];
      set_bone (bones, size, n, sw_apply (spread, sw_vector (0, sin (SW_RAD (bend)), -cos (SW_RAD (bend)))), spread.x);
    }
}

/* The thumb bends towards the little finger wherever it stands. */
static void
bend_thumb (const SwHand   *hand,
            const Measures *size,
            SwDigitBones   *bones)
{
  double out = SW_RAD (THUMB_OUT_DEG + hand->thumb_out_deg);
  double across = SW_RAD (THUMB_ACROSS_DEG + hand->thumb_across_deg);
  SwVector along = sw_vector (sin (out) * cos (across), sin (out) * sin (across), -cos (out));
  SwVector side = sw_unit (sw_across (sw_vector (-1, 0, 0), along), sw_vector (0, 0, -1));
  SwVector axis = sw_cross (along, side);
  double bends[SW_DIGIT_BONES] = { 0, THUMB_MIDDLE_SHARE * hand->thumb_bend_deg, hand->thumb_bend_deg };

  for (int n = 0; n < SW_DIGIT_BONES; n++)
    {
      along = sw_turn_about (along, axis, bends[n]);
      set_bone (bones, size, n, along, axis);
    }
}

/**
 * sw_hand_fist:
 *
 * Returns: the closed hand, thumb over the fingers
 */
SwHand
sw_hand_fist (void)
{
  return (SwHand){ .knuckle_deg = 80, .curl_deg = 95,
                   .thumb_out_deg = 25, .thumb_across_deg = 72, .thumb_bend_deg = 60 };
}

/**
 * sw_hand_round_ball:
 *
 * Returns: the hand about a small ball
 */
SwHand
sw_hand_round_ball (void)
{
  return (SwHand){ .knuckle_deg = 42, .curl_deg = 48,
                   .thumb_out_deg = 10, .thumb_across_deg = 72, .thumb_bend_deg = 25 };
}

/**
 * sw_hand_get_digit:
 * @hand: how the hand is bent
 * @side: whose it is
 * @digit: a finger or the thumb
 * @bones: (out): where it lies in the frame of the hand
 */
void
sw_hand_get_digit (const SwHand *hand,
                   SwFigureSide  side,
                   SwDigit       digit,
                   SwDigitBones *bones)
{
  const Measures *size = &measures[digit];

  bones->joints[0] = size->at;
  if (digit == SW_DIGIT_THUMB)
    bend_thumb (hand, size, bones);
  else
    bend_finger (hand, digit, size, bones);

  for (int n = 0; n <= SW_DIGIT_BONES; n++)
    {
      bones->radii[n] = size->radii[n];
      bones->joints[n] = for_side (bones->joints[n], side);
    }
  for (int n = 0; n < SW_DIGIT_BONES; n++)
    {
      bones->backs[n] = for_side (bones->backs[n], side);
      bones->across[n] = for_side (bones->across[n], side);
    }
}

/**
 * sw_hand_get_tip:
 * @hand: how the hand is bent
 * @side: whose it is
 * @digit: a finger or the thumb
 *
 * Returns: its tip in the frame of the hand
 */
SwVector
sw_hand_get_tip (const SwHand *hand,
                 SwFigureSide  side,
                 SwDigit       digit)
{
  SwDigitBones bones;

  sw_hand_get_digit (hand, side, digit, &bones);
  return bones.joints[SW_DIGIT_BONES];
}
