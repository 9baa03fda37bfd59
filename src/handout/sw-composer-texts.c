/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Paragraphs, items of lists and boxes as blocks of their own, of any length. */
#include "config.h"

#include "sw-composer.h"

/* How many lines of a text stand in one block: it then takes no more than half a page. */
static int
get_lines_a_block (SwComposer  *self,
                   PangoLayout *layout)
{
  int n_lines = pango_layout_get_line_count (layout);
  double line_pt = sw_layout_get_lines_height (layout, 0, n_lines) / n_lines;

  return MAX (1, (int) (0.5 * self->style.page_height_pt / line_pt));
}

/**
 * sw_composer_paragraph:
 * @role: decides size and weight
 * @tag_name: structure type, "P" or a heading
 * @strong: (nullable): words in bold before the text
 * @text: the text, of any length
 * @space_pt: white space before it
 * @keep: whether a page may end after it
 *
 * Sets a paragraph as a block of its own. One that would take more than half a page is divided between lines, so
 * that no text of any length can run off the paper.
 */
void
sw_composer_paragraph (SwComposer *self,
                       SwTextRole  role,
                       const char *tag_name,
                       const char *strong,
                       const char *text,
                       double      space_pt,
                       SwKeep      keep)
{
  PangoLayout *layout = sw_composer_get_layout (self, role, self->width_pt, strong, text);
  int n_lines = pango_layout_get_line_count (layout);
  int most = get_lines_a_block (self, layout);
  SwTag *tag = sw_tags_add (&self->tags, self->parent, tag_name);

  for (int first = 0; first < n_lines; first += most)
    {
      int n = MIN (most, n_lines - first);
      SwFlow flow = sw_composer_begin (self);

      sw_flow_lines (&flow, role, n_lines <= most ? tag : sw_tags_add (&self->tags, tag, "Span"), layout,
                     sw_composer_get_strong_length (strong), first, n);
      sw_composer_end (&flow, first == 0 ? space_pt : 0.0, first + n < n_lines ? SW_KEEP_TOGETHER : keep);
    }
}

/**
 * sw_composer_item:
 * @list: an element of type L
 * @symbol: the sign before an item without a number
 * @number: the item's number; 0 for none
 * @text: the text, of any length
 * @space_pt: white space before it
 * @keep: whether a page may end after it
 *
 * Sets an item of a list as a block of its own, a long one divided between lines like a paragraph.
 */
void
sw_composer_item (SwComposer *self,
                  SwTextRole  role,
                  SwTag      *list,
                  SwSymbol    symbol,
                  int         number,
                  const char *text,
                  double      space_pt,
                  SwKeep      keep)
{
  SwTag *item = sw_tags_add (&self->tags, list, "LI");
  SwFlow flow = sw_composer_begin (self);
  double left_pt;
  double width_pt;
  PangoLayout *layout;
  SwTag *body;
  int n_lines;
  int most;

  if (number > 0)
    sw_flow_number (&flow, role, item, number);
  else
    sw_flow_sign (&flow, role, symbol);
  left_pt = flow.left_pt;
  width_pt = flow.width_pt;
  body = sw_tags_add (&self->tags, item, "LBody");
  layout = sw_composer_get_layout (self, role, width_pt, NULL, text);
  n_lines = pango_layout_get_line_count (layout);
  most = get_lines_a_block (self, layout);

  for (int first = 0; first < n_lines; first += most)
    {
      int n = MIN (most, n_lines - first);

      if (first > 0)
        flow = sw_composer_begin (self);
      flow.left_pt = left_pt;
      flow.width_pt = width_pt;
      sw_flow_lines (&flow, role, n_lines <= most ? body : sw_tags_add (&self->tags, body, "Span"), layout, 0,
                     first, n);
      sw_composer_end (&flow, first == 0 ? space_pt : 0.0, first + n < n_lines ? SW_KEEP_TOGETHER : keep);
    }
}

/**
 * sw_composer_boxed:
 * @symbol: the sign in the box
 * @frame_pt: width of the frame's line
 * @heading: words in bold that stand first
 * @text: the text, of any length
 * @space_pt: white space before it
 * @keep: whether a page may end after it
 *
 * A text in a box of its own; one of more than half a page in a frame that may go on over pages.
 */
void
sw_composer_boxed (SwComposer *self,
                   SwSymbol    symbol,
                   double      frame_pt,
                   SwTextRole  role,
                   const char *heading,
                   const char *text,
                   double      space_pt,
                   SwKeep      keep)
{
  PangoLayout *layout = sw_composer_get_layout (self, role, self->width_pt, heading, text);
  SwFlow flow;

  if (pango_layout_get_line_count (layout) > get_lines_a_block (self, layout))
    {
      sw_composer_open_frame (self, frame_pt);
      sw_composer_paragraph (self, role, "P", heading, text, space_pt, keep);
      sw_composer_close_frame (self);
      return;
    }

  flow = sw_composer_begin (self);
  sw_flow_boxed (&flow, symbol, frame_pt, role, heading, text);
  sw_composer_end (&flow, space_pt, keep);
}
