/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-catalogue.h"

G_BEGIN_DECLS

/* All may be called from a worker thread: they touch no object but those they return. */
GPtrArray *sw_catalogue_folder_read (const char    *folder,
                                     GPtrArray    **problems,
                                     GCancellable  *cancellable,
                                     GError       **error);
SwCatalogue *sw_catalogue_load_shipped (GPtrArray **problems,
                                        GError    **error);
SwExercise *sw_catalogue_load_exercise (const char  *path_or_id,
                                        GError     **error);

G_END_DECLS
