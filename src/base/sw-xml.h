/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>
#include <libxml/relaxng.h>
#include <libxml/tree.h>

G_BEGIN_DECLS

/* The one place where libxml2's types learn to be released by g_autoptr. */
G_DEFINE_AUTOPTR_CLEANUP_FUNC (xmlDoc, xmlFreeDoc)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (xmlRelaxNG, xmlRelaxNGFree)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (xmlRelaxNGParserCtxt, xmlRelaxNGFreeParserCtxt)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (xmlRelaxNGValidCtxt, xmlRelaxNGFreeValidCtxt)

#define SW_XML_ERROR (sw_xml_error_quark ())

/**
 * SwXmlError:
 * @SW_XML_ERROR_READ: the file cannot be read at all
 * @SW_XML_ERROR_TOO_LARGE: more bytes, depth or nodes than a document of ours can need
 * @SW_XML_ERROR_MALFORMED: not well-formed XML, or not UTF-8
 * @SW_XML_ERROR_FORBIDDEN: carries a DTD or entities, which no document of ours needs
 * @SW_XML_ERROR_INVALID: well-formed, but not what the schema or the reader expects
 * @SW_XML_ERROR_RANGE: a value outside its limits
 *
 * Why a document could not be read. Messages read "FILE, line N: what is wrong. What to do.".
 */
typedef enum
{
  SW_XML_ERROR_READ,
  SW_XML_ERROR_TOO_LARGE,
  SW_XML_ERROR_MALFORMED,
  SW_XML_ERROR_FORBIDDEN,
  SW_XML_ERROR_INVALID,
  SW_XML_ERROR_RANGE,
} SwXmlError;

GQuark sw_xml_error_quark (void);
void sw_xml_error_set (GError     **error,
                       SwXmlError   code,
                       const char  *name,
                       long         line,
                       const char  *words);
long sw_xml_error_get_line (const GError *error);
const char *sw_xml_error_get_words (const GError *error);

#define SW_XML_MAX_BYTES (16 * 1024 * 1024)
#define SW_XML_MAX_DEPTH 32
#define SW_XML_MAX_ATTRIBUTES 1000
#define SW_XML_MAX_NODES 1000000

xmlDoc *sw_xml_parse_bytes (GBytes      *bytes,
                            const char  *name,
                            GError     **error);

long sw_xml_get_line (const xmlNode *node);
gboolean sw_xml_is (const xmlNode *node,
                    const char    *ns,
                    const char    *name);
char *sw_xml_dup_attribute (const xmlNode *node,
                            const char    *name);
char *sw_xml_dup_attribute_value (const xmlAttr *attribute);
char *sw_xml_dup_text (const xmlNode *node);
gboolean sw_xml_read_int (const xmlNode  *node,
                          const char     *name,
                          int             low,
                          int             high,
                          int             fallback,
                          int            *out,
                          GError        **error);
gboolean sw_xml_read_double (const xmlNode  *node,
                             const char     *name,
                             double          low,
                             double          high,
                             double          fallback,
                             double         *out,
                             GError        **error);
void sw_xml_set_error (GError        **error,
                       const xmlNode  *node,
                       SwXmlError      code,
                       const char     *format,
                       ...) G_GNUC_PRINTF (4, 5);

G_END_DECLS
