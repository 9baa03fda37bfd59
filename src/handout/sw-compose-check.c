/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A self-check: a question, when to answer it and which answer is better, and boxes for the answer on the first day and
 * before the next visit beside what was measured last, a row for each side. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "sw-compose.h"
#include "sw-measure-words.h"
#include "sw-measurement.h"
#include "sw-telling.h"

#define CHECK_FRAME_PT 0.8
/* A box to write in is between so wide, in body text's sizes. */
#define LEAST_BOX 2.6
#define MOST_BOX 5.0
/* The picture of what is tested: its share of the width, its height for its width, and how many bytes of words may stand
 * beside it in one block. */
#define PICTURE_SHARE 0.24
#define TALLEST_PICTURE 0.8
#define LONGEST_BESIDE 600

/* Returns: where the text ends */
static double
add_cell (SwFlow     *flow,
          SwTag      *row,
          const char *name,
          const char *scope,
          double      left_pt,
          double      width_pt,
          const char *text)
{
  SwComposer *self = flow->composer;
  SwTag *tag = sw_tags_add (&self->tags, row, name);
  SwFlow cell = *flow;

  tag->scope = scope;
  cell.left_pt = left_pt;
  cell.width_pt = width_pt;
  sw_flow_text (&cell, SW_TEXT_TABLE_STRONG, tag, NULL, text);
  return cell.y_pt;
}

static char **
split_words (const char *text)
{
  g_autofree char *folded = g_utf8_casefold (text, -1);

  return g_regex_split_simple ("[^\\pL\\pN]+", folded, 0, 0);
}

/* Whether the question asks for what the test measured: it has every word of the test's name, two at least. */
static gboolean
asks_for (const char *question,
          const char *test)
{
  g_auto (GStrv) asked = split_words (question);
  g_auto (GStrv) named = split_words (test);
  guint n = 0;

  for (guint i = 0; named[i] != NULL; i++)
    {
      if (*named[i] == '\0')
        continue;
      if (!g_strv_contains ((const char *const *) asked, named[i]))
        return FALSE;
      n++;
    }

  return n >= 2;
}

/* What was measured last of what the check asks for; NULL for nothing. Owned by the programme. */
static SwMeasurement *
find_start (SwComposer *self,
            SwItem     *item)
{
  GListModel *measurements = G_LIST_MODEL (sw_programme_get_measurements (self->programme));
  SwMeasurement *found = NULL;

  for (guint i = 0; i < g_list_model_get_n_items (measurements); i++)
    {
      g_autoptr (SwMeasurement) measurement = g_list_model_get_item (measurements, i);

      if (sw_measurement_get_measure (measurement) == sw_item_get_measure (item)
          && asks_for (sw_item_get_title (item), sw_measurement_get_test (measurement))
          && (found == NULL || strcmp (sw_measurement_get_date (measurement), sw_measurement_get_date (found)) >= 0))
        found = measurement;
    }
  return found;
}

/* Returns: (nullable): the value that was measured, for a row of the table */
static char *
dup_start (SwComposer    *self,
           SwMeasurement *start,
           const char    *row_key)
{
  double value;

  if (g_str_equal (row_key, "check.left"))
    value = sw_measurement_get_left (start);
  else if (g_str_equal (row_key, "check.right"))
    value = sw_measurement_get_right (start);
  else
    value = sw_measurement_get_both (start);
  return isnan (value) ? NULL : sw_measure_words (self->phrases, value, sw_measurement_get_measure (start));
}

/* Returns: (nullable): what stands over the measured values: the day, which is not the client's own first day */
static char *
dup_start_head (SwComposer    *self,
                SwMeasurement *start)
{
  g_autofree char *day = NULL;
  g_autofree char *text = NULL;
  GString *head;

  if (start == NULL)
    return NULL;
  if (*sw_measurement_get_date (start) == '\0')
    return g_strdup (sw_phrases_get (self->phrases, "check.measured"));
  day = sw_phrases_date (self->phrases, sw_measurement_get_date (start));
  text = sw_phrases_format (self->phrases, "check.measured-on", "date", day, NULL);
  head = g_string_new (text);
  /* The column is narrow, and a date may go on in the next line. */
  g_string_replace (head, "\302\240", " ", 0);
  return g_string_free (head, FALSE);
}

