/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The plan over the weeks: for each exercise which weeks ask for how much, and when a step may be taken. */
#include "config.h"

#include "sw-compose.h"
#include "sw-dose-words.h"
#include "sw-plan.h"

#define RULE_PT 0.6
#define N_COLUMNS 3

/* The table as it is filled, a row a block, so that it may go on over pages. */
typedef struct
{
  SwComposer *composer;
  SwTag *tag;
  double starts_pt[N_COLUMNS + 1]; /* from the table's left edge; the last one is its width */
  SwUnits units;
} Table;

/* @from, @to: weeks from 0 on */
static char *
dup_weeks (SwPhrases *phrases,
           int        from,
           int        to)
{
  g_autofree char *first = sw_phrases_number (phrases, from + 1, 0);
  g_autofree char *last = sw_phrases_number (phrases, to + 1, 0);

  if (from == to)
    return sw_phrases_format (phrases, "weeks.week", "n", first, NULL);
  return sw_phrases_format (phrases, "weeks.weeks", "from", first, "to", last, NULL);
}

/* Returns: where the text ends */
static double
add_cell (const Table *table,
          SwFlow      *flow,
          SwTag       *row,
          int          column,
          SwTextRole   role,
          const char  *scope,
          const char  *text)
{
  SwTag *tag = sw_tags_add (&table->composer->tags, row, scope != NULL ? "TH" : "TD");
  SwFlow cell = *flow;

  tag->scope = scope;
  cell.left_pt += table->starts_pt[column];
  cell.width_pt = table->starts_pt[column + 1] - table->starts_pt[column] - 0.5 * table->composer->style.body_pt;
  sw_flow_text (&cell, role, tag, NULL, text);
  return cell.y_pt;
}

/* @rule_from: the column in which the line below begins */
static void
end_row (const Table *table,
         SwFlow      *flow,
         double       bottom_pt,
         double       rule_pt,
         int          rule_from,
         SwKeep       keep)
{
  double gap_pt = 0.15 * table->composer->style.body_pt;
  double start_pt = table->starts_pt[rule_from];

  flow->y_pt = bottom_pt + gap_pt;
  sw_flow_box (flow, flow->left_pt + start_pt, flow->y_pt, flow->width_pt - start_pt, rule_pt, SW_GREY_RULE);
  sw_flow_space (flow, rule_pt);
  sw_composer_end (flow, gap_pt, keep);
}

static void
add_head (const Table *table)
{
  static const char * const keys[N_COLUMNS] = { "log.exercise", "weeks.when", "glance.amount" };
  SwFlow flow = sw_composer_begin (table->composer);
  SwTag *row = sw_tags_add (&table->composer->tags, table->tag, "TR");
  double bottom_pt = 0.0;

  for (int column = 0; column < N_COLUMNS; column++)
    {
      double cell_pt = add_cell (table, &flow, row, column, SW_TEXT_TABLE_STRONG, "Column",
                                 sw_phrases_get (table->composer->phrases, keys[column]));

      bottom_pt = MAX (bottom_pt, cell_pt);
    }
  end_row (table, &flow, bottom_pt, 2.0 * RULE_PT, 0, SW_KEEP_ALWAYS);
}

/* @name: (nullable): of the exercise, in the first of its rows */
static void
add_row (const Table *table,
         const char  *name,
         const char  *language,
         const char  *weeks,
         const char  *amount,
         SwKeep       keep)
{
  SwComposer *self = table->composer;
  SwFlow flow = sw_composer_begin (self);
  SwTag *row = sw_tags_add (&self->tags, table->tag, "TR");
  double name_pt, weeks_pt, amount_pt;

  if (name != NULL)
    {
      self->text_language = sw_composer_find_other_language (self, language);
      name_pt = add_cell (table, &flow, row, 0, SW_TEXT_SMALL_STRONG, "Row", name);
      self->text_language = NULL;
    }
  else
    {
      sw_flow_empty_cell (&flow, sw_tags_add (&self->tags, row, "TD"), flow.left_pt, table->starts_pt[1], 1.0);
      name_pt = 0.0;
    }
  weeks_pt = add_cell (table, &flow, row, 1, SW_TEXT_SMALL, NULL, weeks);
  amount_pt = add_cell (table, &flow, row, 2, SW_TEXT_SMALL, NULL, amount);
  end_row (table, &flow, MAX (name_pt, MAX (weeks_pt, amount_pt)), RULE_PT, keep == SW_KEEP_FREE ? 0 : 1, keep);
}

static gboolean
does_change (const SwPlan    *plan,
             const SwPlanRow *planned)
{
  for (int week = 1; week < plan->n_weeks; week++)
    {
      if (planned->weeks[week].change != SW_DOSE_CHANGE_NONE)
        return TRUE;
    }

  return FALSE;
}

