/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-camera.h"
#include "sw-shape.h"

G_BEGIN_DECLS

#define SW_OUTLINE_MAX 96

/**
 * SwOutline:
 *
 * A convex outline on paper, counter-clockwise, without its last point repeated.
 */
typedef struct
{
  struct
  {
    double x;
    double y;
  } points[SW_OUTLINE_MAX];
  int n_points;
  SwExtent extent;
} SwOutline;

/**
 * SwEgg:
 * @at: the centre as seen
 * @xx: with the others, the ellipsoid as seen: a point p on it has p' S^-1 p = 1
 *
 * An ellipsoid as the camera sees it.
 */
typedef struct
{
  SwSpot at;
  double xx;
  double xy;
  double yy;
  double xd;
  double yd;
  double dd;
} SwEgg;

SwEgg sw_egg (const SwCamera *camera,
              SwPlacement     frame,
              SwVector        centre,
              SwVector        half);
gboolean sw_egg_get_front (const SwEgg *egg,
                           double       x,
                           double       y,
                           double      *depth);
void sw_outline_from_eggs (SwOutline   *outline,
                           const SwEgg *eggs,
                           int          n_eggs,
                           double       tolerance);
void sw_outline_from_hull (SwOutline      *outline,
                           const SwBody   *body,
                           const SwHull   *hull,
                           const SwCamera *camera,
                           double          tolerance);
void sw_outline_clear (SwOutline *outline);
void sw_outline_add (SwOutline *outline,
                     double     x,
                     double     y);
gboolean sw_outline_holds (const SwOutline *outline,
                           double           x,
                           double           y);
void sw_outline_clip (const SwOutline *outline,
                      const SwOutline *to,
                      SwOutline       *clipped);
void sw_outline_cut (const SwOutline *outline,
                     double           x,
                     double           y,
                     double           normal_x,
                     double           normal_y,
                     SwOutline       *kept);

G_END_DECLS
