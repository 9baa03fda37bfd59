/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An exercise's day, Tab from field to field. Its entry comes into being with the first thing written, and goes with the
 * last. */
#include "config.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n.h>

#include "sw-diary-row.h"

#include "sw-choices.h"
#include "sw-finding-fix.h"
#include "sw-number.h"
#include "sw-progress.h"
#include "sw-working-button.h"

/* Wide enough for most proposals in one line. */
#define LEAST_PROPOSED_PX 128

static const struct
{
  const char *property;
  const char *head;
  const char *name; /* for assistive tools, with the exercise's name */
  int most;
} numbers[] = {
  { "sets", N_("Sets"), N_("%s: sets that were done"), 20 },
  { "repetitions", N_("Last set"), N_("%s: repetitions in the last set"), 200 },
  { "effort", N_("Effort"), N_("%s: effort, 0 to 10"), 10 },
  { "pain-before", N_("Pain before"), N_("%s: pain before, 0 to 10"), 10 },
  { "pain-during", N_("during"), N_("%s: pain during, 0 to 10"), 10 },
  { "pain-after", N_("after"), N_("%s: pain after, 0 to 10"), 10 },
};

#define N_NUMBERS G_N_ELEMENTS (numbers)

/* The columns, in order. */
enum
{
  COLUMN_NAME,
  COLUMN_AS_ASKED,
  COLUMN_NUMBERS,
  COLUMN_SETTLED = COLUMN_NUMBERS + N_NUMBERS,
  COLUMN_CONTROL_LOST,
  COLUMN_PROPOSED,
  COLUMN_TAKE,
  COLUMN_NOTE,
};

struct _SwDiaryRow
{
  GObject parent_instance;

  SwDocument *document;
  SwItem *item;
  char *date;
  gboolean refreshing;

  GtkWidget *numbers[N_NUMBERS];
  GtkDropDown *settled;
  GtkCheckButton *control_lost;
  GtkEditable *note;
  GtkWidget *proposed;
  GtkWidget *take;
};

G_DEFINE_FINAL_TYPE (SwDiaryRow, sw_diary_row, G_TYPE_OBJECT)

static GListStore *
get_diary (SwDiaryRow *self)
{
  return sw_programme_get_diary (sw_document_get_programme (self->document));
}

/* Returns: (transfer none) (nullable): what is written of the item on the day shown */
static SwDiaryEntry *
find_entry (SwDiaryRow *self,
            guint      *position)
{
  GListModel *diary = G_LIST_MODEL (get_diary (self));

  for (guint i = 0; i < g_list_model_get_n_items (diary); i++)
    {
      g_autoptr (SwDiaryEntry) entry = g_list_model_get_item (diary, i);

      if (strcmp (sw_diary_entry_get_item (entry), sw_item_get_id (self->item)) == 0
          && strcmp (sw_diary_entry_get_date (entry), self->date) == 0)
        {
          *position = i;
          return entry;
        }
    }

  return NULL;
}

static SwDiaryEntry *
entry_new (SwDiaryRow *self)
{
  g_autofree char *line = sw_dose_to_line (sw_item_get_dose (self->item));

  return sw_diary_entry_new (self->date, sw_item_get_id (self->item),
                             sw_exercise_get_id (sw_item_get_exercise (self->item)), line);
}

static void
add_entry (SwDiaryRow   *self,
           SwDiaryEntry *entry,
           const char   *label)
{
  GListStore *diary = get_diary (self);
  gpointer addition = entry;

  sw_history_splice (sw_document_get_history (self->document), label, diary,
                     g_list_model_get_n_items (G_LIST_MODEL (diary)), 0, &addition, 1);
}

static void
write_value (SwDiaryRow   *self,
             const char   *property,
             const GValue *value)
{
  SwHistory *history = sw_document_get_history (self->document);
  g_autofree char *name = sw_item_dup_name (self->item, NULL);
  /* Translators: an exercise, for undo. */
  g_autofree char *label = g_strdup_printf (_("Write in the diary of “%s”"), name);
  guint position;
  SwDiaryEntry *entry = find_entry (self, &position);
  g_autoptr (SwDiaryEntry) written = entry != NULL ? sw_diary_entry_copy (entry) : entry_new (self);

  g_object_set_property (G_OBJECT (written), property, value);
  if (entry != NULL && !sw_diary_entry_is_blank (written))
    sw_history_set (history, label, entry, property, value);
  else if (entry != NULL)
    sw_history_splice (history, label, get_diary (self), position, 1, NULL, 0);
  else if (!sw_diary_entry_is_blank (written))
    add_entry (self, written, label);
}

