/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fits a figure into a box: one picture or numbered panels, scale, marks in free corners. */
#include "config.h"

#include <cairo-svg.h>
#include <glib/gi18n.h>
#include <string.h>

#include "sw-body-draw.h"
#include "sw-figure-private.h"
#include "sw-mark.h"

#define MARGIN_PT 3.0
#define PANEL_GAP_PT 5.0
/* Larger than this a whole body looks like a poster among the other pictures; close frames may be larger. */
#define MOST_WHOLE_PT 150.0
#define MOST_CLOSE_PT 230.0
/* When panels would be smaller than this part of a single picture, one picture it is. */
#define PANELS_WORTH 0.66
/* Boxes larger than this magnify everything, lines too; smaller ones than that make it finer. */
#define LARGE_BOX_PT 180.0
#define SMALL_BOX_PT 84.0
#define FINEST 0.6
#define NATURAL_WHOLE_PT 118.0
#define NATURAL_CLOSE_PT 210.0

typedef struct
{
  int columns;
  int rows;
  double scale_pt;
} Grid;

/* Line weights are meant for a picture of about 50 mm; this is how much finer or coarser the box wants them. */
static double
find_zoom (double width_pt,
           double height_pt)
{
  double least = MIN (width_pt, height_pt);

  if (least > LARGE_BOX_PT)
    return least / LARGE_BOX_PT;

  return least < SMALL_BOX_PT ? MAX (FINEST, least / SMALL_BOX_PT) : 1.0;
}

static double
most_scale (const SwFigure *self)
{
  return self->cropped_below || self->cropped_above ? MOST_CLOSE_PT : MOST_WHOLE_PT;
}

static double
fit (const SwFigure *self,
     double          width_pt,
     double          height_pt,
     int             columns,
     int             rows)
{
  double w = (width_pt - 2 * MARGIN_PT - (columns - 1) * PANEL_GAP_PT) / columns;
  double h = (height_pt - 2 * MARGIN_PT - (rows - 1) * PANEL_GAP_PT) / rows;
  double scale = MIN (w / (self->whole.right - self->whole.left), h / (self->whole.top - self->whole.bottom));

  return CLAMP (scale, 1.0, most_scale (self));
}

static Grid
choose_grid (const SwFigure *self,
             double          width_pt,
             double          height_pt)
{
  SwFigureLayout layout = self->solver.content->layout;
  int n = self->n_panels;
  Grid one = { 1, 1, fit (self, width_pt, height_pt, 1, 1) };
  Grid beside = { n, 1, fit (self, width_pt, height_pt, n, 1) };
  Grid under = { 1, n, fit (self, width_pt, height_pt, 1, n) };
  Grid panels = beside.scale_pt >= under.scale_pt ? beside : under;

  if (n == 1)
    return one;
  if (layout == SW_FIGURE_LAYOUT_SINGLE)
    return one;
  if (layout == SW_FIGURE_LAYOUT_SIDE_BY_SIDE)
    return beside;
  if (layout == SW_FIGURE_LAYOUT_STACKED)
    return under;
  if (self->needs_panels || (self->wants_panels && panels.scale_pt > PANELS_WORTH * one.scale_pt))
    return panels;

  return one;
}

/* Whether the box of @size_pt round x, y is free of the panel's items. */
static double
crowd_at (const SwPanel *panel,
          const SwPaper *paper,
          double         x_pt,
          double         y_pt,
          double         size_pt)
{
  int hits = 0;

  for (int i = -2; i <= 2; i++)
    for (int k = -2; k <= 2; k++)
      {
        double x = (x_pt + i * size_pt / 4 - paper->x_pt) / paper->scale_pt;
        double y = (paper->y_pt - (y_pt + k * size_pt / 4)) / paper->scale_pt;

        for (int n = 0; n < panel->items.n_items; n++)
          if (sw_motif_holds (&panel->items.items[n], x, y))
            {
              hits++;
              break;
            }
      }
  return hits;
}

