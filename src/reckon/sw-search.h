/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-catalogue.h"

G_BEGIN_DECLS

/**
 * SwSearchFilter:
 * Sets of wanted values; an empty set lets everything through. An exercise passes when it has one of the
 * wanted regions, one of the positions, one of the aims, one of the states of review, and needs no equipment outside @equipment
 * (with @limit_equipment set; an empty @equipment then means "nothing at all").
 */
typedef struct
{
  SwSet regions;
  SwSet positions;
  SwSet aims;
  SwSet reviews;
  gboolean limit_equipment;
  SwSet equipment;
} SwSearchFilter;

/**
 * SwSearch:
 *
 * An index over all words of a catalogue. Immutable once made; made anew when the catalogue changes.
 */
typedef struct _SwSearch SwSearch;

SwSearch *sw_search_new (SwCatalogue *catalogue,
                         const char  *language);
void sw_search_free (SwSearch *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwSearch, sw_search_free)

GPtrArray *sw_search_find (SwSearch             *self,
                           const char           *query,
                           const SwSearchFilter *filter);

G_END_DECLS
