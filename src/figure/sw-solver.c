/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Places poses on the floor: joints to body, feet levelled, supports grounded, anchors kept, held limbs reached. In
 * between the written poses the angles are interpolated, not rotations: a therapist names planes and degrees, and the
 * shortest rotation leaves the plane. */
#include "config.h"

#include "sw-hold.h"
#include "sw-settle.h"
#include "sw-solver.h"

/* A foot or knee this near the floor stands on it. */
#define CONTACT 0.014
/* Feet whose height differs by no more are level. */
#define LEVEL_FEET 0.01
#define REACH_PART 0.998
#define WRIST_HEIGHT 0.020
/* A body that sinks to reach the floor does so by no more than this, and until the foot misses by no more than that. */
#define SINK_MOST 0.15
#define REACHED 0.0005
/* Neck and head bend no more than this to let the head rest. */
#define REST_BEND_DEG 43.0

static SwVector
foot_pivot (const SwSolver *self,
            const SwSolved *solved,
            int             side)
{
  if (!sw_scene_heels_hang (self->content) && solved->level[side] && solved->pitch_deg[side] < 0)
    return sw_place (solved->body.pieces[SW_SIDED (SW_PIECE_FOOT, side)], sw_vector (SW_HEEL_X, 0, -SW_ANKLE_HEIGHT));

  return sw_body_get_ball (&solved->body, (SwFigureSide) side);
}

static SwFigureAnchor
get_anchor (const SwSolver *self)
{
  return self->content->poses[0].anchor == SW_FIGURE_ANCHOR_AUTO ? self->base->anchor : self->content->poses[0].anchor;
}

/* How far the anchor went from where the start has it. */
static SwVector
anchor_drift (const SwSolver *self,
              const SwSolved *now)
{
  const SwSolved *start = &self->keys[0];
  SwFigureAnchor anchor = get_anchor (self);
  SwVector sum = { 0, 0, 0 };
  int n = 0;

  if (anchor == SW_FIGURE_ANCHOR_HIPS)
    return sw_sub (now->body.pieces[SW_PIECE_PELVIS].at, start->body.pieces[SW_PIECE_PELVIS].at);
  if (anchor == SW_FIGURE_ANCHOR_UPPER_BACK)
    return sw_sub (sw_body_get_mark (&now->body, SW_FIGURE_MARK_UPPER_BACK),
                   sw_body_get_mark (&start->body, SW_FIGURE_MARK_UPPER_BACK));

  for (int side = 0; side < 2; side++)
    {
      gboolean knees = anchor == SW_FIGURE_ANCHOR_KNEES;
      gboolean wanted = anchor == (side == 0 ? SW_FIGURE_ANCHOR_RIGHT_FOOT : SW_FIGURE_ANCHOR_LEFT_FOOT);
      SwVector here = knees ? now->body.pieces[SW_SIDED (SW_PIECE_SHANK, side)].at : foot_pivot (self, now, side);
      SwVector there = knees ? start->body.pieces[SW_SIDED (SW_PIECE_SHANK, side)].at : foot_pivot (self, start, side);
      double lowest = sw_part_get_lowest (&now->body, (SwPart) SW_SIDED (knees ? SW_PART_SHANK : SW_PART_FOOT, side));

      if (!wanted && (lowest - now->lift - (knees ? 0 : now->stand[side]) > CONTACT || (anchor != SW_FIGURE_ANCHOR_FEET && !knees)))
        continue;
      sum = sw_add (sum, sw_sub (here, there));
      n++;
    }

  return n > 0 ? sw_scale (sum, 1.0 / n) : sw_vector (0, 0, 0);
}

static double
foot_lowest (const SwSolver *self,
             const SwSolved *now,
             int             side)
{
  if (sw_scene_heels_hang (self->content))
    return sw_body_get_ball (&now->body, (SwFigureSide) side).z;

  return sw_part_get_lowest (&now->body, (SwPart) SW_SIDED (SW_PART_FOOT, side));
}

/* How far a body has to rise whose feet stand on something: the lower foot carries it; when they are level that on the
 * lower ground; after the start the one that the figure anchors. */
