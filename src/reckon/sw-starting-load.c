/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * From a test of strength to the load to begin with: what could be moved once, the part of it that the wanted
 * repetitions and effort stand for, then down to the limits and to what there is. */
#include "config.h"

#include <math.h>

#include <glib/gi18n.h>

#include "sw-effort.h"
#include "sw-load-chart.h"
#include "sw-loads.h"
#include "sw-one-max.h"
#include "sw-starting-load.h"
#include "sw-units.h"

/* Loads that are not known one by one are rounded down to these, in the order of SwLoadUnit (common practice). */
static const double steps[] = { 1.0, 0.5, 1.0, 5.0 };

static const char *const gravity_source = N_("Standard gravity, 3rd General Conference on Weights and Measures, 1901");

/* One that is being reckoned. */
typedef struct
{
  const SwStartingLoadQuestion *question;
  SwStartingLoad *answer;
  double tested_kg;
  int possible;   /* repetitions of the wanted set with those that are left */
} Reckoning;

static char *
dup_kg (double kg)
{
  return sw_number_to_string (kg, 1);
}

/* Translated text for a refusal, NULL when all is within the domain. */
static const char *
find_refusal (const SwStartingLoadQuestion *question,
              int                           effort)
{
  int reserve = sw_effort_get_reserve (effort);

  if (question->exercise_limit.unit == SW_LOAD_NONE)
    return _("This exercise is not meant to be done with a load.");
  if (sw_load_to_kg (question->tested) <= 0.0)
    return _("Enter the load of the test.");
  if (question->tested_repetitions < 0 || question->tested_repetitions > SW_ONE_MAX_MOST_REPS)
    return _("With more than 20 repetitions no formula tells a load. Test with a heavier one.");
  if (question->repetitions < 1)
    return _("The dose has no repetitions: for a hold no formula tells a load.");
  if (reserve < 0)
    return _("Below an effort of 5 nobody can count the repetitions that are left. Begin with the lightest load.");
  if (question->repetitions + reserve > SW_ONE_MAX_MOST_REPS)
    return _("With those left over the set has more than 20 possible repetitions: no formula tells so light a load. "
             "Begin with the lightest one.");

  return NULL;
}

static void
reckon_test (Reckoning *self)
{
  const SwStartingLoadQuestion *question = self->question;
  SwStartingLoad *answer = self->answer;
  g_autofree char *tested = sw_load_to_text (question->tested);
  g_autofree char *kg = dup_kg (self->tested_kg);

  if (question->tested_repetitions > 0)
    /* Translators: a load, how often it was moved. */
    sw_working_add (answer->working, _("The test, until no more was possible"), NULL, _("%s, %d times"), tested,
                    question->tested_repetitions);
  else
    sw_working_add (answer->working, _("The test, one greatest pull"),
                    _("It counts as what could be moved once, measured in the same place. Held still one is stronger "
                      "than in movement: when in doubt, begin with less (common practice)"),
                    "%s", tested);
  if (question->tested.unit == SW_LOAD_NEWTON)
    sw_working_add (answer->working, _("As a weight"), _(gravity_source), "%s / 9.80665 = %s kg", tested, kg);
  else if (question->tested.unit == SW_LOAD_LB)
    sw_working_add (answer->working, _("In kilograms"), _("International pound, 1959"), "%s × 0.45359237 = %s kg",
                    tested, kg);
}

static void
reckon_one_max (Reckoning *self)
{
  const SwStartingLoadQuestion *question = self->question;
  SwStartingLoad *answer = self->answer;
  int repetitions = MAX (question->tested_repetitions, 1);
  const SwOneMaxFormula *formula = sw_one_max_get_formula (question->formula);
  g_autofree char *words = NULL;
  g_autofree char *tested = dup_kg (self->tested_kg);
  g_autofree char *result = NULL;
  g_autofree char *low = NULL;
  g_autofree char *high = NULL;

  answer->one_max_kg = sw_one_max_reckon (question->formula, self->tested_kg, repetitions);
  sw_one_max_get_spread (self->tested_kg, repetitions, &answer->one_max_low_kg, &answer->one_max_high_kg);
  if (repetitions == 1)
    return;

  /* Translators: %s is who published a formula, and when. */
  words = g_strdup_printf (_("What could be moved once, after %s"), formula->name);
  result = dup_kg (answer->one_max_kg);
  low = dup_kg (answer->one_max_low_kg);
  high = dup_kg (answer->one_max_high_kg);
  sw_working_add (answer->working, words, formula->source, "%s = %s kg; w = %s kg, r = %d", formula->expression, result,
                  tested, repetitions);
  sw_working_add (answer->working, _("The seven published formulas give"), NULL, _("%s to %s kg"), low, high);
}

