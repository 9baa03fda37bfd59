/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The edits a therapist makes, each one step of undo. All take the label that undo will show. */
#pragma once

#include "sw-history.h"
#include "sw-programme.h"

G_BEGIN_DECLS

SwItem *sw_edit_add_exercise (SwHistory   *history,
                              SwProgramme *programme,
                              SwSession   *session,
                              SwExercise  *exercise,
                              const char  *label);
void sw_edit_insert (SwHistory  *history,
                     GListStore *list,
                     guint       position,
                     GPtrArray  *objects,
                     const char *label);
void sw_edit_remove (SwHistory   *history,
                     SwProgramme *programme,
                     GPtrArray   *objects,
                     const char  *label);
void sw_edit_move (SwHistory   *history,
                   SwProgramme *programme,
                   GPtrArray   *objects,
                   GListStore  *to,
                   guint        position,
                   const char  *label);
gboolean sw_edit_shift (SwHistory   *history,
                        SwProgramme *programme,
                        GPtrArray   *objects,
                        int          by,
                        const char  *label);
GPtrArray *sw_edit_duplicate (SwHistory   *history,
                              SwProgramme *programme,
                              GPtrArray   *objects,
                              const char  *label);
SwItem *sw_edit_make_circuit (SwHistory   *history,
                              SwProgramme *programme,
                              GPtrArray   *items,
                              const char  *label);
void sw_edit_dissolve_circuit (SwHistory   *history,
                               SwProgramme *programme,
                               SwItem      *circuit,
                               const char  *label);
void sw_edit_arrange (SwHistory  *history,
                      SwSession  *session,
                      GPtrArray  *sections,
                      const char *label);
SwSession *sw_edit_split_session (SwHistory   *history,
                                  SwProgramme *programme,
                                  SwSession   *session,
                                  GPtrArray   *moving,
                                  const char  *label);
void sw_edit_swap_exercise (SwHistory   *history,
                            SwProgramme *programme,
                            SwItem      *item,
                            SwExercise  *exercise,
                            const char  *label);

G_END_DECLS
