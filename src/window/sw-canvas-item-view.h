/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-canvas-row.h"
#include "sw-pictures.h"

G_BEGIN_DECLS

/**
 * SwCanvasItemView:
 *
 * A row of the canvas that stands for an item, or for the items that an empty section still lacks: clock,
 * ribbon, figure, words.
 */
#define SW_TYPE_CANVAS_ITEM_VIEW (sw_canvas_item_view_get_type ())
G_DECLARE_FINAL_TYPE (SwCanvasItemView, sw_canvas_item_view, SW, CANVAS_ITEM_VIEW, GtkWidget)

GtkWidget *sw_canvas_item_view_new (SwPictures *pictures);
void sw_canvas_item_view_show_row (SwCanvasItemView *self,
                                   SwCanvasRow      *row);

G_END_DECLS
