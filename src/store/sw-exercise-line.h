/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

long sw_exercise_find_line (GBytes     *bytes,
                            const char *element,
                            const char *content);
long sw_exercise_find_line_in_file (const char *path,
                                    const char *element,
                                    const char *content);

G_END_DECLS
