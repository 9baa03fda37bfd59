/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-figure-private.h"

G_BEGIN_DECLS

#define SW_THROW_PLACES 6

/**
 * SwThrow:
 * @prop: number of the ball
 * @held: its middle in the hands
 * @flown: its middle at the far end of its flight
 * @radius: parts of stature
 *
 * A ball that leaves the hands and comes back.
 */
typedef struct
{
  int prop;
  SwVector held;
  SwVector flown;
  double radius;
} SwThrow;

gboolean sw_throw_get (const SwSolver *solver,
                       const SwSolved *now,
                       SwThrow        *flight);
gboolean sw_throw_has_left (const SwSolver *solver,
                            const SwSolved *now,
                            int             prop);
void sw_throw_add (SwMotifs       *items,
                   const SwCamera *camera,
                   const SwSolver *solver,
                   const SwSolved *now,
                   double          tolerance);
void sw_throw_get_path (const SwThrow  *flight,
                        const SwCamera *camera,
                        SwSpot          path[SW_THROW_PLACES]);

G_END_DECLS
