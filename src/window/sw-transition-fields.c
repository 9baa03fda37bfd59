/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How long what lies between two exercises takes: a range of seconds for each thing to do, and a way back to the usual
 * ones. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-transition-fields.h"

#include "sw-number.h"
#include "sw-transition-name.h"

#define N_NUMBERS (2 * SW_N_TRANSITIONS)

struct _SwTransitionFields
{
  GtkWidget parent_instance;

  GtkWidget *expander;
  GtkLabel *summary;
  GtkGrid *grid;
  GtkButton *usual;
  SwNumber *numbers[N_NUMBERS]; /* low and high of each SwTransition */

  SwDocument *document;
  gboolean refreshing;
};

G_DEFINE_FINAL_TYPE (SwTransitionFields, sw_transition_fields, GTK_TYPE_WIDGET)

static SwClinic *
get_clinic (SwTransitionFields *self)
{
  return sw_programme_get_clinic (sw_document_get_programme (self->document));
}

static const char *
get_property_name (int number)
{
  return sw_clinic_get_transition_property ((SwTransition) (number / 2), number % 2 == 1);
}

static void
number_changed_cb (SwTransitionFields *self,
                   SwNumber           *number)
{
  if (self->refreshing || self->document == NULL)
    return;

  for (int i = 0; i < N_NUMBERS; i++)
    if (self->numbers[i] == number)
      sw_history_set_int (sw_document_get_history (self->document), _("Change how long changes take"),
                          get_clinic (self), get_property_name (i), (gint64) sw_number_get_value (number));
}

static void
usual_clicked_cb (SwTransitionFields *self)
{
  SwHistory *history = sw_document_get_history (self->document);
  g_autoptr (SwClinic) usual = sw_clinic_new ();
  const char *label = _("Set the usual times between exercises");

  sw_history_begin (history, label);
  for (int i = 0; i < N_NUMBERS; i++)
    {
      int seconds;

      g_object_get (usual, get_property_name (i), &seconds, NULL);
      sw_history_set_int (history, label, get_clinic (self), get_property_name (i), seconds);
    }
  sw_history_end (history);
}

static SwNumber *
number_new (SwTransitionFields *self,
            SwTransition        transition,
            gboolean            high)
{
  SwNumber *number = g_object_new (SW_TYPE_NUMBER, "lower", 0.0, "upper", (double) SW_CLINIC_MOST_TRANSITION_S, "step",
                                   5.0, NULL);
  const char *name = sw_transition_get_name (transition);
  /* Translators: %s is what has to be done between exercises */
  g_autofree char *told = g_strdup_printf (high ? _("%s, at most") : _("%s, at least"), name);

  sw_number_set_name (number, told, _("seconds"));
  gtk_widget_set_tooltip_text (GTK_WIDGET (number),
                               high ? _("Seconds when it goes slowly; never less than the lower figure")
                                    : _("Seconds when it goes quickly"));
  g_signal_connect_object (number, "changed", G_CALLBACK (number_changed_cb), self, G_CONNECT_SWAPPED);
  return number;
}

static GtkWidget *
label_new (const char *words,
           const char *css_class)
{
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static void
add_row (SwTransitionFields *self,
         SwTransition        transition)
{
  SwNumber *low = number_new (self, transition, FALSE);
  SwNumber *high = number_new (self, transition, TRUE);
  int row = 2 * (int) transition;

  self->numbers[2 * transition] = low;
  self->numbers[2 * transition + 1] = high;
  gtk_grid_attach (self->grid, label_new (sw_transition_get_name (transition), "field-label"), 0, row, 4, 1);
  gtk_grid_attach (self->grid, GTK_WIDGET (low), 0, row + 1, 1, 1);
  gtk_grid_attach (self->grid, label_new (_("to"), "dim"), 1, row + 1, 1, 1);
  gtk_grid_attach (self->grid, GTK_WIDGET (high), 2, row + 1, 1, 1);
  gtk_grid_attach (self->grid, label_new (_("s"), "dim"), 3, row + 1, 1, 1);
}

static void
sw_transition_fields_dispose (GObject *object)
{
  SwTransitionFields *self = SW_TRANSITION_FIELDS (object);

  g_clear_pointer (&self->expander, gtk_widget_unparent);
  g_clear_object (&self->document);

  G_OBJECT_CLASS (sw_transition_fields_parent_class)->dispose (object);
}

static void
sw_transition_fields_class_init (SwTransitionFieldsClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_transition_fields_dispose;

  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-transition-fields.ui");
  gtk_widget_class_bind_template_child (widget_class, SwTransitionFields, expander);
  gtk_widget_class_bind_template_child (widget_class, SwTransitionFields, summary);
  gtk_widget_class_bind_template_child (widget_class, SwTransitionFields, grid);
  gtk_widget_class_bind_template_child (widget_class, SwTransitionFields, usual);
  gtk_widget_class_bind_template_callback (widget_class, usual_clicked_cb);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sw_transition_fields_init (SwTransitionFields *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  for (int i = 0; i < SW_N_TRANSITIONS; i++)
    add_row (self, (SwTransition) i);
}

/**
 * sw_transition_fields_show:
 * @self: the fields
 * @document: whose clinic to show
 *
 * Shows the table as it is now; what is being typed and means the same stays as it is.
 */
void
sw_transition_fields_show (SwTransitionFields *self,
                           SwDocument         *document)
{
  gboolean usual;

  g_return_if_fail (SW_IS_TRANSITION_FIELDS (self));
  g_return_if_fail (SW_IS_DOCUMENT (document));

  g_set_object (&self->document, document);
  usual = sw_clinic_has_usual_transitions (get_clinic (self));
  self->refreshing = TRUE;
  for (int i = 0; i < N_NUMBERS; i++)
    {
      int seconds;

      g_object_get (get_clinic (self), get_property_name (i), &seconds, NULL);
      sw_number_set_value (self->numbers[i], seconds);
    }
  gtk_label_set_label (self->summary, usual ? _("Usual") : _("The clinic’s own"));
  gtk_widget_set_sensitive (GTK_WIDGET (self->usual), !usual);
  self->refreshing = FALSE;
}
