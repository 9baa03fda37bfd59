/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwMeasurementList:
 *
 * The client's measurements: test, date and the values of both sides, to add, change and remove.
 */
#define SW_TYPE_MEASUREMENT_LIST (sw_measurement_list_get_type ())
G_DECLARE_FINAL_TYPE (SwMeasurementList, sw_measurement_list, SW, MEASUREMENT_LIST, GtkWidget)

void sw_measurement_list_set_document (SwMeasurementList *self,
                                       SwDocument        *document);
void sw_measurement_list_refresh (SwMeasurementList *self);

G_END_DECLS
