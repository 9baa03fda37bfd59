/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Marks beside the figure: panel numbers, drawn as strokes so that no font is needed, and the sign for holding. */
#include "config.h"

#include "sw-mark.h"

/**
 * sw_mark_draw_number:
 * @sketch: where to draw
 * @x_pt: middle
 * @y_pt: middle
 * @number: 1..6
 *
 * Draws a white figure in a black disc of SW_MARK_NUMBER_PT.
 */
void
sw_mark_draw_number (SwSketch *sketch,
                     double   x_pt,
                     double   y_pt,
                     int      number)
{
  const cairo_matrix_t there = { 1, 0, 0, 1, x_pt, y_pt };

  sw_sketch_save (sketch);
  sw_sketch_circle (sketch, x_pt, y_pt, SW_MARK_NUMBER_PT / 2);
  sw_sketch_set_tone (sketch, 0);
  sw_sketch_fill (sketch);

  sw_sketch_transform (sketch, &there);
  if (number == 1)
    {
      sw_sketch_move (sketch, -1.3, -1.5);
      sw_sketch_line (sketch, 0.3, -2.7);
      sw_sketch_line (sketch, 0.3, 2.7);
    }
  else if (number == 2)
    {
      sw_sketch_move (sketch, -1.5, -1.4);
      sw_sketch_curve (sketch, -1.3, -3.4, 1.7, -3.3, 1.6, -1.2);
      sw_sketch_curve (sketch, 1.5, 0.3, -0.6, 1.0, -1.6, 2.6);
      sw_sketch_line (sketch, 1.8, 2.6);
    }
  else if (number == 3)
    {
      sw_sketch_move (sketch, -1.4, -2.1);
      sw_sketch_curve (sketch, -0.4, -3.4, 1.7, -2.9, 1.5, -1.4);
      sw_sketch_curve (sketch, 1.4, -0.4, 0.5, -0.1, -0.3, -0.1);
      sw_sketch_curve (sketch, 0.6, -0.1, 1.8, 0.3, 1.7, 1.4);
      sw_sketch_curve (sketch, 1.6, 3.1, -0.7, 3.2, -1.6, 1.9);
    }
  else if (number == 4)
    {
      sw_sketch_move (sketch, 0.9, 2.7);
      sw_sketch_line (sketch, 0.9, -2.7);
      sw_sketch_line (sketch, -1.9, 1.1);
      sw_sketch_line (sketch, 2.0, 1.1);
    }
  else if (number == 5)
    {
      sw_sketch_move (sketch, 1.5, -2.6);
      sw_sketch_line (sketch, -1.1, -2.6);
      sw_sketch_line (sketch, -1.3, -0.3);
      sw_sketch_curve (sketch, 0.2, -1.0, 1.8, -0.4, 1.7, 1.0);
      sw_sketch_curve (sketch, 1.6, 2.9, -0.6, 3.2, -1.6, 1.9);
    }
  else
    {
      sw_sketch_move (sketch, 1.1, -2.7);
      sw_sketch_curve (sketch, -0.8, -2.2, -1.7, -0.4, -1.6, 1.1);
      sw_sketch_curve (sketch, -1.5, 3.2, 1.7, 3.2, 1.7, 1.1);
      sw_sketch_curve (sketch, 1.7, -0.9, -1.3, -0.9, -1.6, 0.9);
    }
  sw_sketch_set_tone (sketch, 1);
  sw_sketch_set_width (sketch, 1.25);
  sw_sketch_set_cap (sketch, CAIRO_LINE_CAP_ROUND);
  sw_sketch_set_join (sketch, CAIRO_LINE_JOIN_ROUND);
  sw_sketch_stroke (sketch);
  sw_sketch_restore (sketch);
}

/**
 * sw_mark_draw_hold:
 * @sketch: where to draw
 * @x_pt: middle
 * @y_pt: middle
 *
 * Draws two upright bars in a ring of SW_MARK_HOLD_PT.
 */
void
sw_mark_draw_hold (SwSketch *sketch,
                   double   x_pt,
                   double   y_pt)
{
  sw_sketch_save (sketch);
  sw_sketch_circle (sketch, x_pt, y_pt, SW_MARK_HOLD_PT / 2 - 0.6);
  sw_sketch_set_tone (sketch, 1);
  sw_sketch_fill_preserve (sketch);
  sw_sketch_set_tone (sketch, 0);
  sw_sketch_set_width (sketch, 1.1);
  sw_sketch_stroke (sketch);
  for (int side = -1; side <= 1; side += 2)
    {
      sw_sketch_move (sketch, x_pt + side * 1.6, y_pt - 2.3);
      sw_sketch_line (sketch, x_pt + side * 1.6, y_pt + 2.3);
    }
  sw_sketch_set_width (sketch, 1.7);
  sw_sketch_set_cap (sketch, CAIRO_LINE_CAP_BUTT);
  sw_sketch_stroke (sketch);
  sw_sketch_restore (sketch);
}
