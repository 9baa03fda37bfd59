/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A stored reason for keeping what a finding speaks against. */
#include "config.h"

#include "sw-answer.h"

#include "sw-fields.h"

struct _SwAnswer
{
  GObject parent_instance;

  char *finding;
  char *reason;
  char *date;
  char *by;
  char **extras;
};

G_DEFINE_FINAL_TYPE (SwAnswer, sw_answer, G_TYPE_OBJECT)

static void
sw_answer_finalize (GObject *object)
{
  SwAnswer *self = SW_ANSWER (object);

  g_free (self->finding);
  g_free (self->reason);
  g_free (self->date);
  g_free (self->by);
  g_strfreev (self->extras);

  G_OBJECT_CLASS (sw_answer_parent_class)->finalize (object);
}

static void
sw_answer_class_init (SwAnswerClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = sw_answer_finalize;
}

static void
sw_answer_init (SwAnswer *self)
{
  (void) self;
}

/**
 * sw_answer_new:
 * @finding: (nullable): the key of the finding, see #SwFinding
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
  SwAnswer *self = g_object_new (SW_TYPE_ANSWER, NULL);

  sw_field_set_string (&self->finding, finding);
  sw_field_set_string (&self->reason, reason);
  sw_field_set_string (&self->date, date);
  sw_field_set_string (&self->by, by);
  sw_field_set_strv (&self->extras, extras);
  return self;
}

/**
 * sw_answer_get_finding:
 * @self: an answer
 *
 * Returns: (transfer none): the key of the finding; "" when not stated
 */
const char *
sw_answer_get_finding (SwAnswer *self)
{
  g_return_val_if_fail (SW_IS_ANSWER (self), NULL);

  return self->finding;
}

/**
 * sw_answer_get_reason:
 * @self: an answer
 *
 * Returns: (transfer none): the clinician's reason; "" when not stated
 */
const char *
sw_answer_get_reason (SwAnswer *self)
{
  g_return_val_if_fail (SW_IS_ANSWER (self), NULL);

  return self->reason;
}

/**
 * sw_answer_get_date:
 * @self: an answer
 *
 * Returns: (transfer none): ISO 8601 day; "" when not stated
 */
const char *
sw_answer_get_date (SwAnswer *self)
{
  g_return_val_if_fail (SW_IS_ANSWER (self), NULL);

  return self->date;
}

/**
 * sw_answer_get_by:
 * @self: an answer
 *
 * Returns: (transfer none): who answered; "" when not stated
 */
const char *
sw_answer_get_by (SwAnswer *self)
{
  g_return_val_if_fail (SW_IS_ANSWER (self), NULL);

  return self->by;
}

/**
 * sw_answer_get_extras:
 * @self: an answer
 *
 * Returns: (transfer none) (array zero-terminated=1): unknown XML, kept; never NULL
 */
const char * const *
sw_answer_get_extras (SwAnswer *self)
{
  g_return_val_if_fail (SW_IS_ANSWER (self), NULL);

  return (const char * const *) self->extras;
}
