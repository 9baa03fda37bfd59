/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Draws the parts of a body: neighbours share one joined outline, what crosses shows a white gap. Each outline is
 * stroked at twice its weight and then filled, so that only its outer half stays and hulls of one part melt. */
#include "config.h"

#include "sw-body-draw.h"

/* Within this many joint radii a part's outline is left out where it lies inside its neighbour. */
#define JOIN_REACH 1.65
/* Within this many joint radii no white gap is drawn, or elbows would look cut. */
#define GAP_REACH 2.0
#define MAX_SKIPS 8
#define START_DASH_PT 2.2
#define START_GAP_PT 1.7
#define STEP 0.012
#define STEP_FINE 0.002
/* An end that is cut off stays open. */
#define OPEN_FOREARM 0.026
#define OPEN_SHANK 0.038

/**
 * Skip:
 *
 * Where an outline is left out: near @joint, and unless @anywhere only inside @inside.
 */
typedef struct
{
  const SwMotif *inside;
  SwSpot joint;
  double reach;
  gboolean anywhere;
} Skip;

/**
 * Skips:
 *
 * All that is left out of one part's outlines.
 */
typedef struct
{
  Skip skips[MAX_SKIPS];
  int n;
} Skips;

static gboolean
is_kept (gconstpointer data,
         double        x,
         double        y)
{
  const Skips *self = data;

  for (int i = 0; i < self->n; i++)
    {
      const Skip *skip = &self->skips[i];
      double dx = x - skip->joint.x;
      double dy = y - skip->joint.y;

      if (dx * dx + dy * dy < skip->reach * skip->reach && (skip->anywhere || sw_motif_holds (skip->inside, x, y)))
        return FALSE;
    }
  return TRUE;
}

static gboolean
meets_skip (const SwOutline *outline,
            const Skips     *skips)
{
  for (int i = 0; i < skips->n; i++)
    {
      const Skip *skip = &skips->skips[i];
      SwExtent near = { skip->joint.x, skip->joint.y, skip->joint.x, skip->joint.y };

      if (sw_extent_meets (&outline->extent, &near, skip->reach))
        return TRUE;
    }
  return FALSE;
}

/* Adds the outlines less what is skipped to the path. */
static void
add_outlines (const SwPaper *paper,
              const SwMotif *item,
              const Skips   *skips)
{
  for (int i = 0; i < item->n_outlines; i++)
    {
      SwOutline *outline = &item->outlines[i];
      const SwCurve *curve = sw_outline_get_curve (outline);
      SwCurve runs[MAX_SKIPS];
      int n;

      if (!meets_skip (outline, skips))
        {
          sw_paper_curve (paper, curve);
          continue;
        }
      n = sw_curve_keep (curve, item->body->fine ? STEP_FINE : STEP, is_kept, skips, runs, MAX_SKIPS);
      for (int k = 0; k < n; k++)
        sw_paper_curve (paper, &runs[k]);
    }
}

static void
fill_outlines (const SwPaper *paper,
               const SwMotif  *item,
               double         tone)
{
  for (int i = 0; i < item->n_outlines; i++)
    sw_paper_area (paper, sw_outline_get_curve (&item->outlines[i]));
  sw_paper_tone (paper, tone);
  sw_sketch_fill (paper->sketch);
}

static double
ink_of (SwInk style)
{
  return style == SW_INK_NEAR ? SW_INK_PT : style == SW_INK_FAR ? SW_FAR_INK_PT : SW_START_INK_PT;
}

static double
skin_of (SwInk style)
{
  return style == SW_INK_FAR ? SW_TONE_FAR_FILL : 1.0;
}

static double
clothes_of (SwInk style)
{
  return style == SW_INK_NEAR ? SW_TONE_CLOTHES : style == SW_INK_FAR ? SW_TONE_FAR_CLOTHES : 1.0;
}

