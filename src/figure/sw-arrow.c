/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The arrow of a motion: begins at the part that moves and runs along its path, moved aside only as far as it takes to
 * be seen. */
#include "config.h"

#include <string.h>

#include "sw-arrow.h"

#define SHAFT_PT 1.5
#define EDGE_PT 1.3
#define HEAD_LONG_PT 6.5
#define HEAD_WIDE_PT 5.5
#define BACK_LONG_PT 3.2
#define SHORTEST_PT 18.0
/* On a shorter arrow than this both heads are smaller, down to that share, so that the shaft between them shows. */
#define BOTH_HEADS_PT 27.0
#define SMALLEST_HEAD 0.8
#define SHORT_PT 32.0
/* Larger than so many points to the stature, arrows move aside by less of it. */
#define LARGE_SCALE_PT 240.0
#define SMOOTH_PASSES 8
/* A path that is shorter on paper, in parts of stature, has no arrow. */
#define LEAST_PATH 0.004

static double
path_length (const SwArrow *arrow)
{
  double sum = 0;

  for (int i = 1; i < arrow->n_points; i++)
    sum += hypot (arrow->points[i].x - arrow->points[i - 1].x, arrow->points[i].y - arrow->points[i - 1].y);

  return sum;
}

static double
cover_at (const SwMotifs *items,
          guint          moving,
          double         x,
          double         y)
{
  double worst = 0;

  for (int i = 0; i < items->n_items; i++)
    {
      const SwMotif *item = &items->items[i];
      double weight = 0.5;

      if (item->part == SW_PART_HEAD)
        weight = 2.4;
      else if (item->part == SW_PART_TRUNK)
        weight = 0.85;
      else if (item->part >= 0)
        weight = (moving >> item->part & 1) != 0 ? 1.5 : 0.8;
      /* The dashed thing is a ball in flight, which the arrow leads to. */
      if (item->style == SW_INK_START)
        weight *= item->part >= 0 ? 0.3 : 2.4;
      if (weight > worst && sw_motif_holds (item, x, y))
        worst = weight;
    }
  return worst;
}

static double
mean_cover (const SwArrow *arrow,
            const SwMotifs *items,
            guint          moving)
{
  double sum = 0;

  for (int i = 0; i < arrow->n_points; i++)
    sum += cover_at (items, moving, arrow->points[i].x, arrow->points[i].y);

  return sum / arrow->n_points;
}

static double
share_outside (const SwArrow  *arrow,
               const SwExtent *room)
{
  int n = 0;

  for (int i = 0; i < arrow->n_points; i++)
    if (arrow->points[i].x < room->left || arrow->points[i].x > room->right || arrow->points[i].y < room->bottom
        || arrow->points[i].y > room->top)
      n++;

  return (double) n / arrow->n_points;
}

/* A path too short to be seen becomes a straight arrow of the least length, from where the path begins. */
static void
lengthen (SwArrow *arrow,
          double   scale_pt)
{
  double dx = arrow->points[arrow->n_points - 1].x - arrow->points[0].x;
  double dy = arrow->points[arrow->n_points - 1].y - arrow->points[0].y;
  double chord = hypot (dx, dy);
  double least = SHORTEST_PT / scale_pt;

  if (path_length (arrow) >= least || chord < 1e-6)
    return;

  arrow->n_points = 6;
  for (int i = 1; i < 6; i++)
    {
      arrow->points[i].x = arrow->points[0].x + dx / chord * least * i / 5;
      arrow->points[i].y = arrow->points[0].y + dy / chord * least * i / 5;
    }
}

/* Evens out corners where a hand leaves what held it. */
static void
smooth (SwArrow *arrow)
{
  for (int pass = 0; pass < SMOOTH_PASSES; pass++)
    {
      SwArrow old = *arrow;

      for (int i = 1; i + 1 < arrow->n_points; i++)
        {
          arrow->points[i].x = (old.points[i - 1].x + 2 * old.points[i].x + old.points[i + 1].x) / 4;
          arrow->points[i].y = (old.points[i - 1].y + 2 * old.points[i].y + old.points[i + 1].y) / 4;
        }
    }
}

static void
shift (SwArrow       *arrow,
       const SwArrow *from,
       double         dx,
       double         dy)
{
  *arrow = *from;
  for (int i = 0; i < arrow->n_points; i++)
    {
      arrow->points[i].x += dx;
      arrow->points[i].y += dy;
    }
}

