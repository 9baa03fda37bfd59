/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The text alternative of a figure. */
#include "config.h"

#include "sw-figure-private.h"

/**
 * sw_figure_dup_text:
 * @language: BCP 47 tag
 *
 * Returns: (transfer full): what the picture shows
 */
char *
sw_figure_dup_text (SwFigure   *self,
                    const char *language)
{
  (void) language;
  return g_strdup (self->solver.base->words);
}
