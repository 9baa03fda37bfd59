/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-figure-private.h"

G_BEGIN_DECLS

#define SW_LAYOUT_MARGIN_PT 3.0
#define SW_LAYOUT_GAP_PT 5.0
/* Nothing is drawn into a smaller box. */
#define SW_LAYOUT_LEAST_PT 8.0

/**
 * SwRing:
 * @SW_RING_NONE: there is no second view
 * @SW_RING_BESIDE: it stands lower right beside each picture
 * @SW_RING_BELOW: it stands lower right under each picture
 */
typedef enum
{
  SW_RING_NONE,
  SW_RING_BESIDE,
  SW_RING_BELOW,
} SwRing;

/**
 * SwLayout:
 * @n: how many pictures
 * @columns: of the grid they stand in
 * @rows: of the grid
 * @width_pt: of the grid, which begins in the box's upper left corner
 * @height_pt: of the grid
 * @cell_width_pt: of one picture and its ring
 * @cell_height_pt: of one picture and its ring
 * @scale_pt: points for one stature
 * @ring: where the second view stands
 * @ring_pt: its diameter
 *
 * How a figure's pictures are arranged in a box.
 */
typedef struct
{
  int n;
  int columns;
  int rows;
  double width_pt;
  double height_pt;
  double cell_width_pt;
  double cell_height_pt;
  double scale_pt;
  SwRing ring;
  double ring_pt;
} SwLayout;

void sw_layout_choose (SwLayout *self,
                       SwFigure *figure,
                       double    width_pt,
                       double    height_pt);
void sw_layout_make_room (SwLayout *self,
                          SwFigure *figure,
                          double    lower_pt);
double sw_layout_get_zoom (double width_pt,
                           double height_pt);
double sw_layout_fit_one (SwFigure *figure,
                          double    width_pt,
                          double    height_pt);

G_END_DECLS
