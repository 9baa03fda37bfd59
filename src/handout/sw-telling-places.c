/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where the parts of an exercise stand: in columns beside its picture, arranged to take the least room, or, when they
 * are too long for that or the print too large, one below the other. */
#include "config.h"

#include "sw-note-words.h"
#include "sw-telling.h"

/* How tall a part would be in a column of that width; leaves no trace. */
static double
measure_part (SwTelling *telling,
              SwAddPart  add,
              double     width_pt)
{
  SwComposer *self = telling->composer;
  gboolean measures = self->measures;
  guint n_tags = self->tags.all->len;
  SwFlow flow = sw_composer_begin (self);
  double top_pt = flow.y_pt;

  flow.width_pt = width_pt;
  self->measures = TRUE;
  add (&flow, telling, 0.0);
  self->measures = measures;
  sw_block_free (flow.block);
  g_ptr_array_set_size (self->tags.all, (int) n_tags);
  return flow.y_pt - top_pt;
}

/* The columns of an exercise: beside the picture a narrow and a wide one, below them two halves. */
typedef enum
{
  BELOW_PICTURE,
  BELOW_STEPS,
  LEFT_HALF,
  RIGHT_HALF,
  N_PLACES,
} Place;

/* The parts that may stand in several places, in reading order, and the places each may take. */
static const struct
{
  SwAddPart add;
  gboolean allowed[N_PLACES];
} parts[] = {
  { sw_part_add_feel, { TRUE, FALSE, TRUE, TRUE } },
  { sw_part_add_form, { TRUE, FALSE, TRUE, TRUE } },
  { sw_part_add_errors, { FALSE, TRUE, TRUE, TRUE } },
  { sw_part_add_ways, { FALSE, TRUE, TRUE, TRUE } },
};

#define N_PARTS G_N_ELEMENTS (parts)

/* Tries every arrangement of the parts and keeps the lowest; of equals, the first. */
static double
choose_places (double left_pt,
               double right_pt,
               double gap_pt,
               double heights[N_PARTS][N_PLACES],
               Place  chosen[N_PARTS])
{
  double best_pt = G_MAXDOUBLE;
  guint n_ways = 1;

  for (guint i = 0; i < N_PARTS; i++)
    n_ways *= N_PLACES;

  for (guint way = 0; way < n_ways; way++)
    {
      double columns[N_PLACES] = { left_pt, right_pt, 0.0, 0.0 };
      gboolean allowed = TRUE;
      double total_pt;

      for (guint i = 0, digits = way; i < N_PARTS; i++, digits /= N_PLACES)
        {
          guint place = digits % N_PLACES;

          allowed = allowed && parts[i].allowed[place];
          if (heights[i][place] > 0.0)
            columns[place] += heights[i][place] + (columns[place] > 0.0 ? gap_pt : 0.0);
        }
      total_pt = MAX (columns[BELOW_PICTURE], columns[BELOW_STEPS]);
      if (columns[LEFT_HALF] > 0.0 || columns[RIGHT_HALF] > 0.0)
        total_pt += gap_pt + MAX (columns[LEFT_HALF], columns[RIGHT_HALF]);
      if (columns[RIGHT_HALF] > 0.0 && columns[LEFT_HALF] <= 0.0)
        allowed = FALSE;
      if (!allowed || total_pt >= best_pt - 0.01)
        continue;

      best_pt = total_pt;
      for (guint i = 0, digits = way; i < N_PARTS; i++, digits /= N_PLACES)
        chosen[i] = (Place) (digits % N_PLACES);
    }

  return best_pt;
}

static void
measure_parts (SwTelling    *telling,
               const double  widths[N_PLACES],
               double        heights[N_PARTS][N_PLACES])
{
  for (guint i = 0; i < N_PARTS; i++)
    {
      for (guint place = 0; place < N_PLACES; place++)
        heights[i][place] = 0.0;
      for (guint place = 0; place < RIGHT_HALF; place++)
        if (parts[i].allowed[place])
          heights[i][place] = measure_part (telling, parts[i].add, widths[place]);
      heights[i][RIGHT_HALF] = heights[i][LEFT_HALF];
    }
}

/* Sets the parts down, place by place. */
static void
add_parts (SwTelling   *telling,
           const Place  chosen[N_PARTS],
           double       gap_pt,
           SwFlow       columns[N_PLACES])
{
  double half_top_pt;

  for (Place place = BELOW_PICTURE; place < N_PLACES; place++)
    {
      if (place == LEFT_HALF)
        {
          half_top_pt = MAX (columns[BELOW_PICTURE].y_pt, columns[BELOW_STEPS].y_pt);
          columns[LEFT_HALF].y_pt = columns[RIGHT_HALF].y_pt = half_top_pt;
        }
      for (guint i = 0; i < N_PARTS; i++)
        if (chosen[i] == place)
          parts[i].add (&columns[place], telling, gap_pt);
    }
}

