/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-dose.h"
#include "sw-figure-spec.h"

G_BEGIN_DECLS

/**
 * SwExerciseText:
 * @language: BCP 47 tag
 * @name: what the exercise is called, for therapist and client
 * @synonyms: (array zero-terminated=1): other words people search or know it by
 * @purpose: one sentence for the client
 * @set_up: how to get ready, one or two sentences
 * @steps: (array zero-terminated=1): what to do, one action each
 * @form_points: (array zero-terminated=1): what doing it right looks and feels like
 * @errors: (array zero-terminated=1): common errors, each with what to do instead
 * @easier: an easier way to do this same exercise, or NULL
 * @harder: a harder way to do this same exercise, or NULL
 * @feel: where it should be felt, or NULL
 *
 * All words of an exercise in one language. Owned by its exercise; never NULL lists.
 */
typedef struct
{
  char *language;
  char *name;
  char **synonyms;
  char *purpose;
  char *set_up;
  char **steps;
  char **form_points;
  char **errors;
  char *easier;
  char *harder;
  char *feel;
} SwExerciseText;

SwExerciseText *sw_exercise_text_new (const char *language);
void sw_exercise_text_free (SwExerciseText *text);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwExerciseText, sw_exercise_text_free)

/**
 * SwExerciseFacts:
 * @id: the exercise's id, [a-z0-9-]+, also its file name; owned
 * @revision: counts published changes, from 1
 * @region: the part of the body it is filed under
 * @position: start position
 * @equipment: set of #SwEquipment, all needed
 * @aims: set of #SwAim
 * @muscles: set of #SwMuscle that work or are stretched
 * @cautions: set of #SwCaution
 * @directions: which ways it goes
 * @section: the kind of section it usually belongs in
 * @pace_s: seconds an unheld repetition takes when no tempo is asked, 1..60
 * @dose: the default dose
 * @dose_reason: (nullable): why the default dose leaves the published ranges; owned
 * @has_review: whether @review says anything; where nothing is said nothing is known
 * @review: whether clinicians have approved it
 * @review_due: the day of the next review, YYYY-MM-DD, or ""; owned; NULL counts as ""
 * @load_limit: most load this exercise may be given; unit none means "no added load foreseen"
 * @easier: (array zero-terminated=1): ids of easier exercises, nearest first; owned
 * @harder: (array zero-terminated=1): ids of harder exercises, nearest first; owned
 */
typedef struct
{
  char *id;
  int revision;
  SwRegion region;
  SwPosition position;
  SwSet equipment;
  SwSet aims;
  SwSet muscles;
  SwSet cautions;
  SwDirectionKind directions;
  SwSectionKind section;
  double pace_s;
  SwDose dose;
  char *dose_reason;
  gboolean has_review;
  SwReviewState review;
  char *review_due;
  SwLoad load_limit;
  char **easier;
  char **harder;
} SwExerciseFacts;

#define SW_TYPE_EXERCISE (sw_exercise_get_type ())
G_DECLARE_FINAL_TYPE (SwExercise, sw_exercise, SW, EXERCISE, GObject)

SwExercise *sw_exercise_new (const SwExerciseFacts *facts,
                             GPtrArray             *texts,
                             SwFigureSpec          *figure,
                             const char * const    *extras);
const SwExerciseFacts *sw_exercise_get_facts (SwExercise *self);
const char *sw_exercise_get_id (SwExercise *self);
guint sw_exercise_get_n_texts (SwExercise *self);
const SwExerciseText *sw_exercise_get_nth_text (SwExercise *self,
                                                guint       n);
const SwExerciseText *sw_exercise_get_text (SwExercise *self,
                                            const char *language);
SwFigureSpec *sw_exercise_get_figure (SwExercise *self);
SwBodySide sw_exercise_get_drawn_side (SwExercise *self);
gboolean sw_exercise_is_mirrored_for (SwExercise *self,
                                      SwSide      worked);
const char * const *sw_exercise_get_extras (SwExercise *self);
gboolean sw_exercise_equal (SwExercise *a,
                            SwExercise *b);

G_END_DECLS
