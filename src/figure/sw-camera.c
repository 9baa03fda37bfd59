/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The view of the figure: parallel lines stay parallel. */
#include "config.h"

#include "sw-camera.h"

/**
 * sw_camera:
 * @turn_deg: 0 sees the front, -90 the right side with the person facing right, 90 the left side
 * @tilt_deg: 0 level, 90 from straight above
 *
 * Returns: the view
 */
SwCamera
sw_camera (double turn_deg,
           double tilt_deg)
{
  double ca = cos (SW_RAD (turn_deg));
  double sa = sin (SW_RAD (turn_deg));
  double ce = cos (SW_RAD (tilt_deg));
  double se = sin (SW_RAD (tilt_deg));

  return (SwCamera){ { -sa, ca, 0 }, { -se * ca, -se * sa, ce }, { ce * ca, ce * sa, se } };
}
