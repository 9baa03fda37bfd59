/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Steps change one thing at a time. Up: the load, by so many percent at most; where no load lies within that, the
 * repetitions; where they are as many as is published for the exercise's aims, the sets. Down: the load, else the sets or
 * the repetitions. */
#include "config.h"

#include <math.h>

#include <glib/gi18n.h>

#include "sw-dose-range.h"
#include "sw-dose-step.h"
#include "sw-limit-check.h"
#include "sw-loads.h"
#include "sw-starting-load.h"
#include "sw-units.h"

/* What the next heavier load may be, after ACSM, Med Sci Sports Exerc 2009;41:687-708: 2 to 10 % more. */
#define LOAD_SOURCE "ACSM, Med Sci Sports Exerc 2009;41:687-708"

/* Stretches are held so much longer in a step (common practice). */
#define HOLD_STEP_S 5

/* With a set more, all repetitions together grow by no more than this (common practice). */
#define MORE_WITH_A_SET_PERCENT 10

/* Nothing is told apart that is closer. */
#define SAME_KG 1e-6

/* Loads that are not known one by one come in these, in the order of SwLoadUnit (common practice). */
static const double graduation[] = { 1.0, 0.5, 1.0, 5.0 };

/* Returns: the least load that a surgeon or clinician has set for what the item does; infinity for none */
static double
get_set_limit_kg (SwProgramme *programme,
                  SwItem      *item)
{
  GListModel *limits = G_LIST_MODEL (sw_programme_get_limits (programme));
  double least_kg = INFINITY;

  for (guint i = 0; i < g_list_model_get_n_items (limits); i++)
    {
      g_autoptr (SwLimit) limit = g_list_model_get_item (limits, i);

      if (sw_limit_get_kind (limit) == SW_LIMIT_KIND_LOAD
          && sw_limit_concerns (limit, sw_item_get_exercise (item), sw_item_get_dose (item)))
        least_kg = fmin (least_kg, sw_limit_get_kg (limit));
    }

  return least_kg;
}

/**
 * sw_dose_bounds_init:
 * @bounds: (out caller-allocates): to be filled
 * @programme: a programme
 * @item: an exercise item of it
 */
void
sw_dose_bounds_init (SwDoseBounds *bounds,
                     SwProgramme  *programme,
                     SwItem       *item)
{
  g_auto (SwStartingLoadQuestion) question = { 0 };

  sw_starting_load_question_init (&question, programme, item);
  *bounds = (SwDoseBounds) {
    .aims = sw_exercise_get_facts (sw_item_get_exercise (item))->aims,
    .pulls = question.exercise_limit.unit == SW_LOAD_NEWTON,
    .most_kg = sw_load_to_kg (question.exercise_limit),
    .owned = g_steal_pointer (&question.owned),
  };
  if (question.client_limit.unit != SW_LOAD_NONE)
    bounds->most_kg = fmin (bounds->most_kg, sw_load_to_kg (question.client_limit));
  bounds->most_kg = fmin (bounds->most_kg, get_set_limit_kg (programme, item));
}

/**
 * sw_dose_bounds_clear:
 * @bounds: bounds that were filled
 */
void
sw_dose_bounds_clear (SwDoseBounds *bounds)
{
  g_clear_pointer (&bounds->owned, g_array_unref);
}

static double
get_value (double     kg,
           SwLoadUnit unit)
{
  return unit == SW_LOAD_LB ? sw_lb_from_kg (kg) : unit == SW_LOAD_NEWTON ? kg * SW_STANDARD_GRAVITY_M_PER_S2 : kg;
}

/* The greatest load there is that is not above @most_kg. Weights the client owns are no bands. */
static SwLoad
round_down (const SwDoseBounds *bounds,
            double              most_kg,
            SwLoadUnit          unit)
{
  SwLoad load = { SW_LOAD_NONE, 0.0 };

  if (!bounds->pulls && unit != SW_LOAD_NEWTON && bounds->owned != NULL && bounds->owned->len > 0)
    {
      if (!sw_load_get_at_most (bounds->owned, most_kg, &load))
        load = (SwLoad) { SW_LOAD_NONE, 0.0 };
      return load;
    }

  load.value = floor (get_value (most_kg, unit) / graduation[unit] + 1e-9) * graduation[unit];
  if (load.value > 0.0)
    load.unit = unit;
  else
    load.value = 0.0;
  return load;
}

