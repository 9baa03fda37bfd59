/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How long a handout takes against the same words, pictures and rules drawn by bare Cairo and Pango into a PDF, and
 * whether the time grows only as the programme does. Also how long the preview takes after an edit. */
#include "config.h"

#include <cairo-pdf.h>
#include <pango/pangocairo.h>
#include <stdio.h>
#include <string.h>
#include <time.h>

#include "handout-sample.h"
#include "sw-data-dir.h"
#include "sw-figure.h"
#include "sw-handout.h"
#include "sw-programme-file.h"

#define N_ROUNDS 3
#define DAY "2026-11-20"

static SwFigureSpec *
load_figure (void)
{
  g_autofree char *path = sw_data_path ("samples", "sample.setwright", NULL);
  g_autoptr (SwProgrammeFile) file = sw_programme_file_new (path);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwProgramme) programme = sw_programme_file_load (file, &error);
  g_autoptr (GPtrArray) exercises = NULL;

  g_assert_no_error (error);
  exercises = sw_programme_dup_exercises (programme);
  return sw_figure_spec_ref (sw_exercise_get_figure (g_ptr_array_index (exercises, 0)));
}

static SwHandout *
lay_out (SwProgramme *programme)
{
  g_autoptr (GError) error = NULL;
  SwHandoutOptions options;
  SwHandout *handout;

  sw_handout_options_init (&options, programme, DAY);
  handout = sw_handout_new (programme, &options, &error);
  g_assert_no_error (error);
  return handout;
}

/* The time this process has worked: what else the machine does must not count. */
static double
worked_ms (void)
{
  struct timespec now;

  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &now);
  return (double) now.tv_sec * 1000.0 + (double) now.tv_nsec / 1e6;
}

static double
time_handout (SwProgramme *programme)
{
  double best_ms = G_MAXDOUBLE;

  for (int i = 0; i < N_ROUNDS; i++)
    {
      double start_ms = worked_ms ();
      g_autoptr (SwHandout) handout = lay_out (programme);
      g_autoptr (GError) error = NULL;
      g_autoptr (GBytes) pdf = sw_handout_to_pdf (handout, &error);

      g_assert_no_error (error);
      best_ms = MIN (best_ms, worked_ms () - start_ms);
    }

  return best_ms;
}

static void
draw_line (cairo_t              *cr,
           PangoContext         *context,
           PangoFontDescription *font,
           SwFigure             *figure,
           const char           *line)
{
  g_auto (GStrv) words = g_strsplit (line, " ", 6);
  double box[4];

  if (g_str_has_prefix (line, "page"))
    cairo_show_page (cr);
  if (g_strv_length (words) < 6)
    return;
  for (guint i = 0; i < 4; i++)
    box[i] = g_ascii_strtod (words[i + 1], NULL);

  if (g_str_equal (words[0], "text"))
    {
      g_autoptr (PangoLayout) layout = pango_layout_new (context);

      pango_layout_set_font_description (layout, font);
      pango_layout_set_width (layout, (int) (box[2] * PANGO_SCALE));
      pango_layout_set_text (layout, words[5] + 1, (int) strlen (words[5]) - 2);
      cairo_move_to (cr, box[0], box[1]);
      pango_cairo_show_layout (cr, layout);
    }
  else if (g_str_equal (words[0], "figure"))
    {
      cairo_save (cr);
      cairo_translate (cr, box[0], box[1]);
      sw_figure_draw (figure, cr, box[2], box[3]);
      cairo_restore (cr);
    }
  else
    {
      cairo_rectangle (cr, box[0], box[1], box[2], box[3]);
      cairo_fill (cr);
    }
}

static cairo_status_t
count_bytes (void                *closure,
             const unsigned char *data,
             unsigned int         length)
{
  (void) data;
  *(gsize *) closure += length;
  return CAIRO_STATUS_SUCCESS;
}

