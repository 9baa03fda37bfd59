/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * handout-floor RECORDING tagged|bare OUT.pdf N_ROUNDS
 *
 * Sets the words and strokes of a recorded handout at their known places with Cairo and Pango alone. Tagged: each text
 * and picture as an element of the structure, then one pass of libqpdf, as any program can do it. Bare: neither. Prints
 * the milliseconds worked in the fastest round. */
#include "config.h"

#include <cairo-pdf.h>
#include <pango/pangocairo.h>
#include <qpdf/qpdf-c.h>
#include <stdio.h>
#include <stdlib.h>

#include "recording.h"
#include "worked.h"

static cairo_status_t
collect (void                *closure,
         const unsigned char *data,
         unsigned int         length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static PangoContext *
make_context (void)
{
  g_autoptr (PangoFontMap) fonts = pango_cairo_font_map_new ();
  PangoContext *context = pango_font_map_create_context (fonts);
  cairo_font_options_t *options = cairo_font_options_create ();

  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  pango_cairo_context_set_font_options (context, options);
  cairo_font_options_destroy (options);
  pango_cairo_context_set_resolution (context, 72.0);
  pango_context_set_round_glyph_positions (context, FALSE);
  return context;
}

static void
set_text (cairo_t      *cr,
          PangoContext *context,
          const Mark   *mark,
          const char   *text)
{
  g_autoptr (PangoLayout) layout = pango_layout_new (context);
  g_autoptr (PangoFontDescription) font = pango_font_description_new ();
  float width = mark->values[2];

  pango_font_description_set_family_static (font, "Noto Sans");
  pango_font_description_set_weight (font, mark->values[5] > 0.0f ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_absolute_size (font, (double) mark->values[4] * PANGO_SCALE);
  pango_layout_set_font_description (layout, font);
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_line_spacing (layout, mark->values[3]);
  pango_layout_set_width (layout, width < 0.0f ? -1 : (int) (width * PANGO_SCALE));
  pango_layout_set_text (layout, text, (int) mark->length);
  cairo_set_source_rgb (cr, 0.0, 0.0, 0.0);
  cairo_move_to (cr, (double) mark->values[0], (double) mark->values[1]);
  pango_cairo_show_layout (cr, layout);
}

static void
add_steps (cairo_t    *cr,
           const Step *steps,
           gsize       n_steps)
{
  for (const Step *step = steps; step < steps + n_steps; step++)
    {
      double at[6];

      for (int i = 0; i < 6; i++)
        at[i] = (double) step->at[i];
      switch ((StepKind) step->kind)
        {
        case STEP_MOVE:
          cairo_move_to (cr, at[0], at[1]);
          break;
        case STEP_LINE:
          cairo_line_to (cr, at[0], at[1]);
          break;
        case STEP_CURVE:
          cairo_curve_to (cr, at[0], at[1], at[2], at[3], at[4], at[5]);
          break;
        case STEP_CLOSE:
          cairo_close_path (cr);
          break;
        default:
          g_assert_not_reached ();
        }
    }
}

static void
draw_stroke (cairo_t    *cr,
             const Mark *mark,
             const Step *steps)
{
  double inside = (double) mark->values[0];
  double line = (double) mark->values[1];
  double dashes[] = { (double) mark->values[3], (double) mark->values[4] };

  add_steps (cr, steps, mark->length / sizeof (Step));
  if (inside >= 0.0)
    {
      cairo_set_source_rgb (cr, inside, inside, inside);
      cairo_fill_preserve (cr);
    }
  if (line >= 0.0)
    {
      cairo_set_source_rgb (cr, line, line, line);
      cairo_set_line_width (cr, (double) mark->values[2]);
      cairo_set_dash (cr, dashes, dashes[0] > 0.0 ? 2 : 0, 0.0);
      cairo_stroke_preserve (cr);
    }
  cairo_new_path (cr);
}

static void
set_mark (cairo_t      *cr,
          PangoContext *context,
          const Mark   *mark,
          gpointer      payload,
          gboolean      tagged,
          gboolean     *in_element)
{
  switch ((MarkKind) mark->kind)
    {
    case MARK_TEXT:
      if (tagged)
        cairo_tag_begin (cr, "P", NULL);
      set_text (cr, context, mark, payload);
      if (tagged)
        cairo_tag_end (cr, "P");
      break;
    case MARK_BOX:
      cairo_set_source_rgb (cr, 0.9, 0.9, 0.9);
      cairo_rectangle (cr, (double) mark->values[0], (double) mark->values[1], (double) mark->values[2],
                       (double) mark->values[3]);
      cairo_fill (cr);
      break;
    case MARK_PICTURE:
      *in_element = tagged && mark->values[2] > 0.0f;
      if (*in_element)
        cairo_tag_begin (cr, "Figure", NULL);
      cairo_save (cr);
      cairo_translate (cr, (double) mark->values[0], (double) mark->values[1]);
      cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
      cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
      break;
    case MARK_STROKE:
      draw_stroke (cr, mark, payload);
      break;
    case MARK_PICTURE_ENDS:
      cairo_restore (cr);
      if (*in_element)
        cairo_tag_end (cr, "Figure");
      break;
    case MARK_PAGE:
    default:
      g_assert_not_reached ();
    }
}

static GByteArray *
set_pages (const char *path,
           gboolean    tagged)
{
  FILE *file = fopen (path, "rb");
  GByteArray *pdf = g_byte_array_new ();
  g_autoptr (GByteArray) payload = g_byte_array_new ();
  PangoContext *context = make_context ();
  cairo_surface_t *surface = NULL;
  cairo_t *cr = NULL;
  gboolean in_element = FALSE;
  Mark mark;

  g_assert_nonnull (file);
  while (fread (&mark, sizeof mark, 1, file) == 1)
    {
      g_byte_array_set_size (payload, mark.length);
      g_assert_cmpuint (fread (payload->data, 1, mark.length, file), ==, mark.length);
      if (mark.kind != MARK_PAGE)
        set_mark (cr, context, &mark, payload->data, tagged, &in_element);
      else if (cr != NULL)
        cairo_show_page (cr);
      else
        {
          surface = cairo_pdf_surface_create_for_stream (collect, pdf, (double) mark.values[0], (double) mark.values[1]);
          cr = cairo_create (surface);
          if (tagged)
            cairo_tag_begin (cr, "Document", NULL);
        }
    }
  fclose (file);
  g_object_unref (context);

  if (tagged)
    cairo_tag_end (cr, "Document");
  cairo_show_page (cr);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  g_assert_cmpint (cairo_surface_status (surface), ==, CAIRO_STATUS_SUCCESS);
  cairo_surface_destroy (surface);
  return pdf;
}

/* Every page's content taken out, put back and packed, and the whole written anew with object streams. */
static GByteArray *
pass_libqpdf (GByteArray *pdf)
{
  qpdf_data q = qpdf_init ();
  GByteArray *out = g_byte_array_new ();

  g_assert_cmpint (qpdf_read_memory (q, "floor", (const char *) pdf->data, pdf->len, NULL), ==, QPDF_SUCCESS);
  for (int page = 0; page < qpdf_get_num_pages (q); page++)
    {
      unsigned char *content = NULL;
      size_t length = 0;
      qpdf_oh stream = qpdf_oh_new_stream (q);

      g_assert_cmpint (qpdf_oh_get_page_content_data (q, qpdf_get_page_n (q, (size_t) page), &content, &length), ==,
                       QPDF_SUCCESS);
      qpdf_oh_replace_stream_data (q, stream, content, length, qpdf_oh_new_null (q), qpdf_oh_new_null (q));
      qpdf_oh_replace_key (q, qpdf_get_page_n (q, (size_t) page), "/Contents", stream);
      free (content);
    }
  qpdf_oh_replace_key (q, qpdf_get_root (q), "/Lang", qpdf_oh_new_string (q, "en"));

  g_assert_cmpint (qpdf_init_write_memory (q), ==, QPDF_SUCCESS);
  qpdf_set_deterministic_ID (q, QPDF_TRUE);
  qpdf_set_object_stream_mode (q, qpdf_o_generate);
  g_assert_cmpint (qpdf_write (q), ==, QPDF_SUCCESS);
  g_byte_array_append (out, qpdf_get_buffer (q), (guint) qpdf_get_buffer_length (q));
  qpdf_cleanup (&q);
  return out;
}

int
main (int    argc,
      char **argv)
{
  double best_ms = G_MAXDOUBLE;
  gboolean tagged;

  if (argc != 5)
    return 2;

  tagged = g_str_equal (argv[2], "tagged");
  for (int round = 0; round < atoi (argv[4]); round++)
    {
      double start_ms = worked_ms ();
      g_autoptr (GByteArray) pdf = set_pages (argv[1], tagged);
      g_autoptr (GError) error = NULL;

      if (tagged)
        {
          g_autoptr (GByteArray) drawn = g_steal_pointer (&pdf);

          pdf = pass_libqpdf (drawn);
        }
      best_ms = MIN (best_ms, worked_ms () - start_ms);
      g_file_set_contents (argv[3], (const char *) pdf->data, (gssize) pdf->len, &error);
      g_assert_no_error (error);
    }

  printf ("%.2f\n", best_ms);
  return 0;
}
