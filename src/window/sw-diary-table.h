/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwDiaryTable:
 *
 * What the client did on a day, an exercise of the session a row, and what the rules propose for it.
 */
#define SW_TYPE_DIARY_TABLE (sw_diary_table_get_type ())
G_DECLARE_FINAL_TYPE (SwDiaryTable, sw_diary_table, SW, DIARY_TABLE, GtkWidget)

void sw_diary_table_set_document (SwDiaryTable *self,
                                  SwDocument   *document);

G_END_DECLS