static void
push_outward (SwArrow       *arrow,
              const SwArrow *from,
              const SwSpot  *about,
              double         by)
{
  *arrow = *from;
  for (int i = 0; i < arrow->n_points; i++)
    {
      double dx = arrow->points[i].x - about->x;
      double dy = arrow->points[i].y - about->y;
      double away = MAX (1e-6, hypot (dx, dy));
      double factor = MAX (0.1, (away + by) / away);

      arrow->points[i].x = about->x + dx * factor;
      arrow->points[i].y = about->y + dy * factor;
    }
}

/* Whether the path goes round @about as seen, rather than across it. */
static gboolean
is_round (const SwArrow *arrow,
          const SwSpot  *about)
{
  double nearest = G_MAXDOUBLE;
  double farthest = 0;

  for (int i = 0; i < arrow->n_points; i++)
    {
      double away = hypot (arrow->points[i].x - about->x, arrow->points[i].y - about->y);

      nearest = MIN (nearest, away);
      farthest = MAX (farthest, away);
    }
  return nearest > 0.55 * farthest;
}

typedef struct
{
  SwArrow best;
  double cost;
  const SwMotifs *items;
  guint moving;
  const SwExtent *room;
} Search;

static void
try_arrow (Search        *search,
           const SwArrow *arrow,
           double         extra)
{
  double cost
      = 1.3 * mean_cover (arrow, search->items, search->moving) + 4.0 * share_outside (arrow, search->room) + extra;

  if (cost < search->cost - 1e-9)
    {
      search->cost = cost;
      search->best = *arrow;
    }
}

/* Follows the path itself. Returns its length. */
static double
follow (SwArrow      *arrow,
        const SwSpot *path,
        int           n_path)
{
  *arrow = (SwArrow){ .n_points = MIN (n_path, SW_ARROW_MAX) };
  for (int i = 0; i < arrow->n_points; i++)
    {
      arrow->points[i].x = path[i].x;
      arrow->points[i].y = path[i].y;
    }
  smooth (arrow);
  return path_length (arrow);
}

/**
 * sw_arrow_is_seen:
 * @path: where the shown part goes
 * @n_path: how many places, at most SW_ARROW_MAX
 *
 * Returns: whether so much moves on paper that it gets an arrow
 */
gboolean
sw_arrow_is_seen (const SwSpot *path,
                  int           n_path)
{
  SwArrow plain;

  return follow (&plain, path, n_path) >= LEAST_PATH;
}

/**
 * sw_arrow_place:
 * @arrow: (out): the arrow; has no points when nothing moves on paper
 * @path: where the shown part goes
 * @n_path: how many places, at most SW_ARROW_MAX
 * @about: (nullable): what it turns about
 * @items: what it should not cover
 * @moving: set of #SwPart bits that move
 * @scale_pt: points for one stature
 * @room: what it should not leave
 */
