/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-search.h"

G_BEGIN_DECLS

/**
 * SwFilterBar:
 *
 * The catalogue's filters side by side: region, position, equipment, aim. Signal "changed": when another
 * choice was made, or when the client's equipment changed while it counts.
 */
#define SW_TYPE_FILTER_BAR (sw_filter_bar_get_type ())
G_DECLARE_FINAL_TYPE (SwFilterBar, sw_filter_bar, SW, FILTER_BAR, GtkWidget)

void sw_filter_bar_get_filter (SwFilterBar    *self,
                               SwSearchFilter *filter);
gboolean sw_filter_bar_get_any (SwFilterBar *self);
void sw_filter_bar_set_client_equipment (SwFilterBar *self,
                                         SwSet        equipment);
void sw_filter_bar_clear (SwFilterBar *self);

G_END_DECLS
