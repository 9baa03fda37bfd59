/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwDiaryRow:
 *
 * A row of the diary's table: what is written of one item on one day, and what the rules propose for it. It owns no
 * widget of its own but fills a row of a grid.
 */
#define SW_TYPE_DIARY_ROW (sw_diary_row_get_type ())
G_DECLARE_FINAL_TYPE (SwDiaryRow, sw_diary_row, SW, DIARY_ROW, GObject)

void sw_diary_row_add_head (GtkGrid *grid);
SwDiaryRow *sw_diary_row_new (SwDocument *document,
                              SwItem     *item,
                              GtkGrid    *grid,
                              int         at);
void sw_diary_row_show (SwDiaryRow *self,
                        const char *date);

G_END_DECLS
