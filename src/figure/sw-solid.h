/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-prop-draw.h"
#include "sw-solver.h"

G_BEGIN_DECLS

#define SW_MAX_SOLIDS 48

/**
 * SwSolid:
 * @name: what it is, untranslated
 * @low: the least corner of its core
 * @high: the greatest
 * @radius: how far it reaches round its core
 * @soft: how deep what lies on it may sink in, parts of stature
 *
 * A thing that does not let the body through: furniture is a box, a ball is round about a point, a roller about a line.
 */
typedef struct
{
  const char *name;
  SwVector low;
  SwVector high;
  double radius;
  double soft;
} SwSolid;

int sw_solids_find (const SwSolver *solver,
                    const SwBody   *body,
                    SwSolid         solids[SW_MAX_SOLIDS]);
double sw_solid_get_gap (const SwSolid *self,
                         const SwBody  *body,
                         const SwBlob  *from,
                         const SwBlob  *to,
                         double         t,
                         SwVector      *normal);

G_END_DECLS
