/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What one exercise lacks before a client can do it alone: parts of its text, plain words, a dose that is published for
 * its aim, a picture, a clinician's look at it. */
#include "config.h"

#include <glib/gi18n.h>
#include <string.h>

#include "sw-check-exercise.h"
#include "sw-dose-range.h"
#include "sw-exercise-line.h"
#include "sw-problem.h"
#include "sw-readability.h"

/* More are not kept in mind while moving (common practice). */
#define MOST_STEPS 6

/* Texts for patients are to be read at grade 6 or below: the target of the American Medical Association and the
 * National Institutes of Health. */
#define HARDEST_GRADE 6.0

typedef struct
{
  GBytes *bytes;
  const char *path;
  GPtrArray *problems;
} Subject;

static void
add (Subject        *self,
     SwFindingLevel  level,
     const char     *element,
     const char     *content,
     const char     *text)
{
  long line = sw_exercise_find_line (self->bytes, element, content);

  g_ptr_array_add (self->problems, sw_problem_new_at_level (self->path, line, level, text));
}

static gboolean
is_empty (const char *words)
{
  return words == NULL || *words == '\0';
}

static void
check_parts (Subject              *self,
             const SwExerciseText *text)
{
  const struct
  {
    gboolean missing;
    const char *words;
  } parts[] = {
    { is_empty (text->purpose), N_("it is not said what it is for. Add a <purpose>.") },
    { text->steps[0] == NULL, N_("it is not said how it is done. Add <step>s, one action each.") },
    { text->form_points[0] == NULL, N_("no form point tells what doing it right is like. Add a <form-point>.") },
    { text->errors[0] == NULL, N_("no common error is named. Add an <error>, with what to do instead.") },
    { is_empty (text->feel), N_("it is not said where it is felt. Add a <feel>.") },
    { is_empty (text->easier), N_("no easier way is given for when it is too hard. Add an <easier-way>.") },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (parts[i].missing)
      add (self, SW_FINDING_ASK, "text", text->language, _(parts[i].words));

  if (g_strv_length (text->steps) > MOST_STEPS)
    {
      g_autofree char *words
          = g_strdup_printf (ngettext ("it has %u step, and more than %d are not kept in mind. Join or drop some.",
                                       "it has %u steps, and more than %d are not kept in mind. Join or drop some.",
                                       g_strv_length (text->steps)),
                             g_strv_length (text->steps), MOST_STEPS);

      add (self, SW_FINDING_ASK, "step", text->steps[MOST_STEPS], words);
    }
}

/* The hardest sentence met so far, and the counts of all. */
typedef struct
{
  SwReadability all;
  double hardest_grade;
  char *hardest;
} Reading;

static void
read_text (Reading    *reading,
           const char *text)
{
  while (text != NULL)
    {
      SwReadability counts = { 0 };
      g_autofree char *sentence = sw_readability_take_sentence (&text, &counts);
      double grade = sw_readability_get_grade (&counts);

      if (sentence == NULL)
        return;

      reading->all.sentences += counts.sentences;
      reading->all.words += counts.words;
      reading->all.syllables += counts.syllables;
      reading->all.polysyllables += counts.polysyllables;
      if (reading->hardest != NULL && grade <= reading->hardest_grade)
        continue;
      g_free (reading->hardest);
      reading->hardest = g_steal_pointer (&sentence);
      reading->hardest_grade = grade;
    }
}

static void
read_list (Reading  *reading,
           char    **texts)
{
  for (guint i = 0; texts[i] != NULL; i++)
    read_text (reading, texts[i]);
}

/* The formula is made for English alone. */
static void
check_grade (Subject              *self,
             const SwExerciseText *text)
{
  Reading reading = { 0 };
  double grade;

  if (g_ascii_strncasecmp (text->language, "en", 2) != 0 || g_ascii_isalpha (text->language[2]))
    return;

  read_text (&reading, text->purpose);
  read_text (&reading, text->set_up);
  read_list (&reading, text->steps);
  read_list (&reading, text->form_points);
  read_list (&reading, text->errors);
  read_text (&reading, text->feel);
  read_text (&reading, text->easier);
  read_text (&reading, text->harder);
  grade = sw_readability_get_grade (&reading.all);
  if (grade > HARDEST_GRADE)
    {
      g_autofree char *words
          = g_strdup_printf (_("it reads at school grade %.1f, above %.0f (Flesch-Kincaid). Use shorter words and "
                               "sentences, first in “%s”"),
                             grade, HARDEST_GRADE, reading.hardest);

      add (self, SW_FINDING_ASK, NULL, reading.hardest, words);
    }
  g_free (reading.hardest);
}

static void
check_dose (Subject               *self,
            const SwExerciseFacts *facts)
{
  g_autofree char *fault = facts->dose_reason == NULL ? sw_dose_range_find_fault (&facts->dose, facts->aims) : NULL;
  g_autofree char *words = NULL;

  if (fault == NULL)
    return;

  words = g_strdup_printf (_("the usual dose leaves what is published %s. Change it, or say why in a <dose-reason>."),
                           fault);
  add (self, SW_FINDING_ASK, "dose", NULL, words);
}

static void
check_review (Subject               *self,
              const SwExerciseFacts *facts,
              const char            *date)
{
  g_autofree char *words = NULL;

  if (!facts->has_review || facts->review == SW_REVIEW_STATE_RETIRED || *facts->review_due == '\0'
      || strcmp (facts->review_due, date) >= 0)
    return;

  words = g_strdup_printf (_("a clinician’s review was due on %s. Have it reviewed, and set the next day in <review>."),
                           facts->review_due);
  add (self, SW_FINDING_TELL, "review", NULL, words);
}

/**
 * sw_check_exercise:
 * @exercise: an exercise
 * @bytes: its file
 * @path: the file's path
 * @date: the day to reckon with, YYYY-MM-DD
 * @problems: (element-type SwProblem): takes what is found
 *
 * Checks what an exercise says. Whether the schema allows it and whether its figure can be drawn is checked elsewhere.
 */
void
sw_check_exercise (SwExercise *exercise,
                   GBytes     *bytes,
                   const char *path,
                   const char *date,
                   GPtrArray  *problems)
{
  Subject self = { bytes, path, problems };
  const SwExerciseFacts *facts = sw_exercise_get_facts (exercise);

  for (guint i = 0; i < sw_exercise_get_n_texts (exercise); i++)
    {
      check_parts (&self, sw_exercise_get_nth_text (exercise, i));
      check_grade (&self, sw_exercise_get_nth_text (exercise, i));
    }
  check_dose (&self, facts);
  check_review (&self, facts, date);
  if (sw_exercise_get_figure (exercise) == NULL)
    add (&self, SW_FINDING_ASK, "figure", NULL, _("it has no picture. Add a <figure>."));
}
