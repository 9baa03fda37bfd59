/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Blocks in their places on pages, and the one way of painting them: for the screen, the printer and the PDF. */
#include "config.h"

#include <pango/pangocairo.h>

#include "sw-pages.h"

#include "sw-equipment-draw.h"

/* Of the width of the page: how much the title, and the telephone number with its words, take at most. */
#define MOST_TITLE 0.6
#define MOST_PHONE 0.5
/* A title with less room than this many times the text's size would not be known again. */
#define LEAST_TITLE 6.0

static double
page_top (const SwStyle *style,
          int            page)
{
  return page == 0 ? style->top_pt : style->later_top_pt;
}

static double
page_room (const SwStyle *style,
           int            page)
{
  return style->page_height_pt - style->bottom_pt - page_top (style, page);
}

static GArray *
break_blocks (SwComposer *composer)
{
  g_autoptr (GArray) strips = g_array_new (FALSE, FALSE, sizeof (SwStrip));

  for (guint i = 0; i < composer->blocks->len; i++)
    g_array_append_val (strips, ((SwBlock *) g_ptr_array_index (composer->blocks, i))->strip);

  return sw_break_pages ((const SwStrip *) (void *) strips->data, strips->len, page_room (&composer->style, 0),
                         page_room (&composer->style, 1));
}

/* Returns: where the block goes that the head is repeated for. */
static double
add_head (SwPages *pages,
          SwBlock *head,
          int      page,
          double   y_pt)
{
  SwPlace place = { .block = head, .page = page, .y_pt = y_pt, .scale = 1.0 };

  g_array_append_val (pages->places, place);
  return y_pt + head->strip.height_pt;
}

/**
 * sw_pages_init:
 * @composer: with all its blocks; has to outlive @pages
 */
void
sw_pages_init (SwPages    *pages,
               SwComposer *composer)
{
  g_autoptr (GArray) starts = break_blocks (composer);
  double y_pt = 0.0;
  int page = -1;

  pages->places = g_array_new (FALSE, FALSE, sizeof (SwPlace));
  pages->starts = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint i = 0; i < composer->blocks->len; i++)
    {
      SwBlock *block = g_ptr_array_index (composer->blocks, i);
      gboolean first = page + 1 < (int) starts->len && g_array_index (starts, guint, page + 1) == i;
      SwPlace place = { .block = block, .scale = 1.0 };
      double room_pt;

      if (first)
        {
          y_pt = page_top (&composer->style, ++page);
          g_array_append_val (pages->starts, pages->places->len);
          if (page > 0 && block->head != NULL)
            y_pt = add_head (pages, block->head, page, y_pt);
        }
      room_pt = page_room (&composer->style, page) - (page > 0 ? block->strip.head_pt : 0.0);
      place.gap_pt = first ? 0.0 : block->strip.space_pt;
      place.page = page;
      place.y_pt = y_pt + place.gap_pt;
      if (block->strip.height_pt > room_pt)
        place.scale = room_pt / block->strip.height_pt;
      y_pt = place.y_pt + place.scale * block->strip.height_pt;
      g_array_append_val (pages->places, place);
    }

  pages->n_pages = MAX (page + 1, 1);
}

void
sw_pages_clear (SwPages *pages)
{
  g_clear_pointer (&pages->places, g_array_unref);
  g_clear_pointer (&pages->starts, g_array_unref);
}

void
sw_furniture_clear (SwFurniture *furniture)
{
  g_clear_pointer (&furniture->running, g_free);
  g_clear_pointer (&furniture->code, g_free);
  g_clear_pointer (&furniture->phone, g_free);
  g_clear_pointer (&furniture->number, g_free);
}

static int
compare_runs (gconstpointer a,
              gconstpointer b)
{
  const PangoGlyphItem *first = *(PangoGlyphItem *const *) a;
  const PangoGlyphItem *second = *(PangoGlyphItem *const *) b;

  return first->item->offset - second->item->offset;
}

/* Shows that part of a run that lies between two bytes of its text. */
static void
show_run (cairo_t        *cr,
          const SwPiece  *piece,
          PangoGlyphItem *whole,
          double          x_pt,
          double          y_pt)
{
  const char *text = pango_layout_get_text (piece->layout);
  PangoGlyphItem *run = pango_glyph_item_copy (whole);
  gboolean backwards = run->item->analysis.level % 2 != 0;
  int start = MAX (piece->start, run->item->offset);
  int end = MIN (piece->end, run->item->offset + run->item->length);

  if (start < end && start > run->item->offset)
    {
      PangoGlyphItem *before = pango_glyph_item_split (run, text, start - run->item->offset);

      if (!backwards)
        x_pt += (double) pango_glyph_string_get_width (before->glyphs) / PANGO_SCALE;
      pango_glyph_item_free (before);
    }
  if (start < end && end < run->item->offset + run->item->length)
    {
      PangoGlyphItem *after = run;

      run = pango_glyph_item_split (after, text, end - after->item->offset);
      if (backwards)
        x_pt += (double) pango_glyph_string_get_width (after->glyphs) / PANGO_SCALE;
      pango_glyph_item_free (after);
    }
  if (start < end)
    {
      cairo_move_to (cr, x_pt, y_pt);
      pango_cairo_show_glyph_item (cr, text, run);
    }
  pango_glyph_item_free (run);
}

