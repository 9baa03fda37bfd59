/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-catalogue.h"
#include "sw-figure-view.h"

G_BEGIN_DECLS

/**
 * SwExerciseDetails:
 *
 * Everything about an exercise of the catalogue, for the therapist to read and the client to look at.
 * Its buttons are the catalogue's actions: "catalogue.add", "catalogue.details", "catalogue.show-exercise".
 */
#define SW_TYPE_EXERCISE_DETAILS (sw_exercise_details_get_type ())
G_DECLARE_FINAL_TYPE (SwExerciseDetails, sw_exercise_details, SW, EXERCISE_DETAILS, GtkWidget)

void sw_exercise_details_set_pictures (SwExerciseDetails *self,
                                       SwPictures        *pictures);
void sw_exercise_details_show (SwExerciseDetails *self,
                               SwExercise        *exercise,
                               SwCatalogue       *catalogue,
                               SwSet              precautions);
SwExercise *sw_exercise_details_get_exercise (SwExerciseDetails *self);
void sw_exercise_details_toggle_motion (SwExerciseDetails *self);

G_END_DECLS
