/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The dose as fields: each shows its part, changes it, and can go back to the exercise's usual value. */
#include "config.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n.h>

#include "sw-dose-form-private.h"

#include "sw-choices.h"
#include "sw-dose-hints.h"
#include "sw-labels.h"

/* What the load field holds when no load is asked for. */
#define NO_LOAD (-1.0)

/* The largest loads of each unit, in the order of SwLoadUnit; see SwLoad. */
static const double max_load[] = { 500.0, 500.0, 1100.0, 5000.0 };

/*
 * Field:
 * @id: begins the ids of its widgets in the template
 * @value: where its int lies in a SwDose, or -1 for a field of another kind
 * @findings: how the keys of the findings about it begin
 */
typedef struct
{
  const char *id;
  gssize value;
  const char *findings[4];
} Field;

#define VALUE(member) ((gssize) G_STRUCT_OFFSET (SwDose, member))

static const Field fields[SW_N_DOSE_FIELDS] = {
  [SW_DOSE_FIELD_SETS] = { "sets", VALUE (sets), { "dose-range:", "dose-long:" } },
  [SW_DOSE_FIELD_REPS] = { "reps", -1, { "dose-missing:" } },
  [SW_DOSE_FIELD_HOLD] = { "hold", VALUE (hold_s), { NULL } },
  [SW_DOSE_FIELD_TEMPO] = { "tempo", -1, { NULL } },
  [SW_DOSE_FIELD_LOAD] = { "load", -1, { "load:", "load-limit:", "precaution-load:", "client-load-limit:" } },
  [SW_DOSE_FIELD_REST] = { "rest", VALUE (rest_s), { NULL } },
  [SW_DOSE_FIELD_SIDE] = { "side", -1, { NULL } },
  [SW_DOSE_FIELD_DIRECTIONS] = { "directions", VALUE (directions), { NULL } },
  [SW_DOSE_FIELD_EXTRA] = { "extra", -1, { "extra-side:", "extra-many:", "sides-" } },
  [SW_DOSE_FIELD_DAYS] = { "days", VALUE (days_a_week), { NULL } },
  [SW_DOSE_FIELD_TIMES] = { "times", VALUE (times_a_day), { NULL } },
  [SW_DOSE_FIELD_EFFORT] = { "effort", VALUE (effort_limit), { "effort-limit:" } },
  [SW_DOSE_FIELD_PAIN] = { "pain", VALUE (pain_limit), { "pain-limit:" } },
};

static int *
value_of (SwDose      *dose,
          SwDoseField  field)
{
  return (int *) (void *) ((char *) dose + fields[field].value);
}

static const SwDose *
usual_dose (SwDoseForm *self)
{
  return &sw_exercise_get_facts (sw_item_get_exercise (self->item))->dose;
}

static void
copy_field (SwDose       *dose,
            const SwDose *from,
            SwDoseField   field)
{
  SwDose source = *from;

  if (fields[field].value >= 0)
    *value_of (dose, field) = *value_of (&source, field);
  else if (field == SW_DOSE_FIELD_REPS)
    {
      dose->reps_low = from->reps_low;
      dose->reps_high = from->reps_high;
    }
  else if (field == SW_DOSE_FIELD_TEMPO)
    dose->tempo = from->tempo;
  else if (field == SW_DOSE_FIELD_LOAD)
    dose->load = from->load;
  else if (field == SW_DOSE_FIELD_SIDE)
    dose->side = from->side;
  else if (field == SW_DOSE_FIELD_EXTRA)
    {
      dose->extra_sets = from->extra_sets;
      dose->extra_side = from->extra_side;
    }
}

