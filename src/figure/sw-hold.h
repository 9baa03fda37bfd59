/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-solver.h"

G_BEGIN_DECLS

/* A forearm on the floor has its elbow this high. */
#define SW_ELBOW_HEIGHT 0.026

/**
 * SwHold:
 * @grip: where the limb's end has to be, in the world
 * @attach: the piece that carries it, -1 for the world
 * @toward: where elbow or knee point, in the world
 * @search: whether the arm may look for a better elbow
 * @fingers_free: whether the fingers may turn on the palm
 * @slides: whether the hand may slide level where it lies
 *
 * A pin, worked out for one pose.
 */
typedef struct
{
  SwGrip grip;
  int attach;
  SwVector toward;
  gboolean search;
  gboolean fingers_free;
  gboolean slides;
} SwHold;

void sw_hold_find (SwHold         *hold,
                   const SwSolver *solver,
                   const SwPose   *pose,
                   const SwSolved *now,
                   SwLimb          limb,
                   gboolean        is_start);

G_END_DECLS