/* A corner of the cell that the figure leaves free, tried in the given order. */
static void
find_corner (const SwPanel *panel,
             const SwPaper *paper,
             double         left_pt,
             double         top_pt,
             double         width_pt,
             double         height_pt,
             double         size_pt,
             gboolean       right_first,
             double        *x_pt,
             double        *y_pt)
{
  double inset = size_pt / 2 + 1.0;
  double best = G_MAXDOUBLE;

  for (int i = 0; i < 4; i++)
    {
      gboolean right = (i % 2 == 1) != right_first;
      gboolean bottom = i >= 2;
      double x = right ? left_pt + width_pt - inset : left_pt + inset;
      double y = bottom ? top_pt + height_pt - inset : top_pt + inset;
      double crowd = crowd_at (panel, paper, x, y, 1.35 * size_pt) + 0.1 * i;

      if (crowd < best)
        {
          best = crowd;
          *x_pt = x;
          *y_pt = y;
        }
    }
}

static SwPaper
paper_for (const SwFigure *self,
           cairo_t        *cr,
           double          left_pt,
           double          top_pt,
           double          width_pt,
           double          height_pt,
           double          scale_pt)
{
  double w = (self->whole.right - self->whole.left) * scale_pt;
  double h = (self->whole.top - self->whole.bottom) * scale_pt;

  return (SwPaper){ .cr = cr,
                    .scale_pt = scale_pt,
                    .x_pt = left_pt + (width_pt - w) / 2 - self->whole.left * scale_pt,
                    .y_pt = top_pt + (height_pt + h) / 2 + self->whole.bottom * scale_pt };
}

static void
clip_to_frame (const SwFigure *self,
               const SwPaper  *paper,
               double          left_pt,
               double          top_pt,
               double          width_pt,
               double          height_pt)
{
  double bottom = self->cropped_below ? sw_paper_y (paper, self->whole.bottom) : top_pt + height_pt;
  double top = self->cropped_above ? sw_paper_y (paper, self->whole.top) : top_pt;

  cairo_rectangle (paper->cr, left_pt, top, width_pt, bottom - top);
  cairo_clip (paper->cr);
}

/* Where arrows may go: in the cell, and not under the floor when that is seen from its side. */
static SwExtent
room_for (const SwFigure *self,
          const SwPaper  *paper,
          double          left_pt,
          double          top_pt,
          double          width_pt,
          double          height_pt)
{
  double edge = 4.0 / paper->scale_pt;
  SwExtent room = { (left_pt - paper->x_pt) / paper->scale_pt + edge,
                    (paper->y_pt - top_pt - height_pt) / paper->scale_pt + edge,
                    (left_pt + width_pt - paper->x_pt) / paper->scale_pt - edge,
                    (paper->y_pt - top_pt) / paper->scale_pt - edge };

  if (fabs (self->camera.toward.z) < 0.1)
    room.bottom = MAX (room.bottom, 0.5 * edge);
  room.bottom = MAX (room.bottom, self->above + edge);
  room.top = MIN (room.top, self->below - edge);
  return room;
}

/* How far the panels move aside, all alike, so that their numbers find room in the upper left corner. Returns FALSE when
 * no move helps; then the numbers need a row of their own. */
static gboolean
find_shift (SwFigure   *self,
            cairo_t    *cr,
            const Grid *grid,
            double      cell_w,
            double      cell_h,
            double     *shift_pt)
{
  double spare = MAX (0.0, (cell_w - 2 * MARGIN_PT - (self->whole.right - self->whole.left) * grid->scale_pt) / 2);
  double inset = SW_MARK_NUMBER_PT / 2 + 1.0;

  for (double shift = 0; shift <= spare; shift += 2)
    {
      SwPaper paper = paper_for (self, cr, shift, 0, cell_w, cell_h, grid->scale_pt);
      double crowd = 0;

      for (int i = 0; i < self->n_panels; i++)
        crowd += crowd_at (&self->panels[i], &paper, inset, inset, 1.35 * SW_MARK_NUMBER_PT);
      *shift_pt = shift;
      if (crowd <= 0)
        return TRUE;
    }
  *shift_pt = 0;
  return FALSE;
}

