/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-clinic.h"
#include "sw-xml-writer.h"
#include "sw-xml.h"

G_BEGIN_DECLS

gboolean sw_transition_xml_read (xmlNode    *node,
                                 SwClinic   *clinic,
                                 GPtrArray  *extras,
                                 GError    **error);
void sw_transition_xml_write (SwClinic           *clinic,
                              const char * const *extras,
                              SwXmlWriter        *writer);

G_END_DECLS
