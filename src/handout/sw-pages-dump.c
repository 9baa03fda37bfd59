/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Everything on the pages and where it is, as text to compare. */
#include "config.h"

#include "sw-pages.h"

/* Where the piece is on a page that is drawn smaller because it would not fit. */
static SwPiece
scale_piece (SwPiece        piece,
             const SwPlace *place,
             const SwStyle *style)
{
  piece.x_pt = style->left_pt + (piece.x_pt - style->left_pt) * place->scale;
  piece.y_pt = place->y_pt + (piece.y_pt - place->y_pt) * place->scale;
  piece.width_pt *= place->scale;
  piece.height_pt *= place->scale;
  return piece;
}

static char *
dup_piece_text (const SwPiece *piece)
{
  const char *text;
  const PangoLayoutLine *first;
  const PangoLayoutLine *last;
  int start;
  int end;

  if (piece->kind == SW_PIECE_SYMBOL)
    return g_strdup (sw_symbol_get_name (piece->symbol));
  if (piece->kind == SW_PIECE_EQUIPMENT)
    return g_strdup (sw_term_to_nick (SW_TYPE_EQUIPMENT, (int) piece->equipment));
  if (piece->kind == SW_PIECE_FIGURE || piece->kind == SW_PIECE_FIELD
      || (piece->kind == SW_PIECE_PICTURE && piece->tag != NULL))
    return g_strdup (piece->tag->alt);
  if (piece->kind != SW_PIECE_TEXT)
    return g_strdup (piece->tag != NULL ? piece->tag->name : "");

  text = pango_layout_get_text (piece->layout);
  first = pango_layout_get_line_readonly (piece->layout, piece->first_line);
  last = pango_layout_get_line_readonly (piece->layout, piece->first_line + piece->n_lines - 1);
  start = MAX (piece->start, first->start_index);
  end = MIN (piece->end, last->start_index + last->length);
  return g_strndup (text + start, (gsize) (end - start));
}

/* What it is called in a dump. A text that goes on in other pieces has the place of the whole; those are its parts. */
static const char *
get_kind (const SwPiece *piece)
{
  static const char *const kinds[] = {
    [SW_PIECE_TEXT] = "text",       [SW_PIECE_FIGURE] = "figure",       [SW_PIECE_SYMBOL] = "symbol",
    [SW_PIECE_BOX] = "box",         [SW_PIECE_EMPTY] = "empty",         [SW_PIECE_FIELD] = "field",
    [SW_PIECE_PICTURE] = "picture", [SW_PIECE_EQUIPMENT] = "equipment",
  };
  const PangoLayoutLine *line;

  if (piece->kind != SW_PIECE_TEXT)
    return kinds[piece->kind];
  line = pango_layout_get_line_readonly (piece->layout, piece->first_line);
  return piece->start > line->start_index ? "part" : "text";
}

/**
 * sw_pages_dump:
 *
 * Returns: (transfer full): every piece in its place, one a line: `kind x y width height "text"`, in points
 */
char *
sw_pages_dump (const SwPages *pages,
               SwComposer    *composer)
{
  GString *out = g_string_new (NULL);
  int page = -1;

  for (guint i = 0; i < pages->places->len; i++)
    {
      const SwPlace *place = &g_array_index (pages->places, SwPlace, i);

      if (place->page != page)
        {
          page = place->page;
          g_string_append_printf (out, "page %d %.0fx%.0f\n", page + 1, composer->style.page_width_pt,
                                  composer->style.page_height_pt);
        }
      for (guint j = 0; j < place->block->pieces->len; j++)
        {
          SwPiece piece = scale_piece (sw_piece_place (&g_array_index (place->block->pieces, SwPiece, j), place,
                                                       &composer->style),
                                       place, &composer->style);
          g_autofree char *text = dup_piece_text (&piece);
          g_auto (GStrv) quotes = g_strsplit (text, "\"", -1);
          g_autofree char *escaped = g_strdelimit (g_strjoinv ("\\\"", quotes), "\n", '|');

          g_string_append_printf (out, "%s %.1f %.1f %.1f %.1f \"%s\"\n", get_kind (&piece), piece.x_pt, piece.y_pt,
                                  piece.width_pt, piece.height_pt, escaped);
        }
    }

  return g_string_free (out, FALSE);
}
