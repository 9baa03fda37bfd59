/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-figure.h"

G_BEGIN_DECLS

typedef struct _SwSketches SwSketches;

SwSketches *sw_sketches_new (void);
SwSketches *sw_sketches_ref (SwSketches *self);
void sw_sketches_unref (SwSketches *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwSketches, sw_sketches_unref)
const SwSketch *sw_sketches_get (SwSketches *self,
                                 SwFigure   *figure,
                                 double      width_pt,
                                 double      height_pt);

G_END_DECLS
