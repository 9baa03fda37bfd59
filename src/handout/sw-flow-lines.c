/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sets lines of a measured text down as pieces: one, or several where assistive technology has to be told about a
 * link or another language. All of them are drawn from the same layout, so that it looks the same either way. */
#include "config.h"

#include "sw-composer.h"
#include "sw-text-part.h"

static double
get_top_pt (PangoLayout *layout,
            int          line)
{
  return line > 0 ? sw_layout_get_lines_height (layout, 0, line) : 0.0;
}

/* @top_pt: where line 0 of the layout would be. */
static SwPiece *
add_piece (SwFlow      *flow,
           SwTextRole   role,
           SwTag       *tag,
           PangoLayout *layout,
           double       top_pt,
           int          first,
           int          n)
{
  SwPiece *piece
      = sw_block_add (flow->block, SW_PIECE_TEXT, tag, flow->left_pt, top_pt + get_top_pt (layout, first),
                      flow->width_pt, sw_layout_get_lines_height (layout, first, n));

  piece->layout = g_object_ref (layout);
  piece->first_line = first;
  piece->n_lines = n;
  piece->end = G_MAXINT;
  piece->grey = sw_text_role_get_grey (role);
  return piece;
}

static gboolean
has_ink (const char *text,
         int         start,
         int         end)
{
  for (const char *at = text + start; at < text + end; at = g_utf8_next_char (at))
    {
      gunichar letter = g_utf8_get_char (at);

      if (!g_unichar_isspace (letter) && g_unichar_type (letter) != G_UNICODE_FORMAT)
        return TRUE;
    }

  return FALSE;
}

/* A link is one piece a line, so that each has its own place to tap. */
static void
add_part (SwFlow           *flow,
          SwTextRole        role,
          SwTag            *around,
          PangoLayout      *layout,
          double            top_pt,
          int               first,
          int               n,
          const SwTextPart *part)
{
  SwTags *tags = &flow->composer->tags;
  const char *text = pango_layout_get_text (layout);
  SwPiece *piece = NULL;

  for (int line = first; line < first + n; line++)
    {
      const PangoLayoutLine *lines = pango_layout_get_line_readonly (layout, line);
      int start = MAX (part->start, lines->start_index);
      int end = MIN (part->end, lines->start_index + lines->length);
      SwTag *tag;

      if (start >= end || !has_ink (text, start, end))
        continue;
      if (piece != NULL && part->link == NULL)
        {
          piece->n_lines = line - piece->first_line + 1;
          piece->height_pt = sw_layout_get_lines_height (layout, piece->first_line, piece->n_lines);
          continue;
        }

      tag = sw_tags_add (tags, around, part->link != NULL ? "Link" : "Span");
      tag->language = part->language;
      piece = add_piece (flow, role, tag, layout, top_pt, line, 1);
      piece->start = part->start;
      piece->end = part->end;
      if (part->link != NULL)
        {
          tag->alt = g_strdup (part->link->spoken);
          piece->uri = g_strdup (part->link->uri);
        }
    }
}

/**
 * sw_flow_lines:
 * @tag: (nullable): the element whose content they are
 * @strong_length: how many bytes of the text are words of the handout that stand before it
 * @first: a line, from 0
 * @n: how many lines from there, at least 1
 *
 * Adds lines of a text to the column.
 */
void
sw_flow_lines (SwFlow      *flow,
               SwTextRole   role,
               SwTag       *tag,
               PangoLayout *layout,
               gsize        strong_length,
               int          first,
               int          n)
{
  const SwComposer *self = flow->composer;
  g_autoptr (GArray) parts
      = sw_text_parts_new (self->links, pango_layout_get_text (layout), strong_length, self->text_language);
  double top_pt = flow->y_pt - get_top_pt (layout, first);

  if (tag == NULL || parts->len < 2)
    {
      add_piece (flow, role, tag, layout, top_pt, first, n);
      if (tag != NULL)
        tag->language = self->text_language;
    }
  for (guint i = 0; tag != NULL && parts->len > 1 && i < parts->len; i++)
    add_part (flow, role, tag, layout, top_pt, first, n, &g_array_index (parts, SwTextPart, i));

  flow->y_pt += sw_layout_get_lines_height (layout, first, n);
}
