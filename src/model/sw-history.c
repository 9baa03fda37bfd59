/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Undo and redo of everything. A step is a group of changes that are undone together. */
#include "config.h"

#include "sw-history.h"

#include "sw-change.h"

typedef struct
{
  char *label;
  guint64 mark;        /* of the state after this step; never used twice */
  GPtrArray *changes;  /* of SwChange */
} Step;

struct _SwHistory
{
  GObject parent_instance;

  GPtrArray *steps;  /* of Step, those undone included */
  guint n_done;
  guint64 last_mark;
  guint64 saved_mark;
  gboolean may_merge;

  Step *open;
  guint depth;

  /* What was last announced. */
  gboolean could_undo;
  gboolean could_redo;
  gboolean was_modified;
  char *undo_label;
  char *redo_label;
};

G_DEFINE_FINAL_TYPE (SwHistory, sw_history, G_TYPE_OBJECT)

enum
{
  PROP_0,
  PROP_CAN_UNDO,
  PROP_CAN_REDO,
  PROP_UNDO_LABEL,
  PROP_REDO_LABEL,
  PROP_MODIFIED,
  N_PROPS,
};

static GParamSpec *properties[N_PROPS];

enum
{
  SIGNAL_CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
step_free (Step *step)
{
  g_free (step->label);
  g_ptr_array_unref (step->changes);
  g_free (step);
}

static Step *
step_new (const char *label)
{
  Step *step = g_new0 (Step, 1);

  step->label = g_strdup (label != NULL ? label : "");
  step->changes = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_change_free);
  return step;
}

static void
announce (SwHistory *self)
{
  gboolean can_undo = sw_history_get_can_undo (self);
  gboolean can_redo = sw_history_get_can_redo (self);
  gboolean modified = sw_history_get_modified (self);

  g_object_freeze_notify (G_OBJECT (self));
  if (self->could_undo != can_undo)
    g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_CAN_UNDO]);
  if (self->could_redo != can_redo)
    g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_CAN_REDO]);
  if (self->was_modified != modified)
    g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_MODIFIED]);
  if (g_strcmp0 (self->undo_label, sw_history_get_undo_label (self)) != 0)
    g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_UNDO_LABEL]);
  if (g_strcmp0 (self->redo_label, sw_history_get_redo_label (self)) != 0)
    g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_REDO_LABEL]);

  self->could_undo = can_undo;
  self->could_redo = can_redo;
  self->was_modified = modified;
  g_free (self->undo_label);
  self->undo_label = g_strdup (sw_history_get_undo_label (self));
  g_free (self->redo_label);
  self->redo_label = g_strdup (sw_history_get_redo_label (self));
  g_object_thaw_notify (G_OBJECT (self));
}

/* The change of a step that is nothing but one property set, or NULL. */
static SwChange *
lone_value (Step *step)
{
  SwChange *change;

  if (step->changes->len != 1)
    return NULL;

  change = g_ptr_array_index (step->changes, 0);
  return sw_change_is_of_value (change) ? change : NULL;
}

/* Joins @step to the one before when both set the same property; together they may come to nothing. */
static gboolean
merge (SwHistory *self,
       Step      *step)
{
  SwChange *next = lone_value (step);
  Step *last_step;
  SwChange *last;

  if (!self->may_merge || self->n_done == 0 || next == NULL)
    return FALSE;

  last_step = g_ptr_array_index (self->steps, self->n_done - 1);
  last = lone_value (last_step);
  if (last == NULL || !sw_change_join (last, next))
    return FALSE;

  last_step->mark = ++self->last_mark;
  if (sw_change_is_none (last))
    {
      g_ptr_array_set_size (self->steps, (int) self->n_done - 1);
      self->n_done--;
      self->may_merge = FALSE;
    }

  step_free (step);
  return TRUE;
}

static void
close_step (SwHistory *self)
{
  Step *step = g_steal_pointer (&self->open);

  if (step->changes->len == 0)
    {
      step_free (step);
      return;
    }

  g_ptr_array_set_size (self->steps, (int) self->n_done);
  if (!merge (self, step))
    {
      step->mark = ++self->last_mark;
      g_ptr_array_add (self->steps, step);
      self->n_done++;
      self->may_merge = lone_value (step) != NULL;
    }

  announce (self);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

/* Makes the change and keeps it, in the open step or one of its own. */
static void
record (SwHistory  *self,
        const char *label,
        SwChange   *change)
{
  sw_history_begin (self, label);
  g_ptr_array_add (self->open->changes, change);
  sw_change_apply (change, TRUE);
  sw_history_end (self);
}

static void
sw_history_get_property (GObject    *object,
                         guint       property_id,
                         GValue     *value,
                         GParamSpec *pspec)
{
  SwHistory *self = SW_HISTORY (object);

  switch (property_id)
    {
    case PROP_CAN_UNDO:
      g_value_set_boolean (value, sw_history_get_can_undo (self));
      break;
    case PROP_CAN_REDO:
      g_value_set_boolean (value, sw_history_get_can_redo (self));
      break;
    case PROP_UNDO_LABEL:
      g_value_set_string (value, sw_history_get_undo_label (self));
      break;
    case PROP_REDO_LABEL:
      g_value_set_string (value, sw_history_get_redo_label (self));
      break;
    case PROP_MODIFIED:
      g_value_set_boolean (value, sw_history_get_modified (self));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property_id, pspec);
      break;
    }
}

