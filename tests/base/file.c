/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whatever goes wrong while a file is written, it holds the old or the new content whole. */
#include "config.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <sched.h>
#include <string.h>
#include <sys/mount.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "fault-ops.h"
#include "sw-file.h"

#define MOST_OPERATIONS 40
#define SKIPPED 77

/* A folder of its own with one file, removed at the end. */
typedef struct
{
  char *folder;
  char *path;
  char *kept;
} Fixture;

static void
set_up (Fixture       *fixture,
        gconstpointer  data G_GNUC_UNUSED)
{
  fixture->folder = g_dir_make_tmp ("setwright-file-XXXXXX", NULL);
  g_assert_nonnull (fixture->folder);
  fixture->path = g_build_filename (fixture->folder, "client.setwright", NULL);
  fixture->kept = g_strconcat (fixture->path, "~", NULL);
}

static int
count_files (const Fixture *fixture)
{
  g_autoptr (GDir) dir = g_dir_open (fixture->folder, 0, NULL);
  int n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;

  return n;
}

static void
empty_folder (const Fixture *fixture)
{
  g_autoptr (GDir) dir = g_dir_open (fixture->folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (fixture->folder, name, NULL);

      g_assert_cmpint (g_unlink (path), ==, 0);
    }
}

static void
tear_down (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  empty_folder (fixture);
  g_assert_cmpint (g_rmdir (fixture->folder), ==, 0);
  g_free (fixture->folder);
  g_free (fixture->path);
  g_free (fixture->kept);
}

static gboolean
write_text (const char  *path,
            const char  *text,
            const char  *expected,
            GError     **error)
{
  g_autoptr (GBytes) bytes = g_bytes_new (text, strlen (text));

  return sw_file_write (path, bytes, expected, TRUE, error);
}

static void
assert_holds (const char *path,
              const char *text)
{
  g_autofree char *content = NULL;
  g_autoptr (GError) error = NULL;

  g_file_get_contents (path, &content, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (content, ==, text);
}

static char *
hash_of (const char *text)
{
  g_autoptr (GBytes) bytes = g_bytes_new (text, strlen (text));

  return sw_file_hash (bytes);
}

/* FIPS 180-2, appendix B, examples 1 and 2. */
static void
test_hash (void)
{
  g_autofree char *one = hash_of ("abc");
  g_autofree char *two = hash_of ("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq");

  g_assert_cmpstr (one, ==, "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  g_assert_cmpstr (two, ==, "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
}

static void
test_write (Fixture       *fixture,
            gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GError) error = NULL;
  GStatBuf status;

  g_assert_true (write_text (fixture->path, "one", "", &error));
  g_assert_no_error (error);
  assert_holds (fixture->path, "one");
  g_assert_cmpint (g_stat (fixture->path, &status), ==, 0);
  g_assert_cmpint (status.st_mode & 07777, ==, 0600);
  g_assert_false (g_file_test (fixture->kept, G_FILE_TEST_EXISTS));

  g_assert_cmpint (g_chmod (fixture->path, 0640), ==, 0);
  g_assert_true (write_text (fixture->path, "two", NULL, &error));
  assert_holds (fixture->path, "two");
  assert_holds (fixture->kept, "one");
  g_assert_cmpint (g_stat (fixture->path, &status), ==, 0);
  g_assert_cmpint (status.st_mode & 07777, ==, 0640);

  g_assert_true (write_text (fixture->path, "three", NULL, &error));
  assert_holds (fixture->kept, "two");
  g_assert_cmpint (count_files (fixture), ==, 2);
}

static void
test_link (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  g_autofree char *link = g_build_filename (fixture->folder, "link", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_true (write_text (fixture->path, "one", NULL, &error));
  g_assert_cmpint (symlink (fixture->path, link), ==, 0);
  g_assert_true (write_text (link, "two", NULL, &error));
  g_assert_true (g_file_test (link, G_FILE_TEST_IS_SYMLINK));
  assert_holds (fixture->path, "two");
}

static void
test_changed (Fixture       *fixture,
              gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GError) there = NULL;
  g_autoptr (GError) other = NULL;
  g_autoptr (GError) gone = NULL;
  g_autofree char *hash = hash_of ("one");

  g_assert_true (write_text (fixture->path, "one", "", NULL));
  g_assert_false (write_text (fixture->path, "two", "", &there));
  g_assert_error (there, SW_FILE_ERROR, SW_FILE_ERROR_CHANGED);
  g_assert_true (write_text (fixture->path, "two", hash, NULL));

  g_assert_false (write_text (fixture->path, "three", hash, &other));
  g_assert_error (other, SW_FILE_ERROR, SW_FILE_ERROR_CHANGED);
  g_assert_nonnull (strstr (other->message, "client.setwright"));
  assert_holds (fixture->path, "two");

  g_assert_cmpint (g_unlink (fixture->path), ==, 0);
  g_assert_false (write_text (fixture->path, "three", hash, &gone));
  g_assert_error (gone, SW_FILE_ERROR, SW_FILE_ERROR_CHANGED);
  g_assert_false (g_file_test (fixture->path, G_FILE_TEST_EXISTS));
}

static void
test_read (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GError) missing = NULL;
  g_autoptr (GError) folder = NULL;
  g_autoptr (GError) large = NULL;
  g_autoptr (GBytes) exact = NULL;
  g_autoptr (GBytes) pipe_bytes = NULL;
  g_autofree char *fifo = g_build_filename (fixture->folder, "pipe", NULL);

  g_assert_null (sw_file_read (fixture->path, 100, &missing));
  g_assert_error (missing, SW_FILE_ERROR, SW_FILE_ERROR_READ);
  g_assert_nonnull (strstr (missing->message, "client.setwright"));
  g_assert_null (sw_file_read (fixture->folder, 100, &folder));
  g_assert_error (folder, SW_FILE_ERROR, SW_FILE_ERROR_READ);

  g_assert_true (write_text (fixture->path, "four", NULL, NULL));
  exact = sw_file_read (fixture->path, 4, NULL);
  g_assert_cmpmem (g_bytes_get_data (exact, NULL), g_bytes_get_size (exact), "four", 4);
  g_assert_null (sw_file_read (fixture->path, 3, &large));
  g_assert_error (large, SW_FILE_ERROR, SW_FILE_ERROR_TOO_LARGE);

  /* A pipe nobody writes to must not keep the reader waiting. */
  g_assert_cmpint (mkfifo (fifo, 0600), ==, 0);
  pipe_bytes = sw_file_read (fifo, 100, NULL);
  g_assert_cmpint (g_bytes_get_size (pipe_bytes), ==, 0);
}

