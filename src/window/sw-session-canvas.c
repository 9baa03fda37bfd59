/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where the therapist sees the session whole and puts it in order. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-canvas-section-view.h"
#include "sw-session-canvas-private.h"
#include "sw-shortcuts.h"
#include "sw-wrap-box.h"

/* From this width on there is room for larger figures, to be seen across the desk. */
#define WIDE_PX 540.0

G_DEFINE_FINAL_TYPE (SwSessionCanvas, sw_session_canvas, GTK_TYPE_WIDGET)

static gboolean
width_settled_cb (gpointer data)
{
  SwSessionCanvas *self = data;
  double width = gtk_adjustment_get_page_size (gtk_scrolled_window_get_hadjustment (self->scroller));

  self->width_idle = 0;
  if (width >= WIDE_PX)
    gtk_widget_add_css_class (GTK_WIDGET (self->list), "wide");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->list), "wide");
  return G_SOURCE_REMOVE;
}

/* Comes while sizes are being given out, when none may be asked for. */
static void
width_changed_cb (SwSessionCanvas *self)
{
  if (self->width_idle == 0)
    self->width_idle = g_idle_add (width_settled_cb, self);
}

/* The widget of the list that takes the focus for a row. */
static GtkWidget *
list_row_of (SwSessionCanvas *self,
             gpointer         object)
{
  guint position = sw_canvas_model_find (self->model, object);
  SwCanvasRow *row = sw_canvas_model_get_row (self->model, position);
  GtkWidget *view = row != NULL ? g_hash_table_lookup (self->views, row) : NULL;

  return view != NULL ? gtk_widget_get_parent (view) : NULL;
}

static GtkWidget *
find_focus (SwSessionCanvas *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  return root != NULL ? gtk_root_get_focus (root) : NULL;
}

static gboolean
list_has_focus (SwSessionCanvas *self)
{
  GtkWidget *focus = find_focus (self);

  return focus != NULL && (focus == GTK_WIDGET (self->list) || gtk_widget_is_ancestor (focus, GTK_WIDGET (self->list)));
}

/* The row view that holds the focus, by itself or in one of its controls. */
static SwCanvasRowView *
find_focused_view (SwSessionCanvas *self)
{
  GtkWidget *focus = find_focus (self);
  GHashTableIter iter;
  gpointer view;

  if (focus == NULL)
    return NULL;

  g_hash_table_iter_init (&iter, self->views);
  while (g_hash_table_iter_next (&iter, NULL, &view))
    if (gtk_widget_get_parent (view) == focus || gtk_widget_is_ancestor (focus, view))
      return view;

  return NULL;
}

/* The chosen item that stands lowest. */
static SwItem *
find_last_chosen (SwSessionCanvas *self)
{
  for (guint i = g_list_model_get_n_items (G_LIST_MODEL (self->model)); i > 0; i--)
    if (gtk_selection_model_is_selected (GTK_SELECTION_MODEL (self->model), i - 1))
      return sw_canvas_row_get_item (sw_canvas_model_get_row (self->model, i - 1));

  return NULL;
}

static void
reveal_now (SwSessionCanvas *self)
{
  SwItem *item = find_last_chosen (self);
  SwCanvasRowView *focused = find_focused_view (self);
  SwItem *focused_item = NULL;
  GtkWidget *list_row;

  if (item == NULL)
    return;

  if (focused != NULL && sw_canvas_row_view_get_row (focused) != NULL)
    focused_item = sw_canvas_row_get_item (sw_canvas_row_view_get_row (focused));
  if (focused_item != NULL && g_ptr_array_find (sw_document_get_chosen (self->document), focused_item, NULL))
    item = focused_item;

  gtk_widget_activate_action (GTK_WIDGET (self->list), "list.scroll-to-item", "u",
                              sw_canvas_model_find (self->model, item));
  list_row = list_row_of (self, item);
  if (self->focus_wanted && item != focused_item && list_row != NULL)
    gtk_widget_grab_focus (list_row);
}

