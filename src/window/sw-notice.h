/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * SwNotice:
 *
 * A line of words above the panes with at most three buttons, instead of a dialog: it waits, and work goes
 * on beside it. A second notice takes the place of the first.
 * Signal "closed": after it was closed or answered, and before a button's action.
 */
#define SW_TYPE_NOTICE (sw_notice_get_type ())
G_DECLARE_FINAL_TYPE (SwNotice, sw_notice, SW, NOTICE, GtkWidget)

/**
 * SwNoticeButton:
 * @label: the button's words, with a mnemonic
 * @action: detailed name of the action it runs; every button also closes the notice
 */
typedef struct
{
  const char *label;
  const char *action;
} SwNoticeButton;

void sw_notice_show (SwNotice             *self,
                     const char           *words,
                     const SwNoticeButton *buttons,
                     guint                 n_buttons);
gboolean sw_notice_is_shown (SwNotice *self);

G_END_DECLS
