/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-working.h"

G_BEGIN_DECLS

/**
 * SwWorkingButton:
 *
 * A number that was reckoned; a press opens how.
 */
#define SW_TYPE_WORKING_BUTTON (sw_working_button_get_type ())
G_DECLARE_FINAL_TYPE (SwWorkingButton, sw_working_button, SW, WORKING_BUTTON, GtkWidget)

void sw_working_button_show (SwWorkingButton *self,
                             const char      *result,
                             SwWorking       *working);

G_END_DECLS
