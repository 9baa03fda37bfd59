/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "sw-measurement.h"

G_BEGIN_DECLS

/**
 * SwCourseChart:
 *
 * A test over the visits: the right side as filled dots on a solid line, the left as open squares on a dashed one, both
 * together as diamonds; behind them a band that holds what is alike to the better side. It says nothing that a list of the
 * visits beside it does not say in words.
 */
#define SW_TYPE_COURSE_CHART (sw_course_chart_get_type ())
G_DECLARE_FINAL_TYPE (SwCourseChart, sw_course_chart, SW, COURSE_CHART, GtkWidget)

void sw_course_chart_show (SwCourseChart *self,
                           GPtrArray     *course,
                           int            alike_percent);
void sw_course_chart_mark (SwCourseChart *self,
                           int            visit);

G_END_DECLS
