/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the base poses are, and how a figure's poses build on them. */
#include "config.h"

#include "sw-pose.h"

#define BIT(part) (1u << (part))
#define FEET (BIT (SW_PART_FOOT) | BIT (SW_PART_FOOT + 1))
#define SHANKS (BIT (SW_PART_SHANK) | BIT (SW_PART_SHANK + 1))
#define THIGHS (BIT (SW_PART_THIGH) | BIT (SW_PART_THIGH + 1))
#define TRUNK BIT (SW_PART_TRUNK)

static const SwBaseInfo base_infos[] = {
  [SW_FIGURE_BASE_STANDING] = { SW_FIGURE_ANCHOR_FEET, FEET, FALSE, FALSE, -90, 0 },
  [SW_FIGURE_BASE_SITTING] = { SW_FIGURE_ANCHOR_HIPS, FEET, FALSE, FALSE, -90, 0 },
  [SW_FIGURE_BASE_ON_BACK] = { SW_FIGURE_ANCHOR_HIPS, TRUNK, FALSE, TRUE, -90, 0 },
  [SW_FIGURE_BASE_ON_BACK_KNEES_BENT]
  = { SW_FIGURE_ANCHOR_HIPS, TRUNK, FALSE, TRUE, -90, 0 },
  [SW_FIGURE_BASE_FACE_DOWN] = { SW_FIGURE_ANCHOR_HIPS, TRUNK | THIGHS, FALSE, TRUE, -90, 0 },
  [SW_FIGURE_BASE_SIDE_LYING] = { SW_FIGURE_ANCHOR_HIPS, TRUNK, FALSE, TRUE, 6, 12 },
  [SW_FIGURE_BASE_HANDS_AND_KNEES]
  = { SW_FIGURE_ANCHOR_KNEES, SHANKS | FEET, TRUE, TRUE, -90, 0 },
  [SW_FIGURE_BASE_KNEELING] = { SW_FIGURE_ANCHOR_KNEES, SHANKS | FEET, FALSE, TRUE, -90, 0 },
  [SW_FIGURE_BASE_HALF_KNEELING]
  = { SW_FIGURE_ANCHOR_KNEES, SHANKS | FEET, FALSE, TRUE, -90, 0 },
  [SW_FIGURE_BASE_ON_FOREARMS]
  = { SW_FIGURE_ANCHOR_HIPS, TRUNK | THIGHS, FALSE, TRUE, -90, 0 },
  [SW_FIGURE_BASE_PLANK] = { SW_FIGURE_ANCHOR_FEET, FEET, TRUE, TRUE, -90, 0 },
  [SW_FIGURE_BASE_FLOOR_SITTING]
  = { SW_FIGURE_ANCHOR_HIPS, TRUNK | THIGHS | SHANKS | FEET, FALSE, TRUE, -90, 0 },
  [SW_FIGURE_BASE_SIDE_PLANK] = { SW_FIGURE_ANCHOR_FEET, SHANKS | FEET, TRUE, TRUE, 24, 12 },
};

static void
set_both (SwPose  *pose,
          SwAngle  angle,
          double   deg)
{
  sw_joints_set (&pose->joints, angle, SW_FIGURE_RIGHT, deg);
  sw_joints_set (&pose->joints, angle, SW_FIGURE_LEFT, deg);
}

static void
set_spine (SwPose  *pose,
           SwAngle  angle,
           double   deg)
{
  pose->joints.slots_deg[angle] = deg;
}

static void
pin (SwPose        *pose,
     SwLimb         limb,
     SwFigurePlace  to)
{
  pose->pinned[limb] = TRUE;
  pose->pins[limb] = (SwFigurePin){ .limb = limb < SW_LIMB_RIGHT_LEG ? SW_FIGURE_LIMB_HAND : SW_FIGURE_LIMB_FOOT,
                                    .side = (SwFigureSide) (limb % 2),
                                    .to = to };
}

static void
level_feet (SwPose *pose)
{
  pose->level[0] = pose->level[1] = TRUE;
}

static void
stand (SwPose *pose)
{
  set_both (pose, SW_ANGLE_SHOULDER_RAISE, 6);
  set_both (pose, SW_ANGLE_SHOULDER_DIRECTION, 30);
  set_both (pose, SW_ANGLE_ELBOW_BEND, 10);
  set_both (pose, SW_ANGLE_HIP_OUT, 2);
  level_feet (pose);
}

