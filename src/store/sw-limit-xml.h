/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-limit.h"
#include "sw-xml-writer.h"
#include "sw-xml.h"

G_BEGIN_DECLS

#define SW_LIMIT_MAX_KG 500.0
#define SW_LIMIT_MAX_DEG 180.0

SwLimit *sw_limit_read (xmlNode  *node,
                        GError  **error);
void sw_limit_write (SwLimit     *limit,
                     SwXmlWriter *writer);

G_END_DECLS
