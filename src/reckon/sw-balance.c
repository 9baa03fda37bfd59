/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How a week's sets are shared out: over the sides, push and pull, front and back, planes and positions. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-balance.h"
#include "sw-position-name.h"
#include "sw-week.h"

#define N_BALANCES (SW_BALANCE_POSITIONS + 1)
#define MOST_PARTS 8

/* Which muscle groups push with the arms and which pull (common practice). */
#define PUSH                                                                                                             \
  (SW_SET (SW_MUSCLE_PECTORALS) | SW_SET (SW_MUSCLE_TRICEPS) | SW_SET (SW_MUSCLE_DELTOID)                                \
   | SW_SET (SW_MUSCLE_SERRATUS_ANTERIOR))
#define PULL                                                                                                             \
  (SW_SET (SW_MUSCLE_LATISSIMUS_DORSI) | SW_SET (SW_MUSCLE_RHOMBOIDS) | SW_SET (SW_MUSCLE_LOWER_TRAPEZIUS)               \
   | SW_SET (SW_MUSCLE_UPPER_TRAPEZIUS) | SW_SET (SW_MUSCLE_BICEPS))

/* Where the muscle groups lie, in the anatomical position. */
#define FRONT                                                                                                            \
  (SW_SET (SW_MUSCLE_NECK_FLEXORS) | SW_SET (SW_MUSCLE_PECTORALS) | SW_SET (SW_MUSCLE_SERRATUS_ANTERIOR)                 \
   | SW_SET (SW_MUSCLE_BICEPS) | SW_SET (SW_MUSCLE_ABDOMINALS) | SW_SET (SW_MUSCLE_HIP_FLEXORS)                          \
   | SW_SET (SW_MUSCLE_QUADRICEPS) | SW_SET (SW_MUSCLE_SHIN))
#define BACK                                                                                                             \
  (SW_SET (SW_MUSCLE_NECK_EXTENSORS) | SW_SET (SW_MUSCLE_UPPER_TRAPEZIUS) | SW_SET (SW_MUSCLE_LOWER_TRAPEZIUS)           \
   | SW_SET (SW_MUSCLE_RHOMBOIDS) | SW_SET (SW_MUSCLE_LATISSIMUS_DORSI) | SW_SET (SW_MUSCLE_TRICEPS)                     \
   | SW_SET (SW_MUSCLE_BACK_EXTENSORS) | SW_SET (SW_MUSCLE_GLUTEALS) | SW_SET (SW_MUSCLE_HAMSTRINGS)                     \
   | SW_SET (SW_MUSCLE_CALF))
#define FLANKS                                                                                                           \
  (SW_SET (SW_MUSCLE_DELTOID) | SW_SET (SW_MUSCLE_OBLIQUES) | SW_SET (SW_MUSCLE_HIP_ABDUCTORS)                           \
   | SW_SET (SW_MUSCLE_HIP_ADDUCTORS) | SW_SET (SW_MUSCLE_PERONEALS))

typedef struct
{
  const char *key;
  const char *words; /* NULL: the position's own */
  SwSet muscles;     /* whose exercises count, where muscles decide */
} Part;

static const struct
{
  const char *name;
  const char *rule;
  Part parts[MOST_PARTS];
} balances[N_BALANCES] = {
  [SW_BALANCE_SIDES] = {
    N_("Right and left"),
    N_("Sets a week of each side, extra sets included."),
    { { "right", N_("right"), 0 }, { "left", N_("left"), 0 } },
  },
  [SW_BALANCE_PUSH_PULL] = {
    N_("Push and pull of the arms"),
    N_("By the muscles: chest, front of the shoulder blade, deltoid and triceps push; back, upper and lower trapezius and biceps "
       "pull (common practice). An exercise with both is shared out."),
    { { "push", N_("push"), PUSH }, { "pull", N_("pull"), PULL } },
  },
  [SW_BALANCE_FRONT_BACK] = {
    N_("Front, back and flanks"),
    N_("By where the muscles lie. An exercise with several is shared out."),
    { { "front", N_("front"), FRONT }, { "back", N_("back"), BACK }, { "flanks", N_("flanks"), FLANKS } },
  },
  [SW_BALANCE_PLANES] = {
    N_("Directions of movement"),
    N_("The plane in which the figure's joints move most, each counted by the mass of what hangs on it."),
    { { "still", N_("held still"), 0 },
      { "sagittal", N_("forwards and backwards"), 0 },
      { "frontal", N_("sideways"), 0 },
      { "transverse", N_("turning"), 0 } },
  },
  [SW_BALANCE_POSITIONS] = {
    N_("Positions"),
    N_("The position each exercise starts in."),
    { { "standing", NULL, 0 },
      { "sitting", NULL, 0 },
      { "kneeling", NULL, 0 },
      { "hands-and-knees", NULL, 0 },
      { "floor-sitting", NULL, 0 },
      { "on-back", NULL, 0 },
      { "on-side", NULL, 0 },
      { "face-down", NULL, 0 } },
  },
};

