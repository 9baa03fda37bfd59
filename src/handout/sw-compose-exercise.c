/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One exercise: what it is called and what for, then its parts (sw-telling-parts.c) where they fit best
 * (sw-telling-places.c). */
#include "config.h"

#include <string.h>

#include <glib/gi18n.h>

#include "sw-compose.h"
#include "sw-handout.h"
#include "sw-telling.h"

/* A note beyond this is no use in a column, and costly to measure in several. */
#define LONGEST_COLUMN_NOTE 1000
#define FRAME_PT 1.0
/* A picture in large print is no taller than this share of the page. */
#define TALLEST_PICTURE 0.40
/* What an exercise is for stands beside its number unless it is longer than this. */
#define LONGEST_PURPOSE 300

/**
 * sw_flow_add_number:
 * @tag: the element it belongs to
 * @number: the exercise's
 * @size_pt: of the name beside it
 *
 * The number in a black square, as on the tick sheet; white with a frame when ink is saved. The column goes on to the
 * right of it.
 */
void
sw_flow_add_number (SwFlow     *flow,
                    SwTag      *tag,
                    const char *number,
                    double      size_pt)
{
  SwComposer *self = flow->composer;
  PangoLayout *layout = sw_composer_get_layout (self, SW_TEXT_SECTION, -1.0, NULL, number);
  double height_pt = 1.45 * size_pt;
  SwFlow digits = *flow;
  double square_pt;
  double indent_pt;
  int width;
  int height;

  pango_layout_get_size (layout, &width, &height);
  square_pt = MAX (height_pt, (double) width / PANGO_SCALE + 0.5 * size_pt);
  indent_pt = MAX (height_pt + 0.55 * size_pt, square_pt + 0.4 * size_pt);
  sw_flow_box (flow, flow->left_pt, flow->y_pt, square_pt, height_pt, SW_GREY_TEXT);
  g_array_index (flow->block->pieces, SwPiece, flow->block->pieces->len - 1).radius_pt = 0.2 * size_pt;
  if (self->style.save_ink)
    {
      sw_flow_box (flow, flow->left_pt + FRAME_PT, flow->y_pt + FRAME_PT, square_pt - 2.0 * FRAME_PT,
                   height_pt - 2.0 * FRAME_PT, 1.0);
      g_array_index (flow->block->pieces, SwPiece, flow->block->pieces->len - 1).radius_pt = 0.2 * size_pt - FRAME_PT;
    }
  digits.left_pt += (square_pt - (double) width / PANGO_SCALE) / 2.0;
  digits.y_pt += (height_pt - (double) height / PANGO_SCALE) / 2.0;
  digits.width_pt = square_pt;
  sw_flow_text (&digits, SW_TEXT_SECTION, sw_tags_add (&self->tags, tag, "Span"), NULL, number);
  g_array_index (flow->block->pieces, SwPiece, flow->block->pieces->len - 1).grey = self->style.save_ink ? 0.0 : 1.0;

  flow->left_pt += indent_pt;
  flow->width_pt -= indent_pt;
}

/* The number, then the name and what for. */
static void
compose_heading (SwTelling  *telling,
                 const char *heading)
{
  SwComposer *self = telling->composer;
  double name_pt = sw_style_get_size_pt (&self->style, SW_TEXT_NAME);
  g_autofree char *number = g_strdup_printf ("%d", ++self->n_exercises);
  g_autofree char *outline = g_strdup_printf ("%s  %s", number, telling->text->name);
  SwTag *tag = sw_tags_add (&self->tags, self->parent, heading);
  SwFlow flow = sw_composer_begin (self);
  gboolean short_purpose = strlen (telling->text->purpose) <= LONGEST_PURPOSE;

  sw_flow_entry (&flow, sw_item_get_id (telling->item), outline, 2);
  sw_flow_add_number (&flow, tag, number, name_pt);
  self->text_language = telling->language;
  sw_flow_text (&flow, SW_TEXT_NAME, sw_tags_add (&self->tags, tag, "Span"), NULL, telling->text->name);
  if (short_purpose && sw_text_is_set (telling->text->purpose))
    sw_flow_text_in (&flow, telling->role, "P", telling->text->purpose);
  flow.y_pt = MAX (flow.y_pt, 1.45 * name_pt);
  sw_composer_end (&flow, 1.15 * self->style.body_pt, SW_KEEP_ALWAYS);
  if (!short_purpose)
    sw_composer_paragraph (self, telling->role, "P", NULL, telling->text->purpose, 0.0, SW_KEEP_ALWAYS);
  self->text_language = NULL;
}

/**
 * sw_telling_init:
 * @item: an item of the kind exercise
 * @client: whose precautions and units count
 */
