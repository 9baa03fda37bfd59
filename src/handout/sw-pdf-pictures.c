/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The pictures of a PDF, each an object of its own that pages refer to. None has to wait for another, nor the pages for
 * them: they are made in threads while the pages' texts are set. */
#include "config.h"

#include <math.h>

#include "sw-pdf-pictures.h"

#include "sw-pdf-flate.h"
#include "sw-pdf-sketch.h"

/* @known: its own keys; @pool: NULL once all of them are made. */
struct _SwPdfPictures
{
  GHashTable *known;
  GThreadPool *pool;
};

static guint
hash_picture (gconstpointer data)
{
  const SwPdfPicture *picture = data;

  return g_direct_hash (picture->figure) ^ g_double_hash (&picture->width_pt) ^ (g_double_hash (&picture->height_pt) << 1);
}

static gboolean
equal_pictures (gconstpointer a,
                gconstpointer b)
{
  const SwPdfPicture *one = a;
  const SwPdfPicture *other = b;

  return one->figure == other->figure && one->width_pt == other->width_pt && one->height_pt == other->height_pt;
}

static void
free_picture (gpointer data)
{
  SwPdfPicture *picture = data;

  g_object_unref (picture->figure);
  g_clear_pointer (&picture->stream, g_bytes_unref);
  g_free (picture->states);
  g_free (picture);
}

static void
make_picture (gpointer data,
              gpointer user_data)
{
  SwPdfPicture *picture = data;
  g_autoptr (SwSketch) sketch = sw_figure_sketch (picture->figure, picture->width_pt, picture->height_pt);
  GString *states = g_string_new (NULL);
  GString *content = sw_pdf_sketch_write (sketch, states);

  (void) user_data;
  picture->stream = sw_pdf_deflate (content->str, content->len);
  picture->states = g_string_free (states, FALSE);
  g_string_free (content, TRUE);
}

/**
 * sw_pdf_pictures_new:
 *
 * Returns: (transfer full): no pictures yet
 */
SwPdfPictures *
sw_pdf_pictures_new (void)
{
  SwPdfPictures *self = g_new0 (SwPdfPictures, 1);

  self->known = g_hash_table_new_full (hash_picture, equal_pictures, free_picture, NULL);
  self->pool = g_thread_pool_new (make_picture, NULL, (int) g_get_num_processors (), FALSE, NULL);
  return self;
}

void
sw_pdf_pictures_free (SwPdfPictures *self)
{
  sw_pdf_pictures_wait (self);
  g_hash_table_unref (self->known);
  g_free (self);
}

/**
 * sw_pdf_pictures_add:
 * @figure: a figure
 * @width_pt: of the box it is drawn into
 * @height_pt: of the box
 *
 * Begins to make a picture, unless there is the same already.
 *
 * Returns: (transfer none): the picture
 */
SwPdfPicture *
sw_pdf_pictures_add (SwPdfPictures *self,
                     SwFigure      *figure,
                     double         width_pt,
                     double         height_pt)
{
  const SwPdfPicture wanted = { .figure = figure, .width_pt = width_pt, .height_pt = height_pt };
  SwPdfPicture *picture = g_hash_table_lookup (self->known, &wanted);

  if (picture != NULL)
    return picture;

  picture = g_new (SwPdfPicture, 1);
  *picture = wanted;
  g_object_ref (figure);
  g_hash_table_add (self->known, picture);
  g_thread_pool_push (self->pool, picture, NULL);
  return picture;
}

/**
 * sw_pdf_pictures_wait:
 *
 * Waits until all pictures are made; none is added afterwards.
 */
void
sw_pdf_pictures_wait (SwPdfPictures *self)
{
  if (self->pool != NULL)
    g_thread_pool_free (g_steal_pointer (&self->pool), FALSE, TRUE);
}

/**
 * sw_pdf_picture_get_id:
 * @file: the file it belongs into
 *
 * Returns: the number of its object
 */
guint
sw_pdf_picture_get_id (SwPdfPicture *self,
                       SwPdfFile    *file)
{
  if (self->id > 0)
    return self->id;

  self->id = sw_pdf_file_add (
      file, g_strdup_printf ("<</Type/XObject/Subtype/Form/BBox[0 0 %d %d]/Resources<</ExtGState<<%s>>>>"
                             "/Filter/FlateDecode>>",
                             (int) ceil (self->width_pt / SW_PDF_SKETCH_UNIT),
                             (int) ceil (self->height_pt / SW_PDF_SKETCH_UNIT), self->states));
  sw_pdf_object_take_stream (sw_pdf_file_get (file, self->id), g_bytes_ref (self->stream));
  return self->id;
}
