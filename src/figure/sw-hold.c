/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where pins hold hands and feet. All sizes are parts of stature and our own drawing. */
#include "config.h"

#include <string.h>

#include "sw-hold.h"

#define PALM_GAP 0.004
#define WRIST_ON_FLOOR 0.019
/* A hand that lies on its back has its palm this high. */
#define BACK_OF_HAND 0.034

static const SwVector up = { 0, 0, 1 };
static const SwVector down = { 0, 0, -1 };
static const SwVector ahead = { 1, 0, 0 };

/* A direction word in the world: forward, out and in go with the ribcage or pelvis, up and down with the world. */
static SwVector
find_toward (SwFigureToward toward,
             SwMatrix       trunk,
             SwFigureSide   side)
{
  SwVector out = sw_scale (trunk.y, sw_side_sign (side));

  switch (toward)
    {
    case SW_FIGURE_TOWARD_UP:
      return up;
    case SW_FIGURE_TOWARD_DOWN:
      return down;
    case SW_FIGURE_TOWARD_FORWARD:
      return trunk.x;
    case SW_FIGURE_TOWARD_BACK:
      return sw_scale (trunk.x, -1);
    case SW_FIGURE_TOWARD_IN:
      return sw_scale (out, -1);
    case SW_FIGURE_TOWARD_OUT:
    case SW_FIGURE_TOWARD_AUTO:
    default:
      return out;
    }
}

static SwVector
blend (SwMatrix     trunk,
       SwFigureSide side,
       double       forward,
       double       out,
       double       along,
       double       upward)
{
  SwVector v = sw_add (sw_scale (trunk.x, forward), sw_scale (trunk.y, out * sw_side_sign (side)));

  return sw_add (sw_add (v, sw_scale (trunk.z, along)), sw_scale (up, upward));
}

/* Where the elbow goes when nobody says: what a person at ease would do. */
static SwVector
easy_elbow (SwFigurePlace to,
            SwMatrix      trunk,
            SwFigureSide  side)
{
  switch (to)
    {
    case SW_FIGURE_PLACE_FLOOR:
      return blend (trunk, side, 0, 0.3, -1, 0);
    case SW_FIGURE_PLACE_WALL:
      return blend (trunk, side, -0.2, 0.45, 0, -1);
    case SW_FIGURE_PLACE_COUNTER:
    case SW_FIGURE_PLACE_TABLE:
    case SW_FIGURE_PLACE_CHAIR_BACK:
    case SW_FIGURE_PLACE_SEAT:
      return blend (trunk, side, -1, 0.35, 0, -0.5);
    case SW_FIGURE_PLACE_THIGH:
    case SW_FIGURE_PLACE_KNEE:
      return blend (trunk, side, -0.8, 0.5, 0, -0.3);
    case SW_FIGURE_PLACE_HIP:
      return blend (trunk, side, -0.75, 1, 0, 0);
    case SW_FIGURE_PLACE_FOREHEAD:
      return blend (trunk, side, 0.5, 0.7, -1, 0);
    case SW_FIGURE_PLACE_BACK_OF_HEAD:
      return blend (trunk, side, 0.25, 1, 0, 0);
    case SW_FIGURE_PLACE_FACE:
      return blend (trunk, side, 0.8, 0, -1, 0);
    default:
      return blend (trunk, side, 0, 0.5, -1, 0);
    }
}

static void
on_piece (SwHold          *hold,
          const SwBody    *body,
          int              piece,
          const SwFigurePin *pin,
          gboolean         fist,
          SwVector         at,
          SwVector         normal,
          SwVector         fingers)
{
  double s = sw_side_sign (pin->side);
  SwPlacement frame = body->pieces[piece];
  SwVector local = sw_vector (at.x + pin->offset[0], s * (at.y + pin->offset[1]), at.z + pin->offset[2]);
  SwVector n = sw_vector (normal.x, s * normal.y, normal.z);
  SwVector f = sw_vector (fingers.x, s * fingers.y, fingers.z);

  hold->attach = piece;
  hold->grip = sw_grip_for_palm (pin->side, fist, sw_place (frame, local), sw_apply (frame.axes, sw_unit (n, ahead)),
                                 sw_apply (frame.axes, f));
}

