/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Documents made up for the tests of several layers. */
#pragma once

#include "sw-catalogue.h"
#include "sw-programme.h"

G_BEGIN_DECLS

void sample_facts_init (SwExerciseFacts *facts,
                        const char      *id);
SwExercise *sample_exercise_from (const SwExerciseFacts *facts,
                                  const char            *name);
SwExercise *sample_exercise (const char *id,
                             const char *name,
                             const char *dose_line);
SwItem *sample_item (const char *id,
                     const char *dose_line);
SwSection *sample_section (SwSession     *session,
                           SwSectionKind  kind);
void sample_append (SwSection *section,
                    SwItem    *item);
char *sample_dump (SwProgramme *programme);

G_END_DECLS
