/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Opening and saving a programme: nobody's work is lost, whatever goes wrong. */
#include "config.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "fault-ops.h"
#include "sw-file.h"
#include "sw-programme-file.h"
#include "sw-xml.h"

#define MOST_OPERATIONS 40

/* A folder of its own with the sample in it. */
typedef struct
{
  char *folder;
  char *path;
  char *kept;
  char *text;
} Fixture;

static void
set_up (Fixture       *fixture,
        gconstpointer  data G_GNUC_UNUSED)
{
  g_autofree char *sample = g_test_build_filename (G_TEST_DIST, "cases", "newer.setwright", NULL);

  fixture->folder = g_dir_make_tmp ("setwright-programme-XXXXXX", NULL);
  fixture->path = g_build_filename (fixture->folder, "client.setwright", NULL);
  fixture->kept = g_strconcat (fixture->path, "~", NULL);
  g_assert_true (g_file_get_contents (sample, &fixture->text, NULL, NULL));
  g_assert_true (g_file_set_contents (fixture->path, fixture->text, -1, NULL));
}

static void
tear_down (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GDir) dir = g_dir_open (fixture->folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (fixture->folder, name, NULL);

      g_assert_cmpint (g_unlink (path), ==, 0);
    }
  g_assert_cmpint (g_rmdir (fixture->folder), ==, 0);
  g_free (fixture->folder);
  g_free (fixture->path);
  g_free (fixture->kept);
  g_free (fixture->text);
}

static char *
content_of (const char *path)
{
  char *content = NULL;

  g_file_get_contents (path, &content, NULL, NULL);
  return content;
}

static void
assert_holds (const char *path,
              const char *text)
{
  g_autofree char *content = content_of (path);

  g_assert_cmpstr (content, ==, text);
}

static void
rename_client (SwProgramme *programme,
               const char  *name)
{
  g_object_set (sw_programme_get_client (programme), "name", name, NULL);
}

/* Opening and saving without an edit changes not a byte, even of a file no program of ours has written. */
static void
test_unedited (Fixture       *fixture,
               gconstpointer  data G_GNUC_UNUSED)
{
  g_autofree char *odd = g_strconcat (fixture->text, "<!-- behind -->\n\n", NULL);
  g_autoptr (SwProgrammeFile) file = sw_programme_file_new (fixture->path);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwProgramme) programme = NULL;
  GStatBuf before, after;

  g_assert_true (g_file_set_contents (fixture->path, odd, -1, NULL));
  g_assert_cmpint (g_stat (fixture->path, &before), ==, 0);
  programme = sw_programme_file_load (file, &error);
  g_assert_no_error (error);
  g_assert_true (sw_programme_file_save (file, programme, FALSE, FALSE, &error));
  g_assert_no_error (error);
  assert_holds (fixture->path, odd);

  /* Nor is the file touched, or the previous version pushed out by a copy of the present one. */
  g_assert_cmpint (g_stat (fixture->path, &after), ==, 0);
  g_assert_true (before.st_ino == after.st_ino);
  g_assert_false (g_file_test (fixture->kept, G_FILE_TEST_EXISTS));
  g_assert_finalize_object (g_steal_pointer (&file));
}

static void
test_edited (Fixture       *fixture,
             gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (SwProgrammeFile) file = sw_programme_file_new (fixture->path);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwProgramme) programme = sw_programme_file_load (file, &error);
  g_autofree char *first = NULL;
  g_autofree char *second = NULL;

  rename_client (programme, "First");
  g_assert_true (sw_programme_file_save (file, programme, TRUE, FALSE, &error));
  g_assert_no_error (error);
  assert_holds (fixture->kept, fixture->text);
  first = content_of (fixture->path);
  g_assert_nonnull (strstr (first, "name=\"First\""));

  rename_client (programme, "Second");
  g_assert_true (sw_programme_file_save (file, programme, TRUE, FALSE, &error));
  assert_holds (fixture->kept, first);
  second = content_of (fixture->path);
  g_assert_nonnull (strstr (second, "name=\"Second\""));
}

static void
test_new (Fixture       *fixture,
          gconstpointer  data G_GNUC_UNUSED)
{
  g_autofree char *path = g_build_filename (fixture->folder, "other.setwright", NULL);
  g_autoptr (SwProgrammeFile) file = sw_programme_file_new (path);
  g_autoptr (SwProgrammeFile) taken = sw_programme_file_new (fixture->path);
  g_autoptr (SwProgramme) programme = sw_programme_new_standard ();
  g_autoptr (GError) error = NULL;
  GStatBuf status;

  g_assert_true (sw_programme_file_save (file, programme, TRUE, FALSE, &error));
  g_assert_no_error (error);
  g_assert_cmpint (g_stat (path, &status), ==, 0);
  g_assert_cmpint (status.st_mode & 07777, ==, 0600);

  g_assert_false (sw_programme_file_save (taken, programme, TRUE, FALSE, &error));
  g_assert_error (error, SW_FILE_ERROR, SW_FILE_ERROR_CHANGED);
  assert_holds (fixture->path, fixture->text);
}

