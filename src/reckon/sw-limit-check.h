/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-exercise.h"
#include "sw-finding.h"
#include "sw-limit.h"
#include "sw-movements.h"

G_BEGIN_DECLS

/**
 * SwLimitBreach:
 * @level: how severe
 * @side: on which side; none for both, or for what has no sides
 * @degrees: of a range: where the picture goes furthest beyond; NaN without a picture, and for other limits
 *
 * What an exercise does that a limit does not allow, or asks to be thought of.
 */
typedef struct
{
  SwFindingLevel level;
  SwBodySide side;
  double degrees;
} SwLimitBreach;

gboolean sw_limit_is_complete (SwLimit *limit);
gboolean sw_limit_find_breach (SwLimit       *limit,
                               SwExercise    *exercise,
                               const SwDose  *dose,
                               SwLimitBreach *breach);
gboolean sw_limit_concerns (SwLimit      *limit,
                            SwExercise   *exercise,
                            const SwDose *dose);
void sw_limits_get_movements (SwExercise  *exercise,
                              SwSide       side,
                              SwMovements *movements);

G_END_DECLS
