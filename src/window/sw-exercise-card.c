/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a therapist sees of an exercise while choosing: enough to decide, nothing to read twice. */
#include "config.h"

#include "sw-exercise-card.h"
#include "sw-exercise-warning.h"
#include "sw-labels.h"
#include "sw-review-words.h"

struct _SwExerciseCard
{
  GtkWidget parent_instance;

  SwFigureView *figure;
  GtkLabel *name;
  GtkLabel *dose;
  GtkLabel *place;
  SwExerciseWarning *warning;

  SwExercise *exercise;
  SwSet precautions;
};

G_DEFINE_FINAL_TYPE (SwExerciseCard, sw_exercise_card, GTK_TYPE_WIDGET)

enum
{
  MENU_WANTED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

/* The start position, the equipment and what is to be known of the review: "Sitting · Chair, band · Draft". */
static char *
dup_place (SwExercise *exercise)
{
  const SwExerciseFacts *facts = sw_exercise_get_facts (exercise);
  const char *tag = sw_review_tag (facts);
  GString *place = g_string_new (sw_label (SW_TYPE_POSITION, facts->position));

  if (facts->equipment != 0)
    {
      g_autofree char *equipment = sw_label_set (SW_TYPE_EQUIPMENT, facts->equipment);

      g_string_append_printf (place, " · %s", equipment);
    }
  /* Quiet, in this line and without a sign of its own: nearly every exercise of a young catalogue bears it. */
  if (tag != NULL)
    g_string_append_printf (place, " · %s", tag);

  return g_string_free (place, FALSE);
}

/* The usual dose for a first look: the limits of effort and pain are left to the details. */
static char *
dup_short_dose (SwExercise *exercise)
{
  SwDose dose = sw_exercise_get_facts (exercise)->dose;

  dose.effort_limit = 0;
  dose.pain_limit = -1;
  return sw_dose_to_line (&dose);
}

static GdkContentProvider *
drag_prepared_cb (SwExerciseCard *self,
                  double          x,
                  double          y,
                  GtkDragSource  *source)
{
  (void) x;
  (void) y;
  (void) source;
  if (self->exercise == NULL)
    return NULL;

  return gdk_content_provider_new_typed (SW_TYPE_EXERCISE, self->exercise);
}

/* The card may be bound anew while its exercise is under way, so the icon is a still of the figure. */
static void
drag_begun_cb (SwExerciseCard *self,
               GdkDrag        *drag,
               GtkDragSource  *source)
{
  g_autoptr (GdkPaintable) view = NULL;
  g_autoptr (GdkPaintable) still = NULL;

  (void) drag;
  sw_figure_view_set_playing (self->figure, FALSE);
  view = gtk_widget_paintable_new (GTK_WIDGET (self->figure));
  still = gdk_paintable_get_current_image (view);
  gtk_drag_source_set_icon (source, still, gdk_paintable_get_intrinsic_width (still) / 2,
                            gdk_paintable_get_intrinsic_height (still) / 2);
}

static void
secondary_pressed_cb (SwExerciseCard *self,
                      int             n_presses,
                      double          x,
                      double          y,
                      GtkGesture     *gesture)
{
  (void) self;
  (void) n_presses;
  (void) x;
  (void) y;
  gtk_gesture_set_state (gesture, GTK_EVENT_SEQUENCE_CLAIMED);
}

/* Not at the press: GTK 4.8 warns of "broken accounting of active state" when a popover comes up under a button
 * that is still down. */
static void
secondary_released_cb (SwExerciseCard *self,
                       int             n_presses,
                       double          x,
                       double          y)
{
  (void) n_presses;
  g_signal_emit (self, signals[MENU_WANTED], 0, x, y);
}

static void
sw_exercise_card_dispose (GObject *object)
{
  SwExerciseCard *self = SW_EXERCISE_CARD (object);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->exercise);

  G_OBJECT_CLASS (sw_exercise_card_parent_class)->dispose (object);
}

static void
sw_exercise_card_class_init (SwExerciseCardClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_exercise_card_dispose;

  signals[MENU_WANTED] = g_signal_new ("menu-wanted", SW_TYPE_EXERCISE_CARD, G_SIGNAL_RUN_LAST, 0, NULL,
                                       NULL, NULL, G_TYPE_NONE, 2, G_TYPE_DOUBLE, G_TYPE_DOUBLE);

  g_type_ensure (SW_TYPE_FIGURE_VIEW);
  g_type_ensure (SW_TYPE_EXERCISE_WARNING);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "exercisecard");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/setwright/Setwright/ui/sw-exercise-card.ui");
  gtk_widget_class_bind_template_child (widget_class, SwExerciseCard, figure);
  gtk_widget_class_bind_template_child (widget_class, SwExerciseCard, name);
  gtk_widget_class_bind_template_child (widget_class, SwExerciseCard, dose);
  gtk_widget_class_bind_template_child (widget_class, SwExerciseCard, place);
  gtk_widget_class_bind_template_child (widget_class, SwExerciseCard, warning);
  gtk_widget_class_bind_template_callback (widget_class, drag_prepared_cb);
  gtk_widget_class_bind_template_callback (widget_class, drag_begun_cb);
  gtk_widget_class_bind_template_callback (widget_class, secondary_pressed_cb);
  gtk_widget_class_bind_template_callback (widget_class, secondary_released_cb);
}

