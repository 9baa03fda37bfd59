/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The form of the client, of the programme as a whole and of the clinic: one table of fields, each a
 * property of one of them. */
#include "config.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n.h>

#include "sw-client-form.h"

#include "sw-choices.h"
#include "sw-field-row.h"
#include "sw-languages.h"
#include "sw-logo-field.h"
#include "sw-limit-list.h"
#include "sw-measurement-list.h"
#include "sw-number.h"
#include "sw-set-field.h"
#include "sw-text-area.h"
#include "sw-transition-fields.h"

typedef enum
{
  OWNER_CLIENT,
  OWNER_CLINIC,
  OWNER_PROGRAMME,
  OWNER_PROGRESSION,
} Owner;

/*
 * Field:
 * @id: of its widget in the template
 * @owner: whose property it is
 * @property: the property
 * @label: what undo names
 */
typedef struct
{
  const char *id;
  Owner owner;
  const char *property;
  const char *label;
} Field;

static const Field fields[] = {
  { "name", OWNER_CLIENT, "name", N_("Change the client’s name") },
  { "birth_year", OWNER_CLIENT, "birth-year", N_("Change the client’s birth year") },
  { "dominant_side", OWNER_CLIENT, "dominant-side", N_("Change the client’s dominant side") },
  { "goals", OWNER_CLIENT, "goals", N_("Change the client’s goals") },
  { "precautions", OWNER_CLIENT, "precautions", N_("Change the client’s precautions") },
  { "other_precautions", OWNER_CLIENT, "other-precautions", N_("Change the client’s other precautions") },
  { "equipment", OWNER_CLIENT, "equipment", N_("Change the client’s equipment") },
  { "avoided_positions", OWNER_CLIENT, "avoided-positions", N_("Change the positions the client cannot get into") },
  { "loads", OWNER_CLIENT, "loads", N_("Change the client’s loads") },
  { "load_limit", OWNER_CLIENT, "load-limit", N_("Change the client’s heaviest load") },
  { "minutes", OWNER_CLIENT, "minutes", N_("Change the client’s minutes") },
  { "title", OWNER_PROGRAMME, "title", N_("Change the programme’s title") },
  { "weeks", OWNER_PROGRESSION, "weeks", N_("Change the programme’s weeks") },
  { "company", OWNER_PROGRAMME, "company", N_("Change who is near while the client exercises") },
  { "progress", OWNER_PROGRAMME, "progress", N_("Change the rule for making it harder") },
  { "text_points", OWNER_CLIENT, "text-points", N_("Change the handout’s text size") },
  { "paper", OWNER_CLIENT, "paper", N_("Change the handout’s paper") },
  { "units", OWNER_CLIENT, "units", N_("Change the handout’s units") },
  { "clinic_name", OWNER_CLINIC, "name", N_("Change the clinic’s name") },
  { "logo", OWNER_CLINIC, "logo", N_("Change the clinic’s logo") },
  { "therapist", OWNER_CLINIC, "therapist", N_("Change the therapist") },
  { "qualification", OWNER_CLINIC, "qualification", N_("Change the therapist’s profession") },
  { "phone", OWNER_CLINIC, "phone", N_("Change the clinic’s phone number") },
  { "email", OWNER_CLINIC, "email", N_("Change the clinic’s e-mail address") },
  { "address", OWNER_CLINIC, "address", N_("Change the clinic’s address") },
  { "emergency_number", OWNER_CLINIC, "emergency-number", N_("Change the emergency number") },
  { "alike_percent", OWNER_CLINIC, "alike-percent", N_("Change what the clinic calls alike") },
  { "max_formula", OWNER_CLINIC, "max-formula", N_("Change the clinic’s formula") },
  { "bands", OWNER_CLINIC, "bands", N_("Change the clinic’s bands") },
};

struct _SwClientForm
{
  GtkWidget parent_instance;

  SwDocument *document;
  gboolean refreshing;
  GStrv languages;           /* tags, in the order of the drop-down */
  SwCatalogue *catalogue;    /* the languages are those of; only compared */
  guint n_exercises;
  const Field *typed;        /* the field edited last, and the history's mark after that */
  guint64 typed_mark;

  GtkWidget *box;
  GtkWidget *widgets[G_N_ELEMENTS (fields)];
  GtkDropDown *language;
  SwFieldRow *bands_row;
  SwLimitList *limits;
  SwMeasurementList *measurements;
  SwTransitionFields *transitions;
};

