/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwItemForm:
 *
 * One item that is no exercise: a rest, a circuit or a self-check.
 */
#define SW_TYPE_ITEM_FORM (sw_item_form_get_type ())
G_DECLARE_FINAL_TYPE (SwItemForm, sw_item_form, SW, ITEM_FORM, GtkWidget)

void sw_item_form_set_item (SwItemForm *self,
                            SwDocument *document,
                            SwItem     *item);
void sw_item_form_refresh (SwItemForm *self);

G_END_DECLS
