/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the client will hold in hand, while the therapist is still choosing. */
#include "config.h"

#include <glib/gi18n.h>
#include <math.h>

#include "sw-pages-button.h"
#include "sw-pages-make.h"
#include "sw-preview-page.h"
#include "sw-preview.h"
#include "sw-shortcuts.h"

/* Fit to width is 1; further out or in than this there is nothing to read or nothing to see. */
#define MIN_ZOOM 0.5
#define MAX_ZOOM 4.0
#define ZOOM_STEP 1.25

/* Desk left and right of a page, and between pages. */
#define MARGIN_PX 12

struct _SwPreview
{
  GtkWidget parent_instance;

  GtkStack *stack;
  GtkWidget *making;
  GtkSpinner *spinner;
  GtkWidget *problem;
  GtkLabel *problem_words;
  GtkWidget *warning;
  GtkLabel *warning_words;
  GtkScrolledWindow *scroller;
  GtkBox *box;
  GtkLabel *count;
  SwPagesButton *plan;

  SwDocument *document;
  gulong chosen_handler;
  SwHandout *handout;
  GCancellable *cancellable; /* of the request under way, or NULL */
  GSimpleActionGroup *actions;
  GPtrArray *pages;          /* SwPreviewPage, in order; unowned */
  gboolean outdated;         /* edits since the last request began */
  gboolean follow;           /* bring the chosen item's page into view as soon as its place is known */
  double zoom;
  guint arrange_idle;
};

G_DEFINE_FINAL_TYPE (SwPreview, sw_preview, GTK_TYPE_WIDGET)

static void
show_page (SwPreview *self,
           GtkWidget *page)
{
  gtk_spinner_set_spinning (self->spinner, page == self->making);
  gtk_stack_set_visible_child (self->stack, page);
}

/* Where @page lies in the scrolled box; FALSE before it has a place. */
static gboolean
find_bounds (SwPreview       *self,
             int              page,
             graphene_rect_t *bounds)
{
  return page >= 0 && (guint) page < self->pages->len
         && gtk_widget_compute_bounds (g_ptr_array_index (self->pages, page), GTK_WIDGET (self->box), bounds)
         && bounds->size.height > 0;
}

static void
update_count (SwPreview *self)
{
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (self->scroller);
  double middle = gtk_adjustment_get_value (adjustment) + gtk_adjustment_get_page_size (adjustment) / 2.0;
  g_autofree char *words = NULL;
  int current = 0;

  if (self->pages->len == 0)
    {
      gtk_label_set_label (self->count, "");
      return;
    }

  for (guint i = 0; i < self->pages->len; i++)
    {
      graphene_rect_t bounds;

      if (find_bounds (self, (int) i, &bounds) && bounds.origin.y <= middle)
        current = (int) i;
    }

  words = g_strdup_printf (_("Page %d of %u"), current + 1, self->pages->len);
  gtk_label_set_label (self->count, words);
}

/* Tells each page whether it can be seen, half a screen more above and below so that scrolling meets ready pages. */
static void
update_near (SwPreview *self)
{
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (self->scroller);
  double size = gtk_adjustment_get_page_size (adjustment);
  double top = gtk_adjustment_get_value (adjustment) - size / 2.0;
  double bottom = gtk_adjustment_get_value (adjustment) + size * 1.5;

  for (guint i = 0; i < self->pages->len; i++)
    {
      graphene_rect_t bounds;
      gboolean near_view = find_bounds (self, (int) i, &bounds) && bounds.origin.y < bottom
                           && bounds.origin.y + bounds.size.height > top;

      sw_preview_page_set_near (g_ptr_array_index (self->pages, i), near_view);
    }
}

/* Scrolls to the page of the chosen item, if that page is not what one looks at already. */
static void
follow_chosen (SwPreview *self)
{
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (self->scroller);
  SwItem *item = self->document != NULL ? sw_document_get_chosen_item (self->document) : NULL;
  double top = gtk_adjustment_get_value (adjustment);
  double bottom = top + gtk_adjustment_get_page_size (adjustment);
  graphene_rect_t bounds;
  double overlap;

  if (!self->follow || self->handout == NULL)
    return;
  if (item == NULL)
    {
      self->follow = FALSE;
      return;
    }
  if (!find_bounds (self, sw_handout_find_page_of_item (self->handout, sw_item_get_id (item)), &bounds))
    return;

  self->follow = FALSE;
  overlap = MIN (bottom, bounds.origin.y + bounds.size.height) - MAX (top, bounds.origin.y);
  if (overlap < MIN (bottom - top, bounds.size.height) * 0.9)
    gtk_adjustment_set_value (adjustment, bounds.origin.y - MARGIN_PX);
}

