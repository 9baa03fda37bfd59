/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks one exercise item: against the client's precautions and equipment, and its dose against the
 * exercise. */
#include "config.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n.h>

#include "sw-checking.h"
#include "sw-dose-time.h"
#include "sw-equipment-name.h"
#include "sw-loads.h"
#include "sw-position-name.h"
#include "sw-precautions.h"
#include "sw-swap.h"
#include "sw-units.h"

/* Pain during exercise up to 5 of 10 is acceptable if it settles by the next morning (pain-monitoring model:
 * Thomee 1997; Silbernagel and others, Am J Sports Med 2007;35:897-906). */
#define MOST_PAIN 5

/* An item in the middle of being checked. */
typedef struct
{
  SwChecking *checking;
  SwItem *item;
  SwExercise *exercise;
  const SwExerciseFacts *facts;
  const SwDose *dose;
  SwClient *client;
  char *name;
} Subject;

static SwFinding *
add (Subject        *self,
     SwFindingLevel  level,
     char           *key,
     char           *text,
     const char     *why)
{
  return sw_checking_add (self->checking, level, self->item, key, text, why);
}

/* The first of those that suit best. */
static SwExercise *
find_swap (SwChecking *self,
           SwItem     *item,
           SwSwapWish  wish)
{
  g_autoptr (GPtrArray) swaps = NULL;

  if (self->catalogue == NULL)
    return NULL;

  if (self->swaps == NULL)
    self->swaps = sw_swaps_new (self->programme, self->catalogue);
  swaps = sw_swaps_find (self->swaps, item, wish, 1);
  return swaps->len == 0 ? NULL : g_object_ref (((SwSwap *) swaps->pdata[0])->exercise);
}

static void
fix_by_dose (SwFinding    *finding,
             const SwDose *dose,
             const char   *label)
{
  finding->fix_dose = *dose;
  sw_checking_fix (finding, SW_FIX_SET_DOSE, label);
}

/**
 * sw_checking_fix_by_swap:
 * @self: the checking
 * @finding: a finding at an item
 * @wish: which difficulty is wanted
 *
 * Offers what suits best in the exercise's place, or its removal where nothing does.
 */
void
sw_checking_fix_by_swap (SwChecking *self,
                         SwFinding  *finding,
                         SwSwapWish  wish)
{
  g_autoptr (SwExercise) swap = find_swap (self, finding->item, wish);
  g_autofree char *label = NULL;

  if (swap == NULL)
    {
      sw_checking_fix (finding, SW_FIX_REMOVE_ITEM, _("Remove it"));
      return;
    }

  label = g_strdup_printf (_("Swap for “%s”"), sw_exercise_get_text (swap, NULL)->name);
  finding->fix_exercise = g_steal_pointer (&swap);
  sw_checking_fix (finding, SW_FIX_SWAP_EXERCISE, label);
}

/* All that one precaution has against the exercise is one finding, as severe as its most severe rule. */
static void
check_precaution (Subject      *self,
                  SwPrecaution  precaution)
{
  g_autoptr (GString) demands = g_string_new (NULL);
  g_autoptr (GString) reasons = g_string_new (NULL);
  SwFindingLevel level = SW_FINDING_TELL;
  g_autofree char *since = NULL;
  const char *last_reason = NULL;
  SwFinding *finding;

  for (int caution = 0; caution < sw_term_get_n_values (SW_TYPE_CAUTION); caution++)
    {
      const SwPrecautionRule *rule;

      if ((self->facts->cautions & SW_SET (caution)) == 0)
        continue;
      rule = sw_precautions_find_rule (precaution, (SwCaution) caution);
      if (rule == NULL)
        continue;

      level = MAX (level, rule->level);
      g_string_append_printf (demands, "%s%s", demands->len > 0 ? ", " : "",
                              sw_caution_get_name ((SwCaution) caution));
      if (last_reason == NULL || strcmp (last_reason, rule->reason) != 0)
        g_string_append_printf (reasons, "%s%s (%s)", reasons->len > 0 ? " " : "",
                                _(rule->reason), _(rule->source));
      last_reason = rule->reason;
    }
  if (demands->len == 0)
    return;

  finding = add (self, level,
                 g_strdup_printf ("precaution:%s:%s:%s", sw_term_to_nick (SW_TYPE_PRECAUTION, (int) precaution),
                                  sw_item_get_id (self->item), self->facts->id),
                 /* Translators: exercise, client's condition, what the exercise asks of the body. */
                 g_strdup_printf (_("“%s” and %s: %s."), self->name,
                                  sw_precaution_get_name (precaution), demands->str),
                 reasons->str);
  since = sw_checking_dup_surgery_since (self->checking, precaution);
  if (since != NULL)
    {
      /* Translators: how long ago, such as "6 weeks and 2 days ago" */
      g_autofree char *line = g_strdup_printf (_("The operation was %s."), since);

      finding->details = g_strdupv ((char *[]) { line, NULL });
    }
  if (level > SW_FINDING_TELL)
    sw_checking_fix_by_swap (self->checking, finding, SW_SWAP_EASIER);
}

