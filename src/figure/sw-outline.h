/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-camera.h"
#include "sw-curve.h"
#include "sw-shape.h"

G_BEGIN_DECLS

/* A multiple of eight, so that what is farthest left, right, up and down is among them, and each half can be looked
 * at in fours. */
#define SW_OUTLINE_DIRECTIONS 48

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

/**
 * SwOutline:
 * @reaches: how far it goes in each of the directions, from the first to the right on counter-clockwise
 * @extent: round it
 * @eggs: the ellipsoids that it encloses, until the curve is laid
 * @n_eggs: how many
 * @tolerance: how far the curve may leave the true outline, parts of stature
 * @curve: (nullable): as it is drawn, counter-clockwise; laid when it is asked for, since many outlines only tell what
 *   hides what
 *
 * A convex outline on paper.
 */
typedef struct
{
  float reaches[SW_OUTLINE_DIRECTIONS];
  SwExtent extent;
  SwEgg *eggs;
  int n_eggs;
  double tolerance;
  SwCurve *curve;
} SwOutline;

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
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SwOutline, sw_outline_clear)
const SwCurve *sw_outline_get_curve (SwOutline *outline);
gboolean sw_outline_holds (const SwOutline *outline,
                           double           x,
                           double           y);

G_END_DECLS
