/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One test at a time: its chart, its visits in words, and what follows for the exercises it counts for. */
#include "config.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n.h>

#include "sw-course-window.h"

#include "sw-course-chart.h"
#include "sw-course.h"
#include "sw-finding-fix.h"
#include "sw-labels.h"
#include "sw-units.h"
#include "sw-working-button.h"

struct _SwCourseWindow
{
  GtkWindow parent_instance;

  GtkStack *stack;
  GtkDropDown *test;
  SwCourseChart *chart;
  GtkLabel *key;
  GtkListBox *visits;
  SwWorkingButton *sides;
  GtkLabel *not_compared;
  GtkBox *uses;

  SwDocument *document;
  gboolean refreshing;
  GPtrArray *tests;  /* names, as the drop-down */
  GPtrArray *course; /* SwMeasurement, as the rows */
};

G_DEFINE_FINAL_TYPE (SwCourseWindow, sw_course_window, GTK_TYPE_WINDOW)

static SwProgramme *
get_programme (SwCourseWindow *self)
{
  return sw_document_get_programme (self->document);
}

static const char *
get_test (SwCourseWindow *self)
{
  guint chosen = gtk_drop_down_get_selected (self->test);

  return chosen < self->tests->len ? g_ptr_array_index (self->tests, chosen) : NULL;
}

static void
append_value (GString    *words,
              const char *name,
              double      value)
{
  g_autofree char *number = isnan (value) ? NULL : sw_number_to_string (value, 2);

  if (number != NULL)
    g_string_append_printf (words, "%s%s %s", words->len > 0 ? ", " : "", name, number);
}

/* "right 15, left 12 repetitions" */
static char *
dup_values (SwMeasurement *visit)
{
  g_autoptr (GString) words = g_string_new (NULL);
  g_autofree char *measure = g_utf8_strdown (sw_label (SW_TYPE_MEASURE, (int) sw_measurement_get_measure (visit)), -1);

  append_value (words, _("right"), sw_measurement_get_right (visit));
  append_value (words, _("left"), sw_measurement_get_left (visit));
  append_value (words, _("both together"), sw_measurement_get_both (visit));
  g_string_append_printf (words, " %s", measure);
  if (sw_measurement_get_repetitions (visit) > 0)
    g_string_append_printf (words, ngettext (", moved %d time", ", moved %d times",
                                             (unsigned long) sw_measurement_get_repetitions (visit)),
                            sw_measurement_get_repetitions (visit));
  return g_string_free (g_steal_pointer (&words), FALSE);
}

static char *
dup_visit (SwMeasurement *visit)
{
  g_autofree char *values = dup_values (visit);
  g_autofree char *index = NULL;
  SwSymmetry symmetry;

  if (!sw_course_compare (visit, &symmetry))
    return g_strdup_printf ("%s: %s", sw_measurement_get_date (visit), values);

  index = sw_number_to_string (symmetry.index_percent, 1);
  /* Translators: a date, values of a test, how the lesser side compares with the other in percent */
  return g_strdup_printf (_("%s: %s; symmetry index %s %%"), sw_measurement_get_date (visit), values, index);
}

static void
show_visit (SwCourseWindow *self,
            int             number)
{
  SwProgramme *programme = get_programme (self);
  SwMeasurement *visit = number >= 0 ? g_ptr_array_index (self->course, number) : NULL;
  g_autoptr (SwWorking) working = NULL;
  g_autofree char *difference = NULL;
  g_autofree char *words = NULL;
  SwSymmetry symmetry;
  gboolean compared = visit != NULL && sw_course_compare (visit, &symmetry);

  sw_course_chart_mark (self->chart, number);
  gtk_widget_set_visible (GTK_WIDGET (self->sides), compared);
  gtk_widget_set_visible (GTK_WIDGET (self->not_compared), visit != NULL && !compared);
  if (!compared)
    return;

  difference = sw_number_to_string (symmetry.difference_percent, 1);
  if (symmetry.lesser == SW_BODY_SIDE_NONE)
    words = g_strdup (_("The sides are the same"));
  else
    words = g_strdup_printf (symmetry.lesser == SW_BODY_SIDE_LEFT ? _("Left side %s %% below the right")
                             : _("Right side %s %% below the left"), difference);
  working = sw_course_explain (visit, sw_clinic_get_alike_percent (sw_programme_get_clinic (programme)),
                               sw_client_get_dominant_side (sw_programme_get_client (programme)));
  sw_working_button_show (self->sides, words, working);
}

