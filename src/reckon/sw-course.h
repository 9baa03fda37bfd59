/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The course of a test over the visits. */
#pragma once

#include "sw-programme.h"
#include "sw-symmetry.h"
#include "sw-working.h"

G_BEGIN_DECLS

GPtrArray *sw_course_dup_tests (SwProgramme *programme);
GPtrArray *sw_course_collect (SwProgramme *programme,
                              const char  *test);
SwMeasurement *sw_course_find_latest (SwProgramme *programme,
                                      const char  *test);
SwBetter sw_course_get_better (SwMeasurement *measurement);
gboolean sw_course_compare (SwMeasurement *measurement,
                            SwSymmetry    *symmetry);
SwWorking *sw_course_explain (SwMeasurement *measurement,
                              int            alike_percent,
                              SwBodySide     dominant);
gboolean sw_course_get_load (SwMeasurement *measurement,
                             SwLoad        *load);

G_END_DECLS
