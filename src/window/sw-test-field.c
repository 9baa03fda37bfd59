/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The test of an exercise item. What is entered in the popover becomes a measurement when its load is taken, so that
 * the reckoning can be looked at again, and compared at the next visit. */
#include "config.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n.h>

#include "sw-test-field.h"

#include "sw-bands.h"
#include "sw-choices.h"
#include "sw-course.h"
#include "sw-labels.h"
#include "sw-loads.h"
#include "sw-number.h"
#include "sw-one-max.h"
#include "sw-starting-load.h"
#include "sw-units.h"
#include "sw-working-button.h"

struct _SwTestField
{
  GtkWidget parent_instance;

  SwDocument *document;
  SwItem *item;
  gboolean refreshing;
  char *shown_tests;         /* what the drop-down holds, in a line each */

  GtkWidget *box;
  GtkDropDown *test;
  SwWorkingButton *sides;
  GtkMenuButton *from_test;
  GtkPopover *popover;
  GtkEntry *name;
  SwNumber *load;
  GtkDropDown *unit;
  SwNumber *repetitions;
  GtkDropDown *formula;
  GtkLabel *stretch_label;
  SwNumber *stretch;
  GtkBox *answer;
  SwWorkingButton *result;
  GtkLabel *spread;
  GtkLabel *refusal;
  GtkButton *take;
};

G_DEFINE_FINAL_TYPE (SwTestField, sw_test_field, GTK_TYPE_WIDGET)

static SwProgramme *
get_programme (SwTestField *self)
{
  return sw_document_get_programme (self->document);
}

/* The drop-down leaves out "no load". */
static SwLoadUnit
get_unit (SwTestField *self)
{
  return (SwLoadUnit) (gtk_drop_down_get_selected (self->unit) + 1);
}

static void
test_selected_cb (SwTestField *self)
{
  guint chosen = gtk_drop_down_get_selected (self->test);
  GListModel *model = gtk_drop_down_get_model (self->test);
  g_autoptr (GtkStringObject) name = NULL;

  if (self->item == NULL || self->refreshing)
    return;

  if (chosen > 0)
    name = g_list_model_get_item (model, chosen);
  sw_history_set_string (sw_document_get_history (self->document), _("Choose the test that counts"), self->item, "test",
                         name != NULL ? gtk_string_object_get_string (name) : "");
}

static void
ask (SwTestField            *self,
     SwStartingLoadQuestion *question)
{
  sw_starting_load_question_init (question, get_programme (self), self->item);
  question->tested = (SwLoad) { get_unit (self), fmax (sw_number_get_value (self->load), 0.0) };
  question->tested_repetitions = (int) lround (sw_number_get_value (self->repetitions));
  question->formula = (SwMaxFormula) gtk_drop_down_get_selected (self->formula);
  question->stretch_percent = (int) lround (sw_number_get_value (self->stretch));
}

static void
show_answer (SwTestField          *self,
             const SwStartingLoad *answer)
{
  gboolean reckoned = !isnan (answer->wanted_kg);
  gboolean taken = answer->load.unit != SW_LOAD_NONE;
  g_autofree char *load = sw_load_to_text (answer->load);
  g_autofree char *label = NULL;

  gtk_widget_set_visible (GTK_WIDGET (self->answer), reckoned);
  gtk_widget_set_sensitive (GTK_WIDGET (self->take), taken);
  gtk_widget_set_visible (GTK_WIDGET (self->refusal), answer->refusal != NULL);
  gtk_label_set_label (self->refusal, answer->refusal != NULL ? answer->refusal : "");
  /* Translators: %s is a load such as "7.5 kg". */
  label = taken ? g_strdup_printf (_("Begin with %s"), load) : g_strdup (_("Begin with this load"));
  gtk_button_set_label (self->take, label);
  if (reckoned)
    {
      gboolean pull = sw_exercise_get_facts (sw_item_get_exercise (self->item))->load_limit.unit == SW_LOAD_NEWTON;
      const char *unit = sw_label (SW_TYPE_LOAD_UNIT, pull ? SW_LOAD_NEWTON : SW_LOAD_KG);
      double by = pull ? SW_STANDARD_GRAVITY_M_PER_S2 : 1.0;
      g_autofree char *wanted = sw_number_to_string (answer->wanted_kg * by, 1);
      g_autofree char *low = sw_number_to_string (answer->low_kg * by, 1);
      g_autofree char *high = sw_number_to_string (answer->high_kg * by, 1);
      /* Translators: a number and its unit */
      g_autofree char *words = g_strdup_printf (_("Reckoned: %s %s"), wanted, unit);
      /* Translators: two numbers and their unit */
      g_autofree char *spread
        = g_strdup_printf (answer->rough ? _("The seven formulas: %s to %s %s. A rough guide: many repetitions.")
                           : _("The seven formulas: %s to %s %s."), low, high, unit);

      sw_working_button_show (self->result, words, answer->working);
      gtk_label_set_label (self->spread, spread);
    }
}