static double
find_rise (const SwSolver *self,
           const SwSolved *now,
           gboolean        is_start)
{
  SwFigureAnchor anchor = get_anchor (self);
  double lowest[2] = { foot_lowest (self, now, 0), foot_lowest (self, now, 1) };
  int side = lowest[1] < lowest[0] ? 1 : 0;

  if (fabs (lowest[0] - lowest[1]) < LEVEL_FEET && fabs (now->stand[0] - now->stand[1]) > 1e-9)
    side = now->stand[1] < now->stand[0] ? 1 : 0;
  if (!is_start && (anchor == SW_FIGURE_ANCHOR_RIGHT_FOOT || anchor == SW_FIGURE_ANCHOR_LEFT_FOOT))
    side = anchor == SW_FIGURE_ANCHOR_LEFT_FOOT ? 1 : 0;

  return now->stand[side] - lowest[side];
}

static void
ground (const SwSolver *self,
        SwSolved       *now,
        gboolean        is_start)
{
  gboolean sits = self->content->poses[0].base == SW_FIGURE_BASE_SITTING && get_anchor (self) == SW_FIGURE_ANCHOR_HIPS;
  guint supports = self->base->supports;
  SwVector by = { 0, 0, 0 };

  /* Half kneeling, the knee carries the body; the front foot reaches for the floor. */
  if (self->content->poses[0].base == SW_FIGURE_BASE_HALF_KNEELING)
    supports &= ~(1u << SW_SIDED (SW_PART_SHANK, 1 - (int) self->content->poses[0].on)
                  | 1u << SW_SIDED (SW_PART_FOOT, 1 - (int) self->content->poses[0].on));
  if (!sits && (now->stand[0] > 0 || now->stand[1] > 0) && self->base->anchor == SW_FIGURE_ANCHOR_FEET)
    by.z = find_rise (self, now, is_start);
  else if (is_start || !sits)
    by.z = sw_scene_get_bed (self->content) - sw_body_get_support_lowest (&now->body, supports);
  by.z += now->lift;
  sw_body_move (&now->body, by);
  if (!is_start)
    {
      SwVector drift = anchor_drift (self, now);

      by = sw_vector (-drift.x, -drift.y, sits ? -drift.z : 0);
      sw_body_move (&now->body, by);
    }
  now->joints.root_at = now->body.pieces[SW_PIECE_PELVIS].at;
}

/* Lying on the back, the head comes to rest on the mat however the trunk lies: the neck gives, then the head. */
static void
rest_head (const SwSolver *self,
           SwSolved       *now)
{
  SwFigureBase base = self->content->poses[0].base;

  if (base != SW_FIGURE_BASE_ON_BACK && base != SW_FIGURE_BASE_ON_BACK_KNEES_BENT)
    return;

  for (int i = 0; i < 40 && sw_part_get_lowest (&now->body, SW_PART_HEAD) < -0.004; i++)
    {
      double *neck = &now->joints.slots_deg[SW_ANGLE_NECK_BEND];
      double *head = &now->joints.slots_deg[SW_ANGLE_HEAD_BEND];

      if (*neck + *head >= REST_BEND_DEG)
        break;
      *(*neck < 0.75 * REST_BEND_DEG ? neck : head) += 1.5;
      sw_body_solve_head (&now->body, &now->joints);
    }
}

/* Joints to body on the floor; what is held is not reached yet. */
static void
set_down (const SwSolver *self,
          SwSolved       *now,
          gboolean        is_start)
{
  now->joints.root_at = sw_vector (0, 0, 0);
  sw_body_solve (&now->body, &now->joints);
  sw_solved_lay_shanks (now);
  sw_solved_level_feet (now);
  ground (self, now, is_start);
  rest_head (self, now);
}

static gboolean
reaches_floor (SwFigurePlace to)
{
  return to == SW_FIGURE_PLACE_FLOOR || to == SW_FIGURE_PLACE_STEP || to == SW_FIGURE_PLACE_START;
}

