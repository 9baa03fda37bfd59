/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * From a file that the clinic has to the logo that its programmes carry: checked, small, and without what the file tells
 * of where, when and by whom it was made. */
#include "config.h"

#include <glib/gi18n.h>
#include <math.h>

#include "sw-logo-file.h"

#include "sw-file.h"
#include "sw-logo-picture.h"
#include "sw-svg.h"

G_DEFINE_QUARK (sw-logo-error-quark, sw_logo_error)

/* The letterhead's frame, 60 mm by 16 mm, in pixels of 600 to the inch; finer than any office printer. */
#define MOST_WIDTH_PX 1417.0
#define MOST_HEIGHT_PX 378.0

/* Looked at with this many pixels across, whatever it has itself. */
#define LOOK_PX 240.0
/* A pixel counts when its contrast with white is at least 3 to 1: WCAG 2.2, criterion 1.4.11, for what is no text. */
#define LEAST_CONTRAST 3.0
/* This share of them has to. */
#define LEAST_SEEN 0.005

static cairo_status_t
write_cb (void                *closure,
          const unsigned char *data,
          unsigned int         length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

/* The picture with @width by @height pixels on nothing, or on white. */
static cairo_surface_t *
draw (SwLogoPicture *picture,
      int            width,
      int            height,
      gboolean       white)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  cairo_t *cr = cairo_create (surface);
  gboolean drawn;

  if (white)
    {
      cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
      cairo_paint (cr);
    }
  drawn = sw_logo_picture_draw (picture, cr, width, height);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  if (drawn && cairo_surface_status (surface) == CAIRO_STATUS_SUCCESS)
    return surface;

  cairo_surface_destroy (surface);
  return NULL;
}

static cairo_surface_t *
draw_fitting (SwLogoPicture *picture,
              double         most_width,
              double         most_height,
              gboolean       white)
{
  double width;
  double height;

  sw_logo_picture_fit (picture, most_width, most_height, &width, &height);
  return draw (picture, MAX (1, (int) lround (width)), MAX (1, (int) lround (height)), white);
}

/* WCAG 2.2: relative luminance of a colour of sRGB. */
static double
get_luminance (guint32 pixel)
{
  static const double weights[] = { 0.0722, 0.7152, 0.2126 };
  double luminance = 0.0;

  for (guint i = 0; i < G_N_ELEMENTS (weights); i++)
    {
      double share = (pixel >> (8 * i) & 0xff) / 255.0;

      luminance += weights[i] * (share <= 0.04045 ? share / 12.92 : pow ((share + 0.055) / 1.055, 2.4));
    }
  return luminance;
}

/* Whether enough of it is dark enough to be seen on white, also where only shades of grey are printed. */
static gboolean
check_seen (SwLogoPicture  *picture,
            GError        **error)
{
  cairo_surface_t *surface = draw_fitting (picture, LOOK_PX, LOOK_PX, TRUE);
  int width;
  int height;
  int n_seen = 0;
  gboolean seen;

  if (surface == NULL)
    {
      g_set_error (error, SW_LOGO_ERROR, SW_LOGO_ERROR_CONTENT,
                   _ ("The picture cannot be drawn. Save it anew, or as PNG, and choose that file."));
      return FALSE;
    }

  width = cairo_image_surface_get_width (surface);
  height = cairo_image_surface_get_height (surface);
  for (int y = 0; y < height; y++)
    {
      const guint8 *row = cairo_image_surface_get_data (surface) + y * cairo_image_surface_get_stride (surface);
      const guint32 *pixels = (const guint32 *) (gconstpointer) row;

      for (int x = 0; x < width; x++)
        n_seen += 1.05 / (get_luminance (pixels[x]) + 0.05) >= LEAST_CONTRAST;
    }
  cairo_surface_destroy (surface);

  seen = n_seen >= LEAST_SEEN * width * height;
  if (!seen)
    g_set_error (error, SW_LOGO_ERROR, SW_LOGO_ERROR_PALE,
                 _ ("The picture is too pale to be seen on white paper. Choose the one for light backgrounds."));
  return seen;
}