static void
in_world (SwHold            *hold,
          const SwFigurePin *pin,
          gboolean           fist,
          SwVector           at,
          SwVector           normal,
          SwVector           fingers)
{
  SwVector offset = sw_vector (pin->offset[0], sw_side_sign (pin->side) * pin->offset[1], pin->offset[2]);

  hold->attach = -1;
  hold->grip = sw_grip_for_palm (pin->side, fist, sw_add (at, offset), normal, fingers);
}

/* A place on furniture that stands in front or beside: @depth behind its near edge, at @height. */
static SwVector
on_furniture (SwFigureWhere where,
              double        edge,
              double        depth,
              double        height,
              SwVector      shoulder,
              double        spread)
{
  if (where == SW_FIGURE_WHERE_RIGHT)
    return sw_vector (shoulder.x + 0.05, edge - depth, height);
  if (where == SW_FIGURE_WHERE_LEFT)
    return sw_vector (shoulder.x + 0.05, edge + depth, height);

  return sw_vector (edge + depth, spread, height);
}

static void
hold_hand (SwHold            *hold,
           const SwSolver    *solver,
           const SwFigurePin *pin,
           const SwBody      *body,
           gboolean           fist,
           gboolean           own_arm)
{
  const SwScene *scene = &solver->scene;
  double s = sw_side_sign (pin->side);
  SwVector shoulder = body->pieces[SW_SIDED (SW_PIECE_UPPER_ARM, pin->side)].at;
  SwVector hand
      = sw_body_get_mark (body, pin->side == SW_FIGURE_LEFT ? SW_FIGURE_MARK_LEFT_HAND : SW_FIGURE_MARK_RIGHT_HAND);
  SwMatrix trunk = body->pieces[SW_PIECE_RIBCAGE].axes;
  SwVector head = body->pieces[SW_PIECE_HEAD].at;
  SwVector headward = sw_across (trunk.z, up);
  /* Of crossed arms, the left one lies over the right one. */
  SwFigureSide outer = solver->content->mirrored ? SW_FIGURE_RIGHT : SW_FIGURE_LEFT;
  SwVector along = sw_length (headward) > 0.7 ? headward : sw_across (trunk.x, up);

  double ball = scene->seat == SW_FIGURE_PROP_BALL ? 0.055 : 0;
  double height = pin->to == SW_FIGURE_PLACE_STEP
                      ? scene->step_high.z
                      : sw_scene_get_lift (solver->content, (SwLimb) ((int) SW_LIMB_RIGHT_ARM + (int) pin->side));

  hold->fingers_free = TRUE;
  switch (pin->to)
    {
    case SW_FIGURE_PLACE_WALL:
      if (scene->wall_where == SW_FIGURE_WHERE_RIGHT || scene->wall_where == SW_FIGURE_WHERE_LEFT)
        in_world (hold, pin, fist,
                  sw_vector (shoulder.x, scene->wall_at - copysign (PALM_GAP, scene->wall_at), shoulder.z),
                  sw_vector (0, copysign (1, scene->wall_at), 0), up);
      else
        in_world (hold, pin, fist, sw_vector (scene->wall_at - PALM_GAP, shoulder.y, shoulder.z), ahead, up);
      break;
    case SW_FIGURE_PLACE_COUNTER:
      in_world (hold, pin, fist,
                on_furniture (scene->counter_where, scene->counter_at, 0.035, scene->counter_height + PALM_GAP,
                              shoulder, s * 0.11),
                down, ahead);
      break;
    case SW_FIGURE_PLACE_TABLE:
      in_world (hold, pin, fist,
                on_furniture (scene->table_where, scene->table_at, 0.09, scene->table_height + PALM_GAP, shoulder,
                              s * 0.09),
                down, ahead);
      break;
    case SW_FIGURE_PLACE_CHAIR_BACK:
      in_world (
          hold, pin, fist,
          on_furniture (scene->chair_where, scene->chair_at, 0.0, scene->chair_top + PALM_GAP, shoulder, s * 0.09),
          down, sw_vector (1, 0, -0.2));
      break;
    case SW_FIGURE_PLACE_SEAT:
      in_world (hold, pin, fist, sw_vector (scene->seat_at + 0.02, s * 0.128, scene->seat_height + PALM_GAP - ball), down,
                ahead);
      break;
    case SW_FIGURE_PLACE_THIGH:
      on_piece (hold, body, SW_SIDED (SW_PIECE_THIGH, pin->side), pin, fist, sw_vector (0.050, 0, -0.135),
                sw_vector (-1, 0, 0), sw_vector (0, -0.15, -1));
      break;
    case SW_FIGURE_PLACE_KNEE:
      on_piece (hold, body, SW_SIDED (SW_PIECE_THIGH, pin->side), pin, fist, sw_vector (0.042, 0, -0.205),
                sw_vector (-1, 0, 0), sw_vector (0, -0.15, -1));
      break;
    case SW_FIGURE_PLACE_HIP:
      on_piece (hold, body, SW_PIECE_PELVIS, pin, fist, sw_vector (0.012, 0.092, 0.046), sw_vector (0, -1, 0),
                sw_vector (0.9, 0, -0.45));
      break;
    case SW_FIGURE_PLACE_BELLY:
      on_piece (hold, body, SW_PIECE_LOW_BACK, pin, fist, sw_vector (0.060 + body->belly, 0.045, 0.035),
                sw_vector (-1, 0, 0),
                sw_vector (0, -1, 0.1));
      break;
    case SW_FIGURE_PLACE_CHEST:
      on_piece (hold, body, SW_PIECE_RIBCAGE, pin, fist, sw_vector (0.074, 0.005, 0.075), sw_vector (-1, 0, 0),
                sw_vector (0, -1, 0.3));
      break;
    case SW_FIGURE_PLACE_OTHER_SHOULDER:
      on_piece (hold, body, SW_PIECE_RIBCAGE, pin, fist,
                sw_vector (pin->side == outer ? 0.078 : 0.056, -0.075, 0.108), sw_vector (-1, 0, 0),
                sw_vector (0, -1, 0.6));
      break;
    case SW_FIGURE_PLACE_FOREHEAD:
      on_piece (hold, body, SW_PIECE_HEAD, pin, fist, sw_vector (0.070, 0.004, 0.066), sw_vector (-1, 0, 0),
                sw_vector (0, -1, 0.2));
      break;
    case SW_FIGURE_PLACE_BACK_OF_HEAD:
      on_piece (hold, body, SW_PIECE_HEAD, pin, fist, sw_vector (-0.058, 0.015, 0.050), sw_vector (1, 0, 0),
                sw_vector (0, -1, 0.5));
      break;
    case SW_FIGURE_PLACE_FACE:
      in_world (hold, pin, fist, sw_vector (head.x + 0.15, head.y + 0.02 * s, BACK_OF_HAND), up,
                sw_vector (0.3, headward.y, 0));
      break;
    case SW_FIGURE_PLACE_POINT:
      hold->attach = -1;
      hold->grip = sw_grip_for_palm (pin->side, fist,
                                     sw_vector (body->pieces[SW_PIECE_PELVIS].at.x + pin->offset[0],
                                                body->pieces[SW_PIECE_PELVIS].at.y + pin->offset[1], pin->offset[2]),
                                     down, along);
      break;
    case SW_FIGURE_PLACE_STEP:
    case SW_FIGURE_PLACE_FLOOR:
    default:
      /* Under the shoulder, or where the arm's angles lead. A little ahead, which spares the wrist. */
      if (!own_arm)
        hand = sw_add (shoulder, sw_scale (sw_unit (along, ahead), 0.085));
      in_world (hold, pin, fist, sw_vector (hand.x, hand.y, PALM_GAP + height), down, along);
      break;
    }
}

