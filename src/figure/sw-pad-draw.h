/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-motif.h"
#include "sw-solver.h"

G_BEGIN_DECLS

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
