/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The lines above the list: which session this is, how long it takes, on which days it is done. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-edit-labels.h"
#include "sw-labels.h"
#include "sw-session-canvas-private.h"

static const char *const day_names[] = {
  N_ ("Monday"), N_ ("Tuesday"), N_ ("Wednesday"), N_ ("Thursday"), N_ ("Friday"), N_ ("Saturday"), N_ ("Sunday"),
};

static void
day_toggled_cb (GtkToggleButton *button,
                gpointer         data)
{
  SwSessionCanvas *self = data;
  SwSession *session = self->document != NULL ? sw_document_get_session (self->document) : NULL;
  g_autofree char *name = NULL;
  g_autofree char *label = NULL;
  SwSet days = 0;

  (void) button;
  if (self->refreshing || session == NULL)
    return;

  for (int i = 0; i < SW_N_DAYS; i++)
    if (gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->day_buttons[i])))
      days |= SW_SET (i);
  name = sw_edit_object_name (session);
  /* Translators: %s is a session's title */
  label = g_strdup_printf (_ ("Change days of “%s”"), name);
  sw_history_set_int (sw_document_get_history (self->document), label, session, "days", (gint64) days);
}

/**
 * sw_session_canvas_title_changed_cb:
 *
 * The session's title was typed.
 */
void
sw_session_canvas_title_changed_cb (SwSessionCanvas *self)
{
  SwSession *session = self->document != NULL ? sw_document_get_session (self->document) : NULL;

  if (!self->refreshing && session != NULL)
    sw_history_set_string (sw_document_get_history (self->document), _ ("Rename session"), session, "title",
                           gtk_editable_get_text (GTK_EDITABLE (self->title)));
}

/**
 * sw_session_canvas_title_left_cb:
 *
 * The title lost the focus: the next typing is another step.
 */
void
sw_session_canvas_title_left_cb (SwSessionCanvas *self)
{
  if (self->document != NULL)
    sw_history_stop_merging (sw_document_get_history (self->document));
}

/**
 * sw_session_canvas_init_head:
 *
 * Makes the buttons for the days.
 */
void
sw_session_canvas_init_head (SwSessionCanvas *self)
{
  for (int i = 0; i < SW_N_DAYS; i++)
    {
      GtkWidget *button = gtk_toggle_button_new_with_label (sw_label_day_short ((SwDay) i));

      gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, _ (day_names[i]), -1);
      gtk_widget_set_tooltip_text (button, _ (day_names[i]));
      gtk_widget_add_css_class (button, "day");
      g_signal_connect (button, "toggled", G_CALLBACK (day_toggled_cb), self);
      gtk_widget_set_parent (button, self->days);
      self->day_buttons[i] = button;
    }
}

static void
refresh_title (SwSessionCanvas *self,
               SwSession       *session)
{
  const char *title = session != NULL ? sw_session_get_title (session) : "";

  gtk_widget_set_sensitive (GTK_WIDGET (self->title), session != NULL);
  if (g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (self->title)), title) != 0)
    gtk_editable_set_text (GTK_EDITABLE (self->title), title);
}

/* The minutes are those of a usual day, without self-checks. */
static void
tell_checks (SwSessionCanvas *self,
             SwSpan           checks)
{
  int minutes = sw_span_high_minutes (checks);
  g_autofree char *words = g_strdup_printf (
      ngettext ("On a usual day. The self-checks, on the first day and before the next visit, take up to %d min more.",
                "On a usual day. The self-checks, on the first day and before the next visit, take up to %d min more.",
                (gulong) minutes),
      minutes);

  gtk_widget_set_tooltip_text (GTK_WIDGET (self->time), minutes > 0 ? words : NULL);
}

static void
refresh_time (SwSessionCanvas *self)
{
  const SwClock *clock = sw_document_get_clock (self->document);
  int minutes = sw_client_get_minutes (sw_programme_get_client (sw_document_get_programme (self->document)));
  g_autofree char *length = NULL;
  g_autofree char *words = NULL;
  gboolean over;

  if (clock == NULL || clock->entries->len == 0)
    {
      gtk_label_set_label (self->time, "");
      gtk_widget_set_tooltip_text (GTK_WIDGET (self->time), NULL);
      return;
    }

  over = minutes > 0 && clock->total.high_s > minutes * 60.0;
  length = sw_label_session (clock->total);
  if (minutes == 0)
    words = g_strdup (length);
  else if (over)
    /* Translators: how long the session takes, then the minutes the client has */
    words = g_strdup_printf (_ ("%s, more than %d min"), length, minutes);
  else
    /* Translators: how long the session takes, then the minutes the client has */
    words = g_strdup_printf (_ ("%s of %d min"), length, minutes);
  gtk_label_set_label (self->time, words);
  tell_checks (self, clock->checks);
  if (over)
    gtk_widget_add_css_class (GTK_WIDGET (self->time), "over");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->time), "over");
}

static GtkWidget *
session_button_new (int index)
{
  GtkWidget *button = gtk_toggle_button_new ();
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 16);
  gtk_button_set_child (GTK_BUTTON (button), label);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "edit.show-session");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "i", index);
  return button;
}

/* One button a session; shown only when there is something to switch between. */
static void
refresh_sessions (SwSessionCanvas *self)
{
  GListModel *list = G_LIST_MODEL (sw_programme_get_sessions (sw_document_get_programme (self->document)));
  guint n = g_list_model_get_n_items (list);
  GtkWidget *button = gtk_widget_get_first_child (self->sessions);

  gtk_widget_set_visible (self->sessions, n > 1);
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (list, i);
      g_autofree char *name = sw_edit_object_name (session);

      if (button == NULL)
        {
          button = session_button_new ((int) i);
          gtk_widget_set_parent (button, self->sessions);
        }
      gtk_label_set_label (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (button))), name);
      gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
      button = gtk_widget_get_next_sibling (button);
    }

  while (button != NULL)
    {
      GtkWidget *next = gtk_widget_get_next_sibling (button);

      gtk_widget_unparent (button);
      button = next;
    }
}

/**
 * sw_session_canvas_refresh_head:
 *
 * Shows the document's session as it is now.
 */
void
sw_session_canvas_refresh_head (SwSessionCanvas *self)
{
  SwSession *session = sw_document_get_session (self->document);
  SwSet days = session != NULL ? sw_session_get_days (session) : 0;

  self->refreshing = TRUE;
  refresh_title (self, session);
  refresh_time (self);
  refresh_sessions (self);
  gtk_widget_set_sensitive (self->days, session != NULL);
  for (int i = 0; i < SW_N_DAYS; i++)
    gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->day_buttons[i]), (days & SW_SET (i)) != 0);
  self->refreshing = FALSE;
}