static SwDoseChange
step_load_up (const SwDose       *dose,
              const SwDoseBounds *bounds,
              SwProgression      *progression,
              SwDose             *stepped,
              SwWorking          *working)
{
  int percent = sw_progression_get_number (progression, "step-percent");
  double now_kg = sw_load_to_kg (dose->load);
  double wanted_kg = now_kg * (1.0 + percent / 100.0);
  double most_kg = fmin (wanted_kg, bounds->most_kg);
  SwLoad load = round_down (bounds, most_kg, dose->load.unit);
  g_autofree char *now = sw_load_to_text (dose->load);
  g_autofree char *wanted = sw_number_to_string (get_value (wanted_kg, dose->load.unit), 2);
  g_autofree char *next = sw_load_to_text (load);

  sw_working_add (working, _("The most a load grows in one step"), LOAD_SOURCE, "%s + %d %% = %s", now, percent, wanted);
  if (most_kg < wanted_kg)
    {
      g_autofree char *limit = sw_number_to_string (get_value (bounds->most_kg, dose->load.unit), 2);

      sw_working_add (working, _("The limit of exercise and client"), NULL, "%s", limit);
    }
  if (sw_load_to_kg (load) <= now_kg + SAME_KG)
    {
      sw_working_add (working, _("A heavier load within that"), NULL, "%s", _("none there is"));
      return SW_DOSE_CHANGE_NONE;
    }

  sw_working_add (working, _("The heaviest load within that"), NULL, "%s", next);
  stepped->load = load;
  return SW_DOSE_CHANGE_LOAD;
}

static SwDoseChange
step_sets_up (const SwDose     *dose,
              const SwDoseMost *most,
              SwDose           *stepped,
              SwWorking        *working)
{
  int all = dose->sets * dose->reps_high * (100 + MORE_WITH_A_SET_PERCENT) / 100;

  stepped->sets += 1;
  stepped->reps_high = MAX (1, all / stepped->sets);
  stepped->reps_low = MAX (1, stepped->reps_high - (dose->reps_high - dose->reps_low));
  sw_working_add (working, _("One set more, up to what is published"), most->source, "%d + 1, ≤ %d", dose->sets,
                  most->sets);
  sw_working_add (working, _("So many repetitions that all together grow by no more than 10 %"), _("Common practice"),
                  "%d × %d ≤ %d × %d + 10 %%", stepped->sets, stepped->reps_high, dose->sets, dose->reps_high);
  return SW_DOSE_CHANGE_SETS;
}

/**
 * sw_dose_step_up:
 * @dose: what is asked for now
 * @bounds: what it may become
 * @progression: how large a step may be
 * @stepped: (out): the next step; the same as @dose where none is left
 * @working: how it was reckoned is added
 *
 * The next step: a load (kg, lb or N) at most "step-percent" heavier, never above the limits and rounded down to one there
 * is; else at most "step-repetitions" more repetitions, or one set more with fewer of them, at most 10 % more
 * together, both up to what sw_dose_range_get_most() gives; a stretch is held 5 s longer. Load: ACSM, Med Sci Sports Exerc 2009;41:687-708. That repetitions and then sets grow where
 * no load does is common practice.
 *
 * Returns: what changed
 */