static void
check_precaution_load (Subject      *self,
                       SwPrecaution  precaution)
{
  const SwLoadRule *rule;
  g_autofree char *why = NULL;
  g_autofree char *load = NULL;
  SwFinding *finding;
  SwDose fixed = *self->dose;

  if (sw_load_to_kg (self->dose->load) <= 0.0)
    return;
  rule = sw_precautions_find_load_rule (precaution, self->facts->region, self->facts->equipment);
  if (rule == NULL)
    return;

  why = g_strdup_printf ("%s (%s)", _(rule->reason), _(rule->source));
  load = sw_number_to_string (sw_load_to_kg (self->dose->load), 2);
  finding = add (self, rule->level,
                 g_strdup_printf ("precaution-load:%s:%s:%s:%s",
                                  sw_term_to_nick (SW_TYPE_PRECAUTION, (int) precaution),
                                  sw_item_get_id (self->item), self->facts->id, load),
                 g_strdup_printf (_("“%s” has a load, and the client has this precaution: %s."), self->name,
                                  sw_precaution_get_name (precaution)),
                 why);
  fixed.load = (SwLoad) { SW_LOAD_NONE, 0.0 };
  fix_by_dose (finding, &fixed, _("Do it without a load"));
}

static void
check_precautions (Subject *self)
{
  SwSet precautions = sw_client_get_precautions (self->client);

  for (int precaution = 0; precaution < sw_term_get_n_values (SW_TYPE_PRECAUTION); precaution++)
    {
      if ((precautions & SW_SET (precaution)) == 0)
        continue;
      check_precaution (self, (SwPrecaution) precaution);
      check_precaution_load (self, (SwPrecaution) precaution);
    }
}

/* With nothing ticked, what is at home was not asked yet: that is one question, not one for each item. */
static void
check_equipment (Subject *self)
{
  SwSet missing = sw_swap_get_missing_equipment (self->client, self->facts);
  g_autofree char *names = NULL;
  SwFinding *finding;

  if (missing == 0)
    return;
  if (sw_client_get_equipment (self->client) == 0)
    {
      for (guint i = 0; i < self->checking->findings->len; i++)
        {
          const SwFinding *other = g_ptr_array_index (self->checking->findings, i);

          if (strcmp (other->key, "equipment-unknown") == 0)
            return;
        }
      finding = sw_checking_add (self->checking, SW_FINDING_ASK, NULL, g_strdup ("equipment-unknown"),
                                 g_strdup (_("It is not noted what equipment the client has at home.")),
                                 _("Some exercises need equipment. Tick what there is."));
      sw_checking_fix (finding, SW_FIX_SHOW_CLIENT, _("Show the client"));
      return;
    }

  names = sw_equipment_dup_names (missing);
  finding = add (self, SW_FINDING_ASK,
                 g_strdup_printf ("equipment:%s:%s", sw_item_get_id (self->item), self->facts->id),
                 g_strdup_printf (_("“%s” needs what the client does not have: %s."), self->name, names),
                 _("What is not at hand is not done. Note that it is there, or choose another exercise."));
  finding->fix_equipment = missing;
  finding->fix_exercise = find_swap (self->checking, self->item, SW_SWAP_ANY);
  sw_checking_fix (finding, SW_FIX_ADD_EQUIPMENT, _("The client has it"));
}

static void
check_position (Subject *self)
{
  SwFinding *finding;

  if ((SW_SET (self->facts->position) & sw_client_get_avoided_positions (self->client)) == 0)
    return;

  finding = add (self, SW_FINDING_ASK,
                 g_strdup_printf ("position:%s:%s", sw_item_get_id (self->item), self->facts->id),
                 /* Translators: an exercise, then a start position ("on the back") */
                 g_strdup_printf (_("“%s” starts in a position the client cannot get into alone: %s."), self->name,
                                  sw_position_get_name (self->facts->position)),
                 _("Noted for this client. What cannot be begun is not done, or done unsafely."));
  sw_checking_fix_by_swap (self->checking, finding, SW_SWAP_ANY);
}

