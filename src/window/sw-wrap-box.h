/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * SwWrapBox:
 *
 * Lays its children out in a line and begins another where the width ends, so that one template serves wide
 * and narrow windows. Property "spacing" (int, 0..100 px), between children and between lines.
 */
#define SW_TYPE_WRAP_BOX (sw_wrap_box_get_type ())
G_DECLARE_FINAL_TYPE (SwWrapBox, sw_wrap_box, SW, WRAP_BOX, GtkWidget)

G_END_DECLS
