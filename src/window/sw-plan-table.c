/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A grid of weeks: the phases at the head, an exercise a row. What is new in a week stands out. */
#include "config.h"

#include <math.h>

#include <glib/gi18n.h>

#include "sw-plan-table.h"

#include "sw-field-row.h"
#include "sw-number.h"
#include "sw-plan.h"
#include "sw-working-button.h"

/* Wide enough for most amounts in one line; where there are many weeks the table scrolls. */
#define LEAST_CELL_PX 104

static const char * const numbers[] = { "weeks", "first-weeks", "last-weeks", "step-weeks" };

struct _SwPlanTable
{
  GtkWidget parent_instance;

  SwDocument *document;
  gboolean refreshing;
  gboolean had_weeks; /* whether the programme had weeks when it was opened here */

  GtkWidget *box;
  SwNumber *fields[G_N_ELEMENTS (numbers)];
  GtkCheckButton *printed;
  GtkScrolledWindow *scrolled;
};

G_DEFINE_FINAL_TYPE (SwPlanTable, sw_plan_table, GTK_TYPE_WIDGET)

static SwProgramme *
get_programme (SwPlanTable *self)
{
  return sw_document_get_programme (self->document);
}

static SwSet
get_parts (SwPlanTable *self)
{
  return sw_page_plan_get_parts (sw_programme_get_page_plan (get_programme (self)));
}

/* Who makes a plan wants it printed; who types another number of weeks for one there was has decided that before. */
static void
set_number (SwPlanTable *self,
            const char  *number,
            gint64       value)
{
  SwHistory *history = sw_document_get_history (self->document);
  SwProgression *progression = sw_programme_get_progression (get_programme (self));
  gboolean begins = !self->had_weeks && sw_progression_get_number (progression, "weeks") == 0;

  if (begins)
    {
      sw_history_begin (history, _("Make a plan"));
      sw_history_set_int (history, _("Print the plan"), sw_programme_get_page_plan (get_programme (self)), "parts",
                          (gint64) (get_parts (self) | SW_SET (SW_PAGE_PART_PLAN)));
    }
  sw_history_set_int (history, _("Change the plan"), progression, number, value);
  if (begins)
    sw_history_end (history);
}

static void
changed_cb (SwPlanTable *self,
            SwNumber    *field)
{
  if (self->document == NULL || self->refreshing)
    return;

  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      if (self->fields[i] == field)
        set_number (self, numbers[i], lround (sw_number_get_value (field)));
    }
}

static void
printed_toggled_cb (SwPlanTable *self)
{
  gboolean printed = gtk_check_button_get_active (self->printed);
  SwSet parts;

  if (self->document == NULL || self->refreshing)
    return;

  parts = printed ? get_parts (self) | SW_SET (SW_PAGE_PART_PLAN) : get_parts (self) & ~SW_SET (SW_PAGE_PART_PLAN);
  sw_history_set_int (sw_document_get_history (self->document), printed ? _("Print the plan") : _("Do not print the plan"),
                      sw_programme_get_page_plan (get_programme (self)), "parts", (gint64) parts);
}

static GtkWidget *
label_new (const char *words,
           const char *css_class)
{
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static void
add_head (GtkGrid      *grid,
          const SwPlan *plan)
{
  const struct
  {
    const char *words;
    int from;
    int n;
  } phases[] = {
    { _("Get used to it"), 0, plan->n_first },
    { _("Build"), plan->n_first, plan->n_weeks - plan->n_first - plan->n_last },
    { _("Keep"), plan->n_weeks - plan->n_last, plan->n_last },
  };

  for (guint i = 0; i < G_N_ELEMENTS (phases); i++)
    {
      if (phases[i].n > 0)
        gtk_grid_attach (grid, label_new (phases[i].words, "heading"), 1 + phases[i].from, 0, phases[i].n, 1);
    }
  gtk_grid_attach (grid, label_new (_("Exercise"), "dim"), 0, 1, 1, 1);
  for (int week = 0; week < plan->n_weeks; week++)
    {
      g_autofree char *words = g_strdup_printf (_("Week %d"), week + 1);

      gtk_grid_attach (grid, label_new (words, "dim"), 1 + week, 1, 1, 1);
    }
}

static void
add_row (GtkGrid         *grid,
         const SwPlan    *plan,
         const SwPlanRow *planned,
         int              row)
{
  g_autofree char *name = sw_item_dup_name (planned->item, NULL);
  GtkWidget *label = label_new (name, "name");

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (label), 22);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 22);
  gtk_grid_attach (grid, label, 0, row, 1, 1);
  for (int week = 0; week < plan->n_weeks; week++)
    {
      const SwPlanWeek *cell = &planned->weeks[week];
      g_autofree char *amount = sw_dose_dup_amount_line (&cell->dose);
      GtkWidget *button = g_object_new (SW_TYPE_WORKING_BUTTON, NULL);

      sw_working_button_show (SW_WORKING_BUTTON (button), amount, cell->working);
      gtk_widget_set_size_request (button, LEAST_CELL_PX, -1);
      gtk_widget_add_css_class (button, cell->change != SW_DOSE_CHANGE_NONE ? "key" : "dim");
      gtk_grid_attach (grid, button, 1 + week, row, 1, 1);
    }
}

