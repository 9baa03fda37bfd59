/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwPagesButton:
 *
 * How the handout's pages look: a button over a popover with the programme's page plan. Each choice is one step of undo.
 */
#define SW_TYPE_PAGES_BUTTON (sw_pages_button_get_type ())
G_DECLARE_FINAL_TYPE (SwPagesButton, sw_pages_button, SW, PAGES_BUTTON, GtkWidget)

void sw_pages_button_set_document (SwPagesButton *self,
                                   SwDocument    *document);
void sw_pages_button_open (SwPagesButton *self);

G_END_DECLS
