/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Draws the things that are needed for the exercises, in lines, in a unit square scaled to the size asked for. They stand
 * beside their names: to be found again, not to be read alone. */
#include "config.h"

#include "sw-equipment-draw.h"

#define LINE 0.05
#define FINE 0.032

static void
stroke (cairo_t *cr,
        double   width)
{
  cairo_set_line_width (cr, width);
  cairo_stroke (cr);
}

static void
add_line (cairo_t *cr,
          double   from_x,
          double   from_y,
          double   to_x,
          double   to_y)
{
  cairo_move_to (cr, from_x, from_y);
  cairo_line_to (cr, to_x, to_y);
}

/* Part of an ellipse, from @from to @to, angles as in cairo_arc(). */
static void
add_oval (cairo_t *cr,
          double   x,
          double   y,
          double   radius_x,
          double   radius_y,
          double   from,
          double   to)
{
  cairo_save (cr);
  cairo_translate (cr, x, y);
  cairo_scale (cr, radius_x, radius_y);
  cairo_new_sub_path (cr);
  cairo_arc (cr, 0.0, 0.0, 1.0, from, to);
  cairo_restore (cr);
}

static void
add_rounded (cairo_t *cr,
             double   x,
             double   y,
             double   width,
             double   height,
             double   radius)
{
  cairo_new_sub_path (cr);
  cairo_arc (cr, x + width - radius, y + radius, radius, -G_PI_2, 0.0);
  cairo_arc (cr, x + width - radius, y + height - radius, radius, 0.0, G_PI_2);
  cairo_arc (cr, x + radius, y + height - radius, radius, G_PI_2, G_PI);
  cairo_arc (cr, x + radius, y + radius, radius, G_PI, 1.5 * G_PI);
  cairo_close_path (cr);
}

/* A box seen from the front and a little from above and the right. */
static void
draw_box (cairo_t *cr,
          double   x,
          double   y,
          double   width,
          double   height,
          double   depth)
{
  cairo_rectangle (cr, x, y, width, height);
  cairo_move_to (cr, x, y);
  cairo_line_to (cr, x + depth, y - 0.6 * depth);
  cairo_line_to (cr, x + width + depth, y - 0.6 * depth);
  cairo_line_to (cr, x + width + depth, y + height - 0.6 * depth);
  cairo_line_to (cr, x + width, y + height);
  add_line (cr, x + width, y, x + width + depth, y - 0.6 * depth);
  stroke (cr, LINE);
}

/* The path as a band: both its edges, and white between. */
static void
draw_band_along (cairo_t *cr,
                 double   width)
{
  cairo_set_line_width (cr, width);
  cairo_stroke_preserve (cr);
  cairo_save (cr);
  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  stroke (cr, width - 2.0 * LINE);
  cairo_restore (cr);
}

static void
draw_chair (cairo_t *cr)
{
  cairo_move_to (cr, 0.18, 0.58);
  cairo_line_to (cr, 0.62, 0.58);
  cairo_line_to (cr, 0.82, 0.48);
  cairo_line_to (cr, 0.38, 0.48);
  cairo_close_path (cr);
  add_line (cr, 0.18, 0.58, 0.18, 0.95);
  add_line (cr, 0.62, 0.58, 0.62, 0.95);
  add_line (cr, 0.82, 0.06, 0.82, 0.84);
  add_line (cr, 0.38, 0.06, 0.38, 0.48);
  add_line (cr, 0.38, 0.60, 0.38, 0.84);
  cairo_rectangle (cr, 0.38, 0.08, 0.44, 0.16);
  stroke (cr, LINE);
}

static void
draw_wall (cairo_t *cr)
{
  cairo_rectangle (cr, 0.06, 0.14, 0.88, 0.72);
  stroke (cr, LINE);
  for (int row = 0; row < 4; row++)
    {
      double top = 0.14 + 0.18 * row;

      if (row > 0)
        add_line (cr, 0.06, top, 0.94, top);
      for (double x = row % 2 == 0 ? 0.35 : 0.21; x < 0.9; x += 0.29)
        add_line (cr, x, top, x, top + 0.18);
    }
  stroke (cr, FINE);
}