static void
check_load (Subject *self)
{
  g_autofree char *load = NULL;
  SwDose fixed = *self->dose;
  SwFinding *finding;

  if (sw_load_to_kg (self->dose->load) <= 0.0)
    return;

  load = sw_load_to_text (self->dose->load);
  if (self->facts->load_limit.unit == SW_LOAD_NONE)
    {
      finding = add (self, SW_FINDING_ASK,
                     g_strdup_printf ("load:%s:%s:%s", sw_item_get_id (self->item), self->facts->id, load),
                     g_strdup_printf (_("“%s” is not meant to be done with a load."), self->name),
                     _("The exercise's steps and picture show no load."));
      fixed.load = (SwLoad) { SW_LOAD_NONE, 0.0 };
      fix_by_dose (finding, &fixed, _("Do it without a load"));
      return;
    }

  if (sw_load_to_kg (self->dose->load) > sw_load_to_kg (self->facts->load_limit) + 1e-9)
    {
      g_autofree char *limit = sw_load_to_text (self->facts->load_limit);
      g_autofree char *label = NULL;
      g_autofree char *fixed_load = NULL;

      fixed.load = sw_load_in_unit (self->facts->load_limit, self->dose->load.unit);
      fixed_load = sw_load_to_text (fixed.load);
      label = g_strdup_printf (_("Set the load to %s"), fixed_load);
      finding = add (self, SW_FINDING_STOP,
                     g_strdup_printf ("load-limit:%s:%s:%s", sw_item_get_id (self->item), self->facts->id, load),
                     g_strdup_printf (_("“%s” has a load of %s; its limit is %s."), self->name, load, limit),
                     _("The limit is part of the exercise in the catalogue."));
      fix_by_dose (finding, &fixed, label);
    }
}

static void
check_amount (Subject *self)
{
  g_autoptr (GError) error = NULL;
  SwDose fixed;
  SwFinding *finding;
  SwSpan span;
  int minutes;

  if (!sw_dose_check (self->dose, &error))
    {
      finding = add (self, SW_FINDING_STOP,
                     g_strdup_printf ("dose-range:%s:%s", sw_item_get_id (self->item), self->facts->id),
                     g_strdup_printf (_("The dose of “%s” is out of range."), self->name), error->message);
      fix_by_dose (finding, &self->facts->dose, _("Set the exercise's usual dose"));
      return;
    }
  if (self->dose->reps_high == 0 && self->dose->hold_s == 0)
    {
      finding = add (self, SW_FINDING_STOP,
                     g_strdup_printf ("dose-missing:%s", sw_item_get_id (self->item)),
                     g_strdup_printf (_("“%s” has no repetitions and no hold."), self->name),
                     _("The client cannot know how much to do."));
      fixed = self->facts->dose;
      if (fixed.reps_high == 0 && fixed.hold_s == 0)
        sw_checking_fix (finding, SW_FIX_SHOW_ITEM, _("Show the dose"));
      else
        fix_by_dose (finding, &fixed, _("Set the exercise's usual dose"));
      return;
    }

  span = sw_dose_time_of (self->dose, self->facts->pace_s).total;
  minutes = sw_span_low_minutes (span);
  if (span.low_s > 30.0 * 60.0)
    {
      finding = add (self, SW_FINDING_ASK,
                     g_strdup_printf ("dose-long:%s:%d", sw_item_get_id (self->item), minutes),
                     g_strdup_printf (_("“%s” takes %d minutes by itself."), self->name, minutes),
                     _("A whole session at home usually takes 10 to 30 minutes (common practice)."));
      sw_checking_fix (finding, SW_FIX_SHOW_ITEM, _("Show the dose"));
    }
}

