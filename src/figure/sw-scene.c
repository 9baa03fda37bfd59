/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where the furniture stands that people hold on to, sit or stand on. All sizes are parts of stature and our own drawing;
 * a counter of 0.53 is 0.91 m for a person of 1.72 m. */
#include "config.h"

#include "sw-scene.h"

#define COUNTER_HEIGHT 0.53
#define CHAIR_TOP 0.50
#define SEAT_HEIGHT 0.265
#define PALM_GAP 0.004

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

  scene->wall_at = hips.x + 0.35;
  if (scene->wall_where == SW_FIGURE_WHERE_FRONT)
    scene->wall_at = reach_wall (pose, start);
  scene->counter_at = hips.x + 0.17;
  scene->chair_at = hips.x + 0.25;

  for (int i = 0; i < content->n_props; i++)
    {
      const SwFigurePropSpec *prop = &content->props[i];
      SwFigureWhere where = prop->where == SW_FIGURE_WHERE_AUTO ? SW_FIGURE_WHERE_FRONT : prop->where;
      double sign = where == SW_FIGURE_WHERE_RIGHT || where == SW_FIGURE_WHERE_BEHIND ? -1 : 1;
      gboolean sideways = where == SW_FIGURE_WHERE_RIGHT || where == SW_FIGURE_WHERE_LEFT;
      double middle = sideways ? hips.y : hips.x;

      if (prop->kind == SW_FIGURE_PROP_WALL)
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
