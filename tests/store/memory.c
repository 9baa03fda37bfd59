/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * libxml2 runs out of memory at its n-th allocation, for every n: a document is read whole or not at all. */
#include "config.h"

#include <stdlib.h>
#include <string.h>

#include "sw-programme-xml.h"

static gboolean counting;
static gboolean for_good;
static int n_allocations;
static int failing; /* from 1; 0 for none */

static gboolean
fails (void)
{
  if (!counting)
    return FALSE;

  n_allocations++;
  return failing > 0 && (n_allocations == failing || (for_good && n_allocations > failing));
}

static void *
scarce_malloc (size_t size)
{
  return fails () ? NULL : malloc (size);
}

static void *
scarce_realloc (void  *old,
                size_t size)
{
  return fails () ? NULL : realloc (old, size);
}

static char *
scarce_strdup (const char *text)
{
  return fails () ? NULL : strdup (text);
}

static SwProgramme *
read_counted (GBytes   *bytes,
              int       operation,
              gboolean  all_after,
              GError  **error)
{
  SwProgramme *programme;

  n_allocations = 0;
  failing = operation;
  for_good = all_after;
  counting = TRUE;
  programme = sw_programme_from_bytes (bytes, "client.setwright", error);
  counting = FALSE;
  return programme;
}

static void
test_scarce (gconstpointer name)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "cases", name, NULL);
  g_autofree char *text = NULL;
  g_autoptr (GBytes) bytes = NULL;
  gsize length;
  int n, n_read = 0;

  g_assert_true (g_file_get_contents (path, &text, &length, NULL));
  bytes = g_bytes_new (text, length);
  g_object_unref (read_counted (bytes, 0, FALSE, NULL));
  n = n_allocations;
  g_assert_cmpint (n, >, 100);

  for (int operation = 1; operation <= n; operation++)
    for (int all_after = 0; all_after <= 1; all_after++)
      {
        g_autoptr (GError) error = NULL;
        g_autoptr (SwProgramme) programme = read_counted (bytes, operation, all_after == 1, &error);
        g_autoptr (GBytes) written = NULL;

        g_assert_true ((programme == NULL) == (error != NULL));
        if (programme == NULL)
          {
            g_assert_true (g_str_has_prefix (error->message, "client.setwright"));
            continue;
          }

        n_read++;
        written = sw_programme_to_bytes (programme);
        g_assert_true (g_bytes_equal (written, bytes));
      }

  g_test_message ("%d allocations; %d of %d failures did no harm, the others were told of", n, n_read, 2 * n);
}

/* libxml2 would print what it has no memory for. */
static void
test_silent (void)
{
  if (g_test_subprocess ())
    {
      test_scarce ("gardener.setwright");
      return;
    }

  g_test_trap_subprocess (NULL, 0, 0);
  g_test_trap_assert_passed ();
  g_test_trap_assert_stderr ("");
}

int
main (int    argc,
      char **argv)
{
  if (xmlMemSetup (free, scarce_malloc, scarce_realloc, scarce_strdup) != 0)
    return 1;

  g_test_init (&argc, &argv, NULL);
  g_test_add_data_func ("/store/memory/gardener", "gardener.setwright", test_scarce);
  g_test_add_data_func ("/store/memory/newer", "newer.setwright", test_scarce);
  g_test_add_func ("/store/memory/silent", test_silent);
  return g_test_run ();
}
