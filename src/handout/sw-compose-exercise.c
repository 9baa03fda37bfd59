/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One exercise: what it is called and what for, the picture, how much, how, what to mind. With room for two columns
 * the steps stand beside the picture they explain; else everything follows in one column. */
#include "config.h"

#include <string.h>

#include <glib/gi18n.h>

#include "sw-care.h"
#include "sw-compose.h"
#include "sw-dose-words.h"

#define NOTE_FRAME_PT 0.8
#define CARE_FRAME_PT 2.2
#define TALLEST_FIGURE 1.25

/* A note beyond this is no use in a column, and costly to measure in several. */
#define LONGEST_COLUMN_NOTE 1000

typedef struct
{
  SwComposer *composer;
  SwItem *item;
  SwClient *client;
  const SwExerciseText *text;
  SwFigure *figure;
  SwBodySide drawn;
  double figure_width_pt;
  double gap_pt;
  SwTextRole role;
} Exercise;

static gboolean
is_set (const char *text)
{
  return text != NULL && *text != '\0';
}

/* White space before a part, except at the top of a block. */
static void
add_gap (SwFlow *flow,
         double  space_pt)
{
  if (flow->y_pt > 0.0)
    sw_flow_space (flow, space_pt);
}

/* A small bold label that says what follows. */
static void
add_label (SwFlow     *flow,
           Exercise   *exercise,
           const char *key,
           double      space_pt)
{
  SwComposer *self = flow->composer;

  add_gap (flow, space_pt);
  sw_flow_text_in (flow, exercise->role == SW_TEXT_BODY ? SW_TEXT_STRONG : SW_TEXT_LABEL, "P", sw_phrases_get (self->phrases, key));
}

/* The number in a black square, as on the tick sheet, then the name. */
static void
compose_heading (Exercise   *exercise,
                 const char *heading)
{
  SwComposer *self = exercise->composer;
  double name_pt = sw_style_get_size_pt (&self->style, SW_TEXT_NAME);
  double square_pt = 1.45 * name_pt;
  double indent_pt = square_pt + 0.55 * name_pt;
  g_autofree char *number = g_strdup_printf ("%d", ++self->n_exercises);
  PangoLayout *layout = sw_composer_get_layout (self, SW_TEXT_SECTION, -1.0, NULL, number);
  SwTag *tag = sw_tags_add (&self->tags, self->parent, heading);
  SwFlow flow = sw_composer_begin (self);
  SwFlow digits = flow;
  int width;
  int height;

  pango_layout_get_size (layout, &width, &height);
  square_pt = MAX (square_pt, (double) width / PANGO_SCALE + 0.5 * name_pt);
  indent_pt = MAX (indent_pt, square_pt + 0.4 * name_pt);
  sw_flow_box (&flow, flow.left_pt, 0.0, square_pt, 1.45 * name_pt, SW_GREY_TEXT);
  g_array_index (flow.block->pieces, SwPiece, flow.block->pieces->len - 1).radius_pt = 0.2 * name_pt;
  digits.left_pt += (square_pt - (double) width / PANGO_SCALE) / 2.0;
  digits.y_pt = (1.45 * name_pt - (double) height / PANGO_SCALE) / 2.0;
  digits.width_pt = square_pt;
  sw_flow_text (&digits, SW_TEXT_SECTION, sw_tags_add (&self->tags, tag, "Span"), NULL, number);
  g_array_index (flow.block->pieces, SwPiece, flow.block->pieces->len - 1).grey = 1.0;

  flow.left_pt += indent_pt;
  flow.width_pt -= indent_pt;
  sw_flow_text (&flow, SW_TEXT_NAME, sw_tags_add (&self->tags, tag, "Span"), NULL, exercise->text->name);
  if (is_set (exercise->text->purpose))
    sw_flow_text_in (&flow, exercise->role, "P", exercise->text->purpose);
  flow.y_pt = MAX (flow.y_pt, 1.45 * name_pt);

  flow.block->item_id = g_strdup (sw_item_get_id (exercise->item));
  flow.block->starts_exercise = TRUE;
  flow.block->outline = g_strdup_printf ("%s  %s", number, exercise->text->name);
  flow.block->outline_level = 2;
  sw_composer_end (&flow, 1.15 * self->style.body_pt, SW_KEEP_ALWAYS);
}

