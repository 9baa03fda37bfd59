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
  g_clear_object (&piece->picture);
  g_free (piece->uri);
  g_free (piece->field_name);
}

static void
clear_entry (gpointer data)
{
  SwEntry *entry = data;

  g_free (entry->item_id);
  g_free (entry->outline);
}

SwBlock *
sw_block_new (void)
{
  SwBlock *block = g_new0 (SwBlock, 1);

  block->pieces = g_array_new (FALSE, TRUE, sizeof (SwPiece));
  g_array_set_clear_func (block->pieces, clear_piece);
  block->entries = g_array_new (FALSE, TRUE, sizeof (SwEntry));
  g_array_set_clear_func (block->entries, clear_entry);
  return block;
}

void
sw_block_free (SwBlock *block)
{
  g_array_unref (block->pieces);
  g_array_unref (block->entries);
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

/**
 * sw_block_add_entry:
 * @entry: what begins; its strings are copied
 */
void
sw_block_add_entry (SwBlock       *block,
                    const SwEntry *entry)
{
  SwEntry own = *entry;

  own.item_id = g_strdup (entry->item_id);
  own.outline = g_strdup (entry->outline);
  g_array_append_val (block->entries, own);
}

/**
 * sw_block_find_item:
 * @x_pt: from the left edge of the page
 *
 * Returns: (transfer none) (nullable): id of the item told there, the nearest when several are; NULL for none
 */
const char *
sw_block_find_item (const SwBlock *block,
                    double         x_pt)
{
  const char *found = NULL;
  double nearest_pt = G_MAXDOUBLE;

  for (guint i = 0; i < block->entries->len; i++)
    {
      const SwEntry *entry = &g_array_index (block->entries, SwEntry, i);
      double away_pt = MAX (0.0, MAX (entry->left_pt - x_pt, x_pt - entry->left_pt - entry->width_pt));

      if (entry->item_id != NULL && away_pt < nearest_pt)
        {
          nearest_pt = away_pt;
          found = entry->item_id;
        }
    }
  return found;
}
