/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * SwReadability:
 * @sentences: sentences with at least one word
 * @words: what stands between blanks and has a letter or a digit
 * @syllables: of all words; a number written in digits counts none
 * @polysyllables: words of three syllables or more
 *
 * What the reading grade of English text is reckoned from. Begin with all zero and add texts.
 */
typedef struct
{
  guint sentences;
  guint words;
  guint syllables;
  guint polysyllables;
} SwReadability;

guint sw_readability_count_syllables (const char *word);
char *sw_readability_take_sentence (const char    **text,
                                    SwReadability  *counts);
void sw_readability_add (SwReadability *self,
                         const char    *text);
double sw_readability_get_grade (const SwReadability *self);
double sw_readability_get_smog (const SwReadability *self);

G_END_DECLS
