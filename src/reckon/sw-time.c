/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How long the items of a session take, one after another. */
#include "config.h"

#include "sw-time.h"

#include "sw-dose-time.h"
#include "sw-station.h"

/* A self-check by measure, a side: doing it once and writing it down (common practice). */
static const SwSpan self_check = { 30.0, 60.0 };

/**
 * Pass:
 * @station: where body and equipment are
 * @clock: what is added up
 * @listing: whether what is passed gets an entry: it does but once, in the first round
 *
 * Going through a session.
 */
typedef struct
{
  SwStation station;
  SwClock *clock;
  gboolean listing;
} Pass;

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
      return sw_dose_time_of (dose, sw_exercise_get_facts (sw_item_get_exercise (item))->pace_s).total;
    case SW_ITEM_REST:
      return (SwSpan) { rest_s, rest_s };
    case SW_ITEM_SELF_CHECK:
      return sw_span_times (self_check, dose->side == SW_SIDE_EACH || dose->side == SW_SIDE_ALTERNATING ? 2.0 : 1.0);
    case SW_ITEM_CIRCUIT:
    default:
      return (SwSpan) { 0.0, 0.0 };
    }
}

static void
add_up (SwClock *clock,
        SwItem  *item,
        SwSpan   length,
        SwSpan   change,
        gboolean moves)
{
  if (moves)
    {
      clock->n_changes++;
      clock->change_s += change.high_s;
    }
  if (sw_item_get_exercise (item) != NULL)
    clock->exercises = sw_span_add (clock->exercises, length);
  else if (sw_item_get_kind (item) == SW_ITEM_SELF_CHECK)
    clock->checks = sw_span_add (clock->checks, length);
  else
    clock->rests = sw_span_add (clock->rests, length);
}

/* Adds an item up and moves on. Returns what of a usual day it takes, changes left out. */
static SwSpan
pass_item (Pass      *self,
           SwItem    *item,
           SwItem    *circuit,
           SwSection *section,
           SwSpan     start,
           SwSpan    *change)
{
  SwClock *clock = self->clock;
  gboolean apart = sw_item_get_kind (item) == SW_ITEM_SELF_CHECK;
  SwSpan length = time_alone (item);
  SwSet transitions = sw_station_go_to (&self->station, item);
  gboolean moves = (transitions & SW_STATION_MOVES) != 0;

  *change = sw_station_time (self->station.clinic, transitions);
  for (int i = 0; i < SW_N_TRANSITIONS; i++)
    clock->n_transitions[i] += (transitions & SW_SET (i)) != 0;
  add_up (clock, item, length, *change, moves);
  if (self->listing)
    {
      SwClockEntry entry = {
        .item = item,
        .circuit = circuit,
        .section = section,
        .start = sw_span_add (start, *change),
        .length = length,
        .change = *change,
        .position = self->station.position,
        .moves = moves,
        .apart = apart,
      };

      g_array_append_val (clock->entries, entry);
    }

  return apart ? (SwSpan){ 0.0, 0.0 } : length;
}

