/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The lists of a programme as a whole: where things stand, in what order, and how a list becomes another by
 * the smallest change. */
#include "config.h"

#include "sw-lists.h"

/**
 * sw_lists_dup_contents:
 * @list: a list
 *
 * Returns: (transfer full) (element-type GObject): what it holds
 */
GPtrArray *
sw_lists_dup_contents (GListStore *list)
{
  GPtrArray *contents = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (list)); i++)
    g_ptr_array_add (contents, g_list_model_get_item (G_LIST_MODEL (list), i));

  return contents;
}

/**
 * sw_lists_replace_contents:
 * @history: the programme's history
 * @label: what undo will name
 * @list: a list
 * @wanted: (element-type GObject): what it shall hold
 *
 * Changes @list by one splice over the smallest range that differs, or not at all.
 */
void
sw_lists_replace_contents (SwHistory  *history,
                           const char *label,
                           GListStore *list,
                           GPtrArray  *wanted)
{
  g_autoptr (GPtrArray) present = sw_lists_dup_contents (list);
  guint shorter = MIN (present->len, wanted->len);
  guint same_before = 0, same_after = 0;

  while (same_before < shorter && present->pdata[same_before] == wanted->pdata[same_before])
    same_before++;
  while (same_after < shorter - same_before
         && present->pdata[present->len - 1 - same_after] == wanted->pdata[wanted->len - 1 - same_after])
    same_after++;

  sw_history_splice (history, label, list, same_before, present->len - same_before - same_after,
                     wanted->pdata + same_before, wanted->len - same_before - same_after);
}

/**
 * sw_lists_find_parent:
 * @programme: a programme
 * @list: a list of items in it
 * @parent: (out): the list that holds the section or circuit @list belongs to, and where that stands in it
 *
 * Returns: whether there is one; lists of sections and of the programme itself have none
 */
gboolean
sw_lists_find_parent (SwProgramme *programme,
                      GListStore  *list,
                      SwGap       *parent)
{
  GListModel *sessions = G_LIST_MODEL (sw_programme_get_sessions (programme));
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);

  for (guint i = 0; i < items->len; i++)
    {
      if (sw_item_get_items (items->pdata[i]) == list)
        {
          parent->list = sw_programme_find_list (programme, items->pdata[i], &parent->position);
          return TRUE;
        }
    }

  for (guint i = 0; i < g_list_model_get_n_items (sessions); i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (sessions, i);
      GListStore *sections = sw_session_get_sections (session);

      for (guint j = 0; j < g_list_model_get_n_items (G_LIST_MODEL (sections)); j++)
        {
          g_autoptr (SwSection) section = g_list_model_get_item (G_LIST_MODEL (sections), j);

          if (sw_section_get_items (section) == list)
            {
              *parent = (SwGap) { sections, j };
              return TRUE;
            }
        }
    }

  return FALSE;
}

/**
 * sw_lists_is_circuit:
 * @programme: a programme
 * @list: a list in it
 *
 * Returns: whether @list holds the members of a circuit
 */
gboolean
sw_lists_is_circuit (SwProgramme *programme,
                     GListStore  *list)
{
  SwGap parent;

  return sw_lists_find_parent (programme, list, &parent)
         && g_list_model_get_item_type (G_LIST_MODEL (parent.list)) == SW_TYPE_ITEM;
}

/**
 * sw_lists_contain:
 * @objects: objects, or lists
 * @object: one of them, or not
 *
 * Returns: whether @object is among them
 */
gboolean
sw_lists_contain (GPtrArray *objects,
                  gpointer   object)
{
  return g_ptr_array_find (objects, object, NULL);
}

static void
add_in_order (GListStore *list,
              GPtrArray  *objects,
              GPtrArray  *ordered)
{
  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (list)); i++)
    {
      g_autoptr (GObject) object = g_list_model_get_item (G_LIST_MODEL (list), i);

      if (sw_lists_contain (objects, object))
        g_ptr_array_add (ordered, g_object_ref (object));
      else if (SW_IS_SESSION (object))
        add_in_order (sw_session_get_sections (SW_SESSION (object)), objects, ordered);
      else if (SW_IS_SECTION (object))
        add_in_order (sw_section_get_items (SW_SECTION (object)), objects, ordered);
      else if (SW_IS_ITEM (object))
        add_in_order (sw_item_get_items (SW_ITEM (object)), objects, ordered);
    }
}

/**
 * sw_lists_in_order:
 * @programme: a programme
 * @objects: (element-type GObject): objects in any order
 *
 * Returns: (transfer full) (element-type GObject): those of @objects that are in the programme, in its
 *   order, without what another of them contains
 */
GPtrArray *
sw_lists_in_order (SwProgramme *programme,
                   GPtrArray   *objects)
{
  GPtrArray *ordered = g_ptr_array_new_with_free_func (g_object_unref);

  add_in_order (sw_programme_get_sessions (programme), objects, ordered);
  add_in_order (sw_programme_get_limits (programme), objects, ordered);
  add_in_order (sw_programme_get_measurements (programme), objects, ordered);
  add_in_order (sw_programme_get_answers (programme), objects, ordered);
  add_in_order (sw_programme_get_issues (programme), objects, ordered);
  return ordered;
}

/**
 * sw_lists_of:
 * @programme: a programme
 * @objects: (element-type GObject): objects in it
 *
 * Returns: (transfer container) (element-type GListStore): the lists that hold any of them, each once
 */
GPtrArray *
sw_lists_of (SwProgramme *programme,
             GPtrArray   *objects)
{
  GPtrArray *lists = g_ptr_array_new ();

  for (guint i = 0; i < objects->len; i++)
    {
      GListStore *list = sw_programme_find_list (programme, objects->pdata[i], NULL);

      if (list != NULL && !sw_lists_contain (lists, list))
        g_ptr_array_add (lists, list);
    }

  return lists;
}

/**
 * sw_lists_dup_contents_without:
 * @list: a list
 * @objects: (element-type GObject): what to leave out
 *
 * Returns: (transfer full) (element-type GObject): what else it holds
 */
GPtrArray *
sw_lists_dup_contents_without (GListStore *list,
                               GPtrArray  *objects)
{
  GPtrArray *contents = sw_lists_dup_contents (list);

  for (guint i = contents->len; i > 0; i--)
    {
      if (sw_lists_contain (objects, contents->pdata[i - 1]))
        g_ptr_array_remove_index (contents, i - 1);
    }

  return contents;
}
