/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Columns that fill downwards with texts, signs, lists and boxes. */
#include "config.h"

#include "sw-composer.h"

/**
 * sw_layout_get_lines_height:
 * @layout: a measured text
 * @first: the first line
 * @n: how many lines
 *
 * Returns: how tall these lines are together, points
 */
double
sw_layout_get_lines_height (PangoLayout *layout,
                            int          first,
                            int          n)
{
  PangoLayoutIter *iter = pango_layout_get_iter (layout);
  int index = 0;
  int top = 0;
  int bottom = 0;

  do
    {
      int line_top;
      int line_bottom;

      pango_layout_iter_get_line_yrange (iter, &line_top, &line_bottom);
      if (index == first)
        top = line_top;
      if (index == first + n - 1)
        bottom = line_bottom;
      index++;
    }
  while (index < first + n && pango_layout_iter_next_line (iter));
  pango_layout_iter_free (iter);

  return (double) (bottom - top) / PANGO_SCALE;
}

/**
 * sw_flow_entry:
 * @item_id: (nullable): the item that is told in this column
 * @outline: (nullable): its line in the outline
 * @outline_level: 1 for a session, 2 for an exercise
 */
void
sw_flow_entry (SwFlow     *flow,
               const char *item_id,
               const char *outline,
               int         outline_level)
{
  SwEntry entry = {
    .item_id = (char *) item_id,
    .is_exercise = item_id != NULL && outline_level == 2,
    .outline = (char *) outline,
    .outline_level = outline_level,
    .left_pt = flow->left_pt,
    .width_pt = flow->width_pt,
  };

  sw_block_add_entry (flow->block, &entry);
}

void
sw_flow_space (SwFlow *flow,
               double  points)
{
  flow->y_pt += points;
}

/**
 * sw_flow_text:
 * @tag: (nullable): the element whose content this is
 * @strong: (nullable): words in bold before the text
 */
void
sw_flow_text (SwFlow     *flow,
              SwTextRole  role,
              SwTag      *tag,
              const char *strong,
              const char *text)
{
  PangoLayout *layout;

  if (flow->composer->measures)
    {
      flow->y_pt += sw_composer_get_height_pt (flow->composer, role, flow->width_pt, strong, text);
      return;
    }

  layout = sw_composer_get_layout (flow->composer, role, flow->width_pt, strong, text);
  sw_flow_lines (flow, role, tag, layout, sw_composer_get_strong_length (strong), 0,
                 pango_layout_get_line_count (layout));
}

/**
 * sw_flow_text_in:
 * @tag_name: structure type of a new element for the text
 */
void
sw_flow_text_in (SwFlow     *flow,
                 SwTextRole  role,
                 const char *tag_name,
                 const char *text)
{
  SwComposer *self = flow->composer;

  sw_flow_text (flow, role, sw_tags_add (&self->tags, self->parent, tag_name), NULL, text);
}

/* An item of a list without numbers. */
static void
add_list_item (SwFlow     *flow,
               SwTextRole  role,
               SwTag      *list,
               SwSymbol    symbol,
               const char *text)
{
  SwComposer *self = flow->composer;
  SwFlow column = *flow;
  SwTag *item = sw_tags_add (&self->tags, list, "LI");
  SwTag *body = sw_tags_add (&self->tags, item, "LBody");

  sw_flow_sign (&column, role, symbol);
  sw_flow_text (&column, role, body, NULL, text);
  flow->y_pt = column.y_pt;
}

/**
 * sw_flow_number:
 * @item: an element of type LI
 * @number: from 1
 *
 * The number before an item; the column goes on beside it.
 */
void
sw_flow_number (SwFlow    *flow,
                SwTextRole role,
                SwTag     *item,
                int        number)
{
  SwComposer *self = flow->composer;
  double indent_pt = (number < 10 ? 1.35 : 1.9) * sw_style_get_size_pt (&self->style, role);
  g_autofree char *label = g_strdup_printf ("%d.", number);
  const char *language = self->text_language;
  SwFlow column = *flow;

  column.width_pt = indent_pt;
  self->text_language = NULL;
  sw_flow_text (&column, role == SW_TEXT_SMALL ? SW_TEXT_SMALL_STRONG : SW_TEXT_STRONG,
                sw_tags_add (&self->tags, item, "Lbl"), NULL, label);
  self->text_language = language;
  flow->left_pt += indent_pt;
  flow->width_pt -= indent_pt;
}

/**
 * sw_flow_sign:
 * @symbol: the sign before an item
 *
 * The sign before an item; the column goes on beside it.
 */
void
sw_flow_sign (SwFlow    *flow,
              SwTextRole role,
              SwSymbol   symbol)
{
  double size_pt = sw_style_get_size_pt (&flow->composer->style, role);
  double indent_pt = 1.35 * size_pt;

  sw_flow_symbol (flow, symbol, flow->left_pt, flow->y_pt + 0.22 * size_pt, 0.88 * size_pt, SW_GREY_TEXT);
  flow->left_pt += indent_pt;
  flow->width_pt -= indent_pt;
}

