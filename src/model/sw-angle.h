/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * SwFigureSide:
 * @SW_FIGURE_RIGHT: the body's right
 * @SW_FIGURE_LEFT: the body's left
 */
typedef enum
{
  SW_FIGURE_RIGHT,
  SW_FIGURE_LEFT,
} SwFigureSide;

/**
 * SwAngle:
 *
 * Every joint angle a pose may set. Those of the spine and head come first, once each; the rest exist on both
 * sides. Zero is standing with hanging arms, palms to the thighs, thumbs forward. Signs and zeros stand in the
 * table in sw-angle.c.
 */
typedef enum
{
  SW_ANGLE_LOW_BACK_BEND,
  SW_ANGLE_LOW_BACK_SIDE,
  SW_ANGLE_LOW_BACK_TURN,
  SW_ANGLE_UPPER_BACK_BEND,
  SW_ANGLE_UPPER_BACK_SIDE,
  SW_ANGLE_UPPER_BACK_TURN,
  SW_ANGLE_NECK_BEND,
  SW_ANGLE_NECK_SIDE,
  SW_ANGLE_NECK_TURN,
  SW_ANGLE_HEAD_BEND,
  SW_ANGLE_HEAD_SIDE,
  SW_ANGLE_HEAD_TURN,
  SW_ANGLE_BLADE_FORWARD,
  SW_ANGLE_BLADE_UP,
  SW_ANGLE_SHOULDER_RAISE,
  SW_ANGLE_SHOULDER_DIRECTION,
  SW_ANGLE_SHOULDER_TURN,
  SW_ANGLE_ELBOW_BEND,
  SW_ANGLE_FOREARM_PALM_UP,
  SW_ANGLE_WRIST_BEND,
  SW_ANGLE_WRIST_THUMBWARD,
  SW_ANGLE_HIP_BEND,
  SW_ANGLE_HIP_OUT,
  SW_ANGLE_HIP_TURN,
  SW_ANGLE_KNEE_BEND,
  SW_ANGLE_ANKLE_UP,
  SW_ANGLE_ANKLE_IN,
  SW_ANGLE_TOES_UP,
  SW_ANGLE_FINGERS_KNUCKLE,
  SW_ANGLE_FINGERS_CURL,
  SW_ANGLE_FINGERS_TIPS,
  SW_ANGLE_FINGERS_SPREAD,
  SW_ANGLE_FINGERS_INDEX,
  SW_ANGLE_FINGERS_MIDDLE,
  SW_ANGLE_FINGERS_RING,
  SW_ANGLE_THUMB_OUT,
  SW_ANGLE_THUMB_ACROSS,
  SW_ANGLE_THUMB_BEND,
} SwAngle;

#define SW_N_ANGLES (SW_ANGLE_THUMB_BEND + 1)
#define SW_FIRST_SIDED_ANGLE SW_ANGLE_BLADE_FORWARD
#define SW_N_SLOTS (SW_FIRST_SIDED_ANGLE + 2 * (SW_N_ANGLES - SW_FIRST_SIDED_ANGLE))
#define SW_ANGLE_BEYOND_DEG 15.0

/**
 * SwAngleInfo:
 * @element: the element that carries it
 * @attribute: its attribute
 * @joint_words: the joint in plain words
 * @norm_low_deg: lower end of the published range, or of the drawn range when nothing is published
 * @norm_high_deg: upper end of it
 * @source: where the range comes from
 * @low_deg: least angle drawn without a warning; differs from the norm only with a @reason
 * @high_deg: greatest angle drawn without a warning
 * @reason: (nullable): why drawing needs more than the norm
 *
 * What is known of one angle. Values further than SW_ANGLE_BEYOND_DEG outside @low_deg..@high_deg are refused.
 */
typedef struct
{
  const char *element;
  const char *attribute;
  const char *joint_words;
  double norm_low_deg;
  double norm_high_deg;
  const char *source;
  double low_deg;
  double high_deg;
  const char *reason;
} SwAngleInfo;

const SwAngleInfo *sw_angle_get_info (SwAngle angle);
gboolean sw_angle_is_sided (SwAngle angle);
int sw_angle_get_slot (SwAngle    angle,
                       SwFigureSide side);
SwAngle sw_angle_from_slot (int         slot,
                            SwFigureSide *side);
gboolean sw_angle_find (const char *element,
                        const char *attribute,
                        SwAngle    *angle);
gboolean sw_angle_is_element (const char *element);
double sw_angle_get_mirror_sign (SwAngle angle);
double sw_angle_get_excess (SwAngle angle,
                            double  value_deg);

G_END_DECLS
