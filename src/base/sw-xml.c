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

/* What an error of ours knows beside its message. */
typedef struct
{
  long line;
  char *words;
} SwXmlErrorPrivate;

static void
sw_xml_error_private_init (SwXmlErrorPrivate *private)
{
  private->line = 0;
  private->words = NULL;
}

static void
sw_xml_error_private_copy (const SwXmlErrorPrivate *from,
                           SwXmlErrorPrivate       *to)
{
  to->line = from->line;
  to->words = g_strdup (from->words);
}

static void
sw_xml_error_private_clear (SwXmlErrorPrivate *private)
{
  g_free (private->words);
}

G_DEFINE_EXTENDED_ERROR (SwXmlError, sw_xml_error)

/* Makes the error whose message is "FILE, line N: words", or "FILE: words" without a line. */
static void
set_error (GError     **error,
           SwXmlError   code,
           const char  *name,
           long         line,
           const char  *words)
{
  SwXmlErrorPrivate *private;

  if (error == NULL)
    return;

  if (line > 0)
    g_set_error (error, SW_XML_ERROR, code,
                 /* Translators: a file, a line in it, what is wrong */
                 _ ("%s, line %ld: %s"), name, line, words);
  else
    g_set_error (error, SW_XML_ERROR, code, "%s: %s", name, words);

  private = sw_xml_error_get_private (*error);
  private->line = line;
  private->words = g_strdup (words);
}

/**
 * sw_xml_error_get_line:
 * @error: any error
 *
 * Returns: the line it is about, from 1, or 0 when it is about no line
 */
long
sw_xml_error_get_line (const GError *error)
{
  SwXmlErrorPrivate *private = error->domain == SW_XML_ERROR ? sw_xml_error_get_private (error) : NULL;

  return private != NULL ? private->line : 0;
}

/**
 * sw_xml_error_get_words:
 * @error: any error
 *
 * Returns: (transfer none): its message without file and line, where they are known apart; else all of it
 */
const char *
sw_xml_error_get_words (const GError *error)
{
  SwXmlErrorPrivate *private = error->domain == SW_XML_ERROR ? sw_xml_error_get_private (error) : NULL;

  return private != NULL && private->words != NULL ? private->words : error->message;
}

