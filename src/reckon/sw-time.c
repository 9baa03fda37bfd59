/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How long things take. All estimates are spans: the lower figure when everything goes quickly, the upper
 * when it does not.
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

#include "sw-time.h"

#include "sw-station.h"

/* A self-check by measure, a side: doing it once and writing it down (common practice). */
static const SwSpan self_check = { 30.0, 60.0 };

static double
moving_s (const SwDose *dose,
          double        pace_s)
{
  const SwTempo *tempo = &dose->tempo;
  double sum;

  if (!tempo->set)
    return pace_s;

  sum = tempo->lower_s + tempo->low_pause_s + (tempo->lift_s < 0 ? 1 : tempo->lift_s) + tempo->top_pause_s;
  return sum > 0.0 ? sum : pace_s;
}

/* One set of one side. */
static double
set_s (const SwDose *dose,
       double        pace_s,
       int           reps)
{
  double once = reps == 0 ? dose->hold_s : reps * (moving_s (dose, pace_s) + dose->hold_s);

  return once * dose->directions;
}

/* Sets in a row with a rest between them. */
static double
row_s (int    sets,
       double set,
       double rest)
{
  return sets > 0 ? sets * set + (sets - 1) * rest : 0.0;
}

/* Each side by itself, taking turns: what is left of a rest after the other side's set is waited for. */
static double
turns_s (int    more,
         int    fewer,
         double set,
         double rest)
{
  int gaps = more - 1;
  int shared = MIN (gaps, fewer);

  return (more + fewer) * set + shared * MAX (0.0, rest - set) + (gaps - shared) * rest;
}

/**
 * sw_time_of_dose:
 * @dose: a dose that passes sw_dose_check()
 * @pace_s: seconds the moving part of a repetition takes when the dose asks no tempo, 1..60
 *
 * Estimates how long the dose takes once through, rests between its sets included. The lower figure takes
 * the fewest repetitions, the upper the most. How it is reckoned stands at the top of sw-time.c.
 *
 * Returns: the span
 */
SwSpan
sw_time_of_dose (const SwDose *dose,
                 double        pace_s)
{
  double low = set_s (dose, pace_s, dose->reps_low);
  double high = set_s (dose, pace_s, dose->reps_high);
  double rest = dose->rest_s;
  int sets = dose->sets;
  int extra = dose->extra_sets;

  switch (dose->side)
    {
    case SW_SIDE_EACH:
      return (SwSpan) {
        turns_s (sets + extra, sets, low, rest),
        row_s (sets + extra, high, rest) + row_s (sets, high, rest),
      };
    case SW_SIDE_ALTERNATING:
      return (SwSpan) {
        sets * 2 * low + extra * low + (sets + extra - 1) * rest,
        sets * 2 * high + extra * high + (sets + extra - 1) * rest,
      };
    case SW_SIDE_BOTH:
    case SW_SIDE_RIGHT:
    case SW_SIDE_LEFT:
    default:
      return (SwSpan) { row_s (sets + extra, low, rest), row_s (sets + extra, high, rest) };
    }
}

/* An item that is not a circuit. */
static SwSpan
time_alone (SwItem *item)
{
  const SwDose *dose = sw_item_get_dose (item);
  double rest_s = sw_item_get_rest_s (item);

  switch (sw_item_get_kind (item))
    {
    case SW_ITEM_EXERCISE:
      if (sw_item_get_exercise (item) == NULL)
        return (SwSpan) { 0.0, 0.0 };
      return sw_time_of_dose (dose, sw_exercise_get_facts (sw_item_get_exercise (item))->pace_s);
    case SW_ITEM_REST:
      return (SwSpan) { rest_s, rest_s };
    case SW_ITEM_SELF_CHECK:
      return sw_span_times (self_check, dose->side == SW_SIDE_EACH || dose->side == SW_SIDE_ALTERNATING ? 2.0 : 1.0);
    case SW_ITEM_CIRCUIT:
    default:
      return (SwSpan) { 0.0, 0.0 };
    }
}

/* Fills in an entry and moves on; without @clock only the time is reckoned. Returns what of a usual day it takes. */
static SwSpan
pass_item (SwStation *place,
           SwItem    *item,
           SwClock   *clock,
           SwItem    *circuit,
           SwSection *section,
           SwSpan     start,
           SwSpan    *change)
{
  gboolean moves;
  gboolean apart = sw_item_get_kind (item) == SW_ITEM_SELF_CHECK;
  SwSpan length = time_alone (item);

  *change = sw_station_go_to (place, item, &moves);
  if (clock != NULL)
    {
      SwClockEntry entry = {
        .item = item,
        .circuit = circuit,
        .section = section,
        .start = sw_span_add (start, *change),
        .length = length,
        .change = *change,
        .position = place->position,
        .moves = moves,
        .apart = apart,
      };

      g_array_append_val (clock->entries, entry);
      if (moves)
        {
          clock->n_changes++;
          clock->change_s += change->high_s;
        }
      if (apart)
        clock->checks = sw_span_add (clock->checks, length);
    }

  return apart ? (SwSpan){ 0.0, 0.0 } : length;
}

/* All members once, changes between them included. The very first change is given apart. */
static SwSpan
pass_round (SwStation *place,
            SwItem    *circuit,
            SwClock   *clock,
            SwSection *section,
            SwSpan     start,
            SwSpan    *first_change)
{
  GListModel *members = G_LIST_MODEL (sw_item_get_items (circuit));
  SwSpan length = { 0.0, 0.0 };

  *first_change = (SwSpan) { 0.0, 0.0 };
  for (guint i = 0; i < g_list_model_get_n_items (members); i++)
    {
      g_autoptr (SwItem) member = g_list_model_get_item (members, i);
      SwSpan change;
      SwSpan itself = pass_item (place, member, clock, circuit, section,
                                 sw_span_add (start, sw_span_add (*first_change, length)), &change);

      if (i == 0)
        *first_change = change;
      else
        length = sw_span_add (length, change);
      length = sw_span_add (length, itself);
    }

  return length;
}

