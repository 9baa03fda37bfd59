/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where an exercise takes the joints, for those who reckon with it and draw nothing. */
#include "config.h"

#include "sw-figure-range.h"
#include "sw-solver.h"

/* Between two poses the angles go straight, so that a few of a circle are the only ones between that matter. */
#define N_PHASES 17

/**
 * sw_figure_range_init:
 * @self: gets how far each joint goes
 * @spec: an exercise's figure; sw_figure_spec_new_mirrored() for the other side
 *
 * Solves the figure's poses and its motion. What is held in place (feet on the floor, hands on a chair) is in the angles, so
 * they may be others than those written. They are those of the picture: who does the exercise may go further or less far.
 */
void
sw_figure_range_init (SwFigureRange *self,
                      SwFigureSpec  *spec)
{
  g_autofree SwSolver *solver = g_new0 (SwSolver, 1);

  sw_solver_init (solver, sw_figure_spec_get_content (spec));
  for (int i = 0; i < N_PHASES + solver->n_keys; i++)
    {
      SwSolved solved;

      if (i < N_PHASES)
        sw_solver_get (solver, (double) i / (N_PHASES - 1), &solved);
      else
        solved = solver->keys[i - N_PHASES];
      for (int slot = 0; slot < SW_N_SLOTS; slot++)
        {
          double angle_deg = solved.joints.slots_deg[slot];

          self->low_deg[slot] = i == 0 ? angle_deg : MIN (self->low_deg[slot], angle_deg);
          self->high_deg[slot] = i == 0 ? angle_deg : MAX (self->high_deg[slot], angle_deg);
        }
    }
}
