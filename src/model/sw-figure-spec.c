/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How an exercise's figure is to be drawn. */
#include "config.h"

#include "sw-figure-spec.h"

struct _SwFigureSpec
{
  gatomicrefcount ref_count;
};

SwFigureSpec *
sw_figure_spec_ref (SwFigureSpec *self)
{
  g_atomic_ref_count_inc (&self->ref_count);
  return self;
}

void
sw_figure_spec_unref (SwFigureSpec *self)
{
  if (g_atomic_ref_count_dec (&self->ref_count))
    g_free (self);
}

gboolean
sw_figure_spec_equal (SwFigureSpec *a,
                      SwFigureSpec *b)
{
  return a == b;
}
