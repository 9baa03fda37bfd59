/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-terms.h"

G_BEGIN_DECLS

/**
 * SwSetField:
 *
 * A set of values of a vocabulary: what is ticked in words, and all of them with boxes to tick once it is
 * opened.
 * Signal "changed": the therapist ticked something; not emitted by sw_set_field_set_value().
 */
#define SW_TYPE_SET_FIELD (sw_set_field_get_type ())
G_DECLARE_FINAL_TYPE (SwSetField, sw_set_field, SW, SET_FIELD, GtkWidget)

void sw_set_field_fill (SwSetField *self,
                        GType       type,
                        int         n_columns,
                        const char *title,
                        const char *nothing);
SwSet sw_set_field_get_value (SwSetField *self);
void sw_set_field_set_value (SwSetField *self,
                             SwSet       value);

G_END_DECLS
