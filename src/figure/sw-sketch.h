/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <glib.h>

G_BEGIN_DECLS

/**
 * SwSketchStep:
 * @SW_SKETCH_MOVE: a line begins at a place
 * @SW_SKETCH_LINE: it goes on straight to a place
 * @SW_SKETCH_CURVE: it goes on as a cubic curve: two handles and a place
 * @SW_SKETCH_CLOSE: it goes on straight to where it began
 * @SW_SKETCH_FILL: what the lines enclose is filled: tone, opacity, and whether the lines are kept for what comes next
 * @SW_SKETCH_STROKE: the lines are drawn: tone, width, cap and join as Cairo numbers them, dash and gap, 0 for none, and
 *   whether they are kept
 * @SW_SKETCH_CLIP: nothing outside the lines is drawn until the matching restore
 * @SW_SKETCH_RESTORE: the last clip ends
 */
typedef enum
{
  SW_SKETCH_MOVE,
  SW_SKETCH_LINE,
  SW_SKETCH_CURVE,
  SW_SKETCH_CLOSE,
  SW_SKETCH_FILL,
  SW_SKETCH_STROKE,
  SW_SKETCH_CLIP,
  SW_SKETCH_RESTORE,
} SwSketchStep;

#define SW_SKETCH_MOST_VALUES 7

/* Places are rounded to so many parts of what they are drawn on, in PDFs of a point, which no printer shows: few different
 * numbers keep PDFs small and quick to pack. */
#define SW_SKETCH_STEPS_A_UNIT 8

typedef struct _SwSketch SwSketch;

/**
 * SwSketchReader:
 * @values: of the step, as many as its kind has
 */
typedef void (*SwSketchReader) (gpointer      data,
                                SwSketchStep  step,
                                const float  *values);

SwSketch *sw_sketch_new (void);
void sw_sketch_free (SwSketch *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwSketch, sw_sketch_free)

void sw_sketch_save (SwSketch *self);
void sw_sketch_restore (SwSketch *self);
void sw_sketch_transform (SwSketch             *self,
                          const cairo_matrix_t *matrix);

void sw_sketch_new_path (SwSketch *self);
void sw_sketch_move (SwSketch *self,
                     double    x,
                     double    y);
void sw_sketch_line (SwSketch *self,
                     double    x,
                     double    y);
void sw_sketch_curve (SwSketch *self,
                      double    x1,
                      double    y1,
                      double    x2,
                      double    y2,
                      double    x,
                      double    y);
void sw_sketch_close (SwSketch *self);
void sw_sketch_rectangle (SwSketch *self,
                          double    x,
                          double    y,
                          double    width,
                          double    height);
void sw_sketch_circle (SwSketch *self,
                       double    x,
                       double    y,
                       double    radius);

void sw_sketch_set_tone (SwSketch *self,
                         double    tone);
void sw_sketch_set_opacity (SwSketch *self,
                            double    opacity);
void sw_sketch_set_width (SwSketch *self,
                          double    width);
void sw_sketch_set_cap (SwSketch         *self,
                        cairo_line_cap_t  cap);
void sw_sketch_set_join (SwSketch          *self,
                         cairo_line_join_t  join);
void sw_sketch_set_dash (SwSketch *self,
                         double    dash,
                         double    gap);

void sw_sketch_fill (SwSketch *self);
void sw_sketch_fill_preserve (SwSketch *self);
void sw_sketch_stroke (SwSketch *self);
void sw_sketch_stroke_preserve (SwSketch *self);
void sw_sketch_clip (SwSketch *self);

gsize sw_sketch_get_n_bytes (const SwSketch *self);
void sw_sketch_read (const SwSketch *self,
                     SwSketchReader  reader,
                     gpointer        data);
void sw_sketch_draw (const SwSketch *self,
                     cairo_t        *cr);

G_END_DECLS
