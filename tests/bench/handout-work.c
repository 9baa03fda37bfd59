/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the bench of handouts is made of, each run as a process of its own:
 *
 *   handout-work programme N_EXERCISES OUT.setwright       exercises of the catalogue in turn
 *   handout-work record PROGRAMME LAYOUT OUT               what stands where, for handout-floor
 *   handout-work handout PROGRAMME LAYOUT N_ROUNDS         prints the milliseconds worked in the fastest round
 *   handout-work preview PROGRAMME LAYOUT N_ROUNDS         the same of each edit */
#include "config.h"

#include <cairo-svg.h>
#include <pango/pangocairo.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "handout-sample.h"
#include "recording.h"
#include "sw-catalogue-folder.h"
#include "sw-figure.h"
#include "sw-handout.h"
#include "sw-programme-file.h"
#include "sw-style.h"
#include "sw-symbol.h"
#include "worked.h"

#define DAY "2026-11-20"

static SwProgramme *
load (const char *path)
{
  g_autoptr (SwProgrammeFile) file = sw_programme_file_new (path);
  g_autoptr (GError) error = NULL;
  SwProgramme *programme = sw_programme_file_load (file, &error);

  g_assert_no_error (error);
  return programme;
}

static void
write_programme (guint       n_exercises,
                 const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwCatalogue) catalogue = sw_catalogue_load_shipped (NULL, &error);
  g_autoptr (SwProgramme) programme = handout_sample_new_long (0, NULL);
  g_autoptr (SwSession) session = g_list_model_get_item (G_LIST_MODEL (sw_programme_get_sessions (programme)), 0);
  g_autoptr (SwSection) section = g_list_model_get_item (G_LIST_MODEL (sw_session_get_sections (session)), 0);
  g_autoptr (SwProgrammeFile) file = sw_programme_file_new (path);
  guint n_known;

  g_assert_no_error (error);
  n_known = g_list_model_get_n_items (G_LIST_MODEL (catalogue));
  for (guint i = 0; i < n_exercises; i++)
    {
      /* Sorted by id, neighbours are alike: the steps are spread over the whole catalogue. */
      g_autoptr (SwExercise) exercise = g_list_model_get_item (G_LIST_MODEL (catalogue), i * 37 % n_known);
      g_autofree char *id = g_strdup_printf ("i%u", i + 1);
      g_autoptr (SwItem) item = sw_item_new_for_exercise (exercise, id);

      g_list_store_append (sw_section_get_items (section), item);
    }

  sw_programme_file_save (file, programme, TRUE, TRUE, &error);
  g_assert_no_error (error);
}

static void
init_options (SwHandoutOptions *options,
              SwProgramme      *programme,
              const char       *layout)
{
  g_autoptr (GEnumClass) layouts = g_type_class_ref (SW_TYPE_LAYOUT);
  GEnumValue *value = g_enum_get_value_by_nick (layouts, layout);

  g_assert_nonnull (value);
  sw_handout_options_init (options, programme, DAY);
  options->layout = (SwLayout) value->value;
}

static SwHandout *
lay_out (SwProgramme *programme,
         const char  *layout,
         SwMeasured  *before)
{
  g_autoptr (GError) error = NULL;
  SwHandoutOptions options;
  SwHandout *handout;

  init_options (&options, programme, layout);
  handout = sw_handout_new_after (programme, &options, before, &error);
  g_assert_no_error (error);
  return handout;
}

static void
write_mark (FILE         *out,
            MarkKind      kind,
            const double *values,
            guint         n_values,
            gconstpointer payload,
            gsize         length)
{
  Mark mark = { .kind = kind, .length = (uint32_t) length };

  for (guint i = 0; i < n_values; i++)
    mark.values[i] = (float) values[i];
  fwrite (&mark, sizeof mark, 1, out);
  if (length > 0)
    fwrite (payload, 1, length, out);
}

