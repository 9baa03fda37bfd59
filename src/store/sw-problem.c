/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is wrong with a file, apart from where, so that each place can be shown in its own way. */
#include "config.h"

#include "sw-problem.h"
#include "sw-xml.h"

/**
 * sw_problem_new:
 * @file: a path
 * @line: the line, or 0
 * @text: what is wrong and what to do
 *
 * Returns: (transfer full): a problem with a file that could be read
 */
SwProblem *
sw_problem_new (const char *file,
                long        line,
                const char *text)
{
  SwProblem *problem = g_new0 (SwProblem, 1);

  problem->file = g_strdup (file);
  problem->line = line;
  problem->text = g_strdup (text);
  return problem;
}

/**
 * sw_problem_new_for_error:
 * @file: a path
 * @error: why the file could not be read
 *
 * Returns: (transfer full): a problem
 */
SwProblem *
sw_problem_new_for_error (const char   *file,
                          const GError *error)
{
  SwProblem *problem = sw_problem_new (file, sw_xml_error_get_line (error), sw_xml_error_get_words (error));

  problem->unreadable = TRUE;
  return problem;
}

/**
 * sw_problem_free:
 * @problem: (transfer full) (nullable): a problem
 */
void
sw_problem_free (SwProblem *problem)
{
  if (problem == NULL)
    return;

  g_free (problem->file);
  g_free (problem->text);
  g_free (problem);
}

/**
 * sw_problem_to_string:
 * @problem: a problem
 *
 * Returns: (transfer full): one line, "FILE:LINE: stop: text" as editors understand it
 */
char *
sw_problem_to_string (const SwProblem *problem)
{
  return g_strdup_printf ("%s:%ld: stop: %s", problem->file, MAX (problem->line, 1), problem->text);
}