static void
update_widths (SwPreview *self)
{
  int width = gtk_widget_get_width (GTK_WIDGET (self->scroller)) - 2 * MARGIN_PX;

  if (width <= 0)
    return;

  for (guint i = 0; i < self->pages->len; i++)
    sw_preview_page_set_width (g_ptr_array_index (self->pages, i), MAX ((int) (width * self->zoom + 0.5), 1));
}

static gboolean
arrange_cb (gpointer data)
{
  SwPreview *self = data;

  self->arrange_idle = 0;
  update_widths (self);
  update_near (self);
  update_count (self);
  follow_chosen (self);
  return G_SOURCE_REMOVE;
}

/* The adjustments tell of a new size before the pages have got their places: hence not at once. */
static void
arrange_soon (SwPreview *self)
{
  if (self->arrange_idle == 0)
    self->arrange_idle = g_idle_add_full (GDK_PRIORITY_REDRAW + 1, arrange_cb, self, NULL);
}

static void
chosen_changed_cb (SwPreview *self)
{
  self->follow = TRUE;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    follow_chosen (self);
}

static gboolean
list_has (GListModel *items,
          SwItem     *item)
{
  for (guint i = 0; i < g_list_model_get_n_items (items); i++)
    {
      g_autoptr (SwItem) other = g_list_model_get_item (items, i);

      if (other == item)
        return TRUE;
      if (sw_item_get_kind (other) == SW_ITEM_CIRCUIT && list_has (G_LIST_MODEL (sw_item_get_items (other)), item))
        return TRUE;
    }

  return FALSE;
}

static gboolean
session_has (SwSession *session,
             SwItem    *item)
{
  GListModel *sections = G_LIST_MODEL (sw_session_get_sections (session));

  for (guint i = 0; i < g_list_model_get_n_items (sections); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);

      if (list_has (G_LIST_MODEL (sw_section_get_items (section)), item))
        return TRUE;
    }

  return FALSE;
}

/* Chooses what was clicked, in its session, without moving the pages under the pointer. */
static void
item_pressed_cb (SwPreview  *self,
                 const char *id)
{
  SwProgramme *programme = sw_document_get_programme (self->document);
  GListModel *sessions = G_LIST_MODEL (sw_programme_get_sessions (programme));
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
  SwItem *item = NULL;

  for (guint i = 0; i < items->len && item == NULL; i++)
    if (g_strcmp0 (sw_item_get_id (g_ptr_array_index (items, i)), id) == 0)
      item = g_ptr_array_index (items, i);
  if (item == NULL)
    return;

  g_signal_handler_block (self->document, self->chosen_handler);
  for (guint i = 0; i < g_list_model_get_n_items (sessions); i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (sessions, i);

      if (session_has (session, item))
        sw_document_set_session (self->document, session);
    }
  sw_document_choose_item (self->document, item);
  g_signal_handler_unblock (self->document, self->chosen_handler);
}

/* What is wrong with the pages although they could be made. */
static void
update_warning (SwPreview *self)
{
  g_autofree char *words = self->handout != NULL ? sw_handout_dup_warning (self->handout) : NULL;

  gtk_widget_set_visible (self->warning, words != NULL);
  gtk_label_set_label (self->warning_words, words != NULL ? words : "");
}

static void
show_handout (SwPreview *self)
{
  guint n_pages = (guint) sw_handout_get_n_pages (self->handout);

  while (self->pages->len > n_pages)
    {
      gtk_box_remove (self->box, g_ptr_array_index (self->pages, self->pages->len - 1));
      g_ptr_array_set_size (self->pages, (int) self->pages->len - 1);
    }
  while (self->pages->len < n_pages)
    {
      GtkWidget *page = sw_preview_page_new ();

      g_signal_connect_object (page, "item-pressed", G_CALLBACK (item_pressed_cb), self, G_CONNECT_SWAPPED);
      g_ptr_array_add (self->pages, page);
      gtk_box_append (self->box, page);
    }

  for (guint i = 0; i < n_pages; i++)
    sw_preview_page_set_page (g_ptr_array_index (self->pages, i), self->handout, (int) i);

  show_page (self, GTK_WIDGET (self->scroller));
  update_warning (self);
  update_widths (self);
  arrange_soon (self);
}

