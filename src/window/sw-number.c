/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A number that counts while it is being typed. GtkSpinButton by itself takes a typed value only at Enter or
 * when the focus leaves, and bends one out of range to the nearest end without a word. */
#include "config.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n.h>

#include "sw-number.h"

#include "sw-units.h"

/* A property that was not set; GParamSpec allows no NaN for its default. */
#define UNSET (-1e9)

struct _SwNumber
{
  GtkWidget parent_instance;

  GtkSpinButton *spin;
  double lower;
  double upper;
  double step;
  double none;
  double first;
  int digits;

  double value;      /* what was last given or shown; NaN before the first */
  gboolean typing;   /* the value follows the text: leave the text alone */
  gboolean setting;  /* the text follows the value: nothing was typed */
  char *complaint;
};

G_DEFINE_FINAL_TYPE (SwNumber, sw_number, GTK_TYPE_WIDGET)

enum
{
  PROP_LOWER = 1,
  PROP_UPPER,
  PROP_STEP,
  PROP_NONE,
  PROP_FIRST,
  PROP_DIGITS,
  PROP_COMPLAINT,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

enum
{
  CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static gboolean
same (double a,
      double b)
{
  return fabs (a - b) < 1e-9;
}

static gboolean
is_none (SwNumber *self,
         double    value)
{
  return !isnan (self->none) && same (value, self->none);
}

static void
complain (SwNumber *self,
          char     *complaint)
{
  g_autofree char *owned = complaint;

  if (g_strcmp0 (self->complaint, owned) == 0)
    return;

  g_free (self->complaint);
  self->complaint = g_steal_pointer (&owned);
  if (self->complaint != NULL)
    gtk_widget_add_css_class (GTK_WIDGET (self->spin), "error");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->spin), "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->spin), GTK_ACCESSIBLE_STATE_INVALID,
                               self->complaint != NULL ? GTK_ACCESSIBLE_INVALID_TRUE
                               : GTK_ACCESSIBLE_INVALID_FALSE, -1);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_COMPLAINT]);
}

static char *
dup_range_words (SwNumber *self)
{
  g_autofree char *lower = sw_number_to_string (self->lower, self->digits);
  g_autofree char *upper = sw_number_to_string (self->upper, self->digits);

  if (self->digits == 0)
    return g_strdup_printf (_("A whole number from %s to %s."), lower, upper);
  return g_strdup_printf (_("A number from %s to %s."), lower, upper);
}

/* A number as typed, with decimal point or comma; FALSE when it is none. */
static gboolean
parse_number (const char *text,
              double     *value)
{
  g_autofree char *plain = g_strstrip (g_strdup (text));
  char *end = NULL;

  g_strdelimit (plain, ",", '.');
  *value = g_ascii_strtod (plain, &end);
  return end != plain && *end == '\0' && isfinite (*value);
}

/* Whether the text is a value; if not, whether it may become one by typing on, as "19" becomes "1951". */
static gboolean
parse (SwNumber   *self,
       const char *text,
       double     *value,
       gboolean   *unfinished)
{
  g_autofree char *plain = g_strstrip (g_strdup (text));

  *unfinished = FALSE;
  if (*plain == '\0')
    {
      *value = self->none;
      *unfinished = isnan (self->none);
      return !isnan (self->none);
    }
  if (!parse_number (plain, value))
    return FALSE;
  if (is_none (self, *value))
    return TRUE;

  *unfinished = *value >= 1.0 && *value < self->lower;
  return *value >= self->lower && *value <= self->upper
         && (self->digits > 0 || same (*value, floor (*value)));
}

static void
text_changed_cb (SwNumber *self)
{
  double value;
  gboolean unfinished;

  if (self->setting)
    return;

  if (!parse (self, gtk_editable_get_text (GTK_EDITABLE (self->spin)), &value, &unfinished))
    {
      complain (self, unfinished ? NULL : dup_range_words (self));
      return;
    }

  complain (self, NULL);
  self->typing = TRUE;
  gtk_spin_button_set_value (self->spin, value);
  self->typing = FALSE;
}

/* Between "none" and the lowest value there is nothing: a step from one leads to the other, or from "none"
 * to where most values are. */
static double
skip_gap (SwNumber *self,
          double    value)
{
  if (isnan (self->none) || is_none (self, value))
    return value;
  if (is_none (self, self->value) && !self->typing)
    return isnan (self->first) ? self->lower : self->first;

  return value >= self->lower ? value : self->none;
}

