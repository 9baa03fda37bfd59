/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-figure-private.h"

G_BEGIN_DECLS

#define SW_BREATH_LINES 3
#define SW_BREATH_POINTS 8

/**
 * SwBreath:
 * @lines: in the camera's parts of stature, from where the air comes to where it goes
 * @scale: of the heads, 1 being the usual
 *
 * Air that goes in or out: small arrows at the nose or mouth.
 */
typedef struct
{
  SwSpot lines[SW_BREATH_LINES][SW_BREATH_POINTS];
  double scale;
} SwBreath;

gboolean sw_breath_is_shown (const SwPanel  *panel,
                             const SwFigure *figure);
gboolean sw_breath_place (const SwPanel  *panel,
                          const SwFigure *figure,
                          double          scale_pt,
                          SwBreath       *breath);
void sw_breath_add_extent (const SwPanel  *panel,
                           const SwFigure *figure,
                           SwExtent       *extent);
void sw_breath_draw (const SwPaper  *paper,
                     const SwBreath *breath);

G_END_DECLS