static void
sit (SwPose *pose)
{
  set_both (pose, SW_ANGLE_SHOULDER_RAISE, 8);
  set_both (pose, SW_ANGLE_SHOULDER_DIRECTION, 60);
  set_both (pose, SW_ANGLE_ELBOW_BEND, 45);
  set_both (pose, SW_ANGLE_HIP_BEND, 88);
  set_both (pose, SW_ANGLE_HIP_OUT, 5);
  set_both (pose, SW_ANGLE_KNEE_BEND, 88);
  level_feet (pose);
  pin (pose, SW_LIMB_RIGHT_ARM, SW_FIGURE_PLACE_THIGH);
  pin (pose, SW_LIMB_LEFT_ARM, SW_FIGURE_PLACE_THIGH);
  pin (pose, SW_LIMB_RIGHT_LEG, SW_FIGURE_PLACE_START);
  pin (pose, SW_LIMB_LEFT_LEG, SW_FIGURE_PLACE_START);
}

static void
lie_on_back (SwPose   *pose,
             gboolean  knees_bent)
{
  pose->joints.root_deg[SW_FIGURE_ROOT_LEAN] = -90;
  set_both (pose, SW_ANGLE_SHOULDER_RAISE, -11);
  set_both (pose, SW_ANGLE_SHOULDER_DIRECTION, 130);
  set_both (pose, SW_ANGLE_ELBOW_BEND, 9);
  set_both (pose, SW_ANGLE_FOREARM_PALM_UP, -70);
  set_spine (pose, SW_ANGLE_NECK_BEND, -4);
  set_both (pose, SW_ANGLE_HIP_TURN, 6);
  pin (pose, SW_LIMB_RIGHT_ARM, SW_FIGURE_PLACE_START);
  pin (pose, SW_LIMB_LEFT_ARM, SW_FIGURE_PLACE_START);
  if (knees_bent)
    {
      set_both (pose, SW_ANGLE_HIP_TURN, 0);
      set_both (pose, SW_ANGLE_HIP_BEND, 50);
      set_both (pose, SW_ANGLE_KNEE_BEND, 106);
      level_feet (pose);
      pin (pose, SW_LIMB_RIGHT_LEG, SW_FIGURE_PLACE_FLOOR);
      pin (pose, SW_LIMB_LEFT_LEG, SW_FIGURE_PLACE_FLOOR);
      return;
    }
  set_both (pose, SW_ANGLE_HIP_BEND, -3);
  set_both (pose, SW_ANGLE_HIP_OUT, 3);
  set_both (pose, SW_ANGLE_ANKLE_UP, -12);
}

static void
lie_face_down (SwPose *pose)
{
  pose->joints.root_deg[SW_FIGURE_ROOT_LEAN] = 90;
  set_both (pose, SW_ANGLE_SHOULDER_RAISE, 10);
  set_both (pose, SW_ANGLE_SHOULDER_DIRECTION, 30);
  set_both (pose, SW_ANGLE_FOREARM_PALM_UP, 60);
  set_spine (pose, SW_ANGLE_NECK_BEND, -8);
  set_both (pose, SW_ANGLE_HIP_BEND, 3);
  set_both (pose, SW_ANGLE_HIP_OUT, 4);
  set_both (pose, SW_ANGLE_ANKLE_UP, -72);
}

static void
lie_on_side (SwPose       *pose,
             SwFigureSide  on)
{
  SwFigureSide top = on == SW_FIGURE_LEFT ? SW_FIGURE_RIGHT : SW_FIGURE_LEFT;

  pose->joints.root_deg[SW_FIGURE_ROOT_ROLL] = on == SW_FIGURE_LEFT ? -90 : 90;
  sw_joints_set (&pose->joints, SW_ANGLE_BLADE_FORWARD, on, 40);
  sw_joints_set (&pose->joints, SW_ANGLE_SHOULDER_RAISE, on, 80);
  sw_joints_set (&pose->joints, SW_ANGLE_SHOULDER_DIRECTION, on, 88);
  sw_joints_set (&pose->joints, SW_ANGLE_SHOULDER_RAISE, top, 4);
  sw_joints_set (&pose->joints, SW_ANGLE_ELBOW_BEND, top, 20);
  set_both (pose, SW_ANGLE_HIP_BEND, 22);
  set_both (pose, SW_ANGLE_KNEE_BEND, 35);
  set_both (pose, SW_ANGLE_ANKLE_UP, -10);
  sw_joints_set (&pose->joints, SW_ANGLE_HIP_OUT, top, -5);
  pin (pose, on == SW_FIGURE_LEFT ? SW_LIMB_LEFT_ARM : SW_LIMB_RIGHT_ARM, SW_FIGURE_PLACE_FACE);
  pin (pose, on == SW_FIGURE_LEFT ? SW_LIMB_RIGHT_ARM : SW_LIMB_LEFT_ARM, SW_FIGURE_PLACE_HIP);
}

