/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Draws a figure into a box: its pictures, marks in their free corners, the second view. */
#include "config.h"

#include <cairo-svg.h>
#include <glib/gi18n.h>
#include <string.h>

#include "sw-body-draw.h"
#include "sw-layout.h"
#include "sw-mark.h"
#include "sw-sides-mark.h"

/* An inset's arrow keeps off its ring by this. */
#define RING_INSET 0.72
/* As finely is an arrow's line looked at between two of its places. */
#define ARROW_PARTS 4

/* Where one picture is drawn. */
typedef struct
{
  double left_pt;
  double top_pt;
  double width_pt;
  double height_pt;
} Box;

/* What stands in the corners of a picture. */
typedef struct
{
  int number; /* 0 for none */
  gboolean hold;
  gboolean sides;
} Marks;

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

/* How many places of the arrows' lines the box of @size_pt round x, y holds. */
static int
arrows_at (const SwArrows *arrows,
           const SwPaper  *paper,
           double          x_pt,
           double          y_pt,
           double          size_pt)
{
  int hits = 0;

  for (int i = 0; i < arrows->n_arrows; i++)
    for (int k = 0; k + 1 < arrows->arrows[i].n_points; k++)
      for (int part = 0; part <= ARROW_PARTS; part++)
        {
          const SwArrow *arrow = &arrows->arrows[i];
          double t = (double) part / ARROW_PARTS;
          double x = arrow->points[k].x + (arrow->points[k + 1].x - arrow->points[k].x) * t;
          double y = arrow->points[k].y + (arrow->points[k + 1].y - arrow->points[k].y) * t;

          if (fabs (sw_paper_x (paper, x) - x_pt) < size_pt / 2 && fabs (sw_paper_y (paper, y) - y_pt) < size_pt / 2)
            hits++;
        }
  return hits;
}

/* A corner of the cell that figure and arrows leave free and that is not @taken; @first of upper left, upper right, lower left,
 * lower right is preferred. Returns the corner. */
static int
find_corner (const SwPanel  *panel,
             const SwArrows *arrows,
             const SwPaper  *paper,
             Box             box,
             double          size_pt,
             int             first,
             guint           taken,
             double         *x_pt,
             double         *y_pt)
{
  double inset = size_pt / 2 + 1.0;
  double best = G_MAXDOUBLE;
  int chosen = first;

  for (int i = 0; i < 4; i++)
    {
      int corner = i ^ first;
      double x = corner % 2 == 1 ? box.left_pt + box.width_pt - inset : box.left_pt + inset;
      double y = corner >= 2 ? box.top_pt + box.height_pt - inset : box.top_pt + inset;
      double crowd = crowd_at (panel, paper, x, y, 1.35 * size_pt) + 0.1 * i + ((taken >> corner & 1) != 0 ? 1000 : 0)
                     + arrows_at (arrows, paper, x, y, 1.35 * size_pt);

      if (crowd < best)
        {
          best = crowd;
          chosen = corner;
          *x_pt = x;
          *y_pt = y;
        }
    }
  return chosen;
}

static SwPaper
paper_for (const SwExtent *whole,
           SwSketch       *sketch,
           Box             box,
           double          scale_pt)
{
  double w = (whole->right - whole->left) * scale_pt;
  double h = (whole->top - whole->bottom) * scale_pt;

  return (SwPaper){ .sketch = sketch,
                    .scale_pt = scale_pt,
                    .x_pt = box.left_pt + (box.width_pt - w) / 2 - whole->left * scale_pt,
                    .y_pt = box.top_pt + (box.height_pt + h) / 2 + whole->bottom * scale_pt };
}

static void
clip_to_frame (const SwFigure *self,
               const SwPaper  *paper,
               Box             box)
{
  double top = box.top_pt;
  double bottom = box.top_pt + box.height_pt;

  if (self->cropped_above)
    top = CLAMP (sw_paper_y (paper, self->whole.top), top, bottom);
  if (self->cropped_below)
    bottom = CLAMP (sw_paper_y (paper, self->whole.bottom), top, bottom);
  sw_sketch_rectangle (paper->sketch, box.left_pt, top, box.width_pt, bottom - top);
  sw_sketch_clip (paper->sketch);
}

