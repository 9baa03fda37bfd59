/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Hair, eyes, ear and nose: they tell where the face looks even when the head is 5 mm high. */
#include "config.h"

#include "sw-body-draw.h"

/* The most that one bend goes round, in radians. */
#define MOST_BEND 2.1
#define LID_HALF 0.017
#define LID_DEEP 0.009

static const SwVector skull_at = { 0.006, 0, 0.056 };
static const SwVector skull_half = { 0.062, 0.052, 0.060 };
static const SwVector hair_normal = { -0.790, 0, 0.613 };
static const double hair_height = 0.12;

static SwSpot
on_skull (const SwMotif   *item,
          const SwCamera *camera,
          SwVector        unit)
{
  SwVector local = sw_vector (skull_at.x + unit.x * skull_half.x, skull_at.y + unit.y * skull_half.y,
                              skull_at.z + unit.z * skull_half.z);

  return sw_see (camera, sw_place (item->body->pieces[SW_PIECE_HEAD], local));
}

/* The view within the skull's unit sphere: a point p of it is seen when p . view > 0. */
static SwVector
view_in_skull (const SwMotif   *item,
               const SwCamera *camera)
{
  const SwMatrix *axes = &item->body->pieces[SW_PIECE_HEAD].axes;

  return sw_unit (sw_vector (sw_dot (axes->x, camera->toward) / skull_half.x,
                             sw_dot (axes->y, camera->toward) / skull_half.y,
                             sw_dot (axes->z, camera->toward) / skull_half.z),
                  sw_vector (1, 0, 0));
}

static void
circle_axes (SwVector  normal,
             SwVector *a,
             SwVector *b)
{
  *a = sw_unit (sw_across (fabs (normal.z) < 0.9 ? sw_vector (0, 0, 1) : sw_vector (1, 0, 0), normal), sw_vector (1, 0, 0));
  *b = sw_cross (normal, *a);
}

/**
 * Arc:
 * @middle: of a circle on the skull's unit sphere
 * @a: from its middle to where its angle is 0
 * @b: from its middle to where its angle is a quarter round
 * @turn: the angle in the middle of what is kept
 * @half: how far that goes to both sides; 0 when nothing is kept, half round when all is
 *
 * Part of a circle on the skull.
 */
typedef struct
{
  SwVector middle;
  SwVector a;
  SwVector b;
  double turn;
  double half;
} Arc;

/* The part of the circle round @normal, @height along it, that is farther than @beyond towards @side. */
static Arc
find_arc (SwVector normal,
          double   height,
          SwVector side,
          double   beyond)
{
  double radius = sqrt (1 - height * height);
  Arc arc = { .middle = sw_scale (normal, height) };
  double along_a;
  double along_b;

  circle_axes (normal, &arc.a, &arc.b);
  arc.a = sw_scale (arc.a, radius);
  arc.b = sw_scale (arc.b, radius);
  along_a = sw_dot (arc.a, side);
  along_b = sw_dot (arc.b, side);
  arc.turn = atan2 (along_b, along_a);
  arc.half = acos (CLAMP ((beyond - sw_dot (arc.middle, side)) / MAX (1e-9, hypot (along_a, along_b)), -1.0, 1.0));
  return arc;
}

static SwSpot
arc_at (const SwMotif  *item,
        const SwCamera *camera,
        const Arc      *arc,
        double          angle)
{
  return on_skull (item, camera, sw_add (arc->middle, sw_add (sw_scale (arc->a, cos (angle)),
                                                              sw_scale (arc->b, sin (angle)))));
}

static void
add_arc (SwCurve        *curve,
         const SwMotif  *item,
         const SwCamera *camera,
         const Arc      *arc,
         double          from,
         double          to)
{
  SwSpot origin = on_skull (item, camera, sw_vector (0, 0, 0));
  SwSpot a = on_skull (item, camera, arc->a);
  SwSpot b = on_skull (item, camera, arc->b);

  sw_curve_arc (curve, on_skull (item, camera, arc->middle), (SwSpot){ a.x - origin.x, a.y - origin.y, 0 },
                (SwSpot){ b.x - origin.x, b.y - origin.y, 0 }, from, to, 1 + (int) (fabs (to - from) / MOST_BEND));
}

/* The seen part of the cap of hair: bounded by the skull's outline where that is hair, and by the hairline where seen. */
static void
draw_hair (const SwPaper  *paper,
           const SwMotif  *item,
           const SwCamera *camera)
{
  SwVector view = view_in_skull (item, camera);
  Arc rim = find_arc (view, 0, hair_normal, hair_height);
  Arc line = find_arc (hair_normal, hair_height, view, 0);
  double from = line.turn - line.half;
  double to = line.turn + line.half;
  SwCurve hair;

  if (line.half <= 0)
    return;

  sw_curve_clear (&hair);
  if (rim.half > 0)
    {
      SwSpot end = arc_at (item, camera, &rim, rim.turn + rim.half);
      SwSpot first = arc_at (item, camera, &line, from);
      SwSpot last = arc_at (item, camera, &line, to);

      add_arc (&hair, item, camera, &rim, rim.turn - rim.half, rim.turn + rim.half);
      if (hypot (end.x - first.x, end.y - first.y) > hypot (end.x - last.x, end.y - last.y))
        {
          from = line.turn + line.half;
          to = line.turn - line.half;
        }
    }
  add_arc (&hair, item, camera, &line, from, to);
  sw_paper_area (paper, &hair);
  sw_paper_tone (paper, item->style == SW_INK_START ? SW_TONE_START_HAIR : SW_TONE_HAIR);
  sw_sketch_fill (paper->sketch);
}

