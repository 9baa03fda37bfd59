/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Offering what was not saved when the program last ended. What nobody answers stays in its folder and is offered
 * again at the next start. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-drafts.h"
#include "sw-window-private.h"

static void
show_offer (SwWindow *self)
{
  const SwDraft *draft = g_ptr_array_index (self->drafts, 0);
  g_autoptr (GDateTime) when = g_date_time_new_from_unix_local (draft->saved_at);
  g_autofree char *when_text = g_date_time_format (when, "%x %H:%M");
  g_autofree char *name = NULL;
  g_autofree char *words = NULL;
  const SwNoticeButton buttons[] = {
    { _ ("_Recover"), "win.recover-draft" },
    { _ ("_Discard"), "win.discard-draft" },
  };

  name = draft->original != NULL ? g_path_get_basename (draft->original) : g_strdup (_ ("a new programme"));
  /* Translators: a file name, then date and time */
  words = g_strdup_printf (_ ("Work on %s was not saved before the program ended. The last draft is from %s."), name,
                           when_text);
  sw_window_show_notice (self, words, buttons, G_N_ELEMENTS (buttons));
  self->offer_shown = TRUE;
  self->offer_waiting = FALSE;
}

/**
 * sw_window_offer_next_draft:
 *
 * Offers the next draft, if there is one: when the window has read its file, and after what it tells now.
 */
void
sw_window_offer_next_draft (SwWindow *self)
{
  if (self->drafts == NULL || self->drafts->len == 0 || self->offer_shown || sw_window_is_loading (self))
    return;

  if (sw_notice_is_shown (self->notice))
    self->offer_waiting = TRUE;
  else
    show_offer (self);
}

static gboolean
offer_again_cb (gpointer data)
{
  SwWindow *self = data;

  self->offer_source = 0;
  sw_window_offer_next_draft (self);
  return G_SOURCE_REMOVE;
}

/**
 * sw_window_notice_closed:
 *
 * The notice was closed or answered. An offer that it had taken the place of comes back, though not before the
 * button that was pressed has done its work.
 */
void
sw_window_notice_closed (SwWindow *self)
{
  self->offer_shown = FALSE;
  if (self->offer_waiting && self->offer_source == 0)
    self->offer_source = g_idle_add (offer_again_cb, self);
}

/**
 * sw_window_offer_drafts:
 *
 * Looks for work that was not saved when the program last ended, and offers it, one after the other.
 */
void
sw_window_offer_drafts (SwWindow *self)
{
  g_return_if_fail (SW_IS_WINDOW (self));

  g_clear_pointer (&self->drafts, g_ptr_array_unref);
  self->drafts = sw_drafts_list ();
  sw_window_offer_next_draft (self);
}

/* The window that shows the very programme, or nothing yet, takes the draft; any other keeps its own work. */
static SwWindow *
window_to_recover_in (SwWindow    *self,
                      SwProgramme *programme)
{
  const char *id = sw_programme_get_id (sw_document_get_programme (self->document));
  SwWindow *window;

  if (sw_window_is_untouched (self)
      || (g_str_equal (id, sw_programme_get_id (programme))
          && !sw_history_get_modified (sw_document_get_history (self->document))))
    return self;

  window = sw_window_new (SW_APPLICATION (gtk_window_get_application (GTK_WINDOW (self))));
  gtk_window_present (GTK_WINDOW (window));
  return window;
}

static void
recover_draft_activated_cb (GSimpleAction *action,
                            GVariant      *parameter,
                            gpointer       data)
{
  SwWindow *self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (SwProgramme) programme = NULL;
  g_autoptr (SwProgrammeFile) file = NULL;
  g_autoptr (SwDocument) document = NULL;
  const SwDraft *draft;

  (void) action;
  (void) parameter;
  if (self->drafts == NULL || self->drafts->len == 0)
    return;

  draft = g_ptr_array_index (self->drafts, 0);
  programme = sw_draft_read (draft, &error);
  if (programme == NULL)
    {
      sw_window_show_error (self, error);
      self->offer_waiting = TRUE;
      return;
    }

  if (draft->original != NULL)
    file = sw_programme_file_new_expecting (draft->original, draft->original_hash);
  document = sw_document_new (programme, file);
  sw_history_set_saved_mark (sw_document_get_history (document), G_MAXUINT64);
  sw_window_set_document (window_to_recover_in (self, programme), document, draft->path);

  g_ptr_array_remove_index (self->drafts, 0);
  sw_window_offer_next_draft (self);
}

static void
discard_draft_activated_cb (GSimpleAction *action,
                            GVariant      *parameter,
                            gpointer       data)
{
  SwWindow *self = data;
  g_autoptr (GError) error = NULL;
  const SwDraft *draft;

  (void) action;
  (void) parameter;
  if (self->drafts == NULL || self->drafts->len == 0)
    return;

  draft = g_ptr_array_index (self->drafts, 0);
  if (!sw_draft_discard (draft->path, &error))
    sw_window_show_error (self, error);
  g_ptr_array_remove_index (self->drafts, 0);
  sw_window_offer_next_draft (self);
}

static const GActionEntry entries[] = {
  { .name = "recover-draft", .activate = recover_draft_activated_cb },
  { .name = "discard-draft", .activate = discard_draft_activated_cb },
};

/**
 * sw_window_add_draft_actions:
 */
void
sw_window_add_draft_actions (SwWindow *self)
{
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
}
