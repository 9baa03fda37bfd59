/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-exercise.h"
#include "sw-extras.h"

G_BEGIN_DECLS

void sw_dose_reason_read (xmlNode         *node,
                          SwExerciseFacts *facts,
                          GPtrArray       *extras);
void sw_dose_reason_write (const SwExerciseFacts *facts,
                           const char * const    *extras,
                           SwXmlWriter           *writer);
gboolean sw_review_read (xmlNode          *node,
                         SwExerciseFacts  *facts,
                         GPtrArray        *extras,
                         GError          **error);
void sw_review_write (const SwExerciseFacts *facts,
                      const char * const    *extras,
                      SwXmlWriter           *writer);

G_END_DECLS
