/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The last pages: a tick sheet for the week, one a session, and whom to ask. The sheet starts a page of its own so
 * that it can hang on a door. */
#include "config.h"

#include <string.h>

#include "sw-compose.h"

#define N_DAYS 7
/* White space behind an exercise's name, in body text's sizes. */
#define NAME_GAP 0.8

/* @name_above: whether names stand above their boxes over the whole width, since a word would be divided beside them */
typedef struct
{
  double name_pt;
  double day_pt[N_DAYS];
  double rating_pt;
  gboolean name_above;
} Columns;

/* The widest word of the exercises' names. */
static double
find_widest_word_pt (SwComposer *self,
                     GPtrArray  *items)
{
  int widest = 0;

  for (guint i = 0; i < items->len; i++)
    {
      SwExercise *exercise = sw_item_get_exercise (g_ptr_array_index (items, i));
      g_auto (GStrv) words = g_strsplit (sw_exercise_get_text (exercise, self->language)->name, " ", -1);

      for (guint k = 0; words[k] != NULL; k++)
        {
          int width;

          pango_layout_get_size (sw_composer_get_layout (self, SW_TEXT_TABLE, -1.0, NULL, words[k]), &width, NULL);
          widest = MAX (widest, width);
        }
    }
  return (double) widest / PANGO_SCALE;
}

/* The days' columns of one width where the week's longest short name has room in each; else each as wide as its own
 * name, and what is left shared out. */
static void
share_out_days (SwComposer *self,
                double      widest_pt,
                double      gap_pt,
                double      room_pt,
                double      day_pt[N_DAYS])
{
  double words_pt = 0.0;

  for (int day = 0; day < N_DAYS; day++)
    {
      const char *keys[] = { sw_compose_day_key ("day-short", day), NULL };

      day_pt[day] = widest_pt * N_DAYS <= room_pt ? room_pt / N_DAYS
                                                  : sw_compose_widest_pt (self, SW_TEXT_TABLE_STRONG, keys) + gap_pt;
      words_pt += day_pt[day];
    }
  for (int day = 0; day < N_DAYS; day++)
    day_pt[day] += (room_pt - words_pt) / N_DAYS;
}

static Columns
choose_columns (SwComposer *self,
                GPtrArray  *items)
{
  static const char *const ratings[] = { "log.effort", "log.pain", "log.scale", NULL };
  double small_pt = sw_style_get_size_pt (&self->style, SW_TEXT_TABLE);
  double gap_pt = 0.4 * small_pt;
  double widest_pt = sw_compose_widest_day_pt (self, SW_TEXT_TABLE_STRONG) + gap_pt;
  double day_pt = MAX (widest_pt, MIN (3.0 * small_pt, 0.074 * self->width_pt));
  Columns columns;

  /* As wide as boxes and words need; the exercises' names have what is left, or stand above. */
  columns.rating_pt = MAX (sw_compose_widest_pt (self, SW_TEXT_TABLE_STRONG, ratings) + gap_pt,
                           MIN (4.0 * small_pt, 0.1 * self->width_pt));
  columns.name_pt = self->width_pt - N_DAYS * day_pt - 2.0 * columns.rating_pt;
  columns.name_above = find_widest_word_pt (self, items) > columns.name_pt - NAME_GAP * self->style.body_pt;
  if (columns.name_above)
    {
      columns.rating_pt += MAX (0.0, columns.name_pt) / (N_DAYS + 2);
      columns.name_pt = 0.0;
    }
  share_out_days (self, widest_pt, gap_pt, self->width_pt - columns.name_pt - 2.0 * columns.rating_pt, columns.day_pt);
  return columns;
}

