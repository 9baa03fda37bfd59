/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-terms.h"

G_BEGIN_DECLS

/* Where a number was not written down. */
#define SW_DIARY_NOT_STATED (-1)

/**
 * SwDiaryEntry:
 *
 * What the client reports of one item on one day. Properties:
 *
 * | name | type | meaning |
 * | --- | --- | --- |
 * | date | string | ISO 8601 day |
 * | item | string | id of the item |
 * | exercise | string | id of the exercise it held then |
 * | dose-line | string | the dose it asked for then, as sw_dose_to_line() writes it |
 * | sets | int -1..20 | sets that were done; 0: left out |
 * | repetitions | int -1..200 | in the last set |
 * | effort, pain-before, pain-during, pain-after | int -1..10 | on the scale from 0 to 10 |
 * | settled | SwSettled | whether pain was back to the usual by the next morning |
 * | control-lost | boolean | whether it could not be done the way it is shown |
 * | note | string | the client's or the therapist's words |
 * | extras | GStrv | unknown XML, kept |
 *
 * Numbers that were not written down are %SW_DIARY_NOT_STATED.
 */
#define SW_TYPE_DIARY_ENTRY (sw_diary_entry_get_type ())
G_DECLARE_FINAL_TYPE (SwDiaryEntry, sw_diary_entry, SW, DIARY_ENTRY, GObject)

SwDiaryEntry *sw_diary_entry_new (const char *date,
                                  const char *item,
                                  const char *exercise,
                                  const char *dose_line);
SwDiaryEntry *sw_diary_entry_copy (SwDiaryEntry *self);
const char *sw_diary_entry_get_date (SwDiaryEntry *self);
const char *sw_diary_entry_get_item (SwDiaryEntry *self);
const char *sw_diary_entry_get_exercise (SwDiaryEntry *self);
const char *sw_diary_entry_get_dose_line (SwDiaryEntry *self);
int sw_diary_entry_get_sets (SwDiaryEntry *self);
int sw_diary_entry_get_repetitions (SwDiaryEntry *self);
int sw_diary_entry_get_effort (SwDiaryEntry *self);
int sw_diary_entry_get_pain_before (SwDiaryEntry *self);
int sw_diary_entry_get_pain_during (SwDiaryEntry *self);
int sw_diary_entry_get_pain_after (SwDiaryEntry *self);
SwSettled sw_diary_entry_get_settled (SwDiaryEntry *self);
gboolean sw_diary_entry_get_control_lost (SwDiaryEntry *self);
const char *sw_diary_entry_get_note (SwDiaryEntry *self);
gboolean sw_diary_entry_is_blank (SwDiaryEntry *self);
const char * const *sw_diary_entry_get_extras (SwDiaryEntry *self);

G_END_DECLS