/* Shows the runs of a line in the order they are read, each where it is seen: a reader of the PDF gets numbers and
 * their neighbours in a right-to-left line in the right order only this way. */
static void
show_line_in_reading_order (cairo_t         *cr,
                            const SwPiece   *piece,
                            PangoLayoutLine *line,
                            double           x_pt,
                            double           y_pt)
{
  g_autoptr (GPtrArray) runs = g_ptr_array_new ();
  g_autoptr (GHashTable) places = g_hash_table_new (NULL, NULL);
  int x = 0;

  for (GSList *link = line->runs; link != NULL; link = link->next)
    {
      PangoGlyphItem *run = link->data;

      g_ptr_array_add (runs, run);
      g_hash_table_insert (places, run, GINT_TO_POINTER (x));
      x += pango_glyph_string_get_width (run->glyphs);
    }

  g_ptr_array_sort (runs, compare_runs);
  for (guint i = 0; i < runs->len; i++)
    {
      PangoGlyphItem *run = g_ptr_array_index (runs, i);

      x = GPOINTER_TO_INT (g_hash_table_lookup (places, run));
      show_run (cr, piece, run, x_pt + (double) x / PANGO_SCALE, y_pt);
    }
}

static gboolean
has_right_to_left (PangoLayoutLine *line)
{
  for (GSList *link = line->runs; link != NULL; link = link->next)
    if (((PangoGlyphItem *) link->data)->item->analysis.level % 2 != 0)
      return TRUE;

  return FALSE;
}

/* Whether the piece has all of the line, so that it can be shown at once. */
static gboolean
has_whole_line (const SwPiece         *piece,
                const PangoLayoutLine *line)
{
  return piece->start <= line->start_index && piece->end >= line->start_index + line->length;
}

static void
paint_text (const SwPiece *piece,
            cairo_t       *cr)
{
  PangoLayoutIter *iter = pango_layout_get_iter (piece->layout);
  int index = 0;
  int top = 0;

  do
    {
      PangoLayoutLine *line = pango_layout_iter_get_line_readonly (iter);
      PangoRectangle extents;
      double x_pt;
      double y_pt;

      if (index == piece->first_line)
        pango_layout_iter_get_line_yrange (iter, &top, NULL);
      if (index++ < piece->first_line)
        continue;

      pango_layout_iter_get_line_extents (iter, NULL, &extents);
      x_pt = piece->x_pt + (double) extents.x / PANGO_SCALE;
      y_pt = piece->y_pt + (double) (pango_layout_iter_get_baseline (iter) - top) / PANGO_SCALE;
      if (has_right_to_left (line) || !has_whole_line (piece, line))
        show_line_in_reading_order (cr, piece, line, x_pt, y_pt);
      else
        {
          cairo_move_to (cr, x_pt, y_pt);
          pango_cairo_show_layout_line (cr, line);
        }
    }
  while (index < piece->first_line + piece->n_lines && pango_layout_iter_next_line (iter));

  pango_layout_iter_free (iter);
}

static void
paint_box (const SwPiece *piece,
           cairo_t       *cr)
{
  double radius_pt = MIN (piece->radius_pt, MIN (piece->width_pt, piece->height_pt) / 2.0);
  double right_pt = piece->x_pt + piece->width_pt;
  double bottom_pt = piece->y_pt + piece->height_pt;

  if (radius_pt <= 0.0)
    cairo_rectangle (cr, piece->x_pt, piece->y_pt, piece->width_pt, piece->height_pt);
  else
    {
      cairo_new_sub_path (cr);
      cairo_arc (cr, right_pt - radius_pt, piece->y_pt + radius_pt, radius_pt, -G_PI_2, 0.0);
      cairo_arc (cr, right_pt - radius_pt, bottom_pt - radius_pt, radius_pt, 0.0, G_PI_2);
      cairo_arc (cr, piece->x_pt + radius_pt, bottom_pt - radius_pt, radius_pt, G_PI_2, G_PI);
      cairo_arc (cr, piece->x_pt + radius_pt, piece->y_pt + radius_pt, radius_pt, G_PI, 1.5 * G_PI);
      cairo_close_path (cr);
    }
  cairo_fill (cr);
}

