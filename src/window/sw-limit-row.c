/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The fields of one limit: only those of its kind are shown. */
#include "config.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n.h>

#include "sw-limit-row.h"

#include "sw-choices.h"
#include "sw-labels.h"
#include "sw-limit-name.h"
#include "sw-number.h"
#include "sw-units.h"
#include "sw-xml-values.h"

/* What a number's field holds when it is not stated; below every value a field can hold. */
#define NOT_STATED (-1000.0)

struct _SwLimitRow
{
  GtkWidget parent_instance;

  SwDocument *document;
  SwLimit *limit;
  gboolean refreshing;
  char *shown_date;   /* the date that was last given or shown */

  GtkWidget *box;
  GtkDropDown *kind;
  GtkDropDown *side;
  GtkButton *remove;
  GtkWidget *what;
  GtkDropDown *region;
  GtkDropDown *movement;
  GtkDropDown *bearing;
  GtkDropDown *precaution;
  GtkWidget *amount;
  SwNumber *kg;
  GtkLabel *unit;
  GtkWidget *range;
  GtkWidget *from_box;
  SwNumber *from_deg;
  SwNumber *to_deg;
  GtkLabel *hint;
  GtkWidget *operation;
  GtkEntry *name;
  GtkEntry *date;
  GtkLabel *since;
  GtkEntry *note;
  GtkBox *complaint;
  GtkLabel *complaint_words;
};

G_DEFINE_FINAL_TYPE (SwLimitRow, sw_limit_row, GTK_TYPE_WIDGET)

enum
{
  REMOVED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static SwHistory *
get_history (SwLimitRow *self)
{
  return sw_document_get_history (self->document);
}

static gboolean
in_pounds (SwLimitRow *self)
{
  return sw_client_get_units (sw_programme_get_client (sw_document_get_programme (self->document))) == SW_UNITS_LB;
}

static void
choice_selected_cb (SwLimitRow  *self,
                    GParamSpec  *pspec G_GNUC_UNUSED,
                    GtkDropDown *choice)
{
  const char *property = choice == self->kind       ? "kind"
                         : choice == self->side     ? "side"
                         : choice == self->region   ? "region"
                         : choice == self->movement ? "movement"
                                                    : "bearing";

  if (self->refreshing || self->limit == NULL)
    return;

  sw_history_set_int (get_history (self), _("Change a limit"), self->limit, property,
                      gtk_drop_down_get_selected (choice));
}

/* The first row is "none of these". */
static void
precaution_selected_cb (SwLimitRow *self)
{
  guint selected = gtk_drop_down_get_selected (self->precaution);

  if (self->refreshing || self->limit == NULL || selected == GTK_INVALID_LIST_POSITION)
    return;

  sw_history_set_int (get_history (self), _("Change a limit"), self->limit, "precaution", (int) selected - 1);
}

/* What is wrong in one of the fields; they are too small for words of their own. */
static void
show_complaint (SwLimitRow *self)
{
  gboolean range = self->limit != NULL && sw_limit_get_kind (self->limit) == SW_LIMIT_KIND_RANGE
                   && !sw_movement_goes_to_sides (sw_limit_get_movement (self->limit));
  SwNumber *numbers[] = { self->kg, self->from_deg, self->to_deg };
  const char *words = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (numbers) && words == NULL; i++)
    words = sw_number_get_complaint (numbers[i]);
  if (words == NULL && gtk_widget_has_css_class (GTK_WIDGET (self->date), "error"))
    words = _("Write the date as year-month-day, such as 2026-03-09.");
  if (words == NULL && range && sw_limit_get_from_deg (self->limit) > sw_limit_get_to_deg (self->limit))
    words = _("“From” is beyond “to”: no angle would be allowed.");

  gtk_label_set_label (self->complaint_words, words != NULL ? words : "");
  gtk_widget_set_visible (GTK_WIDGET (self->complaint), words != NULL);
}

