/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-exercise.h"

G_BEGIN_DECLS

const char *sw_review_tag (const SwExerciseFacts *facts);
char *sw_review_sentence (const SwExerciseFacts *facts);

G_END_DECLS
