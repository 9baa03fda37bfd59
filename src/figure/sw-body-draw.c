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

static gboolean
is_skipped (const Skip *skips,
            int         n_skips,
            double      x,
            double      y)
{
  for (int i = 0; i < n_skips; i++)
    if (hypot (x - skips[i].joint.x, y - skips[i].joint.y) < skips[i].reach
        && (skips[i].anywhere || sw_motif_holds (skips[i].inside, x, y)))
      return TRUE;

  return FALSE;
}

static gboolean
meets_skip (const SwOutline *outline,
            const Skip      *skips,
            int              n_skips)
{
  for (int i = 0; i < n_skips; i++)
    {
      SwExtent near = { skips[i].joint.x, skips[i].joint.y, skips[i].joint.x, skips[i].joint.y };

      if (sw_extent_meets (&outline->extent, &near, skips[i].reach))
        return TRUE;
    }
  return FALSE;
}

/* The point between a kept and a skipped one where the change happens. */
static double
find_change (const Skip *skips,
             int         n_skips,
             double      ax,
             double      ay,
             double      bx,
             double      by,
             gboolean    a_skipped)
{
  double low = 0;
  double high = 1;

  for (int i = 0; i < 7; i++)
    {
      double t = (low + high) / 2;

      if (is_skipped (skips, n_skips, ax + (bx - ax) * t, ay + (by - ay) * t) == a_skipped)
        low = t;
      else
        high = t;
    }
  return (low + high) / 2;
}

/* Adds the outline less what is skipped to the path. */
static void
add_outline (const SwPaper   *paper,
             const SwOutline *outline,
             double           step_most,
             const Skip      *skips,
             int              n_skips)
{
  int n = outline->n_points;
  gboolean pen_down = FALSE;
  gboolean last_skipped;

  if (n == 0)
    return;
  if (n_skips == 0 || !meets_skip (outline, skips, n_skips))
    {
      sw_paper_outline (paper, outline);
      return;
    }

  last_skipped = is_skipped (skips, n_skips, outline->points[0].x, outline->points[0].y);
  for (int i = 0; i < n; i++)
    {
      int k = i + 1 < n ? i + 1 : 0;
      double ax = outline->points[i].x;
      double ay = outline->points[i].y;
      double bx = outline->points[k].x;
      double by = outline->points[k].y;
      int steps = MAX (1, (int) ceil (hypot (bx - ax, by - ay) / step_most));

      for (int step = 1; step <= steps; step++)
        {
          double px = ax + (bx - ax) * (step - 1) / steps;
          double py = ay + (by - ay) * (step - 1) / steps;
          double qx = ax + (bx - ax) * step / steps;
          double qy = ay + (by - ay) * step / steps;
          gboolean skipped = is_skipped (skips, n_skips, qx, qy);

          if (skipped != last_skipped)
            {
              double t = find_change (skips, n_skips, px, py, qx, qy, last_skipped);
              double cx = px + (qx - px) * t;
              double cy = py + (qy - py) * t;

              if (last_skipped)
                sw_paper_move (paper, cx, cy);
              else
                {
                  /* Only at the very start is nothing drawn yet of what is kept: it reaches back to the corner. */
                  if (!pen_down)
                    sw_paper_move (paper, ax, ay);
                  sw_paper_line (paper, cx, cy);
                }
              pen_down = !skipped;
              last_skipped = skipped;
            }
          if (!skipped && step == steps)
            {
              if (!pen_down)
                sw_paper_move (paper, ax, ay);
              pen_down = TRUE;
              sw_paper_line (paper, qx, qy);
            }
        }
    }
}

static void
add_outlines (const SwPaper *paper,
              const SwMotif  *item,
              const Skip    *skips,
              int            n_skips)
{
  for (int i = 0; i < item->n_outlines; i++)
    add_outline (paper, &item->outlines[i], item->body->fine ? STEP_FINE : STEP, skips, n_skips);
}

