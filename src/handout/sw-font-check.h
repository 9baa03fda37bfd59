/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <pango/pango.h>

#include "sw-phrases.h"
#include "sw-style.h"

G_BEGIN_DECLS

gboolean sw_font_is_lossy (PangoFont *font);
gboolean sw_font_check (PangoContext   *context,
                        const SwStyle  *style,
                        SwPhrases      *phrases,
                        GError        **error);

G_END_DECLS
