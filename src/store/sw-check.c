/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks a file or folder without a window: one line a finding, "FILE:LINE: LEVEL: text". */
#include "config.h"

#include <glib/gi18n.h>
#include <string.h>

#include "sw-catalogue-folder.h"
#include "sw-check.h"
#include "sw-exercise-xml.h"
#include "sw-figure.h"
#include "sw-file.h"
#include "sw-finding.h"
#include "sw-problem.h"
#include "sw-programme-xml.h"
#include "sw-schema.h"

/* The words of SwFindingLevel, fixed: other programs read them. */
static const char *const levels[] = { "tell", "ask", "stop" };

static SwCheckResult
append_problems (GPtrArray *problems,
                 GString   *lines)
{
  SwCheckResult result = SW_CHECK_CLEAN;

  for (guint i = 0; i < problems->len; i++)
    {
      const SwProblem *problem = problems->pdata[i];
      g_autofree char *line = sw_problem_to_string (problem);

      g_string_append_printf (lines, "%s\n", line);
      result = MAX (result, problem->unreadable ? SW_CHECK_UNREADABLE : SW_CHECK_STOP);
    }

  return result;
}

static SwCheckResult
append_error (const char   *path,
              const GError *error,
              GString      *lines)
{
  g_autoptr (SwProblem) problem = sw_problem_new_for_error (path, error);
  g_autofree char *line = sw_problem_to_string (problem);

  g_string_append_printf (lines, "%s\n", line);
  return SW_CHECK_UNREADABLE;
}

static SwCheckResult
append_schema (GBytes     *bytes,
               const char *path,
               const char *schema,
               GString    *lines)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) problems = sw_schema_check (bytes, path, schema, &error);

  return problems != NULL ? append_problems (problems, lines) : append_error (path, error, lines);
}

static void
append_finding (const SwFinding *finding,
                GBytes          *bytes,
                const char      *path,
                GString         *lines)
{
  long line = finding->item != NULL ? sw_programme_find_line (bytes, sw_item_get_id (finding->item)) : 0;

  g_string_append_printf (lines, "%s:%ld: %s: %s", path, MAX (line, 1), levels[finding->level], finding->text);
  if (finding->answer != NULL)
    g_string_append_printf (lines, _ (" (kept: %s)"), sw_answer_get_reason (finding->answer));
  g_string_append_c (lines, '\n');
}

static SwCheckResult
check_programme (GBytes     *bytes,
                 const char *path,
                 int         year,
                 GString    *lines)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwProgramme) programme = sw_programme_from_bytes (bytes, path, &error);
  g_autoptr (SwCatalogue) catalogue = NULL;
  g_autoptr (GPtrArray) findings = NULL;
  SwCheckResult result;

  if (programme == NULL)
    return append_error (path, error, lines);

  result = append_schema (bytes, path, "programme.rng", lines);
  catalogue = sw_catalogue_load_shipped (NULL, NULL);
  findings = sw_findings_collect (programme, catalogue, year);
  for (guint i = 0; i < findings->len; i++)
    append_finding (findings->pdata[i], bytes, path, lines);

  return sw_findings_count_open (findings, SW_FINDING_STOP) > 0 ? MAX (result, SW_CHECK_STOP) : result;
}

static long
find_figure_line (GBytes *bytes)
{
  g_autoptr (xmlDoc) doc = sw_xml_parse_bytes (bytes, "", NULL);

  for (const xmlNode *node = xmlDocGetRootElement (doc)->children; node != NULL; node = node->next)
    if (sw_xml_is (node, SW_EXERCISE_NS, "figure"))
      return sw_xml_get_line (node);

  return 0;
}

static SwCheckResult
append_figure (SwExercise *exercise,
               GBytes     *bytes,
               const char *path,
               GString    *lines)
{
  SwFigureSpec *spec = sw_exercise_get_figure (exercise);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwFigure) figure = NULL;
  g_autoptr (GPtrArray) faults = NULL;
  g_autoptr (GPtrArray) problems = NULL;

  if (spec == NULL)
    return SW_CHECK_CLEAN;

  figure = sw_figure_new (spec, FALSE, &error);
  if (figure == NULL)
    return append_error (path, error, lines);

  faults = sw_figure_check (figure);
  problems = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_problem_free);
  for (guint i = 0; i < faults->len; i++)
    g_ptr_array_add (problems, sw_problem_new (path, find_figure_line (bytes), faults->pdata[i]));

  return append_problems (problems, lines);
}

static SwCheckResult
check_exercise (GBytes     *bytes,
                const char *path,
                GString    *lines)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwExercise) exercise = sw_exercise_from_bytes (bytes, path, &error);
  SwCheckResult schema, figure;

  if (exercise == NULL)
    return append_error (path, error, lines);

  schema = append_schema (bytes, path, "exercise.rng", lines);
  figure = append_figure (exercise, bytes, path, lines);
  return MAX (schema, figure);
}

/* A programme is known by its root element, whatever the file is called. */
static SwCheckResult
check_file (const char *path,
            int         year,
            GString    *lines)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = sw_file_read (path, SW_XML_MAX_BYTES, &error);
  g_autoptr (xmlDoc) doc = bytes != NULL ? sw_xml_parse_bytes (bytes, path, &error) : NULL;

  if (doc == NULL)
    return append_error (path, error, lines);

  return sw_xml_is (xmlDocGetRootElement (doc), SW_PROGRAMME_NS, "programme")
             ? check_programme (bytes, path, year, lines)
             : check_exercise (bytes, path, lines);
}

static SwCheckResult
check_folder (const char *path,
              GString    *lines)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) problems = NULL;
  g_autoptr (GPtrArray) exercises = sw_catalogue_folder_read (path, &problems, NULL, &error);
  SwCheckResult result;

  if (exercises == NULL)
    return append_error (path, error, lines);

  result = append_problems (problems, lines);
  for (guint i = 0; i < exercises->len; i++)
    {
      g_autofree char *name = g_strconcat (sw_exercise_get_id (exercises->pdata[i]), ".xml", NULL);
      g_autofree char *file = g_build_filename (path, name, NULL);
      g_autoptr (GBytes) bytes = sw_file_read (file, SW_XML_MAX_BYTES, NULL);

      /* One that is not named by its id was told of already. */
      if (bytes != NULL)
        {
          SwCheckResult one = check_exercise (bytes, file, lines);

          result = MAX (result, one);
        }
    }

  return result;
}

/**
 * sw_check_path:
 * @path: a programme, an exercise or a folder of exercises
 * @year: the current year, for the client's age
 * @lines: takes the findings, one a line
 *
 * Returns: the worst that was met
 */
SwCheckResult
sw_check_path (const char *path,
               int         year,
               GString    *lines)
{
  return g_file_test (path, G_FILE_TEST_IS_DIR) ? check_folder (path, lines) : check_file (path, year, lines);
}
