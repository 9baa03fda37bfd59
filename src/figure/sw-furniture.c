/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Furniture as boxes, measured from the solved start pose rather than given by hand, so that it fits whatever the pose
 * is. All sizes are our own drawing. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-furniture.h"

#define MAT_THICK 0.018
#define MAT_MARGIN 0.075
#define PLINTH_HEIGHT 0.30
#define SEAT_FRONT 0.105
#define SEAT_BACK 0.135
#define SIT_FORWARD_MOST 0.085
/* How far a thigh's lower side is below its joints, and how much of it the seat takes. */
#define THIGH_BELOW 0.050
#define THIGH_GIVES 0.020
/* Toes have room below a counter. */
#define KICK_HEIGHT 0.060
#define KICK_DEPTH 0.070
#define WALL_THICK 0.030
#define WALL_TOP 1.10
#define WALL_HALF 0.16
#define WALL_MARGIN 0.03
#define TABLE_DEPTH 0.30
#define TABLE_HALF 0.25
#define BED_DEPTH 0.46
#define BED_HALF 0.34
#define UPRIGHT_HEIGHT 1.08
#define BAND_AWAY 0.52
#define BAND_HEIGHT 0.60

static void
add_box (SwBox *boxes,
         int   *n,
         double x0,
         double x1,
         double y0,
         double y1,
         double z0,
         double z1,
         double tone)
{
  if (*n == SW_MAX_BOXES)
    return;

  boxes[(*n)++]
      = (SwBox){ { MIN (x0, x1), MIN (y0, y1), MIN (z0, z1) }, { MAX (x0, x1), MAX (y0, y1), MAX (z0, z1) }, tone };
}

/* A chair whose seat reaches from @back, where its back stands, to @front. */
static void
add_chair (SwBox *boxes,
           int   *n,
           double front,
           double back,
           double y,
           double seat,
           double top)
{
  double inward = front > back ? 1 : -1;

  for (int i = 0; i < 2; i++)
    for (int k = -1; k <= 1; k += 2)
      {
        double x = i == 0 ? front - inward * 0.022 : back;

        add_box (boxes, n, x, x + inward * 0.022, y + k * 0.112 - 0.011, y + k * 0.112 + 0.011, 0, seat - 0.024, 0.84);
      }
  add_box (boxes, n, back, front, y - 0.123, y + 0.123, seat - 0.024, seat, 0.90);
  add_box (boxes, n, back - inward * 0.004, back + inward * 0.018, y - 0.123, y + 0.123, seat + 0.10, top, 0.86);
  for (int k = -1; k <= 1; k += 2)
    add_box (boxes, n, back - inward * 0.004, back + inward * 0.018, y + k * 0.112 - 0.011, y + k * 0.112 + 0.011, seat,
             seat + 0.10, 0.86);
}

/* How much nearer to the front of the seat they sit than usual: as far as a thigh that slopes down clears its edge, and
 * elbows led back clear the chair's back. */
static double
sit_forward (const SwSolver *solver)
{
  const SwScene *scene = &solver->scene;
  double middle = solver->keys[0].body.pieces[SW_PIECE_PELVIS].at.y;
  double by = 0;

  for (int key = 0; key < solver->n_keys; key++)
    for (int side = 0; side < 2; side++)
      {
        const SwPlacement *pieces = solver->keys[key].body.pieces;
        SwVector hip = pieces[SW_SIDED (SW_PIECE_THIGH, side)].at;
        SwVector knee = pieces[SW_SIDED (SW_PIECE_SHANK, side)].at;
        SwVector elbow = pieces[SW_SIDED (SW_PIECE_FOREARM, side)].at;
        double slope = (hip.z - knee.z) / MAX (knee.x - hip.x, 0.02);
        gboolean sits = fabs (hip.z - solver->keys[0].body.pieces[SW_PIECE_PELVIS].at.z) < 0.03;

        if (!sits)
          continue;
        if (slope > 0.05)
          {
            double above = hip.z - THIGH_BELOW * sqrt (1 + slope * slope) - scene->seat_height + THIGH_GIVES;

            by = MAX (by, scene->seat_at + SEAT_FRONT - hip.x - above / slope);
          }
        if (elbow.z > scene->seat_height + 0.08 && elbow.z < scene->chair_top + 0.03 && fabs (elbow.y - middle) < 0.16)
          by = MAX (by, scene->seat_at - SEAT_BACK + 0.018 - elbow.x + 0.026);
      }
  return CLAMP (by, 0.0, SIT_FORWARD_MOST);
}

