/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwLimitRow:
 *
 * One limit with the fields of its kind. Signal "removed": the therapist wants it gone.
 */
#define SW_TYPE_LIMIT_ROW (sw_limit_row_get_type ())
G_DECLARE_FINAL_TYPE (SwLimitRow, sw_limit_row, SW, LIMIT_ROW, GtkWidget)

SwLimitRow *sw_limit_row_new (SwDocument *document,
                              SwLimit    *limit);
SwLimit *sw_limit_row_get_limit (SwLimitRow *self);
void sw_limit_row_refresh (SwLimitRow *self);

G_END_DECLS
