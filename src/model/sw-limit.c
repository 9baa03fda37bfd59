/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One limit that was set for a client, or an operation from which the weeks are counted. */
#include "config.h"

#include <math.h>

#include "sw-limit.h"

#include "sw-fields.h"

struct _SwLimit
{
  GObject parent_instance;

  int kind;
  int side;
  int region;
  int movement;
  int bearing;
  double kg;
  double from_deg;
  double to_deg;
  char *date;
  char *name;
  char *note;
  int precaution;
  char **extras;
};

G_DEFINE_FINAL_TYPE (SwLimit, sw_limit, G_TYPE_OBJECT)

enum
{
  PROP_0,
  PROP_KIND,
  PROP_SIDE,
  PROP_REGION,
  PROP_MOVEMENT,
  PROP_BEARING,
  PROP_KG,
  PROP_FROM_DEG,
  PROP_TO_DEG,
  PROP_DATE,
  PROP_NAME,
  PROP_NOTE,
  PROP_PRECAUTION,
  PROP_EXTRAS,
  N_PROPS,
};

static GParamSpec *properties[N_PROPS];

static void
sw_limit_get_property (GObject    *object,
                       guint       property_id,
                       GValue     *value,
                       GParamSpec *pspec)
{
  SwLimit *self = SW_LIMIT (object);

  switch (property_id)
    {
    case PROP_KIND:
      g_value_set_enum (value, self->kind);
      break;
    case PROP_SIDE:
      g_value_set_enum (value, self->side);
      break;
    case PROP_REGION:
      g_value_set_enum (value, self->region);
      break;
    case PROP_MOVEMENT:
      g_value_set_enum (value, self->movement);
      break;
    case PROP_BEARING:
      g_value_set_enum (value, self->bearing);
      break;
    case PROP_KG:
      g_value_set_double (value, self->kg);
      break;
    case PROP_FROM_DEG:
      g_value_set_double (value, self->from_deg);
      break;
    case PROP_TO_DEG:
      g_value_set_double (value, self->to_deg);
      break;
    case PROP_DATE:
      g_value_set_string (value, self->date);
      break;
    case PROP_NAME:
      g_value_set_string (value, self->name);
      break;
    case PROP_NOTE:
      g_value_set_string (value, self->note);
      break;
    case PROP_PRECAUTION:
      g_value_set_int (value, self->precaution);
      break;
    case PROP_EXTRAS:
      g_value_set_boxed (value, self->extras);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property_id, pspec);
      break;
    }
}

/* NaN says "not stated", and is equal to itself here. */
static gboolean
set_number (double *field,
            double  value)
{
  if ((isnan (*field) && isnan (value)) || (*field >= value && *field <= value))
    return FALSE;

  *field = value;
  return TRUE;
}

