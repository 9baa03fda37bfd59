/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-terms.h"

G_BEGIN_DECLS

/**
 * SwFilterButton:
 *
 * A button that says what is wanted of one vocabulary ("Region", or "Knee, Hip" once chosen) and opens its
 * values as check marks. Signal "changed": when another choice was made, by the user or by a setter.
 */
#define SW_TYPE_FILTER_BUTTON (sw_filter_button_get_type ())
G_DECLARE_FINAL_TYPE (SwFilterButton, sw_filter_button, SW, FILTER_BUTTON, GtkWidget)

void sw_filter_button_set_vocabulary (SwFilterButton *self,
                                      const char     *title,
                                      GType           type);
void sw_filter_button_set_switch (SwFilterButton *self,
                                  const char     *words,
                                  const char     *short_words);
void sw_filter_button_set_switch_detail (SwFilterButton *self,
                                         const char     *detail);
gboolean sw_filter_button_get_switched (SwFilterButton *self);
SwSet sw_filter_button_get_values (SwFilterButton *self);
gboolean sw_filter_button_get_any (SwFilterButton *self);
void sw_filter_button_clear (SwFilterButton *self);

G_END_DECLS
