/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-dose.h"
#include "sw-phrases.h"

G_BEGIN_DECLS

/**
 * SwDoseLimb:
 * @SW_DOSE_LIMB_NONE: neither
 * @SW_DOSE_LIMB_ARM: the arm of that side moves
 * @SW_DOSE_LIMB_LEG: the leg of that side moves
 * @SW_DOSE_LIMB_STANDING_LEG: the leg of that side is stood on
 *
 * What is meant by a side.
 */
typedef enum
{
  SW_DOSE_LIMB_NONE,
  SW_DOSE_LIMB_ARM,
  SW_DOSE_LIMB_LEG,
  SW_DOSE_LIMB_STANDING_LEG,
} SwDoseLimb;

/**
 * SwDoseWords:
 * @amount: how much to do; the one thing to read ("3 sets of 12, each side."); a line a side when they differ
 * @how: (array zero-terminated=1): how to do it: hold, pace, load, rest, one sentence each
 * @limits: (array zero-terminated=1): how hard and how painful it may get, one sentence each
 * @limits_short: (array zero-terminated=1): the same in a few words, for where room is short
 * @when: (array zero-terminated=1): how often, where it differs from the session's days
 *
 * A dose in words a client reads.
 */
typedef struct
{
  char *amount;
  char **how;
  char **limits;
  char **limits_short;
  char **when;
} SwDoseWords;

SwDoseWords *sw_dose_words_new (SwPhrases    *phrases,
                                const SwDose *dose,
                                SwDoseLimb    limb,
                                SwUnits       units);
void sw_dose_words_free (SwDoseWords *words);
char *sw_dose_words_join_details (const SwDoseWords *words,
                                  SwPhrases         *phrases,
                                  gboolean           in_short);
char *sw_dose_words_dup_amount_and_load (SwPhrases    *phrases,
                                         const SwDose *dose,
                                         SwUnits       units);
char *sw_load_words (SwPhrases *phrases,
                     SwLoad     load,
                     SwUnits    units);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwDoseWords, sw_dose_words_free)

G_END_DECLS
