/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The record of a handout that was given out. */
#include "config.h"

#include "sw-issue.h"

#include "sw-fields.h"

enum
{
  PROP_0,
  PROP_DATE,
  PROP_WAY,
  PROP_HASH,
  PROP_DOSES,
  PROP_EXTRAS,
  N_PROPS,
};

struct _SwIssue
{
  GObject parent_instance;

  char *strings[PROP_EXTRAS];  /* by property; the first is not used */
  char **extras;
};

G_DEFINE_FINAL_TYPE (SwIssue, sw_issue, G_TYPE_OBJECT)

static GParamSpec *properties[N_PROPS];

static void
sw_issue_get_property (GObject    *object,
                       guint       property_id,
                       GValue     *value,
                       GParamSpec *pspec)
{
  SwIssue *self = SW_ISSUE (object);

  if (property_id == PROP_EXTRAS)
    g_value_set_boxed (value, self->extras);
  else if (property_id > PROP_0 && property_id < PROP_EXTRAS)
    g_value_set_string (value, self->strings[property_id]);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property_id, pspec);
}

static void
sw_issue_set_property (GObject      *object,
                       guint         property_id,
                       const GValue *value,
                       GParamSpec   *pspec)
{
  SwIssue *self = SW_ISSUE (object);

  if (property_id == PROP_EXTRAS)
    sw_field_set_strv (&self->extras, g_value_get_boxed (value));
  else if (property_id > PROP_0 && property_id < PROP_EXTRAS)
    sw_field_set_string (&self->strings[property_id], g_value_get_string (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property_id, pspec);
}

static void
sw_issue_finalize (GObject *object)
{
  SwIssue *self = SW_ISSUE (object);

  for (int i = 0; i < PROP_EXTRAS; i++)
    g_free (self->strings[i]);
  g_strfreev (self->extras);

  G_OBJECT_CLASS (sw_issue_parent_class)->finalize (object);
}

static void
sw_issue_class_init (SwIssueClass *klass)
{
  static const char * const names[PROP_EXTRAS] = {
    NULL, "date", "way", "hash", "doses",
  };
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = sw_issue_get_property;
  object_class->set_property = sw_issue_set_property;
  object_class->finalize = sw_issue_finalize;

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
sw_issue_init (SwIssue *self)
{
  for (int i = PROP_0 + 1; i < PROP_EXTRAS; i++)
    sw_field_set_string (&self->strings[i], "");
  sw_field_set_strv (&self->extras, NULL);
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
  return g_object_new (SW_TYPE_ISSUE,
                       "date", date,
                       "way", way,
                       "hash", hash,
                       "doses", doses,
                       "extras", extras,
                       NULL);
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

  return self->strings[PROP_DATE];
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

  return self->strings[PROP_WAY];
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

  return self->strings[PROP_HASH];
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

  return self->strings[PROP_DOSES];
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
