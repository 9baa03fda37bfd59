/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwFindingRow:
 *
 * One finding in the list below the panes, with what can be done about it.
 */
#define SW_TYPE_FINDING_ROW (sw_finding_row_get_type ())
G_DECLARE_FINAL_TYPE (SwFindingRow, sw_finding_row, SW, FINDING_ROW, GtkWidget)

GtkWidget *sw_finding_row_new (SwDocument *document,
                               const char *key);
void sw_finding_row_refresh (SwFindingRow    *self,
                             const SwFinding *finding);
const char *sw_finding_row_get_key (SwFindingRow *self);

G_END_DECLS
