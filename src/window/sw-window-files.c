/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Opening, saving, closing and recovering: whatever the window does with the programme's file. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-clinic-defaults.h"
#include "sw-file-dialogs.h"
#include "sw-file.h"
#include "sw-window-private.h"

/* A crash loses at most the edits of this long, and of the write itself. */
#define DRAFT_DELAY_S 2

/* Drafts */

static void write_draft (SwWindow *self);

static gboolean
draft_due_cb (gpointer data)
{
  SwWindow *self = data;

  self->draft_timeout = 0;
  write_draft (self);
  return G_SOURCE_REMOVE;
}

static void
draft_written_cb (GObject      *object,
                  GAsyncResult *result,
                  gpointer      data)
{
  g_autoptr (SwWindow) self = data;
  g_autoptr (GError) error = NULL;

  (void) object;
  self->draft_writing = FALSE;
  if (!sw_draft_write_finish (result, &error))
    {
      /* The edits are still only in memory: try again later, and tell. */
      self->draft_wanted = TRUE;
      if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
        sw_window_show_error (self, error);
      return;
    }

  if (self->draft_wanted)
    sw_window_schedule_draft (self);
}

static void
write_draft (SwWindow *self)
{
  SwProgrammeFile *file = sw_document_get_file (self->document);

  if (!self->draft_wanted || self->draft_writing)
    return;

  self->draft_wanted = FALSE;
  self->draft_writing = TRUE;
  sw_draft_write_async (sw_document_get_programme (self->document),
                        file != NULL ? sw_programme_file_get_path (file) : NULL,
                        file != NULL ? sw_programme_file_get_hash (file) : NULL, NULL, draft_written_cb,
                        g_object_ref (self));
}

/**
 * sw_window_schedule_draft:
 *
 * An edit was made: a draft is written two seconds after the first edit that no draft holds, however fast
 * the edits follow one another.
 */
void
sw_window_schedule_draft (SwWindow *self)
{
  self->draft_wanted = TRUE;
  if (self->draft_timeout == 0 && !self->draft_writing)
    self->draft_timeout = g_timeout_add_seconds (DRAFT_DELAY_S, draft_due_cb, self);
}

/**
 * sw_window_stop_drafts:
 *
 * The document is about to be let go of: no draft of it is written from now on.
 */
void
sw_window_stop_drafts (SwWindow *self)
{
  g_clear_handle_id (&self->draft_timeout, g_source_remove);
  self->draft_wanted = FALSE;
}

static void
discard_own_draft (SwWindow *self)
{
  g_autoptr (GError) error = NULL;

  if (!sw_draft_discard (sw_programme_get_id (sw_document_get_programme (self->document)), &error))
    sw_window_show_error (self, error);
}

static void
show_next_draft (SwWindow *self)
{
  const SwDraft *draft;
  g_autoptr (GDateTime) when = NULL;
  g_autofree char *when_text = NULL;
  g_autofree char *name = NULL;
  g_autofree char *words = NULL;
  const SwNoticeButton buttons[] = {
    { _ ("_Recover"), "win.recover-draft" },
    { _ ("_Discard"), "win.discard-draft" },
  };

  if (self->drafts == NULL || self->drafts->len == 0)
    return;

  draft = g_ptr_array_index (self->drafts, 0);
  when = g_date_time_new_from_unix_local (draft->saved_at);
  when_text = g_date_time_format (when, "%x %H:%M");
  name = draft->original != NULL ? g_path_get_basename (draft->original) : g_strdup (_ ("a new programme"));
  /* Translators: a file name, then date and time */
  words = g_strdup_printf (_ ("Work on %s was not saved before the program ended. The last draft is from %s."), name,
                           when_text);
  sw_notice_show (self->notice, words, buttons, G_N_ELEMENTS (buttons));
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
  show_next_draft (self);
}

