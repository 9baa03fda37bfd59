/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-motif.h"
#include "sw-paper.h"

G_BEGIN_DECLS

void sw_body_draw_item (const SwPaper      *paper,
                        const SwMotifs      *items,
                        int                 nth,
                        const SwCamera     *camera,
                        const SwFigureWork *works,
                        int                 n_works,
                        const SwExtent     *behind);
void sw_head_draw (const SwPaper   *paper,
                   const SwMotif    *item,
                   const SwCamera  *camera);
void sw_fine_draw (const SwPaper  *paper,
                   const SwMotif  *item,
                   const SwCamera *camera);
void sw_works_draw (const SwPaper      *paper,
                    const SwMotif       *item,
                    const SwCamera     *camera,
                    const SwFigureWork *works,
                    int                 n_works);

G_END_DECLS
