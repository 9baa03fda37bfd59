/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-dose-step.h"
#include "sw-progress-rule.h"

G_BEGIN_DECLS

/**
 * SwPlanWeek:
 * @dose: what is asked for in it
 * @change: what is new since the week before
 * @rule: which rule made it
 * @working: how it was reckoned
 *
 * A week of one item.
 */
typedef struct
{
  SwDose dose;
  SwDoseChange change;
  const SwProgressRule *rule;
  SwWorking *working;
} SwPlanWeek;

/**
 * SwPlanRow:
 * @item: an exercise item
 * @weeks: as many as the plan has
 */
typedef struct
{
  SwItem *item;
  SwPlanWeek weeks[SW_PROGRESSION_MOST_WEEKS];
} SwPlanRow;

/**
 * SwPlan:
 * @n_weeks: its length
 * @n_first: weeks to get used to it
 * @n_last: weeks to keep it; those between build
 * @rows: (element-type SwPlanRow): the exercise items, in the order of the document
 *
 * What is asked for week by week, if all goes well.
 */
typedef struct
{
  int n_weeks;
  int n_first;
  int n_last;
  GPtrArray *rows;
} SwPlan;

SwPlan *sw_plan_new (SwProgramme *programme);
void sw_plan_free (SwPlan *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwPlan, sw_plan_free)

SwProgressRuleKind sw_plan_get_phase (const SwPlan *self,
                                      int           week);

G_END_DECLS
