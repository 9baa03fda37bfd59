/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The number stands on a flat button; its popover lists the steps, a row each, for eyes, arrow keys and
 * screen readers. */
#include "config.h"

#include <string.h>

#include <glib/gi18n.h>

#include "sw-working-button.h"

/* Figures of at most so many characters stand beside their words, longer ones below. */
#define MOST_BESIDE 26

struct _SwWorkingButton
{
  GtkWidget parent_instance;

  GtkMenuButton *button;
  GtkLabel *result;
  GtkPopover *popover;
  GtkListBox *lines;

  SwWorking *working; /* or NULL */
};

G_DEFINE_FINAL_TYPE (SwWorkingButton, sw_working_button, GTK_TYPE_WIDGET)

static GtkWidget *
label_new (const char *text,
           const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 52);
  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  return label;
}

static GtkWidget *
line_new (const SwWorkingLine *line)
{
  GtkWidget *row = gtk_list_box_row_new ();
  gboolean beside = g_utf8_strlen (line->figures, -1) <= MOST_BESIDE;
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *step = gtk_box_new (beside ? GTK_ORIENTATION_HORIZONTAL : GTK_ORIENTATION_VERTICAL, beside ? 18 : 0);
  GtkWidget *words = label_new (line->words, "dim");
  GtkWidget *figures = label_new (line->figures, "figures");
  GtkWidget *source;
  g_autofree char *told = g_strdup_printf ("%s: %s. %s", line->words, line->figures,
                                           line->source != NULL ? line->source : "");

  gtk_widget_set_hexpand (words, beside);
  gtk_label_set_wrap (GTK_LABEL (figures), !beside);
  gtk_widget_set_valign (figures, GTK_ALIGN_END);
  gtk_box_append (GTK_BOX (step), words);
  gtk_box_append (GTK_BOX (step), figures);
  gtk_box_append (GTK_BOX (box), step);
  if (line->source != NULL)
    {
      source = label_new (line->source, "small");
      gtk_widget_add_css_class (source, "dim");
      gtk_box_append (GTK_BOX (box), source);
    }
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), FALSE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, told, -1);
  return row;
}

/* The rows are made when somebody looks: numbers change with every key, and few are asked how they came about. */
static void
fill (SwWorkingButton *self)
{
  GtkListBoxRow *row;

  while ((row = gtk_list_box_get_row_at_index (self->lines, 0)) != NULL)
    gtk_list_box_remove (self->lines, GTK_WIDGET (row));
  for (guint i = 0; self->working != NULL && i < sw_working_get_n_lines (self->working); i++)
    gtk_list_box_append (self->lines, line_new (sw_working_get_line (self->working, i)));
}

static gboolean
sw_working_button_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (SW_WORKING_BUTTON (widget)->button));
}

static void
sw_working_button_dispose (GObject *object)
{
  SwWorkingButton *self = SW_WORKING_BUTTON (object);

  if (self->button != NULL)
    gtk_widget_unparent (GTK_WIDGET (self->button));
  self->button = NULL;
  g_clear_pointer (&self->working, sw_working_unref);

  G_OBJECT_CLASS (sw_working_button_parent_class)->dispose (object);
}

static void
sw_working_button_class_init (SwWorkingButtonClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_working_button_dispose;
  widget_class->grab_focus = sw_working_button_grab_focus;

  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/setwright/Setwright/ui/sw-working-button.ui");
  gtk_widget_class_bind_template_child (widget_class, SwWorkingButton, button);
  gtk_widget_class_bind_template_child (widget_class, SwWorkingButton, result);
  gtk_widget_class_bind_template_child (widget_class, SwWorkingButton, lines);
  gtk_widget_class_bind_template_child (widget_class, SwWorkingButton, popover);
  gtk_widget_class_bind_template_callback (widget_class, fill);
  gtk_widget_class_set_css_name (widget_class, "working");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sw_working_button_init (SwWorkingButton *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * sw_working_button_show:
 * @self: a button
 * @result: the number with its unit, as it is to stand there
 * @working: how it was reckoned
 */
void
sw_working_button_show (SwWorkingButton *self,
                        const char      *result,
                        SwWorking       *working)
{
  g_autofree char *told = NULL;

  g_return_if_fail (SW_IS_WORKING_BUTTON (self));

  /* Translators: %s is a number with its unit; a press opens its working. */
  told = g_strdup_printf (_("%s: show how it was reckoned"), result);
  gtk_label_set_label (self->result, result);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->button), GTK_ACCESSIBLE_PROPERTY_LABEL, told, -1);
  g_clear_pointer (&self->working, sw_working_unref);
  self->working = sw_working_ref (working);
  if (gtk_widget_get_visible (GTK_WIDGET (self->popover)))
    fill (self);
}
