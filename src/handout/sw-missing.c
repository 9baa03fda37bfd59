/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which characters no font can print: where they should be, the pages have empty boxes or nothing. */
#include "config.h"

#include "sw-font-check.h"
#include "sw-missing.h"

static void
add_letter (gunichar    letter,
            GHashTable *seen,
            GString    *found)
{
  if (g_unichar_validate (letter) && !g_unichar_isspace (letter) && g_hash_table_add (seen, GUINT_TO_POINTER (letter)))
    g_string_append_unichar (found, letter);
}

static void
collect_run (const PangoGlyphItem *run,
             const char           *text,
             GHashTable           *seen,
             GString              *found)
{
  const char *end = text + run->item->offset + run->item->length;

  for (int i = 0; i < run->glyphs->num_glyphs; i++)
    {
      PangoGlyph glyph = run->glyphs->glyphs[i].glyph;

      if (glyph != PANGO_GLYPH_EMPTY && (glyph & PANGO_GLYPH_UNKNOWN_FLAG) != 0)
        add_letter (glyph & ~PANGO_GLYPH_UNKNOWN_FLAG, seen, found);
    }
  if (sw_font_is_lossy (run->item->analysis.font))
    for (const char *at = text + run->item->offset; at < end; at = g_utf8_next_char (at))
      add_letter (g_utf8_get_char (at), seen, found);
}

static void
collect_text (PangoLayout *layout,
              GHashTable  *seen,
              GString     *found)
{
  for (GSList *lines = pango_layout_get_lines_readonly (layout); lines != NULL; lines = lines->next)
    for (GSList *runs = ((PangoLayoutLine *) lines->data)->runs; runs != NULL; runs = runs->next)
      collect_run (runs->data, pango_layout_get_text (layout), seen, found);
}

/**
 * sw_missing_find:
 * @pages: the pages
 * @composer: what they were made by
 * @furniture: what every page carries
 *
 * Returns: (transfer full): each character that no installed font can print, once, in the order of the pages; "" for
 *   none
 */
char *
sw_missing_find (const SwPages     *pages,
                 SwComposer        *composer,
                 const SwFurniture *furniture)
{
  const char *const repeated[] = { furniture->running, furniture->phone, furniture->code };
  g_autoptr (GHashTable) seen = g_hash_table_new (NULL, NULL);
  GString *found = g_string_new (NULL);

  for (guint i = 0; i < pages->places->len; i++)
    {
      const GArray *pieces = g_array_index (pages->places, SwPlace, i).block->pieces;

      for (guint j = 0; j < pieces->len; j++)
        if (g_array_index (pieces, SwPiece, j).kind == SW_PIECE_TEXT)
          collect_text (g_array_index (pieces, SwPiece, j).layout, seen, found);
    }
  for (guint i = 0; i < G_N_ELEMENTS (repeated); i++)
    collect_text (sw_composer_get_layout (composer, SW_TEXT_FURNITURE, -1.0, NULL, repeated[i]), seen, found);

  return g_string_free (found, FALSE);
}
