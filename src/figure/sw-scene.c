/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where the furniture stands that people hold on to, sit or stand on. All sizes are parts of stature and our own drawing;
 * a counter of 0.53 is 0.91 m for a person of 1.72 m. */
#include "config.h"

#include "sw-scene.h"

#define COUNTER_HEIGHT 0.53
#define CHAIR_TOP 0.50
#define TABLE_HEIGHT 0.43
/* How far below the shoulder a table is on which forearms rest at ease. */
#define TABLE_BELOW_SHOULDER 0.192
#define SEAT_HEIGHT 0.265
#define PALM_GAP 0.004
#define STEP_HEIGHT 0.10
#define STEP_DEPTH 0.24
#define STEP_HALF_WIDTH 0.17
#define BLOCK_HEIGHT 0.060
#define ROLLER_HEIGHT 0.086
#define CUSHION_HEIGHT 0.036
#define SMALL_BALL_HEIGHT 0.040
#define BIG_BALL_HEIGHT 0.32
/* A step's back edge this far behind the hips still has the heels on it. */
#define HEELS_ON (-0.035)

static gboolean
holds_to (const SwPose  *pose,
          SwFigurePlace  to)
{
  return (pose->pinned[SW_LIMB_RIGHT_ARM] && pose->pins[SW_LIMB_RIGHT_ARM].to == to)
         || (pose->pinned[SW_LIMB_LEFT_ARM] && pose->pins[SW_LIMB_LEFT_ARM].to == to);
}

/* How far ahead the wall must be for the hands that lean on it. */
static double
reach_wall (const SwPose *pose,
            const SwBody *body)
{
  double wall = -G_MAXDOUBLE;

  for (int side = 0; side < 2; side++)
    {
      double shoulder = body->pieces[SW_SIDED (SW_PIECE_UPPER_ARM, side)].at.x;

      if (!pose->pinned[side] || pose->pins[side].to != SW_FIGURE_PLACE_WALL)
        continue;
      if (pose->pins[side].limb == SW_FIGURE_LIMB_FOREARM)
        wall = MAX (wall, shoulder + SW_UPPER_ARM + 0.022);
      else if (pose->own_arm[side])
        wall = MAX (wall, body->pieces[SW_SIDED (SW_PIECE_HAND, side)].at.x + 0.016 + PALM_GAP);
      else
        wall = MAX (wall, shoulder + 0.30);
    }

  return wall;
}

/**
 * sw_scene_get_prop_height:
 * @prop: a thing one can stand or lie on
 *
 * Returns: its height, parts of stature
 */
double
sw_scene_get_prop_height (const SwFigurePropSpec *prop)
{
  if (!isnan (prop->height))
    return prop->height;

  switch (prop->kind)
    {
    case SW_FIGURE_PROP_STEP:
      return STEP_HEIGHT;
    case SW_FIGURE_PROP_BLOCK:
      return BLOCK_HEIGHT;
    case SW_FIGURE_PROP_ROLLER:
      return ROLLER_HEIGHT;
    case SW_FIGURE_PROP_CUSHION:
      return CUSHION_HEIGHT;
    case SW_FIGURE_PROP_BALL:
      return prop->where == SW_FIGURE_WHERE_UNDER ? BIG_BALL_HEIGHT : SMALL_BALL_HEIGHT;
    default:
      return 0.0;
    }
}

/**
 * sw_scene_get_limb:
 * @mark: a place on the body
 *
 * Returns: the limb whose hand or foot that is, SW_N_LIMBS for any other place
 */
SwLimb
sw_scene_get_limb (SwFigureMark mark)
{
  int side = ((int) mark - (int) SW_FIGURE_MARK_RIGHT_SHOULDER) % 2;

  switch (mark)
    {
    case SW_FIGURE_MARK_RIGHT_HAND:
    case SW_FIGURE_MARK_LEFT_HAND:
      return (SwLimb) ((int) SW_LIMB_RIGHT_ARM + side);
    case SW_FIGURE_MARK_RIGHT_FOOT:
    case SW_FIGURE_MARK_LEFT_FOOT:
    case SW_FIGURE_MARK_RIGHT_HEEL:
    case SW_FIGURE_MARK_LEFT_HEEL:
    case SW_FIGURE_MARK_RIGHT_TOES:
    case SW_FIGURE_MARK_LEFT_TOES:
      return (SwLimb) ((int) SW_LIMB_RIGHT_LEG + side);
    default:
      return SW_N_LIMBS;
    }
}

