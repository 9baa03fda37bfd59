/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is wrong with a file, apart from where, so that each place can be shown in its own way. */
#include "config.h"

#include <string.h>

#include "sw-problem.h"
#include "sw-xml.h"

/* The words of SwFindingLevel, fixed: other programs read them. */
static const char *const levels[] = { "tell", "ask", "stop" };

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
  problem->level = SW_FINDING_STOP;
  problem->text = g_strdup (text);
  return problem;
}

/**
 * sw_problem_new_at_level:
 * @file: a path
 * @line: the line, or 0
 * @level: how severe
 * @text: what is wrong and what to do
 *
 * Returns: (transfer full): a problem with a file that could be read
 */
SwProblem *
sw_problem_new_at_level (const char     *file,
                         long            line,
                         SwFindingLevel  level,
                         const char     *text)
{
  SwProblem *problem = sw_problem_new (file, line, text);

  problem->level = level;
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
 * sw_problem_compare:
 * @a: the place of a problem in an array
 * @b: the place of another
 *
 * Returns: as strcmp() does: by file, then by line, then the most severe first
 */
int
sw_problem_compare (gconstpointer a,
                    gconstpointer b)
{
  const SwProblem *first = *(SwProblem *const *) a;
  const SwProblem *second = *(SwProblem *const *) b;
  int by_file = strcmp (first->file, second->file);

  if (by_file != 0)
    return by_file;
  if (first->line != second->line)
    return first->line < second->line ? -1 : 1;

  return (int) second->level - (int) first->level;
}

/**
 * sw_problem_to_string:
 * @problem: a problem
 *
 * Returns: (transfer full): one line, "FILE:LINE: LEVEL: text" as editors understand it
 */
char *
sw_problem_to_string (const SwProblem *problem)
{
  return g_strdup_printf ("%s:%ld: %s: %s", problem->file, MAX (problem->line, 1), levels[problem->level],
                          problem->text);
}
