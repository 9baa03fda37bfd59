/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-terms.h"

G_BEGIN_DECLS

/* Up to ten repetitions the formulas were tried (LeSuer and others, J Strength Cond Res 1997;11:211-213). Beyond they part
 * from each other: a rough guide up to twenty, where load charts end too, and nothing further on (common practice). */
#define SW_ONE_MAX_SURE_REPS 10
#define SW_ONE_MAX_MOST_REPS 20

#define SW_N_MAX_FORMULAS (SW_MAX_FORMULA_WATHAN + 1)

/**
 * SwOneMaxFormula:
 * @name: who published it, and when
 * @expression: with w for the load and r for the repetitions
 * @source: the publication
 */
typedef struct
{
  const char *name;
  const char *expression;
  const char *source;
} SwOneMaxFormula;

const SwOneMaxFormula *sw_one_max_get_formula (SwMaxFormula formula);
double sw_one_max_reckon (SwMaxFormula formula,
                          double       load,
                          int          repetitions);
double sw_one_max_get_percent (SwMaxFormula formula,
                               int          repetitions);
void sw_one_max_get_spread (double  load,
                            int     repetitions,
                            double *low,
                            double *high);

G_END_DECLS