static void
add_chairs (SwBox          *boxes,
            int            *n,
            const SwSolver *solver)
{
  const SwScene *scene = &solver->scene;
  SwVector hips = solver->keys[0].body.pieces[SW_PIECE_PELVIS].at;

  /* Legs of a chair behind a hand or a foot would only be asked about. */
  if (solver->keys[0].body.fine)
    return;
  if (solver->content->poses[0].base == SW_FIGURE_BASE_SITTING && scene->seat == SW_FIGURE_PROP_CHAIR)
    {
      double at = scene->seat_at - sit_forward (solver);

      add_chair (boxes, n, at + SEAT_FRONT, at - SEAT_BACK, hips.y, scene->seat_height, scene->chair_top);
    }
  if (scene->chair_where == SW_FIGURE_WHERE_FRONT)
    add_chair (boxes, n, scene->chair_at + 0.225, scene->chair_at - 0.010, 0, scene->chair_top - 0.235,
               scene->chair_top);
  else if (scene->chair_where == SW_FIGURE_WHERE_BEHIND)
    add_chair (boxes, n, scene->chair_at, scene->chair_at - 0.24, 0, scene->chair_top - 0.235, scene->chair_top);
  else if (scene->chair_where == SW_FIGURE_WHERE_RIGHT || scene->chair_where == SW_FIGURE_WHERE_LEFT)
    {
      double y = scene->chair_at + (scene->chair_where == SW_FIGURE_WHERE_LEFT ? 0.123 : -0.123);

      add_chair (boxes, n, hips.x - 0.175, hips.x + 0.065, y, scene->chair_top - 0.235, scene->chair_top);
    }
}

static void
add_counter (SwBox         *boxes,
             int           *n,
             const SwScene *scene)
{
  double edge = scene->counter_at;
  double top = scene->counter_height;

  if (scene->counter_where == SW_FIGURE_WHERE_FRONT || scene->counter_where == SW_FIGURE_WHERE_BEHIND)
    {
      double sign = scene->counter_where == SW_FIGURE_WHERE_FRONT ? 1 : -1;

      add_box (boxes, n, edge + sign * KICK_DEPTH, edge + sign * 0.20, -0.26, 0.26, 0, KICK_HEIGHT, 0.84);
      add_box (boxes, n, edge + sign * 0.022, edge + sign * 0.20, -0.26, 0.26, KICK_HEIGHT, top - 0.026, 0.94);
      add_box (boxes, n, edge, edge + sign * 0.205, -0.28, 0.28, top - 0.026, top, 0.88);
    }
  else
    {
      double sign = scene->counter_where == SW_FIGURE_WHERE_LEFT ? 1 : -1;

      add_box (boxes, n, -0.26, 0.26, edge + sign * KICK_DEPTH, edge + sign * 0.18, 0, KICK_HEIGHT, 0.84);
      add_box (boxes, n, -0.26, 0.26, edge + sign * 0.022, edge + sign * 0.18, KICK_HEIGHT, top - 0.026, 0.94);
      add_box (boxes, n, -0.28, 0.28, edge, edge + sign * 0.185, top - 0.026, top, 0.88);
    }
}

/* A table shows its legs. */
static void
add_table (SwBox         *boxes,
           int           *n,
           const SwScene *scene)
{
  gboolean ahead = scene->table_where == SW_FIGURE_WHERE_FRONT || scene->table_where == SW_FIGURE_WHERE_BEHIND;
  double sign = scene->table_where == SW_FIGURE_WHERE_FRONT || scene->table_where == SW_FIGURE_WHERE_LEFT ? 1 : -1;
  double near = scene->table_at;
  double far = near + sign * TABLE_DEPTH;
  double top = scene->table_height;

  for (int i = 0; i < 4; i++)
    {
      double a = i < 2 ? near + sign * 0.016 : far - sign * 0.038;
      double b = i % 2 == 0 ? -TABLE_HALF + 0.016 : TABLE_HALF - 0.038;

      if (ahead)
        add_box (boxes, n, a, a + sign * 0.022, b, b + 0.022, 0, top - 0.024, 0.84);
      else
        add_box (boxes, n, b, b + 0.022, a, a + sign * 0.022, 0, top - 0.024, 0.84);
    }
  if (ahead)
    add_box (boxes, n, near, far, -TABLE_HALF, TABLE_HALF, top - 0.024, top, 0.90);
  else
    add_box (boxes, n, -TABLE_HALF, TABLE_HALF, near, far, top - 0.024, top, 0.90);
}

