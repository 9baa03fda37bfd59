/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is shown over the panes: the chosen exercise's motion, large, for the client to see, what could take its place, and
 * the session in a better order. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-arrange-window.h"
#include "sw-course-window.h"
#include "sw-figure-view.h"
#include "sw-progress-window.h"
#include "sw-swap-window.h"
#include "sw-window-private.h"

static SwPictures *
get_pictures (SwWindow *self)
{
  return sw_application_get_pictures (SW_APPLICATION (gtk_window_get_application (GTK_WINDOW (self))));
}

static void
hide_motion (SwWindow *self)
{
  if (self->motion == NULL)
    return;

  gtk_overlay_remove_overlay (self->overlay, self->motion);
  self->motion = NULL;
}

static gboolean
motion_key_cb (SwWindow *self,
               guint     key)
{
  if (key != GDK_KEY_Escape)
    return GDK_EVENT_PROPAGATE;

  hide_motion (self);
  return GDK_EVENT_STOP;
}

static void
show_motion_activated_cb (GSimpleAction *action,
                          GVariant      *parameter,
                          gpointer       data)
{
  SwWindow *self = data;
  SwItem *item = sw_document_get_chosen_item (self->document);
  SwExercise *exercise = NULL;
  gboolean mirrored = FALSE;
  GtkWidget *view;
  GtkWidget *button;
  GtkEventController *keys;

  (void) action;
  (void) parameter;
  if (self->motion != NULL)
    {
      hide_motion (self);
      return;
    }

  if (item != NULL && sw_item_get_kind (item) == SW_ITEM_EXERCISE)
    {
      exercise = sw_item_get_exercise (item);
      mirrored = sw_item_get_dose (item)->side == SW_SIDE_LEFT;
    }
  else
    {
      exercise = sw_catalogue_pane_get_exercise (self->catalogue_pane);
    }
  if (exercise == NULL)
    {
      sw_window_show_toast (self, _ ("Choose an exercise first: its motion is then shown large."), NULL, NULL);
      return;
    }

  view = sw_figure_view_new (get_pictures (self), 320, 280);
  gtk_widget_set_hexpand (view, TRUE);
  gtk_widget_set_vexpand (view, TRUE);
  sw_figure_view_set_exercise (SW_FIGURE_VIEW (view), exercise, mirrored);
  sw_figure_view_set_playing (SW_FIGURE_VIEW (view), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  sw_exercise_get_text (exercise, "en")->name, -1);

  button = gtk_button_new_with_label (_ ("Close (Esc)"));
  gtk_widget_set_halign (button, GTK_ALIGN_CENTER);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (hide_motion), self);

  self->motion = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  gtk_widget_add_css_class (self->motion, "large-motion");
  gtk_box_append (GTK_BOX (self->motion), view);
  gtk_box_append (GTK_BOX (self->motion), button);

  keys = gtk_event_controller_key_new ();
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (motion_key_cb), self);
  gtk_widget_add_controller (self->motion, keys);

  gtk_overlay_add_overlay (self->overlay, self->motion);
  gtk_widget_grab_focus (button);
}

static void
choose_swap_activated_cb (GSimpleAction *action,
                          GVariant      *parameter,
                          gpointer       data)
{
  SwWindow *self = data;
  SwItem *item = sw_document_get_chosen_item (self->document);

  (void) action;
  (void) parameter;
  if (item == NULL || sw_item_get_exercise (item) == NULL || sw_document_get_catalogue (self->document) == NULL)
    {
      sw_window_show_toast (self, _ ("Choose an exercise of the session first: others are then offered in its place."), NULL,
                            NULL);
      return;
    }

  gtk_window_present (GTK_WINDOW (sw_swap_window_new (GTK_WINDOW (self), self->document, item, get_pictures (self))));
}

static void
arrange_activated_cb (GSimpleAction *action,
                      GVariant      *parameter,
                      gpointer       data)
{
  SwWindow *self = data;

  (void) action;
  (void) parameter;
  if (sw_document_get_session (self->document) == NULL)
    {
      sw_window_show_toast (self, _ ("Add a session first: its exercises can then be arranged."), NULL, NULL);
      return;
    }

  gtk_window_present (GTK_WINDOW (sw_arrange_window_new (GTK_WINDOW (self), self->document)));
}

static void
show_course_activated_cb (GSimpleAction *action,
                          GVariant      *parameter,
                          gpointer       data)
{
  SwWindow *self = data;

  (void) action;
  (void) parameter;
  gtk_window_present (GTK_WINDOW (sw_course_window_new (GTK_WINDOW (self), self->document)));
}

static void
progress_activated_cb (GSimpleAction *action,
                       GVariant      *parameter,
                       gpointer       data)
{
  SwWindow *self = data;

  (void) action;
  (void) parameter;
  gtk_window_present (GTK_WINDOW (sw_progress_window_new (GTK_WINDOW (self), self->document)));
}

static const GActionEntry entries[] = {
  { .name = "arrange", .activate = arrange_activated_cb },
  { .name = "choose-swap", .activate = choose_swap_activated_cb },
  { .name = "progress", .activate = progress_activated_cb },
  { .name = "show-course", .activate = show_course_activated_cb },
  { .name = "show-motion", .activate = show_motion_activated_cb },
};

/**
 * sw_window_add_motion_actions:
 */
void
sw_window_add_motion_actions (SwWindow *self)
{
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
}
