/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Drafts come back after a crash, in a folder nobody else can look into. */
#include "config.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <string.h>

#include "fault-ops.h"
#include "sw-drafts.h"
#include "sw-file.h"
#include "sw-programme-file.h"
#include "sw-programme-xml.h"

static void
done_cb (GObject      *object G_GNUC_UNUSED,
         GAsyncResult *result,
         gpointer      data)
{
  GAsyncResult **place = data;

  *place = g_object_ref (result);
}

static gboolean
write_draft (const char   *path,
             SwProgramme  *programme,
             const char   *original,
             GError      **error)
{
  g_autoptr (GAsyncResult) result = NULL;

  sw_draft_write_async (path, programme, original, NULL, NULL, done_cb, &result);
  while (result == NULL)
    g_main_context_iteration (NULL, TRUE);

  return sw_draft_write_finish (result, error);
}

static SwProgramme *
load_sample (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "cases", "newer.setwright", NULL);
  g_autoptr (GBytes) bytes = sw_file_read (path, 1000000, NULL);

  return sw_programme_from_bytes (bytes, "newer.setwright", NULL);
}

static void
assert_equal (SwProgramme *a,
              SwProgramme *b)
{
  g_autoptr (GBytes) a_bytes = sw_programme_to_bytes (a);
  g_autoptr (GBytes) b_bytes = sw_programme_to_bytes (b);

  g_assert_true (g_bytes_equal (a_bytes, b_bytes));
}

static void
discard_all (void)
{
  g_autoptr (GPtrArray) drafts = sw_drafts_list ();

  for (guint i = 0; i < drafts->len; i++)
    g_assert_true (sw_draft_discard (((SwDraft *) drafts->pdata[i])->path, NULL));
}

static void
test_none (void)
{
  g_autoptr (GPtrArray) drafts = sw_drafts_list ();
  g_autofree char *path = sw_draft_dup_new_path ();

  g_assert_cmpuint (drafts->len, ==, 0);
  g_assert_true (sw_draft_discard (path, NULL));
}

static void
test_write_and_read (void)
{
  g_autoptr (SwProgramme) programme = load_sample ();
  g_autoptr (SwProgramme) fresh = sw_programme_new_standard ();
  g_autoptr (SwProgramme) read = NULL;
  g_autoptr (GPtrArray) drafts = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = sw_drafts_folder ();
  g_autofree char *path = sw_draft_dup_new_path ();
  g_autofree char *fresh_path = sw_draft_dup_new_path ();
  const SwDraft *draft, *other;
  GStatBuf status;

  g_assert_true (write_draft (path, programme, "/srv/Zoë & Bob/client.setwright", &error));
  g_assert_no_error (error);
  g_assert_true (write_draft (fresh_path, fresh, NULL, &error));

  /* Nobody else may look, and the client's name is no file's name. */
  g_assert_cmpint (g_stat (folder, &status), ==, 0);
  g_assert_cmpint (status.st_mode & 0777, ==, 0700);

  drafts = sw_drafts_list ();
  g_assert_cmpuint (drafts->len, ==, 2);
  draft = drafts->pdata[0];
  other = drafts->pdata[1];
  if (draft->original == NULL)
    {
      draft = drafts->pdata[1];
      other = drafts->pdata[0];
    }
  g_assert_cmpstr (draft->original, ==, "/srv/Zoë & Bob/client.setwright");
  g_assert_cmpstr (draft->path, ==, path);
  g_assert_null (strstr (draft->path, "Gardener"));
  g_assert_null (strstr (draft->path, "client"));
  g_assert_cmpint (ABS (draft->saved_at - g_get_real_time () / G_USEC_PER_SEC), <=, 10);
  g_assert_null (other->original);
  g_assert_cmpint (g_stat (draft->path, &status), ==, 0);
  g_assert_cmpint (status.st_mode & 0777, ==, 0600);

  read = sw_draft_read (draft, &error);
  g_assert_no_error (error);
  assert_equal (read, programme);
  discard_all ();
  test_none ();
}

static void
test_replaced (void)
{
  g_autoptr (SwProgramme) programme = load_sample ();
  g_autoptr (SwProgramme) read = NULL;
  g_autoptr (GPtrArray) drafts = NULL;
  g_autofree char *path = sw_draft_dup_new_path ();

  g_assert_true (write_draft (path, programme, NULL, NULL));
  g_object_set (sw_programme_get_client (programme), "name", "Later", NULL);
  g_assert_true (write_draft (path, programme, NULL, NULL));
  drafts = sw_drafts_list ();
  g_assert_cmpuint (drafts->len, ==, 1);
  read = sw_draft_read (drafts->pdata[0], NULL);
  assert_equal (read, programme);
  discard_all ();
}

/* One programme in two windows: neither draft takes the other's place, and to discard one leaves the other. */
static void
test_twice (void)
{
  g_autoptr (SwProgramme) programme = load_sample ();
  g_autoptr (GPtrArray) both = NULL;
  g_autoptr (GPtrArray) left = NULL;
  g_autofree char *path = sw_draft_dup_new_path ();
  g_autofree char *other_path = sw_draft_dup_new_path ();

  g_assert_true (write_draft (path, programme, "/srv/client.setwright", NULL));
  g_assert_true (write_draft (other_path, programme, "/srv/client.setwright", NULL));
  both = sw_drafts_list ();
  g_assert_cmpuint (both->len, ==, 2);

  g_assert_true (sw_draft_discard (path, NULL));
  left = sw_drafts_list ();
  g_assert_cmpuint (left->len, ==, 1);
  g_assert_cmpstr (((SwDraft *) left->pdata[0])->path, ==, other_path);
  discard_all ();
}