static void
recover_draft_activated_cb (GSimpleAction *action,
                            GVariant      *parameter,
                            gpointer       data)
{
  SwWindow *self = data;
  SwApplication *application = SW_APPLICATION (gtk_window_get_application (GTK_WINDOW (self)));
  g_autoptr (GError) error = NULL;
  g_autoptr (SwProgramme) programme = NULL;
  g_autoptr (SwProgrammeFile) file = NULL;
  g_autoptr (SwDocument) document = NULL;
  const SwDraft *draft;
  SwWindow *window = self;

  (void) action;
  (void) parameter;
  if (self->drafts == NULL || self->drafts->len == 0)
    return;

  draft = g_ptr_array_index (self->drafts, 0);
  programme = sw_draft_read (draft, &error);
  if (programme == NULL)
    {
      sw_window_show_error (self, error);
      return;
    }

  if (draft->original != NULL)
    file = sw_programme_file_new_expecting (draft->original, draft->original_hash);
  document = sw_document_new (programme, file);
  sw_history_set_saved_mark (sw_document_get_history (document), G_MAXUINT64);

  /* The window that shows the very file, or nothing yet, takes the draft; any other keeps its own work. */
  if (!sw_window_is_untouched (self)
      && g_strcmp0 (sw_programme_get_id (sw_document_get_programme (self->document)),
                    sw_programme_get_id (programme))
           != 0)
    {
      window = sw_window_new (application);
      gtk_window_present (GTK_WINDOW (window));
    }
  sw_window_set_document (window, document);
  sw_window_schedule_draft (window);

  g_ptr_array_remove_index (self->drafts, 0);
  show_next_draft (self);
}

static void
discard_draft_activated_cb (GSimpleAction *action,
                            GVariant      *parameter,
                            gpointer       data)
{
  SwWindow *self = data;
  g_autoptr (SwProgramme) programme = NULL;
  g_autoptr (GError) error = NULL;
  const SwDraft *draft;

  (void) action;
  (void) parameter;
  if (self->drafts == NULL || self->drafts->len == 0)
    return;

  draft = g_ptr_array_index (self->drafts, 0);
  if (!sw_draft_discard (draft->programme_id, &error))
    sw_window_show_error (self, error);
  g_ptr_array_remove_index (self->drafts, 0);
  show_next_draft (self);
}

/* Opening */

static void
loaded_cb (GObject      *object,
           GAsyncResult *result,
           gpointer      data)
{
  g_autoptr (SwWindow) self = data;
  SwProgrammeFile *file = SW_PROGRAMME_FILE (object);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwProgramme) programme = sw_programme_file_load_finish (file, result, &error);
  g_autoptr (SwDocument) document = NULL;

  gtk_spinner_stop (self->busy);
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  if (programme == NULL)
    {
      sw_window_show_error (self, error);
      return;
    }

  document = sw_document_new (programme, file);
  sw_window_set_document (self, document);
}

/**
 * sw_window_open:
 * @path: a programme's file
 *
 * Reads the file in a worker and then shows it in this window; until then, and when it cannot be read, the
 * window keeps what it shows.
 */
void
sw_window_open (SwWindow   *self,
                const char *path)
{
  g_autoptr (SwProgrammeFile) file = NULL;

  g_return_if_fail (SW_IS_WINDOW (self));

  if (!self->drawn)
    {
      g_free (self->path_to_open);
      self->path_to_open = g_strdup (path);
      return;
    }

  file = sw_programme_file_new (path);
  gtk_spinner_start (self->busy);
  sw_programme_file_load_async (file, self->cancellable, loaded_cb, g_object_ref (self));
}

static SwWindow *
window_to_open_in (SwWindow *self)
{
  SwWindow *window = self;

  if (!sw_window_is_untouched (self))
    {
      window = sw_window_new (SW_APPLICATION (gtk_window_get_application (GTK_WINDOW (self))));
      gtk_window_present (GTK_WINDOW (window));
    }
  return window;
}

static void
open_chosen_cb (GObject      *object,
                GAsyncResult *result,
                gpointer      data)
{
  g_autofree char *path = sw_file_dialog_finish (result, NULL);

  (void) data;
  if (path != NULL)
    sw_window_open (window_to_open_in (SW_WINDOW (object)), path);
}