/* Where arrows may go: in the cell, and not under the floor when that is seen from its side. */
static SwExtent
room_for (const SwFigure *self,
          const SwPaper  *paper,
          Box             box)
{
  double edge = 4.0 / paper->scale_pt;
  SwExtent room = { (box.left_pt - paper->x_pt) / paper->scale_pt + edge,
                    (paper->y_pt - box.top_pt - box.height_pt) / paper->scale_pt + edge,
                    (box.left_pt + box.width_pt - paper->x_pt) / paper->scale_pt - edge,
                    (paper->y_pt - box.top_pt) / paper->scale_pt - edge };

  if (fabs (self->camera.toward.z) < 0.1)
    room.bottom = MAX (room.bottom, 0.5 * edge);
  room.bottom = MAX (room.bottom, self->above + edge);
  room.top = MIN (room.top, self->below - edge);
  return room;
}

/* The room of one picture without its ring. */
static Box
without_ring (const SwLayout *layout,
              Box             cell)
{
  if (layout->ring == SW_RING_BESIDE)
    cell.width_pt -= layout->ring_pt;
  else if (layout->ring == SW_RING_BELOW)
    cell.height_pt -= layout->ring_pt;
  return cell;
}

/* How far the panels move aside, all alike, so that their numbers find room in the upper left corner. Returns FALSE when
 * no move helps; then the numbers need a row of their own. */
static gboolean
find_shift (const SwCell   *cells,
            const SwLayout *layout,
            double         *shift_pt)
{
  double inset = SW_MARK_NUMBER_PT / 2 + 1.0;
  double spare = G_MAXDOUBLE;
  Box cell = without_ring (layout, (Box){ 0, 0, layout->cell_width_pt, layout->cell_height_pt });

  for (int i = 0; i < layout->n; i++)
    {
      const SwExtent *whole = &cells[i].panel->whole;

      spare = MIN (spare, (cell.width_pt - 2 * SW_LAYOUT_MARGIN_PT
                           - (whole->right - whole->left) * layout->scale_pt) / 2);
    }

  for (double shift = 0; shift <= MAX (0.0, spare); shift += 2)
    {
      Box box = { shift, 0, cell.width_pt, cell.height_pt };
      double crowd = 0;

      for (int i = 0; i < layout->n; i++)
        {
          SwPaper paper = paper_for (&cells[i].panel->whole, NULL, box, layout->scale_pt);

          crowd += crowd_at (cells[i].panel, &paper, inset, inset, 1.35 * SW_MARK_NUMBER_PT);
        }
      *shift_pt = shift;
      if (crowd <= 0)
        return TRUE;
    }
  *shift_pt = 0;
  return FALSE;
}

static void
draw_marks (const SwFigure *whole,
            const SwPanel  *panel,
            const SwArrows *arrows,
            const SwPaper  *paper,
            Box             box,
            Marks           marks)
{
  guint taken = 0;
  double x;
  double y;

  if (marks.number > 0)
    {
      /* Readers look for the order in one place; the pictures leave it free. */
      taken |= 1u;
      sw_mark_draw_number (paper->sketch, box.left_pt + SW_MARK_NUMBER_PT / 2 + 1.0,
                           box.top_pt + SW_MARK_NUMBER_PT / 2 + 1.0, marks.number);
    }
  if (marks.hold)
    {
      taken |= 1u << find_corner (panel, arrows, paper, box, SW_MARK_HOLD_PT, 1, taken, &x, &y);
      sw_mark_draw_hold (paper->sketch, x, y);
    }
  if (marks.sides)
    {
      SwSidesMark sides;

      sw_sides_mark_get (&sides, whole);
      find_corner (panel, arrows, paper, box, SW_SIDES_MARK_PT, 1, taken, &x, &y);
      sw_sides_mark_draw (&sides, paper->sketch, x, y);
    }
}

