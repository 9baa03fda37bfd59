/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each rule says when it speaks and what it proposes; its numbers stand below as fields, and its source last. Rules that
 * ease cannot be switched off. */
#include "config.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n.h>

#include "sw-rules-form.h"

#include "sw-field-row.h"
#include "sw-number.h"
#include "sw-progress-rule.h"

#define MOST_FIELDS 16

/* A field and the number it is for. */
typedef struct
{
  const char *number;
  SwNumber *field;
} Field;

struct _SwRulesForm
{
  GtkWidget parent_instance;

  SwDocument *document;
  gboolean refreshing;

  GtkWidget *scrolled;
  GtkLabel *when[SW_PROGRESS_N_RULES];
  GtkLabel *then[SW_PROGRESS_N_RULES];
  Field fields[MOST_FIELDS];
  guint n_fields;
  GtkCheckButton *steps_up;
};

G_DEFINE_FINAL_TYPE (SwRulesForm, sw_rules_form, GTK_TYPE_WIDGET)

static SwProgression *
get_progression (SwRulesForm *self)
{
  return sw_programme_get_progression (sw_document_get_programme (self->document));
}

static void
changed_cb (SwRulesForm *self,
            SwNumber    *field)
{
  if (self->document == NULL || self->refreshing)
    return;

  for (guint i = 0; i < self->n_fields; i++)
    {
      if (self->fields[i].field == field)
        sw_history_set_int (sw_document_get_history (self->document), _("Change a rule of progress"),
                            get_progression (self), self->fields[i].number, lround (sw_number_get_value (field)));
    }
}

static void
steps_up_toggled_cb (SwRulesForm *self)
{
  gboolean steps_up = gtk_check_button_get_active (self->steps_up);

  if (self->document != NULL && !self->refreshing)
    sw_history_set_int (sw_document_get_history (self->document),
                        steps_up ? _("Propose steps up") : _("Do not propose steps up"), get_progression (self), "steps-up",
                        steps_up);
}

static GtkWidget *
label_new (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static gboolean
has_field (SwRulesForm *self,
           const char  *number)
{
  for (guint i = 0; i < self->n_fields; i++)
    {
      if (strcmp (self->fields[i].number, number) == 0)
        return TRUE;
    }

  return FALSE;
}

/* A number that several rules share has its field where it comes first. */
static void
add_field (SwRulesForm *self,
           GtkBox      *box,
           const char  *number)
{
  int lowest, highest, usual;
  GtkWidget *field;
  GtkWidget *row;

  if (has_field (self, number))
    return;

  sw_progression_get_range (number, &lowest, &highest, &usual);
  field = g_object_new (SW_TYPE_NUMBER, "lower", (double) lowest, "upper", (double) highest, "step", 1.0, NULL);
  g_signal_connect_object (field, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  self->fields[self->n_fields++] = (Field) { number, SW_NUMBER (field) };
  row = g_object_new (SW_TYPE_FIELD_ROW, "label", sw_progress_number_get_name (number), "unit",
                      sw_progress_number_get_unit (number), "control", field, NULL);
  gtk_widget_set_halign (row, GTK_ALIGN_START);
  gtk_box_append (box, row);
}

static void
add_rule (SwRulesForm        *self,
          GtkBox             *box,
          SwProgressRuleKind  kind)
{
  const SwProgressRule *rule = sw_progress_rule_get (kind);
  GtkWidget *source = label_new ("dim");

  self->when[kind] = GTK_LABEL (label_new ("heading"));
  self->then[kind] = GTK_LABEL (label_new ("then"));
  gtk_widget_set_margin_top (GTK_WIDGET (self->when[kind]), 14);
  gtk_box_append (box, GTK_WIDGET (self->when[kind]));
  gtk_box_append (box, GTK_WIDGET (self->then[kind]));
  if (kind == SW_PROGRESS_RULE_MORE)
    {
      self->steps_up = GTK_CHECK_BUTTON (gtk_check_button_new_with_label (_("Propose steps up")));
      gtk_widget_set_halign (GTK_WIDGET (self->steps_up), GTK_ALIGN_START);
      g_signal_connect_object (self->steps_up, "toggled", G_CALLBACK (steps_up_toggled_cb), self, G_CONNECT_SWAPPED);
      gtk_box_append (box, GTK_WIDGET (self->steps_up));
    }
  for (guint i = 0; rule->numbers[i] != NULL; i++)
    add_field (self, box, rule->numbers[i]);
  gtk_label_set_label (GTK_LABEL (source), _(rule->source));
  gtk_widget_add_css_class (source, "small");
  gtk_box_append (box, source);
}

static void
sw_rules_form_dispose (GObject *object)
{
  SwRulesForm *self = SW_RULES_FORM (object);

  g_clear_object (&self->document);
  g_clear_pointer (&self->scrolled, gtk_widget_unparent);

  G_OBJECT_CLASS (sw_rules_form_parent_class)->dispose (object);
}

static void
sw_rules_form_class_init (SwRulesFormClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_rules_form_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sw_rules_form_init (SwRulesForm *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  GtkWidget *intro = label_new ("dim");

  gtk_widget_add_css_class (box, "rules");
  gtk_widget_set_margin_end (box, 12);
  gtk_label_set_label (GTK_LABEL (intro),
                       _("What the rules say is proposed, never done by itself. They hold for this programme."));
  gtk_box_append (GTK_BOX (box), intro);
  for (int kind = 0; kind < SW_PROGRESS_N_RULES; kind++)
    add_rule (self, GTK_BOX (box), (SwProgressRuleKind) kind);

  self->scrolled = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), box);
  gtk_widget_set_parent (self->scrolled, GTK_WIDGET (self));
}

static void
refresh (SwRulesForm *self)
{
  SwProgression *progression = get_progression (self);

  self->refreshing = TRUE;
  for (int kind = 0; kind < SW_PROGRESS_N_RULES; kind++)
    {
      const SwProgressRule *rule = sw_progress_rule_get ((SwProgressRuleKind) kind);
      g_autofree char *when = sw_progress_rule_dup_when (rule, progression);
      g_autofree char *then = sw_progress_rule_dup_then (rule, progression);
      g_autofree char *arrow = g_strdup_printf ("→ %s", then);

      gtk_label_set_label (self->when[kind], when);
      gtk_label_set_label (self->then[kind], arrow);
    }
  for (guint i = 0; i < self->n_fields; i++)
    sw_number_set_value (self->fields[i].field, sw_progression_get_number (progression, self->fields[i].number));
  gtk_check_button_set_active (self->steps_up, sw_progression_get_steps_up (progression));
  self->refreshing = FALSE;
}

/**
 * sw_rules_form_set_document:
 * @self: a form
 * @document: whose rules are shown
 */
void
sw_rules_form_set_document (SwRulesForm *self,
                            SwDocument  *document)
{
  g_return_if_fail (SW_IS_RULES_FORM (self));
  g_return_if_fail (self->document == NULL && SW_IS_DOCUMENT (document));

  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  refresh (self);
}
