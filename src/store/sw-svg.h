/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

GBytes *sw_svg_clean (GBytes  *bytes,
                      GError **error);

G_END_DECLS