static void
paint_figure (const SwPiece *piece,
              SwComposer    *composer,
              cairo_t       *cr)
{
  SwSketches *sketches = sw_measured_get_sketches (composer->measured);

  sw_sketch_draw (sw_sketches_get (sketches, piece->figure, piece->width_pt / piece->zoom, piece->height_pt / piece->zoom),
                  cr);
}

static void
paint_piece (const SwPiece *piece,
             SwComposer    *composer,
             cairo_t       *cr)
{
  cairo_set_source_rgb (cr, piece->grey, piece->grey, piece->grey);
  switch (piece->kind)
    {
    case SW_PIECE_TEXT:
      paint_text (piece, cr);
      break;
    case SW_PIECE_BOX:
      paint_box (piece, cr);
      break;
    case SW_PIECE_SYMBOL:
      cairo_save (cr);
      cairo_translate (cr, piece->x_pt, piece->y_pt);
      sw_symbol_draw (piece->symbol, cr, piece->width_pt);
      cairo_restore (cr);
      break;
    case SW_PIECE_EQUIPMENT:
      cairo_save (cr);
      cairo_translate (cr, piece->x_pt, piece->y_pt);
      sw_equipment_draw (piece->equipment, cr, piece->width_pt);
      cairo_restore (cr);
      break;
    case SW_PIECE_PICTURE:
      cairo_save (cr);
      cairo_translate (cr, piece->x_pt, piece->y_pt);
      sw_logo_picture_draw (piece->picture, cr, piece->width_pt, piece->height_pt);
      cairo_restore (cr);
      break;
    case SW_PIECE_FIGURE:
      cairo_save (cr);
      cairo_translate (cr, piece->x_pt, piece->y_pt);
      cairo_scale (cr, piece->zoom, piece->zoom);
      paint_figure (piece, composer, cr);
      cairo_restore (cr);
      break;
    case SW_PIECE_EMPTY:
    case SW_PIECE_FIELD:
      break;
    default:
      g_assert_not_reached ();
    }
}

/**
 * sw_piece_place:
 * @place: where its block is
 *
 * Everything is composed from left to right; where the language goes the other way each thing stands mirrored, but is not
 * drawn mirrored: a right leg stays one.
 *
 * Returns: the piece in page coordinates, before any scaling
 */
SwPiece
sw_piece_place (const SwPiece *piece,
                const SwPlace *place,
                const SwStyle *style)
{
  SwPiece placed = *piece;

  if (style->mirrored)
    placed.x_pt = style->page_width_pt - piece->x_pt - piece->width_pt;
  placed.y_pt += place->y_pt;
  if (piece->reaches_up)
    {
      placed.y_pt -= place->gap_pt;
      placed.height_pt += place->gap_pt;
    }
  return placed;
}

static void
paint_place (const SwPlace   *place,
             SwComposer      *composer,
             cairo_t         *cr,
             const SwTagSink *sink)
{
  const SwStyle *style = &composer->style;

  cairo_save (cr);
  if (place->scale < 1.0)
    {
      cairo_translate (cr, style->left_pt, place->y_pt);
      cairo_scale (cr, place->scale, place->scale);
      cairo_translate (cr, -style->left_pt, -place->y_pt);
    }

  for (guint i = 0; i < place->block->pieces->len; i++)
    {
      SwPiece piece = sw_piece_place (&g_array_index (place->block->pieces, SwPiece, i), place, style);

      if (sink != NULL && piece.tag != NULL)
        sink->begin (sink->data, piece.tag, &piece);
      if (sink == NULL || piece.tag == NULL || piece.kind != SW_PIECE_FIGURE)
        paint_piece (&piece, composer, cr);
      if (sink != NULL && piece.tag != NULL)
        sink->end (sink->data, piece.tag);
    }
  cairo_restore (cr);
}

static double
measure_furniture_pt (SwComposer *composer,
                      const char *text)
{
  int width;

  pango_layout_get_size (sw_composer_get_layout (composer, SW_TEXT_FURNITURE, -1.0, NULL, text), &width, NULL);
  return (double) width / PANGO_SCALE;
}

/* @end: at the margin where lines end, not where they begin. Text too long for its place is cut short with a mark. */
static void
paint_furniture_text (SwComposer *composer,
                      const char *text,
                      gboolean    end,
                      double      y_pt,
                      double      most_pt,
                      cairo_t    *cr)
{
  const SwStyle *style = &composer->style;
  double width_pt = MIN (measure_furniture_pt (composer, text), most_pt);
  g_autoptr (PangoLayout) layout
      = pango_layout_copy (sw_composer_get_layout (composer, SW_TEXT_FURNITURE, -1.0, NULL, text));
  SwPiece piece = {
    .kind = SW_PIECE_TEXT,
    .layout = layout,
    .n_lines = 1,
    .end = G_MAXINT,
    .y_pt = y_pt,
    .grey = SW_GREY_QUIET,
  };

  if (width_pt == most_pt)
    {
      pango_layout_set_width (layout, (int) (most_pt * PANGO_SCALE));
      pango_layout_set_height (layout, -1);
      pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
    }
  piece.x_pt = style->left_pt + (end != style->mirrored ? style->width_pt - width_pt : 0.0);
  paint_piece (&piece, composer, cr);
}

