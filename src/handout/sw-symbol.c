/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Draws the handout's small signs in a unit square, scaled to the size asked for. */
#include "config.h"

#include <math.h>

#include "sw-symbol.h"

static void
add_rounded_square (cairo_t *cr,
                    double   inset,
                    double   radius)
{
  double low = inset + radius;
  double high = 1.0 - inset - radius;

  cairo_new_sub_path (cr);
  cairo_arc (cr, high, low, radius, -G_PI_2, 0.0);
  cairo_arc (cr, high, high, radius, 0.0, G_PI_2);
  cairo_arc (cr, low, high, radius, G_PI_2, G_PI);
  cairo_arc (cr, low, low, radius, G_PI, 1.5 * G_PI);
  cairo_close_path (cr);
}

static void
stroke (cairo_t *cr,
        double   width)
{
  cairo_set_line_width (cr, width);
  cairo_stroke (cr);
}

static void
draw_tick (cairo_t *cr,
           double   width)
{
  cairo_move_to (cr, 0.18, 0.54);
  cairo_line_to (cr, 0.42, 0.78);
  cairo_line_to (cr, 0.84, 0.24);
  stroke (cr, width);
}

static void
draw_cross (cairo_t *cr)
{
  cairo_move_to (cr, 0.24, 0.24);
  cairo_line_to (cr, 0.76, 0.76);
  cairo_move_to (cr, 0.76, 0.24);
  cairo_line_to (cr, 0.24, 0.76);
  stroke (cr, 0.11);
}

static void
draw_exclamation (cairo_t *cr,
                  double   top,
                  double   bottom)
{
  cairo_move_to (cr, 0.5, top);
  cairo_line_to (cr, 0.5, bottom - 0.2);
  stroke (cr, 0.105);
  cairo_arc (cr, 0.5, bottom - 0.03, 0.065, 0.0, 2.0 * G_PI);
  cairo_fill (cr);
}

static void
draw_take_care (cairo_t *cr)
{
  cairo_move_to (cr, 0.5, 0.08);
  cairo_line_to (cr, 0.96, 0.9);
  cairo_line_to (cr, 0.04, 0.9);
  cairo_close_path (cr);
  stroke (cr, 0.09);
  draw_exclamation (cr, 0.38, 0.8);
}

static void
draw_stop (cairo_t *cr)
{
  for (int corner = 0; corner < 8; corner++)
    {
      double angle = G_PI / 8.0 + corner * G_PI / 4.0;

      cairo_line_to (cr, 0.5 + 0.5 * cos (angle), 0.5 + 0.5 * sin (angle));
    }
  cairo_close_path (cr);
  stroke (cr, 0.08);
  draw_exclamation (cr, 0.26, 0.76);
}

static void
draw_note (cairo_t *cr)
{
  cairo_move_to (cr, 0.06, 0.14);
  cairo_line_to (cr, 0.94, 0.14);
  cairo_line_to (cr, 0.94, 0.70);
  cairo_line_to (cr, 0.46, 0.70);
  cairo_line_to (cr, 0.26, 0.92);
  cairo_line_to (cr, 0.26, 0.70);
  cairo_line_to (cr, 0.06, 0.70);
  cairo_close_path (cr);
  stroke (cr, 0.08);
  cairo_move_to (cr, 0.24, 0.34);
  cairo_line_to (cr, 0.76, 0.34);
  cairo_move_to (cr, 0.24, 0.51);
  cairo_line_to (cr, 0.6, 0.51);
  stroke (cr, 0.07);
}

static void
draw_bars (cairo_t *cr,
           double   ring)
{
  if (ring > 0.0)
    {
      cairo_arc (cr, 0.5, 0.5, ring, 0.0, 2.0 * G_PI);
      stroke (cr, 0.075);
    }
  cairo_rectangle (cr, 0.33, 0.3, 0.11, 0.4);
  cairo_rectangle (cr, 0.56, 0.3, 0.11, 0.4);
  cairo_fill (cr);
}

static void
draw_clock (cairo_t *cr)
{
  cairo_arc (cr, 0.5, 0.5, 0.42, 0.0, 2.0 * G_PI);
  stroke (cr, 0.08);
  cairo_move_to (cr, 0.5, 0.24);
  cairo_line_to (cr, 0.5, 0.52);
  cairo_line_to (cr, 0.68, 0.62);
  stroke (cr, 0.08);
}