static void
add_head_cell (SwFlow     *flow,
               SwTag      *row,
               double      left_pt,
               double      width_pt,
               const char *text,
               double     *bottom_pt)
{
  SwComposer *self = flow->composer;
  SwTag *tag = sw_tags_add (&self->tags, row, "TH");
  SwFlow cell = *flow;

  tag->scope = "Column";
  cell.left_pt = left_pt;
  cell.width_pt = width_pt;
  sw_flow_text (&cell, SW_TEXT_TABLE_STRONG, tag, NULL, text);
  *bottom_pt = MAX (*bottom_pt, cell.y_pt);
}

static void
compose_head (SwComposer    *self,
              SwTag         *table,
              const Columns *columns)
{
  SwFlow flow = sw_composer_begin (self);
  SwTag *row = sw_tags_add (&self->tags, table, "TR");
  double x_pt = flow.left_pt;
  double bottom_pt = 0.0;
  g_autofree char *effort = g_strconcat (sw_phrases_get (self->phrases, "log.effort"), "\n",
                                         sw_phrases_get (self->phrases, "log.scale"), NULL);
  g_autofree char *pain = g_strconcat (sw_phrases_get (self->phrases, "log.pain"), "\n",
                                       sw_phrases_get (self->phrases, "log.scale"), NULL);

  add_head_cell (&flow, row, x_pt, columns->name_above ? flow.width_pt : columns->name_pt,
                 sw_phrases_get (self->phrases, "log.exercise"), &bottom_pt);
  if (columns->name_above)
    flow.y_pt = bottom_pt;
  x_pt += columns->name_pt;
  for (int day = SW_DAY_MONDAY; day <= SW_DAY_SUNDAY; day++)
    {
      add_head_cell (&flow, row, x_pt, columns->day_pt[day],
                     sw_phrases_get (self->phrases, sw_compose_day_key ("day-short", day)), &bottom_pt);
      x_pt += columns->day_pt[day];
    }
  add_head_cell (&flow, row, x_pt, columns->rating_pt, effort, &bottom_pt);
  add_head_cell (&flow, row, x_pt + columns->rating_pt, columns->rating_pt, pain, &bottom_pt);

  flow.y_pt = bottom_pt + 0.2 * self->style.body_pt;
  sw_flow_box (&flow, flow.left_pt, flow.y_pt, flow.width_pt, 1.6, SW_GREY_TEXT);
  sw_flow_space (&flow, 1.6);
  sw_composer_end (&flow, 0.8 * self->style.body_pt, SW_KEEP_ALWAYS);
}

/* An exercise while its row is composed. */
typedef struct
{
  const char *name;
  int number;
} Row;

/* "Heel raise: done on Monday", and which time of the day where there are several. */
static char *
dup_tick_label (SwComposer *self,
                const Row  *row,
                SwDay       day,
                int         time,
                int         times)
{
  const char *day_name = sw_phrases_get (self->phrases, sw_compose_day_key ("day", day));
  g_autofree char *number = g_strdup_printf ("%d", time);

  if (times < 2)
    return sw_phrases_format (self->phrases, "field.tick", "exercise", row->name, "day", day_name, NULL);
  return sw_phrases_format (self->phrases, "field.tick-again", "exercise", row->name, "day", day_name, "n", number,
                            NULL);
}

/* One box a time of the day on the session's days; a dash on the others. */
static void
add_day (SwFlow    *flow,
         const Row *row,
         SwTag     *cell,
         SwDay      day,
         double     left_pt,
         double     box_pt,
         double     row_pt,
         int        boxes)
{
  SwComposer *self = flow->composer;
  double gap_pt = 0.15 * box_pt;
  double y_pt = flow->y_pt + (row_pt - boxes * box_pt - (boxes - 1) * gap_pt) / 2.0;

  if (boxes == 0)
    sw_flow_symbol (flow, SW_SYMBOL_BOX_OFF, left_pt, flow->y_pt + (row_pt - box_pt) / 2.0, box_pt, SW_GREY_RULE);
  for (int i = 0; i < boxes; i++)
    sw_flow_symbol (flow, SW_SYMBOL_BOX, left_pt, y_pt + i * (box_pt + gap_pt), box_pt, SW_GREY_TEXT);
  for (int i = 0; i < boxes; i++)
    sw_flow_field (flow, cell, SW_FIELD_TICK, left_pt, y_pt + i * (box_pt + gap_pt), box_pt, box_pt,
                   g_strdup_printf ("exercise%d-day%d-time%d", row->number, day + 1, i + 1),
                   dup_tick_label (self, row, day, i + 1, boxes));
  if (boxes == 0)
    sw_block_add (flow->block, SW_PIECE_EMPTY, cell, left_pt, flow->y_pt, box_pt, row_pt);
  else
    sw_flow_empty_cell (flow, cell, left_pt, box_pt, row_pt);
}

