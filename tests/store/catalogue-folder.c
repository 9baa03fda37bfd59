/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One damaged file costs one line of complaint, not the catalogue. */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "sw-catalogue-folder.h"
#include "sw-file.h"
#include "sw-problem.h"

static const char format[] = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                             "<exercise xmlns=\"urn:setwright:exercise\" version=\"1\" id=\"%s\" revision=\"1\">\n"
                             "  <about region=\"knee\" position=\"sitting\" section=\"main\" pace-seconds=\"4\"/>\n"
                             "  <easier ref=\"%s\"/>\n"
                             "  <text xml:lang=\"en\">\n"
                             "    <name>%s</name>\n"
                             "  </text>\n"
                             "</exercise>\n";

typedef struct
{
  char *folder;
} Fixture;

static void
set_up (Fixture       *fixture,
        gconstpointer  data G_GNUC_UNUSED)
{
  fixture->folder = g_dir_make_tmp ("setwright-catalogue-XXXXXX", NULL);
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

      g_assert_cmpint (g_remove (path), ==, 0);
    }
  g_assert_cmpint (g_rmdir (fixture->folder), ==, 0);
  g_free (fixture->folder);
}

static void
write_file (const Fixture *fixture,
            const char    *name,
            const char    *text)
{
  g_autofree char *path = g_build_filename (fixture->folder, name, NULL);

  g_assert_true (g_file_set_contents (path, text, -1, NULL));
}

static void
write_exercise (const Fixture *fixture,
                const char    *file,
                const char    *id,
                const char    *easier)
{
  g_autofree char *text = g_strdup_printf (format, id, easier, id);

  write_file (fixture, file, text);
}

static const SwProblem *
find_problem (GPtrArray  *problems,
              const char *file)
{
  for (guint i = 0; i < problems->len; i++)
    {
      const SwProblem *problem = problems->pdata[i];

      if (g_str_has_suffix (problem->file, file))
        return problem;
    }

  g_assert_not_reached ();
}

static void
test_problems (Fixture       *fixture,
               gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) exercises = NULL;
  g_autoptr (GPtrArray) problems = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *below = g_build_filename (fixture->folder, "below.xml", NULL);

  write_exercise (fixture, "good.xml", "good", "other");
  write_exercise (fixture, "other.xml", "other", "good");
  write_exercise (fixture, "dangling.xml", "dangling", "nowhere");
  write_exercise (fixture, "misnamed.xml", "renamed", "good");
  write_exercise (fixture, "zz-again.xml", "good", "good");
  write_file (fixture, "truncated.xml", "<?xml version=\"1.0\"?>\n<exercise xmlns=\"urn:setwright:exercise\"\n");
  write_file (fixture, "empty.xml", "");
  write_file (fixture, "bomb.xml", "<!DOCTYPE a [<!ENTITY b \"c\">]><a>&b;</a>");
  write_file (fixture, ".hidden.xml", "not looked at");
  write_file (fixture, "note.txt", "not looked at");
  g_assert_cmpint (g_mkdir (below, 0700), ==, 0);

  exercises = sw_catalogue_folder_read (fixture->folder, &problems, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (exercises->len, ==, 4);
  g_assert_cmpuint (problems->len, ==, 8);
  for (guint i = 0; i < problems->len; i++)
    {
      g_autofree char *line = sw_problem_to_string (problems->pdata[i]);

      g_test_message ("%s", line);
    }

  g_assert_cmpint (find_problem (problems, "/dangling.xml")->line, ==, 4);
  g_assert_false (find_problem (problems, "/dangling.xml")->unreadable);
  g_assert_nonnull (strstr (find_problem (problems, "/dangling.xml")->text, "nowhere"));
  g_assert_nonnull (strstr (find_problem (problems, "/misnamed.xml")->text, "renamed"));
  g_assert_nonnull (strstr (find_problem (problems, "/zz-again.xml")->text, "good.xml"));
  g_assert_true (find_problem (problems, "/truncated.xml")->unreadable);
  g_assert_cmpint (find_problem (problems, "/truncated.xml")->line, ==, 3);
  g_assert_true (find_problem (problems, "/bomb.xml")->unreadable);
  g_assert_true (find_problem (problems, "/empty.xml")->unreadable);
  g_assert_true (find_problem (problems, "/below.xml")->unreadable);
}

static void
test_missing (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) problems = NULL;

  g_assert_null (sw_catalogue_folder_read ("/nowhere/catalogue", &problems, NULL, &error));
  g_assert_error (error, SW_FILE_ERROR, SW_FILE_ERROR_READ);
  g_assert_null (problems);
}

static void
test_cancelled (Fixture       *fixture,
                gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;

  write_exercise (fixture, "good.xml", "good", "good");
  g_cancellable_cancel (cancellable);
  g_assert_null (sw_catalogue_folder_read (fixture->folder, NULL, cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

/* Enough files for several threads: every one arrives, in order. */
static void
test_many (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) exercises = NULL;
  g_autoptr (GPtrArray) problems = NULL;

  for (int i = 0; i < 500; i++)
    {
      g_autofree char *id = g_strdup_printf ("e%03d", i);
      g_autofree char *file = g_strconcat (id, ".xml", NULL);

      write_exercise (fixture, file, id, "e000");
    }

  exercises = sw_catalogue_folder_read (fixture->folder, &problems, NULL, NULL);
  g_assert_cmpuint (problems->len, ==, 0);
  g_assert_cmpuint (exercises->len, ==, 500);
  for (guint i = 0; i < 500; i++)
    {
      g_autofree char *id = g_strdup_printf ("e%03u", i);

      g_assert_cmpstr (sw_exercise_get_id (exercises->pdata[i]), ==, id);
    }
}

static void
test_shipped (void)
{
  g_autoptr (GPtrArray) problems = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (SwCatalogue) catalogue = sw_catalogue_load_shipped (&problems, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (problems->len, ==, 0);
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (catalogue)), >=, 30);
}

#define ADD(name, function) g_test_add ("/store/catalogue-folder/" name, Fixture, NULL, set_up, function, tear_down)

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  ADD ("problems", test_problems);
  g_test_add_func ("/store/catalogue-folder/missing", test_missing);
  ADD ("cancelled", test_cancelled);
  ADD ("many", test_many);
  g_test_add_func ("/store/catalogue-folder/shipped", test_shipped);
  return g_test_run ();
}