/* Returns: (nullable): the phrase that says which answer is better, as far as the programme does */
static const char *
get_better_key (SwItem *item)
{
  gboolean time = sw_item_get_measure (item) == SW_MEASURE_SECONDS;

  switch (sw_item_get_better (item))
    {
    case SW_BETTER_HIGHER:
      return time ? "check.longer-better" : "check.higher-better";
    case SW_BETTER_LOWER:
      return time ? "check.shorter-better" : "check.lower-better";
    case SW_BETTER_NOT_STATED:
    default:
      return NULL;
    }
}

/* A self-check while it is composed. */
typedef struct
{
  const char *question;
  const char *unit;
  int number;
} Check;

/* "How long can you stand on one leg? Left, First day: seconds" */
static char *
dup_label (SwComposer  *self,
           const Check *check,
           const char  *side,
           const char  *day)
{
  return sw_phrases_format (self->phrases, "field.check", "question", check->question, "side", side, "day", day,
                            "unit", check->unit, NULL);
}

/* How wide a box to write in is, and whether the unit behind it has room; else it stands below. */
typedef struct
{
  double left_pt;
  double column_pt;
  double box_pt;
  double height_pt;
  gboolean unit_below;
} Answer;

static Answer
plan_answer (SwComposer *self,
             double      column_pt,
             const char *unit)
{
  double body_pt = self->style.body_pt;
  double spare_pt;
  int width;
  Answer answer = { .column_pt = column_pt, .height_pt = 1.9 * body_pt };

  pango_layout_get_size (sw_composer_get_layout (self, SW_TEXT_TABLE, -1.0, NULL, unit), &width, NULL);
  spare_pt = column_pt - (double) width / PANGO_SCALE - 1.2 * body_pt;
  answer.unit_below = spare_pt < LEAST_BOX * body_pt;
  answer.box_pt = MIN (answer.unit_below ? 0.9 * column_pt : spare_pt, MOST_BOX * body_pt);
  return answer;
}

/* An empty box to write in and the unit. @name, @label: (transfer full): of the field. Returns: where both end */
static double
add_answer (SwFlow       *flow,
            SwTag        *row,
            const Answer *answer,
            const char   *unit,
            char         *name,
            char         *label)
{
  SwComposer *self = flow->composer;
  double left_pt = answer->left_pt;
  double box_pt = answer->box_pt;
  double height_pt = answer->height_pt;
  SwTag *tag = sw_tags_add (&self->tags, row, "TD");
  SwFlow cell = *flow;
  double edges[4][4] = {
    { left_pt, flow->y_pt, box_pt, 0.9 },
    { left_pt, flow->y_pt + height_pt - 0.9, box_pt, 0.9 },
    { left_pt, flow->y_pt, 0.9, height_pt },
    { left_pt + box_pt - 0.9, flow->y_pt, 0.9, height_pt },
  };

  for (guint i = 0; i < G_N_ELEMENTS (edges); i++)
    sw_flow_box (&cell, edges[i][0], edges[i][1], edges[i][2], edges[i][3], SW_GREY_TEXT);
  sw_flow_field (&cell, tag, SW_FIELD_NUMBER, left_pt + 0.9, flow->y_pt + 0.9, box_pt - 1.8, height_pt - 1.8, name,
                 label);
  if (answer->unit_below)
    {
      cell.left_pt = left_pt;
      cell.width_pt = answer->column_pt;
      cell.y_pt += height_pt;
    }
  else
    {
      cell.left_pt = left_pt + box_pt + 0.4 * self->style.body_pt;
      cell.width_pt = answer->column_pt - box_pt - 0.4 * self->style.body_pt;
      cell.y_pt += 0.5 * (height_pt - 1.36 * sw_style_get_size_pt (&self->style, SW_TEXT_TABLE));
    }
  sw_flow_text (&cell, SW_TEXT_TABLE, self->form ? sw_tags_add (&self->tags, tag, "Span") : tag, NULL, unit);
  return MAX (cell.y_pt, flow->y_pt + height_pt);
}

