/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * SwWorkingLine:
 * @words: what is reckoned in this step, for the therapist
 * @figures: the figures it is reckoned from and what comes out, with their units
 * @source: (nullable): where the rule comes from
 */
typedef struct
{
  char *words;
  char *figures;
  char *source;
} SwWorkingLine;

/**
 * SwWorking:
 *
 * How a number was reckoned, step by step: what the window opens where the number stands, and what
 * sw_numbers_to_json() prints beside it.
 */
typedef struct _SwWorking SwWorking;

SwWorking *sw_working_new (void);
SwWorking *sw_working_ref (SwWorking *self);
void sw_working_unref (SwWorking *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwWorking, sw_working_unref)

void sw_working_add (SwWorking  *self,
                     const char *words,
                     const char *source,
                     const char *figures,
                     ...) G_GNUC_PRINTF (4, 5);
guint sw_working_get_n_lines (const SwWorking *self);
const SwWorkingLine *sw_working_get_line (const SwWorking *self,
                                          guint            number);

G_END_DECLS
