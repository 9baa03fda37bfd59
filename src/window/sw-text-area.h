/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * SwTextArea:
 *
 * Several lines of text that grow with what is written; Tab goes on to the next field.
 * Signal "changed": the therapist typed; not emitted by sw_text_area_set_text().
 */
#define SW_TYPE_TEXT_AREA (sw_text_area_get_type ())
G_DECLARE_FINAL_TYPE (SwTextArea, sw_text_area, SW, TEXT_AREA, GtkWidget)

char *sw_text_area_dup_text (SwTextArea *self);
void sw_text_area_set_text (SwTextArea *self,
                            const char *text);
void sw_text_area_set_name (SwTextArea *self,
                            const char *name);

G_END_DECLS
