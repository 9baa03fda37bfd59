/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * SwProblem:
 * @file: the file it is about, as a path
 * @line: the line, from 1, or 0 when it is about the whole file
 * @unreadable: whether the file could not be read at all
 * @text: what is wrong and what to do, without file and line
 *
 * Something wrong with a file of the catalogue that does not keep the others from being used.
 */
typedef struct
{
  char *file;
  long line;
  gboolean unreadable;
  char *text;
} SwProblem;

SwProblem *sw_problem_new (const char *file,
                           long        line,
                           const char *text);
SwProblem *sw_problem_new_for_error (const char   *file,
                                     const GError *error);
void sw_problem_free (SwProblem *problem);
char *sw_problem_to_string (const SwProblem *problem);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwProblem, sw_problem_free)

G_END_DECLS
