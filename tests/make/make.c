/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The program without a window: its exit statuses, what it writes, and that the same input gives the same bytes. */
#include "config.h"

#include <glib/gstdio.h>
#include <json-glib/json-glib.h>
#include <string.h>

#include "sw-data-dir.h"

#define MOST_ARGUMENTS 12

/* A folder of its own for what is written, and what the last run said. */
typedef struct
{
  char *folder;
  char *words;  /* standard output */
  char *errors; /* standard error */
} Fixture;

static void
set_up (Fixture       *fixture,
        gconstpointer  data G_GNUC_UNUSED)
{
  fixture->folder = g_dir_make_tmp ("setwright-make-XXXXXX", NULL);
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

      g_unlink (path);
    }
  g_rmdir (fixture->folder);
  g_free (fixture->folder);
  g_free (fixture->words);
  g_free (fixture->errors);
}

static char *
sample_path (void)
{
  return sw_data_path ("samples", "sample.setwright", NULL);
}

/* Runs the program without a display and returns its exit status. */
static int
make (Fixture    *fixture,
      const char *first,
      ...)
{
  const char *arguments[MOST_ARGUMENTS] = { g_getenv ("SETWRIGHT_MAKE"), first };
  g_auto (GStrv) environment = g_environ_unsetenv (g_environ_unsetenv (g_get_environ (), "DISPLAY"), "WAYLAND_DISPLAY");
  g_autoptr (GError) error = NULL;
  int n = 2, status;
  va_list args;

  va_start (args, first);
  while (first != NULL && (arguments[n] = va_arg (args, const char *)) != NULL)
    g_assert_cmpint (++n, <, MOST_ARGUMENTS);
  va_end (args);

  g_clear_pointer (&fixture->words, g_free);
  g_clear_pointer (&fixture->errors, g_free);
  environment = g_environ_setenv (environment, "SOURCE_DATE_EPOCH", "1795132800", TRUE); /* 2026-11-20 */
  g_spawn_sync (fixture->folder, (char **) arguments, environment, G_SPAWN_DEFAULT, NULL, NULL, &fixture->words,
                &fixture->errors, &status, &error);
  g_assert_no_error (error);
  if (status == 0)
    return 0;

  g_assert_false (g_spawn_check_wait_status (status, &error));
  g_assert_true (error->domain == G_SPAWN_EXIT_ERROR);
  return error->code;
}

static GBytes *
read_output (const Fixture *fixture,
             const char    *name)
{
  g_autofree char *path = g_build_filename (fixture->folder, name, NULL);
  char *content;
  gsize length;

  g_assert_true (g_file_get_contents (path, &content, &length, NULL));
  return g_bytes_new_take (content, length);
}

static void
assert_begins (GBytes     *bytes,
               const char *start)
{
  g_assert_cmpuint (g_bytes_get_size (bytes), >, strlen (start));
  g_assert_cmpmem (g_bytes_get_data (bytes, NULL), strlen (start), start, strlen (start));
}

static void
test_usage (Fixture       *fixture,
            gconstpointer  data G_GNUC_UNUSED)
{
  g_autofree char *sample = sample_path ();

  g_assert_cmpint (make (fixture, NULL), ==, 2);
  g_assert_cmpint (make (fixture, "check", NULL), ==, 2);
  g_assert_cmpint (make (fixture, "dance", sample, NULL), ==, 2);
  g_assert_cmpint (make (fixture, "handout", sample, NULL), ==, 2);
  g_assert_cmpint (make (fixture, "numbers", sample, "--nonsense", NULL), ==, 2);
  g_assert_cmpint (make (fixture, "handout", sample, "-o", "a.pdf", "--paper", "a5", NULL), ==, 2);
  g_assert_cmpint (make (fixture, "handout", sample, "-o", "a.pdf", "--text-points", "100", NULL), ==, 2);
  g_assert_cmpint (make (fixture, "handout", sample, "-o", "a.pdf", "--date", "2026-02-30", NULL), ==, 2);
  g_assert_cmpstr (fixture->words, ==, "");
  g_assert_nonnull (strstr (fixture->errors, "--date"));
  g_assert_cmpint (make (fixture, "--help", NULL), ==, 0);
  g_assert_nonnull (strstr (fixture->words, "handout PROGRAMME"));
}

