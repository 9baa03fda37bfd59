/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-progression.h"
#include "sw-xml-writer.h"
#include "sw-xml.h"

G_BEGIN_DECLS

gboolean sw_progression_xml_read (xmlNode        *node,
                                  SwProgression  *progression,
                                  GError        **error);
void sw_progression_xml_write (SwProgression *progression,
                               SwXmlWriter   *writer);

G_END_DECLS
