/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwPlanTable:
 *
 * The plan over the weeks: how long, and what each week asks for; each amount opens to the rule that made it.
 */
#define SW_TYPE_PLAN_TABLE (sw_plan_table_get_type ())
G_DECLARE_FINAL_TYPE (SwPlanTable, sw_plan_table, SW, PLAN_TABLE, GtkWidget)

void sw_plan_table_set_document (SwPlanTable *self,
                                 SwDocument  *document);

G_END_DECLS