/* Where a knee points that nobody moved: as in the start, turned with the pelvis. */
static SwVector
kept_knee (const SwSolver *solver,
           const SwBody   *now,
           SwFigureSide    side)
{
  const SwBody *start = &solver->keys[0].body;
  SwVector hip = sw_body_get_hip (start, side);
  SwVector line = sw_unit (sw_sub (start->pieces[SW_SIDED (SW_PIECE_FOOT, side)].at, hip), down);
  SwVector bend = sw_across (sw_sub (start->pieces[SW_SIDED (SW_PIECE_SHANK, side)].at, hip), line);
  SwMatrix before = start->pieces[SW_PIECE_PELVIS].axes;

  return sw_apply (now->pieces[SW_PIECE_PELVIS].axes, sw_apply (sw_transpose (before), bend));
}

/* A hand that stays where the start has it: the same elbow while the shoulder stays, too, else one near it. */
static void
keep_hand (SwHold         *hold,
           const SwSolver *solver,
           const SwBody   *now,
           SwFigureSide    side,
           SwFigurePlace   place)
{
  const SwBody *start = &solver->keys[0].body;
  SwVector elbow = start->pieces[SW_SIDED (SW_PIECE_FOREARM, side)].at;
  SwVector shoulder = now->pieces[SW_SIDED (SW_PIECE_UPPER_ARM, side)].at;
  double moved = sw_length (sw_sub (shoulder, start->pieces[SW_SIDED (SW_PIECE_UPPER_ARM, side)].at));

  hold->grip = solver->keys[0].grips[side];
  hold->toward = sw_sub (elbow, shoulder);
  hold->search = moved > 0.004;
  hold->slides = place == SW_FIGURE_PLACE_START;
  if (hold->search && sw_joints_get (&solver->keys[0].joints, SW_ANGLE_ELBOW_BEND, side) < 14)
    hold->toward = easy_elbow (place, now->pieces[SW_PIECE_RIBCAGE].axes, side);
}

