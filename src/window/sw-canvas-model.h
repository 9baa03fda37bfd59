/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-canvas-row.h"

G_BEGIN_DECLS

/**
 * SwCanvasModel:
 *
 * The session on the canvas as one flat list of SwCanvasRow: headers of sections, items, members of circuits.
 * It is a GListModel and a GtkSelectionModel at once; what is selected is what is chosen in the document, so
 * that there is nothing to keep in step. After an edit only the rows between the first and the last
 * difference are announced, and rows of items that are still there are the same objects.
 *
 * Signal "rows-about-to-change" (uint position, uint n): these rows are about to be announced as changed;
 * views have not heard of it yet.
 */
#define SW_TYPE_CANVAS_MODEL (sw_canvas_model_get_type ())
G_DECLARE_FINAL_TYPE (SwCanvasModel, sw_canvas_model, SW, CANVAS_MODEL, GObject)

SwCanvasModel *sw_canvas_model_new (SwDocument *document);
SwCanvasRow *sw_canvas_model_get_row (SwCanvasModel *self,
                                      guint          position);
guint sw_canvas_model_find (SwCanvasModel *self,
                            gpointer       object);
guint sw_canvas_model_find_row (SwCanvasModel *self,
                                SwCanvasRow   *row);

G_END_DECLS