static void
draw_cell (const SwFigure *whole,
           SwSketch       *sketch,
           SwCell          cell,
           Box             box,
           Box             inner,
           double          scale_pt,
           Marks           marks)
{
  SwPaper paper = paper_for (&cell.panel->whole, sketch, inner, scale_pt);
  SwExtent room = room_for (cell.figure, &paper, box);
  SwArrows arrows;

  sw_sketch_save (sketch);
  clip_to_frame (cell.figure, &paper, box);
  sw_panel_draw (cell.panel, cell.figure, &paper, &room, &arrows);
  sw_sketch_restore (sketch);
  draw_marks (whole, cell.panel, &arrows, &paper, box, marks);
}

/* The second view in its ring, lower right in the picture's room. */
static void
draw_ring (const SwFigure *self,
           SwSketch       *sketch,
           SwPanel        *panel,
           Box             box,
           double          across_pt)
{
  const SwFigureInset *what = &self->solver.content->inset;
  SwFigure *view = self->inset;
  double radius = across_pt / 2 - 1.6;
  double x = box.left_pt + box.width_pt - across_pt / 2;
  double y = box.top_pt + box.height_pt - across_pt / 2;
  SwVector from = sw_body_get_mark (&view->frames[0].body, what->around);
  SwVector to = sw_body_get_mark (&view->frames[SW_N_FRAMES - 1].body, what->around);
  SwSpot middle = sw_see (&view->camera, sw_mix (from, to, 0.5));
  double scale = across_pt / what->size;
  SwPaper paper = { .sketch = sketch, .scale_pt = scale, .x_pt = x - middle.x * scale, .y_pt = y + middle.y * scale };
  double reach = RING_INSET * what->size / 2;
  SwExtent room = { middle.x - reach, middle.y - reach, middle.x + reach, middle.y + reach };
  SwArrows arrows;

  sw_sketch_save (sketch);
  sw_sketch_circle (sketch, x, y, radius);
  sw_paper_tone (&paper, 1);
  sw_sketch_fill_preserve (sketch);
  sw_sketch_clip (sketch);
  sw_panel_draw (panel, view, &paper, &room, &arrows);
  sw_sketch_restore (sketch);
  sw_sketch_circle (sketch, x, y, radius);
  sw_paper_tone (&paper, SW_TONE_PROP_INK);
  sw_sketch_set_width (sketch, 1.1);
  sw_sketch_stroke (sketch);
}

static void
add_all_panels (SwFigure     *self,
                const SwCell *cells,
                int           n_cells)
{
  for (int i = 0; i < n_cells; i++)
    sw_figure_add_panels (cells[i].figure);
  if (self->inset != NULL)
    sw_figure_add_panels (self->inset);
}

/* What is drawn into a box of that size, magnified. */
static SwSketch *
begin_sketch (double zoom,
              double width_pt,
              double height_pt)
{
  const cairo_matrix_t larger = { zoom, 0, 0, zoom, 0, 0 };
  SwSketch *sketch = sw_sketch_new ();

  sw_sketch_transform (sketch, &larger);
  sw_sketch_save (sketch);
  sw_sketch_rectangle (sketch, 0, 0, width_pt, height_pt);
  sw_sketch_clip (sketch);
  return sketch;
}

/**
 * sw_figure_sketch:
 * @width_pt: of the box, whose upper left corner is the origin
 * @height_pt: of the box
 *
 * May run in any thread.
 *
 * Returns: (transfer full): the figure as it is drawn there, black on whatever is there
 */
