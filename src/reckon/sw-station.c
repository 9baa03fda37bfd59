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

/**
 * sw_station_go_to:
 * @self: (inout): where body and equipment are; afterwards where @item is done
 * @item: what comes next; a rest or self-check is done where one is
 *
 * Before the first exercise the card is read and all is at hand. Before each later one the card is read, and as needed
 * another position taken and fetched what the exercise before did not use.
 *
 * Returns: set of #SwTransition: what has to be done for that
 */
SwSet
sw_station_go_to (SwStation *self,
                  SwItem    *item)
{
  const SwExerciseFacts *facts;
  SwStation next;
  SwSet transitions = SW_SET (SW_TRANSITION_CARD);

  if (sw_item_get_exercise (item) == NULL)
    return 0;

  facts = sw_exercise_get_facts (sw_item_get_exercise (item));
  next = (SwStation){ self->clinic, facts->position, height_of (facts->position, facts->equipment), facts->equipment,
                      TRUE };
  if (!self->begun)
    {
      *self = next;
      return 0;
    }

  if ((next.height == HEIGHT_FLOOR) != (self->height == HEIGHT_FLOOR))
    transitions |= SW_SET (SW_TRANSITION_FLOOR);
  else if (next.height != self->height)
    transitions |= SW_SET (SW_TRANSITION_SEAT);
  else if (next.position != self->position)
    transitions |= SW_SET (SW_TRANSITION_TURN);
  if ((next.equipment & ~self->equipment) != 0)
    transitions |= SW_SET (SW_TRANSITION_FETCH);

  *self = next;
  return transitions;
}

/**
 * sw_station_time:
 * @clinic: whose table tells how long each takes
 * @transitions: set of #SwTransition
 *
 * Returns: how long they take, one after another
 */
SwSpan
sw_station_time (SwClinic *clinic,
                 SwSet     transitions)
{
  SwSpan sum = { 0.0, 0.0 };

  for (int i = 0; i < SW_N_TRANSITIONS; i++)
    {
      int low_s, high_s;

      if ((transitions & SW_SET (i)) == 0)
        continue;
      sw_clinic_get_transition (clinic, (SwTransition) i, &low_s, &high_s);
      sum = sw_span_add (sum, (SwSpan){ low_s, high_s });
    }
  return sum;
}
