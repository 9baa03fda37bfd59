/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * sw_history_set() for values that callers have as text, numbers or structures. */
#include "config.h"

#include "sw-history.h"

/**
 * sw_history_set_string:
 * @self: a history
 * @label: what undo will name
 * @object: (type GObject): whose property
 * @property: a string property
 * @value: (nullable): the new text; NULL counts as ""
 *
 * See sw_history_set().
 */
void
sw_history_set_string (SwHistory  *self,
                       const char *label,
                       gpointer    object,
                       const char *property,
                       const char *value)
{
  g_auto (GValue) boxed = G_VALUE_INIT;

  g_value_init (&boxed, G_TYPE_STRING);
  g_value_set_static_string (&boxed, value != NULL ? value : "");
  sw_history_set (self, label, object, property, &boxed);
}

/**
 * sw_history_set_boxed:
 * @self: a history
 * @label: what undo will name
 * @object: (type GObject): whose property
 * @property: a boxed property, such as "dose"
 * @value: the new value; copied
 *
 * See sw_history_set().
 */
void
sw_history_set_boxed (SwHistory     *self,
                      const char    *label,
                      gpointer       object,
                      const char    *property,
                      gconstpointer  value)
{
  g_auto (GValue) boxed = G_VALUE_INIT;
  GParamSpec *pspec;

  g_return_if_fail (G_IS_OBJECT (object));
  pspec = g_object_class_find_property (G_OBJECT_GET_CLASS (object), property);
  g_return_if_fail (pspec != NULL && G_TYPE_IS_BOXED (pspec->value_type));

  g_value_init (&boxed, pspec->value_type);
  g_value_set_static_boxed (&boxed, value);
  sw_history_set (self, label, object, property, &boxed);
}

/**
 * sw_history_set_int:
 * @self: a history
 * @label: what undo will name
 * @object: (type GObject): whose property
 * @property: an int, enum, boolean, double, int64 or uint64 property
 * @value: the new value; a set such as the days goes in as the same bits
 *
 * See sw_history_set().
 */
void
sw_history_set_int (SwHistory  *self,
                    const char *label,
                    gpointer    object,
                    const char *property,
                    gint64      value)
{
  g_auto (GValue) number = G_VALUE_INIT;
  GParamSpec *pspec;

  g_return_if_fail (G_IS_OBJECT (object));
  pspec = g_object_class_find_property (G_OBJECT_GET_CLASS (object), property);
  g_return_if_fail (pspec != NULL);

  g_value_init (&number, pspec->value_type);
  switch (G_TYPE_FUNDAMENTAL (pspec->value_type))
    {
    case G_TYPE_INT:
      g_value_set_int (&number, (int) CLAMP (value, G_MININT, G_MAXINT));
      break;
    case G_TYPE_ENUM:
      g_value_set_enum (&number, (int) value);
      break;
    case G_TYPE_BOOLEAN:
      g_value_set_boolean (&number, value != 0);
      break;
    case G_TYPE_DOUBLE:
      g_value_set_double (&number, (double) value);
      break;
    case G_TYPE_INT64:
      g_value_set_int64 (&number, value);
      break;
    case G_TYPE_UINT64:
      g_value_set_uint64 (&number, (guint64) value);
      break;
    default:
      g_return_if_reached ();
    }
  sw_history_set (self, label, object, property, &number);
}
