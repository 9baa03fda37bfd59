/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For the model's own files: setting a field and learning whether that changed anything. */
#pragma once

#include <glib-object.h>

G_BEGIN_DECLS

gboolean sw_field_set_string (char       **field,
                              const char  *value);
gboolean sw_field_set_strv (char               ***field,
                            const char * const   *value);
gboolean sw_field_set_int (int *field,
                           int  value);

G_END_DECLS
