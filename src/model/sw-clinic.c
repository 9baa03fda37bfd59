/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Who hands the programme over and whom to call. */
#include "config.h"

#include <string.h>

#include "sw-clinic.h"

#include "sw-fields.h"

enum
{
  PROP_0,
  PROP_NAME,
  PROP_THERAPIST,
  PROP_QUALIFICATION,
  PROP_PHONE,
  PROP_EMAIL,
  PROP_ADDRESS,
  PROP_EMERGENCY_NUMBER,
  PROP_BANDS,
  PROP_EXTRAS,
  PROP_LOGO,
  PROP_MAX_FORMULA,
  PROP_ALIKE_PERCENT,
  PROP_TRANSITIONS, /* low and high of each SwTransition */
  N_PROPS = PROP_TRANSITIONS + 2 * SW_N_TRANSITIONS,
};

struct _SwClinic
{
  GObject parent_instance;

  char *strings[PROP_EXTRAS];  /* by property; the first is not used */
  char **extras;
  SwLogo *logo;
  int max_formula;
  int alike_percent;
  int transitions_s[2 * SW_N_TRANSITIONS];
};

/* Common practice is 30 to 60 s from the end of one exercise to the start of the next, to set up, to move and to read the
 * card; here that outer bound is shared out among what has to be done, so that all of it together, down to the floor or up
 * from it with equipment to fetch, takes just that. */
static const int usual_transitions_s[2 * SW_N_TRANSITIONS] = { 5, 15, 5, 10, 5, 10, 15, 30, 10, 15 };

static const char * const transition_names[2 * SW_N_TRANSITIONS] = {
  "card-low-seconds", "card-high-seconds", "turn-low-seconds", "turn-high-seconds", "seat-low-seconds",
  "seat-high-seconds", "floor-low-seconds", "floor-high-seconds", "fetch-low-seconds", "fetch-high-seconds",
};

G_DEFINE_FINAL_TYPE (SwClinic, sw_clinic, G_TYPE_OBJECT)

static GParamSpec *properties[N_PROPS];

static gboolean
set_logo (SwClinic     *self,
          const SwLogo *logo)
{
  SwLogo *old = self->logo;

  if (sw_logo_equal (old, logo))
    return FALSE;

  self->logo = logo != NULL ? sw_logo_copy (logo) : NULL;
  g_clear_pointer (&old, sw_logo_free);
  return TRUE;
}

static void
sw_clinic_get_property (GObject    *object,
                        guint       property_id,
                        GValue     *value,
                        GParamSpec *pspec)
{
  SwClinic *self = SW_CLINIC (object);

  if (property_id == PROP_EXTRAS)
    g_value_set_boxed (value, self->extras);
  else if (property_id == PROP_LOGO)
    g_value_set_boxed (value, self->logo);
  else if (property_id == PROP_MAX_FORMULA)
    g_value_set_enum (value, self->max_formula);
  else if (property_id == PROP_ALIKE_PERCENT)
    g_value_set_int (value, self->alike_percent);
  else if (property_id >= PROP_TRANSITIONS && property_id < N_PROPS)
    g_value_set_int (value, self->transitions_s[property_id - PROP_TRANSITIONS]);
  else if (property_id > PROP_0 && property_id < PROP_EXTRAS)
    g_value_set_string (value, self->strings[property_id]);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property_id, pspec);
}

