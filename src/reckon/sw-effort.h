/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Below this effort so many repetitions are left that nobody can tell how many. */
#define SW_EFFORT_LEAST_COUNTED 5

#define SW_EFFORT_SOURCE "Helms and others, Strength Cond J 2016;38(4):42-49"

int sw_effort_get_reserve (int effort);

G_END_DECLS
