/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Before an exercise is even added: what of the client's condition speaks against it. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-exercise-warning.h"
#include "sw-finding-mark.h"
#include "sw-labels.h"
#include "sw-precautions.h"

struct _SwExerciseWarning
{
  GtkWidget parent_instance;

  GtkImage *mark;
  GtkLabel *words;
};

G_DEFINE_FINAL_TYPE (SwExerciseWarning, sw_exercise_warning, GTK_TYPE_WIDGET)

/* How severe it is that a client with @precaution does @exercise; -1 when nothing speaks against it. */
static int
level_against (const SwExerciseFacts *facts,
               SwPrecaution           precaution)
{
  int level = -1;

  for (int caution = 0; caution < sw_term_get_n_values (SW_TYPE_CAUTION); caution++)
    {
      const SwPrecautionRule *rule;

      if ((facts->cautions & SW_SET (caution)) == 0)
        continue;
      rule = sw_precautions_find_rule (precaution, (SwCaution) caution);
      if (rule != NULL)
        level = MAX (level, (int) rule->level);
    }

  if (facts->dose.load.unit != SW_LOAD_NONE)
    {
      const SwLoadRule *rule = sw_precautions_find_load_rule (precaution, facts->region, facts->equipment);

      if (rule != NULL)
        level = MAX (level, (int) rule->level);
    }

  return level;
}

/* The precautions that ask for a second look or an answer, and the worst level among them. What is merely worth
 * knowing is left to the findings. */
static SwSet
find_against (SwExercise     *exercise,
              SwSet           precautions,
              SwFindingLevel *worst)
{
  const SwExerciseFacts *facts = sw_exercise_get_facts (exercise);
  SwSet against = 0;

  *worst = SW_FINDING_ASK;
  for (int precaution = 0; precaution < sw_term_get_n_values (SW_TYPE_PRECAUTION); precaution++)
    {
      int level = -1;

      if ((precautions & SW_SET (precaution)) != 0)
        level = level_against (facts, (SwPrecaution) precaution);
      if (level < (int) SW_FINDING_ASK)
        continue;

      against |= SW_SET (precaution);
      *worst = MAX (*worst, (SwFindingLevel) level);
    }

  return against;
}

static void
sw_exercise_warning_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);

  G_OBJECT_CLASS (sw_exercise_warning_parent_class)->dispose (object);
}

static void
sw_exercise_warning_class_init (SwExerciseWarningClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_exercise_warning_dispose;

  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "exercisewarning");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/setwright/Setwright/ui/sw-exercise-warning.ui");
  gtk_widget_class_bind_template_child (widget_class, SwExerciseWarning, mark);
  gtk_widget_class_bind_template_child (widget_class, SwExerciseWarning, words);
}

static void
sw_exercise_warning_init (SwExerciseWarning *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (gtk_widget_get_layout_manager (GTK_WIDGET (self))), 4);
}

/**
 * sw_exercise_warning_set:
 * @exercise: (nullable): an exercise
 * @precautions: set of #SwPrecaution of the client
 */
void
sw_exercise_warning_set (SwExerciseWarning *self,
                         SwExercise        *exercise,
                         SwSet              precautions)
{
  SwFindingLevel level;
  SwSet against = 0;
  g_autofree char *names = NULL;
  g_autofree char *words = NULL;

  g_return_if_fail (SW_IS_EXERCISE_WARNING (self));

  if (exercise != NULL && precautions != 0)
    against = find_against (exercise, precautions, &level);

  gtk_widget_set_visible (GTK_WIDGET (self), against != 0);
  if (against == 0)
    return;

  names = sw_label_set (SW_TYPE_PRECAUTION, against);
  if (level == SW_FINDING_STOP)
    /* Translators: %s is one or more precautions, for example "Against: Osteoporosis" */
    words = g_strdup_printf (_("Against: %s"), names);
  else
    /* Translators: %s is one or more precautions, for example "Take care: Risk of falling" */
    words = g_strdup_printf (_("Take care: %s"), names);

  gtk_label_set_label (self->words, words);
  sw_finding_mark_show (self->mark, level, words);
}

/**
 * sw_exercise_warning_get_words:
 *
 * Returns: (nullable): what it says, NULL when nothing speaks against the exercise
 */
const char *
sw_exercise_warning_get_words (SwExerciseWarning *self)
{
  g_return_val_if_fail (SW_IS_EXERCISE_WARNING (self), NULL);

  return gtk_widget_get_visible (GTK_WIDGET (self)) ? gtk_label_get_label (self->words) : NULL;
}
