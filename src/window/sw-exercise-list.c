/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a search found, for a list widget: ten thousand exercises change hands at a key stroke. */
#include "config.h"

#include "sw-exercise-list.h"

struct _SwExerciseList
{
  GObject parent_instance;

  GPtrArray *exercises;
};

static GType
get_item_type (GListModel *model)
{
  (void) model;
  return SW_TYPE_EXERCISE;
}

static guint
get_n_items (GListModel *model)
{
  return SW_EXERCISE_LIST (model)->exercises->len;
}

static gpointer
get_item (GListModel *model,
          guint       position)
{
  SwExerciseList *self = SW_EXERCISE_LIST (model);

  if (position >= self->exercises->len)
    return NULL;

  return g_object_ref (g_ptr_array_index (self->exercises, position));
}

static void
list_model_init (GListModelInterface *interface)
{
  interface->get_item_type = get_item_type;
  interface->get_n_items = get_n_items;
  interface->get_item = get_item;
}

G_DEFINE_FINAL_TYPE_WITH_CODE (SwExerciseList, sw_exercise_list, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, list_model_init))

static void
sw_exercise_list_finalize (GObject *object)
{
  g_ptr_array_unref (SW_EXERCISE_LIST (object)->exercises);

  G_OBJECT_CLASS (sw_exercise_list_parent_class)->finalize (object);
}

static void
sw_exercise_list_class_init (SwExerciseListClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sw_exercise_list_finalize;
}

static void
sw_exercise_list_init (SwExerciseList *self)
{
  self->exercises = g_ptr_array_new_with_free_func (g_object_unref);
}

/**
 * sw_exercise_list_new:
 *
 * Returns: (transfer full): an empty list
 */
SwExerciseList *
sw_exercise_list_new (void)
{
  return g_object_new (SW_TYPE_EXERCISE_LIST, NULL);
}

/**
 * sw_exercise_list_set:
 * @exercises: (element-type SwExercise) (transfer none): the new result, best first
 *
 * Replaces the whole list; items-changed leaves out what is alike at the head and at the tail.
 */
void
sw_exercise_list_set (SwExerciseList *self,
                      GPtrArray      *exercises)
{
  g_autoptr (GPtrArray) old = NULL;
  guint head = 0;
  guint tail = 0;
  guint shorter;

  g_return_if_fail (SW_IS_EXERCISE_LIST (self));
  g_return_if_fail (exercises != NULL);

  old = g_steal_pointer (&self->exercises);
  self->exercises = g_ptr_array_new_full (exercises->len, g_object_unref);
  for (guint i = 0; i < exercises->len; i++)
    g_ptr_array_add (self->exercises, g_object_ref (g_ptr_array_index (exercises, i)));

  shorter = MIN (old->len, exercises->len);
  while (head < shorter && old->pdata[head] == exercises->pdata[head])
    head++;
  while (tail < shorter - head
         && old->pdata[old->len - 1 - tail] == exercises->pdata[exercises->len - 1 - tail])
    tail++;

  if (old->len - head - tail > 0 || exercises->len - head - tail > 0)
    g_list_model_items_changed (G_LIST_MODEL (self), head, old->len - head - tail,
                                exercises->len - head - tail);
}

/**
 * sw_exercise_list_find:
 * @exercise: (nullable): what to look for
 * @position: (out): its place, set only when found
 *
 * Returns: whether the list holds the exercise
 */
gboolean
sw_exercise_list_find (SwExerciseList *self,
                       SwExercise     *exercise,
                       guint          *position)
{
  g_return_val_if_fail (SW_IS_EXERCISE_LIST (self), FALSE);

  return g_ptr_array_find (self->exercises, exercise, position);
}