static void
test_check (Fixture       *fixture,
            gconstpointer  data G_GNUC_UNUSED)
{
  g_autofree char *sample = sample_path ();
  g_autofree char *catalogue = sw_data_path ("catalogue", NULL);
  g_autofree char *broken = g_build_filename (fixture->folder, "broken.setwright", NULL);
  g_autofree char *unanswered = g_build_filename (fixture->folder, "unanswered.setwright", NULL);
  g_autofree char *start = g_strconcat (unanswered, ":", NULL);
  g_autofree char *text = NULL;
  g_autoptr (GRegex) answers = g_regex_new ("<answers>.*</answers>", G_REGEX_DOTALL, 0, NULL);
  g_autofree char *without = NULL;

  g_assert_cmpint (make (fixture, "check", sample, catalogue, NULL), ==, 0);
  g_assert_cmpstr (fixture->errors, ==, "");

  g_assert_true (g_file_get_contents (sample, &text, NULL, NULL));
  without = g_regex_replace_literal (answers, text, -1, 0, "", 0, NULL);
  g_assert_true (g_file_set_contents (unanswered, without, -1, NULL));
  g_assert_cmpint (make (fixture, "check", unanswered, NULL), ==, 1);
  g_assert_true (g_str_has_prefix (fixture->words, start));
  g_assert_nonnull (strstr (fixture->words, ": stop: "));

  g_assert_true (g_file_set_contents (broken, text, 500, NULL));
  g_assert_cmpint (make (fixture, "check", sample, broken, NULL), ==, 2);
  g_assert_nonnull (strstr (fixture->words, "broken.setwright:"));
  g_assert_cmpint (make (fixture, "check", "/nowhere", NULL), ==, 2);
}

/* The stored view first, then the computed one, which never scores less. */
static void
test_view (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  double stored;
  double best;
  const char *second;

  g_assert_cmpint (make (fixture, "view", "straight-leg-raise", NULL), ==, 0);
  g_assert_true (g_str_has_prefix (fixture->words, "stored: turn=\"-90\" tilt=\"0\" "));
  second = strchr (fixture->words, '\n');
  g_assert_true (g_str_has_prefix (second, "\nbest: turn="));
  stored = g_ascii_strtod (strstr (fixture->words, "tilt=\"0\" ") + 9, NULL);
  best = g_ascii_strtod (strrchr (second, ' ') + 1, NULL);
  g_assert_cmpfloat (best, >=, stored - 0.01);
  g_assert_cmpfloat (stored, >, 0.5);
  g_assert_cmpint (make (fixture, "view", "no-such-exercise", NULL), ==, 2);
}

static void
test_numbers (Fixture       *fixture,
              gconstpointer  data G_GNUC_UNUSED)
{
  g_autofree char *sample = sample_path ();
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GError) error = NULL;
  JsonArray *sessions;

  g_assert_cmpint (make (fixture, "numbers", sample, NULL), ==, 0);
  g_assert_cmpstr (fixture->errors, ==, "");
  json_parser_load_from_data (parser, fixture->words, -1, &error);
  g_assert_no_error (error);
  sessions = json_object_get_array_member (json_node_get_object (json_parser_get_root (parser)), "sessions");
  g_assert_cmpuint (json_array_get_length (sessions), >=, 1);
  g_assert_cmpfloat (json_object_get_double_member (json_array_get_object_element (sessions, 0), "length-high-seconds"), >, 0.0);
}