static gboolean
reveal_tick_cb (GtkWidget     *widget,
                GdkFrameClock *clock,
                gpointer       data)
{
  SwSessionCanvas *self = SW_SESSION_CANVAS (widget);

  (void) clock;
  (void) data;
  if (self->reveal_frames-- > 0)
    return G_SOURCE_CONTINUE;

  self->reveal_tick = 0;
  reveal_now (self);
  self->focus_wanted = FALSE;
  return G_SOURCE_REMOVE;
}

/**
 * sw_session_canvas_reveal_chosen:
 * @focus: whether a chosen row shall also get the focus
 *
 * Scrolls as little as needed so that what is chosen can be seen, once new rows have their sizes.
 */
void
sw_session_canvas_reveal_chosen (SwSessionCanvas *self,
                                 gboolean         focus)
{
  self->focus_wanted |= focus;
  self->reveal_frames = 1;
  if (self->reveal_tick == 0)
    self->reveal_tick = gtk_widget_add_tick_callback (GTK_WIDGET (self), reveal_tick_cb, NULL, NULL);
}

/* Runs before the rows change: a row that goes takes the focus with it. */
static void
before_changed_cb (SwSessionCanvas *self)
{
  if (list_has_focus (self) && !GTK_IS_TEXT (find_focus (self)))
    self->focus_wanted = TRUE;
}

/* A list view keeps one row, its anchor, where it is on the screen, by default the one with the focus. When that
 * is the one being moved, everything else would run past it; so a row that stays is made the anchor first. */
static void
rows_about_to_change_cb (SwSessionCanvas *self,
                         guint            position,
                         guint            n)
{
  double height = gtk_widget_get_height (GTK_WIDGET (self->list));
  guint anchor = GTK_INVALID_LIST_POSITION;
  graphene_rect_t bounds;

  for (double y = 1.0; y < height; y = bounds.origin.y + bounds.size.height + 1.0)
    {
      SwCanvasRowView *view = sw_session_canvas_find_view_at (self, 20.0, y);
      SwCanvasRow *row = view != NULL ? sw_canvas_row_view_get_row (view) : NULL;
      guint here;

      if (row == NULL || !gtk_widget_compute_bounds (GTK_WIDGET (view), GTK_WIDGET (self->list), &bounds))
        break;
      here = sw_canvas_model_find_row (self->model, row);
      if (here == GTK_INVALID_LIST_POSITION || bounds.origin.y < 0.0f
          || gtk_selection_model_is_selected (GTK_SELECTION_MODEL (self->model), here))
        continue;
      anchor = here;
      if (here < position || here >= position + n)
        break;
    }

  if (anchor != GTK_INVALID_LIST_POSITION)
    gtk_widget_activate_action (GTK_WIDGET (self->list), "list.scroll-to-item", "u", anchor);
}

static void
refresh_pages (SwSessionCanvas *self)
{
  gboolean has_session = sw_document_get_session (self->document) != NULL;

  gtk_stack_set_visible_child_name (self->stack, has_session ? "session" : "nothing");
}

static void
document_changed_cb (SwSessionCanvas *self)
{
  refresh_pages (self);
  sw_session_canvas_refresh_head (self);
  if (self->focus_wanted)
    sw_session_canvas_reveal_chosen (self, TRUE);
}

static void
chosen_changed_cb (SwSessionCanvas *self)
{
  sw_session_canvas_reveal_chosen (self, list_has_focus (self) && !GTK_IS_TEXT (find_focus (self)));
}

/* The context menu */

