/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-figure-spec.h"

G_BEGIN_DECLS

void sw_view_suggest (SwFigureSpec *spec,
                      double       *turn_deg,
                      double       *tilt_deg);
double sw_view_score (SwFigureSpec *spec,
                      double        turn_deg,
                      double        tilt_deg);

void sw_view_get_stored (SwFigureSpec *spec,
                         double       *turn_deg,
                         double       *tilt_deg);

G_END_DECLS
