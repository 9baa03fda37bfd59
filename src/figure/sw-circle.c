/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Motions that go round. */
#include "config.h"

#include "sw-solver.h"

/* The two angles that lead a mark round: of shoulder or hip, of the ankle for toes in a close picture, of the wrist for
 * fingers, of the thumb itself. */
static void
find_circle_angles (const SwFigureContent *content,
                    SwFigureMark           mark,
                    SwAngle               *up,
                    SwAngle               *side)
{
  *up = SW_ANGLE_HIP_BEND;
  *side = SW_ANGLE_HIP_OUT;
  if (mark <= SW_FIGURE_MARK_LEFT_HAND)
    {
      *up = SW_ANGLE_SHOULDER_RAISE;
      *side = SW_ANGLE_SHOULDER_DIRECTION;
    }
  else if (content->frame == SW_FIGURE_FRAME_FOOT
           && (mark == SW_FIGURE_MARK_RIGHT_TOES || mark == SW_FIGURE_MARK_LEFT_TOES))
    {
      *up = SW_ANGLE_ANKLE_UP;
      *side = SW_ANGLE_ANKLE_IN;
    }
  else if (mark == SW_FIGURE_MARK_RIGHT_FINGERS || mark == SW_FIGURE_MARK_LEFT_FINGERS)
    {
      *up = SW_ANGLE_WRIST_BEND;
      *side = SW_ANGLE_WRIST_THUMBWARD;
    }
  else if (mark == SW_FIGURE_MARK_RIGHT_THUMB || mark == SW_FIGURE_MARK_LEFT_THUMB)
    {
      *up = SW_ANGLE_THUMB_OUT;
      *side = SW_ANGLE_THUMB_ACROSS;
    }
}

/**
 * sw_solver_circle:
 * @self: a solved figure whose motion goes round
 * @phase: 0 to 1 for once round
 * @now: (out): the pose there
 */
void
sw_solver_circle (const SwSolver *self,
                  double          phase,
                  SwSolved       *now)
{
  const SwFigureContent *content = self->content;
  double sine = sin (2 * G_PI * phase);
  double cosine = cos (2 * G_PI * phase);

  *now = self->keys[self->n_keys - 1];
  for (int i = 0; i < SW_FIGURE_MAX_SHOWN; i++)
    {
      int sided = (int) content->shown[i] - (int) SW_FIGURE_MARK_RIGHT_SHOULDER;
      SwFigureSide side = sided % 2 == 1 ? SW_FIGURE_LEFT : SW_FIGURE_RIGHT;
      SwAngle up_angle;
      SwAngle side_angle;
      double raise;
      double widen;

      if (sided < 0)
        continue;
      find_circle_angles (content, content->shown[i], &up_angle, &side_angle);
      raise = sw_joints_get (&now->joints, up_angle, side);
      widen = up_angle == SW_ANGLE_SHOULDER_RAISE ? 1.0 / MAX (0.3, fabs (sin (SW_RAD (raise)))) : 1.0;
      now->joints.slots_deg[sw_angle_get_slot (up_angle, side)] += content->radius_deg * cosine;
      now->joints.slots_deg[sw_angle_get_slot (side_angle, side)] += content->radius_deg * sine * widen;
      if (up_angle == SW_ANGLE_HIP_BEND || up_angle == SW_ANGLE_ANKLE_UP)
        sw_body_solve_leg (&now->body, &now->joints, side);
      else
        sw_body_solve_arm (&now->body, &now->joints, side);
    }
}
