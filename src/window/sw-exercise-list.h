/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "sw-exercise.h"

G_BEGIN_DECLS

/**
 * SwExerciseList:
 *
 * The exercises a search found, as a GListModel of SwExercise. Unlike a list store it takes a whole new
 * result at once and tells only of the run in which it differs from the old one.
 */
#define SW_TYPE_EXERCISE_LIST (sw_exercise_list_get_type ())
G_DECLARE_FINAL_TYPE (SwExerciseList, sw_exercise_list, SW, EXERCISE_LIST, GObject)

SwExerciseList *sw_exercise_list_new (void);
void sw_exercise_list_set (SwExerciseList *self,
                           GPtrArray      *exercises);
gboolean sw_exercise_list_find (SwExerciseList *self,
                                SwExercise     *exercise,
                                guint          *position);

G_END_DECLS
