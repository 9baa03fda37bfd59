/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One row a limit, in the order of the document. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-limit-list.h"

#include "sw-limit-row.h"

struct _SwLimitList
{
  GtkWidget parent_instance;

  SwDocument *document;
  GPtrArray *rows;   /* of SwLimitRow, in order */

  GtkWidget *box;
  GtkBox *row_box;
};

G_DEFINE_FINAL_TYPE (SwLimitList, sw_limit_list, GTK_TYPE_WIDGET)

static GListStore *
limits (SwLimitList *self)
{
  return sw_programme_get_limits (sw_document_get_programme (self->document));
}

static void
add_clicked_cb (SwLimitList *self)
{
  g_autoptr (SwLimit) limit = sw_limit_new (SW_LIMIT_KIND_RANGE);
  gpointer addition = limit;

  if (self->document == NULL)
    return;

  sw_history_splice (sw_document_get_history (self->document), _("Add a limit"), limits (self),
                     g_list_model_get_n_items (G_LIST_MODEL (limits (self))), 0, &addition, 1);
  sw_limit_list_refresh (self);
  if (self->rows->len > 0)
    gtk_widget_grab_focus (g_ptr_array_index (self->rows, self->rows->len - 1));
}

static void
row_removed_cb (SwLimitList *self,
                SwLimitRow  *row)
{
  guint position;

  if (g_list_store_find (limits (self), sw_limit_row_get_limit (row), &position))
    sw_history_splice (sw_document_get_history (self->document), _("Remove a limit"), limits (self),
                       position, 1, NULL, 0);
}

static void
drop_rows_from (SwLimitList *self,
                guint        position)
{
  while (self->rows->len > position)
    {
      gtk_box_remove (self->row_box, g_ptr_array_index (self->rows, self->rows->len - 1));
      g_ptr_array_set_size (self->rows, (int) self->rows->len - 1);
    }
}

static void
sw_limit_list_dispose (GObject *object)
{
  SwLimitList *self = SW_LIMIT_LIST (object);

  g_clear_object (&self->document);
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  g_clear_pointer (&self->box, gtk_widget_unparent);

  G_OBJECT_CLASS (sw_limit_list_parent_class)->dispose (object);
}

static void
sw_limit_list_class_init (SwLimitListClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_limit_list_dispose;

  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/setwright/Setwright/ui/sw-limit-list.ui");
  gtk_widget_class_bind_template_child (widget_class, SwLimitList, box);
  gtk_widget_class_bind_template_child (widget_class, SwLimitList, row_box);
  gtk_widget_class_bind_template_callback (widget_class, add_clicked_cb);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sw_limit_list_init (SwLimitList *self)
{
  self->rows = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * sw_limit_list_set_document:
 * @self: a list
 * @document: (nullable): whose limits to show
 */
void
sw_limit_list_set_document (SwLimitList *self,
                            SwDocument  *document)
{
  g_return_if_fail (SW_IS_LIMIT_LIST (self));

  if (!g_set_object (&self->document, document))
    return;

  drop_rows_from (self, 0);
  sw_limit_list_refresh (self);
}

/**
 * sw_limit_list_refresh:
 * @self: a list
 *
 * Shows the limits as they are now. Rows of limits that stay in place stay, with focus and
 * cursor.
 */
void
sw_limit_list_refresh (SwLimitList *self)
{
  GListModel *list;
  guint n;

  g_return_if_fail (SW_IS_LIMIT_LIST (self));

  if (self->document == NULL)
    return;

  list = G_LIST_MODEL (limits (self));
  n = g_list_model_get_n_items (list);
  drop_rows_from (self, n);
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (SwLimit) limit = g_list_model_get_item (list, i);
      SwLimitRow *row = i < self->rows->len ? g_ptr_array_index (self->rows, i) : NULL;

      if (row != NULL && sw_limit_row_get_limit (row) != limit)
        {
          drop_rows_from (self, i);
          row = NULL;
        }
      if (row == NULL)
        {
          row = sw_limit_row_new (self->document, limit);
          g_signal_connect_object (row, "removed", G_CALLBACK (row_removed_cb), self, G_CONNECT_SWAPPED);
          gtk_box_append (self->row_box, GTK_WIDGET (row));
          g_ptr_array_add (self->rows, row);
        }
      sw_limit_row_refresh (row);
    }
}