static void
sw_clinic_set_property (GObject      *object,
                        guint         property_id,
                        const GValue *value,
                        GParamSpec   *pspec)
{
  SwClinic *self = SW_CLINIC (object);
  gboolean changed = FALSE;

  if (property_id == PROP_EXTRAS)
    changed = sw_field_set_strv (&self->extras, g_value_get_boxed (value));
  else if (property_id == PROP_LOGO)
    changed = set_logo (self, g_value_get_boxed (value));
  else if (property_id == PROP_MAX_FORMULA)
    changed = sw_field_set_int (&self->max_formula, g_value_get_enum (value));
  else if (property_id == PROP_ALIKE_PERCENT)
    changed = sw_field_set_int (&self->alike_percent, g_value_get_int (value));
  else if (property_id >= PROP_TRANSITIONS && property_id < N_PROPS)
    changed = sw_field_set_int (&self->transitions_s[property_id - PROP_TRANSITIONS], g_value_get_int (value));
  else if (property_id > PROP_0 && property_id < PROP_EXTRAS)
    changed = sw_field_set_string (&self->strings[property_id], g_value_get_string (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property_id, pspec);

  if (changed)
    g_object_notify_by_pspec (object, pspec);
}

static void
sw_clinic_finalize (GObject *object)
{
  SwClinic *self = SW_CLINIC (object);

  for (int i = 0; i < PROP_EXTRAS; i++)
    g_free (self->strings[i]);
  g_strfreev (self->extras);
  g_clear_pointer (&self->logo, sw_logo_free);

  G_OBJECT_CLASS (sw_clinic_parent_class)->finalize (object);
}

static void
sw_clinic_class_init (SwClinicClass *klass)
{
  static const char * const names[PROP_EXTRAS] = {
    NULL, "name", "therapist", "qualification", "phone", "email", "address", "emergency-number", "bands",
  };
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = sw_clinic_get_property;
  object_class->set_property = sw_clinic_set_property;
  object_class->finalize = sw_clinic_finalize;

  for (int i = PROP_0 + 1; i < PROP_EXTRAS; i++)
    properties[i] = g_param_spec_string (names[i], NULL, NULL, "",
                                         G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY
                                         | G_PARAM_STATIC_STRINGS);
  properties[PROP_EXTRAS] = g_param_spec_boxed ("extras", NULL, NULL, G_TYPE_STRV,
                                                G_PARAM_READWRITE
                                                | G_PARAM_EXPLICIT_NOTIFY
                                                | G_PARAM_STATIC_STRINGS);
  properties[PROP_LOGO] = g_param_spec_boxed ("logo", NULL, NULL, SW_TYPE_LOGO,
                                              G_PARAM_READWRITE
                                              | G_PARAM_EXPLICIT_NOTIFY
                                              | G_PARAM_STATIC_STRINGS);
  properties[PROP_MAX_FORMULA] = g_param_spec_enum ("max-formula", NULL, NULL, SW_TYPE_MAX_FORMULA,
                                                    SW_MAX_FORMULA_BRZYCKI,
                                                    G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY
                                                    | G_PARAM_STATIC_STRINGS);
  properties[PROP_ALIKE_PERCENT] = g_param_spec_int ("alike-percent", NULL, NULL, 1, SW_CLINIC_MOST_ALIKE_PERCENT,
                                                     SW_CLINIC_USUAL_ALIKE_PERCENT,
                                                     G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY
                                                     | G_PARAM_STATIC_STRINGS);
  for (int i = 0; i < 2 * SW_N_TRANSITIONS; i++)
    properties[PROP_TRANSITIONS + i] = g_param_spec_int (transition_names[i], NULL, NULL, 0, SW_CLINIC_MOST_TRANSITION_S,
                                                     usual_transitions_s[i],
                                                     G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY
                                                     | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
sw_clinic_init (SwClinic *self)
{
  for (int i = PROP_0 + 1; i < PROP_EXTRAS; i++)
    sw_field_set_string (&self->strings[i], "");
  sw_field_set_strv (&self->extras, NULL);
  self->alike_percent = SW_CLINIC_USUAL_ALIKE_PERCENT;
  memcpy (self->transitions_s, usual_transitions_s, sizeof usual_transitions_s);
}

/**
 * sw_clinic_new:
 *
 * Returns: (transfer full): a clinic with nothing stated
 */
SwClinic *
sw_clinic_new (void)
{
  return g_object_new (SW_TYPE_CLINIC, NULL);
}

/**
 * sw_clinic_copy:
 * @self: a clinic
 *
 * Returns: (transfer full): an equal one of its own
 */
SwClinic *
sw_clinic_copy (SwClinic *self)
{
  SwClinic *copy;

  g_return_val_if_fail (SW_IS_CLINIC (self), NULL);

  copy = sw_clinic_new ();
  for (int i = PROP_0 + 1; i < PROP_EXTRAS; i++)
    sw_field_set_string (&copy->strings[i], self->strings[i]);
  sw_field_set_strv (&copy->extras, (const char * const *) self->extras);
  set_logo (copy, self->logo);
  copy->max_formula = self->max_formula;
  copy->alike_percent = self->alike_percent;
  memcpy (copy->transitions_s, self->transitions_s, sizeof self->transitions_s);
  return copy;
}

/**
 * sw_clinic_get_name:
 * @self: a clinic
 *
 * Returns: (transfer none): name of the clinic; "" when not stated
 */
const char *
sw_clinic_get_name (SwClinic *self)
{
  g_return_val_if_fail (SW_IS_CLINIC (self), NULL);

  return self->strings[PROP_NAME];
}

/**
 * sw_clinic_get_therapist:
 * @self: a clinic
 *
 * Returns: (transfer none): name of the therapist; "" when not stated
 */
const char *
sw_clinic_get_therapist (SwClinic *self)
{
  g_return_val_if_fail (SW_IS_CLINIC (self), NULL);

  return self->strings[PROP_THERAPIST];
}

/**
 * sw_clinic_get_qualification:
 * @self: a clinic
 *
 * Returns: (transfer none): what the therapist is by training
 */
const char *
sw_clinic_get_qualification (SwClinic *self)
{
  g_return_val_if_fail (SW_IS_CLINIC (self), NULL);

  return self->strings[PROP_QUALIFICATION];
}

/**
 * sw_clinic_get_phone:
 * @self: a clinic
 *
 * Returns: (transfer none): whom to call; "" when not stated
 */
const char *
sw_clinic_get_phone (SwClinic *self)
{
  g_return_val_if_fail (SW_IS_CLINIC (self), NULL);

  return self->strings[PROP_PHONE];
}

/**
 * sw_clinic_get_email:
 * @self: a clinic
 *
 * Returns: (transfer none): whom to write to; "" when not stated
 */
const char *
sw_clinic_get_email (SwClinic *self)
{
  g_return_val_if_fail (SW_IS_CLINIC (self), NULL);

  return self->strings[PROP_EMAIL];
}

/**
 * sw_clinic_get_address:
 * @self: a clinic
 *
 * Returns: (transfer none): postal address, lines; "" when not stated
 */
const char *
sw_clinic_get_address (SwClinic *self)
{
  g_return_val_if_fail (SW_IS_CLINIC (self), NULL);

  return self->strings[PROP_ADDRESS];
}

/**
 * sw_clinic_get_emergency_number:
 * @self: a clinic
 *
 * Returns: (transfer none): the number to call in danger; "" when not stated
 */
const char *
sw_clinic_get_emergency_number (SwClinic *self)
{
  g_return_val_if_fail (SW_IS_CLINIC (self), NULL);

  return self->strings[PROP_EMERGENCY_NUMBER];
}

/**
 * sw_clinic_get_bands:
 * @self: a clinic
 *
 * Returns: (transfer none): its elastic bands by force, one a line, as sw_bands_from_text() reads them; "" when not stated
 */
const char *
sw_clinic_get_bands (SwClinic *self)
{
  g_return_val_if_fail (SW_IS_CLINIC (self), NULL);

  return self->strings[PROP_BANDS];
}

/**
 * sw_clinic_get_max_formula:
 * @self: a clinic
 *
 * Returns: the formula it trusts to reckon from several repetitions what could be moved once
 */
SwMaxFormula
sw_clinic_get_max_formula (SwClinic *self)
{
  g_return_val_if_fail (SW_IS_CLINIC (self), SW_MAX_FORMULA_BRZYCKI);

  return (SwMaxFormula) self->max_formula;
}

/**
 * sw_clinic_get_alike_percent:
 * @self: a clinic
 *
 * Returns: the greatest difference between the sides it calls alike, 1..50 percent
 */
int
sw_clinic_get_alike_percent (SwClinic *self)
{
  g_return_val_if_fail (SW_IS_CLINIC (self), SW_CLINIC_USUAL_ALIKE_PERCENT);

  return self->alike_percent;
}

/**
 * sw_clinic_get_logo:
 * @self: a clinic
 *
 * Returns: (transfer none) (nullable): its picture for the letterhead; NULL for none
 */
const SwLogo *
sw_clinic_get_logo (SwClinic *self)
{
  g_return_val_if_fail (SW_IS_CLINIC (self), NULL);

  return self->logo;
}

/**
 * sw_clinic_get_extras:
 * @self: a clinic
 *
 * Returns: (transfer none) (array zero-terminated=1): unknown XML, kept; never NULL
 */
const char * const *
sw_clinic_get_extras (SwClinic *self)
{
  g_return_val_if_fail (SW_IS_CLINIC (self), NULL);

  return (const char * const *) self->extras;
}

/**
 * sw_clinic_get_transition:
 * @self: a clinic
 * @transition: what has to be done between two exercises
 * @low_s: (out): seconds when it goes quickly
 * @high_s: (out): seconds when it does not; never below @low_s
 */
void
sw_clinic_get_transition (SwClinic     *self,
                          SwTransition  transition,
                          int          *low_s,
                          int          *high_s)
{
  g_return_if_fail (SW_IS_CLINIC (self));

  *low_s = self->transitions_s[2 * transition];
  *high_s = MAX (*low_s, self->transitions_s[2 * transition + 1]);
}

/**
 * sw_clinic_get_transition_property:
 * @transition: what has to be done between two exercises
 * @high: whether the upper figure is asked for
 *
 * Returns: (transfer none): the name of the property that holds it
 */
const char *
sw_clinic_get_transition_property (SwTransition transition,
                                   gboolean     high)
{
  return transition_names[2 * transition + (high ? 1 : 0)];
}

/**
 * sw_clinic_has_usual_transitions:
 * @self: a clinic
 *
 * Returns: whether nobody has changed how long anything between two exercises takes
 */
gboolean
sw_clinic_has_usual_transitions (SwClinic *self)
{
  g_return_val_if_fail (SW_IS_CLINIC (self), FALSE);

  return memcmp (self->transitions_s, usual_transitions_s, sizeof usual_transitions_s) == 0;
}
