/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What happens in a window while a file is being read or written: asked for in one turn of the main loop, since what
 * the worker has done comes in a later one. */
#include "config.h"

#include <glib/gstdio.h>

#include "sw-notice.h"
#include "sw-window.h"

#define WAIT_S 60

typedef struct
{
  SwApplication *application;
  SwWindow *window;
  char *path;
} Fixture;

static gboolean
late_cb (gpointer data)
{
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

static void
wait_until (gboolean (*is_so) (Fixture *fixture),
            Fixture *fixture)
{
  gboolean late = FALSE;
  guint source = g_timeout_add_seconds (WAIT_S, late_cb, &late);

  while (!is_so (fixture) && !late)
    g_main_context_iteration (NULL, TRUE);
  g_assert_false (late);
  g_source_remove (source);
}

static guint
count_windows (Fixture *fixture)
{
  return g_list_length (gtk_application_get_windows (GTK_APPLICATION (fixture->application)));
}

static gboolean
is_drawn (Fixture *fixture)
{
  return g_action_group_has_action (G_ACTION_GROUP (fixture->window), "save");
}

static gboolean
are_two (Fixture *fixture)
{
  return count_windows (fixture) == 2;
}

static gboolean
are_none (Fixture *fixture)
{
  return count_windows (fixture) == 0;
}

static const char *
words (Fixture    *fixture,
       const char *id)
{
  return gtk_label_get_label (
      GTK_LABEL (gtk_widget_get_template_child (GTK_WIDGET (fixture->window), SW_TYPE_WINDOW, id)));
}

static gboolean
is_saved (Fixture *fixture)
{
  return g_str_equal (words (fixture, "subtitle"), "client.setwright");
}

static gboolean
asks (Fixture *fixture)
{
  return sw_notice_is_shown (
      SW_NOTICE (gtk_widget_get_template_child (GTK_WIDGET (fixture->window), SW_TYPE_WINDOW, "notice")));
}

static void
act (Fixture    *fixture,
     const char *action)
{
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (fixture->window), action, NULL));
}

static void
set_up (Fixture       *fixture,
        gconstpointer  data)
{
  g_autofree char *sample = g_test_build_filename (G_TEST_DIST, "sample.setwright", NULL);
  g_autofree char *text = NULL;

  fixture->application = SW_APPLICATION (g_application_get_default ());
  fixture->path = g_build_filename (data, "client.setwright", NULL);
  g_assert_true (g_file_get_contents (sample, &text, NULL, NULL));
  g_assert_true (g_file_set_contents (fixture->path, text, -1, NULL));

  g_application_activate (G_APPLICATION (fixture->application));
  fixture->window = SW_WINDOW (gtk_application_get_active_window (GTK_APPLICATION (fixture->application)));
  wait_until (is_drawn, fixture);
}

static void
tear_down (Fixture       *fixture,
           gconstpointer  data)
{
  g_autofree char *kept = g_strconcat (fixture->path, "~", NULL);

  (void) data;
  while (count_windows (fixture) > 0)
    {
      fixture->window = gtk_application_get_windows (GTK_APPLICATION (fixture->application))->data;
      wait_until (is_drawn, fixture);
      act (fixture, "win.discard-and-close");
    }
  g_remove (fixture->path);
  g_remove (kept);
  g_free (fixture->path);
}

/* Work begun while a slow file is being read is not swept away by it. */
static void
test_edit_while_loading (Fixture       *fixture,
                         gconstpointer  data)
{
  (void) data;
  sw_window_open (fixture->window, fixture->path);
  g_assert_false (sw_window_is_untouched (fixture->window));
  act (fixture, "edit.add-rest");
  wait_until (are_two, fixture);
  g_assert_cmpstr (words (fixture, "subtitle"), ==, "not saved yet");
  g_assert_true (g_str_has_prefix (words (fixture, "title"), "•"));
}

/* Without it, the file takes the empty window. */
static void
test_load (Fixture       *fixture,
           gconstpointer  data)
{
  (void) data;
  sw_window_open (fixture->window, fixture->path);
  wait_until (is_saved, fixture);
  g_assert_cmpuint (count_windows (fixture), ==, 1);
}

/* A save asked for while one is under way is not forgotten. */
static void
test_save_twice (Fixture       *fixture,
                 gconstpointer  data)
{
  (void) data;
  sw_window_open (fixture->window, fixture->path);
  wait_until (is_saved, fixture);
  act (fixture, "edit.add-rest");
  act (fixture, "win.save");
  act (fixture, "edit.add-rest");
  act (fixture, "win.save");
  wait_until (is_saved, fixture);
}

/* Save and close, with an edit before the save is done: it asks again, and a later save closes nothing. */
static void
test_close_after_save (Fixture       *fixture,
                       gconstpointer  data)
{
  (void) data;
  sw_window_open (fixture->window, fixture->path);
  wait_until (is_saved, fixture);
  act (fixture, "edit.add-rest");
  act (fixture, "win.save-and-close");
  act (fixture, "edit.add-rest");
  wait_until (asks, fixture);
  act (fixture, "win.save");
  wait_until (is_saved, fixture);
  g_assert_cmpuint (count_windows (fixture), ==, 1);

  act (fixture, "edit.add-rest");
  act (fixture, "win.save-and-close");
  wait_until (are_none, fixture);
}

int
main (int    argc,
      char **argv)
{
  g_autofree char *folder = g_dir_make_tmp ("setwright-window-XXXXXX", NULL);
  g_autoptr (SwApplication) application = NULL;
  int status;

  gtk_test_init (&argc, &argv, NULL);
  application = sw_application_new ();
  g_application_set_default (G_APPLICATION (application));
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));

  g_test_add ("/window/load", Fixture, folder, set_up, test_load, tear_down);
  g_test_add ("/window/edit-while-loading", Fixture, folder, set_up, test_edit_while_loading, tear_down);
  g_test_add ("/window/save-twice", Fixture, folder, set_up, test_save_twice, tear_down);
  g_test_add ("/window/close-after-save", Fixture, folder, set_up, test_close_after_save, tear_down);
  status = g_test_run ();

  g_rmdir (folder);
  return status;
}
