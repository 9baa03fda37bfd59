/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sw-labels.h"
#include "sw-pages-button.h"

typedef struct
{
  GtkWidget *window;
  SwPagesButton *button;
  SwProgramme *programme;
  SwDocument *document;
} Fixture;

static SwPagePlan *
plan_of (Fixture *self)
{
  return sw_programme_get_page_plan (self->programme);
}

static void
set_up (Fixture *self)
{
  self->programme = sw_programme_new_standard ();
  self->document = sw_document_new (self->programme, NULL);
  self->button = g_object_new (SW_TYPE_PAGES_BUTTON, NULL);
  self->window = gtk_window_new ();
  gtk_window_set_child (GTK_WINDOW (self->window), GTK_WIDGET (self->button));
  sw_pages_button_set_document (self->button, self->document);
}

static void
tear_down (Fixture *self)
{
  gtk_window_destroy (GTK_WINDOW (self->window));
  g_object_unref (self->document);
  g_object_unref (self->programme);
}

static const char *
words_of (GtkWidget *check)
{
  GtkWidget *box = gtk_check_button_get_child (GTK_CHECK_BUTTON (check));

  if (box == NULL)
    return gtk_check_button_get_label (GTK_CHECK_BUTTON (check));
  return gtk_label_get_label (GTK_LABEL (gtk_widget_get_first_child (box)));
}

static GtkCheckButton *
find_below (GtkWidget  *widget,
            const char *words)
{
  GtkCheckButton *found = NULL;

  if (GTK_IS_CHECK_BUTTON (widget))
    return g_strcmp0 (words_of (widget), words) == 0 ? GTK_CHECK_BUTTON (widget) : NULL;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find_below (child, words);
  return found;
}

static GtkCheckButton *
find (Fixture    *self,
      const char *words)
{
  GtkCheckButton *check = find_below (GTK_WIDGET (self->button), words);

  g_assert_nonnull (check);
  return check;
}

/* Every layout and every part has its row; a layout is chosen, undone and done again, and the rows follow. */
static void
test_layouts (void)
{
  Fixture self;
  SwHistory *history;

  set_up (&self);
  history = sw_document_get_history (self.document);
  g_assert_true (gtk_check_button_get_active (find (&self, "Full")));
  for (int layout = 1; layout < sw_term_get_n_values (SW_TYPE_LAYOUT); layout++)
    {
      gtk_check_button_set_active (find (&self, sw_label (SW_TYPE_LAYOUT, layout)), TRUE);
      g_assert_cmpint (sw_page_plan_get_layout (plan_of (&self)), ==, layout);
    }

  for (int layout = sw_term_get_n_values (SW_TYPE_LAYOUT) - 2; layout >= 0; layout--)
    {
      sw_history_undo (history);
      g_assert_cmpint (sw_page_plan_get_layout (plan_of (&self)), ==, layout);
      g_assert_true (gtk_check_button_get_active (find (&self, sw_label (SW_TYPE_LAYOUT, layout))));
    }
  g_assert_false (sw_history_get_can_undo (history));
  sw_history_redo (history);
  g_assert_true (gtk_check_button_get_active (find (&self, "Compact")));
  tear_down (&self);
}

/* Each part is a step of its own, although all of them are one property. */
static void
test_parts (void)
{
  Fixture self;
  SwHistory *history;

  set_up (&self);
  history = sw_document_get_history (self.document);
  for (int part = 0; part < sw_term_get_n_values (SW_TYPE_PAGE_PART); part++)
    {
      GtkCheckButton *check = find (&self, sw_label (SW_TYPE_PAGE_PART, part));
      gboolean shown = (sw_page_plan_get_parts (plan_of (&self)) & SW_SET (part)) != 0;

      g_assert_cmpint (gtk_check_button_get_active (check), ==, shown);
      gtk_check_button_set_active (check, !shown);
      g_assert_cmpuint (sw_page_plan_get_parts (plan_of (&self)) & SW_SET (part), ==, shown ? 0 : SW_SET (part));
    }

  g_assert_cmpstr (sw_history_get_undo_label (history), ==, "Show “Plan over the weeks, where there is one”");
  sw_history_undo (history);
  g_assert_cmpstr (sw_history_get_undo_label (history), ==, "Show “Lines to sign”");
  for (int part = 1; part < sw_term_get_n_values (SW_TYPE_PAGE_PART); part++)
    sw_history_undo (history);
  g_assert_false (sw_history_get_can_undo (history));
  g_assert_cmpuint (sw_page_plan_get_parts (plan_of (&self)), ==, SW_PAGE_PARTS_USUAL);
  g_assert_true (gtk_check_button_get_active (find (&self, "Letterhead")));
  tear_down (&self);
}

