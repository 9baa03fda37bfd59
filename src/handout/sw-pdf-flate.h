/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

GBytes *sw_pdf_inflate (const char  *data,
                        gsize        length,
                        GError     **error);
GBytes *sw_pdf_deflate (const char *data,
                        gsize       length);

G_END_DECLS
