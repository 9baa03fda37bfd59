/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The exercises at a glance: number, name and amount of each, a table a session. */
#include "config.h"

#include "sw-compose.h"
#include "sw-dose-words.h"

/* Under each row, twice as thick under the first. */
#define RULE_PT 0.6
/* White space behind a name, in body text's sizes. */
#define NAME_GAP 0.6

/* A table while it is composed. */
typedef struct
{
  SwFlow *flow;
  SwTag *tag;
  double name_pt;
} Table;

static SwFlow
begin_cell (const Table *table,
            gboolean     first)
{
  SwFlow cell = *table->flow;
  double gap_pt = NAME_GAP * cell.composer->style.body_pt;

  if (first)
    cell.width_pt = table->name_pt - gap_pt;
  else
    {
      cell.left_pt += table->name_pt;
      cell.width_pt -= table->name_pt;
    }
  return cell;
}

/* Returns: where the text ends */
static double
add_cell (const Table *table,
          SwTag       *row,
          gboolean     first,
          SwTextRole   role,
          const char  *scope,
          const char  *text)
{
  SwTag *tag = sw_tags_add (&table->flow->composer->tags, row, scope != NULL ? "TH" : "TD");
  SwFlow cell = begin_cell (table, first);

  tag->scope = scope;
  sw_flow_text (&cell, role, tag, NULL, text);
  return cell.y_pt;
}

static void
end_row (const Table *table,
         double       first_pt,
         double       second_pt,
         double       rule_pt)
{
  SwFlow *flow = table->flow;

  flow->y_pt = MAX (first_pt, second_pt) + 0.15 * flow->composer->style.body_pt;
  sw_flow_box (flow, flow->left_pt, flow->y_pt, flow->width_pt, rule_pt, SW_GREY_RULE);
  sw_flow_space (flow, rule_pt + 0.15 * flow->composer->style.body_pt);
}

/* Returns: (transfer full): the amount with the time of each hold, and how many rounds of it in a circuit */
static char *
dup_amount (SwComposer *self,
            SwItem     *item,
            SwItem     *circuit)
{
  /* An amount has no weight in it, so the units do not matter. */
  const SwDoseWords *words = sw_compose_dose (self, item, SW_UNITS_KG);
  const SwDose *dose = sw_item_get_dose (item);
  g_autofree char *amount = g_strdup (words->amount);
  g_autofree char *rounds = NULL;

  if (dose->hold_s > 0 && dose->reps_high > 0)
    {
      g_autofree char *time = sw_phrases_time (self->phrases, dose->hold_s);
      g_autofree char *hold = sw_phrases_format (self->phrases, "dose.hold-each", "time", time, NULL);
      g_autofree char *without = g_steal_pointer (&amount);

      amount = sw_phrases_sentences (self->phrases, (const char *const[]){ without, hold, NULL });
    }
  if (circuit == NULL)
    return g_steal_pointer (&amount);
  rounds = sw_phrases_count (self->phrases, "circuit.rounds", sw_item_get_rounds (circuit), NULL);
  return sw_phrases_format (self->phrases, "glance.rounds", "rounds", rounds, "amount", amount, NULL);
}

static void
add_row (const Table *table,
         SwItem      *item,
         SwItem      *circuit,
         int          number)
{
  SwComposer *self = table->flow->composer;
  const SwExerciseText *text = sw_exercise_get_text (sw_item_get_exercise (item), self->language);
  g_autofree char *name = g_strdup_printf ("%d  %s", number, text->name);
  g_autofree char *amount = dup_amount (self, item, circuit);
  SwTag *row = sw_tags_add (&self->tags, table->tag, "TR");
  double name_pt;

  self->text_language = sw_composer_find_other_language (self, text->language);
  name_pt = add_cell (table, row, TRUE, SW_TEXT_SMALL, "Row", name);
  self->text_language = NULL;
  end_row (table, name_pt, add_cell (table, row, FALSE, SW_TEXT_SMALL, NULL, amount), RULE_PT);
}

