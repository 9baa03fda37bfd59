/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Draws things: ground and furniture behind the body, what is held or lain on among its parts. Things are never as dark
 * as hair, never have the tone of what works, and have an outline of their own. */
#include "config.h"

#include "sw-ball-draw.h"
#include "sw-furniture.h"
#include "sw-pad-draw.h"
#include "sw-ribbon.h"
#include "sw-throw.h"

/* The outline of a ball in flight, outside its fill. */
#define THROWN_INK_PT 0.8
#define THROWN_DASHES 10
#define LEVEL_TILT_DEG 3.0
#define FRAME_SCRAP 0.05

static gboolean
is_level (const SwCamera *camera)
{
  return fabs (camera->toward.z) < sin (SW_RAD (LEVEL_TILT_DEG));
}

/* Scraps of furniture at the edge of a close frame would only be asked about. */
static gboolean
is_in_frame (const SwBox    *box,
             const SwCamera *camera,
             double          above,
             double          below)
{
  double low = G_MAXDOUBLE;
  double high = -G_MAXDOUBLE;

  for (int k = 0; k < 8; k++)
    {
      double y = sw_see (camera, sw_box_get_corner (box, k)).y;

      low = MIN (low, y);
      high = MAX (high, y);
    }
  return high > above + FRAME_SCRAP && low < below - FRAME_SCRAP;
}

static void
draw_floor_line (const SwPaper  *paper,
                 const SwExtent *extent)
{
  double left = extent->left;
  double right = extent->right;

  sw_paper_move (paper, left, 0);
  sw_paper_line (paper, right, 0);
  sw_sketch_set_width (paper->sketch, SW_PROP_INK_PT);
  sw_paper_tone (paper, SW_TONE_PROP_INK);
  sw_sketch_stroke (paper->sketch);
  for (double x = left + 0.02; x < right; x += 0.045)
    {
      sw_paper_move (paper, x, -0.003);
      sw_paper_line (paper, x - 0.018, -0.021);
    }
  sw_sketch_set_width (paper->sketch, 0.4);
  sw_sketch_stroke (paper->sketch);
}

static void
draw_shadow (const SwPaper  *paper,
             const SwCamera *camera,
             const SwBody   *body)
{
  SwVector a = sw_body_get_ball (body, SW_FIGURE_RIGHT);
  SwVector b = sw_body_get_ball (body, SW_FIGURE_LEFT);
  SwEgg eggs[4];
  int n = 0;
  g_auto (SwOutline) outline = { 0 };

  for (int side = 0; side < 2; side++)
    {
      SwVector at = side == 0 ? a : b;

      if (at.z > 0.03)
        continue;
      eggs[n++] = sw_egg (camera, (SwPlacement){ sw_identity (), { 0, 0, 0 } }, sw_vector (at.x - 0.03, at.y, 0),
                          sw_vector (0.10, 0.06, 0));
    }
  if (n == 0)
    return;

  sw_outline_from_eggs (&outline, eggs, n, 0.0003);
  sw_paper_area (paper, sw_outline_get_curve (&outline));
  sw_paper_tone (paper, 0.90);
  sw_sketch_fill (paper->sketch);
}

/* How far the floor's line goes. */
static SwExtent
floor_extent (const SwCamera *camera,
              const SwSolver *solver,
              const SwGround *ground)
{
  SwExtent extent = sw_extent_empty ();
  SwBox boxes[SW_MAX_BOXES];
  int n = sw_furniture_get_boxes (solver, ground, boxes);
  SwBox floor_box = { ground->low, ground->high, 0 };

  for (int k = 0; k < 8; k++)
    sw_extent_add (&extent, sw_see (camera, sw_box_get_corner (&floor_box, k)).x, 0);
  for (int i = 0; i < n; i++)
    for (int k = 0; k < 8; k++)
      sw_extent_add (&extent, sw_see (camera, sw_box_get_corner (&boxes[i], k)).x, 0);
  extent.left -= 0.03;
  extent.right += 0.03;
  return extent;
}

