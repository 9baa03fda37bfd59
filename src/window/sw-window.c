/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The window of one programme: puts the panes together and keeps what stands around them. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-clinic-defaults.h"
#include "sw-edit-actions.h"
#include "sw-shortcuts.h"
#include "sw-window-private.h"

/* Two cards of the catalogue side by side; the widest row of the dose. */
#define LEFT_LEAST_PX 284
#define LEFT_MOST_PX 340
#define RIGHT_LEAST_PX 300
#define RIGHT_MOST_PX 344

G_DEFINE_FINAL_TYPE (SwWindow, sw_window, GTK_TYPE_APPLICATION_WINDOW)

static void
update_title (SwWindow *self)
{
  g_autofree char *name = sw_document_dup_name (self->document);
  g_autofree char *title = NULL;
  g_autofree char *place = NULL;
  SwProgrammeFile *file = sw_document_get_file (self->document);
  gboolean modified = sw_history_get_modified (sw_document_get_history (self->document));

  if (file != NULL)
    place = g_path_get_basename (sw_programme_file_get_path (file));
  else
    place = g_strdup (_ ("not saved yet"));

  if (modified && file != NULL)
    {
      /* Translators: %s is a file name */
      g_autofree char *with_changes = g_strdup_printf (_ ("%s – changes not saved"), place);

      g_free (place);
      place = g_steal_pointer (&with_changes);
    }

  title = g_strdup_printf ("%s%s", modified ? "• " : "", name);
  gtk_label_set_label (self->title, title);
  gtk_label_set_label (self->subtitle, place);
  gtk_window_set_title (GTK_WINDOW (self), name);
}

static void
document_changed_cb (SwWindow *self)
{
  update_title (self);
}

static void
catalogue_notify_cb (SwWindow *self)
{
  SwApplication *application = SW_APPLICATION (gtk_window_get_application (GTK_WINDOW (self)));

  if (application != NULL && self->document != NULL)
    sw_document_set_catalogue (self->document, sw_application_get_catalogue (application));
}

static void
fill_panes (SwWindow *self)
{
  sw_catalogue_pane_set_document (self->catalogue_pane, self->document);
  sw_preview_set_document (self->preview, self->document);
  sw_session_canvas_set_document (self->canvas, self->document);
  sw_inspector_set_document (self->inspector, self->document);
  sw_findings_bar_set_document (self->findings_bar, self->document);
}

/**
 * sw_window_set_document:
 * @document: what the window shows from now on
 * @draft_path: (nullable): the draft it was recovered from
 */