SwDoseChange
sw_dose_step_up (const SwDose       *dose,
                 const SwDoseBounds *bounds,
                 SwProgression      *progression,
                 SwDose             *stepped,
                 SwWorking          *working)
{
  SwDoseMost most = sw_dose_range_get_most (bounds->aims);
  int more = MIN (sw_progression_get_number (progression, "step-repetitions"), most.repetitions - dose->reps_high);

  *stepped = *dose;
  if (dose->hold_s >= SW_DOSE_RANGE_HELD_S)
    {
      if (dose->hold_s >= most.hold_s)
        return SW_DOSE_CHANGE_NONE;
      stepped->hold_s = MIN (dose->hold_s + HOLD_STEP_S, most.hold_s);
      sw_working_add (working, _("Held longer, up to what is published"), most.hold_source, "%d s + %d s, ≤ %d s",
                      dose->hold_s, stepped->hold_s - dose->hold_s, most.hold_s);
      return SW_DOSE_CHANGE_HOLD;
    }
  if (dose->load.unit != SW_LOAD_NONE
      && step_load_up (dose, bounds, progression, stepped, working) != SW_DOSE_CHANGE_NONE)
    return SW_DOSE_CHANGE_LOAD;
  if (dose->reps_high > 0 && more > 0)
    {
      stepped->reps_low += more;
      stepped->reps_high += more;
      sw_working_add (working, _("More repetitions, up to what is published"), most.source, "%d + %d, ≤ %d", dose->reps_high,
                      more, most.repetitions);
      return SW_DOSE_CHANGE_REPETITIONS;
    }
  if (dose->reps_high > 0 && dose->sets < most.sets)
    return step_sets_up (dose, &most, stepped, working);

  return SW_DOSE_CHANGE_NONE;
}

static SwDoseChange
step_load_down (const SwDose       *dose,
                const SwDoseBounds *bounds,
                int                 percent,
                SwDose             *stepped,
                SwWorking          *working)
{
  double now_kg = sw_load_to_kg (dose->load);
  double wanted_kg = now_kg * (1.0 - percent / 100.0);
  SwLoad load = round_down (bounds, fmin (wanted_kg, bounds->most_kg), dose->load.unit);
  g_autofree char *now = sw_load_to_text (dose->load);
  g_autofree char *wanted = sw_number_to_string (get_value (wanted_kg, dose->load.unit), 2);
  g_autofree char *next = sw_load_to_text (load);

  /* A band without a pull is no exercise. */
  if (load.unit == SW_LOAD_NONE && (bounds->pulls || dose->load.unit == SW_LOAD_NEWTON))
    return SW_DOSE_CHANGE_NONE;

  sw_working_add (working, _("The least a load falls when eased"), _("Common practice"), "%s − %d %% = %s", now, percent,
                  wanted);
  sw_working_add (working, _("Rounded down"), NULL, "%s", *next != '\0' ? next : _("no load"));
  stepped->load = load;
  return SW_DOSE_CHANGE_LOAD;
}

static int
get_less (int number,
          int percent)
{
  return MAX (1, number - (int) ceil (number * percent / 100.0));
}

static SwDoseChange
step_sets_down (const SwDose *dose,
                SwDose       *stepped,
                SwWorking    *working)
{
  if (dose->sets <= 1)
    return SW_DOSE_CHANGE_NONE;

  stepped->sets -= 1;
  sw_working_add (working, _("One set less"), _("Common practice"), "%d − 1", dose->sets);
  return SW_DOSE_CHANGE_SETS;
}

static SwDoseChange
step_repetitions_down (const SwDose *dose,
                       int           percent,
                       SwDose       *stepped,
                       SwWorking    *working)
{
  if (dose->reps_high <= 1)
    return SW_DOSE_CHANGE_NONE;

  stepped->reps_high = get_less (dose->reps_high, percent);
  stepped->reps_low = MIN (get_less (dose->reps_low, percent), stepped->reps_high);
  sw_working_add (working, _("Fewer repetitions"), _("Common practice"), "%d − %d %%: %d", dose->reps_high, percent,
                  stepped->reps_high);
  return SW_DOSE_CHANGE_REPETITIONS;
}

