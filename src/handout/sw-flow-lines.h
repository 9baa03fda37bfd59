/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-composer.h"

G_BEGIN_DECLS

double sw_lines_get_height_pt (PangoLayout *layout,
                               int          first,
                               int          n,
                               double      *top_pt);
void sw_flow_lines (SwFlow      *flow,
                    SwTextRole   role,
                    SwTag       *tag,
                    PangoLayout *layout,
                    gsize        strong_length,
                    int          first,
                    int          n);

G_END_DECLS
