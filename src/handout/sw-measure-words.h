/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-phrases.h"
#include "sw-terms.h"

G_BEGIN_DECLS

const char *sw_measure_unit_words (SwPhrases *phrases,
                                   SwMeasure  measure);
char *sw_measure_words (SwPhrases *phrases,
                        double     value,
                        SwMeasure  measure);

G_END_DECLS