static guint
list_rows (SwSide      side,
           const char *keys[2])
{
  switch (side)
    {
    case SW_SIDE_EACH:
    case SW_SIDE_ALTERNATING:
      keys[0] = "check.left";
      keys[1] = "check.right";
      return 2;
    case SW_SIDE_LEFT:
      keys[0] = "check.left";
      return 1;
    case SW_SIDE_RIGHT:
      keys[0] = "check.right";
      return 1;
    case SW_SIDE_BOTH:
    default:
      keys[0] = "check.result";
      return 1;
    }
}

/* The columns: the side, what was measured if anything was, the two days. Returns: where they end */
static double
add_head (SwFlow        *flow,
          SwTag         *table,
          const double   lefts_pt[4],
          const char    *start,
          const char    *days[2])
{
  SwComposer *self = flow->composer;
  SwTag *row = sw_tags_add (&self->tags, table, "TR");
  const char *const texts[] = { sw_phrases_get (self->phrases, "check.side"), start, days[0], days[1] };
  double bottom_pt = flow->y_pt;

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      double end_pt = i < 3 ? lefts_pt[i + 1] : flow->left_pt + flow->width_pt;
      double cell_pt;

      if (texts[i] == NULL)
        continue;
      if (i == 0 && start == NULL)
        end_pt = lefts_pt[2];
      cell_pt = add_cell (flow, row, "TH", "Column", lefts_pt[i], end_pt - lefts_pt[i] - 0.3 * self->style.body_pt,
                          texts[i]);
      bottom_pt = MAX (bottom_pt, cell_pt);
    }
  return bottom_pt;
}

/* A line for the day on which the answer is due. */
static void
add_next_date (SwFlow *flow)
{
  SwComposer *self = flow->composer;

  sw_flow_space (flow, 0.4 * self->style.body_pt);
  sw_flow_blank (flow, sw_phrases_get (self->phrases, "check.next-date"), 12.0 * self->style.body_pt,
                 g_strdup_printf ("check%d-next-visit", self->n_checks),
                 g_strdup (sw_phrases_get (self->phrases, "field.next-visit")));
}

static void
add_table (SwFlow *flow,
           SwItem *item)
{
  SwComposer *self = flow->composer;
  double body_pt = self->style.body_pt;
  const char *question = sw_item_get_title (item);
  const Check check = {
    sw_text_is_set (question) ? question : sw_phrases_get (self->phrases, "check.heading"),
    sw_measure_unit_words (self->phrases, sw_item_get_measure (item)),
    ++self->n_checks,
  };
  const char *days[2]
      = { sw_phrases_get (self->phrases, "check.first-day"), sw_phrases_get (self->phrases, "check.next-visit") };
  const char *keys[2] = { NULL, NULL };
  guint n_rows = list_rows (sw_item_get_dose (item)->side, keys);
  SwMeasurement *start = find_start (self, item);
  g_autofree char *start_head = dup_start_head (self, start);
  double side_pt = (start != NULL ? 0.15 : 0.26) * flow->width_pt;
  double start_pt = start != NULL ? 0.27 * flow->width_pt : 0.0;
  double column_pt = (flow->width_pt - side_pt - start_pt) / 2.0;
  double lefts_pt[4] = { flow->left_pt, flow->left_pt + side_pt, flow->left_pt + side_pt + start_pt,
                         flow->left_pt + side_pt + start_pt + column_pt };
  Answer answer = plan_answer (self, column_pt, check.unit);
  SwTag *table = sw_tags_add (&self->tags, self->parent, "Table");

  flow->y_pt = add_head (flow, table, lefts_pt, start_head, days) + 0.2 * body_pt;
  for (guint i = 0; i < n_rows; i++)
    {
      const char *side = sw_phrases_get (self->phrases, keys[i]);
      SwTag *row = sw_tags_add (&self->tags, table, "TR");
      SwFlow label = *flow;
      double bottom_pt;

      label.y_pt += 0.5 * (answer.height_pt - 1.36 * sw_style_get_size_pt (&self->style, SW_TEXT_TABLE));
      bottom_pt = add_cell (&label, row, "TH", "Row", lefts_pt[0], side_pt, side);
      if (start != NULL)
        {
          g_autofree char *value = dup_start (self, start, keys[i]);

          add_cell (&label, row, "TD", NULL, lefts_pt[1], start_pt, value != NULL ? value : "–");
        }
      for (guint day = 0; day < G_N_ELEMENTS (days); day++)
        {
          double answer_pt;

          answer.left_pt = lefts_pt[2 + day];
          answer_pt = add_answer (flow, row, &answer, check.unit,
                                  g_strdup_printf ("check%d-row%u-day%u", check.number, i + 1, day + 1),
                                  dup_label (self, &check, side, days[day]));
          bottom_pt = MAX (bottom_pt, answer_pt);
        }
      flow->y_pt = bottom_pt + 0.3 * body_pt;
    }
  add_next_date (flow);
}

