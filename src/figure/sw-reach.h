/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-skeleton.h"

G_BEGIN_DECLS

/* How much of a limb's length a reach may use: a limb that is quite straight has no turn. */
#define SW_REACH_STRETCH 0.9995

/**
 * SwGrip:
 * @at: the wrist, or the ankle
 * @axes: how the hand or foot lies
 *
 * Where the end of a limb has to be.
 */
typedef SwPlacement SwGrip;

SwGrip sw_grip_for_palm (SwFigureSide side,
                         gboolean     fist,
                         SwVector     contact,
                         SwVector     normal,
                         SwVector     fingers);
void sw_reach_arm (SwBody       *body,
                   SwJoints     *joints,
                   SwFigureSide  side,
                   SwGrip        grip,
                   SwVector      toward);
void sw_reach_arm_searching (SwBody       *body,
                             SwJoints     *joints,
                             SwFigureSide  side,
                             SwGrip        grip,
                             SwVector      toward,
                             gboolean      fingers_free);
void sw_reach_leg (SwBody       *body,
                   SwJoints     *joints,
                   SwFigureSide  side,
                   SwGrip        grip,
                   SwVector      toward);
void sw_joints_read_arm (const SwBody *body,
                         SwJoints     *joints,
                         SwFigureSide  side);
void sw_joints_read_leg (const SwBody *body,
                         SwJoints     *joints,
                         SwFigureSide  side);
SwGrip sw_grip_mix (SwGrip a,
                    SwGrip b,
                    double t);
SwGrip sw_grip_mix_feet (SwGrip a,
                         SwGrip b,
                         double pitch_a,
                         double pitch_b,
                         double t);

G_END_DECLS