/**
 * sw_props_draw_behind:
 * @paper: where to draw
 * @camera: the view
 * @solver: the solved figure
 * @ground: how far the ground reaches
 * @body: the body that casts a shadow
 * @above: what is lower on paper is out of the frame
 * @below: what is higher is, too
 *
 * Draws the ground and what of the furniture is behind the whole body.
 */
void
sw_props_draw_behind (const SwPaper  *paper,
                      const SwCamera *camera,
                      const SwSolver *solver,
                      const SwGround *ground,
                      const SwBody   *body,
                      double          above,
                      double          below)
{
  SwBox boxes[SW_MAX_BOXES];
  int n = sw_furniture_get_boxes (solver, ground, boxes);
  gboolean drawn[SW_MAX_BOXES] = { FALSE };

  sw_sketch_set_join (paper->sketch, CAIRO_LINE_JOIN_ROUND);
  sw_sketch_set_cap (paper->sketch, CAIRO_LINE_CAP_ROUND);
  if (!solver->base->on_mat && is_level (camera))
    {
      SwExtent extent = floor_extent (camera, solver, ground);

      draw_floor_line (paper, &extent);
    }
  else if (!solver->base->on_mat)
    draw_shadow (paper, camera, body);

  for (int i = 0; i < n; i++)
    {
      int farthest = -1;

      for (int k = 0; k < n; k++)
        if (!drawn[k] && (farthest < 0 || sw_box_get_depth (&boxes[k], camera) < sw_box_get_depth (&boxes[farthest], camera)))
          farthest = k;
      drawn[farthest] = TRUE;
      if (is_in_frame (&boxes[farthest], camera, above, below)
          && sw_box_get_hidden (&boxes[farthest], body, camera) == 0)
        sw_box_draw (&boxes[farthest], paper, camera, FALSE);
    }
}

/**
 * sw_props_add_extent:
 * @extent: (inout): grows by all that is drawn of things
 * @furniture: (inout): grows by the furniture only
 * @camera: the view
 * @solver: the solved figure
 * @ground: how far the ground reaches
 * @above: what is lower on paper is out of the frame
 * @below: what is higher is, too
 */
void
sw_props_add_extent (SwExtent       *extent,
                     SwExtent       *furniture,
                     const SwCamera *camera,
                     const SwSolver *solver,
                     const SwGround *ground,
                     double          above,
                     double          below)
{
  SwBox boxes[SW_MAX_BOXES];
  int n = sw_furniture_get_boxes (solver, ground, boxes);

  for (int i = 0; i < n; i++)
    for (int k = 0; k < 8; k++)
      {
        SwSpot at = sw_see (camera, sw_box_get_corner (&boxes[i], k));

        if (is_in_frame (&boxes[i], camera, above, below))
          sw_extent_add (furniture, at.x, at.y);
      }
  sw_extent_join (extent, furniture);
  if (!solver->base->on_mat && is_level (camera) && above < 0)
    {
      SwExtent line = floor_extent (camera, solver, ground);

      sw_extent_add (extent, line.left, -0.021);
      sw_extent_add (extent, line.right, 0);
    }
}

static SwPlacement
at_point (SwVector at)
{
  return (SwPlacement){ sw_identity (), at };
}

