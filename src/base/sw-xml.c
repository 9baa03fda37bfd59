/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reads XML that may come from anywhere: no network, no DTD, no entities, and limits that hold while parsing,
 * so that a hostile file is refused before it has cost time or memory. */
#include "config.h"

#include <glib/gi18n.h>
#include <libxml/SAX2.h>
#include <libxml/parser.h>
#include <libxml/parserInternals.h>
#include <string.h>

#include "sw-xml.h"

G_DEFINE_QUARK (sw-xml-error-quark, sw_xml_error)

/* What the parser's callbacks keep; hangs on the context's _private. */
typedef struct
{
  int depth;
  int n_nodes;
  gboolean stopped;
  SwXmlError code;
  long line;
  char *words; /* why it was stopped, or the first error */
} Watch;

static void
stop (xmlParserCtxt *context,
      SwXmlError     code,
      const char    *words)
{
  Watch *watch = context->_private;

  if (watch->stopped)
    return;

  watch->stopped = TRUE;
  watch->code = code;
  watch->line = xmlSAX2GetLineNumber (context);
  g_free (watch->words);
  watch->words = g_strdup (words);
  xmlStopParser (context);
}

static gboolean
count_node (xmlParserCtxt *context)
{
  Watch *watch = context->_private;

  if (++watch->n_nodes <= SW_XML_MAX_NODES)
    return TRUE;

  stop (context, SW_XML_ERROR_TOO_LARGE,
        _ ("the document has more parts than any of ours can need. It is not one of ours, or it is damaged."));
  return FALSE;
}

static void
start_element (void           *data,
               const xmlChar  *name,
               const xmlChar  *prefix,
               const xmlChar  *uri,
               int             n_namespaces,
               const xmlChar **namespaces,
               int             n_attributes,
               int             n_defaulted,
               const xmlChar **attributes)
{
  xmlParserCtxt *context = data;
  Watch *watch = context->_private;

  if (!count_node (context))
    return;
  if (++watch->depth > SW_XML_MAX_DEPTH)
    {
      stop (context, SW_XML_ERROR_TOO_LARGE,
            _ ("elements are nested deeper than in any document of ours. It is not one of ours, or it is damaged."));
      return;
    }

  xmlSAX2StartElementNs (data, name, prefix, uri, n_namespaces, namespaces, n_attributes, n_defaulted, attributes);
}

static void
end_element (void          *data,
             const xmlChar *name,
             const xmlChar *prefix,
             const xmlChar *uri)
{
  xmlParserCtxt *context = data;
  Watch *watch = context->_private;

  watch->depth--;
  xmlSAX2EndElementNs (data, name, prefix, uri);
}

static void
comment (void          *data,
         const xmlChar *text)
{
  if (count_node (data))
    xmlSAX2Comment (data, text);
}

static void
processing_instruction (void          *data,
                        const xmlChar *target,
                        const xmlChar *text)
{
  if (count_node (data))
    xmlSAX2ProcessingInstruction (data, target, text);
}

static void
internal_subset (void          *data,
                 const xmlChar *name,
                 const xmlChar *external_id,
                 const xmlChar *system_id)
{
  (void) name;
  (void) external_id;
  (void) system_id;
  stop (data, SW_XML_ERROR_FORBIDDEN,
        _ ("it declares a document type or entities. No document of ours does; remove the declaration."));
}

static void
note_error (void     *data,
            xmlError *error)
{
  xmlParserCtxt *context = data;
  Watch *watch = context->_private;

  if (watch->stopped || watch->words != NULL || error->level < XML_ERR_ERROR)
    return;

  watch->code = error->code == XML_ERR_NO_MEMORY ? SW_XML_ERROR_READ : SW_XML_ERROR_MALFORMED;
  watch->line = error->line;
  watch->words = g_strchomp (g_strdup (error->message != NULL ? error->message : ""));
}

/* Where the first byte stands that is not UTF-8, as a line counted from 1. */
static long
line_of (const char *data,
         const char *end)
{
  long line = 1;

  for (const char *c = data; c < end; c++)
    if (*c == '\n')
      line++;

  return line;
}

static gboolean
check_bytes (const char  *data,
             gsize        length,
             const char  *name,
             GError     **error)
{
  const char *end;

  if (length > SW_XML_MAX_BYTES)
    {
      g_autofree char *most = g_format_size (SW_XML_MAX_BYTES);

      g_set_error (error, SW_XML_ERROR, SW_XML_ERROR_TOO_LARGE,
                   _ ("%s: the file is larger than %s. It is not one of ours, or it is damaged."), name, most);
      return FALSE;
    }
  if (length == 0)
    {
      g_set_error (error, SW_XML_ERROR, SW_XML_ERROR_MALFORMED,
                   _ ("%s: the file is empty. The version before it may still be there as “%s~”."), name, name);
      return FALSE;
    }
  if (!g_utf8_validate_len (data, length, &end))
    {
      g_set_error (error, SW_XML_ERROR, SW_XML_ERROR_MALFORMED,
                   _ ("%s, line %ld: the text is not UTF-8. Save it in that encoding, or take the version before it."), name,
                   line_of (data, end));
      return FALSE;
    }

  return TRUE;
}

