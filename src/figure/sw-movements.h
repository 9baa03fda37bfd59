/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-figure-spec.h"
#include "sw-terms.h"

G_BEGIN_DECLS

/**
 * SwMovements:
 * @low_deg: by movement and side, the least angle on the way; NaN where the picture tells nothing of it
 * @high_deg: likewise the greatest
 * @lifts_foot: by side, whether that foot is in the air at some time while the other one is not
 *
 * How far an exercise's figure takes each joint, measured as clinicians do: see #SwMovement. Of back and neck, which bend at
 * two levels, what counts is the lower level or both together, whichever goes further; both sides have the same. Of their
 * turn @high_deg is how far it goes to that side, and there is no @low_deg.
 */
typedef struct
{
  double low_deg[SW_N_MOVEMENTS][2];
  double high_deg[SW_N_MOVEMENTS][2];
  gboolean lifts_foot[2];
} SwMovements;

void sw_movements_init (SwMovements  *self,
                        SwFigureSpec *spec);
void sw_movements_mirror (SwMovements *self);
void sw_movements_add (SwMovements       *self,
                       const SwMovements *other);

G_END_DECLS
