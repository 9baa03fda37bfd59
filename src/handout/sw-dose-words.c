/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tells a dose in sentences that leave the client nothing to work out: totals a side are spelled out, loads
 * come in the unit the client knows. */
#include "config.h"

#include "sw-dose-words.h"
#include "sw-units.h"

/* "3 sets of 12", "12 times", "hold for 30 seconds, 3 times": begins in lower case, no full stop.
 * @compared: it stands beside the other side's, so that one set is also told as a set */
static char *
tell_amount (SwPhrases    *phrases,
             const SwDose *dose,
             int           sets,
             gboolean      compared)
{
  g_autofree char *reps = NULL;
  g_autofree char *hold = NULL;

  if (dose->reps_high == 0)
    {
      hold = sw_phrases_time (phrases, dose->hold_s);
      if (sets == 1 && !compared)
        return sw_phrases_format (phrases, "dose.amount-hold", "time", hold, NULL);
      return sw_phrases_count (phrases, compared ? "dose.amount-compared-holds" : "dose.amount-holds", sets, "time",
                               hold, NULL);
    }

  if (sets == 1 && !compared)
    return sw_phrases_count_range (phrases, "dose.amount-times", dose->reps_low, dose->reps_high, NULL);
  reps = sw_phrases_count_range (phrases, "dose.repetitions", dose->reps_low, dose->reps_high, NULL);
  return sw_phrases_count (phrases, "dose.amount-sets", sets, "repetitions", reps, NULL);
}

static char *
tell_ways (SwPhrases    *phrases,
           const SwDose *dose)
{
  if (dose->directions < 2)
    return g_strdup ("");
  if (dose->directions == 2)
    return g_strdup (sw_phrases_get (phrases, "dose.ways-two"));
  return sw_phrases_count (phrases, "dose.ways-more", dose->directions, NULL);
}

static const char *
tell_side (SwPhrases *phrases,
           SwSide     side)
{
  switch (side)
    {
    case SW_SIDE_EACH:
      return sw_phrases_get (phrases, "dose.side-each");
    case SW_SIDE_RIGHT:
      return sw_phrases_get (phrases, "dose.side-right");
    case SW_SIDE_LEFT:
      return sw_phrases_get (phrases, "dose.side-left");
    case SW_SIDE_ALTERNATING:
      return sw_phrases_get (phrases, "dose.side-alternating");
    case SW_SIDE_BOTH:
    default:
      return "";
    }
}

/* One line a side, the side with more sets first, so that nobody has to add up. */
static char *
tell_sides_apart (SwPhrases    *phrases,
                  const SwDose *dose,
                  SwDoseLimb    limb)
{
  static const char *const keys[][2] = {
    [SW_DOSE_LIMB_NONE] = { "dose.right-amount", "dose.left-amount" },
    [SW_DOSE_LIMB_ARM] = { "dose.right-arm-amount", "dose.left-arm-amount" },
    [SW_DOSE_LIMB_LEG] = { "dose.right-leg-amount", "dose.left-leg-amount" },
    [SW_DOSE_LIMB_STANDING_LEG] = { "dose.right-standing-amount", "dose.left-standing-amount" },
  };
  int right = sw_dose_get_sets_for (dose, SW_BODY_SIDE_RIGHT);
  int left = sw_dose_get_sets_for (dose, SW_BODY_SIDE_LEFT);
  g_autofree char *ways = tell_ways (phrases, dose);
  g_autofree char *right_text = NULL;
  g_autofree char *left_text = NULL;

  if (right > 0)
    {
      g_autofree char *amount = tell_amount (phrases, dose, right, TRUE);

      right_text = sw_phrases_format (phrases, keys[limb][0], "amount", amount, "ways", ways, NULL);
    }
  if (left > 0)
    {
      g_autofree char *amount = tell_amount (phrases, dose, left, TRUE);

      left_text = sw_phrases_format (phrases, keys[limb][1], "amount", amount, "ways", ways, NULL);
    }

  if (right_text == NULL || left_text == NULL)
    return g_strdup (right_text != NULL ? right_text : left_text);
  if (right >= left)
    return g_strjoin ("\n", right_text, left_text, NULL);
  return g_strjoin ("\n", left_text, right_text, NULL);
}

static char *
tell_extra (SwPhrases    *phrases,
            const SwDose *dose)
{
  if (dose->extra_side == SW_BODY_SIDE_LEFT)
    return sw_phrases_count (phrases, "dose.then-left", dose->extra_sets, NULL);
  return sw_phrases_count (phrases, "dose.then-right", dose->extra_sets, NULL);
}

