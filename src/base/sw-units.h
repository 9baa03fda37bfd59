/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Exact by definition: the international avoirdupois pound (1959 agreement) and the inch. */
#define SW_KG_PER_LB 0.45359237
#define SW_MM_PER_IN 25.4
#define SW_PT_PER_IN 72.0

/* Standard gravity, exact by definition (3rd CGPM, 1901). */
#define SW_STANDARD_GRAVITY_M_PER_S2 9.80665

double sw_kg_from_lb (double lb);
double sw_lb_from_kg (double kg);
double sw_pt_from_mm (double mm);

char *sw_number_to_string (double value,
                           int    max_decimals);

G_END_DECLS