/* @key: what is said of the place to fill in */
static void
add_rating (SwFlow     *flow,
            const Row  *row,
            SwTag      *cell,
            const char *key,
            double      left_pt,
            double      width_pt,
            double      row_pt)
{
  SwComposer *self = flow->composer;
  double line_pt = flow->y_pt + 0.78 * row_pt;
  double field_pt = 1.4 * sw_style_get_size_pt (&self->style, SW_TEXT_TABLE);

  sw_flow_box (flow, left_pt, line_pt, 0.75 * width_pt, 0.8, SW_GREY_TEXT);
  sw_flow_field (flow, cell, SW_FIELD_NUMBER, left_pt, line_pt - field_pt, 0.75 * width_pt, field_pt,
                 g_strdup_printf ("exercise%d-%s", row->number, strchr (key, '.') + 1),
                 sw_phrases_format (self->phrases, key, "exercise", row->name, NULL));
  sw_flow_empty_cell (flow, cell, left_pt, width_pt, row_pt);
}

/* Boxes on each of the session's days must not make a client do more than the dose asks for: as many days as the week
 * has boxes for, or more, need no words. */
static gboolean
has_fewer_days (const SwDose *dose,
                SwSet         days)
{
  int n_days = 0;

  for (int day = SW_DAY_MONDAY; day <= SW_DAY_SUNDAY; day++)
    n_days += days == 0 || (days & SW_SET (day)) != 0;

  return dose->days_a_week > 0 && dose->days_a_week < n_days;
}

static double
find_narrowest_pt (const Columns *columns)
{
  double narrowest_pt = columns->day_pt[0];

  for (int day = 1; day < N_DAYS; day++)
    narrowest_pt = MIN (narrowest_pt, columns->day_pt[day]);
  return narrowest_pt;
}

