/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The first page: who it is for, what it is for, when, what is needed, and before anything else when to stop. */
#include "config.h"

#include "sw-care-limits.h"
#include "sw-care.h"
#include "sw-compose.h"
#include "sw-telling.h"

#define MOST_WEEKS_BESIDE 3
/* A session's week is about as tall as so many things that are needed, and the heading as one more: where there are more
 * things, they stand in rows below. */
#define NEEDS_A_WEEK 4

static void
compose_title (SwComposer  *self,
               SwProgramme *programme)
{
  double body_pt = self->style.body_pt;
  SwClient *client = sw_programme_get_client (programme);
  const char *title = sw_programme_get_title (programme);
  g_auto (GStrv) goals = g_strsplit (sw_client_get_goals (client), "\n", -1);
  guint n_goals = 0;

  sw_composer_paragraph (self, SW_TEXT_TITLE, "H1", NULL,
                         sw_text_is_set (title) ? title : sw_phrases_get (self->phrases, "front.title"),
                         0.7 * body_pt * self->front_gap, SW_KEEP_ALWAYS);
  if (sw_composer_shows (self, SW_PAGE_PART_PURPOSE))
    sw_composer_paragraph (self, SW_TEXT_BODY, "P", NULL, sw_phrases_get (self->phrases, "front.purpose"),
                           0.05 * body_pt, SW_KEEP_TOGETHER);
  if (sw_text_is_set (sw_client_get_name (client)))
    {
      g_autofree char *line
          = sw_phrases_format (self->phrases, "front.for", "name", sw_client_get_name (client), NULL);

      sw_composer_paragraph (self, SW_TEXT_NAME, "P", NULL, line, 0.05 * body_pt, SW_KEEP_TOGETHER);
    }

  if (!sw_composer_shows (self, SW_PAGE_PART_PURPOSE))
    return;

  for (guint i = 0; goals[i] != NULL; i++)
    n_goals += sw_text_is_set (g_strstrip (goals[i]));
  for (guint i = 0, told = 0; goals[i] != NULL; i++)
    if (sw_text_is_set (goals[i]))
      {
        const char *label = sw_phrases_get (self->phrases, n_goals > 1 ? "front.goals" : "front.goal");

        sw_composer_paragraph (self, SW_TEXT_BODY, "P", told == 0 ? label : NULL, goals[i],
                               (told == 0 ? 0.5 : 0.1) * body_pt * self->front_gap, SW_KEEP_TOGETHER);
        told++;
      }
}

static void
add_week_strip (SwFlow *flow,
                SwSet   days)
{
  SwComposer *self = flow->composer;
  double size_pt = sw_style_get_size_pt (&self->style, SW_TEXT_SMALL);
  double day_pt = sw_compose_widest_day_pt (self, SW_TEXT_SMALL_STRONG) + 0.4 * size_pt;
  double cell_pt = MIN (flow->width_pt / 7.0, MAX (3.0 * size_pt, day_pt));
  double box_pt = 1.25 * size_pt;
  SwFlow below = *flow;

  for (int day = SW_DAY_MONDAY; day <= SW_DAY_SUNDAY; day++)
    {
      gboolean on = (days & SW_SET (day)) != 0;
      SwFlow cell = *flow;
      const char *name = sw_phrases_get (self->phrases, sw_compose_day_key ("day-short", day));
      PangoLayout *layout
          = sw_composer_get_layout (self, on ? SW_TEXT_SMALL_STRONG : SW_TEXT_SMALL, -1.0, NULL, name);
      int width;

      pango_layout_get_size (layout, &width, NULL);
      cell.left_pt += day * cell_pt;
      cell.width_pt = cell_pt;
      sw_flow_text (&cell, on ? SW_TEXT_SMALL_STRONG : SW_TEXT_SMALL, NULL, NULL, name);
      sw_flow_symbol (&cell, on ? SW_SYMBOL_DAY : SW_SYMBOL_BOX_OFF,
                      cell.left_pt + ((double) width / PANGO_SCALE - box_pt) / 2.0, cell.y_pt + 0.1 * size_pt, box_pt,
                      SW_GREY_TEXT);
      below.y_pt = cell.y_pt + 0.1 * size_pt + box_pt;
    }

  flow->y_pt = below.y_pt;
}