static void
open_menu (SwSessionCanvas *self,
           SwCanvasRowView *view,
           double           x,
           double           y)
{
  SwCanvasRow *row = sw_canvas_row_view_get_row (view);
  SwItem *item = row != NULL ? sw_canvas_row_get_item (row) : NULL;
  g_autoptr (GMenuModel) menu = NULL;
  graphene_point_t point;

  if (row == NULL || sw_canvas_row_get_kind (row) == SW_CANVAS_ROW_EMPTY
      || !gtk_widget_compute_point (GTK_WIDGET (view), GTK_WIDGET (self), &GRAPHENE_POINT_INIT ((float) x, (float) y),
                                    &point))
    return;

  if (item == NULL)
    menu = sw_canvas_section_menu_new (self->document, sw_canvas_row_get_section (row));
  else
    menu = g_object_ref (self->item_menu);
  if (item != NULL && !g_ptr_array_find (sw_document_get_chosen (self->document), item, NULL))
    sw_document_choose_item (self->document, item);

  if (self->popover == NULL)
    {
      self->popover = gtk_popover_menu_new_from_model (menu);
      gtk_popover_set_has_arrow (GTK_POPOVER (self->popover), FALSE);
      gtk_widget_set_halign (self->popover, GTK_ALIGN_START);
      gtk_widget_set_parent (self->popover, GTK_WIDGET (self));
      gtk_accessible_update_property (GTK_ACCESSIBLE (self->popover), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                      _ ("What can be done here"), -1);
    }
  gtk_popover_menu_set_menu_model (GTK_POPOVER_MENU (self->popover), menu);
  gtk_popover_set_pointing_to (GTK_POPOVER (self->popover),
                               &(GdkRectangle){ (int) point.x, (int) point.y, 1, 1 });
  gtk_popover_popup (GTK_POPOVER (self->popover));
}

/* The row's menu comes before those of its parts, but not before that of a title that is being typed. */
static void
secondary_pressed_cb (GtkGesture *gesture,
                      int         n_press,
                      double      x,
                      double      y,
                      gpointer    data)
{
  GtkWidget *focus = find_focus (data);
  GtkWidget *view = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (gesture));
  gboolean typing = focus != NULL && GTK_IS_TEXT (focus) && gtk_widget_is_ancestor (focus, view);

  (void) n_press;
  (void) x;
  (void) y;
  gtk_gesture_set_state (gesture, typing ? GTK_EVENT_SEQUENCE_DENIED : GTK_EVENT_SEQUENCE_CLAIMED);
}

/* Not when the button goes down: GTK 4.8 warns of a broken active state when it is released over the popover. */
static void
secondary_released_cb (GtkGestureClick *gesture,
                       int              n_press,
                       double           x,
                       double           y,
                       gpointer         data)
{
  (void) n_press;
  open_menu (data, SW_CANVAS_ROW_VIEW (gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (gesture))), x, y);
}

static void
context_menu_activated_cb (GSimpleAction *action,
                           GVariant      *parameter,
                           gpointer       data)
{
  SwSessionCanvas *self = data;
  SwCanvasRowView *view = find_focused_view (self);

  (void) action;
  (void) parameter;
  if (view != NULL)
    open_menu (self, view, 120.0, gtk_widget_get_height (GTK_WIDGET (view)) / 2.0);
}

static void
rename_session_activated_cb (GSimpleAction *action,
                             GVariant      *parameter,
                             gpointer       data)
{
  (void) action;
  (void) parameter;
  gtk_widget_grab_focus (GTK_WIDGET (SW_SESSION_CANVAS (data)->title));
}

static void
rename_section_activated_cb (GSimpleAction *action,
                             GVariant      *parameter,
                             gpointer       data)
{
  SwSessionCanvas *self = data;
  GListModel *sections = G_LIST_MODEL (sw_session_get_sections (sw_document_get_session (self->document)));
  g_autoptr (SwSection) section = g_list_model_get_item (sections, (guint) g_variant_get_int32 (parameter));
  SwCanvasRow *row;
  SwCanvasRowView *view;

  (void) action;
  if (section == NULL)
    return;

  row = sw_canvas_model_get_row (self->model, sw_canvas_model_find (self->model, section));
  view = row != NULL ? g_hash_table_lookup (self->views, row) : NULL;
  if (view != NULL)
    sw_canvas_row_view_edit_title (view);
}

