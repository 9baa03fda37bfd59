/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Runs a fuzz entry without a fuzzer: over the kept inputs, and over many damaged copies of each, the same ones every
 * time. With clang the entry can be searched further:
 *
 *   CC=clang CFLAGS=-fsanitize=fuzzer-no-link meson setup build-fuzz -Db_sanitize=address,undefined -Db_lundef=false
 *   ninja -C build-fuzz tests/fuzz/fuzzer-documents && build-fuzz/tests/fuzz/fuzzer-documents tests/fuzz/documents */
#include "config.h"

#include <glib.h>
#include <string.h>

#include "fuzz.h"

#define N_DAMAGED 2000
#define SEED 20261120

/* Flips, drops, doubles or moves a few bytes. */
static GByteArray *
damage (GRand        *random,
        const guint8 *data,
        gsize         length)
{
  GByteArray *copy = g_byte_array_new ();
  int n = g_rand_int_range (random, 1, 5);

  g_byte_array_append (copy, data, (guint) length);
  for (int i = 0; i < n && copy->len > 1; i++)
    {
      guint at = (guint) g_rand_int_range (random, 0, (gint32) copy->len);
      guint longest = MIN (40, copy->len - at);
      guint run = (guint) g_rand_int_range (random, 1, (gint32) longest + 1);
      g_autofree guint8 *taken = g_memdup2 (copy->data + at, run);

      switch (g_rand_int_range (random, 0, 4))
        {
        case 0:
          copy->data[at] = (guint8) g_rand_int_range (random, 0, 256);
          break;
        case 1:
          g_byte_array_remove_range (copy, at, run);
          break;
        case 2:
          g_byte_array_append (copy, taken, run);
          break;
        default:
          memmove (copy->data + g_rand_int_range (random, 0, (gint32) (copy->len - run + 1)), taken, run);
        }
    }

  return copy;
}

static void
test_kept (gconstpointer path)
{
  GRand *random = g_rand_new_with_seed (SEED);
  g_autofree char *content = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (path, &content, &length, NULL));
  LLVMFuzzerTestOneInput ((const uint8_t *) content, length);
  for (int i = 0; i < N_DAMAGED; i++)
    {
      g_autoptr (GByteArray) damaged = damage (random, (const guint8 *) content, length);

      LLVMFuzzerTestOneInput (damaged->data, damaged->len);
    }

  g_rand_free (random);
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (GDir) dir = NULL;
  g_autoptr (GPtrArray) paths = g_ptr_array_new_with_free_func (g_free);
  const char *name;

  g_test_init (&argc, &argv, NULL);
  if (argc != 2)
    return 1;

  dir = g_dir_open (argv[1], 0, NULL);
  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      char *path = g_build_filename (argv[1], name, NULL);
      g_autofree char *test = g_strconcat ("/fuzz/", name, NULL);

      g_ptr_array_add (paths, path);
      g_test_add_data_func (test, path, test_kept);
    }

  return paths->len > 0 ? g_test_run () : 1;
}
