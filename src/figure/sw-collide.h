/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-solid.h"

G_BEGIN_DECLS

#define SW_MAX_COLLISIONS 32

/**
 * SwCollision:
 * @thing: what the body is in, untranslated
 * @part: what of the body
 * @depth: how deep it is in beyond what may give way, parts of stature; negative by how far it stays away from what it
 *   should touch
 *
 * A part of the body that is in a thing, or stays away from what it should touch.
 */
typedef struct
{
  const char *thing;
  SwPart part;
  double depth;
} SwCollision;

int sw_collisions_find (const SwSolver *solver,
                        const SwPose   *pose,
                        const SwSolved *solved,
                        gboolean        is_written,
                        SwCollision     collisions[SW_MAX_COLLISIONS]);
double sw_solid_get_part_gap (const SwSolid *solid,
                              const SwBody  *body,
                              SwPart         part);

G_END_DECLS
