/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The numbers by which doses change, kept with the programme: one table, so that the ranges are said once. */
#include "config.h"

#include <string.h>

#include "sw-progression.h"

#include "sw-fields.h"

/*
 * Number:
 * @name: of the property and the attribute in the document
 * @lowest: its range's lower end
 * @highest: its range's upper end
 * @usual: what holds unless stated
 */
typedef struct
{
  const char *name;
  int lowest;
  int highest;
  int usual;
} Number;

static const Number numbers[] = {
  { "extra-repetitions", 1, 5, 2 },
  { "sessions", 2, 6, 2 },
  { "step-percent", 2, 10, 5 },
  { "step-repetitions", 1, 3, 2 },
  { "pain-limit", 0, 5, 5 },
  { "worse-by", 1, 5, 2 },
  { "ease-percent", 5, 50, 10 },
  { "weeks", 0, SW_PROGRESSION_MOST_WEEKS, 0 },
  { "first-weeks", 1, 6, 1 },
  { "last-weeks", 0, 6, 1 },
  { "step-weeks", 1, 4, 1 },
};

#define N_NUMBERS G_N_ELEMENTS (numbers)

struct _SwProgression
{
  GObject parent_instance;

  int values[N_NUMBERS];
  int steps_up;
  char **extras;
};

G_DEFINE_FINAL_TYPE (SwProgression, sw_progression, G_TYPE_OBJECT)

/* The numbers have the ids from 1 on, in the order of their table. */
enum
{
  PROP_STEPS_UP = N_NUMBERS + 1,
  PROP_EXTRAS,
  N_PROPS,
};

static GParamSpec *properties[N_PROPS];

static void
sw_progression_get_property (GObject    *object,
                             guint       property_id,
                             GValue     *value,
                             GParamSpec *pspec)
{
  SwProgression *self = SW_PROGRESSION (object);

  if (property_id >= 1 && property_id <= N_NUMBERS)
    g_value_set_int (value, self->values[property_id - 1]);
  else if (property_id == PROP_STEPS_UP)
    g_value_set_boolean (value, self->steps_up);
  else if (property_id == PROP_EXTRAS)
    g_value_set_boxed (value, self->extras);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property_id, pspec);
}

/* A plan of one week is none: it becomes the shortest there is. */
static int
make_possible (const Number *number,
               int           value)
{
  if (strcmp (number->name, "weeks") == 0 && value > 0 && value < SW_PROGRESSION_LEAST_WEEKS)
    return SW_PROGRESSION_LEAST_WEEKS;

  return CLAMP (value, number->lowest, number->highest);
}

