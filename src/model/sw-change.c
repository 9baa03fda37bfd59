/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One change of a document, done and taken back as often as one likes. */
#include "config.h"

#include <math.h>

#include "sw-change.h"

#include "sw-dose.h"
#include "sw-logo.h"

struct _SwChange
{
  GObject *object;       /* whose property is set, or the list */
  GParamSpec *property;  /* NULL for a splice */
  GValue before;
  GValue after;
  guint position;
  GPtrArray *removed;
  GPtrArray *added;
};

/* Values of one property. Boxed ones are compared by what is in them; NaN, which says "not taken", is equal
 * to itself and to no number, while g_param_values_cmp() finds it equal to all of them. */
static gboolean
values_equal (GParamSpec   *property,
              const GValue *a,
              const GValue *b)
{
  if (G_VALUE_HOLDS (a, SW_TYPE_DOSE))
    {
      const SwDose *first = g_value_get_boxed (a);
      const SwDose *second = g_value_get_boxed (b);

      return first == second || (first != NULL && second != NULL && sw_dose_equal (first, second));
    }
  if (G_VALUE_HOLDS (a, SW_TYPE_LOGO))
    return sw_logo_equal (g_value_get_boxed (a), g_value_get_boxed (b));
  if (G_VALUE_HOLDS (a, G_TYPE_STRV))
    {
      const char * const *first = g_value_get_boxed (a);
      const char * const *second = g_value_get_boxed (b);

      return first == second || (first != NULL && second != NULL && g_strv_equal (first, second));
    }

  if (G_VALUE_HOLDS_DOUBLE (a) && (isnan (g_value_get_double (a)) || isnan (g_value_get_double (b))))
    return isnan (g_value_get_double (a)) && isnan (g_value_get_double (b));

  return g_param_values_cmp (property, a, b) == 0;
}

/**
 * sw_change_new_value:
 * @object: (type GObject): whose property
 * @property: the property
 * @value: the value it gets, brought into the property's range
 *
 * Returns: (transfer full): the change, not yet made
 */
SwChange *
sw_change_new_value (gpointer      object,
                     GParamSpec   *property,
                     const GValue *value)
{
  SwChange *change = g_new0 (SwChange, 1);

  change->object = g_object_ref (object);
  change->property = property;
  g_value_init (&change->before, property->value_type);
  g_value_init (&change->after, property->value_type);
  g_object_get_property (object, property->name, &change->before);
  g_value_copy (value, &change->after);

  /* A value out of the property's range would be refused there and then undone into something else. */
  if ((property->flags & G_PARAM_LAX_VALIDATION) == 0)
    g_param_value_validate (property, &change->after);
  return change;
}

/**
 * sw_change_new_splice:
 * @list: the list
 * @position: where the run begins
 * @n_removals: how many objects are taken out there
 * @additions: (array length=n_additions) (nullable): objects to put there instead
 * @n_additions: how many
 *
 * Returns: (transfer full): the change, not yet made
 */
SwChange *
sw_change_new_splice (GListStore *list,
                      guint       position,
                      guint       n_removals,
                      gpointer   *additions,
                      guint       n_additions)
{
  SwChange *change = g_new0 (SwChange, 1);

  change->object = G_OBJECT (g_object_ref (list));
  change->position = position;
  change->removed = g_ptr_array_new_with_free_func (g_object_unref);
  change->added = g_ptr_array_new_with_free_func (g_object_unref);
  for (guint i = 0; i < n_removals; i++)
    g_ptr_array_add (change->removed, g_list_model_get_item (G_LIST_MODEL (list), position + i));
  for (guint i = 0; i < n_additions; i++)
    g_ptr_array_add (change->added, g_object_ref (additions[i]));
  return change;
}

/**
 * sw_change_free:
 * @change: a change, made or not
 */
void
sw_change_free (SwChange *change)
{
  g_object_unref (change->object);
  if (change->property != NULL)
    {
      g_value_unset (&change->before);
      g_value_unset (&change->after);
    }
  g_clear_pointer (&change->removed, g_ptr_array_unref);
  g_clear_pointer (&change->added, g_ptr_array_unref);
  g_free (change);
}

/**
 * sw_change_apply:
 * @change: a change
 * @forward: whether to make it, or to take it back
 */
void
sw_change_apply (SwChange *change,
                 gboolean  forward)
{
  GPtrArray *out, *in;

  if (change->property != NULL)
    {
      g_object_set_property (change->object, change->property->name, forward ? &change->after : &change->before);
      return;
    }

  out = forward ? change->removed : change->added;
  in = forward ? change->added : change->removed;
  g_list_store_splice (G_LIST_STORE (change->object), change->position, out->len, in->pdata, in->len);
}

/**
 * sw_change_is_of_value:
 *
 * Returns: whether a property is set; otherwise a list is changed
 */
gboolean
sw_change_is_of_value (SwChange *change)
{
  return change->property != NULL;
}

/**
 * sw_change_join:
 * @change: a property that was set
 * @next: a property that was set next
 *
 * Returns: whether both are the same property of the same object; @change then does what both did
 */
gboolean
sw_change_join (SwChange *change,
                SwChange *next)
{
  if (change->object != next->object || change->property != next->property)
    return FALSE;

  g_value_copy (&next->after, &change->after);
  return TRUE;
}

/**
 * sw_change_is_none:
 * @change: a property that is set
 *
 * Returns: whether it gets the value that it has
 */
gboolean
sw_change_is_none (SwChange *change)
{
  return values_equal (change->property, &change->before, &change->after);
}
