/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-motif.h"
#include "sw-paper.h"

G_BEGIN_DECLS

void sw_ribbon_add_loop (SwMotifs                *motifs,
                         int                      nth,
                         const SwFigurePropSpec  *prop,
                         const SwCamera          *camera,
                         const SwBody            *body,
                         SwVector                 fixed_end);
void sw_ribbon_add_cuff (SwMotifs                *motifs,
                         int                      nth,
                         const SwFigurePropSpec  *prop,
                         const SwCamera          *camera,
                         const SwBody            *body,
                         double                   tolerance);
void sw_ribbon_add_strap (SwMotifs              *motifs,
                          int                    nth,
                          const SwFigureContent *content,
                          const SwCamera        *camera,
                          const SwBody          *body);
void sw_ribbon_add_cable (SwMotifs                *motifs,
                          int                      nth,
                          const SwFigurePropSpec  *prop,
                          const SwCamera          *camera,
                          const SwBody            *body,
                          SwVector                 fixed_end,
                          double                   tolerance);
void sw_ribbon_draw (const SwPaper *paper,
                     const SwMotif *motif);

G_END_DECLS
