/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"
#include "sw-pictures.h"

G_BEGIN_DECLS

/**
 * SwSwapWindow:
 *
 * The exercises that could take the place of a document's chosen item, best first, each with the reason; the one that is
 * chosen is put in its place as one step of undo.
 */
#define SW_TYPE_SWAP_WINDOW (sw_swap_window_get_type ())
G_DECLARE_FINAL_TYPE (SwSwapWindow, sw_swap_window, SW, SWAP_WINDOW, GtkWindow)

GtkWidget *sw_swap_window_new (GtkWindow  *parent,
                               SwDocument *document,
                               SwItem     *item,
                               SwPictures *pictures);

G_END_DECLS
