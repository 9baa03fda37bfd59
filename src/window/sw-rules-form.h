/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwRulesForm:
 *
 * The rules of progress in words, with the numbers in them to change.
 */
#define SW_TYPE_RULES_FORM (sw_rules_form_get_type ())
G_DECLARE_FINAL_TYPE (SwRulesForm, sw_rules_form, SW, RULES_FORM, GtkWidget)

void sw_rules_form_set_document (SwRulesForm *self,
                                 SwDocument  *document);

G_END_DECLS
