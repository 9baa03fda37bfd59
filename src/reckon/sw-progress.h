/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-dose-step.h"
#include "sw-progress-rule.h"
#include "sw-swap.h"

G_BEGIN_DECLS

/**
 * SwProgress:
 * @rule: which rule made it
 * @eases: whether it makes the exercise easier
 * @date: (nullable): the day of the diary that decided it, ISO 8601
 * @change: what changes in the dose; none where nothing is left to change
 * @dose: the dose that is proposed
 * @exercise: (nullable): an easier or harder exercise that could be had instead, after sw_progress_find_exercise()
 * @reason: what the diary says, a sentence for the therapist
 * @working: how it was reckoned
 *
 * What is proposed for an item by what its diary says. It is never done by itself: the therapist decides.
 */
typedef struct
{
  const SwProgressRule *rule;
  gboolean eases;
  char *date;
  SwDoseChange change;
  SwDose dose;
  SwExercise *exercise;
  char *reason;
  SwWorking *working;
} SwProgress;

SwProgress *sw_progress_suggest (SwProgramme *programme,
                                 SwItem      *item);
void sw_progress_find_exercise (SwProgress *self,
                                SwSwaps    *swaps,
                                SwItem     *item);
void sw_progress_free (SwProgress *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwProgress, sw_progress_free)

G_END_DECLS
