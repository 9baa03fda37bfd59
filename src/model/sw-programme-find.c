/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Ways to find things in a programme. */
#include "config.h"

#include <string.h>

#include "sw-programme.h"

/**
 * sw_programme_dup_items:
 * @self: a programme
 *
 * Returns: (transfer full) (element-type SwItem): all items of all sessions in the order of the
 *   document; a circuit's members follow it
 */
GPtrArray *
sw_programme_dup_items (SwProgramme *self)
{
  GPtrArray *all;

  g_return_val_if_fail (SW_IS_PROGRAMME (self), NULL);

  all = g_ptr_array_new_with_free_func (g_object_unref);
  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (sw_programme_get_sessions (self))); i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (G_LIST_MODEL (sw_programme_get_sessions (self)), i);

      g_ptr_array_extend_and_steal (all, sw_session_dup_items (session));
    }

  return all;
}

static int
compare_exercises (gconstpointer a,
                   gconstpointer b)
{
  SwExercise *first = *(SwExercise * const *) a;
  SwExercise *second = *(SwExercise * const *) b;
  int order = strcmp (sw_exercise_get_id (first), sw_exercise_get_id (second));

  if (order != 0)
    return order;

  return sw_exercise_get_facts (second)->revision - sw_exercise_get_facts (first)->revision;
}

/**
 * sw_programme_dup_exercises:
 * @self: a programme
 *
 * Returns: (transfer full) (element-type SwExercise): the exercises its items use, sorted by id, each id
 *   once; where two items hold different revisions, the newer
 */
GPtrArray *
sw_programme_dup_exercises (SwProgramme *self)
{
  g_autoptr (GPtrArray) items = NULL;
  g_autoptr (GPtrArray) all = NULL;
  GPtrArray *exercises;

  g_return_val_if_fail (SW_IS_PROGRAMME (self), NULL);

  items = sw_programme_dup_items (self);
  all = g_ptr_array_new ();
  for (guint i = 0; i < items->len; i++)
    {
      SwExercise *exercise = sw_item_get_exercise (g_ptr_array_index (items, i));

      if (exercise != NULL)
        g_ptr_array_add (all, exercise);
    }
  g_ptr_array_sort (all, compare_exercises);

  exercises = g_ptr_array_new_with_free_func (g_object_unref);
  for (guint i = 0; i < all->len; i++)
    {
      SwExercise *exercise = g_ptr_array_index (all, i);

      if (i == 0 || !g_str_equal (sw_exercise_get_id (all->pdata[i - 1]), sw_exercise_get_id (exercise)))
        g_ptr_array_add (exercises, g_object_ref (exercise));
    }

  return exercises;
}

/**
 * sw_programme_own_snapshot:
 * @self: a programme
 * @exercise: an exercise, for instance of the catalogue
 *
 * What a new item should hold so that one id means one text in a document.
 *
 * Returns: (transfer none): the snapshot the programme has of the exercise already, else @exercise itself
 */
SwExercise *
sw_programme_own_snapshot (SwProgramme *self,
                           SwExercise  *exercise)
{
  g_autoptr (GPtrArray) exercises = NULL;

  g_return_val_if_fail (SW_IS_PROGRAMME (self), exercise);
  g_return_val_if_fail (SW_IS_EXERCISE (exercise), NULL);

  exercises = sw_programme_dup_exercises (self);
  for (guint i = 0; i < exercises->len; i++)
    {
      if (g_str_equal (sw_exercise_get_id (exercises->pdata[i]), sw_exercise_get_id (exercise)))
        return exercises->pdata[i];
    }

  return exercise;
}

/* Looks in @list, in the lists of its objects and so on. */
static GListStore *
find_below (GListStore *list,
            gpointer    object,
            guint      *position)
{
  if (g_type_is_a (G_OBJECT_TYPE (object), g_list_model_get_item_type (G_LIST_MODEL (list)))
      && g_list_store_find (list, object, position))
    return list;

  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (list)); i++)
    {
      g_autoptr (GObject) parent = g_list_model_get_item (G_LIST_MODEL (list), i);
      GListStore *inner = NULL;
      GListStore *found;

      if (SW_IS_SESSION (parent))
        inner = sw_session_get_sections (SW_SESSION (parent));
      else if (SW_IS_SECTION (parent))
        inner = sw_section_get_items (SW_SECTION (parent));
      else if (SW_IS_ITEM (parent))
        inner = sw_item_get_items (SW_ITEM (parent));

      found = inner != NULL ? find_below (inner, object, position) : NULL;
      if (found != NULL)
        return found;
    }

  return NULL;
}

/**
 * sw_programme_find_list:
 * @self: a programme
 * @object: a session, section, item, limit, measurement, diary entry, answer or issue
 * @position: (out) (optional): where in the list it stands
 *
 * Returns: (transfer none) (nullable): the list that holds @object, NULL when it is not in the programme
 */
GListStore *
sw_programme_find_list (SwProgramme *self,
                        gpointer     object,
                        guint       *position)
{
  GListStore *lists[6];
  guint found_position;

  g_return_val_if_fail (SW_IS_PROGRAMME (self), NULL);
  g_return_val_if_fail (G_IS_OBJECT (object), NULL);

  lists[0] = sw_programme_get_sessions (self);
  lists[1] = sw_programme_get_measurements (self);
  lists[2] = sw_programme_get_answers (self);
  lists[3] = sw_programme_get_issues (self);
  lists[4] = sw_programme_get_diary (self);
  lists[5] = sw_programme_get_limits (self);
  for (guint i = 0; i < G_N_ELEMENTS (lists); i++)
    {
      GListStore *found = find_below (lists[i], object, &found_position);

      if (found != NULL)
        {
          if (position != NULL)
            *position = found_position;
          return found;
        }
    }

  return NULL;
}
