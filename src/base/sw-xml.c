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

  stop (
      context, SW_XML_ERROR_TOO_LARGE,
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
            _ ("elements are nested deeper than in any document of ours. It is not one of ours, or it is "
               "damaged."));
      return;
    }

  xmlSAX2StartElementNs (data, name, prefix, uri, n_namespaces, namespaces, n_attributes, n_defaulted,
                         attributes);

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
 * file of few megabytes would keep it busy for hours. What stands in quotes or after the tag's end is text, and
 * may hold as many "=" as it likes; a "<" begins anew even there, as no attribute may hold one. */
static const char *
find_crowded_tag (const char *data,
                  const char *end)
{
  gboolean in_tag = FALSE;
  char quote = '\0';
  int n_values = 0;

  for (const char *c = data; c < end; c++)
    {
      if (*c == '<')
        {
          in_tag = c + 1 < end && c[1] != '!' && c[1] != '?';
          quote = '\0';
          n_values = 0;
        }
      else if (!in_tag)
        continue;
      else if (quote != '\0')
        quote = *c == quote ? '\0' : quote;
      else if (*c == '"' || *c == '\'')
        quote = *c;
      else if (*c == '>')
        in_tag = FALSE;
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
      g_autofree char *words = g_strdup_printf (
          _ ("the file is larger than %s. It is not one of ours, or it is damaged."), most);

      sw_xml_error_set (error, SW_XML_ERROR_TOO_LARGE, name, 0, words);
      return FALSE;
    }
  if (length == 0)
    {
      g_autofree char *words = g_strdup_printf (
          _ ("the file is empty. The version before it may still be there as “%s~”."), name);

      sw_xml_error_set (error, SW_XML_ERROR_MALFORMED, name, 0, words);
      return FALSE;
    }
  if (!g_utf8_validate_len (data, length, &place))
    {
      sw_xml_error_set (
          error, SW_XML_ERROR_MALFORMED, name, line_of (data, place),
          _ ("the text is not UTF-8. Save it in that encoding, or take the version before it."));
      return FALSE;
    }

  place = find_crowded_tag (data, data + length);
  if (place != NULL)
    {
      sw_xml_error_set (error, SW_XML_ERROR_TOO_LARGE, name, line_of (data, place),
                        _ ("one element has more attributes than any of ours can need. It is not one of "
                           "ours, or it is damaged."));
      return FALSE;
    }

  return TRUE;
}

/* Takes what the parser, short of memory, would print on the console, and does not always tell its context.
 */
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
      sw_xml_error_set (error, SW_XML_ERROR_READ, name, 0,
                        _ ("there is not enough memory to read it. Close other programs and try again."));
      return NULL;
    }
  if (watch.stopped)
    {
      sw_xml_error_set (error, watch.code, name, watch.line, words);
      return NULL;
    }
  if (doc == NULL || words != NULL)
    {
      g_autofree char *all
          /* Translators: the parser's own words, then a file */
          = g_strdup_printf (
              _ ("the file is damaged or cut short (%s). The version before it may still be there as “%s~”."),
              words, name);

      sw_xml_error_set (error, SW_XML_ERROR_MALFORMED, name, watch.line, all);
      return NULL;
    }
  if (!is_utf8_declared (doc))
    {
      g_autofree char *all = g_strdup_printf (
          _ ("the file calls its encoding “%s”. Documents of ours are UTF-8; save it in that encoding."),
          (const char *) doc->encoding);

      sw_xml_error_set (error, SW_XML_ERROR_MALFORMED, name, 1, all);
      return NULL;
    }

  return g_steal_pointer (&doc);
}