/* Whoever works one side after the other needs to know that the picture shows only one of them. */
static void
add_caption (SwFlow   *flow,
             Exercise *exercise)
{
  SwComposer *self = flow->composer;
  SwSide worked = sw_item_get_dose (exercise->item)->side;

  if (exercise->drawn == SW_BODY_SIDE_NONE || (worked != SW_SIDE_EACH && worked != SW_SIDE_ALTERNATING))
    return;
  sw_flow_text_in (flow, SW_TEXT_SMALL, "P",
                   sw_phrases_get (self->phrases, exercise->drawn == SW_BODY_SIDE_RIGHT ? "exercise.shows-right"
                                                                                        : "exercise.shows-left"));
}

static void
add_figure (SwFlow   *flow,
            Exercise *exercise)
{
  SwComposer *self = flow->composer;
  double width_pt = MIN (flow->width_pt, exercise->figure_width_pt);
  double zoom = MAX (width_pt / self->style.figure_width_pt, 1.0);
  double height_pt = 0.0;
  SwTag *tag = sw_tags_add (&self->tags, self->parent, "Figure");
  SwPiece *piece;

  sw_figure_measure (exercise->figure, width_pt / zoom, &height_pt);
  height_pt = MIN (zoom * height_pt, TALLEST_FIGURE * width_pt);
  tag->alt = sw_figure_dup_text (exercise->figure, self->language);
  piece = sw_block_add (flow->block, SW_PIECE_FIGURE, tag, flow->left_pt, flow->y_pt, width_pt, height_pt);
  piece->figure = g_object_ref (exercise->figure);
  flow->y_pt += height_pt;
  add_caption (flow, exercise);
}

static void
add_sentences (SwFlow      *flow,
               SwTextRole   role,
               SwDoseWords *words)
{
  char **const lists[] = { words->how, words->when, words->limits };
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (lists); i++)
    for (guint j = 0; lists[i][j] != NULL; j++)
      g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "", lists[i][j]);

  if (text->len > 0)
    sw_flow_text_in (flow, role, "P", text->str);
}

/* How much: the one thing to find again at a glance, on a pale panel. */
static void
add_dose (SwFlow   *flow,
          Exercise *exercise)
{
  SwComposer *self = flow->composer;
  double pad_pt = 0.6 * self->style.body_pt;
  g_autoptr (SwDoseWords) words = sw_dose_words_new (self->phrases, sw_item_get_dose (exercise->item),
                                                     sw_client_get_units (exercise->client));
  guint panel_index = flow->block->pieces->len;
  SwFlow inner = *flow;
  SwPiece *panel;

  sw_flow_box (flow, flow->left_pt, flow->y_pt, flow->width_pt, 0.0, SW_GREY_PANEL);
  inner.left_pt += pad_pt;
  inner.width_pt -= 2.0 * pad_pt;
  inner.y_pt += 0.5 * pad_pt;
  sw_flow_text_in (&inner, SW_TEXT_AMOUNT, "P", words->amount);
  add_sentences (&inner, exercise->role, words);
  inner.y_pt += 0.5 * pad_pt;

  panel = &g_array_index (flow->block->pieces, SwPiece, panel_index);
  panel->height_pt = inner.y_pt - flow->y_pt;
  panel->radius_pt = 3.0;
  flow->y_pt = inner.y_pt;
}

static void
add_set_up (SwFlow   *flow,
            Exercise *exercise,
            double    space_pt)
{
  SwComposer *self = flow->composer;

  if (!is_set (exercise->text->set_up))
    return;
  add_gap (flow, space_pt);
  sw_flow_text (flow, exercise->role, sw_tags_add (&self->tags, self->parent, "P"),
                sw_phrases_get (self->phrases, "exercise.set-up"), exercise->text->set_up);
}

