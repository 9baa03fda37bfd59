/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What was measured, with its unit, for the client. */
#include "config.h"

#include <math.h>

#include "sw-measure-words.h"

/* Whole numbers below take the plural form of their unit; nobody counts so far. */
#define MOST_COUNTED 1e6

/**
 * sw_measure_unit_words:
 *
 * Returns: (transfer none): what a measure is counted in, to stand beside a box
 */
const char *
sw_measure_unit_words (SwPhrases *phrases,
                       SwMeasure  measure)
{
  static const char *const keys[] = {
    [SW_MEASURE_SECONDS] = "check.seconds",
    [SW_MEASURE_REPETITIONS] = "check.repetitions",
    [SW_MEASURE_DEGREES] = "check.degrees",
    [SW_MEASURE_CENTIMETRES] = "check.centimetres",
    [SW_MEASURE_KILOGRAMS] = "check.kilograms",
    [SW_MEASURE_NEWTONS] = "check.newtons",
    [SW_MEASURE_RATING_0_TO_10] = "check.rating-0-to-10",
    [SW_MEASURE_POUNDS] = "check.pounds",
  };

  return sw_phrases_get (phrases, keys[measure]);
}

/**
 * sw_measure_words:
 *
 * Returns: (transfer full): "12.5 seconds", "12 times", "45°", "3 out of 10"
 */
char *
sw_measure_words (SwPhrases *phrases,
                  double     value,
                  SwMeasure  measure)
{
  g_autofree char *n = sw_phrases_number (phrases, value, 1);
  gboolean counts = value >= floor (value) && value <= floor (value) && fabs (value) < MOST_COUNTED;

  if (measure == SW_MEASURE_SECONDS && counts)
    return sw_phrases_count (phrases, "time.seconds", (int) value, NULL);
  if (measure == SW_MEASURE_REPETITIONS && counts)
    return sw_phrases_count (phrases, "dose.amount-times", (int) value, NULL);
  if (measure == SW_MEASURE_DEGREES)
    return sw_phrases_format (phrases, "check.value-degrees", "n", n, NULL);
  if (measure == SW_MEASURE_RATING_0_TO_10)
    return sw_phrases_format (phrases, "check.value-rating", "n", n, NULL);
  return sw_phrases_format (phrases, "check.value", "n", n, "unit", sw_measure_unit_words (phrases, measure), NULL);
}
