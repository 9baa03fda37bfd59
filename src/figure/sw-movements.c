/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What an exercise asks of the joints, in the movements and signs that are measured in the clinic. */
#include "config.h"

#include "sw-figure-walk.h"
#include "sw-movements.h"

/* An arm nearer to the trunk than this hangs: which way it is raised then says nothing. */
#define HANGS_DEG 12.0
/* A held arm straighter than this has no turn of its own: it may be the shoulder's or the forearm's. */
#define STRAIGHT_DEG 20.0
/* An arm whose direction leaves the frontal plane by more than this to the back is behind the body. */
#define BEHIND_DEG 30.0
/* A foot higher than the other by more than this is in the air, parts of stature. */
#define LIFTED 0.03

/* The movements that are one angle of the figure. */
static const struct
{
  SwMovement movement;
  SwAngle angle;
} plain[] = {
  { SW_MOVEMENT_KNEE_BEND, SW_ANGLE_KNEE_BEND },   { SW_MOVEMENT_HIP_BEND, SW_ANGLE_HIP_BEND },
  { SW_MOVEMENT_HIP_OUT, SW_ANGLE_HIP_OUT },       { SW_MOVEMENT_HIP_TURN_OUT, SW_ANGLE_HIP_TURN },
  { SW_MOVEMENT_ANKLE_UP, SW_ANGLE_ANKLE_UP },     { SW_MOVEMENT_ELBOW_BEND, SW_ANGLE_ELBOW_BEND },
  { SW_MOVEMENT_PALM_UP, SW_ANGLE_FOREARM_PALM_UP }, { SW_MOVEMENT_WRIST_BEND, SW_ANGLE_WRIST_BEND },
};

/* Those of back and neck: at the lower level, and at both together. */
static const struct
{
  SwMovement movement;
  SwAngle lower;
  SwAngle upper;
} levels[] = {
  { SW_MOVEMENT_BACK_BEND, SW_ANGLE_LOW_BACK_BEND, SW_ANGLE_UPPER_BACK_BEND },
  { SW_MOVEMENT_BACK_TURN, SW_ANGLE_LOW_BACK_TURN, SW_ANGLE_UPPER_BACK_TURN },
  { SW_MOVEMENT_NECK_BEND, SW_ANGLE_NECK_BEND, SW_ANGLE_HEAD_BEND },
  { SW_MOVEMENT_NECK_TURN, SW_ANGLE_NECK_TURN, SW_ANGLE_HEAD_TURN },
};

typedef struct
{
  SwMovements *movements;
  SwFigureFrame frame;
} Walk;

static void
widen (SwMovements *self,
       SwMovement   movement,
       int          side,
       double       low_deg,
       double       high_deg)
{
  double *low = &self->low_deg[movement][side];
  double *high = &self->high_deg[movement][side];

  if (!isnan (low_deg))
    *low = isnan (*low) ? low_deg : MIN (*low, low_deg);
  if (!isnan (high_deg))
    *high = isnan (*high) ? high_deg : MAX (*high, high_deg);
}

/* Of a close picture of hand or foot nothing is known of the rest of the body. */
static gboolean
is_shown (SwFigureFrame frame,
          SwMovement    movement)
{
  if (frame == SW_FIGURE_FRAME_HAND)
    return movement == SW_MOVEMENT_PALM_UP || movement == SW_MOVEMENT_WRIST_BEND;
  if (frame == SW_FIGURE_FRAME_FOOT)
    return movement == SW_MOVEMENT_ANKLE_UP;

  return TRUE;
}

/* How far the arm is from hanging; below zero behind the body, and 0 while it hangs. */
static double
get_raise (const SwSolved *solved,
           SwFigureSide    side)
{
  double raise_deg = sw_joints_get (&solved->joints, SW_ANGLE_SHOULDER_RAISE, side);
  double direction_deg = sw_joints_get (&solved->joints, SW_ANGLE_SHOULDER_DIRECTION, side);

  if (fabs (raise_deg) < HANGS_DEG)
    return 0.0;
  if (raise_deg < 0.0)
    {
      raise_deg = -raise_deg;
      direction_deg -= 180.0;
    }

  return sin (SW_RAD (direction_deg)) < -sin (SW_RAD (BEHIND_DEG)) - 1e-9 ? -raise_deg : raise_deg;
}

static gboolean
tells_turn (const SwSolved *solved,
            SwFigureSide    side)
{
  return !solved->held[SW_LIMB_RIGHT_ARM + (int) side]
         || sw_joints_get (&solved->joints, SW_ANGLE_ELBOW_BEND, side) >= STRAIGHT_DEG;
}

