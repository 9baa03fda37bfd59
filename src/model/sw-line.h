/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For the model's own files: taking words and numbers from a line that was typed. */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

char *sw_line_simplify (const char *line);
void sw_line_skip_spaces (const char **at);
gboolean sw_line_take_char (const char **at,
                            char         c);
gboolean sw_line_take_word (const char **at,
                            const char  *first,
                            ...) G_GNUC_NULL_TERMINATED;
gboolean sw_line_take_int (const char **at,
                           int         *value);
gboolean sw_line_take_decimal (const char **at,
                               double      *value);
int sw_line_take_time_unit (const char **at);
gboolean sw_line_take_seconds (const char **at,
                               int         *seconds);
gboolean sw_line_take_range (const char **at,
                             int         *low,
                             int         *high);

G_END_DECLS
