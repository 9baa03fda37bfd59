/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reads and changes single objects of a PDF. Only keys of the outermost dictionary are looked at. */
#include "config.h"

#include <string.h>

#include "sw-pdf-object.h"
#include "sw-pdf-scanner.h"

/* Where in the text of an object something is. */
typedef struct
{
  gsize start;
  gsize end;
} Span;

/* What is between the two signs at either end. */
#define BRACKETS strlen ("<<")

/**
 * sw_pdf_object_clear:
 *
 * Frees what it owns; it is not there then.
 */
void
sw_pdf_object_clear (SwPdfObject *self)
{
  g_free (self->own);
  g_clear_pointer (&self->own_stream, g_bytes_unref);
  *self = (SwPdfObject){ 0 };
}

/**
 * sw_pdf_object_is_dictionary:
 *
 * Returns: whether it is there and has keys
 */
gboolean
sw_pdf_object_is_dictionary (const SwPdfObject *self)
{
  return self->text != NULL && self->length >= 2 * BRACKETS && strncmp (self->text, "<<", BRACKETS) == 0
         && strncmp (self->text + self->length - BRACKETS, ">>", BRACKETS) == 0;
}

/**
 * sw_pdf_object_take_text:
 * @text: (transfer full): its new value
 */
void
sw_pdf_object_take_text (SwPdfObject *self,
                         char        *text)
{
  g_free (self->own);
  self->text = self->own = text;
  self->length = strlen (text);
}

/**
 * sw_pdf_object_take_stream:
 * @stream: (transfer full): its new bytes, as they are filtered
 */
void
sw_pdf_object_take_stream (SwPdfObject *self,
                           GBytes      *stream)
{
  g_clear_pointer (&self->own_stream, g_bytes_unref);
  self->own_stream = stream;
  self->stream = g_bytes_get_data (stream, &self->stream_length);
}

/* Finds the value behind a key, and with it the key. */
static gboolean
find (const SwPdfObject *self,
      const char        *key,
      Span              *pair,
      Span              *value)
{
  SwPdfScanner scanner;
  gsize start;

  if (!sw_pdf_object_is_dictionary (self))
    return FALSE;

  scanner = (SwPdfScanner){ self->text, self->length - BRACKETS, BRACKETS };
  while (sw_pdf_scanner_next (&scanner, &start))
    {
      gboolean found = sw_pdf_scanner_is (&scanner, start, key);

      if (self->text[start] == '%')
        continue;
      if (!sw_pdf_scanner_skip_value (&scanner, &value->start))
        return FALSE;
      value->end = scanner.at;
      *pair = (Span){ start, value->end };
      if (found)
        return TRUE;
    }

  return FALSE;
}

/**
 * sw_pdf_object_dup_value:
 * @key: a name, with its slash
 *
 * Returns: (transfer full) (nullable): the value as the file has it; NULL for none
 */
char *
sw_pdf_object_dup_value (const SwPdfObject *self,
                         const char        *key)
{
  Span pair;
  Span value;

  return find (self, key, &pair, &value) ? g_strndup (self->text + value.start, value.end - value.start)
                                         : NULL;
}

/**
 * sw_pdf_object_has:
 * @key: a name, with its slash
 * @value: a value of one token
 *
 * Returns: whether that is the value of the key
 */
gboolean
sw_pdf_object_has (const SwPdfObject *self,
                   const char        *key,
                   const char        *value)
{
  Span pair;
  Span found;

  return find (self, key, &pair, &found) && found.end - found.start == strlen (value)
         && strncmp (self->text + found.start, value, found.end - found.start) == 0;
}

/* Puts @value in the place of what is there; a key that is not there yet becomes the last one. */
static void
replace (SwPdfObject *self,
         Span         place,
         const char  *key,
         const char  *value)
{
  GString *text = g_string_sized_new (self->length + strlen (key) + strlen (value) + 2);

  g_string_append_len (text, self->text, (gssize)place.start);
  g_string_append_c (text, ' ');
  g_string_append (text, key);
  g_string_append_c (text, ' ');
  g_string_append (text, value);
  g_string_append_len (text, self->text + place.end, (gssize)(self->length - place.end));
  sw_pdf_object_take_text (self, g_string_free (text, FALSE));
}

/**
 * sw_pdf_object_set:
 * @key: a name, with its slash
 * @value: its new value
 *
 * For a dictionary only.
 */
void
sw_pdf_object_set (SwPdfObject *self,
                   const char  *key,
                   const char  *value)
{
  Span pair;
  Span old;

  if (!find (self, key, &pair, &old))
    pair.start = pair.end = self->length - BRACKETS;
  replace (self, pair, key, value);
}

/**
 * sw_pdf_object_append:
 * @key: a name, with its slash
 * @values: what is to stand at the end of its array; one is made where the value is none
 *
 * For a dictionary only.
 */
void
sw_pdf_object_append (SwPdfObject *self,
                      const char  *key,
                      const char  *values)
{
  g_autofree char *old = sw_pdf_object_dup_value (self, key);
  g_autofree char *inner = NULL;
  g_autofree char *array = NULL;

  if (old != NULL && *old == '[')
    inner = g_strndup (old + 1, strlen (old) - strlen ("[]"));
  array = g_strconcat ("[", inner != NULL ? inner : (old != NULL ? old : ""), " ", values, "]", NULL);
  sw_pdf_object_set (self, key, array);
}

/**
 * sw_pdf_object_extend:
 * @key: a name, with its slash
 * @entries: what is to stand at the end of its dictionary; one is made where the value is none
 *
 * For a dictionary only.
 */
void
sw_pdf_object_extend (SwPdfObject *self,
                      const char  *key,
                      const char  *entries)
{
  g_autofree char *old = sw_pdf_object_dup_value (self, key);
  g_autofree char *inner = NULL;
  g_autofree char *dictionary = NULL;

  if (old != NULL && g_str_has_prefix (old, "<<"))
    inner = g_strndup (old + BRACKETS, strlen (old) - 2 * BRACKETS);
  dictionary = g_strconcat ("<<", inner != NULL ? inner : "", " ", entries, ">>", NULL);
  sw_pdf_object_set (self, key, dictionary);
}

static gboolean
is_plain (const char *text)
{
  for (const char *at = text; *at != '\0'; at++)
    if (!g_ascii_isprint (*at))
      return FALSE;

  return TRUE;
}

/**
 * sw_pdf_quote:
 * @text: any text
 *
 * Returns: (transfer full): the text as a text string of a PDF (ISO 32000-1, 7.9.2.2): in UTF-16 unless it is
 * ASCII
 */
char *
sw_pdf_quote (const char *text)
{
  g_autofree gunichar2 *units = NULL;
  GString *quoted;
  glong n = 0;

  if (is_plain (text))
    {
      quoted = g_string_new ("(");
      for (const char *at = text; *at != '\0'; at++)
        {
          if (*at == '(' || *at == ')' || *at == '\\')
            g_string_append_c (quoted, '\\');
          g_string_append_c (quoted, *at);
        }
      g_string_append_c (quoted, ')');
      return g_string_free (quoted, FALSE);
    }

  units = g_utf8_to_utf16 (text, -1, NULL, &n, NULL);
  quoted = g_string_new ("<FEFF");
  for (glong i = 0; i < n; i++)
    g_string_append_printf (quoted, "%04X", units[i]);
  g_string_append_c (quoted, '>');
  return g_string_free (quoted, FALSE);
}
