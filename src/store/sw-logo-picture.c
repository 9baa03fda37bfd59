/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A logo ready to draw. The bytes may come from anywhere, with any programme: they are checked each time. */
#include "config.h"

#include <glib/gi18n.h>
#include <librsvg/rsvg.h>
#include <math.h>
#include <string.h>

#include "sw-logo-picture.h"

#include "sw-logo-file.h"
#include "sw-svg.h"

#define MAX_SIDE_PX 4000

struct _SwLogoPicture
{
  GObject parent_instance;

  RsvgHandle *drawing;      /* of an SVG */
  cairo_surface_t *pixels;  /* of a PNG */
  double width;             /* in units of its own */
  double height;
};

G_DEFINE_FINAL_TYPE (SwLogoPicture, sw_logo_picture, G_TYPE_OBJECT)

typedef struct
{
  const guint8 *data;
  gsize length;
} Source;

static cairo_status_t
read_cb (void          *closure,
         unsigned char *data,
         unsigned int   length)
{
  Source *source = closure;

  if (length > source->length)
    return CAIRO_STATUS_READ_ERROR;

  memcpy (data, source->data, length);
  source->data += length;
  source->length -= length;
  return CAIRO_STATUS_SUCCESS;
}

static guint32
get_number (const guint8 *data)
{
  return (guint32) data[0] << 24 | (guint32) data[1] << 16 | (guint32) data[2] << 8 | data[3];
}

/* PNG specification, third edition, 11.2.1: width and height come first, so that a picture that would fill the memory
 * is known before it is unpacked. */
static gboolean
check_png_size (const guint8  *data,
                gsize          length,
                GError       **error)
{
  guint32 width = length >= 24 ? get_number (data + 16) : 0;
  guint32 height = length >= 24 ? get_number (data + 20) : 0;

  if (width >= 1 && height >= 1 && width <= MAX_SIDE_PX && height <= MAX_SIDE_PX)
    return TRUE;

  g_set_error (error, SW_LOGO_ERROR, SW_LOGO_ERROR_SIZE,
               _ ("The picture is %u by %u pixels; at most %d by %d can be used. Make it smaller and choose it again."),
               width, height, MAX_SIDE_PX, MAX_SIDE_PX);
  return FALSE;
}

static gboolean
load_png (SwLogoPicture  *self,
          GBytes         *bytes,
          GError        **error)
{
  Source source;

  source.data = g_bytes_get_data (bytes, &source.length);
  if (!check_png_size (source.data, source.length, error))
    return FALSE;

  self->pixels = cairo_image_surface_create_from_png_stream (read_cb, &source);
  if (cairo_surface_status (self->pixels) != CAIRO_STATUS_SUCCESS)
    {
      g_set_error (error, SW_LOGO_ERROR, SW_LOGO_ERROR_CONTENT,
                   _ ("The picture is damaged: %s. Save it anew as PNG and choose that file."),
                   cairo_status_to_string (cairo_surface_status (self->pixels)));
      return FALSE;
    }

  self->width = cairo_image_surface_get_width (self->pixels);
  self->height = cairo_image_surface_get_height (self->pixels);
  return TRUE;
}

/* The size that the drawing states, or that of its view box, or of what it draws. */
static void
measure_svg (SwLogoPicture *self)
{
  RsvgRectangle box = { 0 };
  RsvgRectangle ink = { 0 };
  gboolean has_width;
  gboolean has_height;
  gboolean has_box;

  if (rsvg_handle_get_intrinsic_size_in_pixels (self->drawing, &self->width, &self->height) && self->width > 0.0
      && self->height > 0.0)
    return;

  rsvg_handle_get_intrinsic_dimensions (self->drawing, &has_width, NULL, &has_height, NULL, &has_box, &box);
  if (!has_box)
    rsvg_handle_get_geometry_for_element (self->drawing, NULL, &box, &ink, NULL);
  self->width = box.width;
  self->height = box.height;
}

/* Whether it can be drawn to its end in bounded time: one that refers to itself over and over cannot. */
static gboolean
try_svg (SwLogoPicture  *self,
         GError        **error)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 1, 1);
  cairo_t *cr = cairo_create (surface);
  RsvgRectangle viewport = { 0.0, 0.0, 1.0, 1.0 };
  gboolean drawn = rsvg_handle_render_document (self->drawing, cr, &viewport, error);

  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return drawn;
}