static void
visit_side (Walk           *walk,
            const SwSolved *solved,
            SwFigureSide    side)
{
  for (guint i = 0; i < G_N_ELEMENTS (plain); i++)
    {
      double angle_deg = sw_joints_get (&solved->joints, plain[i].angle, side);

      if (is_shown (walk->frame, plain[i].movement))
        widen (walk->movements, plain[i].movement, (int) side, angle_deg, angle_deg);
    }

  if (is_shown (walk->frame, SW_MOVEMENT_ARM_RAISE))
    {
      double raise_deg = get_raise (solved, side);

      widen (walk->movements, SW_MOVEMENT_ARM_RAISE, (int) side, raise_deg, raise_deg);
    }
  if (is_shown (walk->frame, SW_MOVEMENT_ARM_TURN_OUT) && tells_turn (solved, side))
    {
      double turn_deg = sw_joints_get (&solved->joints, SW_ANGLE_SHOULDER_TURN, side);

      widen (walk->movements, SW_MOVEMENT_ARM_TURN_OUT, (int) side, turn_deg, turn_deg);
    }
}

static void
visit_middle (Walk           *walk,
              const SwSolved *solved)
{
  for (guint i = 0; i < G_N_ELEMENTS (levels); i++)
    {
      double lower_deg = solved->joints.slots_deg[levels[i].lower];
      double all_deg = lower_deg + solved->joints.slots_deg[levels[i].upper];
      double low_deg = MIN (lower_deg, all_deg);
      double high_deg = MAX (lower_deg, all_deg);

      if (!is_shown (walk->frame, levels[i].movement))
        continue;
      if (levels[i].movement == SW_MOVEMENT_BACK_BEND || levels[i].movement == SW_MOVEMENT_NECK_BEND)
        {
          widen (walk->movements, levels[i].movement, SW_FIGURE_RIGHT, low_deg, high_deg);
          widen (walk->movements, levels[i].movement, SW_FIGURE_LEFT, low_deg, high_deg);
          continue;
        }
      /* A turn counts up to the left. */
      widen (walk->movements, levels[i].movement, SW_FIGURE_RIGHT, NAN, -low_deg);
      widen (walk->movements, levels[i].movement, SW_FIGURE_LEFT, NAN, high_deg);
    }
}

static void
visit_feet (Walk           *walk,
            const SwSolved *solved)
{
  double right = sw_part_get_lowest (&solved->body, SW_PART_FOOT);
  double left = sw_part_get_lowest (&solved->body, SW_PART_FOOT + 1);

  walk->movements->lifts_foot[SW_FIGURE_RIGHT] |= right > left + LIFTED;
  walk->movements->lifts_foot[SW_FIGURE_LEFT] |= left > right + LIFTED;
}

static void
visit (const SwSolved *solved,
       gpointer        data)
{
  visit_feet (data, solved);
  visit_side (data, solved, SW_FIGURE_RIGHT);
  visit_side (data, solved, SW_FIGURE_LEFT);
  visit_middle (data, solved);
}

/**
 * sw_movements_init:
 * @self: (out caller-allocates): gets how far each joint goes
 * @spec: (nullable): an exercise's figure, as it is drawn; without one nothing is known
 */
void
sw_movements_init (SwMovements  *self,
                   SwFigureSpec *spec)
{
  Walk walk = { .movements = self };

  self->lifts_foot[0] = self->lifts_foot[1] = FALSE;
  for (int movement = 0; movement < (int) SW_N_MOVEMENTS; movement++)
    for (int side = 0; side < 2; side++)
      self->low_deg[movement][side] = self->high_deg[movement][side] = NAN;
  if (spec == NULL)
    return;

  walk.frame = sw_figure_spec_get_content (spec)->frame;
  sw_figure_walk (spec, visit, &walk);
}

/**
 * sw_movements_mirror:
 * @self: (inout): becomes those of the other side
 */
void
sw_movements_mirror (SwMovements *self)
{
  gboolean lifts_right = self->lifts_foot[SW_FIGURE_RIGHT];

  self->lifts_foot[SW_FIGURE_RIGHT] = self->lifts_foot[SW_FIGURE_LEFT];
  self->lifts_foot[SW_FIGURE_LEFT] = lifts_right;
  for (int movement = 0; movement < (int) SW_N_MOVEMENTS; movement++)
    {
      double low_deg = self->low_deg[movement][SW_FIGURE_RIGHT];
      double high_deg = self->high_deg[movement][SW_FIGURE_RIGHT];

      self->low_deg[movement][SW_FIGURE_RIGHT] = self->low_deg[movement][SW_FIGURE_LEFT];
      self->high_deg[movement][SW_FIGURE_RIGHT] = self->high_deg[movement][SW_FIGURE_LEFT];
      self->low_deg[movement][SW_FIGURE_LEFT] = low_deg;
      self->high_deg[movement][SW_FIGURE_LEFT] = high_deg;
    }
}

/**
 * sw_movements_add:
 * @self: (inout): becomes what either goes through
 * @other: those of another way of doing it
 */
void
sw_movements_add (SwMovements       *self,
                  const SwMovements *other)
{
  self->lifts_foot[SW_FIGURE_RIGHT] |= other->lifts_foot[SW_FIGURE_RIGHT];
  self->lifts_foot[SW_FIGURE_LEFT] |= other->lifts_foot[SW_FIGURE_LEFT];
  for (int movement = 0; movement < (int) SW_N_MOVEMENTS; movement++)
    for (int side = 0; side < 2; side++)
      widen (self, (SwMovement) movement, side, other->low_deg[movement][side], other->high_deg[movement][side]);
}
