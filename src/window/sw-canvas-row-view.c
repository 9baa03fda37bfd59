/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A list view makes its rows before it knows what they will show; this one widget shows every kind. */
#include "config.h"

#include "sw-canvas-item-view.h"
#include "sw-canvas-row-view.h"
#include "sw-canvas-section-view.h"

struct _SwCanvasRowView
{
  GtkWidget parent_instance;

  SwDocument *document;
  SwPictures *pictures;
  SwCanvasRow *row;
  gulong changed_handler;
  GtkWidget *item_view;    /* made when first needed */
  GtkWidget *section_view; /* likewise */
};

G_DEFINE_FINAL_TYPE (SwCanvasRowView, sw_canvas_row_view, GTK_TYPE_WIDGET)

static void
show_section (SwCanvasRowView *self)
{
  if (self->section_view == NULL)
    {
      self->section_view = sw_canvas_section_view_new (self->document);
      gtk_widget_set_parent (self->section_view, GTK_WIDGET (self));
    }
  sw_canvas_section_view_show_row (SW_CANVAS_SECTION_VIEW (self->section_view), self->row);
}

static void
show_item (SwCanvasRowView *self)
{
  if (self->item_view == NULL)
    {
      self->item_view = sw_canvas_item_view_new (self->pictures);
      gtk_widget_set_parent (self->item_view, GTK_WIDGET (self));
    }
  sw_canvas_item_view_show_row (SW_CANVAS_ITEM_VIEW (self->item_view), self->row);
}

/* The row's name belongs to the widget that takes the focus: the list's own, around this one. */
static void
name_list_row (SwCanvasRowView *self)
{
  GtkWidget *list_row = gtk_widget_get_parent (GTK_WIDGET (self));
  const SwCanvasFace *face = sw_canvas_row_get_face (self->row);

  if (list_row != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (list_row), GTK_ACCESSIBLE_PROPERTY_LABEL, face->label,
                                    GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, face->description, -1);
}

static void
row_changed_cb (SwCanvasRowView *self)
{
  gboolean is_section = sw_canvas_row_get_kind (self->row) == SW_CANVAS_ROW_SECTION;

  if (is_section)
    show_section (self);
  else
    show_item (self);
  if (self->section_view != NULL)
    gtk_widget_set_visible (self->section_view, is_section);
  if (self->item_view != NULL)
    gtk_widget_set_visible (self->item_view, !is_section);
  name_list_row (self);
}

static void
sw_canvas_row_view_dispose (GObject *object)
{
  SwCanvasRowView *self = SW_CANVAS_ROW_VIEW (object);

  if (self->row != NULL)
    g_clear_signal_handler (&self->changed_handler, self->row);
  g_clear_object (&self->row);
  g_clear_pointer (&self->item_view, gtk_widget_unparent);
  g_clear_pointer (&self->section_view, gtk_widget_unparent);
  g_clear_object (&self->pictures);
  g_clear_object (&self->document);

  G_OBJECT_CLASS (sw_canvas_row_view_parent_class)->dispose (object);
}

static void
sw_canvas_row_view_class_init (SwCanvasRowViewClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_canvas_row_view_dispose;

  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "canvas-row");
}

static void
sw_canvas_row_view_init (SwCanvasRowView *self)
{
  (void) self;
}

/**
 * sw_canvas_row_view_new:
 * @document: the document whose rows it will show
 * @pictures: (nullable): where figures come from
 *
 * Returns: (transfer floating): a view that shows no row yet
 */
GtkWidget *
sw_canvas_row_view_new (SwDocument *document,
                        SwPictures *pictures)
{
  SwCanvasRowView *self;

  g_return_val_if_fail (SW_IS_DOCUMENT (document), NULL);

  self = g_object_new (SW_TYPE_CANVAS_ROW_VIEW, NULL);
  self->document = g_object_ref (document);
  g_set_object (&self->pictures, pictures);
  return GTK_WIDGET (self);
}

/**
 * sw_canvas_row_view_set_row:
 * @row: (nullable): what to show; NULL lets go of the row shown
 */
void
sw_canvas_row_view_set_row (SwCanvasRowView *self,
                            SwCanvasRow     *row)
{
  g_return_if_fail (SW_IS_CANVAS_ROW_VIEW (self));

  if (self->row == row)
    return;

  sw_canvas_row_view_set_drop_mark (self, SW_DROP_MARK_NONE, FALSE);
  if (self->row != NULL)
    g_clear_signal_handler (&self->changed_handler, self->row);
  g_set_object (&self->row, row);
  if (row == NULL)
    return;

  self->changed_handler = g_signal_connect_swapped (row, "changed", G_CALLBACK (row_changed_cb), self);
  row_changed_cb (self);
}

/**
 * sw_canvas_row_view_get_row:
 *
 * Returns: (transfer none) (nullable): the row shown
 */
SwCanvasRow *
sw_canvas_row_view_get_row (SwCanvasRowView *self)
{
  g_return_val_if_fail (SW_IS_CANVAS_ROW_VIEW (self), NULL);
  return self->row;
}

/**
 * sw_canvas_row_view_set_drop_mark:
 * @mark: where the gap is
 * @in_circuit: whether the gap is one between the members of a circuit
 */
void
sw_canvas_row_view_set_drop_mark (SwCanvasRowView *self,
                                  SwDropMark       mark,
                                  gboolean         in_circuit)
{
  static const char *const classes[] = { NULL, "drop-above", "drop-below", "drop-into" };
  GtkWidget *widget;

  g_return_if_fail (SW_IS_CANVAS_ROW_VIEW (self));

  widget = GTK_WIDGET (self);
  for (gsize i = 1; i < G_N_ELEMENTS (classes); i++)
    gtk_widget_remove_css_class (widget, classes[i]);
  gtk_widget_remove_css_class (widget, "in-circuit");
  if (mark != SW_DROP_MARK_NONE)
    gtk_widget_add_css_class (widget, classes[mark]);
  if (in_circuit)
    gtk_widget_add_css_class (widget, "in-circuit");
}

/**
 * sw_canvas_row_view_edit_title:
 *
 * Puts the cursor into the title, on a section's header.
 */
void
sw_canvas_row_view_edit_title (SwCanvasRowView *self)
{
  g_return_if_fail (SW_IS_CANVAS_ROW_VIEW (self));

  if (self->section_view != NULL && gtk_widget_get_visible (self->section_view))
    sw_canvas_section_view_edit_title (SW_CANVAS_SECTION_VIEW (self->section_view));
}
