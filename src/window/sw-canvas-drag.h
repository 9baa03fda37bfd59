/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-programme.h"

G_BEGIN_DECLS

/**
 * SwCanvasDrag:
 *
 * What is carried from a canvas, by the pointer or through the clipboard: items, or one section, of one
 * programme. Immutable.
 */
#define SW_TYPE_CANVAS_DRAG (sw_canvas_drag_get_type ())
G_DECLARE_FINAL_TYPE (SwCanvasDrag, sw_canvas_drag, SW, CANVAS_DRAG, GObject)

SwCanvasDrag *sw_canvas_drag_new (SwProgramme *programme,
                                  GPtrArray   *objects);
SwProgramme *sw_canvas_drag_get_programme (SwCanvasDrag *self);
GPtrArray *sw_canvas_drag_get_objects (SwCanvasDrag *self);
GPtrArray *sw_canvas_drag_dup_copies (SwCanvasDrag *self,
                                      SwProgramme  *programme);
gboolean sw_canvas_drag_has_section (SwCanvasDrag *self);
gboolean sw_canvas_drag_has_circuit (SwCanvasDrag *self);
char *sw_canvas_drag_to_text (SwCanvasDrag *self);

G_END_DECLS
