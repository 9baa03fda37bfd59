/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-sketch.h"
#include <glib.h>

G_BEGIN_DECLS

#define SW_MARK_NUMBER_PT 10.0
#define SW_MARK_HOLD_PT 12.0

void sw_mark_draw_number (SwSketch *sketch,
                          double   x_pt,
                          double   y_pt,
                          int      number);
void sw_mark_draw_hold (SwSketch *sketch,
                        double   x_pt,
                        double   y_pt);

G_END_DECLS
