/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All poses that a figure goes through, for those who reckon with them and draw nothing. */
#include "config.h"

#include "sw-figure-walk.h"

/* Between two poses the angles go straight, so that a few of a circle are the only ones between that matter. */
#define N_PHASES 17

/**
 * sw_figure_content_take_part:
 * @content: a figure
 * @first: one of its poses
 * @part: (out caller-allocates): the figure of that pose and those after it, up to the next one that has a base of its
 *   own; it borrows from @content
 *
 * Steps from several bases are figures of their own in a row. A chair that stands in front of one is what the next sits
 * on.
 *
 * Returns: the first pose that is no more in it
 */
int
sw_figure_content_take_part (const SwFigureContent *content,
                             int                    first,
                             SwFigureContent       *part)
{
  int n = 1;

  *part = *content;
  while (first + n < content->n_poses
         && !(content->motion == SW_FIGURE_MOTION_STEPS && content->poses[first + n].own_base))
    n++;
  for (int i = 0; i < n; i++)
    part->poses[i] = content->poses[first + i];
  part->n_poses = n;
  part->n_props = 0;
  for (int i = 0; i < content->n_props; i++)
    if (n == content->n_poses || part->poses[0].base != SW_FIGURE_BASE_SITTING
        || content->props[i].kind != SW_FIGURE_PROP_CHAIR)
      part->props[part->n_props++] = content->props[i];

  return first + n;
}

/* Steps are pictures in a row: what lies between them is nobody's pose. */
static void
walk_part (const SwFigureContent *part,
           SwFigureVisit          visit,
           gpointer               data)
{
  g_autofree SwSolver *solver = g_new0 (SwSolver, 1);

  sw_solver_init (solver, part);
  for (int i = 0; i < solver->n_keys; i++)
    visit (&solver->keys[i], data);
  for (int i = 0; i < N_PHASES && part->motion != SW_FIGURE_MOTION_STEPS; i++)
    {
      SwSolved solved;

      sw_solver_get (solver, (double) i / (N_PHASES - 1), &solved);
      visit (&solved, data);
    }
}

/**
 * sw_figure_walk:
 * @spec: an exercise's figure; sw_figure_spec_new_mirrored() for the other side
 * @visit: (scope call): called at each written pose and along the motion between them
 * @data: handed to @visit
 *
 * Solves the figure's poses and its motion. What is held in place (feet on the floor, hands on a chair) is in the angles, so
 * they may be others than those written. They are those of the picture: who does the exercise may go further or less far.
 */
void
sw_figure_walk (SwFigureSpec  *spec,
                SwFigureVisit  visit,
                gpointer       data)
{
  const SwFigureContent *content = sw_figure_spec_get_content (spec);
  g_autofree SwFigureContent *part = g_new (SwFigureContent, 1);

  for (int first = 0; first < content->n_poses;)
    {
      first = sw_figure_content_take_part (content, first, part);
      walk_part (part, visit, data);
    }
}
