/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How the time of an item or a session comes about, line by line. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-time-working.h"

#include "sw-dose-time.h"
#include "sw-station.h"
#include "sw-time.h"
#include "sw-transition-name.h"

/* Seconds while they are few, then minutes and seconds. */
static char *
span_to_words (SwSpan span)
{
  if (span.high_s >= 60.0)
    return sw_span_to_words (span);
  if (span.low_s < span.high_s)
    /* Translators: seconds, from and to. */
    return g_strdup_printf (_("%.0f–%.0f s"), span.low_s, span.high_s);

  /* Translators: seconds. */
  return g_strdup_printf (_("%.0f s"), span.low_s);
}

static void
add_span (SwWorking  *working,
          const char *words,
          SwSpan      span,
          const char *source)
{
  g_autofree char *figures = span_to_words (span);

  sw_working_add (working, words, source, "%s", figures);
}

/* @n times @once. */
static void
add_product (SwWorking  *working,
             const char *words,
             int         n,
             SwSpan      once,
             const char *source)
{
  g_autofree char *one = span_to_words (once);
  g_autofree char *all = span_to_words (sw_span_times (once, n));

  sw_working_add (working, words, source, "%d × %s = %s", n, one, all);
}

static void
add_sum (SwWorking  *working,
         const char *words,
         SwSpan      span)
{
  g_autofree char *figures = sw_span_to_words (span);

  /* Translators: minutes and seconds, perhaps from and to. */
  sw_working_add (working, words, NULL, _("%s min"), figures);
}

static void
add_repetition (SwWorking        *working,
                const SwDose     *dose,
                const SwDoseTime *time)
{
  const SwTempo *tempo = &dose->tempo;
  SwSpan hold = { dose->hold_s, dose->hold_s };
  g_autofree char *lift = NULL;

  if (dose->reps_low > 0 && !time->by_tempo)
    {
      add_span (working, _("A repetition at its usual pace"), (SwSpan){ time->moving_s, time->moving_s },
                _("From the exercise"));
    }
  else if (dose->reps_low > 0)
    {
      lift = tempo->lift_s < 0 ? g_strdup (_("1 (as fast as possible)")) : g_strdup_printf ("%d", tempo->lift_s);
      sw_working_add (working, _("A repetition by its tempo: lowering, pause, lifting, pause"), NULL,
                      "%d + %d + %s + %d = %.0f s", tempo->lower_s, tempo->low_pause_s, lift, tempo->top_pause_s,
                      time->moving_s);
    }
  if (dose->hold_s > 0)
    add_span (working, dose->reps_low > 0 ? _("Each repetition is held") : _("The hold"), hold, NULL);
}

static void
add_set (SwWorking        *working,
         const SwDose     *dose,
         const SwDoseTime *time)
{
  g_autofree char *once = span_to_words ((SwSpan){ time->moving_s + dose->hold_s, time->moving_s + dose->hold_s });
  g_autofree char *set = span_to_words (time->set);
  g_autofree char *repetitions = NULL;
  g_autofree char *words = NULL;

  if (dose->reps_low == 0 && dose->directions == 1)
    return;

  if (dose->reps_low == 0)
    repetitions = g_strdup ("1");
  else if (dose->reps_low < dose->reps_high)
    repetitions = g_strdup_printf ("%d–%d", dose->reps_low, dose->reps_high);
  else
    repetitions = g_strdup_printf ("%d", dose->reps_high);
  if (dose->directions == 1)
    {
      sw_working_add (working, _("A set"), NULL, "%s × %s = %s", repetitions, once, set);
      return;
    }

  words = g_strdup_printf (_("A set, in %d directions"), dose->directions);
  sw_working_add (working, words, NULL, "%d × %s × %s = %s", dose->directions, repetitions, once, set);
}

static char *
sets_to_words (const SwDose     *dose,
               const SwDoseTime *time)
{
  int more = dose->sets + dose->extra_sets;
  gboolean right = dose->extra_side == SW_BODY_SIDE_RIGHT;

  if (dose->side != SW_SIDE_EACH && dose->side != SW_SIDE_ALTERNATING)
    return g_strdup (_("All sets"));

  /* Translators: sets of the right side, of the left */
  return g_strdup_printf (_("All sets: %d right, %d left"), right ? more : time->n_sets - more,
                          right ? time->n_sets - more : more);
}

static void
add_rests (SwWorking        *working,
           const SwDose     *dose,
           const SwDoseTime *time)
{
  SwSpan rest = { dose->rest_s, dose->rest_s };

  if (dose->rest_s == 0 || time->n_rests == 0)
    return;

  if (dose->side == SW_SIDE_EACH)
    add_span (working,
              _("Rests between the sets of a side: at best the other side works meanwhile, at most one side comes "
                "after the other"),
              time->rests, _("Common practice"));
  else
    add_product (working, _("Rests between sets"), time->n_rests, rest, NULL);
}