static const GActionEntry entries[] = {
  { .name = "context-menu", .activate = context_menu_activated_cb },
  { .name = "rename-session", .activate = rename_session_activated_cb },
  { .name = "rename-section", .activate = rename_section_activated_cb, .parameter_type = "i" },
};

/* Rows of the list */

static void
setup_cb (SwSessionCanvas *self,
          GtkListItem     *list_item)
{
  GtkWidget *view = sw_canvas_row_view_new (self->document, self->pictures);
  GtkGesture *secondary = gtk_gesture_click_new ();

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (secondary), GDK_BUTTON_SECONDARY);
  gtk_event_controller_set_propagation_phase (GTK_EVENT_CONTROLLER (secondary), GTK_PHASE_CAPTURE);
  g_signal_connect (secondary, "pressed", G_CALLBACK (secondary_pressed_cb), self);
  g_signal_connect (secondary, "released", G_CALLBACK (secondary_released_cb), self);
  gtk_widget_add_controller (view, GTK_EVENT_CONTROLLER (secondary));
  sw_session_canvas_add_drag_source (self, SW_CANVAS_ROW_VIEW (view));
  gtk_list_item_set_child (list_item, view);
}

static void
bind_cb (SwSessionCanvas *self,
         GtkListItem     *list_item)
{
  SwCanvasRow *row = gtk_list_item_get_item (list_item);
  GtkWidget *view = gtk_list_item_get_child (list_item);

  gtk_list_item_set_selectable (list_item, sw_canvas_row_get_item (row) != NULL);
  gtk_list_item_set_activatable (list_item, FALSE);
  g_hash_table_insert (self->views, row, view);
  sw_canvas_row_view_set_row (SW_CANVAS_ROW_VIEW (view), row);
}

static void
unbind_cb (SwSessionCanvas *self,
           GtkListItem     *list_item)
{
  SwCanvasRow *row = gtk_list_item_get_item (list_item);
  SwCanvasRowView *view = SW_CANVAS_ROW_VIEW (gtk_list_item_get_child (list_item));

  if (g_hash_table_lookup (self->views, row) == view)
    g_hash_table_remove (self->views, row);
  sw_session_canvas_forget_mark (self, view);
  sw_canvas_row_view_set_row (view, NULL);
}

static GtkListItemFactory *
factory_new (SwSessionCanvas *self)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  g_signal_connect_swapped (factory, "setup", G_CALLBACK (setup_cb), self);
  g_signal_connect_swapped (factory, "bind", G_CALLBACK (bind_cb), self);
  g_signal_connect_swapped (factory, "unbind", G_CALLBACK (unbind_cb), self);
  return factory;
}

static void
let_go_of_document (SwSessionCanvas *self)
{
  sw_session_canvas_stop_drops (self);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  if (self->list != NULL)
    {
      gtk_list_view_set_model (self->list, NULL);
      gtk_list_view_set_factory (self->list, NULL);
    }
  g_clear_object (&self->model);
  g_clear_object (&self->document);
}

static gboolean
sw_session_canvas_grab_focus (GtkWidget *widget)
{
  SwSessionCanvas *self = SW_SESSION_CANVAS (widget);
  SwItem *item = self->model != NULL ? find_last_chosen (self) : NULL;
  GtkWidget *list_row = item != NULL ? list_row_of (self, item) : NULL;

  return gtk_widget_grab_focus (list_row != NULL ? list_row : GTK_WIDGET (self->list));
}

static void
sw_session_canvas_dispose (GObject *object)
{
  SwSessionCanvas *self = SW_SESSION_CANVAS (object);
  GtkWidget *child;

  if (self->reveal_tick != 0)
    {
      gtk_widget_remove_tick_callback (GTK_WIDGET (self), self->reveal_tick);
      self->reveal_tick = 0;
    }
  g_clear_handle_id (&self->width_idle, g_source_remove);
  let_go_of_document (self);
  self->list = NULL;
  self->popover = NULL;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->pictures);

  G_OBJECT_CLASS (sw_session_canvas_parent_class)->dispose (object);
}

