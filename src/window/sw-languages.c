/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * In which languages a handout can be given, and what they call themselves. */
#include "config.h"

#include <string.h>

#include <glib/gi18n.h>

#include "sw-languages.h"
#include "sw-phrases.h"

/* What speakers call their language; by BCP 47 tag. */
static const char * const names[][2] = {
  { "ar", "العربية" },
  { "de", "Deutsch" },
  { "en", "English" },
  { "es", "Español" },
  { "fr", "Français" },
  { "he", "עברית" },
  { "hi", "हिन्दी" },
  { "it", "Italiano" },
  { "nl", "Nederlands" },
  { "pl", "Polski" },
  { "pt", "Português" },
  { "ru", "Русский" },
  { "tr", "Türkçe" },
  { "uk", "Українська" },
  { "zh", "简体中文" },
};

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
    if (g_ascii_strcasecmp (names[i][0], tag) == 0)
      return names[i][1];

  return tag;
}

static int
compare (gconstpointer a,
         gconstpointer b)
{
  return strcmp (*(const char * const *) a, *(const char * const *) b);
}

/* Adds @tag unless it is among @tags. */
static void
add_once (GPtrArray  *tags,
          const char *tag)
{
  if (!g_ptr_array_find_with_equal_func (tags, tag, g_str_equal, NULL))
    g_ptr_array_add (tags, g_strdup (tag));
}

/**
 * sw_languages_collect:
 * @catalogue: (nullable): the exercises that may go into a handout
 * @also: a language to be among them
 *
 * Returns: (transfer full): the BCP 47 tags of all languages that the handout's own words or some exercise are written
 *   in, sorted, each once
 */
GStrv
sw_languages_collect (SwCatalogue *catalogue,
                      const char  *also)
{
  g_auto (GStrv) handout = sw_phrases_list_languages ();
  g_autoptr (GPtrArray) tags = g_ptr_array_new ();
  guint n = catalogue != NULL ? g_list_model_get_n_items (G_LIST_MODEL (catalogue)) : 0;

  g_ptr_array_add (tags, g_strdup (also));
  for (guint i = 0; handout[i] != NULL; i++)
    add_once (tags, handout[i]);
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (SwExercise) exercise = g_list_model_get_item (G_LIST_MODEL (catalogue), i);

      for (guint j = 0; j < sw_exercise_get_n_texts (exercise); j++)
        add_once (tags, sw_exercise_get_nth_text (exercise, j)->language);
    }

  g_ptr_array_sort (tags, compare);
  g_ptr_array_add (tags, NULL);
  return (GStrv) g_ptr_array_steal (tags, NULL);
}

/**
 * sw_languages_dup_label:
 * @catalogue: (nullable): the exercises that may go into a handout
 * @tag: a BCP 47 tag
 *
 * Returns: (transfer full): what to choose the language by; it says so when no exercise is written in it
 */
char *
sw_languages_dup_label (SwCatalogue *catalogue,
                        const char  *tag)
{
  guint n = catalogue != NULL ? g_list_model_get_n_items (G_LIST_MODEL (catalogue)) : 0;
  gsize length = strcspn (tag, "-");

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (SwExercise) exercise = g_list_model_get_item (G_LIST_MODEL (catalogue), i);
      const char *found = sw_exercise_get_text (exercise, tag)->language;

      if (strcspn (found, "-") == length && g_ascii_strncasecmp (found, tag, length) == 0)
        return g_strdup (sw_languages_get_name (tag));
    }

  /* Translators: a language, and that exercises are not told in it */
  return n > 0 ? g_strdup_printf (_("%s (exercises stay English)"), sw_languages_get_name (tag))
               : g_strdup (sw_languages_get_name (tag));
}
