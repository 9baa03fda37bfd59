/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib-object.h>

G_BEGIN_DECLS

/**
 * SwIssue:
 *
 * A handout that was given out. Immutable.
 */
#define SW_TYPE_ISSUE (sw_issue_get_type ())
G_DECLARE_FINAL_TYPE (SwIssue, sw_issue, SW, ISSUE, GObject)

SwIssue *sw_issue_new (const char         *date,
                       const char         *way,
                       const char         *hash,
                       const char         *doses,
                       const char * const *extras);
const char *sw_issue_get_date (SwIssue *self);
const char *sw_issue_get_way (SwIssue *self);
const char *sw_issue_get_hash (SwIssue *self);
const char *sw_issue_get_doses (SwIssue *self);
const char * const *sw_issue_get_extras (SwIssue *self);

G_END_DECLS
