/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For the model's own files: what the edits of lists have in common. */
#pragma once

#include "sw-history.h"
#include "sw-programme.h"

G_BEGIN_DECLS

/**
 * SwGap:
 * @list: (unowned): a list
 * @position: a place between its objects, or of one of them
 */
typedef struct
{
  GListStore *list;
  guint position;
} SwGap;

GPtrArray *sw_lists_dup_contents (GListStore *list);
GPtrArray *sw_lists_dup_contents_without (GListStore *list,
                                          GPtrArray  *objects);
void sw_lists_replace_contents (SwHistory  *history,
                                const char *label,
                                GListStore *list,
                                GPtrArray  *wanted);
gboolean sw_lists_find_parent (SwProgramme *programme,
                               GListStore  *list,
                               SwGap       *parent);
gboolean sw_lists_is_circuit (SwProgramme *programme,
                              GListStore  *list);
gboolean sw_lists_contain (GPtrArray *objects,
                           gpointer   object);
GPtrArray *sw_lists_in_order (SwProgramme *programme,
                              GPtrArray   *objects);
GPtrArray *sw_lists_of (SwProgramme *programme,
                        GPtrArray   *objects);

G_END_DECLS
