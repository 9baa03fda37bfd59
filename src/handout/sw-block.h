/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <pango/pango.h>

#include "sw-break.h"
#include "sw-figure.h"
#include "sw-logo-picture.h"
#include "sw-symbol.h"
#include "sw-tag.h"
#include "sw-terms.h"

G_BEGIN_DECLS

/**
 * SwPieceKind:
 * @SW_PIECE_TEXT: some lines of a layout
 * @SW_PIECE_FIGURE: an exercise's picture
 * @SW_PIECE_PICTURE: a picture of the clinic's own
 * @SW_PIECE_SYMBOL: a small sign; decoration
 * @SW_PIECE_EQUIPMENT: a thing that is needed; decoration
 * @SW_PIECE_BOX: a filled rectangle, also every rule; decoration
 * @SW_PIECE_EMPTY: nothing to see, but an element of the structure: an empty table cell
 * @SW_PIECE_FIELD: nothing to see, but a place that can be filled in where the handout is a form
 */
typedef enum
{
  SW_PIECE_TEXT,
  SW_PIECE_FIGURE,
  SW_PIECE_PICTURE,
  SW_PIECE_SYMBOL,
  SW_PIECE_EQUIPMENT,
  SW_PIECE_BOX,
  SW_PIECE_EMPTY,
  SW_PIECE_FIELD,
} SwPieceKind;

/**
 * SwFieldKind:
 * @SW_FIELD_TICK: a box to tick
 * @SW_FIELD_NUMBER: a line for a number or a date
 * @SW_FIELD_WORDS: a line for words
 *
 * What is written in a place that can be filled in.
 */
typedef enum
{
  SW_FIELD_TICK,
  SW_FIELD_NUMBER,
  SW_FIELD_WORDS,
} SwFieldKind;

/**
 * SwPiece:
 * @kind: what is drawn
 * @tag: (nullable): the element whose content this is; %NULL for decoration
 * @x_pt: left edge, from the left edge of the page
 * @y_pt: top edge, from the top of the block; once placed, of the page
 * @width_pt: width
 * @height_pt: height
 * @grey: 0 black .. 1 white
 * @radius_pt: of a box's corners
 * @reaches_up: whether it also covers the white space before its block, as the side of a frame does
 * @layout: (nullable): of a text
 * @first_line: first line of @layout that belongs to this piece
 * @n_lines: how many lines do
 * @start: first byte of the text of @layout that belongs to this piece
 * @end: the byte after the last one; the lines are drawn as far as they lie between both
 * @uri: (nullable): where a text leads that is a link
 * @symbol: of a symbol
 * @equipment: of a thing
 * @picture: (nullable): of a picture
 * @figure: (nullable): of a figure
 * @zoom: of a figure: how much larger than its usual size it is drawn, lines and marks included
 * @field: of a place to fill in
 * @field_name: (nullable): its name in the file, which tells nothing of the client
 *
 * Something drawn. Pieces stand in reading order.
 */
typedef struct
{
  SwPieceKind kind;
  SwTag *tag;
  double x_pt;
  double y_pt;
  double width_pt;
  double height_pt;
  double grey;
  double radius_pt;
  gboolean reaches_up;
  PangoLayout *layout;
  int first_line;
  int n_lines;
  int start;
  int end;
  char *uri;
  SwSymbol symbol;
  SwEquipment equipment;
  SwLogoPicture *picture;
  SwFigure *figure;
  double zoom;
  SwFieldKind field;
  char *field_name;
} SwPiece;

/**
 * SwEntry:
 * @item_id: (nullable): the programme's item that is told there
 * @is_exercise: whether an exercise starts there
 * @outline: (nullable): its line in the PDF's outline
 * @outline_level: 1 for a session, 2 for an exercise
 * @left_pt: left edge of what is told, from the left edge of the page
 * @width_pt: its width
 *
 * What begins with a block: something that can be looked up. A row of cards has one for each.
 */
typedef struct
{
  char *item_id;
  gboolean is_exercise;
  char *outline;
  int outline_level;
  double left_pt;
  double width_pt;
} SwEntry;

/**
 * SwBlock:
 * @pieces: (element-type SwPiece)
 * @strip: its height, the space before it, whether a page may end after it
 * @entries: (element-type SwEntry): what begins with it, from left to right
 * @head: (unowned) (nullable): what is repeated above it where it begins a page
 *
 * A horizontal strip of the handout, the full width of the content, that is never divided.
 */
typedef struct _SwBlock SwBlock;
struct _SwBlock
{
  GArray *pieces;
  SwStrip strip;
  GArray *entries;
  SwBlock *head;
};

SwBlock *sw_block_new (void);
void sw_block_free (SwBlock *block);
SwPiece *sw_block_add (SwBlock    *block,
                       SwPieceKind kind,
                       SwTag      *tag,
                       double      x_pt,
                       double      y_pt,
                       double      width_pt,
                       double      height_pt);
void sw_block_add_entry (SwBlock       *block,
                         const SwEntry *entry);
const char *sw_block_find_item (const SwBlock *block,
                                double         x_pt);

G_END_DECLS
