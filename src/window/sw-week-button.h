/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwWeekButton:
 *
 * The sets a week of the muscles that work most; a press opens all of them as a chart, with what is published beside them,
 * and how the week is shared out over sides, push and pull, front and back, directions and positions.
 */
#define SW_TYPE_WEEK_BUTTON (sw_week_button_get_type ())
G_DECLARE_FINAL_TYPE (SwWeekButton, sw_week_button, SW, WEEK_BUTTON, GtkWidget)

void sw_week_button_show (SwWeekButton *self,
                          SwProgramme  *programme);

G_END_DECLS
