/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-programme.h"
#include "sw-reckon-enum-types.h"

G_BEGIN_DECLS

/**
 * SwBalance:
 * @SW_BALANCE_SIDES: right and left
 * @SW_BALANCE_PUSH_PULL: pushing and pulling of the arms
 * @SW_BALANCE_FRONT_BACK: front, back and flanks of the body
 * @SW_BALANCE_PLANES: the plane in which the joints move most
 * @SW_BALANCE_POSITIONS: the start positions
 *
 * In which ways a week's sets are looked at.
 */
typedef enum
{
  SW_BALANCE_SIDES,
  SW_BALANCE_PUSH_PULL,
  SW_BALANCE_FRONT_BACK,
  SW_BALANCE_PLANES,
  SW_BALANCE_POSITIONS,
} SwBalance;

/**
 * SwPlane:
 * @SW_PLANE_STILL: nothing moves
 * @SW_PLANE_SAGITTAL: forwards and backwards
 * @SW_PLANE_FRONTAL: sideways
 * @SW_PLANE_TRANSVERSE: turning
 */
typedef enum
{
  SW_PLANE_STILL,
  SW_PLANE_SAGITTAL,
  SW_PLANE_FRONTAL,
  SW_PLANE_TRANSVERSE,
} SwPlane;

/**
 * SwBalancePart:
 * @key: what it is, the same in every language
 * @name: what it is, translated, to stand within a sentence
 * @sets: sets a week; those of both sides count as one
 */
typedef struct
{
  const char *key;
  const char *name;
  double sets;
} SwBalancePart;

SwPlane sw_plane_of (SwExercise *exercise);
GArray *sw_balance_of_week (SwProgramme *programme,
                            SwBalance    balance);
const char *sw_balance_get_name (SwBalance balance);
const char *sw_balance_get_rule (SwBalance balance);

G_END_DECLS
