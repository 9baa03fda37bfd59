/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwSeveralForm:
 *
 * Several chosen items: how many there are, and what can be done to all of them at once.
 */
#define SW_TYPE_SEVERAL_FORM (sw_several_form_get_type ())
G_DECLARE_FINAL_TYPE (SwSeveralForm, sw_several_form, SW, SEVERAL_FORM, GtkWidget)

void sw_several_form_set_document (SwSeveralForm *self,
                                   SwDocument    *document);
void sw_several_form_refresh (SwSeveralForm *self);

G_END_DECLS
