/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"
#include "sw-pictures.h"

G_BEGIN_DECLS

/**
 * SwDoseForm:
 *
 * One exercise item: its figure, the dose as a line and as fields, what speaks against it, its note.
 */
#define SW_TYPE_DOSE_FORM (sw_dose_form_get_type ())
G_DECLARE_FINAL_TYPE (SwDoseForm, sw_dose_form, SW, DOSE_FORM, GtkWidget)

void sw_dose_form_set_pictures (SwDoseForm *self,
                                SwPictures *pictures);
void sw_dose_form_set_item (SwDoseForm *self,
                            SwDocument *document,
                            SwItem     *item);
void sw_dose_form_refresh (SwDoseForm *self);

G_END_DECLS
