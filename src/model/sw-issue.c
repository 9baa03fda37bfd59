/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The record of a handout that was given out. */
#include "config.h"

#include "sw-issue.h"

#include "sw-fields.h"

struct _SwIssue
{
  GObject parent_instance;

  char *date;
  char *way;
  char *hash;
  char *doses;
  char **extras;
};

G_DEFINE_FINAL_TYPE (SwIssue, sw_issue, G_TYPE_OBJECT)

static void
sw_issue_finalize (GObject *object)
{
  SwIssue *self = SW_ISSUE (object);

  g_free (self->date);
  g_free (self->way);
  g_free (self->hash);
  g_free (self->doses);
  g_strfreev (self->extras);

  G_OBJECT_CLASS (sw_issue_parent_class)->finalize (object);
}

static void
sw_issue_class_init (SwIssueClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = sw_issue_finalize;
}

static void
sw_issue_init (SwIssue *self)
{
  (void) self;
}

/**
 * sw_issue_new:
 * @date: (nullable): ISO 8601 day
 * @way: (nullable): "print" or "pdf"
 * @hash: (nullable): SHA-256 of the PDF, hexadecimal
 * @doses: (nullable): one dose line an item, lines
 * @extras: (nullable) (array zero-terminated=1): unknown XML to keep
 *
 * Returns: (transfer full): a new record
 */
SwIssue *
sw_issue_new (const char         *date,
              const char         *way,
              const char         *hash,
              const char         *doses,
              const char * const *extras)
{
  SwIssue *self = g_object_new (SW_TYPE_ISSUE, NULL);

  sw_field_set_string (&self->date, date);
  sw_field_set_string (&self->way, way);
  sw_field_set_string (&self->hash, hash);
  sw_field_set_string (&self->doses, doses);
  sw_field_set_strv (&self->extras, extras);
  return self;
}

/**
 * sw_issue_get_date:
 * @self: a record
 *
 * Returns: (transfer none): ISO 8601 day; "" when not stated
 */
const char *
sw_issue_get_date (SwIssue *self)
{
  g_return_val_if_fail (SW_IS_ISSUE (self), NULL);

  return self->date;
}

/**
 * sw_issue_get_way:
 * @self: a record
 *
 * Returns: (transfer none): "print" or "pdf"; "" when not stated
 */
const char *
sw_issue_get_way (SwIssue *self)
{
  g_return_val_if_fail (SW_IS_ISSUE (self), NULL);

  return self->way;
}

/**
 * sw_issue_get_hash:
 * @self: a record
 *
 * Returns: (transfer none): SHA-256 of the PDF, hexadecimal; "" when not stated
 */
const char *
sw_issue_get_hash (SwIssue *self)
{
  g_return_val_if_fail (SW_IS_ISSUE (self), NULL);

  return self->hash;
}

/**
 * sw_issue_get_doses:
 * @self: a record
 *
 * Returns: (transfer none): one dose line an item, lines; "" when not stated
 */
const char *
sw_issue_get_doses (SwIssue *self)
{
  g_return_val_if_fail (SW_IS_ISSUE (self), NULL);

  return self->doses;
}

/**
 * sw_issue_get_extras:
 * @self: a record
 *
 * Returns: (transfer none) (array zero-terminated=1): unknown XML, kept; never NULL
 */
const char * const *
sw_issue_get_extras (SwIssue *self)
{
  g_return_val_if_fail (SW_IS_ISSUE (self), NULL);

  return (const char * const *) self->extras;
}
