/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwMeasurementRow:
 *
 * One measurement with its fields. Signal "removed": the therapist wants it gone.
 */
#define SW_TYPE_MEASUREMENT_ROW (sw_measurement_row_get_type ())
G_DECLARE_FINAL_TYPE (SwMeasurementRow, sw_measurement_row, SW, MEASUREMENT_ROW, GtkWidget)

SwMeasurementRow *sw_measurement_row_new (SwDocument    *document,
                                          SwMeasurement *measurement);
SwMeasurement *sw_measurement_row_get_measurement (SwMeasurementRow *self);
void sw_measurement_row_refresh (SwMeasurementRow *self);

G_END_DECLS