/**
 * sw_scene_get_lift:
 * @content: a figure
 * @limb: a hand or foot
 *
 * Returns: the height of what lies under that very limb, parts of stature; 0 for the bare floor
 */
double
sw_scene_get_lift (const SwFigureContent *content,
                   SwLimb                 limb)
{
  for (int i = 0; i < content->n_props; i++)
    if (sw_scene_get_limb (content->props[i].under) == limb)
      return sw_scene_get_prop_height (&content->props[i]);

  return 0.0;
}

/**
 * sw_scene_get_bed:
 * @content: a figure
 *
 * Returns: the height of what the trunk lies on: a roller lengthways, or 0
 */
double
sw_scene_get_bed (const SwFigureContent *content)
{
  gboolean on_back = content->poses[0].base == SW_FIGURE_BASE_ON_BACK || content->poses[0].base == SW_FIGURE_BASE_ON_BACK_KNEES_BENT;

  for (int i = 0; i < content->n_props && on_back; i++)
    if (content->props[i].kind == SW_FIGURE_PROP_ROLLER && content->props[i].where == SW_FIGURE_WHERE_UNDER)
      return sw_scene_get_prop_height (&content->props[i]);

  return 0.0;
}

static const SwFigurePropSpec *
find_step (const SwFigureContent *content)
{
  for (int i = 0; i < content->n_props; i++)
    if (content->props[i].kind == SW_FIGURE_PROP_STEP && content->props[i].under == SW_FIGURE_MARK_NONE)
      return &content->props[i];

  return NULL;
}

/**
 * sw_scene_get_step_height:
 * @content: a figure
 *
 * Returns: the height of its step
 */
double
sw_scene_get_step_height (const SwFigureContent *content)
{
  const SwFigurePropSpec *step = find_step (content);

  return step != NULL ? sw_scene_get_prop_height (step) : STEP_HEIGHT;
}

/**
 * sw_scene_heels_hang:
 * @content: a figure
 *
 * Returns: whether the feet stand on the edge of a step with the heels beyond it
 */
gboolean
sw_scene_heels_hang (const SwFigureContent *content)
{
  const SwFigurePropSpec *step = find_step (content);

  return step != NULL && step->where == SW_FIGURE_WHERE_UNDER && !isnan (step->distance) && step->distance > HEELS_ON;
}

/**
 * sw_scene_get_stand:
 * @content: a figure
 * @pose: one of its poses
 * @side: of the foot
 *
 * Returns: the height of what the foot stands on in that pose
 */
double
sw_scene_get_stand (const SwFigureContent *content,
                    const SwPose          *pose,
                    SwFigureSide           side)
{
  SwLimb limb = (SwLimb) ((int) SW_LIMB_RIGHT_LEG + (int) side);
  double lift = sw_scene_get_lift (content, limb);
  gboolean lies = content->poses[0].base == SW_FIGURE_BASE_ON_BACK
                  || content->poses[0].base == SW_FIGURE_BASE_ON_BACK_KNEES_BENT;
  gboolean on_floor = pose->pinned[limb] && pose->pins[limb].to == SW_FIGURE_PLACE_FLOOR;

  if (pose->pinned[limb] && pose->pins[limb].to == SW_FIGURE_PLACE_STEP)
    return sw_scene_get_step_height (content);
  if (lift > 0)
    return lift;

  for (int i = 0; i < content->n_props; i++)
    if (content->props[i].where == SW_FIGURE_WHERE_UNDER
        && (on_floor ? content->props[i].kind == SW_FIGURE_PROP_BALL && lies
                     : content->poses[0].base == SW_FIGURE_BASE_STANDING))
      lift = MAX (lift, sw_scene_get_prop_height (&content->props[i]));

  return lift;
}

