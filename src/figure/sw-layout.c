/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Arranges the pictures of a figure in a box: one, or numbered ones beside or under each other, and the second view. */
#include "config.h"

#include "sw-layout.h"

/* Larger than this a whole body looks like a poster among the other pictures; close frames may be larger. */
#define MOST_WHOLE_PT 150.0
#define MOST_CLOSE_PT 230.0
#define MOST_FINE_PT 900.0
/* When panels would be smaller than this part of a single picture, one picture it is. */
#define PANELS_WORTH 0.66
/* Boxes larger than this magnify everything, lines too; smaller ones than that make it finer. */
#define LARGE_BOX_PT 180.0
#define SMALL_BOX_PT 84.0
#define FINEST 0.6
#define NATURAL_WHOLE_PT 118.0
#define NATURAL_CLOSE_PT 210.0
#define NATURAL_FINE_PT 640.0
/* Panels beside each other may be this much smaller than under each other, which makes the picture less high. */
#define BESIDE_WORTH 0.7
/* What the second view takes of a picture's room: of its width beside, of its height below. */
#define RING_BESIDE 0.40
#define RING_BELOW 0.42
#define RING_BESIDE_WORTH 0.75

static gboolean
is_close (const SwFigure *figure)
{
  return figure->cropped_below || figure->cropped_above;
}

static double
most_scale (const SwFigure *figure)
{
  return figure->fine ? MOST_FINE_PT : is_close (figure) ? MOST_CLOSE_PT : MOST_WHOLE_PT;
}

static double
natural_scale (const SwFigure *figure)
{
  return figure->fine ? NATURAL_FINE_PT : is_close (figure) ? NATURAL_CLOSE_PT : NATURAL_WHOLE_PT;
}

/* What one picture must hold, parts of stature. */
static void
get_size (SwFigure *figure,
          gboolean  panels,
          double   *width,
          double   *height)
{
  SwCell cells[SW_MAX_PANELS];
  int n = sw_figure_get_cells (figure, cells);

  *width = *height = 0;
  if (!panels)
    {
      cells[0] = (SwCell){ figure, &figure->overlay };
      n = 1;
    }
  for (int i = 0; i < n; i++)
    {
      const SwExtent *whole = &cells[i].panel->whole;

      *width = MAX (*width, whole->right - whole->left);
      *height = MAX (*height, whole->top - whole->bottom);
    }
}

/* The diameter of the second view's ring in a picture's room. */
static double
find_across (SwRing ring,
             double width_pt,
             double height_pt)
{
  if (ring == SW_RING_BESIDE)
    return MIN (RING_BESIDE * width_pt, height_pt);

  return ring == SW_RING_BELOW ? MIN (RING_BELOW * height_pt, width_pt) : 0.0;
}

static double
fit (SwFigure *figure,
     SwRing    ring,
     double    width_pt,
     double    height_pt,
     int       columns,
     int       rows)
{
  double w = (width_pt - 2 * SW_LAYOUT_MARGIN_PT - (columns - 1) * SW_LAYOUT_GAP_PT) / columns;
  double h = (height_pt - 2 * SW_LAYOUT_MARGIN_PT - (rows - 1) * SW_LAYOUT_GAP_PT) / rows;
  double across = find_across (ring, w, h);
  double width;
  double height;

  if (ring == SW_RING_BESIDE)
    w -= across;
  else if (ring == SW_RING_BELOW)
    h -= across;
  get_size (figure, columns * rows > 1, &width, &height);
  return CLAMP (MIN (w / width, h / height), 1.0, most_scale (figure));
}

static int
count_panels (SwFigure *figure)
{
  SwCell cells[SW_MAX_PANELS];

  return sw_figure_get_cells (figure, cells);
}

/* Three in two columns leave a hole that a grid of more hides better; nor are there more columns than the rows need. */
static gboolean
leaves_hole (int n,
             int columns)
{
  int rows = (n + columns - 1) / columns;

  return (n == 3 && columns == 2) || (rows > 1 && columns > 1 && (n + columns - 2) / (columns - 1) == rows);
}

