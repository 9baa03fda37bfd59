/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Exercises as cards for the wall, several beside one another: picture, name, dose and limits. */
#include "config.h"

#include "sw-compose.h"
#include "sw-dose-words.h"
#include "sw-telling.h"

#define RULE_PT 0.8
#define MOST_FITTINGS 5
/* A picture's share of a card where the dose stands beside it, and the gap between both in body text's sizes. */
#define BESIDE_SHARE 0.34
#define BESIDE_GAP 0.6

/**
 * sw_card_add_name:
 * @heading: structure type of the heading
 *
 * The number and the name, cut short, on a card.
 */
void
sw_card_add_name (SwFlow     *flow,
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

/**
 * sw_card_add_picture:
 * @width_pt: the room for the picture
 * @tallest: how tall it is at most, as a share of @width_pt; a taller one is drawn narrower, in the middle
 *
 * The picture on a card, if the exercise has one.
 */
void
sw_card_add_picture (SwFlow    *flow,
                     SwTelling *telling,
                     double     width_pt,
                     double     tallest)
{
  SwFlow column = *flow;
  double most_pt = tallest * width_pt;
  double height_pt;

  if (telling->figure == NULL)
    return;
  /* A picture that is drawn narrower may be arranged in another way, and be taller for its width. */
  telling->figure_width_pt = width_pt;
  for (int i = 0; i < MOST_FITTINGS; i++)
    {
      height_pt = sw_part_measure_figure (telling, telling->figure_width_pt);
      if (height_pt <= most_pt)
        break;
      telling->figure_width_pt *= most_pt / height_pt;
    }
  column.left_pt += (width_pt - telling->figure_width_pt) / 2.0;
  column.width_pt = telling->figure_width_pt;
  sw_part_add_figure (&column, telling);
  flow->y_pt = column.y_pt;
}

/**
 * sw_card_begin:
 * @telling: to be filled
 * @error: return location for %SW_HANDOUT_ERROR_FIGURE
 *
 * Returns: whether the exercise can be told on a card: its picture can be drawn
 */
gboolean
sw_card_begin (SwTelling   *telling,
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

/**
 * sw_card_add_rule:
 *
 * The line at the top of a card.
 */
void
sw_card_add_rule (SwFlow *flow)
{
  sw_flow_box (flow, flow->left_pt, flow->y_pt, flow->width_pt, RULE_PT, SW_GREY_TEXT);
  sw_flow_space (flow, RULE_PT + 0.4 * flow->composer->style.body_pt);
}

/**
 * sw_card_get_picture_width:
 * @width_pt: of the card
 *
 * Returns: the room for the picture on a card for the wall
 */
double
sw_card_get_picture_width (SwComposer *self,
                           double      width_pt)
{
  return self->picture_beside ? BESIDE_SHARE * width_pt : width_pt;
}

/* How much and within what limits. A card may be read alone: each of a circuit's tells the rounds. */
static void
add_amount (SwFlow    *flow,
            SwTelling *telling,
            SwCard    *card,
            double     space_pt)
{
  SwComposer *self = flow->composer;
  const SwDoseWords *words
      = sw_doses_tell (self->doses, &card->dose, SW_DOSE_LIMB_NONE, sw_client_get_units (telling->client));
  g_autofree char *limits = sw_dose_words_join_details (words, self->phrases, TRUE);

  sw_part_add_amount (flow, telling, space_pt);
  if (card->circuit != NULL)
    {
      g_autofree char *own = sw_text_dup_short (sw_item_get_title (card->circuit));
      const char *title = sw_text_is_set (own) ? own : sw_phrases_get (self->phrases, "circuit.title");
      g_autofree char *rounds
          = sw_phrases_count (self->phrases, "circuit.rounds", sw_item_get_rounds (card->circuit), NULL);
      g_autofree char *line
          = sw_phrases_format (self->phrases, "circuit.card", "title", title, "rounds", rounds, NULL);
      g_autofree char *rest = sw_compose_circuit_rest (self->phrases, card->circuit);

      sw_flow_text (flow, SW_TEXT_SMALL, sw_tags_add (&self->tags, self->parent, "P"), line, rest != NULL ? rest : "");
    }
  if (*limits != '\0')
    sw_flow_text_in (flow, telling->role, "P", limits);
}

/* Where a picture goes beside the words of its card, once it is known how tall the row is.
 * @tag: the card's; NULL when there is no such picture */
typedef struct
{
  SwTelling telling;
  SwFlow place;
  SwTag *tag;
} Beside;

/* How much, and the room beside it for the picture. */
static void
add_amount_beside (SwFlow    *flow,
                   SwTelling *telling,
                   SwCard    *card,
                   Beside    *beside)
{
  double picture_pt = sw_card_get_picture_width (flow->composer, flow->width_pt);
  double gap_pt = BESIDE_GAP * flow->composer->style.body_pt;
  SwFlow amount = *flow;

  beside->telling = *telling;
  beside->place = *flow;
  beside->place.width_pt = picture_pt;
  amount.left_pt += picture_pt + gap_pt;
  amount.width_pt -= picture_pt + gap_pt;
  add_amount (&amount, telling, card, 0.0);
  /* The picture is drawn when the row's height is known. */
  beside->telling.figure_width_pt = picture_pt;
  sw_part_add_caption (&amount, &beside->telling, 0.0);
  flow->y_pt = amount.y_pt;
}

static void
add_card (SwFlow     *flow,
          SwTelling  *telling,
          SwCard     *card,
          const char *heading,
          Beside     *beside)
{
  SwComposer *self = flow->composer;
  SwTag *tag = sw_composer_open (self, "Sect");

  beside->tag = NULL;
  sw_card_add_rule (flow);
  sw_card_add_name (flow, telling, heading);
  if (self->picture_beside && telling->figure != NULL)
    {
      add_amount_beside (flow, telling, card, beside);
      beside->tag = tag;
    }
  else
    {
      sw_card_add_picture (flow, telling, flow->width_pt, self->tallest_picture);
      sw_part_add_caption (flow, telling, 0.0);
      add_amount (flow, telling, card, 0.2 * self->style.body_pt);
    }
  sw_composer_close (self);
}

/* Pictures beside words may be as tall as the row is anyway.
 *
 * Returns: the bottom of the row */
static double
add_pictures_beside (SwComposer *self,
                     Beside     *row,
                     guint       n,
                     double      bottom_pt)
{
  SwTag *parent = self->parent;

  for (guint i = 0; i < n; i++)
    {
      const SwFlow *place = &row[i].place;
      double height_pt;

      if (row[i].tag == NULL)
        continue;
      height_pt = sw_part_measure_figure (&row[i].telling, place->width_pt);
      bottom_pt = MAX (bottom_pt, place->y_pt + MIN (height_pt, self->tallest_picture * place->width_pt));
    }

  for (guint i = 0; i < n; i++)
    {
      SwFlow *place = &row[i].place;

      if (row[i].tag == NULL)
        continue;
      self->parent = row[i].tag;
      sw_card_add_picture (place, &row[i].telling, place->width_pt, (bottom_pt - place->y_pt) / place->width_pt);
    }

  self->parent = parent;
  return bottom_pt;
}

/**
 * sw_card_get_width:
 * @n_cards: how many stand beside one another
 *
 * Returns: the width of a card for the wall
 */
double
sw_card_get_width (SwComposer *self,
                   int         n_cards)
{
  return (self->style.width_pt - (n_cards - 1) * self->style.column_gap_pt) / n_cards;
}

/* Between characters as wide as they are tall a line may break anywhere. */
static gboolean
has_wide (const char *word)
{
  for (const char *at = word; *at != '\0'; at = g_utf8_next_char (at))
    if (g_unichar_iswide (g_utf8_get_char (at)))
      return TRUE;
  return FALSE;
}

/* How wide the widest of the words is that a line may not be broken in. */
static double
find_widest_pt (SwComposer *self,
                const char *text)
{
  g_auto (GStrv) words = g_strsplit_set (text, " \n", -1);
  double widest_pt = 0.0;

  for (guint i = 0; words[i] != NULL; i++)
    {
      int width;

      if (has_wide (words[i]))
        continue;
      pango_layout_get_size (sw_composer_get_layout (self, SW_TEXT_STRONG, -1.0, NULL, words[i]), &width, NULL);
      widest_pt = MAX (widest_pt, (double) width / PANGO_SCALE);
    }
  return widest_pt;
}

/**
 * sw_card_words_init:
 * @words: (out): how wide they are
 * @programme: whose exercises are told
 */
void
sw_card_words_init (SwCardWords *words,
                    SwComposer  *self,
                    SwProgramme *programme)
{
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
  SwUnits units = sw_client_get_units (sw_programme_get_client (programme));

  *words = (SwCardWords){ 0.0, 0.0 };
  for (guint i = 0; i < items->len; i++)
    {
      SwItem *item = g_ptr_array_index (items, i);
      const char *name;
      const char *amount;

      if (sw_item_get_kind (item) != SW_ITEM_EXERCISE)
        continue;
      name = sw_exercise_get_text (sw_item_get_exercise (item), self->language)->name;
      amount = sw_compose_dose (self, item, units)->amount;
      words->name_pt = MAX (words->name_pt, find_widest_pt (self, name));
      words->amount_pt = MAX (words->amount_pt, find_widest_pt (self, amount));
    }
}

/**
 * sw_card_has_room:
 * @words: the words on cards
 * @n_cards: how many cards stand beside one another
 *
 * Returns: whether no word of names and doses has to be divided, with the dose where the composer's @picture_beside says
 */
gboolean
sw_card_has_room (SwComposer        *self,
                  const SwCardWords *words,
                  int                n_cards)
{
  double card_pt = sw_card_get_width (self, n_cards);
  double name_pt = card_pt - 2.0 * sw_style_get_size_pt (&self->style, SW_TEXT_STRONG);
  double amount_pt = self->picture_beside ? card_pt - sw_card_get_picture_width (self, card_pt)
                                                - BESIDE_GAP * self->style.body_pt
                                          : card_pt;

  return words->name_pt <= name_pt && words->amount_pt <= amount_pt;
}

/**
 * sw_compose_cards:
 * @cards: (element-type SwCard): exercises that follow one another
 * @client: whose precautions and units count
 * @heading: structure type of the headings
 * @error: return location for %SW_HANDOUT_ERROR_FIGURE
 *
 * Sets exercises as cards, as many beside one another as the composer's @n_cards says.
 *
 * Returns: whether every picture could be drawn
 */
gboolean
sw_compose_cards (SwComposer  *self,
                  GArray      *cards,
                  SwClient    *client,
                  const char  *heading,
                  GError     **error)
{
  double gap_pt = self->style.column_gap_pt;
  guint n_cards = (guint) self->n_cards;
  double width_pt = sw_card_get_width (self, self->n_cards);
  g_autofree Beside *beside = g_new0 (Beside, n_cards);

  for (guint first = 0; first < cards->len; first += n_cards)
    {
      SwFlow row = sw_composer_begin (self);
      guint end = MIN (cards->len, first + n_cards);
      double bottom_pt = 0.0;

      for (guint i = first; i < end; i++)
        {
          SwCard *card = &g_array_index (cards, SwCard, i);
          SwTelling telling;
          SwFlow place = row;

          if (!sw_card_begin (&telling, self, card->item, client, error))
            {
              sw_block_free (row.block);
              return FALSE;
            }
          place.left_pt += (i - first) * (width_pt + gap_pt);
          place.width_pt = width_pt;
          add_card (&place, &telling, card, heading, &beside[i - first]);
          bottom_pt = MAX (bottom_pt, place.y_pt);
        }
      row.y_pt = add_pictures_beside (self, beside, end - first, bottom_pt);
      sw_composer_end (&row, 0.5 * self->style.body_pt, SW_KEEP_FREE);
    }
  return TRUE;
}
