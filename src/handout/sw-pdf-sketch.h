/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-sketch.h"

G_BEGIN_DECLS

/* Of a point: the units that sketches are written in. */
#define SW_PDF_SKETCH_UNIT (1.0 / SW_SKETCH_STEPS_A_UNIT)

GString *sw_pdf_sketch_write (const SwSketch *sketch,
                              GString        *states);

G_END_DECLS
