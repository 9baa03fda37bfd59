/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For the model's own files: taking the parts of a dose line, each whole or not at all. */
#pragma once

#include "sw-dose.h"

G_BEGIN_DECLS

gboolean sw_dose_words_take_cross (const char **at);
char sw_dose_words_take_per (const char **at);
SwBodySide sw_dose_words_take_body_side (const char **at);
gboolean sw_dose_words_take_load_unit (const char **at,
                                       SwLoadUnit  *unit);
gboolean sw_dose_words_take_tempo (const char **at,
                                   gboolean     compact,
                                   SwTempo     *tempo);
gboolean sw_dose_words_take_rating (const char **at,
                                    int         *rating);

G_END_DECLS
