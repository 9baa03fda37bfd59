/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One filter of the catalogue: what it lets through can be read on the button itself. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-filter-button.h"
#include "sw-labels.h"

struct _SwFilterButton
{
  GtkWidget parent_instance;

  GtkToggleButton *button;
  GtkLabel *words;
  GtkPopover *popover;
  GtkBox *switch_box;
  GtkCheckButton *switch_check;
  GtkLabel *switch_detail;
  GtkBox *choices;

  char *title;
  char *switch_words;
  GType type;
  GPtrArray *checks; /* GtkCheckButton, one a value, in the vocabulary's order; unowned */
  gboolean clearing;
};

G_DEFINE_FINAL_TYPE (SwFilterButton, sw_filter_button, GTK_TYPE_WIDGET)

enum
{
  CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

/* What the filter lets through, in words; NULL when that is everything. */
static char *
dup_chosen (SwFilterButton *self)
{
  SwSet values = sw_filter_button_get_values (self);
  gboolean switched = sw_filter_button_get_switched (self);

  if (switched && values != 0)
    {
      g_autofree char *chosen = sw_label_set (self->type, values);

      /* Translators: a switch that is on ("Client’s own") and further choices */
      return g_strdup_printf (_("%s + %s"), self->switch_words, chosen);
    }
  if (switched)
    return g_strdup (self->switch_words);
  if (values != 0)
    return sw_label_set (self->type, values);

  return NULL;
}

static void
update_words (SwFilterButton *self)
{
  g_autofree char *chosen = dup_chosen (self);
  g_autofree char *name = NULL;

  if (chosen != NULL)
    {
      /* Translators: a filter and what it lets through, for example "Region: Knee, Hip" */
      name = g_strdup_printf (_("%s: %s"), self->title, chosen);
      gtk_label_set_label (self->words, chosen);
      gtk_widget_add_css_class (GTK_WIDGET (self->button), "wanted");
      gtk_widget_set_tooltip_text (GTK_WIDGET (self->button), name);
    }
  else
    {
      /* Translators: a filter that lets everything through, for example "Region: any" */
      name = g_strdup_printf (_("%s: any"), self->title);
      gtk_label_set_label (self->words, self->title);
      gtk_widget_remove_css_class (GTK_WIDGET (self->button), "wanted");
      gtk_widget_set_tooltip_text (GTK_WIDGET (self->button), NULL);
    }

  gtk_accessible_update_property (GTK_ACCESSIBLE (self->button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static void
choice_toggled_cb (SwFilterButton *self)
{
  if (self->clearing || self->title == NULL)
    return;

  update_words (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
button_toggled_cb (SwFilterButton *self)
{
  if (gtk_toggle_button_get_active (self->button))
    gtk_popover_popup (self->popover);
  else
    gtk_popover_popdown (self->popover);
}

static void
popover_closed_cb (SwFilterButton *self)
{
  gtk_toggle_button_set_active (self->button, FALSE);
}

static gboolean
sw_filter_button_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (SW_FILTER_BUTTON (widget)->button));
}

static void
sw_filter_button_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);

  G_OBJECT_CLASS (sw_filter_button_parent_class)->dispose (object);
}

static void
sw_filter_button_finalize (GObject *object)
{
  SwFilterButton *self = SW_FILTER_BUTTON (object);

  g_free (self->title);
  g_free (self->switch_words);
  g_ptr_array_unref (self->checks);

  G_OBJECT_CLASS (sw_filter_button_parent_class)->finalize (object);
}

static void
sw_filter_button_class_init (SwFilterButtonClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  object_class->dispose = sw_filter_button_dispose;
  object_class->finalize = sw_filter_button_finalize;
  widget_class->grab_focus = sw_filter_button_grab_focus;

  signals[CHANGED] = g_signal_new ("changed", SW_TYPE_FILTER_BUTTON, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);

  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/setwright/Setwright/ui/sw-filter-button.ui");
  gtk_widget_class_bind_template_child (widget_class, SwFilterButton, button);
  gtk_widget_class_bind_template_child (widget_class, SwFilterButton, words);
  gtk_widget_class_bind_template_child (widget_class, SwFilterButton, popover);
  gtk_widget_class_bind_template_child (widget_class, SwFilterButton, switch_box);
  gtk_widget_class_bind_template_child (widget_class, SwFilterButton, switch_check);
  gtk_widget_class_bind_template_child (widget_class, SwFilterButton, switch_detail);
  gtk_widget_class_bind_template_child (widget_class, SwFilterButton, choices);
  gtk_widget_class_bind_template_callback (widget_class, button_toggled_cb);
  gtk_widget_class_bind_template_callback (widget_class, popover_closed_cb);
  gtk_widget_class_bind_template_callback (widget_class, choice_toggled_cb);
}

static void
sw_filter_button_init (SwFilterButton *self)
{
  self->checks = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * sw_filter_button_set_vocabulary:
 * @title: what is filtered by, translated ("Region")
 * @type: one of the enumerations of sw-terms.h
 *
 * To be called once, before the button is shown.
 */
void
sw_filter_button_set_vocabulary (SwFilterButton *self,
                                 const char     *title,
                                 GType           type)
{
  g_return_if_fail (SW_IS_FILTER_BUTTON (self));
  g_return_if_fail (title != NULL);
  g_return_if_fail (self->title == NULL);

  self->title = g_strdup (title);
  self->type = type;
  for (int value = 0; value < sw_term_get_n_values (type); value++)
    {
      GtkWidget *check = gtk_check_button_new_with_label (sw_label (type, value));

      g_signal_connect_swapped (check, "toggled", G_CALLBACK (choice_toggled_cb), self);
      gtk_box_append (self->choices, check);
      g_ptr_array_add (self->checks, check);
    }

  update_words (self);
}

/**
 * sw_filter_button_set_switch:
 * @words: what it does, translated ("Only what the client has")
 * @short_words: the same for the button itself ("Client’s own")
 *
 * Adds a switch above the values.
 */
void
sw_filter_button_set_switch (SwFilterButton *self,
                             const char     *words,
                             const char     *short_words)
{
  g_return_if_fail (SW_IS_FILTER_BUTTON (self));
  g_return_if_fail (self->switch_words == NULL);

  self->switch_words = g_strdup (short_words);
  gtk_check_button_set_label (self->switch_check, words);
  gtk_widget_set_visible (GTK_WIDGET (self->switch_box), TRUE);
}

/**
 * sw_filter_button_set_switch_detail:
 * @detail: what the switch means at present, in words ("Chair, Wall")
 */
void
sw_filter_button_set_switch_detail (SwFilterButton *self,
                                    const char     *detail)
{
  g_return_if_fail (SW_IS_FILTER_BUTTON (self));

  gtk_label_set_label (self->switch_detail, detail);
}

/**
 * sw_filter_button_get_switched:
 *
 * Returns: whether the switch is on; FALSE when there is none
 */
gboolean
sw_filter_button_get_switched (SwFilterButton *self)
{
  g_return_val_if_fail (SW_IS_FILTER_BUTTON (self), FALSE);

  return gtk_check_button_get_active (self->switch_check);
}

/**
 * sw_filter_button_get_values:
 *
 * Returns: the ticked values; 0 when none is
 */
SwSet
sw_filter_button_get_values (SwFilterButton *self)
{
  SwSet values = 0;

  g_return_val_if_fail (SW_IS_FILTER_BUTTON (self), 0);

  for (guint i = 0; i < self->checks->len; i++)
    if (gtk_check_button_get_active (g_ptr_array_index (self->checks, i)))
      values |= SW_SET (i);

  return values;
}

/**
 * sw_filter_button_get_any:
 *
 * Returns: whether the button filters at all
 */
gboolean
sw_filter_button_get_any (SwFilterButton *self)
{
  return sw_filter_button_get_switched (self) || sw_filter_button_get_values (self) != 0;
}

/**
 * sw_filter_button_clear:
 *
 * Lets everything through again.
 */
void
sw_filter_button_clear (SwFilterButton *self)
{
  g_return_if_fail (SW_IS_FILTER_BUTTON (self));

  if (!sw_filter_button_get_any (self))
    return;

  self->clearing = TRUE;
  gtk_check_button_set_active (self->switch_check, FALSE);
  for (guint i = 0; i < self->checks->len; i++)
    gtk_check_button_set_active (g_ptr_array_index (self->checks, i), FALSE);
  self->clearing = FALSE;

  choice_toggled_cb (self);
}