G_DEFINE_FINAL_TYPE (SwClientForm, sw_client_form, GTK_TYPE_WIDGET)

static GObject *
owner_of (SwClientForm *self,
          const Field  *field)
{
  SwProgramme *programme = sw_document_get_programme (self->document);

  if (field->owner == OWNER_CLIENT)
    return G_OBJECT (sw_programme_get_client (programme));
  if (field->owner == OWNER_CLINIC)
    return G_OBJECT (sw_programme_get_clinic (programme));
  if (field->owner == OWNER_PROGRESSION)
    return G_OBJECT (sw_programme_get_progression (programme));

  return G_OBJECT (programme);
}

static GType
type_of (GObject     *owner,
         const Field *field)
{
  return g_object_class_find_property (G_OBJECT_GET_CLASS (owner), field->property)->value_type;
}

/* What a widget says, as a value of the property's type. */
static void
read_widget (GtkWidget *widget,
             GValue    *value)
{
  if (SW_IS_TEXT_AREA (widget))
    g_value_take_string (value, sw_text_area_dup_text (SW_TEXT_AREA (widget)));
  else if (SW_IS_SET_FIELD (widget))
    g_value_set_uint64 (value, sw_set_field_get_value (SW_SET_FIELD (widget)));
  else if (SW_IS_LOGO_FIELD (widget))
    g_value_set_boxed (value, sw_logo_field_get_logo (SW_LOGO_FIELD (widget)));
  else if (GTK_IS_DROP_DOWN (widget))
    g_value_set_enum (value, (int) gtk_drop_down_get_selected (GTK_DROP_DOWN (widget)));
  else if (GTK_IS_EDITABLE (widget))
    g_value_set_string (value, gtk_editable_get_text (GTK_EDITABLE (widget)));
  else if (G_VALUE_HOLDS_DOUBLE (value))
    g_value_set_double (value, sw_number_get_value (SW_NUMBER (widget)));
  else
    g_value_set_int (value, (int) lround (sw_number_get_value (SW_NUMBER (widget))));
}

static void
show_value (GtkWidget    *widget,
            const GValue *value)
{
  if (SW_IS_TEXT_AREA (widget))
    sw_text_area_set_text (SW_TEXT_AREA (widget), g_value_get_string (value));
  else if (SW_IS_SET_FIELD (widget))
    sw_set_field_set_value (SW_SET_FIELD (widget), g_value_get_uint64 (value));
  else if (SW_IS_LOGO_FIELD (widget))
    sw_logo_field_set_logo (SW_LOGO_FIELD (widget), g_value_get_boxed (value));
  else if (GTK_IS_DROP_DOWN (widget))
    sw_choices_show (GTK_DROP_DOWN (widget), g_value_get_enum (value));
  else if (SW_IS_NUMBER (widget))
    sw_number_set_value (SW_NUMBER (widget), G_VALUE_HOLDS_DOUBLE (value) ? g_value_get_double (value)
                         : g_value_get_int (value));
  else if (strcmp (gtk_editable_get_text (GTK_EDITABLE (widget)), g_value_get_string (value)) != 0)
    gtk_editable_set_text (GTK_EDITABLE (widget), g_value_get_string (value));
}

/* Whether an edit of @field goes on with what was being typed in it, and nothing was done meanwhile: no other edit, no
 * undo, no save. */
static gboolean
is_typing_on (SwClientForm *self,
              const Field  *field)
{
  SwHistory *history = sw_document_get_history (self->document);

  return self->typed == field && self->typed_mark == sw_history_get_mark (history)
         && sw_history_get_modified (history) && !sw_history_get_can_redo (history);
}

/* A reason for keeping what a finding speaks against was weighed for one client. When a client who had a name or a
 * birth year gets another, such reasons go: each finding that must be answered is to be weighed again. Emptying the
 * field is how another name begins. The answers go in a step before the edit, so that no undo shows them with the new
 * client. */