static void
go_on_all_fours (SwPose   *pose,
                 gboolean  plank)
{
  pose->joints.root_deg[SW_FIGURE_ROOT_LEAN] = plank ? 72 : 90;
  set_both (pose, SW_ANGLE_SHOULDER_RAISE, plank ? 72 : 90);
  set_both (pose, SW_ANGLE_SHOULDER_DIRECTION, 90);
  set_spine (pose, SW_ANGLE_NECK_BEND, -14);
  if (plank)
    {
      set_both (pose, SW_ANGLE_HIP_OUT, 2);
      set_both (pose, SW_ANGLE_ANKLE_UP, 10);
      set_both (pose, SW_ANGLE_TOES_UP, 60);
    }
  else
    {
      set_both (pose, SW_ANGLE_HIP_BEND, 90);
      set_both (pose, SW_ANGLE_KNEE_BEND, 90);
      set_both (pose, SW_ANGLE_ANKLE_UP, -68);
      pose->flat_shank[0] = pose->flat_shank[1] = TRUE;
    }
  pin (pose, SW_LIMB_RIGHT_ARM, SW_FIGURE_PLACE_FLOOR);
  pin (pose, SW_LIMB_LEFT_ARM, SW_FIGURE_PLACE_FLOOR);
}

static void
kneel (SwPose       *pose,
       gboolean      half,
       SwFigureSide  on)
{
  SwFigureSide front = on == SW_FIGURE_LEFT ? SW_FIGURE_RIGHT : SW_FIGURE_LEFT;

  set_both (pose, SW_ANGLE_SHOULDER_RAISE, 6);
  set_both (pose, SW_ANGLE_SHOULDER_DIRECTION, 30);
  set_both (pose, SW_ANGLE_ELBOW_BEND, 10);
  set_both (pose, SW_ANGLE_KNEE_BEND, 90);
  set_both (pose, SW_ANGLE_ANKLE_UP, -70);
  pose->flat_shank[0] = pose->flat_shank[1] = TRUE;
  if (!half)
    return;

  pose->flat_shank[front] = FALSE;

  sw_joints_set (&pose->joints, SW_ANGLE_HIP_BEND, front, 91);
  sw_joints_set (&pose->joints, SW_ANGLE_KNEE_BEND, front, 91);
  sw_joints_set (&pose->joints, SW_ANGLE_ANKLE_UP, front, 0);
  pose->level[front] = TRUE;
  pin (pose, front == SW_FIGURE_LEFT ? SW_LIMB_LEFT_LEG : SW_LIMB_RIGHT_LEG, SW_FIGURE_PLACE_FLOOR);
}

static void
prop_on_forearms (SwPose *pose)
{
  lie_face_down (pose);
  set_spine (pose, SW_ANGLE_LOW_BACK_BEND, -19);
  set_spine (pose, SW_ANGLE_UPPER_BACK_BEND, -11);
  set_spine (pose, SW_ANGLE_NECK_BEND, -10);
  set_both (pose, SW_ANGLE_SHOULDER_RAISE, 100);
  set_both (pose, SW_ANGLE_SHOULDER_DIRECTION, 90);
  set_both (pose, SW_ANGLE_ELBOW_BEND, 51);
  set_both (pose, SW_ANGLE_FOREARM_PALM_UP, -85);
}

/* The legs lie straight ahead; hands rest on the thighs. */
static void
sit_on_floor (SwPose *pose)
{
  set_both (pose, SW_ANGLE_SHOULDER_RAISE, 25);
  set_both (pose, SW_ANGLE_SHOULDER_DIRECTION, 70);
  set_both (pose, SW_ANGLE_ELBOW_BEND, 20);
  set_both (pose, SW_ANGLE_HIP_BEND, 90);
  set_both (pose, SW_ANGLE_HIP_OUT, 3);
  set_both (pose, SW_ANGLE_HIP_TURN, 4);
  set_both (pose, SW_ANGLE_ANKLE_UP, -12);
  pin (pose, SW_LIMB_RIGHT_ARM, SW_FIGURE_PLACE_THIGH);
  pin (pose, SW_LIMB_LEFT_ARM, SW_FIGURE_PLACE_THIGH);
}

