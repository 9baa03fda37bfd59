/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <pango/pango.h>

#include "sw-handout-options.h"

G_BEGIN_DECLS

/**
 * SwTextRole:
 *
 * What a piece of text is for. Its size, weight and grey follow from the role and the body size.
 */
typedef enum
{
  SW_TEXT_TITLE,
  SW_TEXT_SESSION,
  SW_TEXT_SECTION,
  SW_TEXT_NAME,
  SW_TEXT_AMOUNT,
  SW_TEXT_BODY,
  SW_TEXT_STRONG,
  SW_TEXT_LABEL,
  SW_TEXT_SMALL,
  SW_TEXT_SMALL_STRONG,
  SW_TEXT_TABLE,
  SW_TEXT_TABLE_STRONG,
  SW_TEXT_FURNITURE,
} SwTextRole;

/**
 * SwStyle:
 * @page_width_pt: paper width
 * @page_height_pt: paper height
 * @left_pt: left margin
 * @top_pt: top of the content on the first page
 * @later_top_pt: top of the content on later pages, below the running head
 * @bottom_pt: height of the foot margin, footer included
 * @width_pt: width of the content
 * @body_pt: size of body text
 * @least_pt: size no text but page furniture falls below
 * @column_gap_pt: between two columns
 * @figure_width_pt: width of an exercise's picture where exercises share a page
 * @large_figure_width_pt: its width where an exercise has a page to itself
 * @columns: whether two columns of text leave lines long enough to read
 * @panel_grey: of the panel behind a dose; white when ink is saved, and then it has a thin frame
 * @mirrored: whether lines begin at the right, and everything stands mirrored
 * @save_ink: whether black bands and squares give way to frames
 *
 * The measures of the pages, all from paper and body size. Clear print asks for at least 12 pt, line spacing well
 * above single, ragged right, lines of 60 to 70 characters, no capitals or italics for running text, the same place
 * for page furniture (guidelines listed in tests/reference/layout.csv).
 */
typedef struct
{
  double page_width_pt;
  double page_height_pt;
  double left_pt;
  double top_pt;
  double later_top_pt;
  double bottom_pt;
  double width_pt;
  double body_pt;
  double least_pt;
  double column_gap_pt;
  double figure_width_pt;
  double large_figure_width_pt;
  gboolean columns;
  double panel_grey;
  gboolean mirrored;
  gboolean save_ink;
} SwStyle;

#define SW_GREY_TEXT 0.0
#define SW_GREY_QUIET 0.28
#define SW_GREY_RULE 0.55
#define SW_GREY_PANEL 0.94

void sw_style_init (SwStyle                *style,
                    const SwHandoutOptions *options);
gboolean sw_style_has_room_beside (const SwStyle *style,
                                   double         width_pt);
int sw_style_get_least_cards (const SwStyle *style);
int sw_style_get_most_cards (const SwStyle *style);
double sw_style_get_size_pt (const SwStyle *style,
                             SwTextRole     role);
double sw_text_role_get_grey (SwTextRole role);
PangoFontDescription *sw_style_new_font (const SwStyle *style,
                                         SwTextRole     role);

G_END_DECLS
