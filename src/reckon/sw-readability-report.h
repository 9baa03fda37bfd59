/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sw-programme.h"
#include "sw-readability-scale.h"
#include "sw-reckon-enum-types.h"

G_BEGIN_DECLS

/* So many sentences are named where there is room for a few. */
#define SW_READABILITY_N_HARDEST 3

/**
 * SwReadabilityField:
 *
 * What of a programme a sentence is read in: a part of an exercise's text, or the therapist's own words.
 */
typedef enum
{
  SW_READABILITY_PURPOSE,
  SW_READABILITY_SET_UP,
  SW_READABILITY_STEP,
  SW_READABILITY_FORM_POINT,
  SW_READABILITY_ERROR,
  SW_READABILITY_FEEL,
  SW_READABILITY_EASIER,
  SW_READABILITY_HARDER,
  SW_READABILITY_QUESTION,
  SW_READABILITY_NOTE,
} SwReadabilityField;

/**
 * SwReadabilitySentence:
 * @text: the sentence
 * @index: how many sentences come before it in what was read
 * @counts: what is counted in it
 * @adds: by how much, in the scale's unit, the text would be easier to read without it; 0 for an only sentence
 * @item: (nullable): the item of the programme
 * @field: what it stands in
 * @number: which of several of this kind, from 1; 0 where there is only one
 *
 * A sentence and where it stands.
 */
typedef struct
{
  char *text;
  guint index;
  SwReadability counts;
  double adds;
  SwItem *item;
  SwReadabilityField field;
  guint number;
} SwReadabilitySentence;

/**
 * SwReadabilityReport:
 * @scale: how reading is measured in this language
 * @counts: of all sentences
 * @value: on @scale
 * @sentences: (element-type SwReadabilitySentence): those that add most first
 * @n_other: exercises that are in another language, and not counted
 *
 * How hard a text is to read, and what makes it so.
 */
typedef struct
{
  const SwReadabilityScale *scale;
  SwReadability counts;
  double value;
  GPtrArray *sentences;
  guint n_other;
} SwReadabilityReport;

SwReadabilityReport *sw_readability_report_new_for_text (const SwExerciseText *text);
SwReadabilityReport *sw_readability_report_new_for_programme (SwProgramme *programme);
GPtrArray *sw_readability_report_split (const SwReadabilityReport *self);
void sw_readability_report_free (SwReadabilityReport *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwReadabilityReport, sw_readability_report_free)

gboolean sw_readability_report_is_hard (const SwReadabilityReport *self);
guint sw_readability_report_get_n_hardest (const SwReadabilityReport *self);
char *sw_readability_report_describe (const SwReadabilityReport *self);
GStrv sw_readability_report_dup_hardest (const SwReadabilityReport *self);

G_END_DECLS