static void
mark_date (SwLimitRow *self,
           gboolean    valid)
{
  if (valid)
    gtk_widget_remove_css_class (GTK_WIDGET (self->date), "error");
  else
    gtk_widget_add_css_class (GTK_WIDGET (self->date), "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->date), GTK_ACCESSIBLE_STATE_INVALID,
                               valid ? GTK_ACCESSIBLE_INVALID_FALSE : GTK_ACCESSIBLE_INVALID_TRUE, -1);
  show_complaint (self);
}

static void
date_changed_cb (SwLimitRow *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->date));

  if (self->refreshing)
    return;

  mark_date (self, sw_is_date (text) || strlen (text) < 10);
  if (!sw_is_date (text) && *text != '\0')
    return;

  g_free (self->shown_date);
  self->shown_date = g_strdup (text);
  sw_history_set_string (get_history (self), _("Change a limit"), self->limit, "date", text);
}

static void
show_text (GtkEntry   *entry,
           const char *text)
{
  if (strcmp (gtk_editable_get_text (GTK_EDITABLE (entry)), text) != 0)
    gtk_editable_set_text (GTK_EDITABLE (entry), text);
}

static void
show_date (SwLimitRow *self)
{
  g_free (self->shown_date);
  self->shown_date = g_strdup (sw_limit_get_date (self->limit));
  show_text (self->date, self->shown_date);
  mark_date (self, TRUE);
}

/* A date that is none goes back to the last good one when it is left. */
static void
date_left_cb (SwLimitRow *self)
{
  self->refreshing = TRUE;
  show_date (self);
  self->refreshing = FALSE;
}

static void
text_changed_cb (SwLimitRow *self,
                 GtkEntry   *entry)
{
  if (self->refreshing)
    return;

  sw_history_set_string (get_history (self), _("Change a limit"), self->limit, entry == self->name ? "name" : "note",
                         gtk_editable_get_text (GTK_EDITABLE (entry)));
}

static void
value_changed_cb (SwLimitRow *self,
                  SwNumber   *number)
{
  g_auto (GValue) value = G_VALUE_INIT;
  const char *property = number == self->kg ? "kg" : number == self->from_deg ? "from-deg" : "to-deg";
  double shown = sw_number_get_value (number);

  if (self->refreshing)
    return;

  g_value_init (&value, G_TYPE_DOUBLE);
  if (shown <= NOT_STATED)
    g_value_set_double (&value, NAN);
  else
    g_value_set_double (&value, number == self->kg && in_pounds (self) ? sw_kg_from_lb (shown) : shown);
  sw_history_set (get_history (self), _("Change a limit"), self->limit, property, &value);
}

static void
remove_clicked_cb (SwLimitRow *self)
{
  g_signal_emit (self, signals[REMOVED], 0);
}

static gboolean
sw_limit_row_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (SW_LIMIT_ROW (widget)->kind));
}

static void
sw_limit_row_dispose (GObject *object)
{
  SwLimitRow *self = SW_LIMIT_ROW (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->limit);
  g_clear_object (&self->document);

  G_OBJECT_CLASS (sw_limit_row_parent_class)->dispose (object);
}

static void
sw_limit_row_finalize (GObject *object)
{
  g_free (SW_LIMIT_ROW (object)->shown_date);

  G_OBJECT_CLASS (sw_limit_row_parent_class)->finalize (object);
}

static void
bind_children (GtkWidgetClass *class)
{
  gtk_widget_class_bind_template_child (class, SwLimitRow, box);
  gtk_widget_class_bind_template_child (class, SwLimitRow, kind);
  gtk_widget_class_bind_template_child (class, SwLimitRow, side);
  gtk_widget_class_bind_template_child (class, SwLimitRow, remove);
  gtk_widget_class_bind_template_child (class, SwLimitRow, what);
  gtk_widget_class_bind_template_child (class, SwLimitRow, region);
  gtk_widget_class_bind_template_child (class, SwLimitRow, movement);
  gtk_widget_class_bind_template_child (class, SwLimitRow, bearing);
  gtk_widget_class_bind_template_child (class, SwLimitRow, precaution);
  gtk_widget_class_bind_template_child (class, SwLimitRow, amount);
  gtk_widget_class_bind_template_child (class, SwLimitRow, kg);
  gtk_widget_class_bind_template_child (class, SwLimitRow, unit);
  gtk_widget_class_bind_template_child (class, SwLimitRow, range);
  gtk_widget_class_bind_template_child (class, SwLimitRow, from_box);
  gtk_widget_class_bind_template_child (class, SwLimitRow, from_deg);
  gtk_widget_class_bind_template_child (class, SwLimitRow, to_deg);
  gtk_widget_class_bind_template_child (class, SwLimitRow, hint);
  gtk_widget_class_bind_template_child (class, SwLimitRow, operation);
  gtk_widget_class_bind_template_child (class, SwLimitRow, name);
  gtk_widget_class_bind_template_child (class, SwLimitRow, date);
  gtk_widget_class_bind_template_child (class, SwLimitRow, since);
  gtk_widget_class_bind_template_child (class, SwLimitRow, note);
  gtk_widget_class_bind_template_child (class, SwLimitRow, complaint);
  gtk_widget_class_bind_template_child (class, SwLimitRow, complaint_words);
}

