/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The arrow of a press: straight, as long as it takes to be seen, beside the part that presses, with a bar across its
 * tip. */
#include "config.h"

#include <string.h>

#include "sw-press.h"

#define LONG_PT 17.0
#define SHAFT_PT 1.7
#define EDGE_PT 1.2
#define HEAD_LONG_PT 6.5
#define HEAD_WIDE_PT 6.0
#define BAR_WIDE_PT 11.0
#define BAR_THICK_PT 2.3
/* A way that the camera sees shorter than this cannot be told on paper. */
#define SEEN 0.3
/* Room is kept for it as if the figure had its usual size. */
#define USUAL_WHOLE_PT 110.0
#define USUAL_CLOSE_PT 190.0
#define USUAL_FINE_PT 600.0
#define ROUND 9
/* How far from the part that presses it is looked for. */
#define FAR_PT 34.0
#define FAR 0.2

/* The direction in the room, of length 1. */
static SwVector
get_way (const SwBody *body,
         SwFigureMark  mark,
         SwFigureWay   way)
{
  SwMatrix chest = body->pieces[SW_PIECE_RIBCAGE].axes;
  gboolean sided = sw_figure_mark_get_mirrored (mark) != mark;
  /* Marks of the right side come before those of the left. */
  double outward = sided && sw_figure_mark_get_mirrored (mark) < mark ? 1.0 : -1.0;

  switch (way)
    {
    case SW_FIGURE_WAY_UP:
      return sw_vector (0, 0, 1);
    case SW_FIGURE_WAY_DOWN:
      return sw_vector (0, 0, -1);
    case SW_FIGURE_WAY_BACK:
      return sw_scale (chest.x, -1);
    case SW_FIGURE_WAY_RIGHT:
      return sw_scale (chest.y, -1);
    case SW_FIGURE_WAY_LEFT:
      return chest.y;
    case SW_FIGURE_WAY_IN:
      return sw_scale (chest.y, -outward);
    case SW_FIGURE_WAY_OUT:
      return sw_scale (chest.y, outward);
    case SW_FIGURE_WAY_NONE:
    case SW_FIGURE_WAY_FORWARD:
    default:
      return chest.x;
    }
}

static SwSpot
step (SwSpot from,
      SwSpot way,
      double along,
      double aside)
{
  return (SwSpot){ from.x + way.x * along - way.y * aside, from.y + way.y * along + way.x * aside, 0 };
}

static void
set (SwPress *press,
     SwSpot   tail,
     SwSpot   way,
     double   scale_pt)
{
  double bar = BAR_WIDE_PT / 2 / scale_pt;

  press->tail = tail;
  press->tip = step (tail, way, LONG_PT / scale_pt, 0);
  press->bar[0] = step (press->tip, way, 0, -bar);
  press->bar[1] = step (press->tip, way, 0, bar);
}

static double
cover_at (const SwMotifs *items,
          SwSpot          at)
{
  double worst = 0;

  for (int i = 0; i < items->n_items; i++)
    {
      const SwMotif *item = &items->items[i];
      double weight = item->part == SW_PART_HEAD ? 1.6 : item->part >= 0 ? 1.0 : 0.6;

      if (item->style == SW_INK_START)
        weight *= 0.3;
      if (weight > worst && sw_motif_holds (item, at.x, at.y))
        worst = weight;
    }
  return worst;
}

/* How much of what it covers, and of what lies outside the room. */
static double
crowd_of (const SwPress  *press,
          SwSpot          way,
          const SwMotifs *items,
          double          scale_pt,
          const SwExtent *room)
{
  double beside = (HEAD_WIDE_PT / 2) / scale_pt;
  double length = LONG_PT / scale_pt;
  double sum = 0;
  int n = 0;

  for (int i = 0; i <= 5; i++)
    for (int side = -1; side <= 1; side++)
      {
        /* The last row is the bar. */
        double aside = side * (i == 5 ? BAR_WIDE_PT / 2 / scale_pt : beside);
        SwSpot at = step (press->tail, way, length * i / 5 + (i == 5 ? BAR_THICK_PT / scale_pt : 0), aside);

        sum += cover_at (items, at);
        if (at.x < room->left || at.x > room->right || at.y < room->bottom || at.y > room->top)
          sum += 4.0;
        n++;
      }
  return sum / n;
}