typedef struct
{
  SwBalance balance;
  double sets[MOST_PARTS];
} Count;

/* Shares @sets out by how many of the exercise's muscles belong to each part. */
static void
share_out (Count *count,
           SwSet  muscles,
           double sets)
{
  const Part *parts = balances[count->balance].parts;
  int n_all = 0;

  for (int i = 0; i < MOST_PARTS && parts[i].key != NULL; i++)
    n_all += sw_set_count (muscles & parts[i].muscles);
  for (int i = 0; n_all > 0 && i < MOST_PARTS && parts[i].key != NULL; i++)
    count->sets[i] += sets * sw_set_count (muscles & parts[i].muscles) / n_all;
}

static void
add_item (SwItem  *item,
          double   times,
          gpointer data)
{
  Count *count = data;
  SwExercise *exercise = sw_item_get_exercise (item);
  const SwExerciseFacts *facts = sw_exercise_get_facts (exercise);
  double left = times * sw_dose_get_sets_for (sw_item_get_dose (item), SW_BODY_SIDE_LEFT);
  double right = times * sw_dose_get_sets_for (sw_item_get_dose (item), SW_BODY_SIDE_RIGHT);
  double sets = MAX (left, right);

  switch (count->balance)
    {
    case SW_BALANCE_SIDES:
      count->sets[0] += right;
      count->sets[1] += left;
      break;
    case SW_BALANCE_PLANES:
      count->sets[sw_plane_of (exercise)] += sets;
      break;
    case SW_BALANCE_POSITIONS:
      count->sets[facts->position] += sets;
      break;
    case SW_BALANCE_PUSH_PULL:
    case SW_BALANCE_FRONT_BACK:
    default:
      share_out (count, facts->muscles, sets);
      break;
    }
}

/**
 * sw_balance_of_week:
 * @programme: a programme
 * @balance: in which way to look at it
 *
 * Shares the week's sets out, counted as sw_volume_of_week() does; an exercise that each side does by itself counts the
 * sets of the side with more. All exercises count, whatever their aim. Nothing is published on how much of each is right:
 * this is to be seen and judged, not met.
 *
 * Returns: (transfer full) (element-type SwBalancePart): the parts in their usual order; of planes and positions
 *   only those with sets
 */
GArray *
sw_balance_of_week (SwProgramme *programme,
                    SwBalance    balance)
{
  GArray *parts = g_array_new (FALSE, FALSE, sizeof (SwBalancePart));
  Count count = { .balance = balance };

  g_return_val_if_fail (SW_IS_PROGRAMME (programme), parts);
  g_return_val_if_fail ((guint) balance < N_BALANCES, parts);

  sw_week_foreach (programme, add_item, &count);
  for (int i = 0; i < MOST_PARTS && balances[balance].parts[i].key != NULL; i++)
    {
      const Part *part = &balances[balance].parts[i];
      SwBalancePart told = { part->key, part->words != NULL ? _(part->words) : sw_position_get_name ((SwPosition) i),
                             count.sets[i] };

      if (told.sets > 0.0 || (balance != SW_BALANCE_PLANES && balance != SW_BALANCE_POSITIONS))
        g_array_append_val (parts, told);
    }

  return parts;
}

/**
 * sw_balance_get_name:
 * @balance: a way to look at a week
 *
 * Returns: (transfer none): a heading for the therapist, translated
 */
const char *
sw_balance_get_name (SwBalance balance)
{
  g_return_val_if_fail ((guint) balance < N_BALANCES, "");

  return _(balances[balance].name);
}

/**
 * sw_balance_get_rule:
 * @balance: a way to look at a week
 *
 * Returns: (transfer none): how it is counted, for the therapist, translated
 */
const char *
sw_balance_get_rule (SwBalance balance)
{
  g_return_val_if_fail ((guint) balance < N_BALANCES, "");

  return _(balances[balance].rule);
}
