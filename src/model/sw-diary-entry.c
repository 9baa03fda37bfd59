/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A day of one item as the client reports it. */
#include "config.h"

#include "sw-diary-entry.h"

#include "sw-fields.h"

#define MOST_SETS 20
#define MOST_REPETITIONS 200
#define MOST_RATING 10

/* The strings and numbers come first, each kind together, so that one line serves all of a kind. */
enum
{
  PROP_0,
  PROP_DATE,
  PROP_ITEM,
  PROP_EXERCISE,
  PROP_DOSE_LINE,
  PROP_NOTE,
  PROP_SETS,
  PROP_REPETITIONS,
  PROP_EFFORT,
  PROP_PAIN_BEFORE,
  PROP_PAIN_DURING,
  PROP_PAIN_AFTER,
  PROP_SETTLED,
  PROP_CONTROL_LOST,
  PROP_EXTRAS,
  N_PROPS,
};

#define N_STRINGS (PROP_NOTE - PROP_DATE + 1)
#define N_NUMBERS (PROP_PAIN_AFTER - PROP_SETS + 1)

struct _SwDiaryEntry
{
  GObject parent_instance;

  char *strings[N_STRINGS]; /* from PROP_DATE on */
  int numbers[N_NUMBERS];   /* from PROP_SETS on */
  int settled;
  int control_lost;
  char **extras;
};

G_DEFINE_FINAL_TYPE (SwDiaryEntry, sw_diary_entry, G_TYPE_OBJECT)

static GParamSpec *properties[N_PROPS];

static void
sw_diary_entry_get_property (GObject    *object,
                             guint       property_id,
                             GValue     *value,
                             GParamSpec *pspec)
{
  SwDiaryEntry *self = SW_DIARY_ENTRY (object);

  if (property_id >= PROP_DATE && property_id <= PROP_NOTE)
    g_value_set_string (value, self->strings[property_id - PROP_DATE]);
  else if (property_id >= PROP_SETS && property_id <= PROP_PAIN_AFTER)
    g_value_set_int (value, self->numbers[property_id - PROP_SETS]);
  else if (property_id == PROP_SETTLED)
    g_value_set_enum (value, self->settled);
  else if (property_id == PROP_CONTROL_LOST)
    g_value_set_boolean (value, self->control_lost);
  else if (property_id == PROP_EXTRAS)
    g_value_set_boxed (value, self->extras);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property_id, pspec);
}