static void
sw_exercise_card_init (SwExerciseCard *self)
{
  GtkLayoutManager *layout;

  gtk_widget_init_template (GTK_WIDGET (self));

  layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  sw_figure_view_set_play_on_hover (self->figure, TRUE);
}

/**
 * sw_exercise_card_new:
 * @pictures: (nullable): where pictures come from; may be set later
 *
 * Returns: (transfer floating): an empty card
 */
GtkWidget *
sw_exercise_card_new (SwPictures *pictures)
{
  SwExerciseCard *self = g_object_new (SW_TYPE_EXERCISE_CARD, NULL);

  if (pictures != NULL)
    sw_exercise_card_set_pictures (self, pictures);

  return GTK_WIDGET (self);
}

/**
 * sw_exercise_card_set_pictures:
 * @pictures: where pictures come from
 */
void
sw_exercise_card_set_pictures (SwExerciseCard *self,
                               SwPictures     *pictures)
{
  g_return_if_fail (SW_IS_EXERCISE_CARD (self));

  sw_figure_view_set_pictures (self->figure, pictures);
}

/**
 * sw_exercise_card_set_exercise:
 * @exercise: (nullable): what to show
 */
void
sw_exercise_card_set_exercise (SwExerciseCard *self,
                               SwExercise     *exercise)
{
  g_autofree char *dose = NULL;
  g_autofree char *place = NULL;

  g_return_if_fail (SW_IS_EXERCISE_CARD (self));

  if (!g_set_object (&self->exercise, exercise))
    return;

  sw_figure_view_set_playing (self->figure, FALSE);
  sw_figure_view_set_exercise (self->figure, exercise, FALSE);
  if (exercise == NULL)
    return;

  dose = dup_short_dose (exercise);
  place = dup_place (exercise);
  gtk_label_set_label (self->name, sw_exercise_card_text_of (exercise)->name);
  gtk_label_set_label (self->dose, dose);
  gtk_label_set_label (self->place, place);
  sw_exercise_warning_set (self->warning, self->exercise, self->precautions);
}

/**
 * sw_exercise_card_get_exercise:
 *
 * Returns: (transfer none) (nullable): what the card shows
 */
SwExercise *
sw_exercise_card_get_exercise (SwExerciseCard *self)
{
  g_return_val_if_fail (SW_IS_EXERCISE_CARD (self), NULL);

  return self->exercise;
}

/**
 * sw_exercise_card_set_precautions:
 * @precautions: set of #SwPrecaution of the client
 */
void
sw_exercise_card_set_precautions (SwExerciseCard *self,
                                  SwSet           precautions)
{
  g_return_if_fail (SW_IS_EXERCISE_CARD (self));

  if (self->precautions == precautions)
    return;

  self->precautions = precautions;
  sw_exercise_warning_set (self->warning, self->exercise, self->precautions);
}

/**
 * sw_exercise_card_toggle_motion:
 *
 * Plays the motion, or stops it.
 */
void
sw_exercise_card_toggle_motion (SwExerciseCard *self)
{
  g_return_if_fail (SW_IS_EXERCISE_CARD (self));

  sw_figure_view_set_playing (self->figure, !sw_figure_view_get_playing (self->figure));
}

/**
 * sw_exercise_card_dup_description:
 *
 * Returns: (transfer full): all the card says besides the name, for assistive tools
 */
char *
sw_exercise_card_dup_description (SwExerciseCard *self)
{
  g_return_val_if_fail (SW_IS_EXERCISE_CARD (self), NULL);

  if (sw_exercise_warning_get_words (self->warning) != NULL)
    return g_strdup_printf ("%s. %s. %s", sw_exercise_warning_get_words (self->warning),
                            gtk_label_get_label (self->dose), gtk_label_get_label (self->place));

  return g_strdup_printf ("%s. %s", gtk_label_get_label (self->dose), gtk_label_get_label (self->place));
}

/**
 * sw_exercise_card_text_of:
 * @exercise: an exercise
 *
 * Returns: (transfer none): its words in the language of the window
 */
const SwExerciseText *
sw_exercise_card_text_of (SwExercise *exercise)
{
  return sw_exercise_get_text (exercise, pango_language_to_string (pango_language_get_default ()));
}
