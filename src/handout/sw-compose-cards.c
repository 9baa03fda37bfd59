/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Exercises as cards, several beside one another: with their steps for those who have done them before, or only with
 * picture, name and dose for the wall. */
#include "config.h"

#include <string.h>

#include "sw-compose.h"
#include "sw-telling.h"

#define RULE_PT 0.8
/* A picture takes this share of a card that has steps; what is beside it is the dose. */
#define PICTURE_SHARE 0.44
/* A picture is no higher than this share of the room's width, else it is drawn narrower. */
#define TALLEST_PICTURE 0.80
/* A note beyond this has no room in a card: the exercise is told in full. */
#define LONGEST_CARD_NOTE 220
/* So has an exercise whose card would be taller than this share of a page. */
#define TALLEST_CARD 0.62

static void
add_name (SwFlow     *flow,
          SwTelling  *telling,
          const char *heading)
{
  SwComposer *self = telling->composer;
  double size_pt = sw_style_get_size_pt (&self->style, SW_TEXT_STRONG);
  g_autofree char *number = g_strdup_printf ("%d", ++self->n_exercises);
  g_autofree char *outline = g_strdup_printf ("%s  %s", number, telling->text->name);
  g_autofree char *name = sw_text_dup_short (telling->text->name);
  SwTag *tag = sw_tags_add (&self->tags, self->parent, heading);
  SwFlow line = *flow;

  sw_flow_entry (flow, sw_item_get_id (telling->item), outline, 2);
  sw_flow_add_number (&line, tag, number, size_pt);
  line.y_pt += 0.1 * size_pt;
  self->text_language = telling->language;
  sw_flow_text (&line, SW_TEXT_STRONG, sw_tags_add (&self->tags, tag, "Span"), NULL, name);
  self->text_language = NULL;
  flow->y_pt = MAX (line.y_pt, flow->y_pt + 1.45 * size_pt) + 0.3 * size_pt;
}

static void
add_picture (SwFlow    *flow,
             SwTelling *telling,
             double     width_pt,
             double     tallest)
{
  SwFlow column = *flow;
  double height_pt;

  if (telling->figure == NULL)
    return;
  sw_figure_measure (telling->figure, width_pt, &height_pt);
  telling->figure_width_pt = width_pt * MIN (1.0, tallest * width_pt / height_pt);
  column.left_pt += (width_pt - telling->figure_width_pt) / 2.0;
  column.width_pt = telling->figure_width_pt;
  sw_part_add_figure (&column, telling);
  flow->y_pt = column.y_pt;
}

/* Picture and dose beside one another, what to do below. How to get ready is left to those pages that tell all. */
static void
add_steps_card (SwFlow     *flow,
                SwTelling  *telling,
                const char *heading)
{
  double gap_pt = telling->gap_pt;
  SwFlow picture;
  SwFlow dose;

  add_name (flow, telling, heading);
  picture = dose = *flow;
  if (telling->figure != NULL)
    {
      double picture_pt = PICTURE_SHARE * flow->width_pt;

      add_picture (&picture, telling, picture_pt, TALLEST_PICTURE);
      dose.left_pt += picture_pt + 2.0 * gap_pt;
      dose.width_pt -= picture_pt + 2.0 * gap_pt;
    }
  sw_part_add_amount (&dose, telling, 0.0);
  sw_part_add_short_limits (&dose, telling, 0.5 * gap_pt);
  flow->y_pt = MAX (picture.y_pt, dose.y_pt);
  sw_part_add_care (flow, telling, gap_pt);
  sw_part_add_note (flow, telling, gap_pt);
  sw_part_add_steps (flow, telling, gap_pt);
  sw_part_add_easier (flow, telling, gap_pt);
}

/* For the wall: the picture as large as it may be, and how much. */
static void
add_wall_card (SwFlow     *flow,
               SwTelling  *telling,
               const char *heading)
{
  add_name (flow, telling, heading);
  add_picture (flow, telling, flow->width_pt, flow->composer->tallest_picture);
  sw_part_add_amount (flow, telling, 0.2 * flow->composer->style.body_pt);
}

