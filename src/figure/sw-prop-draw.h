/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-motif.h"
#include "sw-paper.h"
#include "sw-solver.h"

G_BEGIN_DECLS

/**
 * SwGround:
 * @low: least x and y that lie on it
 * @high: greatest
 *
 * How far mat or floor have to reach.
 */
typedef struct
{
  SwVector low;
  SwVector high;
} SwGround;

void sw_ground_measure (SwGround       *ground,
                        const SwSolver *solver);
void sw_props_draw_behind (const SwPaper  *paper,
                           const SwCamera *camera,
                           const SwSolver *solver,
                           const SwGround *ground,
                           const SwBody   *body,
                           double          above,
                           double          below);
void sw_props_add_extent (SwExtent       *extent,
                          SwExtent       *furniture,
                          const SwCamera *camera,
                          const SwSolver *solver,
                          const SwGround *ground,
                          double          above,
                          double          below);
void sw_props_add_furniture (SwMotifs       *items,
                             const SwCamera *camera,
                             const SwSolver *solver,
                             const SwGround *ground,
                             const SwBody   *body,
                             double          above,
                             double          below,
                             double          tolerance);
void sw_props_add_items (SwMotifs        *items,
                         const SwCamera *camera,
                         const SwSolver *solver,
                         const SwSolved *now,
                         double          tolerance);
void sw_prop_draw_item (const SwPaper *paper,
                        const SwMotif  *item);
void sw_props_draw_bands (const SwPaper  *paper,
                          const SwCamera *camera,
                          const SwSolver *solver,
                          const SwBody   *body,
                          int             part);

G_END_DECLS
