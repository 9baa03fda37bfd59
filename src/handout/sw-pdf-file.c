/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reads a PDF that has a plain table of its objects, as Cairo writes it. */
#include "config.h"

#include <stdlib.h>
#include <string.h>

#include "sw-pdf-file.h"
#include "sw-pdf-scanner.h"

/* ISO 32000-1, annex C.2. */
#define MOST_OBJECTS 8388607

/* The end of the file, where the place of the table is told. */
#define TAIL_LENGTH 1024

static gboolean
read_number (SwPdfScanner *scanner,
             gsize        *number)
{
  gsize start;
  guint64 value;
  g_autofree char *text = NULL;

  if (!sw_pdf_scanner_next (scanner, &start))
    return FALSE;
  text = g_strndup (scanner->text + start, scanner->at - start);
  if (!g_ascii_string_to_unsigned (text, 10, 0, G_MAXUINT32, &value, NULL))
    return FALSE;
  *number = (gsize)value;
  return TRUE;
}

static gboolean
read_word (SwPdfScanner *scanner,
           const char   *word)
{
  gsize start;

  return sw_pdf_scanner_next (scanner, &start) && sw_pdf_scanner_is (scanner, start, word);
}

/* Where the table begins. */
static gboolean
find_table (SwPdfScanner *scanner)
{
  gsize tail = scanner->length > TAIL_LENGTH ? scanner->length - TAIL_LENGTH : 0;
  const char *found = g_strrstr_len (scanner->text + tail, (gssize)(scanner->length - tail), "startxref");

  if (found == NULL)
    return FALSE;
  scanner->at = (gsize)(found - scanner->text) + strlen ("startxref");
  return read_number (scanner, &scanner->at);
}

/* Where each object begins, by its number; 0 for none. */
static GArray *
read_table (SwPdfScanner *scanner)
{
  g_autoptr (GArray) places = g_array_new (FALSE, TRUE, sizeof (gsize));
  gsize first;
  gsize n;

  if (!find_table (scanner) || !read_word (scanner, "xref") || !read_number (scanner, &first)
      || !read_number (scanner, &n) || first != 0 || n > MOST_OBJECTS)
    return NULL;

  for (gsize i = 0; i < n; i++)
    {
      gsize place;
      gsize generation;
      gsize start;

      if (!read_number (scanner, &place) || !read_number (scanner, &generation)
          || !sw_pdf_scanner_next (scanner, &start) || place >= scanner->length)
        return NULL;
      if (!sw_pdf_scanner_is (scanner, start, "n"))
        place = 0;
      g_array_append_val (places, place);
    }

  return g_steal_pointer (&places);
}

/* Moves to the value of the object that begins at @place. */
static gboolean
begin_object (SwPdfScanner *scanner,
              gsize         place)
{
  gsize id;
  gsize generation;

  scanner->at = place;
  return read_number (scanner, &id) && read_number (scanner, &generation) && read_word (scanner, "obj");
}

/* A length that stands in an object of its own is put into the stream, and that object is left out. */
static gboolean
read_length (SwPdfScanner *scanner,
             GArray       *places,
             SwPdfObject  *object)
{
  g_autofree char *value = sw_pdf_object_dup_value (object, "/Length");
  guint id = sw_pdf_file_find (object, "/Length");
  SwPdfScanner elsewhere = *scanner;
  g_autofree char *plain = NULL;

  if (id == 0)
    {
      elsewhere = (SwPdfScanner){ value, value != NULL ? strlen (value) : 0, 0 };
      return value != NULL && read_number (&elsewhere, &object->stream_length);
    }

  if (id >= places->len || !begin_object (&elsewhere, g_array_index (places, gsize, id))
      || !read_number (&elsewhere, &object->stream_length))
    return FALSE;
  plain = g_strdup_printf ("%" G_GSIZE_FORMAT, object->stream_length);
  sw_pdf_object_set (object, "/Length", plain);
  g_array_index (places, gsize, id) = 0;
  return TRUE;
}

/* @scanner: behind the dictionary. */
static gboolean
read_stream (SwPdfScanner *scanner,
             GArray       *places,
             SwPdfObject  *object)
{
  if (scanner->at < scanner->length && scanner->text[scanner->at] == '\r')
    scanner->at++;
  scanner->at++;
  if (!read_length (scanner, places, object) || scanner->at > scanner->length
      || object->stream_length > scanner->length - scanner->at)
    return FALSE;
  object->stream = scanner->text + scanner->at;
  scanner->at += object->stream_length;
  return read_word (scanner, "endstream");
}