static GtkWidget *
grid_new (const SwPlan *plan)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_widget_set_valign (grid, GTK_ALIGN_START);
  gtk_widget_set_halign (grid, GTK_ALIGN_START);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 6);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 4);
  add_head (GTK_GRID (grid), plan);
  for (guint i = 0; i < plan->rows->len; i++)
    add_row (GTK_GRID (grid), plan, plan->rows->pdata[i], (int) i + 2);
  return grid;
}

static GtkWidget *
nothing_new (void)
{
  GtkWidget *label = label_new (_("There is no plan. Give it 2 to 12 weeks: then each week’s sets, repetitions and loads "
                                  "stand here, by the rules, and on the handout."),
                                "dim");

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_set_valign (label, GTK_ALIGN_START);
  return label;
}

static void
refresh (SwPlanTable *self)
{
  SwProgramme *programme = get_programme (self);
  SwProgression *progression = sw_programme_get_progression (programme);
  g_autoptr (SwPlan) plan = sw_plan_new (programme);

  self->refreshing = TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      sw_number_set_value (self->fields[i], sw_progression_get_number (progression, numbers[i]));
      gtk_widget_set_sensitive (GTK_WIDGET (self->fields[i]), i == 0 || plan != NULL);
    }
  gtk_check_button_set_active (self->printed, (get_parts (self) & SW_SET (SW_PAGE_PART_PLAN)) != 0);
  gtk_widget_set_sensitive (GTK_WIDGET (self->printed), plan != NULL);
  gtk_scrolled_window_set_child (self->scrolled, plan != NULL ? grid_new (plan) : nothing_new ());
  self->refreshing = FALSE;
}

static void
sw_plan_table_dispose (GObject *object)
{
  SwPlanTable *self = SW_PLAN_TABLE (object);

  g_clear_object (&self->document);
  g_clear_pointer (&self->box, gtk_widget_unparent);

  G_OBJECT_CLASS (sw_plan_table_parent_class)->dispose (object);
}

static void
sw_plan_table_class_init (SwPlanTableClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_plan_table_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

/* No plan is an empty field; the first step from there is a plan of six weeks. */
static GtkWidget *
field_new (const char *number)
{
  int lowest, highest, usual;

  sw_progression_get_range (number, &lowest, &highest, &usual);
  if (g_str_equal (number, "weeks"))
    return g_object_new (SW_TYPE_NUMBER, "lower", (double) SW_PROGRESSION_LEAST_WEEKS, "upper", (double) highest, "step",
                         1.0, "none", 0.0, "first", 6.0, NULL);
  return g_object_new (SW_TYPE_NUMBER, "lower", (double) lowest, "upper", (double) highest, "step", 1.0, NULL);
}

static void
sw_plan_table_init (SwPlanTable *self)
{
  GtkWidget *fields = gtk_grid_new ();
  GtkWidget *note = label_new (_("It begins with the doses as they are. A step is taken only when the week before went well: "
                                 "the handout says so, and the diary decides."),
                               "dim");

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);
  gtk_grid_set_column_spacing (GTK_GRID (fields), 24);
  gtk_grid_set_row_spacing (GTK_GRID (fields), 6);
  gtk_widget_set_halign (fields, GTK_ALIGN_START);
  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      GtkWidget *field = field_new (numbers[i]);

      self->fields[i] = SW_NUMBER (field);
      g_signal_connect_object (field, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
      gtk_grid_attach (GTK_GRID (fields),
                       g_object_new (SW_TYPE_FIELD_ROW, "label", sw_progress_number_get_name (numbers[i]), "unit",
                                     sw_progress_number_get_unit (numbers[i]), "control", field, NULL),
                       (int) i % 2, (int) i / 2, 1, 1);
    }
  self->printed = GTK_CHECK_BUTTON (gtk_check_button_new_with_label (_("Print the plan on the handout")));
  gtk_widget_set_halign (GTK_WIDGET (self->printed), GTK_ALIGN_START);
  g_signal_connect_object (self->printed, "toggled", G_CALLBACK (printed_toggled_cb), self, G_CONNECT_SWAPPED);
  self->scrolled = GTK_SCROLLED_WINDOW (gtk_scrolled_window_new ());
  gtk_widget_set_vexpand (GTK_WIDGET (self->scrolled), TRUE);
  gtk_label_set_wrap (GTK_LABEL (note), TRUE);

  gtk_box_append (GTK_BOX (self->box), fields);
  gtk_box_append (GTK_BOX (self->box), GTK_WIDGET (self->printed));
  gtk_box_append (GTK_BOX (self->box), GTK_WIDGET (self->scrolled));
  gtk_box_append (GTK_BOX (self->box), note);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

/**
 * sw_plan_table_set_document:
 * @self: a table
 * @document: whose plan is shown
 */
void
sw_plan_table_set_document (SwPlanTable *self,
                            SwDocument  *document)
{
  g_return_if_fail (SW_IS_PLAN_TABLE (self));
  g_return_if_fail (self->document == NULL && SW_IS_DOCUMENT (document));

  self->document = g_object_ref (document);
  self->had_weeks = sw_progression_get_number (sw_programme_get_progression (get_programme (self)), "weeks") > 0;
  g_signal_connect_object (document, "changed", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  refresh (self);
}