void
sw_arrow_place (SwArrow        *arrow,
                const SwSpot   *path,
                int             n_path,
                const SwSpot   *about,
                const SwMotifs  *items,
                guint           moving,
                double          scale_pt,
                const SwExtent *room)
{
  static const double pushes[] = { 0.03, 0.05, 0.075, 0.11, 0.15, -0.05, -0.09 };
  static const double asides[] = { 0.035, -0.035, 0.06, -0.06, 0.09, -0.09, 0.13, -0.13, 0.18, -0.18, 0.23, -0.23 };
  static const double aheads[] = { 0.05, 0.09, 0.13, 0.17, -0.06, -0.10, -0.14 };
  SwArrow plain;
  SwArrow tried;
  double unit = MIN (1.0, LARGE_SCALE_PT / scale_pt);
  Search search = { .cost = G_MAXDOUBLE, .items = items, .moving = moving, .room = room };
  double dx;
  double dy;
  double chord;
  double original;
  gboolean is_short;

  arrow->n_points = 0;
  original = follow (&plain, path, n_path);
  if (original < LEAST_PATH)
    return;

  is_short = original * scale_pt < SHORT_PT;
  lengthen (&plain, scale_pt);
  dx = plain.points[plain.n_points - 1].x - plain.points[0].x;
  dy = plain.points[plain.n_points - 1].y - plain.points[0].y;
  chord = MAX (1e-6, hypot (dx, dy));
  dx /= chord;
  dy /= chord;

  try_arrow (&search, &plain, 0);
  for (gsize i = 0; about != NULL && !is_short && is_round (&plain, about) && i < G_N_ELEMENTS (pushes); i++)
    {
      push_outward (&tried, &plain, about, unit * pushes[i]);
      try_arrow (&search, &tried, 2.2 * fabs (pushes[i]) + (path_length (&tried) < 0.5 * original ? 0.5 : 0));
    }
  for (gsize i = 0; i < G_N_ELEMENTS (asides); i++)
    {
      if (is_short && fabs (asides[i]) > 0.135)
        continue;
      shift (&tried, &plain, -dy * unit * asides[i], dx * unit * asides[i]);
      try_arrow (&search, &tried, 3.2 * fabs (asides[i]) + (original * scale_pt > 40 ? 0.10 : 0));
    }
  for (gsize i = 0; is_short && i < G_N_ELEMENTS (aheads); i++)
    for (int side = -1; side <= 1; side++)
      {
        shift (&tried, &plain, unit * (dx * aheads[i] - dy * side * 0.04), unit * (dy * aheads[i] + dx * side * 0.04));
        try_arrow (&search, &tried, (aheads[i] < 0 ? 3.2 : 1.6) * fabs (aheads[i]) + 0.06 * abs (side));
      }
  *arrow = search.best;
}

/**
 * sw_arrow_place_loop:
 * @arrow: (out): the arrow
 * @path: where the shown part goes round, without the first place repeated
 * @n_path: how many places
 */
void
sw_arrow_place_loop (SwArrow      *arrow,
                     const SwSpot *path,
                     int           n_path)
{
  int n = MIN ((int) ceil (0.88 * n_path), SW_ARROW_MAX);

  *arrow = (SwArrow){ .loop = TRUE };
  for (int i = 0; i < n; i++)
    {
      arrow->points[i].x = path[i].x;
      arrow->points[i].y = path[i].y;
    }
  arrow->n_points = n;
}

/* The place @back_pt before the end of the line; drops the points behind it. Returns how many are left. */
static int
shorten (double  (*pt)[2],
         int      n,
         double   back_pt)
{
  while (n > 2)
    {
      double step = hypot (pt[n - 1][0] - pt[n - 2][0], pt[n - 1][1] - pt[n - 2][1]);

      if (step >= back_pt)
        break;
      back_pt -= step;
      n--;
    }
  if (n >= 2)
    {
      double dx = pt[n - 1][0] - pt[n - 2][0];
      double dy = pt[n - 1][1] - pt[n - 2][1];
      double step = MAX (1e-6, hypot (dx, dy));
      double t = MAX (0.0, 1 - back_pt / step);

      pt[n - 1][0] = pt[n - 2][0] + dx * t;
      pt[n - 1][1] = pt[n - 2][1] + dy * t;
    }
  return n;
}

static void
add_shaft (SwSketch       *sketch,
           double       (*pt)[2],
           int            n)
{
  sw_sketch_new_path (sketch);
  for (int i = 0; i < n; i++)
    sw_sketch_line (sketch, round (pt[i][0] * 50) / 50, round (pt[i][1] * 50) / 50);
}

static void
add_head (SwSketch             *sketch,
          const SwArrowShape *shape)
{
  double x = shape->tip[0];
  double y = shape->tip[1];
  double long_x = shape->way[0] * shape->head * HEAD_LONG_PT;
  double long_y = shape->way[1] * shape->head * HEAD_LONG_PT;
  double wide_x = -shape->way[1] * shape->head * HEAD_WIDE_PT / 2;
  double wide_y = shape->way[0] * shape->head * HEAD_WIDE_PT / 2;

  sw_sketch_new_path (sketch);
  sw_sketch_move (sketch, x, y);
  sw_sketch_line (sketch, x - long_x + wide_x, y - long_y + wide_y);
  sw_sketch_line (sketch, x - long_x - wide_x, y - long_y - wide_y);
  sw_sketch_close (sketch);
}

