/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gdk/gdk.h>

#include "sw-exercise.h"
#include "sw-figure.h"

G_BEGIN_DECLS

/**
 * SwPictures:
 *
 * The cache of exercise pictures for the screen, drawn in worker threads, the last asked for first. Signal "ready"
 * (SwExercise): a picture that was asked for and not there is there now; with NULL, one was given up among too many and
 * may be asked for again.
 */
#define SW_TYPE_PICTURES (sw_pictures_get_type ())
G_DECLARE_FINAL_TYPE (SwPictures, sw_pictures, SW, PICTURES, GObject)

SwPictures *sw_pictures_new (void);
GdkTexture *sw_pictures_lookup (SwPictures *self,
                                SwExercise *exercise,
                                gboolean    mirrored,
                                int         width_px,
                                int         height_px,
                                int         scale);
SwFigure *sw_pictures_get_figure (SwPictures *self,
                                  SwExercise *exercise,
                                  gboolean    mirrored);

G_END_DECLS
