/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The person the programme is for: what limits, helps and suits them. */
#include "config.h"

#include "sw-client.h"

#include "sw-fields.h"

struct _SwClient
{
  GObject parent_instance;

  char *name;
  int birth_year;
  int dominant_side;
  char *goals;
  SwSet precautions;
  char *other_precautions;
  SwSet equipment;
  SwSet avoided_positions;
  char *loads;
  char *load_limit;
  int minutes;
  int units;
  int paper;
  double text_points;
  char *language;
  char **extras;
};

G_DEFINE_FINAL_TYPE (SwClient, sw_client, G_TYPE_OBJECT)

enum
{
  PROP_0,
  PROP_NAME,
  PROP_BIRTH_YEAR,
  PROP_DOMINANT_SIDE,
  PROP_GOALS,
  PROP_PRECAUTIONS,
  PROP_OTHER_PRECAUTIONS,
  PROP_EQUIPMENT,
  PROP_AVOIDED_POSITIONS,
  PROP_LOADS,
  PROP_LOAD_LIMIT,
  PROP_MINUTES,
  PROP_UNITS,
  PROP_PAPER,
  PROP_TEXT_POINTS,
  PROP_LANGUAGE,
  PROP_EXTRAS,
  N_PROPS,
};

static GParamSpec *properties[N_PROPS];

static void
sw_client_get_property (GObject    *object,
                        guint       property_id,
                        GValue     *value,
                        GParamSpec *pspec)
{
  SwClient *self = SW_CLIENT (object);

  switch (property_id)
    {
    case PROP_NAME:
      g_value_set_string (value, self->name);
      break;
    case PROP_BIRTH_YEAR:
      g_value_set_int (value, self->birth_year);
      break;
    case PROP_DOMINANT_SIDE:
      g_value_set_enum (value, self->dominant_side);
      break;
    case PROP_GOALS:
      g_value_set_string (value, self->goals);
      break;
    case PROP_PRECAUTIONS:
      g_value_set_uint64 (value, self->precautions);
      break;
    case PROP_OTHER_PRECAUTIONS:
      g_value_set_string (value, self->other_precautions);
      break;
    case PROP_EQUIPMENT:
      g_value_set_uint64 (value, self->equipment);
      break;
    case PROP_AVOIDED_POSITIONS:
      g_value_set_uint64 (value, self->avoided_positions);
      break;
    case PROP_LOADS:
      g_value_set_string (value, self->loads);
      break;
    case PROP_LOAD_LIMIT:
      g_value_set_string (value, self->load_limit);
      break;
    case PROP_MINUTES:
      g_value_set_int (value, self->minutes);
      break;
    case PROP_UNITS:
      g_value_set_enum (value, self->units);
      break;
    case PROP_PAPER:
      g_value_set_enum (value, self->paper);
      break;
    case PROP_TEXT_POINTS:
      g_value_set_double (value, self->text_points);
      break;
    case PROP_LANGUAGE:
      g_value_set_string (value, self->language);
      break;
    case PROP_EXTRAS:
      g_value_set_boxed (value, self->extras);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property_id, pspec);
      break;
    }
}

static gboolean
set_set (SwSet        *field,
         const GValue *value)
{
  if (*field == g_value_get_uint64 (value))
    return FALSE;

  *field = g_value_get_uint64 (value);
  return TRUE;
}

static gboolean
set_text_points (SwClient *self,
                 double    text_points)
{
  if (self->text_points >= text_points && self->text_points <= text_points)
    return FALSE;

  self->text_points = text_points;
  return TRUE;
}

