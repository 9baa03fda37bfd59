/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwClientForm:
 *
 * Who the programme is for, what limits and helps them, how the handout shall be, and who hands it over.
 */
#define SW_TYPE_CLIENT_FORM (sw_client_form_get_type ())
G_DECLARE_FINAL_TYPE (SwClientForm, sw_client_form, SW, CLIENT_FORM, GtkWidget)

void sw_client_form_set_document (SwClientForm *self,
                                  SwDocument   *document);
void sw_client_form_refresh (SwClientForm *self);

G_END_DECLS
