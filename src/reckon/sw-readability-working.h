/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-readability-report.h"
#include "sw-working.h"

G_BEGIN_DECLS

SwWorking *sw_readability_working (const SwReadabilityReport *report);

G_END_DECLS
