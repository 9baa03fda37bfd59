/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-logo.h"
#include "sw-terms.h"

G_BEGIN_DECLS

#define SW_CLINIC_MOST_TRANSITION_S 600

/* A difference between the sides of a tenth is what many programmes call alike (Kyritsis and others, Br J Sports Med
 * 2016;50:946-951); each clinic sets its own. */
#define SW_CLINIC_USUAL_ALIKE_PERCENT 10
#define SW_CLINIC_MOST_ALIKE_PERCENT 50

/**
 * SwClinic:
 *
 * Who hands the programme over and whom to call. String properties, "" when not stated: "name",
 * "therapist", "qualification" (what the therapist is by training), "phone", "email", "address", "emergency-number",
 * "bands";
 * "logo" (SwLogo or NULL), "extras" (GStrv).
 *
 * How long what lies between two exercises takes its clients, a range for each #SwTransition, int seconds 0..600:
 * "card-low-seconds", "card-high-seconds", "turn-low-seconds" and so on.
 *
 * How it reckons: "max-formula" (SwMaxFormula), "alike-percent" (int 1..50).
 */
#define SW_TYPE_CLINIC (sw_clinic_get_type ())
G_DECLARE_FINAL_TYPE (SwClinic, sw_clinic, SW, CLINIC, GObject)

SwClinic *sw_clinic_new (void);
SwClinic *sw_clinic_copy (SwClinic *self);
const char *sw_clinic_get_name (SwClinic *self);
const char *sw_clinic_get_therapist (SwClinic *self);
const char *sw_clinic_get_qualification (SwClinic *self);
const char *sw_clinic_get_phone (SwClinic *self);
const char *sw_clinic_get_email (SwClinic *self);
const char *sw_clinic_get_address (SwClinic *self);
const char *sw_clinic_get_emergency_number (SwClinic *self);
const char *sw_clinic_get_bands (SwClinic *self);
SwMaxFormula sw_clinic_get_max_formula (SwClinic *self);
int sw_clinic_get_alike_percent (SwClinic *self);
const SwLogo *sw_clinic_get_logo (SwClinic *self);
void sw_clinic_get_transition (SwClinic     *self,
                               SwTransition  transition,
                               int          *low_s,
                               int          *high_s);
const char *sw_clinic_get_transition_property (SwTransition transition,
                                               gboolean     high);
gboolean sw_clinic_has_usual_transitions (SwClinic *self);
const char * const *sw_clinic_get_extras (SwClinic *self);

G_END_DECLS
