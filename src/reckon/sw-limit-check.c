/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whether an exercise keeps to what was set for a client: its load by where that counts, its ranges by its picture, the
 * weight on a leg by its tags. The limits are the surgeon's or the clinician's; what an exercise loads is common practice
 * where nothing else is said. */
#include "config.h"

#include <math.h>

#include "sw-limit-check.h"

/* What a hand holds or pulls hangs on wrist, elbow and shoulder. */
#define IN_HAND (SW_SET (SW_EQUIPMENT_DUMBBELL) | SW_SET (SW_EQUIPMENT_BAND) | SW_SET (SW_EQUIPMENT_CABLE) \
                 | SW_SET (SW_EQUIPMENT_BALL) | SW_SET (SW_EQUIPMENT_STICK))
/* What is round shin or ankle pulls across knee and hip. */
#define ON_LEG (SW_SET (SW_EQUIPMENT_ANKLE_WEIGHT) | SW_SET (SW_EQUIPMENT_LOOP_BAND) | SW_SET (SW_EQUIPMENT_CABLE))
#define ARM (SW_SET (SW_REGION_SHOULDER) | SW_SET (SW_REGION_ELBOW_HAND))
#define LEG (SW_SET (SW_REGION_HIP) | SW_SET (SW_REGION_KNEE) | SW_SET (SW_REGION_ANKLE))
#define LIFTING (SW_SET (SW_CAUTION_LIFT_FROM_FLOOR) | SW_SET (SW_CAUTION_LOAD_OVERHEAD))
/* What puts the body's weight, or more, on a leg. */
#define ON_FEET (SW_SET (SW_CAUTION_FULL_WEIGHT_BEARING) | SW_SET (SW_CAUTION_ONE_LEG_STANDING) \
                 | SW_SET (SW_CAUTION_IMPACT) | SW_SET (SW_CAUTION_ONE_LEG_HEEL_RAISE))
/* A joint that moves by less is held still. */
#define STILL_DEG 10.0

static GMutex movements_lock;

/* Solving takes its time, and an exercise never changes. */
static const SwMovements *
get_drawn (SwExercise *exercise)
{
  static GQuark quark;
  SwMovements *movements;

  g_mutex_lock (&movements_lock);
  if (quark == 0)
    quark = g_quark_from_static_string ("sw-movements");
  movements = g_object_get_qdata (G_OBJECT (exercise), quark);
  if (movements == NULL)
    {
      movements = g_new (SwMovements, 1);
      sw_movements_init (movements, sw_exercise_get_figure (exercise));
      g_object_set_qdata_full (G_OBJECT (exercise), quark, movements, g_free);
    }
  g_mutex_unlock (&movements_lock);
  return movements;
}

/**
 * sw_limits_get_movements:
 * @exercise: an exercise
 * @side: how the sides share its work
 * @movements: (out caller-allocates): how far its picture takes the client's joints; of what both sides do in turn, or
 *   together, both ways round
 */
void
sw_limits_get_movements (SwExercise  *exercise,
                         SwSide       side,
                         SwMovements *movements)
{
  SwMovements mirrored;

  *movements = *get_drawn (exercise);
  mirrored = *movements;
  sw_movements_mirror (&mirrored);
  if (side != SW_SIDE_RIGHT && side != SW_SIDE_LEFT)
    sw_movements_add (movements, &mirrored);
  else if (sw_exercise_is_mirrored_for (exercise, side))
    *movements = mirrored;
}

/* Whether a limit of @side has to do with what is done by @worked. */
static gboolean
meets (SwBodySide side,
       SwSide     worked)
{
  return !((side == SW_BODY_SIDE_RIGHT && worked == SW_SIDE_LEFT)
           || (side == SW_BODY_SIDE_LEFT && worked == SW_SIDE_RIGHT));
}

/* Where a load of the exercise counts. */
static SwSet
get_loaded (const SwExerciseFacts *facts)
{
  SwSet loaded = SW_SET (facts->region) | SW_SET (SW_REGION_WHOLE_BODY);

  if (facts->region == SW_REGION_WHOLE_BODY || facts->region == SW_REGION_BALANCE)
    return SW_SET (SW_REGION_WHOLE_BODY + 1) - 1;
  if ((facts->equipment & IN_HAND) != 0 && (SW_SET (facts->region) & LEG) == 0)
    loaded |= ARM;
  if ((facts->equipment & SW_SET (SW_EQUIPMENT_DUMBBELL)) != 0)
    loaded |= ARM;
  if ((facts->equipment & ON_LEG) != 0 && (SW_SET (facts->region) & LEG) != 0)
    loaded |= LEG & ~SW_SET (SW_REGION_ANKLE);
  if ((facts->cautions & LIFTING) != 0)
    loaded |= SW_SET (SW_REGION_TRUNK);

  return loaded;
}