static void
sw_limit_row_class_init (SwLimitRowClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_limit_row_dispose;
  G_OBJECT_CLASS (class)->finalize = sw_limit_row_finalize;
  widget_class->grab_focus = sw_limit_row_grab_focus;

  signals[REMOVED] = g_signal_new ("removed", SW_TYPE_LIMIT_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);

  g_type_ensure (SW_TYPE_NUMBER);

  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-limit-row.ui");
  bind_children (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, show_complaint);
  gtk_widget_class_bind_template_callback (widget_class, choice_selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, precaution_selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, text_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, date_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, date_left_cb);
  gtk_widget_class_bind_template_callback (widget_class, value_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, remove_clicked_cb);
  gtk_widget_class_set_css_name (widget_class, "limit");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
fill_sides (GtkDropDown *side)
{
  const char * const words[] = { _("Both sides"), sw_label (SW_TYPE_BODY_SIDE, SW_BODY_SIDE_RIGHT),
                                 sw_label (SW_TYPE_BODY_SIDE, SW_BODY_SIDE_LEFT), NULL };
  g_autoptr (GtkStringList) list = gtk_string_list_new (words);

  gtk_drop_down_set_model (side, G_LIST_MODEL (list));
}

static void
fill_precautions (GtkDropDown *precaution)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);

  gtk_string_list_append (list, _("Belongs to no precaution above"));
  for (int value = 0; value < sw_term_get_n_values (SW_TYPE_PRECAUTION); value++)
    gtk_string_list_append (list, sw_label (SW_TYPE_PRECAUTION, value));
  gtk_drop_down_set_model (precaution, G_LIST_MODEL (list));
}

static void
sw_limit_row_init (SwLimitRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->refreshing = TRUE;
  sw_choices_fill (self->kind, SW_TYPE_LIMIT_KIND);
  sw_choices_fill (self->region, SW_TYPE_REGION);
  sw_choices_fill (self->movement, SW_TYPE_MOVEMENT);
  sw_choices_fill (self->bearing, SW_TYPE_BEARING);
  fill_sides (self->side);
  fill_precautions (self->precaution);
  self->refreshing = FALSE;
  sw_number_set_name (self->kg, _("At most"), NULL);
  sw_number_set_name (self->from_deg, _("From, degrees"), NULL);
  sw_number_set_name (self->to_deg, _("To, degrees"), NULL);
}

/**
 * sw_limit_row_new:
 * @document: the document
 * @limit: one of its limits
 *
 * Returns: (transfer floating): a row, to be filled by sw_limit_row_refresh()
 */
SwLimitRow *
sw_limit_row_new (SwDocument *document,
                  SwLimit    *limit)
{
  SwLimitRow *self = g_object_new (SW_TYPE_LIMIT_ROW, NULL);

  self->document = g_object_ref (document);
  self->limit = g_object_ref (limit);
  return self;
}

/**
 * sw_limit_row_get_limit:
 * @self: a row
 *
 * Returns: (transfer none): whose fields it shows
 */
SwLimit *
sw_limit_row_get_limit (SwLimitRow *self)
{
  g_return_val_if_fail (SW_IS_LIMIT_ROW (self), NULL);

  return self->limit;
}

