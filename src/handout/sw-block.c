/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What measuring leaves behind: strips of the handout with everything in its place. */
#include "config.h"

#include "sw-block.h"

static void
clear_piece (gpointer data)
{
  SwPiece *piece = data;

  g_clear_object (&piece->layout);
  g_clear_object (&piece->figure);
}

SwBlock *
sw_block_new (void)
{
  SwBlock *block = g_new0 (SwBlock, 1);

  block->pieces = g_array_new (FALSE, TRUE, sizeof (SwPiece));
  g_array_set_clear_func (block->pieces, clear_piece);
  return block;
}

void
sw_block_free (SwBlock *block)
{
  g_array_unref (block->pieces);
  g_free (block->item_id);
  g_free (block->outline);
  g_free (block);
}

/**
 * sw_block_add:
 * @tag: (nullable): the element it is the content of
 *
 * Returns: (transfer none): the new piece, valid until the next one is added
 */
SwPiece *
sw_block_add (SwBlock    *block,
              SwPieceKind kind,
              SwTag      *tag,
              double      x_pt,
              double      y_pt,
              double      width_pt,
              double      height_pt)
{
  SwPiece piece = {
    .kind = kind,
    .tag = tag,
    .x_pt = x_pt,
    .y_pt = y_pt,
    .width_pt = width_pt,
    .height_pt = height_pt,
  };

  g_array_append_val (block->pieces, piece);
  return &g_array_index (block->pieces, SwPiece, block->pieces->len - 1);
}
