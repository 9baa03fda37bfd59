/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-figure-view.h"

G_BEGIN_DECLS

/**
 * SwExerciseCard:
 *
 * An exercise of the catalogue on a card: figure, name, dose line, position and equipment, and the word
 * of a precaution that it speaks against. The exercise can be dragged from it.
 * Signal "menu-wanted" (double x, double y): when a pointer asks for the card's menu there.
 */
#define SW_TYPE_EXERCISE_CARD (sw_exercise_card_get_type ())
G_DECLARE_FINAL_TYPE (SwExerciseCard, sw_exercise_card, SW, EXERCISE_CARD, GtkWidget)

GtkWidget *sw_exercise_card_new (SwPictures *pictures);
void sw_exercise_card_set_pictures (SwExerciseCard *self,
                                    SwPictures     *pictures);
void sw_exercise_card_set_exercise (SwExerciseCard *self,
                                    SwExercise     *exercise);
SwExercise *sw_exercise_card_get_exercise (SwExerciseCard *self);
void sw_exercise_card_set_precautions (SwExerciseCard *self,
                                       SwSet           precautions);
void sw_exercise_card_toggle_motion (SwExerciseCard *self);
char *sw_exercise_card_dup_description (SwExerciseCard *self);

const SwExerciseText *sw_exercise_card_text_of (SwExercise *exercise);

G_END_DECLS