static void
reckon_percent (Reckoning *self,
                int        effort)
{
  const SwStartingLoadQuestion *question = self->question;
  SwStartingLoad *answer = self->answer;
  const SwOneMaxFormula *formula = sw_one_max_get_formula (question->formula);
  int reserve = sw_effort_get_reserve (effort);
  double chart = sw_load_chart_get_percent (self->possible);
  g_autofree char *effort_words = g_strdup_printf (_("At an effort of %d, repetitions that are left"), effort);
  g_autofree char *words = g_strdup_printf (_("A load that is possible %d times, after %s"), self->possible,
                                            formula->name);
  g_autofree char *percent = NULL;

  answer->percent = sw_one_max_get_percent (question->formula, self->possible);
  percent = sw_number_to_string (answer->percent, 1);
  sw_working_add (answer->working, effort_words, SW_EFFORT_SOURCE, "10 − %d = %d", effort, reserve);
  sw_working_add (answer->working, _("Repetitions that must be possible"), NULL, "%d + %d = %d", question->repetitions,
                  reserve, self->possible);
  sw_working_add (answer->working, words, formula->source, _("%s %% of what could be moved once"), percent);
  if (!isnan (chart))
    {
      g_autofree char *chart_percent = sw_number_to_string (chart, 1);

      sw_working_add (answer->working, _("The load chart says"), _(SW_LOAD_CHART_SOURCE), "%s %%", chart_percent);
    }
}

/* The same formula there and back, each for itself: what one makes too much in the test it mostly takes off again. */
static void
reckon_wanted (Reckoning *self)
{
  SwStartingLoad *answer = self->answer;
  int repetitions = MAX (self->question->tested_repetitions, 1);
  g_autofree char *one_max = dup_kg (answer->one_max_kg);
  g_autofree char *percent = sw_number_to_string (answer->percent, 1);
  g_autofree char *wanted = NULL;
  g_autofree char *low = NULL;
  g_autofree char *high = NULL;

  answer->wanted_kg = answer->one_max_kg * answer->percent / 100.0;
  for (int formula = 0; formula < SW_N_MAX_FORMULAS; formula++)
    {
      double load_kg = sw_one_max_reckon ((SwMaxFormula) formula, self->tested_kg, repetitions)
                       * sw_one_max_get_percent ((SwMaxFormula) formula, self->possible) / 100.0;

      answer->low_kg = fmin (answer->low_kg, load_kg);
      answer->high_kg = fmax (answer->high_kg, load_kg);
    }
  wanted = dup_kg (answer->wanted_kg);
  low = dup_kg (answer->low_kg);
  high = dup_kg (answer->high_kg);
  sw_working_add (answer->working, _("The load for the wanted set"), NULL, "%s kg × %s %% = %s kg", one_max, percent,
                  wanted);
  sw_working_add (answer->working, _("The other formulas give for it"), NULL, _("%s to %s kg"), low, high);
  if (self->question->exercise_limit.unit == SW_LOAD_NEWTON)
    {
      g_autofree char *newtons = sw_number_to_string (answer->wanted_kg * SW_STANDARD_GRAVITY_M_PER_S2, 1);

      sw_working_add (answer->working, _("As a pull"), _(gravity_source), "%s kg × 9.80665 = %s N", wanted, newtons);
    }
  else
    sw_working_add (answer->working, _("Only the load is reckoned with"), _("Common practice"),
                    _("Where the body’s own weight is lifted too, begin with less."));
  if (answer->rough)
    sw_working_add (answer->working, _("A rough guide"),
                    "LeSuer and others, J Strength Cond Res 1997;11:211-213",
                    _("Beyond %d repetitions the formulas part from each other."), SW_ONE_MAX_SURE_REPS);
}

