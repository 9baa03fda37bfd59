/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Exercises in brief, for those who have done them before: cards two beside one another, without the steps, which the
 * picture tells again to who knows them. Rows run on from one section to the next, so that none stays half empty: the
 * section's name stands in the first card of it, a rest at the end of the card before it. */
#include "config.h"

#include <string.h>

#include "sw-compose.h"
#include "sw-telling.h"

/* The picture's share of a card, and how tall it is at most for its width. */
#define PICTURE_SHARE 0.38
#define WIDE_PICTURE_SHARE 0.30
#define TALLEST_PICTURE 0.95
/* Characters of Noto Sans are about half as wide as the size says; in fewer than these a card stands by itself. */
#define FEWEST_IN_CARD 34.0
/* A note beyond this has no room on a card: the exercise is told in full. */
#define LONGEST_CARD_NOTE 220
/* So has an exercise whose card would be taller than this share of a page. */
#define TALLEST_CARD 0.6

/* What stands below picture and dose, in reading order. */
static const SwAddPart parts[]
    = { sw_part_add_caption, sw_part_add_care, sw_part_add_note, sw_part_add_set_up, sw_part_add_easier };

static void
clear_brief (gpointer data)
{
  SwBrief *brief = data;

  g_clear_object (&brief->item);
  g_clear_object (&brief->rest);
  g_free (brief->section);
}

/**
 * sw_briefs_new:
 *
 * Returns: (transfer full) (element-type SwBrief): no cards yet
 */
GArray *
sw_briefs_new (void)
{
  GArray *briefs = g_array_new (FALSE, FALSE, sizeof (SwBrief));

  g_array_set_clear_func (briefs, clear_brief);
  return briefs;
}

/**
 * sw_briefs_add:
 * @item: an item of the kind exercise
 * @section: (nullable): the name of the section that begins with it
 */
void
sw_briefs_add (GArray     *briefs,
               SwItem     *item,
               const char *section)
{
  SwBrief brief = { g_object_ref (item), g_strdup (section), NULL };

  g_array_append_val (briefs, brief);
}

/**
 * sw_briefs_add_rest:
 * @rest: an item of the kind rest
 *
 * Returns: whether there is a card at whose end it can stand
 */
gboolean
sw_briefs_add_rest (GArray *briefs,
                    SwItem *rest)
{
  SwBrief *last = briefs->len > 0 ? &g_array_index (briefs, SwBrief, briefs->len - 1) : NULL;

  if (last == NULL || last->rest != NULL || sw_text_is_set (sw_item_get_note (rest)))
    return FALSE;

  last->rest = g_object_ref (rest);
  return TRUE;
}

/* How tall the name of the section is; leaves no trace. */
static double
measure_label (SwComposer *self,
               SwBrief    *brief,
               double      width_pt)
{
  gboolean measures = self->measures;
  guint n_tags = self->tags.all->len;
  SwFlow flow;

  if (brief->section == NULL)
    return 0.0;

  flow = sw_composer_begin (self);
  flow.width_pt = width_pt;
  self->measures = TRUE;
  sw_flow_text_in (&flow, SW_TEXT_LABEL, "P", brief->section);
  self->measures = measures;
  sw_block_free (flow.block);
  g_ptr_array_set_size (self->tags.all, (int) n_tags);
  return flow.y_pt;
}

/* @label_pt: room above for the name of a section, the same in all cards of a row */
static void
add_card (SwFlow     *flow,
          SwTelling  *telling,
          SwBrief    *brief,
          const char *heading,
          double      label_pt,
          gboolean    wide)
{
  SwComposer *self = flow->composer;
  double gap_pt = 0.5 * self->style.column_gap_pt;
  double picture_pt = telling->figure != NULL ? (wide ? WIDE_PICTURE_SHARE : PICTURE_SHARE) * flow->width_pt : 0.0;
  SwFlow label;
  SwFlow picture;
  SwFlow words;

  sw_composer_open (self, "Sect");
  sw_card_add_rule (flow);
  label = *flow;
  if (brief->section != NULL)
    sw_flow_text_in (&label, SW_TEXT_LABEL, "P", brief->section);
  sw_flow_space (flow, label_pt);
  sw_card_add_name (flow, telling, heading);
  picture = words = *flow;
  sw_card_add_picture (&picture, telling, picture_pt, TALLEST_PICTURE);
  if (picture_pt > 0.0)
    {
      words.left_pt += picture_pt + gap_pt;
      words.width_pt -= picture_pt + gap_pt;
    }
  sw_part_add_amount (&words, telling, 0.0);
  sw_part_add_short_limits (&words, telling, 0.0);
  if (!wide)
    {
      flow->y_pt = MAX (picture.y_pt, words.y_pt);
      words = *flow;
    }
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    parts[i] (&words, telling, telling->gap_pt);
  flow->y_pt = MAX (picture.y_pt, words.y_pt);
  if (brief->rest != NULL)
    {
      sw_flow_space (flow, telling->gap_pt);
      sw_compose_rest_in (flow, brief->rest, SW_TEXT_SMALL_STRONG);
    }
  sw_composer_close (self);
}

