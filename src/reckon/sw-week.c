/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is done in a week, and how often. */
#include "config.h"

#include "sw-week.h"

static void
tell_items (GListModel *items,
            int         n_days,
            int         rounds,
            SwWeekFunc  func,
            gpointer    data)
{
  for (guint i = 0; i < g_list_model_get_n_items (items); i++)
    {
      g_autoptr (SwItem) item = g_list_model_get_item (items, i);
      const SwDose *dose = sw_item_get_dose (item);

      if (sw_item_get_exercise (item) != NULL)
        func (item, (dose->days_a_week > 0 ? dose->days_a_week : n_days) * dose->times_a_day * rounds, data);
      tell_items (G_LIST_MODEL (sw_item_get_items (item)), n_days, sw_item_get_rounds (item), func, data);
    }
}

/**
 * sw_week_foreach:
 * @programme: a programme
 * @func: is told of each exercise item
 * @data: for @func
 *
 * Each counts on its dose's days a week, else on its session's days; what has no days yet counts no times.
 */
void
sw_week_foreach (SwProgramme *programme,
                 SwWeekFunc   func,
                 gpointer     data)
{
  GListModel *sessions;

  g_return_if_fail (SW_IS_PROGRAMME (programme));

  sessions = G_LIST_MODEL (sw_programme_get_sessions (programme));
  for (guint i = 0; i < g_list_model_get_n_items (sessions); i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (sessions, i);
      GListModel *sections = G_LIST_MODEL (sw_session_get_sections (session));

      for (guint j = 0; j < g_list_model_get_n_items (sections); j++)
        {
          g_autoptr (SwSection) section = g_list_model_get_item (sections, j);

          tell_items (G_LIST_MODEL (sw_section_get_items (section)), sw_session_get_n_days (session), 1, func, data);
        }
    }
}