/* Returns: the most that is allowed, kilograms */
static double
apply_limits (Reckoning *self)
{
  const struct
  {
    const char *words;
    SwLoad limit;
  } limits[] = {
    { _("The exercise’s limit"), self->question->exercise_limit },
    { _("The client’s limit"), self->question->client_limit },
  };
  double most_kg = self->answer->wanted_kg;

  for (guint i = 0; i < G_N_ELEMENTS (limits); i++)
    {
      g_autofree char *text = sw_load_to_text (limits[i].limit);
      double limit_kg = sw_load_to_kg (limits[i].limit);

      if (limits[i].limit.unit == SW_LOAD_NONE)
        continue;
      sw_working_add (self->answer->working, limits[i].words, NULL,
                      limit_kg < most_kg ? _("%s: the load comes down to it") : _("%s: kept"), text);
      most_kg = fmin (most_kg, limit_kg);
    }

  return most_kg;
}

static SwLoad
round_down (double     most_kg,
            SwLoadUnit unit)
{
  double value = unit == SW_LOAD_LB ? sw_lb_from_kg (most_kg)
                 : unit == SW_LOAD_NEWTON ? most_kg * SW_STANDARD_GRAVITY_M_PER_S2 : most_kg;

  return (SwLoad) { unit, floor (value / steps[unit] + 1e-9) * steps[unit] };
}

static gboolean
needs_band (const SwStartingLoadQuestion *question)
{
  return question->exercise_limit.unit == SW_LOAD_NEWTON && question->bands != NULL && question->bands->len > 0;
}

static void
choose_band (Reckoning *self,
             double     most_kg)
{
  SwStartingLoad *answer = self->answer;
  const SwBand *band = sw_bands_get_at_most (self->question->bands, self->question->stretch_percent,
                                             most_kg * SW_STANDARD_GRAVITY_M_PER_S2);

  answer->band = band;
  if (band == NULL)
    {
      answer->refusal = _("No band of the clinic’s table is light enough at this stretch. Begin without a band, or "
                          "stretch it less.");
      return;
    }

  answer->load = (SwLoad) { SW_LOAD_NEWTON, band->force_n };
  /* Translators: a band, its force in newtons, its stretch in percent. */
  sw_working_add (answer->working, _("The clinic’s strongest band that is not above it"), NULL, _("%s: %g N at %d %%"),
                  band->name, band->force_n, band->stretch_percent);
}

/* Weights the client owns are no bands: a pull is rounded by its force. */
static void
choose_load (Reckoning *self,
             double     most_kg)
{
  const SwStartingLoadQuestion *question = self->question;
  SwStartingLoad *answer = self->answer;
  gboolean pull = question->exercise_limit.unit == SW_LOAD_NEWTON;
  SwLoad load = { SW_LOAD_NONE, 0.0 };
  g_autofree char *text = NULL;

  if (needs_band (question))
    {
      choose_band (self, most_kg);
      return;
    }
  if (!pull && question->owned != NULL && question->owned->len > 0)
    {
      g_autofree char *owned = sw_loads_to_text (question->owned);

      if (!sw_load_get_at_most (question->owned, most_kg, &load))
        answer->refusal = _("All loads the client owns are heavier than that. Begin without a load, or with a lighter "
                            "one.");
      sw_working_add (answer->working, _("What the client owns"), NULL, "%s", owned);
    }
  else
    {
      load = round_down (most_kg, pull ? SW_LOAD_NEWTON : question->units == SW_UNITS_LB ? SW_LOAD_LB : SW_LOAD_KG);
      if (load.value <= 0.0)
        {
          load = (SwLoad) { SW_LOAD_NONE, 0.0 };
          answer->refusal = _("So small a load cannot be told. Begin without a load.");
        }
    }
  answer->load = load;
  if (load.unit == SW_LOAD_NONE)
    return;

  text = sw_load_to_text (load);
  sw_working_add (answer->working, _("Rounded down, to begin with"), NULL, "%s", text);
}

