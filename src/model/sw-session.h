/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-section.h"

G_BEGIN_DECLS

/**
 * SwSession:
 *
 * What is done in one sitting. Properties: "title" (string), "days" (uint64: SwSet of SwDay),
 * "sections" (GListStore of SwSection, read only), "extras" (GStrv).
 */
#define SW_TYPE_SESSION (sw_session_get_type ())
G_DECLARE_FINAL_TYPE (SwSession, sw_session, SW, SESSION, GObject)

SwSession *sw_session_new (const char *title,
                           SwSet       days);
SwSession *sw_session_new_standard (const char *title);
SwSession *sw_session_copy (SwSession *self,
                            gboolean   new_ids);
const char *sw_session_get_title (SwSession *self);
SwSet sw_session_get_days (SwSession *self);
int sw_session_get_n_days (SwSession *self);
GListStore *sw_session_get_sections (SwSession *self);
GPtrArray *sw_session_dup_items (SwSession *self);
const char * const *sw_session_get_extras (SwSession *self);

G_END_DECLS
