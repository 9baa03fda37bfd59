/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The cases as small grey pictures, compared with kept ones. With --regenerate the kept ones are written anew, and a person
 * looks at the differences. */
#include "config.h"

#include <cairo.h>
#include <stdlib.h>
#include <string.h>

#include "case.h"
#include "sw-figure.h"

#define WIDTH_PX 110
#define HEIGHT_PX 97
/* A pixel differs from here on; so many may, since other versions of Cairo smooth edges a little otherwise. */
#define TONE_APART 64
#define PIXELS_APART 110

static gboolean regenerate = FALSE;

static cairo_surface_t *
paint (SwFigure *figure)
{
  cairo_surface_t *colour = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH_PX, HEIGHT_PX);
  cairo_t *cr = cairo_create (colour);

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  sw_figure_draw (figure, cr, WIDTH_PX, HEIGHT_PX);
  cairo_destroy (cr);
  cairo_surface_flush (colour);
  return colour;
}

static int
tone_at (cairo_surface_t *surface,
         int              x,
         int              y)
{
  guint32 pixel;

  memcpy (&pixel, cairo_image_surface_get_data (surface) + y * cairo_image_surface_get_stride (surface) + 4 * x,
          sizeof pixel);
  return (int) (pixel & 0xff);
}

static int
count_apart (cairo_surface_t *a,
             cairo_surface_t *b)
{
  int apart = 0;

  for (int y = 0; y < HEIGHT_PX; y++)
    for (int x = 0; x < WIDTH_PX; x++)
      if (abs (tone_at (a, x, y) - tone_at (b, x, y)) >= TONE_APART)
        apart++;

  return apart;
}

static void
compare (gconstpointer data)
{
  const char *path = data;
  g_autofree char *base = g_path_get_basename (path);
  g_autofree char *file = g_strdup_printf ("%.*s.png", (int) strcspn (base, "."), base);
  g_autofree char *kept = g_test_build_filename (G_TEST_DIST, "expected", file, NULL);
  g_autoptr (SwFigureSpec) spec = test_case_load (path);
  g_autoptr (SwFigure) figure = sw_figure_new (spec, FALSE, NULL);
  cairo_surface_t *drawn = paint (figure);
  cairo_surface_t *expected;
  int apart;

  if (regenerate)
    {
      g_assert_cmpint (cairo_surface_write_to_png (drawn, kept), ==, CAIRO_STATUS_SUCCESS);
      cairo_surface_destroy (drawn);
      return;
    }

  expected = cairo_image_surface_create_from_png (kept);
  g_assert_cmpint (cairo_surface_status (expected), ==, CAIRO_STATUS_SUCCESS);
  g_assert_cmpint (cairo_image_surface_get_format (expected), ==, CAIRO_FORMAT_RGB24);
  g_assert_cmpint (cairo_image_surface_get_width (expected), ==, WIDTH_PX);
  g_assert_cmpint (cairo_image_surface_get_height (expected), ==, HEIGHT_PX);
  apart = count_apart (drawn, expected);
  if (apart > PIXELS_APART)
    g_test_message ("%s: %d pixels differ; look at it, and if it is better run this test with --regenerate", base,
                    apart);
  g_assert_cmpint (apart, <=, PIXELS_APART);
  cairo_surface_destroy (drawn);
  cairo_surface_destroy (expected);
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (GPtrArray) paths = NULL;

  for (int i = 1; i < argc; i++)
    if (strcmp (argv[i], "--regenerate") == 0)
      {
        regenerate = TRUE;
        memmove (&argv[i], &argv[i + 1], sizeof *argv * (gsize) (argc - i));
        argc--;
      }
  g_test_init (&argc, &argv, NULL);
  paths = test_case_list_own ();
  for (guint i = 0; i < paths->len; i++)
    {
      g_autofree char *base = g_path_get_basename (paths->pdata[i]);
      g_autofree char *name = g_strdup_printf ("/pictures/%.*s", (int) strcspn (base, "."), base);

      g_test_add_data_func (name, paths->pdata[i], compare);
    }
  return g_test_run ();
}
