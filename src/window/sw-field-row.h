/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-finding.h"

G_BEGIN_DECLS

/**
 * SwFieldRow:
 *
 * What stands around one field of a form: its label, its unit, a button back to the usual value, and below
 * it what there is to say about its value. It also names the field for assistive tools.
 *
 * Properties, construct only: "label" (string), "unit" (string, nullable), "control" (GtkWidget, the
 * field), "suffix" (GtkWidget, nullable: stands in the unit's place), "stacked" (boolean: the field below
 * its label, in the whole width).
 * Signals: "reset" when the usual value is wanted back, "fix" when the finding's fix is wanted.
 */
#define SW_TYPE_FIELD_ROW (sw_field_row_get_type ())
G_DECLARE_FINAL_TYPE (SwFieldRow, sw_field_row, SW, FIELD_ROW, GtkWidget)

void sw_field_row_set_usual (SwFieldRow *self,
                             const char *usual);
void sw_field_row_set_hint (SwFieldRow *self,
                            const char *hint);
void sw_field_row_set_complaint (SwFieldRow *self,
                                 const char *complaint);
void sw_field_row_set_finding (SwFieldRow      *self,
                               const SwFinding *finding);

G_END_DECLS