static void
add_steps (SwFlow   *flow,
           Exercise *exercise,
           double    space_pt)
{
  SwComposer *self = flow->composer;
  char **steps = exercise->text->steps;
  SwTag *list;

  if (steps[0] == NULL)
    return;

  list = sw_tags_add (&self->tags, self->parent, "L");
  list->numbering = "Decimal";
  for (guint i = 0; steps[i] != NULL; i++)
    {
      add_gap (flow, i == 0 ? space_pt : 0.1 * self->style.body_pt);
      sw_flow_numbered_item (flow, SW_TEXT_BODY, list, (int) i + 1, steps[i]);
    }
}

static void
add_list (SwFlow             *flow,
          Exercise           *exercise,
          const char         *key,
          SwSymbol            symbol,
          const char * const *texts,
          double              space_pt)
{
  if (texts[0] == NULL)
    return;
  add_label (flow, exercise, key, space_pt);
  sw_flow_list (flow, exercise->role, symbol, texts);
}

static void
add_labelled (SwFlow     *flow,
              Exercise   *exercise,
              const char *key,
              const char *text,
              double      space_pt)
{
  SwComposer *self = flow->composer;

  if (!is_set (text))
    return;
  add_gap (flow, space_pt);
  sw_flow_text (flow, exercise->role, sw_tags_add (&self->tags, self->parent, "P"),
                sw_phrases_get (self->phrases, key), text);
}

static void
add_feel (SwFlow   *flow,
          Exercise *exercise,
          double    space_pt)
{
  add_labelled (flow, exercise, "exercise.feel", exercise->text->feel, space_pt);
}

static void
add_form (SwFlow   *flow,
          Exercise *exercise,
          double    space_pt)
{
  add_list (flow, exercise, "exercise.form", SW_SYMBOL_TICK, (const char *const *) exercise->text->form_points, space_pt);
}

static void
add_errors (SwFlow   *flow,
            Exercise *exercise,
            double    space_pt)
{
  add_list (flow, exercise, "exercise.errors", SW_SYMBOL_CROSS, (const char *const *) exercise->text->errors, space_pt);
}

static void
add_ways (SwFlow   *flow,
          Exercise *exercise,
          double    space_pt)
{
  add_labelled (flow, exercise, "exercise.easier", exercise->text->easier, space_pt);
  add_labelled (flow, exercise, "exercise.harder", exercise->text->harder,
                is_set (exercise->text->easier) ? 0.1 * flow->composer->style.body_pt : space_pt);
}

typedef void (*AddPart) (SwFlow   *flow,
                         Exercise *exercise,
                         double    space_pt);

/* How tall a part would be in a column of that width; leaves no trace. */
static double
measure_part (Exercise *exercise,
              AddPart   add,
              double    width_pt)
{
  SwComposer *self = exercise->composer;
  guint n_tags = self->tags.all->len;
  SwFlow flow = sw_composer_begin (self);
  double top_pt = flow.y_pt;

  flow.width_pt = width_pt;
  add (&flow, exercise, 0.0);
  sw_block_free (flow.block);
  g_ptr_array_set_size (self->tags.all, (int) n_tags);
  return flow.y_pt - top_pt;
}

/* What the therapist says to this client: set apart by a thin frame and a speech bubble. */
static void
add_note (SwFlow   *flow,
          Exercise *exercise,
          double    space_pt)
{
  const char *note = sw_item_get_note (exercise->item);

  if (!is_set (note))
    return;
  add_gap (flow, space_pt);
  sw_flow_boxed (flow, SW_SYMBOL_NOTE, NOTE_FRAME_PT, SW_TEXT_BODY,
                 sw_phrases_get (flow->composer->phrases, "exercise.note"), note);
}

