/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * In which languages a handout can be given, and what they call themselves. */
#include "config.h"

#include <string.h>

#include "sw-languages.h"

/* What speakers call their language; by BCP 47 tag. */
static const char * const names[][2] = {
  { "ar", "العربية" },
  { "de", "Deutsch" },
  { "en", "English" },
  { "es", "Español" },
  { "fr", "Français" },
  { "it", "Italiano" },
  { "nl", "Nederlands" },
  { "pl", "Polski" },
  { "pt", "Português" },
  { "ru", "Русский" },
  { "tr", "Türkçe" },
  { "uk", "Українська" },
};

static int
compare (gconstpointer a,
         gconstpointer b)
{
  return strcmp (*(const char * const *) a, *(const char * const *) b);
}

/**
 * sw_languages_collect:
 * @catalogue: (nullable): the exercises that may go into a handout
 * @also: a language to be among them
 *
 * Returns: (transfer full): the BCP 47 tags of all languages that some exercise is written in, sorted, each
 *   once
 */
GStrv
sw_languages_collect (SwCatalogue *catalogue,
                      const char  *also)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (GPtrArray) tags = g_ptr_array_new ();
  guint n = catalogue != NULL ? g_list_model_get_n_items (G_LIST_MODEL (catalogue)) : 0;

  g_hash_table_add (seen, (gpointer) also);
  g_ptr_array_add (tags, g_strdup (also));
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (SwExercise) exercise = g_list_model_get_item (G_LIST_MODEL (catalogue), i);

      for (guint j = 0; j < sw_exercise_get_n_texts (exercise); j++)
        {
          const char *tag = sw_exercise_get_nth_text (exercise, j)->language;

          if (g_hash_table_add (seen, (gpointer) tag))
            g_ptr_array_add (tags, g_strdup (tag));
        }
    }

  g_ptr_array_sort (tags, compare);
  g_ptr_array_add (tags, NULL);
  return (GStrv) g_ptr_array_steal (tags, NULL);
}

/**
 * sw_languages_get_name:
 * @tag: a BCP 47 tag
 *
 * Returns: (transfer none): what the language calls itself, or @tag itself for one not known here
 */
const char *
sw_languages_get_name (const char *tag)
{
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      if (g_ascii_strcasecmp (names[i][0], tag) == 0)
        return names[i][1];
    }

  return tag;
}