static void
sw_session_canvas_finalize (GObject *object)
{
  g_hash_table_unref (SW_SESSION_CANVAS (object)->views);

  G_OBJECT_CLASS (sw_session_canvas_parent_class)->finalize (object);
}

static void
sw_session_canvas_class_init (SwSessionCanvasClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  object_class->dispose = sw_session_canvas_dispose;
  object_class->finalize = sw_session_canvas_finalize;
  widget_class->grab_focus = sw_session_canvas_grab_focus;

  g_type_ensure (SW_TYPE_WRAP_BOX);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-session-canvas.ui");
  gtk_widget_class_bind_template_child (widget_class, SwSessionCanvas, title);
  gtk_widget_class_bind_template_child (widget_class, SwSessionCanvas, time);
  gtk_widget_class_bind_template_child (widget_class, SwSessionCanvas, sessions);
  gtk_widget_class_bind_template_child (widget_class, SwSessionCanvas, days);
  gtk_widget_class_bind_template_child (widget_class, SwSessionCanvas, stack);
  gtk_widget_class_bind_template_child (widget_class, SwSessionCanvas, scroller);
  gtk_widget_class_bind_template_child (widget_class, SwSessionCanvas, list);
  gtk_widget_class_bind_template_child (widget_class, SwSessionCanvas, item_menu);
  gtk_widget_class_bind_template_callback_full (widget_class, "title_changed_cb",
                                                G_CALLBACK (sw_session_canvas_title_changed_cb));
  gtk_widget_class_bind_template_callback_full (widget_class, "title_left_cb",
                                                G_CALLBACK (sw_session_canvas_title_left_cb));
  gtk_widget_class_set_css_name (widget_class, "session-canvas");
}

static void
sw_session_canvas_init (SwSessionCanvas *self)
{
  g_autoptr (GSimpleActionGroup) actions = g_simple_action_group_new ();

  self->views = g_hash_table_new (NULL, NULL);
  gtk_widget_init_template (GTK_WIDGET (self));
  g_action_map_add_action_entries (G_ACTION_MAP (actions), entries, G_N_ELEMENTS (entries), self);
  gtk_widget_insert_action_group (GTK_WIDGET (self), "canvas", G_ACTION_GROUP (actions));
  sw_session_canvas_init_head (self);
  sw_session_canvas_init_drops (self);
  g_signal_connect_object (gtk_scrolled_window_get_hadjustment (self->scroller), "changed",
                           G_CALLBACK (width_changed_cb), self, G_CONNECT_SWAPPED);
  sw_shortcuts_add_to_widget (GTK_WIDGET (self->list), SW_SHORTCUT_CANVAS);
}

/**
 * sw_session_canvas_set_document:
 * @document: (nullable): what to show
 */
void
sw_session_canvas_set_document (SwSessionCanvas *self,
                                SwDocument      *document)
{
  g_autoptr (GtkListItemFactory) factory = NULL;

  g_return_if_fail (SW_IS_SESSION_CANVAS (self));

  if (self->document == document)
    return;

  let_go_of_document (self);
  if (document == NULL)
    return;

  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (before_changed_cb), self, G_CONNECT_SWAPPED);
  self->model = sw_canvas_model_new (document);
  g_signal_connect_object (self->model, "rows-about-to-change", G_CALLBACK (rows_about_to_change_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "changed", G_CALLBACK (document_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "chosen-changed", G_CALLBACK (chosen_changed_cb), self, G_CONNECT_SWAPPED);

  factory = factory_new (self);
  gtk_list_view_set_factory (self->list, factory);
  gtk_list_view_set_model (self->list, GTK_SELECTION_MODEL (self->model));
  document_changed_cb (self);
}

/**
 * sw_session_canvas_set_pictures:
 * @pictures: where figures come from; to be set before a document
 */
void
sw_session_canvas_set_pictures (SwSessionCanvas *self,
                                SwPictures      *pictures)
{
  g_return_if_fail (SW_IS_SESSION_CANVAS (self));
  g_set_object (&self->pictures, pictures);
}