/* Two discs with the digits 1 and 2, drawn as strokes so that no font is asked for. */
static void
draw_order (cairo_t *cr)
{
  cairo_arc (cr, 0.24, 0.5, 0.25, 0.0, 2.0 * G_PI);
  cairo_arc (cr, 0.85, 0.5, 0.25, 0.0, 2.0 * G_PI);
  cairo_fill (cr);

  cairo_save (cr);
  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_move_to (cr, 0.18, 0.43);
  cairo_line_to (cr, 0.26, 0.36);
  cairo_line_to (cr, 0.26, 0.64);
  stroke (cr, 0.06);
  cairo_arc (cr, 0.85, 0.44, 0.08, G_PI, 0.2 * G_PI);
  cairo_line_to (cr, 0.77, 0.635);
  cairo_line_to (cr, 0.935, 0.635);
  stroke (cr, 0.06);
  cairo_restore (cr);
}

static void
draw_start (cairo_t *cr)
{
  const double dashes[] = { 0.1, 0.075 };

  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_dash (cr, dashes, 2, 0.0);
  add_rounded_square (cr, 0.16, 0.26);
  stroke (cr, 0.045);
  cairo_set_dash (cr, NULL, 0, 0.0);
}

/* The arrow of the pictures; @from_radians is where on its arc the shaft begins. */
static void
draw_arrow (cairo_t *cr,
            double   from_radians)
{
  cairo_arc (cr, 0.72, 0.92, 0.64, from_radians, 1.42 * G_PI);
  stroke (cr, 0.07);
  cairo_move_to (cr, 0.88, 0.24);
  cairo_line_to (cr, 0.52, 0.17);
  cairo_line_to (cr, 0.62, 0.46);
  cairo_close_path (cr);
  cairo_fill (cr);
}

/* The same with a thin head at its other end. */
static void
draw_arrow_back (cairo_t *cr)
{
  cairo_move_to (cr, 0.2, 0.6);
  cairo_line_to (cr, 0.04, 0.42);
  cairo_move_to (cr, 0.2, 0.6);
  cairo_line_to (cr, 0.34, 0.42);
  stroke (cr, 0.05);
  draw_arrow (cr, 1.12 * G_PI);
}

/* A little person whose leg on one side works. */
static void
draw_person (cairo_t *cr,
             double   x,
             double   side)
{
  cairo_arc (cr, x, 0.15, 0.1, 0.0, 2.0 * G_PI);
  cairo_fill (cr);
  for (int s = -1; s <= 1; s += 2)
    {
      cairo_move_to (cr, x + s * 0.06, 0.3);
      cairo_line_to (cr, x + s * 0.17, 0.52);
    }
  cairo_move_to (cr, x, 0.28);
  cairo_line_to (cr, x, 0.55);
  cairo_line_to (cr, x - side * 0.1, 0.92);
  stroke (cr, 0.04);
  cairo_move_to (cr, x + side * 0.04, 0.56);
  cairo_line_to (cr, x + side * 0.1, 0.9);
  stroke (cr, 0.13);
}

/* Three small arrows: air. */
static void
draw_breath (cairo_t *cr)
{
  for (int line = -1; line <= 1; line++)
    {
      double far = 0.5 + 0.3 * line;
      double tip = line == 0 ? 0.96 : 0.84;

      cairo_move_to (cr, 0.08, 0.5 + 0.15 * line);
      cairo_curve_to (cr, 0.4, 0.5 + 0.15 * line, 0.5, far, tip - 0.18, far);
      stroke (cr, 0.055);
      cairo_move_to (cr, tip, far);
      cairo_line_to (cr, tip - 0.22, far - 0.12);
      cairo_line_to (cr, tip - 0.22, far + 0.12);
      cairo_close_path (cr);
      cairo_fill (cr);
    }
}

/* The arrow of a press: it ends at a bar. */
static void
draw_press (cairo_t *cr)
{
  cairo_move_to (cr, 0.06, 0.5);
  cairo_line_to (cr, 0.5, 0.5);
  stroke (cr, 0.09);
  cairo_move_to (cr, 0.8, 0.5);
  cairo_line_to (cr, 0.44, 0.3);
  cairo_line_to (cr, 0.44, 0.7);
  cairo_close_path (cr);
  cairo_fill (cr);
  cairo_rectangle (cr, 0.8, 0.14, 0.12, 0.72);
  cairo_fill (cr);
}

static void
draw_ring (cairo_t *cr)
{
  cairo_arc (cr, 0.5, 0.5, 0.42, 0.0, 2.0 * G_PI);
  stroke (cr, 0.07);
  cairo_move_to (cr, 0.3, 0.62);
  cairo_curve_to (cr, 0.42, 0.3, 0.58, 0.3, 0.7, 0.62);
  stroke (cr, 0.05);
}

static void
draw_works (cairo_t *cr)
{
  cairo_save (cr);
  cairo_translate (cr, 0.5, 0.5);
  cairo_rotate (cr, -0.5);
  cairo_scale (cr, 0.36, 0.2);
  cairo_arc (cr, 0.0, 0.0, 1.0, 0.0, 2.0 * G_PI);
  cairo_restore (cr);
  cairo_save (cr);
  cairo_set_source_rgb (cr, 0.42, 0.42, 0.42);
  cairo_fill_preserve (cr);
  cairo_restore (cr);
  stroke (cr, 0.04);
}