/* A thin open head at the start: and back again. */
static void
draw_back_head (SwSketch             *sketch,
                const SwArrowShape *shape)
{
  for (int pass = 0; pass < 2; pass++)
    {
      sw_sketch_new_path (sketch);
      for (int i = 0; i < 3; i++)
        sw_sketch_line (sketch, shape->back_head[i][0], shape->back_head[i][1]);
      sw_sketch_set_width (sketch, pass == 0 ? 0.9 + 2 * EDGE_PT : 0.9);
      sw_sketch_set_tone (sketch, pass == 0);
      sw_sketch_stroke (sketch);
    }
}

/* The direction of the line's first or last stretch of about a head's length. */
static void
find_way (double (*pt)[2],
          int      n,
          int      from,
          int      step,
          double   way[2])
{
  int to = from + step;
  double length;

  while (to + step >= 0 && to + step < n
         && hypot (pt[to][0] - pt[from][0], pt[to][1] - pt[from][1]) < HEAD_LONG_PT)
    to += step;
  length = MAX (1e-6, hypot (pt[to][0] - pt[from][0], pt[to][1] - pt[from][1]));
  way[0] = (pt[to][0] - pt[from][0]) / length;
  way[1] = (pt[to][1] - pt[from][1]) / length;
}

/**
 * sw_arrow_get_shape:
 * @arrow: an arrow with at least two points
 * @paper: where it is drawn
 * @shape: (out): its lines on paper, points
 */
void
sw_arrow_get_shape (const SwArrow *arrow,
                    const SwPaper *paper,
                    SwArrowShape  *shape)
{
  double length_pt = path_length (arrow) * paper->scale_pt;
  double back_way[2];
  double tip_way[2];

  *shape = (SwArrowShape){ .n_shaft = arrow->n_points, .back = arrow->back, .head = 1.0 };
  if (arrow->back)
    shape->head = CLAMP (length_pt / BOTH_HEADS_PT, SMALLEST_HEAD, 1.0);
  for (int i = 0; i < arrow->n_points; i++)
    {
      shape->shaft[i][0] = sw_paper_x (paper, arrow->points[i].x);
      shape->shaft[i][1] = sw_paper_y (paper, arrow->points[i].y);
    }
  memcpy (shape->tip, shape->shaft[arrow->n_points - 1], sizeof shape->tip);
  find_way (shape->shaft, arrow->n_points, arrow->n_points - 1, -1, tip_way);
  shape->way[0] = -tip_way[0];
  shape->way[1] = -tip_way[1];
  shape->n_shaft = shorten (shape->shaft, arrow->n_points, shape->head * HEAD_LONG_PT * 0.6);

  find_way (shape->shaft, shape->n_shaft, 0, 1, back_way);
  for (int i = 0; i < 3; i++)
    {
      double along = i == 1 ? 0.0 : BACK_LONG_PT;
      double aside = (i - 1) * 0.8 * BACK_LONG_PT;

      shape->back_head[i][0] = shape->shaft[0][0] + back_way[0] * along - back_way[1] * aside;
      shape->back_head[i][1] = shape->shaft[0][1] + back_way[1] * along + back_way[0] * aside;
    }
}

/**
 * sw_arrow_draw:
 * @paper: where to draw
 * @arrow: an arrow
 */
void
sw_arrow_draw (const SwPaper *paper,
               const SwArrow *arrow)
{
  SwSketch *sketch = paper->sketch;
  SwArrowShape shape;

  if (arrow->n_points < 2)
    return;

  sw_arrow_get_shape (arrow, paper, &shape);
  sw_sketch_save (sketch);
  sw_sketch_set_cap (sketch, CAIRO_LINE_CAP_BUTT);
  sw_sketch_set_join (sketch, CAIRO_LINE_JOIN_ROUND);
  add_shaft (sketch, shape.shaft, shape.n_shaft);
  sw_sketch_set_width (sketch, SHAFT_PT + 2 * EDGE_PT);
  sw_sketch_set_tone (sketch, 1);
  sw_sketch_stroke (sketch);
  add_head (sketch, &shape);
  sw_sketch_set_width (sketch, 2 * EDGE_PT);
  sw_sketch_stroke (sketch);

  sw_sketch_set_tone (sketch, 0);
  add_shaft (sketch, shape.shaft, shape.n_shaft);
  sw_sketch_set_width (sketch, SHAFT_PT);
  sw_sketch_stroke (sketch);
  add_head (sketch, &shape);
  sw_sketch_fill (sketch);

  if (shape.back)
    draw_back_head (sketch, &shape);
  sw_sketch_restore (sketch);
}
