/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Everything that ends in a file or a number, without a display. Each command's work is done in its layer. */
#include "config.h"

#include <glib/gi18n.h>
#include <locale.h>
#include <string.h>

#include "sw-catalogue-folder.h"
#include "sw-check.h"
#include "sw-figure-sheet.h"
#include "sw-figure.h"
#include "sw-file.h"
#include "sw-handout.h"
#include "sw-numbers.h"
#include "sw-programme-file.h"
#include "sw-record-text.h"
#include "sw-view.h"
#include "sw-xml-values.h"

#define EXIT_TROUBLE 2
#define WHOLE_FIGURE (-1.0)

static char **arguments;
static char *output;
static char *paper;
static char *layout;
static char *leave_out;
static char *add;
static gboolean save_ink;
static gboolean landscape;
static gboolean form;
static char *language;
static char *date;
static double text_points;
static double width_mm = 50.0;
static double phase = WHOLE_FIGURE;
static gboolean sheet;

static const GOptionEntry options[] = {
  { "output", 'o', 0, G_OPTION_ARG_FILENAME, &output, N_ ("where to write"), N_ ("FILE") },
  { "paper", 0, 0, G_OPTION_ARG_STRING, &paper, N_ ("the handout's paper, instead of the client's"), "a4|letter" },
  { "layout", 0, 0, G_OPTION_ARG_STRING, &layout, N_ ("how the handout tells the exercises"),
    "full|compact|summary|large-print" },
  { "leave-out", 0, 0, G_OPTION_ARG_STRING, &leave_out, N_ ("parts the handout leaves out, such as \"log key\""),
    N_ ("PARTS") },
  { "add", 0, 0, G_OPTION_ARG_STRING, &add, N_ ("parts the handout shows besides the usual ones"), N_ ("PARTS") },
  { "save-ink", 0, 0, G_OPTION_ARG_NONE, &save_ink, N_ ("frames in place of grey and black areas"), NULL },
  { "landscape", 0, 0, G_OPTION_ARG_NONE, &landscape, N_ ("the summary on its side"), NULL },
  { "form", 0, 0, G_OPTION_ARG_NONE, &form, N_ ("boxes and lines that can be filled in on a screen"), NULL },
  { "text-points", 0, 0, G_OPTION_ARG_DOUBLE, &text_points, N_ ("the handout's text size, instead of the client's"), "12-28" },
  { "language", 0, 0, G_OPTION_ARG_STRING, &language, N_ ("the handout's language, instead of the client's"), N_ ("TAG") },
  { "date", 0, 0, G_OPTION_ARG_STRING, &date, N_ ("the day to reckon with, instead of today"), "YYYY-MM-DD" },
  { "width", 0, 0, G_OPTION_ARG_DOUBLE, &width_mm, N_ ("the figure's width in millimetres"), "10-1000" },
  { "at", 0, 0, G_OPTION_ARG_DOUBLE, &phase, N_ ("one pose of the figure's motion"), "0-1" },
  { "sheet", 0, 0, G_OPTION_ARG_NONE, &sheet, N_ ("the figures of a folder on pages of A4"), NULL },
  { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &arguments, NULL, NULL },
  { NULL },
};

static gboolean
write_bytes (GBytes  *bytes,
             GError **error)
{
  return bytes != NULL && sw_file_write (output, bytes, NULL, FALSE, error);
}

static SwProgramme *
load_programme (const char  *path,
                GError     **error)
{
  g_autoptr (SwProgrammeFile) file = sw_programme_file_new (path);

  return sw_programme_file_load (file, error);
}

static int
run_check (char   **paths,
           GError **error G_GNUC_UNUSED)
{
  SwCheckResult result = SW_CHECK_CLEAN;

  for (guint i = 0; paths[i] != NULL; i++)
    {
      g_autoptr (GString) lines = g_string_new (NULL);
      SwCheckResult one = sw_check_path (paths[i], date, lines);

      g_print ("%s", lines->str);
      result = MAX (result, one);
    }

  return (int) result;
}

static int
run_numbers (char   **paths,
             GError **error)
{
  g_autoptr (SwProgramme) programme = load_programme (paths[0], error);
  g_autoptr (SwCatalogue) catalogue = programme != NULL ? sw_catalogue_load_shipped (NULL, error) : NULL;
  g_autofree char *json = NULL;

  if (catalogue == NULL)
    return EXIT_TROUBLE;

  json = sw_numbers_to_json (programme, catalogue, date);
  g_print ("%s\n", json);
  return 0;
}

static int
run_sheet (const char  *folder,
           GError     **error)
{
  g_autoptr (GPtrArray) exercises = sw_catalogue_folder_read (folder, NULL, NULL, error);
  g_autoptr (GBytes) pdf = exercises != NULL ? sw_figure_sheet_to_pdf (exercises, date, error) : NULL;

  return write_bytes (pdf, error) ? 0 : EXIT_TROUBLE;
}

