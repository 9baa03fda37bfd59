/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Finds the files that are shipped but not compiled, installed or straight from the build folder. */
#include "config.h"

#include <stdarg.h>

#include "sw-data-dir.h"

static const char *
data_dir (void)
{
  static char *dir = NULL;

  if (g_once_init_enter (&dir))
    {
      const char *named = g_getenv ("SETWRIGHT_DATA");
      const char *found = SW_INSTALLED_DATA_DIR;

      if (named != NULL && *named != '\0')
        found = named;
      else if (g_file_test (SW_SOURCE_DATA_DIR, G_FILE_TEST_IS_DIR))
        found = SW_SOURCE_DATA_DIR;

      g_once_init_leave (&dir, g_strdup (found));
    }

  return dir;
}

/**
 * sw_data_path:
 * @first: first element below the data folder, such as "schema"
 * @...: further elements, then NULL
 *
 * The data folder is the one named by the environment variable SETWRIGHT_DATA, else the source folder
 * the program was built from, else where it was installed to.
 *
 * Returns: (transfer full): a path; whether it exists is not looked at
 */
char *
sw_data_path (const char *first,
              ...)
{
  g_autoptr (GStrvBuilder) parts = g_strv_builder_new ();
  g_auto (GStrv) path = NULL;
  va_list args;

  g_strv_builder_add (parts, data_dir ());
  va_start (args, first);
  for (const char *part = first; part != NULL; part = va_arg (args, const char *))
    g_strv_builder_add (parts, part);
  va_end (args);

  path = g_strv_builder_end (parts);
  return g_build_filenamev (path);
}
