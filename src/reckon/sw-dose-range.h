/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-exercise.h"

G_BEGIN_DECLS

/* From this on repetitions are holds, which the published numbers of repetitions do not speak of. */
#define SW_DOSE_RANGE_HELD_S 5

/**
 * SwDoseMost:
 * @sets: most sets
 * @repetitions: most repetitions in a set
 * @source: where these are published
 * @hold_s: longest hold, seconds
 * @hold_source: where that is published
 *
 * How far a dose may grow by itself; 0 where nothing is published.
 */
typedef struct
{
  int sets;
  int repetitions;
  const char *source;
  int hold_s;
  const char *hold_source;
} SwDoseMost;

SwDoseMost sw_dose_range_get_most (SwSet aims);
char *sw_dose_range_find_fault (const SwDose *dose,
                                SwSet         aims);

G_END_DECLS