static void
add_held (SwMotifs                *items,
          int                     nth,
          const SwFigurePropSpec *prop,
          const SwCamera         *camera,
          const SwBody           *body,
          double                  tolerance)
{
  SwFigureSide side = prop->in == SW_FIGURE_MARK_LEFT_HAND ? SW_FIGURE_LEFT : SW_FIGURE_RIGHT;
  SwPlacement hand = body->pieces[SW_SIDED (SW_PIECE_HAND, side)];
  double palm = -sw_side_sign (side);
  SwVector grip = sw_vector (0, palm * (body->fine ? 0.019 : 0.006), body->fine ? -0.045 : -0.042);
  const guint fingers = 1u << SW_PART_THUMB | 1u << SW_PART_INDEX | 1u << SW_PART_MIDDLE | 1u << SW_PART_RING
                        | 1u << SW_PART_LITTLE;
  const guint hand_and_fingers = fingers | 1u << SW_PART_HAND;
  SwMotif *item;

  if (prop->kind == SW_FIGURE_PROP_DUMBBELL)
    {
      static const int sizes[] = { 2, 1, 1 };
      SwEgg eggs[4];

      eggs[0] = sw_egg (camera, hand, sw_add (grip, sw_vector (-0.05, 0, 0)), sw_vector (0.009, 0.009, 0.009));
      eggs[1] = sw_egg (camera, hand, sw_add (grip, sw_vector (0.05, 0, 0)), sw_vector (0.009, 0.009, 0.009));
      eggs[2] = sw_egg (camera, hand, sw_add (grip, sw_vector (-0.054, 0, 0)), sw_vector (0.015, 0.029, 0.029));
      eggs[3] = sw_egg (camera, hand, sw_add (grip, sw_vector (0.054, 0, 0)), sw_vector (0.015, 0.029, 0.029));
      item = sw_motifs_add_thing (items, nth, eggs, sizes, 3, tolerance);
      item->tone = 0.70;
      item->under = hand_and_fingers << side;
    }
  else if (prop->kind == SW_FIGURE_PROP_STICK)
    {
      static const int sizes[] = { 2 };
      SwVector a = sw_place (hand, grip);
      SwVector b = sw_place (body->pieces[SW_SIDED (SW_PIECE_HAND, 1 - side)], sw_vector (0, -grip.y, grip.z));
      SwVector along = sw_unit (sw_sub (b, a), sw_vector (0, 1, 0));
      SwEgg eggs[2];

      /* Close, one hand holds it by its end like a hammer. */
      if (body->fine && sw_length (sw_sub (b, a)) > 0.13)
        {
          along = hand.axes.x;
          a = sw_add (a, sw_scale (along, 0.06));
          b = sw_sub (a, sw_scale (along, 0.10));
        }
      eggs[0] = sw_egg (camera, at_point (sw_sub (a, sw_scale (along, 0.10))), sw_vector (0, 0, 0),
                        sw_vector (0.009, 0.009, 0.009));
      eggs[1] = sw_egg (camera, at_point (sw_add (b, sw_scale (along, 0.10))), sw_vector (0, 0, 0),
                        sw_vector (0.009, 0.009, 0.009));
      item = sw_motifs_add_thing (items, nth, eggs, sizes, 1, tolerance);
      item->tone = 0.80;
      item->under = hand_and_fingers * 3;
    }
  else
    {
      static const int sizes[] = { 1 };
      double radius = body->fine ? 0.024 : 0.06;
      SwEgg egg = sw_egg (camera, hand, sw_vector (0, palm * (0.015 + radius), body->fine ? -0.060 : -0.055),
                         sw_vector (radius, radius, radius));

      item = sw_motifs_add_thing (items, nth, &egg, sizes, 1, tolerance);
      item->tone = 0.90;
      item->under = body->fine ? fingers << side : 0;
    }
}