/* Returns: (transfer full): when to answer, and which answer is better */
static char *
dup_how (SwComposer *self,
         SwItem     *item)
{
  const char *key = get_better_key (item);
  const char *const sentences[]
      = { sw_phrases_get (self->phrases, "check.when"), key != NULL ? sw_phrases_get (self->phrases, key) : NULL, NULL };

  return sw_phrases_sentences (self->phrases, sentences);
}

/* The exercise that the check tests, and its number; NULL for none. Owned by the programme. */
static SwItem *
find_tested (SwComposer *self,
             SwItem     *check,
             int        *number)
{
  g_autoptr (GPtrArray) items = sw_programme_dup_items (self->programme);

  *number = 0;
  for (guint i = 0; i < items->len; i++)
    {
      if (sw_item_get_kind (items->pdata[i]) != SW_ITEM_EXERCISE)
        continue;
      ++*number;
      if (g_str_equal (sw_exercise_get_id (sw_item_get_exercise (items->pdata[i])), sw_item_get_pictured (check)))
        return items->pdata[i];
    }
  return NULL;
}

/* What to do, in one column. */
static void
add_words (SwFlow *flow,
           SwItem *item)
{
  SwComposer *self = flow->composer;
  g_autofree char *how = dup_how (self, item);

  if (*sw_item_get_title (item) != '\0')
    sw_flow_text_in (flow, SW_TEXT_BODY, "P", sw_item_get_title (item));
  if (*sw_item_get_note (item) != '\0')
    sw_flow_text_in (flow, SW_TEXT_SMALL, "P", sw_item_get_note (item));
  sw_flow_text_in (flow, SW_TEXT_SMALL, "P", how);
}

static void
compose_table (SwComposer *self,
               SwItem     *item)
{
  SwFlow flow = sw_composer_begin (self);

  add_table (&flow, item);
  sw_composer_end (&flow, 0.5 * self->style.body_pt, SW_KEEP_FREE);
}

/* What to do, and beside it the picture of the exercise that is tested; the table beside it, too, unless the print is
 * large. Returns: whether there is such a picture, and room for it */
static gboolean
compose_with_picture (SwComposer *self,
                      SwItem     *item)
{
  int number;
  SwItem *tested = find_tested (self, item, &number);
  g_autofree char *n = sw_phrases_number (self->phrases, number, 0);
  g_autofree char *caption = NULL;
  SwTelling telling;
  SwFlow flow;
  SwFlow picture;

  if (tested == NULL || strlen (sw_item_get_title (item)) + strlen (sw_item_get_note (item)) > LONGEST_BESIDE)
    return FALSE;
  sw_telling_init (&telling, self, tested, sw_programme_get_client (self->programme));
  if (!sw_telling_load_figure (&telling, NULL) || telling.figure == NULL)
    return FALSE;

  flow = picture = sw_composer_begin (self);
  picture.width_pt = PICTURE_SHARE * flow.width_pt;
  picture.left_pt += flow.width_pt - picture.width_pt;
  flow.width_pt -= picture.width_pt + self->style.column_gap_pt;
  add_words (&flow, item);
  if (self->style.columns)
    {
      sw_flow_space (&flow, 0.5 * self->style.body_pt);
      add_table (&flow, item);
    }
  sw_card_add_picture (&picture, &telling, picture.width_pt, TALLEST_PICTURE);
  caption = sw_phrases_format (self->phrases, "caption.as-exercise", "n", n, "name", telling.text->name, NULL);
  sw_flow_text_in (&picture, SW_TEXT_SMALL, "P", caption);
  flow.y_pt = MAX (flow.y_pt, picture.y_pt);
  sw_composer_end (&flow, 0.1 * self->style.body_pt, self->style.columns ? SW_KEEP_FREE : SW_KEEP_TOGETHER);
  if (!self->style.columns)
    compose_table (self, item);
  return TRUE;
}

