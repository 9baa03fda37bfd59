/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-programme.h"

G_BEGIN_DECLS

/**
 * SwEditVerb:
 * What is done to objects; undo names it.
 */
typedef enum
{
  SW_EDIT_VERB_ADD,
  SW_EDIT_VERB_REMOVE,
  SW_EDIT_VERB_MOVE,
  SW_EDIT_VERB_DUPLICATE,
  SW_EDIT_VERB_CUT,
  SW_EDIT_VERB_PASTE,
} SwEditVerb;

char *sw_edit_object_name (gpointer object);
char *sw_edit_label (SwEditVerb  verb,
                     GPtrArray  *objects);
char *sw_edit_label_for (SwEditVerb verb,
                         gpointer   object);
char *sw_edit_label_for_swap (SwItem     *item,
                              SwExercise *exercise);

G_END_DECLS
