/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-terms.h"

G_BEGIN_DECLS

#define SW_MEASUREMENT_MOST_REPETITIONS 100

/**
 * SwMeasurement:
 *
 * A dated test value for one side or both. Properties: "date" (string, ISO 8601 day), "test" (string),
 * "measure" (SwMeasure), "repetitions" (int 0..100: how often the load was moved until no more was possible; 0 for
 * one greatest effort and where it means nothing), "better" (SwBetter), "left", "right", "both" (double; NaN when not taken), "extras" (GStrv).
 */
#define SW_TYPE_MEASUREMENT (sw_measurement_get_type ())
G_DECLARE_FINAL_TYPE (SwMeasurement, sw_measurement, SW, MEASUREMENT, GObject)

SwMeasurement *sw_measurement_new (const char *date,
                                   const char *test,
                                   SwMeasure   measure);
SwMeasurement *sw_measurement_copy (SwMeasurement *self);
const char *sw_measurement_get_date (SwMeasurement *self);
const char *sw_measurement_get_test (SwMeasurement *self);
SwMeasure sw_measurement_get_measure (SwMeasurement *self);
int sw_measurement_get_repetitions (SwMeasurement *self);
SwBetter sw_measurement_get_better (SwMeasurement *self);
double sw_measurement_get_left (SwMeasurement *self);
double sw_measurement_get_right (SwMeasurement *self);
double sw_measurement_get_both (SwMeasurement *self);
const char * const *sw_measurement_get_extras (SwMeasurement *self);

G_END_DECLS
