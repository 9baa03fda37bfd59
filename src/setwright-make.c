/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Everything that ends in a file or a number, without a display. Each command's work is done in its layer. */
#include "config.h"

#include <glib/gi18n.h>
#include <locale.h>
#include <string.h>

#include "sw-catalogue-folder.h"
#include "sw-check.h"
#include "sw-file.h"
#include "sw-numbers.h"
#include "sw-programme-file.h"

#define EXIT_USAGE 2
#define EXIT_TROUBLE 2

static char *date_option;
static char **arguments;

static const GOptionEntry options[] = {
  { "date", 0, 0, G_OPTION_ARG_STRING, &date_option, N_ ("the day to reckon with, instead of today"), "YYYY-MM-DD" },
  { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &arguments, NULL, NULL },
  { NULL },
};

static int
tell (const GError *error)
{
  g_printerr ("%s\n", error->message);
  return EXIT_TROUBLE;
}

/* The day given, else that of SOURCE_DATE_EPOCH (reproducible-builds.org), else today. */
static char *
dup_date (void)
{
  const char *epoch = g_getenv ("SOURCE_DATE_EPOCH");
  g_autoptr (GDateTime) day = NULL;

  if (date_option != NULL)
    return g_strdup (date_option);

  day = epoch != NULL ? g_date_time_new_from_unix_utc (g_ascii_strtoll (epoch, NULL, 10)) : g_date_time_new_now_local ();
  return g_date_time_format (day, "%Y-%m-%d");
}

static int
get_year (void)
{
  g_autofree char *date = dup_date ();

  return (int) g_ascii_strtoll (date, NULL, 10);
}

static SwProgramme *
load_programme (const char  *path,
                GError     **error)
{
  g_autoptr (SwProgrammeFile) file = sw_programme_file_new (path);

  return sw_programme_file_load (file, error);
}

static int
run_check (char **paths)
{
  SwCheckResult result = SW_CHECK_CLEAN;

  for (guint i = 0; paths[i] != NULL; i++)
    {
      g_autoptr (GString) lines = g_string_new (NULL);

      SwCheckResult one = sw_check_path (paths[i], get_year (), lines);

      result = MAX (result, one);
      g_print ("%s", lines->str);
    }

  return (int) result;
}

static int
run_numbers (char **paths)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwProgramme) programme = load_programme (paths[0], &error);
  g_autoptr (SwCatalogue) catalogue = NULL;
  g_autofree char *json = NULL;

  if (programme == NULL)
    return tell (error);

  catalogue = sw_catalogue_load_shipped (NULL, &error);
  if (catalogue == NULL)
    return tell (error);

  json = sw_numbers_to_json (programme, catalogue, get_year ());
  g_print ("%s\n", json);
  return 0;
}

static const struct
{
  const char *name;
  const char *takes;
  gboolean several; /* whether it takes more than one argument */
  int (*run) (char **paths);
} commands[] = {
  { "check", "PROGRAMME|EXERCISE|FOLDER...", TRUE, run_check },
  { "numbers", "PROGRAMME", FALSE, run_numbers },
};

static char *
describe_commands (void)
{
  GString *text = g_string_new (_ ("Commands:"));

  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    g_string_append_printf (text, "\n  %s %s", commands[i].name, commands[i].takes);

  return g_string_free (text, FALSE);
}

static int
run (GOptionContext *context)
{
  guint n = arguments != NULL ? g_strv_length (arguments) : 0;
  g_autofree char *help = NULL;

  for (guint i = 0; n >= 2 && i < G_N_ELEMENTS (commands); i++)
    if (strcmp (arguments[0], commands[i].name) == 0 && (n == 2 || commands[i].several))
      return commands[i].run (arguments + 1);

  help = g_option_context_get_help (context, TRUE, NULL);
  g_printerr ("%s", help);
  return EXIT_USAGE;
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (GOptionContext) context = g_option_context_new (_ ("COMMAND FILE..."));
  g_autoptr (GError) error = NULL;
  g_autofree char *summary = describe_commands ();
  int status;

  setlocale (LC_ALL, "");
  bindtextdomain (SW_GETTEXT_PACKAGE, SW_LOCALE_DIR);
  bind_textdomain_codeset (SW_GETTEXT_PACKAGE, "UTF-8");
  textdomain (SW_GETTEXT_PACKAGE);

  g_option_context_add_main_entries (context, options, SW_GETTEXT_PACKAGE);
  g_option_context_set_summary (context, summary);
  status = g_option_context_parse (context, &argc, &argv, &error) ? run (context) : tell (error);

  g_free (date_option);
  g_strfreev (arguments);
  return status;
}
