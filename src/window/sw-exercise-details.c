/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An exercise in full below the catalogue's cards: what it is for, how it is done, what to look out for. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-exercise-card.h"
#include "sw-exercise-details.h"
#include "sw-exercise-warning.h"
#include "sw-labels.h"
#include "sw-languages.h"
#include "sw-readability-report.h"
#include "sw-review-words.h"

struct _SwExerciseDetails
{
  GtkWidget parent_instance;

  GtkLabel *name;
  GtkScrolledWindow *scroller;
  SwFigureView *figure;
  SwExerciseWarning *warning;
  GtkBox *words;

  SwExercise *exercise;
  SwCatalogue *catalogue;
  SwSet precautions;
};

G_DEFINE_FINAL_TYPE (SwExerciseDetails, sw_exercise_details, GTK_TYPE_WIDGET)

static GtkWidget *
add_label (SwExerciseDetails *self,
           const char        *words,
           const char        *css_class)
{
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  gtk_box_append (self->words, label);
  return label;
}

static void
add_paragraph (SwExerciseDetails *self,
               const char        *heading,
               const char        *words)
{
  if (words == NULL || *words == '\0')
    return;

  add_label (self, heading, "part");
  add_label (self, words, NULL);
}

static void
add_lines (SwExerciseDetails  *self,
           const char         *heading,
           char              **lines,
           gboolean            numbered)
{
  if (lines == NULL || lines[0] == NULL)
    return;

  add_label (self, heading, "part");
  for (guint i = 0; lines[i] != NULL; i++)
    {
      g_autofree char *line = NULL;

      if (numbered)
        /* Translators: a step of an exercise with its number, for example "1. Lift your toes." */
        line = g_strdup_printf (_("%u. %s"), i + 1, lines[i]);
      else
        line = g_strdup_printf ("• %s", lines[i]);
      add_label (self, line, "line");
    }
}

/* A button for each linked exercise that the catalogue still has. */
static void
add_links (SwExerciseDetails  *self,
           const char         *heading,
           char              **ids)
{
  gboolean first = TRUE;

  for (guint i = 0; ids != NULL && ids[i] != NULL; i++)
    {
      SwExercise *linked = self->catalogue != NULL ? sw_catalogue_lookup (self->catalogue, ids[i]) : NULL;
      GtkWidget *button;

      if (linked == NULL)
        continue;
      if (first)
        add_label (self, heading, "part");
      first = FALSE;

      button = gtk_button_new_with_label (sw_exercise_card_text_of (linked)->name);
      gtk_label_set_wrap (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (button))), TRUE);
      gtk_label_set_xalign (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (button))), 0.0f);
      gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "catalogue.show-exercise");
      gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", ids[i]);
      gtk_box_append (self->words, button);
    }
}

static void
add_facts (SwExerciseDetails *self)
{
  const SwExerciseFacts *facts = sw_exercise_get_facts (self->exercise);
  g_autofree char *dose = sw_dose_to_line (&facts->dose);
  g_autofree char *equipment = sw_label_set (SW_TYPE_EQUIPMENT, facts->equipment);
  g_autofree char *aims = sw_label_set (SW_TYPE_AIM, facts->aims);
  g_autofree char *muscles = sw_label_set (SW_TYPE_MUSCLE, facts->muscles);
  g_autofree char *cautions = sw_label_set (SW_TYPE_CAUTION, facts->cautions);

  add_paragraph (self, _("Usual dose"), dose);
  add_paragraph (self, _("Why this dose"), facts->dose_reason);
  add_paragraph (self, _("Region"), sw_label (SW_TYPE_REGION, facts->region));
  add_paragraph (self, _("Position"), sw_label (SW_TYPE_POSITION, facts->position));
  add_paragraph (self, _("Equipment"), facts->equipment != 0 ? equipment : _("None"));
  add_paragraph (self, _("Aims"), aims);
  add_paragraph (self, _("Muscles"), muscles);
  add_paragraph (self, _("Asks of the body"), cautions);
}

static void
add_review (SwExerciseDetails *self)
{
  g_autofree char *sentence = sw_review_sentence (sw_exercise_get_facts (self->exercise));

  if (sentence != NULL)
    gtk_widget_add_css_class (add_label (self, sentence, "dim"), "small-words");
}

/* A line for each language the exercise is written in; its name is said where there are several. */
static char *
describe_reading (SwExercise *exercise)
{
  GString *lines = g_string_new (NULL);
  guint n = sw_exercise_get_n_texts (exercise);

  for (guint i = 0; i < n; i++)
    {
      const SwExerciseText *text = sw_exercise_get_nth_text (exercise, i);
      g_autoptr (SwReadabilityReport) report = sw_readability_report_new_for_text (text);
      g_autofree char *reading = report != NULL ? sw_readability_report_describe (report)
                                                : g_strdup (_("nothing can be counted in this script"));

      if (i > 0)
        g_string_append_c (lines, '\n');
      if (n > 1)
        /* Translators: a language, then how hard the text is to read in it */
        g_string_append_printf (lines, _("%s: %s"), sw_languages_get_name (text->language), reading);
      else
        g_string_append (lines, reading);
    }

  return g_string_free (lines, FALSE);
}

