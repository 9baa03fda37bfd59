/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "sw-exercise.h"
#include "sw-phrases.h"

G_BEGIN_DECLS

char **sw_care_limit_words (SwPhrases    *phrases,
                            GListModel   *limits,
                            SwExercise   *exercise,
                            const SwDose *dose,
                            SwUnits       units);

G_END_DECLS
