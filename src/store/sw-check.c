/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks a file or folder without a window: one line a finding, "FILE:LINE: LEVEL: text". */
#include "config.h"

#include <glib/gi18n.h>
#include <string.h>

#include "sw-catalogue-folder.h"
#include "sw-check-exercise.h"
#include "sw-check-folder.h"
#include "sw-check.h"
#include "sw-exercise-line.h"
#include "sw-exercise-xml.h"
#include "sw-figure.h"
#include "sw-file.h"
#include "sw-finding.h"
#include "sw-problem.h"
#include "sw-programme-xml.h"
#include "sw-schema.h"

static void
add_error (const char   *path,
           const GError *error,
           GPtrArray    *problems)
{
  g_ptr_array_add (problems, sw_problem_new_for_error (path, error));
}

static void
check_schema (GBytes     *bytes,
              const char *path,
              const char *schema,
              GPtrArray  *problems)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) found = sw_schema_check (bytes, path, schema, &error);

  if (found != NULL)
    g_ptr_array_extend_and_steal (problems, g_steal_pointer (&found));
  else
    add_error (path, error, problems);
}

static void
add_finding (const SwFinding *finding,
             GBytes          *bytes,
             const char      *path,
             GPtrArray       *problems)
{
  long line = finding->item != NULL ? sw_programme_find_line (bytes, sw_item_get_id (finding->item)) : 0;
  SwFindingLevel level = finding->level;
  g_autoptr (GString) words = g_string_new (finding->text);
  SwProblem *problem;

  for (guint i = 0; finding->details != NULL && finding->details[i] != NULL; i++)
    g_string_append_printf (words, "%s%s", i > 0 ? "; " : " ", finding->details[i]);
  if (finding->answer != NULL)
    {
      /* Translators: follows what was found */
      g_string_append_printf (words, _ (" (kept: %s)"), sw_answer_get_reason (finding->answer));
    }
  problem = sw_problem_new_at_level (path, line, level, words->str);
  problem->answered = finding->answer != NULL;
  g_ptr_array_add (problems, problem);
}

static void
check_programme (GBytes     *bytes,
                 const char *path,
                 const char *date,
                 GPtrArray  *problems)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwProgramme) programme = sw_programme_from_bytes (bytes, path, &error);
  g_autoptr (SwCatalogue) catalogue = NULL;
  g_autoptr (GPtrArray) findings = NULL;

  if (programme == NULL)
    {
      add_error (path, error, problems);
      return;
    }

  check_schema (bytes, path, "programme.rng", problems);
  catalogue = sw_catalogue_load_shipped (NULL, NULL);
  findings = sw_findings_collect (programme, catalogue, date);
  for (guint i = 0; i < findings->len; i++)
    add_finding (findings->pdata[i], bytes, path, problems);
}

static void
check_figure (SwExercise *exercise,
              GBytes     *bytes,
              const char *path,
              GPtrArray  *problems)
{
  SwFigureSpec *spec = sw_exercise_get_figure (exercise);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwFigure) figure = NULL;
  g_autoptr (GPtrArray) faults = NULL;

  if (spec == NULL)
    return;

  figure = sw_figure_new (spec, FALSE, &error);
  if (figure == NULL)
    {
      add_error (path, error, problems);
      return;
    }

  faults = sw_figure_check (figure);
  for (guint i = 0; i < faults->len; i++)
    g_ptr_array_add (problems,
                     sw_problem_new (path, sw_exercise_find_line (bytes, "figure", NULL), faults->pdata[i]));
}

static void
check_exercise (GBytes     *bytes,
                const char *path,
                const char *date,
                GPtrArray  *problems)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwExercise) exercise = sw_exercise_from_bytes (bytes, path, &error);

  if (exercise == NULL)
    {
      add_error (path, error, problems);
      return;
    }

  check_schema (bytes, path, "exercise.rng", problems);
  check_figure (exercise, bytes, path, problems);
  sw_check_exercise (exercise, bytes, path, date, problems);
}

/* A programme is known by its root element, whatever the file is called. */
static void
check_file (const char *path,
            const char *date,
            GPtrArray  *problems)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = sw_file_read (path, SW_XML_MAX_BYTES, &error);
  g_autoptr (xmlDoc) doc = bytes != NULL ? sw_xml_parse_bytes (bytes, path, &error) : NULL;

  if (doc == NULL)
    add_error (path, error, problems);
  else if (sw_xml_is (xmlDocGetRootElement (doc), SW_PROGRAMME_NS, "programme"))
    check_programme (bytes, path, date, problems);
  else
    check_exercise (bytes, path, date, problems);
}

static void
check_folder (const char *path,
              const char *date,
              GPtrArray  *problems)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) found = NULL;
  g_autoptr (GPtrArray) exercises = sw_catalogue_folder_read (path, &found, NULL, &error);

  if (exercises == NULL)
    {
      add_error (path, error, problems);
      return;
    }

  g_ptr_array_extend_and_steal (problems, g_steal_pointer (&found));
  for (guint i = 0; i < exercises->len; i++)
    {
      g_autofree char *name = g_strconcat (sw_exercise_get_id (exercises->pdata[i]), ".xml", NULL);
      g_autofree char *file = g_build_filename (path, name, NULL);
      g_autoptr (GBytes) bytes = sw_file_read (file, SW_XML_MAX_BYTES, NULL);

      /* One that is not named by its id was told of already. */
      if (bytes != NULL)
        check_exercise (bytes, file, date, problems);
    }
  sw_check_folder (path, exercises, problems);
  g_ptr_array_sort (problems, sw_problem_compare);
}

static SwCheckResult
result_of (const SwProblem *problem)
{
  if (problem->unreadable)
    return SW_CHECK_UNREADABLE;

  return problem->level == SW_FINDING_STOP && !problem->answered ? SW_CHECK_STOP : SW_CHECK_CLEAN;
}

/**
 * sw_check_path:
 * @path: a programme, an exercise or a folder of exercises
 * @date: the day to reckon with, YYYY-MM-DD: for the client's age and for reviews that are due
 * @lines: takes the findings, one a line
 *
 * Returns: the worst that was met
 */
SwCheckResult
sw_check_path (const char *path,
               const char *date,
               GString    *lines)
{
  g_autoptr (GPtrArray) problems = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_problem_free);
  SwCheckResult result = SW_CHECK_CLEAN;

  if (g_file_test (path, G_FILE_TEST_IS_DIR))
    check_folder (path, date, problems);
  else
    check_file (path, date, problems);

  for (guint i = 0; i < problems->len; i++)
    {
      g_autofree char *line = sw_problem_to_string (problems->pdata[i]);

      g_string_append_printf (lines, "%s\n", line);
      result = MAX (result, result_of (problems->pdata[i]));
    }

  return result;
}
