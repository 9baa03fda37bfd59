/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-figure-private.h"

G_BEGIN_DECLS

/**
 * SwPress:
 * @tail: where the shaft begins, in the camera's parts of stature
 * @tip: where the head ends, at the middle of the bar
 * @bar: the bar's ends
 *
 * An arrow that ends at a bar: pressed that way, and nothing moves.
 */
typedef struct
{
  SwSpot tail;
  SwSpot tip;
  SwSpot bar[2];
} SwPress;

int sw_press_count (const SwPanel  *panel,
                    const SwFigure *figure);
int sw_press_place (const SwPanel  *panel,
                    const SwFigure *figure,
                    double          scale_pt,
                    const SwExtent *room,
                    SwPress         presses[SW_FIGURE_MAX_SHOWN]);
void sw_press_add_extent (const SwPanel  *panel,
                          const SwFigure *figure,
                          SwExtent       *extent);
void sw_press_draw (const SwPaper *paper,
                    const SwPress *press);

G_END_DECLS