/* The edge of a bed that somebody sits on. */
static void
add_bed (SwBox         *boxes,
         int           *n,
         const SwScene *scene,
         double         y)
{
  double front = scene->seat_at + 0.10;
  double back = front - BED_DEPTH;

  for (int i = 0; i < 4; i++)
    {
      double x = i < 2 ? front - 0.045 : back + 0.015;
      double side = i % 2 == 0 ? y - BED_HALF + 0.015 : y + BED_HALF - 0.045;

      add_box (boxes, n, x, x + 0.03, side, side + 0.03, 0, scene->seat_height - 0.085, 0.84);
    }
  add_box (boxes, n, back, front, y - BED_HALF, y + BED_HALF, scene->seat_height - 0.085, scene->seat_height - 0.055,
           0.84);
  add_box (boxes, n, back + 0.006, front - 0.004, y - BED_HALF + 0.006, y + BED_HALF - 0.006,
           scene->seat_height - 0.055, scene->seat_height, 0.97);
}

/* The upright of a cable pulley. */
static void
add_upright (SwBox    *boxes,
             int      *n,
             SwVector  pulley,
             SwVector  hips)
{
  SwVector away = sw_unit (sw_vector (pulley.x - hips.x, pulley.y - hips.y, 0), sw_vector (1, 0, 0));
  SwVector at = sw_add (pulley, sw_scale (away, 0.045));

  add_box (boxes, n, at.x - 0.07, at.x + 0.07, at.y - 0.07, at.y + 0.07, 0, 0.020, 0.84);
  add_box (boxes, n, at.x - 0.020, at.x + 0.020, at.y - 0.020, at.y + 0.020, 0.020, UPRIGHT_HEIGHT, 0.86);
}

/* A wall ends above the highest hand and is wider than the arms reach along it. */
static void
add_wall (SwBox          *boxes,
          int            *n,
          const SwSolver *solver)
{
  SwFigureWhere where = solver->scene.wall_where;
  double at = solver->scene.wall_at;
  double top = WALL_TOP;
  double sign = where == SW_FIGURE_WHERE_FRONT || where == SW_FIGURE_WHERE_LEFT ? 1 : -1;
  gboolean across = where == SW_FIGURE_WHERE_FRONT || where == SW_FIGURE_WHERE_BEHIND;
  double half = WALL_HALF;

  for (int key = 0; key < solver->n_keys; key++)
    for (int side = 0; side < 2; side++)
      {
        SwVector tips
            = sw_place (solver->keys[key].body.pieces[SW_SIDED (SW_PIECE_HAND, side)], sw_vector (0, 0, -0.13));

        top = MAX (top, tips.z);
        half = MAX (half, fabs (across ? tips.y : tips.x) + WALL_MARGIN);
      }

  if (across)
    add_box (boxes, n, at, at + sign * WALL_THICK, -half, half, 0, top, 0.90);
  else
    add_box (boxes, n, -half, half, at, at + sign * WALL_THICK, 0, top, 0.90);
}

/* A block lies under a hand or foot where the start has it, otherwise under a part of the body. */
static void
add_block (SwBox                  *boxes,
           int                    *n,
           const SwSolver         *solver,
           const SwFigurePropSpec *prop)
{
  const SwBody *body = &solver->keys[0].body;
  SwLimb limb = sw_scene_get_limb (prop->under);
  SwVector at = sw_body_get_mark (body, prop->under);
  double height = sw_scene_get_prop_height (prop);
  double half_x = 0.067;
  double half_y = 0.045;

  if (prop->where == SW_FIGURE_WHERE_UNDER)
    {
      at = sw_mix (sw_body_get_ball (body, SW_FIGURE_RIGHT), sw_body_get_ball (body, SW_FIGURE_LEFT), 0.5);
      at.x -= 0.025;
      half_x = 0.10;
      half_y = 0.13;
    }
  else if (limb >= SW_LIMB_RIGHT_LEG && limb < SW_N_LIMBS)
    {
      SwFigureSide side = (SwFigureSide) (limb % 2);

      at = sw_mix (sw_body_get_ball (body, side), body->pieces[SW_SIDED (SW_PIECE_FOOT, side)].at, 0.4);
      half_x = 0.085;
    }
  add_box (boxes, n, at.x - half_x, at.x + half_x, at.y - half_y, at.y + half_y, 0, height, 0.92);
}

