/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-phrases.h"
#include "sw-programme.h"

G_BEGIN_DECLS

char *sw_note_words (SwPhrases   *phrases,
                     SwProgramme *programme,
                     SwItem      *item);

G_END_DECLS
