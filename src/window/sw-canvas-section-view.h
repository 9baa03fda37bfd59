/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-canvas-row.h"

G_BEGIN_DECLS

/**
 * SwCanvasSectionView:
 *
 * A section's header on the canvas: its title to be edited in place, its time, its menu.
 */
#define SW_TYPE_CANVAS_SECTION_VIEW (sw_canvas_section_view_get_type ())
G_DECLARE_FINAL_TYPE (SwCanvasSectionView, sw_canvas_section_view, SW, CANVAS_SECTION_VIEW, GtkWidget)

GtkWidget *sw_canvas_section_view_new (SwDocument *document);
void sw_canvas_section_view_show_row (SwCanvasSectionView *self,
                                      SwCanvasRow         *row);
void sw_canvas_section_view_edit_title (SwCanvasSectionView *self);
GMenuModel *sw_canvas_section_menu_new (SwDocument *document,
                                        SwSection  *section);

G_END_DECLS
