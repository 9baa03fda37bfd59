/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "sw-exercise.h"

G_BEGIN_DECLS

/**
 * SwCatalogue:
 *
 * All exercises a therapist can choose from: a GListModel of SwExercise, sorted by id, and a quick way from
 * an id to its exercise. Filled once by the store; emits items-changed when exercises are added.
 */
#define SW_TYPE_CATALOGUE (sw_catalogue_get_type ())
G_DECLARE_FINAL_TYPE (SwCatalogue, sw_catalogue, SW, CATALOGUE, GObject)

SwCatalogue *sw_catalogue_new (void);
void sw_catalogue_add (SwCatalogue *self,
                       GPtrArray   *exercises);
SwExercise *sw_catalogue_lookup (SwCatalogue *self,
                                 const char  *id);

G_END_DECLS