/* Pillow and towel: between a part and what is below it; under an elbow between arm and side. */
static void
add_cushion (SwMotifs       *items,
             int             nth,
             const SwCamera *camera,
             const SwSolver *solver,
             const SwBody   *body,
             double          tolerance)
{
  static const int sizes[] = { 1 };
  const SwFigurePropSpec *prop = &solver->content->props[nth];
  gboolean towel = prop->kind == SW_FIGURE_PROP_TOWEL;
  gboolean elbow = prop->under == SW_FIGURE_MARK_RIGHT_ELBOW || prop->under == SW_FIGURE_MARK_LEFT_ELBOW;
  SwVector at = sw_body_get_mark (body, prop->under);
  SwVector half = towel ? sw_vector (0.05, 0.05, 0.03) : sw_vector (0.10, 0.11, 0.035);
  SwPlacement frame = at_point (sw_vector (0, 0, 0));
  SwEgg egg;
  SwMotif *item;

  if (elbow)
    {
      SwFigureSide side = prop->under == SW_FIGURE_MARK_LEFT_ELBOW ? SW_FIGURE_LEFT : SW_FIGURE_RIGHT;
      SwPlacement ribs = body->pieces[SW_PIECE_RIBCAGE];
      SwVector local = sw_unplace (ribs, at);

      frame = (SwPlacement){ ribs.axes,
                             sw_place (ribs, sw_vector (local.x + 0.045, local.y - sw_side_sign (side) * 0.046,
                                                        local.z + 0.014)) };
      half = sw_vector (0.070, 0.042, 0.050);
    }
  else
    {
      double height = sw_pad_get_pillow_height (solver, prop);

      half.z = MAX (0.016, height / 2 + 0.008);
      frame.at = sw_vector (at.x, at.y, height / 2);
    }

  egg = sw_egg (camera, frame, sw_vector (0, 0, 0), half);
  item = sw_motifs_add_thing (items, nth, &egg, sizes, 1, tolerance);
  item->tone = elbow ? 0.75 : towel ? 0.93 : 0.95;
  item->folds = towel;
  if (prop->under == SW_FIGURE_MARK_HEAD)
    item->under = 1u << SW_PART_HEAD | 1u << SW_PART_NECK | 3u << SW_PART_FOREARM | 3u << SW_PART_HAND
                  | 3u << SW_PART_UPPER_ARM;
  else if (elbow)
    {
      /* The roll stands out in front of the ribs, unless these are between it and the viewer. */
      if (sw_dot (sw_sub (frame.at, body->pieces[SW_PIECE_RIBCAGE].at), camera->toward) > -0.03)
        item->over = 1u << SW_PART_TRUNK;
      item->under = (1u << SW_PART_FOREARM | 1u << SW_PART_UPPER_ARM)
                    << (prop->under == SW_FIGURE_MARK_LEFT_ELBOW ? 1 : 0);
    }
  else
    item->under = ~0u;
}

/**
 * sw_props_add_furniture:
 * @items: (inout): grows by the furniture that hides parts of the body
 * @camera: the view; must outlive @items
 * @solver: the solved figure
 * @ground: how far the ground reaches
 * @body: the body
 * @above: what is lower on paper is out of the frame
 * @below: what is higher is, too
 * @tolerance: of outlines, parts of stature
 */
void
sw_props_add_furniture (SwMotifs       *items,
                        const SwCamera *camera,
                        const SwSolver *solver,
                        const SwGround *ground,
                        const SwBody   *body,
                        double          above,
                        double          below,
                        double          tolerance)
{
  SwBox boxes[SW_MAX_BOXES];
  int n = sw_furniture_get_boxes (solver, ground, boxes);

  for (int i = 0; i < n; i++)
    {
      guint hidden = sw_box_get_hidden (&boxes[i], body, camera);

      if (hidden != 0 && is_in_frame (&boxes[i], camera, above, below))
        {
          SwMotif *motif = sw_motifs_add_box (items, &boxes[i], camera, tolerance);

          motif->over = hidden;
          motif->under = ~hidden;
        }
    }
}

/**
 * sw_props_add_items:
 * @items: (inout): grows by what is held or lain on
 * @camera: the view
 * @solver: the solved figure
 * @now: the pose
 * @tolerance: of outlines, parts of stature
 */
