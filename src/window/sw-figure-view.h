/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-pictures.h"

G_BEGIN_DECLS

/**
 * SwFigureView:
 *
 * An exercise's figure on a sheet of white paper, in light and dark alike. At rest it shows the cached
 * picture; while playing it shows the motion. What it shows is set by the
 * functions below.
 */
#define SW_TYPE_FIGURE_VIEW (sw_figure_view_get_type ())
G_DECLARE_FINAL_TYPE (SwFigureView, sw_figure_view, SW, FIGURE_VIEW, GtkWidget)

GtkWidget *sw_figure_view_new (SwPictures *pictures,
                               int         width_px,
                               int         height_px);
void sw_figure_view_set_pictures (SwFigureView *self,
                                  SwPictures   *pictures);
void sw_figure_view_set_exercise (SwFigureView *self,
                                  SwExercise   *exercise,
                                  gboolean      mirrored);
void sw_figure_view_describe (SwFigureView *self,
                              const char   *name);
void sw_figure_view_set_playing (SwFigureView *self,
                                 gboolean      playing);
gboolean sw_figure_view_get_playing (SwFigureView *self);
void sw_figure_view_set_play_on_hover (SwFigureView *self,
                                       gboolean      on);

G_END_DECLS