static cairo_status_t
collect (void                *closure,
         const unsigned char *data,
         unsigned int         length)
{
  g_string_append_len (closure, (const char *) data, (gssize) length);
  return CAIRO_STATUS_SUCCESS;
}

/* The value of a style's property or an element's attribute; NULL where it has none. */
static char *
find_value (const char *element,
            const char *name,
            const char *ends)
{
  const char *end = strchr (element, '>');
  const char *found = g_strstr_len (element, end - element, name);

  return found != NULL ? g_strndup (found + strlen (name), strcspn (found + strlen (name), ends)) : NULL;
}

/* As Cairo writes them: rgb(78%,78%,78%). */
static double
read_grey (const char *element,
           const char *name)
{
  g_autofree char *value = find_value (element, name, ";");

  return value != NULL && g_str_has_prefix (value, "rgb(") ? g_ascii_strtod (value + 4, NULL) / 100.0 : -1.0;
}

static GArray *
read_steps (const char *text,
            double      scale)
{
  static const struct
  {
    char letter;
    StepKind kind;
    int n_values;
  } kinds[] = { { 'M', STEP_MOVE, 2 }, { 'L', STEP_LINE, 2 }, { 'C', STEP_CURVE, 6 }, { 'Z', STEP_CLOSE, 0 } };
  GArray *steps = g_array_new (FALSE, TRUE, sizeof (Step));

  for (const char *at = text; *at != '\0';)
    {
      Step step = { 0 };
      guint k = 0;

      while (k < G_N_ELEMENTS (kinds) && kinds[k].letter != *at)
        k++;
      at++;
      if (k == G_N_ELEMENTS (kinds))
        continue;
      step.kind = kinds[k].kind;
      for (int i = 0; i < kinds[k].n_values; i++)
        step.at[i] = (float) (g_ascii_strtod (at, (char **) &at) * scale);
      g_array_append_val (steps, step);
    }

  return steps;
}

/* The paths of a picture that Cairo wrote as SVG. A line whose width is not the same all round is recorded at the
 * place and with the width that it has along the first axis. */
static void
write_strokes (FILE       *out,
               const char *svg)
{
  const char *body = strstr (svg, "</defs>");

  for (const char *path = strstr (body != NULL ? body : svg, "<path "); path != NULL; path = strstr (path + 1, "<path "))
    {
      g_autofree char *width = find_value (path, "stroke-width:", ";");
      g_autofree char *dash = find_value (path, "stroke-dasharray:", ";");
      g_autofree char *matrix = find_value (path, "transform=\"matrix(", ",");
      g_autofree char *text = find_value (path, " d=\"", "\"");
      double scale = matrix != NULL ? ABS (g_ascii_strtod (matrix, NULL)) : 1.0;
      g_autoptr (GArray) steps = read_steps (text, scale);
      double on = dash != NULL ? g_ascii_strtod (dash, NULL) * scale : 0.0;
      const char *comma = dash != NULL ? strchr (dash, ',') : NULL;
      double values[] = { read_grey (path, "fill:"), read_grey (path, "stroke:"),
                          width != NULL ? g_ascii_strtod (width, NULL) * scale : 0.0, on,
                          comma != NULL ? g_ascii_strtod (comma + 1, NULL) * scale : on };

      write_mark (out, MARK_STROKE, values, G_N_ELEMENTS (values), steps->data, steps->len * sizeof (Step));
    }
}

static void
write_picture (FILE         *out,
               SwFigure     *figure,
               SwSymbol      symbol,
               const double  box[4])
{
  g_autoptr (GString) svg = g_string_new (NULL);
  cairo_surface_t *surface = cairo_svg_surface_create_for_stream (collect, svg, box[2], box[3]);
  cairo_t *cr = cairo_create (surface);
  double values[] = { box[0], box[1], figure != NULL };

  if (figure != NULL)
    sw_figure_draw (figure, cr, box[2], box[3]);
  else
    sw_symbol_draw (symbol, cr, box[2]);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);

  write_mark (out, MARK_PICTURE, values, G_N_ELEMENTS (values), NULL, 0);
  write_strokes (out, svg->str);
  write_mark (out, MARK_PICTURE_ENDS, NULL, 0, NULL, 0);
}

