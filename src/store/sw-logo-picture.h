/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "sw-logo.h"

G_BEGIN_DECLS

/**
 * SwLogoPicture:
 *
 * A logo ready to draw. Immutable; one thread at a time may draw it.
 */
#define SW_TYPE_LOGO_PICTURE (sw_logo_picture_get_type ())
G_DECLARE_FINAL_TYPE (SwLogoPicture, sw_logo_picture, SW, LOGO_PICTURE, GObject)

SwLogoPicture *sw_logo_picture_new (const SwLogo  *logo,
                                    GError       **error);
void sw_logo_picture_get_size (SwLogoPicture *self,
                               double        *width,
                               double        *height);
void sw_logo_picture_fit (SwLogoPicture *self,
                          double         most_width,
                          double         most_height,
                          double        *width,
                          double        *height);
gboolean sw_logo_picture_draw (SwLogoPicture *self,
                               cairo_t       *cr,
                               double         width,
                               double         height);

G_END_DECLS
