/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-terms.h"

G_BEGIN_DECLS

const char *sw_region_get_name (SwRegion region);

G_END_DECLS
