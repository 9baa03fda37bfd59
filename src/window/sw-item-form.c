/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The form of a rest, a circuit or a self-check. */
#include "config.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n.h>

#include "sw-item-form.h"

#include "sw-choices.h"
#include "sw-field-row.h"
#include "sw-labels.h"
#include "sw-number.h"
#include "sw-place-fields.h"
#include "sw-text-area.h"
#include "sw-time-working.h"
#include "sw-working-button.h"

struct _SwItemForm
{
  GtkWidget parent_instance;

  SwDocument *document;
  SwItem *item;
  gboolean refreshing;

  GtkWidget *box;
  GtkLabel *kind;
  SwWorkingButton *time;
  SwFieldRow *rest_title_row;
  GtkEntry *rest_title;
  SwFieldRow *circuit_title_row;
  GtkEntry *circuit_title;
  SwFieldRow *question_row;
  SwTextArea *question;
  SwFieldRow *rest_row;
  SwNumber *rest;
  SwFieldRow *rounds_row;
  SwNumber *rounds;
  SwFieldRow *round_rest_row;
  SwNumber *round_rest;
  SwFieldRow *measure_row;
  GtkDropDown *measure;
  SwFieldRow *better_row;
  GtkDropDown *better;
  SwFieldRow *pictured_row;
  GtkDropDown *pictured;
  GPtrArray *exercises;      /* in the order of the drop-down, after the one for none */
  SwFieldRow *side_row;
  GtkDropDown *side;
  SwTextArea *note;
  SwPlaceFields *place;
  GtkLabel *members;
  GtkButton *dissolve;
};

G_DEFINE_FINAL_TYPE (SwItemForm, sw_item_form, GTK_TYPE_WIDGET)

static SwHistory *
history (SwItemForm *self)
{
  return sw_document_get_history (self->document);
}

/* What the item is called where undo names it: by its title, else by its kind. */
static char *
dup_label (SwItemForm *self)
{
  const char *title = sw_item_get_title (self->item);

  /* Translators: %s is the title of a rest, circuit or self-check, or such a word itself. */
  return g_strdup_printf (_("Change “%s”"), *title != '\0' ? title
                          : sw_label (SW_TYPE_ITEM_KIND, (int) sw_item_get_kind (self->item)));
}

static gboolean
is_idle (SwItemForm *self)
{
  return self->item == NULL || self->refreshing;
}

static void
set_title (SwItemForm *self,
           const char *title)
{
  g_autofree char *label = dup_label (self);

  sw_history_set_string (history (self), label, self->item, "title", title);
}

static void
title_changed_cb (SwItemForm *self,
                  GtkEntry   *entry)
{
  if (!is_idle (self))
    set_title (self, gtk_editable_get_text (GTK_EDITABLE (entry)));
}

static void
question_changed_cb (SwItemForm *self)
{
  g_autofree char *text = NULL;

  if (is_idle (self))
    return;

  text = sw_text_area_dup_text (self->question);
  set_title (self, text);
}

static void
note_changed_cb (SwItemForm *self)
{
  g_autofree char *text = NULL;
  g_autofree char *label = NULL;

  if (is_idle (self))
    return;

  text = sw_text_area_dup_text (self->note);
  label = dup_label (self);
  sw_history_set_string (history (self), label, self->item, "note", text);
}

static void
number_changed_cb (SwItemForm *self,
                   SwNumber   *number)
{
  g_autofree char *label = NULL;

  if (is_idle (self))
    return;

  label = dup_label (self);
  sw_history_set_int (history (self), label, self->item, number == self->rounds ? "rounds" : "rest-seconds",
                      lround (sw_number_get_value (number)));
}

static void
measure_selected_cb (SwItemForm *self)
{
  g_autofree char *label = NULL;

  if (is_idle (self))
    return;

  label = dup_label (self);
  sw_history_set_int (history (self), label, self->item, "measure", gtk_drop_down_get_selected (self->measure));
}

static void
better_selected_cb (SwItemForm *self)
{
  g_autofree char *label = NULL;

  if (is_idle (self))
    return;

  label = dup_label (self);
  sw_history_set_int (history (self), label, self->item, "better", gtk_drop_down_get_selected (self->better));
}