/* The best grid for all panels: the largest pictures, of equal ones the fewest rows. */
static void
choose_columns (SwLayout *self,
                SwFigure *figure,
                SwRing    ring,
                double    width_pt,
                double    height_pt)
{
  SwFigureLayout layout = figure->solver.content->layout;
  int n = count_panels (figure);
  int most = layout == SW_FIGURE_LAYOUT_STACKED ? 1 : n;
  int least = layout == SW_FIGURE_LAYOUT_SIDE_BY_SIDE ? n : 1;

  self->n = n;
  self->scale_pt = 0;
  for (int columns = most; columns >= least; columns--)
    {
      int rows = (n + columns - 1) / columns;
      double scale = fit (figure, ring, width_pt, height_pt, columns, rows);

      if (leaves_hole (n, columns) || scale <= self->scale_pt)
        continue;
      self->columns = columns;
      self->rows = rows;
      self->scale_pt = scale;
    }
}

static void
choose_grid (SwLayout *self,
             SwFigure *figure,
             SwRing    ring,
             double    width_pt,
             double    height_pt)
{
  SwFigureLayout layout = figure->solver.content->layout;
  SwLayout one = { .n = 1, .columns = 1, .rows = 1, .scale_pt = fit (figure, ring, width_pt, height_pt, 1, 1) };
  gboolean panels = layout > SW_FIGURE_LAYOUT_SINGLE || figure->needs_panels || figure->n_parts > 0;

  *self = one;
  if (count_panels (figure) > 1 && layout != SW_FIGURE_LAYOUT_SINGLE)
    {
      choose_columns (self, figure, ring, width_pt, height_pt);
      if (!panels && !(figure->wants_panels && self->scale_pt > PANELS_WORTH * one.scale_pt))
        *self = one;
    }
  self->width_pt = width_pt;
  self->height_pt = height_pt;
  self->cell_width_pt = (width_pt - (self->columns - 1) * SW_LAYOUT_GAP_PT) / self->columns;
  self->cell_height_pt = (height_pt - (self->rows - 1) * SW_LAYOUT_GAP_PT) / self->rows;
  self->ring = ring;
  self->ring_pt = find_across (ring, self->cell_width_pt, self->cell_height_pt);
}

/**
 * sw_layout_choose:
 * @self: (out): the arrangement
 * @figure: a figure
 * @width_pt: of the box
 * @height_pt: of the box
 */
void
sw_layout_choose (SwLayout *self,
                  SwFigure *figure,
                  double    width_pt,
                  double    height_pt)
{
  SwLayout below;

  if (figure->inset == NULL)
    {
      choose_grid (self, figure, SW_RING_NONE, width_pt, height_pt);
      return;
    }

  choose_grid (self, figure, SW_RING_BESIDE, width_pt, height_pt);
  choose_grid (&below, figure, SW_RING_BELOW, width_pt, height_pt);
  if (self->scale_pt < RING_BESIDE_WORTH * below.scale_pt)
    *self = below;
}

/**
 * sw_layout_make_room:
 * @self: an arrangement
 * @figure: its figure
 * @lower_pt: how much every picture leaves free above
 *
 * Makes the pictures smaller for that.
 */
void
sw_layout_make_room (SwLayout *self,
                     SwFigure *figure,
                     double    lower_pt)
{
  self->scale_pt = MIN (self->scale_pt, fit (figure, self->ring, self->width_pt, self->height_pt - lower_pt * self->rows,
                                             self->columns, self->rows));
}

/**
 * sw_layout_get_zoom:
 * @width_pt: of a box
 * @height_pt: of a box
 *
 * Line weights are meant for a picture of about 50 mm.
 *
 * Returns: how much finer or coarser the box wants them
 */