static void
forget_handout (SwPreview *self)
{
  for (guint i = 0; i < self->pages->len; i++)
    gtk_box_remove (self->box, g_ptr_array_index (self->pages, i));
  g_ptr_array_set_size (self->pages, 0);
  g_clear_object (&self->handout);
  update_warning (self);
  update_count (self);
  show_page (self, self->making);
}

static void
stop_request (SwPreview *self)
{
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
}

static void request_pages (SwPreview *self);

static void
made_cb (GObject      *object,
         GAsyncResult *result,
         gpointer      data)
{
  SwPreview *self = SW_PREVIEW (object);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwHandout) handout = sw_pages_make_finish (result, &error);

  (void) data;
  if (g_task_get_cancellable (G_TASK (result)) != self->cancellable)
    return;
  g_clear_object (&self->cancellable);

  if (handout != NULL)
    {
      g_set_object (&self->handout, handout);
      show_handout (self);
    }
  else
    {
      gtk_label_set_label (self->problem_words, error->message);
      gtk_label_set_label (self->count, "");
      show_page (self, self->problem);
    }

  if (self->outdated)
    request_pages (self);
}

/* One request at a time: while one runs, edits only mark it outdated, and when it ends its pages are shown and
 * the newest state is asked for. So pages keep coming while one types, and requests never pile up. */
static void
request_pages (SwPreview *self)
{
  self->outdated = TRUE;
  if (self->document == NULL || self->cancellable != NULL || !gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;

  self->outdated = FALSE;
  self->cancellable = g_cancellable_new ();
  sw_pages_make_async (self, sw_document_get_programme (self->document), self->handout, self->cancellable, made_cb);
}

/* Zoom */

/* Keeps in place what lies at the start of the view, before the pages have their new sizes. */
static void
stretch (GtkAdjustment *adjustment,
         double         ratio)
{
  double value = gtk_adjustment_get_value (adjustment) * ratio;

  gtk_adjustment_set_upper (adjustment, gtk_adjustment_get_upper (adjustment) * ratio);
  gtk_adjustment_set_value (adjustment, value);
}

static void
set_zoom (SwPreview *self,
          double     zoom)
{
  GtkAdjustment *across = gtk_scrolled_window_get_hadjustment (self->scroller);
  GtkAdjustment *down = gtk_scrolled_window_get_vadjustment (self->scroller);
  double before = self->zoom;

  if (!gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;

  self->zoom = CLAMP (zoom, MIN_ZOOM, MAX_ZOOM);
  if (self->zoom == before)
    return;

  update_widths (self);
  stretch (across, self->zoom / before);
  stretch (down, self->zoom / before);
}

static void
zoom_in_activated_cb (GSimpleAction *action,
                      GVariant      *parameter,
                      gpointer       data)
{
  (void) action;
  (void) parameter;
  set_zoom (SW_PREVIEW (data), SW_PREVIEW (data)->zoom * ZOOM_STEP);
}

static void
zoom_out_activated_cb (GSimpleAction *action,
                       GVariant      *parameter,
                       gpointer       data)
{
  (void) action;
  (void) parameter;
  set_zoom (SW_PREVIEW (data), SW_PREVIEW (data)->zoom / ZOOM_STEP);
}

static void
zoom_fit_activated_cb (GSimpleAction *action,
                       GVariant      *parameter,
                       gpointer       data)
{
  (void) action;
  (void) parameter;
  set_zoom (SW_PREVIEW (data), 1.0);
}

static void
plan_activated_cb (GSimpleAction *action,
                   GVariant      *parameter,
                   gpointer       data)
{
  SwPreview *self = data;

  (void) action;
  (void) parameter;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    sw_pages_button_open (self->plan);
}

static const GActionEntry entries[] = {
  { .name = "plan", .activate = plan_activated_cb },
  { .name = "zoom-in", .activate = zoom_in_activated_cb },
  { .name = "zoom-out", .activate = zoom_out_activated_cb },
  { .name = "zoom-fit", .activate = zoom_fit_activated_cb },
};

static gboolean
scrolled_cb (SwPreview                *self,
             double                    dx,
             double                    dy,
             GtkEventControllerScroll *controller)
{
  GdkModifierType state = gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (controller));

  (void) dx;
  if ((state & GDK_CONTROL_MASK) == 0)
    return GDK_EVENT_PROPAGATE;

  set_zoom (self, self->zoom * pow (ZOOM_STEP, -dy));
  return GDK_EVENT_STOP;
}

/* May come in the middle of the pages getting their places, when no label may get another size: the count comes after. */
static void
view_changed_cb (SwPreview *self)
{
  update_near (self);
  arrange_soon (self);
}

static void
sw_preview_map (GtkWidget *widget)
{
  SwPreview *self = SW_PREVIEW (widget);

  GTK_WIDGET_CLASS (sw_preview_parent_class)->map (widget);
  if (self->outdated)
    request_pages (self);
}

static void
sw_preview_dispose (GObject *object)
{
  SwPreview *self = SW_PREVIEW (object);
  GtkWidget *child;

  g_clear_handle_id (&self->arrange_idle, g_source_remove);
  stop_request (self);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_pointer (&self->pages, g_ptr_array_unref);
  g_clear_object (&self->handout);
  g_clear_object (&self->actions);

  G_OBJECT_CLASS (sw_preview_parent_class)->dispose (object);
}

static void
sw_preview_class_init (SwPreviewClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_preview_dispose;
  widget_class->map = sw_preview_map;

  g_type_ensure (SW_TYPE_PAGES_BUTTON);

  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "preview");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-preview.ui");
  gtk_widget_class_bind_template_child (widget_class, SwPreview, stack);
  gtk_widget_class_bind_template_child (widget_class, SwPreview, making);
  gtk_widget_class_bind_template_child (widget_class, SwPreview, spinner);
  gtk_widget_class_bind_template_child (widget_class, SwPreview, problem);
  gtk_widget_class_bind_template_child (widget_class, SwPreview, problem_words);
  gtk_widget_class_bind_template_child (widget_class, SwPreview, warning);
  gtk_widget_class_bind_template_child (widget_class, SwPreview, warning_words);
  gtk_widget_class_bind_template_child (widget_class, SwPreview, scroller);
  gtk_widget_class_bind_template_child (widget_class, SwPreview, box);
  gtk_widget_class_bind_template_child (widget_class, SwPreview, count);
  gtk_widget_class_bind_template_child (widget_class, SwPreview, plan);
  gtk_widget_class_bind_template_callback (widget_class, scrolled_cb);
}