/* A file that never ends is refused as soon as it is too large. */
static void
test_endless (void)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (sw_file_read ("/dev/zero", 1000, &error));
  g_assert_error (error, SW_FILE_ERROR, SW_FILE_ERROR_TOO_LARGE);
}

static void
assert_old_or_new (const Fixture *fixture,
                   gboolean       written)
{
  g_autofree char *content = NULL;
  g_autofree char *kept = NULL;

  g_assert_true (g_file_get_contents (fixture->path, &content, NULL, NULL));
  g_assert_true (g_str_equal (content, "new") || (!written && g_str_equal (content, "old")));

  if (g_file_get_contents (fixture->kept, &kept, NULL, NULL))
    g_assert_true (g_str_equal (kept, "old") || (!written && g_str_equal (kept, "older")));
}

static void
prepare (const Fixture *fixture)
{
  empty_folder (fixture);
  g_assert_true (write_text (fixture->path, "older", NULL, NULL));
  g_assert_true (write_text (fixture->path, "old", NULL, NULL));
}

/* Fails operation 1, 2, 3 ... until a write runs through. */
static void
try_all_faults (const Fixture *fixture,
                FaultKind      kind,
                int            error_number)
{
  gboolean written = FALSE;
  int operation = 0;

  while (!written)
    {
      g_autoptr (GError) error = NULL;
      int n;

      g_assert_cmpint (++operation, <, MOST_OPERATIONS);
      prepare (fixture);
      fault_begin (kind, operation, error_number);
      written = write_text (fixture->path, "new", NULL, &error);
      n = fault_end ();

      g_assert_true (written == (error == NULL));
      assert_old_or_new (fixture, written);
      if (written && n >= operation)
        {
          /* An operation whose failure does no harm; the file is new all the same. */
          assert_holds (fixture->path, "new");
          written = FALSE;
          continue;
        }
      if (kind == FAULT_ONCE)
        g_assert_cmpint (count_files (fixture), <=, 2);
      if (!written && error_number == ENOSPC)
        g_assert_true (g_error_matches (error, SW_FILE_ERROR, SW_FILE_ERROR_FULL)
                       || g_error_matches (error, SW_FILE_ERROR, SW_FILE_ERROR_WRITE));
      if (!written && error_number == EROFS)
        g_assert_error (error, SW_FILE_ERROR, SW_FILE_ERROR_WRITE);
    }

  g_assert_cmpint (operation, >, 7);
}

static void
test_faults (Fixture       *fixture,
             gconstpointer  data G_GNUC_UNUSED)
{
  static const int error_numbers[] = { EIO, ENOSPC, EACCES, EROFS };

  for (guint i = 0; i < G_N_ELEMENTS (error_numbers); i++)
    {
      try_all_faults (fixture, FAULT_ONCE, error_numbers[i]);
      try_all_faults (fixture, FAULT_FOR_GOOD, error_numbers[i]);
    }
}

