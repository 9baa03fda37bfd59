/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which formula belongs to a language, what its value means, and from where on simpler words are asked for.
 *
 * The aim is the same everywhere: what six years of school can read, the target of the American Medical Association
 * (Weiss BD, Health literacy and patient safety, 2nd ed. 2007) and the National Institutes of Health for texts for
 * patients.
 *
 * | language | formula | unit | means something | aim |
 * | --- | --- | --- | --- | --- |
 * | English | Flesch-Kincaid, 1975 | US school grade | from 1 | 6 or below |
 * | Spanish | Szigriszt-Pazos, 1993, on the INFLESZ scale, 2008 | points, more is easier | 0 to 100 | 65 or above |
 * | German | first Wiener Sachtextformel, 1984 | school year | 4 to 15 | 6 or below |
 * | any other | none is known to be accepted: words a sentence | words | from 1 | 15 or below |
 *
 * English: the value is the grade whose pupils understand it; 6 is the target itself.
 *
 * Spanish: INFLESZ was made with 210 Spanish publications for texts for patients (Barrio-Cantalejo IM and others, An
 * Sist Sanit Navar 2008;31:135-152), which is why this formula stands here and not the older one of Fernández Huerta
 * (1959), whose printed form has an error and is in use in two versions. Its steps: below 40 very hard (university), 40
 * hard (upper secondary, special press), 55 normal (lower secondary, general press), 65 fairly easy (primary school),
 * above 80 very easy. Primary school in Spain has six years, so 65 is where the target lies.
 *
 * German: the value is the school year directly (Bamberger, Vanecek 1984), from 4 to 15, of which those above 12 are
 * rather levels than years. It was made for factual texts, and is in use for German health texts with the same
 * target (JMIR Dermatol 2020;3:e16095; Urol Int 2018;100:79). Amstad's points (1978) have no school years.
 *
 * What of this was looked up and what is from memory is in tests/reference/readability-scales.csv.
 *
 * Any other: a sentence of 15 words on average is common practice of plain writing, and no more than that. */
#include "config.h"

#include <float.h>
#include <string.h>

#include <glib/gi18n.h>

#include "sw-readability-scale.h"
#include "sw-syllables.h"

static const char *const english_abbreviations[]
    = { "approx", "dr", "e.g", "fig", "i.e", "mr", "mrs", "ms", "no", "st", "vs", NULL };
static const char *const spanish_abbreviations[]
    = { "aprox", "art", "d", "dr", "dra", "ej", "fig", "máx", "mín", "núm", "p", "pág", "sr", "sra", "ud",
        "uds", NULL };
static const char *const german_abbreviations[]
    = { "abb", "b", "bzw", "ca", "d", "dr", "evtl", "ggf", "h", "inkl", "max", "mind", "nr", "prof", "s",
        "tel", "u", "vgl", "z", NULL };

static const SwReadabilityScale scales[] = {
  { "en", "flesch-kincaid", "school-grade", 1.0, DBL_MAX, 6.0, FALSE, english_abbreviations, sw_syllables_count_english,
    sw_readability_get_grade },
  { "es", "szigriszt-pazos", "inflesz-points", 0.0, 100.0, 65.0, TRUE, spanish_abbreviations,
    sw_syllables_count_spanish, sw_readability_get_perspicuity },
  { "de", "wiener-sachtext-1", "school-year", 4.0, 15.0, 6.0, FALSE, german_abbreviations, sw_syllables_count_german,
    sw_readability_get_sachtext },
};

static const SwReadabilityScale no_formula
    = { NULL, "words-a-sentence", "words-a-sentence", 1.0, DBL_MAX, 15.0, FALSE, NULL, NULL,
        sw_readability_get_sentence_words };

/* Written without blanks between words: nothing can be counted. */
static const char *const without_blanks[] = { "ja", "km", "lo", "my", "th", "yue", "zh", NULL };

/* The least points of the steps of INFLESZ. */
static const struct
{
  double from;
  const char *words;
} inflesz[] = {
  { 80.0, N_ ("very easy") }, { 65.0, N_ ("fairly easy") }, { 55.0, N_ ("normal") }, { 40.0, N_ ("hard") },
  { -DBL_MAX, N_ ("very hard") },
};

/**
 * sw_readability_scale_get:
 * @language: (nullable): BCP 47 tag
 *
 * Returns: (transfer none) (nullable): how reading is measured in this language; NULL when its words cannot be told
 *   apart by blanks, or the language is not known
 */
