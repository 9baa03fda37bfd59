/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-catalogue.h"
#include "sw-programme.h"
#include "sw-reckon-enum-types.h"

G_BEGIN_DECLS

/**
 * SwSwapWish:
 * @SW_SWAP_ANY: whatever suits
 * @SW_SWAP_EASIER: known to be easier
 * @SW_SWAP_ALIKE: neither known to be easier nor known to be harder
 * @SW_SWAP_HARDER: known to be harder
 *
 * Which difficulty is wanted of what takes an exercise's place. It is known only of exercises that the catalogue links.
 */
typedef enum
{
  SW_SWAP_ANY,
  SW_SWAP_EASIER,
  SW_SWAP_ALIKE,
  SW_SWAP_HARDER,
} SwSwapWish;

/**
 * SwSwap:
 * @exercise: what could take the place
 * @n_steps: links of the catalogue between the two: below 0 so many easier, above 0 so many harder, 0 not linked
 * @alikeness: 0..1, see sw_swap_get_alikeness()
 * @reason: why it suits, one line for the therapist
 *
 * An exercise that could take another's place.
 */
typedef struct
{
  SwExercise *exercise;
  int n_steps;
  double alikeness;
  char *reason;
} SwSwap;

void sw_swap_free (SwSwap *swap);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwSwap, sw_swap_free)

SwSet sw_swap_get_missing_equipment (SwClient              *client,
                                     const SwExerciseFacts *facts);
double sw_swap_get_alikeness (const SwExerciseFacts *a,
                              const SwExerciseFacts *b);

/**
 * SwSwaps:
 *
 * What a client may be offered of a catalogue, to look for several exercises' swaps in.
 */
typedef struct _SwSwaps SwSwaps;

SwSwaps *sw_swaps_new (SwProgramme *programme,
                       SwCatalogue *catalogue);
void sw_swaps_free (SwSwaps *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwSwaps, sw_swaps_free)

GPtrArray *sw_swaps_find (SwSwaps    *self,
                          SwItem     *item,
                          SwSwapWish  wish,
                          guint       n_most);

G_END_DECLS