static char **
dup_care_words (Exercise *exercise)
{
  return sw_care_words (exercise->composer->phrases, sw_client_get_precautions (exercise->client),
                        sw_exercise_get_facts (sw_item_get_exercise (exercise->item))->cautions);
}

static void
add_care (SwFlow   *flow,
          Exercise *exercise,
          double    space_pt)
{
  g_auto (GStrv) words = dup_care_words (exercise);
  g_autofree char *text = g_strjoinv (" ", words);

  if (!is_set (text))
    return;
  add_gap (flow, space_pt);
  sw_flow_boxed (flow, SW_SYMBOL_TAKE_CARE, CARE_FRAME_PT, exercise->role,
                 sw_phrases_get (flow->composer->phrases, "care.heading"), text);
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
  AddPart add;
  gboolean allowed[N_PLACES];
} parts[] = {
  { add_feel, { TRUE, FALSE, TRUE, TRUE } },
  { add_form, { TRUE, FALSE, TRUE, TRUE } },
  { add_errors, { FALSE, TRUE, TRUE, TRUE } },
  { add_ways, { FALSE, TRUE, TRUE, TRUE } },
  { add_note, { FALSE, TRUE, TRUE, TRUE } },
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
measure_parts (Exercise     *exercise,
               const double  widths[N_PLACES],
               double        heights[N_PARTS][N_PLACES])
{
  for (guint i = 0; i < N_PARTS; i++)
    {
      for (guint place = 0; place < N_PLACES; place++)
        heights[i][place] = 0.0;
      for (guint place = 0; place < RIGHT_HALF; place++)
        if (parts[i].allowed[place])
          heights[i][place] = measure_part (exercise, parts[i].add, widths[place]);
      heights[i][RIGHT_HALF] = heights[i][LEFT_HALF];
    }
}

/* Sets the parts down, place by place. */
static void
add_parts (Exercise    *exercise,
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
          parts[i].add (&columns[place], exercise, gap_pt);
    }
}

/* Picture and caution at the left, how much and what to do at the right; the rest where it takes least room. Returns
 * FALSE, having left no trace, for an exercise so long that it has to be told in one column. */
