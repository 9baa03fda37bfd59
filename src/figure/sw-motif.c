/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What has to be drawn. */
#include "config.h"

#include "sw-motif.h"
#include "sw-paper.h"

/* A limb counts as the far one when the way from the other side's joint leads within 44 degrees straight away. */
#define FAR_DOT (-0.72)

/* Returns how many eggs there are with those of @hull. */
static int
fill_with_eggs (SwEgg           eggs[SW_MOTIF_MAX_EGGS],
                int             n_eggs,
                const SwBody   *body,
                const SwHull   *hull,
                const SwCamera *camera)
{
  for (int i = 0; i < hull->n_blobs; i++)
    for (int step = 0; step < 3; step++)
      {
        const SwBlob *a = &hull->blobs[i];
        const SwBlob *b = &hull->blobs[MIN (i + 1, hull->n_blobs - 1)];
        double t = step / 3.0;
        SwPlacement frame = body->pieces[a->piece];
        SwVector to = sw_unplace (frame, sw_place (body->pieces[b->piece], b->centre));

        if (n_eggs == SW_MOTIF_MAX_EGGS || (step > 0 && i + 1 >= hull->n_blobs))
          return n_eggs;
        eggs[n_eggs++] = sw_egg (camera, frame, sw_mix (a->centre, to, t), sw_mix (a->half, b->half, t));
      }
  return n_eggs;
}

/**
 * sw_part_get_style:
 * @body: a solved body
 * @part: a part
 * @camera: the view
 *
 * Returns: whether the part is a near or a far one
 */
SwInk
sw_part_get_style (const SwBody   *body,
                   SwPart          part,
                   const SwCamera *camera)
{
  int side = sw_part_get_side (part);
  SwPiece joint = part < SW_PART_THIGH ? SW_PIECE_UPPER_ARM : SW_PIECE_THIGH;
  SwVector across;

  if (part < SW_PART_UPPER_ARM)
    return SW_INK_NEAR;

  across = sw_sub (body->pieces[SW_SIDED (joint, side)].at, body->pieces[SW_SIDED (joint, 1 - side)].at);
  return sw_dot (sw_unit (across, camera->up), camera->toward) < FAR_DOT ? SW_INK_FAR : SW_INK_NEAR;
}

static SwMotif *
append (SwMotifs *self)
{
  SwMotif *item;

  self->items = g_renew (SwMotif, self->items, self->n_items + 1);
  item = &self->items[self->n_items++];
  *item = (SwMotif){ .part = -1,
                     .prop = -1,
                     .tone = 1.0,
                     .style = SW_INK_NEAR,
                     .line_ink = SW_TONE_PROP_INK,
                     .extent = sw_extent_empty () };
  return item;
}

/**
 * sw_motif_clear:
 *
 * Frees what it holds.
 */
void
sw_motif_clear (SwMotif *self)
{
  for (int i = 0; i < self->n_outlines; i++)
    sw_outline_clear (&self->outlines[i]);
  g_clear_pointer (&self->outlines, g_free);
  self->n_outlines = 0;
  g_clear_pointer (&self->eggs, g_free);
  g_clear_pointer (&self->line, g_free);
  g_clear_pointer (&self->seams, g_free);
}

/**
 * sw_motifs_clear:
 *
 * Empties the items.
 */
void
sw_motifs_clear (SwMotifs *self)
{
  for (int i = 0; i < self->n_items; i++)
    sw_motif_clear (&self->items[i]);
  g_clear_pointer (&self->items, g_free);
  g_clear_pointer (&self->order, g_free);
  self->n_items = 0;
}

/**
 * sw_motifs_add_part:
 * @body: a solved body; must outlive @self
 * @part: one of its parts
 * @style: how it is drawn
 * @camera: the view
 * @tolerance: of outlines, parts of stature
 *
 * Returns: (transfer none): the new item, valid until the next one is added
 */
SwMotif *
sw_motifs_add_part (SwMotifs        *self,
                   const SwBody   *body,
                   SwPart          part,
                   SwInk         style,
                   const SwCamera *camera,
                   double          tolerance)
{
  SwMotif *item = append (self);
  SwVector from;
  SwVector to;
  SwShape shape;
  SwEgg eggs[SW_MOTIF_MAX_EGGS];

  item->part = (int) part;
  item->body = body;
  item->style = style;
  sw_shape_get (body, part, &shape);
  item->n_outlines = shape.n_hulls;
  item->outlines = g_new (SwOutline, shape.n_hulls);
  for (int i = 0; i < shape.n_hulls; i++)
    {
      sw_outline_from_hull (&item->outlines[i], body, &shape.hulls[i], camera, tolerance);
      sw_extent_join (&item->extent, &item->outlines[i].extent);
      item->n_eggs = fill_with_eggs (eggs, item->n_eggs, body, &shape.hulls[i], camera);
    }
  item->eggs = g_memdup2 (eggs, (gsize) item->n_eggs * sizeof *eggs);
  sw_part_get_line (body, part, &from, &to);
  item->joint = sw_see (camera, from);
  item->end = sw_see (camera, to);
  return item;
}

/**
 * sw_motifs_add_thing:
 * @prop: its number in the figure
 * @eggs: its ellipsoids, hull by hull
 * @hull_sizes: how many of them make each hull
 * @n_hulls: how many hulls
 * @tolerance: of outlines, parts of stature
 *
 * Returns: (transfer none): the new item, valid until the next one is added
 */
