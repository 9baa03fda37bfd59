/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Figures of the catalogue: poses solved a second, and what drawing costs as a recording, as pixels and in a PDF, beside
 * a floor measured in the same run: the recorded figures merely replayed into the same kind of surface. What a figure adds
 * to a handout is sketching, writing and packing it; in processor time, and the best of several rounds, so that what else
 * the machine does counts little. Fails below 2,000 poses a second, above 2 ms that a figure adds to a handout, and above
 * 10 kB. */
#include "config.h"

#include <cairo-pdf.h>
#include <stdio.h>
#include <time.h>

#include "case.h"
#include "sw-figure.h"
#include "sw-pdf-flate.h"
#include "sw-pdf-sketch.h"
#include "sw-solver.h"

#define WIDTH_PT 142.0
#define HEIGHT_PT 125.0
#define N_ROUNDS 2
#define N_PACK_ROUNDS 5
#define MOST_ADDED_MS 2.0
#define MOST_ADDED_BYTES 10000

typedef enum
{
  KIND_RECORDING,
  KIND_PIXELS,
  KIND_PDF,
} Kind;

static const char *const kind_names[] = { "recording", "300-dpi picture", "PDF" };

static cairo_status_t
count_bytes (void                *closure,
             const unsigned char *data,
             unsigned int         length)
{
  (void) data;
  *(gsize *) closure += length;
  return CAIRO_STATUS_SUCCESS;
}

static cairo_surface_t *
make_surface (Kind   kind,
              gsize *size)
{
  cairo_rectangle_t box = { 0, 0, WIDTH_PT, HEIGHT_PT };

  if (kind == KIND_RECORDING)
    return cairo_recording_surface_create (CAIRO_CONTENT_COLOR, &box);
  if (kind == KIND_PDF)
    return cairo_pdf_surface_create_for_stream (count_bytes, size, WIDTH_PT, HEIGHT_PT);

  return cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) (WIDTH_PT * 300 / 72), (int) (HEIGHT_PT * 300 / 72));
}

/* Draws the figure, or replays @recorded. */
static void
draw (SwFigure        *figure,
      cairo_surface_t *recorded,
      Kind             kind)
{
  gsize size = 0;
  cairo_surface_t *surface = make_surface (kind, &size);
  cairo_t *cr = cairo_create (surface);

  if (kind == KIND_PIXELS)
    cairo_scale (cr, 300.0 / 72.0, 300.0 / 72.0);
  if (recorded != NULL)
    {
      cairo_set_source_surface (cr, recorded, 0, 0);
      cairo_paint (cr);
    }
  else
    sw_figure_draw (figure, cr, WIDTH_PT, HEIGHT_PT);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  cairo_surface_destroy (surface);
}

/* All figures as a handout's PDF has them. Returns their bytes. */
static gsize
pack (GPtrArray *figures)
{
  gsize size = 0;

  for (guint i = 0; i < figures->len; i++)
    {
      g_autoptr (SwSketch) sketch = sw_figure_sketch (figures->pdata[i], WIDTH_PT, HEIGHT_PT);
      GString *states = g_string_new (NULL);
      GString *content = sw_pdf_sketch_write (sketch, states);
      g_autoptr (GBytes) packed = sw_pdf_deflate (content->str, content->len);

      size += g_bytes_get_size (packed) + states->len;
      g_string_free (content, TRUE);
      g_string_free (states, TRUE);
    }
  return size;
}

static double
ms_since (gint64 start_us)
{
  return (double) (g_get_monotonic_time () - start_us) / 1000.0;
}

/* What the processor has worked for this program. */
static double
get_worked_ms (void)
{
  struct timespec now;

  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &now);
  return (double) now.tv_sec * 1e3 + (double) now.tv_nsec / 1e6;
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (GPtrArray) paths = NULL;
  g_autoptr (GPtrArray) specs = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_figure_spec_unref);
  g_autoptr (GPtrArray) figures = g_ptr_array_new_with_free_func (g_object_unref);
  g_autofree SwSolver *solver = g_new (SwSolver, 1);
  gsize bytes = 0;
  int n_poses = 0;
  double added_ms = G_MAXDOUBLE;
  double ms;
  double rate;
  gint64 start;

  g_test_init (&argc, &argv, NULL);
  paths = test_case_list ();
  for (guint i = 0; i < paths->len; i++)
    g_ptr_array_add (specs, test_case_load (paths->pdata[i]));

  start = g_get_monotonic_time ();
  for (int round = 0; round < N_ROUNDS; round++)
    for (guint i = 0; i < specs->len; i++)
      {
        sw_solver_init (solver, sw_figure_spec_get_content (specs->pdata[i]));
        n_poses += solver->n_keys;
      }
  ms = ms_since (start);
  rate = n_poses / ms * 1000;
  printf ("written poses solved: %.0f a second\n", rate);

  start = g_get_monotonic_time ();
  for (guint i = 0; i < specs->len; i++)
    {
      SwSolved now;

      sw_solver_init (solver, sw_figure_spec_get_content (specs->pdata[i]));
      for (int k = 0; k < 100; k++)
        sw_solver_get (solver, k / 99.0, &now);
    }
  printf ("poses in between solved: %.0f a second\n", 100.0 * specs->len / ms_since (start) * 1000);

  start = g_get_monotonic_time ();
  for (guint i = 0; i < specs->len; i++)
    g_ptr_array_add (figures, sw_figure_new (specs->pdata[i], FALSE, NULL));
  printf ("figures made ready: %.2f ms each\n", ms_since (start) / specs->len);

  for (Kind kind = KIND_RECORDING; kind <= KIND_PDF; kind++)
    {
      double drawn_ms;
      double floor_ms = 0;

      start = g_get_monotonic_time ();
      for (int round = 0; round < N_ROUNDS; round++)
        for (guint i = 0; i < figures->len; i++)
          draw (figures->pdata[i], NULL, kind);
      drawn_ms = ms_since (start) / (N_ROUNDS * figures->len);

      for (guint i = 0; i < figures->len && kind != KIND_RECORDING; i++)
        {
          cairo_rectangle_t box = { 0, 0, WIDTH_PT, HEIGHT_PT };
          cairo_surface_t *recorded = cairo_recording_surface_create (CAIRO_CONTENT_COLOR, &box);
          cairo_t *cr = cairo_create (recorded);

          sw_figure_draw (figures->pdata[i], cr, WIDTH_PT, HEIGHT_PT);
          cairo_destroy (cr);
          start = g_get_monotonic_time ();
          draw (NULL, recorded, kind);
          floor_ms += ms_since (start) / figures->len;
          cairo_surface_destroy (recorded);
        }
      printf ("figure as %s: %.2f ms", kind_names[kind], drawn_ms);
      if (floor_ms > 0)
        printf (", %.2f times Cairo alone (%.2f ms)", drawn_ms / floor_ms, floor_ms);
      printf ("\n");
    }

  for (int round = 0; round < N_PACK_ROUNDS; round++)
    {
      double before_ms = get_worked_ms ();

      bytes = pack (figures);
      added_ms = MIN (added_ms, (get_worked_ms () - before_ms) / figures->len);
    }
  printf ("a figure adds to a handout: %.2f ms, %.1f kB\n", added_ms, (double) bytes / figures->len / 1000);
  return rate < 2000 || added_ms > MOST_ADDED_MS || bytes / figures->len > MOST_ADDED_BYTES;
}
