/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A little person seen from the front, the working limbs thick and black, the resting ones thin and grey; two of them
 * when the sides take turns. */
#include "config.h"

#include "sw-sides-mark.h"

/* From this direction on, the far limb hides behind the near one: within 40 degrees of the side. */
#define SIDEWAYS 0.77
/* From this direction on, the picture shows the body's back: 37 degrees behind the side. */
#define BEHIND (-0.6)
#define HEAD_PT 1.5
/* Limbs that move by less than this, or by less than that share of the one that moves most, only go along. */
#define MOVED 0.012
#define WORTH 0.45
#define APART_PT 3.7

static const guint arms = 1u << SW_LIMB_RIGHT_ARM | 1u << SW_LIMB_LEFT_ARM;
static const guint legs = 1u << SW_LIMB_RIGHT_LEG | 1u << SW_LIMB_LEFT_LEG;
static const guint rights = 1u << SW_LIMB_RIGHT_ARM | 1u << SW_LIMB_RIGHT_LEG;
static const guint lefts = 1u << SW_LIMB_LEFT_ARM | 1u << SW_LIMB_LEFT_LEG;

/* How far the parts of a limb go at most between the poses, parts of stature. */
static double
limb_travel (const SwFigure *figure,
             SwLimb          limb)
{
  static const SwFigureMark ends[SW_N_LIMBS][3]
      = { { SW_FIGURE_MARK_RIGHT_HAND, SW_FIGURE_MARK_RIGHT_ELBOW, SW_FIGURE_MARK_RIGHT_FINGERS },
          { SW_FIGURE_MARK_LEFT_HAND, SW_FIGURE_MARK_LEFT_ELBOW, SW_FIGURE_MARK_LEFT_FINGERS },
          { SW_FIGURE_MARK_RIGHT_TOES, SW_FIGURE_MARK_RIGHT_KNEE, SW_FIGURE_MARK_RIGHT_HEEL },
          { SW_FIGURE_MARK_LEFT_TOES, SW_FIGURE_MARK_LEFT_KNEE, SW_FIGURE_MARK_LEFT_HEEL } };
  const SwSolver *solver = &figure->solver;
  double most = 0;

  for (int key = 1; key < solver->n_keys; key++)
    for (int i = 0; i < 3; i++)
      most = MAX (most, sw_length (sw_sub (sw_body_get_mark (&solver->keys[key].body, ends[limb][i]),
                                           sw_body_get_mark (&solver->keys[0].body, ends[limb][i]))));

  return most;
}

/* The limb that a mark belongs to, as a bit; none of a mark of the trunk or head. */
static guint
limb_of (SwFigureMark mark)
{
  gboolean left = sw_figure_mark_get_mirrored (mark) < mark;

  if (sw_figure_mark_get_mirrored (mark) == mark)
    return 0;
  if ((mark >= SW_FIGURE_MARK_RIGHT_SHOULDER && mark <= SW_FIGURE_MARK_LEFT_HAND)
      || mark >= SW_FIGURE_MARK_RIGHT_FINGERS)
    return 1u << (left ? SW_LIMB_LEFT_ARM : SW_LIMB_RIGHT_ARM);

  return 1u << (left ? SW_LIMB_LEFT_LEG : SW_LIMB_RIGHT_LEG);
}

/* How far each limb goes. A hand that is held on something while another limb is free to move goes along, helps or
 * steadies: it does not work itself. */
static void
measure_travel (const SwFigure *figure,
                double          travel[SW_N_LIMBS])
{
  const SwSolver *solver = &figure->solver;
  double free_travel = 0.0;
  gboolean held[SW_N_LIMBS];

  for (int limb = 0; limb < (int) SW_N_LIMBS; limb++)
    {
      travel[limb] = limb_travel (figure, (SwLimb) limb);
      held[limb] = limb < (int) SW_LIMB_RIGHT_LEG && solver->keys[0].held[limb]
                   && solver->keys[solver->n_keys - 1].held[limb];
      if (!held[limb])
        free_travel = MAX (free_travel, travel[limb]);
    }
  for (int limb = 0; limb < (int) SW_N_LIMBS; limb++)
    if (held[limb] && free_travel > MOVED)
      travel[limb] = 0.0;
}

/* The limbs that the motion is about: a hand that only goes along with a knee is none of them. */
static guint
find_limbs (const SwFigure *figure)
{
  double travel[SW_N_LIMBS];
  const SwFigureContent *content = figure->solver.content;
  double most = MOVED;
  guint limbs = 0;

  switch (content->limbs)
    {
    case SW_FIGURE_LIMBS_ARMS:
      return arms;
    case SW_FIGURE_LIMBS_LEGS:
      return legs;
    case SW_FIGURE_LIMBS_ALL:
      return arms | legs;
    case SW_FIGURE_LIMBS_AUTO:
    default:
      break;
    }
  if (content->motion == SW_FIGURE_MOTION_PRESS)
    return limb_of (content->shown[0]) | limb_of (content->shown[1]);

  measure_travel (figure, travel);
  for (int limb = 0; limb < (int) SW_N_LIMBS; limb++)
    most = MAX (most, travel[limb]);
  for (int limb = 0; limb < (int) SW_N_LIMBS; limb++)
    if (travel[limb] >= WORTH * most)
      limbs |= 1u << limb;

  return limbs;
}

