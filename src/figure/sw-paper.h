/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * From the camera's parts of stature to points on paper, and the weights and tones of all drawing. Tones: 0 black,
 * 1 white. All are our own choice, tried on laser prints and copies. */
#pragma once

#include "sw-outline.h"
#include "sw-sketch.h"

G_BEGIN_DECLS

#define SW_INK_PT 0.9
#define SW_FAR_INK_PT 0.6
#define SW_START_INK_PT 0.5
#define SW_GAP_PT 0.9
#define SW_PROP_INK_PT 0.68
#define SW_HEM_PT 0.5
#define SW_TONE_FAR_INK 0.28
#define SW_TONE_FAR_FILL 0.93
#define SW_TONE_CLOTHES 0.86
#define SW_TONE_FAR_CLOTHES 0.84
#define SW_TONE_START_INK 0.15
#define SW_TONE_START_HAIR 0.88
#define SW_TONE_HEM 0.3
#define SW_TONE_HAIR 0.25
#define SW_TONE_WORKS 0.42
#define SW_TONE_PROP_INK 0.35

/**
 * SwPaper:
 * @sketch: what is drawn upon
 * @scale_pt: points for one stature
 * @x_pt: of the camera's origin
 * @y_pt: of the camera's origin; the camera's y goes up, the paper's down
 */
typedef struct
{
  SwSketch *sketch;
  double scale_pt;
  double x_pt;
  double y_pt;
} SwPaper;

static inline double
sw_paper_x (const SwPaper *paper,
            double         x)
{
  return paper->x_pt + x * paper->scale_pt;
}

static inline double
sw_paper_y (const SwPaper *paper,
            double         y)
{
  return paper->y_pt - y * paper->scale_pt;
}

static inline void
sw_paper_tone (const SwPaper *paper,
               double         tone)
{
  sw_sketch_set_tone (paper->sketch, tone);
}

void sw_paper_move (const SwPaper *paper,
                    double         x,
                    double         y);
void sw_paper_line (const SwPaper *paper,
                    double         x,
                    double         y);
void sw_paper_curve (const SwPaper *paper,
                     const SwCurve *curve);
void sw_paper_area (const SwPaper *paper,
                    const SwCurve *curve);

G_END_DECLS
