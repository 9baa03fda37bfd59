/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Making a circuit of items and items of a circuit, without changing the amount of work. */
#include "config.h"

#include "sw-edits.h"

#include "sw-lists.h"

/* The most sets, and the most for one side alone, that a dose can have; see #SwDose. */
#define MAX_SETS 20
#define MAX_EXTRA_SETS 10

/* The sets that all exercises among @items share, or 0 when they differ or there are none. Sets for one side
 * alone would come again in each round, so that with them there is nothing to share. */
static int
shared_sets (GPtrArray *items)
{
  int sets = 0;

  for (guint i = 0; i < items->len; i++)
    {
      const SwDose *dose = sw_item_get_dose (items->pdata[i]);

      if (sw_item_get_kind (items->pdata[i]) != SW_ITEM_EXERCISE)
        continue;
      if (dose->extra_sets > 0 || (sets != 0 && sets != dose->sets))
        return 0;
      sets = dose->sets;
    }

  return sets;
}

static void
set_sets (SwHistory  *history,
          const char *label,
          SwItem     *item,
          int         sets,
          int         extra_sets)
{
  SwDose dose = *sw_item_get_dose (item);

  dose.sets = sets;
  dose.extra_sets = extra_sets;
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
        set_sets (history, label, members->pdata[i], 1, 0);
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
 * sets and none has more for one side, that becomes the number of rounds of one set each; else it is one round
 * and the doses stay as they are: in no case does the amount of work change. The longest rest becomes the rest between rounds.
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

/* Adds @member to @items with the sets that it has in all of @rounds. What is more than one dose can hold goes
 * on in copies behind it, so that nothing of the work is lost. */
static void
add_with_rounds (SwHistory  *history,
                 const char *label,
                 SwItem     *member,
                 int         rounds,
                 GPtrArray  *items)
{
  const SwDose dose = *sw_item_get_dose (member);
  int most = MAX_SETS / dose.sets;

  if (dose.extra_sets > 0)
    most = MIN (most, MAX_EXTRA_SETS / dose.extra_sets);

  set_sets (history, label, member, dose.sets * MIN (rounds, most), dose.extra_sets * MIN (rounds, most));
  g_ptr_array_add (items, g_object_ref (member));
  for (int left = rounds - most; left > 0; left -= most)
    {
      SwItem *copy = sw_item_copy (member, TRUE);

      set_sets (history, label, copy, dose.sets * MIN (left, most), dose.extra_sets * MIN (left, most));
      g_ptr_array_add (items, copy);
    }
}

/**
 * sw_edit_dissolve_circuit:
 * @history: the programme's history
 * @programme: the programme
 * @circuit: a circuit of the programme
 * @label: what undo will name
 *
 * Puts a circuit's members where it stands. Rounds become sets again; an exercise with more of them than a dose
 * can have comes several times in a row, so that the amount of work does not change.
 */
void
sw_edit_dissolve_circuit (SwHistory   *history,
                          SwProgramme *programme,
                          SwItem      *circuit,
                          const char  *label)
{
  g_autoptr (GPtrArray) members = NULL;
  g_autoptr (GPtrArray) items = g_ptr_array_new_with_free_func (g_object_unref);
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
      if (sw_item_get_kind (members->pdata[i]) == SW_ITEM_EXERCISE)
        add_with_rounds (history, label, members->pdata[i], sw_item_get_rounds (circuit), items);
      else
        g_ptr_array_add (items, g_object_ref (members->pdata[i]));
    }
  sw_history_splice (history, label, list, position, 1, items->pdata, items->len);
  sw_history_end (history);
}