void
sw_telling_init (SwTelling  *telling,
                 SwComposer *composer,
                 SwItem     *item,
                 SwClient   *client)
{
  const SwExerciseText *text = sw_exercise_get_text (sw_item_get_exercise (item), composer->language);

  *telling = (SwTelling){
    .composer = composer,
    .item = item,
    .client = client,
    .text = text,
    .language = sw_composer_find_other_language (composer, text->language),
  };
}

/* A client who works one side alone sees that side. */
static gboolean
shows_other_side (SwItem *item)
{
  return sw_exercise_is_mirrored_for (sw_item_get_exercise (item), sw_item_get_dose (item)->side);
}

/**
 * sw_compose_expect_picture:
 * @item: an exercise
 *
 * Begins to make its picture, which will be asked for.
 */
void
sw_compose_expect_picture (SwComposer *self,
                           SwItem     *item)
{
  SwFigureSpec *spec = sw_exercise_get_figure (sw_item_get_exercise (item));

  if (spec != NULL)
    sw_measured_expect_figure (self->measured, spec, shows_other_side (item));
}

/**
 * sw_compose_picture:
 * @item: an exercise
 * @error: return location for an error of figures
 *
 * Returns: (transfer none) (nullable): its picture; %NULL with an error when that cannot be solved, without one when
 *   there is none
 */
SwFigure *
sw_compose_picture (SwComposer  *self,
                    SwItem      *item,
                    GError     **error)
{
  SwFigureSpec *spec = sw_exercise_get_figure (sw_item_get_exercise (item));

  return spec != NULL ? sw_measured_get_figure (self->measured, spec, shows_other_side (item), error) : NULL;
}

/* What a side of the dose means, as far as the picture tells. What is stretched is often not what moves. */
static SwDoseLimb
find_limb (SwComposer *self,
           SwItem     *item)
{
  const SwExerciseFacts *facts = sw_exercise_get_facts (sw_item_get_exercise (item));
  SwFigure *figure = sw_compose_picture (self, item, NULL);
  SwBodySide drawn;
  gboolean left;
  gboolean arm;

  if (figure == NULL || (facts->aims & SW_SET (SW_AIM_STRETCH)) != 0 || !sw_figure_find_moving_limb (figure, &left, &arm))
    return SW_DOSE_LIMB_NONE;

  drawn = sw_exercise_get_drawn_side (sw_item_get_exercise (item));
  if (drawn == SW_BODY_SIDE_NONE || (drawn == SW_BODY_SIDE_LEFT) == (left != shows_other_side (item)))
    return arm ? SW_DOSE_LIMB_ARM : SW_DOSE_LIMB_LEG;
  return !arm && facts->position == SW_POSITION_STANDING ? SW_DOSE_LIMB_STANDING_LEG : SW_DOSE_LIMB_NONE;
}

/**
 * sw_compose_dose:
 * @item: an exercise
 * @units: what the client reads loads in
 *
 * Returns: (transfer none): its dose in words
 */
const SwDoseWords *
sw_compose_dose (SwComposer *self,
                 SwItem     *item,
                 SwUnits     units)
{
  const SwDose *dose = sw_item_get_dose (item);
  /* Only where sides differ is each told apart; a card for the wall has no room for more words. */
  gboolean told = dose->extra_sets > 0 && self->layout != SW_LAYOUT_SUMMARY;
  SwDoseLimb limb = told ? find_limb (self, item) : SW_DOSE_LIMB_NONE;

  return sw_doses_tell (self->doses, dose, limb, units);
}

/**
 * sw_telling_load_figure:
 * @telling: an exercise; its picture is set
 * @error: return location for %SW_HANDOUT_ERROR_FIGURE
 *
 * Returns: whether the exercise has no picture or it could be solved
 */
gboolean
sw_telling_load_figure (SwTelling  *telling,
                        GError    **error)
{
  g_autoptr (GError) cause = NULL;

  telling->drawn = sw_exercise_get_drawn_side (sw_item_get_exercise (telling->item));
  telling->figure = sw_compose_picture (telling->composer, telling->item, &cause);
  if (cause == NULL)
    return TRUE;

  g_set_error (error, SW_HANDOUT_ERROR, SW_HANDOUT_ERROR_FIGURE,
               _("The picture of “%s” cannot be drawn: %s Take the exercise out, or mend its picture in the "
                 "catalogue."),
               telling->text->name, cause->message);
  return FALSE;
}

/* With room to spare the picture is large and every word has the size the client asked for; else the picture is
 * small and what is looked up less often comes in smaller print. */
static void
choose_sizes (SwTelling *telling)
{
  SwComposer *self = telling->composer;
  guint index = (guint) self->n_exercises;
  gboolean large = !self->style.columns || (self->large != NULL && g_array_index (self->large, gboolean, index));

  telling->figure_width_pt = large ? self->style.large_figure_width_pt : self->style.figure_width_pt;
  telling->gap_pt = (large ? 0.7 : 0.36) * self->style.body_pt;
  telling->role = large ? SW_TEXT_BODY : SW_TEXT_SMALL;
  telling->steps_role = SW_TEXT_BODY;
}

