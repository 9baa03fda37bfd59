/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwTransitionFields:
 *
 * The clinic's table of how long what lies between two exercises takes its clients.
 */
#define SW_TYPE_TRANSITION_FIELDS (sw_transition_fields_get_type ())
G_DECLARE_FINAL_TYPE (SwTransitionFields, sw_transition_fields, SW, TRANSITION_FIELDS, GtkWidget)

void sw_transition_fields_show (SwTransitionFields *self,
                                SwDocument         *document);

G_END_DECLS