static void
draw_counter (cairo_t *cr)
{
  cairo_rectangle (cr, 0.03, 0.36, 0.94, 0.09);
  cairo_rectangle (cr, 0.10, 0.45, 0.80, 0.48);
  add_line (cr, 0.5, 0.45, 0.5, 0.93);
  cairo_move_to (cr, 0.28, 0.36);
  cairo_line_to (cr, 0.28, 0.16);
  cairo_curve_to (cr, 0.28, 0.04, 0.48, 0.04, 0.48, 0.18);
  stroke (cr, LINE);
  add_line (cr, 0.43, 0.56, 0.43, 0.66);
  add_line (cr, 0.57, 0.56, 0.57, 0.66);
  stroke (cr, FINE);
}

static void
draw_table (cairo_t *cr)
{
  cairo_move_to (cr, 0.03, 0.44);
  cairo_line_to (cr, 0.74, 0.44);
  cairo_line_to (cr, 0.97, 0.28);
  cairo_line_to (cr, 0.26, 0.28);
  cairo_close_path (cr);
  add_line (cr, 0.08, 0.44, 0.08, 0.92);
  add_line (cr, 0.69, 0.44, 0.69, 0.92);
  add_line (cr, 0.92, 0.33, 0.92, 0.76);
  add_line (cr, 0.30, 0.45, 0.30, 0.76);
  stroke (cr, LINE);
}

static void
draw_step (cairo_t *cr)
{
  draw_box (cr, 0.04, 0.58, 0.60, 0.26, 0.32);
  add_line (cr, 0.22, 0.485, 0.78, 0.485);
  stroke (cr, FINE);
}

/* Half rolled up. */
static void
draw_mat (cairo_t *cr)
{
  cairo_move_to (cr, 0.62, 0.74);
  cairo_line_to (cr, 0.04, 0.74);
  cairo_line_to (cr, 0.24, 0.42);
  cairo_line_to (cr, 0.58, 0.42);
  add_oval (cr, 0.62, 0.60, 0.14, 0.14, 0.0, 2.0 * G_PI);
  add_line (cr, 0.511, 0.512, 0.751, 0.212);
  add_line (cr, 0.729, 0.688, 0.969, 0.388);
  add_oval (cr, 0.86, 0.30, 0.14, 0.14, -2.466, 0.675);
  stroke (cr, LINE);
  add_oval (cr, 0.62, 0.60, 0.05, 0.05, 0.0, 2.0 * G_PI);
  stroke (cr, FINE);
}

static void
draw_bed (cairo_t *cr)
{
  add_line (cr, 0.05, 0.22, 0.05, 0.90);
  add_line (cr, 0.95, 0.46, 0.95, 0.90);
  cairo_rectangle (cr, 0.05, 0.54, 0.90, 0.20);
  add_rounded (cr, 0.11, 0.40, 0.26, 0.14, 0.06);
  stroke (cr, LINE);
  cairo_move_to (cr, 0.44, 0.54);
  cairo_curve_to (cr, 0.44, 0.44, 0.56, 0.46, 0.62, 0.46);
  cairo_line_to (cr, 0.95, 0.46);
  stroke (cr, LINE);
}

/* Over its rail. */
static void
draw_towel (cairo_t *cr)
{
  add_line (cr, 0.06, 0.14, 0.94, 0.14);
  cairo_rectangle (cr, 0.22, 0.14, 0.56, 0.72);
  stroke (cr, LINE);
  add_line (cr, 0.22, 0.66, 0.78, 0.66);
  add_line (cr, 0.22, 0.73, 0.78, 0.73);
  for (double x = 0.26; x < 0.77; x += 0.08)
    add_line (cr, x, 0.86, x, 0.94);
  stroke (cr, FINE);
}

static void
draw_pillow (cairo_t *cr)
{
  cairo_move_to (cr, 0.05, 0.24);
  cairo_curve_to (cr, 0.30, 0.32, 0.70, 0.32, 0.95, 0.24);
  cairo_curve_to (cr, 0.88, 0.42, 0.88, 0.58, 0.95, 0.78);
  cairo_curve_to (cr, 0.70, 0.70, 0.30, 0.70, 0.05, 0.78);
  cairo_curve_to (cr, 0.12, 0.58, 0.12, 0.42, 0.05, 0.24);
  cairo_close_path (cr);
  stroke (cr, LINE);
  add_line (cr, 0.16, 0.34, 0.28, 0.41);
  add_line (cr, 0.84, 0.34, 0.72, 0.41);
  add_line (cr, 0.16, 0.68, 0.28, 0.61);
  add_line (cr, 0.84, 0.68, 0.72, 0.61);
  stroke (cr, FINE);
}

