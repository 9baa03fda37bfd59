/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The fields of one measurement. */
#include "config.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n.h>

#include "sw-measurement-row.h"

#include "sw-choices.h"
#include "sw-number.h"
#include "sw-xml-values.h"

/* What a value's field holds when it was not taken; below every value a field can hold. */
#define NOT_TAKEN (-1000.0)

struct _SwMeasurementRow
{
  GtkWidget parent_instance;

  SwDocument *document;
  SwMeasurement *measurement;
  gboolean refreshing;
  char *shown_date;   /* the date that was last given or shown */

  GtkWidget *box;
  GtkEntry *test;
  GtkEntry *date;
  GtkDropDown *measure;
  GtkDropDown *better;
  GtkBox *repetitions_box;
  SwNumber *repetitions;
  SwNumber *left;
  SwNumber *right;
  SwNumber *both;
  GtkButton *remove;
  GtkBox *complaint;
  GtkLabel *complaint_words;
};

G_DEFINE_FINAL_TYPE (SwMeasurementRow, sw_measurement_row, GTK_TYPE_WIDGET)

enum
{
  REMOVED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static char *
dup_label (SwMeasurementRow *self)
{
  const char *test = sw_measurement_get_test (self->measurement);

  if (*test == '\0')
    return g_strdup (_("Change a measurement"));

  /* Translators: %s is the name of a test. */
  return g_strdup_printf (_("Change measurement “%s”"), test);
}

static void
test_changed_cb (SwMeasurementRow *self)
{
  g_autofree char *label = NULL;

  if (self->refreshing)
    return;

  label = dup_label (self);
  sw_history_set_string (sw_document_get_history (self->document), label, self->measurement, "test",
                         gtk_editable_get_text (GTK_EDITABLE (self->test)));
}

/* What is wrong in one of the fields; they are too small for words of their own. */
static void
show_complaint (SwMeasurementRow *self)
{
  SwNumber *numbers[] = { self->right, self->left, self->both, self->repetitions };
  const char *words = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (numbers) && words == NULL; i++)
    words = sw_number_get_complaint (numbers[i]);
  if (words == NULL && gtk_widget_has_css_class (GTK_WIDGET (self->date), "error"))
    words = _("Write the date as year-month-day, such as 2026-03-09.");

  gtk_label_set_label (self->complaint_words, words != NULL ? words : "");
  gtk_widget_set_visible (GTK_WIDGET (self->complaint), words != NULL);
}

static void
mark_date (SwMeasurementRow *self,
           gboolean          valid)
{
  if (valid)
    gtk_widget_remove_css_class (GTK_WIDGET (self->date), "error");
  else
    gtk_widget_add_css_class (GTK_WIDGET (self->date), "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->date), GTK_ACCESSIBLE_STATE_INVALID,
                               valid ? GTK_ACCESSIBLE_INVALID_FALSE : GTK_ACCESSIBLE_INVALID_TRUE, -1);
  show_complaint (self);
}

static void
date_changed_cb (SwMeasurementRow *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->date));
  g_autofree char *label = NULL;

  if (self->refreshing)
    return;

  mark_date (self, sw_is_date (text) || strlen (text) < 10);
  if (!sw_is_date (text))
    return;

  g_free (self->shown_date);
  self->shown_date = g_strdup (text);
  label = dup_label (self);
  sw_history_set_string (sw_document_get_history (self->document), label, self->measurement, "date", text);
}

static void
show_text (GtkEntry   *entry,
           const char *text)
{
  if (strcmp (gtk_editable_get_text (GTK_EDITABLE (entry)), text) != 0)
    gtk_editable_set_text (GTK_EDITABLE (entry), text);
}

static void
show_date (SwMeasurementRow *self)
{
  g_free (self->shown_date);
  self->shown_date = g_strdup (sw_measurement_get_date (self->measurement));
  show_text (self->date, self->shown_date);
  mark_date (self, TRUE);
}

