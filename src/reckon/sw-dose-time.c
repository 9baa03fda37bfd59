/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How long a dose takes. All estimates are spans: the lower figure when everything goes quickly, the upper when it does
 * not.
 *
 * A repetition takes its tempo, or the exercise's pace when no tempo is asked, and then its hold; tempo and
 * pace are the moving part, so a hold comes on top. "As fast as possible" counts one second. A set is its
 * repetitions, in every direction; without repetitions it is the hold alone. A rest follows each set but the
 * last. The time of a set and of several, repetitions x (a + b + c + d) and sets x set + (sets - 1) x rest,
 * is the arithmetic of the notation itself.
 *
 * Sides: alternating repetitions are counted per side, so that a set takes twice as long and nothing rests in
 * between. With each side by itself the upper figure is one side with all its rests and then the other, twice
 * the time of one; in the lower, one side works while the other rests, and only what is left of the rest is
 * waited for (both common practice).
 *
 * Times a day lengthen no session. */
#include "config.h"

#include "sw-dose-time.h"

static double
moving_s (const SwDose *dose,
          double        pace_s,
          gboolean     *by_tempo)
{
  const SwTempo *tempo = &dose->tempo;
  double sum = tempo->lower_s + tempo->low_pause_s + (tempo->lift_s < 0 ? 1 : tempo->lift_s) + tempo->top_pause_s;

  *by_tempo = tempo->set && sum > 0.0;
  return *by_tempo ? sum : pace_s;
}

/* Each side by itself, taking turns: what is left of a rest after the other side's set is waited for. */
static double
wait_in_turns (int    more,
               int    fewer,
               double set,
               double rest)
{
  int gaps = more - 1;
  int shared = MIN (gaps, fewer);

  return shared * MAX (0.0, rest - set) + (gaps - shared) * rest;
}

/**
 * sw_dose_time_of:
 * @dose: a dose that passes sw_dose_check()
 * @pace_s: seconds the moving part of a repetition takes when the dose asks no tempo, 1..60
 *
 * Estimates how long the dose takes once through, rests between its sets included. The lower figure takes
 * the fewest repetitions, the upper the most. How it is reckoned stands at the top of sw-dose-time.c.
 *
 * Returns: the time and its parts
 */
SwDoseTime
sw_dose_time_of (const SwDose *dose,
                 double        pace_s)
{
  SwDoseTime time = { .n_rests = MAX (0, dose->sets + dose->extra_sets - 1) };
  double hold_s = dose->hold_s;
  double rest_s = dose->rest_s;

  if (dose->reps_low == 0)
    {
      time.set = (SwSpan){ hold_s, hold_s };
    }
  else
    {
      time.moving_s = moving_s (dose, pace_s, &time.by_tempo);
      time.set.low_s = dose->reps_low * (time.moving_s + hold_s);
      time.set.high_s = dose->reps_high * (time.moving_s + hold_s);
    }
  time.set = sw_span_times (time.set, dose->directions);

  time.n_sets = dose->sets + dose->extra_sets;
  time.rests = (SwSpan){ time.n_rests * rest_s, time.n_rests * rest_s };
  if (dose->side == SW_SIDE_EACH || dose->side == SW_SIDE_ALTERNATING)
    time.n_sets += dose->sets;
  if (dose->side == SW_SIDE_EACH)
    {
      time.rests.low_s = wait_in_turns (dose->sets + dose->extra_sets, dose->sets, time.set.low_s, rest_s);
      time.rests.high_s += MAX (0, dose->sets - 1) * rest_s;
    }
  time.work = sw_span_times (time.set, time.n_sets);
  time.total = sw_span_add (time.work, time.rests);
  return time;
}