static gboolean
counts_load (SwLimit      *limit,
             SwExercise   *exercise,
             const SwDose *dose)
{
  SwRegion region = sw_limit_get_region (limit);
  gboolean sided = (SW_SET (region) & (ARM | LEG)) != 0;

  return sw_load_to_kg (dose->load) > 0.0 && (get_loaded (sw_exercise_get_facts (exercise)) & SW_SET (region)) != 0
         && (!sided || meets (sw_limit_get_side (limit), dose->side));
}

/* By how many whole degrees, as they are read, the angles leave what is allowed. */
static int
get_excess (SwLimit *limit,
            double   low_deg,
            double   high_deg,
            double  *worst_deg)
{
  double from_deg = sw_movement_goes_to_sides (sw_limit_get_movement (limit)) ? NAN : sw_limit_get_from_deg (limit);
  double to_deg = sw_limit_get_to_deg (limit);
  int below = isnan (from_deg) || isnan (low_deg) ? 0 : (int) (lround (from_deg) - lround (low_deg));
  int above = isnan (to_deg) || isnan (high_deg) ? 0 : (int) (lround (high_deg) - lround (to_deg));

  *worst_deg = above >= below ? high_deg : low_deg;
  return MAX (MAX (above, below), 0);
}

static gboolean
find_range_breach (SwLimit       *limit,
                   SwExercise    *exercise,
                   const SwDose  *dose,
                   SwLimitBreach *breach)
{
  SwMovement movement = sw_limit_get_movement (limit);
  gboolean sided = sw_movement_is_sided (movement) || sw_movement_goes_to_sides (movement);
  SwMovements movements;
  int most = 0;

  if (sw_exercise_get_figure (exercise) == NULL)
    {
      *breach = (SwLimitBreach) { SW_FINDING_ASK, sw_limit_get_side (limit), NAN };
      return TRUE;
    }

  sw_limits_get_movements (exercise, dose->side, &movements);
  for (int side = 0; side < 2; side++)
    {
      SwBodySide body_side = side == SW_FIGURE_LEFT ? SW_BODY_SIDE_LEFT : SW_BODY_SIDE_RIGHT;
      double worst_deg;
      int excess;

      if (sided && sw_limit_get_side (limit) != SW_BODY_SIDE_NONE && sw_limit_get_side (limit) != body_side)
        continue;
      excess = get_excess (limit, movements.low_deg[movement][side], movements.high_deg[movement][side], &worst_deg);
      if (excess <= most)
        continue;
      most = excess;
      *breach = (SwLimitBreach) { SW_FINDING_STOP, sided ? body_side : SW_BODY_SIDE_NONE, worst_deg };
    }

  return most > 0;
}

/* Whether the leg is the one in the air throughout, on one leg: what is left to ask is how the client gets there. */
static gboolean
is_leg_free (SwLimit      *limit,
             SwExercise   *exercise,
             const SwDose *dose)
{
  const SwExerciseFacts *facts = sw_exercise_get_facts (exercise);
  int side = sw_limit_get_side (limit) == SW_BODY_SIDE_LEFT ? SW_FIGURE_LEFT : SW_FIGURE_RIGHT;
  SwMovements movements;

  if (sw_limit_get_side (limit) == SW_BODY_SIDE_NONE || (facts->cautions & SW_SET (SW_CAUTION_ONE_LEG_STANDING)) == 0
      || (facts->equipment & SW_SET (SW_EQUIPMENT_STEP)) != 0)
    return FALSE;

  sw_limits_get_movements (exercise, dose->side, &movements);
  return movements.lifts_foot[side] && !movements.lifts_foot[1 - side];
}

static gboolean
find_weight_breach (SwLimit       *limit,
                    SwExercise    *exercise,
                    const SwDose  *dose,
                    SwLimitBreach *breach)
{
  SwSet cautions = sw_exercise_get_facts (exercise)->cautions;
  SwBearing bearing = sw_limit_get_bearing (limit);

  *breach = (SwLimitBreach) { SW_FINDING_STOP, sw_limit_get_side (limit), NAN };
  if (bearing == SW_BEARING_FULL)
    return FALSE;

  if ((cautions & ON_FEET) == 0)
    {
      /* A knee on the floor carries weight through the thigh. */
      breach->level = SW_FINDING_ASK;
      return bearing <= SW_BEARING_TOUCH && (cautions & SW_SET (SW_CAUTION_KNEELING)) != 0;
    }

  if (bearing == SW_BEARING_AS_TOLERATED)
    breach->level = SW_FINDING_TELL;
  else if (is_leg_free (limit, exercise, dose))
    breach->level = SW_FINDING_ASK;

  return TRUE;
}

/**
 * sw_limit_is_complete:
 * @limit: a limit
 *
 * Returns: whether it states what can be held against an exercise, or a day to count from
 */