static double
measure_text (PangoContext  *context,
              const SwStyle *style,
              SwTextRole     role,
              const double   box[4],
              double         spacing,
              const char    *text)
{
  g_autoptr (PangoLayout) layout = pango_layout_new (context);
  g_autoptr (PangoFontDescription) font = sw_style_new_font (style, role);
  int height;

  pango_layout_set_font_description (layout, font);
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_line_spacing (layout, (float) spacing);
  pango_layout_set_width (layout, (int) (box[2] * PANGO_SCALE));
  pango_layout_set_text (layout, text, -1);
  pango_layout_get_size (layout, NULL, &height);
  return (double) height / PANGO_SCALE;
}

static gboolean
is_bold (SwTextRole role)
{
  return role <= SW_TEXT_AMOUNT || role == SW_TEXT_STRONG || role == SW_TEXT_LABEL;
}

/* A dump does not say in which type a text is set: the one in which it is as high as it is on the page. */
static void
write_text (FILE          *out,
            PangoContext  *context,
            const SwStyle *style,
            const double   box[4],
            const char    *text)
{
  SwTextRole nearest = SW_TEXT_BODY;
  double least_pt = G_MAXDOUBLE;
  double values[6] = { box[0], box[1], box[2] };

  for (SwTextRole role = SW_TEXT_TITLE; role < SW_TEXT_FURNITURE; role++)
    {
      double spacing = role <= SW_TEXT_NAME ? 0.88 : 0.92;
      double off_pt = ABS (measure_text (context, style, role, box, spacing, text) - box[3]) + (is_bold (role) ? 0.2 : 0.0);

      if (off_pt >= least_pt - 0.05)
        continue;
      nearest = role;
      least_pt = off_pt;
    }

  values[3] = nearest <= SW_TEXT_NAME ? 0.88 : 0.92;
  values[4] = sw_style_get_size_pt (style, nearest);
  values[5] = is_bold (nearest);
  write_mark (out, MARK_TEXT, values, 6, text, strlen (text));
}

static SwSymbol
find_symbol (const char *name)
{
  for (SwSymbol symbol = 0; symbol <= SW_SYMBOL_KEY_BREATH; symbol++)
    if (g_str_equal (sw_symbol_get_name (symbol), name))
      return symbol;

  g_assert_not_reached ();
}

/* @line: `kind x y width height "text"`, as a dump has it. */
static void
write_line (FILE          *out,
            PangoContext  *context,
            const SwStyle *style,
            SwFigure      *figure,
            const char    *line)
{
  g_auto (GStrv) words = g_strsplit (line, " ", 6);
  g_autofree char *text = g_strndup (words[5] + 1, strlen (words[5]) - 2);
  double box[4];

  g_strdelimit (text, "|", '\n');
  for (guint i = 0; i < 4; i++)
    box[i] = g_ascii_strtod (words[i + 1], NULL);
  if (g_str_equal (words[0], "text"))
    write_text (out, context, style, box, text);
  else if (g_str_equal (words[0], "figure"))
    write_picture (out, figure, 0, box);
  else if (g_str_equal (words[0], "symbol"))
    write_picture (out, NULL, find_symbol (text), box);
  else if (g_str_equal (words[0], "box"))
    write_mark (out, MARK_BOX, box, 4, NULL, 0);
}

