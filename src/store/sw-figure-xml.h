/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-figure-spec.h"
#include "sw-xml-writer.h"
#include "sw-xml.h"

G_BEGIN_DECLS

SwFigureSpec *sw_figure_xml_read (const xmlNode  *node,
                                  GError        **error);
void sw_figure_xml_write (SwFigureSpec *spec,
                          SwXmlWriter  *writer);

G_END_DECLS