static void
entered_cb (SwTestField *self)
{
  g_auto (SwStartingLoadQuestion) question = { 0 };
  g_autoptr (SwStartingLoad) answer = NULL;

  if (self->item == NULL || self->refreshing)
    return;

  ask (self, &question);
  answer = sw_starting_load_new (&question);
  show_answer (self, answer);
}

/* What the fields begin with: the last measurement of the test that counts, else of one named as the exercise. */
static SwMeasurement *
find_measurement (SwTestField *self,
                  SwLoad      *load)
{
  const char *names[] = { sw_item_get_test (self->item),
                          sw_exercise_get_text (sw_item_get_exercise (self->item), NULL)->name };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      SwMeasurement *latest = sw_course_find_latest (get_programme (self), names[i]);

      if (latest != NULL && sw_course_get_load (latest, load))
        return latest;
    }

  return NULL;
}

/* Only a pull is given by a band, and only the clinic's own bands are known. */
static void
show_stretch (SwTestField *self)
{
  SwLoadUnit unit = sw_exercise_get_facts (sw_item_get_exercise (self->item))->load_limit.unit;
  SwClinic *clinic = sw_programme_get_clinic (get_programme (self));
  g_autoptr (GPtrArray) bands = sw_bands_from_text (sw_clinic_get_bands (clinic));
  gboolean visible = unit == SW_LOAD_NEWTON && bands != NULL && bands->len > 0;

  gtk_widget_set_visible (GTK_WIDGET (self->stretch_label), visible);
  gtk_widget_set_visible (GTK_WIDGET (self->stretch), visible);
  sw_number_set_value (self->stretch, SW_BAND_USUAL_STRETCH_PERCENT);
}

static void
popover_shown_cb (SwTestField *self)
{
  SwProgramme *programme = get_programme (self);
  SwUnits units = sw_client_get_units (sw_programme_get_client (programme));
  SwLoad load = { units == SW_UNITS_LB ? SW_LOAD_LB : SW_LOAD_KG, 0.0 };
  SwMeasurement *measurement = find_measurement (self, &load);

  self->refreshing = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->name),
                         measurement != NULL ? sw_measurement_get_test (measurement)
                         : sw_exercise_get_text (sw_item_get_exercise (self->item), NULL)->name);
  sw_number_set_value (self->load, load.value);
  sw_choices_show (self->unit, (int) load.unit - 1);
  sw_number_set_value (self->repetitions, measurement != NULL ? sw_measurement_get_repetitions (measurement) : 0);
  sw_choices_show (self->formula, (int) sw_clinic_get_max_formula (sw_programme_get_clinic (programme)));
  show_stretch (self);
  self->refreshing = FALSE;
  entered_cb (self);
}

static void
add_measurement (SwTestField  *self,
                 const char   *label,
                 const char   *name,
                 const SwLoad *load,
                 int           repetitions)
{
  static const SwMeasure measures[] = {
    [SW_LOAD_KG] = SW_MEASURE_KILOGRAMS,
    [SW_LOAD_LB] = SW_MEASURE_POUNDS,
    [SW_LOAD_NEWTON] = SW_MEASURE_NEWTONS,
  };
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *date = g_date_time_format (now, "%Y-%m-%d");
  GListStore *measurements = sw_programme_get_measurements (get_programme (self));
  g_autoptr (SwMeasurement) measurement = sw_measurement_new (date, name, measures[load->unit]);
  gpointer addition = measurement;

  g_object_set (measurement, "repetitions", repetitions, "both", load->value, NULL);
  sw_history_splice (sw_document_get_history (self->document), label, measurements,
                     g_list_model_get_n_items (G_LIST_MODEL (measurements)), 0, &addition, 1);
}

/* Whether that is what was measured last anyway. */
static gboolean
is_known (SwTestField                  *self,
          const char                   *name,
          const SwStartingLoadQuestion *question)
{
  SwMeasurement *latest = sw_course_find_latest (get_programme (self), name);
  SwLoad load;

  return latest != NULL && sw_course_get_load (latest, &load) && load.unit == question->tested.unit
         && fabs (load.value - question->tested.value) < 5e-4
         && sw_measurement_get_repetitions (latest) == question->tested_repetitions;
}

