/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-programme.h"

G_BEGIN_DECLS

/**
 * SwDraft:
 * @path: the draft's own file
 * @original: path of the programme it is a draft of, or NULL for one never saved
 * @original_hash: SHA-256 of that file as it was when the work began, or NULL; see sw_programme_file_new_expecting()
 * @saved_at: when the draft was written, seconds since 1970
 *
 * Work that was not saved when the program ended. Drafts lie in the user's state folder (owner only), each
 * with a random name: one programme open twice has two drafts, a draft left by a crash is never written over by
 * what comes after, and no name tells of the client.
 */
typedef struct
{
  char *path;
  char *original;
  char *original_hash;
  gint64 saved_at;
} SwDraft;

void sw_draft_free (SwDraft *draft);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwDraft, sw_draft_free)

char *sw_drafts_folder (void);
char *sw_draft_dup_new_path (void);
GPtrArray *sw_drafts_list (void);
SwProgramme *sw_draft_read (const SwDraft  *draft,
                            GError        **error);
void sw_draft_write_async (const char          *path,
                           SwProgramme         *programme,
                           const char          *original,
                           const char          *original_hash,
                           GCancellable        *cancellable,
                           GAsyncReadyCallback  callback,
                           gpointer             data);
gboolean sw_draft_write_finish (GAsyncResult  *result,
                                GError       **error);
gboolean sw_draft_discard (const char  *path,
                           GError     **error);

G_END_DECLS
