/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

void sw_check_folder (const char *folder,
                      GPtrArray  *exercises,
                      GPtrArray  *problems);

G_END_DECLS
