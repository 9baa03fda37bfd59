/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Writes exercises that were written by hand as the program writes them: the same content, each thing in its place,
 * so that a later change by the program shows in a comparison as that change and nothing else. */
#include "config.h"

#include "sw-exercise-xml.h"
#include "sw-file.h"

static gboolean
tidy (const char  *path,
      GError     **error)
{
  g_autoptr (GBytes) bytes = sw_file_read (path, SW_XML_MAX_BYTES, error);
  g_autoptr (SwExercise) exercise = bytes != NULL ? sw_exercise_from_bytes (bytes, path, error) : NULL;
  g_autoptr (GBytes) tidied = exercise != NULL ? sw_exercise_to_bytes (exercise) : NULL;

  return tidied != NULL && (g_bytes_equal (bytes, tidied) || sw_file_write (path, tidied, NULL, FALSE, error));
}

int
main (int    argc,
      char **argv)
{
  int status = 0;

  for (int i = 1; i < argc; i++)
    {
      g_autoptr (GError) error = NULL;

      if (tidy (argv[i], &error))
        continue;

      g_printerr ("%s\n", error->message);
      status = 1;
    }

  return status;
}
