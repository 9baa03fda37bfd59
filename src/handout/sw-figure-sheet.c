/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Many figures on paper, at about the size a client sees them, to be looked through and marked with a pen. */
#include "config.h"

#include <cairo-pdf.h>
#include <glib/gi18n.h>
#include <pango/pangocairo.h>

#include "sw-exercise.h"
#include "sw-figure-sheet.h"
#include "sw-figure.h"
#include "sw-file.h"
#include "sw-units.h"

/* A4, ISO 216. */
#define PAGE_WIDTH_MM 210.0
#define PAGE_HEIGHT_MM 297.0

#define N_COLUMNS 4
#define N_ROWS 5
#define MARGIN_MM 12.0
#define FOOT_MM 8.0
#define GAP_MM 2.0

/* In a cell, below the figure: two lines of name and one of id. */
#define WORDS_MM 12.0
#define NAME_PT 8.0
#define ID_PT 6.5

typedef struct
{
  cairo_t *cr;
  PangoLayout *layout;
} Sheet;

static cairo_status_t
collect (void                *closure,
         const unsigned char *data,
         unsigned int         length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

/* Lays out @words in at most @n_lines; the layout is the sheet's and good until the next. */
static double
set_words (Sheet      *sheet,
           const char *words,
           double      size_pt,
           double      width_pt,
           int         n_lines)
{
  g_autoptr (PangoFontDescription) font = pango_font_description_from_string ("sans-serif");
  int height;

  pango_font_description_set_absolute_size (font, size_pt * PANGO_SCALE);
  pango_layout_set_font_description (sheet->layout, font);
  pango_layout_set_width (sheet->layout, (int) (width_pt * PANGO_SCALE));
  pango_layout_set_height (sheet->layout, -n_lines);
  pango_layout_set_ellipsize (sheet->layout, PANGO_ELLIPSIZE_END);
  pango_layout_set_text (sheet->layout, words, -1);
  pango_layout_get_size (sheet->layout, NULL, &height);
  return (double) height / PANGO_SCALE;
}

static void
show_words (Sheet  *sheet,
            double  x_pt,
            double  y_pt)
{
  cairo_move_to (sheet->cr, x_pt, y_pt);
  pango_cairo_show_layout (sheet->cr, sheet->layout);
}

static void
draw_figure (Sheet      *sheet,
             SwExercise *exercise,
             double      width_pt,
             double      height_pt)
{
  SwFigureSpec *spec = sw_exercise_get_figure (exercise);
  g_autoptr (SwFigure) figure = spec != NULL ? sw_figure_new (spec, FALSE, NULL) : NULL;

  if (figure != NULL)
    {
      sw_figure_draw (figure, sheet->cr, width_pt, height_pt);
      return;
    }

  set_words (sheet, spec == NULL ? _ ("No picture yet") : _ ("This picture cannot be drawn"), NAME_PT, width_pt, 2);
  show_words (sheet, 0.0, height_pt / 2.0);
}

static void
draw_cell (Sheet      *sheet,
           SwExercise *exercise,
           guint       n)
{
  const double width_pt = sw_pt_from_mm ((PAGE_WIDTH_MM - 2 * MARGIN_MM - (N_COLUMNS - 1) * GAP_MM) / N_COLUMNS);
  const double height_pt
      = sw_pt_from_mm ((PAGE_HEIGHT_MM - 2 * MARGIN_MM - FOOT_MM - (N_ROWS - 1) * GAP_MM) / N_ROWS);
  const double figure_pt = height_pt - sw_pt_from_mm (WORDS_MM);
  double name_pt;

  cairo_save (sheet->cr);
  cairo_translate (sheet->cr, sw_pt_from_mm (MARGIN_MM) + (n % N_COLUMNS) * (width_pt + sw_pt_from_mm (GAP_MM)),
                   sw_pt_from_mm (MARGIN_MM) + (n / N_COLUMNS) * (height_pt + sw_pt_from_mm (GAP_MM)));

  cairo_save (sheet->cr);
  draw_figure (sheet, exercise, width_pt, figure_pt);
  cairo_restore (sheet->cr);

  cairo_set_source_rgb (sheet->cr, 0.0, 0.0, 0.0);
  name_pt = set_words (sheet, sw_exercise_get_text (exercise, "en")->name, NAME_PT, width_pt, 2);
  show_words (sheet, 0.0, figure_pt);
  set_words (sheet, sw_exercise_get_id (exercise), ID_PT, width_pt, 1);
  show_words (sheet, 0.0, figure_pt + name_pt);
  cairo_restore (sheet->cr);
}

static void
draw_foot (Sheet      *sheet,
           guint       page,
           guint       n_pages,
           const char *date)
{
  const double width_pt = sw_pt_from_mm (PAGE_WIDTH_MM - 2 * MARGIN_MM);
  g_autofree char *words = NULL;

  words = g_strdup_printf (_ ("Page %u of %u · %s"), page, n_pages, date);
  set_words (sheet, words, NAME_PT, width_pt, 1);
  show_words (sheet, sw_pt_from_mm (MARGIN_MM), sw_pt_from_mm (PAGE_HEIGHT_MM - MARGIN_MM) - NAME_PT);
}

/**
 * sw_figure_sheet_to_pdf:
 * @exercises: (element-type SwExercise): whose figures, in this order
 * @date: the day to note on the pages, YYYY-MM-DD
 * @error: return location for a #SwFileError
 *
 * Draws every figure with its exercise's name and id, 20 on a page of A4. An exercise without a figure that can be drawn
 * has its place all the same.
 *
 * Returns: (transfer full): the PDF, or NULL
 */
GBytes *
sw_figure_sheet_to_pdf (GPtrArray   *exercises,
                        const char  *date,
                        GError     **error)
{
  const guint on_page = N_COLUMNS * N_ROWS;
  guint n_pages = MAX (1, (exercises->len + on_page - 1) / on_page);
  GByteArray *bytes = g_byte_array_new ();
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (collect, bytes, sw_pt_from_mm (PAGE_WIDTH_MM),
                                                                  sw_pt_from_mm (PAGE_HEIGHT_MM));
  g_autofree char *stamp = g_strconcat (date, "T00:00:00Z", NULL);
  Sheet sheet = { .cr = cairo_create (surface) };
  cairo_status_t status;

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, _ ("Figures for review"));
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, stamp);
  sheet.layout = pango_cairo_create_layout (sheet.cr);
  for (guint page = 0; page < n_pages; page++)
    {
      for (guint i = page * on_page; i < MIN ((page + 1) * on_page, exercises->len); i++)
        draw_cell (&sheet, exercises->pdata[i], i % on_page);
      draw_foot (&sheet, page + 1, n_pages, date);
      cairo_show_page (sheet.cr);
    }

  g_object_unref (sheet.layout);
  cairo_destroy (sheet.cr);
  cairo_surface_finish (surface);
  status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  if (status != CAIRO_STATUS_SUCCESS)
    {
      g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_WRITE, _ ("The sheet cannot be drawn: %s."),
                   cairo_status_to_string (status));
      g_byte_array_unref (bytes);
      return NULL;
    }

  return g_byte_array_free_to_bytes (bytes);
}
