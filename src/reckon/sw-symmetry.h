/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-terms.h"

G_BEGIN_DECLS

/**
 * SwSymmetry:
 * @index_percent: the lesser side in percent of the other, 0..100
 * @difference_percent: 100 - @index_percent
 * @lesser: the side with the lesser result; %SW_BODY_SIDE_NONE when both are the same
 *
 * How the sides of the body compare. It is a difference between two numbers, no word on why.
 */
typedef struct
{
  double index_percent;
  double difference_percent;
  SwBodySide lesser;
} SwSymmetry;

/**
 * SwSymmetryFact:
 * @words: what was found in people without complaints
 * @figures: how much
 * @source: where
 */
typedef struct
{
  const char *words;
  const char *figures;
  const char *source;
} SwSymmetryFact;

double sw_symmetry_get_index (double   involved,
                              double   uninvolved,
                              SwBetter better);
gboolean sw_symmetry_compare (double      left,
                              double      right,
                              SwBetter    better,
                              SwSymmetry *symmetry);
gboolean sw_symmetry_is_alike (const SwSymmetry *symmetry,
                               int               threshold_percent);
const SwSymmetryFact *sw_symmetry_get_facts (guint *n_facts);

G_END_DECLS