static void
forget_answers (SwClientForm *self,
                const Field  *field,
                const GValue *value)
{
  SwProgramme *programme = sw_document_get_programme (self->document);
  SwClient *client = sw_programme_get_client (programme);
  GListStore *answers = sw_programme_get_answers (programme);
  guint n_answers = g_list_model_get_n_items (G_LIST_MODEL (answers));
  const char *name = sw_client_get_name (client);
  int birth_year = sw_client_get_birth_year (client);
  gboolean another = FALSE;

  if (field->owner == OWNER_CLIENT && strcmp (field->property, "name") == 0)
    another = *name != '\0' && strcmp (name, g_value_get_string (value)) != 0;
  else if (field->owner == OWNER_CLIENT && strcmp (field->property, "birth-year") == 0)
    another = birth_year != 0 && birth_year != g_value_get_int (value);
  if (!another || n_answers == 0 || is_typing_on (self, field))
    return;

  sw_history_splice (sw_document_get_history (self->document), _("Take back the reasons given for another client"),
                     answers, 0, n_answers, NULL, 0);
  gtk_widget_activate_action (GTK_WIDGET (self), "win.tell-answers-gone", NULL);
}

static void
edited_cb (SwClientForm *self,
           GtkWidget    *widget)
{
  SwHistory *history;

  if (self->document == NULL || self->refreshing)
    return;

  history = sw_document_get_history (self->document);
  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    {
      g_auto (GValue) value = G_VALUE_INIT;
      GObject *owner = owner_of (self, &fields[i]);

      if (self->widgets[i] != widget)
        continue;
      g_value_init (&value, type_of (owner, &fields[i]));
      read_widget (widget, &value);
      /* What is typed goes together; one logo after another does not. */
      if (SW_IS_LOGO_FIELD (widget))
        sw_history_stop_merging (history);
      forget_answers (self, &fields[i], &value);
      sw_history_set (history, _(fields[i].label), owner, fields[i].property, &value);
      self->typed = &fields[i];
      self->typed_mark = sw_history_get_mark (history);
    }
}

static void
chosen_cb (SwClientForm *self,
           GParamSpec   *pspec,
           GtkWidget    *widget)
{
  (void) pspec;
  edited_cb (self, widget);
}

static void
language_chosen_cb (SwClientForm *self)
{
  guint position = gtk_drop_down_get_selected (self->language);

  if (self->document == NULL || self->refreshing || position == GTK_INVALID_LIST_POSITION)
    return;

  sw_history_set_string (sw_document_get_history (self->document), _("Change the handout’s language"),
                         sw_programme_get_client (sw_document_get_programme (self->document)), "language",
                         self->languages[position]);
}

/* The languages are looked up anew only when there are other exercises. */
static void
refresh_languages (SwClientForm *self)
{
  SwCatalogue *catalogue = sw_document_get_catalogue (self->document);
  guint n = catalogue != NULL ? g_list_model_get_n_items (G_LIST_MODEL (catalogue)) : 0;
  const char *language = sw_client_get_language (sw_programme_get_client (sw_document_get_programme (self->document)));
  g_autoptr (GtkStringList) words = NULL;

  if (self->languages == NULL || self->catalogue != catalogue || self->n_exercises != n
      || !g_strv_contains ((const char * const *) self->languages, language))
    {
      self->catalogue = catalogue;
      self->n_exercises = n;
      g_clear_pointer (&self->languages, g_strfreev);
      self->languages = sw_languages_collect (catalogue, language);
      words = gtk_string_list_new (NULL);
      for (guint i = 0; self->languages[i] != NULL; i++)
        gtk_string_list_take (words, sw_languages_dup_label (catalogue, self->languages[i]));
      gtk_drop_down_set_model (self->language, G_LIST_MODEL (words));
    }

  for (guint i = 0; self->languages[i] != NULL; i++)
    {
      if (strcmp (self->languages[i], language) == 0)
        sw_choices_show (self->language, (int) i);
    }
}

static GtkWidget *
get_widget (SwClientForm *self,
            const char   *id)
{
  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    {
      if (strcmp (fields[i].id, id) == 0)
        return self->widgets[i];
    }

  g_return_val_if_reached (NULL);
}

static void
sw_client_form_dispose (GObject *object)
{
  SwClientForm *self = SW_CLIENT_FORM (object);

  g_clear_object (&self->document);
  g_clear_pointer (&self->languages, g_strfreev);
  g_clear_pointer (&self->box, gtk_widget_unparent);

  G_OBJECT_CLASS (sw_client_form_parent_class)->dispose (object);
}

