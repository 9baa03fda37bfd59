/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-prop-draw.h"

G_BEGIN_DECLS

#define SW_MAX_BOXES 40

int sw_furniture_get_boxes (const SwSolver *solver,
                            const SwGround *ground,
                            SwBox           boxes[SW_MAX_BOXES]);
SwVector sw_band_get_fixed_end (const SwSolver *solver,
                                int             prop,
                                const SwBody   *body);

G_END_DECLS
