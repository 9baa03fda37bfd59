/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * SwBar:
 *
 * A number as a bar, a part of it darker, before a band of what is usual. It says nothing to a screen reader: the number
 * stands beside it in words.
 */
#define SW_TYPE_BAR (sw_bar_get_type ())
G_DECLARE_FINAL_TYPE (SwBar, sw_bar, SW, BAR, GtkWidget)

GtkWidget *sw_bar_new (double most);
void sw_bar_set_value (SwBar  *self,
                       double  value,
                       double  dark_part);
void sw_bar_set_band (SwBar  *self,
                      double  low,
                      double  high);

G_END_DECLS