/* The pixels alone, no more of them than can be printed. Where even half of these take too many bytes, it is refused. */
static SwLogo *
pack_pixels (SwLogoPicture  *picture,
             GError        **error)
{
  double own_width;
  double own_height;

  sw_logo_picture_get_size (picture, &own_width, &own_height);
  for (int part = 1; part <= 2; part++)
    {
      g_autoptr (GByteArray) png = g_byte_array_new ();
      g_autoptr (GBytes) bytes = NULL;
      cairo_surface_t *surface = draw_fitting (picture, MIN (own_width, MOST_WIDTH_PX / part),
                                               MIN (own_height, MOST_HEIGHT_PX / part), FALSE);
      cairo_status_t status = CAIRO_STATUS_NO_MEMORY;

      if (surface != NULL)
        {
          status = cairo_surface_write_to_png_stream (surface, write_cb, png);
          cairo_surface_destroy (surface);
        }
      if (status != CAIRO_STATUS_SUCCESS)
        {
          g_set_error (error, SW_LOGO_ERROR, SW_LOGO_ERROR_CONTENT,
                       _ ("The picture cannot be used: %s. Save it anew as PNG and choose that file."),
                       cairo_status_to_string (status));
          return NULL;
        }
      if (png->len > SW_LOGO_MAX_BYTES)
        continue;
      bytes = g_byte_array_free_to_bytes (g_steal_pointer (&png));
      return sw_logo_new (SW_LOGO_PNG, bytes);
    }

  g_set_error (error, SW_LOGO_ERROR, SW_LOGO_ERROR_SIZE,
               _ ("The picture is too rich in detail for a letterhead, as a photograph is. Choose a plainer one."));
  return NULL;
}

/**
 * sw_logo_from_bytes:
 * @bytes: what a file holds
 * @error: return location for an error of the domain %SW_LOGO_ERROR
 *
 * Checks a picture that is to become the logo and brings it down to what is drawn.
 *
 * Returns: (transfer full) (nullable): the logo
 */
SwLogo *
sw_logo_from_bytes (GBytes  *bytes,
                    GError **error)
{
  g_autoptr (SwLogo) logo = sw_logo_new_detect (bytes);
  g_autoptr (SwLogoPicture) picture = NULL;
  g_autoptr (GBytes) clean = NULL;

  if (logo == NULL)
    {
      g_set_error (error, SW_LOGO_ERROR, SW_LOGO_ERROR_TYPE,
                   _ ("The file is neither a PNG picture nor an SVG drawing. Save the logo as one of these and choose "
                      "that file."));
      return NULL;
    }

  picture = sw_logo_picture_new (logo, error);
  if (picture == NULL || !check_seen (picture, error))
    return NULL;
  if (logo->type == SW_LOGO_PNG)
    return pack_pixels (picture, error);

  clean = sw_svg_clean (logo->bytes, error);
  return clean != NULL ? sw_logo_new (SW_LOGO_SVG, clean) : NULL;
}

/**
 * sw_logo_from_file:
 * @path: a file
 * @error: return location for an error of the domains %SW_FILE_ERROR and %SW_LOGO_ERROR
 *
 * The same as sw_logo_from_bytes() for what a file holds.
 *
 * Returns: (transfer full) (nullable): the logo
 */
SwLogo *
sw_logo_from_file (const char  *path,
                   GError     **error)
{
  g_autoptr (GError) problem = NULL;
  g_autoptr (GBytes) bytes = sw_file_read (path, SW_LOGO_MAX_BYTES, &problem);

  if (bytes != NULL)
    return sw_logo_from_bytes (bytes, error);

  if (g_error_matches (problem, SW_FILE_ERROR, SW_FILE_ERROR_TOO_LARGE))
    g_set_error (error, SW_LOGO_ERROR, SW_LOGO_ERROR_SIZE,
                 _ ("The file has more than 256 kB. Save the logo smaller, or as SVG, and choose that file."));
  else
    g_propagate_error (error, g_steal_pointer (&problem));
  return NULL;
}
