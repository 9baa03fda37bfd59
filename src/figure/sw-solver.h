/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-pose.h"
#include "sw-reach.h"
#include "sw-scene.h"

G_BEGIN_DECLS

/**
 * SwSolved:
 * @joints: every angle, those of held limbs included
 * @body: where that puts the pieces
 * @held: by limb, whether something holds it in place
 * @attach: by limb, the piece it is held to, -1 for the world
 * @grips: by limb, its end in the frame of @attach
 * @missed: by limb, how far the end stays from where it should be, parts of stature
 * @level: by side, whether the sole's slope rules the ankle
 * @pitch_deg: by side, that slope
 * @toes_deg: by side, how far the toes are raised from a level sole
 * @breath: whether breath goes in or out; in between neither
 * @lift: how far the body is above where it would stand, parts of stature
 * @stand: by side, the height of what the foot stands on when it stands
 * @flat_shank: by side, whether the shank lies on the floor whatever the thigh does
 *
 * A pose placed on the floor.
 */
typedef struct
{
  SwJoints joints;
  SwBody body;
  gboolean held[SW_N_LIMBS];
  int attach[SW_N_LIMBS];
  SwGrip grips[SW_N_LIMBS];
  double missed[SW_N_LIMBS];
  gboolean level[2];
  double pitch_deg[2];
  double toes_deg[2];
  SwFigureBreath breath;
  double lift;
  double stand[2];
  gboolean flat_shank[2];
} SwSolved;

/**
 * SwSolver:
 *
 * The written poses of a figure, solved, and what is needed for those in between.
 */
typedef struct
{
  const SwFigureContent *content;
  const SwBaseInfo *base;
  SwScene scene;
  SwPose poses[SW_FIGURE_MAX_POSES];
  SwSolved keys[SW_FIGURE_MAX_POSES];
  int n_keys;
} SwSolver;

void sw_solver_init (SwSolver              *self,
                     const SwFigureContent *content);
void sw_solver_get (const SwSolver *self,
                    double          phase,
                    SwSolved       *solved);
void sw_solver_circle (const SwSolver *self,
                       double          phase,
                       SwSolved       *now);
gboolean sw_solver_moves (const SwSolver *self);

G_END_DECLS
