/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-span.h"
#include "sw-terms.h"

G_BEGIN_DECLS

const char *sw_label (GType type,
                      int   value);
char *sw_label_set (GType type,
                    SwSet set);
char *sw_label_capitalised (const char *words);
const char *sw_label_day_short (SwDay day);
char *sw_label_duration (double low_s,
                         double high_s);
char *sw_label_session (SwSpan total);
char *sw_label_takes (SwSpan span);

G_END_DECLS