/* How far the shoulders are from where straight arms on the floor would have them; + too far. */
static double
reach_error (const SwSolver *self,
             const SwPose   *pose,
             const SwSolved *now,
             gboolean        is_start)
{
  double sum = 0.0;
  int n = 0;

  for (int side = 0; side < 2; side++)
    {
      SwVector shoulder = now->body.pieces[SW_SIDED (SW_PIECE_UPPER_ARM, side)].at;
      gboolean forearm = pose->pins[side].limb == SW_FIGURE_LIMB_FOREARM;
      SwVector stand = sw_vector (shoulder.x, shoulder.y, forearm ? SW_ELBOW_HEIGHT : WRIST_HEIGHT);
      double length = forearm ? SW_UPPER_ARM : SW_UPPER_ARM + SW_FOREARM;

      if (!pose->pinned[side] || !reaches_floor (pose->pins[side].to))
        continue;
      stand.z += pose->pins[side].to == SW_FIGURE_PLACE_STEP ? sw_scene_get_step_height (self->content)
                                                             : sw_scene_get_lift (self->content, (SwLimb) side);
      if (!is_start && self->keys[0].held[side])
        stand = forearm ? self->keys[0].body.pieces[SW_SIDED (SW_PIECE_FOREARM, side)].at
                        : self->keys[0].grips[side].at;
      sum += sw_length (sw_sub (shoulder, stand)) - REACH_PART * length;
      n++;
    }

  return n > 0 ? sum / n : 0.0;
}

/* Hands that stand on the floor decide how far the trunk leans. Thighs keep their direction meanwhile, unless the start
 * writes the hips: then trunk and thighs lean as one. */
static void
find_lean (const SwSolver *self,
           const SwPose   *pose,
           SwSolved       *now,
           gboolean        is_start)
{
  gboolean keep_thighs = self->content->poses[0].base == SW_FIGURE_BASE_HANDS_AND_KNEES && !self->poses[0].new_leg[0]
                         && !self->poses[0].new_leg[1];
  /* The side plank leans sideways; the less, the higher its shoulder. */
  gboolean on_side = self->content->poses[0].base == SW_FIGURE_BASE_SIDE_PLANK;
  int root = on_side ? SW_FIGURE_ROOT_ROLL : SW_FIGURE_ROOT_LEAN;
  double sign = on_side ? -sw_side_sign (self->content->poses[0].on) : 1.0;
  SwJoints written = now->joints;
  double low = 30.0;
  double high = 120.0;

  for (int i = 0; i < 24; i++)
    {
      double lean = (low + high) / 2;

      now->joints = written;
      now->joints.root_deg[root] = sign * lean;
      for (int side = 0; keep_thighs && side < 2; side++)
        now->joints.slots_deg[sw_angle_get_slot (SW_ANGLE_HIP_BEND, (SwFigureSide) side)]
            += lean - written.root_deg[SW_FIGURE_ROOT_LEAN];
      set_down (self, now, is_start);
      if (reach_error (self, pose, now, is_start) > 0)
        low = lean;
      else
        high = lean;
    }
}

static gboolean
wrote_lean (const SwSolver *self,
            int             n)
{
  guint bit = 1u << (self->content->poses[0].base == SW_FIGURE_BASE_SIDE_PLANK ? SW_FIGURE_ROOT_ROLL : SW_FIGURE_ROOT_LEAN);

  return (self->content->poses[0].root_set & bit) != 0 || (self->content->poses[n].root_set & bit) != 0;
}

static SwGrip
to_frame (const SwBody *body,
          int           piece,
          SwGrip        grip)
{
  if (piece < 0)
    return grip;

  return (SwGrip){ sw_multiply (sw_transpose (body->pieces[piece].axes), grip.axes),
                   sw_unplace (body->pieces[piece], grip.at) };
}

static SwGrip
from_frame (const SwBody *body,
            int           piece,
            SwGrip        grip)
{
  if (piece < 0)
    return grip;

  return (SwGrip){ sw_multiply (body->pieces[piece].axes, grip.axes), sw_place (body->pieces[piece], grip.at) };
}

