/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-arrow.h"
#include "sw-figure.h"
#include "sw-prop-draw.h"

G_BEGIN_DECLS

#define SW_N_FRAMES 17
/* Of outlines, parts of stature: less than a tenth of a point at the size they are printed in. Close pictures are drawn
 * larger. */
#define SW_TOLERANCE 0.0008
#define SW_TOLERANCE_FINE 0.00022

/**
 * SwPanel:
 * @solid: the pose that is drawn whole
 * @start: (nullable): the pose that is dashed behind it
 * @moving: set of #SwPart bits that move, what is dashed
 * @from_phase: where the arrow's path begins
 * @to_phase: where it ends; the same for no arrow
 * @whole: what is drawn, cropped to the frame
 * @items: what is drawn; of a numbered picture nothing before sw_figure_add_panels()
 *
 * One picture of the figure.
 */
typedef struct
{
  const SwSolved *solid;
  const SwSolved *start;
  guint moving;
  double from_phase;
  double to_phase;
  SwExtent whole;
  SwMotifs items;
} SwPanel;

#define SW_MAX_PANELS SW_FIGURE_MAX_POSES

struct _SwFigure
{
  GObject parent_instance;

  GMutex lock; /* of what drawing changes: what is made only when it is drawn */
  SwFigureSpec *spec;
  gboolean mirrored;
  SwSolver solver;
  SwSolved *frames; /* SW_N_FRAMES, at equal steps of the phase */
  SwCamera camera;
  SwGround ground;
  SwExtent whole;     /* all poses, things and arrows, cropped to the frame */
  SwExtent furniture; /* where furniture is drawn */
  double above;       /* what the frame shows: not what is lower on paper */
  double below;       /* nor what is higher */
  gboolean cropped_below; /* whether that cuts something off */
  gboolean cropped_above;
  guint drawn;            /* set of #SwPart bits that are drawn */
  gboolean fine;          /* whether that is only a hand or a foot, close */

  SwPanel overlay;
  SwPanel panels[SW_MAX_PANELS];
  int n_panels;
  gboolean wants_panels; /* whether numbered pictures tell more than one with a dashed start */
  gboolean needs_panels; /* whether one picture would hide the motion */

  SwFigure *parts[SW_FIGURE_MAX_POSES]; /* when steps start from several bases: one figure a base, the first may be this, drawn in a row */
  int n_parts;
  double rises; /* one of such parts: how much higher its first picture has the chest than the picture before */
  SwFigure *inset; /* (nullable): the second view */
};

/**
 * SwCell:
 * @figure: the figure or the part of it that the picture is of
 * @panel: the picture
 *
 * One of the numbered pictures.
 */
typedef struct
{
  SwFigure *figure;
  SwPanel *panel;
} SwCell;

int sw_figure_get_cells (SwFigure *self,
                         SwCell    cells[SW_MAX_PANELS]);

void sw_figure_add_panels (SwFigure *self);

void sw_close_init (SwFigure *self);
SwFigureSide sw_close_get_side (const SwFigure *self);
SwFigureMark sw_close_get_mark (const SwFigure *self,
                                int             nth);
void sw_close_drop_things (SwMotifs *items);
gboolean sw_close_shows_furniture (const SwFigure *self);
guint sw_figure_get_moving (const SwSolved *a,
                            const SwSolved *b);
int sw_figure_get_shown (const SwFigure *self,
                         double          from_phase,
                         double          to_phase,
                         SwFigureMark    shown[SW_FIGURE_MAX_SHOWN]);
int sw_figure_get_path (const SwFigure *self,
                        SwFigureMark    mark,
                        double          from_phase,
                        double          to_phase,
                        SwSpot          path[SW_N_FRAMES]);
void sw_panel_add_items (SwPanel        *panel,
                         const SwFigure *figure);
void sw_panel_sort (SwPanel *panel);
SwFigureSigns sw_panel_get_signs (SwPanel        *panel,
                                  const SwFigure *figure);
void sw_panel_draw (SwPanel        *panel,
                    const SwFigure *figure,
                    const SwPaper  *paper,
                    const SwExtent *room,
                    SwArrows       *arrows);

G_END_DECLS
