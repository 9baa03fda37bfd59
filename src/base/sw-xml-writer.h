/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * SwXmlWriter:
 *
 * Writes our own canonical XML: two spaces an indent level, attributes in the order given, one element a
 * line, text escaped. The same calls always give the same bytes.
 */
typedef struct _SwXmlWriter SwXmlWriter;

void sw_xml_escape (GString    *text,
                    const char *value,
                    gboolean    attribute);
SwXmlWriter *sw_xml_writer_new (void);
void sw_xml_writer_free (SwXmlWriter *self);
void sw_xml_writer_open (SwXmlWriter *self,
                         const char  *name);
void sw_xml_writer_attribute (SwXmlWriter *self,
                              const char  *name,
                              const char  *value);
void sw_xml_writer_attribute_int (SwXmlWriter *self,
                                  const char  *name,
                                  int          value);
void sw_xml_writer_attribute_double (SwXmlWriter *self,
                                     const char  *name,
                                     double       value);
void sw_xml_writer_text_element (SwXmlWriter *self,
                                 const char  *name,
                                 const char  *text);
void sw_xml_writer_text (SwXmlWriter *self,
                         const char  *text);
void sw_xml_writer_raw (SwXmlWriter *self,
                        const char  *fragment);
void sw_xml_writer_close (SwXmlWriter *self);
GBytes *sw_xml_writer_end (SwXmlWriter *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwXmlWriter, sw_xml_writer_free)

G_END_DECLS
