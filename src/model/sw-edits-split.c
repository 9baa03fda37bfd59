/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One session made two. */
#include "config.h"

#include "sw-edits.h"

static gboolean
is_for_both (SwSection *section)
{
  return sw_section_get_kind (section) == SW_SECTION_WARM_UP || sw_section_get_kind (section) == SW_SECTION_COOL_DOWN;
}

/* A section for the second session: warm-up and cool-down again, without what is done once only; of the others, what
 * moves. */
static SwSection *
make_second (SwSection *section,
             GPtrArray *moving)
{
  GListModel *items = G_LIST_MODEL (sw_section_get_items (section));
  SwSection *second = sw_section_new (sw_section_get_kind (section), sw_section_get_title (section));

  for (guint i = 0; i < g_list_model_get_n_items (items); i++)
    {
      g_autoptr (SwItem) item = g_list_model_get_item (items, i);
      g_autoptr (SwItem) copy = NULL;

      if (g_ptr_array_find (moving, item, NULL))
        g_list_store_append (sw_section_get_items (second), item);
      else if (is_for_both (section) && sw_item_get_kind (item) != SW_ITEM_SELF_CHECK)
        {
          copy = sw_item_copy (item, TRUE);
          g_list_store_append (sw_section_get_items (second), copy);
        }
    }

  return second;
}

/**
 * sw_edit_split_session:
 * @history: the programme's history
 * @programme: the programme
 * @session: a session of it
 * @moving: (element-type SwItem): items of its sections that move to the second session
 * @label: what undo will name
 *
 * Makes two sessions of one, on the same days: the second comes behind it, with what moves, and with copies of the warm-up
 * and the cool-down. Self-checks stay in the first.
 *
 * Returns: (transfer none): the second session
 */
SwSession *
sw_edit_split_session (SwHistory   *history,
                       SwProgramme *programme,
                       SwSession   *session,
                       GPtrArray   *moving,
                       const char  *label)
{
  GListModel *sections;
  GListStore *sessions;
  g_autoptr (SwSession) second = NULL;
  g_autofree char *first_title = NULL;
  g_autofree char *second_title = NULL;
  gpointer addition;
  guint position = 0;

  g_return_val_if_fail (SW_IS_HISTORY (history), NULL);
  g_return_val_if_fail (SW_IS_PROGRAMME (programme), NULL);
  g_return_val_if_fail (SW_IS_SESSION (session), NULL);

  /* A number reads in every language. */
  first_title = g_strdup_printf ("%s 1", sw_session_get_title (session));
  second_title = g_strdup_printf ("%s 2", sw_session_get_title (session));
  second = sw_session_new (second_title, sw_session_get_days (session));
  sections = G_LIST_MODEL (sw_session_get_sections (session));
  for (guint i = 0; i < g_list_model_get_n_items (sections); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);
      g_autoptr (SwSection) part = make_second (section, moving);

      if (g_list_model_get_n_items (G_LIST_MODEL (sw_section_get_items (part))) > 0)
        g_list_store_append (sw_session_get_sections (second), part);
    }

  sw_history_begin (history, label);
  sw_edit_remove (history, programme, moving, label);
  if (*sw_session_get_title (session) != '\0')
    sw_history_set_string (history, label, session, "title", first_title);
  else
    g_object_set (second, "title", "", NULL);
  sessions = sw_programme_get_sessions (programme);
  addition = second;
  if (!g_list_store_find (sessions, session, &position))
    position = g_list_model_get_n_items (G_LIST_MODEL (sessions));
  sw_history_splice (history, label, sessions, position + 1, 0, &addition, 1);
  sw_history_end (history);
  return addition;
}