/* The forearm flat on the floor, ahead of an elbow that stands under the shoulder, or stays where it stood. */
static void
hold_forearm_on_floor (SwHold            *hold,
                       const SwSolver    *solver,
                       const SwFigurePin *pin,
                       const SwBody      *body,
                       gboolean           is_start)
{
  SwMatrix trunk = body->pieces[SW_PIECE_RIBCAGE].axes;
  SwVector shoulder = body->pieces[SW_SIDED (SW_PIECE_UPPER_ARM, pin->side)].at;
  SwVector along = sw_unit (sw_across (fabs (trunk.y.z) > 0.6 ? trunk.x : trunk.z, up), ahead);
  double s = sw_side_sign (pin->side);
  SwVector under = sw_vector (shoulder.x + pin->offset[0], shoulder.y + s * pin->offset[1], SW_ELBOW_HEIGHT);
  gboolean kept = !is_start && solver->keys[0].held[pin->side];
  SwVector elbow = kept ? solver->keys[0].body.pieces[SW_SIDED (SW_PIECE_FOREARM, pin->side)].at : under;
  double drop = SW_ELBOW_HEIGHT - WRIST_ON_FLOOR;
  SwVector wrist = sw_add (elbow, sw_scale (along, sqrt (SW_FOREARM * SW_FOREARM - drop * drop)));

  wrist.z = WRIST_ON_FLOOR;
  hold->attach = -1;
  hold->grip = kept ? solver->keys[0].grips[pin->side] : sw_grip_for_palm (pin->side, FALSE, wrist, down, along);
  if (!kept)
    hold->grip.at = wrist;
  hold->toward = sw_sub (elbow, shoulder);
}