static char *
tell_whole_amount (SwPhrases    *phrases,
                   const SwDose *dose,
                   SwDoseLimb    limb)
{
  gboolean extra = dose->extra_sets > 0 && dose->extra_side != SW_BODY_SIDE_NONE;
  g_autofree char *amount = NULL;
  g_autofree char *ways = NULL;
  g_autofree char *sentence = NULL;
  g_autofree char *begun = NULL;
  g_autofree char *more = NULL;

  if (extra && (dose->side == SW_SIDE_EACH || dose->side == SW_SIDE_RIGHT || dose->side == SW_SIDE_LEFT))
    return tell_sides_apart (phrases, dose, limb);

  amount = tell_amount (phrases, dose, dose->sets, FALSE);
  ways = tell_ways (phrases, dose);
  begun = sw_phrases_capitalise (amount);
  sentence = sw_phrases_format (phrases, "dose.amount", "amount", begun, "ways", ways, "side",
                                tell_side (phrases, dose->side), NULL);
  if (!extra)
    return g_steal_pointer (&sentence);

  more = tell_extra (phrases, dose);
  return sw_phrases_sentences (phrases, (const char *const[]){ sentence, more, NULL });
}

static char *
tell_tempo (SwPhrases     *phrases,
            const SwTempo *tempo)
{
  const struct
  {
    const char *key;
    int seconds;
  } phases[] = {
    { "dose.pace-down", tempo->lower_s },
    { "dose.pace-pause", tempo->low_pause_s },
    { "dose.pace-up", tempo->lift_s },
    { "dose.pace-pause", tempo->top_pause_s },
  };
  g_autofree char *text = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (phases); i++)
    {
      g_autofree char *before = NULL;
      g_autofree char *phase = NULL;

      if (phases[i].seconds < 0)
        phase = g_strdup (sw_phrases_get (phrases, "dose.pace-up-fast"));
      else if (phases[i].seconds > 0)
        {
          g_autofree char *time = sw_phrases_time (phrases, phases[i].seconds);

          phase = sw_phrases_format (phrases, phases[i].key, "time", time, NULL);
        }
      if (phase == NULL)
        continue;

      before = g_steal_pointer (&text);
      text = before == NULL ? g_steal_pointer (&phase)
                            : sw_phrases_format (phrases, "dose.pace-next", "before", before, "phase", phase, NULL);
    }

  return text != NULL ? sw_phrases_format (phrases, "dose.pace", "pace", text, NULL) : NULL;
}

/**
 * sw_load_words:
 * @phrases: the client's language
 * @load: a load, unit not none
 * @units: what the client reads loads in
 *
 * A load in the client's unit. The unit it was prescribed in stands first when the client reads both, and
 * follows in brackets when the client reads the other, since it may be what is printed on the weight.
 *
 * Returns: (transfer full): "2.5 kg", "2.5 kg (5.5 lb)"
 */
char *
sw_load_words (SwPhrases *phrases,
               SwLoad     load,
               SwUnits    units)
{
  gboolean in_kg = load.unit == SW_LOAD_KG;
  g_autofree char *kg_number = NULL;
  g_autofree char *lb_number = NULL;
  g_autofree char *kg = NULL;
  g_autofree char *lb = NULL;

  if (load.unit == SW_LOAD_NEWTON)
    {
      g_autofree char *newtons = sw_phrases_number (phrases, load.value, 1);

      return sw_phrases_format (phrases, "number.newtons", "n", newtons, NULL);
    }

  kg_number = sw_phrases_number (phrases, in_kg ? load.value : sw_kg_from_lb (load.value), in_kg ? 3 : 1);
  lb_number = sw_phrases_number (phrases, in_kg ? sw_lb_from_kg (load.value) : load.value, in_kg ? 1 : 3);
  kg = sw_phrases_format (phrases, "number.kilograms", "n", kg_number, NULL);
  lb = sw_phrases_format (phrases, "number.pounds", "n", lb_number, NULL);

  if (units == SW_UNITS_KG && in_kg)
    return g_steal_pointer (&kg);
  if (units == SW_UNITS_LB && !in_kg)
    return g_steal_pointer (&lb);
  if (units == SW_UNITS_KG || (units == SW_UNITS_BOTH && in_kg))
    return sw_phrases_format (phrases, "number.two-units", "first", kg, "second", lb, NULL);
  return sw_phrases_format (phrases, "number.two-units", "first", lb, "second", kg, NULL);
}

static void
take (GStrvBuilder *builder,
      char         *text)
{
  if (text != NULL)
    g_strv_builder_add (builder, text);
  g_free (text);
}

static char *
tell_load (SwPhrases *phrases,
           SwLoad     load,
           SwUnits    units)
{
  g_autofree char *words = sw_load_words (phrases, load, units);

  return sw_phrases_format (phrases, "dose.load", "load", words, NULL);
}

static char **
tell_how (SwPhrases    *phrases,
          const SwDose *dose,
          SwUnits       units)
{
  g_autoptr (GStrvBuilder) how = g_strv_builder_new ();
  g_autofree char *hold = sw_phrases_time (phrases, dose->hold_s);
  g_autofree char *rest = sw_phrases_time (phrases, dose->rest_s);

  if (dose->hold_s > 0 && dose->reps_high > 0)
    take (how, sw_phrases_format (phrases, "dose.hold-each", "time", hold, NULL));
  if (dose->tempo.set)
    take (how, tell_tempo (phrases, &dose->tempo));
  if (dose->load.unit != SW_LOAD_NONE)
    take (how, tell_load (phrases, dose->load, units));
  if (dose->rest_s > 0 && dose->sets + dose->extra_sets > 1)
    take (how, sw_phrases_format (phrases, dose->reps_high > 0 ? "dose.rest-sets" : "dose.rest-holds", "time", rest,
                                  NULL));

  return g_strv_builder_end (how);
}

