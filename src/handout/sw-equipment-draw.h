/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "sw-terms.h"

G_BEGIN_DECLS

void sw_equipment_draw (SwEquipment  equipment,
                        cairo_t     *cr,
                        double       size_pt);

G_END_DECLS
