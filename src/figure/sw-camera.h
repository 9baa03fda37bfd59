/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-vector.h"

G_BEGIN_DECLS

/**
 * SwCamera:
 * @right: what points to the right on paper
 * @up: what points up on paper
 * @toward: what points to the viewer
 *
 * A view without perspective.
 */
typedef struct
{
  SwVector right;
  SwVector up;
  SwVector toward;
} SwCamera;

/**
 * SwSpot:
 * @x: to the right, parts of stature
 * @y: up
 * @depth: towards the viewer
 *
 * A place as the camera sees it.
 */
typedef struct
{
  double x;
  double y;
  double depth;
} SwSpot;

/**
 * SwExtent:
 *
 * A box on paper; empty while @left > @right.
 */
typedef struct
{
  double left;
  double bottom;
  double right;
  double top;
} SwExtent;

SwCamera sw_camera (double turn_deg,
                    double tilt_deg);

static inline SwSpot
sw_see (const SwCamera *camera,
        SwVector        v)
{
  return (SwSpot){ sw_dot (v, camera->right), sw_dot (v, camera->up), sw_dot (v, camera->toward) };
}

static inline SwExtent
sw_extent_empty (void)
{
  return (SwExtent){ G_MAXDOUBLE, G_MAXDOUBLE, -G_MAXDOUBLE, -G_MAXDOUBLE };
}

static inline void
sw_extent_add (SwExtent *extent,
               double    x,
               double    y)
{
  extent->left = MIN (extent->left, x);
  extent->right = MAX (extent->right, x);
  extent->bottom = MIN (extent->bottom, y);
  extent->top = MAX (extent->top, y);
}

static inline void
sw_extent_join (SwExtent       *extent,
                const SwExtent *other)
{
  extent->left = MIN (extent->left, other->left);
  extent->right = MAX (extent->right, other->right);
  extent->bottom = MIN (extent->bottom, other->bottom);
  extent->top = MAX (extent->top, other->top);
}

static inline gboolean
sw_extent_meets (const SwExtent *a,
                 const SwExtent *b,
                 double          gap)
{
  return a->left < b->right + gap && b->left < a->right + gap && a->bottom < b->top + gap && b->bottom < a->top + gap;
}

G_END_DECLS
