/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A plan over the weeks: get used to it, build, keep. It begins with the doses as they are; what the diary says decides
 * whether a step is really taken. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-plan.h"

static void
row_free (SwPlanRow *row)
{
  for (int week = 0; week < SW_PROGRESSION_MOST_WEEKS; week++)
    g_clear_pointer (&row->weeks[week].working, sw_working_unref);
  g_object_unref (row->item);
  g_free (row);
}

/**
 * sw_plan_get_phase:
 * @self: a plan
 * @week: from 0 on
 *
 * Returns: %SW_PROGRESS_RULE_FIRST_WEEKS, %SW_PROGRESS_RULE_PLANNED_STEP for the weeks that build, or
 *   %SW_PROGRESS_RULE_LAST_WEEKS
 */
SwProgressRuleKind
sw_plan_get_phase (const SwPlan *self,
                   int           week)
{
  if (week < self->n_first)
    return SW_PROGRESS_RULE_FIRST_WEEKS;

  return week < self->n_weeks - self->n_last ? SW_PROGRESS_RULE_PLANNED_STEP : SW_PROGRESS_RULE_LAST_WEEKS;
}

static SwPlanRow *
row_new (const SwPlan *plan,
         SwProgramme  *programme,
         SwItem       *item)
{
  SwProgression *progression = sw_programme_get_progression (programme);
  int step_weeks = sw_progression_get_number (progression, "step-weeks");
  SwPlanRow *row = g_new0 (SwPlanRow, 1);
  g_auto (SwDoseBounds) bounds = { 0 };
  SwDose dose = *sw_item_get_dose (item);

  row->item = g_object_ref (item);
  sw_dose_bounds_init (&bounds, programme, item);
  for (int i = 0; i < plan->n_weeks; i++)
    {
      SwPlanWeek *week = &row->weeks[i];
      SwProgressRuleKind phase = sw_plan_get_phase (plan, i);
      g_autofree char *when = NULL;
      g_autofree char *then = NULL;

      week->rule = sw_progress_rule_get (phase);
      week->working = sw_working_new ();
      week->dose = dose;
      when = sw_progress_rule_dup_when (week->rule, progression);
      then = sw_progress_rule_dup_then (week->rule, progression);
      sw_working_add (week->working, when, _(week->rule->source), "%s", then);
      if (phase == SW_PROGRESS_RULE_PLANNED_STEP && (i - plan->n_first) % step_weeks == 0)
        week->change = sw_dose_step_up (&dose, &bounds, progression, &week->dose, week->working);
      dose = week->dose;
    }

  return row;
}

/**
 * sw_plan_new:
 * @programme: a programme whose progression has weeks, 2..12
 *
 * The weeks of every exercise item: the dose as it is in the first weeks, then a step of sw_dose_step_up() every
 * "step-weeks" weeks, then no more. What of first and last weeks does not fit is left off, the last ones first. Sources:
 * those of the rules.
 *
 * Returns: (transfer full) (nullable): the plan, or NULL when there is none
 */
SwPlan *
sw_plan_new (SwProgramme *programme)
{
  SwProgression *progression;
  g_autoptr (GPtrArray) items = NULL;
  SwPlan *self;

  g_return_val_if_fail (SW_IS_PROGRAMME (programme), NULL);

  progression = sw_programme_get_progression (programme);
  if (sw_progression_get_number (progression, "weeks") == 0)
    return NULL;

  self = g_new0 (SwPlan, 1);
  self->n_weeks = sw_progression_get_number (progression, "weeks");
  self->n_first = MIN (sw_progression_get_number (progression, "first-weeks"), self->n_weeks);
  self->n_last = MIN (sw_progression_get_number (progression, "last-weeks"), self->n_weeks - self->n_first);
  self->rows = g_ptr_array_new_with_free_func ((GDestroyNotify) row_free);
  items = sw_programme_dup_items (programme);
  for (guint i = 0; i < items->len; i++)
    {
      if (sw_item_get_kind (items->pdata[i]) == SW_ITEM_EXERCISE && sw_item_get_exercise (items->pdata[i]) != NULL)
        g_ptr_array_add (self->rows, row_new (self, programme, items->pdata[i]));
    }

  return self;
}

/**
 * sw_plan_free:
 * @self: (transfer full): a plan
 */
void
sw_plan_free (SwPlan *self)
{
  g_ptr_array_unref (self->rows);
  g_free (self);
}
