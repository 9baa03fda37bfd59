/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-exercise.h"

G_BEGIN_DECLS

char *sw_dose_range_find_fault (const SwDose *dose,
                                SwSet         aims);

G_END_DECLS
