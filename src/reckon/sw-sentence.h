/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-readability-scale.h"

G_BEGIN_DECLS

char *sw_sentence_take (const char              **text,
                        const SwReadabilityScale *scale,
                        SwReadability            *counts);

G_END_DECLS
