/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How a reading value comes about, step by step. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-readability-working.h"

static void
add_counts (SwWorking           *working,
            const SwReadability *counts)
{
  sw_working_add (working, _("Words a sentence"), NULL, _("%u words / %u sentences = %.2f"), counts->words,
                  counts->sentences, sw_readability_get_sentence_words (counts));
}

static void
add_syllables (SwWorking           *working,
               const SwReadability *counts)
{
  sw_working_add (working, _("Syllables a word"), NULL, _("%u syllables / %u words = %.3f"), counts->syllables, counts->words,
                  (double) counts->syllables / counts->words);
}

/* Both formulas for English: the first is what is aimed at, the second asks for all of the text to be understood. */
static void
add_english (SwWorking           *working,
             const SwReadability *counts)
{
  add_syllables (working, counts);
  sw_working_add (working, _("School grade after Flesch and Kincaid"),
                  "Kincaid, Fishburne, Rogers, Chissom, Research Branch Report 8-75, 1975",
                  "0.39 × %.2f + 11.8 × %.3f − 15.59 = %.1f", sw_readability_get_sentence_words (counts),
                  (double) counts->syllables / counts->words, sw_readability_get_grade (counts));
  sw_working_add (working, _("SMOG: the grade at which all of it is understood, by its words of three syllables or more"),
                  "McLaughlin, Journal of Reading 1969;12:639-646", "1.0430 × √(30 × %u / %u) + 3.1291 = %.1f",
                  counts->polysyllables, counts->sentences, sw_readability_get_smog (counts));
}

static void
add_spanish (SwWorking           *working,
             const SwReadability *counts)
{
  add_syllables (working, counts);
  sw_working_add (working, _("Points after Szigriszt-Pazos"), "Szigriszt Pazos, Universidad Complutense de Madrid 1993",
                  "206.835 − 62.3 × %.3f − %.2f = %.1f", (double) counts->syllables / counts->words,
                  sw_readability_get_sentence_words (counts), sw_readability_get_perspicuity (counts));
}

static void
add_german (SwWorking           *working,
            const SwReadability *counts)
{
  double percent = 100.0 / counts->words;

  sw_working_add (working, _("Words of three syllables or more, of more than six letters, and of one syllable, in per cent"),
                  NULL, "%.1f, %.1f, %.1f", percent * counts->polysyllables, percent * counts->long_words,
                  percent * counts->monosyllables);
  sw_working_add (working, _("School year after the first Wiener Sachtextformel"), "Bamberger, Vanecek 1984",
                  "0.1935 × %.1f + 0.1672 × %.2f + 0.1297 × %.1f − 0.0327 × %.1f − 0.875 = %.1f",
                  percent * counts->polysyllables, sw_readability_get_sentence_words (counts), percent * counts->long_words,
                  percent * counts->monosyllables, sw_readability_get_sachtext (counts));
}

/**
 * sw_readability_working:
 * @report: how hard something is to read
 *
 * None of the words that were counted is in it.
 *
 * Returns: (transfer full): the counts, the formulas with the counts in them, and what is aimed at
 */
SwWorking *
sw_readability_working (const SwReadabilityReport *report)
{
  SwWorking *working = sw_working_new ();
  const SwReadability *counts = &report->counts;
  g_autofree char *aim = sw_readability_scale_describe_aim (report->scale);

  if (counts->words == 0)
    return working;

  add_counts (working, counts);
  if (report->scale->reckon == sw_readability_get_grade)
    add_english (working, counts);
  else if (report->scale->reckon == sw_readability_get_perspicuity)
    add_spanish (working, counts);
  else if (report->scale->reckon == sw_readability_get_sachtext)
    add_german (working, counts);
  sw_working_add (working, _("What is aimed at"), sw_readability_scale_get_source (report->scale), "%s", aim);
  return working;
}
