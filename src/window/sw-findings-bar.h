/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwFindingsBar:
 *
 * The line below the panes: what the programme adds up to, and what checking found. The findings open above
 * the line, without getting in the way of the work.
 */
#define SW_TYPE_FINDINGS_BAR (sw_findings_bar_get_type ())
G_DECLARE_FINAL_TYPE (SwFindingsBar, sw_findings_bar, SW, FINDINGS_BAR, GtkWidget)

void sw_findings_bar_set_document (SwFindingsBar *self,
                                   SwDocument    *document);
void sw_findings_bar_open (SwFindingsBar *self);
void sw_findings_bar_toggle (SwFindingsBar *self);

G_END_DECLS