static xmlParserCtxt *
context_new (Watch *watch)
{
  xmlParserCtxt *context = xmlNewParserCtxt ();

  if (context == NULL)
    return NULL;

  context->_private = watch;
  context->sax->startElementNs = start_element;
  context->sax->endElementNs = end_element;
  context->sax->comment = comment;
  context->sax->processingInstruction = processing_instruction;
  context->sax->internalSubset = internal_subset;
  context->sax->serror = note_error;
  return context;
}

static gboolean
is_utf8_declared (const xmlDoc *doc)
{
  return doc->encoding == NULL || g_ascii_strcasecmp ((const char *) doc->encoding, "utf-8") == 0;
}

/**
 * sw_xml_parse_bytes:
 * @bytes: the content of a file
 * @name: what messages call the file
 *
 * Parses without touching the network or any other file. Safe to call from any thread.
 *
 * Returns: (transfer full): the document, whose URL is @name, or NULL with a #SwXmlError
 */
xmlDoc *
sw_xml_parse_bytes (GBytes      *bytes,
                    const char  *name,
                    GError     **error)
{
  gsize length;
  const char *data = g_bytes_get_data (bytes, &length);
  g_autoptr (xmlDoc) doc = NULL;
  g_autofree char *words = NULL;
  xmlParserCtxt *context;
  Watch watch = { 0 };

  g_return_val_if_fail (name != NULL, NULL);

  if (!check_bytes (data, length, name, error))
    return NULL;

  xmlInitParser ();
  context = context_new (&watch);
  if (context != NULL)
    {
      doc = xmlCtxtReadMemory (context, data, (int) length, NULL, NULL,
                               XML_PARSE_NONET | XML_PARSE_NOCDATA | XML_PARSE_COMPACT | XML_PARSE_BIG_LINES);
      xmlFreeParserCtxt (context);
    }

  words = watch.words;
  if (context == NULL || (doc == NULL && words == NULL) || (words != NULL && watch.code == SW_XML_ERROR_READ))
    {
      g_set_error (error, SW_XML_ERROR, SW_XML_ERROR_READ,
                   _ ("%s: there is not enough memory to read it. Close other programs and try again."), name);
      return NULL;
    }
  if (watch.stopped)
    {
      g_set_error (error, SW_XML_ERROR, watch.code, _ ("%s, line %ld: %s"), name, watch.line, words);
      return NULL;
    }
  if (doc == NULL || words != NULL)
    {
      g_set_error (error, SW_XML_ERROR, SW_XML_ERROR_MALFORMED,
                   /* Translators: file, line, the parser's own words, file */
                   _ ("%s, line %ld: the file is damaged or cut short (%s). The version before it may still be there as “%s~”."),
                   name, watch.line, words, name);
      return NULL;
    }
  if (!is_utf8_declared (doc))
    {
      g_set_error (error, SW_XML_ERROR, SW_XML_ERROR_MALFORMED,
                   _ ("%s, line 1: the file calls itself “%s”. Documents of ours are UTF-8; save it in that encoding."), name,
                   (const char *) doc->encoding);
      return NULL;
    }

  xmlFree ((xmlChar *) doc->URL);
  doc->URL = xmlStrdup ((const xmlChar *) name);
  return g_steal_pointer (&doc);
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

/**
 * sw_xml_dup_attribute:
 * @node: an element
 * @name: an attribute in no namespace
 *
 * Returns: (transfer full) (nullable): its value, to be freed by g_free(), or NULL when it is not there
 */
char *
sw_xml_dup_attribute (const xmlNode *node,
                      const char    *name)
{
  g_autoptr (SwXmlText) value = xmlGetNoNsProp (node, (const xmlChar *) name);

  return g_strdup ((const char *) value);
}

/**
 * sw_xml_dup_text:
 * @node: an element
 *
 * Returns: (transfer full): all text in it, to be freed by g_free(); "" when there is none
 */
char *
sw_xml_dup_text (const xmlNode *node)
{
  g_autoptr (SwXmlText) text = xmlNodeGetContent (node);

  return g_strdup (text != NULL ? (const char *) text : "");
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
      sw_xml_set_error (error, node, SW_XML_ERROR_RANGE,
                        _ ("“%s” must be a whole number from %d to %d, not “%s”. Correct it and open the file again."), name,
                        low, high, text);
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
 * Returns: FALSE with a #SwXmlError when the attribute is not a number from @low to @high, written with a point
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
  if (end == text || *end != '\0' || !(value >= low && value <= high))
    {
      sw_xml_set_error (error, node, SW_XML_ERROR_RANGE,
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
sw_xml_set_error (GError        **error,
                  const xmlNode  *node,
                  SwXmlError      code,
                  const char     *format,
                  ...)
{
  g_autofree char *words = NULL;
  va_list args;

  va_start (args, format);
  words = g_strdup_vprintf (format, args);
  va_end (args);

  g_set_error (error, SW_XML_ERROR, code, _ ("%s, line %ld: %s"),
               node->doc != NULL && node->doc->URL != NULL ? (const char *) node->doc->URL : "?", xmlGetLineNo (node),
               words);
}