gboolean
sw_limit_is_complete (SwLimit *limit)
{
  double from_deg, to_deg;

  g_return_val_if_fail (SW_IS_LIMIT (limit), FALSE);

  switch (sw_limit_get_kind (limit))
    {
    case SW_LIMIT_KIND_LOAD:
      return !isnan (sw_limit_get_kg (limit));
    case SW_LIMIT_KIND_RANGE:
      from_deg = sw_limit_get_from_deg (limit);
      to_deg = sw_limit_get_to_deg (limit);
      if (sw_movement_goes_to_sides (sw_limit_get_movement (limit)))
        return !isnan (to_deg);
      return (!isnan (from_deg) || !isnan (to_deg)) && !(from_deg > to_deg);
    case SW_LIMIT_KIND_SURGERY:
      return *sw_limit_get_date (limit) != '\0';
    case SW_LIMIT_KIND_WEIGHT_BEARING:
    default:
      return TRUE;
    }
}

/**
 * sw_limit_find_breach:
 * @limit: a limit
 * @exercise: an exercise
 * @dose: how it is to be done
 * @breach: (out): what is beyond the limit
 *
 * A load counts in the exercise's own region, what the hands hold on the arms, what is round a leg on hip and knee, and a
 * lift on the trunk; in the whole body all of them. A range is that of the picture, in whole degrees, on the sides the dose
 * asks for; without a picture it is asked about. Weight is told by the exercise's tags. What a picture leaves out is not beyond.
 *
 * Returns: whether there is anything
 */
gboolean
sw_limit_find_breach (SwLimit       *limit,
                      SwExercise    *exercise,
                      const SwDose  *dose,
                      SwLimitBreach *breach)
{
  g_return_val_if_fail (SW_IS_LIMIT (limit), FALSE);
  g_return_val_if_fail (SW_IS_EXERCISE (exercise), FALSE);

  if (!sw_limit_is_complete (limit))
    return FALSE;

  switch (sw_limit_get_kind (limit))
    {
    case SW_LIMIT_KIND_LOAD:
      *breach = (SwLimitBreach) { SW_FINDING_STOP, sw_limit_get_side (limit), NAN };
      return counts_load (limit, exercise, dose)
             && sw_load_to_kg (dose->load) > sw_limit_get_kg (limit) + 1e-9;
    case SW_LIMIT_KIND_RANGE:
      return find_range_breach (limit, exercise, dose, breach);
    case SW_LIMIT_KIND_WEIGHT_BEARING:
      return find_weight_breach (limit, exercise, dose, breach);
    case SW_LIMIT_KIND_SURGERY:
    default:
      return FALSE;
    }
}

/* Whether the picture moves the joint, on a side the limit is for. */
static gboolean
moves (SwLimit      *limit,
       SwExercise   *exercise,
       const SwDose *dose)
{
  SwMovement movement = sw_limit_get_movement (limit);
  SwMovements movements;

  sw_limits_get_movements (exercise, dose->side, &movements);
  for (int side = 0; side < 2; side++)
    {
      SwBodySide body_side = side == SW_FIGURE_LEFT ? SW_BODY_SIDE_LEFT : SW_BODY_SIDE_RIGHT;
      double low_deg = movements.low_deg[movement][side];
      double high_deg = movements.high_deg[movement][side];

      if (sw_movement_is_sided (movement) && sw_limit_get_side (limit) != SW_BODY_SIDE_NONE
          && sw_limit_get_side (limit) != body_side)
        continue;
      if (sw_movement_goes_to_sides (movement) ? high_deg >= STILL_DEG : high_deg - low_deg >= STILL_DEG)
        return TRUE;
    }

  return FALSE;
}

/**
 * sw_limit_concerns:
 * @limit: a limit
 * @exercise: an exercise
 * @dose: how it is to be done
 *
 * Returns: whether the client has to think of the limit with this exercise: it has a load that counts, moves the joint by 10
 *   degrees or more, is done on the feet, or is beyond the limit
 */
gboolean
sw_limit_concerns (SwLimit      *limit,
                   SwExercise   *exercise,
                   const SwDose *dose)
{
  SwLimitBreach breach;

  g_return_val_if_fail (SW_IS_LIMIT (limit), FALSE);
  g_return_val_if_fail (SW_IS_EXERCISE (exercise), FALSE);

  if (!sw_limit_is_complete (limit))
    return FALSE;
  if (sw_limit_find_breach (limit, exercise, dose, &breach))
    return TRUE;

  switch (sw_limit_get_kind (limit))
    {
    case SW_LIMIT_KIND_LOAD:
      return counts_load (limit, exercise, dose);
    case SW_LIMIT_KIND_RANGE:
      return moves (limit, exercise, dose);
    case SW_LIMIT_KIND_WEIGHT_BEARING:
    case SW_LIMIT_KIND_SURGERY:
    default:
      return FALSE;
    }
}
