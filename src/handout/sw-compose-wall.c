/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The page for the wall: every exercise as picture, name and dose, what to heed, and when to stop. Sections and circuits are not told
 * apart by headings, so that the cards stand in an even grid. */
#include "config.h"

#include "sw-compose.h"
#include "sw-dose-words.h"

/* White space before a box, in text sizes. */
#define BOX_SPACE 0.6
/* Of the width: what to heed, beside when to stop, which takes more words. */
#define CARE_SHARE 0.32

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
  int day_width;

  pango_layout_get_size (sw_composer_get_layout (self, SW_TEXT_SMALL, -1.0, NULL, day), &day_width, NULL);
  right.width_pt = MAX (0.36 * flow.width_pt, (double) day_width / PANGO_SCALE + 1.0);
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
clear_card (gpointer data)
{
  g_clear_object (&((SwCard *) data)->item);
}

/* @circuit: (nullable): the circuit that they are of. How long to rest between sets is told where an exercise is told in
 * full: a card has room for what must be heeded. */
static void
collect (GListModel *items,
         SwItem     *circuit,
         GArray     *cards)
{
  for (guint i = 0; i < g_list_model_get_n_items (items); i++)
    {
      g_autoptr (SwItem) item = g_list_model_get_item (items, i);

      if (sw_item_get_kind (item) == SW_ITEM_CIRCUIT)
        collect (G_LIST_MODEL (sw_item_get_items (item)), item, cards);
      else if (sw_item_get_kind (item) == SW_ITEM_EXERCISE)
        {
          SwCard card = { g_object_ref (item), circuit, *sw_item_get_dose (item) };

          card.dose.rest_s = 0;
          g_array_append_val (cards, card);
        }
    }
}

static GArray *
collect_session (SwSession *session)
{
  GListModel *sections = G_LIST_MODEL (sw_session_get_sections (session));
  GArray *cards = g_array_new (FALSE, FALSE, sizeof (SwCard));

  g_array_set_clear_func (cards, clear_card);
  for (guint i = 0; i < g_list_model_get_n_items (sections); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);

      collect (G_LIST_MODEL (sw_section_get_items (section)), NULL, cards);
    }

  return cards;
}

/* Takes the limits that all cards share off them.
 *
 * Returns: (transfer full): these limits in words, to be said once; "" when they share none */
static char *
take_common_limits (SwComposer *self,
                    GArray     *cards,
                    SwUnits     units)
{
  SwDose common = g_array_index (cards, SwCard, 0).dose;
  const SwDoseWords *words;

  for (guint i = 1; i < cards->len; i++)
    {
      const SwDose *dose = &g_array_index (cards, SwCard, i).dose;

      if (dose->effort_limit != common.effort_limit)
        common.effort_limit = 0;
      if (dose->pain_limit != common.pain_limit)
        common.pain_limit = -1;
    }

  for (guint i = 0; i < cards->len; i++)
    {
      SwDose *dose = &g_array_index (cards, SwCard, i).dose;

      if (common.effort_limit > 0)
        dose->effort_limit = 0;
      if (common.pain_limit >= 0)
        dose->pain_limit = -1;
    }

  words = sw_doses_tell (self->doses, &common, SW_DOSE_LIMB_NONE, units);
  return sw_phrases_sentences (self->phrases, (const char *const *) words->limits_short);
}

static gboolean
compose_session (SwComposer *self,
                 SwSession  *session,
                 SwClient   *client,
                 GError    **error)
{
  g_autoptr (GArray) cards = collect_session (session);
  g_autofree char *title = sw_text_dup_short (sw_session_get_title (session));
  g_autofree char *when = sw_compose_when (self->phrases, self->clinic, session);
  g_autofree char *limits = NULL;
  g_autofree char *text = NULL;
  SwFlow flow;

  if (cards->len == 0)
    return TRUE;

  limits = take_common_limits (self, cards, sw_client_get_units (client));
  text = sw_phrases_sentences (self->phrases, (const char *const[]){ when, *limits != '\0' ? limits : NULL, NULL });
  sw_composer_open (self, "Sect");
  flow = sw_composer_begin (self);
  sw_flow_entry (&flow, NULL, sw_text_is_set (title) ? title : when, 1);
  sw_flow_text (&flow, SW_TEXT_BODY, sw_tags_add (&self->tags, self->parent, "H2"),
                sw_text_is_set (title) ? title : NULL, text);
  sw_composer_end (&flow, 0.4 * self->style.body_pt, SW_KEEP_ALWAYS);
  if (!sw_compose_cards (self, cards, client, "H3", error))
    return FALSE;
  sw_composer_close (self);
  return TRUE;
}

/* What to heed and when to stop; side by side on a page that lies on its side, which has little height. */
static void
compose_boxes (SwComposer  *self,
               SwProgramme *programme)
{
  SwClient *client = sw_programme_get_client (programme);
  double space_pt = BOX_SPACE * self->style.body_pt;
  SwFlow care;
  SwFlow stop;

  if (self->style.page_width_pt < self->style.page_height_pt)
    {
      sw_compose_general_care (self, client, space_pt);
      sw_compose_stop_short (self, programme, space_pt);
      return;
    }

  care = stop = sw_composer_begin (self);
  care.width_pt = CARE_SHARE * (care.width_pt - self->style.column_gap_pt);
  if (sw_compose_general_care_in (&care, client))
    {
      stop.left_pt += care.width_pt + self->style.column_gap_pt;
      stop.width_pt -= care.width_pt + self->style.column_gap_pt;
    }
  sw_compose_stop_short_in (&stop, programme);
  stop.y_pt = MAX (stop.y_pt, care.y_pt);
  sw_composer_end (&stop, space_pt, SW_KEEP_FREE);
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
  compose_boxes (self, programme);
  return TRUE;
}
