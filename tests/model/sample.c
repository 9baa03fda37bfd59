/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Documents made up for the tests of several layers. */
#include "config.h"

#include "sample.h"

/* Facts of an exercise that asks for nothing special; strings are not owned. */
void
sample_facts_init (SwExerciseFacts *facts,
                   const char      *id)
{
  *facts = (SwExerciseFacts) {
    .id = (char *) id,
    .revision = 1,
    .region = SW_REGION_ANKLE,
    .position = SW_POSITION_STANDING,
    .section = SW_SECTION_MAIN,
    .pace_s = 4.0,
  };
  sw_dose_init (&facts->dose);
}

SwExercise *
sample_exercise_from (const SwExerciseFacts *facts,
                      const char            *name)
{
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_exercise_text_free);
  SwExerciseText *text = sw_exercise_text_new ("en");

  g_free (text->name);
  text->name = g_strdup (name);
  g_ptr_array_add (texts, text);
  return sw_exercise_new (facts, texts, NULL, NULL);
}

SwExercise *
sample_exercise (const char *id,
                 const char *name,
                 const char *dose_line)
{
  SwExerciseFacts facts;

  sample_facts_init (&facts, id);
  g_assert_true (sw_dose_from_line (dose_line, NULL, &facts.dose, NULL));
  return sample_exercise_from (&facts, name);
}

/* An item with an exercise of the same id. */
SwItem *
sample_item (const char *id,
             const char *dose_line)
{
  g_autoptr (SwExercise) exercise = sample_exercise (id, id, dose_line);

  return sw_item_new_for_exercise (exercise, id);
}

SwSection *
sample_section (SwSession     *session,
                SwSectionKind  kind)
{
  g_autoptr (SwSection) section = sw_section_new (kind, NULL);

  g_list_store_append (sw_session_get_sections (session), section);
  return section;
}

/* Takes over @item. */
void
sample_append (SwSection *section,
               SwItem    *item)
{
  g_list_store_append (sw_section_get_items (section), item);
  g_object_unref (item);
}

static void
dump_list (GString    *dump,
           GListModel *list,
           int         depth)
{
  for (guint i = 0; i < g_list_model_get_n_items (list); i++)
    {
      g_autoptr (GObject) object = g_list_model_get_item (list, i);

      g_string_append_printf (dump, "%*s", depth * 2, "");
      if (SW_IS_SESSION (object))
        {
          g_string_append_printf (dump, "session “%s” %" G_GUINT64_FORMAT "\n",
                                  sw_session_get_title (SW_SESSION (object)),
                                  sw_session_get_days (SW_SESSION (object)));
          dump_list (dump, G_LIST_MODEL (sw_session_get_sections (SW_SESSION (object))), depth + 1);
        }
      else if (SW_IS_SECTION (object))
        {
          g_string_append_printf (dump, "section %d “%s”\n", (int) sw_section_get_kind (SW_SECTION (object)),
                                  sw_section_get_title (SW_SECTION (object)));
          dump_list (dump, G_LIST_MODEL (sw_section_get_items (SW_SECTION (object))), depth + 1);
        }
      else if (SW_IS_ITEM (object))
        {
          SwItem *item = SW_ITEM (object);
          g_autofree char *line = sw_dose_to_line (sw_item_get_dose (item));
          SwExercise *exercise = sw_item_get_exercise (item);

          g_string_append_printf (dump, "item %p %s %d %s | %s | %s | %s | rest %d rounds %d\n",
                                  (void *) item, sw_item_get_id (item), (int) sw_item_get_kind (item),
                                  exercise != NULL ? sw_exercise_get_id (exercise) : "-", line,
                                  sw_item_get_note (item), sw_item_get_title (item),
                                  sw_item_get_rest_s (item), sw_item_get_rounds (item));
          dump_list (dump, G_LIST_MODEL (sw_item_get_items (item)), depth + 1);
        }
    }
}

/* The sessions of a programme as text, addresses of items included: equal texts, equal states. */
char *
sample_dump (SwProgramme *programme)
{
  GString *dump = g_string_new (NULL);

  g_string_append_printf (dump, "“%s” client “%s”\n", sw_programme_get_title (programme),
                          sw_client_get_name (sw_programme_get_client (programme)));
  dump_list (dump, G_LIST_MODEL (sw_programme_get_sessions (programme)), 0);
  return g_string_free (dump, FALSE);
}
