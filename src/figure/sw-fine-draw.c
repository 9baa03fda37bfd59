/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What tells a palm from a back of the hand and a sole from an instep in close pictures: nails, creases, lines between the
 * toes. */
#include "config.h"

#include "sw-body-draw.h"

#define FINE_INK_PT 0.5
#define NAIL_INK_PT 0.55
#define TONE_CREASE 0.35
#define TONE_NAIL 0.90
/* Nails and creases are seen when their surface faces the viewer by so much. */
#define FACES 0.22
/* Bent by more, a joint shows no crease. */
#define CREASE_DOT 0.75

static gboolean
faces (const SwMotif  *item,
       SwPiece         piece,
       const SwCamera *camera,
       SwVector        normal)
{
  return sw_dot (sw_apply (item->body->pieces[piece].axes, normal), camera->toward) > FACES;
}

static void
line_to (const SwPaper  *paper,
         const SwCamera *camera,
         SwPlacement     frame,
         SwVector        at,
         gboolean        first)
{
  SwSpot spot = sw_see (camera, sw_place (frame, at));

  if (first)
    sw_paper_move (paper, spot.x, spot.y);
  else
    sw_paper_line (paper, spot.x, spot.y);
}

/* A curve through three places. */
static void
draw_bow (const SwPaper  *paper,
          const SwCamera *camera,
          SwPlacement     frame,
          SwVector        a,
          SwVector        b,
          SwVector        c)
{
  const int steps = 10;

  for (int i = 0; i <= steps; i++)
    {
      double t = (double) i / steps;
      SwVector start = sw_scale (a, (1 - t) * (1 - 2 * t));
      SwVector middle = sw_scale (b, 4 * t * (1 - t));
      SwVector end = sw_scale (c, t * (2 * t - 1));

      line_to (paper, camera, frame, sw_add (sw_add (start, middle), end), i == 0);
    }
  sw_paper_tone (paper, TONE_CREASE);
  sw_sketch_set_width (paper->sketch, FINE_INK_PT);
  sw_sketch_stroke (paper->sketch);
}

static void
draw_nail (const SwPaper  *paper,
           const SwCamera *camera,
           SwPlacement     frame,
           SwVector        middle,
           SwVector        along,
           SwVector        across)
{
  const int steps = 16;

  for (int i = 0; i < steps; i++)
    {
      double c = cos (2 * G_PI * i / steps);
      double s = sin (2 * G_PI * i / steps);
      /* Squarer than an ellipse, as nails are. */
      double bulge = 1 / pow (pow (fabs (c), 3) + pow (fabs (s), 3), 1.0 / 3);

      SwVector from_middle = sw_add (sw_scale (along, c * bulge), sw_scale (across, s * bulge));

      line_to (paper, camera, frame, sw_add (middle, from_middle), i == 0);
    }
  sw_sketch_close (paper->sketch);
  sw_paper_tone (paper, TONE_NAIL);
  sw_sketch_fill_preserve (paper->sketch);
  sw_paper_tone (paper, TONE_CREASE);
  sw_sketch_set_width (paper->sketch, NAIL_INK_PT);
  sw_sketch_stroke (paper->sketch);
}

