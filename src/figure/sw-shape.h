/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-skeleton.h"

G_BEGIN_DECLS

/**
 * SwPart:
 *
 * The parts of the drawing, each with an outline of its own. Those of the limbs stand in pairs, right before left.
 */
typedef enum
{
  SW_PART_TRUNK,
  SW_PART_NECK,
  SW_PART_HEAD,
  SW_PART_UPPER_ARM,
  SW_PART_FOREARM = SW_PART_UPPER_ARM + 2,
  SW_PART_HAND = SW_PART_FOREARM + 2,
  SW_PART_THIGH = SW_PART_HAND + 2,
  SW_PART_SHANK = SW_PART_THIGH + 2,
  SW_PART_FOOT = SW_PART_SHANK + 2,
  SW_N_PARTS = SW_PART_FOOT + 2,
  /* Of their own only in close pictures of hands and feet. */
  SW_PART_THUMB = SW_N_PARTS,
  SW_PART_INDEX = SW_PART_THUMB + 2,
  SW_PART_MIDDLE = SW_PART_INDEX + 2,
  SW_PART_RING = SW_PART_MIDDLE + 2,
  SW_PART_LITTLE = SW_PART_RING + 2,
  SW_PART_BIG_TOE = SW_PART_LITTLE + 2,
  SW_PART_SMALL_TOES = SW_PART_BIG_TOE + 2,
  SW_N_FINE_PARTS = SW_PART_SMALL_TOES + 2,
} SwPart;

#define SW_MAX_HULLS 4
#define SW_MAX_HULL_BLOBS 4

/**
 * SwHull:
 *
 * The convex hull of one to four ellipsoids.
 */
typedef struct
{
  SwBlob blobs[SW_MAX_HULL_BLOBS];
  int n_blobs;
} SwHull;

/**
 * SwShape:
 *
 * A part as one to four hulls.
 */
typedef struct
{
  SwHull hulls[SW_MAX_HULLS];
  int n_hulls;
} SwShape;

static inline void
sw_hull_add (SwHull  *hull,
             SwPiece  piece,
             SwVector centre,
             SwVector half)
{
  hull->blobs[hull->n_blobs++] = (SwBlob){ piece, centre, half };
}

static inline void
sw_hull_add_ball (SwHull  *hull,
                  SwPiece  piece,
                  SwVector centre,
                  double   radius)
{
  sw_hull_add (hull, piece, centre, sw_vector (radius, radius, radius));
}

static inline SwHull *
sw_shape_next_hull (SwShape *shape)
{
  SwHull *hull = &shape->hulls[shape->n_hulls++];

  hull->n_blobs = 0;
  return hull;
}

/* In close pictures the forearm and the shank end here, in parts of stature below elbow and knee. */
#define SW_FOREARM_CUT 0.078
#define SW_SHANK_CUT 0.128

void sw_shape_get (const SwBody *body,
                   SwPart        part,
                   SwShape      *shape);
gboolean sw_shape_get_fine (const SwBody *body,
                            SwPart        part,
                            SwShape      *shape);
SwDigit sw_part_get_digit (SwPart part);
int sw_part_get_limb (SwPart part);
int sw_part_get_parent (SwPart part);
SwPiece sw_part_get_piece (SwPart part);
int sw_part_get_side (SwPart part);
double sw_part_get_joint_radius (SwPart part);
void sw_part_get_line (const SwBody *body,
                       SwPart        part,
                       SwVector     *from,
                       SwVector     *to);
gboolean sw_part_get_hem (SwPart  part,
                          SwBlob *ring);
double sw_part_get_lowest (const SwBody *body,
                           SwPart        part);

G_END_DECLS
