/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * SwShortcutScope:
 * @SW_SHORTCUT_EVERYWHERE: works wherever the focus is
 * @SW_SHORTCUT_CANVAS: works on the session canvas; elsewhere the key edits text
 * @SW_SHORTCUT_CATALOGUE: works in the catalogue pane
 * @SW_SHORTCUT_CARDS: works on the catalogue's cards
 * @SW_SHORTCUT_PREVIEW: works wherever the focus is, while the handout's pages are shown
 */
typedef enum
{
  SW_SHORTCUT_EVERYWHERE,
  SW_SHORTCUT_CANVAS,
  SW_SHORTCUT_CATALOGUE,
  SW_SHORTCUT_CARDS,
  SW_SHORTCUT_PREVIEW,
} SwShortcutScope;

void sw_shortcuts_add_to_application (GtkApplication *application);
void sw_shortcuts_add_to_widget (GtkWidget       *widget,
                                 SwShortcutScope  scope);
GtkWidget *sw_shortcuts_window_new (GtkWindow *parent);

G_END_DECLS