/* The value of one field, for the button that brings it back. */
static char *
dup_field_words (const SwDose *dose,
                 SwDoseField   field)
{
  SwDose copy = *dose;
  int value = fields[field].value >= 0 ? *value_of (&copy, field) : 0;

  switch (field)
    {
    case SW_DOSE_FIELD_REPS:
      if (dose->reps_low == dose->reps_high)
        return g_strdup_printf ("%d", dose->reps_low);
      return g_strdup_printf ("%d–%d", dose->reps_low, dose->reps_high);
    case SW_DOSE_FIELD_TEMPO:
      return dose->tempo.set ? sw_tempo_to_string (&dose->tempo) : g_strdup (_("none"));
    case SW_DOSE_FIELD_LOAD:
      return sw_dose_hint_load (dose->load);
    case SW_DOSE_FIELD_SIDE:
      return g_strdup (sw_label (SW_TYPE_SIDE, (int) dose->side));
    case SW_DOSE_FIELD_EXTRA:
      if (dose->extra_sets == 0)
        return g_strdup (_("none"));
      return g_strdup_printf ("%d, %s", dose->extra_sets, sw_label (SW_TYPE_BODY_SIDE, (int) dose->extra_side));
    case SW_DOSE_FIELD_DAYS:
      return value > 0 ? g_strdup_printf ("%d", value) : g_strdup (_("the session’s days"));
    case SW_DOSE_FIELD_EFFORT:
      return value > 0 ? g_strdup_printf ("%d", value) : g_strdup (_("none"));
    case SW_DOSE_FIELD_PAIN:
      return value >= 0 ? g_strdup_printf ("%d", value) : g_strdup (_("none"));
    case SW_DOSE_FIELD_SETS:
    case SW_DOSE_FIELD_HOLD:
    case SW_DOSE_FIELD_REST:
    case SW_DOSE_FIELD_DIRECTIONS:
    case SW_DOSE_FIELD_TIMES:
    default:
      return g_strdup_printf ("%d", value);
    }
}

static gboolean
is_about (const SwFinding *finding,
          SwDoseField      field)
{
  for (guint i = 0; i < G_N_ELEMENTS (fields[field].findings) && fields[field].findings[i] != NULL; i++)
    {
      if (g_str_has_prefix (finding->key, fields[field].findings[i]))
        return TRUE;
    }

  return FALSE;
}

/* The first finding about the field; findings that were answered need no second word here. */
static const SwFinding *
find_finding (SwDoseForm  *self,
              SwDoseField  field)
{
  GPtrArray *findings = sw_document_get_findings (self->document);

  for (guint i = 0; i < findings->len; i++)
    {
      const SwFinding *finding = g_ptr_array_index (findings, i);

      if (finding->item == self->item && finding->answer == NULL && is_about (finding, field))
        return finding;
    }

  return NULL;
}

/**
 * sw_dose_form_is_about_field:
 * @finding: a finding about an exercise item
 *
 * Returns: whether it is shown at one of the fields
 */
gboolean
sw_dose_form_is_about_field (const SwFinding *finding)
{
  for (int field = 0; field < SW_N_DOSE_FIELDS; field++)
    {
      if (is_about (finding, (SwDoseField) field))
        return TRUE;
    }

  return FALSE;
}

/* Edits */

/* Repetitions that were no range stay none; one that was keeps its upper end as long as it can. */
static void
set_reps_low (SwDose *dose,
              int     value)
{
  if (dose->reps_low == dose->reps_high || value == 0)
    dose->reps_high = value;

  dose->reps_low = value;
  dose->reps_high = MAX (dose->reps_high, value);
}

static void
set_extra_sets (SwDoseForm *self,
                SwDose     *dose,
                int         value)
{
  SwProgramme *programme = sw_document_get_programme (self->document);

  dose->extra_sets = value;
  if (value == 0)
    dose->extra_side = SW_BODY_SIDE_NONE;
  else if (dose->side == SW_SIDE_RIGHT)
    dose->extra_side = SW_BODY_SIDE_RIGHT;
  else if (dose->side == SW_SIDE_LEFT)
    dose->extra_side = SW_BODY_SIDE_LEFT;
  else if (dose->extra_side == SW_BODY_SIDE_NONE)
    dose->extra_side = sw_client_get_dominant_side (sw_programme_get_client (programme)) == SW_BODY_SIDE_LEFT
                       ? SW_BODY_SIDE_RIGHT : SW_BODY_SIDE_LEFT;
}

/* A first load comes in the client's unit. */
static void
set_load (SwDoseForm *self,
          SwDose     *dose,
          double      value)
{
  SwProgramme *programme = sw_document_get_programme (self->document);

  if (value < 0.0)
    {
      dose->load = (SwLoad) { SW_LOAD_NONE, 0.0 };
      return;
    }

  if (dose->load.unit == SW_LOAD_NONE)
    dose->load.unit = sw_client_get_units (sw_programme_get_client (programme)) == SW_UNITS_LB
                      ? SW_LOAD_LB : SW_LOAD_KG;
  dose->load.value = value;
}