static int
run_figure (char   **paths,
            GError **error)
{
  g_autoptr (SwExercise) exercise = NULL;
  g_autoptr (SwFigure) figure = NULL;

  if (sheet)
    return run_sheet (paths[0], error);

  exercise = sw_catalogue_load_exercise (paths[0], error);
  if (exercise == NULL)
    return EXIT_TROUBLE;
  if (sw_exercise_get_figure (exercise) == NULL)
    {
      g_set_error (error, SW_XML_ERROR, SW_XML_ERROR_INVALID, _ ("%s: this exercise has no figure yet."), paths[0]);
      return EXIT_TROUBLE;
    }

  figure = sw_figure_new (sw_exercise_get_figure (exercise), FALSE, error);
  return figure != NULL && sw_figure_save (figure, output, width_mm, phase, error) ? 0 : EXIT_TROUBLE;
}

/* For authors: what the computation would choose, beside what the file says. */
static int
run_view (char   **paths,
          GError **error)
{
  g_autoptr (SwExercise) exercise = sw_catalogue_load_exercise (paths[0], error);
  SwFigureSpec *spec;
  double turn[2];
  double tilt[2];

  if (exercise == NULL)
    return EXIT_TROUBLE;
  spec = sw_exercise_get_figure (exercise);
  if (spec == NULL)
    {
      g_set_error (error, SW_XML_ERROR, SW_XML_ERROR_INVALID, _ ("%s: this exercise has no figure yet."), paths[0]);
      return EXIT_TROUBLE;
    }

  sw_view_get_stored (spec, &turn[0], &tilt[0]);
  sw_view_suggest (spec, &turn[1], &tilt[1]);
  for (int i = 0; i < 2; i++)
    g_print ("%s: turn=\"%g\" tilt=\"%g\" %.3f\n", i == 0 ? "stored" : "best", turn[i], tilt[i],
             sw_view_score (spec, turn[i], tilt[i]));
  return 0;
}

static gboolean
read_parts (const char  *option,
            const char  *words,
            SwSet       *parts,
            GError     **error)
{
  g_autofree char *unknown = NULL;
  g_autofree char *known = NULL;

  if (sw_set_from_nicks (SW_TYPE_PAGE_PART, words != NULL ? words : "", parts, &unknown))
    return TRUE;

  known = sw_set_to_nicks (SW_TYPE_PAGE_PART, SW_PAGE_PARTS_USUAL | SW_SET (SW_PAGE_PART_SIGNATURE));
  g_set_error (error, G_OPTION_ERROR, G_OPTION_ERROR_BAD_VALUE, _ ("%s: no part is called “%s”. The parts are: %s."),
               option, unknown, known);
  return FALSE;
}

/* What the command line says of the pages goes before the programme's plan. */
static gboolean
choose_pages (SwHandoutOptions *how,
              GError          **error)
{
  SwSet left_out;
  SwSet added;

  if (!read_parts ("--leave-out", leave_out, &left_out, error) || !read_parts ("--add", add, &added, error))
    return FALSE;

  how->parts = (how->parts & ~left_out) | added;
  how->save_ink = how->save_ink || save_ink;
  how->landscape = how->landscape || landscape;
  how->form = how->form || form;
  if (layout != NULL)
    {
      g_autoptr (GEnumClass) layouts = g_type_class_ref (SW_TYPE_LAYOUT);
      GEnumValue *value = g_enum_get_value_by_nick (layouts, layout);

      if (value == NULL)
        {
          g_set_error (error, G_OPTION_ERROR, G_OPTION_ERROR_BAD_VALUE,
                       _ ("--layout must be full, compact, summary or large-print, not “%s”."), layout);
          return FALSE;
        }
      how->layout = (SwLayout) value->value;
    }
  return TRUE;
}

static int
run_handout (char   **paths,
             GError **error)
{
  g_autoptr (SwProgramme) programme = load_programme (paths[0], error);
  g_autoptr (SwHandout) handout = NULL;
  g_autoptr (GBytes) pdf = NULL;
  g_autofree char *warning = NULL;
  SwHandoutOptions how;

  if (programme == NULL)
    return EXIT_TROUBLE;

  sw_handout_options_init (&how, programme, date);
  if (paper != NULL)
    how.paper = strcmp (paper, "letter") == 0 ? SW_PAPER_LETTER : SW_PAPER_A4;
  if (text_points > 0.0)
    how.text_points = text_points;
  if (language != NULL)
    how.language = language;
  if (!choose_pages (&how, error))
    return EXIT_TROUBLE;

  handout = sw_handout_new (programme, &how, error);
  warning = handout != NULL ? sw_handout_dup_warning (handout) : NULL;
  if (warning != NULL)
    g_printerr ("%s\n", warning);
  pdf = handout != NULL ? sw_handout_to_pdf (handout, error) : NULL;
  return write_bytes (pdf, error) ? 0 : EXIT_TROUBLE;
}