static void
visit_selected_cb (SwCourseWindow *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->visits);

  if (self->document != NULL && !self->refreshing)
    show_visit (self, row != NULL ? gtk_list_box_row_get_index (row) : -1);
}

static GtkWidget *
label_new (const char *words)
{
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_widget_set_hexpand (label, TRUE);
  return label;
}

static const SwFinding *
find_finding (SwCourseWindow *self,
              const char     *key)
{
  GPtrArray *findings = sw_document_get_findings (self->document);

  for (guint i = 0; i < findings->len; i++)
    {
      const SwFinding *finding = g_ptr_array_index (findings, i);

      if (strcmp (finding->key, key) == 0)
        return finding;
    }

  return NULL;
}

/* The button knows its finding by the key: the finding itself is another after each edit. */
static void
fix_clicked_cb (SwCourseWindow *self,
                GtkButton      *button)
{
  const SwFinding *finding = find_finding (self, g_object_get_data (G_OBJECT (button), "key"));

  if (finding != NULL)
    sw_finding_apply_fix (self->document, finding);
}

static void
add_fix (SwCourseWindow  *self,
         const SwFinding *finding)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  GtkWidget *button = gtk_button_new_with_label (finding->fix_label);
  GtkWidget *words = label_new (finding->text);

  gtk_widget_set_tooltip_text (words, finding->why);
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  g_object_set_data_full (G_OBJECT (button), "key", g_strdup (finding->key), g_free);
  g_signal_connect_object (button, "clicked", G_CALLBACK (fix_clicked_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (box), words);
  gtk_box_append (GTK_BOX (box), button);
  gtk_box_append (self->uses, box);
}

/* What the test counts for, and what there is to do about the sides. */
static void
refresh_uses (SwCourseWindow *self,
              const char     *test)
{
  g_autoptr (GPtrArray) items = sw_programme_dup_items (get_programme (self));
  GPtrArray *findings = sw_document_get_findings (self->document);
  g_autoptr (GString) names = g_string_new (NULL);
  g_autofree char *line = NULL;
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->uses))) != NULL)
    gtk_box_remove (self->uses, child);
  for (guint i = 0; i < items->len; i++)
    {
      SwItem *item = g_ptr_array_index (items, i);
      g_autofree char *name = NULL;

      if (strcmp (sw_item_get_test (item), test) != 0)
        continue;
      name = sw_item_dup_name (item, NULL);
      g_string_append_printf (names, "%s%s", names->len > 0 ? ", " : "", name);
    }

  if (names->len > 0)
    /* Translators: names of exercises */
    line = g_strdup_printf (_("Counts for: %s"), names->str);
  else
    line = g_strdup (_("Counts for no exercise yet: choose it there as the test that counts."));
  gtk_box_append (self->uses, label_new (line));
  for (guint i = 0; i < findings->len; i++)
    {
      const SwFinding *finding = g_ptr_array_index (findings, i);

      if (g_str_has_prefix (finding->key, "sides-") && finding->answer == NULL
          && strcmp (sw_item_get_test (finding->item), test) == 0)
        add_fix (self, finding);
    }
}

/* What the picture shows, for those who do not see it; the list beside it has the values. */
static void
describe_chart (SwCourseWindow *self,
                const char     *test)
{
  SwMeasurement *first = g_ptr_array_index (self->course, 0);
  SwMeasurement *last = g_ptr_array_index (self->course, self->course->len - 1);
  g_autofree char *from = dup_visit (first);
  g_autofree char *to = dup_visit (last);
  g_autofree char *visits = g_strdup_printf (ngettext ("%u visit", "%u visits", self->course->len), self->course->len);
  g_autofree char *told = NULL;

  if (self->course->len == 1)
    told = g_strdup_printf ("%s: %s. %s", test, visits, to);
  else
    /* Translators: a test, how many visits, the first and the last visit in words */
    told = g_strdup_printf (_("%s: %s. First %s. Last %s"), test, visits, from, to);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->chart), GTK_ACCESSIBLE_PROPERTY_LABEL, told, -1);
}

