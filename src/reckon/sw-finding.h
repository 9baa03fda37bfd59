/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-catalogue.h"
#include "sw-programme.h"
#include "sw-readability-report.h"
#include "sw-reckon-enum-types.h"

G_BEGIN_DECLS

/**
 * SwFindingLevel:
 * @SW_FINDING_TELL: worth knowing
 * @SW_FINDING_ASK: worth a second look before the handout goes out
 * @SW_FINDING_STOP: must be answered, by a change or a reason, before a handout is issued
 */
typedef enum
{
  SW_FINDING_TELL,
  SW_FINDING_ASK,
  SW_FINDING_STOP,
} SwFindingLevel;

/**
 * SwFix:
 * What would answer the finding; the window turns it into a button.
 */
typedef enum
{
  SW_FIX_NONE,
  SW_FIX_SHOW_ITEM,
  SW_FIX_REMOVE_ITEM,
  SW_FIX_SWAP_EXERCISE,
  SW_FIX_SET_DOSE,
  SW_FIX_SPLIT_SESSION,
  SW_FIX_ADD_EQUIPMENT,
  SW_FIX_SHOW_CLIENT,
} SwFix;

/**
 * SwFinding:
 * @level: how severe
 * @key: names this finding within its programme, the same on every check, so that an answer sticks to it
 * @item: (nullable): what it is about
 * @text: what was found, one sentence for the therapist
 * @why: why it matters and the source of the rule
 * @details: (nullable): more of what was found, a line each
 * @fix: what would answer it
 * @fix_label: what that would do, for a button, or NULL with %SW_FIX_NONE
 * @fix_exercise: (nullable): for %SW_FIX_SWAP_EXERCISE; with %SW_FIX_ADD_EQUIPMENT one that would do without
 * @fix_dose: for %SW_FIX_SET_DOSE
 * @fix_item: (nullable): for %SW_FIX_SET_DOSE: whose dose, where the finding is not about that item alone
 * @fix_session: (nullable): for %SW_FIX_SPLIT_SESSION
 * @fix_moving: (nullable) (element-type SwItem): for %SW_FIX_SPLIT_SESSION: what the second session gets
 * @fix_equipment: for %SW_FIX_ADD_EQUIPMENT
 * @answer: (nullable): the reason stored for keeping it
 *
 * One result of checking.
 */
typedef struct
{
  SwFindingLevel level;
  char *key;
  SwItem *item;
  char *text;
  char *why;
  GStrv details;
  SwFix fix;
  char *fix_label;
  SwExercise *fix_exercise;
  SwDose fix_dose;
  SwItem *fix_item;
  SwSession *fix_session;
  GPtrArray *fix_moving;
  SwSet fix_equipment;
  SwAnswer *answer;
} SwFinding;

void sw_finding_free (SwFinding *finding);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwFinding, sw_finding_free)

GPtrArray *sw_findings_collect_with (SwProgramme               *programme,
                                     SwCatalogue               *catalogue,
                                     const char                *today,
                                     const SwReadabilityReport *reading);
GPtrArray *sw_findings_collect (SwProgramme *programme,
                                SwCatalogue *catalogue,
                                const char  *today);
guint sw_findings_count_open (GPtrArray      *findings,
                              SwFindingLevel  level);

G_END_DECLS
