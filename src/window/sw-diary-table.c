/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The tick sheet as it comes back: a day, the columns the client filled in, a row an exercise of the session on the
 * canvas. */
#include "config.h"

#include <stdlib.h>
#include <string.h>

#include <glib/gi18n.h>

#include "sw-diary-table.h"

#include "sw-diary-row.h"
#include "sw-xml-values.h"

/* Dates that are told in the line of those written already. */
#define MOST_DATES 10

struct _SwDiaryTable
{
  GtkWidget parent_instance;

  SwDocument *document;
  gboolean refreshing;
  char *date;
  char *shown;     /* what the rows were made for */
  GPtrArray *rows; /* SwDiaryRow */

  GtkWidget *box;
  GtkLabel *session;
  GtkEditable *date_entry;
  GtkLabel *written;
  GtkScrolledWindow *scrolled;
};

G_DEFINE_FINAL_TYPE (SwDiaryTable, sw_diary_table, GTK_TYPE_WIDGET)

static GtkWidget *
label_new (const char *words,
           const char *css_class)
{
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

/* What the rows depend on: they are made anew only when it changes, so that the focus stays where one types. */
static char *
dup_signature (GPtrArray *items)
{
  GString *signature = g_string_new (NULL);

  for (guint i = 0; i < items->len; i++)
    {
      g_autofree char *name = NULL;
      g_autofree char *line = NULL;

      if (sw_item_get_exercise (items->pdata[i]) == NULL)
        continue;
      name = sw_item_dup_name (items->pdata[i], NULL);
      line = sw_dose_to_line (sw_item_get_dose (items->pdata[i]));
      g_string_append_printf (signature, "%p %s %s\n", items->pdata[i], name, line);
    }

  return g_string_free (signature, FALSE);
}

static void
make_rows (SwDiaryTable *self)
{
  g_autoptr (GPtrArray) items = sw_session_dup_items (sw_document_get_session (self->document));
  g_autofree char *signature = dup_signature (items);
  GtkWidget *grid;
  int at = 1;

  if (g_strcmp0 (signature, self->shown) == 0)
    return;

  g_free (self->shown);
  self->shown = g_steal_pointer (&signature);
  g_ptr_array_set_size (self->rows, 0);
  grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (grid), 6);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 8);
  gtk_widget_set_valign (grid, GTK_ALIGN_START);
  gtk_widget_add_css_class (grid, "diary");
  sw_diary_row_add_head (GTK_GRID (grid));
  for (guint i = 0; i < items->len; i++)
    {
      if (sw_item_get_exercise (items->pdata[i]) != NULL)
        g_ptr_array_add (self->rows, sw_diary_row_new (self->document, items->pdata[i], GTK_GRID (grid), at++));
    }
  gtk_scrolled_window_set_child (self->scrolled, grid);
}

static int
compare_later_first (const void *a,
                     const void *b)
{
  return strcmp (*(const char * const *) b, *(const char * const *) a);
}

static void
show_written (SwDiaryTable *self)
{
  GListModel *diary = G_LIST_MODEL (sw_programme_get_diary (sw_document_get_programme (self->document)));
  g_autoptr (GHashTable) dates = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autofree gpointer *sorted = NULL;
  guint n_dates;
  g_autoptr (GString) words = g_string_new (NULL);

  for (guint i = 0; i < g_list_model_get_n_items (diary); i++)
    {
      g_autoptr (SwDiaryEntry) entry = g_list_model_get_item (diary, i);

      g_hash_table_add (dates, g_strdup (sw_diary_entry_get_date (entry)));
    }
  sorted = g_hash_table_get_keys_as_array (dates, &n_dates);
  qsort (sorted, n_dates, sizeof (gpointer), compare_later_first);
  for (guint i = 0; i < MIN (n_dates, MOST_DATES); i++)
    g_string_append_printf (words, "%s%s", i > 0 ? "  " : _("Written so far: "), (const char *) sorted[i]);
  gtk_label_set_label (self->written, words->str);
}

static void
refresh (SwDiaryTable *self)
{
  SwSession *session = sw_document_get_session (self->document);
  const char *title = sw_session_get_title (session);

  self->refreshing = TRUE;
  gtk_label_set_label (self->session, *title != '\0' ? title : _("This session"));
  make_rows (self);
  for (guint i = 0; i < self->rows->len; i++)
    sw_diary_row_show (self->rows->pdata[i], self->date);
  if (strcmp (gtk_editable_get_text (self->date_entry), self->date) != 0)
    gtk_editable_set_text (self->date_entry, self->date);
  show_written (self);
  self->refreshing = FALSE;
}