static void
sw_progression_set_property (GObject      *object,
                             guint         property_id,
                             const GValue *value,
                             GParamSpec   *pspec)
{
  SwProgression *self = SW_PROGRESSION (object);
  gboolean changed = FALSE;

  if (property_id >= 1 && property_id <= N_NUMBERS)
    changed = sw_field_set_int (&self->values[property_id - 1],
                                make_possible (&numbers[property_id - 1], g_value_get_int (value)));
  else if (property_id == PROP_STEPS_UP)
    changed = sw_field_set_int (&self->steps_up, g_value_get_boolean (value));
  else if (property_id == PROP_EXTRAS)
    changed = sw_field_set_strv (&self->extras, g_value_get_boxed (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property_id, pspec);

  if (changed)
    g_object_notify_by_pspec (object, pspec);
}

static void
sw_progression_finalize (GObject *object)
{
  g_strfreev (SW_PROGRESSION (object)->extras);

  G_OBJECT_CLASS (sw_progression_parent_class)->finalize (object);
}

static void
sw_progression_class_init (SwProgressionClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GParamFlags flags = G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_progression_get_property;
  object_class->set_property = sw_progression_set_property;
  object_class->finalize = sw_progression_finalize;

  for (guint i = 0; i < N_NUMBERS; i++)
    properties[i + 1] = g_param_spec_int (numbers[i].name, NULL, NULL, numbers[i].lowest, numbers[i].highest,
                                          numbers[i].usual, flags | G_PARAM_LAX_VALIDATION);
  properties[PROP_STEPS_UP] = g_param_spec_boolean ("steps-up", NULL, NULL, TRUE, flags);
  properties[PROP_EXTRAS] = g_param_spec_boxed ("extras", NULL, NULL, G_TYPE_STRV, flags);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
sw_progression_init (SwProgression *self)
{
  for (guint i = 0; i < N_NUMBERS; i++)
    self->values[i] = numbers[i].usual;
  self->steps_up = TRUE;
  sw_field_set_strv (&self->extras, NULL);
}

/**
 * sw_progression_new:
 *
 * Returns: (transfer full): the usual rules, and no plan
 */
SwProgression *
sw_progression_new (void)
{
  return g_object_new (SW_TYPE_PROGRESSION, NULL);
}

/**
 * sw_progression_copy:
 * @self: rules and plan
 *
 * Returns: (transfer full): equal ones of its own
 */
SwProgression *
sw_progression_copy (SwProgression *self)
{
  SwProgression *copy;

  g_return_val_if_fail (SW_IS_PROGRESSION (self), NULL);

  copy = sw_progression_new ();
  memcpy (copy->values, self->values, sizeof self->values);
  copy->steps_up = self->steps_up;
  sw_field_set_strv (&copy->extras, (const char * const *) self->extras);
  return copy;
}

/**
 * sw_progression_get_number_names:
 *
 * Returns: (transfer none) (array zero-terminated=1): the properties that are numbers, in the order of the document
 */
const char * const *
sw_progression_get_number_names (void)
{
  static const char *names[N_NUMBERS + 1];

  for (guint i = 0; i < N_NUMBERS; i++)
    names[i] = numbers[i].name;
  return names;
}

static guint
find_number (const char *name)
{
  for (guint i = 0; i < N_NUMBERS; i++)
    {
      if (strcmp (numbers[i].name, name) == 0)
        return i;
    }

  g_return_val_if_reached (0);
}

/**
 * sw_progression_get_number:
 * @self: rules and plan
 * @name: one of sw_progression_get_number_names()
 *
 * Returns: the number
 */
int
sw_progression_get_number (SwProgression *self,
                           const char    *name)
{
  g_return_val_if_fail (SW_IS_PROGRESSION (self), 0);

  return self->values[find_number (name)];
}

/**
 * sw_progression_get_range:
 * @name: one of sw_progression_get_number_names()
 * @lowest: (out): its range's lower end
 * @highest: (out): its range's upper end
 * @usual: (out): what holds unless stated
 */
void
sw_progression_get_range (const char *name,
                          int        *lowest,
                          int        *highest,
                          int        *usual)
{
  const Number *number = &numbers[find_number (name)];

  *lowest = number->lowest;
  *highest = number->highest;
  *usual = number->usual;
}

/**
 * sw_progression_get_steps_up:
 * @self: rules and plan
 *
 * Returns: whether steps up are proposed
 */
gboolean
sw_progression_get_steps_up (SwProgression *self)
{
  g_return_val_if_fail (SW_IS_PROGRESSION (self), FALSE);

  return self->steps_up;
}

/**
 * sw_progression_is_usual:
 * @self: rules and plan
 *
 * Returns: whether all is as in a new one, so that nothing need be written
 */
gboolean
sw_progression_is_usual (SwProgression *self)
{
  g_return_val_if_fail (SW_IS_PROGRESSION (self), TRUE);

  for (guint i = 0; i < N_NUMBERS; i++)
    {
      if (self->values[i] != numbers[i].usual)
        return FALSE;
    }

  return self->steps_up && self->extras[0] == NULL;
}

/**
 * sw_progression_get_extras:
 * @self: rules and plan
 *
 * Returns: (transfer none) (array zero-terminated=1): unknown XML, kept; never NULL
 */
const char * const *
sw_progression_get_extras (SwProgression *self)
{
  g_return_val_if_fail (SW_IS_PROGRESSION (self), NULL);

  return (const char * const *) self->extras;
}
