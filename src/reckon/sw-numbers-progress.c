/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rules of progress, what they propose and the plan over the weeks, as JSON. */
#include "config.h"

#include "sw-numbers-private.h"
#include "sw-plan.h"
#include "sw-progress.h"

static void
add_rules (JsonBuilder   *builder,
           SwProgression *progression)
{
  const char *const *numbers = sw_progression_get_number_names ();

  json_builder_set_member_name (builder, "rules");
  json_builder_begin_array (builder);
  for (int kind = 0; kind < SW_PROGRESS_N_RULES; kind++)
    {
      const SwProgressRule *rule = sw_progress_rule_get ((SwProgressRuleKind) kind);
      g_autofree char *when = sw_progress_rule_dup_when (rule, progression);
      g_autofree char *then = sw_progress_rule_dup_then (rule, progression);

      json_builder_begin_object (builder);
      add_string (builder, "rule", sw_term_to_nick (SW_TYPE_PROGRESS_RULE_KIND, kind));
      add_string (builder, "when", when);
      add_string (builder, "then", then);
      add_string (builder, "source", rule->source);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);

  json_builder_set_member_name (builder, "numbers");
  json_builder_begin_object (builder);
  for (guint i = 0; numbers[i] != NULL; i++)
    add_int (builder, numbers[i], sw_progression_get_number (progression, numbers[i]));
  json_builder_end_object (builder);
}

static void
add_changed_dose (JsonBuilder  *builder,
                  SwDoseChange  change,
                  const SwDose *dose,
                  SwWorking    *working)
{
  g_autofree char *line = sw_dose_to_line (dose);

  add_string (builder, "change", sw_term_to_nick (SW_TYPE_DOSE_CHANGE, (int) change));
  add_string (builder, "dose-line", line);
  add_double (builder, "load-kilograms", sw_load_to_kg (dose->load));
  add_working (builder, working);
}

/* What the diary proposes; of the diary itself no word. */
static void
add_proposals (JsonBuilder *builder,
               SwProgramme *programme,
               SwCatalogue *catalogue)
{
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
  g_autoptr (SwSwaps) swaps = catalogue != NULL ? sw_swaps_new (programme, catalogue) : NULL;

  json_builder_set_member_name (builder, "proposals");
  json_builder_begin_array (builder);
  for (guint i = 0; i < items->len; i++)
    {
      g_autoptr (SwProgress) progress = sw_progress_suggest (programme, items->pdata[i]);

      if (progress == NULL)
        continue;
      if (swaps != NULL)
        sw_progress_find_exercise (progress, swaps, items->pdata[i]);
      json_builder_begin_object (builder);
      add_string (builder, "item", sw_item_get_id (items->pdata[i]));
      add_string (builder, "rule", sw_term_to_nick (SW_TYPE_PROGRESS_RULE_KIND, (int) progress->rule->kind));
      if (progress->exercise != NULL)
        add_string (builder, "other-exercise", sw_exercise_get_id (progress->exercise));
      add_changed_dose (builder, progress->change, &progress->dose, progress->working);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

static void
add_plan (JsonBuilder *builder,
          SwProgramme *programme)
{
  g_autoptr (SwPlan) plan = sw_plan_new (programme);

  if (plan == NULL)
    return;

  json_builder_set_member_name (builder, "plan");
  json_builder_begin_array (builder);
  for (guint i = 0; i < plan->rows->len; i++)
    {
      const SwPlanRow *row = plan->rows->pdata[i];

      json_builder_begin_object (builder);
      add_string (builder, "item", sw_item_get_id (row->item));
      json_builder_set_member_name (builder, "weeks");
      json_builder_begin_array (builder);
      for (int week = 0; week < plan->n_weeks; week++)
        {
          json_builder_begin_object (builder);
          add_int (builder, "week", week + 1);
          add_string (builder, "rule",
                      sw_term_to_nick (SW_TYPE_PROGRESS_RULE_KIND, (int) row->weeks[week].rule->kind));
          add_changed_dose (builder, row->weeks[week].change, &row->weeks[week].dose, row->weeks[week].working);
          json_builder_end_object (builder);
        }
      json_builder_end_array (builder);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

/**
 * sw_numbers_add_progress:
 * @builder: inside an object
 * @programme: a programme
 * @catalogue: (nullable): where other exercises are looked for
 *
 * Adds "progress": the rules of progress with their numbers, what the diary proposes, and the plan where there is one.
 */
void
sw_numbers_add_progress (JsonBuilder *builder,
                         SwProgramme *programme,
                         SwCatalogue *catalogue)
{
  json_builder_set_member_name (builder, "progress");
  json_builder_begin_object (builder);
  add_rules (builder, sw_programme_get_progression (programme));
  add_proposals (builder, programme, catalogue);
  add_plan (builder, programme);
  json_builder_end_object (builder);
}
