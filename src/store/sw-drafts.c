/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Drafts: work that was not saved yet, written every few seconds so that a crash costs next to nothing. A draft is
 * the programme inside an element that tells where it belongs:
 *
 *   <draft xmlns="urn:setwright:draft" version="1" original="file:///..." original-hash="..." saved-at="seconds since 1970"> */
#include "config.h"

#include <errno.h>
#include <glib/gi18n.h>
#include <glib/gstdio.h>
#include <string.h>

#include "sw-drafts.h"
#include "sw-file.h"
#include "sw-programme-xml.h"
#include "sw-xml-values.h"

#define NS "urn:setwright:draft"
#define SUFFIX ".draft"

/**
 * sw_draft_free:
 * @draft: (transfer full) (nullable): a draft
 */
void
sw_draft_free (SwDraft *draft)
{
  if (draft == NULL)
    return;

  g_free (draft->path);
  g_free (draft->original);
  g_free (draft->original_hash);
  g_free (draft);
}

/**
 * sw_drafts_folder:
 *
 * Returns: (transfer full): where drafts lie; the folder need not be there yet
 */
char *
sw_drafts_folder (void)
{
  return g_build_filename (g_get_user_state_dir (), "setwright", NULL);
}

/**
 * sw_draft_dup_new_path:
 *
 * Returns: (transfer full): a path for a draft that no other draft has, of this programme or of any window
 */
char *
sw_draft_dup_new_path (void)
{
  g_autofree char *folder = sw_drafts_folder ();
  g_autofree char *id = g_uuid_string_random ();
  g_autofree char *name = g_strconcat (id, SUFFIX, NULL);

  return g_build_filename (folder, name, NULL);
}

static xmlDoc *
parse_draft (const char  *path,
             GError     **error)
{
  g_autofree char *name = g_filename_display_basename (path);
  g_autoptr (GBytes) bytes = sw_file_read (path, SW_XML_MAX_BYTES, error);

  return bytes != NULL ? sw_xml_parse_bytes (bytes, name, error) : NULL;
}

/* What the outer element tells. Of a damaged draft only its name and age are known: reading it will say why. */
static void
read_outer (SwDraft *draft)
{
  g_autoptr (xmlDoc) doc = parse_draft (draft->path, NULL);
  const xmlNode *root = doc != NULL ? xmlDocGetRootElement (doc) : NULL;
  g_autofree char *uri = NULL;
  g_autofree char *saved_at = NULL;
  GStatBuf status;

  if (root != NULL && sw_xml_is (root, NS, "draft"))
    {
      uri = sw_xml_dup_attribute (root, "original");
      draft->original_hash = sw_xml_dup_attribute (root, "original-hash");
      saved_at = sw_xml_dup_attribute (root, "saved-at");
    }

  draft->original = uri != NULL ? g_filename_from_uri (uri, NULL, NULL) : NULL;
  if (saved_at != NULL)
    draft->saved_at = g_ascii_strtoll (saved_at, NULL, 10);
  else if (g_stat (draft->path, &status) == 0)
    draft->saved_at = status.st_mtime;
}

static int
compare_drafts (gconstpointer a,
                gconstpointer b)
{
  const SwDraft *first = *(SwDraft *const *) a;
  const SwDraft *second = *(SwDraft *const *) b;

  if (first->saved_at != second->saved_at)
    return first->saved_at > second->saved_at ? -1 : 1;
  return strcmp (first->path, second->path);
}

/**
 * sw_drafts_list:
 *
 * Returns: (transfer full) (element-type SwDraft): all drafts there are, the latest first
 */
GPtrArray *
sw_drafts_list (void)
{
  GPtrArray *drafts = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_draft_free);
  g_autofree char *folder = sw_drafts_folder ();
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      SwDraft *draft;

      if (!g_str_has_suffix (name, SUFFIX))
        continue;

      draft = g_new0 (SwDraft, 1);
      draft->path = g_build_filename (folder, name, NULL);
      read_outer (draft);
      g_ptr_array_add (drafts, draft);
    }

  g_ptr_array_sort (drafts, compare_drafts);
  return drafts;
}

/**
 * sw_draft_read:
 * @draft: a draft
 * @error: return location for a #SwFileError or a #SwXmlError
 *
 * Returns: (transfer full): the programme in it, or NULL
 */
SwProgramme *
sw_draft_read (const SwDraft  *draft,
               GError        **error)
{
  g_autoptr (xmlDoc) doc = NULL;
  xmlNode *root;

  g_return_val_if_fail (draft != NULL, NULL);

  doc = parse_draft (draft->path, error);
  if (doc == NULL)
    return NULL;

  root = xmlDocGetRootElement (doc);
  if (sw_xml_is (root, NS, "draft"))
    for (xmlNode *child = root->children; child != NULL; child = child->next)
      if (child->type == XML_ELEMENT_NODE)
        return sw_programme_read (child, error);

  sw_xml_set_error (error, root, SW_XML_ERROR_INVALID,
                    _ ("this draft holds no programme. Discard it and open the programme as it was last saved."));
  return NULL;
}

