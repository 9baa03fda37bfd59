/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-logo.h"

G_BEGIN_DECLS

/**
 * SwLogoField:
 *
 * The clinic's logo as it is, chosen from a file or taken away; says why a file cannot be used.
 * Signal "changed": the therapist chose; not emitted by sw_logo_field_set_logo().
 */
#define SW_TYPE_LOGO_FIELD (sw_logo_field_get_type ())
G_DECLARE_FINAL_TYPE (SwLogoField, sw_logo_field, SW, LOGO_FIELD, GtkWidget)

const SwLogo *sw_logo_field_get_logo (SwLogoField *self);
void sw_logo_field_set_logo (SwLogoField  *self,
                             const SwLogo *logo);

G_END_DECLS
