/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The page for the wall: every exercise as picture, name and dose, and when to stop. Sections and circuits are not told
 * apart by headings, so that the cards stand in an even grid. */
#include "config.h"

#include "sw-compose.h"

/* What it is called and for whom at the left, who gave it and when at the right. */
static void
compose_title (SwComposer  *self,
               SwProgramme *programme)
{
  double body_pt = self->style.body_pt;
  g_autofree char *title = sw_text_dup_short (sw_programme_get_title (programme));
  g_autofree char *name = sw_text_dup_short (sw_client_get_name (sw_programme_get_client (programme)));
  g_autofree char *day = sw_phrases_date (self->phrases, self->date);
  g_autofree char *clinic = sw_compose_clinic (self->phrases, sw_programme_get_clinic (programme));
  g_autofree char *from = sw_text_dup_short (clinic);
  SwFlow flow = sw_composer_begin (self);
  SwFlow right = flow;

  right.width_pt = 0.36 * flow.width_pt;
  right.left_pt += flow.width_pt - right.width_pt;
  flow.width_pt -= right.width_pt + self->style.column_gap_pt;
  sw_flow_text_in (&flow, SW_TEXT_SESSION, "H1",
                   sw_text_is_set (title) ? title : sw_phrases_get (self->phrases, "front.title"));
  if (sw_text_is_set (name))
    {
      g_autofree char *line = sw_phrases_format (self->phrases, "front.for", "name", name, NULL);

      sw_flow_text_in (&flow, SW_TEXT_STRONG, "P", line);
    }
  if (sw_compose_logo (&right, sw_programme_get_clinic (programme), right.width_pt) > 0.0)
    sw_flow_space (&right, 0.2 * body_pt);
  sw_flow_text_in (&right, SW_TEXT_SMALL, "P", day);
  if (sw_text_is_set (from) && sw_composer_shows (self, SW_PAGE_PART_LETTERHEAD))
    sw_flow_text_in (&right, SW_TEXT_SMALL, "P", from);
  flow.y_pt = MAX (flow.y_pt, right.y_pt) + 0.2 * body_pt;
  sw_flow_box (&flow, self->left_pt, flow.y_pt, self->width_pt, 2.0, SW_GREY_TEXT);
  sw_flow_space (&flow, 2.0);
  sw_composer_end (&flow, 0.0, SW_KEEP_ALWAYS);
}

static void
collect (GListModel *items,
         GPtrArray  *into)
{
  for (guint i = 0; i < g_list_model_get_n_items (items); i++)
    {
      g_autoptr (SwItem) item = g_list_model_get_item (items, i);

      if (sw_item_get_kind (item) == SW_ITEM_CIRCUIT)
        collect (G_LIST_MODEL (sw_item_get_items (item)), into);
      else if (sw_item_get_kind (item) == SW_ITEM_EXERCISE)
        g_ptr_array_add (into, g_steal_pointer (&item));
    }
}

static gboolean
compose_session (SwComposer *self,
                 SwSession  *session,
                 SwClient   *client,
                 GError    **error)
{
  g_autoptr (GPtrArray) items = g_ptr_array_new_with_free_func (g_object_unref);
  GListModel *sections = G_LIST_MODEL (sw_session_get_sections (session));
  g_autofree char *title = sw_text_dup_short (sw_session_get_title (session));
  g_autofree char *when = sw_compose_when (self->phrases, session);
  SwFlow flow;

  for (guint i = 0; i < g_list_model_get_n_items (sections); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);

      collect (G_LIST_MODEL (sw_section_get_items (section)), items);
    }
  if (items->len == 0)
    return TRUE;

  sw_composer_open (self, "Sect");
  flow = sw_composer_begin (self);
  sw_flow_entry (&flow, NULL, title, 1);
  sw_flow_text (&flow, SW_TEXT_BODY, sw_tags_add (&self->tags, self->parent, "H2"),
                sw_text_is_set (title) ? title : NULL, when);
  sw_composer_end (&flow, 0.4 * self->style.body_pt, SW_KEEP_ALWAYS);
  if (!sw_compose_cards (self, items, client, "H3", error))
    return FALSE;
  sw_composer_close (self);
  return TRUE;
}

/**
 * sw_compose_wall:
 * @error: return location for %SW_HANDOUT_ERROR_FIGURE
 *
 * Composes the whole page.
 *
 * Returns: whether every picture could be drawn
 */
gboolean
sw_compose_wall (SwComposer   *self,
                 SwProgramme  *programme,
                 GError      **error)
{
  GListModel *sessions = G_LIST_MODEL (sw_programme_get_sessions (programme));

  compose_title (self, programme);
  for (guint i = 0; i < g_list_model_get_n_items (sessions); i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (sessions, i);

      if (!compose_session (self, session, sw_programme_get_client (programme), error))
        return FALSE;
    }
  sw_compose_stop_short (self, programme);
  return TRUE;
}
