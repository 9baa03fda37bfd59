/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-exercise.h"

G_BEGIN_DECLS

void sw_check_exercise (SwExercise *exercise,
                        GBytes     *bytes,
                        const char *path,
                        const char *date,
                        GPtrArray  *problems);

G_END_DECLS
