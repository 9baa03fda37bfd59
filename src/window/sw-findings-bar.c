/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Totals and findings, always in sight while the therapist works. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-finding-row.h"
#include "sw-findings-bar.h"
#include "sw-labels.h"
#include "sw-readability-working.h"
#include "sw-time-working.h"
#include "sw-week-button.h"
#include "sw-working-button.h"
#include "sw-wrap-box.h"

struct _SwFindingsBar
{
  GtkWidget parent_instance;

  SwDocument *document;

  GtkRevealer *revealer;
  GtkWidget *rows;
  GtkWidget *nothing;
  SwWorkingButton *time;
  GtkLabel *empty;
  GtkWidget *changes;
  GtkButton *changes_button;
  SwWeekButton *week;
  SwWorkingButton *reading;
  GtkToggleButton *button;
  GtkWidget *stop_mark;
  GtkWidget *ask_mark;
  GtkWidget *tell_mark;
  GtkLabel *stop;
  GtkLabel *ask;
  GtkLabel *tell;
};

G_DEFINE_FINAL_TYPE (SwFindingsBar, sw_findings_bar, GTK_TYPE_WIDGET)

static void
set_words (GtkLabel   *label,
           const char *words)
{
  gtk_label_set_label (label, words);
  gtk_widget_set_visible (GTK_WIDGET (label), *words != '\0');
}

static void
refresh_time (SwFindingsBar *self)
{
  const SwClock *clock = sw_document_get_clock (self->document);
  int minutes = sw_client_get_minutes (sw_programme_get_client (sw_document_get_programme (self->document)));
  g_autofree char *length = NULL;
  g_autofree char *words = NULL;
  g_autofree char *time = NULL;
  g_autofree char *changes = NULL;
  g_autoptr (SwWorking) working = NULL;
  gboolean empty = clock == NULL || clock->entries->len == 0;

  gtk_widget_set_visible (GTK_WIDGET (self->time), !empty);
  gtk_widget_set_visible (GTK_WIDGET (self->empty), empty);
  gtk_widget_set_visible (self->changes, !empty);
  if (empty)
    return;

  length = sw_label_session (clock->total);
  /* Translators: how long the session takes, then the minutes the client has for it */
  words = minutes > 0 ? g_strdup_printf (_ ("%s · %d min wished"), length, minutes) : g_strdup (length);
  working = sw_time_working_of_session (sw_document_get_session (self->document),
                                        sw_programme_get_clinic (sw_document_get_programme (self->document)));
  sw_working_button_show (self->time, words, working);

  if (clock->n_changes == 0)
    {
      gtk_button_set_label (self->changes_button, _ ("No change of position"));
      return;
    }
  time = sw_clock_to_words (clock->change_s);
  /* Translators: a number, then the minutes and seconds it takes */
  changes = g_strdup_printf (ngettext ("%d change of position (%s)", "%d changes of position (%s)",
                                       (gulong) clock->n_changes),
                             clock->n_changes, time);
  gtk_button_set_label (self->changes_button, changes);
}

/* A press tells how that was reckoned and which sentences are the hardest. */
static void
refresh_reading (SwFindingsBar *self)
{
  const SwReadabilityReport *report = sw_document_get_reading (self->document);
  g_autoptr (SwWorking) working = NULL;
  g_autofree char *brief = NULL;
  g_autofree char *words = NULL;
  g_auto (GStrv) hardest = NULL;

  gtk_widget_set_visible (GTK_WIDGET (self->reading), report != NULL);
  if (report == NULL)
    return;

  brief = sw_readability_scale_describe_briefly (report->scale, report->value);
  /* Translators: before how hard the handout is to read, for example "school grade 4.2" */
  words = g_strdup_printf (_ ("Reading: %s"), brief);
  working = sw_readability_working (report);
  hardest = sw_readability_report_dup_hardest (report);
  for (guint i = 0; hardest[i] != NULL; i++)
    sw_working_add (working, i == 0 ? _ ("Hardest to read") : _ ("Hard to read"), NULL, "%s", hardest[i]);
  sw_working_button_show (self->reading, words, working);
}

static void
append_count (GString    *name,
              GtkWidget  *mark,
              GtkLabel   *label,
              const char *words,
              guint       n)
{
  gtk_widget_set_visible (mark, n > 0);
  set_words (label, n > 0 ? words : "");
  if (n > 0)
    g_string_append_printf (name, "%s%s", name->len > 0 ? ", " : "", words);
}

