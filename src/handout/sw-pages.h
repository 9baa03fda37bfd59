/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "sw-composer.h"

G_BEGIN_DECLS

/**
 * SwPlace:
 * @block: (unowned): the block
 * @page: the page it is on, from 0
 * @y_pt: its top, from the top of the page
 * @gap_pt: white space before it that is really there
 * @scale: 1, or below 1 for a block that is taller than a page
 */
typedef struct
{
  SwBlock *block;
  int page;
  double y_pt;
  double gap_pt;
  double scale;
} SwPlace;

/**
 * SwPages:
 * @places: (element-type SwPlace): every block in its place, in reading order
 * @starts: (element-type guint): for each page the index of its first place
 * @n_pages: how many pages, at least 1
 */
typedef struct
{
  GArray *places;
  GArray *starts;
  int n_pages;
} SwPages;

/**
 * SwFurniture:
 * @running: at the left of the running head, from the second page on
 * @phone: at the right of the running head, never cut
 * @number: the same without words, for where there is no room for them
 * @code: at the left of the footer; the page number is at its right
 *
 * What stands at the same place on every page.
 */
typedef struct
{
  char *running;
  char *code;
  char *phone;
  char *number;
} SwFurniture;

/**
 * SwTagSink:
 * @begin: an element's content begins; the piece is given in page coordinates. Figures are left to it to paint
 * @end: it has ended
 *
 * Who is told about the structure while a page is painted. Furniture and decoration are painted between the calls.
 */
typedef struct
{
  void (*begin) (gpointer       data,
                 const SwTag   *tag,
                 const SwPiece *piece);
  void (*end) (gpointer     data,
               const SwTag *tag);
  gpointer data;
} SwTagSink;

void sw_pages_init (SwPages    *pages,
                    SwComposer *composer);
void sw_pages_clear (SwPages *pages);
void sw_pages_expect_numbers (const SwPages *pages,
                              SwComposer    *composer);
void sw_pages_paint (const SwPages     *pages,
                     SwComposer        *composer,
                     const SwFurniture *furniture,
                     int                page,
                     cairo_t           *cr,
                     const SwTagSink   *sink);
SwPiece sw_piece_place (const SwPiece *piece,
                        const SwPlace *place,
                        const SwStyle *style);
void sw_piece_get_text_extents (const SwPiece *piece,
                                double        *left_pt,
                                double        *right_pt);
char *sw_pages_dump (const SwPages *pages,
                     SwComposer    *composer);
void sw_furniture_clear (SwFurniture *furniture);

G_END_DECLS
