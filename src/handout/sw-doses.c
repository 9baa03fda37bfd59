/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Doses that have been told in words. A handout is composed in several ways before one is chosen, and many of its
 * exercises have the same dose. */
#include "config.h"

#include "sw-doses.h"

struct _SwDoses
{
  SwPhrases *phrases;
  GHashTable *told; /* Told, its own key */
};

typedef struct
{
  SwDose dose;
  SwDoseLimb limb;
  SwUnits units;
  SwDoseWords *words;
} Told;

static guint
hash_told (gconstpointer data)
{
  const SwDose *dose = &((const Told *) data)->dose;
  const int numbers[] = { dose->sets, dose->reps_low, dose->reps_high, dose->hold_s, dose->rest_s, dose->pain_limit };
  guint hash = (guint) dose->side;

  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    hash = 31 * hash + (guint) numbers[i];
  return hash;
}

static gboolean
equal_told (gconstpointer a,
            gconstpointer b)
{
  const Told *one = a;
  const Told *other = b;

  return one->units == other->units && one->limb == other->limb && sw_dose_equal (&one->dose, &other->dose);
}

static void
free_told (gpointer data)
{
  Told *told = data;

  sw_dose_words_free (told->words);
  g_free (told);
}

/**
 * sw_doses_new:
 * @phrases: the client's language
 *
 * Returns: (transfer full): none told yet
 */
SwDoses *
sw_doses_new (SwPhrases *phrases)
{
  SwDoses *self = g_new (SwDoses, 1);

  self->phrases = sw_phrases_ref (phrases);
  self->told = g_hash_table_new_full (hash_told, equal_told, free_told, NULL);
  return self;
}

void
sw_doses_free (SwDoses *self)
{
  g_hash_table_unref (self->told);
  sw_phrases_unref (self->phrases);
  g_free (self);
}

/**
 * sw_doses_tell:
 * @dose: a dose that passes sw_dose_check()
 * @limb: what a side of it means
 * @units: what the client reads loads in
 *
 * Returns: (transfer none): the dose in sentences
 */
const SwDoseWords *
sw_doses_tell (SwDoses      *self,
               const SwDose *dose,
               SwDoseLimb    limb,
               SwUnits       units)
{
  const Told wanted = { *dose, limb, units, NULL };
  Told *told = g_hash_table_lookup (self->told, &wanted);

  if (told == NULL)
    {
      told = g_memdup2 (&wanted, sizeof wanted);
      told->words = sw_dose_words_new (self->phrases, dose, limb, units);
      g_hash_table_add (self->told, told);
    }
  return told->words;
}