/* On one forearm and the edge of the foot, body straight, the other hand on the hip. How far it leans follows from the
 * upper arm, which stands upright. */
static void
prop_on_side (SwPose       *pose,
              SwFigureSide  on)
{
  SwLimb low = on == SW_FIGURE_LEFT ? SW_LIMB_LEFT_ARM : SW_LIMB_RIGHT_ARM;
  SwLimb high = on == SW_FIGURE_LEFT ? SW_LIMB_RIGHT_ARM : SW_LIMB_LEFT_ARM;

  pose->joints.root_deg[SW_FIGURE_ROOT_ROLL] = on == SW_FIGURE_LEFT ? -72 : 72;
  sw_joints_set (&pose->joints, SW_ANGLE_SHOULDER_RAISE, on, 75);
  set_both (pose, SW_ANGLE_ELBOW_BEND, 30);
  set_both (pose, SW_ANGLE_ANKLE_UP, -6);
  pin (pose, low, SW_FIGURE_PLACE_FLOOR);
  pose->pins[low].limb = SW_FIGURE_LIMB_FOREARM;
  pin (pose, high, SW_FIGURE_PLACE_HIP);
}

static void
take_base (SwPose                *pose,
           const SwFigureContent *content)
{
  *pose = (SwPose){ 0 };

  switch (content->poses[0].base)
    {
    case SW_FIGURE_BASE_SITTING:
      sit (pose);
      break;
    case SW_FIGURE_BASE_ON_BACK:
      lie_on_back (pose, FALSE);
      break;
    case SW_FIGURE_BASE_ON_BACK_KNEES_BENT:
      lie_on_back (pose, TRUE);
      break;
    case SW_FIGURE_BASE_FACE_DOWN:
      lie_face_down (pose);
      break;
    case SW_FIGURE_BASE_SIDE_LYING:
      lie_on_side (pose, content->poses[0].on);
      break;
    case SW_FIGURE_BASE_HANDS_AND_KNEES:
      go_on_all_fours (pose, FALSE);
      break;
    case SW_FIGURE_BASE_PLANK:
      go_on_all_fours (pose, TRUE);
      break;
    case SW_FIGURE_BASE_KNEELING:
      kneel (pose, FALSE, content->poses[0].on);
      break;
    case SW_FIGURE_BASE_HALF_KNEELING:
      kneel (pose, TRUE, content->poses[0].on);
      break;
    case SW_FIGURE_BASE_ON_FOREARMS:
      prop_on_forearms (pose);
      break;
    case SW_FIGURE_BASE_FLOOR_SITTING:
      sit_on_floor (pose);
      break;
    case SW_FIGURE_BASE_SIDE_PLANK:
      prop_on_side (pose, content->poses[0].on);
      break;
    case SW_FIGURE_BASE_STANDING:
    default:
      stand (pose);
      break;
    }
}

/* Which limb an angle belongs to; -1 for spine and shoulder blades, which move the joint and leave the pin alone. */
static int
limb_of (SwAngle      angle,
         SwFigureSide side)
{
  if (angle >= SW_ANGLE_SHOULDER_RAISE && angle <= SW_ANGLE_WRIST_THUMBWARD)
    return (int) SW_LIMB_RIGHT_ARM + (int) side;
  if (angle >= SW_ANGLE_HIP_BEND && angle <= SW_ANGLE_KNEE_BEND)
    return (int) SW_LIMB_RIGHT_LEG + (int) side;

  return -1;
}