/* How tall the card would be; leaves no trace. */
static double
measure_card (SwTelling *telling,
              SwBrief   *brief,
              double     width_pt,
              gboolean   wide)
{
  SwComposer *self = telling->composer;
  gboolean measures = self->measures;
  guint n_tags = self->tags.all->len;
  int n_exercises = self->n_exercises;
  SwFlow flow = sw_composer_begin (self);

  flow.width_pt = width_pt;
  self->measures = TRUE;
  add_card (&flow, telling, brief, "P", 0.0, wide);
  self->measures = measures;
  sw_block_free (flow.block);
  g_ptr_array_set_size (self->tags.all, (int) n_tags);
  self->n_exercises = n_exercises;
  return flow.y_pt;
}

/* How wide a card is when @n stand beside one another. */
static double
get_width (SwComposer *self,
           guint       n)
{
  return (self->width_pt - (n - 1) * self->style.column_gap_pt) / n;
}

static guint
choose_columns (SwComposer *self)
{
  return get_width (self, 2) >= FEWEST_IN_CARD * 0.5 * sw_style_get_size_pt (&self->style, SW_TEXT_SMALL) ? 2 : 1;
}

/* One that has more to tell than a card holds stands by itself, in full. Returns FALSE with an error. */
static gboolean
is_too_long (SwComposer  *self,
             SwBrief     *brief,
             SwClient    *client,
             guint        columns,
             gboolean    *too_long,
             GError     **error)
{
  SwTelling telling;

  *too_long = strlen (sw_item_get_note (brief->item)) > LONGEST_CARD_NOTE;
  if (*too_long)
    return TRUE;
  if (!sw_card_begin (&telling, self, brief->item, client, error))
    return FALSE;

  *too_long = measure_card (&telling, brief, get_width (self, columns), columns == 1)
              > TALLEST_CARD * self->style.page_height_pt;
  return TRUE;
}

static gboolean
compose_row (SwComposer  *self,
             SwBrief     *briefs,
             guint        n,
             guint        columns,
             SwClient    *client,
             const char  *heading,
             GError     **error)
{
  double width_pt = get_width (self, columns);
  SwFlow row = sw_composer_begin (self);
  double bottom_pt = 0.0;
  double label_pt = 0.0;

  for (guint i = 0; i < n; i++)
    label_pt = MAX (label_pt, measure_label (self, &briefs[i], width_pt));
  for (guint i = 0; i < n; i++)
    {
      SwTelling telling;
      SwFlow place = row;

      if (!sw_card_begin (&telling, self, briefs[i].item, client, error))
        {
          sw_block_free (row.block);
          return FALSE;
        }
      place.left_pt += i * (width_pt + self->style.column_gap_pt);
      place.width_pt = width_pt;
      add_card (&place, &telling, &briefs[i], heading, label_pt, columns == 1);
      bottom_pt = MAX (bottom_pt, place.y_pt);
    }
  row.y_pt = bottom_pt;
  sw_composer_end (&row, 0.8 * self->style.body_pt, SW_KEEP_FREE);
  return TRUE;
}

/* The exercise of @brief in full, below its section's name and before its rest. */
static gboolean
compose_in_full (SwComposer  *self,
                 SwBrief     *brief,
                 SwClient    *client,
                 const char  *heading,
                 GError     **error)
{
  if (brief->section != NULL)
    sw_composer_paragraph (self, SW_TEXT_LABEL, "P", NULL, brief->section, 0.8 * self->style.body_pt, SW_KEEP_ALWAYS);
  if (!sw_compose_exercise (self, brief->item, client, heading, error))
    return FALSE;

  if (brief->rest != NULL)
    sw_compose_rest (self, brief->rest);
  return TRUE;
}

/**
 * sw_compose_briefs:
 * @briefs: (element-type SwBrief): exercises that follow one another; none is left afterwards
 * @client: whose precautions and units count
 * @heading: structure type of the headings
 * @error: return location for %SW_HANDOUT_ERROR_FIGURE
 *
 * Sets exercises as cards; one that is too long for that is told in full.
 *
 * Returns: whether every picture could be drawn
 */
gboolean
sw_compose_briefs (SwComposer  *self,
                   GArray      *briefs,
                   SwClient    *client,
                   const char  *heading,
                   GError     **error)
{
  guint columns = choose_columns (self);
  guint first = 0;

  for (guint i = 0; i < briefs->len; i++)
    {
      SwBrief *brief = &g_array_index (briefs, SwBrief, i);
      gboolean too_long;

      if (!is_too_long (self, brief, client, columns, &too_long, error))
        return FALSE;
      if ((too_long || i - first == columns) && i > first)
        {
          if (!compose_row (self, &g_array_index (briefs, SwBrief, first), i - first, columns, client, heading, error))
            return FALSE;
          first = i;
        }
      if (too_long)
        {
          if (!compose_in_full (self, brief, client, heading, error))
            return FALSE;
          first = i + 1;
        }
    }
  if (briefs->len > first
      && !compose_row (self, &g_array_index (briefs, SwBrief, first), briefs->len - first, columns, client, heading,
                       error))
    return FALSE;

  g_array_set_size (briefs, 0);
  return TRUE;
}
