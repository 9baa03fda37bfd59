/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sketches as a PDF draws them, small enough to read. */
#include "config.h"

#include "sw-pdf-sketch.h"

static void
assert_written (const SwSketch *sketch,
                const char     *content,
                const char     *states)
{
  GString *needed = g_string_new (NULL);
  GString *written = sw_pdf_sketch_write (sketch, needed);

  g_strdelimit (written->str, "\n", ' ');
  g_assert_cmpstr (written->str, ==, content);
  g_assert_cmpstr (needed->str, ==, states);
  g_string_free (written, TRUE);
  g_string_free (needed, TRUE);
}

/* Places are whole eighths of a point; what is set once is not set again. */
static void
test_lines (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();

  sw_sketch_set_width (sketch, 0.9);
  sw_sketch_set_cap (sketch, CAIRO_LINE_CAP_ROUND);
  sw_sketch_move (sketch, 1, 2);
  sw_sketch_line (sketch, 1.06, -2.07);
  sw_sketch_stroke (sketch);
  sw_sketch_set_tone (sketch, 0.35);
  sw_sketch_move (sketch, 0, 0);
  sw_sketch_curve (sketch, 1, 0, 2, 1, 2, 2);
  sw_sketch_close (sketch);
  sw_sketch_stroke (sketch);
  sw_sketch_set_dash (sketch, 2.2, 1.7);
  sw_sketch_move (sketch, 0, 0);
  sw_sketch_line (sketch, 10, 0);
  sw_sketch_stroke (sketch);
  assert_written (sketch,
                  "10 M 0 G 7.2 w 1 J 0 j [] 0 d 8 16 m 8 -17 l S "
                  ".35 G 0 0 m 8 0 16 8 16 16 c h S "
                  "[17.6 13.6] 0 d 0 0 m 80 0 l S ",
                  "");
}

/* Filled and drawn is told at once, unless what is behind shows through. */
static void
test_areas (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();

  for (int i = 0; i < 2; i++)
    {
      sw_sketch_set_tone (sketch, 1);
      sw_sketch_set_opacity (sketch, i == 0 ? 1 : 0.74);
      sw_sketch_move (sketch, 0, 0);
      sw_sketch_line (sketch, 1, 1);
      sw_sketch_fill_preserve (sketch);
      sw_sketch_set_tone (sketch, 0);
      sw_sketch_stroke (sketch);
    }
  assert_written (sketch,
                  "10 M /o100 gs 1 g 0 G 16 w 0 J 0 j [] 0 d 0 0 m 8 8 l B "
                  "/o74 gs 0 0 m 8 8 l f 0 0 m 8 8 l S ",
                  "/o100<</ca 1>>/o74<</ca .74>>");
}

/* What was set within a clip is unknown behind it. */
static void
test_clips (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();

  sw_sketch_move (sketch, 3, 3);
  sw_sketch_line (sketch, 4, 4);
  sw_sketch_fill (sketch);
  sw_sketch_save (sketch);
  sw_sketch_move (sketch, 0, 0);
  sw_sketch_line (sketch, 1, 1);
  sw_sketch_set_tone (sketch, 1);
  sw_sketch_fill_preserve (sketch);
  sw_sketch_clip (sketch);
  sw_sketch_set_tone (sketch, 0.5);
  sw_sketch_move (sketch, 1, 1);
  sw_sketch_fill (sketch);
  sw_sketch_restore (sketch);
  sw_sketch_set_tone (sketch, 0.5);
  sw_sketch_move (sketch, 2, 2);
  sw_sketch_fill (sketch);
  assert_written (sketch,
                  "10 M /o100 gs 0 g 24 24 m 32 32 l f 1 g 0 0 m 8 8 l f q 0 0 m 8 8 l W n "
                  ".5 g 8 8 m f Q .5 g 16 16 m f ",
                  "/o100<</ca 1>>");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pdf-sketch/lines", test_lines);
  g_test_add_func ("/pdf-sketch/areas", test_areas);
  g_test_add_func ("/pdf-sketch/clips", test_clips);
  return g_test_run ();
}
