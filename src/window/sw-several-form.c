/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What can be done to several chosen items at once. Sets and rest go up and down by steps, so that doses
 * that differ keep their difference. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-several-form.h"

#include "sw-labels.h"

#define REST_STEP_S 15

struct _SwSeveralForm
{
  GtkWidget parent_instance;

  SwDocument *document;

  GtkWidget *box;
  GtkLabel *count;
  GtkLabel *names;
  GtkBox *doses;
  GtkLabel *sets;
  GtkLabel *rest;
  GtkButton *fewer_sets;
  GtkButton *more_sets;
  GtkButton *less_rest;
  GtkButton *more_rest;
};

G_DEFINE_FINAL_TYPE (SwSeveralForm, sw_several_form, GTK_TYPE_WIDGET)

/* The range of something over all chosen exercises. */
typedef struct
{
  int low;
  int high;
} Range;

static void
range_add (Range *range,
           int    value)
{
  range->low = MIN (range->low, value);
  range->high = MAX (range->high, value);
}

static gboolean
is_exercise (SwItem *item)
{
  return sw_item_get_kind (item) == SW_ITEM_EXERCISE;
}

static guint
count_exercises (GPtrArray *items)
{
  guint n = 0;

  for (guint i = 0; i < items->len; i++)
    n += is_exercise (g_ptr_array_index (items, i));

  return n;
}

static void
step_all (SwSeveralForm *self,
          int            sets,
          int            rest_s)
{
  SwHistory *history = sw_document_get_history (self->document);
  GPtrArray *items = sw_document_get_chosen (self->document);
  guint n = count_exercises (items);
  g_autofree char *label = NULL;

  label = g_strdup_printf (ngettext ("Change dose of %u exercise", "Change dose of %u exercises", n), n);
  sw_history_begin (history, label);
  for (guint i = 0; i < items->len; i++)
    {
      SwItem *item = g_ptr_array_index (items, i);
      SwDose dose = *sw_item_get_dose (item);

      if (!is_exercise (item))
        continue;
      dose.sets = CLAMP (dose.sets + sets, 1, 20);
      dose.rest_s = CLAMP (dose.rest_s + rest_s, 0, 900);
      sw_history_set_boxed (history, label, item, "dose", &dose);
    }
  sw_history_end (history);
}

static void
step_clicked_cb (SwSeveralForm *self,
                 GtkButton     *button)
{
  if (self->document == NULL)
    return;

  if (button == self->fewer_sets)
    step_all (self, -1, 0);
  else if (button == self->more_sets)
    step_all (self, 1, 0);
  else if (button == self->less_rest)
    step_all (self, 0, -REST_STEP_S);
  else
    step_all (self, 0, REST_STEP_S);
}

static void
show_doses (SwSeveralForm *self,
            GPtrArray     *items)
{
  Range sets = { G_MAXINT, 0 };
  Range rest_s = { G_MAXINT, 0 };
  g_autofree char *sets_words = NULL;
  g_autofree char *rest_words = NULL;

  gtk_widget_set_visible (GTK_WIDGET (self->doses), count_exercises (items) > 0);
  if (count_exercises (items) == 0)
    return;

  for (guint i = 0; i < items->len; i++)
    {
      const SwDose *dose = sw_item_get_dose (g_ptr_array_index (items, i));

      if (!is_exercise (g_ptr_array_index (items, i)))
        continue;
      range_add (&sets, dose->sets);
      range_add (&rest_s, dose->rest_s);
    }

  if (sets.low == sets.high)
    sets_words = g_strdup_printf (ngettext ("%d set", "%d sets", (gulong) sets.high), sets.high);
  else
    sets_words = g_strdup_printf (_("%d–%d sets"), sets.low, sets.high);
  if (rest_s.low == rest_s.high)
    rest_words = g_strdup_printf (_("Rest %d s"), rest_s.high);
  else
    rest_words = g_strdup_printf (_("Rest %d–%d s"), rest_s.low, rest_s.high);

  gtk_label_set_label (self->sets, sets_words);
  gtk_label_set_label (self->rest, rest_words);
  gtk_widget_set_sensitive (GTK_WIDGET (self->fewer_sets), sets.high > 1);
  gtk_widget_set_sensitive (GTK_WIDGET (self->more_sets), sets.low < 20);
  gtk_widget_set_sensitive (GTK_WIDGET (self->less_rest), rest_s.high > 0);
  gtk_widget_set_sensitive (GTK_WIDGET (self->more_rest), rest_s.low < 900);
}

static void
sw_several_form_dispose (GObject *object)
{
  SwSeveralForm *self = SW_SEVERAL_FORM (object);

  g_clear_object (&self->document);
  g_clear_pointer (&self->box, gtk_widget_unparent);

  G_OBJECT_CLASS (sw_several_form_parent_class)->dispose (object);
}

static void
sw_several_form_class_init (SwSeveralFormClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_several_form_dispose;

  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-several-form.ui");
  gtk_widget_class_bind_template_child (widget_class, SwSeveralForm, box);
  gtk_widget_class_bind_template_child (widget_class, SwSeveralForm, count);
  gtk_widget_class_bind_template_child (widget_class, SwSeveralForm, names);
  gtk_widget_class_bind_template_child (widget_class, SwSeveralForm, doses);
  gtk_widget_class_bind_template_child (widget_class, SwSeveralForm, sets);
  gtk_widget_class_bind_template_child (widget_class, SwSeveralForm, rest);
  gtk_widget_class_bind_template_child (widget_class, SwSeveralForm, fewer_sets);
  gtk_widget_class_bind_template_child (widget_class, SwSeveralForm, more_sets);
  gtk_widget_class_bind_template_child (widget_class, SwSeveralForm, less_rest);
  gtk_widget_class_bind_template_child (widget_class, SwSeveralForm, more_rest);
  gtk_widget_class_bind_template_callback (widget_class, step_clicked_cb);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sw_several_form_init (SwSeveralForm *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * sw_several_form_set_document:
 * @self: a form
 * @document: (nullable): whose chosen items to show
 */
void
sw_several_form_set_document (SwSeveralForm *self,
                              SwDocument    *document)
{
  g_return_if_fail (SW_IS_SEVERAL_FORM (self));

  if (g_set_object (&self->document, document))
    sw_several_form_refresh (self);
}

/**
 * sw_several_form_refresh:
 * @self: a form
 *
 * Shows what is chosen now.
 */
void
sw_several_form_refresh (SwSeveralForm *self)
{
  GPtrArray *items;
  g_autoptr (GString) names = g_string_new (NULL);
  g_autofree char *count = NULL;

  g_return_if_fail (SW_IS_SEVERAL_FORM (self));

  if (self->document == NULL)
    return;

  items = sw_document_get_chosen (self->document);
  count = g_strdup_printf (ngettext ("%u item chosen", "%u items chosen", items->len), items->len);
  for (guint i = 0; i < items->len; i++)
    {
      SwItem *item = g_ptr_array_index (items, i);
      g_autofree char *name = sw_item_dup_name (item, NULL);

      g_string_append_printf (names, "%s%s", i > 0 ? "\n" : "",
                              *name != '\0' ? name
                              : sw_label (SW_TYPE_ITEM_KIND, (int) sw_item_get_kind (item)));
    }

  gtk_label_set_label (self->count, count);
  gtk_label_set_label (self->names, names->str);
  show_doses (self, items);
}