static int
run_record (char   **paths,
            GError **error)
{
  g_autoptr (SwProgramme) programme = load_programme (paths[0], error);
  g_autoptr (GBytes) bytes = NULL;
  char *text;

  if (programme == NULL)
    return EXIT_TROUBLE;

  text = sw_record_text (programme, date);
  bytes = g_bytes_new_take (text, strlen (text));
  return write_bytes (bytes, error) ? 0 : EXIT_TROUBLE;
}

static const struct
{
  const char *name;
  const char *takes;
  gboolean several; /* whether it takes more than one file */
  gboolean writes;  /* whether it needs to be told where to write */
  int (*run) (char   **paths,
              GError **error);
} commands[] = {
  { "check", "PROGRAMME|EXERCISE|FOLDER...", TRUE, FALSE, run_check },
  { "figure", "EXERCISE -o OUT.svg|png [--width MM] [--at 0..1]; --sheet FOLDER -o OUT.pdf", FALSE, TRUE, run_figure },
  { "handout",
    "PROGRAMME -o OUT.pdf [--layout full|compact|summary|large-print] [--paper a4|letter] [--text-points N] "
    "[--language TAG] [--leave-out PARTS] [--add PARTS] [--save-ink] [--landscape] [--form] [--date DAY]",
    FALSE, TRUE, run_handout },
  { "numbers", "PROGRAMME", FALSE, FALSE, run_numbers },
  { "record", "PROGRAMME -o OUT", FALSE, TRUE, run_record },
  { "view", "EXERCISE", FALSE, FALSE, run_view },
};

static char *
describe_commands (void)
{
  GString *text = g_string_new (_ ("Commands:"));

  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    g_string_append_printf (text, "\n  %s %s", commands[i].name, commands[i].takes);

  return g_string_free (text, FALSE);
}

/* The day given, else that of SOURCE_DATE_EPOCH (reproducible-builds.org), else today. */
static void
complete_date (void)
{
  const char *epoch = g_getenv ("SOURCE_DATE_EPOCH");
  g_autoptr (GDateTime) day = NULL;

  if (date != NULL)
    return;

  day = epoch != NULL ? g_date_time_new_from_unix_utc (g_ascii_strtoll (epoch, NULL, 10)) : NULL;
  if (day == NULL)
    day = g_date_time_new_now_local ();
  date = g_date_time_format (day, "%Y-%m-%d");
}

static gboolean
check_options (GError **error)
{
  const char *wrong = NULL;

  if (!sw_is_date (date))
    wrong = "--date";
  else if (paper != NULL && strcmp (paper, "a4") != 0 && strcmp (paper, "letter") != 0)
    wrong = "--paper";
  else if (!(text_points >= 12.0 && text_points <= 28.0) && text_points != 0.0)
    wrong = "--text-points";
  else if (language != NULL && !sw_is_language (language))
    wrong = "--language";
  else if (!(width_mm >= 10.0 && width_mm <= 1000.0))
    wrong = "--width";
  else if (!((phase >= 0.0 && phase <= 1.0) || phase == WHOLE_FIGURE))
    wrong = "--at";

  if (wrong != NULL)
    g_set_error (error, G_OPTION_ERROR, G_OPTION_ERROR_BAD_VALUE,
                 _ ("%s has a value it cannot have. See “setwright-make --help”."), wrong);
  return wrong == NULL;
}

static int
run (GError **error)
{
  guint n = arguments != NULL ? g_strv_length (arguments) : 0;

  complete_date ();
  if (!check_options (error))
    return EXIT_TROUBLE;

  for (guint i = 0; n >= 2 && i < G_N_ELEMENTS (commands); i++)
    if (strcmp (arguments[0], commands[i].name) == 0 && (n == 2 || commands[i].several)
        && commands[i].writes == (output != NULL))
      return commands[i].run (arguments + 1, error);

  g_set_error (error, G_OPTION_ERROR, G_OPTION_ERROR_FAILED,
               _ ("Say what to make, of which file and, with -o, where to write it. See “setwright-make --help”."));
  return EXIT_TROUBLE;
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (GOptionContext) context = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *summary = NULL;
  int status = EXIT_TROUBLE;

  setlocale (LC_ALL, "");
  bindtextdomain (SW_GETTEXT_PACKAGE, SW_LOCALE_DIR);
  bind_textdomain_codeset (SW_GETTEXT_PACKAGE, "UTF-8");
  textdomain (SW_GETTEXT_PACKAGE);

  context = g_option_context_new (_ ("COMMAND FILE..."));
  summary = describe_commands ();
  g_option_context_add_main_entries (context, options, SW_GETTEXT_PACKAGE);
  g_option_context_set_summary (context, summary);
  if (g_option_context_parse (context, &argc, &argv, &error))
    status = run (&error);
  if (error != NULL)
    g_printerr ("%s\n", error->message);

  g_free (output);
  g_free (paper);
  g_free (layout);
  g_free (leave_out);
  g_free (add);
  g_free (language);
  g_free (date);
  g_strfreev (arguments);
  return status;
}
