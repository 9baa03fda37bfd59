/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One programme on disk: loading and saving without ever losing what is there. */
#include "config.h"

#include <glib/gi18n.h>
#include <string.h>

#include "sw-file.h"
#include "sw-programme-file.h"
#include "sw-programme-xml.h"
#include "sw-xml.h"

struct _SwProgrammeFile
{
  GObject parent_instance;

  char *path;
  GBytes *bytes; /* what was last read or written, NULL before that */
  char *hash;    /* and its hash */
  gboolean unsure; /* whether the disk did not confirm that it was written */
};

G_DEFINE_FINAL_TYPE (SwProgrammeFile, sw_programme_file, G_TYPE_OBJECT)

/* One saving, apart from the object so that a worker can do it. */
typedef struct
{
  char *path;
  char *expected_hash; /* NULL: whatever is there */
  GBytes *bytes;
  gboolean always;  /* write even what is there already */
  gboolean fresh;   /* made just now, rather than read from a file */
  gboolean written; /* whether the file holds @bytes in the end, even if not surely for good */
} Save;

static void
save_free (Save *save)
{
  g_free (save->path);
  g_free (save->expected_hash);
  g_bytes_unref (save->bytes);
  g_free (save);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Save, save_free)

static void
sw_programme_file_finalize (GObject *object)
{
  SwProgrammeFile *self = SW_PROGRAMME_FILE (object);

  g_free (self->path);
  g_free (self->hash);
  g_clear_pointer (&self->bytes, g_bytes_unref);

  G_OBJECT_CLASS (sw_programme_file_parent_class)->finalize (object);
}

static void
sw_programme_file_class_init (SwProgrammeFileClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = sw_programme_file_finalize;
}

static void
sw_programme_file_init (SwProgrammeFile *self)
{
  (void) self;
}

/**
 * sw_programme_file_new:
 * @path: where the programme lies or is to lie
 *
 * Returns: (transfer full): a file that was not looked at yet
 */
SwProgrammeFile *
sw_programme_file_new (const char *path)
{
  SwProgrammeFile *self;

  g_return_val_if_fail (path != NULL, NULL);

  self = g_object_new (SW_TYPE_PROGRAMME_FILE, NULL);
  self->path = g_strdup (path);
  return self;
}

/**
 * sw_programme_file_new_expecting:
 * @path: where the programme lies
 * @hash: (nullable): what sw_programme_file_get_hash() was when the work began that is to be saved there
 *
 * For work that goes on after a crash: it may be saved over the file it was begun from, and over no other.
 *
 * Returns: (transfer full): a file, as if it had been read when it had that hash
 */
SwProgrammeFile *
sw_programme_file_new_expecting (const char *path,
                                 const char *hash)
{
  SwProgrammeFile *self = sw_programme_file_new (path);

  self->hash = g_strdup (hash);
  return self;
}

/**
 * sw_programme_file_get_hash:
 * @self: a file
 *
 * Returns: (transfer none) (nullable): SHA-256 of what was last read or written there, NULL before that
 */
const char *
sw_programme_file_get_hash (SwProgrammeFile *self)
{
  g_return_val_if_fail (SW_IS_PROGRAMME_FILE (self), NULL);

  return self->hash;
}

/**
 * sw_programme_file_get_path:
 * @self: a file
 *
 * Returns: (transfer none): where it lies
 */
const char *
sw_programme_file_get_path (SwProgrammeFile *self)
{
  g_return_val_if_fail (SW_IS_PROGRAMME_FILE (self), NULL);

  return self->path;
}

static void
remember (SwProgrammeFile *self,
          GBytes          *bytes)
{
  g_bytes_ref (bytes);
  g_clear_pointer (&self->bytes, g_bytes_unref);
  self->bytes = bytes;
  g_free (self->hash);
  self->hash = sw_file_hash (bytes);
}

static SwProgramme *
read_programme (const char  *path,
                GBytes     **bytes,
                GError     **error)
{
  g_autofree char *name = g_filename_display_basename (path);
  g_autoptr (GBytes) read = sw_file_read (path, SW_XML_MAX_BYTES, error);
  SwProgramme *programme = read != NULL ? sw_programme_from_bytes (read, name, error) : NULL;

  if (programme != NULL)
    *bytes = g_steal_pointer (&read);
  return programme;
}