static void
go_to (SwDiaryTable *self,
       const char   *date)
{
  g_free (self->date);
  self->date = g_strdup (date);
  sw_history_stop_merging (sw_document_get_history (self->document));
  refresh (self);
}

static void
date_changed_cb (SwDiaryTable *self)
{
  const char *text = gtk_editable_get_text (self->date_entry);

  if (self->document == NULL || self->refreshing)
    return;

  if (sw_is_date (text))
    {
      gtk_widget_remove_css_class (GTK_WIDGET (self->date_entry), "error");
      go_to (self, text);
    }
  else
    gtk_widget_add_css_class (GTK_WIDGET (self->date_entry), "error");
}

static void
step_day (SwDiaryTable *self,
          int           by)
{
  g_autoptr (GTimeZone) utc = g_time_zone_new_utc ();
  g_autofree char *noon = g_strconcat (self->date, "T12:00:00", NULL);
  g_autoptr (GDateTime) day = g_date_time_new_from_iso8601 (noon, utc);
  g_autoptr (GDateTime) then = g_date_time_add_days (day, by);
  g_autofree char *date = g_date_time_format (then, "%Y-%m-%d");

  gtk_widget_remove_css_class (GTK_WIDGET (self->date_entry), "error");
  go_to (self, date);
}

static void
day_before_cb (SwDiaryTable *self)
{
  step_day (self, -1);
}

static void
day_after_cb (SwDiaryTable *self)
{
  step_day (self, 1);
}

static void
sw_diary_table_dispose (GObject *object)
{
  SwDiaryTable *self = SW_DIARY_TABLE (object);

  g_clear_object (&self->document);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  g_clear_pointer (&self->date, g_free);
  g_clear_pointer (&self->shown, g_free);

  G_OBJECT_CLASS (sw_diary_table_parent_class)->dispose (object);
}

static void
sw_diary_table_class_init (SwDiaryTableClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_diary_table_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static GtkWidget *
day_button_new (SwDiaryTable *self,
                const char   *icon,
                const char   *words,
                GCallback     callback)
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon);

  gtk_widget_set_tooltip_text (button, words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  g_signal_connect_object (button, "clicked", callback, self, G_CONNECT_SWAPPED);
  return button;
}

static void
sw_diary_table_init (SwDiaryTable *self)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *entry = gtk_entry_new ();

  self->date = g_date_time_format (now, "%Y-%m-%d");
  self->rows = g_ptr_array_new_with_free_func (g_object_unref);

  self->session = GTK_LABEL (label_new (NULL, "heading"));
  self->date_entry = GTK_EDITABLE (entry);
  gtk_editable_set_enable_undo (self->date_entry, FALSE);
  gtk_editable_set_width_chars (self->date_entry, 10);
  gtk_editable_set_max_width_chars (self->date_entry, 10);
  gtk_editable_set_text (self->date_entry, self->date);
  gtk_widget_set_tooltip_text (entry, _("Year-month-day, such as 2026-03-09"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Day of the diary"), -1);
  g_signal_connect_object (entry, "changed", G_CALLBACK (date_changed_cb), self, G_CONNECT_SWAPPED);
  self->written = GTK_LABEL (label_new (NULL, "dim"));
  gtk_widget_set_margin_start (GTK_WIDGET (self->written), 12);

  gtk_box_append (GTK_BOX (head), GTK_WIDGET (self->session));
  gtk_box_append (GTK_BOX (head), day_button_new (self, "go-previous-symbolic", _("The day before"),
                                                  G_CALLBACK (day_before_cb)));
  gtk_box_append (GTK_BOX (head), entry);
  gtk_box_append (GTK_BOX (head), day_button_new (self, "go-next-symbolic", _("The day after"), G_CALLBACK (day_after_cb)));
  gtk_box_append (GTK_BOX (head), GTK_WIDGET (self->written));

  self->scrolled = GTK_SCROLLED_WINDOW (gtk_scrolled_window_new ());
  gtk_widget_set_vexpand (GTK_WIDGET (self->scrolled), TRUE);
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  gtk_box_append (GTK_BOX (self->box), head);
  gtk_box_append (GTK_BOX (self->box), GTK_WIDGET (self->scrolled));
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

/**
 * sw_diary_table_set_document:
 * @self: a table
 * @document: whose diary is shown, for the session on the canvas
 */
void
sw_diary_table_set_document (SwDiaryTable *self,
                             SwDocument   *document)
{
  g_return_if_fail (SW_IS_DIARY_TABLE (self));
  g_return_if_fail (self->document == NULL && SW_IS_DOCUMENT (document));

  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  refresh (self);
}
