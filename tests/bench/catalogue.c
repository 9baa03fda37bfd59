/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Opening a catalogue of 10,000 exercises, beside a floor measured in the same run: libxml2 merely parsing the same
 * files. Fails above twice the floor. */
#include "config.h"

#include <glib/gstdio.h>
#include <libxml/parser.h>
#include <stdio.h>
#include <string.h>

#include "sw-catalogue-folder.h"
#include "sw-data-dir.h"

#define N_EXERCISES 10000
#define N_ROUNDS 5
#define MOST_RATIO 2.0

static void
write_file (const char *path,
            const char *text)
{
  if (!g_file_set_contents_full (path, text, -1, G_FILE_SET_CONTENTS_NONE, 0600, NULL))
    g_error ("%s cannot be written", path);
}

/* The shipped exercises, so that all links lead somewhere, and copies of them under ids of their own. */
static GPtrArray *
make_catalogue (const char *folder)
{
  g_autofree char *shipped = sw_data_path ("catalogue", NULL);
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GDir) dir = g_dir_open (shipped, 0, NULL);
  GPtrArray *paths = g_ptr_array_new_with_free_func (g_free);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (shipped, name, NULL);
      char *text;

      if (!g_file_get_contents (path, &text, NULL, NULL))
        g_error ("%s cannot be read", path);
      g_ptr_array_add (texts, text);
      g_ptr_array_add (paths, g_build_filename (folder, name, NULL));
      write_file (paths->pdata[paths->len - 1], text);
    }

  for (guint i = 0; paths->len < N_EXERCISES; i++)
    {
      const char *text = texts->pdata[i % texts->len];
      const char *start = strstr (text, " id=\"") + strlen (" id=\"");
      g_autofree char *file = g_strdup_printf ("exercise-%05u.xml", i);
      g_autofree char *copy = g_strdup_printf ("%.*sexercise-%05u%s", (int) (start - text), text, i, strchr (start, '"'));

      g_ptr_array_add (paths, g_build_filename (folder, file, NULL));
      write_file (paths->pdata[paths->len - 1], copy);
    }

  return paths;
}

static void
remove_catalogue (const char *folder,
                  GPtrArray  *paths)
{
  for (guint i = 0; i < paths->len; i++)
    g_unlink (paths->pdata[i]);
  g_rmdir (folder);
}

static double
measure_floor (GPtrArray *paths)
{
  gint64 start = g_get_monotonic_time ();

  for (guint i = 0; i < paths->len; i++)
    xmlFreeDoc (xmlReadFile (paths->pdata[i], NULL, XML_PARSE_NONET));

  return (double) (g_get_monotonic_time () - start) / 1000.0;
}

static double
measure_ours (const char *folder)
{
  gint64 start = g_get_monotonic_time ();
  double ms;
  g_autoptr (GPtrArray) problems = NULL;
  g_autoptr (GPtrArray) exercises = sw_catalogue_folder_read (folder, &problems, NULL, NULL);

  ms = (double) (g_get_monotonic_time () - start) / 1000.0;
  if (exercises == NULL || exercises->len != N_EXERCISES || problems->len > 0)
    g_error ("not all exercises were read without a problem");
  return ms;
}

int
main (void)
{
  g_autofree char *folder = g_dir_make_tmp ("setwright-bench-XXXXXX", NULL);
  g_autoptr (GPtrArray) paths = make_catalogue (folder);
  double floor_ms = G_MAXDOUBLE, ours_ms = G_MAXDOUBLE;

  for (int i = 0; i < N_ROUNDS; i++)
    {
      double one_floor_ms = measure_floor (paths);
      double one_ours_ms = measure_ours (folder);

      floor_ms = MIN (floor_ms, one_floor_ms);
      ours_ms = MIN (ours_ms, one_ours_ms);
    }
  remove_catalogue (folder, paths);

  printf ("%d exercises opened in %.0f ms, merely parsed in %.0f ms: %.2f times (at most %.1f)\n", N_EXERCISES, ours_ms,
          floor_ms, ours_ms / floor_ms, MOST_RATIO);
  return ours_ms <= MOST_RATIO * floor_ms ? 0 : 1;
}
