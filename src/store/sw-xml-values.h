/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-dose.h"
#include "sw-xml-writer.h"
#include "sw-xml.h"

G_BEGIN_DECLS

#define SW_NO_FALLBACK (-1)

gboolean sw_xml_read_term (const xmlNode  *node,
                           const char     *name,
                           GType           type,
                           int             fallback,
                           int            *out,
                           GError        **error);
gboolean sw_xml_read_set (const xmlNode  *node,
                          const char     *name,
                          GType           type,
                          SwSet          *out,
                          GError        **error);
gboolean sw_xml_read_load (const xmlNode  *node,
                           const char     *name,
                           SwLoad         *out,
                           GError        **error);
gboolean sw_xml_read_id (const xmlNode  *node,
                         const char     *name,
                         const char     *allowed,
                         char          **out,
                         GError        **error);
gboolean sw_xml_read_date (const xmlNode  *node,
                           const char     *name,
                           char          **out,
                           GError        **error);
gboolean sw_xml_read_language (const xmlNode  *node,
                               const char     *name,
                               char          **out,
                               GError        **error);
gboolean sw_xml_read_version (const xmlNode  *node,
                              int             ours,
                              GPtrArray      *extras,
                              GError        **error);
char *sw_xml_dup_paragraph (const xmlNode *node);
gboolean sw_xml_is_plain (const xmlNode *node);
gboolean sw_xml_set_missing (GError        **error,
                             const xmlNode  *node,
                             const char     *name);

void sw_xml_write_term (SwXmlWriter *writer,
                        const char  *name,
                        GType        type,
                        int          value);
void sw_xml_write_set (SwXmlWriter *writer,
                       const char  *name,
                       GType        type,
                       SwSet        set);
void sw_xml_write_load (SwXmlWriter *writer,
                        const char  *name,
                        SwLoad       load);
void sw_xml_write_string (SwXmlWriter *writer,
                          const char  *name,
                          const char  *value);
void sw_xml_write_date (SwXmlWriter *writer,
                        const char  *name,
                        const char  *date);

void sw_xml_write_version (SwXmlWriter        *writer,
                           int                 ours,
                           const char * const *extras);

gboolean sw_is_id (const char *id,
                   const char *allowed);
gboolean sw_is_date (const char *text);
gboolean sw_is_language (const char *tag);

#define SW_ID_EXERCISE "abcdefghijklmnopqrstuvwxyz0123456789-"
#define SW_ID_ANY "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"

G_END_DECLS
