/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Marks beside the figure: panel numbers, drawn as strokes so that no font is needed, and the sign for holding. */
#include "config.h"

#include "sw-mark.h"

static void
draw_disc (cairo_t *cr,
           double   x_pt,
           double   y_pt,
           double   radius_pt)
{
  cairo_new_sub_path (cr);
  cairo_arc (cr, x_pt, y_pt, radius_pt, 0, 2 * G_PI);
}

/**
 * sw_mark_draw_number:
 * @cr: where to draw
 * @x_pt: middle
 * @y_pt: middle
 * @number: 1..6
 *
 * Draws a white figure in a black disc of SW_MARK_NUMBER_PT.
 */
void
sw_mark_draw_number (cairo_t *cr,
                     double   x_pt,
                     double   y_pt,
                     int      number)
{
  cairo_save (cr);
  draw_disc (cr, x_pt, y_pt, SW_MARK_NUMBER_PT / 2);
  cairo_set_source_rgb (cr, 0, 0, 0);
  cairo_fill (cr);

  cairo_translate (cr, x_pt, y_pt);
  if (number == 1)
    {
      cairo_move_to (cr, -1.3, -1.5);
      cairo_line_to (cr, 0.3, -2.7);
      cairo_line_to (cr, 0.3, 2.7);
    }
  else if (number == 2)
    {
      cairo_move_to (cr, -1.5, -1.4);
      cairo_curve_to (cr, -1.3, -3.4, 1.7, -3.3, 1.6, -1.2);
      cairo_curve_to (cr, 1.5, 0.3, -0.6, 1.0, -1.6, 2.6);
      cairo_line_to (cr, 1.8, 2.6);
    }
  else if (number == 3)
    {
      cairo_move_to (cr, -1.4, -2.1);
      cairo_curve_to (cr, -0.4, -3.4, 1.7, -2.9, 1.5, -1.4);
      cairo_curve_to (cr, 1.4, -0.4, 0.5, -0.1, -0.3, -0.1);
      cairo_curve_to (cr, 0.6, -0.1, 1.8, 0.3, 1.7, 1.4);
      cairo_curve_to (cr, 1.6, 3.1, -0.7, 3.2, -1.6, 1.9);
    }
  else if (number == 4)
    {
      cairo_move_to (cr, 0.9, 2.7);
      cairo_line_to (cr, 0.9, -2.7);
      cairo_line_to (cr, -1.9, 1.1);
      cairo_line_to (cr, 2.0, 1.1);
    }
  else if (number == 5)
    {
      cairo_move_to (cr, 1.5, -2.6);
      cairo_line_to (cr, -1.1, -2.6);
      cairo_line_to (cr, -1.3, -0.3);
      cairo_curve_to (cr, 0.2, -1.0, 1.8, -0.4, 1.7, 1.0);
      cairo_curve_to (cr, 1.6, 2.9, -0.6, 3.2, -1.6, 1.9);
    }
  else
    {
      cairo_move_to (cr, 1.1, -2.7);
      cairo_curve_to (cr, -0.8, -2.2, -1.7, -0.4, -1.6, 1.1);
      cairo_curve_to (cr, -1.5, 3.2, 1.7, 3.2, 1.7, 1.1);
      cairo_curve_to (cr, 1.7, -0.9, -1.3, -0.9, -1.6, 0.9);
    }
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_set_line_width (cr, 1.25);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/**
 * sw_mark_draw_hold:
 * @cr: where to draw
 * @x_pt: middle
 * @y_pt: middle
 *
 * Draws two upright bars in a ring of SW_MARK_HOLD_PT.
 */
void
sw_mark_draw_hold (cairo_t *cr,
                   double   x_pt,
                   double   y_pt)
{
  cairo_save (cr);
  draw_disc (cr, x_pt, y_pt, SW_MARK_HOLD_PT / 2 - 0.6);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_fill_preserve (cr);
  cairo_set_source_rgb (cr, 0, 0, 0);
  cairo_set_line_width (cr, 1.1);
  cairo_stroke (cr);
  for (int side = -1; side <= 1; side += 2)
    {
      cairo_move_to (cr, x_pt + side * 1.6, y_pt - 2.3);
      cairo_line_to (cr, x_pt + side * 1.6, y_pt + 2.3);
    }
  cairo_set_line_width (cr, 1.7);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_stroke (cr);
  cairo_restore (cr);
}
