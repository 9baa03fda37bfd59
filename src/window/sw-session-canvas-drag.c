/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Dragging over the canvas: from which row something is taken, the line at the gap it would go into, and scrolling near
 * the edges meanwhile. A drop is one edit. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-canvas-drag.h"
#include "sw-edit-labels.h"
#include "sw-edits.h"
#include "sw-session-canvas-private.h"

#define EDGE_PX 56.0       /* how near to an edge scrolling begins */
#define SPEED_PX_S 900.0   /* at the very edge */

/* Taking */

static SwCanvasDrag *
parcel_of (SwSessionCanvas *self,
           SwCanvasRow     *row)
{
  g_autoptr (GPtrArray) objects = g_ptr_array_new ();
  SwItem *item = sw_canvas_row_get_item (row);

  if (sw_canvas_row_get_kind (row) == SW_CANVAS_ROW_EMPTY)
    return NULL;

  if (item == NULL)
    {
      g_ptr_array_add (objects, sw_canvas_row_get_section (row));
    }
  else if (!g_ptr_array_find (sw_document_get_chosen (self->document), item, NULL))
    {
      g_ptr_array_add (objects, item);
    }
  else
    {
      for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (self->model)); i++)
        if (gtk_selection_model_is_selected (GTK_SELECTION_MODEL (self->model), i))
          g_ptr_array_add (objects, sw_canvas_row_get_item (sw_canvas_model_get_row (self->model, i)));
    }

  return sw_canvas_drag_new (sw_document_get_programme (self->document), objects);
}

static GdkContentProvider *
prepare_cb (GtkDragSource *source,
            double         x,
            double         y,
            gpointer       data)
{
  SwSessionCanvas *self = data;
  GtkWidget *view = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (source));
  SwCanvasRow *row = sw_canvas_row_view_get_row (SW_CANVAS_ROW_VIEW (view));
  g_autoptr (SwCanvasDrag) parcel = row != NULL ? parcel_of (self, row) : NULL;

  (void) x;
  (void) y;
  return parcel != NULL ? gdk_content_provider_new_typed (SW_TYPE_CANVAS_DRAG, parcel) : NULL;
}

/* A picture of @words on a plate, in the colours of @widget turned round. */
static GdkPaintable *
plate_new (GtkWidget  *widget,
           const char *words)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (widget, words);
  g_autoptr (GtkSnapshot) snapshot = gtk_snapshot_new ();
  GdkRGBA plate, text = { 1.0f, 1.0f, 1.0f, 1.0f };
  GskRoundedRect outline;
  int width, height;

  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &plate);
  if (plate.red + plate.green + plate.blue > 1.5f)
    text = (GdkRGBA){ 0.0f, 0.0f, 0.0f, 1.0f };
  pango_layout_get_pixel_size (layout, &width, &height);

  gsk_rounded_rect_init_from_rect (&outline,
                                   &GRAPHENE_RECT_INIT (0.0f, 0.0f, (float) width + 24.0f, (float) height + 16.0f),
                                   8.0f);
  gtk_snapshot_push_rounded_clip (snapshot, &outline);
  gtk_snapshot_append_color (snapshot, &plate, &outline.bounds);
  gtk_snapshot_pop (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT (12.0f, 8.0f));
  gtk_snapshot_append_layout (snapshot, layout, &text);

  return gtk_snapshot_free_to_paintable (g_steal_pointer (&snapshot), NULL);
}

/* What is under the pointer while dragging is its name: a picture of the row would hide the gaps. */
static void
drag_begin_cb (GtkDragSource *source,
               GdkDrag       *drag,
               gpointer       data)
{
  GdkContentProvider *content = gdk_drag_get_content (drag);
  g_auto (GValue) value = G_VALUE_INIT;
  g_autoptr (GdkPaintable) plate = NULL;
  g_autofree char *words = NULL;
  GPtrArray *objects;

  (void) data;
  g_value_init (&value, SW_TYPE_CANVAS_DRAG);
  if (content == NULL || !gdk_content_provider_get_value (content, &value, NULL))
    return;

  objects = sw_canvas_drag_get_objects (g_value_get_object (&value));
  if (objects->len == 1)
    words = sw_edit_object_name (objects->pdata[0]);
  else
    words = g_strdup_printf (ngettext ("%u item", "%u items", objects->len), objects->len);
  plate = plate_new (gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (source)), words);
  gtk_drag_source_set_icon (source, plate, -12, -8);
}

/**
 * sw_session_canvas_add_drag_source:
 * @view: a row view of the list
 *
 * Lets what the row stands for be dragged, together with all chosen items if it is one of them.
 */
