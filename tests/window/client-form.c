/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whose answers to findings they are: another client in the form takes them back. */
#include "config.h"

#include "sw-client-form.h"
#include "sw-limit-list.h"
#include "sw-limit-row.h"
#include "sw-number.h"

typedef struct
{
  GtkWidget *window;
  SwClientForm *form;
  SwProgramme *programme;
  SwDocument *document;
  SwHistory *history;
} Fixture;

static void
set_up (Fixture       *self,
        gconstpointer  data)
{
  (void) data;
  self->programme = sw_programme_new_standard ();
  self->document = sw_document_new (self->programme, NULL);
  self->history = sw_document_get_history (self->document);
  self->form = g_object_new (SW_TYPE_CLIENT_FORM, NULL);
  self->window = gtk_window_new ();
  gtk_window_set_child (GTK_WINDOW (self->window), GTK_WIDGET (self->form));
  sw_client_form_set_document (self->form, self->document);
  g_signal_connect_swapped (self->document, "changed", G_CALLBACK (sw_client_form_refresh), self->form);
}

static void
tear_down (Fixture       *self,
           gconstpointer  data)
{
  (void) data;
  g_signal_handlers_disconnect_by_data (self->document, self->form);
  gtk_window_destroy (GTK_WINDOW (self->window));
  g_object_unref (self->document);
  g_object_unref (self->programme);
}

static void
answer (Fixture *self)
{
  GListStore *answers = sw_programme_get_answers (self->programme);
  g_autoptr (SwAnswer) answer = sw_answer_new ("load-limit:i1", "Lifts more at work", "2026-11-20", "S", NULL);
  gpointer added = answer;

  sw_history_splice (self->history, "Keep", answers, g_list_model_get_n_items (G_LIST_MODEL (answers)), 0, &added, 1);
}

static void
expect (Fixture    *self,
        const char *name,
        int         birth_year,
        guint       n_answers)
{
  SwClient *client = sw_programme_get_client (self->programme);

  g_assert_cmpstr (sw_client_get_name (client), ==, name);
  g_assert_cmpint (sw_client_get_birth_year (client), ==, birth_year);
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (sw_programme_get_answers (self->programme))), ==, n_answers);
}

static GtkWidget *
field (Fixture    *self,
       const char *id)
{
  return GTK_WIDGET (gtk_widget_get_template_child (GTK_WIDGET (self->form), SW_TYPE_CLIENT_FORM, id));
}

/* As from the keyboard: each letter is an edit. */
static void
type (Fixture    *self,
      const char *text)
{
  for (int position = gtk_entry_get_text_length (GTK_ENTRY (field (self, "name"))); *text != '\0'; text++)
    gtk_editable_insert_text (GTK_EDITABLE (field (self, "name")), text, 1, &position);
}

static void
save (Fixture *self)
{
  sw_history_stop_merging (self->history);
  sw_history_set_saved_mark (self->history, sw_history_get_mark (self->history));
}

/* A name typed after the answers is the name of the client they were given for. */
static void
test_first_name (Fixture       *self,
                 gconstpointer  data)
{
  (void) data;
  answer (self);
  answer (self);
  type (self, "Ada");
  expect (self, "Ada", 0, 2);
  sw_number_set_value (SW_NUMBER (field (self, "birth_year")), 1950);
  g_signal_emit_by_name (field (self, "birth_year"), "changed");
  expect (self, "Ada", 1950, 2);
}

/* Another name, after a save or after anything else was done, is another client; undo brings both back, in order. */
static void
test_another_name (Fixture       *self,
                   gconstpointer  data)
{
  (void) data;
  answer (self);
  type (self, "Ada");
  save (self);
  gtk_editable_set_text (GTK_EDITABLE (field (self, "name")), "Grace");
  expect (self, "Grace", 0, 0);

  sw_history_undo (self->history);
  expect (self, "Ada", 0, 0);
  sw_history_undo (self->history);
  expect (self, "Ada", 0, 1);

  gtk_editable_set_text (GTK_EDITABLE (field (self, "name")), "");
  expect (self, "", 0, 0);
  type (self, "Grace");
  expect (self, "Grace", 0, 0);
}

/* An edit that was taken back again is something that was done meanwhile. */
static void
test_after_undo (Fixture       *self,
                 gconstpointer  data)
{
  (void) data;
  answer (self);
  type (self, "Ada");
  sw_history_set_string (self->history, "Title", self->programme, "title", "Strong legs");
  sw_history_undo (self->history);
  expect (self, "Ada", 0, 1);
  gtk_editable_set_text (GTK_EDITABLE (field (self, "name")), "Grace");
  expect (self, "Grace", 0, 0);
}

static void
test_birth_year (Fixture       *self,
                 gconstpointer  data)
{
  (void) data;
  sw_history_set_int (self->history, "Year", sw_programme_get_client (self->programme), "birth-year", 1950);
  answer (self);
  type (self, "Ada");
  expect (self, "Ada", 1950, 1);
  sw_number_set_value (SW_NUMBER (field (self, "birth_year")), 1951);
  g_signal_emit_by_name (field (self, "birth_year"), "changed");
  expect (self, "Ada", 1951, 0);
}

