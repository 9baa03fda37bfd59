/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One place for every size on the page, so that the text size moves everything together. */
#include "config.h"

#include "sw-style.h"
#include "sw-units.h"

#define FONT_FAMILIES "Noto Sans, Noto Sans Arabic, Noto Sans Hebrew, Noto Sans Devanagari, WenQuanYi Micro Hei, DejaVu Sans"
#define SMALLEST_TEXT_PT 12.0
#define SMALLEST_FURNITURE_PT 9.0
#define LARGEST_FURNITURE_PT 14.0

/* Characters of Noto Sans are about half as wide as the size says; a column of fewer than these reads badly: beside
 * a picture, under a small picture. */
#define FEWEST_BESIDE 22.0
#define FEWEST_UNDER 21.0
#define FEWEST_CARD 17.0

/* A table of ten columns leaves no room for larger print. */
#define LARGEST_TABLE_PT 14.5

/* What each role adds to the body size, as a factor, at 14 pt. */
static const struct
{
  double scale;
  gboolean bold;
  double grey;
} roles[] = {
  [SW_TEXT_TITLE] = { 1.95, TRUE, SW_GREY_TEXT },
  [SW_TEXT_SESSION] = { 1.55, TRUE, SW_GREY_TEXT },
  [SW_TEXT_SECTION] = { 1.15, TRUE, SW_GREY_TEXT },
  [SW_TEXT_NAME] = { 1.25, TRUE, SW_GREY_TEXT },
  [SW_TEXT_AMOUNT] = { 1.10, TRUE, SW_GREY_TEXT },
  [SW_TEXT_BODY] = { 1.0, FALSE, SW_GREY_TEXT },
  [SW_TEXT_STRONG] = { 1.0, TRUE, SW_GREY_TEXT },
  [SW_TEXT_LABEL] = { 0.86, TRUE, SW_GREY_TEXT },
  [SW_TEXT_SMALL] = { 0.86, FALSE, SW_GREY_TEXT },
  [SW_TEXT_SMALL_STRONG] = { 0.86, TRUE, SW_GREY_TEXT },
  [SW_TEXT_TABLE] = { 0.86, FALSE, SW_GREY_TEXT },
  [SW_TEXT_TABLE_STRONG] = { 0.86, TRUE, SW_GREY_TEXT },
  [SW_TEXT_FURNITURE] = { 0.66, FALSE, SW_GREY_QUIET },
};

/**
 * sw_style_get_size_pt:
 *
 * Returns: the size of text of that role. Headings grow more slowly than large body text; small text never falls below
 *   12 pt, in large print 18 pt (furniture 9 pt); tables and furniture never become so large that they run out of room.
 */
double
sw_style_get_size_pt (const SwStyle *style,
                      SwTextRole     role)
{
  double scale = roles[role].scale;

  if (scale > 1.0)
    return style->body_pt * (1.0 + (scale - 1.0) * MIN (1.0, 16.0 / style->body_pt));
  if (role == SW_TEXT_FURNITURE)
    return CLAMP (style->body_pt * scale, SMALLEST_FURNITURE_PT, LARGEST_FURNITURE_PT);
  if (role == SW_TEXT_TABLE || role == SW_TEXT_TABLE_STRONG)
    return CLAMP (style->body_pt * scale, style->least_pt, MAX (style->least_pt, LARGEST_TABLE_PT));
  return MAX (style->least_pt, style->body_pt * scale);
}

double
sw_text_role_get_grey (SwTextRole role)
{
  return roles[role].grey;
}

/**
 * sw_style_has_room_beside:
 * @width_pt: of a picture
 *
 * Returns: whether lines of body text beside it are long enough to read
 */
gboolean
sw_style_has_room_beside (const SwStyle *style,
                          double         width_pt)
{
  return (style->width_pt - width_pt - style->column_gap_pt) / (0.5 * style->body_pt) >= FEWEST_BESIDE;
}

/**
 * sw_style_get_least_cards:
 *
 * Returns: how many cards stand beside one another at least, so that pictures do not outgrow the page
 */
int
sw_style_get_least_cards (const SwStyle *style)
{
  return style->page_width_pt > style->page_height_pt ? MIN (3, sw_style_get_most_cards (style))
                                                      : MIN (2, sw_style_get_most_cards (style));
}

/**
 * sw_style_get_most_cards:
 *
 * Returns: how many cards stand beside one another at most, with lines still long enough to read
 */
int
sw_style_get_most_cards (const SwStyle *style)
{
  double least_pt = FEWEST_CARD * 0.5 * sw_style_get_size_pt (style, SW_TEXT_SMALL);

  return MAX (1, (int) ((style->width_pt + style->column_gap_pt) / (least_pt + style->column_gap_pt)));
}

/**
 * sw_style_new_font:
 *
 * Returns: (transfer full): the font of a role; its size is absolute, in points of 1/72 inch
 */
PangoFontDescription *
sw_style_new_font (const SwStyle *style,
                   SwTextRole     role)
{
  PangoFontDescription *font = pango_font_description_new ();

  pango_font_description_set_family_static (font, FONT_FAMILIES);
  pango_font_description_set_weight (font, roles[role].bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_absolute_size (font, sw_style_get_size_pt (style, role) * PANGO_SCALE);
  return font;
}

static void
choose_paper (SwStyle                *style,
              const SwHandoutOptions *options)
{
  gboolean letter = options->paper == SW_PAPER_LETTER;
  double short_pt = letter ? 8.5 * SW_PT_PER_IN : sw_pt_from_mm (210.0);
  double long_pt = letter ? 11.0 * SW_PT_PER_IN : sw_pt_from_mm (297.0);
  gboolean landscape = options->landscape && options->layout == SW_LAYOUT_SUMMARY;

  style->page_width_pt = landscape ? long_pt : short_pt;
  style->page_height_pt = landscape ? short_pt : long_pt;
}

/**
 * sw_style_init:
 * @options: paper, text size and layout
 */
void
sw_style_init (SwStyle                *style,
               const SwHandoutOptions *options)
{
  choose_paper (style, options);
  style->save_ink = options->save_ink;
  style->panel_grey = options->save_ink ? 1.0 : SW_GREY_PANEL;
  style->body_pt = sw_handout_options_get_body_pt (options);
  style->least_pt = options->layout == SW_LAYOUT_LARGE_PRINT ? SW_LARGE_PRINT_PT : SMALLEST_TEXT_PT;
  style->left_pt = sw_pt_from_mm (16.0);
  style->top_pt = sw_pt_from_mm (13.0);
  style->later_top_pt = sw_pt_from_mm (7.5) + 2.0 * sw_style_get_size_pt (style, SW_TEXT_FURNITURE);
  style->bottom_pt = sw_pt_from_mm (7.0) + 2.1 * sw_style_get_size_pt (style, SW_TEXT_FURNITURE);
  style->width_pt = style->page_width_pt - 2.0 * style->left_pt;
  style->column_gap_pt = 1.3 * style->body_pt;
  style->figure_width_pt = sw_pt_from_mm (54.0);
  style->large_figure_width_pt = (style->width_pt - style->column_gap_pt) / 2.0;

  style->columns = options->layout != SW_LAYOUT_LARGE_PRINT
                   && style->figure_width_pt / (0.5 * sw_style_get_size_pt (style, SW_TEXT_SMALL)) >= FEWEST_UNDER;
}
