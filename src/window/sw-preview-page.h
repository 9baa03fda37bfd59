/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-handout.h"

G_BEGIN_DECLS

/**
 * SwPreviewPage:
 *
 * One page of a handout on the screen, white in light and dark alike. It draws only while it is near the
 * part that is scrolled into view, and keeps what it drew until the page changes.
 * Signal "item-pressed" (string): the id of the item whose part of the page was clicked.
 */
#define SW_TYPE_PREVIEW_PAGE (sw_preview_page_get_type ())
G_DECLARE_FINAL_TYPE (SwPreviewPage, sw_preview_page, SW, PREVIEW_PAGE, GtkWidget)

GtkWidget *sw_preview_page_new (void);
void sw_preview_page_set_page (SwPreviewPage *self,
                               SwHandout     *handout,
                               int            page);
void sw_preview_page_set_width (SwPreviewPage *self,
                                int            width_px);
void sw_preview_page_set_near (SwPreviewPage *self,
                               gboolean       near_view);

G_END_DECLS
