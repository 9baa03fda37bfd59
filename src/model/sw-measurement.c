/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A test's value on a day, per side or for both sides together. */
#include "config.h"

#include <math.h>

#include "sw-measurement.h"

#include "sw-fields.h"

struct _SwMeasurement
{
  GObject parent_instance;

  char *date;
  char *test;
  int measure;
  int repetitions;
  int better;
  double left;
  double right;
  double both;
  char **extras;
};

G_DEFINE_FINAL_TYPE (SwMeasurement, sw_measurement, G_TYPE_OBJECT)

enum
{
  PROP_0,
  PROP_DATE,
  PROP_TEST,
  PROP_MEASURE,
  PROP_REPETITIONS,
  PROP_BETTER,
  PROP_LEFT,
  PROP_RIGHT,
  PROP_BOTH,
  PROP_EXTRAS,
  N_PROPS,
};

static GParamSpec *properties[N_PROPS];

static void
sw_measurement_get_property (GObject    *object,
                             guint       property_id,
                             GValue     *value,
                             GParamSpec *pspec)
{
  SwMeasurement *self = SW_MEASUREMENT (object);

  switch (property_id)
    {
    case PROP_DATE:
      g_value_set_string (value, self->date);
      break;
    case PROP_TEST:
      g_value_set_string (value, self->test);
      break;
    case PROP_MEASURE:
      g_value_set_enum (value, self->measure);
      break;
    case PROP_REPETITIONS:
      g_value_set_int (value, self->repetitions);
      break;
    case PROP_BETTER:
      g_value_set_enum (value, self->better);
      break;
    case PROP_LEFT:
      g_value_set_double (value, self->left);
      break;
    case PROP_RIGHT:
      g_value_set_double (value, self->right);
      break;
    case PROP_BOTH:
      g_value_set_double (value, self->both);
      break;
    case PROP_EXTRAS:
      g_value_set_boxed (value, self->extras);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property_id, pspec);
      break;
    }
}

/* NaN says "not taken", and is equal to itself here. */
static gboolean
set_value (double *field,
           double  value)
{
  if ((isnan (*field) && isnan (value)) || (*field >= value && *field <= value))
    return FALSE;

  *field = value;
  return TRUE;
}