static void
number_changed_cb (SwDoseForm *self,
                   SwNumber   *number)
{
  SwDose dose;
  int value = (int) lround (sw_number_get_value (number));

  if (self->item == NULL || self->refreshing)
    return;

  dose = *sw_item_get_dose (self->item);
  if (number == self->reps_high)
    {
      /* A range that would end below its start is one not typed to the end yet. */
      if (value != 0 && value < dose.reps_low)
        {
          sw_field_row_set_complaint (self->reps_high_row, _("Not less than the repetitions above."));
          return;
        }
      dose.reps_high = value == 0 ? dose.reps_low : value;
    }
  else if (number == self->numbers[SW_DOSE_FIELD_REPS])
    set_reps_low (&dose, value);
  else if (number == self->numbers[SW_DOSE_FIELD_LOAD])
    set_load (self, &dose, sw_number_get_value (number));
  else if (number == self->numbers[SW_DOSE_FIELD_EXTRA])
    set_extra_sets (self, &dose, value);
  else
    {
      for (int field = 0; field < SW_N_DOSE_FIELDS; field++)
        {
          if (self->numbers[field] == number && fields[field].value >= 0)
            *value_of (&dose, (SwDoseField) field) = value;
        }
    }

  sw_dose_form_change (self, &dose);
}

static void
load_unit_selected_cb (SwDoseForm *self)
{
  SwDose dose;

  if (self->item == NULL || self->refreshing)
    return;

  dose = *sw_item_get_dose (self->item);
  dose.load.unit = (SwLoadUnit) gtk_drop_down_get_selected (self->load_unit);
  dose.load.value = dose.load.unit == SW_LOAD_NONE ? 0.0 : fmin (dose.load.value, max_load[dose.load.unit]);
  sw_dose_form_change (self, &dose);
}

static void
side_selected_cb (SwDoseForm *self)
{
  SwDose dose;

  if (self->item == NULL || self->refreshing)
    return;

  dose = *sw_item_get_dose (self->item);
  dose.side = (SwSide) gtk_drop_down_get_selected (self->side);
  sw_dose_form_change (self, &dose);
}

static void
extra_side_toggled_cb (SwDoseForm      *self,
                       GtkToggleButton *button)
{
  SwDose dose;

  if (self->item == NULL || self->refreshing || !gtk_toggle_button_get_active (button))
    return;

  dose = *sw_item_get_dose (self->item);
  dose.extra_side = button == self->extra_right ? SW_BODY_SIDE_RIGHT : SW_BODY_SIDE_LEFT;
  sw_dose_form_change (self, &dose);
}

static void
tempo_changed_cb (SwDoseForm *self)
{
  SwDose dose;

  if (self->item == NULL || self->refreshing)
    return;

  dose = *sw_item_get_dose (self->item);
  if (!sw_tempo_from_string (gtk_editable_get_text (GTK_EDITABLE (self->tempo)), &dose.tempo))
    {
      sw_field_row_set_complaint (self->rows[SW_DOSE_FIELD_TEMPO],
                                  _("Write the seconds of lowering, pause, lifting and pause as 2-0-2-0. "
                                    "X is “as fast as possible”."));
      return;
    }

  sw_field_row_set_complaint (self->rows[SW_DOSE_FIELD_TEMPO], NULL);
  g_free (self->shown_tempo);
  self->shown_tempo = sw_tempo_to_string (&dose.tempo);
  sw_dose_form_change (self, &dose);
}

/* Leaving a tempo or a range that is none brings the last good one back. */
static void
field_left_cb (SwDoseForm *self)
{
  g_clear_pointer (&self->shown_tempo, g_free);
  sw_dose_form_refresh (self);
}

static void
watch_leaving (SwDoseForm *self,
               GtkWidget  *field)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();

  g_signal_connect_swapped (focus, "leave", G_CALLBACK (field_left_cb), self);
  gtk_widget_add_controller (field, focus);
}

