/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwPreview:
 *
 * The handout's pages beside the session, made anew in a worker after each edit; while it is not shown it
 * does nothing. Its action group "preview" has: "plan", "zoom-in", "zoom-out",
 * "zoom-fit".
 */
#define SW_TYPE_PREVIEW (sw_preview_get_type ())
G_DECLARE_FINAL_TYPE (SwPreview, sw_preview, SW, PREVIEW, GtkWidget)

void sw_preview_set_document (SwPreview  *self,
                              SwDocument *document);

G_END_DECLS
