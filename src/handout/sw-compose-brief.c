/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Exercises in brief, for those who have done them before: a card the width of the page, its words in columns beside
 * the picture, so that neither rows nor pages stay half empty. */
#include "config.h"

#include <string.h>

#include "sw-compose.h"
#include "sw-telling.h"

/* The picture's share of a card, in a column of its own or above the dose, and how tall it is at most for its width. */
#define PICTURE_SHARE 0.24
#define WIDER_PICTURE_SHARE 0.37
#define TALLEST_PICTURE 1.1
/* The first column's share of what is left beside a picture in a column of its own: the steps need longer lines. */
#define FIRST_SHARE 0.46
/* Characters of Noto Sans are about half as wide as the size says; a column of fewer than these reads badly. */
#define FEWEST_IN_COLUMN 19.0
#define FEWEST_OF_THREE 22.0
/* A note beyond this has no room on a card: the exercise is told in full. */
#define LONGEST_CARD_NOTE 220
/* So has an exercise whose card would be taller than this share of a page. */
#define TALLEST_CARD 0.84

/* What stands in the columns after the dose, in reading order; the steps begin where the last one ends. */
static const SwAddPart parts[] = {
  sw_part_add_care, sw_part_add_note, sw_part_add_set_up, sw_part_add_steps, sw_part_add_easier,
};

/* How many of them may stand in the first column. */
#define MOST_IN_FIRST 3

/* The columns of a card. @under: whether the last one lies under the others. */
typedef struct
{
  double picture_pt;
  double first_pt;
  double first_left_pt;
  double last_pt;
  double last_left_pt;
  gboolean picture_apart;
  gboolean under;
} Columns;

static gboolean
is_wide_enough (SwComposer *self,
                double      width_pt,
                double      fewest)
{
  return width_pt >= fewest * 0.5 * sw_style_get_size_pt (&self->style, SW_TEXT_SMALL);
}

/* Three columns: picture, dose, steps; in larger print two, the picture above the dose; then what to do lies under
 * picture and dose. */
static Columns
choose_columns (SwComposer *self,
                gboolean    picture)
{
  double gap_pt = self->style.column_gap_pt;
  double beside_pt = picture ? PICTURE_SHARE * self->width_pt + gap_pt : 0.0;
  double wider_pt = WIDER_PICTURE_SHARE * self->width_pt;
  Columns columns = {
    .picture_pt = beside_pt - gap_pt,
    .first_left_pt = self->left_pt + beside_pt,
    .first_pt = FIRST_SHARE * (self->width_pt - beside_pt - gap_pt),
    .picture_apart = TRUE,
  };

  if (!is_wide_enough (self, columns.first_pt, FEWEST_OF_THREE))
    {
      columns.picture_apart = FALSE;
      columns.picture_pt = columns.first_pt = wider_pt;
      columns.first_left_pt = self->left_pt;
    }
  columns.last_left_pt = columns.first_left_pt + columns.first_pt + gap_pt;
  columns.last_pt = self->left_pt + self->width_pt - columns.last_left_pt;
  if (is_wide_enough (self, columns.first_pt, FEWEST_IN_COLUMN))
    return columns;

  beside_pt = picture ? wider_pt + gap_pt : 0.0;
  return (Columns){
    .picture_pt = wider_pt,
    .first_left_pt = self->left_pt + beside_pt,
    .first_pt = self->width_pt - beside_pt,
    .last_left_pt = self->left_pt,
    .last_pt = self->width_pt,
    .picture_apart = TRUE,
    .under = TRUE,
  };
}