/* Whatever fails, the draft before it is still there. */
static void
test_faults (void)
{
  gboolean written = FALSE;

  for (int operation = 1; !written; operation++)
    {
      g_autoptr (SwProgramme) programme = load_sample ();
      g_autoptr (SwProgramme) read = NULL;
      g_autoptr (GPtrArray) drafts = NULL;
      g_autoptr (GError) error = NULL;
      g_autofree char *path = sw_draft_dup_new_path ();
      const char *name;
      gboolean good;

      g_assert_true (write_draft (path, programme, NULL, NULL));
      g_object_set (sw_programme_get_client (programme), "name", "Later", NULL);
      fault_begin (FAULT_FOR_GOOD, operation, ENOSPC);
      good = write_draft (path, programme, NULL, &error);
      written = fault_end () < operation;
      g_assert_true (good == (error == NULL));

      drafts = sw_drafts_list ();
      g_assert_cmpuint (drafts->len, ==, 1);
      read = sw_draft_read (drafts->pdata[0], NULL);
      name = sw_client_get_name (sw_programme_get_client (read));
      g_assert_true (g_str_equal (name, "Later") || (!good && g_str_equal (name, "Alex Gardener")));
      discard_all ();
    }
}

static void
rename_client (SwProgramme *programme,
               const char  *name)
{
  g_object_set (sw_programme_get_client (programme), "name", name, NULL);
}

/* After a crash the work goes on and is saved over the file it was begun from, but not over anybody else's. */
static void
test_recovered (void)
{
  g_autofree char *folder = g_dir_make_tmp ("setwright-recovered-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "client.setwright", NULL);
  g_autofree char *kept = g_strconcat (path, "~", NULL);
  g_autoptr (SwProgramme) programme = load_sample ();

  for (int changed = 0; changed <= 1; changed++)
    {
      g_autoptr (SwProgrammeFile) file = sw_programme_file_new (path);
      g_autoptr (SwProgrammeFile) later = NULL;
      g_autoptr (SwProgramme) recovered = NULL;
      g_autoptr (GAsyncResult) result = NULL;
      g_autoptr (GPtrArray) drafts = NULL;
      g_autoptr (GError) error = NULL;
      g_autofree char *draft_path = sw_draft_dup_new_path ();
      const SwDraft *draft;

      rename_client (programme, "Before");
      g_assert_true (sw_programme_file_save (file, programme, TRUE, TRUE, NULL));
      rename_client (programme, "Typed");
      sw_draft_write_async (draft_path, programme, path, sw_programme_file_get_hash (file), NULL, done_cb, &result);
      while (result == NULL)
        g_main_context_iteration (NULL, TRUE);
      g_assert_true (sw_draft_write_finish (result, NULL));
      if (changed)
        g_assert_true (g_file_set_contents (path, "somebody else's", -1, NULL));

      drafts = sw_drafts_list ();
      g_assert_cmpuint (drafts->len, ==, 1);
      draft = drafts->pdata[0];
      g_assert_cmpstr (draft->original, ==, path);
      g_assert_cmpstr (draft->original_hash, ==, sw_programme_file_get_hash (file));
      recovered = sw_draft_read (draft, &error);
      g_assert_no_error (error);
      later = sw_programme_file_new_expecting (draft->original, draft->original_hash);
      g_assert_true (sw_programme_file_save (later, recovered, TRUE, FALSE, &error) == !changed);
      if (changed)
        g_assert_error (error, SW_FILE_ERROR, SW_FILE_ERROR_CHANGED);
      discard_all ();
    }

  g_unlink (path);
  g_unlink (kept);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

static void
test_damaged (void)
{
  g_autofree char *folder = sw_drafts_folder ();
  g_autofree char *damaged = g_build_filename (folder, "damaged.draft", NULL);
  g_autofree char *empty = g_build_filename (folder, "empty.draft", NULL);
  g_autoptr (GPtrArray) drafts = NULL;

  g_assert_true (g_file_set_contents (damaged, "<draft xmlns='urn:setwright:draft'", -1, NULL));
  g_assert_true (g_file_set_contents (empty, "<draft xmlns='urn:setwright:draft'/>", -1, NULL));
  drafts = sw_drafts_list ();
  g_assert_cmpuint (drafts->len, ==, 2);
  for (guint i = 0; i < drafts->len; i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_null (sw_draft_read (drafts->pdata[i], &error));
      g_assert_true (error->domain == SW_XML_ERROR);
      g_assert_nonnull (strstr (error->message, ".draft, line 1"));
    }

  discard_all ();
}

int
main (int    argc,
      char **argv)
{
  g_autofree char *home = g_dir_make_tmp ("setwright-drafts-XXXXXX", NULL);
  g_autofree char *folder = g_build_filename (home, "setwright", NULL);
  int status;

  g_setenv ("XDG_STATE_HOME", home, TRUE);
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/store/drafts/none", test_none);
  g_test_add_func ("/store/drafts/write-and-read", test_write_and_read);
  g_test_add_func ("/store/drafts/replaced", test_replaced);
  g_test_add_func ("/store/drafts/twice", test_twice);
  g_test_add_func ("/store/drafts/faults", test_faults);
  g_test_add_func ("/store/drafts/recovered", test_recovered);
  g_test_add_func ("/store/drafts/damaged", test_damaged);
  status = g_test_run ();

  g_rmdir (folder);
  g_rmdir (home);
  return status;
}
