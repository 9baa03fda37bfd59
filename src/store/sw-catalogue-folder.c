/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reads the exercises of a folder. A damaged file is told of and the rest is used all the same. */
#include "config.h"

#include <glib/gi18n.h>
#include <string.h>

#include "sw-catalogue-folder.h"
#include "sw-data-dir.h"
#include "sw-exercise-line.h"
#include "sw-exercise-xml.h"
#include "sw-file.h"
#include "sw-problem.h"

#define SUFFIX ".xml"

/* What a worker makes of one file: one of the two is NULL, except that an exercise can have a problem too. */
typedef struct
{
  char *path;
  SwExercise *exercise;
  SwProblem *problem;
} Entry;

static void
entry_free (Entry *entry)
{
  g_free (entry->path);
  g_clear_object (&entry->exercise);
  sw_problem_free (entry->problem);
  g_free (entry);
}

static int
compare_entries (gconstpointer a,
                 gconstpointer b)
{
  const Entry *first = *(Entry *const *) a;
  const Entry *second = *(Entry *const *) b;

  return strcmp (first->path, second->path);
}

static GPtrArray *
list_files (const char  *folder,
            GError     **error)
{
  g_autoptr (GError) local_error = NULL;
  g_autoptr (GDir) dir = g_dir_open (folder, 0, &local_error);
  g_autoptr (GPtrArray) entries = g_ptr_array_new_with_free_func ((GDestroyNotify) entry_free);
  const char *name;

  if (dir == NULL)
    {
      g_autofree char *shown = g_filename_display_name (folder);

      g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_READ,
                   _ ("%s: the catalogue's folder cannot be opened. It may have been moved, or the disk is not connected."),
                   shown);
      return NULL;
    }

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      Entry *entry;

      if (*name == '.' || !g_str_has_suffix (name, SUFFIX))
        continue;

      entry = g_new0 (Entry, 1);
      entry->path = g_build_filename (folder, name, NULL);
      g_ptr_array_add (entries, entry);
    }

  g_ptr_array_sort (entries, compare_entries);
  return g_steal_pointer (&entries);
}

static gboolean
is_named_by_id (const char *path,
                SwExercise *exercise)
{
  g_autofree char *name = g_path_get_basename (path);
  const char *id = sw_exercise_get_id (exercise);

  return g_str_has_prefix (name, id) && strcmp (name + strlen (id), SUFFIX) == 0;
}

static void
read_entry (gpointer data,
            gpointer cancellable)
{
  Entry *entry = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = NULL;
  g_autofree char *name = NULL;

  if (g_cancellable_is_cancelled (cancellable))
    return;

  name = g_filename_display_basename (entry->path);
  bytes = sw_file_read (entry->path, SW_XML_MAX_BYTES, &error);
  if (bytes != NULL)
    entry->exercise = sw_exercise_from_bytes (bytes, name, &error);
  if (entry->exercise == NULL)
    {
      entry->problem = sw_problem_new_for_error (entry->path, error);
    }
  else if (!is_named_by_id (entry->path, entry->exercise))
    {
      g_autofree char *text
          = g_strdup_printf (_ ("the file holds the exercise “%s”. Rename it to “%s.xml”, or correct the id."),
                             sw_exercise_get_id (entry->exercise), sw_exercise_get_id (entry->exercise));

      entry->problem = sw_problem_new (entry->path, 0, text);
    }
}

/* Files are independent of each other, so all processors take part. */
static void
read_entries (GPtrArray    *entries,
              GCancellable *cancellable)
{
  GThreadPool *pool;

  if (entries->len < 64)
    {
      g_ptr_array_foreach (entries, read_entry, cancellable);
      return;
    }

  pool = g_thread_pool_new (read_entry, cancellable, (int) MIN (g_get_num_processors (), 8), FALSE, NULL);
  for (guint i = 0; i < entries->len; i++)
    g_thread_pool_push (pool, entries->pdata[i], NULL);
  g_thread_pool_free (pool, FALSE, TRUE);
}

static void
check_links (const Entry *entry,
             const char  *element,
             char       **links,
             GHashTable  *by_id,
             GPtrArray   *problems)
{
  for (guint i = 0; links[i] != NULL; i++)
    {
      g_autofree char *text = NULL;
      long line;

      if (g_hash_table_contains (by_id, links[i]))
        continue;

      text = g_strdup_printf (_ ("there is no exercise “%s” in the catalogue. Remove the link, or add the exercise."),
                              links[i]);
      line = sw_exercise_find_line_in_file (entry->path, element, links[i]);
      g_ptr_array_add (problems, sw_problem_new (entry->path, line, text));
    }
}