/* A date that is none goes back to the last good one when it is left. */
static void
date_left_cb (SwMeasurementRow *self)
{
  self->refreshing = TRUE;
  show_date (self);
  self->refreshing = FALSE;
}

static void
measure_selected_cb (SwMeasurementRow *self)
{
  g_autofree char *label = NULL;

  if (self->refreshing || self->measurement == NULL)
    return;

  label = dup_label (self);
  sw_history_set_int (sw_document_get_history (self->document), label, self->measurement, "measure",
                      gtk_drop_down_get_selected (self->measure));
}

static void
better_selected_cb (SwMeasurementRow *self)
{
  g_autofree char *label = NULL;

  if (self->refreshing || self->measurement == NULL)
    return;

  label = dup_label (self);
  sw_history_set_int (sw_document_get_history (self->document), label, self->measurement, "better",
                      gtk_drop_down_get_selected (self->better));
}

static void
repetitions_changed_cb (SwMeasurementRow *self)
{
  g_autofree char *label = NULL;

  if (self->refreshing)
    return;

  label = dup_label (self);
  sw_history_set_int (sw_document_get_history (self->document), label, self->measurement, "repetitions",
                      lround (sw_number_get_value (self->repetitions)));
}

static void
value_changed_cb (SwMeasurementRow *self,
                  SwNumber         *number)
{
  g_auto (GValue) value = G_VALUE_INIT;
  g_autofree char *label = NULL;
  const char *property = number == self->left ? "left" : number == self->right ? "right" : "both";
  double shown = sw_number_get_value (number);

  if (self->refreshing)
    return;

  label = dup_label (self);
  g_value_init (&value, G_TYPE_DOUBLE);
  g_value_set_double (&value, shown <= NOT_TAKEN ? NAN : shown);
  sw_history_set (sw_document_get_history (self->document), label, self->measurement, property, &value);
}

static void
remove_clicked_cb (SwMeasurementRow *self)
{
  g_signal_emit (self, signals[REMOVED], 0);
}

static gboolean
sw_measurement_row_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (SW_MEASUREMENT_ROW (widget)->test));
}

static void
sw_measurement_row_dispose (GObject *object)
{
  SwMeasurementRow *self = SW_MEASUREMENT_ROW (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->measurement);
  g_clear_object (&self->document);

  G_OBJECT_CLASS (sw_measurement_row_parent_class)->dispose (object);
}

static void
sw_measurement_row_finalize (GObject *object)
{
  g_free (SW_MEASUREMENT_ROW (object)->shown_date);

  G_OBJECT_CLASS (sw_measurement_row_parent_class)->finalize (object);
}

