/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-catalogue.h"
#include "sw-programme.h"

G_BEGIN_DECLS

char *sw_numbers_to_json (SwProgramme *programme,
                          SwCatalogue *catalogue,
                          const char  *today);

G_END_DECLS
