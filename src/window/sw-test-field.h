/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-document.h"

G_BEGIN_DECLS

/**
 * SwTestField:
 *
 * Which test counts for an exercise item: how its sides compare there, and the way from a test of strength to the load to
 * begin with.
 */
#define SW_TYPE_TEST_FIELD (sw_test_field_get_type ())
G_DECLARE_FINAL_TYPE (SwTestField, sw_test_field, SW, TEST_FIELD, GtkWidget)

void sw_test_field_show (SwTestField *self,
                         SwDocument  *document,
                         SwItem      *item);

G_END_DECLS
