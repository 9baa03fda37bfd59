/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-programme.h"

G_BEGIN_DECLS

/**
 * SwVolume:
 * @muscle: the muscle group
 * @sets_left: sets a week that work its left side, extra sets and times a day included
 * @sets_right: the same for the right side
 */
typedef struct
{
  SwMuscle muscle;
  double sets_left;
  double sets_right;
} SwVolume;

GArray *sw_volume_of_week (SwProgramme *programme);

G_END_DECLS
