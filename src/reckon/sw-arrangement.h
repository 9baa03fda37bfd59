/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-programme.h"
#include "sw-span.h"

G_BEGIN_DECLS

/* What an order need not keep to, to see what keeping to it costs. */
typedef enum
{
  SW_ARRANGEMENT_KEEPS_ALL = 0,
  SW_ARRANGEMENT_FREE_PLACES = 1 << 0,  /* items that keep their places */
  SW_ARRANGEMENT_FREE_AFTER = 1 << 1,   /* items that come after another */
  SW_ARRANGEMENT_FREE_MUSCLES = 1 << 2, /* exercises of the same small muscles that do not follow each other */
} SwArrangementFree;

/**
 * SwArrangement:
 * @sections: (element-type GPtrArray): for each section of the session its items in the order found
 * @before: what changes of position and equipment take as the session stands
 * @after: what they would take in the order found
 * @moves_before: changes of position between its items, as it stands
 * @moves_after: the same in the order found
 * @fetches_before: how often equipment is fetched, as it stands
 * @fetches_after: the same in the order found
 * @together_before: neighbours that work the same small muscles, as it stands
 * @together_after: the same in the order found
 * @exact: whether no better order exists, not only none was found
 * @better: whether the order found is the better one; where none is, @sections are as they stand
 *
 * The order of a session in which the least time is lost between its exercises.
 */
typedef struct
{
  GPtrArray *sections;
  SwSpan before;
  SwSpan after;
  int moves_before;
  int moves_after;
  int fetches_before;
  int fetches_after;
  int together_before;
  int together_after;
  gboolean exact;
  gboolean better;
} SwArrangement;

SwArrangement *sw_arrangement_new (SwSession *session,
                                   SwClinic  *clinic);
double sw_arrangement_cost_of (SwSession         *session,
                               SwClinic          *clinic,
                               SwArrangementFree  free);
void sw_arrangement_free (SwArrangement *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwArrangement, sw_arrangement_free)

G_END_DECLS
