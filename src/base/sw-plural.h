/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

const char * const *sw_plural_forms (const char *rule);
const char *sw_plural_form (const char *rule,
                            int         n);
const char *sw_plural_range_form (const char *rule,
                                  int         low,
                                  int         high);

G_END_DECLS
