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
#include "sw-readability-report.h"

/* More are not kept in mind while moving (common practice). */
#define MOST_STEPS 6

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

/* Where the text is hard to read, with the sentences that make it so; the line is that of the first. */
static void
check_reading (Subject              *self,
               const SwExerciseText *text)
{
  g_autoptr (SwReadabilityReport) report = sw_readability_report_new_for_text (text);
  g_autofree char *reading = NULL;
  g_autofree char *sentences = NULL;
  g_autofree char *words = NULL;
  g_auto (GStrv) hardest = NULL;

  if (report == NULL || !sw_readability_report_is_hard (report))
    return;

  reading = sw_readability_report_describe (report);
  hardest = sw_readability_report_dup_hardest (report);
  sentences = g_strjoinv ("; ", hardest);
  /* Translators: for example "school grade 7.1 (Flesch-Kincaid); aim: 6 or below", then sentences */
  words = g_strdup_printf (_("it is hard to read: %s. Use shorter words and sentences, first in %s"), reading,
                           sentences);
  add (self, SW_FINDING_ASK, NULL, ((const SwReadabilitySentence *) report->sentences->pdata[0])->text, words);
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

/* Whether each step that the figure shows is there. */
static void
check_shown_steps (Subject              *self,
                   SwFigureSpec         *figure,
                   const SwExerciseText *text)
{
  const SwFigureContent *content = sw_figure_spec_get_content (figure);
  int n_steps = (int) g_strv_length (text->steps);

  for (int i = 0; i < content->n_poses; i++)
    if (content->poses[i].step > n_steps)
      {
        g_autofree char *words
            = g_strdup_printf (_("pose %d of the figure shows step %d, and there is no such step. Name another."), i + 1,
                               content->poses[i].step);

        add (self, SW_FINDING_ASK, "figure", NULL, words);
      }
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
      check_reading (&self, sw_exercise_get_nth_text (exercise, i));
      if (sw_exercise_get_figure (exercise) != NULL)
        check_shown_steps (&self, sw_exercise_get_figure (exercise), sw_exercise_get_nth_text (exercise, i));
    }
  check_dose (&self, facts);
  check_review (&self, facts, date);
  if (sw_exercise_get_figure (exercise) == NULL)
    add (&self, SW_FINDING_ASK, "figure", NULL, _("it has no picture. Add a <figure>."));
}
