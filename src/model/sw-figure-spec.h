/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib-object.h>

G_BEGIN_DECLS

/**
 * SwFigureSpec:
 *
 * How an exercise's figure is to be drawn. Immutable and counted by references.
 */
typedef struct _SwFigureSpec SwFigureSpec;

SwFigureSpec *sw_figure_spec_ref (SwFigureSpec *self);
void sw_figure_spec_unref (SwFigureSpec *self);
gboolean sw_figure_spec_equal (SwFigureSpec *a,
                               SwFigureSpec *b);

G_END_DECLS