static void
sw_history_dispose (GObject *object)
{
  SwHistory *self = SW_HISTORY (object);

  self->n_done = 0;
  g_ptr_array_set_size (self->steps, 0);
  g_clear_pointer (&self->open, step_free);

  G_OBJECT_CLASS (sw_history_parent_class)->dispose (object);
}

static void
sw_history_finalize (GObject *object)
{
  SwHistory *self = SW_HISTORY (object);

  g_ptr_array_unref (self->steps);
  g_free (self->undo_label);
  g_free (self->redo_label);

  G_OBJECT_CLASS (sw_history_parent_class)->finalize (object);
}

static void
sw_history_class_init (SwHistoryClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GParamFlags flags = G_PARAM_READABLE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_history_get_property;
  object_class->dispose = sw_history_dispose;
  object_class->finalize = sw_history_finalize;

  properties[PROP_CAN_UNDO] = g_param_spec_boolean ("can-undo", NULL, NULL, FALSE, flags);
  properties[PROP_CAN_REDO] = g_param_spec_boolean ("can-redo", NULL, NULL, FALSE, flags);
  properties[PROP_UNDO_LABEL] = g_param_spec_string ("undo-label", NULL, NULL, NULL, flags);
  properties[PROP_REDO_LABEL] = g_param_spec_string ("redo-label", NULL, NULL, NULL, flags);
  properties[PROP_MODIFIED] = g_param_spec_boolean ("modified", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, properties);

  /**
   * SwHistory::changed:
   * @self: the history
   *
   * After every edit, undo and redo; once for a group, when its outermost sw_history_end() is reached.
   */
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST,
                                          0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
sw_history_init (SwHistory *self)
{
  self->steps = g_ptr_array_new_with_free_func ((GDestroyNotify) step_free);
}

/**
 * sw_history_new:
 *
 * Returns: (transfer full): a history without steps, not modified
 */
SwHistory *
sw_history_new (void)
{
  return g_object_new (SW_TYPE_HISTORY, NULL);
}

/**
 * sw_history_begin:
 * @self: a history
 * @label: what undo will name
 *
 * Begins a group: all edits up to the matching sw_history_end() are one step. Groups may stand in each
 * other; then the outermost counts, and its label.
 */
void
sw_history_begin (SwHistory  *self,
                  const char *label)
{
  g_return_if_fail (SW_IS_HISTORY (self));

  if (self->depth++ == 0)
    self->open = step_new (label);
}

/**
 * sw_history_end:
 * @self: a history
 *
 * Ends a group. One without edits leaves no trace.
 */
void
sw_history_end (SwHistory *self)
{
  g_return_if_fail (SW_IS_HISTORY (self));
  g_return_if_fail (self->depth > 0);

  if (--self->depth == 0)
    close_step (self);
}

/**
 * sw_history_set:
 * @self: a history
 * @label: what undo will name
 * @object: (type GObject): whose property
 * @property: the property's name; readable and writable
 * @value: the new value, of the property's type
 *
 * Sets a property so that it can be undone. An equal value is no edit. Edits of one property of one object
 * in a row become one step, until sw_history_stop_merging() or an undo.
 */
void
sw_history_set (SwHistory    *self,
                const char   *label,
                gpointer      object,
                const char   *property,
                const GValue *value)
{
  GParamSpec *pspec;
  g_autoptr (SwChange) change = NULL;

  g_return_if_fail (SW_IS_HISTORY (self));
  g_return_if_fail (G_IS_OBJECT (object));
  pspec = g_object_class_find_property (G_OBJECT_GET_CLASS (object), property);
  g_return_if_fail (pspec != NULL && (pspec->flags & G_PARAM_READWRITE) == G_PARAM_READWRITE);
  g_return_if_fail (G_VALUE_HOLDS (value, pspec->value_type));

  change = sw_change_new_value (object, pspec, value);
  if (!sw_change_is_none (change))
    record (self, label, g_steal_pointer (&change));
}

/**
 * sw_history_splice:
 * @self: a history
 * @label: what undo will name
 * @list: the list to change
 * @position: where the run begins
 * @n_removals: how many objects are taken out there
 * @additions: (array length=n_additions) (nullable): objects to put there instead
 * @n_additions: how many
 *
 * Replaces a run of a list so that it can be undone. The objects themselves are kept: undo brings back the
 * very same ones.
 */
void
sw_history_splice (SwHistory  *self,
                   const char *label,
                   GListStore *list,
                   guint       position,
                   guint       n_removals,
                   gpointer   *additions,
                   guint       n_additions)
{
  g_return_if_fail (SW_IS_HISTORY (self));
  g_return_if_fail (G_IS_LIST_STORE (list));
  g_return_if_fail (position + n_removals <= g_list_model_get_n_items (G_LIST_MODEL (list)));

  if (n_removals > 0 || n_additions > 0)
    record (self, label, sw_change_new_splice (list, position, n_removals, additions, n_additions));
}

/**
 * sw_history_stop_merging:
 * @self: a history
 *
 * Makes the next edit a step of its own, for instance when a field has lost the focus.
 */
void
sw_history_stop_merging (SwHistory *self)
{
  g_return_if_fail (SW_IS_HISTORY (self));

  self->may_merge = FALSE;
}

/**
 * sw_history_undo:
 * @self: a history
 *
 * Takes back the last step; does nothing when there is none. Not within a group.
 */
void
sw_history_undo (SwHistory *self)
{
  Step *step;

  g_return_if_fail (SW_IS_HISTORY (self));
  g_return_if_fail (self->depth == 0);

  if (self->n_done == 0)
    return;

  step = g_ptr_array_index (self->steps, --self->n_done);
  for (guint i = step->changes->len; i > 0; i--)
    sw_change_apply (g_ptr_array_index (step->changes, i - 1), FALSE);

  self->may_merge = FALSE;
  announce (self);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

/**
 * sw_history_redo:
 * @self: a history
 *
 * Does again the step that was last undone; does nothing when there is none. Not within a group.
 */
void
sw_history_redo (SwHistory *self)
{
  Step *step;

  g_return_if_fail (SW_IS_HISTORY (self));
  g_return_if_fail (self->depth == 0);

  if (self->n_done == self->steps->len)
    return;

  step = g_ptr_array_index (self->steps, self->n_done++);
  for (guint i = 0; i < step->changes->len; i++)
    sw_change_apply (g_ptr_array_index (step->changes, i), TRUE);

  self->may_merge = FALSE;
  announce (self);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

/**
 * sw_history_get_can_undo:
 * @self: a history
 *
 * Returns: whether there is a step to undo
 */
gboolean
sw_history_get_can_undo (SwHistory *self)
{
  g_return_val_if_fail (SW_IS_HISTORY (self), FALSE);

  return self->n_done > 0;
}

/**
 * sw_history_get_can_redo:
 * @self: a history
 *
 * Returns: whether there is a step to redo
 */
gboolean
sw_history_get_can_redo (SwHistory *self)
{
  g_return_val_if_fail (SW_IS_HISTORY (self), FALSE);

  return self->n_done < self->steps->len;
}

/**
 * sw_history_get_undo_label:
 * @self: a history
 *
 * Returns: (transfer none) (nullable): the label of the step that undo would take back
 */
const char *
sw_history_get_undo_label (SwHistory *self)
{
  g_return_val_if_fail (SW_IS_HISTORY (self), NULL);

  return self->n_done > 0 ? ((Step *) g_ptr_array_index (self->steps, self->n_done - 1))->label : NULL;
}

/**
 * sw_history_get_redo_label:
 * @self: a history
 *
 * Returns: (transfer none) (nullable): the label of the step that redo would do again
 */
const char *
sw_history_get_redo_label (SwHistory *self)
{
  g_return_val_if_fail (SW_IS_HISTORY (self), NULL);

  return self->n_done < self->steps->len
         ? ((Step *) g_ptr_array_index (self->steps, self->n_done))->label : NULL;
}

/**
 * sw_history_get_modified:
 * @self: a history
 *
 * Returns: whether the state is another than the saved one
 */
gboolean
sw_history_get_modified (SwHistory *self)
{
  g_return_val_if_fail (SW_IS_HISTORY (self), FALSE);

  return sw_history_get_mark (self) != self->saved_mark;
}

/**
 * sw_history_get_mark:
 * @self: a history
 *
 * Names the present state. Take it together with the snapshot that is to be saved, and hand it to
 * sw_history_set_saved_mark() when the save has succeeded: edits made meanwhile are then still unsaved.
 *
 * Returns: the mark; equal marks mean the same state. 0 is the state at the beginning
 */
guint64
sw_history_get_mark (SwHistory *self)
{
  g_return_val_if_fail (SW_IS_HISTORY (self), 0);

  return self->n_done > 0 ? ((Step *) g_ptr_array_index (self->steps, self->n_done - 1))->mark : 0;
}

/**
 * sw_history_set_saved_mark:
 * @self: a history
 * @mark: from sw_history_get_mark(), or %G_MAXUINT64 when no state of this history is saved
 *
 * Says which state is the saved one. It may lie among the undone steps; once those are discarded by another
 * edit, no state is the saved one any more.
 */
void
sw_history_set_saved_mark (SwHistory *self,
                           guint64    mark)
{
  g_return_if_fail (SW_IS_HISTORY (self));

  self->saved_mark = mark;
  announce (self);
}