static void
reach (SwSolved *now,
       SwLimb    limb,
       SwHold   *hold)
{
  SwFigureSide side = (SwFigureSide) (limb % 2);
  gboolean is_leg = limb >= SW_LIMB_RIGHT_LEG;
  SwPiece end = SW_SIDED (is_leg ? SW_PIECE_FOOT : SW_PIECE_HAND, side);

  if (is_leg)
    sw_reach_leg (&now->body, &now->joints, side, hold->grip, hold->toward);
  else if (hold->search)
    sw_reach_arm_searching (&now->body, &now->joints, side, hold->grip, hold->toward, hold->fingers_free);
  else
    sw_reach_arm (&now->body, &now->joints, side, hold->grip, hold->toward);

  now->missed[limb] = sw_length (sw_sub (now->body.pieces[end].at, hold->grip.at));
  if (hold->slides)
    now->missed[limb] = fabs (now->body.pieces[end].at.z - hold->grip.at.z);
  else if (hold->fingers_free)
    now->missed[limb] = MAX (0.0, fabs (sw_dot (sw_sub (now->body.pieces[end].at, hold->grip.at), hold->grip.axes.y)));
  now->held[limb] = TRUE;
  now->attach[limb] = hold->attach;
  now->grips[limb] = to_frame (&now->body, hold->attach, now->body.pieces[end]);
}

/* What is held where it is needs no reaching. */
static void
keep (SwSolved *now,
      SwLimb    limb)
{
  SwPiece end = SW_SIDED (limb >= SW_LIMB_RIGHT_LEG ? SW_PIECE_FOOT : SW_PIECE_HAND, limb % 2);

  now->held[limb] = TRUE;
  now->attach[limb] = -1;
  now->grips[limb] = now->body.pieces[end];
}

static void
hold_limb (SwSolver *self,
           int       n,
           SwLimb    limb)
{
  SwSolved *now = &self->keys[n];
  SwHold hold;

  if (n == 0 && self->poses[0].pins[limb].to == SW_FIGURE_PLACE_START
      && (limb < SW_LIMB_RIGHT_LEG || now->stand[limb % 2] <= 0))
    {
      keep (now, limb);
      return;
    }

  sw_hold_find (&hold, self, &self->poses[n], now, limb, n == 0);
  reach (now, limb, &hold);
}

static double
find_missed (const SwSolved *now)
{
  return MAX (now->missed[SW_LIMB_RIGHT_LEG], now->missed[SW_LIMB_LEFT_LEG]);
}

/* Legs first: hands may rest on thighs. A foot that rests on the other comes after it. */
static void
hold_legs (SwSolver *self,
           int       n)
{
  const SwPose *pose = &self->poses[n];

  for (int pass = 0; pass < 2; pass++)
    for (int limb = SW_LIMB_RIGHT_LEG; limb <= SW_LIMB_LEFT_LEG; limb++)
      {
        gboolean on_other = pose->pins[limb].to == SW_FIGURE_PLACE_OTHER_FOOT;

        if (pose->pinned[limb] && on_other == (pass == 1))
          hold_limb (self, n, (SwLimb) limb);
      }
}

/* The legs as they are held when the body, whose legs were free so far, is lower by so much. Returns whether they
 * reach. */
static gboolean
lower (SwSolver       *self,
       int             n,
       const SwSolved *unheld,
       double          by)
{
  SwSolved *now = &self->keys[n];

  *now = *unheld;
  sw_body_move (&now->body, sw_vector (0, 0, -by));
  now->joints.root_at = now->body.pieces[SW_PIECE_PELVIS].at;
  hold_legs (self, n);
  return find_missed (now) < REACHED;
}