static gboolean
init_telling (SwTelling   *telling,
              SwComposer  *self,
              SwItem      *item,
              SwClient    *client,
              GError     **error)
{
  sw_telling_init (telling, self, item, client);
  telling->gap_pt = 0.32 * self->style.body_pt;
  telling->role = SW_TEXT_SMALL;
  telling->steps_role = SW_TEXT_SMALL;
  return sw_telling_load_figure (telling, error);
}

static void
add_card (SwFlow     *flow,
          SwTelling  *telling,
          const char *heading)
{
  SwComposer *self = flow->composer;

  sw_composer_open (self, "Sect");
  sw_flow_box (flow, flow->left_pt, flow->y_pt, flow->width_pt, RULE_PT, SW_GREY_TEXT);
  sw_flow_space (flow, RULE_PT + 0.4 * self->style.body_pt);
  if (self->layout == SW_LAYOUT_SUMMARY)
    add_wall_card (flow, telling, heading);
  else
    add_steps_card (flow, telling, heading);
  sw_composer_close (self);
}

/* How tall the card would be; leaves no trace. */
static double
measure_card (SwTelling  *telling,
              double      width_pt,
              const char *heading)
{
  SwComposer *self = telling->composer;
  guint n_tags = self->tags.all->len;
  int n_exercises = self->n_exercises;
  SwFlow flow = sw_composer_begin (self);

  flow.width_pt = width_pt;
  add_card (&flow, telling, heading);
  sw_block_free (flow.block);
  g_ptr_array_set_size (self->tags.all, (int) n_tags);
  self->n_exercises = n_exercises;
  return flow.y_pt;
}

static gboolean
fits_card (SwTelling  *telling,
           double      width_pt,
           const char *heading)
{
  SwComposer *self = telling->composer;

  return self->layout == SW_LAYOUT_SUMMARY
         || (strlen (sw_item_get_note (telling->item)) <= LONGEST_CARD_NOTE
             && measure_card (telling, width_pt, heading) <= TALLEST_CARD * self->style.page_height_pt);
}

/**
 * sw_compose_cards:
 * @items: (element-type SwItem): exercises that follow one another
 * @client: whose precautions and units count
 * @heading: structure type of the headings
 * @error: return location for %SW_HANDOUT_ERROR_FIGURE
 *
 * Sets exercises as cards, as many beside one another as the composer's @n_cards says. One that is too long for a card
 * is told in full between them.
 *
 * Returns: whether every picture could be drawn
 */
gboolean
sw_compose_cards (SwComposer  *self,
                  GPtrArray   *items,
                  SwClient    *client,
                  const char  *heading,
                  GError     **error)
{
  double gap_pt = self->style.column_gap_pt;
  int n_cards = self->n_cards;
  double width_pt = (self->width_pt - (n_cards - 1) * gap_pt) / n_cards;
  SwFlow row;
  double bottom_pt = 0.0;
  int n = 0;

  for (guint i = 0; i < items->len; i++)
    {
      SwItem *item = g_ptr_array_index (items, i);
      SwTelling telling;
      SwFlow card;
      gboolean fits;

      if (!init_telling (&telling, self, item, client, error))
        {
          if (n > 0)
            sw_block_free (row.block);
          return FALSE;
        }
      fits = fits_card (&telling, width_pt, heading);
      if (n > 0 && (!fits || n == n_cards))
        {
          row.y_pt = bottom_pt;
          sw_composer_end (&row, 0.7 * self->style.body_pt, SW_KEEP_FREE);
          n = 0;
        }
      if (!fits)
        {
          if (!sw_compose_exercise (self, item, client, heading, error))
            return FALSE;
          continue;
        }
      if (n == 0)
        {
          row = sw_composer_begin (self);
          bottom_pt = 0.0;
        }
      card = row;
      card.left_pt += n * (width_pt + gap_pt);
      card.width_pt = width_pt;
      add_card (&card, &telling, heading);
      bottom_pt = MAX (bottom_pt, card.y_pt);
      n++;
    }

  if (n > 0)
    {
      row.y_pt = bottom_pt;
      sw_composer_end (&row, 0.7 * self->style.body_pt, SW_KEEP_FREE);
    }
  return TRUE;
}
