/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-solver.h"

G_BEGIN_DECLS

double sw_body_get_support_lowest (const SwBody *body,
                                   guint         supports);
void sw_solved_level_feet (SwSolved *solved);
void sw_solved_lay_shanks (SwSolved *solved);

G_END_DECLS
