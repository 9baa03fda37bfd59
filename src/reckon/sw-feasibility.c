/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What makes a session shorter without taking an exercise out of the programme. */
#include "config.h"

#include <math.h>

#include "sw-feasibility.h"
#include "sw-time.h"

static double
get_seconds (SwItem   *item,
             SwClinic *clinic)
{
  SwSpan span = sw_time_of_item (item, clinic);

  return (span.low_s + span.high_s) / 2.0;
}

/* What is done between warm-up and cool-down; a circuit is one. */
static GPtrArray *
dup_main_items (SwSession *session)
{
  GPtrArray *all = g_ptr_array_new_with_free_func (g_object_unref);
  GListModel *sections = G_LIST_MODEL (sw_session_get_sections (session));

  for (guint i = 0; i < g_list_model_get_n_items (sections); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);
      GListModel *items = G_LIST_MODEL (sw_section_get_items (section));

      if (sw_section_get_kind (section) == SW_SECTION_WARM_UP || sw_section_get_kind (section) == SW_SECTION_COOL_DOWN)
        continue;
      for (guint j = 0; j < g_list_model_get_n_items (items); j++)
        {
          g_autoptr (SwItem) item = g_list_model_get_item (items, j);

          if (sw_item_get_kind (item) != SW_ITEM_SELF_CHECK)
            g_ptr_array_add (all, g_steal_pointer (&item));
        }
    }

  return all;
}

static gboolean
is_work (SwItem *item)
{
  return sw_item_get_kind (item) == SW_ITEM_EXERCISE || sw_item_get_kind (item) == SW_ITEM_CIRCUIT;
}

/**
 * sw_feasibility_find_half:
 * @session: a session
 * @clinic: whose change times count
 *
 * Finds where to cut the main work in two parts that take as nearly as can be the same time, in the order it has. Each
 * part has at least one exercise or circuit, and the second does not begin with a rest.
 *
 * Returns: (transfer full) (element-type SwItem): the second part; empty when there is nothing to cut
 */
GPtrArray *
sw_feasibility_find_half (SwSession *session,
                          SwClinic  *clinic)
{
  g_autoptr (GPtrArray) items = NULL;
  GPtrArray *half = g_ptr_array_new_with_free_func (g_object_unref);
  double total_s = 0.0;
  double before_s = 0.0;
  double best_s = HUGE_VAL;
  gboolean any_before = FALSE;
  guint cut = 0;

  g_return_val_if_fail (SW_IS_SESSION (session), half);

  items = dup_main_items (session);
  for (guint i = 0; i < items->len; i++)
    total_s += get_seconds (items->pdata[i], clinic);
  for (guint i = 0; i < items->len; i++)
    {
      if (any_before && is_work (items->pdata[i]) && fabs (total_s - 2.0 * before_s) < best_s)
        {
          best_s = fabs (total_s - 2.0 * before_s);
          cut = i;
        }
      any_before = any_before || is_work (items->pdata[i]);
      before_s += get_seconds (items->pdata[i], clinic);
    }

  for (guint i = cut; cut > 0 && i < items->len; i++)
    g_ptr_array_add (half, g_object_ref (items->pdata[i]));
  return half;
}

/**
 * sw_feasibility_find_set:
 * @session: a session
 * @clinic: whose change times count
 * @fewer: (out): the dose with one set less, set only when there is one
 *
 * Finds where one set less is least of a loss: at an exercise that has the most sets, of those at the longest one. Extra
 * sets of a weaker side stay.
 *
 * Returns: (transfer none) (nullable): that item, or NULL when all have one set
 */
SwItem *
sw_feasibility_find_set (SwSession *session,
                         SwClinic  *clinic,
                         SwDose    *fewer)
{
  g_autoptr (GPtrArray) items = NULL;
  SwItem *best = NULL;
  int best_sets = 1;
  double best_s = 0.0;

  g_return_val_if_fail (SW_IS_SESSION (session), NULL);

  items = sw_session_dup_items (session);
  for (guint i = 0; i < items->len; i++)
    {
      SwItem *item = items->pdata[i];
      int sets = sw_item_get_dose (item)->sets;
      double seconds;

      if (sw_item_get_exercise (item) == NULL || sets < MAX (best_sets, 2))
        continue;
      seconds = get_seconds (item, clinic);
      if (sets > best_sets || seconds > best_s)
        {
          best = item;
          best_sets = sets;
          best_s = seconds;
        }
    }

  if (best != NULL)
    {
      *fewer = *sw_item_get_dose (best);
      fewer->sets--;
    }
  return best;
}
