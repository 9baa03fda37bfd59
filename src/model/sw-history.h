/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

/**
 * SwHistory:
 *
 * Every change of a document goes through here and can be undone, without limit. There are two kinds of
 * edit, from which all others are grouped: a property of an object gets another value, and a run of a
 * GListStore is replaced by another.
 *
 * Properties, all read only and notified: "can-undo", "can-redo" (boolean), "undo-label", "redo-label"
 * (string or NULL), "modified" (boolean: whether the position is not the saved one).
 * Signal "changed": after every edit, undo and redo, once a group.
 */
#define SW_TYPE_HISTORY (sw_history_get_type ())
G_DECLARE_FINAL_TYPE (SwHistory, sw_history, SW, HISTORY, GObject)

SwHistory *sw_history_new (void);

void sw_history_begin (SwHistory  *self,
                       const char *label);
void sw_history_end (SwHistory *self);

void sw_history_set (SwHistory    *self,
                     const char   *label,
                     gpointer      object,
                     const char   *property,
                     const GValue *value);
void sw_history_set_string (SwHistory  *self,
                            const char *label,
                            gpointer    object,
                            const char *property,
                            const char *value);
void sw_history_set_boxed (SwHistory     *self,
                           const char    *label,
                           gpointer       object,
                           const char    *property,
                           gconstpointer  value);
void sw_history_set_int (SwHistory  *self,
                         const char *label,
                         gpointer    object,
                         const char *property,
                         gint64      value);
void sw_history_splice (SwHistory  *self,
                        const char *label,
                        GListStore *list,
                        guint       position,
                        guint       n_removals,
                        gpointer   *additions,
                        guint       n_additions);

void sw_history_stop_merging (SwHistory *self);
void sw_history_undo (SwHistory *self);
void sw_history_redo (SwHistory *self);
gboolean sw_history_get_can_undo (SwHistory *self);
gboolean sw_history_get_can_redo (SwHistory *self);
const char *sw_history_get_undo_label (SwHistory *self);
const char *sw_history_get_redo_label (SwHistory *self);
gboolean sw_history_get_modified (SwHistory *self);
guint64 sw_history_get_mark (SwHistory *self);
void sw_history_set_saved_mark (SwHistory *self,
                                guint64    mark);

G_END_DECLS
