/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One row a measurement, in the order of the document. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-measurement-list.h"

#include "sw-measurement-row.h"

struct _SwMeasurementList
{
  GtkWidget parent_instance;

  SwDocument *document;
  GPtrArray *rows;   /* of SwMeasurementRow, in order */

  GtkWidget *box;
  GtkBox *row_box;
};

G_DEFINE_FINAL_TYPE (SwMeasurementList, sw_measurement_list, GTK_TYPE_WIDGET)

static GListStore *
measurements (SwMeasurementList *self)
{
  return sw_programme_get_measurements (sw_document_get_programme (self->document));
}

static void
add_clicked_cb (SwMeasurementList *self)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *date = g_date_time_format (now, "%Y-%m-%d");
  g_autoptr (SwMeasurement) measurement = sw_measurement_new (date, "", SW_MEASURE_SECONDS);
  gpointer addition = measurement;

  if (self->document == NULL)
    return;

  sw_history_splice (sw_document_get_history (self->document), _("Add a measurement"), measurements (self),
                     g_list_model_get_n_items (G_LIST_MODEL (measurements (self))), 0, &addition, 1);
  sw_measurement_list_refresh (self);
  if (self->rows->len > 0)
    gtk_widget_grab_focus (g_ptr_array_index (self->rows, self->rows->len - 1));
}

static void
row_removed_cb (SwMeasurementList *self,
                SwMeasurementRow  *row)
{
  guint position;

  if (g_list_store_find (measurements (self), sw_measurement_row_get_measurement (row), &position))
    sw_history_splice (sw_document_get_history (self->document), _("Remove a measurement"), measurements (self),
                       position, 1, NULL, 0);
}

static void
drop_rows_from (SwMeasurementList *self,
                guint              position)
{
  while (self->rows->len > position)
    {
      gtk_box_remove (self->row_box, g_ptr_array_index (self->rows, self->rows->len - 1));
      g_ptr_array_set_size (self->rows, (int) self->rows->len - 1);
    }
}

static void
sw_measurement_list_dispose (GObject *object)
{
  SwMeasurementList *self = SW_MEASUREMENT_LIST (object);

  g_clear_object (&self->document);
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  g_clear_pointer (&self->box, gtk_widget_unparent);

  G_OBJECT_CLASS (sw_measurement_list_parent_class)->dispose (object);
}

static void
sw_measurement_list_class_init (SwMeasurementListClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_measurement_list_dispose;

  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/setwright/Setwright/ui/sw-measurement-list.ui");
  gtk_widget_class_bind_template_child (widget_class, SwMeasurementList, box);
  gtk_widget_class_bind_template_child (widget_class, SwMeasurementList, row_box);
  gtk_widget_class_bind_template_callback (widget_class, add_clicked_cb);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sw_measurement_list_init (SwMeasurementList *self)
{
  self->rows = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * sw_measurement_list_set_document:
 * @self: a list
 * @document: (nullable): whose measurements to show
 */
void
sw_measurement_list_set_document (SwMeasurementList *self,
                                  SwDocument        *document)
{
  g_return_if_fail (SW_IS_MEASUREMENT_LIST (self));

  if (!g_set_object (&self->document, document))
    return;

  drop_rows_from (self, 0);
  sw_measurement_list_refresh (self);
}

/**
 * sw_measurement_list_refresh:
 * @self: a list
 *
 * Shows the measurements as they are now. Rows of measurements that stay in place stay, with focus and
 * cursor.
 */
void
sw_measurement_list_refresh (SwMeasurementList *self)
{
  GListModel *list;
  guint n;

  g_return_if_fail (SW_IS_MEASUREMENT_LIST (self));

  if (self->document == NULL)
    return;

  list = G_LIST_MODEL (measurements (self));
  n = g_list_model_get_n_items (list);
  drop_rows_from (self, n);
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (SwMeasurement) measurement = g_list_model_get_item (list, i);
      SwMeasurementRow *row = i < self->rows->len ? g_ptr_array_index (self->rows, i) : NULL;

      if (row != NULL && sw_measurement_row_get_measurement (row) != measurement)
        {
          drop_rows_from (self, i);
          row = NULL;
        }
      if (row == NULL)
        {
          row = sw_measurement_row_new (self->document, measurement);
          g_signal_connect_object (row, "removed", G_CALLBACK (row_removed_cb), self, G_CONNECT_SWAPPED);
          gtk_box_append (self->row_box, GTK_WIDGET (row));
          g_ptr_array_add (self->rows, row);
        }
      sw_measurement_row_refresh (row);
    }
}
