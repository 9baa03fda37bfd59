/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwLimitList:
 *
 * What surgeons and clinicians have set for the client, to add, change and remove.
 */
#define SW_TYPE_LIMIT_LIST (sw_limit_list_get_type ())
G_DECLARE_FINAL_TYPE (SwLimitList, sw_limit_list, SW, LIMIT_LIST, GtkWidget)

void sw_limit_list_set_document (SwLimitList *self,
                                 SwDocument  *document);
void sw_limit_list_refresh (SwLimitList *self);

G_END_DECLS
