/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What could be moved once, reckoned from a load that was moved several times until no more was possible. Each formula
 * is the load times a factor of the repetitions, so that the way back is a division. */
#include "config.h"

#include <math.h>

#include "sw-one-max.h"

static const SwOneMaxFormula formulas[SW_N_MAX_FORMULAS] = {
  [SW_MAX_FORMULA_BRZYCKI]
  = { "Brzycki 1993", "w × 36 / (37 − r)", "Brzycki, J Phys Educ Recreat Dance 1993;64(1):88-90" },
  [SW_MAX_FORMULA_EPLEY] = { "Epley 1985", "w × (1 + r / 30)", "Epley, Poundage chart, 1985" },
  [SW_MAX_FORMULA_LANDER]
  = { "Lander 1985", "100 × w / (101.3 − 2.67123 × r)", "Lander, Natl Strength Cond Assoc J 1985;6(6):60-61" },
  [SW_MAX_FORMULA_LOMBARDI] = { "Lombardi 1989", "w × r^0.10", "Lombardi, Beginning weight training, 1989" },
  [SW_MAX_FORMULA_MAYHEW]
  = { "Mayhew 1992", "100 × w / (52.2 + 41.9 × e^(−0.055 × r))",
      "Mayhew and others, J Appl Sport Sci Res 1992;6(4):200-206" },
  [SW_MAX_FORMULA_OCONNER]
  = { "O’Conner 1989", "w × (1 + 0.025 × r)", "O’Conner and others, Weight training today, 1989" },
  [SW_MAX_FORMULA_WATHAN]
  = { "Wathan 1994", "100 × w / (48.8 + 53.8 × e^(−0.075 × r))",
      "Wathan in Baechle, Essentials of strength training and conditioning, 1994" },
};

/**
 * sw_one_max_get_formula:
 * @formula: one of the formulas
 *
 * Returns: (transfer none): what it is called, how it goes and where it was published
 */
const SwOneMaxFormula *
sw_one_max_get_formula (SwMaxFormula formula)
{
  g_return_val_if_fail (formula < SW_N_MAX_FORMULAS, NULL);

  return &formulas[formula];
}

/* What a load is multiplied with. Most formulas miss the load itself at one repetition, which needs no formula. */
static double
get_factor (SwMaxFormula formula,
            int          repetitions)
{
  double r = repetitions;

  if (repetitions < 1 || repetitions > SW_ONE_MAX_MOST_REPS)
    return NAN;
  if (repetitions == 1)
    return 1.0;

  switch (formula)
    {
    case SW_MAX_FORMULA_BRZYCKI:
      return 36.0 / (37.0 - r);
    case SW_MAX_FORMULA_EPLEY:
      return 1.0 + r / 30.0;
    case SW_MAX_FORMULA_LANDER:
      return 100.0 / (101.3 - 2.67123 * r);
    case SW_MAX_FORMULA_LOMBARDI:
      return pow (r, 0.10);
    case SW_MAX_FORMULA_MAYHEW:
      return 100.0 / (52.2 + 41.9 * exp (-0.055 * r));
    case SW_MAX_FORMULA_OCONNER:
      return 1.0 + 0.025 * r;
    case SW_MAX_FORMULA_WATHAN:
      return 100.0 / (48.8 + 53.8 * exp (-0.075 * r));
    default:
      return NAN;
    }
}

/**
 * sw_one_max_reckon:
 * @formula: which formula
 * @load: the load of the test, above 0, in any unit
 * @repetitions: how often it was moved until no more was possible, 1..%SW_ONE_MAX_MOST_REPS
 *
 * Returns: what could be moved once, in the unit of @load; the load itself for one repetition; NaN outside the domain.
 *   Source: that of @formula
 */
double
sw_one_max_reckon (SwMaxFormula formula,
                   double       load,
                   int          repetitions)
{
  return load > 0.0 ? load * get_factor (formula, repetitions) : NAN;
}

/**
 * sw_one_max_get_percent:
 * @formula: which formula
 * @repetitions: how often a load shall be possible at most, 1..%SW_ONE_MAX_MOST_REPS
 *
 * Returns: how much that load is of what can be moved once, in percent; 100 for one repetition; NaN outside the domain.
 *   Source: that of @formula, solved for the load
 */
double
sw_one_max_get_percent (SwMaxFormula formula,
                        int          repetitions)
{
  return 100.0 / get_factor (formula, repetitions);
}

/**
 * sw_one_max_get_spread:
 * @load: the load of the test, above 0, in any unit
 * @repetitions: as for sw_one_max_reckon()
 * @low: (out): the least that one of the formulas gives, in the unit of @load; NaN outside the domain
 * @high: (out): the most
 *
 * How far the formulas are apart.
 */
void
sw_one_max_get_spread (double  load,
                       int     repetitions,
                       double *low,
                       double *high)
{
  *low = NAN;
  *high = NAN;
  for (int formula = 0; formula < SW_N_MAX_FORMULAS; formula++)
    {
      double value = sw_one_max_reckon ((SwMaxFormula) formula, load, repetitions);

      *low = fmin (*low, value);
      *high = fmax (*high, value);
    }
}