/* What the parser's callbacks keep; hangs on the context's _private. */
typedef struct
{
  int depth;
  int n_nodes;
  gboolean stopped;
  gboolean out_of_memory;
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
count_nodes (xmlParserCtxt *context,
             int            n)
{
  Watch *watch = context->_private;

  watch->n_nodes += n;
  if (watch->n_nodes <= SW_XML_MAX_NODES)
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

  if (!count_nodes (context, 1 + n_attributes + n_namespaces))
    return;
  if (++watch->depth > SW_XML_MAX_DEPTH)
    {
      stop (context, SW_XML_ERROR_TOO_LARGE,
            _ ("elements are nested deeper than in any document of ours. It is not one of ours, or it is damaged."));
      return;
    }

  xmlSAX2StartElementNs (data, name, prefix, uri, n_namespaces, namespaces, n_attributes, n_defaulted, attributes);

  /* An element's own field for the line ends at 65535. */
  if (context->node != NULL)
    context->node->_private = GSIZE_TO_POINTER ((gsize) xmlSAX2GetLineNumber (context));
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
  if (count_nodes (data, 1))
    xmlSAX2Comment (data, text);
}

static void
processing_instruction (void          *data,
                        const xmlChar *target,
                        const xmlChar *text)
{
  if (count_nodes (data, 1))
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

  if (error->code == XML_ERR_NO_MEMORY)
    watch->out_of_memory = TRUE;
  if (watch->stopped || watch->words != NULL || error->level < XML_ERR_ERROR)
    return;

  watch->code = SW_XML_ERROR_MALFORMED;
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

/* The parser compares each attribute of an element with all others before it tells of any: without a limit a
 * file of few megabytes would keep it busy for hours. Between two "<" there is one start tag at most. */
static const char *
find_crowded_tag (const char *data,
                  const char *end)
{
  int n_values = 0;

  for (const char *c = data; c < end; c++)
    {
      if (*c == '<')
        n_values = 0;
      else if (*c == '=' && ++n_values > SW_XML_MAX_ATTRIBUTES)
        return c;
    }

  return NULL;
}

static gboolean
check_bytes (const char  *data,
             gsize        length,
             const char  *name,
             GError     **error)
{
  const char *place;

  if (length > SW_XML_MAX_BYTES)
    {
      g_autofree char *most = g_format_size (SW_XML_MAX_BYTES);
      g_autofree char *words
          = g_strdup_printf (_ ("the file is larger than %s. It is not one of ours, or it is damaged."), most);

      set_error (error, SW_XML_ERROR_TOO_LARGE, name, 0, words);
      return FALSE;
    }
  if (length == 0)
    {
      g_autofree char *words
          = g_strdup_printf (_ ("the file is empty. The version before it may still be there as “%s~”."), name);

      set_error (error, SW_XML_ERROR_MALFORMED, name, 0, words);
      return FALSE;
    }
  if (!g_utf8_validate_len (data, length, &place))
    {
      set_error (error, SW_XML_ERROR_MALFORMED, name, line_of (data, place),
                 _ ("the text is not UTF-8. Save it in that encoding, or take the version before it."));
      return FALSE;
    }

  place = find_crowded_tag (data, data + length);
  if (place != NULL)
    {
      set_error (error, SW_XML_ERROR_TOO_LARGE, name, line_of (data, place),
                 _ ("one element has more attributes than any of ours can need. It is not one of ours, or it is damaged."));
      return FALSE;
    }

  return TRUE;
}

/* Takes what the parser, short of memory, would print on the console, and does not always tell its context. */
static void
note_lost_memory (void     *data,
                  xmlError *error)
{
  Watch *watch = data;

  if (error->code == XML_ERR_NO_MEMORY)
    watch->out_of_memory = TRUE;
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

static xmlDoc *
parse (const char *data,
       int         length,
       const char *name,
       Watch      *watch)
{
  xmlParserCtxt *context;
  xmlDoc *doc = NULL;
  void *old_data;
  xmlStructuredErrorFunc old_function;

  xmlInitParser ();
  old_data = xmlStructuredErrorContext;
  old_function = xmlStructuredError;
  xmlSetStructuredErrorFunc (watch, note_lost_memory);

  context = context_new (watch);
  if (context != NULL)
    {
      doc = xmlCtxtReadMemory (context, data, length, NULL, NULL,
                               XML_PARSE_NONET | XML_PARSE_NOCDATA | XML_PARSE_COMPACT | XML_PARSE_BIG_LINES);
      xmlFreeParserCtxt (context);
    }
  if (doc != NULL)
    {
      xmlFree ((xmlChar *) doc->URL);
      doc->URL = xmlStrdup ((const xmlChar *) name);
    }

  xmlSetStructuredErrorFunc (old_data, old_function);
  return doc;
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
  Watch watch = { 0 };

  g_return_val_if_fail (name != NULL, NULL);

  if (!check_bytes (data, length, name, error))
    return NULL;

  doc = parse (data, (int) length, name, &watch);
  words = watch.words;
  if (watch.out_of_memory || (doc == NULL && words == NULL))
    {
      set_error (error, SW_XML_ERROR_READ, name, 0,
                 _ ("there is not enough memory to read it. Close other programs and try again."));
      return NULL;
    }
  if (watch.stopped)
    {
      set_error (error, watch.code, name, watch.line, words);
      return NULL;
    }
  if (doc == NULL || words != NULL)
    {
      g_autofree char *all
          /* Translators: the parser's own words, then a file */
          = g_strdup_printf (_ ("the file is damaged or cut short (%s). The version before it may still be there as “%s~”."),
                             words, name);

      set_error (error, SW_XML_ERROR_MALFORMED, name, watch.line, all);
      return NULL;
    }
  if (!is_utf8_declared (doc))
    {
      g_autofree char *all
          = g_strdup_printf (_ ("the file calls its encoding “%s”. Documents of ours are UTF-8; save it in that encoding."),
                             (const char *) doc->encoding);

      set_error (error, SW_XML_ERROR_MALFORMED, name, 1, all);
      return NULL;
    }

  return g_steal_pointer (&doc);
}

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
  if (end == text || *end != '\0' || strspn (text, "-.0123456789") != strlen (text) || !(value >= low && value <= high))
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

  set_error (error, code, node->doc != NULL && node->doc->URL != NULL ? (const char *) node->doc->URL : "?",
             sw_xml_get_line (node), words);
}
