/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For the files that share the edit actions: items, sections and sessions. */
#pragma once

#include <gdk/gdk.h>

#include "sw-edit-actions.h"

G_BEGIN_DECLS

#define SW_TYPE_EDIT_ACTIONS (sw_edit_actions_get_type ())
G_DECLARE_FINAL_TYPE (SwEditActions, sw_edit_actions, SW, EDIT_ACTIONS, GSimpleActionGroup)

struct _SwEditActions
{
  GSimpleActionGroup parent_instance;

  SwDocument *document;
  GdkClipboard *clipboard; /* NULL without a display */
};

/* sw-edit-actions.c */
void sw_edit_actions_enable (SwEditActions *self,
                             const char    *name,
                             gboolean       enabled);
GPtrArray *sw_edit_actions_dup_chosen (SwEditActions *self);

/* sw-edit-actions-insert.c */
void sw_edit_actions_add_insertions (SwEditActions *self);
void sw_edit_actions_update_insertions (SwEditActions *self);

/* sw-edit-actions-parts.c */
void sw_edit_actions_add_parts (SwEditActions *self);
void sw_edit_actions_update_parts (SwEditActions *self);

G_END_DECLS
