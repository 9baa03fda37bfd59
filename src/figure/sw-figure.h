/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "sw-figure-signs.h"
#include "sw-figure-spec.h"
#include "sw-phrases.h"
#include "sw-sketch.h"

G_BEGIN_DECLS

#define SW_FIGURE_ERROR (sw_figure_error_quark ())

/**
 * SwFigureError:
 * @SW_FIGURE_ERROR_WRITE: a picture could not be written
 * @SW_FIGURE_ERROR_KIND: the file name says no kind of picture that can be written
 */
typedef enum
{
  SW_FIGURE_ERROR_WRITE,
  SW_FIGURE_ERROR_KIND,
} SwFigureError;

GQuark sw_figure_error_quark (void);

#define SW_TYPE_FIGURE (sw_figure_get_type ())
G_DECLARE_FINAL_TYPE (SwFigure, sw_figure, SW, FIGURE, GObject)

SwFigure *sw_figure_new (SwFigureSpec  *spec,
                         gboolean       mirrored,
                         GError       **error);
void sw_figure_measure (SwFigure *self,
                        double    width_pt,
                        double   *height_pt);
SwFigureSigns sw_figure_get_signs (SwFigure *self,
                                   double    width_pt,
                                   double    height_pt);
SwSketch *sw_figure_sketch (SwFigure *self,
                            double    width_pt,
                            double    height_pt);
void sw_figure_draw (SwFigure *self,
                     cairo_t  *cr,
                     double    width_pt,
                     double    height_pt);
int sw_figure_count_pictures (SwFigure *self,
                              double    width_pt,
                              double    height_pt);
void sw_figure_draw_at (SwFigure *self,
                        cairo_t  *cr,
                        double    width_pt,
                        double    height_pt,
                        double    phase);
double sw_figure_get_phase (SwFigure *self,
                            double    seconds);
gboolean sw_figure_save (SwFigure    *self,
                         const char  *path,
                         double       width_mm,
                         double       at_or_negative,
                         GError     **error);
gboolean sw_figure_find_moving_limb (SwFigure *self,
                                     gboolean *left,
                                     gboolean *arm);
char *sw_figure_dup_text (SwFigure  *self,
                          SwPhrases *phrases);
GPtrArray *sw_figure_check (SwFigure *self);

G_END_DECLS