/* A file that somebody else has changed is not written over unless that was asked for. */
static void
test_changed (Fixture       *fixture,
              gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (SwProgrammeFile) mine = sw_programme_file_new (fixture->path);
  g_autoptr (SwProgrammeFile) theirs = sw_programme_file_new (fixture->path);
  g_autoptr (SwProgramme) my_programme = sw_programme_file_load (mine, NULL);
  g_autoptr (SwProgramme) their_programme = sw_programme_file_load (theirs, NULL);
  g_autoptr (GError) error = NULL;
  g_autofree char *their_text = NULL;
  g_autofree char *my_text = NULL;

  rename_client (their_programme, "Theirs");
  g_assert_true (sw_programme_file_save (theirs, their_programme, TRUE, FALSE, NULL));
  their_text = content_of (fixture->path);

  rename_client (my_programme, "Mine");
  g_assert_false (sw_programme_file_save (mine, my_programme, TRUE, FALSE, &error));
  g_assert_error (error, SW_FILE_ERROR, SW_FILE_ERROR_CHANGED);
  assert_holds (fixture->path, their_text);

  g_clear_error (&error);
  g_assert_true (sw_programme_file_save (mine, my_programme, TRUE, TRUE, &error));
  g_assert_no_error (error);
  my_text = content_of (fixture->path);
  g_assert_nonnull (strstr (my_text, "name=\"Mine\""));
  assert_holds (fixture->kept, their_text);
}

static gboolean
is_whole (const Fixture *fixture,
          const char    *name)
{
  g_autofree char *content = content_of (fixture->path);
  g_autofree char *wanted = g_strdup_printf ("name=\"%s\"", name);

  return content != NULL && strstr (content, wanted) != NULL && g_str_has_suffix (content, "</programme>\n");
}

/* Fails operation 1, 2, 3 ...; then all is well again, and the same file object saves what it could not save. */
static void
try_faults (Fixture   *fixture,
            FaultKind  kind,
            int        error_number)
{
  gboolean saved = FALSE;

  for (int operation = 1; !saved; operation++)
    {
      g_autoptr (SwProgrammeFile) file = sw_programme_file_new (fixture->path);
      g_autoptr (SwProgramme) programme = NULL;
      g_autoptr (GError) error = NULL;
      gboolean good;

      g_assert_cmpint (operation, <, MOST_OPERATIONS);
      g_assert_true (g_file_set_contents (fixture->path, fixture->text, -1, NULL));
      programme = sw_programme_file_load (file, NULL);
      rename_client (programme, "New");

      fault_begin (kind, operation, error_number);
      good = sw_programme_file_save (file, programme, TRUE, FALSE, &error);
      saved = good && fault_end () < operation;
      fault_end ();
      g_assert_true (good == (error == NULL));
      g_assert_true (is_whole (fixture, "New") || (!good && is_whole (fixture, "Alex Gardener")));

      rename_client (programme, "Newer");
      g_clear_error (&error);
      g_assert_true (sw_programme_file_save (file, programme, TRUE, FALSE, &error));
      g_assert_no_error (error);
      g_assert_true (is_whole (fixture, "Newer"));
    }
}

static void
test_faults (Fixture       *fixture,
             gconstpointer  data G_GNUC_UNUSED)
{
  try_faults (fixture, FAULT_ONCE, EIO);
  try_faults (fixture, FAULT_ONCE, ENOSPC);
  try_faults (fixture, FAULT_FOR_GOOD, ENOSPC);
  try_faults (fixture, FAULT_FOR_GOOD, EROFS);
}

/* As for the user root, whom modes do not keep out, the folder refuses by what its operations answer. */
static void
test_read_only_folder (Fixture       *fixture,
                       gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (SwProgrammeFile) file = sw_programme_file_new (fixture->path);
  g_autoptr (SwProgramme) programme = sw_programme_file_load (file, NULL);
  g_autoptr (GError) error = NULL;

  rename_client (programme, "New");
  fault_begin (FAULT_FOR_GOOD, 1, EACCES);
  g_assert_false (sw_programme_file_save (file, programme, TRUE, FALSE, &error));
  fault_end ();
  g_assert_error (error, SW_FILE_ERROR, SW_FILE_ERROR_WRITE);
  g_assert_nonnull (strstr (error->message, "client.setwright"));
  g_assert_nonnull (strstr (error->message, "another folder"));
  assert_holds (fixture->path, fixture->text);
}