static void
number_changed_cb (SwDiaryRow *self,
                   GtkWidget  *widget)
{
  g_auto (GValue) value = G_VALUE_INIT;

  if (self->refreshing)
    return;

  g_value_init (&value, G_TYPE_INT);
  g_value_set_int (&value, (int) lround (sw_number_get_value (SW_NUMBER (widget))));
  for (guint i = 0; i < N_NUMBERS; i++)
    {
      if (self->numbers[i] == widget)
        write_value (self, numbers[i].property, &value);
    }
}

static void
settled_chosen_cb (SwDiaryRow *self)
{
  g_auto (GValue) value = G_VALUE_INIT;

  if (self->refreshing)
    return;

  g_value_init (&value, SW_TYPE_SETTLED);
  g_value_set_enum (&value, (int) gtk_drop_down_get_selected (self->settled));
  write_value (self, "settled", &value);
}

static void
control_lost_toggled_cb (SwDiaryRow *self)
{
  g_auto (GValue) value = G_VALUE_INIT;

  if (self->refreshing)
    return;

  g_value_init (&value, G_TYPE_BOOLEAN);
  g_value_set_boolean (&value, gtk_check_button_get_active (self->control_lost));
  write_value (self, "control-lost", &value);
}

static void
note_changed_cb (SwDiaryRow *self)
{
  g_auto (GValue) value = G_VALUE_INIT;

  if (self->refreshing)
    return;

  g_value_init (&value, G_TYPE_STRING);
  g_value_set_string (&value, gtk_editable_get_text (self->note));
  write_value (self, "note", &value);
}

/* All sets and repetitions as asked: what is true of most rows of most sheets. */
static void
as_asked_clicked_cb (SwDiaryRow *self)
{
  SwHistory *history = sw_document_get_history (self->document);
  const SwDose *dose = sw_item_get_dose (self->item);
  guint position;
  SwDiaryEntry *entry = find_entry (self, &position);

  if (entry == NULL)
    {
      g_autoptr (SwDiaryEntry) written = entry_new (self);

      g_object_set (written, "sets", dose->sets, "repetitions",
                    dose->reps_high > 0 ? dose->reps_high : SW_DIARY_NOT_STATED, NULL);
      add_entry (self, written, _("Done as asked"));
      return;
    }

  sw_history_begin (history, _("Done as asked"));
  sw_history_set_int (history, _("Done as asked"), entry, "sets", dose->sets);
  if (dose->reps_high > 0)
    sw_history_set_int (history, _("Done as asked"), entry, "repetitions", dose->reps_high);
  sw_history_end (history);
}

/* The finding of the row's proposal, as the last check left it. */
static const SwFinding *
find_finding (SwDiaryRow *self)
{
  GPtrArray *findings = sw_document_get_findings (self->document);

  for (guint i = 0; i < findings->len; i++)
    {
      const SwFinding *finding = g_ptr_array_index (findings, i);

      if (finding->item == self->item && g_str_has_prefix (finding->key, "progress:"))
        return finding;
    }

  return NULL;
}

static void
take_clicked_cb (SwDiaryRow *self)
{
  const SwFinding *finding = find_finding (self);

  if (finding != NULL)
    sw_finding_apply_fix (self->document, finding);
}

static void
sw_diary_row_finalize (GObject *object)
{
  SwDiaryRow *self = SW_DIARY_ROW (object);

  g_object_unref (self->document);
  g_object_unref (self->item);
  g_free (self->date);

  G_OBJECT_CLASS (sw_diary_row_parent_class)->finalize (object);
}

static void
sw_diary_row_class_init (SwDiaryRowClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sw_diary_row_finalize;
}

static void
sw_diary_row_init (SwDiaryRow *self)
{
  self->date = g_strdup ("");
}

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