static void
check_sides (Subject *self)
{
  SwDose fixed = *self->dose;
  SwFinding *finding;

  if (self->dose->extra_sets == 0)
    return;

  if (self->dose->side == SW_SIDE_BOTH)
    {
      finding = add (self, SW_FINDING_ASK,
                     g_strdup_printf ("extra-side:%s:both", sw_item_get_id (self->item)),
                     g_strdup_printf (_("“%s” has extra sets for one side, but both sides work together."),
                                      self->name),
                     _("The client cannot do a set of one side alone unless the sides work one at a time."));
      fixed.side = SW_SIDE_EACH;
      fix_by_dose (finding, &fixed, _("Do each side by itself"));
    }
  else if ((self->dose->side == SW_SIDE_RIGHT && self->dose->extra_side == SW_BODY_SIDE_LEFT)
           || (self->dose->side == SW_SIDE_LEFT && self->dose->extra_side == SW_BODY_SIDE_RIGHT))
    {
      finding = add (self, SW_FINDING_ASK,
                     g_strdup_printf ("extra-side:%s:%s", sw_item_get_id (self->item),
                                      sw_term_to_nick (SW_TYPE_SIDE, (int) self->dose->side)),
                     g_strdup_printf (_("“%s” is for one side, but the extra sets are for the other."),
                                      self->name),
                     _("One of the two is probably a slip."));
      fixed.side = SW_SIDE_EACH;
      fix_by_dose (finding, &fixed, _("Do each side by itself"));
    }
  else if (self->dose->extra_sets > self->dose->sets)
    {
      finding = add (self, SW_FINDING_TELL,
                     g_strdup_printf ("extra-many:%s:%d", sw_item_get_id (self->item), self->dose->extra_sets),
                     g_strdup_printf (_("“%s” more than doubles the sets of one side."), self->name),
                     _("A weaker side catches up by a little more work, not by twice as much (common practice)."));
      sw_checking_fix (finding, SW_FIX_SHOW_ITEM, _("Show the dose"));
    }
}

static void
check_limits (Subject *self)
{
  SwDose fixed = *self->dose;
  SwFinding *finding;

  if (self->dose->pain_limit > MOST_PAIN)
    {
      finding = add (self, SW_FINDING_ASK,
                     g_strdup_printf ("pain-limit:%s:%d", sw_item_get_id (self->item), self->dose->pain_limit),
                     g_strdup_printf (_("“%s” allows pain up to %d of 10."), self->name, self->dose->pain_limit),
                     _("Pain above 5 of 10 is too much: less load or range (Thomee 1997; Silbernagel and "
                       "others 2007)."));
      fixed.pain_limit = MOST_PAIN;
      fix_by_dose (finding, &fixed, _("Set the pain limit to 5"));
    }

  if (self->dose->effort_limit == 0
      && (self->facts->aims & (SW_SET (SW_AIM_STRENGTH) | SW_SET (SW_AIM_ENDURANCE))) != 0
      && (sw_client_get_precautions (self->client) & SW_SET (SW_PRECAUTION_HEART_RATE_MEDICINE)) != 0)
    {
      finding = add (self, SW_FINDING_TELL,
                     g_strdup_printf ("effort-limit:%s", sw_item_get_id (self->item)),
                     g_strdup_printf (_("“%s” has no effort limit."), self->name),
                     _("With a medicine that holds the heart rate down, the pulse does not show the effort: "
                       "how hard it feels does (common practice)."));
      sw_checking_fix (finding, SW_FIX_SHOW_ITEM, _("Show the dose"));
    }
}

/**
 * sw_checking_exercise:
 * @self: the checking
 * @item: an exercise item of the programme
 *
 * Adds what there is to find at one exercise.
 */
void
sw_checking_exercise (SwChecking *self,
                      SwItem     *item)
{
  g_autofree char *name = sw_item_dup_name (item, NULL);
  Subject subject = {
    .checking = self,
    .item = item,
    .exercise = sw_item_get_exercise (item),
    .dose = sw_item_get_dose (item),
    .client = sw_programme_get_client (self->programme),
    .name = name,
  };

  if (subject.exercise == NULL)
    {
      SwFinding *finding;

      finding = add (&subject, SW_FINDING_STOP, g_strdup_printf ("exercise-missing:%s", sw_item_get_id (item)),
                     g_strdup (_("An item has no exercise.")),
                     _("There is nothing to print for it."));
      sw_checking_fix (finding, SW_FIX_REMOVE_ITEM, _("Remove it"));
      return;
    }

  subject.facts = sw_exercise_get_facts (subject.exercise);
  check_precautions (&subject);
  check_equipment (&subject);
  check_position (&subject);
  sw_checking_item_limits (self, item);
  check_load (&subject);
  sw_checking_client_limit (self, item);
  check_amount (&subject);
  check_sides (&subject);
  sw_checking_sides (self, item);
  check_limits (&subject);
}