double
sw_layout_get_zoom (double width_pt,
                    double height_pt)
{
  double least = MIN (width_pt, height_pt);

  if (least > LARGE_BOX_PT)
    return least / LARGE_BOX_PT;

  return least < SMALL_BOX_PT ? MAX (FINEST, least / SMALL_BOX_PT) : 1.0;
}

/**
 * sw_layout_fit_one:
 * @figure: a figure
 * @width_pt: of a box
 * @height_pt: of a box
 *
 * Returns: points for one stature when a single picture fills the box
 */
double
sw_layout_fit_one (SwFigure *figure,
                   double    width_pt,
                   double    height_pt)
{
  double scale = most_scale (figure);

  if (figure->n_parts == 0)
    return fit (figure, SW_RING_NONE, width_pt, height_pt, 1, 1);

  for (int i = 0; i < figure->n_parts; i++)
    scale = MIN (scale, fit (figure->parts[i], SW_RING_NONE, width_pt, height_pt, 1, 1));
  return scale;
}

/* The height that one picture of that width wants, and the scale it then has. */
static double
measure_cell (SwFigure *figure,
              SwRing    ring,
              gboolean  panels,
              double    width_pt,
              double   *scale_pt)
{
  double across = ring == SW_RING_BESIDE ? RING_BESIDE * width_pt : 0.0;
  double w;
  double h;

  get_size (figure, panels, &w, &h);
  *scale_pt = MIN (natural_scale (figure), (width_pt - across) / w);
  h *= *scale_pt;
  if (ring == SW_RING_BELOW)
    return MIN (h / (1 - RING_BELOW), h + width_pt);

  return MAX (h, across);
}

/* The height that the pictures want in that width, and the scale they then have. */
static double
measure_grid (SwFigure *figure,
              SwRing    ring,
              double    width_pt,
              double   *scale_pt)
{
  SwFigureLayout layout = figure->solver.content->layout;
  double width = width_pt - 2 * SW_LAYOUT_MARGIN_PT;
  int n = count_panels (figure);
  double height;
  double one;

  if (n == 1 || layout == SW_FIGURE_LAYOUT_SINGLE
      || !(figure->needs_panels || figure->wants_panels || figure->n_parts > 0 || layout > SW_FIGURE_LAYOUT_SINGLE))
    return measure_cell (figure, ring, FALSE, width, scale_pt);

  height = n * measure_cell (figure, ring, TRUE, width, &one) + (n - 1) * SW_LAYOUT_GAP_PT;
  *scale_pt = one;
  for (int columns = n; columns > 1 && layout != SW_FIGURE_LAYOUT_STACKED; columns--)
    {
      int rows = (n + columns - 1) / columns;
      double scale;
      double cell = measure_cell (figure, ring, TRUE, (width - (columns - 1) * SW_LAYOUT_GAP_PT) / columns, &scale);

      if (leaves_hole (n, columns) || (layout == SW_FIGURE_LAYOUT_AUTO && scale < BESIDE_WORTH * one))
        continue;
      *scale_pt = scale;
      return rows * cell + (rows - 1) * SW_LAYOUT_GAP_PT;
    }

  return height;
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
  double scale;
  double height;
  double zoom;

  g_return_if_fail (SW_IS_FIGURE (self));

  /* A wide box may be filled up to the height at which it begins to magnify. */
  zoom = MAX (1.0, width_pt / (1.4 * LARGE_BOX_PT));
  width_pt /= zoom;
  height = measure_grid (self, self->inset != NULL ? SW_RING_BELOW : SW_RING_NONE, width_pt, &scale);
  if (self->inset != NULL)
    {
      double beside_scale;
      double beside = measure_grid (self, SW_RING_BESIDE, width_pt, &beside_scale);

      if (beside_scale >= RING_BESIDE_WORTH * scale)
        height = beside;
    }
  *height_pt = zoom * MAX (24.0, MIN (height + 2 * SW_LAYOUT_MARGIN_PT, 1.6 * width_pt));
}