static void
add_dose (SwWorking    *working,
          const SwDose *dose,
          double        pace_s)
{
  SwDoseTime time = sw_dose_time_of (dose, pace_s);
  g_autofree char *sets = sets_to_words (dose, &time);

  add_repetition (working, dose, &time);
  add_set (working, dose, &time);
  add_product (working, sets, time.n_sets, time.set, NULL);
  add_rests (working, dose, &time);
  add_sum (working, dose->times_a_day > 1 ? _("Together, each time of the day") : _("Together"), time.total);
}

/* A circuit's exercises are told with all their rounds. */
static void
add_exercises (SwWorking *working,
               SwClock   *clock)
{
  for (guint i = 0; i < clock->entries->len; i++)
    {
      const SwClockEntry *entry = &g_array_index (clock->entries, SwClockEntry, i);
      g_autofree char *name = NULL;

      if (sw_item_get_exercise (entry->item) == NULL)
        continue;
      name = sw_item_dup_name (entry->item, NULL);
      if (entry->circuit != NULL)
        add_product (working, name, sw_item_get_rounds (entry->circuit), entry->length, NULL);
      else
        add_span (working, name, entry->length, NULL);
    }
  if (clock->exercises.high_s > 0.0)
    add_sum (working, _("All exercises, with the rests between their sets"), clock->exercises);
}

static void
add_clock (SwWorking *working,
           SwClock   *clock,
           SwClinic  *clinic)
{
  const char *source = sw_clinic_has_usual_transitions (clinic)
                       ? _("Common practice: 30 to 60 s from one exercise to the next, shared out")
                       : _("The clinic's own figures");

  add_exercises (working, clock);
  if (clock->rests.high_s > 0.0)
    add_span (working, _("Rests between exercises"), clock->rests, NULL);
  if (clock->round_rests.high_s > 0.0)
    add_span (working, _("Rests between rounds; at best the way back is part of them"), clock->round_rests, NULL);
  for (int i = 0; i < SW_N_TRANSITIONS; i++)
    if (clock->n_transitions[i] > 0)
      add_product (working, sw_transition_get_name ((SwTransition) i), clock->n_transitions[i],
                   sw_station_time (clinic, SW_SET (i)), source);
  add_sum (working, _("Together: everything goes quickly, or nothing does"), clock->total);
  if (clock->checks.high_s > 0.0)
    add_span (working, _("Not counted: the self-checks, on the first day and before the next visit"), clock->checks,
              _("Common practice"));
}

/**
 * sw_time_working_of_item:
 * @item: an item
 * @clinic: whose table tells how long changes between a circuit's members take
 *
 * Returns: (transfer full): how sw_time_of_item() comes about
 */
SwWorking *
sw_time_working_of_item (SwItem   *item,
                         SwClinic *clinic)
{
  SwWorking *working;
  SwSide side;

  g_return_val_if_fail (SW_IS_ITEM (item), NULL);

  working = sw_working_new ();
  switch (sw_item_get_kind (item))
    {
    case SW_ITEM_EXERCISE:
      if (sw_item_get_exercise (item) != NULL)
        add_dose (working, sw_item_get_dose (item), sw_exercise_get_facts (sw_item_get_exercise (item))->pace_s);
      break;
    case SW_ITEM_REST:
      add_span (working, _("The rest"), sw_time_of_item (item, clinic), NULL);
      break;
    case SW_ITEM_SELF_CHECK:
      side = sw_item_get_dose (item)->side;
      add_span (working,
                side == SW_SIDE_EACH || side == SW_SIDE_ALTERNATING
                ? _("Doing it once on each side and writing it down; no part of a usual day's minutes")
                : _("Doing it once and writing it down; no part of a usual day's minutes"),
                sw_time_of_item (item, clinic), _("Common practice"));
      break;
    case SW_ITEM_CIRCUIT:
    default:
      {
        g_autoptr (SwClock) clock = sw_clock_new_for_item (item, clinic);

        add_clock (working, clock, clinic);
      }
      break;
    }
  return working;
}

/**
 * sw_time_working_of_session:
 * @session: a session
 * @clinic: whose table tells how long changes take
 *
 * Returns: (transfer full): how the total of sw_clock_new() comes about
 */
SwWorking *
sw_time_working_of_session (SwSession *session,
                            SwClinic  *clinic)
{
  g_autoptr (SwClock) clock = NULL;
  SwWorking *working;

  g_return_val_if_fail (SW_IS_SESSION (session), NULL);

  clock = sw_clock_new (session, clinic);
  working = sw_working_new ();
  add_clock (working, clock, clinic);
  return working;
}