/* The summary alone lies on its side, and has the letterhead alone of the parts. */
static void
test_summary (void)
{
  Fixture self;
  GtkWidget *landscape;

  set_up (&self);
  landscape = GTK_WIDGET (find (&self, "The page on its side"));
  g_assert_false (gtk_widget_get_visible (landscape));
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (find (&self, "Log to fill in"))));

  gtk_check_button_set_active (find (&self, "Summary"), TRUE);
  g_assert_true (gtk_widget_get_visible (landscape));
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (find (&self, "Letterhead"))));
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (find (&self, "Log to fill in"))));
  gtk_check_button_set_active (GTK_CHECK_BUTTON (landscape), TRUE);
  g_assert_true (sw_page_plan_get_landscape (plan_of (&self)));
  sw_history_undo (sw_document_get_history (self.document));
  g_assert_false (gtk_check_button_get_active (GTK_CHECK_BUTTON (landscape)));
  g_assert_cmpint (sw_page_plan_get_layout (plan_of (&self)), ==, SW_LAYOUT_SUMMARY);

  gtk_check_button_set_active (find (&self, "Save ink: frames in place of dark areas"), TRUE);
  g_assert_true (sw_page_plan_get_save_ink (plan_of (&self)));
  tear_down (&self);
}

/* A PDF to fill in is a choice where there is something to fill in; it is kept, though the summary has nothing. */
static void
test_form (void)
{
  Fixture self;
  SwHistory *history;
  GtkCheckButton *form;

  set_up (&self);
  history = sw_document_get_history (self.document);
  form = find (&self, "PDF to fill in on a tablet");
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (form)));
  g_assert_true (gtk_widget_get_sensitive (GTK_WIDGET (form)));
  gtk_check_button_set_active (form, TRUE);
  g_assert_true (sw_page_plan_get_form (plan_of (&self)));
  g_assert_cmpstr (sw_history_get_undo_label (history), ==, "Make the PDF one to fill in");
  gtk_check_button_set_active (form, FALSE);
  g_assert_cmpstr (sw_history_get_undo_label (history), ==, "Make the PDF one to read only");
  sw_history_undo (history);
  g_assert_true (gtk_check_button_get_active (form));
  g_assert_true (sw_page_plan_get_form (plan_of (&self)));

  gtk_check_button_set_active (find (&self, "Log to fill in"), FALSE);
  g_assert_true (gtk_widget_get_sensitive (GTK_WIDGET (form)));
  gtk_check_button_set_active (find (&self, "Self-checks"), FALSE);
  g_assert_false (gtk_widget_get_sensitive (GTK_WIDGET (form)));
  gtk_check_button_set_active (find (&self, "Lines to sign"), TRUE);
  g_assert_true (gtk_widget_get_sensitive (GTK_WIDGET (form)));

  gtk_check_button_set_active (find (&self, "Summary"), TRUE);
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (form)));
  g_assert_true (sw_page_plan_get_form (plan_of (&self)));
  tear_down (&self);
}

/* Another document shows its own plan, and nothing of the first is changed. */
static void
test_other_document (void)
{
  Fixture self;
  g_autoptr (SwProgramme) other = sw_programme_new_standard ();
  g_autoptr (SwDocument) document = NULL;

  set_up (&self);
  g_object_set (sw_programme_get_page_plan (other), "layout", SW_LAYOUT_COMPACT, "save-ink", TRUE, NULL);
  document = sw_document_new (other, NULL);
  sw_pages_button_set_document (self.button, document);
  g_assert_true (gtk_check_button_get_active (find (&self, "Compact")));
  gtk_check_button_set_active (find (&self, "Full"), TRUE);
  g_assert_cmpint (sw_page_plan_get_layout (sw_programme_get_page_plan (other)), ==, SW_LAYOUT_FULL);
  g_assert_false (sw_history_get_can_undo (sw_document_get_history (self.document)));
  g_assert_true (sw_history_get_can_undo (sw_document_get_history (document)));

  sw_pages_button_set_document (self.button, NULL);
  g_assert_false (gtk_widget_get_sensitive (GTK_WIDGET (self.button)));
  tear_down (&self);
}

int
main (int    argc,
      char **argv)
{
  gtk_test_init (&argc, &argv, NULL);

  g_test_add_func ("/pages-button/layouts", test_layouts);
  g_test_add_func ("/pages-button/parts", test_parts);
  g_test_add_func ("/pages-button/summary", test_summary);
  g_test_add_func ("/pages-button/form", test_form);
  g_test_add_func ("/pages-button/other-document", test_other_document);

  return g_test_run ();
}
