/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwPlaceFields:
 *
 * What arranging the session has to keep to for one exercise or circuit: its place, or another that comes before it.
 */
#define SW_TYPE_PLACE_FIELDS (sw_place_fields_get_type ())
G_DECLARE_FINAL_TYPE (SwPlaceFields, sw_place_fields, SW, PLACE_FIELDS, GtkWidget)

void sw_place_fields_show (SwPlaceFields *self,
                           SwDocument    *document,
                           SwItem        *item);

G_END_DECLS