static void
record (const char *path,
        const char *layout,
        const char *recording)
{
  g_autoptr (SwProgramme) programme = load (path);
  g_autoptr (GPtrArray) exercises = sw_programme_dup_exercises (programme);
  g_autoptr (SwHandout) handout = lay_out (programme, layout, NULL);
  g_autofree char *dump = sw_handout_dump (handout);
  g_auto (GStrv) lines = g_strsplit (dump, "\n", -1);
  g_autoptr (PangoFontMap) fonts = pango_cairo_font_map_new ();
  PangoContext *context = pango_font_map_create_context (fonts);
  double page[] = { sw_handout_get_page_width_pt (handout), sw_handout_get_page_height_pt (handout) };
  guint n_figures = 0;
  SwHandoutOptions options;
  SwStyle style;
  FILE *out = fopen (recording, "wb");

  g_assert_nonnull (out);
  init_options (&options, programme, layout);
  sw_style_init (&style, &options);
  pango_cairo_context_set_resolution (context, 72.0);
  pango_context_set_round_glyph_positions (context, FALSE);

  for (guint i = 0; lines[i] != NULL && *lines[i] != '\0'; i++)
    {
      g_autoptr (SwFigure) figure = NULL;

      if (g_str_has_prefix (lines[i], "page "))
        {
          write_mark (out, MARK_PAGE, page, 2, NULL, 0);
          continue;
        }
      if (g_str_has_prefix (lines[i], "figure "))
        {
          SwExercise *exercise = g_ptr_array_index (exercises, n_figures++ % exercises->len);

          figure = sw_figure_new (sw_exercise_get_figure (exercise), FALSE, NULL);
        }
      write_line (out, context, &style, figure, lines[i]);
    }

  g_object_unref (context);
  g_assert_cmpint (fclose (out), ==, 0);
}

static void
time_handout (const char *path,
              const char *layout,
              int         n_rounds)
{
  g_autoptr (SwProgramme) programme = load (path);
  double best_ms = G_MAXDOUBLE;

  for (int i = 0; i < n_rounds; i++)
    {
      double start_ms = worked_ms ();
      g_autoptr (SwHandout) handout = lay_out (programme, layout, NULL);
      g_autoptr (GError) error = NULL;
      g_autoptr (GBytes) pdf = sw_handout_to_pdf (handout, &error);

      g_assert_no_error (error);
      best_ms = MIN (best_ms, worked_ms () - start_ms);
    }

  printf ("%.2f\n", best_ms);
}

/* An edit of one dose, the layout after it and the page it is on drawn: what the preview does as one types. */
static void
time_preview (const char *path,
              const char *layout,
              int         n_rounds)
{
  g_autoptr (SwProgramme) programme = load (path);
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
  SwItem *item = g_ptr_array_index (items, items->len / 2);
  g_autoptr (SwHandout) shown = lay_out (programme, layout, NULL);
  SwDose dose = *sw_item_get_dose (item);

  for (int i = 0; i <= n_rounds; i++)
    {
      cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 596, 842);
      cairo_t *cr = cairo_create (surface);
      g_autoptr (SwMeasured) before = NULL;
      g_autoptr (SwHandout) next = NULL;
      double start_ms;

      dose.reps_low = dose.reps_high = 11 + i;
      g_object_set (item, "dose", &dose, NULL);

      start_ms = worked_ms ();
      before = sw_handout_dup_measured (shown);
      next = lay_out (programme, layout, before);
      sw_handout_draw_page (next, sw_handout_find_page_of_item (next, sw_item_get_id (item)), cr);
      /* The first finds no glyph drawn yet; nobody has typed anything by then. */
      if (i > 0)
        printf ("%.2f\n", worked_ms () - start_ms);

      cairo_destroy (cr);
      cairo_surface_destroy (surface);
      g_set_object (&shown, next);
    }
}

int
main (int    argc,
      char **argv)
{
  if (argc == 4 && g_str_equal (argv[1], "programme"))
    write_programme ((guint) atoi (argv[2]), argv[3]);
  else if (argc == 5 && g_str_equal (argv[1], "record"))
    record (argv[2], argv[3], argv[4]);
  else if (argc == 5 && g_str_equal (argv[1], "handout"))
    time_handout (argv[2], argv[3], atoi (argv[4]));
  else if (argc == 5 && g_str_equal (argv[1], "preview"))
    time_preview (argv[2], argv[3], atoi (argv[4]));
  else
    return 2;

  return 0;
}
