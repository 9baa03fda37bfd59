/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Opening, saving and closing: whatever the window does with the programme's file. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-clinic-defaults.h"
#include "sw-file-dialogs.h"
#include "sw-file.h"
#include "sw-window-private.h"

/* Opening */

/* This window, if there is nothing in it to lose, otherwise a new one. */
static SwWindow *
window_to_open_in (SwWindow *self)
{
  SwWindow *window;

  if (sw_window_is_untouched (self))
    return self;

  window = sw_window_new (SW_APPLICATION (gtk_window_get_application (GTK_WINDOW (self))));
  gtk_window_present (GTK_WINDOW (window));
  return window;
}

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

  self->loading = FALSE;
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;

  gtk_spinner_stop (self->busy);
  if (programme != NULL)
    {
      document = sw_document_new (programme, file);
      /* What was typed while the file was being read stays where it is. */
      sw_window_set_document (window_to_open_in (self), document, NULL);
    }
  else
    {
      sw_window_show_error (self, error);
    }
  sw_window_offer_next_draft (self);
}

/**
 * sw_window_open:
 * @path: a programme's file
 *
 * Reads the file in a worker and then shows it in this window, or in a new one if there were edits in this one
 * meanwhile; until then, and when it cannot be read, the window keeps what it shows.
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
  self->loading = TRUE;
  gtk_spinner_start (self->busy);
  sw_programme_file_load_async (file, self->cancellable, loaded_cb, g_object_ref (self));
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

/* For another client; the clinic's details are those of this clinic, whoever made the programme it begins with. */
static void
new_from_this_activated_cb (GSimpleAction *action,
                            GVariant      *parameter,
                            gpointer       data)
{
  SwWindow *self = data;
  g_autoptr (SwProgramme) programme = sw_programme_new_from (sw_document_get_programme (self->document));
  g_autoptr (SwDocument) document = NULL;
  SwWindow *window = sw_window_new (SW_APPLICATION (gtk_window_get_application (GTK_WINDOW (self))));

  (void) action;
  (void) parameter;
  sw_clinic_defaults_load (sw_programme_get_clinic (programme));
  document = sw_document_new (programme, NULL);
  sw_history_set_saved_mark (sw_document_get_history (document), G_MAXUINT64);
  sw_window_set_document (window, document, NULL);
  gtk_window_present (GTK_WINDOW (window));
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
  SwClinic *clinic;    /* as it is being saved */
  guint64 mark;
} Save;

static void
save_free (Save *save)
{
  g_object_unref (save->window);
  g_object_unref (save->document);
  g_object_unref (save->file);
  g_object_unref (save->clinic);
  g_free (save);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Save, save_free)

static void save_to (SwWindow        *self,
                     SwProgrammeFile *file,
                     gboolean         overwrite);

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
    sw_window_show_notice (self, error->message, changed, G_N_ELEMENTS (changed));
  else
    sw_window_show_notice (self, error->message, other, G_N_ELEMENTS (other));
}

/* What was changed of the clinic becomes what new programmes begin with. */
static void
remember_clinic (SwWindow *self,
                 Save     *save)
{
  g_autoptr (GError) error = NULL;

  if (self->document != save->document)
    return;

  if (!sw_clinic_defaults_save (self->clinic, save->clinic, &error))
    g_message ("%s", error->message);
  g_set_object (&self->clinic, save->clinic);
}

static void
saved_cb (GObject      *object,
          GAsyncResult *result,
          gpointer      data)
{
  g_autoptr (Save) save = data;
  SwWindow *self = save->window;
  g_autoptr (GError) error = NULL;
  g_autoptr (SwProgrammeFile) file_waiting = NULL;
  gboolean good = sw_programme_file_save_finish (SW_PROGRAMME_FILE (object), result, &error);
  gboolean save_again;

  /* The window was closed meanwhile. */
  if (self->document == NULL)
    return;

  gtk_spinner_stop (self->busy);
  self->saving = FALSE;
  if (good)
    {
      sw_document_set_file (save->document, save->file);
      sw_history_set_saved_mark (sw_document_get_history (save->document), save->mark);
      remember_clinic (self, save);
    }

  /* Where one save failed, the next to the same file would too. */
  save_again = self->save_waiting && self->document == save->document && (good || self->file_waiting != NULL);
  file_waiting = g_steal_pointer (&self->file_waiting);
  self->save_waiting = FALSE;
  if (save_again)
    {
      save_to (self, file_waiting, self->overwrite_waiting);
    }
  else if (!good)
    {
      self->close_after_save = FALSE;
      show_save_error (self, error);
    }
  else if (self->close_after_save)
    {
      /* What was typed meanwhile is asked about, and that answer is another. */
      self->close_after_save = FALSE;
      gtk_window_close (GTK_WINDOW (self));
    }
  else
    {
      sw_window_show_toast (self, _ ("Saved."), NULL, NULL);
    }
}

/* Saves to @file, or for NULL to the file the programme has; when a save is under way, after that. */
static void
save_to (SwWindow        *self,
         SwProgrammeFile *file,
         gboolean         overwrite)
{
  Save *save;
  SwHistory *history = sw_document_get_history (self->document);
  SwProgramme *programme = sw_document_get_programme (self->document);

  if (self->saving)
    {
      self->save_waiting = TRUE;
      self->overwrite_waiting = overwrite;
      g_set_object (&self->file_waiting, file);
      return;
    }

  if (file == NULL)
    file = sw_document_get_file (self->document);
  self->saving = TRUE;
  gtk_spinner_start (self->busy);
  sw_history_stop_merging (history);
  save = g_new0 (Save, 1);
  save->window = g_object_ref (self);
  save->document = g_object_ref (self->document);
  save->file = g_object_ref (file);
  save->clinic = sw_clinic_copy (sw_programme_get_clinic (programme));
  save->mark = sw_history_get_mark (history);
  sw_programme_file_save_async (file, programme, sw_history_get_modified (history), overwrite, NULL, saved_cb, save);
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

  if (sw_document_get_file (self->document) == NULL && !self->saving)
    save_as_activated_cb (action, parameter, data);
  else
    save_to (self, NULL, FALSE);
}

static void
replace_activated_cb (GSimpleAction *action,
                      GVariant      *parameter,
                      gpointer       data)
{
  SwWindow *self = data;

  (void) action;
  (void) parameter;
  if (sw_document_get_file (self->document) != NULL)
    save_to (self, NULL, TRUE);
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

  sw_window_show_notice (self, _ ("The changes to this programme are not saved."), buttons, G_N_ELEMENTS (buttons));
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
  sw_draft_keeper_discard (self->draft_keeper);
  self->close_without_asking = TRUE;
  gtk_window_close (GTK_WINDOW (self));
}

static const GActionEntry entries[] = {
  { .name = "new-from-this", .activate = new_from_this_activated_cb },
  { .name = "open", .activate = open_activated_cb },
  { .name = "save", .activate = save_activated_cb },
  { .name = "save-as", .activate = save_as_activated_cb },
  { .name = "replace", .activate = replace_activated_cb },
  { .name = "show-theirs", .activate = show_theirs_activated_cb },
  { .name = "save-and-close", .activate = save_and_close_activated_cb },
  { .name = "discard-and-close", .activate = discard_and_close_activated_cb },
};

/**
 * sw_window_add_file_actions:
 */
void
sw_window_add_file_actions (SwWindow *self)
{
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
}