/* Whether the author says how far away the wall is. */
static gboolean
has_distant_wall (const SwFigureContent *content)
{
  for (int i = 0; i < content->n_props; i++)
    if (content->props[i].kind == SW_FIGURE_PROP_WALL && !isnan (content->props[i].distance))
      return TRUE;

  return FALSE;
}

/* Whether the back leans on a ball on the wall. */
static gboolean
has_ball_behind (const SwFigureContent *content)
{
  for (int i = 0; i < content->n_props; i++)
    if (content->props[i].kind == SW_FIGURE_PROP_BALL && content->props[i].where == SW_FIGURE_WHERE_BEHIND)
      return TRUE;

  return FALSE;
}

static void
measure_step (SwScene                *scene,
              const SwFigurePropSpec *step,
              const SwPose           *pose,
              const SwBody           *start)
{
  SwVector hips = start->pieces[SW_PIECE_PELVIS].at;
  SwFigureWhere where = step->where == SW_FIGURE_WHERE_AUTO ? SW_FIGURE_WHERE_FRONT : step->where;
  double near = isnan (step->distance) ? 0.12 : step->distance;

  scene->step_where = where;
  scene->step_low = sw_vector (hips.x + near, hips.y - STEP_HALF_WIDTH, 0);
  if (where == SW_FIGURE_WHERE_UNDER)
    scene->step_low.x = hips.x + (isnan (step->distance) ? -0.08 : step->distance);
  else if (where == SW_FIGURE_WHERE_BEHIND)
    scene->step_low.x = hips.x - near - STEP_DEPTH;
  else if (where == SW_FIGURE_WHERE_FRONT && isnan (step->distance) && holds_to (pose, SW_FIGURE_PLACE_STEP))
    scene->step_low.x = start->pieces[SW_PIECE_UPPER_ARM].at.x - 0.05;
  scene->step_high = sw_add (scene->step_low, sw_vector (STEP_DEPTH, 2 * STEP_HALF_WIDTH, sw_scene_get_prop_height (step)));
  if (where == SW_FIGURE_WHERE_RIGHT || where == SW_FIGURE_WHERE_LEFT)
    {
      double sign = where == SW_FIGURE_WHERE_LEFT ? 1 : -1;
      double edge = hips.y + sign * (isnan (step->distance) ? 0.10 : step->distance);

      scene->step_low = sw_vector (hips.x - 0.12, MIN (edge, edge + sign * STEP_DEPTH), 0);
      scene->step_high = sw_vector (hips.x + 0.18, MAX (edge, edge + sign * STEP_DEPTH), sw_scene_get_prop_height (step));
    }
}

/**
 * sw_scene_measure:
 * @scene: (out): where furniture stands
 * @content: the figure
 * @pose: its start pose
 * @start: the body in it, before the limbs are held
 */