static void
draw_digit (const SwPaper  *paper,
            const SwMotif  *item,
            const SwCamera *camera,
            SwFigureSide    side)
{
  SwDigit digit = sw_part_get_digit ((SwPart) item->part);
  SwPiece piece = SW_SIDED (SW_PIECE_HAND, side);
  SwPlacement frame = item->body->pieces[piece];
  SwDigitBones bones;
  SwVector tip;
  SwVector along;

  sw_body_get_digit (item->body, side, digit, &bones);
  tip = bones.joints[SW_DIGIT_BONES];
  along = sw_unit (sw_sub (tip, bones.joints[SW_DIGIT_BONES - 1]), sw_vector (0, 0, -1));
  if (faces (item, piece, camera, bones.backs[SW_DIGIT_BONES - 1]))
    {
      double r = bones.radii[SW_DIGIT_BONES];
      SwVector middle = sw_add (sw_sub (tip, sw_scale (along, 0.95 * r)),
                                sw_scale (bones.backs[SW_DIGIT_BONES - 1], 0.85 * r));

      draw_nail (paper, camera, frame, middle, sw_scale (along, 0.75 * r),
                 sw_scale (bones.across[SW_DIGIT_BONES - 1], 0.58 * r));
    }

  /* Creases of the joints on the palm's side, and of the middle one on the back. */
  for (int n = 1; n < SW_DIGIT_BONES; n++)
    for (int back = 0; back < (n == 1 ? 2 : 1); back++)
      {
        SwVector out = sw_scale (sw_unit (sw_add (bones.backs[n - 1], bones.backs[n]), bones.backs[n]), back ? 1 : -1);
        SwVector across = sw_scale (bones.across[n], (back ? 0.45 : 0.62) * bones.radii[n]);
        SwVector at = sw_add (bones.joints[n], sw_scale (out, 0.8 * bones.radii[n]));
        SwVector bone = sw_sub (bones.joints[n + 1], bones.joints[n]);

        if (!faces (item, piece, camera, out) || sw_dot (bones.backs[n - 1], bones.backs[n]) < CREASE_DOT)
          continue;
        draw_bow (paper, camera, frame, sw_sub (at, across), sw_add (at, sw_scale (bone, back ? 0.10 : 0.05)),
                  sw_add (at, across));
      }
}

/* The lines of the palm: one about the ball of the thumb, one under the fingers. */
static void
draw_palm (const SwPaper  *paper,
           const SwMotif  *item,
           const SwCamera *camera,
           SwFigureSide    side)
{
  SwPiece piece = SW_SIDED (SW_PIECE_HAND, side);
  SwPlacement frame = item->body->pieces[piece];
  double palm = -sw_side_sign (side);
  double y = palm * 0.010;

  if (!faces (item, piece, camera, sw_vector (0, palm, 0)))
    return;

  draw_bow (paper, camera, frame, sw_vector (0.0175, y, -0.0420), sw_vector (0.0010, y, -0.0310),
            sw_vector (-0.0010, y, -0.0100));
  draw_bow (paper, camera, frame, sw_vector (-0.0190, y, -0.0370), sw_vector (-0.0020, y, -0.0400),
            sw_vector (0.0105, y, -0.0520));
}

static void
draw_toes (const SwPaper  *paper,
           const SwMotif  *item,
           const SwCamera *camera)
{
  SwShape shape;

  sw_shape_get (item->body, (SwPart) item->part, &shape);
  for (int i = 0; i < shape.n_hulls; i++)
    {
      const SwBlob *middle = &shape.hulls[i].blobs[1];
      const SwBlob *tip = &shape.hulls[i].blobs[2];
      SwPlacement frame = item->body->pieces[tip->piece];
      SwVector along = sw_unit (sw_sub (tip->centre, middle->centre), sw_vector (1, 0, 0));
      SwVector up = sw_cross (along, sw_vector (0, 1, 0));
      double r = tip->half.x;

      if (faces (item, tip->piece, camera, up))
        {
          SwVector middle_of_nail = sw_add (tip->centre, sw_add (sw_scale (along, 0.25 * r), sw_scale (up, 0.8 * r)));

          draw_nail (paper, camera, frame, middle_of_nail, sw_scale (along, 0.55 * r), sw_vector (0, 0.5 * r, 0));
        }
    }
}

/**
 * sw_fine_draw:
 * @paper: where to draw
 * @item: a part of a fine body, drawn already
 * @camera: the view
 */
void
sw_fine_draw (const SwPaper  *paper,
              const SwMotif  *item,
              const SwCamera *camera)
{
  SwFigureSide side = (SwFigureSide) sw_part_get_side ((SwPart) item->part);
  int kind = item->part - (int) side;

  if (kind == (int) SW_PART_HAND)
    draw_palm (paper, item, camera, side);
  else if (kind == (int) SW_PART_BIG_TOE || kind == (int) SW_PART_SMALL_TOES)
    draw_toes (paper, item, camera);
  else if (item->part >= (int) SW_PART_THUMB)
    draw_digit (paper, item, camera, side);
}
