/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-pages.h"
#include "sw-programme.h"

G_BEGIN_DECLS

gboolean sw_arrange (SwPages      *pages,
                     SwComposer   *composer,
                     SwProgramme  *programme,
                     GError      **error);

G_END_DECLS