static void
sw_preview_init (SwPreview *self)
{
  GtkLayoutManager *layout;

  self->zoom = 1.0;
  self->outdated = TRUE;
  self->pages = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);

  self->actions = g_simple_action_group_new ();
  g_action_map_add_action_entries (G_ACTION_MAP (self->actions), entries, G_N_ELEMENTS (entries), self);
  gtk_widget_insert_action_group (GTK_WIDGET (self), "preview", G_ACTION_GROUP (self->actions));
  sw_shortcuts_add_to_widget (GTK_WIDGET (self), SW_SHORTCUT_PREVIEW);

  g_signal_connect_object (gtk_scrolled_window_get_vadjustment (self->scroller), "value-changed",
                           G_CALLBACK (view_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (gtk_scrolled_window_get_vadjustment (self->scroller), "changed",
                           G_CALLBACK (arrange_soon), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (gtk_scrolled_window_get_hadjustment (self->scroller), "changed",
                           G_CALLBACK (arrange_soon), self, G_CONNECT_SWAPPED);
}

/**
 * sw_preview_set_document:
 * @document: (nullable): whose handout is shown
 */
void
sw_preview_set_document (SwPreview  *self,
                         SwDocument *document)
{
  g_return_if_fail (SW_IS_PREVIEW (self));

  if (self->document == document)
    return;

  stop_request (self);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  sw_pages_button_set_document (self->plan, document);
  self->follow = FALSE;
  forget_handout (self);
  if (document == NULL)
    return;

  g_signal_connect_swapped (document, "changed", G_CALLBACK (request_pages), self);
  self->chosen_handler = g_signal_connect_swapped (document, "chosen-changed", G_CALLBACK (chosen_changed_cb),
                                                   self);
  request_pages (self);
}
