/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-extras.h"
#include "sw-dose.h"

G_BEGIN_DECLS

gboolean sw_dose_read (xmlNode    *node,
                       SwDose     *dose,
                       GPtrArray  *extras,
                       GError    **error);
void sw_dose_write (const SwDose       *dose,
                    const char * const *extras,
                    SwXmlWriter        *writer);

G_END_DECLS