static void
add_rows (const Table *table,
          GListModel  *items,
          SwItem      *circuit,
          int         *number)
{
  for (guint i = 0; i < g_list_model_get_n_items (items); i++)
    {
      g_autoptr (SwItem) item = g_list_model_get_item (items, i);

      if (sw_item_get_kind (item) == SW_ITEM_CIRCUIT)
        add_rows (table, G_LIST_MODEL (sw_item_get_items (item)), item, number);
      else if (sw_item_get_kind (item) == SW_ITEM_EXERCISE)
        add_row (table, item, circuit, ++*number);
    }
}

/* As wide as the longest name, but no more than half. @first: number of its first exercise */
static double
choose_name_width (SwFlow    *flow,
                   SwSession *session,
                   int        first)
{
  SwComposer *self = flow->composer;
  g_autoptr (GPtrArray) items = sw_compose_collect_exercises (session);
  double widest_pt = 0.0;

  for (guint i = 0; i < items->len; i++)
    {
      const SwExerciseText *text = sw_exercise_get_text (sw_item_get_exercise (items->pdata[i]), self->language);
      g_autofree char *name = g_strdup_printf ("%d  %s", first + (int) i, text->name);
      int width;

      pango_layout_get_size (sw_composer_get_layout (self, SW_TEXT_SMALL, -1.0, NULL, name), &width, NULL);
      widest_pt = MAX (widest_pt, (double) width / PANGO_SCALE);
    }
  return MIN (0.5 * flow->width_pt, widest_pt + NAME_GAP * self->style.body_pt + 1.0);
}

static void
add_session (SwFlow    *flow,
             SwSession *session,
             gboolean   named,
             int       *number)
{
  SwComposer *self = flow->composer;
  GListModel *sections = G_LIST_MODEL (sw_session_get_sections (session));
  g_autofree char *title = sw_text_dup_whole (sw_session_get_title (session));
  Table table = { flow, NULL, choose_name_width (flow, session, *number + 1) };
  SwTag *head;
  double head_pt;

  sw_flow_space (flow, 0.3 * self->style.body_pt);
  if (named && *title != '\0')
    sw_flow_text_in (flow, SW_TEXT_SMALL_STRONG, "H3", title);
  table.tag = sw_tags_add (&self->tags, self->parent, "Table");
  head = sw_tags_add (&self->tags, table.tag, "TR");
  head_pt = add_cell (&table, head, TRUE, SW_TEXT_TABLE_STRONG, "Column",
                      sw_phrases_get (self->phrases, "log.exercise"));
  end_row (&table, head_pt,
           add_cell (&table, head, FALSE, SW_TEXT_TABLE_STRONG, "Column",
                     sw_phrases_get (self->phrases, "glance.amount")),
           2.0 * RULE_PT);
  for (guint i = 0; i < g_list_model_get_n_items (sections); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);

      add_rows (&table, G_LIST_MODEL (sw_section_get_items (section)), NULL, number);
    }
}

/**
 * sw_compose_glance:
 *
 * All exercises in one block, which no page can tear; two sessions beside one another where there is room.
 */
void
sw_compose_glance (SwComposer  *self,
                   SwProgramme *programme)
{
  GListModel *sessions = G_LIST_MODEL (sw_programme_get_sessions (programme));
  guint n_sessions = g_list_model_get_n_items (sessions);
  gboolean beside = n_sessions == 2 && self->style.columns;
  SwFlow flow = sw_composer_begin (self);
  SwFlow column;
  double bottom_pt;
  int number = 0;

  sw_flow_text_in (&flow, SW_TEXT_SECTION, "H2", sw_phrases_get (self->phrases, "glance.heading"));
  bottom_pt = flow.y_pt;
  column = flow;
  if (beside)
    column.width_pt = (flow.width_pt - self->style.column_gap_pt) / 2.0;
  for (guint i = 0; i < n_sessions; i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (sessions, i);
      g_autoptr (GPtrArray) own = sw_compose_collect_exercises (session);

      if (beside)
        column.y_pt = flow.y_pt;
      if (own->len > 0)
        add_session (&column, session, n_sessions > 1, &number);
      if (beside)
        column.left_pt += column.width_pt + self->style.column_gap_pt;
      bottom_pt = MAX (bottom_pt, column.y_pt);
    }
  flow.y_pt = bottom_pt;
  sw_composer_end (&flow, 1.0 * self->style.body_pt, SW_KEEP_FREE);
}