/* A small ellipse that lies on the skull at @unit. Returns FALSE when it is turned away by more than @limit_deg. */
static gboolean
add_on_skull (const SwPaper  *paper,
              const SwMotif   *item,
              const SwCamera *camera,
              SwVector        unit,
              double          half,
              double          limit_deg)
{
  SwMatrix axes = item->body->pieces[SW_PIECE_HEAD].axes;
  SwVector normal
      = sw_unit (sw_apply (axes, sw_vector (unit.x / skull_half.x, unit.y / skull_half.y, unit.z / skull_half.z)),
                 sw_vector (1, 0, 0));
  SwSpot at = on_skull (item, camera, unit);
  SwCurve round;
  SwVector a;
  SwVector b;

  if (sw_dot (normal, camera->toward) < cos (SW_RAD (limit_deg)))
    return FALSE;

  circle_axes (normal, &a, &b);
  sw_curve_clear (&round);
  sw_curve_arc (&round, at, sw_see (camera, sw_scale (a, half)), sw_see (camera, sw_scale (b, half)), 0, 2 * G_PI, 2);
  round.closed = TRUE;
  sw_paper_curve (paper, &round);
  return TRUE;
}

/* A lid: the lower half of where the eye would be, broader than the eye so that it is seen when small. */
static void
draw_closed_eye (const SwPaper  *paper,
                 const SwMotif  *item,
                 const SwCamera *camera,
                 SwVector        unit)
{
  SwMatrix axes = item->body->pieces[SW_PIECE_HEAD].axes;
  SwVector normal
      = sw_unit (sw_apply (axes, sw_vector (unit.x / skull_half.x, unit.y / skull_half.y, unit.z / skull_half.z)),
                 sw_vector (1, 0, 0));
  SwVector up = sw_unit (sw_across (axes.z, normal), axes.z);
  SwVector across = sw_cross (normal, up);
  SwSpot at = on_skull (item, camera, unit);
  SwCurve lid;

  if (sw_dot (normal, camera->toward) < cos (SW_RAD (75)))
    return;

  sw_curve_clear (&lid);
  sw_curve_arc (&lid, at, sw_see (camera, sw_scale (across, LID_HALF)), sw_see (camera, sw_scale (up, -LID_DEEP)), 0,
                G_PI, 1);
  sw_paper_curve (paper, &lid);
  sw_sketch_set_width (paper->sketch, 0.8);
  sw_sketch_set_cap (paper->sketch, CAIRO_LINE_CAP_ROUND);
  sw_paper_tone (paper, 0.0);
  sw_sketch_stroke (paper->sketch);
}

static void
draw_nose_line (const SwPaper  *paper,
                const SwMotif   *item,
                const SwCamera *camera)
{
  SwPlacement head = item->body->pieces[SW_PIECE_HEAD];
  SwSpot top = sw_see (camera, sw_place (head, sw_vector (0.066, 0, 0.058)));
  SwSpot tip = sw_see (camera, sw_place (head, sw_vector (0.074, 0.001, 0.024)));

  if (sw_dot (head.axes.x, camera->toward) < 0.80)
    return;

  sw_paper_move (paper, top.x, top.y);
  sw_paper_line (paper, tip.x, tip.y);
  sw_sketch_set_width (paper->sketch, 0.6);
  sw_paper_tone (paper, 0.1);
  sw_sketch_stroke (paper->sketch);
}

/**
 * sw_head_draw:
 * @paper: where to draw
 * @item: a head whose outline is drawn and filled
 * @camera: the view
 */
void
sw_head_draw (const SwPaper  *paper,
              const SwMotif   *item,
              const SwCamera *camera)
{
  gboolean is_start = item->style == SW_INK_START;

  draw_hair (paper, item, camera);
  for (int side = -1; side <= 1; side += 2)
    {
      SwVector eye = { 0.861, side * 0.46, 0.06 };

      if (!is_start && item->body->eyes_closed)
        draw_closed_eye (paper, item, camera, eye);
      else if (!is_start && add_on_skull (paper, item, camera, eye, 0.0085, 75))
        {
          sw_paper_tone (paper, 0.0);
          sw_sketch_fill (paper->sketch);
        }
      if (add_on_skull (paper, item, camera, sw_vector (-0.08, side * 0.985, -0.15), 0.0125, 58))
        {
          sw_sketch_set_tone (paper->sketch, 1);
          sw_sketch_fill_preserve (paper->sketch);
          sw_sketch_set_width (paper->sketch, 0.6);
          sw_paper_tone (paper, is_start ? 0.6 : 0.0);
          sw_sketch_stroke (paper->sketch);
        }
    }
  if (!is_start)
    draw_nose_line (paper, item, camera);
}