static gboolean
meets (const SwPress *a,
       const SwPress *b,
       double         scale_pt)
{
  SwExtent boxes[2] = { sw_extent_empty (), sw_extent_empty () };

  for (int i = 0; i < 2; i++)
    {
      const SwPress *press = i == 0 ? a : b;

      sw_extent_add (&boxes[i], press->tail.x, press->tail.y);
      sw_extent_add (&boxes[i], press->bar[0].x, press->bar[0].y);
      sw_extent_add (&boxes[i], press->bar[1].x, press->bar[1].y);
    }
  return sw_extent_meets (&boxes[0], &boxes[1], (BAR_THICK_PT + EDGE_PT) / scale_pt);
}

/* What presses and where to, as seen. */
typedef struct
{
  SwSpot at;
  SwSpot way;
} Push;

/* The place nearest to what presses at which the arrows cover least; ahead of it is better than behind. Two are moved
 * alike, or as mirror images when they press against each other. @hand is -1 in a mirrored figure, so that of two equal
 * places the mirrored one is taken there. */
static void
search (const Push     *pushes,
        int             n,
        double          hand,
        const SwMotifs *items,
        double          scale_pt,
        const SwExtent *room,
        SwPress        *best)
{
  double far = MAX (FAR, FAR_PT / scale_pt);
  double least = G_MAXDOUBLE;
  double turn = n > 1 && pushes[0].way.x * pushes[1].way.x + pushes[0].way.y * pushes[1].way.y < 0 ? -1 : 1;

  for (int i = -ROUND; i <= ROUND; i++)
    for (int k = -ROUND; k <= ROUND; k++)
      {
        double along = far * i / ROUND;
        double aside = hand * far * k / ROUND;
        /* Its middle should be beside the part. */
        double cost = 0.55 * hypot (along < 0 ? 1.6 * along : along, aside) / far;
        SwPress tried[SW_FIGURE_MAX_SHOWN];

        for (int p = 0; p < n && cost < least; p++)
          {
            set (&tried[p], step (pushes[p].at, pushes[p].way, along - 0.3 * LONG_PT / scale_pt, p > 0 ? turn * aside : aside),
                 pushes[p].way, scale_pt);
            cost += 1.6 * crowd_of (&tried[p], pushes[p].way, items, scale_pt, room) / n;
          }
        if (cost < least && n > 1 && meets (&tried[0], &tried[1], scale_pt))
          cost += 2.0;
        if (cost < least - 1e-9)
          {
            least = cost;
            memcpy (best, tried, sizeof *best * (gsize) n);
          }
      }
}

/* Returns how many there are: none unless the figure presses and this is its last picture. */
static int
find_pushes (const SwPanel  *panel,
             const SwFigure *figure,
             Push            pushes[SW_FIGURE_MAX_SHOWN])
{
  const SwFigureContent *content = figure->solver.content;
  const SwBody *body = &panel->solid->body;
  int n = 0;

  if (content->motion != SW_FIGURE_MOTION_PRESS || panel->solid != &figure->solver.keys[figure->solver.n_keys - 1])
    return 0;

  for (int i = 0; i < SW_FIGURE_MAX_SHOWN; i++)
    {
      SwFigureWay toward = content->toward[i] != SW_FIGURE_WAY_NONE ? content->toward[i] : content->toward[0];
      SwSpot way;
      double seen;

      if (content->shown[i] == SW_FIGURE_MARK_NONE)
        continue;
      way = sw_see (&figure->camera, get_way (body, content->shown[i], toward));
      seen = hypot (way.x, way.y);
      if (seen < SEEN)
        continue;
      pushes[n].at = sw_see (&figure->camera, sw_body_get_mark (body, content->shown[i]));
      pushes[n].way = (SwSpot){ way.x / seen, way.y / seen, 0 };
      n++;
    }
  return n;
}

/**
 * sw_press_count:
 * @panel: a picture
 * @figure: its figure
 *
 * Returns: how many such arrows the picture has
 */
int
sw_press_count (const SwPanel  *panel,
                const SwFigure *figure)
{
  Push pushes[SW_FIGURE_MAX_SHOWN];

  return find_pushes (panel, figure, pushes);
}

/**
 * sw_press_place:
 * @panel: a picture with its items
 * @figure: its figure
 * @scale_pt: points for one stature
 * @room: what they should not leave
 * @presses: (out): the arrows
 *
 * Returns: how many there are: none unless the figure presses and this is its last picture
 */
