/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whose answers to findings they are: another client in the form takes them back. */
#include "config.h"

#include "sw-client-form.h"
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

int
main (int    argc,
      char **argv)
{
  gtk_test_init (&argc, &argv, NULL);

  g_test_add ("/client-form/first-name", Fixture, NULL, set_up, test_first_name, tear_down);
  g_test_add ("/client-form/another-name", Fixture, NULL, set_up, test_another_name, tear_down);
  g_test_add ("/client-form/after-undo", Fixture, NULL, set_up, test_after_undo, tear_down);
  g_test_add ("/client-form/birth-year", Fixture, NULL, set_up, test_birth_year, tear_down);

  return g_test_run ();
}
