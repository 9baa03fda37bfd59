/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Hair, eyes, ear and nose: they tell where the face looks even when the head is 5 mm high. */
#include "config.h"

#include "sw-body-draw.h"

#define N_ROUND 40
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

/* The longest run of kept points on a circle, in order. Returns how many. */
static int
take_run (const gboolean kept[N_ROUND],
          int            run[N_ROUND])
{
  int first = -1;
  int n = 0;

  for (int i = 0; i < N_ROUND; i++)
    if (kept[i] && !kept[(i + N_ROUND - 1) % N_ROUND])
      first = i;
  if (first < 0)
    first = kept[0] ? 0 : -1;
  for (int i = 0; first >= 0 && i < N_ROUND && kept[(first + i) % N_ROUND]; i++)
    run[n++] = (first + i) % N_ROUND;

  return n;
}

static void
circle_axes (SwVector  normal,
             SwVector *a,
             SwVector *b)
{
  *a = sw_unit (sw_across (fabs (normal.z) < 0.9 ? sw_vector (0, 0, 1) : sw_vector (1, 0, 0), normal), sw_vector (1, 0, 0));
  *b = sw_cross (normal, *a);
}

/* The seen part of the cap of hair: bounded by the skull's outline where that is hair, and by the hairline where seen. */
static void
draw_hair (const SwPaper  *paper,
           const SwMotif   *item,
           const SwCamera *camera)
{
  SwVector view = view_in_skull (item, camera);
  double radius = sqrt (1 - hair_height * hair_height);
  SwSpot rim[N_ROUND];
  SwSpot line[N_ROUND];
  gboolean rim_kept[N_ROUND];
  gboolean line_kept[N_ROUND];
  int rim_run[N_ROUND];
  int line_run[N_ROUND];
  SwVector a;
  SwVector b;
  int n_rim;
  int n_line;
  gboolean backward = FALSE;

  circle_axes (view, &a, &b);
  for (int i = 0; i < N_ROUND; i++)
    {
      double t = 2 * G_PI * i / N_ROUND;
      SwVector p = sw_add (sw_scale (a, cos (t)), sw_scale (b, sin (t)));

      rim[i] = on_skull (item, camera, p);
      rim_kept[i] = sw_dot (p, hair_normal) > hair_height;
    }
  circle_axes (hair_normal, &a, &b);
  for (int i = 0; i < N_ROUND; i++)
    {
      double t = 2 * G_PI * i / N_ROUND;
      SwVector p = sw_add (sw_scale (hair_normal, hair_height),
                           sw_scale (sw_add (sw_scale (a, cos (t)), sw_scale (b, sin (t))), radius));

      line[i] = on_skull (item, camera, p);
      line_kept[i] = sw_dot (p, view) > 0;
    }

  n_rim = take_run (rim_kept, rim_run);
  n_line = take_run (line_kept, line_run);
  if (n_rim + n_line < 3)
    return;
  if (n_rim > 0 && n_line > 0)
    {
      SwSpot end = rim[rim_run[n_rim - 1]];
      SwSpot first = line[line_run[0]];
      SwSpot last = line[line_run[n_line - 1]];

      backward = hypot (end.x - first.x, end.y - first.y) > hypot (end.x - last.x, end.y - last.y);
    }

  cairo_new_path (paper->cr);
  for (int i = 0; i < n_rim; i++)
    sw_paper_line (paper, rim[rim_run[i]].x, rim[rim_run[i]].y);
  for (int i = 0; i < n_line; i++)
    {
      int k = line_run[backward ? n_line - 1 - i : i];

      sw_paper_line (paper, line[k].x, line[k].y);
    }
  cairo_close_path (paper->cr);
  sw_paper_tone (paper, item->style == SW_INK_START ? SW_TONE_START_HAIR : SW_TONE_HAIR);
  cairo_fill (paper->cr);
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
  SwVector a;
  SwVector b;

  if (sw_dot (normal, camera->toward) < cos (SW_RAD (limit_deg)))
    return FALSE;

  circle_axes (normal, &a, &b);
  cairo_new_path (paper->cr);
  for (int i = 0; i < 14; i++)
    {
      double t = 2 * G_PI * i / 14;
      SwSpot by = sw_see (camera, sw_add (sw_scale (a, half * cos (t)), sw_scale (b, half * sin (t))));

      sw_paper_line (paper, at.x + by.x, at.y + by.y);
    }
  cairo_close_path (paper->cr);
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

  if (sw_dot (normal, camera->toward) < cos (SW_RAD (75)))
    return;

  cairo_new_path (paper->cr);
  for (int i = 0; i <= 8; i++)
    {
      double t = G_PI * i / 8;
      SwSpot by = sw_see (camera, sw_add (sw_scale (across, LID_HALF * cos (t)), sw_scale (up, -LID_DEEP * sin (t))));

      sw_paper_line (paper, at.x + by.x, at.y + by.y);
    }
  cairo_set_line_width (paper->cr, 0.8);
  cairo_set_line_cap (paper->cr, CAIRO_LINE_CAP_ROUND);
  sw_paper_tone (paper, 0.0);
  cairo_stroke (paper->cr);
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
  cairo_set_line_width (paper->cr, 0.6);
  sw_paper_tone (paper, 0.1);
  cairo_stroke (paper->cr);
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
          cairo_fill (paper->cr);
        }
      if (add_on_skull (paper, item, camera, sw_vector (-0.08, side * 0.985, -0.15), 0.0125, 58))
        {
          cairo_set_source_rgb (paper->cr, 1, 1, 1);
          cairo_fill_preserve (paper->cr);
          cairo_set_line_width (paper->cr, 0.6);
          sw_paper_tone (paper, is_start ? 0.6 : 0.0);
          cairo_stroke (paper->cr);
        }
    }
  if (!is_start)
    draw_nose_line (paper, item, camera);
}