static void
test_handout (Fixture       *fixture,
              gconstpointer  data G_GNUC_UNUSED)
{
  g_autofree char *sample = sample_path ();
  g_autoptr (GBytes) first = NULL;
  g_autoptr (GBytes) second = NULL;
  g_autoptr (GBytes) letter = NULL;

  g_assert_cmpint (make (fixture, "handout", sample, "-o", "first.pdf", NULL), ==, 0);
  g_assert_cmpstr (fixture->errors, ==, "");
  g_assert_cmpint (make (fixture, "handout", sample, "-o", "second.pdf", "--date", "2026-11-20", NULL), ==, 0);
  g_assert_cmpint (make (fixture, "handout", sample, "-o", "letter.pdf", "--paper", "letter", "--text-points", "18", NULL), ==, 0);
  first = read_output (fixture, "first.pdf");
  second = read_output (fixture, "second.pdf");
  letter = read_output (fixture, "letter.pdf");
  assert_begins (first, "%PDF-1.");
  g_assert_true (g_bytes_equal (first, second));
  g_assert_false (g_bytes_equal (first, letter));
  g_assert_cmpint (make (fixture, "handout", sample, "-o", "/nowhere/first.pdf", NULL), ==, 2);
  g_assert_nonnull (strstr (fixture->errors, "first.pdf"));
}

/* With --form the file has fields; they are in object streams, so only its length tells. A character that no font has
 * does not stop the handout, but is told. */
static void
test_form_and_warning (Fixture       *fixture,
                       gconstpointer  data G_GNUC_UNUSED)
{
  g_autofree char *sample = sample_path ();
  g_autofree char *strange = g_build_filename (fixture->folder, "strange.setwright", NULL);
  g_autofree char *text = NULL;
  g_autoptr (GString) changed = NULL;
  g_autoptr (GBytes) plain = NULL;
  g_autoptr (GBytes) form = NULL;

  g_assert_cmpint (make (fixture, "handout", sample, "-o", "plain.pdf", NULL), ==, 0);
  g_assert_cmpint (make (fixture, "handout", sample, "-o", "form.pdf", "--form", NULL), ==, 0);
  g_assert_cmpstr (fixture->errors, ==, "");
  plain = read_output (fixture, "plain.pdf");
  form = read_output (fixture, "form.pdf");
  g_assert_cmpuint (g_bytes_get_size (form), >, g_bytes_get_size (plain) + 1000);

  g_assert_true (g_file_get_contents (sample, &text, NULL, NULL));
  changed = g_string_new (text);
  g_assert_cmpuint (g_string_replace (changed, "Steady in the garden", "Steady \364\217\277\275", 1), ==, 1);
  g_assert_true (g_file_set_contents (strange, changed->str, (gssize) changed->len, NULL));
  g_assert_cmpint (make (fixture, "handout", strange, "-o", "strange.pdf", NULL), ==, 0);
  g_assert_nonnull (strstr (fixture->errors, "U+10FFFD"));
}

static void
test_record (Fixture       *fixture,
             gconstpointer  data G_GNUC_UNUSED)
{
  g_autofree char *sample = sample_path ();
  g_autoptr (GBytes) text = NULL;

  g_assert_cmpint (make (fixture, "record", sample, "-o", "record.txt", NULL), ==, 0);
  text = read_output (fixture, "record.txt");
  g_assert_nonnull (g_strstr_len (g_bytes_get_data (text, NULL), (gssize) g_bytes_get_size (text), "2026-11-20"));
}