/* The counts in words are also the button's name: the symbols beside them say nothing on their own. */
static void
refresh_button (SwFindingsBar *self,
                GPtrArray     *findings)
{
  guint n_stop = sw_findings_count_open (findings, SW_FINDING_STOP);
  guint n_ask = sw_findings_count_open (findings, SW_FINDING_ASK);
  guint n_tell = sw_findings_count_open (findings, SW_FINDING_TELL);
  g_autofree char *stop = g_strdup_printf (ngettext ("%u to answer", "%u to answer", n_stop), n_stop);
  g_autofree char *ask = g_strdup_printf (ngettext ("%u to look at", "%u to look at", n_ask), n_ask);
  g_autofree char *tell = g_strdup_printf (ngettext ("%u to know", "%u to know", n_tell), n_tell);
  g_autoptr (GString) counts = g_string_new (NULL);
  g_autofree char *name = NULL;

  append_count (counts, self->stop_mark, self->stop, stop, n_stop);
  append_count (counts, self->ask_mark, self->ask, ask, n_ask);
  append_count (counts, self->tell_mark, self->tell, tell, n_tell);
  if (counts->len == 0)
    {
      set_words (self->tell, _ ("Nothing to answer"));
      g_string_append (counts, _ ("Nothing to answer"));
    }

  /* Translators: before the counts of findings by level */
  name = g_strdup_printf (_ ("Findings: %s"), counts->str);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static int
compare_findings (gconstpointer a,
                  gconstpointer b)
{
  const SwFinding *first = *(const SwFinding *const *) a;
  const SwFinding *second = *(const SwFinding *const *) b;
  gboolean first_answered = first->answer != NULL;
  gboolean second_answered = second->answer != NULL;

  if (first_answered != second_answered)
    return first_answered - second_answered;
  return (int) second->level - (int) first->level;
}

static GPtrArray *
dup_sorted (GPtrArray *findings)
{
  GPtrArray *sorted = g_ptr_array_new ();

  g_ptr_array_extend (sorted, findings, NULL, NULL);
  /* A stable sort: within a level the order of the document stays. */
  g_ptr_array_sort (sorted, compare_findings);
  return sorted;
}

static GtkWidget *
find_row (SwFindingsBar *self,
          const char    *key)
{
  for (GtkWidget *row = gtk_widget_get_first_child (self->rows); row != NULL; row = gtk_widget_get_next_sibling (row))
    if (g_str_equal (sw_finding_row_get_key (SW_FINDING_ROW (row)), key))
      return row;

  return NULL;
}

/* Rows of findings that stay are kept, and moved only where the order changed: a reason may be being typed. */
static void
refresh_rows (SwFindingsBar *self,
              GPtrArray     *findings)
{
  g_autoptr (GPtrArray) sorted = dup_sorted (findings);
  GtkWidget *before = NULL;
  GtkWidget *rest;

  for (guint i = 0; i < sorted->len; i++)
    {
      const SwFinding *finding = g_ptr_array_index (sorted, i);
      GtkWidget *row = find_row (self, finding->key);

      if (row == NULL)
        {
          row = sw_finding_row_new (self->document, finding->key);
          gtk_box_insert_child_after (GTK_BOX (self->rows), row, before);
        }
      else if (gtk_widget_get_prev_sibling (row) != before)
        {
          gtk_box_reorder_child_after (GTK_BOX (self->rows), row, before);
        }
      sw_finding_row_refresh (SW_FINDING_ROW (row), finding);
      before = row;
    }

  rest = before != NULL ? gtk_widget_get_next_sibling (before) : gtk_widget_get_first_child (self->rows);
  while (rest != NULL)
    {
      GtkWidget *next = gtk_widget_get_next_sibling (rest);

      gtk_box_remove (GTK_BOX (self->rows), rest);
      rest = next;
    }
  gtk_widget_set_visible (self->nothing, sorted->len == 0);
}

static void
document_changed_cb (SwFindingsBar *self)
{
  GPtrArray *findings = sw_document_get_findings (self->document);

  refresh_time (self);
  sw_week_button_show (self->week, sw_document_get_programme (self->document));
  refresh_reading (self);
  refresh_button (self, findings);
  refresh_rows (self, findings);
}

static void
remove_rows (SwFindingsBar *self)
{
  GtkWidget *row;

  while ((row = gtk_widget_get_first_child (self->rows)) != NULL)
    gtk_box_remove (GTK_BOX (self->rows), row);
}

static void
button_toggled_cb (SwFindingsBar *self)
{
  gtk_revealer_set_reveal_child (self->revealer, gtk_toggle_button_get_active (self->button));
}

static gboolean
key_pressed_cb (SwFindingsBar *self,
                guint          key)
{
  if (key != GDK_KEY_Escape || !gtk_toggle_button_get_active (self->button))
    return GDK_EVENT_PROPAGATE;

  gtk_toggle_button_set_active (self->button, FALSE);
  gtk_widget_grab_focus (GTK_WIDGET (self->button));
  return GDK_EVENT_STOP;
}

static void
sw_findings_bar_dispose (GObject *object)
{
  SwFindingsBar *self = SW_FINDINGS_BAR (object);
  GtkWidget *child;

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->document);

  G_OBJECT_CLASS (sw_findings_bar_parent_class)->dispose (object);
}

