/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-programme.h"

G_BEGIN_DECLS

GPtrArray *sw_feasibility_find_half (SwSession *session,
                                     SwClinic  *clinic);
SwItem *sw_feasibility_find_set (SwSession *session,
                                 SwClinic  *clinic,
                                 SwDose    *fewer);

G_END_DECLS