void
sw_scene_measure (SwScene               *scene,
                  const SwFigureContent *content,
                  const SwPose          *pose,
                  const SwBody          *start)
{
  SwVector hips = start->pieces[SW_PIECE_PELVIS].at;
  SwBlob seat = { SW_PIECE_PELVIS, { -0.012, 0, 0.022 }, { 0.066, 0.096, 0.062 } };
  gboolean sits = content->poses[0].base == SW_FIGURE_BASE_SITTING;

  *scene = (SwScene){ .counter_height = COUNTER_HEIGHT,
                      .seat_height = sits ? sw_blob_get_lowest (start, &seat) : SEAT_HEIGHT,
                      .seat_at = hips.x,
                      .chair_top = sits ? sw_blob_get_lowest (start, &seat) + 0.235 : CHAIR_TOP };
  scene->chair_where = sits ? SW_FIGURE_WHERE_UNDER : SW_FIGURE_WHERE_AUTO;
  if (holds_to (pose, SW_FIGURE_PLACE_CHAIR_BACK))
    scene->chair_where = SW_FIGURE_WHERE_FRONT;
  if (holds_to (pose, SW_FIGURE_PLACE_COUNTER))
    scene->counter_where = SW_FIGURE_WHERE_FRONT;
  if (holds_to (pose, SW_FIGURE_PLACE_WALL))
    scene->wall_where = SW_FIGURE_WHERE_FRONT;

  scene->seat = SW_FIGURE_PROP_CHAIR;
  for (int i = 0; i < content->n_props && sits; i++)
    if (content->props[i].where == SW_FIGURE_WHERE_UNDER
        && (content->props[i].kind == SW_FIGURE_PROP_BALL || content->props[i].kind == SW_FIGURE_PROP_PLINTH))
      scene->seat = content->props[i].kind;

  scene->wall_at = hips.x + 0.35;
  if (scene->wall_where == SW_FIGURE_WHERE_FRONT)
    scene->wall_at = reach_wall (pose, start);
  scene->counter_at = hips.x + 0.17;
  scene->chair_at = hips.x + 0.25;
  scene->table_where = holds_to (pose, SW_FIGURE_PLACE_TABLE) ? SW_FIGURE_WHERE_FRONT : SW_FIGURE_WHERE_AUTO;
  scene->table_at = hips.x + 0.115;
  scene->table_height = sits ? start->pieces[SW_PIECE_UPPER_ARM].at.z - TABLE_BELOW_SHOULDER : TABLE_HEIGHT;
  if (find_step (content) != NULL)
    measure_step (scene, find_step (content), pose, start);

  for (int i = 0; i < content->n_props; i++)
    {
      const SwFigurePropSpec *prop = &content->props[i];
      SwFigureWhere where = prop->where == SW_FIGURE_WHERE_AUTO ? SW_FIGURE_WHERE_FRONT : prop->where;
      double sign = where == SW_FIGURE_WHERE_RIGHT || where == SW_FIGURE_WHERE_BEHIND ? -1 : 1;
      gboolean sideways = where == SW_FIGURE_WHERE_RIGHT || where == SW_FIGURE_WHERE_LEFT;
      double middle = sideways ? hips.y : hips.x;

      if (prop->kind == SW_FIGURE_PROP_BALL && where == SW_FIGURE_WHERE_BEHIND)
        {
          scene->wall_where = where;
          if (!has_distant_wall (content))
            scene->wall_at = sw_body_get_mark (start, SW_FIGURE_MARK_LOW_BACK).x + 0.012
                             - (isnan (prop->height) ? BIG_BALL_HEIGHT : prop->height);
        }
      else if (prop->kind == SW_FIGURE_PROP_WALL && where == SW_FIGURE_WHERE_BEHIND && has_ball_behind (content)
               && isnan (prop->distance))
        continue;
      else if (prop->kind == SW_FIGURE_PROP_WALL)
        {
          scene->wall_where = where;
          if (!isnan (prop->distance))
            scene->wall_at = middle + sign * prop->distance;
          else if (where != SW_FIGURE_WHERE_FRONT)
            scene->wall_at = middle + sign * (sideways ? 0.24 : 0.09);
        }
      else if (prop->kind == SW_FIGURE_PROP_COUNTER)
        {
          scene->counter_where = where;
          if (!isnan (prop->height))
            scene->counter_height = prop->height;
          scene->counter_at = middle + sign * (!isnan (prop->distance) ? prop->distance : sideways ? 0.15 : 0.17);
        }
      else if (prop->kind == SW_FIGURE_PROP_TABLE)
        {
          scene->table_where = where;
          if (!isnan (prop->height))
            scene->table_height = prop->height;
          scene->table_at = middle + sign * (!isnan (prop->distance) ? prop->distance : sideways ? 0.15 : 0.115);
        }
      else if (prop->kind == SW_FIGURE_PROP_CHAIR && prop->where != SW_FIGURE_WHERE_UNDER
               && !(sits && prop->where == SW_FIGURE_WHERE_AUTO))
        {
          scene->chair_where = where;
          scene->chair_at = middle + sign * (!isnan (prop->distance) ? prop->distance : sideways ? 0.17 : 0.25);
          if (!isnan (prop->height))
            scene->chair_top = prop->height;
        }
    }
}
