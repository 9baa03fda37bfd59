/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Where the chart is printed, for whoever is shown a value of it. */
#define SW_LOAD_CHART_SOURCE "Training load chart of the strength and conditioning handbooks (common practice)"

double sw_load_chart_get_percent (double repetitions);

G_END_DECLS
