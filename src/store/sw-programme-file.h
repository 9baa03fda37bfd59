/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-programme.h"

G_BEGIN_DECLS

/**
 * SwProgrammeFile:
 *
 * One programme on disk: where it lies, what was last read or written there (bytes and hash), and its
 * draft. All functions that touch the disk are asynchronous for the window and have a plain form for tests
 * and for setwright-make. Serialising happens on the calling thread, disk work in a worker.
 */
#define SW_TYPE_PROGRAMME_FILE (sw_programme_file_get_type ())
G_DECLARE_FINAL_TYPE (SwProgrammeFile, sw_programme_file, SW, PROGRAMME_FILE, GObject)

SwProgrammeFile *sw_programme_file_new (const char *path);
SwProgrammeFile *sw_programme_file_new_expecting (const char *path,
                                                  const char *hash);
const char *sw_programme_file_get_hash (SwProgrammeFile *self);
const char *sw_programme_file_get_path (SwProgrammeFile *self);
SwProgramme *sw_programme_file_load (SwProgrammeFile  *self,
                                     GError          **error);
void sw_programme_file_load_async (SwProgrammeFile     *self,
                                   GCancellable        *cancellable,
                                   GAsyncReadyCallback  callback,
                                   gpointer             data);
SwProgramme *sw_programme_file_load_finish (SwProgrammeFile  *self,
                                            GAsyncResult     *result,
                                            GError          **error);
gboolean sw_programme_file_save (SwProgrammeFile  *self,
                                 SwProgramme      *programme,
                                 gboolean          edited,
                                 gboolean          overwrite_changed,
                                 GError          **error);
void sw_programme_file_save_async (SwProgrammeFile     *self,
                                   SwProgramme         *programme,
                                   gboolean             edited,
                                   gboolean             overwrite_changed,
                                   GCancellable        *cancellable,
                                   GAsyncReadyCallback  callback,
                                   gpointer             data);
gboolean sw_programme_file_save_finish (SwProgrammeFile  *self,
                                        GAsyncResult     *result,
                                        GError          **error);

G_END_DECLS