static void
add_reading (SwExerciseDetails    *self,
             const SwExerciseText *shown)
{
  g_autofree char *words = describe_reading (self->exercise);
  g_autofree char *reading = sw_label_capitalised (words);
  g_autoptr (SwReadabilityReport) report = sw_readability_report_new_for_text (shown);
  g_auto (GStrv) hardest = report != NULL ? sw_readability_report_dup_hardest (report) : NULL;

  add_paragraph (self, _("How it reads"), reading);
  if (hardest != NULL)
    add_lines (self, _("Hardest to read"), hardest, FALSE);
}

static void
fill (SwExerciseDetails *self)
{
  const SwExerciseText *text = sw_exercise_card_text_of (self->exercise);
  const SwExerciseFacts *facts = sw_exercise_get_facts (self->exercise);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->words))) != NULL)
    gtk_box_remove (self->words, child);

  gtk_label_set_label (self->name, text->name);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->name), text->name);
  sw_exercise_warning_set (self->warning, self->exercise, self->precautions);
  add_label (self, text->purpose, NULL);
  add_review (self);
  add_paragraph (self, _("Set-up"), text->set_up);
  add_lines (self, _("Steps"), text->steps, TRUE);
  add_lines (self, _("Form points"), text->form_points, FALSE);
  add_lines (self, _("Common errors"), text->errors, FALSE);
  add_paragraph (self, _("Where it is felt"), text->feel);
  add_paragraph (self, _("To make it easier"), text->easier);
  add_paragraph (self, _("To make it harder"), text->harder);
  add_links (self, _("Easier exercises"), facts->easier);
  add_links (self, _("Harder exercises"), facts->harder);
  add_facts (self);
  add_reading (self, text);
}

static void
start_motion (SwExerciseDetails *self)
{
  gboolean animations;

  g_object_get (gtk_widget_get_settings (GTK_WIDGET (self)), "gtk-enable-animations", &animations, NULL);
  sw_figure_view_set_playing (self->figure, animations && self->exercise != NULL);
}

static void
sw_exercise_details_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (sw_exercise_details_parent_class)->map (widget);
  start_motion (SW_EXERCISE_DETAILS (widget));
}

static void
sw_exercise_details_dispose (GObject *object)
{
  SwExerciseDetails *self = SW_EXERCISE_DETAILS (object);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->exercise);
  g_clear_object (&self->catalogue);

  G_OBJECT_CLASS (sw_exercise_details_parent_class)->dispose (object);
}

static void
sw_exercise_details_class_init (SwExerciseDetailsClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_exercise_details_dispose;
  widget_class->map = sw_exercise_details_map;

  g_type_ensure (SW_TYPE_FIGURE_VIEW);
  g_type_ensure (SW_TYPE_EXERCISE_WARNING);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "exercisedetails");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/setwright/Setwright/ui/sw-exercise-details.ui");
  gtk_widget_class_bind_template_child (widget_class, SwExerciseDetails, name);
  gtk_widget_class_bind_template_child (widget_class, SwExerciseDetails, scroller);
  gtk_widget_class_bind_template_child (widget_class, SwExerciseDetails, figure);
  gtk_widget_class_bind_template_child (widget_class, SwExerciseDetails, warning);
  gtk_widget_class_bind_template_child (widget_class, SwExerciseDetails, words);
}

static void
sw_exercise_details_init (SwExerciseDetails *self)
{
  GtkLayoutManager *layout;

  gtk_widget_init_template (GTK_WIDGET (self));

  layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
}

/**
 * sw_exercise_details_set_pictures:
 * @pictures: where the figure comes from
 */
void
sw_exercise_details_set_pictures (SwExerciseDetails *self,
                                  SwPictures        *pictures)
{
  g_return_if_fail (SW_IS_EXERCISE_DETAILS (self));

  sw_figure_view_set_pictures (self->figure, pictures);
}

/**
 * sw_exercise_details_show:
 * @exercise: what to show
 * @catalogue: (nullable): where easier and harder exercises are looked up
 * @precautions: set of #SwPrecaution of the client
 *
 * Shows the exercise from its beginning; nothing happens when all is shown already.
 */
void
sw_exercise_details_show (SwExerciseDetails *self,
                          SwExercise        *exercise,
                          SwCatalogue       *catalogue,
                          SwSet              precautions)
{
  gboolean another;

  g_return_if_fail (SW_IS_EXERCISE_DETAILS (self));
  g_return_if_fail (SW_IS_EXERCISE (exercise));

  if (self->exercise == exercise && self->catalogue == catalogue && self->precautions == precautions)
    return;

  another = g_set_object (&self->exercise, exercise);
  g_set_object (&self->catalogue, catalogue);
  self->precautions = precautions;
  fill (self);
  if (!another)
    return;

  sw_figure_view_set_playing (self->figure, FALSE);
  sw_figure_view_set_exercise (self->figure, exercise, FALSE);
  sw_figure_view_describe (self->figure, sw_exercise_card_text_of (exercise)->name);
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scroller), 0.0);
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    start_motion (self);
}

/**
 * sw_exercise_details_get_exercise:
 *
 * Returns: (transfer none) (nullable): what is shown
 */
SwExercise *
sw_exercise_details_get_exercise (SwExerciseDetails *self)
{
  g_return_val_if_fail (SW_IS_EXERCISE_DETAILS (self), NULL);

  return self->exercise;
}

/**
 * sw_exercise_details_toggle_motion:
 *
 * Plays the motion of the large figure, or stops it.
 */
void
sw_exercise_details_toggle_motion (SwExerciseDetails *self)
{
  g_return_if_fail (SW_IS_EXERCISE_DETAILS (self));

  sw_figure_view_set_playing (self->figure, !sw_figure_view_get_playing (self->figure));
}