static void
sw_measurement_row_class_init (SwMeasurementRowClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_measurement_row_dispose;
  G_OBJECT_CLASS (class)->finalize = sw_measurement_row_finalize;
  widget_class->grab_focus = sw_measurement_row_grab_focus;

  signals[REMOVED] = g_signal_new ("removed", SW_TYPE_MEASUREMENT_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);

  g_type_ensure (SW_TYPE_NUMBER);

  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/setwright/Setwright/ui/sw-measurement-row.ui");
  gtk_widget_class_bind_template_child (widget_class, SwMeasurementRow, box);
  gtk_widget_class_bind_template_child (widget_class, SwMeasurementRow, test);
  gtk_widget_class_bind_template_child (widget_class, SwMeasurementRow, date);
  gtk_widget_class_bind_template_child (widget_class, SwMeasurementRow, measure);
  gtk_widget_class_bind_template_child (widget_class, SwMeasurementRow, better);
  gtk_widget_class_bind_template_child (widget_class, SwMeasurementRow, repetitions_box);
  gtk_widget_class_bind_template_child (widget_class, SwMeasurementRow, repetitions);
  gtk_widget_class_bind_template_child (widget_class, SwMeasurementRow, left);
  gtk_widget_class_bind_template_child (widget_class, SwMeasurementRow, right);
  gtk_widget_class_bind_template_child (widget_class, SwMeasurementRow, both);
  gtk_widget_class_bind_template_child (widget_class, SwMeasurementRow, remove);
  gtk_widget_class_bind_template_child (widget_class, SwMeasurementRow, complaint);
  gtk_widget_class_bind_template_child (widget_class, SwMeasurementRow, complaint_words);
  gtk_widget_class_bind_template_callback (widget_class, show_complaint);
  gtk_widget_class_bind_template_callback (widget_class, test_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, date_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, date_left_cb);
  gtk_widget_class_bind_template_callback (widget_class, measure_selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, better_selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, repetitions_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, value_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, remove_clicked_cb);
  gtk_widget_class_set_css_name (widget_class, "measurement");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sw_measurement_row_init (SwMeasurementRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  sw_choices_fill (self->measure, SW_TYPE_MEASURE);
  sw_choices_fill (self->better, SW_TYPE_BETTER);
  sw_number_set_name (self->repetitions, _("How often the load was moved"),
                      _("Until no more was possible. Empty: one greatest pull, as on a dynamometer"));
  sw_number_set_name (self->left, _("Left side"), NULL);
  sw_number_set_name (self->right, _("Right side"), NULL);
  sw_number_set_name (self->both, _("Both sides together"), NULL);
}

/**
 * sw_measurement_row_new:
 * @document: the document
 * @measurement: one of its measurements
 *
 * Returns: (transfer floating): a row, to be filled by sw_measurement_row_refresh()
 */
SwMeasurementRow *
sw_measurement_row_new (SwDocument    *document,
                        SwMeasurement *measurement)
{
  SwMeasurementRow *self = g_object_new (SW_TYPE_MEASUREMENT_ROW, NULL);

  self->document = g_object_ref (document);
  self->measurement = g_object_ref (measurement);
  return self;
}

/**
 * sw_measurement_row_get_measurement:
 * @self: a row
 *
 * Returns: (transfer none): whose fields it shows
 */
SwMeasurement *
sw_measurement_row_get_measurement (SwMeasurementRow *self)
{
  g_return_val_if_fail (SW_IS_MEASUREMENT_ROW (self), NULL);

  return self->measurement;
}

static gboolean
is_strength (SwMeasurement *measurement)
{
  SwMeasure measure = sw_measurement_get_measure (measurement);

  return measure == SW_MEASURE_KILOGRAMS || measure == SW_MEASURE_POUNDS || measure == SW_MEASURE_NEWTONS;
}

static double
shown_value (double value)
{
  return isnan (value) ? NOT_TAKEN : value;
}

/**
 * sw_measurement_row_refresh:
 * @self: a row
 *
 * Shows the measurement as it is now; what is being typed and means the same stays as it is.
 */
void
sw_measurement_row_refresh (SwMeasurementRow *self)
{
  g_autofree char *remove = NULL;

  g_return_if_fail (SW_IS_MEASUREMENT_ROW (self));

  remove = g_strdup_printf (_("Remove measurement “%s”"), sw_measurement_get_test (self->measurement));
  self->refreshing = TRUE;
  show_text (self->test, sw_measurement_get_test (self->measurement));
  if (g_strcmp0 (self->shown_date, sw_measurement_get_date (self->measurement)) != 0)
    show_date (self);
  sw_choices_show (self->measure, (int) sw_measurement_get_measure (self->measurement));
  sw_choices_show (self->better, (int) sw_measurement_get_better (self->measurement));
  sw_number_set_value (self->repetitions, sw_measurement_get_repetitions (self->measurement));
  gtk_widget_set_visible (GTK_WIDGET (self->repetitions_box), is_strength (self->measurement));
  sw_number_set_value (self->left, shown_value (sw_measurement_get_left (self->measurement)));
  sw_number_set_value (self->right, shown_value (sw_measurement_get_right (self->measurement)));
  sw_number_set_value (self->both, shown_value (sw_measurement_get_both (self->measurement)));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->remove), GTK_ACCESSIBLE_PROPERTY_LABEL, remove, -1);
  self->refreshing = FALSE;
}
