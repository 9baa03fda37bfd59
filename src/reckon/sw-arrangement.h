/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-programme.h"
#include "sw-span.h"

G_BEGIN_DECLS

/**
 * SwArrangement:
 * @sections: (element-type GPtrArray): for each section of the session its items in the order found
 * @before: what changes of position and equipment take as the session stands
 * @after: what they would take in the order found
 * @together_before: neighbours that work the same small muscles, as it stands
 * @together_after: the same in the order found
 * @exact: whether no better order exists, not only none was found
 * @differs: whether anything would move
 *
 * The order of a session in which the least time is lost between its exercises.
 */
typedef struct
{
  GPtrArray *sections;
  SwSpan before;
  SwSpan after;
  int together_before;
  int together_after;
  gboolean exact;
  gboolean differs;
} SwArrangement;

SwArrangement *sw_arrangement_new (SwSession *session,
                                   SwClinic  *clinic);
void sw_arrangement_free (SwArrangement *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwArrangement, sw_arrangement_free)

G_END_DECLS