static void
name_widget (GtkWidget  *widget,
             const char *format,
             const char *name)
{
  g_autoptr (GString) words = g_string_new (format);

  g_string_replace (words, "%s", name, 1);
  if (SW_IS_NUMBER (widget))
    sw_number_set_name (SW_NUMBER (widget), words->str, NULL);
  else
    gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, words->str, -1);
}

static GtkWidget *
name_new (const char   *name,
          const SwDose *dose)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  g_autofree char *line = sw_dose_dup_amount_line (dose);
  GtkWidget *words = label_new (name, "name");
  GtkWidget *asked = label_new (line, "dim");

  gtk_label_set_width_chars (GTK_LABEL (words), 20);
  gtk_label_set_max_width_chars (GTK_LABEL (words), 20);
  gtk_label_set_max_width_chars (GTK_LABEL (asked), 20);
  gtk_widget_add_css_class (asked, "small");
  gtk_box_append (GTK_BOX (box), words);
  gtk_box_append (GTK_BOX (box), asked);
  return box;
}

/* Puts @widget into the row, named after what it is for and the exercise. */
static GtkWidget *
attach (SwDiaryRow *self,
        GtkGrid    *grid,
        GtkWidget  *widget,
        int         column,
        int         at,
        const char *words)
{
  g_autofree char *name = sw_item_dup_name (self->item, NULL);

  if (words != NULL)
    name_widget (widget, words, name);
  gtk_widget_set_valign (widget, GTK_ALIGN_CENTER);
  gtk_grid_attach (grid, widget, column, at, 1, 1);
  return widget;
}

static void
connect (SwDiaryRow *self,
         gpointer    widget,
         const char *signal,
         GCallback   callback)
{
  g_signal_connect_object (widget, signal, callback, self, G_CONNECT_SWAPPED);
}

static void
fill (SwDiaryRow *self,
      GtkGrid    *grid,
      int         at)
{
  g_autofree char *name = sw_item_dup_name (self->item, NULL);
  GtkWidget *as_asked = gtk_button_new_with_label (_("As asked"));

  attach (self, grid, name_new (name, sw_item_get_dose (self->item)), COLUMN_NAME, at, NULL);
  connect (self, attach (self, grid, as_asked, COLUMN_AS_ASKED, at, _("%s: done as asked")), "clicked",
           G_CALLBACK (as_asked_clicked_cb));
  for (guint i = 0; i < N_NUMBERS; i++)
    {
      self->numbers[i] = g_object_new (SW_TYPE_NUMBER, "lower", 0.0, "upper", (double) numbers[i].most, "step", 1.0, "none",
                                       (double) SW_DIARY_NOT_STATED, NULL);
      attach (self, grid, self->numbers[i], COLUMN_NUMBERS + (int) i, at, _(numbers[i].name));
      connect (self, self->numbers[i], "changed", G_CALLBACK (number_changed_cb));
    }

  self->settled = GTK_DROP_DOWN (gtk_drop_down_new (NULL, NULL));
  sw_choices_fill (self->settled, SW_TYPE_SETTLED);
  attach (self, grid, GTK_WIDGET (self->settled), COLUMN_SETTLED, at, _("%s: pain the next morning"));
  connect (self, self->settled, "notify::selected", G_CALLBACK (settled_chosen_cb));
  self->control_lost = GTK_CHECK_BUTTON (gtk_check_button_new ());
  gtk_widget_set_halign (GTK_WIDGET (self->control_lost), GTK_ALIGN_CENTER);
  attach (self, grid, GTK_WIDGET (self->control_lost), COLUMN_CONTROL_LOST, at, _("%s: control lost"));
  connect (self, self->control_lost, "toggled", G_CALLBACK (control_lost_toggled_cb));
  self->proposed = attach (self, grid, g_object_new (SW_TYPE_WORKING_BUTTON, NULL), COLUMN_PROPOSED, at, NULL);
  gtk_widget_set_size_request (self->proposed, LEAST_PROPOSED_PX, -1);
  self->take = attach (self, grid, gtk_button_new_with_label (_("Take it")), COLUMN_TAKE, at, NULL);
  connect (self, self->take, "clicked", G_CALLBACK (take_clicked_cb));
  self->note = GTK_EDITABLE (gtk_entry_new ());
  gtk_editable_set_enable_undo (self->note, FALSE);
  gtk_editable_set_width_chars (self->note, 12);
  gtk_widget_set_hexpand (GTK_WIDGET (self->note), TRUE);
  attach (self, grid, GTK_WIDGET (self->note), COLUMN_NOTE, at, _("%s: note"));
  connect (self, self->note, "changed", G_CALLBACK (note_changed_cb));
}

