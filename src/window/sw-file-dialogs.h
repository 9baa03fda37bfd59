/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef enum
{
  SW_FILE_KIND_PROGRAMME,
  SW_FILE_KIND_PDF,
  SW_FILE_KIND_FORM,
  SW_FILE_KIND_LOGO,
} SwFileKind;

void sw_file_dialog_open_async (GtkWindow           *parent,
                                SwFileKind           kind,
                                GCancellable        *cancellable,
                                GAsyncReadyCallback  callback,
                                gpointer             data);
void sw_file_dialog_save_async (GtkWindow           *parent,
                                SwFileKind           kind,
                                const char          *name,
                                GCancellable        *cancellable,
                                GAsyncReadyCallback  callback,
                                gpointer             data);
char *sw_file_dialog_finish (GAsyncResult  *result,
                             GError       **error);

G_END_DECLS
