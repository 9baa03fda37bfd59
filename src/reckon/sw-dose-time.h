/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-dose.h"
#include "sw-span.h"

G_BEGIN_DECLS

/**
 * SwDoseTime:
 * @moving_s: the moving part of a repetition; 0 for a dose of holds alone
 * @by_tempo: whether the dose asks that, not the exercise's pace
 * @set: one set of one side: its repetitions and holds, in every direction
 * @n_sets: sets of one side, those of both counted
 * @work: all sets
 * @n_rests: rests that one side has at most
 * @rests: what is rested in all
 * @total: both
 *
 * How the time of a dose comes about.
 */
typedef struct
{
  double moving_s;
  gboolean by_tempo;
  SwSpan set;
  int n_sets;
  SwSpan work;
  int n_rests;
  SwSpan rests;
  SwSpan total;
} SwDoseTime;

SwDoseTime sw_dose_time_of (const SwDose *dose,
                            double        pace_s);

G_END_DECLS