static void
open_activated_cb (GSimpleAction *action,
                   GVariant      *parameter,
                   gpointer       data)
{
  SwWindow *self = data;

  (void) action;
  (void) parameter;
  sw_file_dialog_open_async (GTK_WINDOW (self), SW_FILE_KIND_PROGRAMME, self->cancellable, open_chosen_cb, NULL);
}

/* Saving */

typedef struct
{
  SwWindow *window;
  SwDocument *document;
  SwProgrammeFile *file;
  guint64 mark;
} Save;

static void
save_free (Save *save)
{
  g_object_unref (save->window);
  g_object_unref (save->document);
  g_object_unref (save->file);
  g_free (save);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Save, save_free)

static void
show_save_error (SwWindow     *self,
                 const GError *error)
{
  const SwNoticeButton changed[] = {
    { _ ("Show _theirs"), "win.show-theirs" },
    { _ ("Save a _copy…"), "win.save-as" },
    { _ ("_Replace it"), "win.replace" },
  };
  const SwNoticeButton other[] = {
    { _ ("Save a _copy…"), "win.save-as" },
    { _ ("_Try again"), "win.save" },
  };

  if (g_error_matches (error, SW_FILE_ERROR, SW_FILE_ERROR_CHANGED))
    sw_notice_show (self->notice, error->message, changed, G_N_ELEMENTS (changed));
  else
    sw_notice_show (self->notice, error->message, other, G_N_ELEMENTS (other));
}

static void
saved_cb (GObject      *object,
          GAsyncResult *result,
          gpointer      data)
{
  g_autoptr (Save) save = data;
  SwWindow *self = save->window;
  g_autoptr (GError) error = NULL;
  g_autoptr (GError) defaults_error = NULL;

  gtk_spinner_stop (self->busy);
  self->saving = FALSE;
  if (!sw_programme_file_save_finish (SW_PROGRAMME_FILE (object), result, &error))
    {
      self->close_after_save = FALSE;
      show_save_error (self, error);
      return;
    }

  sw_document_set_file (save->document, save->file);
  sw_history_set_saved_mark (sw_document_get_history (save->document), save->mark);
  if (self->document == save->document && !sw_history_get_modified (sw_document_get_history (save->document)))
    {
      sw_window_stop_drafts (self);
      discard_own_draft (self);
    }
  if (!sw_clinic_defaults_save (sw_programme_get_clinic (sw_document_get_programme (save->document)),
                                &defaults_error))
    g_message ("%s", defaults_error->message);

  if (self->close_after_save)
    gtk_window_close (GTK_WINDOW (self));
  else
    sw_window_show_toast (self, _ ("Saved."), NULL, NULL);
}

static void
save_to (SwWindow        *self,
         SwProgrammeFile *file,
         gboolean         overwrite)
{
  Save *save;
  SwHistory *history = sw_document_get_history (self->document);

  if (self->saving)
    return;

  self->saving = TRUE;
  gtk_spinner_start (self->busy);
  sw_history_stop_merging (history);
  save = g_new0 (Save, 1);
  save->window = g_object_ref (self);
  save->document = g_object_ref (self->document);
  save->file = g_object_ref (file);
  save->mark = sw_history_get_mark (history);
  sw_programme_file_save_async (file, sw_document_get_programme (self->document),
                                sw_history_get_modified (history), overwrite, NULL, saved_cb, save);
}

static void
save_chosen_cb (GObject      *object,
                GAsyncResult *result,
                gpointer      data)
{
  SwWindow *self = SW_WINDOW (object);
  g_autofree char *path = sw_file_dialog_finish (result, NULL);
  g_autoptr (SwProgrammeFile) file = NULL;

  (void) data;
  if (path == NULL)
    {
      self->close_after_save = FALSE;
      return;
    }

  if (!g_str_has_suffix (path, ".setwright"))
    {
      g_autofree char *with_suffix = g_strconcat (path, ".setwright", NULL);

      /* The dialog asked about the name as typed, not about this one. */
      if (!g_file_test (with_suffix, G_FILE_TEST_EXISTS))
        {
          g_free (path);
          path = g_steal_pointer (&with_suffix);
        }
    }

  file = sw_programme_file_new (path);
  save_to (self, file, TRUE);
}

