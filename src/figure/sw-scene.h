/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-pose.h"

G_BEGIN_DECLS

/**
 * SwScene:
 * @wall_at: signed place of the wall's face along x (front, behind) or y (left, right)
 * @counter_at: likewise of the counter's near edge
 * @counter_height: of its top
 * @table_at: likewise of the table's near edge
 * @table_height: of its top
 * @chair_at: of the chair's back, when it stands in front or beside
 * @seat: what they sit on when they sit
 * @seat_at: x of the hips when they sit
 * @seat_height: of the seat's top
 * @chair_top: of the chair's back
 * @step_low: the step's corner with the least coordinates; it stands on the floor
 * @step_high: that with the greatest
 *
 * Where furniture stands. Measured from the start pose, fixed from then on.
 */
typedef struct
{
  SwFigureWhere wall_where;
  SwFigureWhere counter_where;
  SwFigureWhere table_where;
  SwFigureWhere chair_where;
  double wall_at;
  double counter_at;
  double counter_height;
  double table_at;
  double table_height;
  double chair_at;
  SwFigureProp seat;
  double seat_at;
  double seat_height;
  double chair_top;
  SwFigureWhere step_where;
  SwVector step_low;
  SwVector step_high;
} SwScene;

void sw_scene_measure (SwScene               *scene,
                       const SwFigureContent *content,
                       const SwPose          *pose,
                       const SwBody          *start);
double sw_scene_get_prop_height (const SwFigurePropSpec *prop);
SwLimb sw_scene_get_limb (SwFigureMark mark);
double sw_scene_get_lift (const SwFigureContent *content,
                          SwLimb                 limb);
double sw_scene_get_stand (const SwFigureContent *content,
                           const SwPose          *pose,
                           SwFigureSide           side);
double sw_scene_get_bed (const SwFigureContent *content);
double sw_scene_get_step_height (const SwFigureContent *content);
gboolean sw_scene_heels_hang (const SwFigureContent *content);

G_END_DECLS