/**
 * sw_programme_file_load:
 * @self: a file
 * @error: return location for a #SwFileError or a #SwXmlError
 *
 * Returns: (transfer full): the programme, or NULL
 */
SwProgramme *
sw_programme_file_load (SwProgrammeFile  *self,
                        GError          **error)
{
  g_autoptr (GBytes) bytes = NULL;
  SwProgramme *programme;

  g_return_val_if_fail (SW_IS_PROGRAMME_FILE (self), NULL);

  programme = read_programme (self->path, &bytes, error);
  if (programme != NULL)
    remember (self, bytes);
  return programme;
}

/* What a worker hands back to sw_programme_file_load_finish(). */
typedef struct
{
  SwProgramme *programme;
  GBytes *bytes;
} Loaded;

static void
loaded_free (Loaded *loaded)
{
  g_clear_object (&loaded->programme);
  g_bytes_unref (loaded->bytes);
  g_free (loaded);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Loaded, loaded_free)

static void
load_in_thread (GTask        *task,
                gpointer      source,
                gpointer      path,
                GCancellable *cancellable)
{
  g_autoptr (GBytes) bytes = NULL;
  GError *error = NULL;
  SwProgramme *programme;
  Loaded *loaded;

  (void) source;
  (void) cancellable;
  programme = read_programme (path, &bytes, &error);
  if (programme == NULL)
    {
      g_task_return_error (task, error);
      return;
    }

  loaded = g_new0 (Loaded, 1);
  loaded->programme = programme;
  loaded->bytes = g_steal_pointer (&bytes);
  g_task_return_pointer (task, loaded, (GDestroyNotify) loaded_free);
}

/**
 * sw_programme_file_load_async:
 * @self: a file
 * @cancellable: (nullable): gives up waiting
 * @callback: called when it is done
 * @data: for @callback
 *
 * Like sw_programme_file_load(), in a worker.
 */
void
sw_programme_file_load_async (SwProgrammeFile     *self,
                              GCancellable        *cancellable,
                              GAsyncReadyCallback  callback,
                              gpointer             data)
{
  g_autoptr (GTask) task = g_task_new (self, cancellable, callback, data);

  g_return_if_fail (SW_IS_PROGRAMME_FILE (self));

  g_task_set_task_data (task, g_strdup (self->path), g_free);
  g_task_run_in_thread (task, load_in_thread);
}

/**
 * sw_programme_file_load_finish:
 * @self: a file
 * @result: what the callback was given
 * @error: return location for an error
 *
 * Returns: (transfer full): the programme, or NULL
 */
SwProgramme *
sw_programme_file_load_finish (SwProgrammeFile  *self,
                               GAsyncResult     *result,
                               GError          **error)
{
  g_autoptr (Loaded) loaded = NULL;

  g_return_val_if_fail (g_task_is_valid (result, self), NULL);

  loaded = g_task_propagate_pointer (G_TASK (result), error);
  if (loaded == NULL)
    return NULL;

  remember (self, loaded->bytes);
  return g_steal_pointer (&loaded->programme);
}

/* A file that was never looked at is expected not to be there: whatever lies there is somebody's work. */
static Save *
save_new (SwProgrammeFile *self,
          SwProgramme     *programme,
          gboolean         edited,
          gboolean         overwrite_changed)
{
  Save *save = g_new0 (Save, 1);

  save->path = g_strdup (self->path);
  save->always = self->unsure;
  save->fresh = edited || self->bytes == NULL;
  save->bytes = save->fresh ? sw_programme_to_bytes (programme) : g_bytes_ref (self->bytes);
  if (!overwrite_changed)
    save->expected_hash = g_strdup (self->hash != NULL ? self->hash : "");
  return save;
}

/* What is about to be written must come out as the very same programme when it is opened again. */
static gboolean
check_readable (const Save  *save,
                GError     **error)
{
  g_autofree char *name = g_filename_display_basename (save->path);
  g_autoptr (SwProgramme) programme = sw_programme_from_bytes (save->bytes, name, error);
  g_autoptr (GBytes) again = NULL;

  if (programme == NULL)
    {
      g_prefix_error (error, "%s ", _ ("Not saved, for it could not be opened again."));
      return FALSE;
    }

  again = sw_programme_to_bytes (programme);
  if (g_bytes_equal (again, save->bytes))
    return TRUE;

  g_set_error (error, SW_XML_ERROR, SW_XML_ERROR_INVALID,
               _ ("%s was not saved: it would come out changed when opened again. Undo the last change and save once more."),
               name);
  return FALSE;
}

