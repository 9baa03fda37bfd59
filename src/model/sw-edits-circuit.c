/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Making a circuit of items and items of a circuit, without changing the amount of work. */
#include "config.h"

#include "sw-edits.h"

#include "sw-lists.h"

/* The sets that all exercises among @items share, or 0 when they differ or there are none. */
static int
shared_sets (GPtrArray *items)
{
  int sets = 0;

  for (guint i = 0; i < items->len; i++)
    {
      const SwDose *dose = sw_item_get_dose (items->pdata[i]);

      if (sw_item_get_kind (items->pdata[i]) != SW_ITEM_EXERCISE)
        continue;
      if (sets != 0 && sets != dose->sets)
        return 0;
      sets = dose->sets;
    }

  return sets;
}

static void
set_sets (SwHistory  *history,
          const char *label,
          SwItem     *item,
          int         sets)
{
  SwDose dose = *sw_item_get_dose (item);

  dose.sets = sets;
  sw_history_set_boxed (history, label, item, "dose", &dose);
}

/* Sets become rounds where that leaves the amount of work as it is. */
static void
sets_to_rounds (SwHistory  *history,
                const char *label,
                SwItem     *circuit,
                GPtrArray  *members)
{
  int sets = shared_sets (members);
  int rest_s = 0;

  for (guint i = 0; i < members->len; i++)
    {
      if (sw_item_get_kind (members->pdata[i]) == SW_ITEM_EXERCISE)
        rest_s = MAX (rest_s, sw_item_get_dose (members->pdata[i])->rest_s);
    }
  g_object_set (circuit, "rest-seconds", rest_s, NULL);
  if (sets < 2)
    return;

  g_object_set (circuit, "rounds", sets, NULL);
  for (guint i = 0; i < members->len; i++)
    {
      if (sw_item_get_kind (members->pdata[i]) == SW_ITEM_EXERCISE)
        set_sets (history, label, members->pdata[i], 1);
    }
}

/**
 * sw_edit_make_circuit:
 * @history: the programme's history
 * @programme: the programme
 * @items: (element-type SwItem): the items to go through in rounds; circuits among them are left out
 * @label: what undo will name
 *
 * Makes a circuit of items, where the first of them stands. When all its exercises have the same number of
 * sets, that becomes the number of rounds of one set each; else it is one round and the doses stay as they
 * are: in no case does the amount of work change. The longest rest becomes the rest between rounds.
 *
 * Returns: (transfer none) (nullable): the circuit; NULL when @items holds nothing to put into one
 */
SwItem *
sw_edit_make_circuit (SwHistory   *history,
                      SwProgramme *programme,
                      GPtrArray   *items,
                      const char  *label)
{
  g_autoptr (GPtrArray) members = NULL;
  g_autoptr (GPtrArray) lists = NULL;
  g_autoptr (SwItem) circuit = NULL;
  SwGap gap, parent;

  g_return_val_if_fail (SW_IS_HISTORY (history), NULL);
  g_return_val_if_fail (SW_IS_PROGRAMME (programme), NULL);

  members = sw_lists_in_order (programme, items);
  for (guint i = members->len; i > 0; i--)
    {
      if (!SW_IS_ITEM (members->pdata[i - 1]) || sw_item_get_kind (members->pdata[i - 1]) == SW_ITEM_CIRCUIT)
        g_ptr_array_remove_index (members, i - 1);
    }
  if (members->len == 0)
    return NULL;

  gap.list = sw_programme_find_list (programme, members->pdata[0], &gap.position);
  if (sw_lists_is_circuit (programme, gap.list) && sw_lists_find_parent (programme, gap.list, &parent))
    gap = (SwGap) { parent.list, parent.position + 1 };

  circuit = sw_item_new (SW_ITEM_CIRCUIT, NULL);
  lists = sw_lists_of (programme, members);
  if (!sw_lists_contain (lists, gap.list))
    g_ptr_array_add (lists, gap.list);

  sw_history_begin (history, label);
  sets_to_rounds (history, label, circuit, members);
  for (guint i = 0; i < lists->len; i++)
    {
      g_autoptr (GPtrArray) wanted = sw_lists_dup_contents_without (lists->pdata[i], members);

      /* No member stands before the gap in its list, so that the gap is the same without them. */
      if (lists->pdata[i] == gap.list)
        g_ptr_array_insert (wanted, (int) gap.position, g_object_ref (circuit));
      sw_lists_replace_contents (history, label, lists->pdata[i], wanted);
    }
  g_list_store_splice (sw_item_get_items (circuit), 0, 0, members->pdata, members->len);
  sw_history_end (history);

  return circuit;
}

/**
 * sw_edit_dissolve_circuit:
 * @history: the programme's history
 * @programme: the programme
 * @circuit: a circuit of the programme
 * @label: what undo will name
 *
 * Puts a circuit's members where it stands. Rounds become sets again, as far as a dose can have as many.
 */
void
sw_edit_dissolve_circuit (SwHistory   *history,
                          SwProgramme *programme,
                          SwItem      *circuit,
                          const char  *label)
{
  g_autoptr (GPtrArray) members = NULL;
  GListStore *list;
  guint position;

  g_return_if_fail (SW_IS_HISTORY (history));
  g_return_if_fail (SW_IS_PROGRAMME (programme));
  g_return_if_fail (SW_IS_ITEM (circuit) && sw_item_get_kind (circuit) == SW_ITEM_CIRCUIT);

  list = sw_programme_find_list (programme, circuit, &position);
  if (list == NULL)
    return;

  members = sw_lists_dup_contents (sw_item_get_items (circuit));
  sw_history_begin (history, label);
  for (guint i = 0; i < members->len; i++)
    {
      int sets = sw_item_get_dose (members->pdata[i])->sets * sw_item_get_rounds (circuit);

      if (sw_item_get_kind (members->pdata[i]) == SW_ITEM_EXERCISE)
        set_sets (history, label, members->pdata[i], MIN (sets, 20));
    }
  sw_history_splice (history, label, list, position, 1, members->pdata, members->len);
  sw_history_end (history);
}
