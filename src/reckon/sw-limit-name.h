/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-limit.h"

G_BEGIN_DECLS

const char *sw_movement_get_name (SwMovement movement);
const char *sw_movement_get_opposite_name (SwMovement movement);
const char *sw_bearing_get_name (SwBearing bearing);
char *sw_movement_dup_angle (SwMovement movement,
                             double     degrees);
char *sw_limit_dup_text (SwLimit *limit,
                         SwUnits  units);
char *sw_limit_dup_load (double  kg,
                         SwUnits units);
gboolean sw_limit_count_days (const char *date,
                              const char *today,
                              int        *n_days);
char *sw_limit_dup_since (const char *date,
                          const char *today);

G_END_DECLS
