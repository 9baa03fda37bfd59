/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The week in sets. The chart is made when it is opened: nobody waits for it while typing. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-balance.h"
#include "sw-bar.h"
#include "sw-labels.h"
#include "sw-volume.h"
#include "sw-week-button.h"

/* The line has room for about so many muscles. */
#define N_VOLUMES 2

struct _SwWeekButton
{
  GtkWidget parent_instance;

  GtkMenuButton *button;
  GtkLabel *words;
  GtkBox *chart;

  SwProgramme *programme;
};

G_DEFINE_FINAL_TYPE (SwWeekButton, sw_week_button, GTK_TYPE_WIDGET)

static char *
volume_words (const SwVolume *volume)
{
  const char *muscle = sw_label (SW_TYPE_MUSCLE, volume->muscle);

  if (volume->sets_left == volume->sets_right)
    /* Translators: a muscle, its sets a week */
    return g_strdup_printf (_ ("%s %g sets"), muscle, volume->sets_left);
  /* Translators: a muscle, the sets a week of its right side, of its left side */
  return g_strdup_printf (_ ("%s %g sets right, %g left"), muscle, volume->sets_right, volume->sets_left);
}

static GtkWidget *
text_new (const char *words,
          const char *css_class)
{
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 56);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

static void
attach_number (GtkGrid    *grid,
               double      sets,
               int         row)
{
  g_autofree char *number = g_strdup_printf ("%.4g", sets);
  GtkWidget *label = gtk_label_new (number);

  gtk_label_set_xalign (GTK_LABEL (label), 1.0f);
  gtk_widget_add_css_class (label, "figures");
  gtk_grid_attach (grid, label, 3, row, 1, 1);
}

static void
attach_side (GtkGrid    *grid,
             const char *side,
             double      sets,
             double      strength,
             double      most,
             int         row)
{
  GtkWidget *bar = sw_bar_new (most);

  sw_bar_set_value (SW_BAR (bar), sets, strength);
  if (strength > 0.0)
    sw_bar_set_band (SW_BAR (bar), SW_VOLUME_GUIDE_LOW, SW_VOLUME_GUIDE_HIGH);
  gtk_grid_attach (grid, text_new (side, "dim"), 1, row, 1, 1);
  gtk_grid_attach (grid, bar, 2, row, 1, 1);
  attach_number (grid, sets, row);
}

static GtkGrid *
add_grid (SwWeekButton *self)
{
  GtkGrid *grid = GTK_GRID (gtk_grid_new ());

  gtk_grid_set_column_spacing (grid, 8);
  gtk_grid_set_row_spacing (grid, 2);
  gtk_box_append (self->chart, GTK_WIDGET (grid));
  return grid;
}

static void
add_muscles (SwWeekButton *self)
{
  g_autoptr (GArray) volumes = sw_volume_of_week (self->programme);
  GtkGrid *grid;
  double most = SW_VOLUME_GUIDE_HIGH + 1;

  gtk_box_append (self->chart, text_new (_ ("Sets a week of each muscle group"), "heading"));
  gtk_box_append (self->chart, text_new (_ ("Dark: for strength or endurance. Light: for other aims. The band behind: what is usual "
                                            "for strength."),
                                         "dim"));
  grid = add_grid (self);
  for (guint i = 0; i < volumes->len; i++)
    {
      const SwVolume *volume = &g_array_index (volumes, SwVolume, i);

      most = MAX (most, MAX (volume->sets_left, volume->sets_right));
    }
  for (guint i = 0; i < volumes->len; i++)
    {
      const SwVolume *volume = &g_array_index (volumes, SwVolume, i);
      int row = (int) (2 * i);

      gtk_grid_attach (grid, text_new (sw_label (SW_TYPE_MUSCLE, volume->muscle), NULL), 0, row, 1, 2);
      attach_side (grid, sw_label (SW_TYPE_BODY_SIDE, SW_BODY_SIDE_RIGHT), volume->sets_right, volume->strength_right,
                   most, row);
      attach_side (grid, sw_label (SW_TYPE_BODY_SIDE, SW_BODY_SIDE_LEFT), volume->sets_left, volume->strength_left, most,
                   row + 1);
    }
  gtk_box_append (self->chart, text_new (sw_volume_get_guidance (), "dim"));
}