static void
test_killed (Fixture       *fixture,
             gconstpointer  data G_GNUC_UNUSED)
{
  int status = 256;

  for (int operation = 1; status != 0; operation++)
    {
      g_autoptr (SwProgrammeFile) file = sw_programme_file_new (fixture->path);
      g_autoptr (SwProgramme) programme = NULL;
      g_autoptr (GError) error = NULL;
      pid_t child;

      g_assert_cmpint (operation, <, MOST_OPERATIONS);
      g_assert_true (g_file_set_contents (fixture->path, fixture->text, -1, NULL));
      programme = sw_programme_file_load (file, NULL);
      rename_client (programme, "New");

      child = fork ();
      if (child == 0)
        {
          fault_begin (FAULT_KILL, operation, 0);
          if (sw_programme_file_save (file, programme, TRUE, FALSE, &error))
            _exit (0);
          g_printerr ("%s\n", error->message);
          _exit (1);
        }

      g_assert_cmpint (waitpid (child, &status, 0), ==, child);
      g_assert_true (WIFEXITED (status));
      g_assert_true (WEXITSTATUS (status) == 0 || WEXITSTATUS (status) == 137);
      g_assert_true (is_whole (fixture, "New") || (status != 0 && is_whole (fixture, "Alex Gardener")));
    }
}

/* A hundred megabytes of nesting are refused at once, without being read to the end. */
static void
test_nesting (Fixture       *fixture,
              gconstpointer  data G_GNUC_UNUSED)
{
  g_autofree char *block = g_malloc (3 * 1024 * 1024 + 1);
  g_autoptr (SwProgrammeFile) file = sw_programme_file_new (fixture->path);
  g_autoptr (GError) error = NULL;
  FILE *stream = g_fopen (fixture->path, "w");

  for (int i = 0; i < 1024 * 1024; i++)
    memcpy (block + 3 * i, "<a>", 3);
  for (int i = 0; i < 34; i++)
    g_assert_cmpuint (fwrite (block, 1, 3 * 1024 * 1024, stream), ==, 3 * 1024 * 1024);
  fclose (stream);

  g_test_timer_start ();
  g_assert_null (sw_programme_file_load (file, &error));
  g_assert_error (error, SW_FILE_ERROR, SW_FILE_ERROR_TOO_LARGE);
  g_test_message ("refused after %.3f s: %s", g_test_timer_elapsed (), error->message);
}

static void
done_cb (GObject      *object G_GNUC_UNUSED,
         GAsyncResult *result,
         gpointer      data)
{
  GAsyncResult **place = data;

  *place = g_object_ref (result);
}

static GAsyncResult *
wait_for (GAsyncResult **place)
{
  while (*place == NULL)
    g_main_context_iteration (NULL, TRUE);

  return *place;
}

static void
test_async (Fixture       *fixture,
            gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (SwProgrammeFile) file = sw_programme_file_new (fixture->path);
  g_autoptr (GAsyncResult) loaded = NULL;
  g_autoptr (GAsyncResult) saved = NULL;
  g_autoptr (GAsyncResult) cancelled = NULL;
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (SwProgramme) programme = NULL;
  g_autoptr (GError) error = NULL;

  sw_programme_file_load_async (file, NULL, done_cb, &loaded);
  programme = sw_programme_file_load_finish (file, wait_for (&loaded), &error);
  g_assert_no_error (error);

  /* The text is made before the function returns: what follows it is not in the file. */
  rename_client (programme, "Saved");
  sw_programme_file_save_async (file, programme, TRUE, FALSE, NULL, done_cb, &saved);
  rename_client (programme, "Typed meanwhile");
  g_assert_true (sw_programme_file_save_finish (file, wait_for (&saved), &error));
  g_assert_no_error (error);
  g_assert_true (is_whole (fixture, "Saved"));

  g_cancellable_cancel (cancellable);
  sw_programme_file_save_async (file, programme, TRUE, FALSE, cancellable, done_cb, &cancelled);
  g_assert_false (sw_programme_file_save_finish (file, wait_for (&cancelled), &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_assert_true (is_whole (fixture, "Saved"));
}

static void
test_async_damaged (Fixture       *fixture,
                    gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (SwProgrammeFile) file = sw_programme_file_new (fixture->path);
  g_autoptr (GAsyncResult) loaded = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (g_file_set_contents (fixture->path, fixture->text, 700, NULL));
  sw_programme_file_load_async (file, NULL, done_cb, &loaded);
  g_assert_null (sw_programme_file_load_finish (file, wait_for (&loaded), &error));
  g_assert_error (error, SW_XML_ERROR, SW_XML_ERROR_MALFORMED);
  g_assert_true (g_str_has_prefix (error->message, "client.setwright, line "));
}

#define ADD(name, function) g_test_add ("/store/programme-file/" name, Fixture, NULL, set_up, function, tear_down)

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  ADD ("unedited", test_unedited);
  ADD ("edited", test_edited);
  ADD ("new", test_new);
  ADD ("changed", test_changed);
  ADD ("faults", test_faults);
  ADD ("read-only-folder", test_read_only_folder);
  ADD ("killed", test_killed);
  ADD ("nesting", test_nesting);
  ADD ("async", test_async);
  ADD ("async-damaged", test_async_damaged);
  return g_test_run ();
}