/* The visible half of the hem's ring, from its left to its right end as seen along the bone. */
static void
find_hem (const SwMotif  *item,
          const SwBlob   *ring,
          const SwCamera *camera,
          SwCurve        *hem)
{
  SwPlacement frame = item->body->pieces[ring->piece];
  double start = atan2 (sw_dot (frame.axes.y, camera->toward), sw_dot (frame.axes.x, camera->toward)) - G_PI / 2;

  sw_curve_clear (hem);
  sw_curve_arc (hem, sw_see (camera, sw_place (frame, ring->centre)),
                sw_see (camera, sw_scale (frame.axes.x, ring->half.x)),
                sw_see (camera, sw_scale (frame.axes.y, ring->half.y)), start, start + G_PI, 1);
}

/**
 * Half:
 *
 * One side of a line through @at on paper, that towards @x, @y.
 */
typedef struct
{
  SwSpot at;
  double x;
  double y;
} Half;

static gboolean
is_beyond (gconstpointer data,
           double        x,
           double        y)
{
  const Half *half = data;

  return (x - half->at.x) * half->x + (y - half->at.y) * half->y >= 0;
}

/* The bare part of a limb below its sleeve or trouser leg, and the hem's line. */
static void
draw_skin (const SwPaper  *paper,
           const SwMotif   *item,
           const SwCamera *camera)
{
  SwBlob ring;
  SwCurve hem;
  SwCurve skin;
  double bx = item->end.x - item->joint.x;
  double by = item->end.y - item->joint.y;
  double seen = hypot (bx, by);

  if (!sw_part_get_hem ((SwPart) item->part, &ring))
    return;

  find_hem (item, &ring, camera, &hem);
  if (seen > 0.05)
    {
      Half below = { sw_see (camera, sw_place (item->body->pieces[ring.piece], ring.centre)), bx / seen, by / seen };

      if (sw_curve_keep (sw_outline_get_curve (&item->outlines[0]), STEP, is_beyond, &below, &skin, 1) > 0)
        sw_paper_area (paper, &skin);
      sw_paper_tone (paper, skin_of (item->style));
      sw_sketch_fill (paper->sketch);
    }

  sw_paper_curve (paper, &hem);
  /* The ring's near half bulges into skin or cloth, by which end of the bone is nearer. */
  sw_paper_tone (paper, item->end.depth < item->joint.depth ? clothes_of (item->style) : skin_of (item->style));
  sw_sketch_fill_preserve (paper->sketch);
  sw_paper_tone (paper, SW_TONE_HEM);
  sw_sketch_set_width (paper->sketch, SW_HEM_PT);
  sw_sketch_stroke (paper->sketch);
}

/* Where a close picture cuts off forearm or shank. */
static gboolean
find_cut (const SwMotif  *item,
          const SwCamera *camera,
          Skip           *skip)
{
  int limb = sw_part_get_limb ((SwPart) item->part);
  gboolean forearm = item->part - limb % 2 == (int) SW_PART_FOREARM;
  SwVector at = { 0, 0, forearm ? -SW_FOREARM_CUT : -SW_SHANK_CUT };

  if (!item->body->fine || (!forearm && item->part - limb % 2 != (int) SW_PART_SHANK))
    return FALSE;

  *skip = (Skip){ item, sw_see (camera, sw_place (item->body->pieces[sw_part_get_piece ((SwPart) item->part)], at)),
                  forearm ? OPEN_FOREARM : OPEN_SHANK, TRUE };
  return TRUE;
}

static void
collect_skips (const SwMotifs *items,
               int            nth,
               const SwCamera *camera,
               double         reach,
               gboolean       anywhere,
               Skips         *skips)
{
  const SwMotif *item = &items->items[items->order[nth]];

  skips->n = find_cut (item, camera, &skips->skips[0]) ? 1 : 0;
  for (int i = 0; i < nth && skips->n < MAX_SKIPS; i++)
    {
      const SwMotif *other = &items->items[items->order[i]];
      SwSpot joint;
      double radius;

      if (other->hidden || (other->style == SW_INK_START && item->style != SW_INK_START))
        continue;
      if (sw_motifs_joined (item, other, &joint, &radius))
        skips->skips[skips->n++] = (Skip){ other, joint, reach * radius, anywhere };
    }
}