static void
sw_findings_bar_class_init (SwFindingsBarClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_findings_bar_dispose;

  g_type_ensure (SW_TYPE_WEEK_BUTTON);
  g_type_ensure (SW_TYPE_WORKING_BUTTON);
  g_type_ensure (SW_TYPE_WRAP_BOX);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-findings-bar.ui");
  gtk_widget_class_bind_template_child (widget_class, SwFindingsBar, revealer);
  gtk_widget_class_bind_template_child (widget_class, SwFindingsBar, rows);
  gtk_widget_class_bind_template_child (widget_class, SwFindingsBar, nothing);
  gtk_widget_class_bind_template_child (widget_class, SwFindingsBar, time);
  gtk_widget_class_bind_template_child (widget_class, SwFindingsBar, empty);
  gtk_widget_class_bind_template_child (widget_class, SwFindingsBar, changes);
  gtk_widget_class_bind_template_child (widget_class, SwFindingsBar, changes_button);
  gtk_widget_class_bind_template_child (widget_class, SwFindingsBar, week);
  gtk_widget_class_bind_template_child (widget_class, SwFindingsBar, reading);
  gtk_widget_class_bind_template_child (widget_class, SwFindingsBar, button);
  gtk_widget_class_bind_template_child (widget_class, SwFindingsBar, stop_mark);
  gtk_widget_class_bind_template_child (widget_class, SwFindingsBar, ask_mark);
  gtk_widget_class_bind_template_child (widget_class, SwFindingsBar, tell_mark);
  gtk_widget_class_bind_template_child (widget_class, SwFindingsBar, stop);
  gtk_widget_class_bind_template_child (widget_class, SwFindingsBar, ask);
  gtk_widget_class_bind_template_child (widget_class, SwFindingsBar, tell);
  gtk_widget_class_bind_template_callback (widget_class, button_toggled_cb);
  gtk_widget_class_bind_template_callback (widget_class, key_pressed_cb);
  gtk_widget_class_set_css_name (widget_class, "findings-bar");
}

static void
sw_findings_bar_init (SwFindingsBar *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * sw_findings_bar_set_document:
 * @document: (nullable): what to add up and check
 */
void
sw_findings_bar_set_document (SwFindingsBar *self,
                              SwDocument    *document)
{
  g_return_if_fail (SW_IS_FINDINGS_BAR (self));

  if (self->document == document)
    return;

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  remove_rows (self);
  g_set_object (&self->document, document);
  if (document == NULL)
    return;

  g_signal_connect_object (document, "changed", G_CALLBACK (document_changed_cb), self, G_CONNECT_SWAPPED);
  document_changed_cb (self);
}

/**
 * sw_findings_bar_open:
 *
 * Shows the findings above the line.
 */
void
sw_findings_bar_open (SwFindingsBar *self)
{
  g_return_if_fail (SW_IS_FINDINGS_BAR (self));
  gtk_toggle_button_set_active (self->button, TRUE);
}

/**
 * sw_findings_bar_toggle:
 *
 * Shows or hides the findings, and goes to the first of them or back to the line.
 */
void
sw_findings_bar_toggle (SwFindingsBar *self)
{
  gboolean open;

  g_return_if_fail (SW_IS_FINDINGS_BAR (self));

  open = !gtk_toggle_button_get_active (self->button);
  gtk_toggle_button_set_active (self->button, open);
  if (!open || !gtk_widget_child_focus (self->rows, GTK_DIR_TAB_FORWARD))
    gtk_widget_grab_focus (GTK_WIDGET (self->button));
}
