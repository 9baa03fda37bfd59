/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-motif.h"
#include "sw-solver.h"

G_BEGIN_DECLS

gboolean sw_ball_is_big (const SwFigurePropSpec *prop);
SwVector sw_ball_find_big (const SwSolver         *solver,
                           const SwFigurePropSpec *prop,
                           const SwBody           *now,
                           double                 *radius);
void sw_ball_add_big (SwMotifs       *motifs,
                      int             nth,
                      const SwCamera *camera,
                      const SwSolver *solver,
                      const SwBody   *body,
                      double          tolerance);
void sw_ball_add_between (SwMotifs               *motifs,
                          int                     nth,
                          const SwFigurePropSpec *prop,
                          const SwCamera         *camera,
                          const SwBody           *body,
                          double                  tolerance);

G_END_DECLS