static char **
tell_limits (SwPhrases    *phrases,
             const SwDose *dose)
{
  g_autoptr (GStrvBuilder) limits = g_strv_builder_new ();
  g_autofree char *effort = g_strdup_printf ("%d", dose->effort_limit);
  g_autofree char *pain = g_strdup_printf ("%d", dose->pain_limit);

  if (dose->effort_limit > 0)
    take (limits, sw_phrases_format (phrases, "dose.effort", "n", effort, NULL));
  if (dose->pain_limit == 0)
    g_strv_builder_add (limits, sw_phrases_get (phrases, "dose.no-pain"));
  if (dose->pain_limit > 0)
    take (limits, sw_phrases_format (phrases, "dose.pain", "n", pain, NULL));

  return g_strv_builder_end (limits);
}

static char **
tell_limits_short (SwPhrases    *phrases,
                   const SwDose *dose)
{
  g_autoptr (GStrvBuilder) limits = g_strv_builder_new ();
  g_autofree char *effort = g_strdup_printf ("%d", dose->effort_limit);
  g_autofree char *pain = g_strdup_printf ("%d", dose->pain_limit);

  if (dose->effort_limit > 0)
    take (limits, sw_phrases_format (phrases, "dose.short-effort", "n", effort, NULL));
  if (dose->pain_limit == 0)
    g_strv_builder_add (limits, sw_phrases_get (phrases, "dose.short-no-pain"));
  if (dose->pain_limit > 0)
    take (limits, sw_phrases_format (phrases, "dose.short-pain", "n", pain, NULL));

  return g_strv_builder_end (limits);
}

static char **
tell_when (SwPhrases    *phrases,
           const SwDose *dose)
{
  g_autoptr (GStrvBuilder) when = g_strv_builder_new ();

  if (dose->times_a_day > 1)
    take (when, sw_phrases_count (phrases, "dose.times-a-day", dose->times_a_day, NULL));
  if (dose->days_a_week > 0)
    take (when, sw_phrases_count (phrases, "dose.days-a-week", dose->days_a_week, NULL));

  return g_strv_builder_end (when);
}

/**
 * sw_dose_words_new:
 * @phrases: the client's language
 * @dose: a dose that passes sw_dose_check()
 * @limb: what a side of it means
 * @units: what the client reads loads in
 *
 * Returns: (transfer full): the dose in sentences
 */
SwDoseWords *
sw_dose_words_new (SwPhrases    *phrases,
                   const SwDose *dose,
                   SwDoseLimb    limb,
                   SwUnits       units)
{
  SwDoseWords *words = g_new0 (SwDoseWords, 1);

  words->amount = tell_whole_amount (phrases, dose, limb);
  words->how = tell_how (phrases, dose, units);
  words->limits = tell_limits (phrases, dose);
  words->limits_short = tell_limits_short (phrases, dose);
  words->when = tell_when (phrases, dose);
  return words;
}

void
sw_dose_words_free (SwDoseWords *words)
{
  g_free (words->amount);
  g_strfreev (words->how);
  g_strfreev (words->limits);
  g_strfreev (words->limits_short);
  g_strfreev (words->when);
  g_free (words);
}

/**
 * sw_dose_words_join_details:
 * @phrases: the client's language
 * @in_short: whether the limits are told in a few words
 *
 * Returns: (transfer full): everything but the amount, one sentence after the other; "" for nothing
 */
char *
sw_dose_words_join_details (const SwDoseWords *words,
                            SwPhrases         *phrases,
                            gboolean           in_short)
{
  char **const lists[] = { words->how, words->when, in_short ? words->limits_short : words->limits };
  g_autoptr (GPtrArray) sentences = g_ptr_array_new ();

  for (guint i = 0; i < G_N_ELEMENTS (lists); i++)
    for (guint j = 0; lists[i][j] != NULL; j++)
      g_ptr_array_add (sentences, lists[i][j]);
  g_ptr_array_add (sentences, NULL);

  return sw_phrases_sentences (phrases, (const char *const *) sentences->pdata);
}

/**
 * sw_dose_words_dup_amount_and_load:
 * @phrases: the client's language
 * @dose: a dose that passes sw_dose_check()
 * @units: what the client reads loads in
 *
 * Returns: (transfer full): how much to do and with what load, and nothing else of the dose
 */
char *
sw_dose_words_dup_amount_and_load (SwPhrases    *phrases,
                                   const SwDose *dose,
                                   SwUnits       units)
{
  g_autofree char *amount = tell_whole_amount (phrases, dose, SW_DOSE_LIMB_NONE);
  g_autofree char *load = dose->load.unit != SW_LOAD_NONE ? tell_load (phrases, dose->load, units) : NULL;

  return sw_phrases_sentences (phrases, (const char *const[]) { amount, load, NULL });
}
