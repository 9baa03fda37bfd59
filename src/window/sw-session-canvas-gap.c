/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Into which gap of the canvas something would go that is dropped at a point. */
#include "config.h"

#include "sw-canvas-drag.h"
#include "sw-session-canvas-private.h"

/**
 * sw_session_canvas_find_view_at:
 * @x: where, in the list's pixels
 * @y: where, in the list's pixels
 *
 * Rows scrolled away keep stale places, so the list is asked what it shows there.
 *
 * Returns: (transfer none) (nullable): the view of the row at that point; NULL below the last row
 */
SwCanvasRowView *
sw_session_canvas_find_view_at (SwSessionCanvas *self,
                                double           x,
                                double           y)
{
  GtkWidget *list = GTK_WIDGET (self->list);
  GtkWidget *widget = gtk_widget_pick (list, x, y, GTK_PICK_DEFAULT);

  while (widget != NULL && widget != list && !SW_IS_CANVAS_ROW_VIEW (widget))
    {
      GtkWidget *child = gtk_widget_get_first_child (widget);

      if (child != NULL && SW_IS_CANVAS_ROW_VIEW (child))
        return SW_CANVAS_ROW_VIEW (child);
      widget = gtk_widget_get_parent (widget);
    }

  return widget != NULL && widget != list ? SW_CANVAS_ROW_VIEW (widget) : NULL;
}

static gboolean
is_upper_half (SwSessionCanvas *self,
               SwCanvasRowView *view,
               double           x,
               double           y)
{
  graphene_point_t point;

  return gtk_widget_compute_point (GTK_WIDGET (self->list), GTK_WIDGET (view),
                                   &GRAPHENE_POINT_INIT ((float) x, (float) y), &point)
         && point.y < (float) gtk_widget_get_height (GTK_WIDGET (view)) / 2.0f;
}

static GListStore *
sections_of (SwSessionCanvas *self)
{
  return sw_session_get_sections (sw_document_get_session (self->document));
}

static guint
length_of (GListStore *list)
{
  return g_list_model_get_n_items (G_LIST_MODEL (list));
}

/* The end of the last section before @index; FALSE when there is none. */
static gboolean
find_end_of_section (SwSessionCanvas *self,
                     guint            index,
                     SwCanvasGap     *gap)
{
  g_autoptr (SwSection) section = NULL;

  if (index == 0)
    return FALSE;

  section = g_list_model_get_item (G_LIST_MODEL (sections_of (self)), index - 1);
  gap->list = sw_section_get_items (section);
  gap->position = length_of (gap->list);
  return TRUE;
}

static gboolean
find_gap_at_header (SwSessionCanvas *self,
                    SwSection       *section,
                    gboolean         upper,
                    SwCanvasGap     *gap)
{
  guint index = 0;

  g_list_store_find (sections_of (self), section, &index);
  gap->mark = SW_DROP_MARK_ABOVE;
  if (upper && find_end_of_section (self, index, gap))
    return TRUE;

  gap->mark = SW_DROP_MARK_BELOW;
  gap->list = sw_section_get_items (section);
  gap->position = 0;
  return TRUE;
}

static gboolean
find_gap_at_row (SwSessionCanvas *self,
                 SwCanvasRow     *row,
                 gboolean         upper,
                 gboolean         has_circuit,
                 SwCanvasGap     *gap)
{
  SwItem *item = sw_canvas_row_get_item (row);
  SwItem *circuit = sw_canvas_row_get_circuit (row);
  SwCanvasRowKind kind = sw_canvas_row_get_kind (row);
  guint position = 0;

  if (kind == SW_CANVAS_ROW_SECTION)
    return find_gap_at_header (self, sw_canvas_row_get_section (row), upper, gap);

  gap->mark = upper ? SW_DROP_MARK_ABOVE : SW_DROP_MARK_BELOW;
  gap->in_circuit = circuit != NULL;
  gap->list = circuit != NULL ? sw_item_get_items (circuit) : sw_section_get_items (sw_canvas_row_get_section (row));
  if (kind == SW_CANVAS_ROW_EMPTY)
    {
      gap->mark = SW_DROP_MARK_INTO;
      gap->position = 0;
    }
  else if (kind == SW_CANVAS_ROW_CIRCUIT && !upper && !has_circuit)
    {
      gap->list = sw_item_get_items (item);
      gap->position = 0;
      gap->in_circuit = TRUE;
    }
  else
    {
      g_list_store_find (gap->list, item, &position);
      gap->position = upper ? position : position + 1;
    }

  return !(gap->in_circuit && has_circuit);
}

/* Sections go between sections only: before or after the one whose rows the pointer is on. */
static gboolean
find_gap_for_section (SwSessionCanvas *self,
                      SwCanvasRowView *view,
                      SwCanvasGap     *gap)
{
  SwSection *section = sw_canvas_row_get_section (sw_canvas_row_view_get_row (view));
  guint header = sw_canvas_model_find (self->model, section);
  guint last = header;
  guint here = header;
  gboolean before;

  for (guint i = header; i < g_list_model_get_n_items (G_LIST_MODEL (self->model)); i++)
    {
      SwCanvasRow *row = sw_canvas_model_get_row (self->model, i);

      if (sw_canvas_row_get_section (row) != section)
        break;
      last = i;
      if (row == sw_canvas_row_view_get_row (view))
        here = i;
    }

  before = here - header <= (last - header) / 2;
  gap->list = sections_of (self);
  g_list_store_find (gap->list, section, &gap->position);
  gap->position += before ? 0 : 1;
  gap->mark = before ? SW_DROP_MARK_ABOVE : SW_DROP_MARK_BELOW;
  gap->view = g_hash_table_lookup (self->views, sw_canvas_model_get_row (self->model, before ? header : last));
  return TRUE;
}

/**
 * sw_session_canvas_find_gap:
 * @value: (nullable): what is dragged; NULL as long as that is not known
 * @x: where, in the list's pixels
 * @y: where, in the list's pixels
 * @gap: (out): where it would go when dropped there
 *
 * Returns: FALSE when it cannot be dropped there
 */
gboolean
sw_session_canvas_find_gap (SwSessionCanvas *self,
                            const GValue    *value,
                            double           x,
                            double           y,
                            SwCanvasGap     *gap)
{
  SwCanvasDrag *parcel = value != NULL && G_VALUE_HOLDS (value, SW_TYPE_CANVAS_DRAG) ? g_value_get_object (value)
                                                                                     : NULL;
  gboolean is_section = parcel != NULL && sw_canvas_drag_has_section (parcel);
  gboolean has_circuit = parcel != NULL && sw_canvas_drag_has_circuit (parcel);
  SwCanvasRowView *view;

  *gap = (SwCanvasGap){ .view = NULL };
  if (self->document == NULL || sw_document_get_session (self->document) == NULL)
    return FALSE;

  view = sw_session_canvas_find_view_at (self, x, y);
  if (view == NULL || sw_canvas_row_view_get_row (view) == NULL)
    {
      if (!is_section)
        return find_end_of_section (self, length_of (sections_of (self)), gap);
      gap->list = sections_of (self);
      gap->position = length_of (gap->list);
      return TRUE;
    }

  gap->view = view;
  if (is_section)
    return find_gap_for_section (self, view, gap);
  return find_gap_at_row (self, sw_canvas_row_view_get_row (view), is_upper_half (self, view, x, y), has_circuit, gap);
}
