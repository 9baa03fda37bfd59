/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-dose.h"

G_BEGIN_DECLS

GArray *sw_loads_from_text (const char *text,
                            SwLoadUnit  unit);
char *sw_loads_to_text (GArray *loads);
char *sw_load_to_text (SwLoad load);
SwLoad sw_load_in_unit (SwLoad     load,
                        SwLoadUnit unit);
gboolean sw_load_get_at_most (GArray *loads,
                              double  most_kg,
                              SwLoad *load);

G_END_DECLS
