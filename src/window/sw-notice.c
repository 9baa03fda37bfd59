/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tells and asks without a dialog in the way. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-notice.h"

struct _SwNotice
{
  GtkWidget parent_instance;

  GtkWidget *revealer;
  GtkLabel *words;
  GtkBox *buttons;
};

G_DEFINE_FINAL_TYPE (SwNotice, sw_notice, GTK_TYPE_WIDGET)

enum
{
  CLOSED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
close_clicked_cb (SwNotice *self)
{
  gtk_revealer_set_reveal_child (GTK_REVEALER (self->revealer), FALSE);
  g_signal_emit (self, signals[CLOSED], 0);
}

static void
sw_notice_dispose (GObject *object)
{
  SwNotice *self = SW_NOTICE (object);

  g_clear_pointer (&self->revealer, gtk_widget_unparent);
  G_OBJECT_CLASS (sw_notice_parent_class)->dispose (object);
}

static void
sw_notice_class_init (SwNoticeClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_notice_dispose;

  signals[CLOSED] = g_signal_new ("closed", SW_TYPE_NOTICE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);

  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-notice.ui");
  gtk_widget_class_bind_template_child (widget_class, SwNotice, revealer);
  gtk_widget_class_bind_template_child (widget_class, SwNotice, words);
  gtk_widget_class_bind_template_child (widget_class, SwNotice, buttons);
  gtk_widget_class_bind_template_callback (widget_class, close_clicked_cb);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sw_notice_init (SwNotice *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * sw_notice_show:
 * @words: one or two sentences: what, where, what now
 * @buttons: (array length=n_buttons): the ways to answer, the first the likeliest
 * @n_buttons: 0..3
 */
void
sw_notice_show (SwNotice             *self,
                const char           *words,
                const SwNoticeButton *buttons,
                guint                 n_buttons)
{
  GtkWidget *child;

  g_return_if_fail (SW_IS_NOTICE (self));
  g_return_if_fail (n_buttons <= 3);

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->buttons))) != NULL)
    gtk_box_remove (self->buttons, child);

  gtk_label_set_label (self->words, words);
  for (guint i = 0; i < n_buttons; i++)
    {
      GtkWidget *button = gtk_button_new_with_mnemonic (buttons[i].label);

      /* The connection comes first: the action may show the next notice, which must stay. */
      g_signal_connect_swapped (button, "clicked", G_CALLBACK (close_clicked_cb), self);
      gtk_actionable_set_detailed_action_name (GTK_ACTIONABLE (button), buttons[i].action);
      gtk_box_append (self->buttons, button);
    }

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  gtk_widget_set_visible (GTK_WIDGET (self), TRUE);
  gtk_revealer_set_reveal_child (GTK_REVEALER (self->revealer), TRUE);
}

/**
 * sw_notice_is_shown:
 *
 * Returns: whether it tells or asks something that was not closed yet
 */
gboolean
sw_notice_is_shown (SwNotice *self)
{
  g_return_val_if_fail (SW_IS_NOTICE (self), FALSE);
  return gtk_revealer_get_reveal_child (GTK_REVEALER (self->revealer));
}
