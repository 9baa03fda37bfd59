/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One thing to do in a section: an exercise with its dose, a rest, a circuit or a self-check. */
#include "config.h"

#include "sw-item.h"

#include "sw-fields.h"

struct _SwItem
{
  GObject parent_instance;

  int kind;
  char *id;
  SwExercise *exercise;
  SwDose dose;
  char *note;
  char *title;
  int rest_s;
  int rounds;
  GListStore *items;
  int measure;
  int better;
  gboolean pinned;
  char *after;
  char *test;
  char *pictured;
  char **extras;
};

G_DEFINE_FINAL_TYPE (SwItem, sw_item, G_TYPE_OBJECT)

enum
{
  PROP_0,
  PROP_KIND,
  PROP_ID,
  PROP_EXERCISE,
  PROP_DOSE,
  PROP_NOTE,
  PROP_TITLE,
  PROP_REST_SECONDS,
  PROP_ROUNDS,
  PROP_ITEMS,
  PROP_MEASURE,
  PROP_BETTER,
  PROP_PINNED,
  PROP_AFTER,
  PROP_TEST,
  PROP_PICTURED,
  PROP_EXTRAS,
  N_PROPS,
};

static GParamSpec *properties[N_PROPS];

/* Random rather than counted: an id must not come back after its item was removed, for answers to findings
 * and what the client reports are kept by id. Fifty bits and a letter, since an XML id begins with one. */
static char *
new_id (void)
{
  static const char letters[] = "abcdefghijkmnpqrstuvwxyz23456789";
  char id[12] = "i";

  for (guint i = 1; i < sizeof id - 1; i++)
    id[i] = letters[g_random_int_range (0, (gint32) sizeof letters - 1)];

  return g_strdup (id);
}