static void
sw_client_form_class_init (SwClientFormClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_client_form_dispose;

  g_type_ensure (SW_TYPE_FIELD_ROW);
  g_type_ensure (SW_TYPE_LOGO_FIELD);
  g_type_ensure (SW_TYPE_LIMIT_LIST);
  g_type_ensure (SW_TYPE_MEASUREMENT_LIST);
  g_type_ensure (SW_TYPE_NUMBER);
  g_type_ensure (SW_TYPE_SET_FIELD);
  g_type_ensure (SW_TYPE_TEXT_AREA);
  g_type_ensure (SW_TYPE_TRANSITION_FIELDS);

  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-client-form.ui");
  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    gtk_widget_class_bind_template_child_full (widget_class, fields[i].id, FALSE,
                                               G_STRUCT_OFFSET (SwClientForm, widgets)
                                               + (gssize) (i * sizeof (gpointer)));
  gtk_widget_class_bind_template_child (widget_class, SwClientForm, box);
  gtk_widget_class_bind_template_child (widget_class, SwClientForm, language);
  gtk_widget_class_bind_template_child (widget_class, SwClientForm, bands_row);
  gtk_widget_class_bind_template_child (widget_class, SwClientForm, limits);
  gtk_widget_class_bind_template_child (widget_class, SwClientForm, measurements);
  gtk_widget_class_bind_template_child (widget_class, SwClientForm, transitions);
  gtk_widget_class_bind_template_callback (widget_class, edited_cb);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, language_chosen_cb);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sw_client_form_init (SwClientForm *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));

  sw_choices_fill (GTK_DROP_DOWN (get_widget (self, "dominant_side")), SW_TYPE_BODY_SIDE);
  sw_choices_fill (GTK_DROP_DOWN (get_widget (self, "company")), SW_TYPE_COMPANY);
  sw_choices_fill (GTK_DROP_DOWN (get_widget (self, "paper")), SW_TYPE_PAPER);
  sw_choices_fill (GTK_DROP_DOWN (get_widget (self, "units")), SW_TYPE_UNITS);
  sw_choices_fill (GTK_DROP_DOWN (get_widget (self, "max_formula")), SW_TYPE_MAX_FORMULA);
  sw_field_row_set_hint (self->bands_row, _("One a line, by its mark and the force at a stretch, such as "
                                            "“2: 25 N at 100 %”. Colours mean another force with each maker."));
  sw_set_field_fill (SW_SET_FIELD (get_widget (self, "precautions")), SW_TYPE_PRECAUTION, 1,
                     _("Precautions"), _("None noted"));
  sw_set_field_fill (SW_SET_FIELD (get_widget (self, "equipment")), SW_TYPE_EQUIPMENT, 2,
                     _("Equipment at home"), _("Not asked yet"));
  sw_set_field_fill (SW_SET_FIELD (get_widget (self, "avoided_positions")), SW_TYPE_POSITION, 2,
                     _("Positions not possible alone"), _("None noted"));
}

/**
 * sw_client_form_set_document:
 * @self: a form
 * @document: (nullable): whose client to show
 */
void
sw_client_form_set_document (SwClientForm *self,
                             SwDocument   *document)
{
  g_return_if_fail (SW_IS_CLIENT_FORM (self));

  if (!g_set_object (&self->document, document))
    return;

  self->typed = NULL;
  g_clear_pointer (&self->languages, g_strfreev);
  sw_limit_list_set_document (self->limits, document);
  sw_measurement_list_set_document (self->measurements, document);
  sw_client_form_refresh (self);
}

/**
 * sw_client_form_refresh:
 * @self: a form
 *
 * Shows everything as it is now; what is being typed and means the same stays as it is.
 */
void
sw_client_form_refresh (SwClientForm *self)
{
  g_return_if_fail (SW_IS_CLIENT_FORM (self));

  if (self->document == NULL || self->refreshing)
    return;

  self->refreshing = TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    {
      g_auto (GValue) value = G_VALUE_INIT;
      GObject *owner = owner_of (self, &fields[i]);

      g_value_init (&value, type_of (owner, &fields[i]));
      g_object_get_property (owner, fields[i].property, &value);
      show_value (self->widgets[i], &value);
    }
  refresh_languages (self);
  sw_limit_list_refresh (self->limits);
  sw_measurement_list_refresh (self->measurements);
  sw_transition_fields_show (self->transitions, self->document);
  self->refreshing = FALSE;
}
