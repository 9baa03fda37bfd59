/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Breath: three streamlines before the face, each with a head where the air goes. */
#include "config.h"

#include "sw-breath.h"

#define LONG_PT 14.0
#define MIDDLE_LONGER 1.2
#define GAP_PT 3.0
#define NEAR_ASIDE_PT 3.0
#define FAR_ASIDE_PT 6.0
#define LINE_PT 0.9
#define EDGE_PT 1.0
#define HEAD_LONG_PT 4.2
#define HEAD_WIDE_PT 3.8
/* Small bodies have smaller arrows, large ones larger. */
#define USUAL_SCALE_PT 110.0
#define SMALLEST 0.75
#define LARGEST 1.35
/* A face that looks at the viewer breathes past its side. */
#define SEEN 0.5
#define CHEEK 0.062
#define EDGE 0.015

/* From where on paper and where to the air flows. */
static void
find_flow (const SwFigure *figure,
           const SwBody   *body,
           SwFigureBreath  way,
           SwSpot         *at,
           SwSpot         *out)
{
  SwPlacement head = body->pieces[SW_PIECE_HEAD];
  SwVector outward = sw_apply (head.axes, sw_vector (1, 0, -0.3));
  double seen;

  /* Air goes in by the nose and out by the mouth. */
  *at = sw_see (&figure->camera, sw_place (head, way == SW_FIGURE_BREATH_IN ? sw_vector (0.076, 0, 0.016)
                                                                           : sw_vector (0.066, 0, 0.002)));
  *out = sw_see (&figure->camera, outward);
  seen = hypot (out->x, out->y);
  if (seen < SEEN * sw_length (outward))
    {
      SwSpot side = sw_see (&figure->camera, sw_scale (head.axes.y, figure->mirrored ? -1 : 1));
      SwSpot up = sw_see (&figure->camera, sw_scale (head.axes.z, 0.15));

      *out = (SwSpot){ side.x + up.x, side.y + up.y, 0 };
      seen = MAX (1e-6, hypot (out->x, out->y));
      at->x += out->x / seen * CHEEK;
      at->y += out->y / seen * CHEEK;
    }
  out->x /= seen;
  out->y /= seen;
}

/**
 * sw_breath_is_shown:
 * @panel: a picture
 * @figure: its figure
 *
 * Returns: whether the picture's pose breathes in or out and its head is drawn
 */
gboolean
sw_breath_is_shown (const SwPanel  *panel,
                    const SwFigure *figure)
{
  return panel->solid->breath != SW_FIGURE_BREATH_NONE && (figure->drawn >> SW_PART_HEAD & 1) != 0;
}

/**
 * sw_breath_place:
 * @panel: a picture
 * @figure: its figure
 * @scale_pt: points for one stature
 * @breath: (out): the arrows
 *
 * Returns: whether there are any
 */
gboolean
sw_breath_place (const SwPanel  *panel,
                 const SwFigure *figure,
                 double          scale_pt,
                 SwBreath       *breath)
{
  SwFigureBreath way = panel->solid->breath;
  double scale = CLAMP (scale_pt / USUAL_SCALE_PT, SMALLEST, LARGEST);
  double unit = scale / scale_pt;
  SwSpot at;
  SwSpot out;

  if (!sw_breath_is_shown (panel, figure))
    return FALSE;

  find_flow (figure, &panel->solid->body, way, &at, &out);
  breath->scale = scale;
  for (int line = 0; line < SW_BREATH_LINES; line++)
    for (int i = 0; i < SW_BREATH_POINTS; i++)
      {
        double t = (double) i / (SW_BREATH_POINTS - 1);
        double length = LONG_PT * (line == 1 ? MIDDLE_LONGER : 1.0);
        double along = unit * (GAP_PT + t * length);
        /* They spread gently away from the face. */
        double aside = unit * (line - 1) * (NEAR_ASIDE_PT + (FAR_ASIDE_PT - NEAR_ASIDE_PT) * t * t);
        int place = way == SW_FIGURE_BREATH_OUT ? i : SW_BREATH_POINTS - 1 - i;

        breath->lines[line][place]
            = (SwSpot){ at.x + out.x * along - out.y * aside, at.y + out.y * along + out.x * aside, 0 };
      }
  return TRUE;
}

