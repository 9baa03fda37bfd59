/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-progression.h"
#include "sw-reckon-enum-types.h"

G_BEGIN_DECLS

/**
 * SwProgressRuleKind:
 * @SW_PROGRESS_RULE_PAIN: eases after too much pain
 * @SW_PROGRESS_RULE_UNSETTLED: eases where pain lasted into the next day
 * @SW_PROGRESS_RULE_CONTROL: eases where it could not be done as shown
 * @SW_PROGRESS_RULE_WORSE: eases where there was more pain after than before
 * @SW_PROGRESS_RULE_MORE: a step up after more than was asked
 * @SW_PROGRESS_RULE_FIRST_WEEKS: the plan's first weeks
 * @SW_PROGRESS_RULE_PLANNED_STEP: the plan's steps
 * @SW_PROGRESS_RULE_LAST_WEEKS: the plan's last weeks
 *
 * The rules, those that ease first, in the order in which they count.
 */
typedef enum
{
  SW_PROGRESS_RULE_PAIN,
  SW_PROGRESS_RULE_UNSETTLED,
  SW_PROGRESS_RULE_CONTROL,
  SW_PROGRESS_RULE_WORSE,
  SW_PROGRESS_RULE_MORE,
  SW_PROGRESS_RULE_FIRST_WEEKS,
  SW_PROGRESS_RULE_PLANNED_STEP,
  SW_PROGRESS_RULE_LAST_WEEKS,
} SwProgressRuleKind;

#define SW_PROGRESS_N_RULES (SW_PROGRESS_RULE_LAST_WEEKS + 1)

/* Rules before this one ease. */
#define SW_PROGRESS_RULE_FIRST_STEP SW_PROGRESS_RULE_MORE

/**
 * SwProgressRule:
 * @kind: which one
 * @when: what must have happened; {name} stands for a number of #SwProgression
 * @then: what is proposed
 * @source: where it comes from
 * @numbers: the numbers in it, NULL-terminated
 *
 * A rule in words and numbers, for the therapist. The words are not translated yet.
 */
typedef struct
{
  SwProgressRuleKind kind;
  const char *when;
  const char *then;
  const char *source;
  const char *numbers[4];
} SwProgressRule;

const SwProgressRule *sw_progress_rule_get (SwProgressRuleKind kind);
char *sw_progress_rule_dup_when (const SwProgressRule *rule,
                                 SwProgression        *progression);
char *sw_progress_rule_dup_then (const SwProgressRule *rule,
                                 SwProgression        *progression);
const char *sw_progress_number_get_name (const char *number);
const char *sw_progress_number_get_unit (const char *number);

G_END_DECLS