static void
take_clicked_cb (SwTestField *self)
{
  SwHistory *history = sw_document_get_history (self->document);
  g_auto (SwStartingLoadQuestion) question = { 0 };
  g_autoptr (SwStartingLoad) answer = NULL;
  g_autofree char *name = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->name))));
  g_autofree char *item_name = sw_item_dup_name (self->item, NULL);
  g_autofree char *label = NULL;
  SwDose dose = *sw_item_get_dose (self->item);

  ask (self, &question);
  answer = sw_starting_load_new (&question);
  if (answer->load.unit == SW_LOAD_NONE)
    return;
  if (*name == '\0')
    {
      g_free (name);
      name = g_strdup (item_name);
    }

  dose.load = answer->load;
  if (dose.effort_limit == 0)
    dose.effort_limit = SW_STARTING_LOAD_USUAL_EFFORT;
  label = g_strdup_printf (_("Take the load of “%s” from a test"), item_name);
  gtk_popover_popdown (self->popover);
  sw_history_begin (history, label);
  if (!is_known (self, name, &question))
    add_measurement (self, label, name, &question.tested, question.tested_repetitions);
  sw_history_set_string (history, label, self->item, "test", name);
  sw_history_set_int (history, label, sw_programme_get_clinic (get_programme (self)), "max-formula",
                      (gint64) question.formula);
  sw_history_set_boxed (history, label, self->item, "dose", &dose);
  sw_history_end (history);
  sw_history_stop_merging (history);
}

/* Made anew only when there are others: an open list stays open while typing elsewhere. */
static void
refresh_tests (SwTestField *self)
{
  g_autoptr (GPtrArray) tests = sw_course_dup_tests (get_programme (self));
  g_autoptr (GString) lines = g_string_new (NULL);
  const char *test = sw_item_get_test (self->item);
  guint chosen = 0;

  if (*test != '\0' && !g_ptr_array_find_with_equal_func (tests, test, g_str_equal, NULL))
    g_ptr_array_add (tests, g_strdup (test));
  for (guint i = 0; i < tests->len; i++)
    {
      g_string_append_printf (lines, "%s\n", (char *) tests->pdata[i]);
      if (strcmp (tests->pdata[i], test) == 0)
        chosen = i + 1;
    }
  if (g_strcmp0 (lines->str, self->shown_tests) != 0)
    {
      g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

      gtk_string_list_append (names, _("None"));
      for (guint i = 0; i < tests->len; i++)
        gtk_string_list_append (names, tests->pdata[i]);
      gtk_drop_down_set_model (self->test, G_LIST_MODEL (names));
      g_free (self->shown_tests);
      self->shown_tests = g_strdup (lines->str);
    }
  gtk_drop_down_set_selected (self->test, chosen);
}

static void
refresh_sides (SwTestField *self)
{
  SwProgramme *programme = get_programme (self);
  SwMeasurement *latest = sw_course_find_latest (programme, sw_item_get_test (self->item));
  g_autoptr (SwWorking) working = NULL;
  g_autofree char *difference = NULL;
  g_autofree char *words = NULL;
  SwSymmetry symmetry;

  gtk_widget_set_visible (GTK_WIDGET (self->sides), latest != NULL && sw_course_compare (latest, &symmetry));
  if (!gtk_widget_get_visible (GTK_WIDGET (self->sides)))
    return;

  difference = sw_number_to_string (symmetry.difference_percent, 1);
  if (symmetry.lesser == SW_BODY_SIDE_NONE)
    words = g_strdup (_("The sides are the same"));
  else
    words = g_strdup_printf (symmetry.lesser == SW_BODY_SIDE_LEFT ? _("Left side %s %% below the right")
                             : _("Right side %s %% below the left"), difference);
  working = sw_course_explain (latest, sw_clinic_get_alike_percent (sw_programme_get_clinic (programme)),
                               sw_client_get_dominant_side (sw_programme_get_client (programme)));
  sw_working_button_show (self->sides, words, working);
}

static void
sw_test_field_dispose (GObject *object)
{
  SwTestField *self = SW_TEST_FIELD (object);

  g_clear_object (&self->item);
  g_clear_object (&self->document);
  g_clear_pointer (&self->box, gtk_widget_unparent);

  G_OBJECT_CLASS (sw_test_field_parent_class)->dispose (object);
}

static void
sw_test_field_finalize (GObject *object)
{
  g_free (SW_TEST_FIELD (object)->shown_tests);

  G_OBJECT_CLASS (sw_test_field_parent_class)->finalize (object);
}