static void
draw_cell (SwFigure *self,
           cairo_t  *cr,
           SwPanel  *panel,
           int       number,
           gboolean  hold,
           double    left_pt,
           double    top_pt,
           double    width_pt,
           double    height_pt,
           double    scale_pt,
           double    shift_pt,
           double    lower_pt)
{
  SwPaper paper = paper_for (self, cr, left_pt + shift_pt, top_pt + lower_pt, width_pt, height_pt - lower_pt, scale_pt);
  SwExtent room = room_for (self, &paper, left_pt, top_pt, width_pt, height_pt);
  double x;
  double y;

  cairo_save (cr);
  clip_to_frame (self, &paper, left_pt, top_pt, width_pt, height_pt);
  sw_panel_draw (panel, self, &paper, &room);
  cairo_restore (cr);

  if (number > 0)
    {
      find_corner (panel, &paper, left_pt, top_pt, width_pt, height_pt, SW_MARK_NUMBER_PT, FALSE, &x, &y);
      sw_mark_draw_number (cr, x, y, number);
    }
  if (hold)
    {
      find_corner (panel, &paper, left_pt, top_pt, width_pt, height_pt, SW_MARK_HOLD_PT, TRUE, &x, &y);
      sw_mark_draw_hold (cr, x, y);
    }
}

/**
 * sw_figure_measure:
 * @width_pt: a width
 * @height_pt: (out): a good height for it, above 0
 */
void
sw_figure_measure (SwFigure *self,
                   double    width_pt,
                   double   *height_pt)
{
  double natural;
  double w;
  double h;
  double one;
  double height;
  double zoom;

  g_return_if_fail (SW_IS_FIGURE (self));

  /* A wide box may be filled up to the height at which it begins to magnify. */
  zoom = MAX (1.0, width_pt / (1.4 * LARGE_BOX_PT));
  width_pt /= zoom;
  natural = self->cropped_below || self->cropped_above ? NATURAL_CLOSE_PT : NATURAL_WHOLE_PT;
  w = self->whole.right - self->whole.left;
  h = self->whole.top - self->whole.bottom;
  one = MIN (natural, (width_pt - 2 * MARGIN_PT) / w);
  height = one * h;
  if (self->n_panels > 1
      && (self->needs_panels || self->wants_panels || self->solver.content->layout > SW_FIGURE_LAYOUT_SINGLE)
      && self->solver.content->layout != SW_FIGURE_LAYOUT_SINGLE)
    {
      int n = self->n_panels;
      double beside = MIN (natural, (width_pt - 2 * MARGIN_PT - (n - 1) * PANEL_GAP_PT) / (n * w));
      gboolean stack = self->solver.content->layout == SW_FIGURE_LAYOUT_STACKED
                       || (self->solver.content->layout == SW_FIGURE_LAYOUT_AUTO && beside < 0.7 * one);

      height = stack ? n * one * h + (n - 1) * PANEL_GAP_PT : beside * h;
    }
  *height_pt = zoom * MAX (24.0, MIN (height + 2 * MARGIN_PT, 1.6 * width_pt));
}

/**
 * sw_figure_draw:
 * @cr: where to draw; black on whatever is there, the caller's state is kept
 * @width_pt: of the box, whose upper left corner is the origin
 * @height_pt: of the box
 */
void
sw_figure_draw (SwFigure *self,
                cairo_t  *cr,
                double    width_pt,
                double    height_pt)
{
  Grid grid;
  double cell_w;
  double cell_h;
  double shift = 0;
  double top = 0;
  double zoom;
  int n;

  g_return_if_fail (SW_IS_FIGURE (self));

  if (width_pt < 8 || height_pt < 8)
    return;

  zoom = find_zoom (width_pt, height_pt);
  width_pt /= zoom;
  height_pt /= zoom;
  grid = choose_grid (self, width_pt, height_pt);
  n = grid.columns * grid.rows;
  cell_w = (width_pt - (grid.columns - 1) * PANEL_GAP_PT) / grid.columns;
  cell_h = (height_pt - (grid.rows - 1) * PANEL_GAP_PT) / grid.rows;

  if (n > 1 && !find_shift (self, cr, &grid, cell_w, cell_h, &shift))
    {
      top = SW_MARK_NUMBER_PT - 1;
      grid.scale_pt = MIN (grid.scale_pt, fit (self, width_pt, height_pt - top * grid.rows, grid.columns, grid.rows));
    }

  cairo_save (cr);
  cairo_scale (cr, zoom, zoom);
  cairo_new_path (cr);
  for (int i = 0; i < n; i++)
    {
      int column = grid.columns > 1 ? i : 0;
      int row = grid.rows > 1 ? i : 0;
      SwPanel *panel = n == 1 ? &self->overlay : &self->panels[i];

      draw_cell (self, cr, panel, n > 1 ? i + 1 : 0, self->solver.content->hold && i == n - 1,
                 column * (cell_w + PANEL_GAP_PT), row * (cell_h + PANEL_GAP_PT), cell_w, cell_h, grid.scale_pt,
                 shift, top);
    }
  cairo_restore (cr);
}

