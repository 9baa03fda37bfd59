/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For this layer's own files: a programme in the middle of being checked. */
#pragma once

#include "sw-finding.h"
#include "sw-swap.h"

G_BEGIN_DECLS

/**
 * SwChecking:
 * @programme: what is checked
 * @catalogue: (nullable): where other exercises are looked for
 * @today: the present day, YYYY-MM-DD
 * @reading: (nullable): how its words read
 * @swaps: (nullable): what to offer in an exercise's place; made when first needed
 * @findings: (element-type SwFinding): what was found so far
 */
typedef struct
{
  SwProgramme *programme;
  SwCatalogue *catalogue;
  const char *today;
  const SwReadabilityReport *reading;
  SwSwaps *swaps;
  GPtrArray *findings;
} SwChecking;

SwFinding *sw_checking_add (SwChecking     *self,
                            SwFindingLevel  level,
                            SwItem         *item,
                            char           *key,
                            char           *text,
                            const char     *why);
void sw_checking_fix (SwFinding  *finding,
                      SwFix       fix,
                      const char *label);
void sw_checking_fix_by_swap (SwChecking *self,
                              SwFinding  *finding,
                              SwSwapWish  wish);
void sw_checking_exercise (SwChecking *self,
                           SwItem     *item);
void sw_checking_limits (SwChecking *self);
void sw_checking_item_limits (SwChecking *self,
                              SwItem     *item);
char *sw_checking_dup_surgery_since (SwChecking   *self,
                                     SwPrecaution  precaution);
void sw_checking_loads (SwChecking *self);
void sw_checking_client_limit (SwChecking *self,
                               SwItem     *item);
void sw_checking_sides (SwChecking *self,
                        SwItem     *item);
void sw_checking_progress (SwChecking *self,
                           SwItem     *item);
void sw_checking_reading (SwChecking *self);

G_END_DECLS
