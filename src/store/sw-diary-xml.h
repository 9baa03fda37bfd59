/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-diary-entry.h"
#include "sw-xml-writer.h"
#include "sw-xml.h"

G_BEGIN_DECLS

SwDiaryEntry *sw_diary_xml_read (xmlNode  *node,
                                 GError  **error);
void sw_diary_xml_write (SwDiaryEntry *entry,
                         SwXmlWriter  *writer);

G_END_DECLS
