/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-terms.h"

G_BEGIN_DECLS

const char *sw_transition_get_name (SwTransition transition);

G_END_DECLS
