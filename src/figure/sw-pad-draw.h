/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-motif.h"
#include "sw-solver.h"

G_BEGIN_DECLS

double sw_pad_find_roller (const SwSolver         *solver,
                           const SwFigurePropSpec *prop,
                           const SwBody           *body,
                           SwVector               *low,
                           SwVector               *high);
void sw_pad_find_cushion (const SwSolver         *solver,
                          const SwFigurePropSpec *prop,
                          SwVector               *low,
                          SwVector               *high);
double sw_pad_get_pillow_height (const SwSolver         *solver,
                                 const SwFigurePropSpec *prop);
double sw_pad_get_pillow_gap (const SwFigurePropSpec *prop,
                              const SwBody           *body);
void sw_pad_add_roller (SwMotifs       *motifs,
                        int             nth,
                        const SwCamera *camera,
                        const SwSolver *solver,
                        const SwBody   *body,
                        double          tolerance);
void sw_pad_add_cushion (SwMotifs       *motifs,
                         int             nth,
                         const SwCamera *camera,
                         const SwSolver *solver,
                         double          tolerance);

G_END_DECLS
