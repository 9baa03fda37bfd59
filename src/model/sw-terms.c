/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * From the words in XML to the values of the vocabularies and back. */
#include "config.h"

#include "sw-terms.h"

/**
 * sw_term_from_nick:
 * @type: the GType of one of the enumerations
 * @nick: the word, as in the documents
 * @value: (out): the value; untouched when there is no such word
 *
 * Returns: whether @nick is a word of @type
 */
gboolean
sw_term_from_nick (GType       type,
                   const char *nick,
                   int        *value)
{
  g_autoptr (GTypeClass) class = NULL;
  const GEnumValue *found;

  g_return_val_if_fail (G_TYPE_IS_ENUM (type), FALSE);
  g_return_val_if_fail (nick != NULL, FALSE);

  class = g_type_class_ref (type);
  found = g_enum_get_value_by_nick ((GEnumClass *) class, nick);
  if (found == NULL)
    return FALSE;

  *value = found->value;
  return TRUE;
}

/**
 * sw_term_to_nick:
 * @type: the GType of one of the enumerations
 * @value: one of its values
 *
 * Returns: (transfer none): the word, static; NULL when @value is none of @type
 */
const char *
sw_term_to_nick (GType type,
                 int   value)
{
  g_autoptr (GTypeClass) class = NULL;
  const GEnumValue *found;

  g_return_val_if_fail (G_TYPE_IS_ENUM (type), NULL);

  class = g_type_class_ref (type);
  found = g_enum_get_value ((GEnumClass *) class, value);
  return found != NULL ? found->value_nick : NULL;
}

/**
 * sw_term_get_n_values:
 * @type: the GType of one of the enumerations
 *
 * Returns: how many values it has; they count from 0 without gaps
 */
int
sw_term_get_n_values (GType type)
{
  g_autoptr (GTypeClass) class = NULL;

  g_return_val_if_fail (G_TYPE_IS_ENUM (type), 0);

  class = g_type_class_ref (type);
  return (int) ((GEnumClass *) class)->n_values;
}

/**
 * sw_set_count:
 * @set: a set
 *
 * Returns: how many values are in it
 */
int
sw_set_count (SwSet set)
{
  int n = 0;

  for (; set != 0; set &= set - 1)
    n++;

  return n;
}

/**
 * sw_set_from_nicks:
 * @type: the GType of one of the enumerations
 * @nicks: words with white space between them; may be empty
 * @set: (out): the set; untouched on failure
 * @unknown: (out) (optional) (transfer full): on failure the first word that is none of @type
 *
 * Returns: whether all words were known
 */
gboolean
sw_set_from_nicks (GType        type,
                   const char  *nicks,
                   SwSet       *set,
                   char       **unknown)
{
  g_auto (GStrv) words = NULL;
  SwSet found = 0;

  g_return_val_if_fail (nicks != NULL, FALSE);

  words = g_strsplit_set (nicks, " \t\r\n", -1);
  for (guint i = 0; words[i] != NULL; i++)
    {
      int value;

      if (*words[i] == '\0')
        continue;
      if (!sw_term_from_nick (type, words[i], &value))
        {
          if (unknown != NULL)
            *unknown = g_strdup (words[i]);
          return FALSE;
        }
      found |= SW_SET (value);
    }

  *set = found;
  return TRUE;
}

/**
 * sw_set_to_nicks:
 * @type: the GType of one of the enumerations
 * @set: a set of its values
 *
 * Returns: (transfer full): the words in the order of the enumeration, a space between; "" when empty
 */
char *
sw_set_to_nicks (GType type,
                 SwSet set)
{
  g_autoptr (GTypeClass) class = NULL;
  GEnumClass *enum_class;
  GString *nicks;

  g_return_val_if_fail (G_TYPE_IS_ENUM (type), NULL);

  class = g_type_class_ref (type);
  enum_class = (GEnumClass *) class;
  nicks = g_string_new (NULL);
  for (guint i = 0; i < enum_class->n_values; i++)
    {
      if ((set & SW_SET (enum_class->values[i].value)) == 0)
        continue;
      if (nicks->len > 0)
        g_string_append_c (nicks, ' ');
      g_string_append (nicks, enum_class->values[i].value_nick);
    }

  return g_string_free (nicks, FALSE);
}
