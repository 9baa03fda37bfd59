/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One step of a dose up or down, never beyond what is allowed. */
#pragma once

#include "sw-programme.h"
#include "sw-reckon-enum-types.h"
#include "sw-working.h"

G_BEGIN_DECLS

/**
 * SwDoseChange:
 * @SW_DOSE_CHANGE_NONE: nothing: no step is left
 * @SW_DOSE_CHANGE_LOAD: another load
 * @SW_DOSE_CHANGE_REPETITIONS: other repetitions
 * @SW_DOSE_CHANGE_SETS: another number of sets
 * @SW_DOSE_CHANGE_HOLD: held longer or shorter
 *
 * The one thing that a step changes.
 */
typedef enum
{
  SW_DOSE_CHANGE_NONE,
  SW_DOSE_CHANGE_LOAD,
  SW_DOSE_CHANGE_REPETITIONS,
  SW_DOSE_CHANGE_SETS,
  SW_DOSE_CHANGE_HOLD,
} SwDoseChange;

/**
 * SwDoseBounds:
 * @aims: set of #SwAim of the exercise
 * @pulls: whether its load is a pull, not a weight
 * @most_kg: most load that is allowed; 0 for none at all
 * @owned: (nullable) (element-type SwLoad): the loads the client owns, the least first; NULL or none when that is not
 *   known
 *
 * What an item's dose may become.
 */
typedef struct
{
  SwSet aims;
  gboolean pulls;
  double most_kg;
  GArray *owned;
} SwDoseBounds;

void sw_dose_bounds_init (SwDoseBounds *bounds,
                          SwProgramme  *programme,
                          SwItem       *item);
void sw_dose_bounds_clear (SwDoseBounds *bounds);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SwDoseBounds, sw_dose_bounds_clear)

SwDoseChange sw_dose_step_up (const SwDose       *dose,
                              const SwDoseBounds *bounds,
                              SwProgression      *progression,
                              SwDose             *stepped,
                              SwWorking          *working);
SwDoseChange sw_dose_step_down (const SwDose       *dose,
                                const SwDoseBounds *bounds,
                                SwProgression      *progression,
                                gboolean            repetitions_first,
                                SwDose             *stepped,
                                SwWorking          *working);
char *sw_dose_dup_amount_line (const SwDose *dose);
char *sw_dose_change_dup_words (SwDoseChange  change,
                                const SwDose *dose);

G_END_DECLS