SwSketch *
sw_figure_sketch (SwFigure *self,
                  double    width_pt,
                  double    height_pt)
{
  g_autoptr (GMutexLocker) locker = NULL;
  SwSketch *sketch;
  SwCell cells[SW_MAX_PANELS];
  SwLayout layout;
  double shift = 0;
  double top = 0;
  double zoom;

  g_return_val_if_fail (SW_IS_FIGURE (self), NULL);

  if (width_pt < SW_LAYOUT_LEAST_PT || height_pt < SW_LAYOUT_LEAST_PT)
    return sw_sketch_new ();

  locker = g_mutex_locker_new (&self->lock);
  zoom = sw_layout_get_zoom (width_pt, height_pt);
  width_pt /= zoom;
  height_pt /= zoom;
  sw_layout_choose (&layout, self, width_pt, height_pt);
  if (layout.n == 1)
    cells[0] = (SwCell){ self, &self->overlay };
  else
    add_all_panels (self, cells, sw_figure_get_cells (self, cells));
  if (layout.n > 1 && !find_shift (cells, &layout, &shift))
    {
      top = SW_MARK_NUMBER_PT - 1;
      sw_layout_make_room (&layout, self, top);
    }

  sketch = begin_sketch (zoom, width_pt, height_pt);
  for (int i = 0; i < layout.n; i++)
    {
      Box box = { i % layout.columns * (layout.cell_width_pt + SW_LAYOUT_GAP_PT),
                  i / layout.columns * (layout.cell_height_pt + SW_LAYOUT_GAP_PT), layout.cell_width_pt,
                  layout.cell_height_pt };
      Box room = without_ring (&layout, box);
      Box inner = { room.left_pt + shift, room.top_pt + top, room.width_pt, room.height_pt - top };
      gboolean last = i == layout.n - 1;
      Marks marks = { layout.n > 1 ? i + 1 : 0, self->solver.content->hold && last, last };

      draw_cell (self, sketch, cells[i], room, inner, layout.scale_pt, marks);
      if (layout.ring != SW_RING_NONE && self->n_parts == 0)
        draw_ring (self, sketch, layout.n == 1 ? &self->inset->overlay : &self->inset->panels[i], box, layout.ring_pt);
    }
  sw_sketch_restore (sketch);
  return sketch;
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
  g_autoptr (SwSketch) sketch = NULL;

  g_return_if_fail (SW_IS_FIGURE (self));

  sketch = sw_figure_sketch (self, width_pt, height_pt);
  sw_sketch_draw (sketch, cr);
}

/**
 * sw_figure_count_pictures:
 * @width_pt: of the box
 * @height_pt: of the box
 *
 * Returns: how many pictures sw_figure_draw() draws in it; they are numbered when there are several
 */
int
sw_figure_count_pictures (SwFigure *self,
                          double    width_pt,
                          double    height_pt)
{
  double zoom = sw_layout_get_zoom (width_pt, height_pt);
  SwLayout layout;

  g_return_val_if_fail (SW_IS_FIGURE (self), 0);

  sw_layout_choose (&layout, self, width_pt / zoom, height_pt / zoom);
  return layout.n;
}

/* The picture of a moment: the pose there, or the step it belongs to. */
static SwFigure *
get_moment (SwFigure *self,
            double    phase,
            SwSolved *now)
{
  SwCell cells[SW_MAX_PANELS];
  int n = sw_figure_get_cells (self, cells);
  const SwCell *step = &cells[CLAMP ((int) (phase * n), 0, n - 1)];

  if (self->solver.content->motion == SW_FIGURE_MOTION_STEPS)
    {
      *now = *step->panel->solid;
      return step->figure;
    }

  sw_solver_get (&self->solver, phase, now);
  return self;
}

/**
 * sw_figure_draw_at:
 * @cr: where to draw
 * @width_pt: of the box
 * @height_pt: of the box
 * @phase: 0 at the first pose, 1 at the last; circles go round once
 *
 * Draws one pose, placed alike for every phase, without arrow or marks: a frame of the moving picture. Steps follow one
 * another without anything in between.
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
  g_autoptr (SwSketch) sketch = NULL;
  SwFigure *part;
  SwPaper paper;
  SwExtent room;
  SwArrows arrows;
  double zoom;
  Box box;

  g_return_if_fail (SW_IS_FIGURE (self));

  if (width_pt < SW_LAYOUT_LEAST_PT || height_pt < SW_LAYOUT_LEAST_PT)
    return;

  zoom = sw_layout_get_zoom (width_pt, height_pt);
  box = (Box){ 0, 0, width_pt / zoom, height_pt / zoom };
  part = get_moment (self, phase, &now);
  sw_panel_add_items (&panel, part);
  sketch = begin_sketch (zoom, box.width_pt, box.height_pt);
  paper = paper_for (&part->whole, sketch, box, sw_layout_fit_one (self, box.width_pt, box.height_pt));
  room = room_for (part, &paper, box);

  clip_to_frame (part, &paper, box);
  sw_panel_draw (&panel, part, &paper, &room, &arrows);
  sw_sketch_restore (sketch);
  sw_sketch_draw (sketch, cr);
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