static void
pictured_selected_cb (SwItemForm *self)
{
  guint position = gtk_drop_down_get_selected (self->pictured);
  g_autofree char *label = NULL;

  if (is_idle (self) || position == GTK_INVALID_LIST_POSITION)
    return;

  label = dup_label (self);
  sw_history_set_string (history (self), label, self->item, "pictured",
                         position > 0 ? sw_exercise_get_id (self->exercises->pdata[position - 1]) : "");
}

static void
side_selected_cb (SwItemForm *self)
{
  g_autofree char *label = NULL;
  SwDose dose;

  if (is_idle (self))
    return;

  dose = *sw_item_get_dose (self->item);
  dose.side = (SwSide) gtk_drop_down_get_selected (self->side);
  label = dup_label (self);
  sw_history_set_boxed (history (self), label, self->item, "dose", &dose);
}

static void
show_text (GtkEntry   *entry,
           const char *text)
{
  if (strcmp (gtk_editable_get_text (GTK_EDITABLE (entry)), text) != 0)
    gtk_editable_set_text (GTK_EDITABLE (entry), text);
}

static void
show_members (SwItemForm *self)
{
  GListModel *members = G_LIST_MODEL (sw_item_get_items (self->item));
  g_autoptr (GString) words = g_string_new (NULL);

  for (guint i = 0; i < g_list_model_get_n_items (members); i++)
    {
      g_autoptr (SwItem) member = g_list_model_get_item (members, i);
      g_autofree char *name = sw_item_dup_name (member, NULL);

      g_string_append_printf (words, "%s%u  %s", i > 0 ? "\n" : "", i + 1,
                              *name != '\0' ? name
                              : sw_label (SW_TYPE_ITEM_KIND, (int) sw_item_get_kind (member)));
    }
  gtk_label_set_label (self->members, words->len > 0 ? words->str
                       : _("Nothing in it yet: drag exercises into the circuit."));
}

/* The programme's exercises, and whose picture the check shows. */
static void
show_pictured (SwItemForm *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  int chosen = 0;

  g_clear_pointer (&self->exercises, g_ptr_array_unref);
  self->exercises = sw_programme_dup_exercises (sw_document_get_programme (self->document));
  gtk_string_list_append (names, _("none"));
  for (guint i = 0; i < self->exercises->len; i++)
    {
      gtk_string_list_append (names, sw_exercise_get_text (self->exercises->pdata[i], NULL)->name);
      if (strcmp (sw_exercise_get_id (self->exercises->pdata[i]), sw_item_get_pictured (self->item)) == 0)
        chosen = (int) i + 1;
    }
  gtk_drop_down_set_model (self->pictured, G_LIST_MODEL (names));
  sw_choices_show (self->pictured, chosen);
}

static void
show_rows (SwItemForm *self,
           SwItemKind  kind)
{
  gboolean is_rest = kind == SW_ITEM_REST;
  gboolean is_circuit = kind == SW_ITEM_CIRCUIT;
  gboolean is_check = kind == SW_ITEM_SELF_CHECK;

  gtk_widget_set_visible (GTK_WIDGET (self->rest_title_row), is_rest);
  gtk_widget_set_visible (GTK_WIDGET (self->rest_row), is_rest);
  gtk_widget_set_visible (GTK_WIDGET (self->circuit_title_row), is_circuit);
  gtk_widget_set_visible (GTK_WIDGET (self->rounds_row), is_circuit);
  gtk_widget_set_visible (GTK_WIDGET (self->round_rest_row), is_circuit);
  gtk_widget_set_visible (GTK_WIDGET (self->members), is_circuit);
  gtk_widget_set_visible (GTK_WIDGET (self->dissolve), is_circuit);
  gtk_widget_set_visible (GTK_WIDGET (self->question_row), is_check);
  gtk_widget_set_visible (GTK_WIDGET (self->measure_row), is_check);
  gtk_widget_set_visible (GTK_WIDGET (self->better_row), is_check);
  gtk_widget_set_visible (GTK_WIDGET (self->pictured_row), is_check);
  gtk_widget_set_visible (GTK_WIDGET (self->side_row), is_check);
}