/* The same words in one size, the same picture as often, the same boxes; no thought about where anything goes. */
static double
time_floor (char         **lines,
            SwFigureSpec  *spec,
            guint          n_figures)
{
  double best_ms = G_MAXDOUBLE;

  for (int i = 0; i < N_ROUNDS; i++)
    {
      double start_ms = worked_ms ();
      gsize length = 0;
      cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (count_bytes, &length, 595.0, 842.0);
      cairo_t *cr = cairo_create (surface);
      PangoContext *context = pango_cairo_create_context (cr);
      g_autoptr (PangoFontDescription) font = pango_font_description_from_string ("Noto Sans 10");
      g_autoptr (SwFigure) figure = NULL;

      for (guint j = 0; j < n_figures; j++)
        {
          g_clear_object (&figure);
          figure = sw_figure_new (spec, FALSE, NULL);
        }
      for (guint j = 0; lines[j] != NULL; j++)
        draw_line (cr, context, font, figure, lines[j]);
      g_object_unref (context);
      cairo_destroy (cr);
      cairo_surface_finish (surface);
      cairo_surface_destroy (surface);
      best_ms = MIN (best_ms, worked_ms () - start_ms);
    }

  return best_ms;
}

static double
bench_size (guint         n_exercises,
            SwFigureSpec *spec)
{
  g_autoptr (SwProgramme) programme = handout_sample_new_long (n_exercises, spec);
  g_autoptr (SwHandout) handout = lay_out (programme);
  g_autofree char *dump = sw_handout_dump (handout);
  g_auto (GStrv) lines = g_strsplit (dump, "\n", -1);
  double handout_ms = time_handout (programme);
  double floor_ms = time_floor (lines, spec, n_exercises);

  printf ("%10u %8d %12.1f %12.1f %8.2f %14.2f\n", n_exercises, sw_handout_get_n_pages (handout), handout_ms,
          floor_ms, handout_ms / floor_ms, handout_ms / n_exercises);
  return handout_ms / n_exercises;
}

/* An edit of one dose, the layout after it and one page on the screen: what the preview does as one types. */
static void
bench_preview (SwFigureSpec *spec)
{
  g_autoptr (SwProgramme) programme = handout_sample_new_long (12, spec);
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
  g_autoptr (SwHandout) shown = lay_out (programme);
  SwDose dose = *sw_item_get_dose (g_ptr_array_index (items, 5));
  double worst_ms = 0.0;

  for (int i = 0; i < 4 * N_ROUNDS; i++)
    {
      g_autoptr (SwMeasured) before = NULL;
      SwHandout *next;
      SwHandoutOptions options;
      double start_ms;
      cairo_surface_t *surface;
      cairo_t *cr;

      dose.reps_low = dose.reps_high = 11 + i;
      g_object_set (g_ptr_array_index (items, 5), "dose", &dose, NULL);
      surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 596, 842);
      cr = cairo_create (surface);

      start_ms = worked_ms ();
      before = sw_handout_dup_measured (shown);
      sw_handout_options_init (&options, programme, DAY);
      next = sw_handout_new_after (programme, &options, before, NULL);
      sw_handout_draw_page (next, 3, cr);
      worst_ms = MAX (worst_ms, worked_ms () - start_ms);

      cairo_destroy (cr);
      cairo_surface_destroy (surface);
      g_set_object (&shown, next);
      g_object_unref (next);
    }

  printf ("preview of 12 exercises after an edit, one page drawn: %.1f ms at most (a frame is 16.7 ms)\n", worst_ms);
}

int
main (void)
{
  SwFigureSpec *spec = load_figure ();
  double few_ms;
  double many_ms;

  printf ("%10s %8s %12s %12s %8s %14s\n", "exercises", "pages", "handout ms", "floor ms", "ratio", "ms an exercise");
  bench_size (12, spec);
  few_ms = bench_size (200, spec);
  many_ms = bench_size (1000, spec);
  printf ("1,000 against 200 exercises, time an exercise: %.2f (1 is linear)\n", many_ms / few_ms);
  bench_preview (spec);

  sw_figure_spec_unref (spec);
  return many_ms / few_ms < 1.5 ? 0 : 1;
}
