/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-dose.h"

G_BEGIN_DECLS

char *sw_dose_hint_load (SwLoad load);
char *sw_dose_hint_load_limit (SwLoad limit);
char *sw_dose_hint_tempo (const SwTempo *tempo);
char *sw_dose_hint_effort (int effort_limit);
const char *sw_dose_hint_pain (int pain_limit);

G_END_DECLS