static GtkWidget *
find_by_type (GtkWidget *widget,
              GType      type)
{
  if (G_OBJECT_TYPE (widget) == type)
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_by_type (child, type);

      if (found != NULL)
        return found;
    }

  return NULL;
}

static GtkWidget *
row_field (GtkWidget  *row,
           const char *id)
{
  return GTK_WIDGET (gtk_widget_get_template_child (row, SW_TYPE_LIMIT_ROW, id));
}

static gboolean
is_shown (GtkWidget  *row,
          const char *id)
{
  return gtk_widget_get_visible (row_field (row, id));
}

/* A limit shows the fields of its kind; each change is one step back, and what does not show is not lost. */
static void
test_limit (Fixture       *self,
            gconstpointer  data)
{
  GListStore *limits = sw_programme_get_limits (self->programme);
  g_autoptr (SwLimit) limit = sw_limit_new (SW_LIMIT_KIND_RANGE);
  gpointer addition = limit;
  GtkWidget *row;

  (void) data;
  sw_history_splice (self->history, "Add", limits, 0, 0, &addition, 1);
  row = find_by_type (GTK_WIDGET (self->form), SW_TYPE_LIMIT_ROW);
  g_assert_nonnull (row);
  g_assert_true (is_shown (row, "movement") && is_shown (row, "range") && is_shown (row, "side"));
  g_assert_false (is_shown (row, "region") || is_shown (row, "amount") || is_shown (row, "operation")
                  || is_shown (row, "complaint"));

  g_object_set (limit, "from-deg", 20.0, "to-deg", 10.0, NULL);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (row_field (row, "movement")), SW_MOVEMENT_HIP_TURN_OUT);
  g_assert_cmpint (sw_limit_get_movement (limit), ==, SW_MOVEMENT_HIP_TURN_OUT);
  g_assert_cmpstr (gtk_label_get_label (GTK_LABEL (row_field (row, "hint"))), ==, "Below zero: hip internal rotation");
  g_assert_true (is_shown (row, "complaint"));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (row_field (row, "movement")), SW_MOVEMENT_NECK_TURN);
  g_assert_false (is_shown (row, "from_box") || is_shown (row, "hint") || is_shown (row, "complaint"));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (row_field (row, "movement")), SW_MOVEMENT_BACK_BEND);
  g_assert_false (is_shown (row, "side"));

  gtk_drop_down_set_selected (GTK_DROP_DOWN (row_field (row, "kind")), SW_LIMIT_KIND_SURGERY);
  g_assert_true (is_shown (row, "operation") && is_shown (row, "precaution"));
  g_assert_false (is_shown (row, "since") || is_shown (row, "range"));
  gtk_editable_set_text (GTK_EDITABLE (row_field (row, "date")), "2020-01-01");
  g_assert_cmpstr (sw_limit_get_date (limit), ==, "2020-01-01");
  g_assert_true (is_shown (row, "since"));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (row_field (row, "precaution")), 1 + SW_PRECAUTION_KNEE_REPLACEMENT);
  g_assert_cmpint (sw_limit_get_precaution (limit), ==, SW_PRECAUTION_KNEE_REPLACEMENT);

  gtk_drop_down_set_selected (GTK_DROP_DOWN (row_field (row, "kind")), SW_LIMIT_KIND_WEIGHT_BEARING);
  g_assert_false (is_shown (row, "amount"));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (row_field (row, "bearing")), SW_BEARING_PART);
  g_assert_true (is_shown (row, "amount"));
  sw_history_undo (self->history);
  g_assert_cmpint (sw_limit_get_bearing (limit), ==, SW_BEARING_NONE);
  sw_history_undo (self->history);
  g_assert_cmpint (sw_limit_get_kind (limit), ==, SW_LIMIT_KIND_SURGERY);
  g_assert_cmpfloat (sw_limit_get_from_deg (limit), ==, 20.0);

  g_signal_emit_by_name (row, "removed");
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (limits)), ==, 0);
  g_assert_null (find_by_type (GTK_WIDGET (self->form), SW_TYPE_LIMIT_ROW));
  sw_history_undo (self->history);
  g_assert_nonnull (find_by_type (GTK_WIDGET (self->form), SW_TYPE_LIMIT_ROW));
}

int
main (int    argc,
      char **argv)
{
  gtk_test_init (&argc, &argv, NULL);

  g_test_add ("/client-form/first-name", Fixture, NULL, set_up, test_first_name, tear_down);
  g_test_add ("/client-form/limit", Fixture, NULL, set_up, test_limit, tear_down);
  g_test_add ("/client-form/another-name", Fixture, NULL, set_up, test_another_name, tear_down);
  g_test_add ("/client-form/after-undo", Fixture, NULL, set_up, test_after_undo, tear_down);
  g_test_add ("/client-form/birth-year", Fixture, NULL, set_up, test_birth_year, tear_down);

  return g_test_run ();
}
