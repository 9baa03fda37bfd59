/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * SwNumber:
 *
 * A spin button whose value counts while it is being typed, not only at Enter. Text that is no number of the
 * range is kept while the focus is here, changes nothing, and is complained of; when the focus leaves, the
 * last good value comes back. The mouse wheel scrolls the pane and never turns a number.
 *
 * Properties, construct only: "lower", "upper", "step" (double), "digits" (int, most decimals shown),
 * "none" (double; a value that stands for "not stated" and is shown as empty; unset for no such value),
 * "first" (double; where a step from "none" leads; unset for "lower").
 * "complaint" (string, nullable, read only): why the text does not count.
 * Signal "changed": the therapist gave another value; not emitted by sw_number_set_value().
 */
#define SW_TYPE_NUMBER (sw_number_get_type ())
G_DECLARE_FINAL_TYPE (SwNumber, sw_number, SW, NUMBER, GtkWidget)

double sw_number_get_value (SwNumber *self);
void sw_number_set_value (SwNumber *self,
                          double    value);
void sw_number_set_upper (SwNumber *self,
                          double    upper);
const char *sw_number_get_complaint (SwNumber *self);
void sw_number_set_name (SwNumber   *self,
                         const char *name,
                         const char *description);

G_END_DECLS