static void
sw_client_set_property (GObject      *object,
                        guint         property_id,
                        const GValue *value,
                        GParamSpec   *pspec)
{
  SwClient *self = SW_CLIENT (object);
  gboolean changed = FALSE;

  switch (property_id)
    {
    case PROP_NAME:
      changed = sw_field_set_string (&self->name, g_value_get_string (value));
      break;
    case PROP_BIRTH_YEAR:
      changed = sw_field_set_int (&self->birth_year, g_value_get_int (value));
      break;
    case PROP_DOMINANT_SIDE:
      changed = sw_field_set_int (&self->dominant_side, g_value_get_enum (value));
      break;
    case PROP_GOALS:
      changed = sw_field_set_string (&self->goals, g_value_get_string (value));
      break;
    case PROP_PRECAUTIONS:
      changed = set_set (&self->precautions, value);
      break;
    case PROP_OTHER_PRECAUTIONS:
      changed = sw_field_set_string (&self->other_precautions, g_value_get_string (value));
      break;
    case PROP_EQUIPMENT:
      changed = set_set (&self->equipment, value);
      break;
    case PROP_AVOIDED_POSITIONS:
      changed = set_set (&self->avoided_positions, value);
      break;
    case PROP_LOADS:
      changed = sw_field_set_string (&self->loads, g_value_get_string (value));
      break;
    case PROP_LOAD_LIMIT:
      changed = sw_field_set_string (&self->load_limit, g_value_get_string (value));
      break;
    case PROP_MINUTES:
      changed = sw_field_set_int (&self->minutes, g_value_get_int (value));
      break;
    case PROP_UNITS:
      changed = sw_field_set_int (&self->units, g_value_get_enum (value));
      break;
    case PROP_PAPER:
      changed = sw_field_set_int (&self->paper, g_value_get_enum (value));
      break;
    case PROP_TEXT_POINTS:
      changed = set_text_points (self, g_value_get_double (value));
      break;
    case PROP_LANGUAGE:
      changed = sw_field_set_string (&self->language, g_value_get_string (value));
      break;
    case PROP_EXTRAS:
      changed = sw_field_set_strv (&self->extras, g_value_get_boxed (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property_id, pspec);
      break;
    }

  if (changed)
    g_object_notify_by_pspec (object, pspec);
}

static void
sw_client_finalize (GObject *object)
{
  SwClient *self = SW_CLIENT (object);

  g_free (self->name);
  g_free (self->goals);
  g_free (self->other_precautions);
  g_free (self->loads);
  g_free (self->load_limit);
  g_free (self->language);
  g_strfreev (self->extras);

  G_OBJECT_CLASS (sw_client_parent_class)->finalize (object);
}

static void
sw_client_class_init (SwClientClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GParamFlags flags = G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_client_get_property;
  object_class->set_property = sw_client_set_property;
  object_class->finalize = sw_client_finalize;

  properties[PROP_NAME] = g_param_spec_string ("name", NULL, NULL, "", flags);
  properties[PROP_BIRTH_YEAR] = g_param_spec_int ("birth-year", NULL, NULL, 0, 2100, 0, flags);
  properties[PROP_DOMINANT_SIDE] = g_param_spec_enum ("dominant-side", NULL, NULL, SW_TYPE_BODY_SIDE,
                                                      SW_BODY_SIDE_NONE, flags);
  properties[PROP_GOALS] = g_param_spec_string ("goals", NULL, NULL, "", flags);
  properties[PROP_PRECAUTIONS] = g_param_spec_uint64 ("precautions", NULL, NULL, 0, G_MAXUINT64, 0, flags);
  properties[PROP_OTHER_PRECAUTIONS] = g_param_spec_string ("other-precautions", NULL, NULL, "", flags);
  properties[PROP_EQUIPMENT] = g_param_spec_uint64 ("equipment", NULL, NULL, 0, G_MAXUINT64, 0, flags);
  properties[PROP_AVOIDED_POSITIONS] = g_param_spec_uint64 ("avoided-positions", NULL, NULL, 0, G_MAXUINT64, 0, flags);
  properties[PROP_LOADS] = g_param_spec_string ("loads", NULL, NULL, "", flags);
  properties[PROP_LOAD_LIMIT] = g_param_spec_string ("load-limit", NULL, NULL, "", flags);
  properties[PROP_MINUTES] = g_param_spec_int ("minutes", NULL, NULL, 0, 240, 0, flags);
  properties[PROP_UNITS] = g_param_spec_enum ("units", NULL, NULL, SW_TYPE_UNITS, SW_UNITS_KG, flags);
  properties[PROP_PAPER] = g_param_spec_enum ("paper", NULL, NULL, SW_TYPE_PAPER, SW_PAPER_A4, flags);
  properties[PROP_TEXT_POINTS] = g_param_spec_double ("text-points", NULL, NULL, 12.0, 28.0, 14.0, flags);
  properties[PROP_LANGUAGE] = g_param_spec_string ("language", NULL, NULL, "en", flags);
  properties[PROP_EXTRAS] = g_param_spec_boxed ("extras", NULL, NULL, G_TYPE_STRV, flags);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

/* 14 points: what guidance on clear print asks for readers of all ages. */
static void
sw_client_init (SwClient *self)
{
  self->text_points = 14.0;
  sw_field_set_string (&self->name, "");
  sw_field_set_string (&self->goals, "");
  sw_field_set_string (&self->other_precautions, "");
  sw_field_set_string (&self->loads, "");
  sw_field_set_string (&self->load_limit, "");
  sw_field_set_string (&self->language, "en");
  sw_field_set_strv (&self->extras, NULL);
}

/**
 * sw_client_new:
 *
 * Returns: (transfer full): a client of whom nothing is stated; kilograms, A4, 14 points, English
 */
SwClient *
sw_client_new (void)
{
  return g_object_new (SW_TYPE_CLIENT, NULL);
}

/**
 * sw_client_copy:
 * @self: a client
 *
 * Returns: (transfer full): an equal one of its own
 */
SwClient *
sw_client_copy (SwClient *self)
{
  g_return_val_if_fail (SW_IS_CLIENT (self), NULL);

  return g_object_new (SW_TYPE_CLIENT,
                       "name", self->name,
                       "birth-year", self->birth_year,
                       "dominant-side", self->dominant_side,
                       "goals", self->goals,
                       "precautions", self->precautions,
                       "other-precautions", self->other_precautions,
                       "equipment", self->equipment,
                       "avoided-positions", self->avoided_positions,
                       "loads", self->loads,
                       "load-limit", self->load_limit,
                       "minutes", self->minutes,
                       "units", self->units,
                       "paper", self->paper,
                       "text-points", self->text_points,
                       "language", self->language,
                       "extras", self->extras,
                       NULL);
}

/**
 * sw_client_get_name:
 * @self: a client
 *
 * Returns: (transfer none): what to call the client; "" when not stated
 */
const char *
sw_client_get_name (SwClient *self)
{
  g_return_val_if_fail (SW_IS_CLIENT (self), NULL);

  return self->name;
}

/**
 * sw_client_get_birth_year:
 * @self: a client
 *
 * Returns: 1900..2100, or 0 when not known
 */
int
sw_client_get_birth_year (SwClient *self)
{
  g_return_val_if_fail (SW_IS_CLIENT (self), 0);

  return self->birth_year;
}

/**
 * sw_client_get_dominant_side:
 * @self: a client
 *
 * Returns: the dominant hand and leg
 */
SwBodySide
sw_client_get_dominant_side (SwClient *self)
{
  g_return_val_if_fail (SW_IS_CLIENT (self), SW_BODY_SIDE_NONE);

  return (SwBodySide) self->dominant_side;
}

/**
 * sw_client_get_goals:
 * @self: a client
 *
 * Returns: (transfer none): the client's goals, one a line
 */
const char *
sw_client_get_goals (SwClient *self)
{
  g_return_val_if_fail (SW_IS_CLIENT (self), NULL);

  return self->goals;
}

/**
 * sw_client_get_precautions:
 * @self: a client
 *
 * Returns: a set of #SwPrecaution
 */
SwSet
sw_client_get_precautions (SwClient *self)
{
  g_return_val_if_fail (SW_IS_CLIENT (self), 0);

  return self->precautions;
}

/**
 * sw_client_get_other_precautions:
 * @self: a client
 *
 * Returns: (transfer none): precautions in free words, one a line
 */
const char *
sw_client_get_other_precautions (SwClient *self)
{
  g_return_val_if_fail (SW_IS_CLIENT (self), NULL);

  return self->other_precautions;
}

/**
 * sw_client_get_equipment:
 * @self: a client
 *
 * Returns: a set of #SwEquipment at home
 */
SwSet
sw_client_get_equipment (SwClient *self)
{
  g_return_val_if_fail (SW_IS_CLIENT (self), 0);

  return self->equipment;
}

/**
 * sw_client_get_avoided_positions:
 * @self: a client
 *
 * Returns: a set of #SwPosition the client cannot get into, or out of, alone
 */
SwSet
sw_client_get_avoided_positions (SwClient *self)
{
  g_return_val_if_fail (SW_IS_CLIENT (self), 0);

  return self->avoided_positions;
}

/**
 * sw_client_get_loads:
 * @self: a client
 *
 * Returns: (transfer none): the loads at home as they were written down, for sw_loads_from_text(); "" when not known
 */
const char *
sw_client_get_loads (SwClient *self)
{
  g_return_val_if_fail (SW_IS_CLIENT (self), NULL);

  return self->loads;
}

/**
 * sw_client_get_load_limit:
 * @self: a client
 *
 * Returns: (transfer none): the greatest load the client may have as it was written down, for sw_loads_from_text(); ""
 *   for none
 */
const char *
sw_client_get_load_limit (SwClient *self)
{
  g_return_val_if_fail (SW_IS_CLIENT (self), NULL);

  return self->load_limit;
}

/**
 * sw_client_get_minutes:
 * @self: a client
 *
 * Returns: minutes there are for a session, or 0 when not stated
 */
int
sw_client_get_minutes (SwClient *self)
{
  g_return_val_if_fail (SW_IS_CLIENT (self), 0);

  return self->minutes;
}

/**
 * sw_client_get_units:
 * @self: a client
 *
 * Returns: the units loads are printed in
 */
SwUnits
sw_client_get_units (SwClient *self)
{
  g_return_val_if_fail (SW_IS_CLIENT (self), SW_UNITS_KG);

  return (SwUnits) self->units;
}

/**
 * sw_client_get_paper:
 * @self: a client
 *
 * Returns: the paper the handout is printed on
 */
SwPaper
sw_client_get_paper (SwClient *self)
{
  g_return_val_if_fail (SW_IS_CLIENT (self), SW_PAPER_A4);

  return (SwPaper) self->paper;
}

/**
 * sw_client_get_text_points:
 * @self: a client
 *
 * Returns: size of the handout's text in points, 12..28
 */
double
sw_client_get_text_points (SwClient *self)
{
  g_return_val_if_fail (SW_IS_CLIENT (self), 14.0);

  return self->text_points;
}

/**
 * sw_client_get_language:
 * @self: a client
 *
 * Returns: (transfer none): the handout's language, BCP 47
 */
const char *
sw_client_get_language (SwClient *self)
{
  g_return_val_if_fail (SW_IS_CLIENT (self), NULL);

  return self->language;
}

/**
 * sw_client_get_extras:
 * @self: a client
 *
 * Returns: (transfer none) (array zero-terminated=1): unknown XML, kept; never NULL
 */
const char * const *
sw_client_get_extras (SwClient *self)
{
  g_return_val_if_fail (SW_IS_CLIENT (self), NULL);

  return (const char * const *) self->extras;
}
