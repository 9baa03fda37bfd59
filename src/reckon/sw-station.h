/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-clinic.h"
#include "sw-item.h"
#include "sw-span.h"

G_BEGIN_DECLS

/**
 * SwStation:
 * @clinic: (unowned): whose table tells how long each change takes
 * @position: how the body is
 * @height: how high: standing, on a seat, on the floor
 * @equipment: what is at hand
 * @begun: whether anything came before
 *
 * Where body and equipment are while a session is gone through; all but @clinic 0 before it.
 */
typedef struct
{
  SwClinic *clinic;
  SwPosition position;
  int height;
  SwSet equipment;
  gboolean begun;
} SwStation;

/* What moves the body. */
#define SW_STATION_MOVES (SW_SET (SW_TRANSITION_TURN) | SW_SET (SW_TRANSITION_SEAT) | SW_SET (SW_TRANSITION_FLOOR))

SwSet sw_station_go_to (SwStation *self,
                        SwItem    *item);
SwSpan sw_station_time (SwClinic *clinic,
                        SwSet     transitions);

G_END_DECLS
