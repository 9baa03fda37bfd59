/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A self-check: a question and boxes for the answer on the first and on the last day, a row for each side. */
#include "config.h"

#include "sw-compose.h"

#define CHECK_FRAME_PT 0.8

static const char *
measure_key (SwMeasure measure)
{
  static const char *const keys[] = {
    [SW_MEASURE_SECONDS] = "check.seconds",
    [SW_MEASURE_REPETITIONS] = "check.repetitions",
    [SW_MEASURE_DEGREES] = "check.degrees",
    [SW_MEASURE_CENTIMETRES] = "check.centimetres",
    [SW_MEASURE_KILOGRAMS] = "check.kilograms",
    [SW_MEASURE_NEWTONS] = "check.newtons",
    [SW_MEASURE_RATING_0_TO_10] = "check.rating-0-to-10",
  };

  return keys[measure];
}

static void
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

/* An empty box to write in, the unit behind it. @name, @label: (transfer full): of the field */
static void
add_answer (SwFlow     *flow,
            SwTag      *row,
            double      left_pt,
            double      column_pt,
            double      height_pt,
            const char *unit,
            char       *name,
            char       *label)
{
  SwComposer *self = flow->composer;
  double box_pt = MIN (0.5 * column_pt, 5.0 * self->style.body_pt);
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
  cell.left_pt = left_pt + box_pt + 0.4 * self->style.body_pt;
  cell.width_pt = column_pt - box_pt - 0.4 * self->style.body_pt;
  cell.y_pt += 0.5 * (height_pt - 1.36 * sw_style_get_size_pt (&self->style, SW_TEXT_TABLE));
  sw_flow_text (&cell, SW_TEXT_TABLE, self->form ? sw_tags_add (&self->tags, tag, "Span") : tag, NULL, unit);
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

static void
add_table (SwFlow *flow,
           SwItem *item)
{
  SwComposer *self = flow->composer;
  double body_pt = self->style.body_pt;
  double label_pt = 0.26 * flow->width_pt;
  double column_pt = 0.37 * flow->width_pt;
  double height_pt = 1.9 * body_pt;
  const char *question = sw_item_get_title (item);
  const Check check = {
    sw_text_is_set (question) ? question : sw_phrases_get (self->phrases, "check.heading"),
    sw_phrases_get (self->phrases, measure_key (sw_item_get_measure (item))),
    ++self->n_checks,
  };
  const char *const days[]
      = { sw_phrases_get (self->phrases, "check.first-day"), sw_phrases_get (self->phrases, "check.last-day") };
  const char *keys[2] = { NULL, NULL };
  guint n_rows = list_rows (sw_item_get_dose (item)->side, keys);
  SwTag *table = sw_tags_add (&self->tags, self->parent, "Table");
  SwTag *row = sw_tags_add (&self->tags, table, "TR");
  double left_pt = flow->left_pt;

  add_cell (flow, row, "TH", "Column", left_pt, label_pt, sw_phrases_get (self->phrases, "check.side"));
  for (guint i = 0; i < G_N_ELEMENTS (days); i++)
    add_cell (flow, row, "TH", "Column", left_pt + label_pt + i * column_pt, column_pt, days[i]);
  sw_flow_space (flow, 1.6 * sw_style_get_size_pt (&self->style, SW_TEXT_TABLE));

  for (guint i = 0; i < n_rows; i++)
    {
      const char *side = sw_phrases_get (self->phrases, keys[i]);
      SwFlow label = *flow;

      row = sw_tags_add (&self->tags, table, "TR");
      label.y_pt += 0.5 * (height_pt - 1.36 * sw_style_get_size_pt (&self->style, SW_TEXT_TABLE));
      add_cell (&label, row, "TH", "Row", left_pt, label_pt, side);
      for (guint day = 0; day < G_N_ELEMENTS (days); day++)
        add_answer (flow, row, left_pt + label_pt + day * column_pt, column_pt, height_pt, check.unit,
                    g_strdup_printf ("check%d-row%u-day%u", check.number, i + 1, day + 1),
                    dup_label (self, &check, side, days[day]));
      sw_flow_space (flow, height_pt + 0.3 * body_pt);
    }
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
  SwFlow flow;

  sw_composer_open (self, "Sect");
  sw_composer_open_frame (self, CHECK_FRAME_PT);
  flow = sw_composer_begin (self);
  sw_flow_entry (&flow, sw_item_get_id (item), NULL, 0);
  sw_flow_text_in (&flow, SW_TEXT_SECTION, heading, sw_phrases_get (self->phrases, "check.heading"));
  sw_composer_end (&flow, 1.5 * body_pt, SW_KEEP_ALWAYS);

  if (*sw_item_get_title (item) != '\0')
    sw_composer_paragraph (self, SW_TEXT_BODY, "P", NULL, sw_item_get_title (item), 0.1 * body_pt, SW_KEEP_TOGETHER);
  if (*sw_item_get_note (item) != '\0')
    sw_composer_paragraph (self, SW_TEXT_SMALL, "P", NULL, sw_item_get_note (item), 0.1 * body_pt, SW_KEEP_TOGETHER);

  flow = sw_composer_begin (self);
  add_table (&flow, item);
  sw_composer_end (&flow, 0.5 * body_pt, SW_KEEP_FREE);
  sw_composer_close_frame (self);
  sw_composer_close (self);
}