const SwReadabilityScale *
sw_readability_scale_get (const char *language)
{
  g_autofree char *primary = NULL;

  if (language == NULL || *language == '\0')
    return NULL;

  primary = g_ascii_strdown (language, (gssize) strcspn (language, "-_"));
  for (gsize i = 0; i < G_N_ELEMENTS (scales); i++)
    if (strcmp (scales[i].language, primary) == 0)
      return &scales[i];

  return g_strv_contains (without_blanks, primary) ? NULL : &no_formula;
}

/**
 * sw_readability_scale_is_hard:
 * @value: a value of this scale
 *
 * Returns: whether simpler words are asked for
 */
gboolean
sw_readability_scale_is_hard (const SwReadabilityScale *self,
                              double                    value)
{
  return self->higher_is_easier ? value < self->aim : value > self->aim;
}

/* "4.2", or "below 4" where the scale does not reach. */
static char *
dup_number (const SwReadabilityScale *self,
            double                    value)
{
  if (value < self->lowest)
    return g_strdup_printf (_ ("below %.0f"), self->lowest);
  if (value > self->highest)
    return g_strdup_printf (_ ("above %.0f"), self->highest);

  return g_strdup_printf ("%.1f", value);
}

static const char *
find_step (double points)
{
  gsize i = 0;

  while (points < inflesz[i].from)
    i++;

  return _ (inflesz[i].words);
}

/**
 * sw_readability_scale_describe:
 * @value: a value of this scale
 *
 * Returns: (transfer full): the value with its unit and its scale's name, as part of a sentence
 */
char *
sw_readability_scale_describe (const SwReadabilityScale *self,
                               double                    value)
{
  g_autofree char *number = dup_number (self, value);

  if (self->reckon == sw_readability_get_grade)
    /* Translators: a number, or "below 1" */
    return g_strdup_printf (_ ("school grade %s (Flesch-Kincaid)"), number);
  if (self->reckon == sw_readability_get_perspicuity)
    /* Translators: a number, or "below 0"; then a word for how easy that is */
    return g_strdup_printf (_ ("%s of 100 points, %s (Szigriszt-Pazos, INFLESZ)"), number, find_step (value));
  if (self->reckon == sw_readability_get_sachtext)
    /* Translators: a number, or "below 4". The formula's name stays German. */
    return g_strdup_printf (_ ("school year %s (first Wiener Sachtextformel)"), number);

  return g_strdup_printf (_ ("%s words a sentence (no accepted formula known for this language)"), number);
}

/**
 * sw_readability_scale_describe_briefly:
 * @value: a value of this scale
 *
 * Returns: (transfer full): the value with its unit, as part of a sentence
 */
char *
sw_readability_scale_describe_briefly (const SwReadabilityScale *self,
                                       double                    value)
{
  g_autofree char *number = dup_number (self, value);

  if (self->reckon == sw_readability_get_grade)
    return g_strdup_printf (_ ("school grade %s"), number);
  if (self->reckon == sw_readability_get_perspicuity)
    return g_strdup_printf (_ ("%s of 100 points, %s"), number, find_step (value));
  if (self->reckon == sw_readability_get_sachtext)
    return g_strdup_printf (_ ("school year %s"), number);

  return g_strdup_printf (_ ("%s words a sentence"), number);
}

/**
 * sw_readability_scale_describe_aim:
 *
 * Returns: (transfer full): where values of texts for clients should be
 */
char *
sw_readability_scale_describe_aim (const SwReadabilityScale *self)
{
  if (self->higher_is_easier)
    return g_strdup_printf (_ ("aim: %.0f or above"), self->aim);

  return g_strdup_printf (_ ("aim: %.0f or below"), self->aim);
}

/**
 * sw_readability_scale_get_source:
 *
 * Returns: what the aim rests on, in whole sentences
 */
const char *
sw_readability_scale_get_source (const SwReadabilityScale *self)
{
  if (self->reckon == sw_readability_get_grade)
    return _ ("Texts for clients should be readable with six years of school (target of the American Medical "
              "Association and the National Institutes of Health).");
  if (self->reckon == sw_readability_get_perspicuity)
    return _ ("From 65 points on, primary school is enough to read it (INFLESZ scale: Barrio-Cantalejo and others "
              "2008); six years of school are the target for clients (American Medical Association and the National "
              "Institutes of Health).");
  if (self->reckon == sw_readability_get_sachtext)
    return _ ("The value is the school year that can read it (Bamberger and Vanecek 1984); six years of school are "
              "the target for clients (American Medical Association and the National Institutes of Health).");

  return _ ("For this language only the length of sentences can be told; 15 words on average are common practice.");
}