/* Standing, a foot that is held where it does not reach brings the body down: the other knee gives. */
static void
sink_to_feet (SwSolver       *self,
              int             n,
              const SwSolved *unheld)
{
  SwSolved high = self->keys[n];
  double least = 0;
  double most = SINK_MOST;

  if (self->content->poses[0].base != SW_FIGURE_BASE_STANDING || find_missed (&high) < REACHED)
    return;

  if (!lower (self, n, unheld, most))
    {
      self->keys[n] = high;
      return;
    }
  for (int i = 0; i < 16; i++)
    {
      double by = (least + most) / 2;

      *(lower (self, n, unheld, by) ? &most : &least) = by;
    }
  lower (self, n, unheld, most);
  for (int side = 0; side < 2; side++)
    if (!self->poses[n].pinned[SW_SIDED (SW_LIMB_RIGHT_LEG, side)])
      sw_reach_leg (&self->keys[n].body, &self->keys[n].joints, (SwFigureSide) side,
                    unheld->body.pieces[SW_SIDED (SW_PIECE_FOOT, side)],
                    unheld->body.pieces[SW_SIDED (SW_PIECE_THIGH, side)].axes.x);
}

static void
solve_key (SwSolver *self,
           int       n)
{
  const SwPose *pose = &self->poses[n];
  SwSolved *now = &self->keys[n];
  SwSolved unheld;

  *now = (SwSolved){ .joints = pose->joints, .breath = pose->breath, .lift = self->content->poses[n].lift };
  now->body.belly = pose->belly;
  now->body.eyes_closed = pose->eyes_closed;
  for (int side = 0; side < 2; side++)
    {
      now->level[side] = pose->level[side];
      now->pitch_deg[side] = pose->pitch_deg[side];
      now->toes_deg[side] = sw_joints_get (&pose->joints, SW_ANGLE_TOES_UP, (SwFigureSide) side);
      now->stand[side] = sw_scene_get_stand (self->content, pose, (SwFigureSide) side);
      now->flat_shank[side] = pose->flat_shank[side];
      now->body.fists[side] = pose->fists[side];
    }

  if (self->base->reaches_floor && !wrote_lean (self, n))
    find_lean (self, pose, now, n == 0);
  else
    set_down (self, now, n == 0);
  if (n == 0)
    sw_scene_measure (&self->scene, self->content, pose, &now->body);

  unheld = *now;
  hold_legs (self, n);
  sink_to_feet (self, n, &unheld);
  for (int limb = SW_LIMB_RIGHT_ARM; limb <= SW_LIMB_LEFT_ARM; limb++)
    if (pose->pinned[limb])
      hold_limb (self, n, (SwLimb) limb);
}

static double
mix (double a,
     double b,
     double t)
{
  return a + (b - a) * t;
}

static double
mix_short_way (double a,
               double b,
               double t)
{
  double by = fmod (b - a + 540.0, 360.0) - 180.0;

  return a + by * t;
}

static void
reach_between (const SwSolved *a,
               const SwSolved *b,
               double          t,
               SwLimb          limb,
               SwSolved       *now)
{
  SwFigureSide side = (SwFigureSide) (limb % 2);
  gboolean is_leg = limb >= SW_LIMB_RIGHT_LEG;
  SwPlacement root = now->body.pieces[SW_SIDED (is_leg ? SW_PIECE_THIGH : SW_PIECE_UPPER_ARM, side)];
  SwPlacement middle = now->body.pieces[SW_SIDED (is_leg ? SW_PIECE_SHANK : SW_PIECE_FOREARM, side)];
  SwPlacement end = now->body.pieces[SW_SIDED (is_leg ? SW_PIECE_FOOT : SW_PIECE_HAND, side)];
  SwVector line = sw_unit (sw_sub (end.at, root.at), sw_vector (0, 0, -1));
  SwGrip mixed = is_leg ? sw_grip_mix_feet (a->grips[limb], b->grips[limb], a->pitch_deg[side], b->pitch_deg[side], t)
                        : sw_grip_mix (a->grips[limb], b->grips[limb], t);
  SwHold hold = { .grip = from_frame (&now->body, a->attach[limb], mixed),
                  .attach = a->attach[limb],
                  .toward = sw_across (sw_sub (middle.at, root.at), line) };

  if (sw_length (hold.toward) < 0.004)
    hold.toward = is_leg ? root.axes.x : sw_scale (root.axes.x, -1);
  reach (now, limb, &hold);
}