/* What comes before the exercises on the first day stands behind them: @index is the session's. */
static void
add_check_of (SwFlow    *flow,
              SwSession *session,
              guint      index)
{
  SwComposer *self = flow->composer;
  g_autoptr (SwItem) check = sw_compose_find_check (session);
  int page = index < self->check_pages->len ? g_array_index (self->check_pages, int, index) : 0;
  g_autofree char *number = sw_phrases_number (self->phrases, page, 0);
  g_autofree char *name = NULL;
  g_autofree char *line = NULL;

  if (check == NULL || !sw_composer_shows (self, SW_PAGE_PART_SELF_CHECK))
    return;
  name = sw_compose_check_name (self, check);
  line = sw_phrases_format (self->phrases, "plan.check", "name", name, "page", number, NULL);
  if (flow->y_pt > 0.0)
    sw_flow_space (flow, 0.25 * self->style.body_pt);
  sw_flow_text_in (flow, SW_TEXT_STRONG, "P", line);
}

static void
add_week_of (SwFlow    *flow,
             SwSession *session,
             guint      index,
             gboolean   more)
{
  SwComposer *self = flow->composer;
  g_autofree char *when = sw_compose_when (self->phrases, self->clinic, session);
  g_autofree char *title = sw_text_dup_whole (sw_session_get_title (session));

  sw_flow_text (flow, SW_TEXT_BODY, sw_tags_add (&self->tags, self->parent, "P"), *title != '\0' ? title : NULL, when);
  if (sw_session_get_days (session) != 0)
    {
      sw_flow_space (flow, 0.25 * self->style.body_pt);
      add_week_strip (flow, sw_session_get_days (session));
    }
  if (more)
    add_check_of (flow, session, index);
}

static void
add_week (SwFlow      *flow,
          SwProgramme *programme)
{
  SwComposer *self = flow->composer;
  GListModel *sessions = G_LIST_MODEL (sw_programme_get_sessions (programme));
  guint n_sessions = g_list_model_get_n_items (sessions);

  sw_flow_text_in (flow, SW_TEXT_SECTION, "H2", sw_phrases_get (self->phrases, "front.week"));
  for (guint i = 0; i < n_sessions; i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (sessions, i);

      sw_flow_space (flow, (i == 0 ? 0.15 : 0.7) * self->style.body_pt);
      add_week_of (flow, session, i, n_sessions > 1);
    }
}

/* For how long, and with whom; of a single session what comes first, too. */
static void
compose_plan (SwComposer  *self,
              SwProgramme *programme)
{
  GListModel *sessions = G_LIST_MODEL (sw_programme_get_sessions (programme));
  g_autofree char *plan = sw_compose_plan (self->phrases, programme, self->date);
  g_autoptr (SwSession) session = g_list_model_get_item (sessions, 0);
  SwFlow flow = sw_composer_begin (self);

  if (session != NULL && g_list_model_get_n_items (sessions) == 1)
    add_check_of (&flow, session, 0);
  if (*plan != '\0')
    sw_flow_text_in (&flow, SW_TEXT_BODY, "P", plan);
  if (flow.y_pt > 0.0)
    sw_composer_end (&flow, 0.3 * self->style.body_pt, SW_KEEP_FREE);
  else
    sw_block_free (flow.block);
}

/* A block for each session, when there are too many for one. */
static void
compose_weeks (SwComposer  *self,
               SwProgramme *programme,
               double       space_pt)
{
  GListModel *sessions = G_LIST_MODEL (sw_programme_get_sessions (programme));
  guint n_sessions = g_list_model_get_n_items (sessions);

  sw_composer_paragraph (self, SW_TEXT_SECTION, "H2", NULL, sw_phrases_get (self->phrases, "front.week"), space_pt,
                         SW_KEEP_ALWAYS);
  for (guint i = 0; i < n_sessions; i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (sessions, i);
      SwFlow flow = sw_composer_begin (self);

      add_week_of (&flow, session, i, n_sessions > 1);
      sw_composer_end (&flow, (i == 0 ? 0.15 : 0.7) * self->style.body_pt, SW_KEEP_FREE);
    }
  compose_plan (self, programme);
}

