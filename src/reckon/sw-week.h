/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-programme.h"

G_BEGIN_DECLS

/**
 * SwWeekFunc:
 * @item: an exercise item that has its exercise
 * @times: how often it is done in a week: days, times a day and a circuit's rounds
 * @data: as given
 */
typedef void (*SwWeekFunc) (SwItem  *item,
                            double   times,
                            gpointer data);

void sw_week_foreach (SwProgramme *programme,
                      SwWeekFunc   func,
                      gpointer     data);

G_END_DECLS
