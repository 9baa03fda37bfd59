/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * SwReadability:
 * @sentences: sentences with at least one word
 * @words: what stands between blanks and has a letter or a digit
 * @syllables: of all words; a number written in digits counts none
 * @monosyllables: words of one syllable
 * @polysyllables: words of three syllables or more
 * @long_words: words of more than six letters
 *
 * What a reading grade is reckoned from. Begin with all zero and add sentences.
 */
typedef struct
{
  guint sentences;
  guint words;
  guint syllables;
  guint monosyllables;
  guint polysyllables;
  guint long_words;
} SwReadability;

void sw_readability_add (SwReadability       *self,
                         const SwReadability *other);
void sw_readability_subtract (SwReadability       *self,
                              const SwReadability *other);
double sw_readability_get_grade (const SwReadability *self);
double sw_readability_get_smog (const SwReadability *self);
double sw_readability_get_perspicuity (const SwReadability *self);
double sw_readability_get_sachtext (const SwReadability *self);
double sw_readability_get_sentence_words (const SwReadability *self);

G_END_DECLS
