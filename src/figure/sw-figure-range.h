/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-figure-spec.h"

G_BEGIN_DECLS

/**
 * SwFigureRange:
 * @low_deg: by slot, the least that joint angle is on the way
 * @high_deg: by slot, the greatest
 *
 * How far an exercise's figure takes each joint, in the angles and signs of sw-angle.c. See sw_angle_get_slot().
 */
typedef struct
{
  double low_deg[SW_N_SLOTS];
  double high_deg[SW_N_SLOTS];
} SwFigureRange;

void sw_figure_range_init (SwFigureRange *self,
                           SwFigureSpec  *spec);

G_END_DECLS
