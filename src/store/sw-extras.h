/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-xml-writer.h"
#include "sw-xml.h"

G_BEGIN_DECLS

GPtrArray *sw_extras_new (void);
void sw_extras_add_attributes (GPtrArray          *extras,
                               const char         *path,
                               xmlNode            *node,
                               const char * const *known);
void sw_extras_add_node (GPtrArray     *extras,
                         const char    *path,
                         const xmlNode *node);
void sw_extras_add_children (GPtrArray  *extras,
                             const char *path,
                             xmlNode    *node);
void sw_extras_add_outside (GPtrArray *extras,
                            xmlNode   *root);
const char * const *sw_extras_end (GPtrArray *extras);

void sw_extras_write_attributes (const char * const *extras,
                                 const char         *path,
                                 SwXmlWriter        *writer);
void sw_extras_write_nodes (const char * const *extras,
                            const char         *path,
                            SwXmlWriter        *writer);
void sw_extras_write_leaf (const char * const *extras,
                           const char         *path,
                           const char         *name,
                           const char         *text,
                           SwXmlWriter        *writer);
gboolean sw_extras_has (const char * const *extras,
                        const char         *path);

G_END_DECLS
