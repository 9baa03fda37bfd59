/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

GPtrArray *sw_schema_check (GBytes      *bytes,
                            const char  *file,
                            const char  *schema,
                            GError     **error);

G_END_DECLS