void
sw_session_canvas_add_drag_source (SwSessionCanvas *self,
                                   SwCanvasRowView *view)
{
  GtkDragSource *source = gtk_drag_source_new ();

  gtk_drag_source_set_actions (source, GDK_ACTION_MOVE | GDK_ACTION_COPY);
  g_signal_connect (source, "prepare", G_CALLBACK (prepare_cb), self);
  g_signal_connect (source, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (view), GTK_EVENT_CONTROLLER (source));
}

/* Showing the gap */

static void
clear_mark (SwSessionCanvas *self)
{
  if (self->marked != NULL)
    sw_canvas_row_view_set_drop_mark (self->marked, SW_DROP_MARK_NONE, FALSE);
  self->marked = NULL;
  gtk_widget_remove_css_class (GTK_WIDGET (self->list), "drop-end");
}

/**
 * sw_session_canvas_forget_mark:
 * @view: a row view that is about to show another row, or none
 */
void
sw_session_canvas_forget_mark (SwSessionCanvas *self,
                               SwCanvasRowView *view)
{
  if (self->marked == view)
    self->marked = NULL;
}

static void
show_mark (SwSessionCanvas *self,
           const SwCanvasGap       *gap)
{
  clear_mark (self);
  if (gap->view != NULL)
    sw_canvas_row_view_set_drop_mark (gap->view, gap->mark, gap->in_circuit);
  else
    gtk_widget_add_css_class (GTK_WIDGET (self->list), "drop-end");
  self->marked = gap->view;
}

/* Shows the gap at the pointer; FALSE when what is dragged cannot be dropped there. */
static gboolean
update_mark (SwSessionCanvas *self)
{
  SwCanvasGap gap;

  if (!sw_session_canvas_find_gap (self, gtk_drop_target_get_value (self->drop_target), self->drag_x, self->drag_y, &gap))
    {
      clear_mark (self);
      return FALSE;
    }

  show_mark (self, &gap);
  return TRUE;
}

/* Holding Ctrl takes moving out of what the drag allows. */
static gboolean
wants_copy (GtkDropTarget *target)
{
  GdkDrop *drop = gtk_drop_target_get_current_drop (target);

  return drop != NULL && (gdk_drop_get_actions (drop) & GDK_ACTION_MOVE) == 0;
}

static GdkDragAction
drop_motion_cb (GtkDropTarget *target,
                double         x,
                double         y,
                gpointer       data)
{
  SwSessionCanvas *self = data;
  const GValue *value = gtk_drop_target_get_value (target);

  self->drag_x = x;
  self->drag_y = y;
  if (!update_mark (self))
    return 0;
  if (value != NULL && G_VALUE_HOLDS (value, SW_TYPE_CANVAS_DRAG))
    return wants_copy (target) ? GDK_ACTION_COPY : GDK_ACTION_MOVE;
  return GDK_ACTION_COPY;
}

/* Dropping */

static void
drop_exercise (SwSessionCanvas *self,
               SwExercise      *exercise,
               const SwCanvasGap       *gap)
{
  SwProgramme *programme = sw_document_get_programme (self->document);
  g_autoptr (SwItem) item = sw_item_new_for_exercise (sw_programme_own_snapshot (programme, exercise), NULL);
  g_autoptr (GPtrArray) items = g_ptr_array_new ();
  g_autofree char *label = NULL;

  g_ptr_array_add (items, item);
  label = sw_edit_label (SW_EDIT_VERB_ADD, items);
  sw_edit_insert (sw_document_get_history (self->document), gap->list, gap->position, items, label);
  sw_document_choose (self->document, items);
}

static void
drop_parcel (SwSessionCanvas *self,
             SwCanvasDrag    *parcel,
             const SwCanvasGap       *gap,
             gboolean         copy)
{
  SwHistory *history = sw_document_get_history (self->document);
  SwProgramme *programme = sw_document_get_programme (self->document);
  g_autoptr (GPtrArray) dropped = NULL;
  g_autofree char *label = NULL;

  if (copy || sw_canvas_drag_get_programme (parcel) != programme)
    {
      dropped = sw_canvas_drag_dup_copies (parcel, programme);
      label = sw_edit_label (SW_EDIT_VERB_DUPLICATE, dropped);
      sw_edit_insert (history, gap->list, gap->position, dropped, label);
    }
  else
    {
      dropped = g_ptr_array_ref (sw_canvas_drag_get_objects (parcel));
      label = sw_edit_label (SW_EDIT_VERB_MOVE, dropped);
      sw_edit_move (history, programme, dropped, gap->list, gap->position, label);
    }

  if (!sw_canvas_drag_has_section (parcel))
    sw_document_choose (self->document, dropped);
}