static void
draw_cushion (cairo_t *cr)
{
  add_oval (cr, 0.5, 0.42, 0.44, 0.17, 0.0, 2.0 * G_PI);
  cairo_move_to (cr, 0.06, 0.42);
  cairo_curve_to (cr, 0.0, 0.62, 0.10, 0.80, 0.5, 0.80);
  cairo_curve_to (cr, 0.90, 0.80, 1.0, 0.62, 0.94, 0.42);
  stroke (cr, LINE);
  add_line (cr, 0.5, 0.42, 0.28, 0.38);
  add_line (cr, 0.5, 0.42, 0.72, 0.38);
  add_line (cr, 0.5, 0.42, 0.5, 0.52);
  stroke (cr, FINE);
  add_oval (cr, 0.5, 0.42, 0.045, 0.03, 0.0, 2.0 * G_PI);
  cairo_fill (cr);
}

/* A long strip with two ends. */
static void
draw_band (cairo_t *cr)
{
  cairo_save (cr);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_move_to (cr, 0.12, 0.92);
  cairo_curve_to (cr, 0.12, 0.30, 0.34, 0.02, 0.44, 0.34);
  cairo_curve_to (cr, 0.52, 0.60, 0.56, 0.98, 0.70, 0.72);
  cairo_curve_to (cr, 0.80, 0.52, 0.86, 0.34, 0.88, 0.08);
  draw_band_along (cr, 0.17);
  cairo_restore (cr);
  add_line (cr, 0.035, 0.92, 0.205, 0.92);
  add_line (cr, 0.79, 0.075, 0.965, 0.085);
  stroke (cr, LINE);
}

/* A strip without ends. */
static void
draw_loop_band (cairo_t *cr)
{
  cairo_save (cr);
  cairo_translate (cr, 0.5, 0.5);
  cairo_rotate (cr, -0.35);
  add_rounded (cr, -0.38, -0.20, 0.76, 0.40, 0.20);
  draw_band_along (cr, 0.15);
  cairo_restore (cr);
}

static void
draw_dumbbell (cairo_t *cr)
{
  cairo_rectangle (cr, 0.30, 0.45, 0.40, 0.10);
  cairo_rectangle (cr, 0.16, 0.26, 0.14, 0.48);
  cairo_rectangle (cr, 0.70, 0.26, 0.14, 0.48);
  cairo_rectangle (cr, 0.05, 0.36, 0.11, 0.28);
  cairo_rectangle (cr, 0.84, 0.36, 0.11, 0.28);
  stroke (cr, LINE);
}

/* A cuff with pockets, and the end of its strap. */
static void
draw_ankle_weight (cairo_t *cr)
{
  add_oval (cr, 0.44, 0.30, 0.36, 0.14, 0.0, 2.0 * G_PI);
  stroke (cr, LINE);
  add_line (cr, 0.08, 0.30, 0.08, 0.64);
  add_line (cr, 0.80, 0.30, 0.80, 0.64);
  add_oval (cr, 0.44, 0.64, 0.36, 0.16, 0.0, G_PI);
  stroke (cr, LINE);
  add_rounded (cr, 0.60, 0.48, 0.36, 0.15, 0.05);
  cairo_save (cr);
  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_fill_preserve (cr);
  cairo_restore (cr);
  stroke (cr, LINE);
  add_line (cr, 0.20, 0.42, 0.20, 0.75);
  add_line (cr, 0.34, 0.45, 0.34, 0.79);
  add_line (cr, 0.48, 0.45, 0.48, 0.79);
  stroke (cr, FINE);
}

static void
draw_ball (cairo_t *cr)
{
  add_oval (cr, 0.5, 0.5, 0.43, 0.43, 0.0, 2.0 * G_PI);
  stroke (cr, LINE);
  add_oval (cr, 0.5, 0.5, 0.17, 0.43, -G_PI_2, G_PI_2);
  add_oval (cr, 0.5, 0.5, 0.43, 0.15, 0.0, G_PI);
  stroke (cr, FINE);
}

