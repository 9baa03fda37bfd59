/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-dose-words.h"

G_BEGIN_DECLS

typedef struct _SwDoses SwDoses;

SwDoses *sw_doses_new (SwPhrases *phrases);
void sw_doses_free (SwDoses *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwDoses, sw_doses_free)
const SwDoseWords *sw_doses_tell (SwDoses      *self,
                                  const SwDose *dose,
                                  SwDoseLimb    limb,
                                  SwUnits       units);

G_END_DECLS