static void
reset_cb (SwDoseForm *self,
          SwFieldRow *row)
{
  SwDose dose = *sw_item_get_dose (self->item);

  for (int field = 0; field < SW_N_DOSE_FIELDS; field++)
    {
      if (self->rows[field] == row)
        copy_field (&dose, usual_dose (self), (SwDoseField) field);
    }
  sw_dose_form_change (self, &dose);
}

static void
fix_cb (SwDoseForm *self,
        SwFieldRow *row)
{
  for (int field = 0; field < SW_N_DOSE_FIELDS; field++)
    {
      const SwFinding *finding = self->rows[field] == row ? find_finding (self, (SwDoseField) field) : NULL;

      if (finding != NULL && finding->fix == SW_FIX_SET_DOSE)
        {
          SwDose dose = finding->fix_dose;

          sw_dose_form_change (self, &dose);
          return;
        }
    }
}

/* Showing */

static void
refresh_hints (SwDoseForm   *self,
               const SwDose *dose)
{
  const SwExerciseFacts *facts = sw_exercise_get_facts (sw_item_get_exercise (self->item));
  g_autofree char *tempo = sw_dose_hint_tempo (&dose->tempo);
  g_autofree char *load = sw_dose_hint_load_limit (facts->load_limit);
  g_autofree char *effort = sw_dose_hint_effort (CLAMP (dose->effort_limit, 0, 10));

  sw_field_row_set_hint (self->rows[SW_DOSE_FIELD_REPS], dose->reps_high == 0 ? _("0: one hold a set") : NULL);
  sw_field_row_set_hint (self->rows[SW_DOSE_FIELD_TEMPO], tempo);
  sw_field_row_set_hint (self->rows[SW_DOSE_FIELD_LOAD], load);
  sw_field_row_set_hint (self->rows[SW_DOSE_FIELD_DIRECTIONS],
                         sw_label (SW_TYPE_DIRECTION_KIND, (int) facts->directions));
  sw_field_row_set_hint (self->rows[SW_DOSE_FIELD_DAYS],
                         dose->days_a_week == 0 ? _("On the session’s days")
                         : _("Instead of the session’s days"));
  sw_field_row_set_hint (self->rows[SW_DOSE_FIELD_EFFORT], effort);
  sw_field_row_set_hint (self->rows[SW_DOSE_FIELD_PAIN], sw_dose_hint_pain (dose->pain_limit));
}

static void
refresh_tempo (SwDoseForm   *self,
               const SwDose *dose)
{
  g_autofree char *text = sw_tempo_to_string (&dose->tempo);

  if (g_strcmp0 (self->shown_tempo, text) == 0)
    return;

  gtk_editable_set_text (GTK_EDITABLE (self->tempo), text);
  sw_field_row_set_complaint (self->rows[SW_DOSE_FIELD_TEMPO], NULL);
  g_free (self->shown_tempo);
  self->shown_tempo = g_steal_pointer (&text);
}

static void
refresh_load (SwDoseForm   *self,
              const SwDose *dose)
{
  SwNumber *number = self->numbers[SW_DOSE_FIELD_LOAD];

  sw_number_set_upper (number, max_load[dose->load.unit]);
  sw_number_set_value (number, dose->load.unit == SW_LOAD_NONE ? NO_LOAD : dose->load.value);
  sw_choices_show (self->load_unit, (int) dose->load.unit);
}

static void
refresh_reps (SwDoseForm   *self,
              const SwDose *dose)
{
  sw_number_set_value (self->numbers[SW_DOSE_FIELD_REPS], dose->reps_low);
  sw_number_set_value (self->reps_high, dose->reps_high == dose->reps_low ? 0 : dose->reps_high);
  sw_field_row_set_complaint (self->reps_high_row, NULL);
  gtk_widget_set_sensitive (GTK_WIDGET (self->reps_high_row), dose->reps_low > 0);
}

static void
refresh_extra (SwDoseForm   *self,
               const SwDose *dose)
{
  sw_number_set_value (self->numbers[SW_DOSE_FIELD_EXTRA], dose->extra_sets);
  gtk_toggle_button_set_active (self->extra_right, dose->extra_side == SW_BODY_SIDE_RIGHT);
  gtk_toggle_button_set_active (self->extra_left, dose->extra_side == SW_BODY_SIDE_LEFT);
  gtk_widget_set_sensitive (GTK_WIDGET (self->extra_right), dose->extra_sets > 0);
  gtk_widget_set_sensitive (GTK_WIDGET (self->extra_left), dose->extra_sets > 0);
}

