/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

char *sw_data_path (const char *first,
                    ...) G_GNUC_NULL_TERMINATED;

G_END_DECLS
