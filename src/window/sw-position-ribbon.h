/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-terms.h"

G_BEGIN_DECLS

/**
 * SwPositionRibbon:
 *
 * One row's piece of the line that runs down the session and tells by its place across where the body is:
 * standing leftmost, face down rightmost. Rows stand without a gap, so that the pieces make one line and each
 * change of position is a step in it. It says nothing to assistive tools: the row does.
 */
#define SW_TYPE_POSITION_RIBBON (sw_position_ribbon_get_type ())
G_DECLARE_FINAL_TYPE (SwPositionRibbon, sw_position_ribbon, SW, POSITION_RIBBON, GtkWidget)

void sw_position_ribbon_set_positions (SwPositionRibbon *self,
                                       SwPosition        before,
                                       SwPosition        position);

G_END_DECLS
