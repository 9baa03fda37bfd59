/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-outline.h"

G_BEGIN_DECLS

#define SW_OUTLINE_MAX_NODES (4 * SW_OUTLINE_DIRECTIONS)

/**
 * SwOutlineNode:
 * @x: where it is
 * @y: where it is
 * @in_turn: the direction that the outline faces where it arrives, in steps of the sampled ones
 * @in_x: that direction
 * @in_y: that direction
 * @out_turn: the direction it faces where it leaves; another one at a corner
 * @out_x: that direction
 * @out_y: that direction
 * @bridge: whether a straight line leads from here to the next, touching two ellipsoids
 * @to_bridge: how many nodes on the next one is from which such a line leads, 0 for this one; where there is none more
 *   than there are nodes
 *
 * A place of an outline.
 */
typedef struct
{
  double x;
  double y;
  double in_turn;
  double in_x;
  double in_y;
  double out_turn;
  double out_x;
  double out_y;
  gboolean bridge;
  int to_bridge;
} SwOutlineNode;

/**
 * SwOutlineNodes:
 *
 * The places of an outline, counter-clockwise, while a curve is laid through them.
 */
typedef struct
{
  const SwEgg *eggs;
  int n_eggs;
  double tolerance;
  SwOutlineNode nodes[SW_OUTLINE_MAX_NODES];
  int n;
} SwOutlineNodes;

double sw_outline_nodes_get_reach (const SwOutlineNodes *self,
                                   double                x,
                                   double                y);
gboolean sw_outline_nodes_lay_curve (const SwOutlineNodes *self,
                                     SwCurve              *curve);

G_END_DECLS