/* The limbs of the other side. Right and left stand in pairs. */
static guint
cross (guint limbs)
{
  return (limbs & rights) << 1 | (limbs & lefts) >> 1;
}

/**
 * sw_sides_mark_get:
 * @self: (out): the mark
 * @figure: a figure
 *
 * When the author does not say, a mark is for limbs that move alone, and for pairs that hide each other from the side.
 */
void
sw_sides_mark_get (SwSidesMark    *self,
                   const SwFigure *figure)
{
  const SwFigureContent *content = figure->solver.content;
  guint limbs = find_limbs (figure);
  gboolean pairs = limbs == cross (limbs);
  gboolean trunk = (figure->overlay.moving >> SW_PART_TRUNK & 1) != 0;
  gboolean sideways = fabs (figure->camera.toward.y) > SIDEWAYS;
  gboolean still = content->motion == SW_FIGURE_MOTION_STEPS
                   || (content->motion != SW_FIGURE_MOTION_PRESS && figure->overlay.moving == 0);

  *self = (SwSidesMark){ 0 };
  /* A head or a trunk that turns has no limbs to show. */
  if (limbs == 0)
    return;
  switch (content->sides)
    {
    case SW_FIGURE_SIDES_ALTERNATE:
      if (pairs)
        limbs &= rights;
      *self = (SwSidesMark){ 2, { limbs, cross (limbs) } };
      break;
    case SW_FIGURE_SIDES_ONE:
      *self = (SwSidesMark){ 1, { pairs ? limbs & rights : limbs, 0 } };
      break;
    case SW_FIGURE_SIDES_BOTH:
      *self = (SwSidesMark){ 1, { limbs | cross (limbs), 0 } };
      break;
    case SW_FIGURE_SIDES_NONE:
      break;
    case SW_FIGURE_SIDES_AUTO:
    default:
      if (!still && !trunk
          && ((pairs && sideways) || (limbs & cross (limbs)) == 0))
        *self = (SwSidesMark){ 1, { limbs, 0 } };
      break;
    }
  /* Seen from the same side as the picture: from behind, the body's right is on the right of the paper. */
  if (sw_dot (figure->solver.keys[0].body.pieces[SW_PIECE_PELVIS].axes.x, figure->camera.toward) < BEHIND)
    for (int i = 0; i < self->n; i++)
      self->limbs[i] = cross (self->limbs[i]);
}

/**
 * sw_figure_find_moving_limb:
 * @left: (out): whether it is one of the left side
 * @arm: (out): whether it is an arm
 *
 * Returns: whether one limb alone moves, and does not only press
 */
gboolean
sw_figure_find_moving_limb (SwFigure *self,
                            gboolean *left,
                            gboolean *arm)
{
  const SwFigureContent *content = self->solver.content;
  guint limbs = find_limbs (self);

  *left = (limbs & lefts) != 0;
  *arm = (limbs & arms) != 0;
  return content->motion != SW_FIGURE_MOTION_PRESS && content->sides != SW_FIGURE_SIDES_BOTH && limbs != 0
         && (limbs & (limbs - 1)) == 0;
}

static void
draw_limb (SwSketch  *sketch,
           gboolean  works,
           double    x1,
           double    y1,
           double    x2,
           double    y2)
{
  sw_sketch_move (sketch, x1, y1);
  sw_sketch_line (sketch, x2, y2);
  sw_sketch_set_tone (sketch, works ? 0 : 0.6);
  sw_sketch_set_width (sketch, works ? 1.9 : 0.8);
  sw_sketch_stroke (sketch);
}

/* Its right is on the left of the paper, as of one who faces the reader. */
static void
draw_person (SwSketch *sketch,
             double   x,
             double   y,
             guint    limbs)
{
  for (int works = 0; works < 2; works++)
    for (int limb = 0; limb < (int) SW_N_LIMBS; limb++)
      {
        double s = limb % 2 == (int) SW_FIGURE_LEFT ? 1 : -1;

        if ((int) (limbs >> limb & 1) != works)
          continue;
        if (limb < (int) SW_LIMB_RIGHT_LEG)
          draw_limb (sketch, works, x + s * 0.9, y - 2.3, x + s * 2.7, y + 1.2);
        else
          draw_limb (sketch, works, x + s * 0.6, y + 1.4, x + s * 1.5, y + 6.0);
      }
  draw_limb (sketch, FALSE, x, y - 2.6, x, y + 1.4);
  sw_sketch_circle (sketch, x, y - 4.6, HEAD_PT);
  sw_sketch_set_tone (sketch, 0.35);
  sw_sketch_fill (sketch);
}

/**
 * sw_sides_mark_draw:
 * @sketch: where to draw
 * @x_pt: middle
 * @y_pt: middle
 *
 * Draws the mark, SW_SIDES_MARK_PT across.
 */
void
sw_sides_mark_draw (const SwSidesMark *self,
                    SwSketch           *sketch,
                    double             x_pt,
                    double             y_pt)
{
  if (self->n == 0)
    return;

  sw_sketch_save (sketch);
  sw_sketch_new_path (sketch);
  sw_sketch_set_cap (sketch, CAIRO_LINE_CAP_ROUND);
  if (self->n == 1)
    draw_person (sketch, x_pt, y_pt, self->limbs[0]);
  else
    for (int i = 0; i < 2; i++)
      draw_person (sketch, x_pt + (i == 0 ? -APART_PT : APART_PT), y_pt, self->limbs[i]);
  sw_sketch_restore (sketch);
}
