/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How hard a set feels, as the repetitions that would still have been possible. */
#include "config.h"

#include "sw-effort.h"

/**
 * sw_effort_get_reserve:
 * @effort: on the scale from 0 to 10, %SW_EFFORT_LEAST_COUNTED..10
 *
 * Effort = 10 - reserve. From 7 on a client's guess is good to about one repetition (Hackett and others, J Strength
 * Cond Res 2017;31:2162-2168); 5 and 6 stand for four to six left. Source: %SW_EFFORT_SOURCE
 *
 * Returns: how many more repetitions would have been possible; -1 outside the domain
 */
int
sw_effort_get_reserve (int effort)
{
  return effort >= SW_EFFORT_LEAST_COUNTED && effort <= 10 ? 10 - effort : -1;
}
