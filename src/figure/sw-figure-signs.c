/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a figure's pictures show that readers may have to be told, found without drawing them. */
#include "config.h"

#include "sw-figure-signs.h"

#include "sw-layout.h"
#include "sw-sides-mark.h"

static SwFigureSigns
get_sides_sign (const SwFigure *self)
{
  SwSidesMark sides;

  sw_sides_mark_get (&sides, self);
  if (sides.n == 0)
    return 0;
  return sides.n > 1 ? SW_FIGURE_SIGN_TURNS : SW_FIGURE_SIGN_LIMBS;
}

/**
 * sw_figure_get_signs:
 * @width_pt: of the box that the figure is drawn into
 * @height_pt: of the box
 *
 * Returns: what sw_figure_draw() draws there that has to be explained
 */
SwFigureSigns
sw_figure_get_signs (SwFigure *self,
                     double    width_pt,
                     double    height_pt)
{
  SwFigureSigns signs;
  SwCell cells[SW_MAX_PANELS];
  SwLayout layout;
  double zoom;

  g_return_val_if_fail (SW_IS_FIGURE (self), 0);

  if (width_pt < SW_LAYOUT_LEAST_PT || height_pt < SW_LAYOUT_LEAST_PT)
    return 0;

  zoom = sw_layout_get_zoom (width_pt, height_pt);
  sw_layout_choose (&layout, self, width_pt / zoom, height_pt / zoom);
  if (layout.n == 1)
    cells[0] = (SwCell){ self, &self->overlay };
  else
    sw_figure_get_cells (self, cells);

  signs = get_sides_sign (self) | (layout.n > 1 ? SW_FIGURE_SIGN_ORDER : 0)
          | (self->solver.content->hold ? SW_FIGURE_SIGN_HOLD : 0);
  for (int i = 0; i < layout.n; i++)
    {
      signs |= sw_panel_get_signs (cells[i].panel, cells[i].figure);
      if (layout.ring != SW_RING_NONE && self->n_parts == 0)
        signs |= SW_FIGURE_SIGN_RING
                 | sw_panel_get_signs (layout.n == 1 ? &self->inset->overlay : &self->inset->panels[i], self->inset);
    }
  return signs;
}
