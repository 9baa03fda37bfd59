/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the window tells: for a moment over the canvas, or above the panes until it is closed. */
#include "config.h"

#include "sw-window-private.h"

#define TOAST_S 6

static gboolean
toast_over_cb (gpointer data)
{
  SwWindow *self = data;

  self->toast_timeout = 0;
  gtk_revealer_set_reveal_child (self->toast, FALSE);
  return G_SOURCE_REMOVE;
}

/**
 * sw_window_show_toast:
 * @words: what was done
 * @button: (nullable): label of a button beside it
 * @action: (nullable): detailed name of what the button does
 *
 * Tells for a few seconds, over the canvas, that something was done.
 */
void
sw_window_show_toast (SwWindow   *self,
                      const char *words,
                      const char *button,
                      const char *action)
{
  g_clear_handle_id (&self->toast_timeout, g_source_remove);

  gtk_label_set_label (self->toast_words, words);
  gtk_widget_set_visible (GTK_WIDGET (self->toast_button), button != NULL);
  if (button != NULL)
    {
      g_autofree char *name = NULL;
      g_autoptr (GVariant) target = NULL;

      /* The target comes first: GTK 4.8 warns as soon as a name meets a target of another type. */
      g_action_parse_detailed_name (action, &name, &target, NULL);
      gtk_button_set_label (self->toast_button, button);
      gtk_actionable_set_action_name (GTK_ACTIONABLE (self->toast_button), NULL);
      gtk_actionable_set_action_target_value (GTK_ACTIONABLE (self->toast_button), target);
      gtk_actionable_set_action_name (GTK_ACTIONABLE (self->toast_button), name);
    }
  gtk_revealer_set_reveal_child (self->toast, TRUE);
  self->toast_timeout = g_timeout_add_seconds (TOAST_S, toast_over_cb, self);
}

/**
 * sw_window_show_notice:
 * @words: see sw_notice_show()
 * @buttons: (array length=n_buttons): see there
 * @n_buttons: 0..3
 *
 * Tells or asks above the panes. Work that may be lost and is being offered there comes back afterwards.
 */
void
sw_window_show_notice (SwWindow             *self,
                       const char           *words,
                       const SwNoticeButton *buttons,
                       guint                 n_buttons)
{
  if (self->offer_shown)
    self->offer_waiting = TRUE;
  self->offer_shown = FALSE;
  sw_notice_show (self->notice, words, buttons, n_buttons);
}

/**
 * sw_window_show_error:
 * @error: what went wrong, in words for the therapist
 */
void
sw_window_show_error (SwWindow     *self,
                      const GError *error)
{
  sw_window_show_notice (self, error->message, NULL, 0);
}

/**
 * sw_window_close_toast:
 */
void
sw_window_close_toast (SwWindow *self)
{
  g_clear_handle_id (&self->toast_timeout, g_source_remove);
  gtk_revealer_set_reveal_child (self->toast, FALSE);
}
