/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A stored reason for keeping what a finding speaks against. */
#include "config.h"

#include "sw-answer.h"

#include "sw-fields.h"

enum
{
  PROP_0,
  PROP_FINDING,
  PROP_REASON,
  PROP_DATE,
  PROP_BY,
  PROP_EXTRAS,
  N_PROPS,
};

struct _SwAnswer
{
  GObject parent_instance;

  char *strings[PROP_EXTRAS];  /* by property; the first is not used */
  char **extras;
};

G_DEFINE_FINAL_TYPE (SwAnswer, sw_answer, G_TYPE_OBJECT)

static GParamSpec *properties[N_PROPS];

static void
sw_answer_get_property (GObject    *object,
                        guint       property_id,
                        GValue     *value,
                        GParamSpec *pspec)
{
  SwAnswer *self = SW_ANSWER (object);

  if (property_id == PROP_EXTRAS)
    g_value_set_boxed (value, self->extras);
  else if (property_id > PROP_0 && property_id < PROP_EXTRAS)
    g_value_set_string (value, self->strings[property_id]);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property_id, pspec);
}

static void
sw_answer_set_property (GObject      *object,
                        guint         property_id,
                        const GValue *value,
                        GParamSpec   *pspec)
{
  SwAnswer *self = SW_ANSWER (object);

  if (property_id == PROP_EXTRAS)
    sw_field_set_strv (&self->extras, g_value_get_boxed (value));
  else if (property_id > PROP_0 && property_id < PROP_EXTRAS)
    sw_field_set_string (&self->strings[property_id], g_value_get_string (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property_id, pspec);
}

static void
sw_answer_finalize (GObject *object)
{
  SwAnswer *self = SW_ANSWER (object);

  for (int i = 0; i < PROP_EXTRAS; i++)
    g_free (self->strings[i]);
  g_strfreev (self->extras);

  G_OBJECT_CLASS (sw_answer_parent_class)->finalize (object);
}

static void
sw_answer_class_init (SwAnswerClass *klass)
{
  static const char * const names[PROP_EXTRAS] = {
    NULL, "finding", "reason", "date", "by",
  };
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = sw_answer_get_property;
  object_class->set_property = sw_answer_set_property;
  object_class->finalize = sw_answer_finalize;

  for (int i = PROP_0 + 1; i < PROP_EXTRAS; i++)
    properties[i] = g_param_spec_string (names[i], NULL, NULL, "",
                                         G_PARAM_READWRITE | G_PARAM_CONSTRUCT_ONLY
                                         | G_PARAM_STATIC_STRINGS);
  properties[PROP_EXTRAS] = g_param_spec_boxed ("extras", NULL, NULL, G_TYPE_STRV,
                                                G_PARAM_READWRITE
                                                | G_PARAM_CONSTRUCT_ONLY
                                                | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
sw_answer_init (SwAnswer *self)
{
  for (int i = PROP_0 + 1; i < PROP_EXTRAS; i++)
    sw_field_set_string (&self->strings[i], "");
  sw_field_set_strv (&self->extras, NULL);
}

/**
 * sw_answer_new:
 * @finding: (nullable): the key of the finding
 * @reason: (nullable): the clinician's reason
 * @date: (nullable): ISO 8601 day
 * @by: (nullable): who answered
 * @extras: (nullable) (array zero-terminated=1): unknown XML to keep
 *
 * Returns: (transfer full): a new answer
 */
SwAnswer *
sw_answer_new (const char         *finding,
               const char         *reason,
               const char         *date,
               const char         *by,
               const char * const *extras)
{
  return g_object_new (SW_TYPE_ANSWER,
                       "finding", finding,
                       "reason", reason,
                       "date", date,
                       "by", by,
                       "extras", extras,
                       NULL);
}

/**
 * sw_answer_get_finding:
 * @self: a answer
 *
 * Returns: (transfer none): the key of the finding; "" when not stated
 */
const char *
sw_answer_get_finding (SwAnswer *self)
{
  g_return_val_if_fail (SW_IS_ANSWER (self), NULL);

  return self->strings[PROP_FINDING];
}

/**
 * sw_answer_get_reason:
 * @self: a answer
 *
 * Returns: (transfer none): the clinician's reason; "" when not stated
 */
const char *
sw_answer_get_reason (SwAnswer *self)
{
  g_return_val_if_fail (SW_IS_ANSWER (self), NULL);

  return self->strings[PROP_REASON];
}

/**
 * sw_answer_get_date:
 * @self: a answer
 *
 * Returns: (transfer none): ISO 8601 day; "" when not stated
 */
const char *
sw_answer_get_date (SwAnswer *self)
{
  g_return_val_if_fail (SW_IS_ANSWER (self), NULL);

  return self->strings[PROP_DATE];
}

/**
 * sw_answer_get_by:
 * @self: a answer
 *
 * Returns: (transfer none): who answered; "" when not stated
 */
const char *
sw_answer_get_by (SwAnswer *self)
{
  g_return_val_if_fail (SW_IS_ANSWER (self), NULL);

  return self->strings[PROP_BY];
}

/**
 * sw_answer_get_extras:
 * @self: a answer
 *
 * Returns: (transfer none) (array zero-terminated=1): unknown XML, kept; never NULL
 */
const char * const *
sw_answer_get_extras (SwAnswer *self)
{
  g_return_val_if_fail (SW_IS_ANSWER (self), NULL);

  return (const char * const *) self->extras;
}
