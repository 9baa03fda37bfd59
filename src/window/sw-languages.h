/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-catalogue.h"

G_BEGIN_DECLS

GStrv sw_languages_collect (SwCatalogue *catalogue,
                            const char  *also);
const char *sw_languages_get_name (const char *tag);
char *sw_languages_dup_label (SwCatalogue *catalogue,
                              const char  *tag);

G_END_DECLS
