/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-canvas-row.h"
#include "sw-pictures.h"

G_BEGIN_DECLS

/**
 * SwDropMark:
 * Where on a row the line stands that shows the gap something would be dropped into.
 */
typedef enum
{
  SW_DROP_MARK_NONE,
  SW_DROP_MARK_ABOVE,
  SW_DROP_MARK_BELOW,
  SW_DROP_MARK_INTO,
} SwDropMark;

/**
 * SwCanvasRowView:
 *
 * What a list view shows of a SwCanvasRow, whatever its kind; follows the row while it shows it.
 */
#define SW_TYPE_CANVAS_ROW_VIEW (sw_canvas_row_view_get_type ())
G_DECLARE_FINAL_TYPE (SwCanvasRowView, sw_canvas_row_view, SW, CANVAS_ROW_VIEW, GtkWidget)

GtkWidget *sw_canvas_row_view_new (SwDocument *document,
                                   SwPictures *pictures);
void sw_canvas_row_view_set_row (SwCanvasRowView *self,
                                 SwCanvasRow     *row);
SwCanvasRow *sw_canvas_row_view_get_row (SwCanvasRowView *self);
void sw_canvas_row_view_set_drop_mark (SwCanvasRowView *self,
                                       SwDropMark       mark,
                                       gboolean         in_circuit);
void sw_canvas_row_view_edit_title (SwCanvasRowView *self);

G_END_DECLS