static void
sw_diary_entry_set_property (GObject      *object,
                             guint         property_id,
                             const GValue *value,
                             GParamSpec   *pspec)
{
  SwDiaryEntry *self = SW_DIARY_ENTRY (object);
  gboolean changed = FALSE;

  if (property_id >= PROP_DATE && property_id <= PROP_NOTE)
    changed = sw_field_set_string (&self->strings[property_id - PROP_DATE], g_value_get_string (value));
  else if (property_id >= PROP_SETS && property_id <= PROP_PAIN_AFTER)
    changed = sw_field_set_int (&self->numbers[property_id - PROP_SETS], g_value_get_int (value));
  else if (property_id == PROP_SETTLED)
    changed = sw_field_set_int (&self->settled, g_value_get_enum (value));
  else if (property_id == PROP_CONTROL_LOST)
    changed = sw_field_set_int (&self->control_lost, g_value_get_boolean (value));
  else if (property_id == PROP_EXTRAS)
    changed = sw_field_set_strv (&self->extras, g_value_get_boxed (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property_id, pspec);

  if (changed)
    g_object_notify_by_pspec (object, pspec);
}

static void
sw_diary_entry_finalize (GObject *object)
{
  SwDiaryEntry *self = SW_DIARY_ENTRY (object);

  for (int i = 0; i < N_STRINGS; i++)
    g_free (self->strings[i]);
  g_strfreev (self->extras);

  G_OBJECT_CLASS (sw_diary_entry_parent_class)->finalize (object);
}

static void
sw_diary_entry_class_init (SwDiaryEntryClass *klass)
{
  static const char * const string_names[N_STRINGS] = { "date", "item", "exercise", "dose-line", "note" };
  static const struct
  {
    const char *name;
    int most;
  } number_names[N_NUMBERS] = {
    { "sets", MOST_SETS },          { "repetitions", MOST_REPETITIONS }, { "effort", MOST_RATING },
    { "pain-before", MOST_RATING }, { "pain-during", MOST_RATING },      { "pain-after", MOST_RATING },
  };
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GParamFlags flags = G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_diary_entry_get_property;
  object_class->set_property = sw_diary_entry_set_property;
  object_class->finalize = sw_diary_entry_finalize;

  for (int i = 0; i < N_STRINGS; i++)
    properties[PROP_DATE + i] = g_param_spec_string (string_names[i], NULL, NULL, "", flags);
  for (int i = 0; i < N_NUMBERS; i++)
    properties[PROP_SETS + i] = g_param_spec_int (number_names[i].name, NULL, NULL, SW_DIARY_NOT_STATED,
                                                  number_names[i].most, SW_DIARY_NOT_STATED, flags);
  properties[PROP_SETTLED] = g_param_spec_enum ("settled", NULL, NULL, SW_TYPE_SETTLED, SW_SETTLED_UNKNOWN, flags);
  properties[PROP_CONTROL_LOST] = g_param_spec_boolean ("control-lost", NULL, NULL, FALSE, flags);
  properties[PROP_EXTRAS] = g_param_spec_boxed ("extras", NULL, NULL, G_TYPE_STRV, flags);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
sw_diary_entry_init (SwDiaryEntry *self)
{
  for (int i = 0; i < N_STRINGS; i++)
    sw_field_set_string (&self->strings[i], "");
  for (int i = 0; i < N_NUMBERS; i++)
    self->numbers[i] = SW_DIARY_NOT_STATED;
  sw_field_set_strv (&self->extras, NULL);
}

/**
 * sw_diary_entry_new:
 * @date: ISO 8601 day
 * @item: id of the item
 * @exercise: id of its exercise
 * @dose_line: what it asks for
 *
 * Returns: (transfer full): an entry in which nothing is stated yet
 */
SwDiaryEntry *
sw_diary_entry_new (const char *date,
                    const char *item,
                    const char *exercise,
                    const char *dose_line)
{
  return g_object_new (SW_TYPE_DIARY_ENTRY,
                       "date", date,
                       "item", item,
                       "exercise", exercise,
                       "dose-line", dose_line,
                       NULL);
}

/**
 * sw_diary_entry_copy:
 * @self: an entry
 *
 * Returns: (transfer full): an equal one of its own
 */
SwDiaryEntry *
sw_diary_entry_copy (SwDiaryEntry *self)
{
  SwDiaryEntry *copy;

  g_return_val_if_fail (SW_IS_DIARY_ENTRY (self), NULL);

  copy = g_object_new (SW_TYPE_DIARY_ENTRY, NULL);
  for (int i = 0; i < N_STRINGS; i++)
    sw_field_set_string (&copy->strings[i], self->strings[i]);
  for (int i = 0; i < N_NUMBERS; i++)
    copy->numbers[i] = self->numbers[i];
  copy->settled = self->settled;
  copy->control_lost = self->control_lost;
  sw_field_set_strv (&copy->extras, (const char * const *) self->extras);
  return copy;
}

/**
 * sw_diary_entry_get_date:
 * @self: an entry
 *
 * Returns: (transfer none): ISO 8601 day
 */
const char *
sw_diary_entry_get_date (SwDiaryEntry *self)
{
  g_return_val_if_fail (SW_IS_DIARY_ENTRY (self), NULL);

  return self->strings[PROP_DATE - PROP_DATE];
}

/**
 * sw_diary_entry_get_item:
 * @self: an entry
 *
 * Returns: (transfer none): id of the item
 */
const char *
sw_diary_entry_get_item (SwDiaryEntry *self)
{
  g_return_val_if_fail (SW_IS_DIARY_ENTRY (self), NULL);

  return self->strings[PROP_ITEM - PROP_DATE];
}

/**
 * sw_diary_entry_get_exercise:
 * @self: an entry
 *
 * Returns: (transfer none): id of the exercise the item held then
 */
const char *
sw_diary_entry_get_exercise (SwDiaryEntry *self)
{
  g_return_val_if_fail (SW_IS_DIARY_ENTRY (self), NULL);

  return self->strings[PROP_EXERCISE - PROP_DATE];
}

/**
 * sw_diary_entry_get_dose_line:
 * @self: an entry
 *
 * Returns: (transfer none): the dose it asked for then, as sw_dose_to_line() writes it
 */
const char *
sw_diary_entry_get_dose_line (SwDiaryEntry *self)
{
  g_return_val_if_fail (SW_IS_DIARY_ENTRY (self), NULL);

  return self->strings[PROP_DOSE_LINE - PROP_DATE];
}

/**
 * sw_diary_entry_get_note:
 * @self: an entry
 *
 * Returns: (transfer none): words of the client or the therapist
 */
const char *
sw_diary_entry_get_note (SwDiaryEntry *self)
{
  g_return_val_if_fail (SW_IS_DIARY_ENTRY (self), NULL);

  return self->strings[PROP_NOTE - PROP_DATE];
}

/**
 * sw_diary_entry_get_sets:
 * @self: an entry
 *
 * Returns: sets that were done, or %SW_DIARY_NOT_STATED
 */
int
sw_diary_entry_get_sets (SwDiaryEntry *self)
{
  g_return_val_if_fail (SW_IS_DIARY_ENTRY (self), SW_DIARY_NOT_STATED);

  return self->numbers[PROP_SETS - PROP_SETS];
}

/**
 * sw_diary_entry_get_repetitions:
 * @self: an entry
 *
 * Returns: repetitions in the last set, or %SW_DIARY_NOT_STATED
 */
int
sw_diary_entry_get_repetitions (SwDiaryEntry *self)
{
  g_return_val_if_fail (SW_IS_DIARY_ENTRY (self), SW_DIARY_NOT_STATED);

  return self->numbers[PROP_REPETITIONS - PROP_SETS];
}

/**
 * sw_diary_entry_get_effort:
 * @self: an entry
 *
 * Returns: how hard it was, 0..10, or %SW_DIARY_NOT_STATED
 */
int
sw_diary_entry_get_effort (SwDiaryEntry *self)
{
  g_return_val_if_fail (SW_IS_DIARY_ENTRY (self), SW_DIARY_NOT_STATED);

  return self->numbers[PROP_EFFORT - PROP_SETS];
}

/**
 * sw_diary_entry_get_pain_before:
 * @self: an entry
 *
 * Returns: pain before, 0..10, or %SW_DIARY_NOT_STATED
 */
int
sw_diary_entry_get_pain_before (SwDiaryEntry *self)
{
  g_return_val_if_fail (SW_IS_DIARY_ENTRY (self), SW_DIARY_NOT_STATED);

  return self->numbers[PROP_PAIN_BEFORE - PROP_SETS];
}

/**
 * sw_diary_entry_get_pain_during:
 * @self: an entry
 *
 * Returns: pain during, 0..10, or %SW_DIARY_NOT_STATED
 */
int
sw_diary_entry_get_pain_during (SwDiaryEntry *self)
{
  g_return_val_if_fail (SW_IS_DIARY_ENTRY (self), SW_DIARY_NOT_STATED);

  return self->numbers[PROP_PAIN_DURING - PROP_SETS];
}

/**
 * sw_diary_entry_get_pain_after:
 * @self: an entry
 *
 * Returns: pain after, 0..10, or %SW_DIARY_NOT_STATED
 */
int
sw_diary_entry_get_pain_after (SwDiaryEntry *self)
{
  g_return_val_if_fail (SW_IS_DIARY_ENTRY (self), SW_DIARY_NOT_STATED);

  return self->numbers[PROP_PAIN_AFTER - PROP_SETS];
}

/**
 * sw_diary_entry_get_settled:
 * @self: an entry
 *
 * Returns: whether pain was back to the usual by the next morning
 */
SwSettled
sw_diary_entry_get_settled (SwDiaryEntry *self)
{
  g_return_val_if_fail (SW_IS_DIARY_ENTRY (self), SW_SETTLED_UNKNOWN);

  return (SwSettled) self->settled;
}

/**
 * sw_diary_entry_get_control_lost:
 * @self: an entry
 *
 * Returns: whether it could not be done the way it is shown
 */
gboolean
sw_diary_entry_get_control_lost (SwDiaryEntry *self)
{
  g_return_val_if_fail (SW_IS_DIARY_ENTRY (self), FALSE);

  return self->control_lost;
}

/**
 * sw_diary_entry_is_blank:
 * @self: an entry
 *
 * Returns: whether it states nothing, so that it need not be kept
 */
gboolean
sw_diary_entry_is_blank (SwDiaryEntry *self)
{
  g_return_val_if_fail (SW_IS_DIARY_ENTRY (self), TRUE);

  for (int i = 0; i < N_NUMBERS; i++)
    {
      if (self->numbers[i] != SW_DIARY_NOT_STATED)
        return FALSE;
    }

  return self->settled == SW_SETTLED_UNKNOWN && !self->control_lost
         && *self->strings[PROP_NOTE - PROP_DATE] == '\0' && self->extras[0] == NULL;
}

/**
 * sw_diary_entry_get_extras:
 * @self: an entry
 *
 * Returns: (transfer none) (array zero-terminated=1): unknown XML, kept; never NULL
 */
const char * const *
sw_diary_entry_get_extras (SwDiaryEntry *self)
{
  g_return_val_if_fail (SW_IS_DIARY_ENTRY (self), NULL);

  return (const char * const *) self->extras;
}