static void
add_mat (SwBox          *boxes,
         int            *n,
         const SwSolver *solver,
         const SwGround *ground)
{
  double height = 0;

  for (int i = 0; i < solver->content->n_props; i++)
    if (solver->content->props[i].kind == SW_FIGURE_PROP_PLINTH)
      height = isnan (solver->content->props[i].height) ? PLINTH_HEIGHT : solver->content->props[i].height;

  if (height > 0)
    for (int i = 0; i < 2; i++)
      for (int k = 0; k < 2; k++)
        {
          double x = i == 0 ? ground->low.x + 0.03 : ground->high.x - 0.06;
          double y = k == 0 ? ground->low.y + 0.03 : ground->high.y - 0.06;

          add_box (boxes, n, x, x + 0.03, y, y + 0.03, -height, -0.045, 0.84);
        }
  add_box (boxes, n, ground->low.x, ground->high.x, ground->low.y, ground->high.y, height > 0 ? -0.045 : -MAT_THICK,
           0, 0.96);
}

/**
 * sw_ground_measure:
 * @ground: (out): how far the mat or the floor has to reach
 * @solver: a solved figure
 */
void
sw_ground_measure (SwGround       *ground,
                   const SwSolver *solver)
{
  static const SwFigureMark marks[]
      = { SW_FIGURE_MARK_HIPS,           SW_FIGURE_MARK_UPPER_BACK,    SW_FIGURE_MARK_HEAD,
          SW_FIGURE_MARK_RIGHT_SHOULDER, SW_FIGURE_MARK_LEFT_SHOULDER, SW_FIGURE_MARK_RIGHT_KNEE,
          SW_FIGURE_MARK_LEFT_KNEE,      SW_FIGURE_MARK_RIGHT_HEEL,    SW_FIGURE_MARK_LEFT_HEEL,
          SW_FIGURE_MARK_RIGHT_TOES,     SW_FIGURE_MARK_LEFT_TOES };
  double margin = solver->base->on_mat ? MAT_MARGIN : 0.05;
  gboolean any = FALSE;

  *ground = (SwGround){ { 0, 0, 0 }, { 0, 0, 0 } };
  for (int key = 0; key < solver->n_keys; key++)
    for (gsize i = 0; i < G_N_ELEMENTS (marks) + 2; i++)
      {
        const SwBody *body = &solver->keys[key].body;
        SwVector at;

        /* Hands only where they stand on the floor. */
        if (i >= G_N_ELEMENTS (marks))
          {
            at = sw_place (body->pieces[SW_SIDED (SW_PIECE_HAND, i - G_N_ELEMENTS (marks))], sw_vector (0, 0, -0.06));
            if (at.z > 0.06 + sw_scene_get_lift (solver->content, (SwLimb) (i - G_N_ELEMENTS (marks)))
                || solver->content->poses[0].base == SW_FIGURE_BASE_SIDE_LYING)
              continue;
          }
        else
          at = sw_body_get_mark (body, marks[i]);
        if (at.z > 0.34 && any)
          continue;

        if (!any)
          ground->low = ground->high = at;
        any = TRUE;
        ground->low = sw_vector (MIN (ground->low.x, at.x), MIN (ground->low.y, at.y), 0);
        ground->high = sw_vector (MAX (ground->high.x, at.x), MAX (ground->high.y, at.y), 0);
      }

  ground->low = sw_sub (ground->low, sw_vector (margin, margin, 0));
  ground->high = sw_add (ground->high, sw_vector (margin, margin, 0));
}

/**
 * sw_band_get_fixed_end:
 * @solver: a solved figure
 * @prop: which of its props, a band
 * @body: the body that holds it
 *
 * Returns: where the band's other end is
 */
SwVector
sw_band_get_fixed_end (const SwSolver *solver,
                       int             prop,
                       const SwBody   *body)
{
  const SwFigurePropSpec *band = &solver->content->props[prop];
  SwVector hips = solver->keys[0].body.pieces[SW_PIECE_PELVIS].at;
  double away = isnan (band->distance) ? BAND_AWAY : band->distance;
  double height = isnan (band->height) ? BAND_HEIGHT : band->height;

  if (band->from != SW_FIGURE_MARK_NONE)
    return sw_body_get_mark (body, band->from);

  switch (band->where)
    {
    case SW_FIGURE_WHERE_BEHIND:
      return sw_vector (hips.x - away, 0, height);
    case SW_FIGURE_WHERE_RIGHT:
      return sw_vector (hips.x, -away, height);
    case SW_FIGURE_WHERE_LEFT:
      return sw_vector (hips.x, away, height);
    case SW_FIGURE_WHERE_UNDER:
      return sw_vector (hips.x, 0, 0.01);
    case SW_FIGURE_WHERE_AUTO:
    case SW_FIGURE_WHERE_FRONT:
    default:
      return sw_vector (hips.x + away, 0, height);
    }
}

