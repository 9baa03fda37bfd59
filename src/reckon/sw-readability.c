/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The published formulas of how hard a text is to read, from what is counted in it. Which one belongs to a language,
 * and what its result means, is in sw-readability-scale.c. */
#include "config.h"

#include <math.h>

#include "sw-readability.h"

/**
 * sw_readability_add:
 * @self: counts
 * @other: counts of a further text
 */
void
sw_readability_add (SwReadability       *self,
                    const SwReadability *other)
{
  self->sentences += other->sentences;
  self->words += other->words;
  self->syllables += other->syllables;
  self->monosyllables += other->monosyllables;
  self->polysyllables += other->polysyllables;
  self->long_words += other->long_words;
}

/**
 * sw_readability_subtract:
 * @self: counts
 * @other: counts of a text that is part of it
 */
void
sw_readability_subtract (SwReadability       *self,
                         const SwReadability *other)
{
  self->sentences -= other->sentences;
  self->words -= other->words;
  self->syllables -= other->syllables;
  self->monosyllables -= other->monosyllables;
  self->polysyllables -= other->polysyllables;
  self->long_words -= other->long_words;
}

/**
 * sw_readability_get_grade:
 * @self: counts of English text
 *
 * The Flesch-Kincaid grade: 0.39 words/sentence + 11.8 syllables/word - 15.59 (Kincaid, Fishburne, Rogers, Chissom,
 * Naval Technical Training Command Research Branch Report 8-75, 1975).
 *
 * Returns: the school grade; very easy text has one below 0, and no text has 0
 */
double
sw_readability_get_grade (const SwReadability *self)
{
  if (self->words == 0)
    return 0.0;

  return 0.39 * self->words / self->sentences + 11.8 * self->syllables / self->words - 15.59;
}

/**
 * sw_readability_get_smog:
 * @self: counts of English text
 *
 * The SMOG grade: 1.0430 sqrt (30 words of three or more syllables/sentence) + 3.1291 (McLaughlin, Journal of Reading
 * 1969;12:639-646). It was made for 30 sentences or more.
 *
 * Returns: the school grade at which all of it is understood; no text has 0
 */
double
sw_readability_get_smog (const SwReadability *self)
{
  if (self->sentences == 0)
    return 0.0;

  return 1.0430 * sqrt (30.0 * self->polysyllables / self->sentences) + 3.1291;
}

/**
 * sw_readability_get_perspicuity:
 * @self: counts of Spanish text
 *
 * The perspicuity of Szigriszt-Pazos: 206.835 - 62.3 syllables/word - words/sentence (Szigriszt Pazos F, Sistemas
 * predictivos de legibilidad del mensaje escrito: fórmula de perspicuidad, doctoral thesis, Universidad Complutense de
 * Madrid 1993).
 *
 * Returns: points, more for easier text; meant for 0 to 100, and text of very short words goes beyond; no text has 0
 */
double
sw_readability_get_perspicuity (const SwReadability *self)
{
  if (self->words == 0)
    return 0.0;

  return 206.835 - 62.3 * self->syllables / self->words - (double) self->words / self->sentences;
}

/**
 * sw_readability_get_sachtext:
 * @self: counts of German text
 *
 * The first Wiener Sachtextformel: 0.1935 MS + 0.1672 SL + 0.1297 IW - 0.0327 ES - 0.875, of the percentages of words
 * of three syllables or more (MS), of more than six letters (IW) and of one syllable (ES) and the words of a sentence
 * (SL) (Bamberger R, Vanecek E, Lesen - Verstehen - Lernen - Schreiben, Wien: Jugend und Volk 1984).
 *
 * Returns: the school year, meant for 4 to 15; very easy text has one below, and no text has 0
 */
double
sw_readability_get_sachtext (const SwReadability *self)
{
  double percent;

  if (self->words == 0)
    return 0.0;

  percent = 100.0 / self->words;
  return 0.1935 * percent * self->polysyllables + 0.1672 * self->words / self->sentences
         + 0.1297 * percent * self->long_words - 0.0327 * percent * self->monosyllables - 0.875;
}

/**
 * sw_readability_get_sentence_words:
 * @self: counts
 *
 * Returns: words a sentence; no text has 0
 */
double
sw_readability_get_sentence_words (const SwReadability *self)
{
  return self->sentences == 0 ? 0.0 : (double) self->words / self->sentences;
}
