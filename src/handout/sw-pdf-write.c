/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Writes a PDF small: what is no stream goes packed into object streams (ISO 32000-1, 7.5.7), the table of
 * all objects into a stream too (7.5.8). The same objects give the same bytes. */
#include "config.h"

#include <string.h>

#include "sw-pdf-file.h"
#include "sw-pdf-flate.h"
#include "sw-pdf-scanner.h"

/* In one object stream; a reader unpacks one at a time. */
#define MOST_PACKED 200

#define HEADER "%PDF-1.5\n%\277\367\242\376\n"
#define ENTRY_LENGTH 8

/* Kinds of entries in the table of objects. */
#define FREE 0
#define PLAIN 1
#define PACKED 2

/* @entries: (element-type guint8): ENTRY_LENGTH for each object. */
typedef struct
{
  GByteArray *out;
  GByteArray *entries;
} Writer;

static void
put (Writer     *writer,
     const char *text,
     gsize       length)
{
  g_byte_array_append (writer->out, (const guint8 *)text, (guint)length);
}

static void
put_text (Writer     *writer,
          const char *text)
{
  put (writer, text, strlen (text));
}

/* Big-endian, as everything in the table is. */
static void
put_number (guint8 *bytes,
            guint   n_bytes,
            gsize   number)
{
  for (guint i = n_bytes; i > 0; i--, number >>= 8)
    bytes[i - 1] = (guint8)(number & 0xff);
}

/* @where: of a plain object its place in the file, of a packed one the number of its object stream. */
static void
note (Writer *writer,
      guint   id,
      guint8  kind,
      gsize   where,
      guint   index)
{
  guint8 *entry = writer->entries->data + (gsize)id * ENTRY_LENGTH;

  entry[0] = kind;
  put_number (entry + 1, 4, where);
  put_number (entry + 5, 3, index);
}

/* The value with no more white space than it takes, and no comment. */
static void
append_tight (GString           *into,
              const SwPdfObject *object)
{
  SwPdfScanner scanner = { object->text, object->length, 0 };
  gsize start;
  gboolean apart = FALSE;

  while (sw_pdf_scanner_next (&scanner, &start))
    {
      if (scanner.text[start] == '%')
        continue;
      if (apart && sw_pdf_is_regular (scanner.text[start]))
        g_string_append_c (into, ' ');
      g_string_append_len (into, scanner.text + start, (gssize)(scanner.at - start));
      apart = sw_pdf_is_regular (scanner.text[scanner.at - 1]);
    }
}

static void
put_stream (Writer      *writer,
            guint        id,
            SwPdfObject *object)
{
  g_autofree char *length = g_strdup_printf ("%" G_GSIZE_FORMAT, object->stream_length);
  g_autofree char *head = g_strdup_printf ("%u 0 obj\n", id);
  g_autoptr (GString) dictionary = g_string_new (NULL);

  sw_pdf_object_set (object, "/Length", length);
  append_tight (dictionary, object);
  note (writer, id, PLAIN, writer->out->len, 0);
  put_text (writer, head);
  put (writer, dictionary->str, dictionary->len);
  put_text (writer, "\nstream\n");
  put (writer, object->stream, object->stream_length);
  put_text (writer, "\nendstream\nendobj\n");
}

/* Packs objects from @id on. Returns where to go on. */
static guint
put_packed (Writer    *writer,
            SwPdfFile *file,
            guint      id,
            guint      end,
            guint      stream_id)
{
  g_autoptr (GString) numbers = g_string_new (NULL);
  g_autoptr (GString) values = g_string_new (NULL);
  SwPdfObject stream = { 0 };
  guint n = 0;

  for (; id < end && n < MOST_PACKED; id++)
    {
      const SwPdfObject *object = sw_pdf_file_get (file, id);

      if (object->text == NULL || object->stream != NULL)
        continue;
      g_string_append_printf (numbers, "%u %" G_GSIZE_FORMAT " ", id, values->len);
      append_tight (values, object);
      g_string_append_c (values, '\n');
      note (writer, id, PACKED, stream_id, n++);
    }

  if (n == 0)
    return end;

  sw_pdf_object_take_text (&stream, g_strdup_printf ("<</Type/ObjStm/N %u/First %" G_GSIZE_FORMAT
                                                     "/Filter/FlateDecode>>",
                                                     n, numbers->len));
  g_string_append_len (numbers, values->str, (gssize)values->len);
  sw_pdf_object_take_stream (&stream, sw_pdf_deflate (numbers->str, numbers->len));
  put_stream (writer, stream_id, &stream);
  sw_pdf_object_clear (&stream);
  return id;
}

