/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Between the files that write what was reckoned as JSON. */
#pragma once

#include <json-glib/json-glib.h>

#include "sw-catalogue.h"
#include "sw-programme.h"
#include "sw-working.h"

G_BEGIN_DECLS

static inline void
add_string (JsonBuilder *builder,
            const char  *name,
            const char  *value)
{
  json_builder_set_member_name (builder, name);
  json_builder_add_string_value (builder, value);
}

static inline void
add_int (JsonBuilder *builder,
         const char  *name,
         gint64       value)
{
  json_builder_set_member_name (builder, name);
  json_builder_add_int_value (builder, value);
}

static inline void
add_double (JsonBuilder *builder,
            const char  *name,
            double       value)
{
  json_builder_set_member_name (builder, name);
  json_builder_add_double_value (builder, value);
}

static inline void
add_working (JsonBuilder *builder,
             SwWorking   *working)
{
  json_builder_set_member_name (builder, "working");
  json_builder_begin_array (builder);
  for (guint i = 0; i < sw_working_get_n_lines (working); i++)
    {
      const SwWorkingLine *line = sw_working_get_line (working, i);

      json_builder_begin_object (builder);
      add_string (builder, "words", line->words);
      add_string (builder, "figures", line->figures);
      if (line->source != NULL)
        add_string (builder, "source", line->source);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

/* sw-numbers-progress.c */
void sw_numbers_add_progress (JsonBuilder *builder,
                              SwProgramme *programme,
                              SwCatalogue *catalogue);

G_END_DECLS
