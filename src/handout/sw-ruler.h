/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <pango/pango.h>

G_BEGIN_DECLS

/**
 * SwRuler:
 *
 * How wide the words of a text are, so that it is known how tall the text is at any width. Never changed.
 */
typedef struct _SwRuler SwRuler;

SwRuler *sw_ruler_new (PangoLayout *layout,
                       int          space);
SwRuler *sw_ruler_ref (SwRuler *self);
void sw_ruler_unref (SwRuler *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwRuler, sw_ruler_unref)

int sw_ruler_count_lines (const SwRuler *self,
                          int            width);
double sw_ruler_get_height_pt (const SwRuler *self,
                               int            width);

G_END_DECLS