/**
 * sw_flow_numbered_item:
 * @list: an element of type L
 * @number: from 1
 */
void
sw_flow_numbered_item (SwFlow     *flow,
                       SwTextRole  role,
                       SwTag      *list,
                       int         number,
                       const char *text)
{
  SwComposer *self = flow->composer;
  SwFlow column = *flow;
  SwTag *item = sw_tags_add (&self->tags, list, "LI");
  SwTag *body;

  sw_flow_number (&column, role, item, number);
  body = sw_tags_add (&self->tags, item, "LBody");
  sw_flow_text (&column, role, body, NULL, text);
  flow->y_pt = column.y_pt;
}

/**
 * sw_flow_list:
 * @symbol: the sign before each text
 * @texts: (array zero-terminated=1): the items, at least one
 */
void
sw_flow_list (SwFlow             *flow,
              SwTextRole          role,
              SwSymbol            symbol,
              const char * const *texts)
{
  SwComposer *self = flow->composer;
  SwTag *list = sw_tags_add (&self->tags, self->parent, "L");

  list->numbering = "Disc";
  for (guint i = 0; texts[i] != NULL; i++)
    {
      if (i > 0)
        sw_flow_space (flow, 0.08 * self->style.body_pt);
      add_list_item (flow, role, list, symbol, texts[i]);
    }
}

void
sw_flow_symbol (SwFlow  *flow,
                SwSymbol symbol,
                double   x_pt,
                double   y_pt,
                double   size_pt,
                double   grey)
{
  SwPiece *piece = sw_block_add (flow->block, SW_PIECE_SYMBOL, NULL, x_pt, y_pt, size_pt, size_pt);

  piece->symbol = symbol;
  piece->grey = grey;
}

void
sw_flow_box (SwFlow *flow,
             double  x_pt,
             double  y_pt,
             double  width_pt,
             double  height_pt,
             double  grey)
{
  SwPiece *piece = sw_block_add (flow->block, SW_PIECE_BOX, NULL, x_pt, y_pt, width_pt, height_pt);

  piece->grey = grey;
}

/**
 * sw_flow_boxed:
 * @symbol: the sign in the box
 * @frame_pt: width of the frame's line; the heavier the more it matters
 * @heading: words in bold that stand first
 *
 * A short text in a box the width of the column: frame, sign and heading words, so that it needs no colour.
 */
void
sw_flow_boxed (SwFlow     *flow,
               SwSymbol    symbol,
               double      frame_pt,
               SwTextRole  role,
               const char *heading,
               const char *text)
{
  SwComposer *self = flow->composer;
  double body_pt = self->style.body_pt;
  double pad_pt = 0.4 * body_pt;
  double sign_pt = 1.4 * body_pt;
  double top_pt = flow->y_pt;
  SwFlow inner = *flow;
  double height_pt;

  sw_flow_symbol (flow, symbol, flow->left_pt + pad_pt + frame_pt, top_pt + frame_pt + pad_pt, sign_pt,
                  SW_GREY_TEXT);
  inner.left_pt += frame_pt + 1.9 * pad_pt + sign_pt;
  inner.width_pt -= 2.0 * frame_pt + 2.9 * pad_pt + sign_pt;
  inner.y_pt += frame_pt + pad_pt;
  sw_flow_text (&inner, role, sw_tags_add (&self->tags, self->parent, "P"), heading, text);
  height_pt = MAX (inner.y_pt - top_pt, frame_pt + pad_pt + sign_pt) + pad_pt + frame_pt;

  sw_flow_box (flow, flow->left_pt, top_pt, flow->width_pt, frame_pt, SW_GREY_TEXT);
  sw_flow_box (flow, flow->left_pt, top_pt + height_pt - frame_pt, flow->width_pt, frame_pt, SW_GREY_TEXT);
  sw_flow_box (flow, flow->left_pt, top_pt, frame_pt, height_pt, SW_GREY_TEXT);
  sw_flow_box (flow, flow->left_pt + flow->width_pt - frame_pt, top_pt, frame_pt, height_pt, SW_GREY_TEXT);
  flow->y_pt = top_pt + height_pt;
}

/**
 * sw_flow_signed:
 * @symbol: the sign at the beginning
 * @heading: words in bold that stand first
 *
 * A short text with a sign before it, without a box.
 */
void
sw_flow_signed (SwFlow     *flow,
                SwSymbol    symbol,
                SwTextRole  role,
                const char *heading,
                const char *text)
{
  SwComposer *self = flow->composer;
  double size_pt = sw_style_get_size_pt (&self->style, role);
  double sign_pt = 1.25 * size_pt;
  SwFlow inner = *flow;

  sw_flow_symbol (flow, symbol, flow->left_pt, flow->y_pt + 0.05 * size_pt, sign_pt, SW_GREY_TEXT);
  inner.left_pt += sign_pt + 0.4 * size_pt;
  inner.width_pt -= sign_pt + 0.4 * size_pt;
  sw_flow_text (&inner, role, sw_tags_add (&self->tags, self->parent, "P"), heading, text);
  flow->y_pt = MAX (inner.y_pt, flow->y_pt + sign_pt);
}
