/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-document.h"

G_BEGIN_DECLS

void sw_finding_show (SwDocument      *document,
                      const SwFinding *finding);
void sw_finding_apply_fix (SwDocument      *document,
                           const SwFinding *finding);
void sw_finding_swap (SwDocument      *document,
                      const SwFinding *finding);
void sw_finding_keep (SwDocument      *document,
                      const SwFinding *finding,
                      const char      *reason);
void sw_finding_take_back (SwDocument      *document,
                           const SwFinding *finding);

G_END_DECLS
