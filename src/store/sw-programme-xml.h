/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-programme.h"
#include "sw-xml-writer.h"
#include "sw-xml.h"

G_BEGIN_DECLS

#define SW_PROGRAMME_NS "urn:setwright:programme"
#define SW_PROGRAMME_VERSION 1

/* Beyond all that can be measured on a person, in any of the measures. */
#define SW_PROGRAMME_MAX_MEASURED 100000.0

SwProgramme *sw_programme_from_bytes (GBytes      *bytes,
                                      const char  *name,
                                      GError     **error);
GBytes *sw_programme_to_bytes (SwProgramme *programme);
SwProgramme *sw_programme_read (xmlNode  *node,
                                GError  **error);
void sw_programme_write (SwProgramme *programme,
                         SwXmlWriter *writer);
long sw_programme_find_line (GBytes     *bytes,
                             const char *item_id);

G_END_DECLS
