/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-catalogue.h"
#include "sw-pictures.h"

G_BEGIN_DECLS

/**
 * SwApplication:
 *
 * The program: one catalogue and one cache of pictures for all windows, one window a programme.
 * Property: "catalogue" (SwCatalogue, NULL while it is being loaded).
 */
#define SW_TYPE_APPLICATION (sw_application_get_type ())
G_DECLARE_FINAL_TYPE (SwApplication, sw_application, SW, APPLICATION, GtkApplication)

SwApplication *sw_application_new (void);
void sw_application_load_catalogue (SwApplication *self);
SwCatalogue *sw_application_get_catalogue (SwApplication *self);
SwPictures *sw_application_get_pictures (SwApplication *self);

G_END_DECLS
