/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-figure-private.h"

G_BEGIN_DECLS

#define SW_SIDES_MARK_PT 15.0

/**
 * SwSidesMark:
 * @n: how many little persons: 0 for no mark, 2 when the sides take turns
 * @limbs: by person, which limbs are drawn as working: bit n for #SwLimb n, right and left swapped in a picture from behind
 *
 * The small mark that tells whether one side works, both at once, or one after the other.
 */
typedef struct
{
  int n;
  guint limbs[2];
} SwSidesMark;

void sw_sides_mark_get (SwSidesMark    *self,
                        const SwFigure *figure);
void sw_sides_mark_draw (const SwSidesMark *self,
                         SwSketch           *sketch,
                         double             x_pt,
                         double             y_pt);

G_END_DECLS
