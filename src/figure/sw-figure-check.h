/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-solver.h"

G_BEGIN_DECLS

double sw_solved_get_balance (const SwSolved *solved);

G_END_DECLS
