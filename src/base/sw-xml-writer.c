/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Writes our documents the same way every time, so that files can be compared and hashed. */
#include "config.h"

#include <string.h>

#include "sw-units.h"
#include "sw-xml-writer.h"

struct _SwXmlWriter
{
  GString *text;
  GPtrArray *open;   /* names of the elements that are open */
  gboolean tag_open; /* whether the last start tag still takes attributes */
  gboolean inside;   /* whether text was written, so that the end tag follows on its line */
};

/* U+FFFE and U+FFFF, which GLib lets pass and XML 1.0 does not. */
static gboolean
is_no_character (const char *c)
{
  return memcmp (c, "\xef\xbf\xbe", 3) == 0 || memcmp (c, "\xef\xbf\xbf", 3) == 0;
}

/**
 * sw_xml_escape:
 * @text: where to append
 * @value: UTF-8; what no XML may hold is left out
 * @attribute: whether it is the value of an attribute in double quotes
 */
void
sw_xml_escape (GString    *text,
               const char *value,
               gboolean    attribute)
{
  g_autofree char *valid = g_utf8_validate (value, -1, NULL) ? NULL : g_utf8_make_valid (value, -1);

  for (const char *c = valid != NULL ? valid : value; *c != '\0'; c++)
    {
      if ((guchar) *c == 0xef && is_no_character (c))
        {
          c += 2;
          continue;
        }

      switch (*c)
        {
        case '&':
          g_string_append (text, "&amp;");
          break;
        case '<':
          g_string_append (text, "&lt;");
          break;
        case '>':
          g_string_append (text, "&gt;");
          break;
        case '"':
          g_string_append (text, attribute ? "&quot;" : "\"");
          break;
        case '\r':
          g_string_append (text, "&#13;");
          break;
        case '\n':
          g_string_append (text, attribute ? "&#10;" : "\n");
          break;
        case '\t':
          g_string_append (text, attribute ? "&#9;" : "\t");
          break;
        default:
          /* Other control characters have no place in XML 1.0 and cannot even be escaped. */
          if ((guchar) *c >= 0x20)
            g_string_append_c (text, *c);
        }
    }
}

static void
indent (SwXmlWriter *self)
{
  for (guint i = 0; i < self->open->len; i++)
    g_string_append (self->text, "  ");
}

static void
finish_tag (SwXmlWriter *self)
{
  if (!self->tag_open)
    return;

  g_string_append (self->text, ">\n");
  self->tag_open = FALSE;
}

/**
 * sw_xml_writer_new:
 *
 * Returns: (transfer full): a writer that holds the XML declaration
 */
SwXmlWriter *
sw_xml_writer_new (void)
{
  SwXmlWriter *self = g_new0 (SwXmlWriter, 1);

  self->text = g_string_new ("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
  self->open = g_ptr_array_new_with_free_func (g_free);
  return self;
}

/**
 * sw_xml_writer_free:
 */
void
sw_xml_writer_free (SwXmlWriter *self)
{
  if (self == NULL)
    return;

  if (self->text != NULL)
    g_string_free (self->text, TRUE);
  g_ptr_array_unref (self->open);
  g_free (self);
}

/**
 * sw_xml_writer_open:
 * @name: the element's name
 *
 * Begins an element; attributes may follow until anything else is written.
 */
void
sw_xml_writer_open (SwXmlWriter *self,
                    const char  *name)
{
  g_return_if_fail (self != NULL);

  finish_tag (self);
  indent (self);
  g_string_append_printf (self->text, "<%s", name);
  g_ptr_array_add (self->open, g_strdup (name));
  self->tag_open = TRUE;
}

/**
 * sw_xml_writer_attribute:
 * @name: the attribute's name
 * @value: (nullable): its value, UTF-8; NULL writes nothing
 */
void
sw_xml_writer_attribute (SwXmlWriter *self,
                         const char  *name,
                         const char  *value)
{
  g_return_if_fail (self != NULL);
  g_return_if_fail (self->tag_open);

  if (value == NULL)
    return;

  g_string_append_printf (self->text, " %s=\"", name);
  sw_xml_escape (self->text, value, TRUE);
  g_string_append_c (self->text, '"');
}

/**
 * sw_xml_writer_attribute_int:
 * @name: the attribute's name
 * @value: its value
 */
void
sw_xml_writer_attribute_int (SwXmlWriter *self,
                             const char  *name,
                             int          value)
{
  g_autofree char *text = g_strdup_printf ("%d", value);

  sw_xml_writer_attribute (self, name, text);
}

/**
 * sw_xml_writer_attribute_double:
 * @name: the attribute's name
 * @value: its value, finite; written with a point and at most four decimals
 */
void
sw_xml_writer_attribute_double (SwXmlWriter *self,
                                const char  *name,
                                double       value)
{
  g_autofree char *text = sw_number_to_string (value, 4);

  sw_xml_writer_attribute (self, name, text);
}

/**
 * sw_xml_writer_text_element:
 * @name: the element's name
 * @text: (nullable): its text, UTF-8; NULL writes nothing
 */
void
sw_xml_writer_text_element (SwXmlWriter *self,
                            const char  *name,
                            const char  *text)
{
  g_return_if_fail (self != NULL);

  if (text == NULL)
    return;

  finish_tag (self);
  indent (self);
  g_string_append_printf (self->text, "<%s>", name);
  sw_xml_escape (self->text, text, FALSE);
  g_string_append_printf (self->text, "</%s>\n", name);
}

/**
 * sw_xml_writer_text:
 * @text: UTF-8
 *
 * Writes text into the open element, whose end tag then follows on the same line. For elements of text that
 * also have attributes; nothing but sw_xml_writer_close() may follow.
 */
void
sw_xml_writer_text (SwXmlWriter *self,
                    const char  *text)
{
  g_return_if_fail (self != NULL);
  g_return_if_fail (self->tag_open);

  g_string_append_c (self->text, '>');
  sw_xml_escape (self->text, text, FALSE);
  self->tag_open = FALSE;
  self->inside = TRUE;
}

/**
 * sw_xml_writer_raw:
 * @fragment: well-formed XML, written on a line of its own and otherwise as it is
 */
void
sw_xml_writer_raw (SwXmlWriter *self,
                   const char  *fragment)
{
  g_return_if_fail (self != NULL);

  finish_tag (self);
  indent (self);
  g_string_append (self->text, fragment);
  g_string_append_c (self->text, '\n');
}

/**
 * sw_xml_writer_close:
 *
 * Ends the innermost open element.
 */
void
sw_xml_writer_close (SwXmlWriter *self)
{
  g_autofree char *name = NULL;

  g_return_if_fail (self != NULL);
  g_return_if_fail (self->open->len > 0);

  name = g_ptr_array_steal_index (self->open, self->open->len - 1);
  if (self->tag_open)
    {
      g_string_append (self->text, "/>\n");
      self->tag_open = FALSE;
      return;
    }

  if (!self->inside)
    indent (self);
  self->inside = FALSE;
  g_string_append_printf (self->text, "</%s>\n", name);
}

/**
 * sw_xml_writer_end:
 *
 * All elements must be closed. The writer is empty afterwards and only to be freed.
 *
 * Returns: (transfer full): the document
 */
GBytes *
sw_xml_writer_end (SwXmlWriter *self)
{
  g_return_val_if_fail (self != NULL, NULL);
  g_return_val_if_fail (self->open->len == 0, NULL);

  return g_string_free_to_bytes (g_steal_pointer (&self->text));
}