static void
sw_measurement_set_property (GObject      *object,
                             guint         property_id,
                             const GValue *value,
                             GParamSpec   *pspec)
{
  SwMeasurement *self = SW_MEASUREMENT (object);
  gboolean changed = FALSE;

  switch (property_id)
    {
    case PROP_DATE:
      changed = sw_field_set_string (&self->date, g_value_get_string (value));
      break;
    case PROP_TEST:
      changed = sw_field_set_string (&self->test, g_value_get_string (value));
      break;
    case PROP_MEASURE:
      changed = sw_field_set_int (&self->measure, g_value_get_enum (value));
      break;
    case PROP_REPETITIONS:
      changed = sw_field_set_int (&self->repetitions, g_value_get_int (value));
      break;
    case PROP_BETTER:
      changed = sw_field_set_int (&self->better, g_value_get_enum (value));
      break;
    case PROP_LEFT:
      changed = set_value (&self->left, g_value_get_double (value));
      break;
    case PROP_RIGHT:
      changed = set_value (&self->right, g_value_get_double (value));
      break;
    case PROP_BOTH:
      changed = set_value (&self->both, g_value_get_double (value));
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
sw_measurement_finalize (GObject *object)
{
  SwMeasurement *self = SW_MEASUREMENT (object);

  g_free (self->date);
  g_free (self->test);
  g_strfreev (self->extras);

  G_OBJECT_CLASS (sw_measurement_parent_class)->finalize (object);
}

static void
sw_measurement_class_init (SwMeasurementClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GParamFlags flags = G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;
  GParamFlags lax = flags | G_PARAM_LAX_VALIDATION; /* else NaN counts as out of range */

  object_class->get_property = sw_measurement_get_property;
  object_class->set_property = sw_measurement_set_property;
  object_class->finalize = sw_measurement_finalize;

  properties[PROP_DATE] = g_param_spec_string ("date", NULL, NULL, "", flags);
  properties[PROP_TEST] = g_param_spec_string ("test", NULL, NULL, "", flags);
  properties[PROP_MEASURE] = g_param_spec_enum ("measure", NULL, NULL, SW_TYPE_MEASURE,
                                                SW_MEASURE_SECONDS, flags);
  properties[PROP_REPETITIONS] = g_param_spec_int ("repetitions", NULL, NULL, 0, SW_MEASUREMENT_MOST_REPETITIONS, 0,
                                                   flags);
  properties[PROP_BETTER] = g_param_spec_enum ("better", NULL, NULL, SW_TYPE_BETTER, SW_BETTER_NOT_STATED, flags);
  properties[PROP_LEFT] = g_param_spec_double ("left", NULL, NULL, -G_MAXDOUBLE, G_MAXDOUBLE, 0.0, lax);
  properties[PROP_RIGHT] = g_param_spec_double ("right", NULL, NULL, -G_MAXDOUBLE, G_MAXDOUBLE, 0.0, lax);
  properties[PROP_BOTH] = g_param_spec_double ("both", NULL, NULL, -G_MAXDOUBLE, G_MAXDOUBLE, 0.0, lax);
  properties[PROP_EXTRAS] = g_param_spec_boxed ("extras", NULL, NULL, G_TYPE_STRV, flags);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
sw_measurement_init (SwMeasurement *self)
{
  self->left = NAN;
  self->right = NAN;
  self->both = NAN;
  sw_field_set_string (&self->date, "");
  sw_field_set_string (&self->test, "");
  sw_field_set_strv (&self->extras, NULL);
}

/**
 * sw_measurement_new:
 * @date: ISO 8601 day
 * @test: what was tested
 * @measure: what it is counted in
 *
 * Returns: (transfer full): a measurement of which no value is taken yet
 */
SwMeasurement *
sw_measurement_new (const char *date,
                    const char *test,
                    SwMeasure   measure)
{
  return g_object_new (SW_TYPE_MEASUREMENT,
                       "date", date,
                       "test", test,
                       "measure", measure,
                       NULL);
}

/**
 * sw_measurement_copy:
 * @self: a measurement
 *
 * Returns: (transfer full): an equal one of its own
 */
SwMeasurement *
sw_measurement_copy (SwMeasurement *self)
{
  SwMeasurement *copy;

  g_return_val_if_fail (SW_IS_MEASUREMENT (self), NULL);

  copy = sw_measurement_new (self->date, self->test, (SwMeasure) self->measure);
  copy->repetitions = self->repetitions;
  copy->better = self->better;
  copy->left = self->left;
  copy->right = self->right;
  copy->both = self->both;
  sw_field_set_strv (&copy->extras, (const char * const *) self->extras);
  return copy;
}

/**
 * sw_measurement_get_date:
 * @self: a measurement
 *
 * Returns: (transfer none): the day of the test, ISO 8601
 */
const char *
sw_measurement_get_date (SwMeasurement *self)
{
  g_return_val_if_fail (SW_IS_MEASUREMENT (self), NULL);

  return self->date;
}

/**
 * sw_measurement_get_test:
 * @self: a measurement
 *
 * Returns: (transfer none): what was tested
 */
const char *
sw_measurement_get_test (SwMeasurement *self)
{
  g_return_val_if_fail (SW_IS_MEASUREMENT (self), NULL);

  return self->test;
}

/**
 * sw_measurement_get_measure:
 * @self: a measurement
 *
 * Returns: what the values are counted in
 */
SwMeasure
sw_measurement_get_measure (SwMeasurement *self)
{
  g_return_val_if_fail (SW_IS_MEASUREMENT (self), SW_MEASURE_SECONDS);

  return (SwMeasure) self->measure;
}

/**
 * sw_measurement_get_repetitions:
 * @self: a measurement
 *
 * Returns: how often the load that was measured was moved until no more was possible; 0 for one greatest effort, and
 *   where it means nothing
 */
int
sw_measurement_get_repetitions (SwMeasurement *self)
{
  g_return_val_if_fail (SW_IS_MEASUREMENT (self), 0);

  return self->repetitions;
}

/**
 * sw_measurement_get_better:
 * @self: a measurement
 *
 * Returns: which result is the better one, as far as it was stated
 */
SwBetter
sw_measurement_get_better (SwMeasurement *self)
{
  g_return_val_if_fail (SW_IS_MEASUREMENT (self), SW_BETTER_NOT_STATED);

  return (SwBetter) self->better;
}

/**
 * sw_measurement_get_left:
 * @self: a measurement
 *
 * Returns: the left side's value, or NaN when not taken
 */
double
sw_measurement_get_left (SwMeasurement *self)
{
  g_return_val_if_fail (SW_IS_MEASUREMENT (self), NAN);

  return self->left;
}

/**
 * sw_measurement_get_right:
 * @self: a measurement
 *
 * Returns: the right side's value, or NaN when not taken
 */
double
sw_measurement_get_right (SwMeasurement *self)
{
  g_return_val_if_fail (SW_IS_MEASUREMENT (self), NAN);

  return self->right;
}

/**
 * sw_measurement_get_both:
 * @self: a measurement
 *
 * Returns: the value of both sides together, or NaN when not taken
 */
double
sw_measurement_get_both (SwMeasurement *self)
{
  g_return_val_if_fail (SW_IS_MEASUREMENT (self), NAN);

  return self->both;
}

/**
 * sw_measurement_get_extras:
 * @self: a measurement
 *
 * Returns: (transfer none) (array zero-terminated=1): unknown XML, kept; never NULL
 */
const char * const *
sw_measurement_get_extras (SwMeasurement *self)
{
  g_return_val_if_fail (SW_IS_MEASUREMENT (self), NULL);

  return (const char * const *) self->extras;
}