static void
show_number (SwNumber *number,
             double    value)
{
  sw_number_set_value (number, isnan (value) ? NOT_STATED : value);
}

static void
show_kind (SwLimitRow *self)
{
  SwLimitKind kind = sw_limit_get_kind (self->limit);
  SwMovement movement = sw_limit_get_movement (self->limit);
  gboolean range = kind == SW_LIMIT_KIND_RANGE;
  gboolean to_sides = sw_movement_goes_to_sides (movement);
  gboolean part = kind == SW_LIMIT_KIND_WEIGHT_BEARING && sw_limit_get_bearing (self->limit) == SW_BEARING_PART;
  g_autofree char *hint = NULL;

  gtk_widget_set_visible (GTK_WIDGET (self->side), !range || to_sides || sw_movement_is_sided (movement));
  gtk_widget_set_visible (GTK_WIDGET (self->region), kind == SW_LIMIT_KIND_LOAD);
  gtk_widget_set_visible (GTK_WIDGET (self->movement), range);
  gtk_widget_set_visible (GTK_WIDGET (self->bearing), kind == SW_LIMIT_KIND_WEIGHT_BEARING);
  gtk_widget_set_visible (GTK_WIDGET (self->precaution), kind == SW_LIMIT_KIND_SURGERY);
  gtk_widget_set_visible (self->amount, kind == SW_LIMIT_KIND_LOAD || part);
  gtk_widget_set_visible (self->range, range);
  gtk_widget_set_visible (self->from_box, !to_sides);
  gtk_widget_set_visible (self->operation, kind == SW_LIMIT_KIND_SURGERY);

  if (!to_sides)
    {
      /* Translators: what an angle below zero means, such as "hip internal rotation" */
      hint = g_strdup_printf (_("Below zero: %s"), sw_movement_get_opposite_name (movement));
      gtk_label_set_label (self->hint, hint);
    }
  gtk_widget_set_visible (GTK_WIDGET (self->hint), range && !to_sides);
  gtk_label_set_label (self->unit, sw_label (SW_TYPE_LOAD_UNIT, in_pounds (self) ? SW_LOAD_LB : SW_LOAD_KG));
}

/* Weeks are counted from the day that was entered, and stand beside it. */
static void
show_since (SwLimitRow *self)
{
  g_autofree char *since = sw_limit_dup_since (sw_limit_get_date (self->limit), sw_document_get_today (self->document));

  gtk_label_set_label (self->since, since != NULL ? since : "");
  gtk_widget_set_visible (GTK_WIDGET (self->since), since != NULL);
}

/**
 * sw_limit_row_refresh:
 * @self: a row
 *
 * Shows the limit as it is now; what is being typed and means the same stays as it is.
 */
void
sw_limit_row_refresh (SwLimitRow *self)
{
  double kg;

  g_return_if_fail (SW_IS_LIMIT_ROW (self));

  kg = sw_limit_get_kg (self->limit);
  self->refreshing = TRUE;
  sw_choices_show (self->kind, (int) sw_limit_get_kind (self->limit));
  sw_choices_show (self->side, (int) sw_limit_get_side (self->limit));
  sw_choices_show (self->region, (int) sw_limit_get_region (self->limit));
  sw_choices_show (self->movement, (int) sw_limit_get_movement (self->limit));
  sw_choices_show (self->bearing, (int) sw_limit_get_bearing (self->limit));
  sw_choices_show (self->precaution, sw_limit_get_precaution (self->limit) + 1);
  show_number (self->kg, in_pounds (self) ? round (sw_lb_from_kg (kg) * 100.0) / 100.0 : kg);
  show_number (self->from_deg, sw_limit_get_from_deg (self->limit));
  show_number (self->to_deg, sw_limit_get_to_deg (self->limit));
  show_text (self->name, sw_limit_get_name (self->limit));
  show_text (self->note, sw_limit_get_note (self->limit));
  if (g_strcmp0 (self->shown_date, sw_limit_get_date (self->limit)) != 0)
    show_date (self);
  show_kind (self);
  show_since (self);
  show_complaint (self);
  self->refreshing = FALSE;
}