/* One load that was written down; none when it is not understood, which is a finding of its own. */
static SwLoad
read_load (const char *text,
           SwLoadUnit  unit)
{
  g_autoptr (GArray) loads = sw_loads_from_text (text, unit);

  return loads != NULL && loads->len > 0 ? g_array_index (loads, SwLoad, 0) : (SwLoad) { SW_LOAD_NONE, 0.0 };
}

/**
 * sw_starting_load_question_init:
 * @question: (out): all that the programme knows; no test yet
 * @programme: the programme
 * @item: one of its exercise items
 */
void
sw_starting_load_question_init (SwStartingLoadQuestion *question,
                                SwProgramme            *programme,
                                SwItem                 *item)
{
  SwClient *client = sw_programme_get_client (programme);
  SwClinic *clinic = sw_programme_get_clinic (programme);
  SwUnits units = sw_client_get_units (client);
  SwLoadUnit unit = units == SW_UNITS_LB ? SW_LOAD_LB : SW_LOAD_KG;
  const SwDose *dose = sw_item_get_dose (item);

  *question = (SwStartingLoadQuestion) {
    .tested = { SW_LOAD_NONE, 0.0 },
    .repetitions = dose->reps_high,
    .effort = dose->effort_limit,
    .formula = sw_clinic_get_max_formula (clinic),
    .exercise_limit = sw_exercise_get_facts (sw_item_get_exercise (item))->load_limit,
    .client_limit = read_load (sw_client_get_load_limit (client), unit),
    .owned = sw_loads_from_text (sw_client_get_loads (client), unit),
    .bands = sw_bands_from_text (sw_clinic_get_bands (clinic)),
    .stretch_percent = SW_BAND_USUAL_STRETCH_PERCENT,
    .units = units,
  };
}

/**
 * sw_starting_load_question_clear:
 * @question: a question from sw_starting_load_question_init()
 */
void
sw_starting_load_question_clear (SwStartingLoadQuestion *question)
{
  g_clear_pointer (&question->owned, g_array_unref);
  g_clear_pointer (&question->bands, g_ptr_array_unref);
}

/**
 * sw_starting_load_new:
 * @question: a test and what is wanted; each part within the domain stated there, else the answer is a refusal
 *
 * A load to begin with: one repetition maximum by @question's formula, times the part of it that is possible as often
 * as the wanted repetitions and those left at the wanted effort together, never above a limit, rounded down. Sources:
 * those of sw_one_max_reckon(), sw_effort_get_reserve() and sw_load_chart_get_percent().
 *
 * Returns: (transfer full): the load, the spread of the formulas and how it was reckoned
 */
SwStartingLoad *
sw_starting_load_new (const SwStartingLoadQuestion *question)
{
  SwStartingLoad *self = g_new (SwStartingLoad, 1);
  int effort = question->effort > 0 ? question->effort : SW_STARTING_LOAD_USUAL_EFFORT;
  Reckoning reckoning = { question, self, sw_load_to_kg (question->tested), 0 };

  *self = (SwStartingLoad) {
    .load = { SW_LOAD_NONE, 0.0 },
    .refusal = find_refusal (question, effort),
    .one_max_kg = NAN,
    .one_max_low_kg = NAN,
    .one_max_high_kg = NAN,
    .percent = NAN,
    .wanted_kg = NAN,
    .low_kg = NAN,
    .high_kg = NAN,
    .working = sw_working_new (),
  };
  if (self->refusal != NULL)
    return self;

  reckoning.possible = question->repetitions + sw_effort_get_reserve (effort);
  self->rough = question->tested_repetitions > SW_ONE_MAX_SURE_REPS || reckoning.possible > SW_ONE_MAX_SURE_REPS;
  reckon_test (&reckoning);
  reckon_one_max (&reckoning);
  reckon_percent (&reckoning, effort);
  reckon_wanted (&reckoning);
  choose_load (&reckoning, apply_limits (&reckoning));
  return self;
}

/**
 * sw_starting_load_free:
 * @self: (transfer full): a starting load
 */
void
sw_starting_load_free (SwStartingLoad *self)
{
  sw_working_unref (self->working);
  g_free (self);
}
