/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * When drafts of an open programme come and go. */
#include "config.h"

#include <glib/gstdio.h>

#include "sw-draft-keeper.h"
#include "sw-drafts.h"

/* Ample: a draft comes after two seconds. */
#define WAIT_S 20
#define DELAY_US (3 * G_USEC_PER_SEC)

typedef struct
{
  SwProgramme *programme;
  SwDocument *document;
  SwDraftKeeper *keeper;
} Fixture;

static guint
count_drafts (void)
{
  g_autoptr (GPtrArray) drafts = sw_drafts_list ();

  return drafts->len;
}

static void
set_up (Fixture       *fixture,
        gconstpointer  data)
{
  (void) data;
  fixture->programme = sw_programme_new_standard ();
  fixture->document = sw_document_new (fixture->programme, NULL);
  fixture->keeper = sw_draft_keeper_new (fixture->document, NULL);
}

static void
tear_down (Fixture       *fixture,
           gconstpointer  data)
{
  (void) data;
  g_clear_object (&fixture->keeper);
  g_object_unref (fixture->document);
  g_object_unref (fixture->programme);
  g_assert_cmpuint (count_drafts (), ==, 0);
}

static void
edit (Fixture    *fixture,
      const char *title)
{
  sw_history_set_string (sw_document_get_history (fixture->document), "Title", fixture->programme, "title", title);
  sw_history_stop_merging (sw_document_get_history (fixture->document));
}

static gboolean
late_cb (gpointer data)
{
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

/* A file is there a little before the main loop hears of it, and then removed as late. */
static void
wait_for_drafts (guint n)
{
  gboolean late = FALSE;
  guint source = g_timeout_add_seconds (WAIT_S, late_cb, &late);

  while (count_drafts () != n && !late)
    g_main_context_iteration (NULL, TRUE);
  g_assert_false (late);
  g_source_remove (source);
}

/* The title of the programme in the only draft. */
static char *
dup_title (void)
{
  g_autoptr (GPtrArray) drafts = sw_drafts_list ();
  g_autoptr (SwProgramme) programme = NULL;

  g_assert_cmpuint (drafts->len, ==, 1);
  programme = sw_draft_read (drafts->pdata[0], NULL);
  return g_strdup (sw_programme_get_title (programme));
}

/* There while there is something to save, and not longer: saved, or taken back. */
static void
test_saved (Fixture       *fixture,
            gconstpointer  data)
{
  SwHistory *history = sw_document_get_history (fixture->document);

  (void) data;
  edit (fixture, "First");
  wait_for_drafts (1);
  sw_history_set_saved_mark (history, sw_history_get_mark (history));
  wait_for_drafts (0);

  edit (fixture, "Second");
  wait_for_drafts (1);
  sw_history_undo (history);
  wait_for_drafts (0);
}

/* A draft that is discarded while it is being written does not come back. */
static void
test_while_writing (Fixture       *fixture,
                    gconstpointer  data)
{
  SwHistory *history = sw_document_get_history (fixture->document);
  gboolean over = FALSE;

  (void) data;
  edit (fixture, "First");
  /* The loop's next turn after two seconds begins the write; what comes of it waits for the turn after. */
  g_usleep (DELAY_US);
  while (!g_main_context_iteration (NULL, FALSE))
    ;
  sw_history_set_saved_mark (history, sw_history_get_mark (history));
  g_clear_object (&fixture->keeper);

  g_timeout_add (500, late_cb, &over);
  while (!over)
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpuint (count_drafts (), ==, 0);
}

/* Two windows with one programme; and a draft that was recovered goes on to be the draft. */
static void
test_two (Fixture       *fixture,
          gconstpointer  data)
{
  g_autoptr (SwProgramme) copy = sw_programme_copy (fixture->programme);
  g_autoptr (SwDocument) document = sw_document_new (copy, NULL);
  g_autoptr (SwDraftKeeper) other = sw_draft_keeper_new (document, NULL);
  g_autoptr (GPtrArray) drafts = NULL;
  g_autofree char *title = NULL;
  g_autofree char *later_title = NULL;

  (void) data;
  edit (fixture, "Mine");
  sw_history_set_string (sw_document_get_history (document), "Title", copy, "title", "Theirs");
  wait_for_drafts (2);
  sw_draft_keeper_discard (fixture->keeper);
  wait_for_drafts (1);
  title = dup_title ();
  g_assert_cmpstr (title, ==, "Theirs");

  drafts = sw_drafts_list ();
  g_clear_object (&other);
  g_clear_object (&fixture->keeper);
  fixture->keeper = sw_draft_keeper_new (fixture->document, ((SwDraft *) drafts->pdata[0])->path);
  edit (fixture, "Recovered");
  do
    {
      g_clear_pointer (&later_title, g_free);
      g_main_context_iteration (NULL, TRUE);
      later_title = dup_title ();
    }
  while (!g_str_equal (later_title, "Recovered"));
  sw_draft_keeper_discard (fixture->keeper);
  wait_for_drafts (0);
}

int
main (int   argc,
      char *argv[])
{
  g_autofree char *home = g_dir_make_tmp ("setwright-keeper-XXXXXX", NULL);
  g_autofree char *folder = g_build_filename (home, "setwright", NULL);
  int status;

  g_setenv ("XDG_STATE_HOME", home, TRUE);
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/draft-keeper/saved", Fixture, NULL, set_up, test_saved, tear_down);
  g_test_add ("/draft-keeper/while-writing", Fixture, NULL, set_up, test_while_writing, tear_down);
  g_test_add ("/draft-keeper/two", Fixture, NULL, set_up, test_two, tear_down);
  status = g_test_run ();

  g_rmdir (folder);
  g_rmdir (home);
  return status;
}
