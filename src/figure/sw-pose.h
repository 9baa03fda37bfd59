/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-shape.h"

G_BEGIN_DECLS

/**
 * SwLimb:
 *
 * The four limbs that can be held in place.
 */
typedef enum
{
  SW_LIMB_RIGHT_ARM,
  SW_LIMB_LEFT_ARM,
  SW_LIMB_RIGHT_LEG,
  SW_LIMB_LEFT_LEG,
  SW_N_LIMBS,
} SwLimb;

/**
 * SwBaseInfo:
 * @anchor: what stays in place when the figure does not say
 * @supports: set of #SwPart bits that may touch the floor and carry the body
 * @reaches_floor: whether the lean follows from hands that reach the floor
 * @on_mat: whether it lies or kneels on a mat rather than on the floor
 * @view_turn_deg: default camera
 * @view_tilt_deg: default camera
 *
 * What a base pose means beyond its angles.
 */
typedef struct
{
  SwFigureAnchor anchor;
  guint supports;
  gboolean reaches_floor;
  gboolean on_mat;
  double view_turn_deg;
  double view_tilt_deg;
} SwBaseInfo;

/**
 * SwPose:
 * @joints: angles as written, base included; the pelvis at the origin
 * @level: by side, whether the sole's slope rules the ankle
 * @pitch_deg: by side, that slope
 * @fists: by side
 * @breath: whether breath goes in or out
 * @eyes_closed: whether the eyes are
 * @belly: how far the belly is blown out
 * @pinned: by limb, whether it is held
 * @pins: by limb, where; only what is pinned counts
 * @own_arm: by side, whether the arm's angles were written rather than taken from the base
 * @new_leg: by side, whether this very pose writes angles of the leg
 * @flat_shank: by side, whether the shank lies on the floor whatever the thigh does
 *
 * A pose with everything inherited filled in, not yet placed on the floor.
 */
typedef struct
{
  SwJoints joints;
  gboolean level[2];
  double pitch_deg[2];
  gboolean fists[2];
  SwFigureBreath breath;
  gboolean eyes_closed;
  double belly;
  gboolean pinned[SW_N_LIMBS];
  SwFigurePin pins[SW_N_LIMBS];
  gboolean own_arm[2];
  gboolean new_leg[2];
  gboolean flat_shank[2];
} SwPose;

const SwBaseInfo *sw_base_get_info (SwFigureBase base);
void sw_pose_resolve (SwPose                *pose,
                      const SwFigureContent *content,
                      int                    n);

G_END_DECLS