static void
lay_over (SwPose             *pose,
          const SwFigurePose *own,
          const double        base_root_deg[SW_FIGURE_N_ROOT])
{
  for (int i = 0; i < (int) SW_N_SLOTS; i++)
    {
      SwFigureSide side;
      SwAngle angle = sw_angle_from_slot (i, &side);
      int limb = limb_of (angle, side);

      if ((own->slots_set >> i & 1) == 0)
        continue;
      pose->joints.slots_deg[i] = own->slots_deg[i];
      if (limb < 0)
        continue;
      pose->pinned[limb] = FALSE;
      if (limb < (int) SW_LIMB_RIGHT_LEG)
        pose->own_arm[limb] = TRUE;
      else
        pose->new_leg[limb % 2] = TRUE;
      if (angle == SW_ANGLE_KNEE_BEND)
        pose->flat_shank[side] = FALSE;
    }
  for (int i = 0; i < SW_FIGURE_N_ROOT; i++)
    if ((own->root_set >> i & 1) != 0)
      pose->joints.root_deg[i] = base_root_deg[i] + own->root_deg[i];
  for (int side = 0; side < 2; side++)
    {
      if (own->foot_set[side])
        {
          pose->level[side] = !own->foot_free[side];
          pose->pitch_deg[side] = own->foot_pitch_deg[side];
        }
      if (own->hands[side] != SW_FIGURE_HAND_INHERIT)
        pose->fists[side] = own->hands[side] == SW_FIGURE_HAND_FIST;
    }
  pose->breath = own->breath;
  pose->belly = own->belly;
  if (own->eyes != SW_FIGURE_EYES_INHERIT)
    pose->eyes_closed = own->eyes == SW_FIGURE_EYES_CLOSED;
  for (int i = 0; i < own->n_pins; i++)
    {
      const SwFigurePin *held = &own->pins[i];
      int limb
          = (held->limb == SW_FIGURE_LIMB_FOOT ? (int) SW_LIMB_RIGHT_LEG : (int) SW_LIMB_RIGHT_ARM) + (int) held->side;

      pose->pinned[limb] = held->to != SW_FIGURE_PLACE_NONE;
      pose->pins[limb] = *held;
    }
}

/* A hand that holds something is closed. */
static void
close_hands (SwPose                *pose,
             const SwFigureContent *content)
{
  for (int i = 0; i < content->n_props; i++)
    {
      const SwFigurePropSpec *prop = &content->props[i];
      gboolean right = prop->in == SW_FIGURE_MARK_RIGHT_HAND || prop->from == SW_FIGURE_MARK_RIGHT_HAND;
      gboolean left = prop->in == SW_FIGURE_MARK_LEFT_HAND || prop->from == SW_FIGURE_MARK_LEFT_HAND;

      if (prop->kind == SW_FIGURE_PROP_BALL || prop->kind == SW_FIGURE_PROP_LOOP || prop->kind == SW_FIGURE_PROP_CUFF)
        continue;
      if (prop->kind == SW_FIGURE_PROP_STICK && (right || left))
        right = left = TRUE;
      pose->fists[SW_FIGURE_RIGHT] |= right;
      pose->fists[SW_FIGURE_LEFT] |= left;
    }
}

static gboolean
moves_fingers (const SwPose *pose,
               SwFigureSide  side)
{
  for (int angle = SW_ANGLE_FINGERS_KNUCKLE; angle <= SW_ANGLE_THUMB_BEND; angle++)
    if (fabs (sw_joints_get (&pose->joints, (SwAngle) angle, side)) > 0)
      return TRUE;

  return FALSE;
}

/* A fist has the angles of one, so that it opens and closes finger by finger; a close hand lies round its ball. */
static void
close_fingers (SwPose                *pose,
               const SwFigureContent *content)
{
  for (int side = 0; side < 2; side++)
    {
      SwFigureMark mark = side == SW_FIGURE_LEFT ? SW_FIGURE_MARK_LEFT_HAND : SW_FIGURE_MARK_RIGHT_HAND;
      SwHand hand = sw_hand_fist ();
      gboolean closed = pose->fists[side];

      for (int i = 0; i < content->n_props && content->frame == SW_FIGURE_FRAME_HAND; i++)
        if (content->props[i].kind == SW_FIGURE_PROP_BALL && content->props[i].in == mark)
          {
            hand = sw_hand_round_ball ();
            closed = TRUE;
          }
      if (closed && !moves_fingers (pose, (SwFigureSide) side))
        sw_joints_set_hand (&pose->joints, (SwFigureSide) side, &hand);
    }
}

/**
 * sw_base_get_info:
 * @base: a base pose
 *
 * Returns: (transfer none): what it means
 */
const SwBaseInfo *
sw_base_get_info (SwFigureBase base)
{
  return &base_infos[base];
}

/**
 * sw_pose_resolve:
 * @pose: (out): the pose with everything filled in
 * @content: the figure
 * @n: which of its poses
 */
void
sw_pose_resolve (SwPose                *pose,
                 const SwFigureContent *content,
                 int                    n)
{
  SwPose base;

  take_base (&base, content);
  *pose = base;
  lay_over (pose, &content->poses[0], base.joints.root_deg);
  close_hands (pose, content);
  if (n == 0)
    {
      close_fingers (pose, content);
      return;
    }

  pose->new_leg[0] = pose->new_leg[1] = FALSE;
  lay_over (pose, &content->poses[n], base.joints.root_deg);
  close_fingers (pose, content);
}