static void
compose_row (SwComposer    *self,
             SwTag         *table,
             const Columns *columns,
             SwItem        *item,
             SwSet          days,
             int            number)
{
  double body_pt = self->style.body_pt;
  double box_pt = MIN (1.35 * sw_style_get_size_pt (&self->style, SW_TEXT_TABLE), 0.7 * find_narrowest_pt (columns));
  const SwDose *dose = sw_item_get_dose (item);
  int times = CLAMP (dose->times_a_day, 1, 10);
  const SwExerciseText *text = sw_exercise_get_text (sw_item_get_exercise (item), self->language);
  const Row told = { text->name, number };
  g_autofree char *name = g_strdup_printf ("%d  %s", number, text->name);
  SwFlow flow = sw_composer_begin (self);
  SwTag *row = sw_tags_add (&self->tags, table, "TR");
  SwTag *head = sw_tags_add (&self->tags, row, "TH");
  SwFlow cell = flow;
  double pad_pt = 0.35 * body_pt;
  double x_pt = flow.left_pt + columns->name_pt;
  double row_pt;

  head->scope = "Row";
  cell.width_pt = (columns->name_above ? flow.width_pt : columns->name_pt) - NAME_GAP * body_pt;
  cell.y_pt = pad_pt;
  self->text_language = sw_composer_find_other_language (self, text->language);
  sw_flow_text (&cell, SW_TEXT_TABLE, head, NULL, name);
  self->text_language = NULL;
  if (has_fewer_days (dose, days))
    {
      g_autofree char *often = sw_phrases_count (self->phrases, "dose.days-a-week", dose->days_a_week, NULL);

      sw_flow_text (&cell, SW_TEXT_TABLE, head, NULL, often);
    }
  row_pt = 1.15 * times * box_pt + 2.0 * pad_pt;
  if (columns->name_above)
    flow.y_pt = cell.y_pt;
  else
    row_pt = MAX (cell.y_pt + pad_pt, row_pt);

  for (int day = SW_DAY_MONDAY; day <= SW_DAY_SUNDAY; day++)
    {
      add_day (&flow, &told, sw_tags_add (&self->tags, row, "TD"), day, x_pt, box_pt, row_pt,
               days == 0 || (days & SW_SET (day)) != 0 ? times : 0);
      x_pt += columns->day_pt[day];
    }
  add_rating (&flow, &told, sw_tags_add (&self->tags, row, "TD"), "field.effort", x_pt, columns->rating_pt, row_pt);
  add_rating (&flow, &told, sw_tags_add (&self->tags, row, "TD"), "field.pain", x_pt + columns->rating_pt,
              columns->rating_pt, row_pt);

  flow.y_pt += row_pt;
  sw_flow_box (&flow, flow.left_pt, flow.y_pt, flow.width_pt, 0.6, SW_GREY_RULE);
  sw_flow_space (&flow, 0.6);
  sw_composer_end (&flow, 0.0, SW_KEEP_TOGETHER);
}

static double
last_height (SwComposer *self)
{
  const SwBlock *last = g_ptr_array_index (self->blocks, self->blocks->len - 1);

  return last->strip.height_pt + last->strip.space_pt;
}

/* A list too long for the page goes on in another table with a head of its own, so that no page of boxes lacks its
 * days; no exercise goes on alone. @used_pt: what stands on the page already. */
static void
compose_tables (SwComposer *self,
                GPtrArray  *items,
                SwSet       days,
                double      used_pt,
                int        *number)
{
  Columns columns = choose_columns (self, items);
  double room_pt = self->style.page_height_pt - self->style.later_top_pt - self->style.bottom_pt;
  double row_pt = 0.0;
  SwTag *table = NULL;

  for (guint i = 0; i < items->len; i++)
    {
      double rows = i + 2 == items->len ? 2.5 : 1.5;

      if (table == NULL || (row_pt > 0.0 && used_pt + rows * row_pt > room_pt))
        {
          if (table != NULL)
            {
              sw_composer_set_last_keep (self, SW_KEEP_NEVER);
              used_pt = 0.0;
            }
          table = sw_tags_add (&self->tags, self->parent, "Table");
          compose_head (self, table, &columns);
          used_pt += last_height (self);
        }
      compose_row (self, table, &columns, g_ptr_array_index (items, i), days, ++*number);
      row_pt = MAX (row_pt, last_height (self));
      used_pt += last_height (self);
    }
}

/* Lines to write on when the week starts, and which week it is where there are several. @sheet: of the tick sheets */
static void
add_week (SwFlow *flow,
          int     sheet,
          int     weeks)
{
  SwComposer *self = flow->composer;
  double body_pt = self->style.body_pt;
  g_autofree char *n = sw_phrases_number (self->phrases, weeks, 0);
  g_autofree char *label = NULL;

  sw_flow_blank (flow, sw_phrases_get (self->phrases, "log.week-from"), 12.0 * body_pt,
                 g_strdup_printf ("sheet%d-week", sheet), g_strdup (sw_phrases_get (self->phrases, "field.week")));
  if (weeks < 2)
    return;
  label = sw_phrases_format (self->phrases, "log.week-of", "n", n, NULL);
  sw_flow_space (flow, 0.3 * body_pt);
  sw_flow_blank (flow, label, 4.0 * body_pt, g_strdup_printf ("sheet%d-week-number", sheet),
                 g_strdup (sw_phrases_get (self->phrases, "field.week-number")));
}

