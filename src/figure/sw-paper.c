/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Paths on paper. Coordinates are rounded to 1/50 pt, which no printer shows and which keeps PDFs small. */
#include "config.h"

#include "sw-paper.h"

static double
rounded (double pt)
{
  return round (pt * 50.0) / 50.0;
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
  cairo_move_to (paper->cr, rounded (sw_paper_x (paper, x)), rounded (sw_paper_y (paper, y)));
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
  cairo_line_to (paper->cr, rounded (sw_paper_x (paper, x)), rounded (sw_paper_y (paper, y)));
}

/**
 * sw_paper_outline:
 *
 * Adds a closed outline to the path.
 */
void
sw_paper_outline (const SwPaper   *paper,
                  const SwOutline *outline)
{
  for (int i = 0; i < outline->n_points; i++)
    if (i == 0)
      sw_paper_move (paper, outline->points[i].x, outline->points[i].y);
    else
      sw_paper_line (paper, outline->points[i].x, outline->points[i].y);
  if (outline->n_points > 0)
    cairo_close_path (paper->cr);
}
