/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"
#include "sw-pictures.h"

G_BEGIN_DECLS

/**
 * SwInspector:
 *
 * The right pane: the dose of the chosen exercise, the form of another chosen item, what can be done to
 * several, or with nothing chosen the client.
 */
#define SW_TYPE_INSPECTOR (sw_inspector_get_type ())
G_DECLARE_FINAL_TYPE (SwInspector, sw_inspector, SW, INSPECTOR, GtkWidget)

void sw_inspector_set_document (SwInspector *self,
                                SwDocument  *document);
void sw_inspector_set_pictures (SwInspector *self,
                                SwPictures  *pictures);
void sw_inspector_focus_form (SwInspector *self);

G_END_DECLS