/* Returns: (transfer full): how the sheet is used */
static char *
dup_intro (SwComposer *self,
           GPtrArray  *items,
           int         weeks)
{
  const char *sentences[4] = { sw_phrases_get (self->phrases, "log.intro") };
  gboolean often = FALSE;
  int n = 1;

  for (guint i = 0; i < items->len; i++)
    often = often || sw_item_get_dose (items->pdata[i])->times_a_day > 1;
  if (often)
    sentences[n++] = sw_phrases_get (self->phrases, "log.rows");
  if (weeks > 1)
    sentences[n++] = sw_phrases_get (self->phrases, "log.copy");
  return sw_phrases_sentences (self->phrases, sentences);
}

static void
compose_session_log (SwComposer *self,
                     SwSession  *session,
                     gboolean    only,
                     int         sheet,
                     int        *number)
{
  double body_pt = self->style.body_pt;
  const char *title = sw_session_get_title (session);
  g_autoptr (GPtrArray) items = sw_compose_collect_exercises (session);
  int weeks = sw_progression_get_number (sw_programme_get_progression (self->programme), "weeks");
  g_autofree char *intro = dup_intro (self, items, weeks);
  g_autofree char *heading = NULL;
  SwFlow flow;

  if (items->len == 0)
    return;

  heading = only || *title == '\0'
                ? g_strdup (sw_phrases_get (self->phrases, "log.heading"))
                : sw_phrases_format (self->phrases, "log.heading-session", "session", title, NULL);
  /* A sheet is taken along alone; another one may stand below it. Where exercises are told in brief, so may all. */
  if (sheet == 1 && self->layout != SW_LAYOUT_COMPACT)
    sw_composer_set_last_keep (self, SW_KEEP_NEVER);
  sw_composer_open (self, "Sect");
  flow = sw_composer_begin (self);
  sw_flow_box (&flow, flow.left_pt, 0.0, flow.width_pt, 2.0, SW_GREY_TEXT);
  sw_flow_space (&flow, 2.0 + 0.35 * body_pt);
  sw_flow_text_in (&flow, SW_TEXT_SESSION, "H2", heading);
  sw_flow_space (&flow, 0.2 * body_pt);
  sw_flow_text_in (&flow, SW_TEXT_SMALL, "P", intro);
  sw_flow_space (&flow, 0.7 * body_pt);
  add_week (&flow, sheet, weeks);
  sw_flow_entry (&flow, NULL, heading, 1);
  sw_composer_end (&flow, 2.0 * body_pt, SW_KEEP_ALWAYS);

  compose_tables (self, items, sw_session_get_days (session), last_height (self), number);
  sw_composer_close (self);
  sw_composer_set_last_keep (self, SW_KEEP_FREE);
}

static void
compose_contact (SwComposer *self,
                 SwClinic   *clinic)
{
  double body_pt = self->style.body_pt;
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *from = sw_compose_clinic (self->phrases, clinic);
  const char *phone = sw_clinic_get_phone (clinic);
  const char *email = sw_clinic_get_email (clinic);

  if (*from != '\0')
    g_ptr_array_add (lines, g_strdup (from));
  if (*phone != '\0')
    g_ptr_array_add (lines, sw_phrases_format (self->phrases, "contact.phone", "phone", phone, NULL));
  if (*email != '\0')
    g_ptr_array_add (lines, sw_phrases_format (self->phrases, "contact.email", "email", email, NULL));
  if (*sw_clinic_get_address (clinic) != '\0')
    g_ptr_array_add (lines, g_strdup (sw_clinic_get_address (clinic)));

  sw_composer_open (self, "Sect");
  if (lines->len > 0)
    sw_composer_paragraph (self, SW_TEXT_SECTION, "H2", NULL, sw_phrases_get (self->phrases, "contact.heading"),
                           1.6 * body_pt, SW_KEEP_ALWAYS);
  for (guint i = 0; i < lines->len; i++)
    sw_composer_paragraph (self, SW_TEXT_BODY, "P", NULL, g_ptr_array_index (lines, i), 0.1 * body_pt,
                           SW_KEEP_TOGETHER);
  sw_composer_paragraph (self, SW_TEXT_SMALL, "P", NULL, sw_phrases_get (self->phrases, "contact.supports"),
                         0.6 * body_pt, SW_KEEP_FREE);
  sw_composer_close (self);
}