static void
compose_week_and_needs (SwComposer  *self,
                        SwProgramme *programme)
{
  double space_pt = 0.9 * self->style.body_pt * self->front_gap;
  gboolean week = sw_composer_shows (self, SW_PAGE_PART_WEEK);
  gboolean needs = sw_composer_shows (self, SW_PAGE_PART_EQUIPMENT);
  int n_sessions = (int) g_list_model_get_n_items (G_LIST_MODEL (sw_programme_get_sessions (programme)));
  SwFlow flow;

  if (week && needs && self->style.columns && n_sessions <= MOST_WEEKS_BESIDE
      && sw_compose_count_needs (programme) <= NEEDS_A_WEEK * n_sessions + 1)
    {
      SwFlow right;

      flow = sw_composer_begin (self);
      right = flow;

      flow.width_pt = 0.60 * (flow.width_pt - self->style.column_gap_pt);
      right.left_pt = flow.left_pt + flow.width_pt + self->style.column_gap_pt;
      right.width_pt = self->left_pt + self->width_pt - right.left_pt;
      add_week (&flow, programme);
      sw_compose_needs_in (&right, programme);
      flow.y_pt = MAX (flow.y_pt, right.y_pt);
      sw_composer_end (&flow, space_pt, SW_KEEP_TOGETHER);
      compose_plan (self, programme);
      return;
    }

  if (week)
    compose_weeks (self, programme, space_pt);
  if (needs)
    sw_compose_needs (self, programme, space_pt);
}

/**
 * sw_compose_general_care_in:
 *
 * What the client's precautions and limits ask of every exercise, in a box; nothing when they ask for nothing.
 *
 * Returns: whether they ask for anything
 */
gboolean
sw_compose_general_care_in (SwFlow   *flow,
                            SwClient *client)
{
  SwComposer *self = flow->composer;
  g_autoptr (GStrvBuilder) all = g_strv_builder_new ();
  GListModel *set = G_LIST_MODEL (sw_programme_get_limits (self->programme));
  g_auto (GStrv) limits = sw_care_limit_words (self->phrases, set, NULL, NULL, sw_client_get_units (client));
  g_auto (GStrv) care = sw_care_general_words (self->phrases, sw_client_get_precautions (client));
  g_auto (GStrv) words = NULL;
  g_autofree char *text = NULL;

  g_strv_builder_addv (all, (const char **) limits);
  g_strv_builder_addv (all, (const char **) care);
  words = g_strv_builder_end (all);
  text = sw_phrases_sentences (self->phrases, (const char *const *) words);

  if (!sw_text_is_set (text))
    return FALSE;

  sw_flow_boxed (flow, SW_SYMBOL_TAKE_CARE, SW_CARE_FRAME_PT, SW_TEXT_SMALL,
                 sw_phrases_get (self->phrases, "care.heading-general"), text);
  return TRUE;
}

/**
 * sw_compose_general_care:
 * @space_pt: white space before it
 *
 * The same across the page.
 */
void
sw_compose_general_care (SwComposer *self,
                         SwClient   *client,
                         double      space_pt)
{
  SwFlow flow = sw_composer_begin (self);

  if (sw_compose_general_care_in (&flow, client))
    sw_composer_end (&flow, space_pt, SW_KEEP_FREE);
  else
    sw_block_free (flow.block);
}

/* The therapist's rule for making it harder. */
static void
compose_progress (SwComposer  *self,
                  SwProgramme *programme)
{
  const char *rule = sw_programme_get_progress (programme);

  if (*rule == '\0')
    return;
  sw_composer_paragraph (self, SW_TEXT_SECTION, "H2", NULL, sw_phrases_get (self->phrases, "plan.progress"),
                         1.0 * self->style.body_pt, SW_KEEP_ALWAYS);
  sw_composer_paragraph (self, SW_TEXT_SMALL, "P", NULL, rule, 0.1 * self->style.body_pt, SW_KEEP_FREE);
}

/**
 * sw_compose_front:
 *
 * Composes everything that comes before the exercises.
 */
void
sw_compose_front (SwComposer  *self,
                  SwProgramme *programme)
{
  sw_compose_letterhead (self, programme);
  compose_title (self, programme);
  compose_week_and_needs (self, programme);
  sw_compose_general_care (self, sw_programme_get_client (programme),
                           0.9 * self->style.body_pt * self->front_gap);
  if (self->glance == SW_GLANCE_BEFORE_STOP)
    sw_compose_glance (self, programme);
  self->stop_first = self->blocks->len;
  if (sw_composer_shows (self, SW_PAGE_PART_STOP_SIGNS))
    sw_compose_stop (self, programme);
  else
    sw_compose_stop_short (self, programme, 0.9 * self->style.body_pt * self->front_gap);
  self->stop_last = self->blocks->len - 1;
  sw_composer_keep_together (self, 0);
  if (sw_composer_shows (self, SW_PAGE_PART_PAIN_GUIDE))
    sw_compose_pain_guide (self, programme);
  compose_progress (self, programme);
  if (sw_composer_shows (self, SW_PAGE_PART_KEY))
    sw_compose_key (self, programme);
  self->front_last = self->blocks->len - 1;
  if (self->glance == SW_GLANCE_BEFORE_FIRST)
    sw_compose_glance (self, programme);
}
