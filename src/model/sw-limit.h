/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-terms.h"

G_BEGIN_DECLS

/**
 * SwLimit:
 *
 * What a surgeon or clinician has set for the client; nothing of it is ever assumed. Properties: "kind" (SwLimitKind);
 * "side" (SwBodySide; none: both); for a load "region" (SwRegion) and "kg" (double); for a range "movement" (SwMovement),
 * "from-deg" and "to-deg" (double); for weight-bearing "bearing" (SwBearing) and, where part of the weight is allowed, "kg";
 * for an operation "date" (string, ISO 8601 day), "name" (string) and "precaution" (int: the SwPrecaution it belongs to, -1
 * for none of them); "note" (string: who set it, and where that stands); "extras" (GStrv). A number that is not stated is
 * NaN.
 */
#define SW_TYPE_LIMIT (sw_limit_get_type ())
G_DECLARE_FINAL_TYPE (SwLimit, sw_limit, SW, LIMIT, GObject)

SwLimit *sw_limit_new (SwLimitKind kind);
SwLimit *sw_limit_copy (SwLimit *self);
SwLimitKind sw_limit_get_kind (SwLimit *self);
SwBodySide sw_limit_get_side (SwLimit *self);
SwRegion sw_limit_get_region (SwLimit *self);
SwMovement sw_limit_get_movement (SwLimit *self);
SwBearing sw_limit_get_bearing (SwLimit *self);
double sw_limit_get_kg (SwLimit *self);
double sw_limit_get_from_deg (SwLimit *self);
double sw_limit_get_to_deg (SwLimit *self);
const char *sw_limit_get_date (SwLimit *self);
const char *sw_limit_get_name (SwLimit *self);
const char *sw_limit_get_note (SwLimit *self);
int sw_limit_get_precaution (SwLimit *self);
const char * const *sw_limit_get_extras (SwLimit *self);
gboolean sw_movement_is_sided (SwMovement movement);
gboolean sw_movement_goes_to_sides (SwMovement movement);

G_END_DECLS
