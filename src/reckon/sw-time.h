/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-programme.h"
#include "sw-span.h"

G_BEGIN_DECLS

/**
 * SwClockEntry:
 * @item: (unowned): the item
 * @circuit: (unowned) (nullable): the circuit it stands in
 * @section: (unowned): the section
 * @start: when it starts, counted from the start of the session
 * @length: how long it takes itself, changes of place before it left out
 * @change: what getting into position and fetching equipment takes before it
 * @position: the position it starts in; for a rest or check, the one before it
 * @moves: whether the body has to change position for it
 * @apart: whether it is no part of a usual day: a self-check
 */
typedef struct
{
  SwItem *item;
  SwItem *circuit;
  SwSection *section;
  SwSpan start;
  SwSpan length;
  SwSpan change;
  SwPosition position;
  gboolean moves;
  gboolean apart;
} SwClockEntry;

/**
 * SwClock:
 * @entries: (element-type SwClockEntry): in the order of the canvas: a circuit's members follow it
 * @total: the whole session on a usual day, changes included
 * @checks: what its self-checks take on top, on the days on which they are done
 * @exercises: of @total, its exercises with the rests between their sets
 * @rests: its rests between exercises
 * @round_rests: its rests between the rounds of circuits, as far as they do not go into the way back
 * @n_transitions: how often each #SwTransition is needed, which takes the remainder
 * @n_changes: changes of position
 * @change_s: seconds the changes take, the upper figure
 *
 * The running clock of a session. Self-checks are done on the first day and before the next visit, so they are no part of
 * the minutes of a day: what comes after them begins as if they were not there.
 */
typedef struct
{
  GArray *entries;
  SwSpan total;
  SwSpan checks;
  SwSpan exercises;
  SwSpan rests;
  SwSpan round_rests;
  int n_transitions[SW_N_TRANSITIONS];
  int n_changes;
  double change_s;
} SwClock;

SwSpan sw_time_of_item (SwItem   *item,
                        SwClinic *clinic);
SwClock *sw_clock_new (SwSession *session,
                       SwClinic  *clinic);
SwClock *sw_clock_new_for_item (SwItem   *item,
                                SwClinic *clinic);
SwSpan sw_clock_get_transition (const SwClock *self,
                                SwTransition   transition,
                                SwClinic      *clinic);
void sw_clock_free (SwClock *clock);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwClock, sw_clock_free)

G_END_DECLS
