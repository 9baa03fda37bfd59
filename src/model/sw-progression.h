/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-terms.h"

G_BEGIN_DECLS

#define SW_PROGRESSION_LEAST_WEEKS 2
#define SW_PROGRESSION_MOST_WEEKS 12

/**
 * SwProgression:
 *
 * How the doses of a programme are to change: the numbers in the rules of progress, see sw-progress-rule.c, and the weeks of
 * the plan, see sw-plan.c. Whatever is set beyond its range comes to the nearest end of it. Properties (int, except the
 * first and the last):
 *
 * | name | range | usual | meaning |
 * | --- | --- | --- | --- |
 * | steps-up | boolean | yes | whether steps up are proposed at all; easing always is |
 * | extra-repetitions | 1..5 | 2 | so many more than asked, in the last set |
 * | sessions | 2..6 | 2 | in so many sessions running |
 * | step-percent | 2..10 | 5 | the most a load grows in one step |
 * | step-repetitions | 1..3 | 2 | the most repetitions grow in one step |
 * | pain-limit | 0..5 | 5 | the most pain, where the dose states no less |
 * | worse-by | 1..5 | 2 | so many points more pain after than before is worse |
 * | ease-percent | 5..50 | 10 | the least a load falls when eased |
 * | weeks | 0, 2..12 | 0 | length of the plan; 0 for none |
 * | first-weeks | 1..6 | 1 | of these, to get used to it |
 * | last-weeks | 0..6 | 1 | of these, to keep what was reached |
 * | step-weeks | 1..4 | 1 | weeks from one planned step to the next |
 * | extras | GStrv | | unknown XML, kept |
 */
#define SW_TYPE_PROGRESSION (sw_progression_get_type ())
G_DECLARE_FINAL_TYPE (SwProgression, sw_progression, SW, PROGRESSION, GObject)

SwProgression *sw_progression_new (void);
SwProgression *sw_progression_copy (SwProgression *self);
const char * const *sw_progression_get_number_names (void);
int sw_progression_get_number (SwProgression *self,
                               const char    *name);
void sw_progression_get_range (const char *name,
                               int        *lowest,
                               int        *highest,
                               int        *usual);
gboolean sw_progression_get_steps_up (SwProgression *self);
gboolean sw_progression_is_usual (SwProgression *self);
const char * const *sw_progression_get_extras (SwProgression *self);

G_END_DECLS
