/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-bands.h"
#include "sw-programme.h"
#include "sw-working.h"

G_BEGIN_DECLS

/* Where nothing is stated: hard, with three repetitions left. */
#define SW_STARTING_LOAD_USUAL_EFFORT 7

/**
 * SwStartingLoadQuestion:
 * @tested: the load of the test, above 0; of both sides the lesser one, since one load serves both
 * @tested_repetitions: how often it was moved until no more was possible, 1..20; 0 for one greatest pull, as a
 *   dynamometer measures it
 * @repetitions: how many a set shall have, 1..20; with those left at @effort no more than 20
 * @effort: how hard the last one shall be, 5..10, or 0 for %SW_STARTING_LOAD_USUAL_EFFORT
 * @formula: which formula counts
 * @exercise_limit: most the exercise may have; unit none means it has no load at all
 * @client_limit: most the client may have; unit none for no such limit
 * @owned: (nullable) (element-type SwLoad): the loads the client owns, the least first; NULL or none when that is not
 *   known
 * @bands: (nullable) (element-type SwBand): the clinic's elastic bands; NULL or none when not stated
 * @stretch_percent: how far a band is stretched in the exercise
 * @units: the client's units
 */
typedef struct
{
  SwLoad tested;
  int tested_repetitions;
  int repetitions;
  int effort;
  SwMaxFormula formula;
  SwLoad exercise_limit;
  SwLoad client_limit;
  GArray *owned;
  GPtrArray *bands;
  int stretch_percent;
  SwUnits units;
} SwStartingLoadQuestion;

/**
 * SwStartingLoad:
 * @load: what to begin with; unit none when there is nothing to begin with
 * @band: (nullable) (transfer none): the band that pulls so, of the question
 * @refusal: (nullable): why there is not, for the therapist; translated, not owned
 * @rough: whether more than ten repetitions were counted somewhere, where the formulas part
 * @one_max_kg: what could be moved once; NaN when it cannot be reckoned, as all below
 * @one_max_low_kg: the least a formula gives
 * @one_max_high_kg: the most
 * @percent: how much of it the wanted repetitions and effort stand for
 * @wanted_kg: what the formula gives, before limits and rounding
 * @low_kg: the least that one of the formulas gives for the same
 * @high_kg: the most
 * @working: how it was reckoned
 */
typedef struct
{
  SwLoad load;
  const SwBand *band;
  const char *refusal;
  gboolean rough;
  double one_max_kg;
  double one_max_low_kg;
  double one_max_high_kg;
  double percent;
  double wanted_kg;
  double low_kg;
  double high_kg;
  SwWorking *working;
} SwStartingLoad;

void sw_starting_load_question_init (SwStartingLoadQuestion *question,
                                     SwProgramme            *programme,
                                     SwItem                 *item);
void sw_starting_load_question_clear (SwStartingLoadQuestion *question);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SwStartingLoadQuestion, sw_starting_load_question_clear)

SwStartingLoad *sw_starting_load_new (const SwStartingLoadQuestion *question);
void sw_starting_load_free (SwStartingLoad *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwStartingLoad, sw_starting_load_free)

G_END_DECLS
