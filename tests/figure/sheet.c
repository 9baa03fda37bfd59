/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Draws figures side by side for a person to look at:
 *   sheet OUT.png CELL_WIDTH_MM CELL_HEIGHT_MM COLUMNS FILE...
 * A file holds a <figure>, alone or anywhere in an exercise. With NUMBERS=n in the environment the pictures are headed by
 * numbers from n on instead of names, with MIRRORED=1 the left side works. */
#include "config.h"

#include <cairo.h>
#include <stdlib.h>

#include "sw-figure-xml.h"
#include "sw-figure.h"

#define NS "urn:setwright:exercise"
#define DOTS_PER_PT (200.0 / 72.0)
#define TITLE_PT 9.0
#define GAP_PT 5.0

static const xmlNode *
find_figure (const xmlNode *node)
{
  for (; node != NULL; node = node->next)
    {
      const xmlNode *inner;

      if (sw_xml_is (node, NS, "figure"))
        return node;
      inner = find_figure (node->children);
      if (inner != NULL)
        return inner;
    }
  return NULL;
}

static SwFigure *
load (const char  *path,
      GError     **error)
{
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (xmlDoc) doc = NULL;
  g_autoptr (SwFigureSpec) spec = NULL;
  const xmlNode *node;
  char *text;
  gsize length;

  if (!g_file_get_contents (path, &text, &length, error))
    return NULL;
  bytes = g_bytes_new_take (text, length);
  doc = sw_xml_parse_bytes (bytes, path, error);
  if (doc == NULL)
    return NULL;
  node = find_figure (doc->children);
  if (node == NULL)
    {
      g_set_error (error, SW_XML_ERROR, SW_XML_ERROR_INVALID, "%s: no figure", path);
      return NULL;
    }
  spec = sw_figure_xml_read (node, error);
  return spec != NULL ? sw_figure_new (spec, g_getenv ("MIRRORED") != NULL, error) : NULL;
}

int
main (int    argc,
      char **argv)
{
  double cell_w;
  double cell_h;
  int columns;
  int n = argc - 5;
  int rows;
  cairo_surface_t *surface;
  cairo_t *cr;
  int status = EXIT_SUCCESS;
  const char *numbers = g_getenv ("NUMBERS");

  if (n < 1)
    {
      g_printerr ("sheet OUT.png CELL_WIDTH_MM CELL_HEIGHT_MM COLUMNS FILE...\n");
      return EXIT_FAILURE;
    }
  cell_w = g_ascii_strtod (argv[2], NULL) * 72 / 25.4;
  cell_h = g_ascii_strtod (argv[3], NULL) * 72 / 25.4;
  columns = MAX (1, atoi (argv[4]));
  rows = (n + columns - 1) / columns;
  surface
      = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) ((columns * (cell_w + GAP_PT) + GAP_PT) * DOTS_PER_PT),
                                    (int) ((rows * (cell_h + TITLE_PT + GAP_PT) + GAP_PT) * DOTS_PER_PT));
  cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_scale (cr, DOTS_PER_PT, DOTS_PER_PT);
  cairo_set_font_size (cr, 6.5);

  for (int i = 0; i < n; i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (SwFigure) figure = load (argv[5 + i], &error);
      g_autofree char *name = numbers != NULL ? g_strdup_printf ("%d", atoi (numbers) + i)
                                              : g_path_get_basename (argv[5 + i]);

      cairo_save (cr);
      cairo_translate (cr, GAP_PT + (i % columns) * (cell_w + GAP_PT),
                       GAP_PT + (i / columns) * (cell_h + TITLE_PT + GAP_PT));
      cairo_set_source_rgb (cr, 0, 0, 0);
      cairo_move_to (cr, 0, 6.5);
      cairo_show_text (cr, name);
      cairo_translate (cr, 0, TITLE_PT);
      cairo_rectangle (cr, 0, 0, cell_w, cell_h);
      cairo_set_source_rgb (cr, 0.85, 0.85, 0.85);
      cairo_set_line_width (cr, 0.4);
      cairo_stroke (cr);
      if (figure != NULL)
        sw_figure_draw (figure, cr, cell_w, cell_h);
      else
        {
          g_printerr ("%s\n", error->message);
          status = EXIT_FAILURE;
        }
      cairo_restore (cr);
    }

  cairo_destroy (cr);
  if (cairo_surface_write_to_png (surface, argv[1]) != CAIRO_STATUS_SUCCESS)
    status = EXIT_FAILURE;
  cairo_surface_destroy (surface);
  return status;
}