SwMotif *
sw_motifs_add_thing (SwMotifs     *self,
                    int          prop,
                    const SwEgg *eggs,
                    const int   *hull_sizes,
                    int          n_hulls,
                    double       tolerance)
{
  SwMotif *item = append (self);
  int n = 0;

  item->prop = prop;
  item->n_outlines = n_hulls;
  item->outlines = g_new (SwOutline, n_hulls);
  for (int i = 0; i < n_hulls; i++)
    {
      sw_outline_from_eggs (&item->outlines[i], eggs + n, hull_sizes[i], tolerance);
      sw_extent_join (&item->extent, &item->outlines[i].extent);
      n += hull_sizes[i];
    }
  item->n_eggs = MIN (n, SW_MOTIF_MAX_EGGS);
  item->eggs = g_memdup2 (eggs, (gsize) item->n_eggs * sizeof *eggs);
  item->joint = item->end = eggs[0].at;
  return item;
}

/**
 * sw_motifs_add_line:
 * @prop: its number in the figure
 * @camera: the view
 * @line: its middle, 2 to SW_MOTIF_MAX_LINE places
 * @n_line: how many
 * @width: how broad it is, parts of stature; 0 for a cord
 *
 * Returns: (transfer none): the new item, valid until the next one is added
 */
SwMotif *
sw_motifs_add_line (SwMotifs       *self,
                    int             prop,
                    const SwCamera *camera,
                    const SwVector *line,
                    int             n_line,
                    double          width)
{
  SwMotif *item = append (self);

  g_return_val_if_fail (n_line >= 2 && n_line <= SW_MOTIF_MAX_LINE, item);

  item->prop = prop;
  item->line_width = width;
  item->line = g_new (SwSpot, n_line);
  for (int i = 0; i < n_line; i++)
    {
      SwSpot at = sw_see (camera, line[i]);

      item->line[item->n_line++] = at;
      sw_extent_add (&item->extent, at.x - width / 2, at.y - width / 2);
      sw_extent_add (&item->extent, at.x + width / 2, at.y + width / 2);
    }
  item->joint = item->line[0];
  item->end = item->line[n_line - 1];
  return item;
}

/**
 * sw_motifs_add_box:
 * @box: a piece of furniture in front of some of the body
 * @camera: the view; must outlive @self
 * @tolerance: of outlines, parts of stature
 *
 * Returns: (transfer none): the new item, valid until the next one is added
 */
SwMotif *
sw_motifs_add_box (SwMotifs       *self,
                   const SwBox    *box,
                   const SwCamera *camera,
                   double          tolerance)
{
  static const int sizes[] = { 8 };
  const SwVector point = { 1e-4, 1e-4, 1e-4 };
  SwMotif *item;
  SwEgg eggs[8];

  for (int k = 0; k < 8; k++)
    eggs[k] = sw_egg (camera, (SwPlacement){ sw_identity (), sw_box_get_corner (box, k) }, sw_vector (0, 0, 0), point);
  item = sw_motifs_add_thing (self, -1, eggs, sizes, 1, tolerance);
  item->camera = camera;
  item->box = *box;
  return item;
}

/**
 * sw_motif_add_seam:
 * @camera: the view
 * @from: one end, in the world
 * @to: the other
 *
 * Adds a line upon a thing; more than SW_MOTIF_MAX_SEAMS are dropped.
 */
void
sw_motif_add_seam (SwMotif        *self,
                   const SwCamera *camera,
                   SwVector        from,
                   SwVector        to)
{
  if (self->n_seams == SW_MOTIF_MAX_SEAMS)
    return;

  self->seams = g_realloc_n (self->seams, (gsize) self->n_seams + 1, sizeof *self->seams);
  self->seams[self->n_seams][0] = sw_see (camera, from);
  self->seams[self->n_seams][1] = sw_see (camera, to);
  self->n_seams++;
}

/**
 * sw_motif_holds:
 *
 * Returns: whether the item covers the point
 */
gboolean
sw_motif_holds (const SwMotif *item,
               double        x,
               double        y)
{
  for (int i = 0; i < item->n_outlines; i++)
    if (sw_outline_holds (&item->outlines[i], x, y))
      return TRUE;

  return FALSE;
}

/**
 * sw_motifs_joined:
 * @a: an item
 * @b: another
 * @joint: (out): where they hang together
 * @radius: (out): how wide the body is there
 *
 * Returns: whether they are neighbours on one body
 */
gboolean
sw_motifs_joined (const SwMotif *a,
                 const SwMotif *b,
                 SwSpot       *joint,
                 double       *radius)
{
  const SwMotif *child = NULL;

  if (a->part < 0 || b->part < 0 || a->body != b->body)
    return FALSE;
  if (sw_part_get_parent ((SwPart) a->part) == b->part)
    child = a;
  else if (sw_part_get_parent ((SwPart) b->part) == a->part)
    child = b;
  if (child == NULL)
    return FALSE;

  *joint = child->joint;
  *radius = sw_part_get_joint_radius ((SwPart) child->part);
  /* Toes that point to the viewer lie before the foot and keep their outline. */
  if (child->part >= (int) SW_PART_BIG_TOE)
    {
      double seen = hypot (child->end.x - child->joint.x, child->end.y - child->joint.y);

      *radius *= CLAMP (1.3 * seen / hypot (seen, child->end.depth - child->joint.depth) - 0.2, 0.3, 1.0);
    }
  return TRUE;
}
