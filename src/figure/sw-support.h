/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-solver.h"

G_BEGIN_DECLS

#define SW_MAX_SUPPORT_SPOTS 512
#define SW_MAX_SUPPORT_PUSHES 64
#define SW_N_SUPPORT_WORDS ((SW_N_PARTS * SW_MAX_HULLS * SW_MAX_HULL_BLOBS + 63) / 64)

/**
 * SwSupport:
 * @spots: places that carry the body from below, on the level
 * @n_spots: how many of them
 * @pushes: how far a thing beside the body moves the base of support towards itself, on the level
 * @n_pushes: how many of them
 * @touching: set of bits, one for each ellipsoid of the body that touches something
 *
 * What keeps a body from falling.
 */
typedef struct
{
  SwVector spots[SW_MAX_SUPPORT_SPOTS];
  int n_spots;
  SwVector pushes[SW_MAX_SUPPORT_PUSHES];
  int n_pushes;
  guint64 touching[SW_N_SUPPORT_WORDS];
} SwSupport;

void sw_support_find (SwSupport      *self,
                      const SwSolver *solver,
                      const SwSolved *solved);
gboolean sw_support_is_same (const SwSupport *self,
                             const SwSupport *other);
double sw_support_get_outside (const SwSupport *self,
                               SwVector         place);
double sw_solved_get_balance (const SwSolver *solver,
                              const SwSolved *solved);

G_END_DECLS