static void
refresh_usual (SwDoseForm   *self,
               const SwDose *dose)
{
  for (int field = 0; field < SW_N_DOSE_FIELDS; field++)
    {
      g_autofree char *words = NULL;
      SwDose back = *dose;

      copy_field (&back, usual_dose (self), (SwDoseField) field);
      if (!sw_dose_equal (&back, dose))
        words = dup_field_words (usual_dose (self), (SwDoseField) field);
      sw_field_row_set_usual (self->rows[field], words);
      sw_field_row_set_finding (self->rows[field], find_finding (self, (SwDoseField) field));
    }
  gtk_widget_set_sensitive (GTK_WIDGET (self->usual), !sw_dose_equal (usual_dose (self), dose));
}

/**
 * sw_dose_form_refresh_fields:
 * @self: a form with an item
 *
 * Shows the item's dose in all fields; what is being typed and means that dose stays as it is.
 */
void
sw_dose_form_refresh_fields (SwDoseForm *self)
{
  SwDose dose = *sw_item_get_dose (self->item);
  SwDirectionKind kind = sw_exercise_get_facts (sw_item_get_exercise (self->item))->directions;

  for (int field = 0; field < SW_N_DOSE_FIELDS; field++)
    {
      if (fields[field].value >= 0)
        sw_number_set_value (self->numbers[field], *value_of (&dose, (SwDoseField) field));
    }
  refresh_reps (self, &dose);
  refresh_tempo (self, &dose);
  refresh_load (self, &dose);
  refresh_extra (self, &dose);
  sw_choices_show (self->side, (int) dose.side);
  gtk_widget_set_visible (GTK_WIDGET (self->rows[SW_DOSE_FIELD_DIRECTIONS]),
                          kind != SW_DIRECTION_KIND_ONE || dose.directions != 1);
  refresh_hints (self, &dose);
  refresh_usual (self, &dose);
}

/**
 * sw_dose_form_bind_fields:
 * @widget_class: the form's class
 *
 * Binds the fields' rows and numbers of the template, and what happens in them.
 */
void
sw_dose_form_bind_fields (GtkWidgetClass *widget_class)
{
  for (int field = 0; field < SW_N_DOSE_FIELDS; field++)
    {
      g_autofree char *row = g_strconcat (fields[field].id, "_row", NULL);
      gssize at = field * (gssize) sizeof (gpointer);

      gtk_widget_class_bind_template_child_full (widget_class, row, FALSE,
                                                 G_STRUCT_OFFSET (SwDoseForm, rows) + at);
      if (field == SW_DOSE_FIELD_TEMPO || field == SW_DOSE_FIELD_SIDE)
        continue;
      gtk_widget_class_bind_template_child_full (widget_class, fields[field].id, FALSE,
                                                 G_STRUCT_OFFSET (SwDoseForm, numbers) + at);
    }

  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, reps_high_row);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, reps_high);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, tempo);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, load_unit);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, test_field);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, side);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, extra_right);
  gtk_widget_class_bind_template_child (widget_class, SwDoseForm, extra_left);
  gtk_widget_class_bind_template_callback (widget_class, number_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, load_unit_selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, side_selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, extra_side_toggled_cb);
  gtk_widget_class_bind_template_callback (widget_class, tempo_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, reset_cb);
  gtk_widget_class_bind_template_callback (widget_class, fix_cb);
}

/**
 * sw_dose_form_init_fields:
 * @self: a form whose template is there
 */
void
sw_dose_form_init_fields (SwDoseForm *self)
{
  /* Room for the buttons back from the start, so that the pane never gets wider while one works. */
  for (int field = 0; field < SW_N_DOSE_FIELDS; field++)
    sw_field_row_set_usual (self->rows[field], NULL);
  sw_field_row_set_usual (self->reps_high_row, NULL);

  self->refreshing = TRUE;
  sw_choices_fill (self->load_unit, SW_TYPE_LOAD_UNIT);
  sw_choices_fill (self->side, SW_TYPE_SIDE);
  self->refreshing = FALSE;

  watch_leaving (self, GTK_WIDGET (self->tempo));
  watch_leaving (self, GTK_WIDGET (self->reps_high));
}
