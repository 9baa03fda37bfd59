/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Paths on paper. */
#include "config.h"

#include "sw-paper.h"

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
  sw_sketch_move (paper->sketch, sw_paper_x (paper, x), sw_paper_y (paper, y));
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
  sw_sketch_line (paper->sketch, sw_paper_x (paper, x), sw_paper_y (paper, y));
}

static void
add_pieces (const SwPaper *paper,
            const SwCurve *curve)
{
  sw_paper_move (paper, curve->x, curve->y);
  for (int i = 0; i < curve->n_pieces; i++)
    if ((curve->bent >> i & 1) != 0)
      sw_sketch_curve (paper->sketch, sw_paper_x (paper, (double) curve->pieces[i].x1),
                       sw_paper_y (paper, (double) curve->pieces[i].y1), sw_paper_x (paper, (double) curve->pieces[i].x2),
                       sw_paper_y (paper, (double) curve->pieces[i].y2), sw_paper_x (paper, (double) curve->pieces[i].x),
                       sw_paper_y (paper, (double) curve->pieces[i].y));
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
    sw_sketch_close (paper->sketch);
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