static void
sw_item_get_property (GObject    *object,
                      guint       property_id,
                      GValue     *value,
                      GParamSpec *pspec)
{
  SwItem *self = SW_ITEM (object);

  switch (property_id)
    {
    case PROP_KIND:
      g_value_set_enum (value, self->kind);
      break;
    case PROP_ID:
      g_value_set_string (value, self->id);
      break;
    case PROP_EXERCISE:
      g_value_set_object (value, self->exercise);
      break;
    case PROP_DOSE:
      g_value_set_boxed (value, &self->dose);
      break;
    case PROP_NOTE:
      g_value_set_string (value, self->note);
      break;
    case PROP_TITLE:
      g_value_set_string (value, self->title);
      break;
    case PROP_REST_SECONDS:
      g_value_set_int (value, self->rest_s);
      break;
    case PROP_ROUNDS:
      g_value_set_int (value, self->rounds);
      break;
    case PROP_ITEMS:
      g_value_set_object (value, self->items);
      break;
    case PROP_MEASURE:
      g_value_set_enum (value, self->measure);
      break;
    case PROP_BETTER:
      g_value_set_enum (value, self->better);
      break;
    case PROP_PINNED:
      g_value_set_boolean (value, self->pinned);
      break;
    case PROP_AFTER:
      g_value_set_string (value, self->after);
      break;
    case PROP_TEST:
      g_value_set_string (value, self->test);
      break;
    case PROP_PICTURED:
      g_value_set_string (value, self->pictured);
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
set_dose (SwItem       *self,
          const SwDose *dose)
{
  if (dose == NULL || sw_dose_equal (&self->dose, dose))
    return FALSE;

  self->dose = *dose;
  return TRUE;
}

static void
sw_item_set_property (GObject      *object,
                      guint         property_id,
                      const GValue *value,
                      GParamSpec   *pspec)
{
  SwItem *self = SW_ITEM (object);
  gboolean changed = FALSE;

  switch (property_id)
    {
    case PROP_KIND:
      self->kind = g_value_get_enum (value);
      break;
    case PROP_ID:
      self->id = g_value_dup_string (value);
      break;
    case PROP_EXERCISE:
      changed = g_set_object (&self->exercise, g_value_get_object (value));
      break;
    case PROP_DOSE:
      changed = set_dose (self, g_value_get_boxed (value));
      break;
    case PROP_NOTE:
      changed = sw_field_set_string (&self->note, g_value_get_string (value));
      break;
    case PROP_TITLE:
      changed = sw_field_set_string (&self->title, g_value_get_string (value));
      break;
    case PROP_REST_SECONDS:
      changed = sw_field_set_int (&self->rest_s, g_value_get_int (value));
      break;
    case PROP_ROUNDS:
      changed = sw_field_set_int (&self->rounds, g_value_get_int (value));
      break;
    case PROP_MEASURE:
      changed = sw_field_set_int (&self->measure, g_value_get_enum (value));
      break;
    case PROP_BETTER:
      changed = sw_field_set_int (&self->better, g_value_get_enum (value));
      break;
    case PROP_PINNED:
      changed = sw_field_set_int (&self->pinned, g_value_get_boolean (value));
      break;
    case PROP_AFTER:
      changed = sw_field_set_string (&self->after, g_value_get_string (value));
      break;
    case PROP_TEST:
      changed = sw_field_set_string (&self->test, g_value_get_string (value));
      break;
    case PROP_PICTURED:
      changed = sw_field_set_string (&self->pictured, g_value_get_string (value));
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
sw_item_constructed (GObject *object)
{
  SwItem *self = SW_ITEM (object);

  G_OBJECT_CLASS (sw_item_parent_class)->constructed (object);

  if (self->id == NULL)
    self->id = new_id ();
}

static void
sw_item_dispose (GObject *object)
{
  SwItem *self = SW_ITEM (object);

  g_clear_object (&self->exercise);

  G_OBJECT_CLASS (sw_item_parent_class)->dispose (object);
}

static void
sw_item_finalize (GObject *object)
{
  SwItem *self = SW_ITEM (object);

  g_free (self->id);
  g_free (self->note);
  g_free (self->title);
  g_free (self->after);
  g_free (self->test);
  g_free (self->pictured);
  g_object_unref (self->items);
  g_strfreev (self->extras);

  G_OBJECT_CLASS (sw_item_parent_class)->finalize (object);
}

static void
sw_item_class_init (SwItemClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GParamFlags flags = G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;
  GParamFlags at_birth = G_PARAM_READWRITE | G_PARAM_CONSTRUCT_ONLY | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_item_get_property;
  object_class->set_property = sw_item_set_property;
  object_class->constructed = sw_item_constructed;
  object_class->dispose = sw_item_dispose;
  object_class->finalize = sw_item_finalize;

  properties[PROP_KIND] = g_param_spec_enum ("kind", NULL, NULL, SW_TYPE_ITEM_KIND,
                                             SW_ITEM_EXERCISE, at_birth);
  properties[PROP_ID] = g_param_spec_string ("id", NULL, NULL, NULL, at_birth);
  properties[PROP_EXERCISE] = g_param_spec_object ("exercise", NULL, NULL, SW_TYPE_EXERCISE, flags);
  properties[PROP_DOSE] = g_param_spec_boxed ("dose", NULL, NULL, SW_TYPE_DOSE, flags);
  properties[PROP_NOTE] = g_param_spec_string ("note", NULL, NULL, "", flags);
  properties[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, "", flags);
  properties[PROP_REST_SECONDS] = g_param_spec_int ("rest-seconds", NULL, NULL, 0, 900, 0, flags);
  properties[PROP_ROUNDS] = g_param_spec_int ("rounds", NULL, NULL, 1, 20, 1, flags);
  properties[PROP_ITEMS] = g_param_spec_object ("items", NULL, NULL, G_TYPE_LIST_STORE,
                                                G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  properties[PROP_MEASURE] = g_param_spec_enum ("measure", NULL, NULL, SW_TYPE_MEASURE,
                                                SW_MEASURE_SECONDS, flags);
  properties[PROP_BETTER] = g_param_spec_enum ("better", NULL, NULL, SW_TYPE_BETTER,
                                               SW_BETTER_NOT_STATED, flags);
  properties[PROP_PINNED] = g_param_spec_boolean ("pinned", NULL, NULL, FALSE, flags);
  properties[PROP_AFTER] = g_param_spec_string ("after", NULL, NULL, "", flags);
  properties[PROP_TEST] = g_param_spec_string ("test", NULL, NULL, "", flags);
  properties[PROP_PICTURED] = g_param_spec_string ("pictured", NULL, NULL, "", flags);
  properties[PROP_EXTRAS] = g_param_spec_boxed ("extras", NULL, NULL, G_TYPE_STRV, flags);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
sw_item_init (SwItem *self)
{
  self->rounds = 1;
  self->items = g_list_store_new (SW_TYPE_ITEM);
  sw_dose_init (&self->dose);
  sw_field_set_string (&self->note, "");
  sw_field_set_string (&self->title, "");
  sw_field_set_string (&self->after, "");
  sw_field_set_string (&self->test, "");
  sw_field_set_string (&self->pictured, "");
  sw_field_set_strv (&self->extras, NULL);
}

/**
 * sw_item_new:
 * @kind: what it is, for good
 * @id: (nullable): its id, unique in the programme; NULL makes a new one
 *
 * Returns: (transfer full): an item with a neutral dose and nothing else stated
 */
SwItem *
sw_item_new (SwItemKind  kind,
             const char *id)
{
  return g_object_new (SW_TYPE_ITEM, "kind", kind, "id", id, NULL);
}

/**
 * sw_item_new_for_exercise:
 * @exercise: the exercise
 * @id: (nullable): its id, unique in the programme; NULL makes a new one
 *
 * Returns: (transfer full): an exercise item with the exercise's default dose
 */
SwItem *
sw_item_new_for_exercise (SwExercise *exercise,
                          const char *id)
{
  SwItem *self;

  g_return_val_if_fail (SW_IS_EXERCISE (exercise), NULL);

  self = sw_item_new (SW_ITEM_EXERCISE, id);
  self->exercise = g_object_ref (exercise);
  self->dose = sw_exercise_get_facts (exercise)->dose;
  return self;
}

/**
 * sw_item_copy:
 * @self: an item
 * @new_ids: whether the copy, and a circuit's members, get new ids; a snapshot keeps them, a duplicate
 *   in the same programme must not
 *
 * Returns: (transfer full): a copy that shares nothing but the exercise, which never changes
 */
SwItem *
sw_item_copy (SwItem   *self,
              gboolean  new_ids)
{
  SwItem *copy;

  g_return_val_if_fail (SW_IS_ITEM (self), NULL);

  copy = sw_item_new ((SwItemKind) self->kind, new_ids ? NULL : self->id);
  g_set_object (&copy->exercise, self->exercise);
  copy->dose = self->dose;
  copy->rest_s = self->rest_s;
  copy->rounds = self->rounds;
  copy->measure = self->measure;
  copy->better = self->better;
  copy->pinned = self->pinned;
  sw_field_set_string (&copy->pictured, self->pictured);
  sw_field_set_string (&copy->note, self->note);
  sw_field_set_string (&copy->title, self->title);
  if (!new_ids)
    sw_field_set_string (&copy->after, self->after);
  sw_field_set_string (&copy->test, self->test);
  sw_field_set_strv (&copy->extras, (const char * const *) self->extras);

  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (self->items)); i++)
    {
      g_autoptr (SwItem) member = g_list_model_get_item (G_LIST_MODEL (self->items), i);
      g_autoptr (SwItem) member_copy = sw_item_copy (member, new_ids);

      g_list_store_append (copy->items, member_copy);
    }

  return copy;
}

/**
 * sw_item_dup_name:
 * @self: an item
 * @language: (nullable): BCP 47 tag
 *
 * Returns: (transfer full): the exercise's name in @language, else the item's title; "" when it has none
 */
char *
sw_item_dup_name (SwItem     *self,
                  const char *language)
{
  g_return_val_if_fail (SW_IS_ITEM (self), NULL);

  if (self->exercise != NULL)
    return g_strdup (sw_exercise_get_text (self->exercise, language)->name);

  return g_strdup (self->title);
}

/**
 * sw_item_get_kind:
 * @self: an item
 *
 * Returns: what it is
 */
SwItemKind
sw_item_get_kind (SwItem *self)
{
  g_return_val_if_fail (SW_IS_ITEM (self), SW_ITEM_EXERCISE);

  return (SwItemKind) self->kind;
}

/**
 * sw_item_get_id:
 * @self: an item
 *
 * Returns: (transfer none): its id, unique in the programme
 */
const char *
sw_item_get_id (SwItem *self)
{
  g_return_val_if_fail (SW_IS_ITEM (self), NULL);

  return self->id;
}

/**
 * sw_item_get_exercise:
 * @self: an item
 *
 * Returns: (transfer none) (nullable): the snapshot of the exercise; NULL for other kinds of item
 */
SwExercise *
sw_item_get_exercise (SwItem *self)
{
  g_return_val_if_fail (SW_IS_ITEM (self), NULL);

  return self->exercise;
}

/**
 * sw_item_get_dose:
 * @self: an item
 *
 * Returns: (transfer none): the dose, valid until it is changed; of a self-check only the side counts
 */
const SwDose *
sw_item_get_dose (SwItem *self)
{
  g_return_val_if_fail (SW_IS_ITEM (self), NULL);

  return &self->dose;
}

/**
 * sw_item_get_note:
 * @self: an item
 *
 * Returns: (transfer none): a note to the client, "" when none
 */
const char *
sw_item_get_note (SwItem *self)
{
  g_return_val_if_fail (SW_IS_ITEM (self), NULL);

  return self->note;
}

/**
 * sw_item_get_title:
 * @self: an item
 *
 * Returns: (transfer none): what to rest for, the circuit's name or the check's question
 */
const char *
sw_item_get_title (SwItem *self)
{
  g_return_val_if_fail (SW_IS_ITEM (self), NULL);

  return self->title;
}

/**
 * sw_item_get_rest_s:
 * @self: an item
 *
 * Returns: seconds of a rest, or between a circuit's rounds, 0..900
 */
int
sw_item_get_rest_s (SwItem *self)
{
  g_return_val_if_fail (SW_IS_ITEM (self), 0);

  return self->rest_s;
}

/**
 * sw_item_get_rounds:
 * @self: an item
 *
 * Returns: how often a circuit is gone through, 1..20
 */
int
sw_item_get_rounds (SwItem *self)
{
  g_return_val_if_fail (SW_IS_ITEM (self), 1);

  return self->rounds;
}

/**
 * sw_item_get_items:
 * @self: an item
 *
 * Returns: (transfer none) (element-type SwItem): a circuit's members; empty for other kinds
 */
GListStore *
sw_item_get_items (SwItem *self)
{
  g_return_val_if_fail (SW_IS_ITEM (self), NULL);

  return self->items;
}

/**
 * sw_item_get_measure:
 * @self: an item
 *
 * Returns: what a self-check is counted in
 */
SwMeasure
sw_item_get_measure (SwItem *self)
{
  g_return_val_if_fail (SW_IS_ITEM (self), SW_MEASURE_SECONDS);

  return (SwMeasure) self->measure;
}

/**
 * sw_item_get_better:
 * @self: an item
 *
 * Returns: which result of a self-check is the better one
 */
SwBetter
sw_item_get_better (SwItem *self)
{
  g_return_val_if_fail (SW_IS_ITEM (self), SW_BETTER_NOT_STATED);

  return (SwBetter) self->better;
}

/**
 * sw_item_get_pinned:
 * @self: an item
 *
 * Returns: whether it keeps its place when its section is put in order
 */
gboolean
sw_item_get_pinned (SwItem *self)
{
  g_return_val_if_fail (SW_IS_ITEM (self), FALSE);

  return self->pinned;
}

/**
 * sw_item_get_after:
 * @self: an item
 *
 * Returns: (transfer none): id of the item it must come after when its section is put in order; "" for none
 */
const char *
sw_item_get_after (SwItem *self)
{
  g_return_val_if_fail (SW_IS_ITEM (self), NULL);

  return self->after;
}

/**
 * sw_item_get_test:
 * @self: an item
 *
 * Returns: (transfer none): the test by which its load and its extra sets are found, as the measurements name it; "" for
 *   none
 */
const char *
sw_item_get_test (SwItem *self)
{
  g_return_val_if_fail (SW_IS_ITEM (self), NULL);

  return self->test;
}

/**
 * sw_item_get_pictured:
 * @self: an item
 *
 * Returns: (transfer none): id of the exercise whose picture a self-check shows; "" for none
 */
const char *
sw_item_get_pictured (SwItem *self)
{
  g_return_val_if_fail (SW_IS_ITEM (self), NULL);

  return self->pictured;
}

/**
 * sw_item_get_extras:
 * @self: an item
 *
 * Returns: (transfer none) (array zero-terminated=1): unknown XML, kept; never NULL
 */
const char * const *
sw_item_get_extras (SwItem *self)
{
  g_return_val_if_fail (SW_IS_ITEM (self), NULL);

  return (const char * const *) self->extras;
}
