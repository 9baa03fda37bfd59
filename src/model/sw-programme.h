/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-answer.h"
#include "sw-client.h"
#include "sw-clinic.h"
#include "sw-diary-entry.h"
#include "sw-issue.h"
#include "sw-limit.h"
#include "sw-measurement.h"
#include "sw-page-plan.h"
#include "sw-progression.h"
#include "sw-session.h"

G_BEGIN_DECLS

/**
 * SwProgramme:
 *
 * The document of one client. Properties: "id" (string, construct only, a random UUID unless given),
 * "title" (string), "company" (SwCompany), "progress" (string: the therapist's rule for making it harder), "extras"
 * (GStrv). It owns one client, one clinic, one page plan, one progression and the lists below. The
 * exercises it uses are not listed: each exercise item holds its snapshot, and
 * sw_programme_dup_exercises() collects them.
 */
#define SW_TYPE_PROGRAMME (sw_programme_get_type ())
G_DECLARE_FINAL_TYPE (SwProgramme, sw_programme, SW, PROGRAMME, GObject)

SwProgramme *sw_programme_new (const char *id);
SwProgramme *sw_programme_new_standard (void);
SwProgramme *sw_programme_copy (SwProgramme *self);
SwProgramme *sw_programme_new_from (SwProgramme *self);
char *sw_programme_dup_code (SwProgramme *self);
const char *sw_programme_get_id (SwProgramme *self);
const char *sw_programme_get_title (SwProgramme *self);
SwCompany sw_programme_get_company (SwProgramme *self);
const char *sw_programme_get_progress (SwProgramme *self);
SwClient *sw_programme_get_client (SwProgramme *self);
SwClinic *sw_programme_get_clinic (SwProgramme *self);
SwPagePlan *sw_programme_get_page_plan (SwProgramme *self);
GListStore *sw_programme_get_sessions (SwProgramme *self);
SwProgression *sw_programme_get_progression (SwProgramme *self);
GListStore *sw_programme_get_limits (SwProgramme *self);
GListStore *sw_programme_get_measurements (SwProgramme *self);
GListStore *sw_programme_get_diary (SwProgramme *self);
GListStore *sw_programme_get_answers (SwProgramme *self);
GListStore *sw_programme_get_issues (SwProgramme *self);
const char * const *sw_programme_get_extras (SwProgramme *self);

GPtrArray *sw_programme_dup_exercises (SwProgramme *self);
GPtrArray *sw_programme_dup_items (SwProgramme *self);
SwExercise *sw_programme_own_snapshot (SwProgramme *self,
                                       SwExercise  *exercise);
GListStore *sw_programme_find_list (SwProgramme *self,
                                    gpointer     object,
                                    guint       *position);

G_END_DECLS
