/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-finding.h"

G_BEGIN_DECLS

/**
 * SwProblem:
 * @file: the file it is about, as a path
 * @line: the line, from 1, or 0 when it is about the whole file
 * @level: how severe
 * @answered: whether a reason for keeping it is stored
 * @unreadable: whether the file could not be read at all
 * @text: what is wrong and what to do, without file and line
 *
 * Something wrong with a file of the catalogue that does not keep the others from being used.
 */
typedef struct
{
  char *file;
  long line;
  SwFindingLevel level;
  gboolean answered;
  gboolean unreadable;
  char *text;
} SwProblem;

SwProblem *sw_problem_new (const char *file,
                           long        line,
                           const char *text);
SwProblem *sw_problem_new_for_error (const char   *file,
                                     const GError *error);
SwProblem *sw_problem_new_at_level (const char     *file,
                                    long            line,
                                    SwFindingLevel  level,
                                    const char     *text);
void sw_problem_free (SwProblem *problem);
int sw_problem_compare (gconstpointer a,
                        gconstpointer b);
char *sw_problem_to_string (const SwProblem *problem);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwProblem, sw_problem_free)

G_END_DECLS