static void
sw_item_form_dispose (GObject *object)
{
  SwItemForm *self = SW_ITEM_FORM (object);

  g_clear_object (&self->item);
  g_clear_object (&self->document);
  g_clear_pointer (&self->exercises, g_ptr_array_unref);
  g_clear_pointer (&self->box, gtk_widget_unparent);

  G_OBJECT_CLASS (sw_item_form_parent_class)->dispose (object);
}

static void
sw_item_form_class_init (SwItemFormClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_item_form_dispose;

  g_type_ensure (SW_TYPE_FIELD_ROW);
  g_type_ensure (SW_TYPE_NUMBER);
  g_type_ensure (SW_TYPE_PLACE_FIELDS);
  g_type_ensure (SW_TYPE_TEXT_AREA);
  g_type_ensure (SW_TYPE_WORKING_BUTTON);

  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-item-form.ui");
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, box);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, kind);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, time);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, rest_title_row);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, rest_title);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, circuit_title_row);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, circuit_title);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, question_row);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, question);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, rest_row);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, rest);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, rounds_row);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, rounds);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, round_rest_row);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, round_rest);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, measure_row);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, measure);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, better_row);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, better);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, pictured_row);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, pictured);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, side_row);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, side);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, note);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, members);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, place);
  gtk_widget_class_bind_template_child (widget_class, SwItemForm, dissolve);
  gtk_widget_class_bind_template_callback (widget_class, title_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, question_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, note_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, number_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, measure_selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, better_selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, pictured_selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, side_selected_cb);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sw_item_form_init (SwItemForm *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  sw_choices_fill (self->measure, SW_TYPE_MEASURE);
  sw_choices_fill (self->better, SW_TYPE_BETTER);
  sw_choices_fill (self->side, SW_TYPE_SIDE);
}

/**
 * sw_item_form_set_item:
 * @self: a form
 * @document: (nullable): the document of the item
 * @item: (nullable): a rest, circuit or self-check to show; NULL for none
 */
void
sw_item_form_set_item (SwItemForm *self,
                       SwDocument *document,
                       SwItem     *item)
{
  g_return_if_fail (SW_IS_ITEM_FORM (self));

  g_set_object (&self->document, document);
  if (g_set_object (&self->item, item))
    sw_item_form_refresh (self);
}

/**
 * sw_item_form_refresh:
 * @self: a form
 *
 * Shows the item as it is now; what is being typed and means the same stays as it is.
 */
void
sw_item_form_refresh (SwItemForm *self)
{
  SwItemKind kind;
  SwClinic *clinic;
  g_autofree char *time = NULL;
  g_autoptr (SwWorking) working = NULL;

  g_return_if_fail (SW_IS_ITEM_FORM (self));

  if (is_idle (self))
    return;

  kind = sw_item_get_kind (self->item);
  clinic = sw_programme_get_clinic (sw_document_get_programme (self->document));
  time = sw_label_takes (sw_time_of_item (self->item, clinic));
  working = sw_time_working_of_item (self->item, clinic);

  self->refreshing = TRUE;
  gtk_label_set_label (self->kind, sw_label (SW_TYPE_ITEM_KIND, (int) kind));
  sw_working_button_show (self->time, time, working);
  show_rows (self, kind);
  show_text (self->rest_title, sw_item_get_title (self->item));
  show_text (self->circuit_title, sw_item_get_title (self->item));
  sw_text_area_set_text (self->question, sw_item_get_title (self->item));
  sw_number_set_value (self->rest, sw_item_get_rest_s (self->item));
  sw_number_set_value (self->round_rest, sw_item_get_rest_s (self->item));
  sw_number_set_value (self->rounds, sw_item_get_rounds (self->item));
  sw_choices_show (self->measure, (int) sw_item_get_measure (self->item));
  sw_choices_show (self->better, (int) sw_item_get_better (self->item));
  if (kind == SW_ITEM_SELF_CHECK)
    show_pictured (self);
  sw_choices_show (self->side, (int) sw_item_get_dose (self->item)->side);
  sw_text_area_set_text (self->note, sw_item_get_note (self->item));
  sw_place_fields_show (self->place, self->document, self->item);
  show_members (self);
  self->refreshing = FALSE;
}
