/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-terms.h"

G_BEGIN_DECLS

/**
 * SwClient:
 *
 * Who the programme is for. Properties: "name" (string), "birth-year" (int 1900..2100 or 0 unknown),
 * "dominant-side" (SwBodySide), "goals" (string, lines), "precautions" (uint64: SwSet of SwPrecaution),
 * "other-precautions" (string), "equipment" (uint64: SwSet of SwEquipment at home), "avoided-positions"
 * (uint64: SwSet of SwPosition the client cannot get into alone), "loads" (string, as sw_loads_from_text() reads it),
 * "load-limit" (string, likewise one load), "minutes" (int 0..240 a session; 0 not stated), "units" (SwUnits), "paper"
 * (SwPaper), "text-points" (double 12..28),
 * "language" (string, BCP 47), "extras" (GStrv).
 */
#define SW_TYPE_CLIENT (sw_client_get_type ())
G_DECLARE_FINAL_TYPE (SwClient, sw_client, SW, CLIENT, GObject)

SwClient *sw_client_new (void);
SwClient *sw_client_copy (SwClient *self);
const char *sw_client_get_name (SwClient *self);
int sw_client_get_birth_year (SwClient *self);
SwBodySide sw_client_get_dominant_side (SwClient *self);
const char *sw_client_get_goals (SwClient *self);
SwSet sw_client_get_precautions (SwClient *self);
const char *sw_client_get_other_precautions (SwClient *self);
SwSet sw_client_get_equipment (SwClient *self);
SwSet sw_client_get_avoided_positions (SwClient *self);
const char *sw_client_get_loads (SwClient *self);
const char *sw_client_get_load_limit (SwClient *self);
int sw_client_get_minutes (SwClient *self);
SwUnits sw_client_get_units (SwClient *self);
SwPaper sw_client_get_paper (SwClient *self);
double sw_client_get_text_points (SwClient *self);
const char *sw_client_get_language (SwClient *self);
const char * const *sw_client_get_extras (SwClient *self);

G_END_DECLS
