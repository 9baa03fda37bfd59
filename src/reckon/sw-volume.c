/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How many sets a week each muscle group works, side by side. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-volume.h"
#include "sw-week.h"

#define STRENGTH_AIMS (SW_SET (SW_AIM_STRENGTH) | SW_SET (SW_AIM_ENDURANCE))

static int
compare_volumes (gconstpointer a,
                 gconstpointer b)
{
  const SwVolume *first = a;
  const SwVolume *second = b;
  double difference = (second->sets_left + second->sets_right) - (first->sets_left + first->sets_right);

  if (difference > 0.0 || difference < 0.0)
    return difference > 0.0 ? 1 : -1;

  return (int) first->muscle - (int) second->muscle;
}

static void
add_item (SwItem  *item,
          double   times,
          gpointer data)
{
  SwVolume *volumes = data;
  const SwExerciseFacts *facts = sw_exercise_get_facts (sw_item_get_exercise (item));
  double left = times * sw_dose_get_sets_for (sw_item_get_dose (item), SW_BODY_SIDE_LEFT);
  double right = times * sw_dose_get_sets_for (sw_item_get_dose (item), SW_BODY_SIDE_RIGHT);

  for (int muscle = 0; muscle < sw_term_get_n_values (SW_TYPE_MUSCLE); muscle++)
    {
      if ((facts->muscles & SW_SET (muscle)) == 0)
        continue;
      volumes[muscle].sets_left += left;
      volumes[muscle].sets_right += right;
      if ((facts->aims & STRENGTH_AIMS) == 0)
        continue;
      volumes[muscle].strength_left += left;
      volumes[muscle].strength_right += right;
    }
}

/**
 * sw_volume_of_week:
 * @programme: a programme
 *
 * Counts sets for every muscle an exercise works or stretches, whatever the number of repetitions: on the
 * dose's days a week, else on the session's days, times a day, a circuit's rounds and extra sets included.
 * What has no days yet counts nothing. Directions do not multiply sets.
 *
 * Returns: (transfer full) (element-type SwVolume): the muscles that work at all, the most worked first
 */
GArray *
sw_volume_of_week (SwProgramme *programme)
{
  int n_muscles = sw_term_get_n_values (SW_TYPE_MUSCLE);
  g_autofree SwVolume *volumes = g_new0 (SwVolume, n_muscles);
  GArray *worked = g_array_new (FALSE, FALSE, sizeof (SwVolume));

  g_return_val_if_fail (SW_IS_PROGRAMME (programme), worked);

  sw_week_foreach (programme, add_item, volumes);
  for (int muscle = 0; muscle < n_muscles; muscle++)
    {
      volumes[muscle].muscle = (SwMuscle) muscle;
      if (volumes[muscle].sets_left > 0.0 || volumes[muscle].sets_right > 0.0)
        g_array_append_val (worked, volumes[muscle]);
    }
  g_array_sort (worked, compare_volumes);
  return worked;
}

/**
 * sw_volume_get_guidance:
 *
 * What SW_VOLUME_GUIDE_LOW and SW_VOLUME_GUIDE_HIGH rest on: each major muscle group on 2 to 3 days a week (ACSM position
 * stand, Med Sci Sports Exerc 2011;43:1334-1359), 1 to 3 sets for those not advanced in it (ACSM position stand, Med Sci
 * Sports Exerc 2009;41:687-708). The product of the two is reckoned here and published by neither.
 *
 * Returns: (transfer none): that in a sentence for the therapist, translated
 */
const char *
sw_volume_get_guidance (void)
{
  return _("For strength, each muscle group on 2 to 3 days a week (ACSM 2011) with 1 to 3 sets (ACSM 2009, not advanced): 2 to 9 "
           "sets a week. For stretching and balance no number of sets a week is published.");
}