/* Sets down everything below the name, with @n_first of the parts in the first column. */
static void
add_columns (SwFlow        *flow,
             SwTelling     *telling,
             const Columns *columns,
             guint          n_first)
{
  double gap_pt = telling->gap_pt;
  SwFlow picture = *flow;
  SwFlow first = *flow;
  SwFlow last = *flow;

  picture.left_pt = flow->composer->left_pt;
  first.left_pt = columns->first_left_pt;
  first.width_pt = columns->first_pt;
  last.left_pt = columns->last_left_pt;
  last.width_pt = columns->last_pt;
  sw_card_add_picture (&picture, telling, columns->picture_pt, TALLEST_PICTURE);
  if (!columns->picture_apart && telling->figure != NULL)
    first.y_pt = picture.y_pt + gap_pt;
  sw_part_add_amount (&first, telling, 0.0);
  sw_part_add_short_limits (&first, telling, 0.0);
  for (guint i = 0; i < n_first; i++)
    parts[i] (&first, telling, gap_pt);
  if (columns->under)
    last.y_pt = MAX (picture.y_pt, first.y_pt);
  /* The first thing in a column needs no space before it. */
  for (guint i = n_first; i < G_N_ELEMENTS (parts); i++)
    parts[i] (&last, telling, last.y_pt > flow->y_pt ? gap_pt : 0.0);
  flow->y_pt = MAX (picture.y_pt, MAX (first.y_pt, last.y_pt));
}

/* The line of a heading above it stands for the card's own. */
static gboolean
follows_heading (SwComposer *self)
{
  return self->blocks->len > 0
         && ((SwBlock *) g_ptr_array_index (self->blocks, self->blocks->len - 1))->strip.keep == SW_KEEP_ALWAYS;
}

static void
add_card (SwFlow     *flow,
          SwTelling  *telling,
          const char *heading,
          guint       n_first)
{
  SwComposer *self = flow->composer;
  Columns columns = choose_columns (self, telling->figure != NULL);
  SwFlow name;

  sw_composer_open (self, "Sect");
  if (!follows_heading (self))
    sw_card_add_rule (flow);
  name = *flow;
  sw_card_add_name (&name, telling, heading);
  flow->y_pt = name.y_pt;
  add_columns (flow, telling, &columns, n_first);
  sw_composer_close (self);
}

/* How tall the card would be; leaves no trace. */
static double
measure_card (SwTelling  *telling,
              const char *heading,
              guint       n_first)
{
  SwComposer *self = telling->composer;
  gboolean measures = self->measures;
  guint n_tags = self->tags.all->len;
  int n_exercises = self->n_exercises;
  SwFlow flow = sw_composer_begin (self);

  self->measures = TRUE;
  add_card (&flow, telling, heading, n_first);
  self->measures = measures;
  sw_block_free (flow.block);
  g_ptr_array_set_size (self->tags.all, (int) n_tags);
  self->n_exercises = n_exercises;
  return flow.y_pt;
}

/**
 * sw_compose_brief:
 * @item: an item of the kind exercise
 * @client: whose precautions and units count
 * @heading: structure type of the heading
 * @error: return location for %SW_HANDOUT_ERROR_FIGURE
 *
 * Sets an exercise as a card; one that is too long for that is told in full.
 *
 * Returns: whether its picture could be drawn
 */
gboolean
sw_compose_brief (SwComposer  *self,
                  SwItem      *item,
                  SwClient    *client,
                  const char  *heading,
                  GError     **error)
{
  SwTelling telling;
  SwFlow flow;
  double lowest_pt = G_MAXDOUBLE;
  guint best = 0;

  if (!sw_card_begin (&telling, self, item, client, error))
    return FALSE;
  if (strlen (sw_item_get_note (item)) > LONGEST_CARD_NOTE)
    return sw_compose_exercise (self, item, client, heading, error);

  for (guint n_first = 0; n_first <= MOST_IN_FIRST; n_first++)
    {
      double height_pt = measure_card (&telling, heading, n_first);

      if (height_pt < lowest_pt - 0.01)
        {
          lowest_pt = height_pt;
          best = n_first;
        }
    }
  if (lowest_pt > TALLEST_CARD * self->style.page_height_pt)
    return sw_compose_exercise (self, item, client, heading, error);

  flow = sw_composer_begin (self);
  add_card (&flow, &telling, heading, best);
  sw_composer_end (&flow, 0.8 * self->style.body_pt, SW_KEEP_FREE);
  return TRUE;
}
