/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-solver.h"

G_BEGIN_DECLS

/**
 * SwFigureVisit:
 * @solved: a pose on the way
 * @data: what sw_figure_walk() was given
 */
typedef void (*SwFigureVisit) (const SwSolved *solved,
                               gpointer        data);

int sw_figure_content_take_part (const SwFigureContent *content,
                                 int                    first,
                                 SwFigureContent       *part);
void sw_figure_walk (SwFigureSpec  *spec,
                     SwFigureVisit  visit,
                     gpointer       data);

G_END_DECLS
