/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-application.h"
#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwWindow:
 *
 * The window of one programme: catalogue or pages, session, dose and client, findings.
 */
#define SW_TYPE_WINDOW (sw_window_get_type ())
G_DECLARE_FINAL_TYPE (SwWindow, sw_window, SW, WINDOW, GtkApplicationWindow)

SwWindow *sw_window_new (SwApplication *application);
void sw_window_open (SwWindow   *self,
                     const char *path);
void sw_window_offer_drafts (SwWindow *self);
gboolean sw_window_is_untouched (SwWindow *self);

G_END_DECLS