/* A line to sign on. In a form name and date can be typed; between them is room for the signature. */
static void
add_signature (SwFlow     *column,
               const char *key,
               const char *name_key,
               const char *date_key)
{
  const struct
  {
    const char *key;
    SwFieldKind kind;
    double start;
    double share;
  } fields[] = { { name_key, SW_FIELD_WORDS, 0.0, 0.4 }, { date_key, SW_FIELD_NUMBER, 0.72, 0.28 } };
  SwComposer *self = column->composer;
  double body_pt = self->style.body_pt;
  double field_pt = 1.5 * sw_style_get_size_pt (&self->style, SW_TEXT_TABLE);

  sw_flow_space (column, 2.6 * body_pt);
  sw_flow_box (column, column->left_pt, column->y_pt, column->width_pt, 0.8, SW_GREY_TEXT);
  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    sw_flow_field (column, self->parent, fields[i].kind, column->left_pt + fields[i].start * column->width_pt,
                   column->y_pt - field_pt, fields[i].share * column->width_pt, field_pt,
                   g_strdup (strchr (fields[i].key, '.') + 1),
                   g_strdup (sw_phrases_get (self->phrases, fields[i].key)));
  sw_flow_space (column, 0.8 + 0.1 * body_pt);
  sw_flow_text_in (column, SW_TEXT_SMALL, "P", sw_phrases_get (self->phrases, key));
}

/* Two lines to sign on, side by side where there is room. */
static void
compose_signatures (SwComposer *self)
{
  double body_pt = self->style.body_pt;
  SwFlow flow = sw_composer_begin (self);
  SwFlow second;

  if (self->style.columns)
    flow.width_pt = (flow.width_pt - self->style.column_gap_pt) / 2.0;
  second = flow;
  add_signature (&flow, "sign.client", "field.client-name", "field.client-date");
  if (self->style.columns)
    second.left_pt += flow.width_pt + self->style.column_gap_pt;
  else
    second.y_pt = flow.y_pt;
  add_signature (&second, "sign.therapist", "field.therapist-name", "field.therapist-date");
  flow.y_pt = MAX (flow.y_pt, second.y_pt);
  sw_composer_end (&flow, 1.0 * body_pt, SW_KEEP_FREE);
}

/**
 * sw_compose_back:
 *
 * Composes what comes after the exercises: the plan over the weeks, the tick sheets, whom to ask, lines to sign on.
 */
void
sw_compose_back (SwComposer  *self,
                 SwProgramme *programme)
{
  GListModel *sessions = G_LIST_MODEL (sw_programme_get_sessions (programme));
  guint n_sessions = g_list_model_get_n_items (sessions);
  int number = 0;

  if (sw_composer_shows (self, SW_PAGE_PART_PLAN))
    sw_compose_weeks (self, programme);
  for (guint i = 0; sw_composer_shows (self, SW_PAGE_PART_LOG) && i < n_sessions; i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (sessions, i);

      compose_session_log (self, session, n_sessions == 1, (int) i + 1, &number);
    }

  compose_contact (self, sw_programme_get_clinic (programme));
  if (sw_composer_shows (self, SW_PAGE_PART_SIGNATURE))
    compose_signatures (self);
}