/**
 * sw_breath_add_extent:
 * @panel: a picture
 * @figure: its figure
 * @extent: grows by what the arrows need
 */
void
sw_breath_add_extent (const SwPanel  *panel,
                      const SwFigure *figure,
                      SwExtent       *extent)
{
  SwBreath breath;

  if (!sw_breath_place (panel, figure, SMALLEST * USUAL_SCALE_PT, &breath))
    return;

  for (int line = 0; line < SW_BREATH_LINES; line++)
    for (int i = 0; i < SW_BREATH_POINTS; i++)
      {
        sw_extent_add (extent, breath.lines[line][i].x - EDGE, breath.lines[line][i].y - EDGE);
        sw_extent_add (extent, breath.lines[line][i].x + EDGE, breath.lines[line][i].y + EDGE);
      }
}

static void
add_line (const SwPaper  *paper,
          const SwBreath *breath,
          int             line)
{
  sw_sketch_new_path (paper->sketch);
  for (int i = 0; i < SW_BREATH_POINTS; i++)
    sw_paper_line (paper, breath->lines[line][i].x, breath->lines[line][i].y);
}

static void
add_head (const SwPaper  *paper,
          const SwBreath *breath,
          int             line)
{
  const SwSpot *spots = breath->lines[line];
  double x = sw_paper_x (paper, spots[SW_BREATH_POINTS - 1].x);
  double y = sw_paper_y (paper, spots[SW_BREATH_POINTS - 1].y);
  double ux = x - sw_paper_x (paper, spots[SW_BREATH_POINTS - 3].x);
  double uy = y - sw_paper_y (paper, spots[SW_BREATH_POINTS - 3].y);
  double length = MAX (1e-6, hypot (ux, uy)) / breath->scale;
  double half = HEAD_WIDE_PT / 2 / HEAD_LONG_PT;

  ux *= HEAD_LONG_PT / length;
  uy *= HEAD_LONG_PT / length;
  sw_sketch_new_path (paper->sketch);
  sw_sketch_move (paper->sketch, x + 0.4 * ux, y + 0.4 * uy);
  sw_sketch_line (paper->sketch, x - 0.6 * ux - half * uy, y - 0.6 * uy + half * ux);
  sw_sketch_line (paper->sketch, x - 0.6 * ux + half * uy, y - 0.6 * uy - half * ux);
  sw_sketch_close (paper->sketch);
}

/**
 * sw_breath_draw:
 * @paper: where to draw
 * @breath: the arrows
 */
void
sw_breath_draw (const SwPaper  *paper,
                const SwBreath *breath)
{
  SwSketch *sketch = paper->sketch;

  sw_sketch_save (sketch);
  sw_sketch_set_cap (sketch, CAIRO_LINE_CAP_ROUND);
  sw_sketch_set_join (sketch, CAIRO_LINE_JOIN_ROUND);
  for (int pass = 0; pass < 2; pass++)
    for (int line = 0; line < SW_BREATH_LINES; line++)
      {
        sw_paper_tone (paper, pass == 0 ? 1 : 0);
        add_line (paper, breath, line);
        sw_sketch_set_width (sketch, LINE_PT + (pass == 0 ? 2 * EDGE_PT : 0));
        sw_sketch_stroke (sketch);
        add_head (paper, breath, line);
        if (pass == 0)
          {
            sw_sketch_set_width (sketch, 2 * EDGE_PT);
            sw_sketch_stroke (sketch);
          }
        else
          sw_sketch_fill (sketch);
      }
  sw_sketch_restore (sketch);
}