/* Whether anything but neighbours was drawn before where this item comes. */
static gboolean
crosses_something (const SwMotifs  *items,
                   int             nth,
                   const SwExtent *behind)
{
  const SwMotif *item = &items->items[items->order[nth]];

  if (sw_extent_meets (&item->extent, behind, 0.0))
    return TRUE;
  for (int i = 0; i < nth; i++)
    {
      const SwMotif *other = &items->items[items->order[i]];
      SwSpot joint;
      double radius;

      if (!other->hidden && !sw_motifs_joined (item, other, &joint, &radius)
          && sw_extent_meets (&item->extent, &other->extent, 0.02))
        return TRUE;
    }
  return FALSE;
}

/**
 * sw_body_draw_item:
 * @paper: where to draw
 * @items: the sorted items
 * @nth: which in their order; must be a part of a body
 * @camera: the view
 * @works: what is tinted
 * @n_works: how many
 * @behind: where furniture was drawn
 */
void
sw_body_draw_item (const SwPaper      *paper,
                   const SwMotifs      *items,
                   int                 nth,
                   const SwCamera     *camera,
                   const SwFigureWork *works,
                   int                 n_works,
                   const SwExtent     *behind)
{
  const SwMotif *item = &items->items[items->order[nth]];
  SwSketch *sketch = paper->sketch;
  double ink = ink_of (item->style);
  gboolean clothed = item->part == SW_PART_TRUNK
                     || (item->part >= (int) SW_PART_UPPER_ARM && item->part < (int) SW_PART_FOREARM)
                     || (item->part >= (int) SW_PART_THIGH && item->part < (int) SW_PART_SHANK);
  Skips skips;

  sw_sketch_set_join (sketch, CAIRO_LINE_JOIN_ROUND);
  sw_sketch_set_cap (sketch, CAIRO_LINE_CAP_ROUND);
  if (item->style != SW_INK_START && crosses_something (items, nth, behind))
    {
      collect_skips (items, nth, camera, GAP_REACH, TRUE, &skips);
      add_outlines (paper, item, &skips);
      sw_sketch_set_width (sketch, 2 * (ink + SW_GAP_PT));
      sw_sketch_set_tone (sketch, 1);
      sw_sketch_set_cap (sketch, CAIRO_LINE_CAP_BUTT);
      sw_sketch_stroke (sketch);
      sw_sketch_set_cap (sketch, CAIRO_LINE_CAP_ROUND);
    }

  collect_skips (items, nth, camera, JOIN_REACH, FALSE, &skips);
  add_outlines (paper, item, &skips);
  sw_sketch_set_width (sketch, 2 * ink);
  if (item->style == SW_INK_START)
    {
      sw_sketch_set_cap (sketch, CAIRO_LINE_CAP_BUTT);
      sw_sketch_set_dash (sketch, START_DASH_PT, START_GAP_PT);
    }
  sw_paper_tone (paper, item->style == SW_INK_NEAR  ? 0
                        : item->style == SW_INK_FAR ? SW_TONE_FAR_INK
                                                      : SW_TONE_START_INK);
  sw_sketch_stroke (sketch);
  sw_sketch_set_dash (sketch, 0, 0);

  fill_outlines (paper, item, clothed ? clothes_of (item->style) : skin_of (item->style));
  if (item->part == SW_PART_HEAD)
    sw_head_draw (paper, item, camera);
  else if (item->body->fine && item->style != SW_INK_START)
    sw_fine_draw (paper, item, camera);
  else if (clothed && item->part != SW_PART_TRUNK && item->style != SW_INK_START)
    draw_skin (paper, item, camera);
  if (item->style != SW_INK_START)
    sw_works_draw (paper, item, camera, works, n_works);
}
