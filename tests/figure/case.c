/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Finds and loads the figures and tables that tests work on. */
#include "config.h"

#include <string.h>

#include "case.h"
#include "sw-figure-xml.h"

#define NS "urn:setwright:exercise"

static const xmlNode *
find_figure (const xmlNode *node)
{
  for (; node != NULL; node = node->next)
    {
      const xmlNode *inner;

      if (sw_xml_is (node, NS, "figure"))
        return node;
      inner = find_figure (node->children);
      if (inner != NULL)
        return inner;
    }
  return NULL;
}

static SwFigureSpec *
parse (GBytes     *bytes,
       const char *name)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (xmlDoc) doc = sw_xml_parse_bytes (bytes, name, &error);
  SwFigureSpec *spec;

  g_assert_no_error (error);
  spec = sw_figure_xml_read (find_figure (doc->children), &error);
  g_assert_no_error (error);
  return spec;
}

/* A file that is a figure or holds one. */
SwFigureSpec *
test_case_load (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = NULL;
  char *text;
  gsize length;

  g_file_get_contents (path, &text, &length, &error);
  g_assert_no_error (error);
  bytes = g_bytes_new_take (text, length);
  return parse (bytes, path);
}

/* What stands between <figure> and </figure>. */
SwFigureSpec *
test_case_parse (const char *xml)
{
  g_autofree char *text = g_strdup_printf ("<figure xmlns=\"" NS "\">%s</figure>", xml);
  g_autoptr (GBytes) bytes = g_bytes_new (text, strlen (text));

  return parse (bytes, "test");
}

static int
compare_paths (gconstpointer a,
               gconstpointer b)
{
  return strcmp (*(char *const *) a, *(char *const *) b);
}

static void
add_folder (GPtrArray  *paths,
            const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, ".xml"))
      g_ptr_array_add (paths, g_build_filename (folder, name, NULL));
}

/* All files of tests/figure/cases, sorted. */
GPtrArray *
test_case_list_own (void)
{
  g_autofree char *folder = g_test_build_filename (G_TEST_DIST, "cases", NULL);
  GPtrArray *paths = g_ptr_array_new_with_free_func (g_free);

  add_folder (paths, folder);
  g_ptr_array_sort (paths, compare_paths);
  return paths;
}

/* Those and all of the catalogue, sorted. */
GPtrArray *
test_case_list (void)
{
  GPtrArray *paths = test_case_list_own ();

  add_folder (paths, g_getenv ("SETWRIGHT_CATALOGUE"));
  g_ptr_array_sort (paths, compare_paths);
  return paths;
}

/* Rows of a table of tests/reference as string vectors, without the heading. */
GPtrArray *
test_reference_rows (const char *name)
{
  g_autofree char *path = g_build_filename (g_getenv ("SETWRIGHT_REFERENCE"), name, NULL);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;
  g_auto (GStrv) lines = NULL;
  GPtrArray *rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  lines = g_strsplit (text, "\n", -1);
  for (int i = 1; lines[i] != NULL; i++)
    if (lines[i][0] != '\0')
      g_ptr_array_add (rows, g_strsplit (lines[i], ",", -1));

  g_assert_cmpuint (rows->len, >, 0);
  return rows;
}