void
sw_props_add_items (SwMotifs        *items,
                    const SwCamera *camera,
                    const SwSolver *solver,
                    const SwSolved *now,
                    double          tolerance)
{
  for (int i = 0; i < solver->content->n_props; i++)
    {
      const SwFigurePropSpec *prop = &solver->content->props[i];

      if (sw_throw_has_left (solver, now, i))
        continue;
      if (prop->between != SW_FIGURE_BETWEEN_NONE)
        {
          sw_ball_add_between (items, i, prop, camera, &now->body, tolerance);
          continue;
        }
      if (prop->kind == SW_FIGURE_PROP_BALL && sw_ball_is_big (prop))
        {
          sw_ball_add_big (items, i, camera, solver, &now->body, tolerance);
          continue;
        }

      switch (prop->kind)
        {
        case SW_FIGURE_PROP_DUMBBELL:
        case SW_FIGURE_PROP_STICK:
        case SW_FIGURE_PROP_BALL:
          add_held (items, i, prop, camera, &now->body, tolerance);
          break;
        case SW_FIGURE_PROP_PILLOW:
        case SW_FIGURE_PROP_TOWEL:
          if (prop->under != SW_FIGURE_MARK_NONE)
            add_cushion (items, i, camera, solver, &now->body, tolerance);
          break;
        case SW_FIGURE_PROP_ROLLER:
          sw_pad_add_roller (items, i, camera, solver, &now->body, tolerance);
          break;
        case SW_FIGURE_PROP_CUSHION:
          sw_pad_add_cushion (items, i, camera, solver, tolerance);
          break;
        case SW_FIGURE_PROP_LOOP:
          sw_ribbon_add_loop (items, i, prop, camera, &now->body, sw_band_get_fixed_end (solver, i, &now->body));
          break;
        case SW_FIGURE_PROP_CABLE:
          sw_ribbon_add_cable (items, i, prop, camera, &now->body,
                               sw_band_get_fixed_end (solver, i, &now->body), tolerance);
          break;
        case SW_FIGURE_PROP_CUFF:
          sw_ribbon_add_cuff (items, i, prop, camera, &now->body, tolerance);
          break;
        case SW_FIGURE_PROP_STRAP:
          sw_ribbon_add_strap (items, i, solver->content, camera, &now->body);
          break;
        default:
          break;
        }
    }
}

/**
 * sw_prop_draw_item:
 * @paper: where to draw
 * @item: a thing
 */
void
sw_prop_draw_item (const SwPaper *paper,
                   const SwMotif  *item)
{
  SwSketch *sketch = paper->sketch;

  if (item->camera != NULL)
    {
      sw_box_draw (&item->box, paper, item->camera, TRUE);
      return;
    }
  if (item->n_line > 0)
    {
      sw_ribbon_draw (paper, item);
      return;
    }
  for (int i = 0; i < item->n_outlines; i++)
    sw_paper_curve (paper, sw_outline_get_curve (&item->outlines[i]));
  sw_paper_tone (paper, item->style == SW_INK_START ? SW_TONE_START_INK : SW_TONE_PROP_INK);
  sw_sketch_set_width (sketch, 2 * (item->style == SW_INK_START ? THROWN_INK_PT : SW_PROP_INK_PT));
  if (item->style == SW_INK_START)
    {
      double round_pt = G_PI * (item->extent.right - item->extent.left) * paper->scale_pt;

      sw_sketch_set_cap (sketch, CAIRO_LINE_CAP_BUTT);
      sw_sketch_set_dash (sketch, 0.6 * round_pt / THROWN_DASHES, 0.4 * round_pt / THROWN_DASHES);
    }
  sw_sketch_stroke (sketch);
  sw_sketch_set_dash (sketch, 0, 0);
  for (int i = 0; i < item->n_outlines; i++)
    sw_paper_area (paper, sw_outline_get_curve (&item->outlines[i]));
  sw_paper_tone (paper, item->tone);
  sw_sketch_fill (sketch);
  sw_sketch_set_width (sketch, 0.4);
  sw_paper_tone (paper, SW_TONE_PROP_INK);
  for (int i = 0; i < item->n_seams; i++)
    {
      sw_paper_move (paper, item->seams[i][0].x, item->seams[i][0].y);
      sw_paper_line (paper, item->seams[i][1].x, item->seams[i][1].y);
      sw_sketch_stroke (sketch);
    }
  if (!item->folds)
    return;

  for (int i = 0; i < 2; i++)
    {
      const SwEgg *egg = &item->eggs[0];
      double w = sqrt (egg->xx);
      double h = sqrt (egg->yy);
      double x = egg->at.x + (i == 0 ? -0.25 : 0.3) * w;

      sw_paper_move (paper, x, egg->at.y + 0.6 * h);
      sw_sketch_curve (sketch, sw_paper_x (paper, x + 0.25 * w), sw_paper_y (paper, egg->at.y + 0.2 * h),
                      sw_paper_x (paper, x + 0.25 * w), sw_paper_y (paper, egg->at.y - 0.2 * h), sw_paper_x (paper, x),
                      sw_paper_y (paper, egg->at.y - 0.6 * h));
    }
  sw_sketch_set_width (sketch, 0.4);
  sw_paper_tone (paper, SW_TONE_PROP_INK);
  sw_sketch_stroke (sketch);
}