/* A circuit after its first round. The way back to the first member is gone during the rest between rounds if
 * it is long enough, at best. Changes of position count in every round. */
static SwSpan
pass_further_rounds (SwStation *place,
                     SwItem    *circuit,
                     SwClock   *clock)
{
  SwSpan length = { 0.0, 0.0 };
  double rest_s = sw_item_get_rest_s (circuit);

  for (int round = 1; round < sw_item_get_rounds (circuit); round++)
    {
      SwClock *counted = NULL;
      g_autoptr (SwClock) scratch = NULL;
      SwSpan back, members;

      if (clock != NULL)
        {
          scratch = g_new0 (SwClock, 1);
          scratch->entries = g_array_new (FALSE, FALSE, sizeof (SwClockEntry));
          counted = scratch;
        }
      members = pass_round (place, circuit, counted, NULL, length, &back);
      if (counted != NULL)
        {
          clock->n_changes += counted->n_changes;
          clock->change_s += counted->change_s;
          clock->checks = sw_span_add (clock->checks, counted->checks);
        }
      length = sw_span_add (length, members);
      length.low_s += MAX (rest_s, back.low_s);
      length.high_s += rest_s + back.high_s;
    }

  return length;
}

/**
 * sw_time_of_item:
 * @item: an item
 * @clinic: whose table tells how long changes between a circuit's members take
 *
 * How long the item takes itself. A circuit's time holds all rounds, the rests between them and the changes
 * between its members, but not the way to the first of them.
 *
 * Returns: the span
 */
SwSpan
sw_time_of_item (SwItem   *item,
                 SwClinic *clinic)
{
  SwStation place = { .clinic = clinic };
  SwSpan first_change, length;

  g_return_val_if_fail (SW_IS_ITEM (item), ((SwSpan) { 0.0, 0.0 }));

  if (sw_item_get_kind (item) != SW_ITEM_CIRCUIT)
    return time_alone (item);

  length = pass_round (&place, item, NULL, NULL, (SwSpan) { 0.0, 0.0 }, &first_change);
  return sw_span_add (length, pass_further_rounds (&place, item, NULL));
}

/* A circuit's own entry comes before those of its members and spans them all, the way to the first too. */
static void
pass_circuit (SwClock   *clock,
              SwStation *place,
              SwItem    *circuit,
              SwSection *section)
{
  guint index = clock->entries->len;
  SwClockEntry entry = { .item = circuit, .section = section, .start = clock->total };
  SwSpan first_change, length;

  g_array_append_val (clock->entries, entry);
  length = pass_round (place, circuit, clock, section, clock->total, &first_change);
  length = sw_span_add (length, pass_further_rounds (place, circuit, clock));
  length = sw_span_add (length, first_change);

  entry.length = length;
  entry.position = clock->entries->len > index + 1
                   ? g_array_index (clock->entries, SwClockEntry, index + 1).position : place->position;
  g_array_index (clock->entries, SwClockEntry, index) = entry;
  clock->total = sw_span_add (clock->total, length);
}

static void
pass_section (SwClock   *clock,
              SwStation *place,
              SwSection *section)
{
  GListModel *items = G_LIST_MODEL (sw_section_get_items (section));

  for (guint i = 0; i < g_list_model_get_n_items (items); i++)
    {
      g_autoptr (SwItem) item = g_list_model_get_item (items, i);

      if (sw_item_get_kind (item) == SW_ITEM_CIRCUIT)
        {
          pass_circuit (clock, place, item, section);
        }
      else
        {
          SwSpan change;
          SwSpan length = pass_item (place, item, clock, NULL, section, clock->total, &change);

          clock->total = sw_span_add (clock->total, sw_span_add (change, length));
        }
    }
}

/**
 * sw_clock_new:
 * @session: a session
 * @clinic: whose table tells how long changes take
 *
 * Goes through a session as the client does. The first exercise starts at 0:00, its card read and its
 * equipment at hand. Before each later one stands a change: reading the card, and as needed moving to
 * another position and fetching what the exercise before did not use. A rest or self-check needs none, nor
 * does it move the body; a self-check takes no time of a usual day.
 *
 * A circuit's entry begins where its first member's change does and takes all its rounds; its members are
 * listed as in the first round. The clock's counts of changes hold every round.
 *
 * Returns: (transfer full): the clock; its entries point into @session and are valid as long as nothing in
 *   it changes
 */
SwClock *
sw_clock_new (SwSession *session,
              SwClinic  *clinic)
{
  SwClock *clock;
  SwStation place = { .clinic = clinic };
  GListModel *sections;

  g_return_val_if_fail (SW_IS_SESSION (session), NULL);

  clock = g_new0 (SwClock, 1);
  clock->entries = g_array_new (FALSE, FALSE, sizeof (SwClockEntry));
  sections = G_LIST_MODEL (sw_session_get_sections (session));
  for (guint i = 0; i < g_list_model_get_n_items (sections); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);

      pass_section (clock, &place, section);
    }

  return clock;
}

/**
 * sw_clock_free:
 * @clock: (transfer full) (nullable): a clock
 */
void
sw_clock_free (SwClock *clock)
{
  if (clock == NULL)
    return;

  g_array_unref (clock->entries);
  g_free (clock);
}
