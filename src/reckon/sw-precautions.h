/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-finding.h"

G_BEGIN_DECLS

/**
 * SwPrecautionRule:
 * @precaution: a client's condition
 * @caution: what an exercise asks of the body
 * @level: how severe it is when both meet
 * @reason: why, one or two plain sentences, not yet translated
 * @source: where the rule is from, not yet translated
 */
typedef struct
{
  SwPrecaution precaution;
  SwCaution caution;
  SwFindingLevel level;
  const char *reason;
  const char *source;
} SwPrecautionRule;

/**
 * SwLoadRule:
 * @precaution: a client's condition
 * @regions: set of #SwRegion in which an added load speaks against it
 * @equipment: set of #SwEquipment of which one must be used, or 0: with any
 * @level: how severe it is when both meet
 * @reason: why, not yet translated
 * @source: where the rule is from, not yet translated
 */
typedef struct
{
  SwPrecaution precaution;
  SwSet regions;
  SwSet equipment;
  SwFindingLevel level;
  const char *reason;
  const char *source;
} SwLoadRule;

const char *sw_precaution_get_name (SwPrecaution precaution);
gboolean sw_precaution_is_surgical (SwPrecaution precaution);
const char *sw_caution_get_name (SwCaution caution);
const SwPrecautionRule *sw_precautions_find_rule (SwPrecaution precaution,
                                                  SwCaution    caution);
const SwLoadRule *sw_precautions_find_load_rule (SwPrecaution precaution,
                                                 SwRegion     region,
                                                 SwSet        equipment);
SwSet sw_precautions_get_cautions (SwSet          precautions,
                                   SwFindingLevel level);

G_END_DECLS