/* The forearm upright on the wall: the elbow as far up as the upper arm reaches, the hand above it. */
static void
hold_forearm (SwHold            *hold,
              const SwSolver    *solver,
              const SwFigurePin *pin,
              const SwBody      *body)
{
  SwVector shoulder = body->pieces[SW_SIDED (SW_PIECE_UPPER_ARM, pin->side)].at;
  double s = sw_side_sign (pin->side);
  double x = solver->scene.wall_at - 0.022;
  double y = shoulder.y + s * (pin->offset[1] - 0.015);
  double reach
      = SW_UPPER_ARM * SW_UPPER_ARM - (x - shoulder.x) * (x - shoulder.x) - (y - shoulder.y) * (y - shoulder.y);
  SwVector elbow = sw_vector (x, y, shoulder.z + sqrt (MAX (reach, 0.0)));
  SwVector wrist = sw_add (elbow, sw_vector (0.006, -s * 0.012, sqrt (SW_FOREARM * SW_FOREARM - 0.00018)));
  SwVector contact = sw_add (wrist, sw_vector (0.016, 0, 0.050));

  hold->attach = -1;
  hold->grip = sw_grip_for_palm (pin->side, FALSE, contact, sw_vector (0.45, -s * 0.89, 0), up);
  hold->grip.at = wrist;
  hold->toward = sw_sub (elbow, shoulder);
}

/* The forearm flat on the table, the elbow as far ahead as the upper arm reaches down to it. */
static void
hold_forearm_on_table (SwHold            *hold,
                       const SwScene     *scene,
                       const SwFigurePin *pin,
                       const SwBody      *body)
{
  SwVector shoulder = body->pieces[SW_SIDED (SW_PIECE_UPPER_ARM, pin->side)].at;
  double s = sw_side_sign (pin->side);
  double y = shoulder.y + s * (pin->offset[1] + 0.02);
  double z = scene->table_height + SW_ELBOW_HEIGHT;
  double reach
      = SW_UPPER_ARM * SW_UPPER_ARM - (z - shoulder.z) * (z - shoulder.z) - (y - shoulder.y) * (y - shoulder.y);
  SwVector elbow = sw_vector (shoulder.x + sqrt (MAX (reach, 0.0)), y, z);
  SwVector along = sw_unit (sw_vector (1, -s * 0.35, 0), ahead);
  double drop = SW_ELBOW_HEIGHT - WRIST_ON_FLOOR;
  SwVector wrist = sw_add (elbow, sw_scale (along, sqrt (SW_FOREARM * SW_FOREARM - drop * drop)));

  wrist.z = scene->table_height + WRIST_ON_FLOOR;
  hold->attach = -1;
  hold->grip = sw_grip_for_palm (pin->side, FALSE, wrist, down, along);
  hold->grip.at = wrist;
  hold->toward = sw_sub (elbow, shoulder);
}

/* Whether a foot stands on the floor in the start already, and stays there. */
static gboolean
keeps_floor (const SwSolver    *solver,
             const SwFigurePin *pin,
             gboolean           is_start)
{
  int limb = (int) SW_LIMB_RIGHT_LEG + (int) pin->side;

  return !is_start && solver->keys[0].held[limb] && solver->poses[0].pins[limb].to == pin->to
         && memcmp (pin->offset, solver->poses[0].pins[limb].offset, sizeof pin->offset) == 0;
}

/* Where a foot that is put on the step has its ankle: as near to where it is as the step allows. */
static SwVector
on_step (const SwScene *scene,
         SwVector       foot)
{
  return sw_vector (CLAMP (foot.x, scene->step_low.x + 0.045, MAX (scene->step_low.x + 0.045, scene->step_high.x - 0.105)),
                    CLAMP (foot.y, scene->step_low.y + 0.035, scene->step_high.y - 0.035), 0);
}

