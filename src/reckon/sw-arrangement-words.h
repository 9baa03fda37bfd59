/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-arrangement.h"

G_BEGIN_DECLS

char *sw_arrangement_describe (const SwArrangement *self);
char **sw_arrangement_dup_limits (SwSession *session,
                                  SwClinic  *clinic);

G_END_DECLS