/**
 * sw_dose_step_down:
 * @dose: what is asked for now
 * @bounds: what it may become
 * @progression: how much less it is to be
 * @repetitions_first: whether repetitions go down before sets
 * @stepped: (out): the easier dose; the same as @dose where none is left
 * @working: how it was reckoned is added
 *
 * An easier dose: a load (kg, lb or N) at least "ease-percent" lighter, rounded down to one there is, or none; where there
 * is no load one set less, fewer repetitions, or a shorter hold, never less than one. How much less is common practice.
 *
 * Returns: what changed; none where it is as little as can be asked for
 */
SwDoseChange
sw_dose_step_down (const SwDose       *dose,
                   const SwDoseBounds *bounds,
                   SwProgression      *progression,
                   gboolean            repetitions_first,
                   SwDose             *stepped,
                   SwWorking          *working)
{
  int percent = sw_progression_get_number (progression, "ease-percent");
  SwDoseChange change = SW_DOSE_CHANGE_NONE;

  *stepped = *dose;
  if (sw_load_to_kg (dose->load) > 0.0)
    change = step_load_down (dose, bounds, percent, stepped, working);
  if (change == SW_DOSE_CHANGE_NONE && repetitions_first)
    change = step_repetitions_down (dose, percent, stepped, working);
  if (change == SW_DOSE_CHANGE_NONE)
    change = step_sets_down (dose, stepped, working);
  if (change == SW_DOSE_CHANGE_NONE)
    change = step_repetitions_down (dose, percent, stepped, working);
  if (change == SW_DOSE_CHANGE_NONE && dose->hold_s > 1)
    {
      stepped->hold_s = get_less (dose->hold_s, percent);
      sw_working_add (working, _("A shorter hold"), _("Common practice"), "%d s − %d %%: %d s", dose->hold_s, percent,
                      stepped->hold_s);
      change = SW_DOSE_CHANGE_HOLD;
    }

  return change;
}

/**
 * sw_dose_dup_amount_line:
 * @dose: a dose
 *
 * Returns: (transfer full): of its line what a step changes: sets, repetitions or a hold, and the load
 */
char *
sw_dose_dup_amount_line (const SwDose *dose)
{
  SwDose amount;

  sw_dose_init (&amount);
  amount.sets = dose->sets;
  amount.reps_low = dose->reps_low;
  amount.reps_high = dose->reps_high;
  amount.hold_s = dose->reps_high > 0 && dose->hold_s < SW_DOSE_RANGE_HELD_S ? 0 : dose->hold_s;
  amount.load = dose->load;
  return sw_dose_to_line (&amount);
}

/**
 * sw_dose_change_dup_words:
 * @change: what changed
 * @dose: into which dose
 *
 * Returns: (transfer full): what it is now, such as "2.5 kg" or "14 repetitions", for the therapist; "" for no change
 */
char *
sw_dose_change_dup_words (SwDoseChange  change,
                          const SwDose *dose)
{
  switch (change)
    {
    case SW_DOSE_CHANGE_LOAD:
      return dose->load.unit == SW_LOAD_NONE ? g_strdup (_("no load")) : sw_load_to_text (dose->load);
    case SW_DOSE_CHANGE_REPETITIONS:
      if (dose->reps_low < dose->reps_high)
        return g_strdup_printf (_("%d–%d repetitions"), dose->reps_low, dose->reps_high);
      return g_strdup_printf (ngettext ("%d repetition", "%d repetitions", (unsigned long) dose->reps_high),
                              dose->reps_high);
    case SW_DOSE_CHANGE_SETS:
      if (dose->reps_high > 0)
        /* Translators: sets, then repetitions in each. */
        return g_strdup_printf (ngettext ("%d set of %d", "%d sets of %d", (unsigned long) dose->sets), dose->sets,
                                dose->reps_high);
      return g_strdup_printf (ngettext ("%d set", "%d sets", (unsigned long) dose->sets), dose->sets);
    case SW_DOSE_CHANGE_HOLD:
      return g_strdup_printf (_("hold %d s"), dose->hold_s);
    case SW_DOSE_CHANGE_NONE:
    default:
      return g_strdup ("");
    }
}