static void
draw_stick (cairo_t *cr)
{
  add_line (cr, 0.12, 0.88, 0.88, 0.12);
  draw_band_along (cr, 0.16);
}

static void
draw_foam_roller (cairo_t *cr)
{
  add_oval (cr, 0.22, 0.5, 0.15, 0.26, 0.0, 2.0 * G_PI);
  stroke (cr, LINE);
  add_oval (cr, 0.22, 0.5, 0.06, 0.11, 0.0, 2.0 * G_PI);
  stroke (cr, FINE);
  add_line (cr, 0.22, 0.24, 0.80, 0.24);
  add_line (cr, 0.22, 0.76, 0.80, 0.76);
  add_oval (cr, 0.80, 0.5, 0.15, 0.26, -G_PI_2, G_PI_2);
  stroke (cr, LINE);
  for (double x = 0.46; x < 0.8; x += 0.16)
    add_oval (cr, x, 0.5, 0.15, 0.26, -0.32 * G_PI, 0.32 * G_PI);
  stroke (cr, FINE);
}

static void
draw_block (cairo_t *cr)
{
  draw_box (cr, 0.08, 0.40, 0.58, 0.46, 0.26);
}

/* Weights in a tower, a rope over a wheel, and a handle. */
static void
draw_cable (cairo_t *cr)
{
  add_line (cr, 0.04, 0.95, 0.58, 0.95);
  cairo_rectangle (cr, 0.10, 0.06, 0.36, 0.89);
  add_oval (cr, 0.54, 0.17, 0.09, 0.09, 0.0, 2.0 * G_PI);
  stroke (cr, LINE);
  cairo_rectangle (cr, 0.17, 0.60, 0.22, 0.35);
  add_line (cr, 0.17, 0.72, 0.39, 0.72);
  add_line (cr, 0.17, 0.84, 0.39, 0.84);
  add_line (cr, 0.28, 0.06, 0.28, 0.60);
  add_line (cr, 0.61, 0.23, 0.80, 0.52);
  stroke (cr, FINE);
  cairo_move_to (cr, 0.80, 0.52);
  cairo_line_to (cr, 0.70, 0.74);
  cairo_line_to (cr, 0.96, 0.68);
  cairo_close_path (cr);
  stroke (cr, LINE);
}

/**
 * sw_equipment_draw:
 * @equipment: a thing
 * @cr: where to; its colour is used, and white for what lies before something else
 * @size_pt: side of the square it fills
 */
void
sw_equipment_draw (SwEquipment  equipment,
                   cairo_t     *cr,
                   double       size_pt)
{
  static void (*const draw[]) (cairo_t *cr) = {
    [SW_EQUIPMENT_CHAIR] = draw_chair,
    [SW_EQUIPMENT_WALL] = draw_wall,
    [SW_EQUIPMENT_COUNTER] = draw_counter,
    [SW_EQUIPMENT_TABLE] = draw_table,
    [SW_EQUIPMENT_STEP] = draw_step,
    [SW_EQUIPMENT_MAT] = draw_mat,
    [SW_EQUIPMENT_BED] = draw_bed,
    [SW_EQUIPMENT_TOWEL] = draw_towel,
    [SW_EQUIPMENT_PILLOW] = draw_pillow,
    [SW_EQUIPMENT_CUSHION] = draw_cushion,
    [SW_EQUIPMENT_BAND] = draw_band,
    [SW_EQUIPMENT_LOOP_BAND] = draw_loop_band,
    [SW_EQUIPMENT_DUMBBELL] = draw_dumbbell,
    [SW_EQUIPMENT_ANKLE_WEIGHT] = draw_ankle_weight,
    [SW_EQUIPMENT_BALL] = draw_ball,
    [SW_EQUIPMENT_STICK] = draw_stick,
    [SW_EQUIPMENT_FOAM_ROLLER] = draw_foam_roller,
    [SW_EQUIPMENT_BLOCK] = draw_block,
    [SW_EQUIPMENT_CABLE] = draw_cable,
  };

  g_return_if_fail ((gsize) equipment < G_N_ELEMENTS (draw));

  cairo_save (cr);
  cairo_scale (cr, size_pt, size_pt);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_new_path (cr);
  draw[equipment] (cr);
  cairo_restore (cr);
}
