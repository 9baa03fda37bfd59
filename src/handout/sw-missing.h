/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-pages.h"

G_BEGIN_DECLS

char *sw_missing_find (const SwPages     *pages,
                       SwComposer        *composer,
                       const SwFurniture *furniture);

G_END_DECLS
