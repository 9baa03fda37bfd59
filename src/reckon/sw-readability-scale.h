/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-readability.h"

G_BEGIN_DECLS

/**
 * SwReadabilityScale:
 * @language: primary language subtag of BCP 47, or NULL for the languages without a formula
 * @name: names the scale, the same in every language of the window
 * @unit: what its values count, as the end of a name: "school-grade"
 * @lowest: least value that means something
 * @highest: greatest value that means something
 * @aim: the hardest value at which no simpler words are asked for
 * @higher_is_easier: which way it goes
 * @abbreviations: (nullable): words in small letters whose full stop ends no sentence
 * @count_syllables: (nullable): of a word in this language
 * @reckon: the value of counts
 *
 * How reading is measured in a language. Constant; compare by pointer.
 */
typedef struct
{
  const char *language;
  const char *name;
  const char *unit;
  double lowest;
  double highest;
  double aim;
  gboolean higher_is_easier;
  const char *const *abbreviations;
  guint (*count_syllables) (const char *word);
  double (*reckon) (const SwReadability *counts);
} SwReadabilityScale;

const SwReadabilityScale *sw_readability_scale_get (const char *language);
gboolean sw_readability_scale_is_hard (const SwReadabilityScale *self,
                                       double                    value);
char *sw_readability_scale_describe (const SwReadabilityScale *self,
                                     double                    value);
char *sw_readability_scale_describe_briefly (const SwReadabilityScale *self,
                                             double                    value);
char *sw_readability_scale_describe_aim (const SwReadabilityScale *self);
const char *sw_readability_scale_get_source (const SwReadabilityScale *self);

G_END_DECLS
