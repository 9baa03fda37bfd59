/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where an exercise takes the joints, for those who reckon with it and draw nothing. */
#include "config.h"

#include "sw-figure-range.h"
#include "sw-figure-walk.h"

typedef struct
{
  SwFigureRange *range;
  gboolean begun;
} Walk;

static void
visit (const SwSolved *solved,
       gpointer        data)
{
  Walk *walk = data;

  for (int slot = 0; slot < SW_N_SLOTS; slot++)
    {
      double angle_deg = solved->joints.slots_deg[slot];
      double *low_deg = &walk->range->low_deg[slot];
      double *high_deg = &walk->range->high_deg[slot];

      *low_deg = walk->begun ? MIN (*low_deg, angle_deg) : angle_deg;
      *high_deg = walk->begun ? MAX (*high_deg, angle_deg) : angle_deg;
    }
  walk->begun = TRUE;
}

/**
 * sw_figure_range_init:
 * @self: gets how far each joint goes
 * @spec: an exercise's figure; sw_figure_spec_new_mirrored() for the other side
 *
 * Goes through all that sw_figure_walk() shows.
 */
void
sw_figure_range_init (SwFigureRange *self,
                      SwFigureSpec  *spec)
{
  Walk walk = { .range = self };

  sw_figure_walk (spec, visit, &walk);
}