/* All members once, changes between them included. The very first change is given apart. */
static SwSpan
pass_round (Pass      *self,
            SwItem    *circuit,
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
      SwSpan itself = pass_item (self, member, circuit, section,
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
pass_further_rounds (Pass   *self,
                     SwItem *circuit)
{
  SwSpan length = { 0.0, 0.0 };
  double rest_s = sw_item_get_rest_s (circuit);
  gboolean listing = self->listing;

  self->listing = FALSE;
  for (int round = 1; round < sw_item_get_rounds (circuit); round++)
    {
      SwSpan back;
      SwSpan members = pass_round (self, circuit, NULL, length, &back);
      SwSpan rest = { MAX (0.0, rest_s - back.low_s), rest_s };

      self->clock->round_rests = sw_span_add (self->clock->round_rests, rest);
      length = sw_span_add (length, sw_span_add (members, sw_span_add (back, rest)));
    }
  self->listing = listing;

  return length;
}

/* A circuit's own entry comes before those of its members and spans them all, the way to the first too. */
static void
pass_circuit (Pass      *self,
              SwItem    *circuit,
              SwSection *section)
{
  SwClock *clock = self->clock;
  guint index = clock->entries->len;
  SwClockEntry entry = { .item = circuit, .section = section, .start = clock->total };
  SwSpan first_change, length;

  g_array_append_val (clock->entries, entry);
  length = pass_round (self, circuit, section, clock->total, &first_change);
  length = sw_span_add (length, pass_further_rounds (self, circuit));
  length = sw_span_add (length, first_change);

  entry.length = length;
  entry.position = clock->entries->len > index + 1
                   ? g_array_index (clock->entries, SwClockEntry, index + 1).position : self->station.position;
  g_array_index (clock->entries, SwClockEntry, index) = entry;
  clock->total = sw_span_add (clock->total, length);
}

static void
pass_any (Pass      *self,
          SwItem    *item,
          SwSection *section)
{
  SwClock *clock = self->clock;
  SwSpan change, length;

  if (sw_item_get_kind (item) == SW_ITEM_CIRCUIT)
    {
      pass_circuit (self, item, section);
      return;
    }

  length = pass_item (self, item, NULL, section, clock->total, &change);
  clock->total = sw_span_add (clock->total, sw_span_add (change, length));
}

static SwClock *
clock_new (void)
{
  SwClock *clock = g_new0 (SwClock, 1);

  clock->entries = g_array_new (FALSE, FALSE, sizeof (SwClockEntry));
  return clock;
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
 * listed as in the first round. The clock's sums hold every round.
 *
 * Returns: (transfer full): the clock; its entries point into @session and are valid as long as nothing in
 *   it changes
 */
SwClock *
sw_clock_new (SwSession *session,
              SwClinic  *clinic)
{
  g_autoptr (SwClock) clock = clock_new ();
  Pass pass = { .station = { .clinic = clinic }, .clock = clock, .listing = TRUE };
  GListModel *sections;

  g_return_val_if_fail (SW_IS_SESSION (session), NULL);

  sections = G_LIST_MODEL (sw_session_get_sections (session));
  for (guint i = 0; i < g_list_model_get_n_items (sections); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);
      GListModel *items = G_LIST_MODEL (sw_section_get_items (section));

      for (guint k = 0; k < g_list_model_get_n_items (items); k++)
        {
          g_autoptr (SwItem) item = g_list_model_get_item (items, k);

          pass_any (&pass, item, section);
        }
    }

  return g_steal_pointer (&clock);
}

/**
 * sw_clock_new_for_item:
 * @item: an item
 * @clinic: whose table tells how long changes between a circuit's members take
 *
 * Goes through one item alone, as if it began a session.
 *
 * Returns: (transfer full): the clock
 */
SwClock *
sw_clock_new_for_item (SwItem   *item,
                       SwClinic *clinic)
{
  g_autoptr (SwClock) clock = clock_new ();
  Pass pass = { .station = { .clinic = clinic }, .clock = clock, .listing = TRUE };

  g_return_val_if_fail (SW_IS_ITEM (item), NULL);

  pass_any (&pass, item, NULL);
  return g_steal_pointer (&clock);
}

/**
 * sw_clock_get_transition:
 * @transition: what has to be done between two exercises
 * @clinic: the clinic whose table the clock went by
 *
 * Returns: what it takes in the whole session
 */
SwSpan
sw_clock_get_transition (const SwClock *self,
                         SwTransition   transition,
                         SwClinic      *clinic)
{
  return sw_span_times (sw_station_time (clinic, SW_SET (transition)), self->n_transitions[transition]);
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
  g_autoptr (SwClock) clock = NULL;

  g_return_val_if_fail (SW_IS_ITEM (item), ((SwSpan) { 0.0, 0.0 }));

  clock = sw_clock_new_for_item (item, clinic);
  return sw_item_get_kind (item) == SW_ITEM_SELF_CHECK ? clock->checks : clock->total;
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