/**
 * sw_figure_draw_at:
 * @cr: where to draw
 * @width_pt: of the box
 * @height_pt: of the box
 * @phase: 0 at the first pose, 1 at the last; circles go round once
 *
 * Draws one pose, placed alike for every phase, without arrow or marks: a frame of the moving picture.
 */
void
sw_figure_draw_at (SwFigure *self,
                   cairo_t  *cr,
                   double    width_pt,
                   double    height_pt,
                   double    phase)
{
  SwSolved now;
  SwPanel panel = { .solid = &now };
  SwPaper paper;
  SwExtent room;
  double zoom;
  double scale;

  g_return_if_fail (SW_IS_FIGURE (self));

  if (width_pt < 8 || height_pt < 8)
    return;

  zoom = find_zoom (width_pt, height_pt);
  width_pt /= zoom;
  height_pt /= zoom;
  sw_solver_get (&self->solver, phase, &now);
  sw_panel_add_items (&panel, self);
  scale = fit (self, width_pt, height_pt, 1, 1);
  paper = paper_for (self, cr, 0, 0, width_pt, height_pt, scale);
  room = room_for (self, &paper, 0, 0, width_pt, height_pt);

  cairo_save (cr);
  cairo_scale (cr, zoom, zoom);
  cairo_new_path (cr);
  clip_to_frame (self, &paper, 0, 0, width_pt, height_pt);
  sw_panel_draw (&panel, self, &paper, &room);
  cairo_restore (cr);
  sw_motifs_clear (&panel.items);
}

static cairo_surface_t *
surface_for (const char *path,
             double      width_pt,
             double      height_pt,
             double     *scale)
{
  *scale = 1.0;
  if (g_str_has_suffix (path, ".svg"))
    return cairo_svg_surface_create (path, width_pt, height_pt);

  *scale = 300.0 / 72.0;
  return cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) ceil (width_pt * *scale),
                                     (int) ceil (height_pt * *scale));
}

/**
 * sw_figure_save:
 * @path: a file whose name ends in .svg or .png
 * @width_mm: how wide, 10..1000; the height follows
 * @at_or_negative: 0..1 for one pose of the motion, negative for the whole figure
 *
 * Writes a picture; PNG has 300 dots to the inch.
 *
 * Returns: FALSE with a #SwFigureError
 */
gboolean
sw_figure_save (SwFigure    *self,
                const char  *path,
                double       width_mm,
                double       at_or_negative,
                GError     **error)
{
  double width_pt = width_mm * 72.0 / 25.4;
  double height_pt;
  double scale;
  cairo_surface_t *surface;
  cairo_status_t status;
  cairo_t *cr;

  g_return_val_if_fail (SW_IS_FIGURE (self), FALSE);
  g_return_val_if_fail (width_mm >= 10 && width_mm <= 1000, FALSE);

  if (!g_str_has_suffix (path, ".svg") && !g_str_has_suffix (path, ".png"))
    {
      g_set_error (error, SW_FIGURE_ERROR, SW_FIGURE_ERROR_KIND,
                   _ ("“%s”: a picture's name must end in .svg or .png."), path);
      return FALSE;
    }

  sw_figure_measure (self, width_pt, &height_pt);
  surface = surface_for (path, width_pt, height_pt, &scale);
  cr = cairo_create (surface);
  cairo_scale (cr, scale, scale);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  if (at_or_negative < 0)
    sw_figure_draw (self, cr, width_pt, height_pt);
  else
    sw_figure_draw_at (self, cr, width_pt, height_pt, at_or_negative);
  status = cairo_status (cr);
  cairo_destroy (cr);
  if (status == CAIRO_STATUS_SUCCESS && g_str_has_suffix (path, ".png"))
    status = cairo_surface_write_to_png (surface, path);
  cairo_surface_finish (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    return TRUE;

  g_set_error (error, SW_FIGURE_ERROR, SW_FIGURE_ERROR_WRITE,
               _ ("“%s” could not be written (%s). Is there room, and may you write there?"), path,
               cairo_status_to_string (status));
  return FALSE;
}