static gboolean
holds (const Save *save)
{
  g_autoptr (GBytes) there = sw_file_read (save->path, SW_XML_MAX_BYTES, NULL);

  return there != NULL && g_bytes_equal (there, save->bytes);
}

static gboolean
run_save (Save    *save,
          GError **error)
{
  if (save->fresh && !check_readable (save, error))
    return FALSE;

  /* Writing the same once more would only push the previous version out of its place. */
  if ((!save->always && holds (save)) || sw_file_write (save->path, save->bytes, save->expected_hash, TRUE, error))
    {
      save->written = TRUE;
      return TRUE;
    }

  /* The one failure that comes after the renaming: the file is ours, and the next save must know it. */
  save->written = holds (save);
  return FALSE;
}

static void
end_save (SwProgrammeFile *self,
          const Save      *save,
          gboolean         good)
{
  if (!save->written)
    return;

  remember (self, save->bytes);
  self->unsure = !good;
}

/**
 * sw_programme_file_save:
 * @self: a file
 * @programme: what to save
 * @edited: whether @programme is no longer as it was loaded or last saved; FALSE writes the very bytes
 *   that were read
 * @overwrite_changed: whether to write even over a file that is not the one last read or written
 * @error: return location for a #SwFileError, %SW_FILE_ERROR_CHANGED when somebody else has written there
 *
 * The version before it stays as "name~". Nothing is written when the file holds the very same already.
 *
 * Returns: whether the file holds the programme for good
 */
gboolean
sw_programme_file_save (SwProgrammeFile  *self,
                        SwProgramme      *programme,
                        gboolean          edited,
                        gboolean          overwrite_changed,
                        GError          **error)
{
  g_autoptr (Save) save = NULL;
  gboolean good;

  g_return_val_if_fail (SW_IS_PROGRAMME_FILE (self), FALSE);
  g_return_val_if_fail (SW_IS_PROGRAMME (programme), FALSE);

  save = save_new (self, programme, edited, overwrite_changed);
  good = run_save (save, error);
  end_save (self, save, good);
  return good;
}

static void
save_in_thread (GTask        *task,
                gpointer      source,
                gpointer      save,
                GCancellable *cancellable)
{
  GError *error = NULL;

  (void) source;
  (void) cancellable;
  if (run_save (save, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

/**
 * sw_programme_file_save_async:
 * @self: a file
 * @programme: what to save; turned into text before this function returns
 * @edited: see sw_programme_file_save()
 * @overwrite_changed: see sw_programme_file_save()
 * @cancellable: (nullable): keeps a saving from beginning; one that has begun is finished
 * @callback: called when it is done
 * @data: for @callback
 */
void
sw_programme_file_save_async (SwProgrammeFile     *self,
                              SwProgramme         *programme,
                              gboolean             edited,
                              gboolean             overwrite_changed,
                              GCancellable        *cancellable,
                              GAsyncReadyCallback  callback,
                              gpointer             data)
{
  g_autoptr (GTask) task = NULL;

  g_return_if_fail (SW_IS_PROGRAMME_FILE (self));
  g_return_if_fail (SW_IS_PROGRAMME (programme));

  task = g_task_new (self, cancellable, callback, data);
  g_task_set_check_cancellable (task, FALSE);
  if (g_task_return_error_if_cancelled (task))
    return;

  g_task_set_task_data (task, save_new (self, programme, edited, overwrite_changed), (GDestroyNotify) save_free);
  g_task_run_in_thread (task, save_in_thread);
}

/**
 * sw_programme_file_save_finish:
 * @self: a file
 * @result: what the callback was given
 * @error: return location for an error
 *
 * Returns: whether the file holds the programme for good
 */
gboolean
sw_programme_file_save_finish (SwProgrammeFile  *self,
                               GAsyncResult     *result,
                               GError          **error)
{
  const Save *save;
  gboolean good;

  g_return_val_if_fail (g_task_is_valid (result, self), FALSE);

  save = g_task_get_task_data (G_TASK (result));
  good = g_task_propagate_boolean (G_TASK (result), error);
  if (save != NULL)
    end_save (self, save, good);
  return good;
}