static gboolean
load_svg (SwLogoPicture  *self,
          GBytes         *bytes,
          GError        **error)
{
  g_autoptr (GBytes) clean = sw_svg_clean (bytes, error);
  g_autoptr (GInputStream) stream = NULL;
  g_autoptr (GError) problem = NULL;

  if (clean == NULL)
    return FALSE;

  /* Without a place of its own it cannot ask for other files. */
  stream = g_memory_input_stream_new_from_bytes (clean);
  self->drawing = rsvg_handle_new_from_stream_sync (stream, NULL, RSVG_HANDLE_FLAGS_NONE, NULL, &problem);
  if (self->drawing != NULL)
    measure_svg (self);
  if (isfinite (self->width) && isfinite (self->height) && self->width > 0.0 && self->height > 0.0
      && try_svg (self, &problem))
    return TRUE;

  g_set_error (error, SW_LOGO_ERROR, SW_LOGO_ERROR_CONTENT,
               _ ("The drawing cannot be shown: %s. Save it as plain SVG, or as PNG, and choose that file."),
               problem != NULL ? problem->message : _ ("it has no size"));
  return FALSE;
}

static void
sw_logo_picture_finalize (GObject *object)
{
  SwLogoPicture *self = SW_LOGO_PICTURE (object);

  g_clear_object (&self->drawing);
  g_clear_pointer (&self->pixels, cairo_surface_destroy);

  G_OBJECT_CLASS (sw_logo_picture_parent_class)->finalize (object);
}

static void
sw_logo_picture_class_init (SwLogoPictureClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = sw_logo_picture_finalize;
}

static void
sw_logo_picture_init (SwLogoPicture *self)
{
  (void) self;
}

/**
 * sw_logo_picture_new:
 * @logo: a logo
 * @error: return location for an error of the domain %SW_LOGO_ERROR
 *
 * Returns: (transfer full) (nullable): the logo to draw; NULL when it cannot be drawn, or not safely
 */
SwLogoPicture *
sw_logo_picture_new (const SwLogo  *logo,
                     GError       **error)
{
  g_autoptr (SwLogoPicture) self = g_object_new (SW_TYPE_LOGO_PICTURE, NULL);

  g_return_val_if_fail (logo != NULL, NULL);

  if (!(logo->type == SW_LOGO_PNG ? load_png (self, logo->bytes, error) : load_svg (self, logo->bytes, error)))
    return NULL;

  return g_steal_pointer (&self);
}

/**
 * sw_logo_picture_get_size:
 * @width: (out): its width: pixels of a PNG, what an SVG calls so
 * @height: (out): its height
 */
void
sw_logo_picture_get_size (SwLogoPicture *self,
                          double        *width,
                          double        *height)
{
  g_return_if_fail (SW_IS_LOGO_PICTURE (self));

  *width = self->width;
  *height = self->height;
}

/**
 * sw_logo_picture_fit:
 * @most_width: width of a frame
 * @most_height: its height
 * @width: (out): the width with which the picture fills it in one direction
 * @height: (out): the height
 */
void
sw_logo_picture_fit (SwLogoPicture *self,
                     double         most_width,
                     double         most_height,
                     double        *width,
                     double        *height)
{
  double scale;

  g_return_if_fail (SW_IS_LOGO_PICTURE (self));

  scale = MIN (most_width / self->width, most_height / self->height);
  *width = scale * self->width;
  *height = scale * self->height;
}

/**
 * sw_logo_picture_draw:
 * @cr: where to; the picture's top left corner is the origin
 * @width: its width there
 * @height: its height
 *
 * Nothing is drawn outside these.
 *
 * Returns: whether all of it was drawn
 */
gboolean
sw_logo_picture_draw (SwLogoPicture *self,
                      cairo_t       *cr,
                      double         width,
                      double         height)
{
  RsvgRectangle viewport = { 0.0, 0.0, width, height };
  gboolean drawn = TRUE;

  g_return_val_if_fail (SW_IS_LOGO_PICTURE (self), FALSE);

  cairo_save (cr);
  cairo_rectangle (cr, 0.0, 0.0, width, height);
  cairo_clip (cr);
  if (self->drawing != NULL)
    drawn = rsvg_handle_render_document (self->drawing, cr, &viewport, NULL);
  else
    {
      cairo_scale (cr, width / self->width, height / self->height);
      cairo_set_source_surface (cr, self->pixels, 0.0, 0.0);
      cairo_paint (cr);
    }
  cairo_restore (cr);
  return drawn && cairo_status (cr) == CAIRO_STATUS_SUCCESS;
}
