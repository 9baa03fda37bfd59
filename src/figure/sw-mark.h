/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <glib.h>

G_BEGIN_DECLS

#define SW_MARK_NUMBER_PT 10.0
#define SW_MARK_HOLD_PT 12.0

void sw_mark_draw_number (cairo_t *cr,
                          double   x_pt,
                          double   y_pt,
                          int      number);
void sw_mark_draw_hold (cairo_t *cr,
                        double   x_pt,
                        double   y_pt);

G_END_DECLS
