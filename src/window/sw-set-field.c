/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Boxes to tick, folded away behind the words of what is ticked. */
#include "config.h"

#include "sw-set-field.h"

#include "sw-labels.h"

struct _SwSetField
{
  GtkWidget parent_instance;

  GType type;
  char *nothing;
  SwSet value;
  gboolean setting;
  GPtrArray *checks;  /* of GtkCheckButton, by value */

  GtkWidget *expander;
  GtkLabel *title;
  GtkLabel *summary;
  GtkGrid *grid;
};

G_DEFINE_FINAL_TYPE (SwSetField, sw_set_field, GTK_TYPE_WIDGET)

enum
{
  CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
show_summary (SwSetField *self)
{
  g_autofree char *words = sw_label_set (self->type, self->value);

  gtk_label_set_label (self->summary, self->value != 0 ? words : self->nothing);
}

static void
check_toggled_cb (SwSetField *self)
{
  SwSet value = 0;

  if (self->setting)
    return;

  for (guint i = 0; i < self->checks->len; i++)
    {
      if (gtk_check_button_get_active (g_ptr_array_index (self->checks, i)))
        value |= SW_SET (i);
    }
  if (value == self->value)
    return;

  self->value = value;
  show_summary (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
sw_set_field_dispose (GObject *object)
{
  SwSetField *self = SW_SET_FIELD (object);

  g_clear_pointer (&self->checks, g_ptr_array_unref);
  g_clear_pointer (&self->expander, gtk_widget_unparent);

  G_OBJECT_CLASS (sw_set_field_parent_class)->dispose (object);
}

static void
sw_set_field_finalize (GObject *object)
{
  g_free (SW_SET_FIELD (object)->nothing);

  G_OBJECT_CLASS (sw_set_field_parent_class)->finalize (object);
}

static void
sw_set_field_class_init (SwSetFieldClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  object_class->dispose = sw_set_field_dispose;
  object_class->finalize = sw_set_field_finalize;

  signals[CHANGED] = g_signal_new ("changed", SW_TYPE_SET_FIELD, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);

  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-set-field.ui");
  gtk_widget_class_bind_template_child (widget_class, SwSetField, expander);
  gtk_widget_class_bind_template_child (widget_class, SwSetField, title);
  gtk_widget_class_bind_template_child (widget_class, SwSetField, summary);
  gtk_widget_class_bind_template_child (widget_class, SwSetField, grid);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sw_set_field_init (SwSetField *self)
{
  self->checks = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * sw_set_field_fill:
 * @self: an empty field
 * @type: the GType of an enumeration of the vocabularies
 * @n_columns: 1 for long words, 2 for short ones
 * @title: what the set is
 * @nothing: what an empty set means
 */
void
sw_set_field_fill (SwSetField *self,
                   GType       type,
                   int         n_columns,
                   const char *title,
                   const char *nothing)
{
  g_return_if_fail (SW_IS_SET_FIELD (self));
  g_return_if_fail (self->checks->len == 0);

  self->type = type;
  self->nothing = g_strdup (nothing);
  gtk_label_set_label (self->title, title);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->expander), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);

  for (int value = 0; value < sw_term_get_n_values (type); value++)
    {
      GtkWidget *check = gtk_check_button_new_with_label (sw_label (type, value));

      g_signal_connect_object (check, "toggled", G_CALLBACK (check_toggled_cb), self, G_CONNECT_SWAPPED);
      gtk_widget_set_hexpand (check, TRUE);
      gtk_grid_attach (self->grid, check, value % n_columns, value / n_columns, 1, 1);
      g_ptr_array_add (self->checks, check);
    }
  show_summary (self);
}

/**
 * sw_set_field_get_value:
 * @self: a field
 *
 * Returns: the set that is ticked
 */
SwSet
sw_set_field_get_value (SwSetField *self)
{
  g_return_val_if_fail (SW_IS_SET_FIELD (self), 0);

  return self->value;
}

/**
 * sw_set_field_set_value:
 * @self: a filled field
 * @value: the set to show
 */
void
sw_set_field_set_value (SwSetField *self,
                        SwSet       value)
{
  g_return_if_fail (SW_IS_SET_FIELD (self));

  if (self->value == value)
    return;

  self->value = value;
  self->setting = TRUE;
  for (guint i = 0; i < self->checks->len; i++)
    gtk_check_button_set_active (g_ptr_array_index (self->checks, i), (value & SW_SET (i)) != 0);
  self->setting = FALSE;
  show_summary (self);
}
