/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Boxes: what of the body is behind them, and how they look. A box and a part of the body that a plane along the axes
 * keeps apart are in the order in which the plane is seen. */
#include "config.h"

#include "sw-box.h"

/* Parts that sink in by no more still count as kept apart. */
#define SINK 0.012
/* A plane seen more edge-on than that tells nothing. */
#define EDGE_ON 0.10
/* Boxes that look broader than that let what is behind them shine through. */
#define BROAD 0.05
#define SEE_THROUGH 0.74

/**
 * sw_box_get_corner:
 * @n: 0..7
 */
SwVector
sw_box_get_corner (const SwBox *box,
                   int          n)
{
  return sw_vector ((n & 1) != 0 ? box->high.x : box->low.x, (n & 2) != 0 ? box->high.y : box->low.y,
                    (n & 4) != 0 ? box->high.z : box->low.z);
}

/**
 * sw_box_get_depth:
 *
 * Returns: how near its middle is to the viewer
 */
double
sw_box_get_depth (const SwBox    *box,
                  const SwCamera *camera)
{
  return sw_dot (sw_add (box->low, box->high), camera->toward) / 2;
}

/* Which of the two planes between them say is nearer to the viewer: above 0 the first. 0 when none says anything, or when
 * they disagree, which means that the two do not meet on paper. */
static int
nearer (const SwBox    *a,
        const SwBox    *b,
        const SwCamera *camera)
{
  const double low_a[3] = { a->low.x, a->low.y, a->low.z };
  const double high_a[3] = { a->high.x, a->high.y, a->high.z };
  const double low_b[3] = { b->low.x, b->low.y, b->low.z };
  const double high_b[3] = { b->high.x, b->high.y, b->high.z };
  const double toward[3] = { camera->toward.x, camera->toward.y, camera->toward.z };
  int result = 0;

  for (int i = 0; i < 3; i++)
    {
      double beyond = low_a[i] - high_b[i];
      double before = low_b[i] - high_a[i];

      int says = (beyond > before) == (toward[i] > 0) ? 1 : -1;

      if (MAX (beyond, before) < -SINK || fabs (toward[i]) < EDGE_ON)
        continue;
      if (result == -says)
        return 0;
      result = says;
    }
  return result;
}

/**
 * sw_box_hides_box:
 *
 * Returns: whether the box is the nearer one of the two
 */
gboolean
sw_box_hides_box (const SwBox    *box,
                  const SwBox    *other,
                  const SwCamera *camera)
{
  int by = nearer (box, other, camera);

  return by > 0 || (by == 0 && sw_box_get_depth (box, camera) > sw_box_get_depth (other, camera));
}

static SwExtent
extent_of (const SwBox    *box,
           const SwCamera *camera)
{
  SwExtent extent = sw_extent_empty ();

  for (int k = 0; k < 8; k++)
    {
      SwSpot at = sw_see (camera, sw_box_get_corner (box, k));

      sw_extent_add (&extent, at.x, at.y);
    }
  return extent;
}

/* The box round one ellipsoid of the body. */
static SwBox
round_blob (const SwBody *body,
            const SwBlob *blob)
{
  SwPlacement frame = body->pieces[blob->piece];
  SwVector x = sw_scale (frame.axes.x, blob->half.x);
  SwVector y = sw_scale (frame.axes.y, blob->half.y);
  SwVector z = sw_scale (frame.axes.z, blob->half.z);
  SwVector half = sw_vector (sqrt (x.x * x.x + y.x * y.x + z.x * z.x), sqrt (x.y * x.y + y.y * y.y + z.y * z.y),
                             sqrt (x.z * x.z + y.z * y.z + z.z * z.z));
  SwVector at = sw_place (frame, blob->centre);

  return (SwBox){ sw_sub (at, half), sw_add (at, half), 0 };
}

static SwBox
join (SwBox a,
      SwBox b)
{
  return (SwBox){ sw_vector (MIN (a.low.x, b.low.x), MIN (a.low.y, b.low.y), MIN (a.low.z, b.low.z)),
                  sw_vector (MAX (a.high.x, b.high.x), MAX (a.high.y, b.high.y), MAX (a.high.z, b.high.z)), 0 };
}

/**
 * sw_box_get_hidden:
 * @box: a box
 * @body: a solved body
 * @camera: the view
 *
 * Returns: set of #SwPart bits of which some is behind the box
 */
guint
sw_box_get_hidden (const SwBox    *box,
                   const SwBody   *body,
                   const SwCamera *camera)
{
  SwExtent extent = extent_of (box, camera);
  guint hidden = 0;

  for (int part = 0; part < SW_N_PARTS; part++)
    {
      SwShape shape;

      sw_shape_get (body, (SwPart) part, &shape);
      for (int i = 0; i < shape.n_hulls; i++)
        {
          SwBox hull = round_blob (body, &shape.hulls[i].blobs[0]);
          SwExtent seen;

          for (int k = 1; k < shape.hulls[i].n_blobs; k++)
            hull = join (hull, round_blob (body, &shape.hulls[i].blobs[k]));
          seen = extent_of (&hull, camera);
          if (sw_extent_meets (&extent, &seen, 0) && nearer (box, &hull, camera) > 0)
            hidden |= 1u << part;
        }
    }
  return hidden;
}

/**
 * sw_box_draw:
 * @box: a box
 * @paper: where to draw
 * @camera: the view
 * @in_front: whether parts of the body are behind it: they shine through what is broad
 */
void
sw_box_draw (const SwBox    *box,
             const SwPaper  *paper,
             const SwCamera *camera,
             gboolean        in_front)
{
  static const struct
  {
    SwVector normal;
    int corners[4];
    double darker;
  } faces[] = {
    { { 1, 0, 0 }, { 1, 3, 7, 5 }, 0.06 }, { { -1, 0, 0 }, { 0, 4, 6, 2 }, 0.06 },
    { { 0, 1, 0 }, { 2, 6, 7, 3 }, 0.03 }, { { 0, -1, 0 }, { 0, 1, 5, 4 }, 0.03 },
    { { 0, 0, 1 }, { 4, 5, 7, 6 }, 0.0 },
  };
  SwExtent extent = extent_of (box, camera);
  gboolean broad = MIN (extent.right - extent.left, extent.top - extent.bottom) > BROAD;

  for (gsize i = 0; i < G_N_ELEMENTS (faces); i++)
    {
      double tone = box->tone - faces[i].darker;

      if (sw_dot (faces[i].normal, camera->toward) <= 1e-3)
        continue;
      for (int k = 0; k < 4; k++)
        {
          SwSpot at = sw_see (camera, sw_box_get_corner (box, faces[i].corners[k]));

          if (k == 0)
            sw_paper_move (paper, at.x, at.y);
          else
            sw_paper_line (paper, at.x, at.y);
        }
      sw_sketch_close (paper->sketch);
      sw_paper_tone (paper, tone);
      sw_sketch_set_opacity (paper->sketch, in_front && broad ? SEE_THROUGH : 1.0);
      sw_sketch_fill_preserve (paper->sketch);
      sw_sketch_set_opacity (paper->sketch, 1.0);
      sw_paper_tone (paper, SW_TONE_PROP_INK);
      sw_sketch_set_width (paper->sketch, SW_PROP_INK_PT);
      sw_sketch_stroke (paper->sketch);
    }
}