/* Moves the exercises out of @entries; of two with one id the first stays. */
static GPtrArray *
collect (GPtrArray  *entries,
         GHashTable *by_id,
         GPtrArray  *problems)
{
  GPtrArray *exercises = g_ptr_array_new_full (entries->len, g_object_unref);

  for (guint i = 0; i < entries->len; i++)
    {
      Entry *entry = entries->pdata[i];
      const Entry *other;
      const char *id;

      if (entry->problem != NULL)
        g_ptr_array_add (problems, g_steal_pointer (&entry->problem));
      if (entry->exercise == NULL)
        continue;

      id = sw_exercise_get_id (entry->exercise);
      other = g_hash_table_lookup (by_id, id);
      if (other != NULL)
        {
          g_autofree char *name = g_filename_display_basename (other->path);
          g_autofree char *text
              = g_strdup_printf (_ ("%s holds the exercise “%s” too, and that one is used. Remove one of the two."), name, id);

          g_ptr_array_add (problems, sw_problem_new (entry->path, 0, text));
          continue;
        }

      g_hash_table_insert (by_id, (gpointer) id, entry);
      g_ptr_array_add (exercises, g_object_ref (entry->exercise));
    }

  return exercises;
}

/**
 * sw_catalogue_folder_read:
 * @folder: a path
 * @problems: (out) (optional) (element-type SwProblem) (transfer full): what is wrong with single files: damaged, not
 *   named by the exercise's id, two with the same id, links to exercises that are not there
 * @cancellable: (nullable): stops the reading
 * @error: return location for an error
 *
 * Reads all files of the folder whose names end in ".xml"; hidden ones and folders below are not looked at.
 *
 * Returns: (transfer full) (element-type SwExercise): the exercises, sorted by file name, or NULL when the folder cannot
 *   be opened or @cancellable was used
 */
GPtrArray *
sw_catalogue_folder_read (const char    *folder,
                          GPtrArray    **problems,
                          GCancellable  *cancellable,
                          GError       **error)
{
  g_autoptr (GPtrArray) entries = list_files (folder, error);
  g_autoptr (GPtrArray) found = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_problem_free);
  g_autoptr (GPtrArray) exercises = NULL;
  g_autoptr (GHashTable) by_id = g_hash_table_new (g_str_hash, g_str_equal);

  if (entries == NULL)
    return NULL;

  read_entries (entries, cancellable);
  if (g_cancellable_set_error_if_cancelled (cancellable, error))
    return NULL;

  exercises = collect (entries, by_id, found);
  for (guint i = 0; i < entries->len; i++)
    {
      const Entry *entry = entries->pdata[i];

      if (entry->exercise == NULL)
        continue;
      check_links (entry, "easier", sw_exercise_get_facts (entry->exercise)->easier, by_id, found);
      check_links (entry, "harder", sw_exercise_get_facts (entry->exercise)->harder, by_id, found);
    }

  if (problems != NULL)
    *problems = g_steal_pointer (&found);
  return g_steal_pointer (&exercises);
}

/**
 * sw_catalogue_load_shipped:
 * @problems: (out) (optional) (element-type SwProblem) (transfer full): see sw_catalogue_folder_read()
 * @error: return location for an error
 *
 * Returns: (transfer full): the catalogue that comes with the program, or NULL
 */
SwCatalogue *
sw_catalogue_load_shipped (GPtrArray **problems,
                           GError    **error)
{
  g_autofree char *folder = sw_data_path ("catalogue", NULL);
  g_autoptr (GPtrArray) exercises = sw_catalogue_folder_read (folder, problems, NULL, error);
  SwCatalogue *catalogue;

  if (exercises == NULL)
    return NULL;

  catalogue = sw_catalogue_new ();
  sw_catalogue_add (catalogue, exercises);
  return catalogue;
}

/**
 * sw_catalogue_load_exercise:
 * @path_or_id: a file, or the id of an exercise that comes with the program
 * @error: return location for an error
 *
 * Returns: (transfer full): the exercise, or NULL
 */
SwExercise *
sw_catalogue_load_exercise (const char  *path_or_id,
                            GError     **error)
{
  g_autofree char *name = g_strconcat (path_or_id, SUFFIX, NULL);
  g_autofree char *shipped = sw_data_path ("catalogue", name, NULL);
  gboolean is_id = strchr (path_or_id, G_DIR_SEPARATOR) == NULL && g_file_test (shipped, G_FILE_TEST_IS_REGULAR)
                   && !g_file_test (path_or_id, G_FILE_TEST_EXISTS);
  g_autoptr (GBytes) bytes = sw_file_read (is_id ? shipped : path_or_id, SW_XML_MAX_BYTES, error);

  return bytes != NULL ? sw_exercise_from_bytes (bytes, path_or_id, error) : NULL;
}