static gboolean
compose_columns (Exercise *exercise)
{
  SwComposer *self = exercise->composer;
  double gap_pt = exercise->gap_pt;
  guint n_tags = self->tags.all->len;
  SwFlow whole = sw_composer_begin (self);
  SwFlow columns[N_PLACES] = { whole, whole, whole, whole };
  double widths[N_PLACES];
  double heights[N_PARTS][N_PLACES];
  Place chosen[N_PARTS];

  columns[BELOW_PICTURE].width_pt = exercise->figure_width_pt;
  columns[BELOW_STEPS].width_pt -= exercise->figure_width_pt + self->style.column_gap_pt;
  columns[BELOW_STEPS].left_pt += exercise->figure_width_pt + self->style.column_gap_pt;
  columns[LEFT_HALF].width_pt = columns[RIGHT_HALF].width_pt = (whole.width_pt - self->style.column_gap_pt) / 2.0;
  columns[RIGHT_HALF].left_pt += columns[LEFT_HALF].width_pt + self->style.column_gap_pt;
  for (guint place = 0; place < N_PLACES; place++)
    widths[place] = columns[place].width_pt;

  if (exercise->figure != NULL)
    add_figure (&columns[BELOW_PICTURE], exercise);
  add_care (&columns[BELOW_PICTURE], exercise, gap_pt);
  add_dose (&columns[BELOW_STEPS], exercise);
  add_set_up (&columns[BELOW_STEPS], exercise, gap_pt);
  add_steps (&columns[BELOW_STEPS], exercise, gap_pt);

  measure_parts (exercise, widths, heights);
  if (choose_places (columns[BELOW_PICTURE].y_pt, columns[BELOW_STEPS].y_pt, gap_pt, heights, chosen)
      > 0.75 * self->style.page_height_pt)
    {
      sw_block_free (whole.block);
      g_ptr_array_set_size (self->tags.all, (int) n_tags);
      return FALSE;
    }

  add_parts (exercise, chosen, gap_pt, columns);
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

/* A block for each step, so that no list is too tall for a page; but a page ends between two of them only when the
 * steps alone fill more than one. */
static void
compose_steps (Exercise *exercise)
{
  SwComposer *self = exercise->composer;
  char **steps = exercise->text->steps;
  SwTag *list;

  if (steps[0] == NULL)
    return;

  list = sw_tags_add (&self->tags, self->parent, "L");
  list->numbering = "Decimal";
  for (guint i = 0; steps[i] != NULL; i++)
    {
      SwFlow flow = sw_composer_begin (self);

      sw_flow_numbered_item (&flow, SW_TEXT_BODY, list, (int) i + 1, steps[i]);
      sw_composer_end (&flow, i == 0 ? exercise->gap_pt : 0.15 * self->style.body_pt,
                       steps[i + 1] != NULL ? SW_KEEP_ALWAYS : SW_KEEP_TOGETHER);
    }
}

/* The picture, and beside it, where lines stay long enough, the dose and the caution. */
static void
compose_picture_and_dose (Exercise *exercise)
{
  SwComposer *self = exercise->composer;
  SwFlow flow = sw_composer_begin (self);
  SwFlow beside = flow;

  if (exercise->figure != NULL)
    add_figure (&flow, exercise);
  if (exercise->figure != NULL && self->style.beside)
    {
      beside.left_pt += exercise->figure_width_pt + self->style.column_gap_pt;
      beside.width_pt -= exercise->figure_width_pt + self->style.column_gap_pt;
      add_dose (&beside, exercise);
      add_care (&beside, exercise, exercise->gap_pt);
      flow.y_pt = MAX (flow.y_pt, beside.y_pt);
      end_part (&flow, exercise->gap_pt);
      return;
    }

  end_part (&flow, exercise->gap_pt);
  flow = sw_composer_begin (self);
  add_dose (&flow, exercise);
  end_part (&flow, exercise->gap_pt);
  flow = sw_composer_begin (self);
  add_care (&flow, exercise, 0.0);
  end_part (&flow, exercise->gap_pt);
}

static void
compose_single_column (Exercise *exercise)
{
  static const AddPart rest[] = { add_feel, add_form, add_errors, add_ways };
  SwComposer *self = exercise->composer;
  SwFlow flow;

  exercise->figure_width_pt = self->style.large_figure_width_pt;
  exercise->gap_pt = 0.45 * self->style.body_pt;
  exercise->role = SW_TEXT_SMALL;
  compose_picture_and_dose (exercise);

  flow = sw_composer_begin (self);
  add_set_up (&flow, exercise, 0.0);
  end_part (&flow, exercise->gap_pt);
  compose_steps (exercise);

  for (guint i = 0; i < G_N_ELEMENTS (rest); i++)
    {
      flow = sw_composer_begin (self);
      rest[i] (&flow, exercise, 0.0);
      end_part (&flow, exercise->gap_pt);
    }
}

/* A note too long for a column: a frame of its own, which may go on over pages. */
static void
compose_long_note (Exercise *exercise)
{
  SwComposer *self = exercise->composer;
  g_auto (GStrv) lines = g_strsplit (sw_item_get_note (exercise->item), "\n", -1);
  const char *heading = sw_phrases_get (self->phrases, "exercise.note");

  if (!is_set (sw_item_get_note (exercise->item)))
    return;

  sw_composer_open_frame (self, NOTE_FRAME_PT);
  for (guint i = 0; lines[i] != NULL; i++)
    sw_composer_paragraph (self, SW_TEXT_BODY, "P", i == 0 ? heading : NULL, lines[i],
                           i == 0 ? 0.6 * self->style.body_pt : 0.0, SW_KEEP_TOGETHER);
  sw_composer_close_frame (self);
}

/* Which one side the picture is drawn for, if it is for one. */
static SwBodySide
find_drawn_side (SwFigureSpec *spec)
{
  const SwFigureContent *content = sw_figure_spec_get_content (spec);
  gboolean right = FALSE;
  gboolean left = FALSE;

  for (int i = 0; i < content->n_works; i++)
    {
      right = right || content->works[i].right;
      left = left || content->works[i].left;
    }

  if (right == left)
    return SW_BODY_SIDE_NONE;
  return right ? SW_BODY_SIDE_RIGHT : SW_BODY_SIDE_LEFT;
}

/* A client who works one side alone sees that side. */
static gboolean
is_mirrored (SwSide     worked,
             SwBodySide drawn)
{
  if (worked == SW_SIDE_LEFT)
    return drawn != SW_BODY_SIDE_LEFT;
  return worked == SW_SIDE_RIGHT && drawn == SW_BODY_SIDE_LEFT;
}


static gboolean
load_figure (Exercise *exercise,
             GError  **error)
{
  SwComposer *self = exercise->composer;
  SwFigureSpec *spec = sw_exercise_get_figure (sw_item_get_exercise (exercise->item));
  const char *id = sw_item_get_id (exercise->item);
  g_autoptr (GError) cause = NULL;

  if (spec == NULL)
    return TRUE;

  exercise->drawn = find_drawn_side (spec);
  exercise->figure = g_hash_table_lookup (self->figures, id);
  if (exercise->figure != NULL)
    return TRUE;

  exercise->figure
      = sw_figure_new (spec, is_mirrored (sw_item_get_dose (exercise->item)->side, exercise->drawn), &cause);
  if (exercise->figure != NULL)
    {
      g_hash_table_insert (self->figures, g_strdup (id), exercise->figure);
      return TRUE;
    }

  g_set_error (error, SW_HANDOUT_ERROR, SW_HANDOUT_ERROR_FIGURE,
               _("The picture of “%s” cannot be drawn: %s Take the exercise out, or mend its picture in the "
                 "catalogue."),
               exercise->text->name, cause->message);
  return FALSE;
}

/* With room to spare the picture is large and every word has the size the client asked for; else the picture is
 * small and what is looked up less often comes in smaller print. */
static void
choose_sizes (Exercise *exercise)
{
  SwComposer *self = exercise->composer;
  guint index = (guint) self->n_exercises;
  gboolean large = !self->style.columns || (self->large != NULL && g_array_index (self->large, gboolean, index));

  exercise->figure_width_pt = large ? self->style.large_figure_width_pt : self->style.figure_width_pt;
  exercise->gap_pt = (large ? 0.7 : 0.36) * self->style.body_pt;
  exercise->role = large ? SW_TEXT_BODY : SW_TEXT_SMALL;
}

/**
 * sw_compose_exercise:
 * @item: an item of the kind exercise
 * @client: whose precautions and units count
 * @heading: structure type of the heading, "H4" or "H5"
 * @error: return location for %SW_HANDOUT_ERROR_FIGURE
 *
 * Composes one exercise; a page may end after it, not within.
 *
 * Returns: whether its picture could be drawn
 */
gboolean
sw_compose_exercise (SwComposer  *self,
                     SwItem      *item,
                     SwClient    *client,
                     const char  *heading,
                     GError     **error)
{
  Exercise exercise = {
    .composer = self,
    .item = item,
    .client = client,
    .text = sw_exercise_get_text (sw_item_get_exercise (item), self->language),
  };

  if (!load_figure (&exercise, error))
    return FALSE;
  choose_sizes (&exercise);

  sw_composer_open (self, "Sect");
  compose_heading (&exercise, heading);
  if (!self->style.columns || strlen (sw_item_get_note (item)) > LONGEST_COLUMN_NOTE || !compose_columns (&exercise))
    {
      compose_single_column (&exercise);
      compose_long_note (&exercise);
    }
  sw_composer_close (self);
  sw_composer_set_last_keep (self, SW_KEEP_FREE);
  return TRUE;
}
