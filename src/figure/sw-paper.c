/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Paths on paper. Places are rounded to 1/8 of the device's units, in PDFs points, which no printer shows: few different
 * numbers keep PDFs small and quick to pack. */
#include "config.h"

#include "sw-paper.h"

#define STEPS_A_UNIT 8.0

/* The place in the user's units that is a round one on the device. */
static void
find_rounded (const SwPaper *paper,
              double         x,
              double         y,
              double        *x_pt,
              double        *y_pt)
{
  *x_pt = sw_paper_x (paper, x);
  *y_pt = sw_paper_y (paper, y);
  cairo_user_to_device (paper->cr, x_pt, y_pt);
  *x_pt = round (*x_pt * STEPS_A_UNIT) / STEPS_A_UNIT;
  *y_pt = round (*y_pt * STEPS_A_UNIT) / STEPS_A_UNIT;
  cairo_device_to_user (paper->cr, x_pt, y_pt);
}

/**
 * sw_paper_move:
 *
 * Begins a line, in the camera's parts of stature.
 */
void
sw_paper_move (const SwPaper *paper,
               double         x,
               double         y)
{
  double x_pt;
  double y_pt;

  find_rounded (paper, x, y, &x_pt, &y_pt);
  cairo_move_to (paper->cr, x_pt, y_pt);
}

/**
 * sw_paper_line:
 *
 * Goes on with a line.
 */
void
sw_paper_line (const SwPaper *paper,
               double         x,
               double         y)
{
  double x_pt;
  double y_pt;

  find_rounded (paper, x, y, &x_pt, &y_pt);
  cairo_line_to (paper->cr, x_pt, y_pt);
}

/* Goes on with a cubic curve: the two handles, and where it goes. */
static void
bend (const SwPaper *paper,
      double         x1,
      double         y1,
      double         x2,
      double         y2,
      double         x,
      double         y)
{
  double x1_pt;
  double y1_pt;
  double x2_pt;
  double y2_pt;
  double x_pt;
  double y_pt;

  find_rounded (paper, x1, y1, &x1_pt, &y1_pt);
  find_rounded (paper, x2, y2, &x2_pt, &y2_pt);
  find_rounded (paper, x, y, &x_pt, &y_pt);
  cairo_curve_to (paper->cr, x1_pt, y1_pt, x2_pt, y2_pt, x_pt, y_pt);
}

static void
add_pieces (const SwPaper *paper,
            const SwCurve *curve)
{
  sw_paper_move (paper, curve->x, curve->y);
  for (int i = 0; i < curve->n_pieces; i++)
    if ((curve->bent >> i & 1) != 0)
      bend (paper, curve->pieces[i].x1, curve->pieces[i].y1, curve->pieces[i].x2, curve->pieces[i].y2,
            curve->pieces[i].x, curve->pieces[i].y);
    /* Closing draws the last straight piece. */
    else if (!curve->closed || i + 1 < curve->n_pieces)
      sw_paper_line (paper, curve->pieces[i].x, curve->pieces[i].y);
}

/**
 * sw_paper_curve:
 *
 * Adds a curve to the path.
 */
void
sw_paper_curve (const SwPaper *paper,
                const SwCurve *curve)
{
  add_pieces (paper, curve);
  if (curve->closed)
    cairo_close_path (paper->cr);
}

/**
 * sw_paper_area:
 *
 * Adds what a curve encloses to a path that will only be filled, which takes less to say.
 */
void
sw_paper_area (const SwPaper *paper,
               const SwCurve *curve)
{
  add_pieces (paper, curve);
}