/**
 * sw_props_draw_bands:
 * @paper: where to draw
 * @camera: the view
 * @solver: the solved figure
 * @body: the body that holds them
 * @part: what of the body is drawn next: a band is drawn before the hand or foot that holds it
 *
 * Draws the bands that end in that hand: they sag a little, so that they are no rods.
 */
void
sw_props_draw_bands (const SwPaper  *paper,
                     const SwCamera *camera,
                     const SwSolver *solver,
                     const SwBody   *body,
                     int             part)
{
  static const struct
  {
    double width;
    double tone;
  } strokes[] = { { 4.2, 1.0 }, { 2.6, 0.1 }, { 1.3, 0.80 } };

  for (int i = 0; i < solver->content->n_props; i++)
    {
      const SwFigurePropSpec *prop = &solver->content->props[i];
      SwLimb limb = sw_scene_get_limb (prop->in);
      gboolean foot = limb >= SW_LIMB_RIGHT_LEG && limb < SW_N_LIMBS;
      int side = limb < SW_N_LIMBS ? (int) limb % 2 : 0;
      SwSpot from;
      SwSpot to;
      double sag;

      if (prop->kind != SW_FIGURE_PROP_BAND || part != (foot ? (int) SW_PART_FOOT : (int) SW_PART_HAND) + side)
        continue;
      from = sw_see (camera, sw_band_get_fixed_end (solver, i, body));
      to = sw_see (camera, sw_place (body->pieces[SW_SIDED (foot ? SW_PIECE_FOOT : SW_PIECE_HAND, side)],
                                     foot ? sw_vector (0.040, 0, 0) : sw_vector (0, 0, -0.042)));
      sag = 0.04 * hypot (to.x - from.x, to.y - from.y);
      sw_paper_move (paper, from.x, from.y);
      sw_sketch_curve (paper->sketch, sw_paper_x (paper, from.x + (to.x - from.x) / 3),
                      sw_paper_y (paper, from.y + (to.y - from.y) / 3 - sag),
                      sw_paper_x (paper, from.x + (to.x - from.x) * 2 / 3),
                      sw_paper_y (paper, from.y + (to.y - from.y) * 2 / 3 - sag), sw_paper_x (paper, to.x),
                      sw_paper_y (paper, to.y));
      sw_sketch_set_cap (paper->sketch, CAIRO_LINE_CAP_BUTT);
      for (gsize k = 0; k < G_N_ELEMENTS (strokes); k++)
        {
          sw_sketch_set_width (paper->sketch, strokes[k].width);
          sw_paper_tone (paper, strokes[k].tone);
          sw_sketch_stroke_preserve (paper->sketch);
        }
      sw_sketch_new_path (paper->sketch);
    }
}