static void
add_balance (SwWeekButton *self,
             SwBalance     balance)
{
  g_autoptr (GArray) parts = sw_balance_of_week (self->programme, balance);
  GtkGrid *grid;
  double most = 0.0;

  for (guint i = 0; i < parts->len; i++)
    most = MAX (most, g_array_index (parts, SwBalancePart, i).sets);
  if (most <= 0.0)
    return;

  gtk_box_append (self->chart, text_new (sw_balance_get_name (balance), "heading"));
  grid = add_grid (self);
  for (guint i = 0; i < parts->len; i++)
    {
      const SwBalancePart *part = &g_array_index (parts, SwBalancePart, i);
      g_autofree char *name = sw_label_capitalised (part->name);
      GtkWidget *bar = sw_bar_new (most);

      sw_bar_set_value (SW_BAR (bar), part->sets, part->sets);
      gtk_grid_attach (grid, text_new (name, NULL), 0, (int) i, 2, 1);
      gtk_grid_attach (grid, bar, 2, (int) i, 1, 1);
      attach_number (grid, part->sets, (int) i);
    }
  gtk_box_append (self->chart, text_new (sw_balance_get_rule (balance), "dim"));
}

static void
shown_cb (SwWeekButton *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->chart))) != NULL)
    gtk_box_remove (self->chart, child);

  add_muscles (self);
  for (int balance = 0; balance < sw_term_get_n_values (SW_TYPE_BALANCE); balance++)
    add_balance (self, (SwBalance) balance);
  gtk_box_append (self->chart, text_new (_ ("Nothing is published on how these should be shared out: it is for you to see and judge."),
                                         "dim"));
}

static void
sw_week_button_dispose (GObject *object)
{
  SwWeekButton *self = SW_WEEK_BUTTON (object);

  g_clear_object (&self->programme);
  if (self->button != NULL)
    gtk_widget_unparent (GTK_WIDGET (self->button));
  self->button = NULL;

  G_OBJECT_CLASS (sw_week_button_parent_class)->dispose (object);
}

static void
sw_week_button_class_init (SwWeekButtonClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_week_button_dispose;

  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-week-button.ui");
  gtk_widget_class_bind_template_child (widget_class, SwWeekButton, button);
  gtk_widget_class_bind_template_child (widget_class, SwWeekButton, words);
  gtk_widget_class_bind_template_child (widget_class, SwWeekButton, chart);
  gtk_widget_class_bind_template_callback (widget_class, shown_cb);
  gtk_widget_class_set_css_name (widget_class, "week");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sw_week_button_init (SwWeekButton *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * sw_week_button_show:
 * @self: a button
 * @programme: whose week
 *
 * Shows the programme as it is now; the button is hidden while nothing has its days.
 */
void
sw_week_button_show (SwWeekButton *self,
                     SwProgramme  *programme)
{
  g_autoptr (GArray) volumes = NULL;
  g_autoptr (GString) largest = g_string_new (NULL);
  g_autofree char *line = NULL;
  g_autofree char *told = NULL;

  g_return_if_fail (SW_IS_WEEK_BUTTON (self));

  g_set_object (&self->programme, programme);
  volumes = sw_volume_of_week (programme);
  gtk_widget_set_visible (GTK_WIDGET (self), volumes->len > 0);
  for (guint i = 0; i < MIN (volumes->len, N_VOLUMES); i++)
    {
      g_autofree char *words = volume_words (&g_array_index (volumes, SwVolume, i));

      g_string_append_printf (largest, "%s%s", i > 0 ? ", " : "", words);
    }

  /* Translators: before the sets a week of the muscles that work most */
  line = g_strconcat (_ ("A week: "), largest->str, NULL);
  gtk_label_set_label (self->words, line);
  /* Translators: %s is the sets a week of the muscles that work most; a press opens a chart of all */
  told = g_strdup_printf (_ ("%s: show the whole week"), line);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->button), GTK_ACCESSIBLE_PROPERTY_LABEL, told, -1);
}
