/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-phrases.h"
#include "sw-terms.h"

G_BEGIN_DECLS

char **sw_care_words (SwPhrases *phrases,
                      SwSet      precautions,
                      SwSet      cautions);
char **sw_care_general_words (SwPhrases *phrases,
                              SwSet      precautions);
gboolean sw_care_covers (SwPrecaution precaution,
                         SwCaution    caution);

G_END_DECLS
