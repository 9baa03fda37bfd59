/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwArrangeWindow:
 *
 * The order of a document's session in which the least time goes between its exercises: what it saves, what keeps it from
 * more, and what would move. It is taken as one step of undo.
 */
#define SW_TYPE_ARRANGE_WINDOW (sw_arrange_window_get_type ())
G_DECLARE_FINAL_TYPE (SwArrangeWindow, sw_arrange_window, SW, ARRANGE_WINDOW, GtkWindow)

GtkWidget *sw_arrange_window_new (GtkWindow  *parent,
                                  SwDocument *document);

G_END_DECLS
