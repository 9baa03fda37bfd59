/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * SwShortcutScope:
 * @SW_SHORTCUT_EVERYWHERE: works wherever the focus is
 * @SW_SHORTCUT_CANVAS: works on the session canvas; elsewhere the key edits text
 */
typedef enum
{
  SW_SHORTCUT_EVERYWHERE,
  SW_SHORTCUT_CANVAS,
} SwShortcutScope;

void sw_shortcuts_add_to_application (GtkApplication *application);
void sw_shortcuts_add_to_widget (GtkWidget       *widget,
                                 SwShortcutScope  scope);
GtkWidget *sw_shortcuts_window_new (GtkWindow *parent);

G_END_DECLS
