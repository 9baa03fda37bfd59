/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwProgressWindow:
 *
 * The next visit: the client's diary, the rules that speak to it, and the plan over the weeks.
 */
#define SW_TYPE_PROGRESS_WINDOW (sw_progress_window_get_type ())
G_DECLARE_FINAL_TYPE (SwProgressWindow, sw_progress_window, SW, PROGRESS_WINDOW, GtkWindow)

GtkWidget *sw_progress_window_new (GtkWindow  *parent,
                                   SwDocument *document);

G_END_DECLS
