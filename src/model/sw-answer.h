/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib-object.h>

G_BEGIN_DECLS

/**
 * SwAnswer:
 *
 * The clinician's reason for keeping what a finding speaks against. Immutable.
 */
#define SW_TYPE_ANSWER (sw_answer_get_type ())
G_DECLARE_FINAL_TYPE (SwAnswer, sw_answer, SW, ANSWER, GObject)

SwAnswer *sw_answer_new (const char         *finding,
                         const char         *reason,
                         const char         *date,
                         const char         *by,
                         const char * const *extras);
const char *sw_answer_get_finding (SwAnswer *self);
const char *sw_answer_get_reason (SwAnswer *self);
const char *sw_answer_get_date (SwAnswer *self);
const char *sw_answer_get_by (SwAnswer *self);
const char * const *sw_answer_get_extras (SwAnswer *self);

G_END_DECLS