static void
stop_scrolling (SwSessionCanvas *self)
{
  if (self->scroll_tick != 0)
    gtk_widget_remove_tick_callback (GTK_WIDGET (self->scroller), self->scroll_tick);
  self->scroll_tick = 0;
}

static gboolean
drop_cb (GtkDropTarget *target,
         const GValue  *value,
         double         x,
         double         y,
         gpointer       data)
{
  SwSessionCanvas *self = data;
  gboolean copy = wants_copy (target);
  SwCanvasGap gap;

  clear_mark (self);
  stop_scrolling (self);
  if (!sw_session_canvas_find_gap (self, value, x, y, &gap))
    return FALSE;

  if (G_VALUE_HOLDS (value, SW_TYPE_EXERCISE))
    drop_exercise (self, g_value_get_object (value), &gap);
  else
    drop_parcel (self, g_value_get_object (value), &gap, copy);
  sw_session_canvas_reveal_chosen (self, TRUE);
  return TRUE;
}

static void
drop_leave_cb (SwSessionCanvas *self)
{
  clear_mark (self);
}

/* Scrolling near the edges */

/* -1 at the upper edge, 1 at the lower, 0 between. */
static double
pull_at (SwSessionCanvas *self,
         double           y)
{
  double height = gtk_widget_get_height (GTK_WIDGET (self->list));
  double zone = MIN (EDGE_PX, height / 4.0);

  if (y < zone)
    return -CLAMP ((zone - y) / zone, 0.0, 1.0);
  if (y > height - zone)
    return CLAMP ((y - (height - zone)) / zone, 0.0, 1.0);
  return 0.0;
}

static gboolean
scroll_tick_cb (GtkWidget     *widget,
                GdkFrameClock *clock,
                gpointer       data)
{
  SwSessionCanvas *self = data;
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (self->scroller);
  gint64 now = gdk_frame_clock_get_frame_time (clock);
  double elapsed_s = self->scrolled_us == 0 ? 0.0 : (double) (now - self->scrolled_us) / 1e6;
  double before = gtk_adjustment_get_value (adjustment);

  (void) widget;
  self->scrolled_us = now;
  gtk_adjustment_set_value (adjustment,
                            before + pull_at (self, self->drag_y) * SPEED_PX_S * MIN (elapsed_s, 0.1));
  if (gtk_adjustment_get_value (adjustment) != before)
    update_mark (self);
  return G_SOURCE_CONTINUE;
}

static void
hover_enter_cb (SwSessionCanvas *self,
                double           x,
                double           y)
{
  self->drag_x = x;
  self->drag_y = y;
  self->scrolled_us = 0;
  if (self->scroll_tick == 0)
    self->scroll_tick = gtk_widget_add_tick_callback (GTK_WIDGET (self->scroller), scroll_tick_cb, self, NULL);
}

static void
hover_motion_cb (SwSessionCanvas *self,
                 double           x,
                 double           y)
{
  self->drag_x = x;
  self->drag_y = y;
}

/**
 * sw_session_canvas_stop_drops:
 *
 * Ends what a drag over the canvas has begun.
 */
void
sw_session_canvas_stop_drops (SwSessionCanvas *self)
{
  if (self->list == NULL)
    return;

  clear_mark (self);
  stop_scrolling (self);
}

/**
 * sw_session_canvas_init_drops:
 *
 * Makes the list take what is dropped on it.
 */
void
sw_session_canvas_init_drops (SwSessionCanvas *self)
{
  GtkDropTarget *target = gtk_drop_target_new (G_TYPE_INVALID, GDK_ACTION_COPY | GDK_ACTION_MOVE);
  GtkEventController *hover = gtk_drop_controller_motion_new ();
  GType types[] = { SW_TYPE_CANVAS_DRAG, SW_TYPE_EXERCISE };

  gtk_drop_target_set_gtypes (target, types, G_N_ELEMENTS (types));
  gtk_drop_target_set_preload (target, TRUE);
  self->drop_target = target;
  g_signal_connect (target, "enter", G_CALLBACK (drop_motion_cb), self);
  g_signal_connect (target, "motion", G_CALLBACK (drop_motion_cb), self);
  g_signal_connect (target, "drop", G_CALLBACK (drop_cb), self);
  g_signal_connect_swapped (target, "leave", G_CALLBACK (drop_leave_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->list), GTK_EVENT_CONTROLLER (target));

  g_signal_connect_swapped (hover, "enter", G_CALLBACK (hover_enter_cb), self);
  g_signal_connect_swapped (hover, "motion", G_CALLBACK (hover_motion_cb), self);
  g_signal_connect_swapped (hover, "leave", G_CALLBACK (stop_scrolling), self);
  gtk_widget_add_controller (GTK_WIDGET (self->list), hover);
}
