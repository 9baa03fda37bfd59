/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The frame of one field, so that all forms of the inspector look and read alike. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-field-row.h"

#include "sw-finding-mark.h"
#include "sw-number.h"
#include "sw-text-area.h"

struct _SwFieldRow
{
  GtkWidget parent_instance;

  char *label;
  char *unit;
  GtkWidget *control;
  GtkWidget *suffix;
  gboolean stacked;
  char *complaint;       /* from the form */

  GtkWidget *box;
  GtkBox *line;
  GtkLabel *label_widget;
  GtkBox *control_slot;
  GtkBox *suffix_slot;
  GtkLabel *unit_widget;
  GtkBox *usual_slot;
  GtkButton *usual_button;
  GtkLabel *hint;
  GtkBox *message;
  GtkImage *message_mark;
  GtkLabel *message_words;
  GtkBox *finding;
  GtkImage *finding_mark;
  GtkLabel *finding_words;
  GtkButton *finding_fix;
};

G_DEFINE_FINAL_TYPE (SwFieldRow, sw_field_row, GTK_TYPE_WIDGET)

enum
{
  PROP_LABEL = 1,
  PROP_UNIT,
  PROP_CONTROL,
  PROP_SUFFIX,
  PROP_STACKED,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

enum
{
  RESET,
  FIX,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

/* What the field itself complains of comes before what the form does. */
static void
show_complaint (SwFieldRow *self)
{
  const char *words = self->complaint;

  if (SW_IS_NUMBER (self->control) && sw_number_get_complaint (SW_NUMBER (self->control)) != NULL)
    words = sw_number_get_complaint (SW_NUMBER (self->control));

  gtk_label_set_label (self->message_words, words != NULL ? words : "");
  gtk_widget_set_visible (GTK_WIDGET (self->message), words != NULL);
}

static void
usual_clicked_cb (SwFieldRow *self)
{
  g_signal_emit (self, signals[RESET], 0);
}

static void
fix_clicked_cb (SwFieldRow *self)
{
  g_signal_emit (self, signals[FIX], 0);
}

static void
name_control (SwFieldRow *self)
{
  if (SW_IS_NUMBER (self->control))
    sw_number_set_name (SW_NUMBER (self->control), self->label, self->unit);
  else if (SW_IS_TEXT_AREA (self->control))
    sw_text_area_set_name (SW_TEXT_AREA (self->control), self->label);
  else
    gtk_accessible_update_property (GTK_ACCESSIBLE (self->control), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                    self->label, -1);
}

/* A stacked field has its label, suffix and button above it. */
static void
stack_control (SwFieldRow *self)
{
  g_object_ref (self->control_slot);
  gtk_box_remove (self->line, GTK_WIDGET (self->control_slot));
  gtk_box_insert_child_after (GTK_BOX (self->box), GTK_WIDGET (self->control_slot), GTK_WIDGET (self->line));
  g_object_unref (self->control_slot);
  gtk_widget_set_hexpand (self->control, TRUE);
}

static void
sw_field_row_constructed (GObject *object)
{
  SwFieldRow *self = SW_FIELD_ROW (object);

  G_OBJECT_CLASS (sw_field_row_parent_class)->constructed (object);

  gtk_label_set_label (self->label_widget, self->label != NULL ? self->label : "");
  gtk_label_set_label (self->unit_widget, self->unit != NULL ? self->unit : "");
  if (self->control != NULL)
    {
      gtk_box_append (self->control_slot, self->control);
      if (self->label != NULL)
        name_control (self);
    }
  if (SW_IS_NUMBER (self->control))
    g_signal_connect_object (self->control, "notify::complaint", G_CALLBACK (show_complaint), self,
                             G_CONNECT_SWAPPED);
  if (self->suffix != NULL)
    gtk_box_append (self->suffix_slot, self->suffix);
  gtk_widget_set_visible (GTK_WIDGET (self->suffix_slot), self->suffix != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->unit_widget),
                          self->suffix == NULL && !self->stacked && !GTK_IS_DROP_DOWN (self->control));
  if (self->stacked)
    stack_control (self);
}

static void
sw_field_row_set_property (GObject      *object,
                           guint         id,
                           const GValue *value,
                           GParamSpec   *pspec)
{
  SwFieldRow *self = SW_FIELD_ROW (object);

  switch (id)
    {
    case PROP_LABEL:
      self->label = g_value_dup_string (value);
      break;
    case PROP_UNIT:
      self->unit = g_value_dup_string (value);
      break;
    case PROP_CONTROL:
      self->control = g_value_dup_object (value);
      break;
    case PROP_SUFFIX:
      self->suffix = g_value_dup_object (value);
      break;
    case PROP_STACKED:
      self->stacked = g_value_get_boolean (value);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
sw_field_row_dispose (GObject *object)
{
  SwFieldRow *self = SW_FIELD_ROW (object);

  g_clear_object (&self->control);
  g_clear_object (&self->suffix);
  g_clear_pointer (&self->box, gtk_widget_unparent);

  G_OBJECT_CLASS (sw_field_row_parent_class)->dispose (object);
}

static void
sw_field_row_finalize (GObject *object)
{
  SwFieldRow *self = SW_FIELD_ROW (object);

  g_free (self->label);
  g_free (self->unit);
  g_free (self->complaint);

  G_OBJECT_CLASS (sw_field_row_parent_class)->finalize (object);
}

static void
sw_field_row_class_init (SwFieldRowClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  GParamFlags at_birth = G_PARAM_WRITABLE | G_PARAM_CONSTRUCT_ONLY | G_PARAM_STATIC_STRINGS;

  object_class->constructed = sw_field_row_constructed;
  object_class->set_property = sw_field_row_set_property;
  object_class->dispose = sw_field_row_dispose;
  object_class->finalize = sw_field_row_finalize;

  props[PROP_LABEL] = g_param_spec_string ("label", NULL, NULL, NULL, at_birth);
  props[PROP_UNIT] = g_param_spec_string ("unit", NULL, NULL, NULL, at_birth);
  props[PROP_CONTROL] = g_param_spec_object ("control", NULL, NULL, GTK_TYPE_WIDGET, at_birth);
  props[PROP_SUFFIX] = g_param_spec_object ("suffix", NULL, NULL, GTK_TYPE_WIDGET, at_birth);
  props[PROP_STACKED] = g_param_spec_boolean ("stacked", NULL, NULL, FALSE, at_birth);
  g_object_class_install_properties (object_class, N_PROPS, props);

  signals[RESET] = g_signal_new ("reset", SW_TYPE_FIELD_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 0);
  signals[FIX] = g_signal_new ("fix", SW_TYPE_FIELD_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                               G_TYPE_NONE, 0);

  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-field-row.ui");
  gtk_widget_class_bind_template_child (widget_class, SwFieldRow, box);
  gtk_widget_class_bind_template_child (widget_class, SwFieldRow, line);
  gtk_widget_class_bind_template_child (widget_class, SwFieldRow, label_widget);
  gtk_widget_class_bind_template_child (widget_class, SwFieldRow, control_slot);
  gtk_widget_class_bind_template_child (widget_class, SwFieldRow, suffix_slot);
  gtk_widget_class_bind_template_child (widget_class, SwFieldRow, unit_widget);
  gtk_widget_class_bind_template_child (widget_class, SwFieldRow, usual_slot);
  gtk_widget_class_bind_template_child (widget_class, SwFieldRow, usual_button);
  gtk_widget_class_bind_template_child (widget_class, SwFieldRow, hint);
  gtk_widget_class_bind_template_child (widget_class, SwFieldRow, message);
  gtk_widget_class_bind_template_child (widget_class, SwFieldRow, message_mark);
  gtk_widget_class_bind_template_child (widget_class, SwFieldRow, message_words);
  gtk_widget_class_bind_template_child (widget_class, SwFieldRow, finding);
  gtk_widget_class_bind_template_child (widget_class, SwFieldRow, finding_mark);
  gtk_widget_class_bind_template_child (widget_class, SwFieldRow, finding_words);
  gtk_widget_class_bind_template_child (widget_class, SwFieldRow, finding_fix);
  gtk_widget_class_bind_template_callback (widget_class, usual_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, fix_clicked_cb);
  gtk_widget_class_set_css_name (widget_class, "fieldrow");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sw_field_row_init (SwFieldRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * sw_field_row_set_usual:
 * @self: a row
 * @usual: (nullable): the exercise's usual value in words, when the field's value is another; NULL takes
 *   the button back to it away
 */
void
sw_field_row_set_usual (SwFieldRow *self,
                        const char *usual)
{
  g_autofree char *words = NULL;
  g_autofree char *name = NULL;

  g_return_if_fail (SW_IS_FIELD_ROW (self));

  gtk_widget_set_visible (GTK_WIDGET (self->usual_slot), TRUE);
  gtk_widget_set_visible (GTK_WIDGET (self->usual_button), usual != NULL);
  if (usual == NULL)
    return;

  /* Translators: %s is a value, such as "12" or "each side". */
  words = g_strdup_printf (_("Back to the exercise’s usual: %s"), usual);
  /* Translators: a field and a value, such as "Sets back to 3". */
  name = g_strdup_printf (_("%s back to %s"), self->label, usual);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->usual_button), words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->usual_button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

/**
 * sw_field_row_set_hint:
 * @self: a row
 * @hint: (nullable): what the value means, or how to write one
 */
void
sw_field_row_set_hint (SwFieldRow *self,
                       const char *hint)
{
  g_return_if_fail (SW_IS_FIELD_ROW (self));

  gtk_label_set_label (self->hint, hint != NULL ? hint : "");
  gtk_widget_set_visible (GTK_WIDGET (self->hint), hint != NULL);
}

/**
 * sw_field_row_set_complaint:
 * @self: a row
 * @complaint: (nullable): why what is written does not count; NULL when it does
 */
void
sw_field_row_set_complaint (SwFieldRow *self,
                            const char *complaint)
{
  g_return_if_fail (SW_IS_FIELD_ROW (self));

  g_free (self->complaint);
  self->complaint = g_strdup (complaint);
  show_complaint (self);
}

/**
 * sw_field_row_set_finding:
 * @self: a row
 * @finding: (nullable): what checking found about the field's value
 *
 * A fix is offered where it is another dose; the others need more than this field.
 */
void
sw_field_row_set_finding (SwFieldRow      *self,
                          const SwFinding *finding)
{
  g_return_if_fail (SW_IS_FIELD_ROW (self));

  gtk_widget_set_visible (GTK_WIDGET (self->finding), finding != NULL);
  if (finding == NULL)
    return;

  sw_finding_mark_show (self->finding_mark, finding->level, finding->text);
  gtk_label_set_label (self->finding_words, finding->text);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->finding_words), finding->why);
  gtk_widget_set_visible (GTK_WIDGET (self->finding_fix), finding->fix == SW_FIX_SET_DOSE);
  if (finding->fix != SW_FIX_SET_DOSE)
    return;

  gtk_label_set_label (GTK_LABEL (gtk_button_get_child (self->finding_fix)), finding->fix_label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->finding_fix), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  finding->fix_label, -1);
}