void
sw_window_set_document (SwWindow   *self,
                        SwDocument *document,
                        const char *draft_path)
{
  GActionGroup *edits = sw_edit_actions_new (document);

  if (self->document != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->document, self);
      g_signal_handlers_disconnect_by_data (sw_document_get_history (self->document), self);
    }
  g_set_object (&self->document, document);
  g_clear_object (&self->clinic);
  self->clinic = sw_clinic_copy (sw_programme_get_clinic (sw_document_get_programme (document)));
  g_clear_object (&self->draft_keeper);
  self->draft_keeper = sw_draft_keeper_new (document, draft_path);
  g_signal_connect_object (self->draft_keeper, "failed", G_CALLBACK (sw_window_show_error), self, G_CONNECT_SWAPPED);

  gtk_widget_insert_action_group (GTK_WIDGET (self), "edit", edits);
  g_object_unref (edits);
  catalogue_notify_cb (self);
  if (self->drawn)
    fill_panes (self);

  g_signal_connect_object (document, "changed", G_CALLBACK (document_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "notify::file", G_CALLBACK (document_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (sw_document_get_history (document), "notify::modified",
                           G_CALLBACK (document_changed_cb), self, G_CONNECT_SWAPPED);
  update_title (self);
}

/* Actions about the window itself */

static void
preview_toggled_cb (GSimpleAction *action,
                    GVariant      *state,
                    gpointer       data)
{
  SwWindow *self = data;
  gboolean shown = g_variant_get_boolean (state);
  int other_px = gtk_paned_get_position (self->panes);

  /* Pages need more room than cards; each keeps the width it was given. */
  if (self->pages_px == 0)
    self->pages_px = MAX (other_px, gtk_widget_get_width (GTK_WIDGET (self)) * 2 / 5);
  gtk_paned_set_position (self->panes, self->pages_px);
  self->pages_px = other_px;

  gtk_stack_set_visible_child (self->left, shown ? GTK_WIDGET (self->preview) : GTK_WIDGET (self->catalogue_pane));
  g_simple_action_set_state (action, state);
}

static void
inspector_toggled_cb (GSimpleAction *action,
                      GVariant      *state,
                      gpointer       data)
{
  SwWindow *self = data;

  gtk_widget_set_visible (GTK_WIDGET (self->inspector), g_variant_get_boolean (state));
  g_simple_action_set_state (action, state);
}

static void
search_activated_cb (GSimpleAction *action,
                     GVariant      *parameter,
                     gpointer       data)
{
  SwWindow *self = data;

  (void) action;
  (void) parameter;
  if (gtk_stack_get_visible_child (self->left) != GTK_WIDGET (self->catalogue_pane))
    g_action_group_change_action_state (G_ACTION_GROUP (self), "preview", g_variant_new_boolean (FALSE));
  sw_catalogue_pane_focus_search (self->catalogue_pane);
}

static void
focus_canvas_activated_cb (GSimpleAction *action,
                           GVariant      *parameter,
                           gpointer       data)
{
  SwWindow *self = data;

  (void) action;
  (void) parameter;
  gtk_widget_grab_focus (GTK_WIDGET (self->canvas));
}

static void
focus_form_activated_cb (GSimpleAction *action,
                         GVariant      *parameter,
                         gpointer       data)
{
  SwWindow *self = data;

  (void) action;
  (void) parameter;
  g_action_group_change_action_state (G_ACTION_GROUP (self), "inspector", g_variant_new_boolean (TRUE));
  sw_inspector_focus_form (self->inspector);
}

static void
findings_activated_cb (GSimpleAction *action,
                       GVariant      *parameter,
                       gpointer       data)
{
  (void) action;
  (void) parameter;
  sw_findings_bar_toggle (SW_WINDOW (data)->findings_bar);
}

static void
tell_answers_gone_activated_cb (GSimpleAction *action,
                                GVariant      *parameter,
                                gpointer       data)
{
  (void) action;
  (void) parameter;
  sw_window_show_toast (
      data, _ ("Another client: the reasons for keeping findings are taken back. Undo brings them back."), NULL, NULL);
}

static void
shortcuts_activated_cb (GSimpleAction *action,
                        GVariant      *parameter,
                        gpointer       data)
{
  (void) action;
  (void) parameter;
  gtk_window_present (GTK_WINDOW (sw_shortcuts_window_new (GTK_WINDOW (data))));
}

static void
menu_activated_cb (GSimpleAction *action,
                   GVariant      *parameter,
                   gpointer       data)
{
  (void) action;
  (void) parameter;
  gtk_menu_button_popup (SW_WINDOW (data)->menu_button);
}

static void
about_activated_cb (GSimpleAction *action,
                    GVariant      *parameter,
                    gpointer       data)
{
  (void) action;
  (void) parameter;
  gtk_show_about_dialog (GTK_WINDOW (data), "program-name", "Setwright", "version", SW_VERSION, "logo-icon-name",
                         "org.setwright.Setwright", "license-type", GTK_LICENSE_GPL_3_0, "comments",
                         _ ("Home-exercise programmes, made during the appointment.\n"
                            "Supports a licensed clinician's judgement; it does not diagnose or replace it."),
                         NULL);
}

static void
close_activated_cb (GSimpleAction *action,
                    GVariant      *parameter,
                    gpointer       data)
{
  (void) action;
  (void) parameter;
  gtk_window_close (GTK_WINDOW (data));
}

static const GActionEntry entries[] = {
  { .name = "preview", .state = "false", .change_state = preview_toggled_cb },
  { .name = "inspector", .state = "true", .change_state = inspector_toggled_cb },
  { .name = "search", .activate = search_activated_cb },
  { .name = "focus-canvas", .activate = focus_canvas_activated_cb },
  { .name = "focus-form", .activate = focus_form_activated_cb },
  { .name = "findings", .activate = findings_activated_cb },
  { .name = "tell-answers-gone", .activate = tell_answers_gone_activated_cb },
  { .name = "shortcuts", .activate = shortcuts_activated_cb },
  { .name = "menu", .activate = menu_activated_cb },
  { .name = "about", .activate = about_activated_cb },
  { .name = "close", .activate = close_activated_cb },
};

/* The panes are made only when the first frame is on the screen, so that the window is there at once. */
static void
make_panes (SwWindow *self)
{
  SwPictures *pictures = sw_application_get_pictures (SW_APPLICATION (gtk_window_get_application (GTK_WINDOW (self))));
  int quarter_px = gtk_widget_get_width (GTK_WIDGET (self)) / 4;

  /* In a small window the panes beside the session give way to it. */
  gtk_paned_set_position (self->panes, CLAMP (quarter_px, LEFT_LEAST_PX, LEFT_MOST_PX));

  self->catalogue_pane = g_object_new (SW_TYPE_CATALOGUE_PANE, NULL);
  self->preview = g_object_new (SW_TYPE_PREVIEW, NULL);
  self->canvas = g_object_new (SW_TYPE_SESSION_CANVAS, "hexpand", TRUE, "width-request", 340, NULL);
  self->inspector = g_object_new (SW_TYPE_INSPECTOR, "width-request", CLAMP (quarter_px, RIGHT_LEAST_PX, RIGHT_MOST_PX), NULL);
  self->findings_bar = g_object_new (SW_TYPE_FINDINGS_BAR, NULL);
  sw_catalogue_pane_set_pictures (self->catalogue_pane, pictures);
  sw_session_canvas_set_pictures (self->canvas, pictures);
  sw_inspector_set_pictures (self->inspector, pictures);

  gtk_stack_add_child (self->left, GTK_WIDGET (self->catalogue_pane));
  gtk_stack_add_child (self->left, GTK_WIDGET (self->preview));
  gtk_box_append (self->work, GTK_WIDGET (self->canvas));
  gtk_box_append (self->work, gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  gtk_box_append (self->work, GTK_WIDGET (self->inspector));
  gtk_box_append (self->body, GTK_WIDGET (self->findings_bar));
}

static void
first_frame_drawn_cb (SwWindow *self)
{
  SwApplication *application = SW_APPLICATION (gtk_window_get_application (GTK_WINDOW (self)));

  g_clear_signal_handler (&self->first_frame_handler, gtk_widget_get_frame_clock (GTK_WIDGET (self)));
  self->drawn = TRUE;
  make_panes (self);
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  sw_window_add_file_actions (self);
  sw_window_add_draft_actions (self);
  sw_window_add_motion_actions (self);
  sw_window_add_handover_actions (self);
  fill_panes (self);
  sw_application_load_catalogue (application);

  if (self->path_to_open != NULL)
    {
      g_autofree char *path = g_steal_pointer (&self->path_to_open);

      sw_window_open (self, path);
    }
}

static void
sw_window_unrealize (GtkWidget *widget)
{
  SwWindow *self = SW_WINDOW (widget);

  g_clear_signal_handler (&self->first_frame_handler, gtk_widget_get_frame_clock (widget));
  GTK_WIDGET_CLASS (sw_window_parent_class)->unrealize (widget);
}

static void
sw_window_realize (GtkWidget *widget)
{
  SwWindow *self = SW_WINDOW (widget);

  GTK_WIDGET_CLASS (sw_window_parent_class)->realize (widget);
  if (!self->drawn)
    self->first_frame_handler = g_signal_connect_swapped (gtk_widget_get_frame_clock (widget), "after-paint",
                                                          G_CALLBACK (first_frame_drawn_cb), self);
}

static gboolean
sw_window_close_request (GtkWindow *window)
{
  SwWindow *self = SW_WINDOW (window);

  if (sw_window_ask_before_close (self))
    return GDK_EVENT_STOP;

  return GTK_WINDOW_CLASS (sw_window_parent_class)->close_request (window);
}

static void
sw_window_dispose (GObject *object)
{
  SwWindow *self = SW_WINDOW (object);

  g_clear_handle_id (&self->toast_timeout, g_source_remove);
  g_clear_handle_id (&self->offer_source, g_source_remove);
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  g_clear_pointer (&self->drafts, g_ptr_array_unref);
  g_clear_pointer (&self->path_to_open, g_free);
  g_clear_object (&self->draft_keeper);
  g_clear_object (&self->file_waiting);
  g_clear_object (&self->clinic);
  g_clear_object (&self->document);

  G_OBJECT_CLASS (sw_window_parent_class)->dispose (object);
}

static void
sw_window_class_init (SwWindowClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_window_dispose;
  GTK_WINDOW_CLASS (class)->close_request = sw_window_close_request;
  widget_class->realize = sw_window_realize;
  widget_class->unrealize = sw_window_unrealize;

  g_type_ensure (SW_TYPE_NOTICE);

  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-window.ui");
  gtk_widget_class_bind_template_child (widget_class, SwWindow, title);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, subtitle);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, menu_button);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, notice);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, body);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, left);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, work);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, toast);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, toast_words);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, toast_button);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, busy);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, overlay);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, panes);
  gtk_widget_class_bind_template_callback (widget_class, sw_window_close_toast);
  gtk_widget_class_bind_template_callback (widget_class, sw_window_notice_closed);
}