static void
compose_usual (SwTelling  *telling,
               const char *heading)
{
  SwComposer *self = telling->composer;

  compose_heading (telling, heading);
  if (self->style.columns && strlen (sw_item_get_note (telling->item)) <= LONGEST_COLUMN_NOTE
      && sw_telling_compose_columns (telling))
    return;
  telling->figure_width_pt = self->style.large_figure_width_pt;
  sw_telling_compose_single_column (telling);
}

static void
compose_in_one_column (SwTelling  *telling,
                       const char *heading,
                       double      figure_width_pt)
{
  telling->figure_width_pt = figure_width_pt;
  compose_heading (telling, heading);
  sw_telling_compose_single_column (telling);
}

/* How many pages the exercise would take with that width of its picture; leaves no trace. @first: the first block of the
 * page it begins on, headings of its session and section included; @torn: (out): whether the steps go on over that page,
 * away from the picture */
static guint
count_pages (SwTelling  *telling,
             const char *heading,
             double      figure_width_pt,
             guint       first,
             gboolean   *torn)
{
  SwComposer *self = telling->composer;
  const SwStyle *style = &self->style;
  double room_pt = style->page_height_pt - style->later_top_pt - style->bottom_pt;
  guint n_blocks = self->blocks->len;
  guint n_tags = self->tags.all->len;
  int n_exercises = self->n_exercises;
  g_autoptr (GArray) strips = g_array_new (FALSE, FALSE, sizeof (SwStrip));
  g_autoptr (GArray) starts = NULL;

  compose_in_one_column (telling, heading, figure_width_pt);
  for (guint i = first; i < self->blocks->len; i++)
    g_array_append_val (strips, ((SwBlock *) g_ptr_array_index (self->blocks, i))->strip);
  starts = sw_break_pages ((const SwStrip *) (void *) strips->data, strips->len, room_pt, room_pt);
  *torn = starts->len > 1 && telling->last_step >= first + g_array_index (starts, guint, 1);

  g_ptr_array_set_size (self->blocks, (int) n_blocks);
  g_ptr_array_set_size (self->tags.all, (int) n_tags);
  self->n_exercises = n_exercises;
  return starts->len;
}

/* Blocks that a page may not end after belong to what comes next. */
static guint
find_first_on_page (SwComposer *self)
{
  guint first = self->blocks->len;

  while (first > 0 && ((SwBlock *) g_ptr_array_index (self->blocks, first - 1))->strip.keep == SW_KEEP_ALWAYS)
    first--;
  return first;
}

/* In large print an exercise has its pages to itself: the picture takes what room there is on as few of them as can be,
 * with the steps on the same page if that can be. */
static void
compose_large (SwTelling  *telling,
               const char *heading)
{
  static const double shares[] = { 1.0, 0.85, 0.7, 0.55, 0.46, 0.4 };
  SwComposer *self = telling->composer;
  const SwStyle *style = &self->style;
  guint first = find_first_on_page (self);
  double best_pt = style->large_figure_width_pt;
  guint fewest = G_MAXUINT;
  gboolean best_torn = TRUE;

  for (guint i = 0; telling->figure != NULL && i < G_N_ELEMENTS (shares); i++)
    {
      double width_pt = shares[i] * self->width_pt;
      double height_pt;
      gboolean torn;
      guint n_pages;

      sw_figure_measure (telling->figure, style->figure_width_pt, &height_pt);
      width_pt = MIN (width_pt, TALLEST_PICTURE * style->page_height_pt * style->figure_width_pt / height_pt);
      n_pages = count_pages (telling, heading, width_pt, first, &torn);
      if (n_pages < fewest || (n_pages == fewest && best_torn && !torn))
        {
          fewest = n_pages;
          best_torn = torn;
          best_pt = width_pt;
        }
    }

  compose_in_one_column (telling, heading, best_pt);
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
  SwTelling telling;

  sw_measured_begin_part (self->measured);
  sw_telling_init (&telling, self, item, client);
  if (!sw_telling_load_figure (&telling, error))
    return FALSE;
  choose_sizes (&telling);
  if (self->layout == SW_LAYOUT_LARGE_PRINT)
    sw_composer_start_page (self);

  sw_composer_open (self, "Sect");
  if (self->layout == SW_LAYOUT_LARGE_PRINT)
    compose_large (&telling, heading);
  else
    compose_usual (&telling, heading);
  sw_composer_close (self);
  sw_composer_set_last_keep (self, SW_KEEP_FREE);
  return TRUE;
}