static void
hold_foot (SwHold            *hold,
           const SwSolver    *solver,
           const SwFigurePin *pin,
           const SwPose      *pose,
           const SwSolved    *now,
           gboolean           is_start)
{
  const SwBody *body = &now->body;
  SwPlacement foot = body->pieces[SW_SIDED (SW_PIECE_FOOT, pin->side)];
  SwFigureSide other_side = pin->side == SW_FIGURE_LEFT ? SW_FIGURE_RIGHT : SW_FIGURE_LEFT;
  SwPlacement other = body->pieces[SW_SIDED (SW_PIECE_FOOT, other_side)];
  double s = sw_side_sign (pin->side);

  hold->attach = -1;
  hold->grip = foot;
  if (pin->to == SW_FIGURE_PLACE_OTHER_FOOT)
    {
      SwVector over = sw_vector (pin->offset[0], s * (0.050 + pin->offset[1]), pin->offset[2]);

      hold->attach = SW_SIDED (SW_PIECE_FOOT, other_side);
      hold->grip = (SwGrip){ other.axes, sw_place (other, over) };
    }
  else if (pin->to == SW_FIGURE_PLACE_START
           || ((pin->to == SW_FIGURE_PLACE_FLOOR || pin->to == SW_FIGURE_PLACE_STEP) && keeps_floor (solver, pin, is_start)))
    {
      SwPlacement start = is_start ? foot : solver->keys[0].body.pieces[SW_SIDED (SW_PIECE_FOOT, pin->side)];
      gboolean heel = pose->level[pin->side] && pose->pitch_deg[pin->side] < 0;
      SwVector pivot = sw_vector (heel ? SW_HEEL_X : SW_BALL_X, 0, -SW_ANKLE_HEIGHT);
      SwVector kept = sw_place (start, pivot);
      double yaw = SW_DEG (atan2 (start.axes.x.y, start.axes.x.x));

      hold->grip.axes = start.axes;
      if (pose->level[pin->side])
        hold->grip.axes = sw_multiply (sw_turn_z (yaw), sw_turn_y (pose->pitch_deg[pin->side]));
      /* From the heel to the ball or back the foot rolls over its whole sole. */
      if (!is_start && solver->keys[0].level[pin->side]
          && solver->keys[0].pitch_deg[pin->side] * pose->pitch_deg[pin->side] < 0)
        {
          SwVector before = sw_vector (heel ? SW_BALL_X : SW_HEEL_X, 0, -SW_ANKLE_HEIGHT);
          SwVector along = sw_vector (cos (SW_RAD (yaw)), sin (SW_RAD (yaw)), 0);

          kept = sw_add (sw_place (start, before), sw_scale (along, pivot.x - before.x));
        }
      hold->grip.at = sw_sub (kept, sw_apply (hold->grip.axes, pivot));
      if (is_start)
        hold->grip.at.z += now->stand[pin->side];
      /* What is kept from the start has its offset already. */
      if (pin->to == SW_FIGURE_PLACE_START)
        hold->grip.at = sw_add (hold->grip.at, sw_vector (pin->offset[0], s * pin->offset[1], pin->offset[2]));
    }
  else
    {
      SwVector at = pin->to == SW_FIGURE_PLACE_POINT
                        ? sw_vector (body->pieces[SW_PIECE_PELVIS].at.x, body->pieces[SW_PIECE_PELVIS].at.y, 0)
                        : sw_vector (foot.at.x, foot.at.y, 0);
      double stand = pin->to == SW_FIGURE_PLACE_POINT ? 0 : now->stand[pin->side];
      double out = pin->to == SW_FIGURE_PLACE_POINT ? pin->offset[1] : s * pin->offset[1];
      double yaw = pin->to == SW_FIGURE_PLACE_POINT ? 0 : SW_DEG (atan2 (foot.axes.x.y, foot.axes.x.x));

      double pitch = pose->level[pin->side] ? pose->pitch_deg[pin->side] : 0;
      SwVector pivot = sw_vector (pitch < 0 ? SW_HEEL_X : SW_BALL_X, 0, -SW_ANKLE_HEIGHT);

      if (pin->to == SW_FIGURE_PLACE_STEP)
        at = on_step (&solver->scene, foot.at);
      /* Heel or ball touches. */
      hold->grip.axes = sw_multiply (sw_turn_z (yaw), sw_turn_y (pitch));
      hold->grip.at = sw_add (at, sw_vector (pin->offset[0], out, stand + pin->offset[2]));
      hold->grip.at.z -= sw_apply (hold->grip.axes, pivot).z;
    }
}