/**
 * sw_telling_compose_columns:
 *
 * Sets picture and caution at the left; how much, the therapist's note, which may change what the steps say, and what
 * to do at the right; the rest where it takes least room.
 *
 * Returns: %FALSE, having left no trace, for an exercise so long that it has to be told in one column
 */
gboolean
sw_telling_compose_columns (SwTelling *telling)
{
  SwComposer *self = telling->composer;
  double gap_pt = telling->gap_pt;
  guint n_tags = self->tags.all->len;
  SwFlow whole = sw_composer_begin (self);
  SwFlow columns[N_PLACES] = { whole, whole, whole, whole };
  double widths[N_PLACES];
  double heights[N_PARTS][N_PLACES];
  Place chosen[N_PARTS];

  columns[BELOW_PICTURE].width_pt = telling->figure_width_pt;
  columns[BELOW_STEPS].width_pt -= telling->figure_width_pt + self->style.column_gap_pt;
  columns[BELOW_STEPS].left_pt += telling->figure_width_pt + self->style.column_gap_pt;
  columns[LEFT_HALF].width_pt = columns[RIGHT_HALF].width_pt = (whole.width_pt - self->style.column_gap_pt) / 2.0;
  columns[RIGHT_HALF].left_pt += columns[LEFT_HALF].width_pt + self->style.column_gap_pt;
  for (guint place = 0; place < N_PLACES; place++)
    widths[place] = columns[place].width_pt;

  if (telling->figure != NULL)
    sw_part_add_figure (&columns[BELOW_PICTURE], telling);
  sw_part_add_caption (&columns[BELOW_PICTURE], telling, 0.0);
  sw_part_add_care (&columns[BELOW_PICTURE], telling, gap_pt);
  sw_part_add_dose (&columns[BELOW_STEPS], telling);
  sw_part_add_note (&columns[BELOW_STEPS], telling, gap_pt);
  sw_part_add_set_up (&columns[BELOW_STEPS], telling, gap_pt);
  sw_part_add_steps (&columns[BELOW_STEPS], telling, gap_pt);

  measure_parts (telling, widths, heights);
  if (choose_places (columns[BELOW_PICTURE].y_pt, columns[BELOW_STEPS].y_pt, gap_pt, heights, chosen)
      > 0.75 * self->style.page_height_pt)
    {
      sw_block_free (whole.block);
      g_ptr_array_set_size (self->tags.all, (int) n_tags);
      return FALSE;
    }

  add_parts (telling, chosen, gap_pt, columns);
  whole.y_pt = MAX (MAX (columns[BELOW_PICTURE].y_pt, columns[BELOW_STEPS].y_pt),
                    MAX (columns[LEFT_HALF].y_pt, columns[RIGHT_HALF].y_pt));
  sw_composer_end (&whole, gap_pt, SW_KEEP_TOGETHER);
  return TRUE;
}

static void
end_part (SwFlow *flow,
          double  space_pt)
{
  if (flow->y_pt > 0.0)
    sw_composer_end (flow, space_pt, SW_KEEP_TOGETHER);
  else
    sw_block_free (flow->block);
}

/* A block for each item, so that no list is too tall for a page. @number: whether the items are numbered. */
static void
compose_list (SwTelling  *telling,
              SwTextRole  role,
              SwSymbol    symbol,
              gboolean    number,
              char      **texts,
              double      space_pt)
{
  SwComposer *self = telling->composer;
  SwTag *list = sw_tags_add (&self->tags, self->parent, "L");

  list->numbering = number ? "Decimal" : "Disc";
  self->text_language = telling->language;
  for (guint i = 0; texts[i] != NULL; i++)
    sw_composer_item (self, role, list, symbol, number ? (int) i + 1 : 0, texts[i],
                      i == 0 ? space_pt : 0.12 * self->style.body_pt,
                      number && texts[i + 1] != NULL ? SW_KEEP_ALWAYS : SW_KEEP_TOGETHER);
  self->text_language = NULL;
}

static void
compose_labelled_list (SwTelling  *telling,
                       const char *key,
                       SwSymbol    symbol,
                       char      **texts)
{
  SwComposer *self = telling->composer;

  if (texts[0] == NULL)
    return;
  sw_composer_paragraph (self, SW_TEXT_LABEL, "P", NULL, sw_phrases_get (self->phrases, key), telling->gap_pt,
                         SW_KEEP_ALWAYS);
  compose_list (telling, telling->role, symbol, FALSE, texts, 0.05 * self->style.body_pt);
}

static void
compose_labelled (SwTelling  *telling,
                  const char *key,
                  const char *text)
{
  SwComposer *self = telling->composer;

  self->text_language = telling->language;
  if (sw_text_is_set (text))
    sw_composer_paragraph (self, telling->role, "P", sw_phrases_get (self->phrases, key), text, telling->gap_pt,
                           SW_KEEP_TOGETHER);
  self->text_language = NULL;
}

