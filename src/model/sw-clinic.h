/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-logo.h"

G_BEGIN_DECLS

/**
 * SwClinic:
 *
 * Who hands the programme over and whom to call. String properties, "" when not stated: "name",
 * "therapist", "phone", "email", "address", "emergency-number"; "logo" (SwLogo or NULL), "extras" (GStrv).
 */
#define SW_TYPE_CLINIC (sw_clinic_get_type ())
G_DECLARE_FINAL_TYPE (SwClinic, sw_clinic, SW, CLINIC, GObject)

SwClinic *sw_clinic_new (void);
SwClinic *sw_clinic_copy (SwClinic *self);
const char *sw_clinic_get_name (SwClinic *self);
const char *sw_clinic_get_therapist (SwClinic *self);
const char *sw_clinic_get_phone (SwClinic *self);
const char *sw_clinic_get_email (SwClinic *self);
const char *sw_clinic_get_address (SwClinic *self);
const char *sw_clinic_get_emergency_number (SwClinic *self);
const SwLogo *sw_clinic_get_logo (SwClinic *self);
const char * const *sw_clinic_get_extras (SwClinic *self);

G_END_DECLS
