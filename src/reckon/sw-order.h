/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define SW_ORDER_MAX 64
#define SW_ORDER_EXACT 15

/**
 * SwOrderTask:
 * @n: how many things, 1..SW_ORDER_MAX
 * @cost: (array): @n rows of @n: what it costs to go from the row's thing to the column's, 0..10,000
 * @start: (array): @n: what it costs to begin with each
 * @finish: (array) (nullable): @n: what it costs to end with each
 * @earlier: (array) (nullable): @n sets of things that must come before each
 * @apart: (array) (nullable): @n sets of things that each should not stand next to; both of a pair name the other
 * @place: (array) (nullable): @n: where each must stand, from 0, or -1
 *
 * Things to put in order so that the ways between them cost least. What @earlier and @place ask is kept always; of
 * what @apart asks as much as can be, before any cost counts.
 */
typedef struct
{
  int n;
  const double *cost;
  const double *start;
  const double *finish;
  const guint64 *earlier;
  const guint64 *apart;
  const int *place;
} SwOrderTask;

gboolean sw_order_is_allowed (const SwOrderTask *task,
                              const int         *order);
int sw_order_count_together (const SwOrderTask *task,
                             const int         *order);
double sw_order_get_cost (const SwOrderTask *task,
                          const int         *order);
gboolean sw_order_find (const SwOrderTask *task,
                        int                last,
                        int               *order,
                        double            *ends);

G_END_DECLS