static GBytes *
draft_to_bytes (SwProgramme *programme,
                const char  *original,
                const char  *original_hash)
{
  g_autoptr (SwXmlWriter) writer = sw_xml_writer_new ();
  g_autofree char *absolute = original != NULL ? g_canonicalize_filename (original, NULL) : NULL;
  g_autofree char *uri = absolute != NULL ? g_filename_to_uri (absolute, NULL, NULL) : NULL;
  g_autofree char *saved_at = g_strdup_printf ("%" G_GINT64_FORMAT, g_get_real_time () / G_USEC_PER_SEC);

  sw_xml_writer_open (writer, "draft");
  sw_xml_writer_attribute (writer, "xmlns", NS);
  sw_xml_writer_attribute_int (writer, "version", 1);
  sw_xml_writer_attribute (writer, "original", uri);
  sw_xml_writer_attribute (writer, "original-hash", original_hash);
  sw_xml_writer_attribute (writer, "saved-at", saved_at);
  sw_programme_write (programme, writer);
  sw_xml_writer_close (writer);
  return sw_xml_writer_end (writer);
}

/* What the worker is given. */
typedef struct
{
  char *path;
  GBytes *bytes;
} Writing;

static void
writing_free (Writing *writing)
{
  g_free (writing->path);
  g_bytes_unref (writing->bytes);
  g_free (writing);
}

static void
write_in_thread (GTask        *task,
                 gpointer      source,
                 gpointer      data,
                 GCancellable *cancellable)
{
  const Writing *writing = data;
  g_autofree char *folder = g_path_get_dirname (writing->path);
  GError *error = NULL;

  (void) source;
  (void) cancellable;
  if (g_mkdir_with_parents (folder, 0700) != 0)
    {
      g_task_return_new_error (task, SW_FILE_ERROR, SW_FILE_ERROR_WRITE,
                               _ ("Unsaved work cannot be kept in “%s”: the folder cannot be made. Save your work now."),
                               folder);
      return;
    }

  if (sw_file_write (writing->path, writing->bytes, NULL, FALSE, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

/**
 * sw_draft_write_async:
 * @path: sw_draft_dup_new_path(), or of a draft that is taken on
 * @programme: what to keep; turned into text before this function returns
 * @original: (nullable): path of the file it was opened from or last saved to
 * @original_hash: (nullable): sw_programme_file_get_hash() of that file
 * @cancellable: (nullable): keeps the writing from beginning
 * @callback: called when it is done
 * @data: for @callback
 *
 * Replaces the draft at @path.
 */
void
sw_draft_write_async (const char          *path,
                      SwProgramme         *programme,
                      const char          *original,
                      const char          *original_hash,
                      GCancellable        *cancellable,
                      GAsyncReadyCallback  callback,
                      gpointer             data)
{
  g_autoptr (GTask) task = NULL;
  Writing *writing;

  g_return_if_fail (path != NULL);
  g_return_if_fail (SW_IS_PROGRAMME (programme));

  task = g_task_new (NULL, cancellable, callback, data);
  g_task_set_check_cancellable (task, FALSE);
  if (g_task_return_error_if_cancelled (task))
    return;

  writing = g_new0 (Writing, 1);
  writing->path = g_strdup (path);
  writing->bytes = draft_to_bytes (programme, original, original_hash);
  g_task_set_task_data (task, writing, (GDestroyNotify) writing_free);
  g_task_run_in_thread (task, write_in_thread);
}

/**
 * sw_draft_write_finish:
 * @result: what the callback was given
 * @error: return location for an error
 *
 * Returns: whether the draft is on disk
 */
gboolean
sw_draft_write_finish (GAsyncResult  *result,
                       GError       **error)
{
  g_return_val_if_fail (g_task_is_valid (result, NULL), FALSE);

  return g_task_propagate_boolean (G_TASK (result), error);
}

/**
 * sw_draft_discard:
 * @path: of a draft that is not being written
 * @error: return location for a #SwFileError
 *
 * Returns: whether there is no such draft any more
 */
gboolean
sw_draft_discard (const char  *path,
                  GError     **error)
{
  g_return_val_if_fail (path != NULL, FALSE);

  if (g_unlink (path) == 0 || errno == ENOENT)
    return TRUE;

  g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_WRITE,
               _ ("The draft “%s” cannot be removed. It will be offered again at the next start."), path);
  return FALSE;
}
