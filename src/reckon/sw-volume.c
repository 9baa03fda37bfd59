/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How many sets a week each muscle group works, side by side. */
#include "config.h"

#include "sw-volume.h"

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
add_item (SwVolume *volumes,
          int       n_muscles,
          SwItem   *item,
          int       n_days,
          int       rounds)
{
  const SwDose *dose = sw_item_get_dose (item);
  SwExercise *exercise = sw_item_get_exercise (item);
  double times;

  if (exercise == NULL)
    return;

  times = (dose->days_a_week > 0 ? dose->days_a_week : n_days) * dose->times_a_day * rounds;
  for (int muscle = 0; muscle < n_muscles; muscle++)
    {
      if ((sw_exercise_get_facts (exercise)->muscles & SW_SET (muscle)) == 0)
        continue;
      volumes[muscle].sets_left += times * sw_dose_get_sets_for (dose, SW_BODY_SIDE_LEFT);
      volumes[muscle].sets_right += times * sw_dose_get_sets_for (dose, SW_BODY_SIDE_RIGHT);
    }
}

static void
add_session (SwVolume  *volumes,
             int        n_muscles,
             SwSession *session)
{
  GListModel *sections = G_LIST_MODEL (sw_session_get_sections (session));
  int n_days = sw_session_get_n_days (session);

  for (guint i = 0; i < g_list_model_get_n_items (sections); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);
      GListModel *items = G_LIST_MODEL (sw_section_get_items (section));

      for (guint j = 0; j < g_list_model_get_n_items (items); j++)
        {
          g_autoptr (SwItem) item = g_list_model_get_item (items, j);
          GListModel *members = G_LIST_MODEL (sw_item_get_items (item));

          add_item (volumes, n_muscles, item, n_days, 1);
          for (guint k = 0; k < g_list_model_get_n_items (members); k++)
            {
              g_autoptr (SwItem) member = g_list_model_get_item (members, k);

              add_item (volumes, n_muscles, member, n_days, sw_item_get_rounds (item));
            }
        }
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
  GListModel *sessions;

  g_return_val_if_fail (SW_IS_PROGRAMME (programme), worked);

  sessions = G_LIST_MODEL (sw_programme_get_sessions (programme));
  for (guint i = 0; i < g_list_model_get_n_items (sessions); i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (sessions, i);

      add_session (volumes, n_muscles, session);
    }

  for (int muscle = 0; muscle < n_muscles; muscle++)
    {
      volumes[muscle].muscle = (SwMuscle) muscle;
      if (volumes[muscle].sets_left > 0.0 || volumes[muscle].sets_right > 0.0)
        g_array_append_val (worked, volumes[muscle]);
    }
  g_array_sort (worked, compare_volumes);
  return worked;
}