static void
test_figure (Fixture       *fixture,
             gconstpointer  data G_GNUC_UNUSED)
{
  g_autofree char *path = sw_data_path ("catalogue", "heel-raise-at-counter.xml", NULL);
  g_autoptr (GBytes) svg = NULL;
  g_autoptr (GBytes) png = NULL;

  g_assert_cmpint (make (fixture, "figure", path, "-o", "figure.svg", NULL), ==, 0);
  g_assert_cmpint (make (fixture, "figure", "heel-raise-at-counter", "-o", "figure.png", "--width", "30", "--at", "1", NULL), ==, 0);
  svg = read_output (fixture, "figure.svg");
  png = read_output (fixture, "figure.png");
  assert_begins (svg, "<?xml");
  assert_begins (png, "\x89PNG\r\n\x1a\n");
  g_assert_cmpint (make (fixture, "figure", "heel-raise-at-counter", "-o", "figure.gif", NULL), ==, 2);
  g_assert_cmpint (make (fixture, "figure", "no-such-exercise", "-o", "figure.svg", NULL), ==, 2);
  g_assert_nonnull (strstr (fixture->errors, "no-such-exercise"));
}

/* What @program, one of poppler's, says of a PDF; NULL where it is not installed. */
static char *
ask (const Fixture *fixture,
     const char    *program,
     const char    *name)
{
  g_autofree char *found = g_find_program_in_path (program);
  const char *arguments[] = { found, name, strcmp (program, "pdftotext") == 0 ? "-" : NULL, NULL };
  g_autoptr (GError) error = NULL;
  char *words = NULL;
  int status;

  if (found == NULL)
    return NULL;

  g_spawn_sync (fixture->folder, (char **) arguments, NULL, G_SPAWN_STDERR_TO_DEV_NULL, NULL, NULL, &words, NULL, &status,
                &error);
  g_assert_no_error (error);
  g_assert_cmpint (status, ==, 0);
  return words;
}

/* All exercises of a folder, 20 on a page of A4, each with its id; the same bytes on the same day. */
static void
test_sheet (Fixture       *fixture,
            gconstpointer  data G_GNUC_UNUSED)
{
  g_autofree char *folder = sw_data_path ("catalogue", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  g_autoptr (GBytes) first = NULL;
  g_autoptr (GBytes) second = NULL;
  g_autofree char *info = NULL;
  g_autofree char *text = NULL;
  g_autofree char *pages = NULL;
  const char *name;
  guint n = 0;

  g_assert_cmpint (make (fixture, "figure", "--sheet", folder, "-o", "sheet.pdf", NULL), ==, 0);
  g_assert_cmpstr (fixture->errors, ==, "");
  g_assert_cmpint (make (fixture, "figure", "--sheet", folder, "-o", "again.pdf", NULL), ==, 0);
  first = read_output (fixture, "sheet.pdf");
  second = read_output (fixture, "again.pdf");
  assert_begins (first, "%PDF-1.");
  g_assert_true (g_bytes_equal (first, second));
  g_assert_cmpint (make (fixture, "figure", "--sheet", "/nowhere", "-o", "sheet.pdf", NULL), ==, 2);

  info = ask (fixture, "pdfinfo", "again.pdf");
  text = ask (fixture, "pdftotext", "again.pdf");
  if (info == NULL || text == NULL)
    {
      g_test_skip ("poppler's tools are not installed");
      return;
    }

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *id = g_strndup (name, strlen (name) - strlen (".xml"));

      if (strstr (text, id) == NULL)
        g_error ("%s is not on the sheet", id);
      n++;
    }
  pages = g_strdup_printf ("Page %u of %u", (n + 19) / 20, (n + 19) / 20);
  g_assert_nonnull (strstr (text, "Heel raise"));
  g_assert_nonnull (strstr (text, pages));
  g_assert_null (strstr (text, "No picture"));
  g_assert_nonnull (strstr (info, "595.276 x 841.89 pts (A4)"));
}

#define ADD(name, function) g_test_add ("/make/" name, Fixture, NULL, set_up, function, tear_down)

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  ADD ("usage", test_usage);
  ADD ("check", test_check);
  ADD ("view", test_view);
  ADD ("numbers", test_numbers);
  ADD ("handout", test_handout);
  ADD ("form-and-warning", test_form_and_warning);
  ADD ("record", test_record);
  ADD ("figure", test_figure);
  ADD ("sheet", test_sheet);
  return g_test_run ();
}
