/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What has to be done between two exercises, and how long it takes by the clinic's table. */
#include "config.h"

#include "sw-station.h"

enum
{
  HEIGHT_STANDING,
  HEIGHT_SEAT,
  HEIGHT_FLOOR,
};

static int
height_of (SwPosition position,
           SwSet      equipment)
{
  const SwSet seats = SW_SET (SW_EQUIPMENT_CHAIR) | SW_SET (SW_EQUIPMENT_BED) | SW_SET (SW_EQUIPMENT_STEP);

  switch (position)
    {
    case SW_POSITION_STANDING:
      return HEIGHT_STANDING;
    case SW_POSITION_SITTING:
      /* With a mat and no seat it is the floor that is sat on. */
      return (equipment & SW_SET (SW_EQUIPMENT_MAT)) != 0 && (equipment & seats) == 0
             ? HEIGHT_FLOOR : HEIGHT_SEAT;
    case SW_POSITION_KNEELING:
    case SW_POSITION_HANDS_AND_KNEES:
    case SW_POSITION_FLOOR_SITTING:
    case SW_POSITION_ON_BACK:
    case SW_POSITION_ON_SIDE:
    case SW_POSITION_FACE_DOWN:
    default:
      return (equipment & SW_SET (SW_EQUIPMENT_BED)) != 0 ? HEIGHT_SEAT : HEIGHT_FLOOR;
    }
}

static SwSpan
time_of (SwClinic     *clinic,
         SwTransition  transition)
{
  int low_s;
  int high_s;

  sw_clinic_get_transition (clinic, transition, &low_s, &high_s);
  return (SwSpan){ low_s, high_s };
}

/**
 * sw_station_go_to:
 * @self: (inout): where body and equipment are; afterwards where @item is done
 * @item: what comes next; a rest or self-check is done where one is
 * @moves: (out): whether the body has to change position
 *
 * Before the first exercise the card is read and all is at hand. Before each later one the card is read, and as needed
 * another position taken and fetched what the exercise before did not use.
 *
 * Returns: what that takes
 */
SwSpan
sw_station_go_to (SwStation *self,
                  SwItem    *item,
                  gboolean  *moves)
{
  const SwExerciseFacts *facts;
  SwStation next;
  SwSpan change;

  *moves = FALSE;
  if (sw_item_get_exercise (item) == NULL)
    return (SwSpan){ 0.0, 0.0 };

  facts = sw_exercise_get_facts (sw_item_get_exercise (item));
  next = (SwStation){ self->clinic, facts->position, height_of (facts->position, facts->equipment), facts->equipment, TRUE };
  if (!self->begun)
    {
      *self = next;
      return (SwSpan){ 0.0, 0.0 };
    }

  change = time_of (self->clinic, SW_TRANSITION_CARD);
  *moves = next.position != self->position || next.height != self->height;
  if (*moves && (next.height == HEIGHT_FLOOR) != (self->height == HEIGHT_FLOOR))
    change = sw_span_add (change, time_of (self->clinic, SW_TRANSITION_FLOOR));
  else if (*moves)
    change = sw_span_add (change, time_of (self->clinic, next.height == self->height ? SW_TRANSITION_TURN
                                                                                     : SW_TRANSITION_SEAT));
  if ((next.equipment & ~self->equipment) != 0)
    change = sw_span_add (change, time_of (self->clinic, SW_TRANSITION_FETCH));

  *self = next;
  return change;
}