static void
show_test (SwCourseWindow *self)
{
  const char *test = get_test (self);
  int alike_percent = sw_clinic_get_alike_percent (sw_programme_get_clinic (get_programme (self)));
  g_autofree char *key = NULL;
  GtkListBoxRow *row;

  if (test == NULL)
    return;

  self->refreshing = TRUE;
  g_clear_pointer (&self->course, g_ptr_array_unref);
  self->course = sw_course_collect (get_programme (self), test);
  sw_course_chart_show (self->chart, self->course, alike_percent);
  describe_chart (self, test);
  key = g_strdup_printf (_("● right   □ left   ◆ both together. The band behind: what the clinic calls alike, up to "
                           "%d %%."), alike_percent);
  gtk_label_set_label (self->key, key);
  while ((row = gtk_list_box_get_row_at_index (self->visits, 0)) != NULL)
    gtk_list_box_remove (self->visits, GTK_WIDGET (row));
  for (guint i = 0; i < self->course->len; i++)
    {
      g_autofree char *words = dup_visit (self->course->pdata[i]);

      gtk_list_box_append (self->visits, label_new (words));
    }
  self->refreshing = FALSE;
  gtk_list_box_select_row (self->visits, gtk_list_box_get_row_at_index (self->visits, (int) self->course->len - 1));
  refresh_uses (self, test);
}

static void
test_selected_cb (SwCourseWindow *self)
{
  if (self->document != NULL && !self->refreshing)
    show_test (self);
}

/* The tests as they are now; the one that is shown stays. */
static void
refresh (SwCourseWindow *self)
{
  g_autofree char *shown = self->tests != NULL ? g_strdup (get_test (self)) : NULL;
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  guint chosen = 0;

  self->refreshing = TRUE;
  g_clear_pointer (&self->tests, g_ptr_array_unref);
  self->tests = sw_course_dup_tests (get_programme (self));
  for (guint i = 0; i < self->tests->len; i++)
    {
      gtk_string_list_append (names, self->tests->pdata[i]);
      if (g_strcmp0 (shown, self->tests->pdata[i]) == 0)
        chosen = i;
    }
  gtk_drop_down_set_model (self->test, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->test, chosen);
  self->refreshing = FALSE;
  gtk_stack_set_visible_child_name (self->stack, self->tests->len > 0 ? "course" : "none");
  show_test (self);
}

static void
sw_course_window_dispose (GObject *object)
{
  SwCourseWindow *self = SW_COURSE_WINDOW (object);

  g_clear_object (&self->document);
  g_clear_pointer (&self->tests, g_ptr_array_unref);
  g_clear_pointer (&self->course, g_ptr_array_unref);

  G_OBJECT_CLASS (sw_course_window_parent_class)->dispose (object);
}

static void
sw_course_window_class_init (SwCourseWindowClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_course_window_dispose;

  g_type_ensure (SW_TYPE_COURSE_CHART);
  g_type_ensure (SW_TYPE_WORKING_BUTTON);

  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-course-window.ui");
  gtk_widget_class_bind_template_child (widget_class, SwCourseWindow, stack);
  gtk_widget_class_bind_template_child (widget_class, SwCourseWindow, test);
  gtk_widget_class_bind_template_child (widget_class, SwCourseWindow, chart);
  gtk_widget_class_bind_template_child (widget_class, SwCourseWindow, key);
  gtk_widget_class_bind_template_child (widget_class, SwCourseWindow, visits);
  gtk_widget_class_bind_template_child (widget_class, SwCourseWindow, sides);
  gtk_widget_class_bind_template_child (widget_class, SwCourseWindow, not_compared);
  gtk_widget_class_bind_template_child (widget_class, SwCourseWindow, uses);
  gtk_widget_class_bind_template_callback (widget_class, test_selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, visit_selected_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
sw_course_window_init (SwCourseWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * sw_course_window_new:
 * @parent: the window it belongs to
 * @document: whose tests to show
 *
 * Returns: (transfer none): a window with the course of each test; it goes with its parent
 */
GtkWidget *
sw_course_window_new (GtkWindow  *parent,
                      SwDocument *document)
{
  SwCourseWindow *self;

  g_return_val_if_fail (GTK_IS_WINDOW (parent), NULL);
  g_return_val_if_fail (SW_IS_DOCUMENT (document), NULL);

  self = g_object_new (SW_TYPE_COURSE_WINDOW, "transient-for", parent, NULL);
  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  refresh (self);
  return GTK_WIDGET (self);
}