static void
sw_test_field_class_init (SwTestFieldClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_test_field_dispose;
  G_OBJECT_CLASS (class)->finalize = sw_test_field_finalize;

  g_type_ensure (SW_TYPE_NUMBER);
  g_type_ensure (SW_TYPE_WORKING_BUTTON);

  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-test-field.ui");
  gtk_widget_class_bind_template_child (widget_class, SwTestField, box);
  gtk_widget_class_bind_template_child (widget_class, SwTestField, test);
  gtk_widget_class_bind_template_child (widget_class, SwTestField, sides);
  gtk_widget_class_bind_template_child (widget_class, SwTestField, from_test);
  gtk_widget_class_bind_template_child (widget_class, SwTestField, popover);
  gtk_widget_class_bind_template_child (widget_class, SwTestField, name);
  gtk_widget_class_bind_template_child (widget_class, SwTestField, load);
  gtk_widget_class_bind_template_child (widget_class, SwTestField, unit);
  gtk_widget_class_bind_template_child (widget_class, SwTestField, repetitions);
  gtk_widget_class_bind_template_child (widget_class, SwTestField, formula);
  gtk_widget_class_bind_template_child (widget_class, SwTestField, stretch_label);
  gtk_widget_class_bind_template_child (widget_class, SwTestField, stretch);
  gtk_widget_class_bind_template_child (widget_class, SwTestField, answer);
  gtk_widget_class_bind_template_child (widget_class, SwTestField, result);
  gtk_widget_class_bind_template_child (widget_class, SwTestField, spread);
  gtk_widget_class_bind_template_child (widget_class, SwTestField, refusal);
  gtk_widget_class_bind_template_child (widget_class, SwTestField, take);
  gtk_widget_class_bind_template_callback (widget_class, test_selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, popover_shown_cb);
  gtk_widget_class_bind_template_callback (widget_class, entered_cb);
  gtk_widget_class_bind_template_callback (widget_class, take_clicked_cb);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

/* Names of tests may be long; the pane keeps its width. */
static void
name_set_up_cb (GtkListItemFactory *factory G_GNUC_UNUSED,
                GtkListItem        *list_item)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 20);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_list_item_set_child (list_item, label);
}

static void
name_bound_cb (GtkListItemFactory *factory G_GNUC_UNUSED,
               GtkListItem        *list_item)
{
  const char *name = gtk_string_object_get_string (gtk_list_item_get_item (list_item));
  GtkWidget *label = gtk_list_item_get_child (list_item);

  gtk_label_set_label (GTK_LABEL (label), name);
  gtk_widget_set_tooltip_text (label, name);
}

static void
sw_test_field_init (SwTestField *self)
{
  const char *units[] = { sw_label (SW_TYPE_LOAD_UNIT, SW_LOAD_KG), sw_label (SW_TYPE_LOAD_UNIT, SW_LOAD_LB),
                          sw_label (SW_TYPE_LOAD_UNIT, SW_LOAD_NEWTON), NULL };
  g_autoptr (GtkStringList) unit_list = gtk_string_list_new (units);

  g_autoptr (GtkListItemFactory) factory = gtk_signal_list_item_factory_new ();

  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect (factory, "setup", G_CALLBACK (name_set_up_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (name_bound_cb), NULL);
  gtk_drop_down_set_factory (self->test, factory);
  gtk_drop_down_set_model (self->unit, G_LIST_MODEL (unit_list));
  sw_choices_fill (self->formula, SW_TYPE_MAX_FORMULA);
  sw_number_set_name (self->load, _("Load of the test"), NULL);
  sw_number_set_name (self->stretch, _("Stretch of the band"),
                      _("Percent beyond its length at rest; 100 is double its length"));
  sw_number_set_name (self->repetitions, _("How often the load was moved"),
                      _("Until no more was possible. Empty: one greatest pull, as on a dynamometer"));
}

/**
 * sw_test_field_show:
 * @self: a field
 * @document: the document
 * @item: one of its exercise items
 *
 * Shows the test as it is now.
 */
void
sw_test_field_show (SwTestField *self,
                    SwDocument  *document,
                    SwItem      *item)
{
  g_return_if_fail (SW_IS_TEST_FIELD (self));
  g_return_if_fail (SW_IS_ITEM (item));

  g_set_object (&self->document, document);
  if (g_set_object (&self->item, item))
    gtk_popover_popdown (self->popover);
  self->refreshing = TRUE;
  refresh_tests (self);
  self->refreshing = FALSE;
  refresh_sides (self);
  gtk_widget_set_visible (GTK_WIDGET (self->from_test),
                          sw_exercise_get_facts (sw_item_get_exercise (item))->load_limit.unit != SW_LOAD_NONE);
}