static void
mix_keys (const SwSolver *self,
          const SwSolved *a,
          const SwSolved *b,
          double          t,
          SwSolved       *now)
{
  *now = *a;
  now->breath = SW_FIGURE_BREATH_NONE;
  now->body.belly = mix (a->body.belly, b->body.belly, t);
  for (int i = 0; i < (int) SW_N_SLOTS; i++)
    now->joints.slots_deg[i] = mix (a->joints.slots_deg[i], b->joints.slots_deg[i], t);
  for (int i = 0; i < SW_FIGURE_N_ROOT; i++)
    now->joints.root_deg[i] = i == SW_FIGURE_ROOT_TURN ? mix_short_way (a->joints.root_deg[i], b->joints.root_deg[i], t)
                                                       : mix (a->joints.root_deg[i], b->joints.root_deg[i], t);
  for (int side = 0; side < 2; side++)
    {
      now->level[side] = a->level[side] && b->level[side];
      now->flat_shank[side] = a->flat_shank[side] && b->flat_shank[side];
      now->pitch_deg[side] = mix (a->pitch_deg[side], b->pitch_deg[side], t);
      now->toes_deg[side] = mix (a->toes_deg[side], b->toes_deg[side], t);
      now->stand[side] = mix (a->stand[side], b->stand[side], t);
      now->body.fists[side] = a->body.fists[side] && b->body.fists[side];
    }
  now->lift = mix (a->lift, b->lift, t);
  set_down (self, now, FALSE);

  for (int limb = SW_N_LIMBS - 1; limb >= 0; limb--)
    {
      now->held[limb] = FALSE;
      now->missed[limb] = 0.0;
    }
  /* A foot on the other foot comes after it; legs before arms. */
  for (int pass = 0; pass < 3; pass++)
    for (int limb = 0; limb < SW_N_LIMBS; limb++)
      {
        int turn = limb < (int) SW_LIMB_RIGHT_LEG ? 2 : a->attach[limb] >= 0 ? 1 : 0;

        if (turn == pass && a->held[limb] && b->held[limb] && a->attach[limb] == b->attach[limb])
          reach_between (a, b, t, (SwLimb) limb, now);
      }
}

/**
 * sw_solver_init:
 * @self: (out caller-allocates): the solved figure
 * @content: the figure; must outlive @self
 *
 * Solves the poses up to the next one that has a base of its own.
 */
void
sw_solver_init (SwSolver              *self,
                const SwFigureContent *content)
{
  self->content = content;
  self->base = sw_base_get_info (content->poses[0].base);
  self->n_keys = 1;
  while (self->n_keys < content->n_poses
         && !(content->motion == SW_FIGURE_MOTION_STEPS && content->poses[self->n_keys].own_base))
    self->n_keys++;
  for (int n = 0; n < self->n_keys; n++)
    {
      sw_pose_resolve (&self->poses[n], content, n);
      solve_key (self, n);
    }
}

/**
 * sw_solver_moves:
 *
 * Returns: whether there is a motion at all
 */
gboolean
sw_solver_moves (const SwSolver *self)
{
  return self->n_keys > 1 || (self->content->motion == SW_FIGURE_MOTION_CIRCLE && self->content->radius_deg > 0);
}

/**
 * sw_solver_get:
 * @self: a solved figure
 * @phase: 0 at the first pose, 1 at the last; circles go round once
 * @solved: (out): the pose there
 */
void
sw_solver_get (const SwSolver *self,
               double          phase,
               SwSolved       *solved)
{
  double along = CLAMP (phase, 0.0, 1.0) * (self->n_keys - 1);
  int n = (int) floor (along);
  double t = along - n;

  if (self->content->motion == SW_FIGURE_MOTION_CIRCLE && self->content->radius_deg > 0)
    sw_solver_circle (self, phase, solved);
  else if (t < 1e-9)
    *solved = self->keys[n];
  else
    mix_keys (self, &self->keys[n], &self->keys[n + 1], t, solved);
}