int
sw_press_place (const SwPanel  *panel,
                const SwFigure *figure,
                double          scale_pt,
                const SwExtent *room,
                SwPress         presses[SW_FIGURE_MAX_SHOWN])
{
  Push pushes[SW_FIGURE_MAX_SHOWN];
  int n = find_pushes (panel, figure, pushes);

  if (n > 0)
    search (pushes, n, figure->solver.content->mirrored ? -1.0 : 1.0, &panel->items, scale_pt, room, presses);
  return n;
}

/**
 * sw_press_add_extent:
 * @panel: a picture with its items
 * @figure: its figure
 * @extent: grows by what its arrows need
 */
void
sw_press_add_extent (const SwPanel  *panel,
                     const SwFigure *figure,
                     SwExtent       *extent)
{
  gboolean close = figure->above > -G_MAXDOUBLE || figure->below < G_MAXDOUBLE;
  double scale_pt = figure->fine ? USUAL_FINE_PT : close ? USUAL_CLOSE_PT : USUAL_WHOLE_PT;
  double edge = (BAR_THICK_PT + 2 * EDGE_PT) / scale_pt;
  SwExtent room = { -G_MAXDOUBLE, MAX (-G_MAXDOUBLE, figure->above), G_MAXDOUBLE, figure->below };
  SwPress presses[SW_FIGURE_MAX_SHOWN];
  int n = sw_press_place (panel, figure, scale_pt, &room, presses);

  for (int i = 0; i < n; i++)
    {
      const SwSpot spots[] = { presses[i].tail, presses[i].tip, presses[i].bar[0], presses[i].bar[1] };

      for (gsize k = 0; k < G_N_ELEMENTS (spots); k++)
        {
          sw_extent_add (extent, spots[k].x - edge, spots[k].y - edge);
          sw_extent_add (extent, spots[k].x + edge, spots[k].y + edge);
        }
    }
}

static void
add_shape (const SwPaper *paper,
           const SwPress *press)
{
  SwSketch *sketch = paper->sketch;
  double x = sw_paper_x (paper, press->tip.x);
  double y = sw_paper_y (paper, press->tip.y);
  double tail_x = sw_paper_x (paper, press->tail.x);
  double tail_y = sw_paper_y (paper, press->tail.y);
  double length = MAX (1e-6, hypot (x - tail_x, y - tail_y));
  cairo_matrix_t turned
      = { (x - tail_x) / length, (y - tail_y) / length, -(y - tail_y) / length, (x - tail_x) / length, x, y };

  sw_sketch_save (sketch);
  sw_sketch_transform (sketch, &turned);
  sw_sketch_new_path (sketch);
  sw_sketch_rectangle (sketch, 0, -BAR_WIDE_PT / 2, BAR_THICK_PT, BAR_WIDE_PT);
  sw_sketch_move (sketch, 0, 0);
  sw_sketch_line (sketch, -HEAD_LONG_PT, -HEAD_WIDE_PT / 2);
  sw_sketch_line (sketch, -HEAD_LONG_PT, -SHAFT_PT / 2);
  sw_sketch_line (sketch, -length, -SHAFT_PT / 2);
  sw_sketch_line (sketch, -length, SHAFT_PT / 2);
  sw_sketch_line (sketch, -HEAD_LONG_PT, SHAFT_PT / 2);
  sw_sketch_line (sketch, -HEAD_LONG_PT, HEAD_WIDE_PT / 2);
  sw_sketch_close (sketch);
  sw_sketch_restore (sketch);
}

/**
 * sw_press_draw:
 * @paper: where to draw
 * @press: an arrow
 */
void
sw_press_draw (const SwPaper *paper,
               const SwPress *press)
{
  SwSketch *sketch = paper->sketch;

  sw_sketch_save (sketch);
  sw_sketch_set_join (sketch, CAIRO_LINE_JOIN_ROUND);
  add_shape (paper, press);
  sw_sketch_set_width (sketch, 2 * EDGE_PT);
  sw_paper_tone (paper, 1);
  sw_sketch_stroke_preserve (sketch);
  sw_paper_tone (paper, 0);
  sw_sketch_fill (sketch);
  sw_sketch_restore (sketch);
}
