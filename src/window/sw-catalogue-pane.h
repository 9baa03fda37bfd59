/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"
#include "sw-pictures.h"

G_BEGIN_DECLS

/**
 * SwCataloguePane:
 *
 * The catalogue: search, filters, cards, details. Its action group "catalogue" has: "add" (at the end of
 * the fitting section), "play", "details" (boolean state), "menu", "show-easier", "show-harder",
 * "show-exercise" (id), "clear".
 */
#define SW_TYPE_CATALOGUE_PANE (sw_catalogue_pane_get_type ())
G_DECLARE_FINAL_TYPE (SwCataloguePane, sw_catalogue_pane, SW, CATALOGUE_PANE, GtkWidget)

void sw_catalogue_pane_set_document (SwCataloguePane *self,
                                     SwDocument      *document);
void sw_catalogue_pane_set_pictures (SwCataloguePane *self,
                                     SwPictures      *pictures);
void sw_catalogue_pane_focus_search (SwCataloguePane *self);
SwExercise *sw_catalogue_pane_get_exercise (SwCataloguePane *self);

G_END_DECLS
