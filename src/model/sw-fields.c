/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The setters of all documents: strings are never NULL, lists never NULL, and an equal value is no change,
 * so that a property is notified only when it became another. */
#include "config.h"

#include "sw-fields.h"

/**
 * sw_field_set_string:
 * @field: an owned string, or NULL before it is first set
 * @value: (nullable): the new text; NULL counts as ""
 *
 * Returns: whether @field became another text
 */
gboolean
sw_field_set_string (char       **field,
                     const char  *value)
{
  char *copy;

  if (value == NULL)
    value = "";
  if (g_strcmp0 (*field, value) == 0)
    return FALSE;

  /* The new text may be a part of the old one. */
  copy = g_strdup (value);
  g_free (*field);
  *field = copy;
  return TRUE;
}

/**
 * sw_field_set_strv:
 * @field: an owned list of strings, or NULL before it is first set
 * @value: (nullable) (array zero-terminated=1): the new list; NULL counts as empty
 *
 * Returns: whether @field became another list
 */
gboolean
sw_field_set_strv (char               ***field,
                   const char * const   *value)
{
  static const char * const none[] = { NULL };
  char **copy;

  if (value == NULL)
    value = none;
  if (*field != NULL && g_strv_equal ((const char * const *) *field, value))
    return FALSE;

  copy = g_strdupv ((char **) value);
  g_strfreev (*field);
  *field = copy;
  return TRUE;
}

/**
 * sw_field_set_int:
 * @field: a whole number or a value of an enumeration
 * @value: the new value
 *
 * Returns: whether @field became another value
 */
gboolean
sw_field_set_int (int *field,
                  int  value)
{
  if (*field == value)
    return FALSE;

  *field = value;
  return TRUE;
}
