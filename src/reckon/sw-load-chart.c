/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The chart that hangs in training rooms: how much of what can be moved once can be moved how often. A second opinion
 * on the formulas, which were made from such charts. */
#include "config.h"

#include <math.h>

#include "sw-load-chart.h"

/* Two charts are in print: they part at 12 repetitions (67 or 70). The lower load is taken. The row of 15 was not found
 * in print again; it is common practice. */
static const struct
{
  double repetitions;
  double percent;
} rows[] = {
  { 1.0, 100.0 }, { 2.0, 95.0 }, { 3.0, 93.0 },  { 4.0, 90.0 },  { 5.0, 87.0 },  { 6.0, 85.0 }, { 7.0, 83.0 },
  { 8.0, 80.0 },  { 9.0, 77.0 }, { 10.0, 75.0 }, { 11.0, 70.0 }, { 12.0, 67.0 }, { 15.0, 65.0 },
};

/**
 * sw_load_chart_get_percent:
 * @repetitions: how often a load shall be possible at most, 1..15; between two rows it is interpolated
 *
 * Returns: how much that load is of what can be moved once, in percent; NaN outside the chart. Source:
 *   %SW_LOAD_CHART_SOURCE
 */
double
sw_load_chart_get_percent (double repetitions)
{
  for (guint i = 1; i < G_N_ELEMENTS (rows); i++)
    {
      double part = (repetitions - rows[i - 1].repetitions) / (rows[i].repetitions - rows[i - 1].repetitions);

      if (part >= 0.0 && part <= 1.0)
        return rows[i - 1].percent + part * (rows[i].percent - rows[i - 1].percent);
    }

  return NAN;
}