static void
compose_care (SwTelling *telling)
{
  SwComposer *self = telling->composer;
  g_autofree char *text = sw_telling_dup_care (telling);

  if (sw_text_is_set (text))
    sw_composer_boxed (self, SW_SYMBOL_TAKE_CARE, SW_CARE_FRAME_PT, telling->role,
                       sw_phrases_get (self->phrases, "care.heading"), text, telling->gap_pt, SW_KEEP_TOGETHER);
}

/* How tall dose and caution are beside the picture; leaves no trace. */
static double
measure_beside (SwTelling *telling,
                double     width_pt)
{
  return measure_part (telling, sw_part_add_care, width_pt) + telling->gap_pt
         + measure_part (telling, sw_part_add_dose_apart, width_pt);
}

/* The picture, and beside it, where lines stay long enough, the dose and the caution. */
static void
compose_picture_and_dose (SwTelling *telling)
{
  SwComposer *self = telling->composer;
  double beside_pt = self->width_pt - telling->figure_width_pt - self->style.column_gap_pt;
  gboolean beside = telling->figure != NULL && sw_style_has_room_beside (&self->style, telling->figure_width_pt)
                    && measure_beside (telling, beside_pt) < 0.5 * self->style.page_height_pt;
  SwFlow flow = sw_composer_begin (self);
  SwFlow column = flow;

  if (beside)
    flow.width_pt = telling->figure_width_pt;
  if (telling->figure != NULL)
    sw_part_add_figure (&flow, telling);
  sw_part_add_caption (&flow, telling, 0.0);
  if (beside)
    {
      column.left_pt += telling->figure_width_pt + self->style.column_gap_pt;
      column.width_pt = beside_pt;
      sw_part_add_dose (&column, telling);
      sw_part_add_care (&column, telling, telling->gap_pt);
      flow.y_pt = MAX (flow.y_pt, column.y_pt);
      end_part (&flow, telling->gap_pt);
      return;
    }

  end_part (&flow, telling->gap_pt);
  if (telling->figure != NULL)
    sw_composer_set_last_keep (self, SW_KEEP_ALWAYS);
  flow = sw_composer_begin (self);
  sw_part_add_dose (&flow, telling);
  end_part (&flow, telling->gap_pt);
  compose_care (telling);
}

/* A note too long for a column: a frame of its own, which may go on over pages. */
static void
compose_long_note (SwTelling *telling)
{
  SwComposer *self = telling->composer;
  g_autofree char *note = sw_note_words (self->phrases, self->programme, telling->item);
  g_auto (GStrv) lines = g_strsplit (note, "\n", -1);
  const char *heading = sw_phrases_get (self->phrases, "exercise.note");

  if (!sw_text_is_set (note))
    return;

  sw_composer_open_frame (self, SW_NOTE_FRAME_PT);
  for (guint i = 0; lines[i] != NULL; i++)
    sw_composer_paragraph (self, SW_TEXT_BODY, "P", i == 0 ? heading : NULL, lines[i],
                           i == 0 ? 0.6 * self->style.body_pt : 0.0, SW_KEEP_TOGETHER);
  sw_composer_close_frame (self);
}

/**
 * sw_telling_compose_single_column:
 *
 * Sets the exercise's parts one below the other, its picture as wide as the telling says, in blocks of their own that are never taller than a page.
 */
void
sw_telling_compose_single_column (SwTelling *telling)
{
  SwComposer *self = telling->composer;
  const SwExerciseText *text = telling->text;
  g_auto (GStrv) steps = sw_telling_dup_steps (telling);

  telling->gap_pt = 0.45 * self->style.body_pt;
  telling->role = SW_TEXT_SMALL;
  compose_picture_and_dose (telling);
  compose_long_note (telling);
  compose_labelled (telling, "exercise.set-up", text->set_up);
  if (steps[0] != NULL)
    compose_list (telling, SW_TEXT_BODY, SW_SYMBOL_BULLET, TRUE, steps, telling->gap_pt);
  telling->last_step = self->blocks->len - 1;
  compose_labelled (telling, "exercise.feel", text->feel);
  compose_labelled_list (telling, "exercise.form", SW_SYMBOL_TICK, text->form_points);
  if (sw_composer_shows (self, SW_PAGE_PART_MISTAKES))
    compose_labelled_list (telling, "exercise.errors", SW_SYMBOL_CROSS, text->errors);
  if (sw_composer_shows (self, SW_PAGE_PART_WAYS))
    {
      compose_labelled (telling, "exercise.easier", text->easier);
      if (sw_telling_tells_harder (telling))
        compose_labelled (telling, "exercise.harder", text->harder);
    }
}