static void
sw_window_init (SwWindow *self)
{
  self->cancellable = g_cancellable_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
}

/* A new programme carries the clinic's remembered details. */
static void
show_new_programme (SwWindow *self)
{
  g_autoptr (SwProgramme) programme = sw_programme_new_standard ();
  g_autoptr (SwDocument) document = NULL;

  sw_clinic_defaults_load (sw_programme_get_clinic (programme));
  document = sw_document_new (programme, NULL);
  sw_window_set_document (self, document, NULL);
}

/**
 * sw_window_new:
 * @application: the program
 *
 * Returns: (transfer none): a window on a new programme, not yet presented
 */
SwWindow *
sw_window_new (SwApplication *application)
{
  SwWindow *self;

  g_return_val_if_fail (SW_IS_APPLICATION (application), NULL);

  self = g_object_new (SW_TYPE_WINDOW, "application", application, NULL);
  g_signal_connect_object (application, "notify::catalogue", G_CALLBACK (catalogue_notify_cb), self,
                           G_CONNECT_SWAPPED);
  show_new_programme (self);

  return self;
}

/**
 * sw_window_is_loading:
 *
 * Returns: whether a file is being read into the window, or about to be
 */
gboolean
sw_window_is_loading (SwWindow *self)
{
  return self->loading || self->path_to_open != NULL;
}

/**
 * sw_window_is_untouched:
 *
 * Returns: whether the window shows a new programme in which nothing was ever done, and no file is on its way to it
 */
gboolean
sw_window_is_untouched (SwWindow *self)
{
  SwHistory *history;

  g_return_val_if_fail (SW_IS_WINDOW (self), FALSE);

  history = sw_document_get_history (self->document);
  return sw_document_get_file (self->document) == NULL && !sw_history_get_modified (history)
         && !sw_history_get_can_undo (history) && !sw_history_get_can_redo (history) && !sw_window_is_loading (self);
}