/**
 * sw_diary_row_add_head:
 * @grid: gets the heads of the columns as its first row
 */
void
sw_diary_row_add_head (GtkGrid *grid)
{
  gtk_grid_attach (grid, label_new (_("Exercise"), "heading"), COLUMN_NAME, 0, 1, 1);
  for (guint i = 0; i < N_NUMBERS; i++)
    gtk_grid_attach (grid, label_new (_(numbers[i].head), "heading"), COLUMN_NUMBERS + (int) i, 0, 1, 1);
  gtk_grid_attach (grid, label_new (_("Next morning"), "heading"), COLUMN_SETTLED, 0, 1, 1);
  gtk_grid_attach (grid, label_new (_("Control lost"), "heading"), COLUMN_CONTROL_LOST, 0, 1, 1);
  gtk_grid_attach (grid, label_new (_("Proposed"), "heading"), COLUMN_PROPOSED, 0, 2, 1);
  gtk_grid_attach (grid, label_new (_("Note"), "heading"), COLUMN_NOTE, 0, 1, 1);
}

/**
 * sw_diary_row_new:
 * @document: whose diary it is
 * @item: an exercise item of it
 * @grid: where the row goes
 * @at: its number in the grid
 *
 * Returns: (transfer full): the row, which shows nothing yet
 */
SwDiaryRow *
sw_diary_row_new (SwDocument *document,
                  SwItem     *item,
                  GtkGrid    *grid,
                  int         at)
{
  SwDiaryRow *self = g_object_new (SW_TYPE_DIARY_ROW, NULL);

  self->document = g_object_ref (document);
  self->item = g_object_ref (item);
  fill (self, grid, at);
  return self;
}

static void
show_proposal (SwDiaryRow *self)
{
  g_autoptr (SwProgress) progress = sw_progress_suggest (sw_document_get_programme (self->document), self->item);
  const SwFinding *finding = progress != NULL ? find_finding (self) : NULL;

  gtk_widget_set_visible (self->proposed, finding != NULL);
  gtk_widget_set_visible (self->take, finding != NULL && finding->answer == NULL);
  if (finding == NULL)
    return;

  sw_working_button_show (SW_WORKING_BUTTON (self->proposed), finding->fix_label, progress->working);
  gtk_widget_set_tooltip_text (self->take, finding->text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->take), GTK_ACCESSIBLE_PROPERTY_LABEL, finding->fix_label, -1);
}

/**
 * sw_diary_row_show:
 * @self: a row
 * @date: the day, ISO 8601
 *
 * Shows what is written of that day, and what the whole diary proposes.
 */
void
sw_diary_row_show (SwDiaryRow *self,
                   const char *date)
{
  SwDiaryEntry *entry;
  const char *note;
  guint position;

  g_return_if_fail (SW_IS_DIARY_ROW (self));

  if (self->date != date)
    {
      g_free (self->date);
      self->date = g_strdup (date);
    }
  entry = find_entry (self, &position);
  note = entry != NULL ? sw_diary_entry_get_note (entry) : "";
  self->refreshing = TRUE;
  for (guint i = 0; i < N_NUMBERS; i++)
    {
      int value = SW_DIARY_NOT_STATED;

      if (entry != NULL)
        g_object_get (entry, numbers[i].property, &value, NULL);
      sw_number_set_value (SW_NUMBER (self->numbers[i]), value);
    }
  sw_choices_show (self->settled, entry != NULL ? (int) sw_diary_entry_get_settled (entry) : SW_SETTLED_UNKNOWN);
  gtk_check_button_set_active (self->control_lost, entry != NULL && sw_diary_entry_get_control_lost (entry));
  if (strcmp (gtk_editable_get_text (self->note), note) != 0)
    gtk_editable_set_text (self->note, note);
  show_proposal (self);
  self->refreshing = FALSE;
}
