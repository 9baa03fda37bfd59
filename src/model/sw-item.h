/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "sw-exercise.h"

G_BEGIN_DECLS

/**
 * SwItem:
 *
 * One thing to do in a section. Which properties count depends on the kind, fixed at birth:
 *
 * | property (name) | type | exercise | rest | circuit | self-check |
 * | --- | --- | --- | --- | --- | --- |
 * | kind | SwItemKind, construct only | | | | |
 * | id | string, unique in the programme, construct only | x | x | x | x |
 * | exercise | SwExercise: the embedded snapshot | x | | | |
 * | dose | SwDose, boxed | x | | | side only |
 * | note | string, to the client; "" when none | x | x | x | x |
 * | title | string; what to rest for, circuit's name, the check's question | | x | x | x |
 * | rest-seconds | int 0..900: length of the rest; in a circuit the rest between rounds | | x | x | |
 * | rounds | int 1..20 | | | x | |
 * | items | GListStore of SwItem, never a circuit again | | | x | |
 * | measure | SwMeasure: what the check is counted in | | | | x |
 * | better | SwBetter: which result of the check is the better one | | | | x |
 * | pinned | boolean: keeps its place when the section is put in order | x | | x | |
 * | after | string: id of an item of the section that must come earlier; "" when none | x | | x | |
 * | test | string: name of the test that its load and extra sets are found by; "" when none | x | | | |
 * | pictured | string: id of the programme's exercise whose picture the check shows; "" for none | | | | x |
 * | extras | GStrv: unknown XML, kept | x | x | x | x |
 *
 * Setters exist for readers and for #SwHistory; widgets change items through the history only.
 */
#define SW_TYPE_ITEM (sw_item_get_type ())
G_DECLARE_FINAL_TYPE (SwItem, sw_item, SW, ITEM, GObject)

SwItem *sw_item_new (SwItemKind  kind,
                     const char *id);
SwItem *sw_item_new_for_exercise (SwExercise *exercise,
                                  const char *id);
SwItem *sw_item_copy (SwItem   *self,
                      gboolean  new_ids);
SwItemKind sw_item_get_kind (SwItem *self);
const char *sw_item_get_id (SwItem *self);
SwExercise *sw_item_get_exercise (SwItem *self);
const SwDose *sw_item_get_dose (SwItem *self);
const char *sw_item_get_note (SwItem *self);
const char *sw_item_get_title (SwItem *self);
int sw_item_get_rest_s (SwItem *self);
int sw_item_get_rounds (SwItem *self);
GListStore *sw_item_get_items (SwItem *self);
SwMeasure sw_item_get_measure (SwItem *self);
SwBetter sw_item_get_better (SwItem *self);
gboolean sw_item_get_pinned (SwItem *self);
const char *sw_item_get_after (SwItem *self);
const char *sw_item_get_test (SwItem *self);
const char *sw_item_get_pictured (SwItem *self);
const char * const *sw_item_get_extras (SwItem *self);
char *sw_item_dup_name (SwItem     *self,
                        const char *language);

G_END_DECLS
