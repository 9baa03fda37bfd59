/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-programme.h"

G_BEGIN_DECLS

char *sw_record_text (SwProgramme *programme,
                      const char  *date);

G_END_DECLS
