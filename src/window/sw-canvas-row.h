/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-canvas-face.h"

G_BEGIN_DECLS

/**
 * SwCanvasRowKind:
 * @SW_CANVAS_ROW_SECTION: a section's header
 * @SW_CANVAS_ROW_ITEM: an item of a section that is no circuit
 * @SW_CANVAS_ROW_CIRCUIT: the head of a circuit
 * @SW_CANVAS_ROW_MEMBER: an item of a circuit
 * @SW_CANVAS_ROW_EMPTY: stands in for the items of a section or circuit that has none
 */
typedef enum
{
  SW_CANVAS_ROW_SECTION,
  SW_CANVAS_ROW_ITEM,
  SW_CANVAS_ROW_CIRCUIT,
  SW_CANVAS_ROW_MEMBER,
  SW_CANVAS_ROW_EMPTY,
} SwCanvasRowKind;

/**
 * SwCanvasRow:
 *
 * A row of the session canvas. It stays the same object as long as what it stands for is in the session, so
 * that focus and scroll position stay with it; only its place and face change. Signal "changed": the face or
 * the kind is another one.
 */
#define SW_TYPE_CANVAS_ROW (sw_canvas_row_get_type ())
G_DECLARE_FINAL_TYPE (SwCanvasRow, sw_canvas_row, SW, CANVAS_ROW, GObject)

SwCanvasRow *sw_canvas_row_new (gboolean is_empty);
void sw_canvas_row_set_place (SwCanvasRow *self,
                              SwSection   *section,
                              SwItem      *circuit,
                              SwItem      *item);
void sw_canvas_row_take_face (SwCanvasRow  *self,
                              SwCanvasFace *face);
SwCanvasRowKind sw_canvas_row_get_kind (SwCanvasRow *self);
SwSection *sw_canvas_row_get_section (SwCanvasRow *self);
SwItem *sw_canvas_row_get_circuit (SwCanvasRow *self);
SwItem *sw_canvas_row_get_item (SwCanvasRow *self);
const SwCanvasFace *sw_canvas_row_get_face (SwCanvasRow *self);

G_END_DECLS