static void
value_changed_cb (SwNumber *self)
{
  double value = gtk_spin_button_get_value (self->spin);
  double wanted = skip_gap (self, value);

  if (self->setting)
    return;
  if (!same (value, wanted))
    {
      gtk_spin_button_set_value (self->spin, wanted);
      return;
    }
  if (same (value, self->value))
    return;

  self->value = value;
  g_signal_emit (self, signals[CHANGED], 0);
}

static gint
input_cb (GtkSpinButton *spin,
          double        *value,
          SwNumber      *self)
{
  gboolean unfinished;

  if (parse (self, gtk_editable_get_text (GTK_EDITABLE (spin)), value, &unfinished))
    return TRUE;

  return GTK_INPUT_ERROR;
}

static gboolean
output_cb (GtkSpinButton *spin,
           SwNumber      *self)
{
  double value = gtk_spin_button_get_value (spin);
  g_autofree char *text = NULL;
  gboolean was_setting = self->setting;

  if (self->typing)
    return TRUE;

  text = is_none (self, value) ? g_strdup ("") : sw_number_to_string (value, self->digits);
  self->setting = TRUE;
  if (strcmp (gtk_editable_get_text (GTK_EDITABLE (spin)), text) != 0)
    gtk_editable_set_text (GTK_EDITABLE (spin), text);
  self->setting = was_setting;
  if (*text == '\0')
    gtk_accessible_update_property (GTK_ACCESSIBLE (spin), GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT,
                                    _("not stated"), -1);
  else
    gtk_accessible_reset_property (GTK_ACCESSIBLE (spin), GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT);
  complain (self, NULL);
  return TRUE;
}

/* Else the wheel would change the dose while the therapist only means to scroll the pane. */
static void
ignore_wheel (GtkWidget *spin)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (spin);

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      if (GTK_IS_EVENT_CONTROLLER_SCROLL (controller))
        gtk_event_controller_set_propagation_phase (controller, GTK_PHASE_NONE);
    }
}

static double
unset_to_nan (double value)
{
  return value > UNSET ? value : NAN;
}

static void
sw_number_get_property (GObject    *object,
                        guint       id,
                        GValue     *value,
                        GParamSpec *pspec)
{
  if (id == PROP_COMPLAINT)
    g_value_set_string (value, SW_NUMBER (object)->complaint);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
sw_number_set_property (GObject      *object,
                        guint         id,
                        const GValue *value,
                        GParamSpec   *pspec)
{
  SwNumber *self = SW_NUMBER (object);

  switch (id)
    {
    case PROP_LOWER:
      self->lower = g_value_get_double (value);
      break;
    case PROP_UPPER:
      self->upper = g_value_get_double (value);
      break;
    case PROP_STEP:
      self->step = g_value_get_double (value);
      break;
    case PROP_NONE:
      self->none = unset_to_nan (g_value_get_double (value));
      break;
    case PROP_FIRST:
      self->first = unset_to_nan (g_value_get_double (value));
      break;
    case PROP_DIGITS:
      self->digits = g_value_get_int (value);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
sw_number_constructed (GObject *object)
{
  SwNumber *self = SW_NUMBER (object);
  double lowest = isnan (self->none) ? self->lower : fmin (self->none, self->lower);

  G_OBJECT_CLASS (sw_number_parent_class)->constructed (object);

  self->setting = TRUE;
  gtk_spin_button_set_digits (self->spin, (guint) self->digits);
  gtk_spin_button_set_range (self->spin, lowest, self->upper);
  gtk_spin_button_set_increments (self->spin, self->step, self->step * 5.0);
  self->setting = FALSE;
}

static gboolean
sw_number_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (SW_NUMBER (widget)->spin));
}

static void
sw_number_dispose (GObject *object)
{
  SwNumber *self = SW_NUMBER (object);

  /* Its last words would be a focus that leaves a half-destroyed widget. */
  if (self->spin != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->spin, self);
      gtk_widget_unparent (GTK_WIDGET (g_steal_pointer (&self->spin)));
    }

  G_OBJECT_CLASS (sw_number_parent_class)->dispose (object);
}

static void
sw_number_finalize (GObject *object)
{
  g_free (SW_NUMBER (object)->complaint);

  G_OBJECT_CLASS (sw_number_parent_class)->finalize (object);
}

