/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-handout.h"

G_BEGIN_DECLS

void sw_pages_make_async (gpointer             source,
                          SwProgramme         *programme,
                          SwHandout           *shown,
                          GCancellable        *cancellable,
                          GAsyncReadyCallback  callback);
SwHandout *sw_pages_make_finish (GAsyncResult  *result,
                                 GError       **error);

G_END_DECLS
