/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"
#include "sw-pictures.h"

G_BEGIN_DECLS

/**
 * SwSessionCanvas:
 *
 * The session a therapist is putting together: its title, days and time, and below them its sections with
 * their items in the order they are done.
 */
#define SW_TYPE_SESSION_CANVAS (sw_session_canvas_get_type ())
G_DECLARE_FINAL_TYPE (SwSessionCanvas, sw_session_canvas, SW, SESSION_CANVAS, GtkWidget)

void sw_session_canvas_set_document (SwSessionCanvas *self,
                                     SwDocument      *document);
void sw_session_canvas_set_pictures (SwSessionCanvas *self,
                                     SwPictures      *pictures);

G_END_DECLS
