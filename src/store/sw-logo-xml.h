/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-extras.h"
#include "sw-logo.h"

G_BEGIN_DECLS

SwLogo *sw_logo_xml_read (xmlNode    *node,
                          GPtrArray  *extras,
                          GError    **error);
void sw_logo_xml_write (const SwLogo       *logo,
                        const char * const *extras,
                        SwXmlWriter        *writer);

G_END_DECLS