static void
fill_outlines (const SwPaper *paper,
               const SwMotif  *item,
               double         tone)
{
  for (int i = 0; i < item->n_outlines; i++)
    sw_paper_outline (paper, &item->outlines[i]);
  sw_paper_tone (paper, tone);
  cairo_fill (paper->cr);
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

/* The visible half of the hem's ring, from its left to its right end as seen along the bone; 13 points. */
#define N_HEM 13

static void
find_hem (const SwMotif   *item,
          const SwBlob   *ring,
          const SwCamera *camera,
          SwSpot          hem[N_HEM])
{
  SwPlacement frame = item->body->pieces[ring->piece];
  SwVector toward = sw_vector (sw_dot (frame.axes.x, camera->toward), sw_dot (frame.axes.y, camera->toward), 0);
  double start = atan2 (toward.y / MAX (1e-9, ring->half.y) * ring->half.y, toward.x) - G_PI / 2;

  for (int i = 0; i < N_HEM; i++)
    {
      double a = start + G_PI * i / (N_HEM - 1);

      hem[i] = sw_see (camera, sw_place (frame, sw_add (ring->centre, sw_vector (ring->half.x * cos (a),
                                                                                 ring->half.y * sin (a), 0))));
    }
}

/* The bare part of a limb below its sleeve or trouser leg, and the hem's line. */
static void
draw_skin (const SwPaper  *paper,
           const SwMotif   *item,
           const SwCamera *camera)
{
  SwBlob ring;
  SwSpot hem[N_HEM];
  SwSpot middle;
  SwOutline skin;
  double bx = item->end.x - item->joint.x;
  double by = item->end.y - item->joint.y;
  double seen = hypot (bx, by);

  if (!sw_part_get_hem ((SwPart) item->part, &ring))
    return;

  middle = sw_see (camera, sw_place (item->body->pieces[ring.piece], ring.centre));
  find_hem (item, &ring, camera, hem);
  if (seen > 0.05)
    {
      sw_outline_cut (&item->outlines[0], middle.x, middle.y, bx / seen, by / seen, &skin);
      sw_paper_outline (paper, &skin);
      sw_paper_tone (paper, skin_of (item->style));
      cairo_fill (paper->cr);
    }

  for (int i = 0; i < N_HEM; i++)
    if (i == 0)
      sw_paper_move (paper, hem[i].x, hem[i].y);
    else
      sw_paper_line (paper, hem[i].x, hem[i].y);
  /* The ring's near half bulges into skin or cloth, by which end of the bone is nearer. */
  sw_paper_tone (paper, item->end.depth < item->joint.depth ? clothes_of (item->style) : skin_of (item->style));
  cairo_fill_preserve (paper->cr);
  if (item->style == SW_INK_START)
    {
      cairo_new_path (paper->cr);
      return;
    }
  sw_paper_tone (paper, SW_TONE_HEM);
  cairo_set_line_width (paper->cr, SW_HEM_PT);
  cairo_stroke (paper->cr);
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

static int
collect_skips (const SwMotifs *items,
               int            nth,
               const SwCamera *camera,
               double         reach,
               gboolean       anywhere,
               Skip           skips[8])
{
  const SwMotif *item = &items->items[items->order[nth]];
  int n = find_cut (item, camera, &skips[0]) ? 1 : 0;

  for (int i = 0; i < nth && n < 8; i++)
    {
      const SwMotif *other = &items->items[items->order[i]];
      SwSpot joint;
      double radius;

      if (other->hidden || (other->style == SW_INK_START && item->style != SW_INK_START))
        continue;
      if (sw_motifs_joined (item, other, &joint, &radius))
        skips[n++] = (Skip){ other, joint, reach * radius, anywhere };
    }
  return n;
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
  static const double dashes[] = { 2.2, 1.7 };
  const SwMotif *item = &items->items[items->order[nth]];
  cairo_t *cr = paper->cr;
  double ink = ink_of (item->style);
  gboolean clothed = item->part == SW_PART_TRUNK
                     || (item->part >= (int) SW_PART_UPPER_ARM && item->part < (int) SW_PART_FOREARM)
                     || (item->part >= (int) SW_PART_THIGH && item->part < (int) SW_PART_SHANK);
  Skip skips[8];
  int n;

  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  if (item->style != SW_INK_START && crosses_something (items, nth, behind))
    {
      n = collect_skips (items, nth, camera, GAP_REACH, TRUE, skips);
      add_outlines (paper, item, skips, n);
      cairo_set_line_width (cr, 2 * (ink + SW_GAP_PT));
      cairo_set_source_rgb (cr, 1, 1, 1);
      cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
      cairo_stroke (cr);
      cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
    }

  n = collect_skips (items, nth, camera, JOIN_REACH, FALSE, skips);
  add_outlines (paper, item, skips, n);
  cairo_set_line_width (cr, 2 * ink);
  if (item->style == SW_INK_START)
    {
      cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
      cairo_set_dash (cr, dashes, 2, 0);
    }
  sw_paper_tone (paper, item->style == SW_INK_NEAR  ? 0
                        : item->style == SW_INK_FAR ? SW_TONE_FAR_INK
                                                      : SW_TONE_START_INK);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);

  fill_outlines (paper, item, clothed ? clothes_of (item->style) : skin_of (item->style));
  if (item->part == SW_PART_HEAD)
    sw_head_draw (paper, item, camera);
  else if (item->body->fine && item->style != SW_INK_START)
    sw_fine_draw (paper, item, camera);
  else if (clothed && item->part != SW_PART_TRUNK)
    draw_skin (paper, item, camera);
  if (item->style != SW_INK_START)
    sw_works_draw (paper, item, camera, works, n_works);
}
