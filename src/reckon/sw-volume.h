/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-programme.h"

G_BEGIN_DECLS

/**
 * SwVolume:
 * @muscle: the muscle group
 * @sets_left: sets a week that work its left side, extra sets and times a day included
 * @sets_right: the same for the right side
 * @strength_left: of @sets_left those of exercises for strength or endurance
 * @strength_right: of @sets_right those
 */
typedef struct
{
  SwMuscle muscle;
  double sets_left;
  double sets_right;
  double strength_left;
  double strength_right;
} SwVolume;

/* What is published on strength work for a muscle group, as sets a week; see sw_volume_get_guidance(). */
#define SW_VOLUME_GUIDE_LOW 2
#define SW_VOLUME_GUIDE_HIGH 9

GArray *sw_volume_of_week (SwProgramme *programme);
const char *sw_volume_get_guidance (void);

G_END_DECLS