static void
draw_box (cairo_t *cr,
          double   width)
{
  add_rounded_square (cr, 0.08, 0.08);
  stroke (cr, width);
}

/**
 * sw_symbol_draw:
 * @cr: its source colour is used; its origin is the symbol's top left corner
 * @size_pt: width and height of the symbol
 */
void
sw_symbol_draw (SwSymbol  symbol,
                cairo_t  *cr,
                double    size_pt)
{
  cairo_save (cr);
  cairo_scale (cr, size_pt, size_pt);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_new_path (cr);

  switch (symbol)
    {
    case SW_SYMBOL_BULLET:
      cairo_arc (cr, 0.5, 0.5, 0.17, 0.0, 2.0 * G_PI);
      cairo_fill (cr);
      break;
    case SW_SYMBOL_TICK:
      draw_tick (cr, 0.11);
      break;
    case SW_SYMBOL_CROSS:
      draw_cross (cr);
      break;
    case SW_SYMBOL_BOX:
      draw_box (cr, 0.055);
      break;
    case SW_SYMBOL_DAY:
      cairo_arc (cr, 0.5, 0.5, 0.3, 0.0, 2.0 * G_PI);
      cairo_fill (cr);
      break;
    case SW_SYMBOL_BOX_OFF:
      cairo_move_to (cr, 0.36, 0.5);
      cairo_line_to (cr, 0.64, 0.5);
      stroke (cr, 0.055);
      break;
    case SW_SYMBOL_TAKE_CARE:
      draw_take_care (cr);
      break;
    case SW_SYMBOL_STOP:
      draw_stop (cr);
      break;
    case SW_SYMBOL_NOTE:
      draw_note (cr);
      break;
    case SW_SYMBOL_REST:
      draw_clock (cr);
      break;
    case SW_SYMBOL_KEY_ORDER:
      draw_order (cr);
      break;
    case SW_SYMBOL_KEY_START:
      draw_start (cr);
      break;
    case SW_SYMBOL_KEY_ARROW:
      draw_arrow (cr, 1.02 * G_PI);
      break;
    case SW_SYMBOL_KEY_WORKS:
      draw_works (cr);
      break;
    case SW_SYMBOL_KEY_HOLD:
      draw_bars (cr, 0.4);
      break;
    case SW_SYMBOL_KEY_BACK:
      draw_arrow_back (cr);
      break;
    case SW_SYMBOL_KEY_LIMBS:
      draw_person (cr, 0.5, -1.0);
      break;
    case SW_SYMBOL_KEY_TURNS:
      draw_person (cr, 0.26, -1.0);
      draw_person (cr, 0.74, 1.0);
      break;
    case SW_SYMBOL_KEY_RING:
      draw_ring (cr);
      break;
    case SW_SYMBOL_KEY_PRESS:
      draw_press (cr);
      break;
    case SW_SYMBOL_KEY_BREATH:
      draw_breath (cr);
      break;
    default:
      g_assert_not_reached ();
    }

  cairo_restore (cr);
}

/**
 * sw_symbol_get_name:
 *
 * Returns: a word for the page dump
 */
const char *
sw_symbol_get_name (SwSymbol symbol)
{
  static const char *const names[] = {
    [SW_SYMBOL_BULLET] = "bullet",
    [SW_SYMBOL_TICK] = "tick",
    [SW_SYMBOL_CROSS] = "cross",
    [SW_SYMBOL_BOX] = "box",
    [SW_SYMBOL_DAY] = "day",
    [SW_SYMBOL_BOX_OFF] = "box-off",
    [SW_SYMBOL_TAKE_CARE] = "take-care",
    [SW_SYMBOL_STOP] = "stop",
    [SW_SYMBOL_NOTE] = "note",
    [SW_SYMBOL_REST] = "rest",
    [SW_SYMBOL_KEY_ORDER] = "key-order",
    [SW_SYMBOL_KEY_START] = "key-start",
    [SW_SYMBOL_KEY_ARROW] = "key-arrow",
    [SW_SYMBOL_KEY_WORKS] = "key-works",
    [SW_SYMBOL_KEY_HOLD] = "key-hold",
    [SW_SYMBOL_KEY_BACK] = "key-back",
    [SW_SYMBOL_KEY_LIMBS] = "key-limbs",
    [SW_SYMBOL_KEY_TURNS] = "key-turns",
    [SW_SYMBOL_KEY_RING] = "key-ring",
    [SW_SYMBOL_KEY_PRESS] = "key-press",
    [SW_SYMBOL_KEY_BREATH] = "key-breath",
  };

  return names[symbol];
}
