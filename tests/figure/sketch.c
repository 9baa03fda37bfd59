/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sketches: what is told of them, step by step, and what it looks like. */
#include "config.h"

#include "sw-sketch.h"

static void
tell (gpointer      data,
      SwSketchStep  step,
      const float  *values)
{
  static const struct
  {
    char letter;
    int n_values;
  } kinds[] = {
    [SW_SKETCH_MOVE] = { 'm', 2 }, [SW_SKETCH_LINE] = { 'l', 2 },   [SW_SKETCH_CURVE] = { 'c', 6 },
    [SW_SKETCH_CLOSE] = { 'h', 0 }, [SW_SKETCH_FILL] = { 'f', 3 },  [SW_SKETCH_STROKE] = { 's', 7 },
    [SW_SKETCH_CLIP] = { 'q', 0 }, [SW_SKETCH_RESTORE] = { 'Q', 0 },
  };

  g_string_append_c (data, kinds[step].letter);
  for (int i = 0; i < kinds[step].n_values; i++)
    g_string_append_printf (data, " %g", (double) values[i]);
  g_string_append (data, "; ");
}

static void
assert_told (const SwSketch *sketch,
             const char     *wanted)
{
  GString *told = g_string_new (NULL);

  sw_sketch_read (sketch, tell, told);
  g_assert_cmpstr (told->str, ==, wanted);
  g_string_free (told, TRUE);
}

/* Places and lengths come in the sketch's own units, whatever held when they were added. */
static void
test_units (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();
  const cairo_matrix_t twice = { 2, 0, 0, 2, 10, 0 };

  sw_sketch_save (sketch);
  sw_sketch_transform (sketch, &twice);
  sw_sketch_set_width (sketch, 3);
  sw_sketch_set_dash (sketch, 1, 2);
  sw_sketch_move (sketch, 1, 1);
  sw_sketch_line (sketch, 2, 1);
  sw_sketch_stroke (sketch);
  sw_sketch_restore (sketch);
  sw_sketch_set_tone (sketch, 0.5);
  sw_sketch_rectangle (sketch, 1, 1, 2, 2);
  sw_sketch_fill (sketch);
  assert_told (sketch, "m 12 2; l 14 2; s 0 6 0 0 2 4 0; m 1 1; l 3 1; l 3 3; l 1 3; h; f 0.5 1 0; ");
}

/* Lines that are kept are there for what comes next; those that are dropped leave nothing, and take nothing with them. */
static void
test_paths (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();

  sw_sketch_line (sketch, 5, 5);
  sw_sketch_new_path (sketch);
  sw_sketch_line (sketch, 0, 0);
  sw_sketch_line (sketch, 1, 0);
  sw_sketch_fill_preserve (sketch);
  sw_sketch_stroke_preserve (sketch);
  sw_sketch_new_path (sketch);
  sw_sketch_save (sketch);
  sw_sketch_rectangle (sketch, 0, 0, 1, 1);
  sw_sketch_clip (sketch);
  sw_sketch_restore (sketch);
  sw_sketch_new_path (sketch);
  sw_sketch_move (sketch, 7, 7);
  sw_sketch_close (sketch);
  sw_sketch_fill (sketch);
  assert_told (sketch, "m 0 0; l 1 0; f 0 1 1; s 0 2 0 0 0 0 0; m 0 0; l 1 0; l 1 1; l 0 1; h; q; Q; "
                       "m 7 7; h; f 0 1 0; ");
}

static guint8
grey_at (cairo_surface_t *surface,
         int              x,
         int              y)
{
  cairo_surface_flush (surface);
  return cairo_image_surface_get_data (surface)[y * cairo_image_surface_get_stride (surface) + 4 * x];
}

/* Drawn on a surface it is where the surface's units say, clipped where it is clipped, and the state is as before. */
static void
test_draw (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 40, 40);
  cairo_t *cr = cairo_create (surface);

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  sw_sketch_save (sketch);
  sw_sketch_rectangle (sketch, 0, 0, 5, 20);
  sw_sketch_clip (sketch);
  sw_sketch_set_tone (sketch, 0.2);
  sw_sketch_circle (sketch, 5, 5, 4);
  sw_sketch_fill (sketch);
  sw_sketch_restore (sketch);
  sw_sketch_set_width (sketch, 2);
  sw_sketch_move (sketch, 0, 15);
  sw_sketch_line (sketch, 20, 15);
  sw_sketch_stroke (sketch);

  cairo_scale (cr, 2, 2);
  sw_sketch_draw (sketch, cr);
  g_assert_cmpuint (grey_at (surface, 7, 10), ==, 51);
  g_assert_cmpuint (grey_at (surface, 12, 10), ==, 255);
  g_assert_cmpuint (grey_at (surface, 1, 1), ==, 255);
  g_assert_cmpuint (grey_at (surface, 35, 28), ==, 0);
  g_assert_cmpuint (grey_at (surface, 35, 31), ==, 0);
  g_assert_cmpuint (grey_at (surface, 35, 33), ==, 255);

  cairo_rectangle (cr, 10, 1, 1, 1);
  cairo_fill (cr);
  g_assert_cmpuint (grey_at (surface, 21, 3), ==, 255);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sketch/units", test_units);
  g_test_add_func ("/sketch/paths", test_paths);
  g_test_add_func ("/sketch/draw", test_draw);
  return g_test_run ();
}
