/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Places that are filled in: with a pen on paper, on a screen where the handout is a form. They look the same. */
#include "config.h"

#include "sw-composer.h"

/* A reader of the file writes what is typed in a font of its own, which has only Latin letters for certain. */
static gboolean
is_in_latin_letters (const char *language)
{
  int n = 0;
  const PangoScript *scripts = pango_language_get_scripts (pango_language_from_string (language), &n);

  for (int i = 0; i < n; i++)
    if (scripts[i] == PANGO_SCRIPT_LATIN)
      return TRUE;

  return FALSE;
}

/**
 * sw_flow_field:
 * @around: the element that the place belongs to, with no content of its own where the handout is a form
 * @kind: what is written there
 * @name: (transfer full): its name in the file, which tells nothing of the client
 * @label: (transfer full): what is said of it
 *
 * A place that can be filled in; nothing where the handout is no form.
 */
void
sw_flow_field (SwFlow     *flow,
               SwTag      *around,
               SwFieldKind kind,
               double      x_pt,
               double      y_pt,
               double      width_pt,
               double      height_pt,
               char       *name,
               char       *label)
{
  SwComposer *self = flow->composer;
  SwPiece *piece;

  if (!self->form || (kind == SW_FIELD_WORDS && !is_in_latin_letters (self->language)))
    {
      g_free (name);
      g_free (label);
      return;
    }

  piece = sw_block_add (flow->block, SW_PIECE_FIELD, sw_tags_add (&self->tags, around, "Form"), x_pt, y_pt, width_pt,
                        height_pt);
  piece->tag->alt = label;
  piece->field = kind;
  piece->field_name = name;
}

/**
 * sw_flow_empty_cell:
 * @cell: an element of type TD
 *
 * What a cell holds on paper: nothing. In a form its fields are its content.
 */
void
sw_flow_empty_cell (SwFlow *flow,
                    SwTag  *cell,
                    double  x_pt,
                    double  width_pt,
                    double  height_pt)
{
  if (!flow->composer->form)
    sw_block_add (flow->block, SW_PIECE_EMPTY, cell, x_pt, flow->y_pt, width_pt, height_pt);
}
