/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The only file that knows GtkFileChooserNative, so that one file changes when GTK's file dialogs do. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-file-dialogs.h"

static void
add_filter (GtkFileChooser *chooser,
            SwFileKind      kind)
{
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

  if (kind == SW_FILE_KIND_PROGRAMME)
    {
      gtk_file_filter_set_name (filter, _ ("Programmes"));
      gtk_file_filter_add_pattern (filter, "*.setwright");
    }
  else if (kind == SW_FILE_KIND_LOGO)
    {
      gtk_file_filter_set_name (filter, _ ("SVG drawings and PNG pictures"));
      gtk_file_filter_add_suffix (filter, "svg");
      gtk_file_filter_add_suffix (filter, "png");
    }
  else
    {
      gtk_file_filter_set_name (filter, _ ("PDF documents"));
      gtk_file_filter_add_pattern (filter, "*.pdf");
    }
  gtk_file_chooser_add_filter (chooser, filter);
}

static const char *
get_save_title (SwFileKind kind)
{
  switch (kind)
    {
    case SW_FILE_KIND_PDF:
      return _ ("Save the handout as PDF");
    case SW_FILE_KIND_FORM:
      return _ ("Save the handout as PDF to fill in");
    case SW_FILE_KIND_PROGRAMME:
    case SW_FILE_KIND_LOGO:
    default:
      return _ ("Save the programme");
    }
}

static void
response_cb (GtkNativeDialog *dialog,
             int              response,
             gpointer         data)
{
  g_autoptr (GTask) task = data;
  g_autoptr (GFile) file = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));

  if (file == NULL || !g_file_is_native (file))
    g_task_return_new_error (task, G_IO_ERROR, G_IO_ERROR_CANCELLED, "%s", _ ("No file was chosen."));
  else
    g_task_return_pointer (task, g_file_get_path (file), g_free);

  /* The task holds the dialog; letting go of both here ends them together. */
  g_task_set_task_data (task, NULL, NULL);
}

static void
run (GtkWindow           *parent,
     GtkFileChooserAction  action,
     SwFileKind           kind,
     const char          *title,
     const char          *accept,
     const char          *name,
     GCancellable        *cancellable,
     GAsyncReadyCallback  callback,
     gpointer             data)
{
  GTask *task = g_task_new (parent, cancellable, callback, data);
  GtkFileChooserNative *dialog = gtk_file_chooser_native_new (title, parent, action, accept, _ ("_Cancel"));

  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  add_filter (GTK_FILE_CHOOSER (dialog), kind);
  if (name != NULL)
    gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog), name);

  g_task_set_task_data (task, dialog, g_object_unref);
  g_signal_connect (dialog, "response", G_CALLBACK (response_cb), task);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

/**
 * sw_file_dialog_open_async:
 * @parent: the window that asks
 * @kind: which files to offer
 */
void
sw_file_dialog_open_async (GtkWindow           *parent,
                           SwFileKind           kind,
                           GCancellable        *cancellable,
                           GAsyncReadyCallback  callback,
                           gpointer             data)
{
  run (parent, GTK_FILE_CHOOSER_ACTION_OPEN, kind,
       kind == SW_FILE_KIND_LOGO ? _ ("Choose the clinic’s logo") : _ ("Open a programme"), _ ("_Open"), NULL,
       cancellable, callback, data);
}

/**
 * sw_file_dialog_save_async:
 * @parent: the window that asks
 * @kind: what will be written
 * @name: the file name to begin with; never a client's name
 */
void
sw_file_dialog_save_async (GtkWindow           *parent,
                           SwFileKind           kind,
                           const char          *name,
                           GCancellable        *cancellable,
                           GAsyncReadyCallback  callback,
                           gpointer             data)
{
  run (parent, GTK_FILE_CHOOSER_ACTION_SAVE, kind, get_save_title (kind), _ ("_Save"), name, cancellable, callback, data);
}

/**
 * sw_file_dialog_finish:
 *
 * Returns: (transfer full): the chosen path, or NULL with %G_IO_ERROR_CANCELLED
 */
char *
sw_file_dialog_finish (GAsyncResult  *result,
                       GError       **error)
{
  g_return_val_if_fail (G_IS_TASK (result), NULL);

  return g_task_propagate_pointer (G_TASK (result), error);
}
