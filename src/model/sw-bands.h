/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Where only one force of a band is known, it is mostly that at double its length. */
#define SW_BAND_USUAL_STRETCH_PERCENT 100

/**
 * SwBand:
 * @name: how the clinic marks it; not its colour, which means another force with each maker
 * @force_n: how hard it pulls, newtons
 * @stretch_percent: when it is so much longer than at rest; 100 is double its length
 *
 * An elastic band at one stretch.
 */
typedef struct
{
  char *name;
  double force_n;
  int stretch_percent;
} SwBand;

GPtrArray *sw_bands_from_text (const char *text);
const SwBand *sw_bands_get_at_most (GPtrArray *bands,
                                    int        stretch_percent,
                                    double     most_n);
const SwBand *sw_bands_find_force (GPtrArray *bands,
                                   double     force_n);

G_END_DECLS
