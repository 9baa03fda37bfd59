/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All exercises to choose from, as a list sorted by id. */
#include "config.h"

#include <string.h>

#include "sw-catalogue.h"

struct _SwCatalogue
{
  GObject parent_instance;

  GPtrArray *exercises;  /* of SwExercise, sorted by id, each id once */
};

static GType
sw_catalogue_get_item_type (GListModel *model G_GNUC_UNUSED)
{
  return SW_TYPE_EXERCISE;
}

static guint
sw_catalogue_get_n_items (GListModel *model)
{
  return SW_CATALOGUE (model)->exercises->len;
}

static gpointer
sw_catalogue_get_item (GListModel *model,
                       guint       position)
{
  SwCatalogue *self = SW_CATALOGUE (model);

  if (position >= self->exercises->len)
    return NULL;

  return g_object_ref (g_ptr_array_index (self->exercises, position));
}

static void
list_model_init (GListModelInterface *iface)
{
  iface->get_item_type = sw_catalogue_get_item_type;
  iface->get_n_items = sw_catalogue_get_n_items;
  iface->get_item = sw_catalogue_get_item;
}

G_DEFINE_FINAL_TYPE_WITH_CODE (SwCatalogue, sw_catalogue, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, list_model_init))

static int
compare_ids (gconstpointer a,
             gconstpointer b)
{
  return strcmp (sw_exercise_get_id (*(SwExercise * const *) a),
                 sw_exercise_get_id (*(SwExercise * const *) b));
}

static void
sw_catalogue_finalize (GObject *object)
{
  g_ptr_array_unref (SW_CATALOGUE (object)->exercises);

  G_OBJECT_CLASS (sw_catalogue_parent_class)->finalize (object);
}

static void
sw_catalogue_class_init (SwCatalogueClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = sw_catalogue_finalize;
}

static void
sw_catalogue_init (SwCatalogue *self)
{
  self->exercises = g_ptr_array_new_with_free_func (g_object_unref);
}

/**
 * sw_catalogue_new:
 *
 * Returns: (transfer full): a catalogue without exercises
 */
SwCatalogue *
sw_catalogue_new (void)
{
  return g_object_new (SW_TYPE_CATALOGUE, NULL);
}

/**
 * sw_catalogue_add:
 * @self: a catalogue
 * @exercises: (element-type SwExercise) (transfer none): exercises in any order
 *
 * Adds exercises; one whose id is there already takes the place of the old one, and of several with one
 * id the last counts: so the clinic's exercises are laid over those shipped.
 */
void
sw_catalogue_add (SwCatalogue *self,
                  GPtrArray   *exercises)
{
  g_autoptr (GPtrArray) all = NULL;
  guint n_before;

  g_return_if_fail (SW_IS_CATALOGUE (self));
  g_return_if_fail (exercises != NULL);

  if (exercises->len == 0)
    return;

  n_before = self->exercises->len;
  all = g_steal_pointer (&self->exercises);
  g_ptr_array_set_free_func (all, NULL);
  self->exercises = g_ptr_array_new_with_free_func (g_object_unref);
  for (guint i = 0; i < exercises->len; i++)
    g_ptr_array_add (all, g_object_ref (g_ptr_array_index (exercises, i)));

  /* g_ptr_array_sort() keeps the order of equal elements. */
  g_ptr_array_sort (all, compare_ids);
  for (guint i = 0; i < all->len; i++)
    {
      if (i + 1 < all->len && compare_ids (&all->pdata[i], &all->pdata[i + 1]) == 0)
        g_object_unref (all->pdata[i]);
      else
        g_ptr_array_add (self->exercises, all->pdata[i]);
    }

  g_list_model_items_changed (G_LIST_MODEL (self), 0, n_before, self->exercises->len);
}

/**
 * sw_catalogue_lookup:
 * @self: a catalogue
 * @id: an exercise's id
 *
 * Returns: (transfer none) (nullable): the exercise
 */
SwExercise *
sw_catalogue_lookup (SwCatalogue *self,
                     const char  *id)
{
  guint low = 0, high;

  g_return_val_if_fail (SW_IS_CATALOGUE (self), NULL);
  g_return_val_if_fail (id != NULL, NULL);

  high = self->exercises->len;
  while (low < high)
    {
      guint middle = low + (high - low) / 2;
      SwExercise *exercise = g_ptr_array_index (self->exercises, middle);
      int order = strcmp (id, sw_exercise_get_id (exercise));

      if (order == 0)
        return exercise;
      if (order < 0)
        high = middle;
      else
        low = middle + 1;
    }

  return NULL;
}