/* Weeks that ask for the same are one row. */
static void
add_exercise (const Table     *table,
              const SwPlan    *plan,
              const SwPlanRow *planned,
              int              number)
{
  SwPhrases *phrases = table->composer->phrases;
  const SwExerciseText *text
      = sw_exercise_get_text (sw_item_get_exercise (planned->item), table->composer->language);
  g_autofree char *name = g_strdup_printf ("%d  %s", number, text->name);
  int from = 0;

  for (int week = 0; week < plan->n_weeks; week++)
    {
      gboolean last = week + 1 == plan->n_weeks;
      g_autofree char *weeks = NULL;
      g_autofree char *amount = NULL;

      if (!last && planned->weeks[week + 1].change == SW_DOSE_CHANGE_NONE)
        continue;
      weeks = dup_weeks (phrases, from, week);
      amount = sw_dose_words_dup_amount_and_load (phrases, &planned->weeks[week].dose, table->units);
      add_row (table, from == 0 ? name : NULL, text->language, weeks, amount, last ? SW_KEEP_FREE : SW_KEEP_ALWAYS);
      from = week + 1;
    }
}

static void
add_phase (SwFlow       *flow,
           const SwPlan *plan,
           const char   *key,
           int           from,
           int           n)
{
  SwComposer *self = flow->composer;
  g_autofree char *weeks = NULL;
  g_autofree char *text = NULL;

  if (n <= 0)
    return;

  weeks = dup_weeks (self->phrases, from, MIN (from + n, plan->n_weeks) - 1);
  text = sw_phrases_format (self->phrases, key, "weeks", weeks, NULL);
  sw_flow_text_in (flow, SW_TEXT_BODY, "P", text);
}

static void
add_front (SwComposer   *self,
           const SwPlan *plan)
{
  g_autofree char *heading = sw_phrases_count (self->phrases, "weeks.heading", plan->n_weeks, NULL);
  g_autofree char *day = sw_phrases_date (self->phrases, self->date);
  g_autofree char *from = sw_phrases_format (self->phrases, "weeks.from", "date", day, NULL);
  int n_building = plan->n_weeks - plan->n_first - plan->n_last;
  SwFlow flow = sw_composer_begin (self);

  sw_flow_text_in (&flow, SW_TEXT_SECTION, "H2", heading);
  sw_flow_space (&flow, 0.3 * self->style.body_pt);
  sw_flow_text_in (&flow, SW_TEXT_BODY, "P", from);
  add_phase (&flow, plan, "weeks.first", 0, plan->n_first);
  add_phase (&flow, plan, "weeks.build", plan->n_first, n_building);
  add_phase (&flow, plan, "weeks.last", plan->n_first + n_building, plan->n_last);
  sw_flow_entry (&flow, NULL, heading, 1);
  sw_composer_end (&flow, 0.6 * self->style.body_pt, SW_KEEP_ALWAYS);
  sw_composer_boxed (self, SW_SYMBOL_TAKE_CARE, 1.2, SW_TEXT_BODY, sw_phrases_get (self->phrases, "weeks.rule-heading"),
                     sw_phrases_get (self->phrases, "weeks.rule"), 0.8 * self->style.body_pt, SW_KEEP_ALWAYS);
}

/* The column of the weeks is as wide as their longest words need. */
static void
place_columns (Table *table,
               int    n_weeks)
{
  SwComposer *self = table->composer;
  g_autofree char *longest = dup_weeks (self->phrases, n_weeks - 2, n_weeks - 1);
  int width;

  pango_layout_get_size (sw_composer_get_layout (self, SW_TEXT_SMALL, -1.0, NULL, longest), &width, NULL);
  table->starts_pt[1] = 0.34 * self->width_pt;
  table->starts_pt[2] = table->starts_pt[1] + (double) width / PANGO_SCALE + 0.7 * self->style.body_pt;
  table->starts_pt[3] = self->width_pt;
}

/**
 * sw_compose_weeks:
 *
 * Composes the plan over the weeks; nothing where the programme has none. Exercises that stay the same are told in a
 * line where others change.
 */
void
sw_compose_weeks (SwComposer  *self,
                 SwProgramme *programme)
{
  g_autoptr (SwPlan) plan = sw_plan_new (programme);
  Table table = { .composer = self };
  guint n_changing = 0;

  if (plan == NULL || plan->rows->len == 0)
    return;

  sw_composer_open (self, "Sect");
  add_front (self, plan);
  table.units = sw_client_get_units (sw_programme_get_client (programme));
  place_columns (&table, plan->n_weeks);
  table.tag = sw_tags_add (&self->tags, self->parent, "Table");
  add_head (&table);
  for (guint i = 0; i < plan->rows->len; i++)
    n_changing += does_change (plan, plan->rows->pdata[i]);
  for (guint i = 0; i < plan->rows->len; i++)
    {
      if (n_changing == 0 || does_change (plan, plan->rows->pdata[i]))
        add_exercise (&table, plan, plan->rows->pdata[i], (int) i + 1);
    }
  if (n_changing > 0 && n_changing < plan->rows->len)
    sw_composer_paragraph (self, SW_TEXT_SMALL, "P", NULL, sw_phrases_get (self->phrases, "weeks.others"),
                           0.8 * self->style.body_pt, SW_KEEP_FREE);
  sw_composer_close (self);
}
