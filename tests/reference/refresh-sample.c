/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Brings a programme in step with a folder of exercises: every snapshot whose exercise is there is replaced by it.
 * For the sample, after its exercises changed; a client's programme keeps what the client was given. */
#include "config.h"

#include "sw-catalogue-folder.h"
#include "sw-file.h"
#include "sw-programme-file.h"
#include "sw-programme-xml.h"

static void
refresh (SwProgramme *programme,
         SwCatalogue *catalogue)
{
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);

  for (guint i = 0; i < items->len; i++)
    {
      SwExercise *snapshot = sw_item_get_exercise (items->pdata[i]);
      SwExercise *current = snapshot != NULL ? sw_catalogue_lookup (catalogue, sw_exercise_get_id (snapshot)) : NULL;

      if (current != NULL)
        g_object_set (items->pdata[i], "exercise", current, NULL);
    }
}

static gboolean
run (const char  *path,
     const char  *folder,
     GError     **error)
{
  g_autoptr (GPtrArray) exercises = sw_catalogue_folder_read (folder, NULL, NULL, error);
  g_autoptr (SwProgrammeFile) file = sw_programme_file_new (path);
  g_autoptr (SwProgramme) programme = exercises != NULL ? sw_programme_file_load (file, error) : NULL;
  g_autoptr (SwCatalogue) catalogue = sw_catalogue_new ();
  g_autoptr (GBytes) bytes = NULL;

  if (programme == NULL)
    return FALSE;

  sw_catalogue_add (catalogue, exercises);
  refresh (programme, catalogue);
  bytes = sw_programme_to_bytes (programme);
  return sw_file_write (path, bytes, NULL, FALSE, error);
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (GError) error = NULL;

  if (argc != 3)
    {
      g_printerr ("usage: refresh-sample PROGRAMME FOLDER\n");
      return 2;
    }
  if (!run (argv[1], argv[2], &error))
    {
      g_printerr ("%s\n", error->message);
      return 1;
    }

  return 0;
}