/* A block for each part, as long as it may be. */
static void
compose_words (SwComposer *self,
               SwItem     *item)
{
  double space_pt = 0.1 * self->style.body_pt;
  g_autofree char *how = dup_how (self, item);

  if (*sw_item_get_title (item) != '\0')
    sw_composer_paragraph (self, SW_TEXT_BODY, "P", NULL, sw_item_get_title (item), space_pt, SW_KEEP_TOGETHER);
  if (*sw_item_get_note (item) != '\0')
    sw_composer_paragraph (self, SW_TEXT_SMALL, "P", NULL, sw_item_get_note (item), space_pt, SW_KEEP_TOGETHER);
  sw_composer_paragraph (self, SW_TEXT_SMALL, "P", NULL, how, space_pt, SW_KEEP_TOGETHER);
}

/**
 * sw_compose_find_check:
 *
 * Returns: (transfer full) (nullable): the first self-check of a session
 */
SwItem *
sw_compose_find_check (SwSession *session)
{
  GListModel *sections = G_LIST_MODEL (sw_session_get_sections (session));

  for (guint i = 0; i < g_list_model_get_n_items (sections); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);
      GListModel *items = G_LIST_MODEL (sw_section_get_items (section));

      for (guint k = 0; k < g_list_model_get_n_items (items); k++)
        {
          g_autoptr (SwItem) item = g_list_model_get_item (items, k);

          if (sw_item_get_kind (item) == SW_ITEM_SELF_CHECK)
            return g_steal_pointer (&item);
        }
    }

  return NULL;
}

/**
 * sw_compose_check_name:
 * @item: an item of the kind self-check
 *
 * Returns: (transfer full): what its heading says: with the session's title where there are several sessions
 */
char *
sw_compose_check_name (SwComposer *self,
                       SwItem     *item)
{
  GListModel *sessions = G_LIST_MODEL (sw_programme_get_sessions (self->programme));

  for (guint i = 0; g_list_model_get_n_items (sessions) > 1 && i < g_list_model_get_n_items (sessions); i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (sessions, i);
      g_autoptr (GPtrArray) items = sw_session_dup_items (session);

      if (*sw_session_get_title (session) != '\0' && g_ptr_array_find (items, item, NULL))
        return sw_phrases_format (self->phrases, "check.heading-session", "session", sw_session_get_title (session), NULL);
    }

  return g_strdup (sw_phrases_get (self->phrases, "check.heading"));
}

/**
 * sw_compose_check:
 * @item: an item of the kind self-check
 * @heading: structure type of its heading
 */
void
sw_compose_check (SwComposer *self,
                  SwItem     *item,
                  const char *heading)
{
  double body_pt = self->style.body_pt;
  g_autofree char *name = sw_compose_check_name (self, item);
  SwFlow flow;

  sw_composer_open (self, "Sect");
  sw_composer_open_frame (self, CHECK_FRAME_PT);
  flow = sw_composer_begin (self);
  sw_flow_entry (&flow, sw_item_get_id (item), NULL, 0);
  sw_flow_text_in (&flow, SW_TEXT_SECTION, heading, name);
  sw_composer_end (&flow, 1.5 * body_pt, SW_KEEP_ALWAYS);

  if (!compose_with_picture (self, item))
    {
      compose_words (self, item);
      compose_table (self, item);
    }
  sw_composer_close_frame (self);
  sw_composer_close (self);
}