/**
 * sw_hold_find:
 * @hold: (out): where the limb is held
 * @solver: the figure; its scene is measured, its start solved unless @is_start
 * @pose: the pose
 * @now: the body in it so far: everything but the held limbs
 * @limb: which limb
 * @is_start: whether @pose is the first
 */
void
sw_hold_find (SwHold         *hold,
              const SwSolver *solver,
              const SwPose   *pose,
              const SwSolved *now,
              SwLimb          limb,
              gboolean        is_start)
{
  const SwFigurePin *pin = &pose->pins[limb];
  const SwBody *body = &now->body;
  SwFigureSide side = pin->side;
  gboolean is_leg = limb >= SW_LIMB_RIGHT_LEG;
  SwMatrix trunk = body->pieces[is_leg ? SW_PIECE_PELVIS : SW_PIECE_RIBCAGE].axes;

  *hold = (SwHold){ .attach = -1 };
  if (is_leg)
    {
      hold_foot (hold, solver, pin, pose, now, is_start);
      /* Angles tell where the knee points; without any it goes with the pelvis. */
      hold->toward = body->pieces[SW_SIDED (SW_PIECE_THIGH, side)].axes.x;
      if (!is_start && !pose->new_leg[side])
        hold->toward = kept_knee (solver, body, side);
    }
  else if (pin->limb == SW_FIGURE_LIMB_FOREARM)
    {
      if (pin->to == SW_FIGURE_PLACE_FLOOR || pin->to == SW_FIGURE_PLACE_START)
        hold_forearm_on_floor (hold, solver, pin, body, is_start);
      else if (pin->to == SW_FIGURE_PLACE_TABLE)
        hold_forearm_on_table (hold, &solver->scene, pin, body);
      else
        hold_forearm (hold, solver, pin, body);
      return;
    }
  else if (!is_start && solver->keys[0].held[limb] && solver->keys[0].attach[limb] < 0
           && (pin->to == SW_FIGURE_PLACE_START || pin->to == solver->poses[0].pins[limb].to)
           && (pin->to == SW_FIGURE_PLACE_START
               || memcmp (pin->offset, solver->poses[0].pins[limb].offset, sizeof pin->offset) == 0))
    keep_hand (hold, solver, body, side, solver->poses[0].pins[limb].to);
  else if (pin->to == SW_FIGURE_PLACE_START)
    {
      hold->grip = (is_start ? body : &solver->keys[0].body)->pieces[SW_SIDED (SW_PIECE_HAND, side)];
      hold->toward = blend (trunk, side, 0, 0.4, -1, 0);
      hold->search = TRUE;
    }
  else
    {
      hold_hand (hold, solver, pin, body, pose->fists[side], pose->own_arm[side]);
      hold->toward = easy_elbow (pin->to, trunk, side);
      hold->search = TRUE;
    }

  if (pin->toward != SW_FIGURE_TOWARD_AUTO)
    hold->toward = find_toward (pin->toward, trunk, side);
  else if (!is_leg && pose->own_arm[side])
    {
      SwVector shoulder = body->pieces[SW_SIDED (SW_PIECE_UPPER_ARM, side)].at;
      SwVector line = sw_unit (sw_sub (body->pieces[SW_SIDED (SW_PIECE_HAND, side)].at, shoulder), down);
      SwVector elbow = sw_across (sw_sub (body->pieces[SW_SIDED (SW_PIECE_FOREARM, side)].at, shoulder), line);

      if (sw_length (elbow) > 0.02)
        hold->toward = elbow;
    }
}