static void
save_as_activated_cb (GSimpleAction *action,
                      GVariant      *parameter,
                      gpointer       data)
{
  SwWindow *self = data;

  (void) action;
  (void) parameter;
  sw_file_dialog_save_async (GTK_WINDOW (self), SW_FILE_KIND_PROGRAMME, _ ("programme.setwright"), self->cancellable,
                             save_chosen_cb, NULL);
}

static void
save_activated_cb (GSimpleAction *action,
                   GVariant      *parameter,
                   gpointer       data)
{
  SwWindow *self = data;
  SwProgrammeFile *file = sw_document_get_file (self->document);

  if (file == NULL)
    save_as_activated_cb (action, parameter, data);
  else
    save_to (self, file, FALSE);
}

static void
replace_activated_cb (GSimpleAction *action,
                      GVariant      *parameter,
                      gpointer       data)
{
  SwWindow *self = data;
  SwProgrammeFile *file = sw_document_get_file (self->document);

  (void) action;
  (void) parameter;
  if (file != NULL)
    save_to (self, file, TRUE);
}

static void
show_theirs_activated_cb (GSimpleAction *action,
                          GVariant      *parameter,
                          gpointer       data)
{
  SwWindow *self = data;
  SwProgrammeFile *file = sw_document_get_file (self->document);
  SwWindow *window;

  (void) action;
  (void) parameter;
  if (file == NULL)
    return;

  window = sw_window_new (SW_APPLICATION (gtk_window_get_application (GTK_WINDOW (self))));
  gtk_window_present (GTK_WINDOW (window));
  sw_window_open (window, sw_programme_file_get_path (file));
}

/* Closing */

/**
 * sw_window_ask_before_close:
 *
 * Asks, in a notice, what is to become of changes that are not saved.
 *
 * Returns: whether the window has to stay open for that
 */
gboolean
sw_window_ask_before_close (SwWindow *self)
{
  const SwNoticeButton buttons[] = {
    { _ ("_Save and close"), "win.save-and-close" },
    { _ ("Close _without saving"), "win.discard-and-close" },
  };

  if (self->close_without_asking || !sw_history_get_modified (sw_document_get_history (self->document)))
    return FALSE;

  sw_notice_show (self->notice, _ ("The changes to this programme are not saved."), buttons, G_N_ELEMENTS (buttons));
  return TRUE;
}

static void
save_and_close_activated_cb (GSimpleAction *action,
                             GVariant      *parameter,
                             gpointer       data)
{
  SW_WINDOW (data)->close_after_save = TRUE;
  save_activated_cb (action, parameter, data);
}

static void
discard_and_close_activated_cb (GSimpleAction *action,
                                GVariant      *parameter,
                                gpointer       data)
{
  SwWindow *self = data;

  (void) action;
  (void) parameter;
  sw_window_stop_drafts (self);
  discard_own_draft (self);
  self->close_without_asking = TRUE;
  gtk_window_close (GTK_WINDOW (self));
}

static const GActionEntry entries[] = {
  { .name = "open", .activate = open_activated_cb },
  { .name = "save", .activate = save_activated_cb },
  { .name = "save-as", .activate = save_as_activated_cb },
  { .name = "replace", .activate = replace_activated_cb },
  { .name = "show-theirs", .activate = show_theirs_activated_cb },
  { .name = "save-and-close", .activate = save_and_close_activated_cb },
  { .name = "discard-and-close", .activate = discard_and_close_activated_cb },
  { .name = "recover-draft", .activate = recover_draft_activated_cb },
  { .name = "discard-draft", .activate = discard_draft_activated_cb },
};

/**
 * sw_window_add_file_actions:
 */
void
sw_window_add_file_actions (SwWindow *self)
{
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
}
