/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For the history: one change, done and taken back. */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

/**
 * SwChange:
 *
 * Either a property that gets another value or a run of a list that is replaced. Objects taken out of a list are kept
 * alive by the change and come back as they were, so that later changes of them stay valid.
 */
typedef struct _SwChange SwChange;

SwChange *sw_change_new_value (gpointer      object,
                               GParamSpec   *property,
                               const GValue *value);
SwChange *sw_change_new_splice (GListStore *list,
                                guint       position,
                                guint       n_removals,
                                gpointer   *additions,
                                guint       n_additions);
void sw_change_free (SwChange *change);
void sw_change_apply (SwChange *change,
                      gboolean  forward);
gboolean sw_change_is_of_value (SwChange *change);
gboolean sw_change_join (SwChange *change,
                         SwChange *next);
gboolean sw_change_is_none (SwChange *change);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwChange, sw_change_free)

G_END_DECLS