/* Each row as its difference to the one before, since rows that follow one another are alike (PNG predictor
 * "up"). */
static GByteArray *
predict (const GByteArray *entries)
{
  GByteArray *rows = g_byte_array_sized_new (entries->len + entries->len / ENTRY_LENGTH);

  for (guint i = 0; i < entries->len; i += ENTRY_LENGTH)
    {
      guint8 row[1 + ENTRY_LENGTH] = { 2 };

      for (guint k = 0; k < ENTRY_LENGTH; k++)
        row[1 + k] = (guint8)(entries->data[i + k] - (i > 0 ? entries->data[i + k - ENTRY_LENGTH] : 0));
      g_byte_array_append (rows, row, sizeof row);
    }
  return rows;
}

/* The table stands for what was the trailer; the file is named by what is in it. */
static void
put_table (Writer    *writer,
           SwPdfFile *file,
           guint      id)
{
  gsize place = writer->out->len;
  g_autofree char *name = g_compute_checksum_for_data (G_CHECKSUM_MD5, writer->out->data, writer->out->len);
  g_autofree char *root = sw_pdf_object_dup_value (&file->trailer, "/Root");
  g_autofree char *info = sw_pdf_object_dup_value (&file->trailer, "/Info");
  g_autofree char *tail = g_strdup_printf ("startxref\n%" G_GSIZE_FORMAT "\n%%%%EOF\n", place);
  g_autoptr (GByteArray) rows = NULL;
  SwPdfObject table = { 0 };

  note (writer, id, PLAIN, place, 0);
  rows = predict (writer->entries);
  sw_pdf_object_take_text (&table,
                           g_strdup_printf ("<</Type/XRef/Size %u/Root %s/Info %s/ID[<%s><%s>]/W[1 4 3]"
                                            "/Filter/FlateDecode/DecodeParms<</Predictor 12/Columns %d>>>>",
                                            id + 1, root, info, name, name, ENTRY_LENGTH));
  sw_pdf_object_take_stream (&table, sw_pdf_deflate ((const char *)rows->data, rows->len));
  put_stream (writer, id, &table);
  put_text (writer, tail);
  sw_pdf_object_clear (&table);
}

/**
 * sw_pdf_file_write:
 *
 * Returns: (transfer full): the whole as a PDF
 */
GBytes *
sw_pdf_file_write (SwPdfFile *self)
{
  g_autoptr (GByteArray) entries = g_byte_array_new ();
  Writer writer = { g_byte_array_sized_new ((guint)g_bytes_get_size (self->bytes)), entries };
  guint end = self->objects->len;
  guint next = end;

  /* Room for all object streams and the table. */
  g_byte_array_set_size (entries, (end + end / MOST_PACKED + 2) * ENTRY_LENGTH);
  memset (entries->data, 0, entries->len);
  note (&writer, 0, FREE, 0, 0xffff);
  put (&writer, HEADER, strlen (HEADER));
  for (guint id = 1; id < end; id++)
    if (sw_pdf_file_get (self, id)->stream != NULL)
      put_stream (&writer, id, sw_pdf_file_get (self, id));
  for (guint id = 1; id < end;)
    id = put_packed (&writer, self, id, end, next++);

  g_byte_array_set_size (entries, (next + 1) * ENTRY_LENGTH);
  put_table (&writer, self, next);
  return g_byte_array_free_to_bytes (writer.out);
}