/* The telephone number gets what it needs: without its words where they would leave too little for the title, and
 * without the title where even so there is no room for both. */
static void
paint_running_head (SwComposer        *composer,
                    const SwFurniture *furniture,
                    cairo_t           *cr)
{
  const SwStyle *style = &composer->style;
  double size_pt = sw_style_get_size_pt (style, SW_TEXT_FURNITURE);
  double y_pt = style->later_top_pt - 2.0 * size_pt;
  const char *phone = furniture->phone;
  double phone_pt = measure_furniture_pt (composer, phone);
  double title_pt;

  if (phone_pt > MOST_PHONE * style->width_pt)
    {
      phone = furniture->number;
      phone_pt = measure_furniture_pt (composer, phone);
    }

  title_pt = MIN (MOST_TITLE * style->width_pt, style->width_pt - phone_pt - size_pt);
  if (title_pt > LEAST_TITLE * size_pt)
    paint_furniture_text (composer, furniture->running, FALSE, y_pt, title_pt, cr);
  paint_furniture_text (composer, phone, TRUE, y_pt, style->width_pt, cr);
}

static char *
make_page_number (const SwPages *pages,
                  SwComposer    *composer,
                  int            page)
{
  g_autofree char *page_text = g_strdup_printf ("%d", page + 1);
  g_autofree char *pages_text = g_strdup_printf ("%d", pages->n_pages);

  return sw_phrases_format (composer->phrases, "page.number", "page", page_text, "pages", pages_text, NULL);
}

/**
 * sw_pages_expect_numbers:
 *
 * Measures the pages' numbers, which else is done when they are painted: now those are known that the handout before had.
 */
void
sw_pages_expect_numbers (const SwPages *pages,
                         SwComposer    *composer)
{
  for (int page = 0; page < pages->n_pages; page++)
    {
      g_autofree char *number = make_page_number (pages, composer, page);

      measure_furniture_pt (composer, number);
    }
}

static void
paint_furniture (const SwPages     *pages,
                 SwComposer        *composer,
                 const SwFurniture *furniture,
                 int                page,
                 cairo_t           *cr)
{
  const SwStyle *style = &composer->style;
  double size_pt = sw_style_get_size_pt (style, SW_TEXT_FURNITURE);
  double foot_pt = style->page_height_pt - style->bottom_pt + 0.75 * size_pt;
  g_autofree char *number = make_page_number (pages, composer, page);

  if (page > 0)
    paint_running_head (composer, furniture, cr);

  paint_furniture_text (composer, furniture->code, FALSE, foot_pt, MOST_TITLE * style->width_pt, cr);
  paint_furniture_text (composer, number, TRUE, foot_pt, (1.0 - MOST_TITLE) * style->width_pt, cr);
}

/**
 * sw_pages_paint:
 * @page: from 0
 * @cr: one unit is one point; the origin is the top left corner of the paper
 * @sink: (nullable): who is told about the structure
 */
void
sw_pages_paint (const SwPages     *pages,
                SwComposer        *composer,
                const SwFurniture *furniture,
                int                page,
                cairo_t           *cr,
                const SwTagSink   *sink)
{
  guint first = page < (int) pages->starts->len ? g_array_index (pages->starts, guint, page) : 0;

  for (guint i = first; i < pages->places->len; i++)
    {
      const SwPlace *place = &g_array_index (pages->places, SwPlace, i);

      if (place->page != page)
        break;
      paint_place (place, composer, cr, sink);
    }

  paint_furniture (pages, composer, furniture, page, cr);
}

/**
 * sw_piece_get_text_extents:
 * @piece: a placed text of one line
 * @left_pt: (out): left edge of what is drawn of the line
 * @right_pt: (out): its right edge
 */
void
sw_piece_get_text_extents (const SwPiece *piece,
                           double        *left_pt,
                           double        *right_pt)
{
  PangoLayoutLine *line = pango_layout_get_line_readonly (piece->layout, piece->first_line);
  g_autofree int *ranges = NULL;
  int n_ranges = 0;

  pango_layout_line_get_x_ranges (line, MAX (piece->start, line->start_index),
                                  MIN (piece->end, line->start_index + line->length), &ranges, &n_ranges);
  *left_pt = *right_pt = piece->x_pt;
  if (n_ranges > 0)
    {
      *left_pt += (double) ranges[0] / PANGO_SCALE;
      *right_pt += (double) ranges[2 * n_ranges - 1] / PANGO_SCALE;
    }
}