static void
sw_number_class_init (SwNumberClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  GParamFlags at_birth = G_PARAM_WRITABLE | G_PARAM_CONSTRUCT_ONLY | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_number_get_property;
  object_class->set_property = sw_number_set_property;
  object_class->constructed = sw_number_constructed;
  object_class->dispose = sw_number_dispose;
  object_class->finalize = sw_number_finalize;
  widget_class->grab_focus = sw_number_grab_focus;

  props[PROP_LOWER] = g_param_spec_double ("lower", NULL, NULL, -1e9, 1e9, 0.0, at_birth);
  props[PROP_UPPER] = g_param_spec_double ("upper", NULL, NULL, -1e9, 1e9, 100.0, at_birth);
  props[PROP_STEP] = g_param_spec_double ("step", NULL, NULL, 0.0, 1e9, 1.0, at_birth);
  props[PROP_NONE] = g_param_spec_double ("none", NULL, NULL, UNSET, 1e9, UNSET, at_birth);
  props[PROP_FIRST] = g_param_spec_double ("first", NULL, NULL, UNSET, 1e9, UNSET, at_birth);
  props[PROP_DIGITS] = g_param_spec_int ("digits", NULL, NULL, 0, 6, 0, at_birth);
  props[PROP_COMPLAINT] = g_param_spec_string ("complaint", NULL, NULL, NULL,
                                               G_PARAM_READABLE | G_PARAM_EXPLICIT_NOTIFY
                                               | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  signals[CHANGED] = g_signal_new ("changed", SW_TYPE_NUMBER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);

  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sw_number_init (SwNumber *self)
{
  self->value = NAN;
  self->spin = GTK_SPIN_BUTTON (gtk_spin_button_new (NULL, 1.0, 0));
  gtk_spin_button_set_update_policy (self->spin, GTK_UPDATE_IF_VALID);
  gtk_editable_set_alignment (GTK_EDITABLE (self->spin), 1.0f);
  gtk_editable_set_width_chars (GTK_EDITABLE (self->spin), 4);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->spin), 4);
  gtk_editable_set_enable_undo (GTK_EDITABLE (self->spin), FALSE);
  ignore_wheel (GTK_WIDGET (self->spin));
  gtk_widget_set_parent (GTK_WIDGET (self->spin), GTK_WIDGET (self));

  g_signal_connect (self->spin, "input", G_CALLBACK (input_cb), self);
  g_signal_connect (self->spin, "output", G_CALLBACK (output_cb), self);
  g_signal_connect_swapped (self->spin, "changed", G_CALLBACK (text_changed_cb), self);
  g_signal_connect_swapped (self->spin, "value-changed", G_CALLBACK (value_changed_cb), self);
}

/**
 * sw_number_get_value:
 * @self: a number
 *
 * Returns: the value last given or shown; NaN before the first
 */
double
sw_number_get_value (SwNumber *self)
{
  g_return_val_if_fail (SW_IS_NUMBER (self), NAN);

  return self->value;
}

/**
 * sw_number_set_value:
 * @self: a number
 * @value: within the range, or the value for "none"
 *
 * Shows @value. When it is shown already, whatever is being typed stays as it is.
 */
void
sw_number_set_value (SwNumber *self,
                     double    value)
{
  g_return_if_fail (SW_IS_NUMBER (self));

  if (same (self->value, value))
    return;

  self->value = value;
  self->setting = TRUE;
  gtk_spin_button_set_value (self->spin, value);
  self->setting = FALSE;
}

/**
 * sw_number_set_upper:
 * @self: a number
 * @upper: the highest value from now on; not below the present value
 */
void
sw_number_set_upper (SwNumber *self,
                     double    upper)
{
  double lowest = isnan (self->none) ? self->lower : fmin (self->none, self->lower);

  g_return_if_fail (SW_IS_NUMBER (self));

  if (same (self->upper, upper))
    return;

  self->upper = upper;
  self->setting = TRUE;
  gtk_spin_button_set_range (self->spin, lowest, upper);
  self->setting = FALSE;
}

/**
 * sw_number_get_complaint:
 * @self: a number
 *
 * Returns: (transfer none) (nullable): why the text does not count; NULL when it does
 */
const char *
sw_number_get_complaint (SwNumber *self)
{
  g_return_val_if_fail (SW_IS_NUMBER (self), NULL);

  return self->complaint;
}

/**
 * sw_number_set_name:
 * @self: a number
 * @name: its name for assistive tools
 * @description: (nullable): its unit and what else there is to say
 */
void
sw_number_set_name (SwNumber   *self,
                    const char *name,
                    const char *description)
{
  g_return_if_fail (SW_IS_NUMBER (self));

  gtk_accessible_update_property (GTK_ACCESSIBLE (self->spin), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  if (description != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (self->spin), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                    description, -1);
}