static void
sw_limit_set_property (GObject      *object,
                       guint         property_id,
                       const GValue *value,
                       GParamSpec   *pspec)
{
  SwLimit *self = SW_LIMIT (object);
  gboolean changed = FALSE;

  switch (property_id)
    {
    case PROP_KIND:
      changed = sw_field_set_int (&self->kind, g_value_get_enum (value));
      break;
    case PROP_SIDE:
      changed = sw_field_set_int (&self->side, g_value_get_enum (value));
      break;
    case PROP_REGION:
      changed = sw_field_set_int (&self->region, g_value_get_enum (value));
      break;
    case PROP_MOVEMENT:
      changed = sw_field_set_int (&self->movement, g_value_get_enum (value));
      break;
    case PROP_BEARING:
      changed = sw_field_set_int (&self->bearing, g_value_get_enum (value));
      break;
    case PROP_KG:
      changed = set_number (&self->kg, g_value_get_double (value));
      break;
    case PROP_FROM_DEG:
      changed = set_number (&self->from_deg, g_value_get_double (value));
      break;
    case PROP_TO_DEG:
      changed = set_number (&self->to_deg, g_value_get_double (value));
      break;
    case PROP_DATE:
      changed = sw_field_set_string (&self->date, g_value_get_string (value));
      break;
    case PROP_NAME:
      changed = sw_field_set_string (&self->name, g_value_get_string (value));
      break;
    case PROP_NOTE:
      changed = sw_field_set_string (&self->note, g_value_get_string (value));
      break;
    case PROP_PRECAUTION:
      changed = sw_field_set_int (&self->precaution, g_value_get_int (value));
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
sw_limit_finalize (GObject *object)
{
  SwLimit *self = SW_LIMIT (object);

  g_free (self->date);
  g_free (self->name);
  g_free (self->note);
  g_strfreev (self->extras);

  G_OBJECT_CLASS (sw_limit_parent_class)->finalize (object);
}

static void
sw_limit_class_init (SwLimitClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GParamFlags flags = G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;
  GParamFlags lax = flags | G_PARAM_LAX_VALIDATION; /* else NaN counts as out of range */

  object_class->get_property = sw_limit_get_property;
  object_class->set_property = sw_limit_set_property;
  object_class->finalize = sw_limit_finalize;

  properties[PROP_KIND] = g_param_spec_enum ("kind", NULL, NULL, SW_TYPE_LIMIT_KIND, SW_LIMIT_KIND_LOAD, flags);
  properties[PROP_SIDE] = g_param_spec_enum ("side", NULL, NULL, SW_TYPE_BODY_SIDE, SW_BODY_SIDE_NONE, flags);
  properties[PROP_REGION] = g_param_spec_enum ("region", NULL, NULL, SW_TYPE_REGION, SW_REGION_WHOLE_BODY, flags);
  properties[PROP_MOVEMENT] = g_param_spec_enum ("movement", NULL, NULL, SW_TYPE_MOVEMENT, SW_MOVEMENT_KNEE_BEND, flags);
  properties[PROP_BEARING] = g_param_spec_enum ("bearing", NULL, NULL, SW_TYPE_BEARING, SW_BEARING_NONE, flags);
  properties[PROP_KG] = g_param_spec_double ("kg", NULL, NULL, 0.0, G_MAXDOUBLE, 0.0, lax);
  properties[PROP_FROM_DEG] = g_param_spec_double ("from-deg", NULL, NULL, -G_MAXDOUBLE, G_MAXDOUBLE, 0.0, lax);
  properties[PROP_TO_DEG] = g_param_spec_double ("to-deg", NULL, NULL, -G_MAXDOUBLE, G_MAXDOUBLE, 0.0, lax);
  properties[PROP_DATE] = g_param_spec_string ("date", NULL, NULL, "", flags);
  properties[PROP_NAME] = g_param_spec_string ("name", NULL, NULL, "", flags);
  properties[PROP_NOTE] = g_param_spec_string ("note", NULL, NULL, "", flags);
  properties[PROP_PRECAUTION] = g_param_spec_int ("precaution", NULL, NULL, -1, G_MAXINT, -1, flags);
  properties[PROP_EXTRAS] = g_param_spec_boxed ("extras", NULL, NULL, G_TYPE_STRV, flags);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
sw_limit_init (SwLimit *self)
{
  self->region = SW_REGION_WHOLE_BODY;
  self->kg = NAN;
  self->from_deg = NAN;
  self->to_deg = NAN;
  self->precaution = -1;
  sw_field_set_string (&self->date, "");
  sw_field_set_string (&self->name, "");
  sw_field_set_string (&self->note, "");
  sw_field_set_strv (&self->extras, NULL);
}

/**
 * sw_limit_new:
 * @kind: what it limits
 *
 * Returns: (transfer full): a limit of which no value is stated yet
 */
SwLimit *
sw_limit_new (SwLimitKind kind)
{
  return g_object_new (SW_TYPE_LIMIT, "kind", kind, NULL);
}

/**
 * sw_limit_copy:
 * @self: a limit
 *
 * Returns: (transfer full): an equal one of its own
 */
SwLimit *
sw_limit_copy (SwLimit *self)
{
  SwLimit *copy;

  g_return_val_if_fail (SW_IS_LIMIT (self), NULL);

  copy = g_object_new (SW_TYPE_LIMIT,
                       "kind", self->kind,
                       "side", self->side,
                       "region", self->region,
                       "movement", self->movement,
                       "bearing", self->bearing,
                       "date", self->date,
                       "name", self->name,
                       "note", self->note,
                       "precaution", self->precaution,
                       "extras", self->extras,
                       NULL);
  copy->kg = self->kg;
  copy->from_deg = self->from_deg;
  copy->to_deg = self->to_deg;
  return copy;
}

/**
 * sw_limit_get_kind:
 * @self: a limit
 *
 * Returns: what it limits
 */
SwLimitKind
sw_limit_get_kind (SwLimit *self)
{
  g_return_val_if_fail (SW_IS_LIMIT (self), SW_LIMIT_KIND_LOAD);

  return (SwLimitKind) self->kind;
}

/**
 * sw_limit_get_side:
 * @self: a limit
 *
 * Returns: whose it is; none for both sides
 */
SwBodySide
sw_limit_get_side (SwLimit *self)
{
  g_return_val_if_fail (SW_IS_LIMIT (self), SW_BODY_SIDE_NONE);

  return (SwBodySide) self->side;
}

/**
 * sw_limit_get_region:
 * @self: a limit
 *
 * Returns: of a load: where it counts
 */
SwRegion
sw_limit_get_region (SwLimit *self)
{
  g_return_val_if_fail (SW_IS_LIMIT (self), SW_REGION_WHOLE_BODY);

  return (SwRegion) self->region;
}

/**
 * sw_limit_get_movement:
 * @self: a limit
 *
 * Returns: of a range: what moves
 */
SwMovement
sw_limit_get_movement (SwLimit *self)
{
  g_return_val_if_fail (SW_IS_LIMIT (self), SW_MOVEMENT_KNEE_BEND);

  return (SwMovement) self->movement;
}

/**
 * sw_limit_get_bearing:
 * @self: a limit
 *
 * Returns: of weight-bearing: how much
 */
SwBearing
sw_limit_get_bearing (SwLimit *self)
{
  g_return_val_if_fail (SW_IS_LIMIT (self), SW_BEARING_NONE);

  return (SwBearing) self->bearing;
}

/**
 * sw_limit_get_kg:
 * @self: a limit
 *
 * Returns: kilograms of load, or of weight on a leg; NaN when not stated
 */
double
sw_limit_get_kg (SwLimit *self)
{
  g_return_val_if_fail (SW_IS_LIMIT (self), NAN);

  return self->kg;
}

/**
 * sw_limit_get_from_deg:
 * @self: a limit
 *
 * Returns: the least angle allowed; NaN when not stated
 */
double
sw_limit_get_from_deg (SwLimit *self)
{
  g_return_val_if_fail (SW_IS_LIMIT (self), NAN);

  return self->from_deg;
}

/**
 * sw_limit_get_to_deg:
 * @self: a limit
 *
 * Returns: the greatest angle allowed; NaN when not stated
 */
double
sw_limit_get_to_deg (SwLimit *self)
{
  g_return_val_if_fail (SW_IS_LIMIT (self), NAN);

  return self->to_deg;
}

/**
 * sw_limit_get_date:
 * @self: a limit
 *
 * Returns: (transfer none): of an operation: its day, ISO 8601; "" when not stated
 */
const char *
sw_limit_get_date (SwLimit *self)
{
  g_return_val_if_fail (SW_IS_LIMIT (self), NULL);

  return self->date;
}

/**
 * sw_limit_get_name:
 * @self: a limit
 *
 * Returns: (transfer none): of an operation: what was done
 */
const char *
sw_limit_get_name (SwLimit *self)
{
  g_return_val_if_fail (SW_IS_LIMIT (self), NULL);

  return self->name;
}

/**
 * sw_limit_get_note:
 * @self: a limit
 *
 * Returns: (transfer none): who set the limit, and where that stands; "" when not stated
 */
const char *
sw_limit_get_note (SwLimit *self)
{
  g_return_val_if_fail (SW_IS_LIMIT (self), NULL);

  return self->note;
}

/**
 * sw_limit_get_precaution:
 * @self: a limit
 *
 * Returns: of an operation: the #SwPrecaution that goes with it, -1 for none of them
 */
int
sw_limit_get_precaution (SwLimit *self)
{
  g_return_val_if_fail (SW_IS_LIMIT (self), -1);

  return self->precaution;
}

/**
 * sw_limit_get_extras:
 * @self: a limit
 *
 * Returns: (transfer none) (array zero-terminated=1): unknown XML, kept; never NULL
 */
const char * const *
sw_limit_get_extras (SwLimit *self)
{
  g_return_val_if_fail (SW_IS_LIMIT (self), NULL);

  return (const char * const *) self->extras;
}

/**
 * sw_movement_is_sided:
 * @movement: a movement
 *
 * Returns: whether each side has a joint of its own for it; back and neck have one
 */
gboolean
sw_movement_is_sided (SwMovement movement)
{
  return movement < SW_MOVEMENT_BACK_BEND;
}

/**
 * sw_movement_goes_to_sides:
 * @movement: a movement
 *
 * Returns: whether a side says where to it goes, so that only its greatest angle is limited
 */
gboolean
sw_movement_goes_to_sides (SwMovement movement)
{
  return movement == SW_MOVEMENT_BACK_TURN || movement == SW_MOVEMENT_NECK_TURN;
}