static gboolean
read_object (SwPdfScanner *scanner,
             GArray       *places,
             gsize         place,
             SwPdfObject  *object)
{
  gsize start;

  if (!begin_object (scanner, place) || !sw_pdf_scanner_skip_value (scanner, &start))
    return FALSE;
  object->text = scanner->text + start;
  object->length = scanner->at - start;
  if (!sw_pdf_scanner_next (scanner, &start))
    return FALSE;
  return sw_pdf_scanner_is (scanner, start, "endobj")
         || (sw_pdf_scanner_is (scanner, start, "stream") && read_stream (scanner, places, object));
}

static gboolean
read_objects (SwPdfFile *self)
{
  SwPdfScanner scanner = { 0 };
  g_autoptr (GArray) places = NULL;
  gsize start;

  scanner.text = g_bytes_get_data (self->bytes, &scanner.length);
  places = read_table (&scanner);
  if (places == NULL || !read_word (&scanner, "trailer") || !sw_pdf_scanner_skip_value (&scanner, &start))
    return FALSE;
  self->trailer = (SwPdfObject){ .text = scanner.text + start, .length = scanner.at - start };

  g_array_set_size (self->objects, places->len);
  for (guint id = 1; id < places->len; id++)
    {
      gsize place = g_array_index (places, gsize, id);

      if (place != 0 && !read_object (&scanner, places, place, sw_pdf_file_get (self, id)))
        return FALSE;
    }
  for (guint id = 1; id < places->len; id++)
    if (g_array_index (places, gsize, id) == 0)
      sw_pdf_object_clear (sw_pdf_file_get (self, id));
  return TRUE;
}

/**
 * sw_pdf_file_new:
 * @bytes: a PDF
 *
 * Returns: (transfer full) (nullable): the PDF taken apart; NULL for one that is damaged or whose objects are
 * listed in another way
 */
SwPdfFile *
sw_pdf_file_new (GBytes *bytes)
{
  g_autoptr (SwPdfFile) self = g_new0 (SwPdfFile, 1);

  self->bytes = g_bytes_ref (bytes);
  self->objects = g_array_new (FALSE, TRUE, sizeof (SwPdfObject));
  g_array_set_clear_func (self->objects, (GDestroyNotify)sw_pdf_object_clear);
  return read_objects (self) ? g_steal_pointer (&self) : NULL;
}

/**
 * sw_pdf_file_free:
 * @self: (transfer full): the PDF
 */
void
sw_pdf_file_free (SwPdfFile *self)
{
  g_array_unref (self->objects);
  sw_pdf_object_clear (&self->trailer);
  g_bytes_unref (self->bytes);
  g_free (self);
}

/**
 * sw_pdf_file_get:
 * @id: number of an object
 *
 * Returns: (transfer none) (nullable): the object, until the next one is added; NULL beyond the last
 */
SwPdfObject *
sw_pdf_file_get (SwPdfFile *self,
                 guint      id)
{
  return id < self->objects->len ? &g_array_index (self->objects, SwPdfObject, id) : NULL;
}

/**
 * sw_pdf_file_add:
 * @text: (transfer full): its value
 *
 * Returns: the number of the new object
 */
guint
sw_pdf_file_add (SwPdfFile *self,
                 char      *text)
{
  SwPdfObject object = { 0 };

  sw_pdf_object_take_text (&object, text);
  g_array_append_val (self->objects, object);
  return self->objects->len - 1;
}

/**
 * sw_pdf_file_find_all:
 * @value: (nullable): a value
 *
 * Returns: (transfer full) (element-type guint): the numbers of the objects it refers to, in order: of a
 * reference its own, of an array those of its references, also of those a level below
 */
GArray *
sw_pdf_file_find_all (const char *value)
{
  GArray *ids = g_array_new (FALSE, FALSE, sizeof (guint));
  SwPdfScanner scanner = { value, value != NULL ? strlen (value) : 0, 0 };
  gsize start;

  if (value != NULL && *value == '[')
    scanner.at++;
  while (sw_pdf_scanner_skip_value (&scanner, &start))
    if (g_ascii_isdigit (value[start]) && value[scanner.at - 1] == 'R')
      {
        guint id = (guint)strtoul (value + start, NULL, 10);

        g_array_append_val (ids, id);
      }
  return ids;
}

/**
 * sw_pdf_file_find:
 * @from: an object
 * @key: a name, with its slash
 *
 * Returns: the number of the object that the value refers to; 0 where it refers to none
 */
guint
sw_pdf_file_find (const SwPdfObject *from,
                  const char        *key)
{
  g_autofree char *value = sw_pdf_object_dup_value (from, key);

  return value != NULL && g_ascii_isdigit (*value) && g_str_has_suffix (value, "R")
             ? (guint)strtoul (value, NULL, 10)
             : 0;
}
