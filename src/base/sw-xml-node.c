/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Looks into parsed documents. Nothing here asks libxml2 for memory, so that nothing can go missing without
 * an error. */
#include "config.h"

#include <glib/gi18n.h>
#include <string.h>

#include "sw-xml.h"

/**
 * sw_xml_get_line:
 * @node: a node of a document from sw_xml_parse_bytes()
 *
 * Returns: its line, from 1; of an element the one its start tag ends on, however long the file is
 */
long
sw_xml_get_line (const xmlNode *node)
{
  if (node->type == XML_ELEMENT_NODE && node->_private != NULL)
    return (long) GPOINTER_TO_SIZE (node->_private);

  return xmlGetLineNo (node);
}

/**
 * sw_xml_is:
 * @node: any node
 * @ns: a namespace
 * @name: an element's name
 *
 * Returns: whether @node is that element
 */
gboolean
sw_xml_is (const xmlNode *node,
           const char    *ns,
           const char    *name)
{
  return node->type == XML_ELEMENT_NODE && node->ns != NULL && strcmp ((const char *) node->ns->href, ns) == 0
         && strcmp ((const char *) node->name, name) == 0;
}

/* Values are put together here rather than by libxml2, which cannot tell "no text" from "no memory". */
static void
append_text (GString       *text,
             const xmlNode *first)
{
  for (const xmlNode *node = first; node != NULL; node = node->next)
    {
      if (node->type == XML_TEXT_NODE || node->type == XML_CDATA_SECTION_NODE)
        g_string_append (text, node->content != NULL ? (const char *) node->content : "");
      else if (node->type == XML_ELEMENT_NODE)
        append_text (text, node->children);
    }
}

/**
 * sw_xml_dup_attribute_value:
 * @attribute: an attribute
 *
 * Returns: (transfer full): its value
 */
char *
sw_xml_dup_attribute_value (const xmlAttr *attribute)
{
  GString *text = g_string_new (NULL);

  append_text (text, attribute->children);
  return g_string_free (text, FALSE);
}

static gboolean
is_attribute (const xmlAttr *attribute,
              const char    *name)
{
  if (g_str_has_prefix (name, "xml:"))
    return attribute->ns != NULL && xmlStrEqual (attribute->ns->href, XML_XML_NAMESPACE)
           && strcmp ((const char *) attribute->name, name + strlen ("xml:")) == 0;

  return attribute->ns == NULL && strcmp ((const char *) attribute->name, name) == 0;
}

/**
 * sw_xml_dup_attribute:
 * @node: an element
 * @name: an attribute in no namespace, or one of XML's own such as "xml:lang"
 *
 * Returns: (transfer full) (nullable): its value, or NULL when it is not there
 */
char *
sw_xml_dup_attribute (const xmlNode *node,
                      const char    *name)
{
  for (const xmlAttr *attribute = node->properties; attribute != NULL; attribute = attribute->next)
    if (is_attribute (attribute, name))
      return sw_xml_dup_attribute_value (attribute);

  return NULL;
}

/**
 * sw_xml_dup_text:
 * @node: an element
 *
 * Returns: (transfer full): all text in it, comments left out; "" when there is none
 */
char *
sw_xml_dup_text (const xmlNode *node)
{
  GString *text = g_string_new (NULL);

  append_text (text, node->children);
  return g_string_free (text, FALSE);
}

/**
 * sw_xml_read_int:
 * @node: an element
 * @name: an attribute
 * @low: least value
 * @high: greatest value
 * @fallback: what a missing attribute means
 * @out: (out): the value; left alone on failure
 *
 * Returns: FALSE with a #SwXmlError when the attribute is not a whole number from @low to @high
 */
gboolean
sw_xml_read_int (const xmlNode  *node,
                 const char     *name,
                 int             low,
                 int             high,
                 int             fallback,
                 int            *out,
                 GError        **error)
{
  g_autofree char *text = sw_xml_dup_attribute (node, name);
  gint64 value;

  if (text == NULL)
    {
      *out = fallback;
      return TRUE;
    }
  if (!g_ascii_string_to_signed (text, 10, low, high, &value, NULL))
    {
      sw_xml_set_error (
          error, node, SW_XML_ERROR_RANGE,
          _ ("“%s” must be a whole number from %d to %d, not “%s”. Correct it and open the file again."),
          name, low, high, text);
      return FALSE;
    }

  *out = (int) value;
  return TRUE;
}

/**
 * sw_xml_read_double:
 * @node: an element
 * @name: an attribute
 * @low: least value
 * @high: greatest value
 * @fallback: what a missing attribute means
 * @out: (out): the value; left alone on failure
 *
 * Returns: FALSE with a #SwXmlError when the attribute is not a number from @low to @high, written with a
 * point
 */
gboolean
sw_xml_read_double (const xmlNode  *node,
                    const char     *name,
                    double          low,
                    double          high,
                    double          fallback,
                    double         *out,
                    GError        **error)
{
  g_autofree char *text = sw_xml_dup_attribute (node, name);
  double value;
  char *end;

  if (text == NULL)
    {
      *out = fallback;
      return TRUE;
    }

  value = g_ascii_strtod (text, &end);
  if (end == text || *end != '\0' || strspn (text, "-.0123456789") != strlen (text)
      || !(value >= low && value <= high))
    {
      sw_xml_set_error (
          error, node, SW_XML_ERROR_RANGE,
          _ ("“%s” must be a number from %g to %g, not “%s”. Correct it and open the file again."), name, low,
          high, text);
      return FALSE;
    }

  *out = value;
  return TRUE;
}

/**
 * sw_xml_set_error:
 * @error: (out) (optional): where to put the error
 * @node: the element it is about
 * @code: what kind of error
 * @format: what is wrong and what to do
 *
 * Makes an error that names file and line.
 */
void
sw_xml_set_error (GError **error,
                  const xmlNode *node,
                  SwXmlError code,
                  const char *format,
                  ...)
{
  g_autofree char *words = NULL;
  va_list args;

  va_start (args, format);
  words = g_strdup_vprintf (format, args);
  va_end (args);

  sw_xml_error_set (error, code,
                    node->doc != NULL && node->doc->URL != NULL ? (const char *) node->doc->URL : "?",
                    sw_xml_get_line (node), words);
}
