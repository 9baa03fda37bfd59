/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-exercise.h"

G_BEGIN_DECLS

/**
 * SwExerciseWarning:
 *
 * Says which of a client's precautions speak against an exercise, with the symbol that findings have;
 * hidden when none does.
 */
#define SW_TYPE_EXERCISE_WARNING (sw_exercise_warning_get_type ())
G_DECLARE_FINAL_TYPE (SwExerciseWarning, sw_exercise_warning, SW, EXERCISE_WARNING, GtkWidget)

void sw_exercise_warning_set (SwExerciseWarning *self,
                              SwExercise        *exercise,
                              SwSet              precautions);
const char *sw_exercise_warning_get_words (SwExerciseWarning *self);

G_END_DECLS