/* The process dies at operation 1, 2, 3 ...; what it leaves must not keep the next one from writing. */
static void
test_killed (Fixture       *fixture,
             gconstpointer  data G_GNUC_UNUSED)
{
  int status = 0;

  for (int operation = 1; operation < MOST_OPERATIONS; operation++)
    {
      pid_t child;

      prepare (fixture);
      child = fork ();
      g_assert_cmpint (child, >=, 0);
      if (child == 0)
        {
          fault_begin (FAULT_KILL, operation, 0);
          _exit (write_text (fixture->path, "new", NULL, NULL) ? 0 : 1);
        }

      g_assert_cmpint (waitpid (child, &status, 0), ==, child);
      g_assert_true (WIFEXITED (status));
      assert_old_or_new (fixture, WEXITSTATUS (status) == 0);
      g_assert_true (write_text (fixture->path, "after", NULL, NULL));
      assert_holds (fixture->path, "after");
      if (WEXITSTATUS (status) == 0)
        break;
      g_assert_cmpint (WEXITSTATUS (status), ==, 137);
    }

  g_assert_cmpint (WEXITSTATUS (status), ==, 0);
}

/* Memory sticks and some shares know no links and no modes: the previous version is kept there too. */
static void
test_simple_disks (Fixture       *fixture,
                   gconstpointer  data G_GNUC_UNUSED)
{
  static const FaultKind kinds[] = { FAULT_LINKS, FAULT_MODES, FAULT_SHORT };

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autoptr (GError) error = NULL;

      prepare (fixture);
      g_assert_cmpint (g_chmod (fixture->path, 0644), ==, 0);
      fault_begin (kinds[i], 0, 0);
      g_assert_true (write_text (fixture->path, "new", NULL, &error));
      fault_end ();
      g_assert_no_error (error);
      assert_holds (fixture->path, "new");
      assert_holds (fixture->kept, "old");
      g_assert_cmpint (count_files (fixture), ==, 2);
    }
}

/* In a process of its own, that may mount: a disk of 64 kB that is full for all but the old file. */
static int
write_on_full_disk (const char *folder)
{
  g_autofree char *path = g_build_filename (folder, "client.setwright", NULL);
  g_autofree char *large = g_strnfill (200000, 'x');
  g_autofree char *content = NULL;
  g_autoptr (GError) error = NULL;

  if (unshare (CLONE_NEWNS) != 0 || mount ("none", "/", NULL, MS_REC | MS_PRIVATE, NULL) != 0
      || mount ("setwright", folder, "tmpfs", 0, "size=64k") != 0)
    return SKIPPED;
  if (!write_text (path, "old", NULL, NULL))
    return 1;
  if (write_text (path, large, NULL, &error) || !g_error_matches (error, SW_FILE_ERROR, SW_FILE_ERROR_FULL))
    return 2;
  if (!g_file_get_contents (path, &content, NULL, NULL) || !g_str_equal (content, "old"))
    return 3;

  return write_text (path, "new", NULL, NULL) ? 0 : 4;
}

static void
test_full_disk (Fixture       *fixture,
                gconstpointer  data G_GNUC_UNUSED)
{
  pid_t child = fork ();
  int status;

  g_assert_cmpint (child, >=, 0);
  if (child == 0)
    _exit (write_on_full_disk (fixture->folder));

  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  g_assert_true (WIFEXITED (status));
  if (WEXITSTATUS (status) == SKIPPED)
    g_test_skip ("this system lets no test mount a small disk");
  else
    g_assert_cmpint (WEXITSTATUS (status), ==, 0);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/base/file/hash", test_hash);
  g_test_add ("/base/file/write", Fixture, NULL, set_up, test_write, tear_down);
  g_test_add ("/base/file/link", Fixture, NULL, set_up, test_link, tear_down);
  g_test_add ("/base/file/changed", Fixture, NULL, set_up, test_changed, tear_down);
  g_test_add ("/base/file/read", Fixture, NULL, set_up, test_read, tear_down);
  g_test_add_func ("/base/file/endless", test_endless);
  g_test_add ("/base/file/faults", Fixture, NULL, set_up, test_faults, tear_down);
  g_test_add ("/base/file/killed", Fixture, NULL, set_up, test_killed, tear_down);
  g_test_add ("/base/file/simple-disks", Fixture, NULL, set_up, test_simple_disks, tear_down);
  g_test_add ("/base/file/full-disk", Fixture, NULL, set_up, test_full_disk, tear_down);
  return g_test_run ();
}