/* Names the boxes that have no name yet. */
static void
name_boxes (SwBox      *boxes,
            int         n,
            const char *name)
{
  for (int i = 0; i < n; i++)
    if (boxes[i].name == NULL)
      boxes[i].name = name;
}

/**
 * sw_furniture_get_boxes:
 * @solver: a solved figure
 * @ground: how far the mat reaches
 * @boxes: (out): the furniture
 *
 * Returns: how many boxes there are
 */
int
sw_furniture_get_boxes (const SwSolver *solver,
                        const SwGround *ground,
                        SwBox           boxes[SW_MAX_BOXES])
{
  const SwFigureContent *content = solver->content;
  gboolean posted = FALSE;
  int n = 0;

  if (solver->base->on_mat)
    add_mat (boxes, &n, solver, ground);
  name_boxes (boxes, n, N_ ("mat"));
  add_chairs (boxes, &n, solver);
  name_boxes (boxes, n, N_ ("chair"));
  if (solver->scene.counter_where != SW_FIGURE_WHERE_AUTO)
    add_counter (boxes, &n, &solver->scene);
  name_boxes (boxes, n, N_ ("counter"));
  if (solver->scene.table_where != SW_FIGURE_WHERE_AUTO)
    add_table (boxes, &n, &solver->scene);
  name_boxes (boxes, n, N_ ("table"));
  if (solver->content->poses[0].base == SW_FIGURE_BASE_SITTING && solver->scene.seat == SW_FIGURE_PROP_PLINTH)
    add_bed (boxes, &n, &solver->scene, solver->keys[0].body.pieces[SW_PIECE_PELVIS].at.y);
  name_boxes (boxes, n, N_ ("bed"));
  if (solver->scene.wall_where != SW_FIGURE_WHERE_AUTO)
    add_wall (boxes, &n, solver);
  name_boxes (boxes, n, N_ ("wall"));

  if (solver->scene.step_where != SW_FIGURE_WHERE_AUTO)
    {
      SwVector low = solver->scene.step_low;
      SwVector high = solver->scene.step_high;

      add_box (boxes, &n, low.x, high.x, low.y, high.y, low.z, high.z, 0.92);
    }
  name_boxes (boxes, n, N_ ("step"));

  for (int i = 0; i < content->n_props; i++)
    {
      const SwFigurePropSpec *prop = &content->props[i];
      SwVector hips = solver->keys[0].body.pieces[SW_PIECE_PELVIS].at;

      if (prop->kind == SW_FIGURE_PROP_CABLE && !posted)
        {
          add_upright (boxes, &n, sw_band_get_fixed_end (solver, i, &solver->keys[0].body), hips);
          posted = TRUE;
        }
      if (prop->kind == SW_FIGURE_PROP_BLOCK)
        {
          name_boxes (boxes, n, N_ ("post"));
          add_block (boxes, &n, solver, prop);
          name_boxes (boxes, n, N_ ("block"));
        }
      /* What the band is fixed to: a post, unless it is held at both ends or a wall stands there. */
      if ((prop->kind == SW_FIGURE_PROP_BAND || prop->kind == SW_FIGURE_PROP_LOOP) && prop->from == SW_FIGURE_MARK_NONE && prop->where != SW_FIGURE_WHERE_UNDER
          && solver->scene.wall_where == SW_FIGURE_WHERE_AUTO && !posted)
        {
          SwVector at = sw_band_get_fixed_end (solver, i, &solver->keys[0].body);
          gboolean sideways = prop->where == SW_FIGURE_WHERE_RIGHT || prop->where == SW_FIGURE_WHERE_LEFT;
          double sx = sideways ? 0 : at.x > hips.x ? 0.015 : -0.015;
          double sy = sideways ? copysign (0.015, at.y) : 0;

          add_box (boxes, &n, at.x + sx - 0.015, at.x + sx + 0.015, at.y + sy - 0.015, at.y + sy + 0.015, 0, 0.95,
                   0.86);
          posted = TRUE;
        }
    }

  name_boxes (boxes, n, N_ ("post"));

  return n;
}
