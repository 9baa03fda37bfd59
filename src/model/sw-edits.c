/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a therapist does to a programme, in terms of the two edits the history knows. Every change of a list
 * is first worked out as the whole list that is wanted; what differs becomes one splice over the smallest
 * range, so that selection and focus of everything else stay where they are. */
#include "config.h"

#include "sw-edits.h"

#include "sw-lists.h"

/* The section of @session that fits @kind: the last of that kind, else of the main work, else the last. */
static SwSection *
fitting_section (SwSession     *session,
                 SwSectionKind  kind)
{
  GListModel *sections = G_LIST_MODEL (sw_session_get_sections (session));
  guint n = g_list_model_get_n_items (sections);
  SwSectionKind wanted[] = { kind, SW_SECTION_MAIN };

  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    {
      for (guint j = n; j > 0; j--)
        {
          g_autoptr (SwSection) section = g_list_model_get_item (sections, j - 1);

          if (sw_section_get_kind (section) == wanted[i])
            return g_steal_pointer (&section);
        }
    }

  return n > 0 ? g_list_model_get_item (sections, n - 1) : NULL;
}

/**
 * sw_edit_add_exercise:
 * @history: the programme's history
 * @programme: the programme
 * @session: the session to add to
 * @exercise: what to add
 * @label: what undo will name
 *
 * Adds an item at the end of the section the exercise usually belongs in; without such a section, at the
 * end of the main work; without that, of the last section. A session without sections gets one of the
 * exercise's usual kind. When the programme already has a snapshot of the exercise, the new item uses it.
 *
 * Returns: (transfer none): the new item, with the exercise's default dose
 */
SwItem *
sw_edit_add_exercise (SwHistory   *history,
                      SwProgramme *programme,
                      SwSession   *session,
                      SwExercise  *exercise,
                      const char  *label)
{
  g_autoptr (SwSection) section = NULL;
  g_autoptr (SwItem) item = NULL;
  SwExercise *snapshot;
  SwSectionKind kind;
  gpointer addition;

  g_return_val_if_fail (SW_IS_HISTORY (history), NULL);
  g_return_val_if_fail (SW_IS_PROGRAMME (programme), NULL);
  g_return_val_if_fail (SW_IS_SESSION (session), NULL);
  g_return_val_if_fail (SW_IS_EXERCISE (exercise), NULL);

  snapshot = sw_programme_own_snapshot (programme, exercise);
  item = sw_item_new_for_exercise (snapshot, NULL);
  kind = sw_exercise_get_facts (snapshot)->section;

  sw_history_begin (history, label);
  section = fitting_section (session, kind);
  if (section == NULL)
    {
      GListStore *sections = sw_session_get_sections (session);

      section = sw_section_new (kind, NULL);
      addition = section;
      sw_history_splice (history, label, sections, 0, 0, &addition, 1);
    }
  addition = item;
  sw_history_splice (history, label, sw_section_get_items (section),
                     g_list_model_get_n_items (G_LIST_MODEL (sw_section_get_items (section))), 0,
                     &addition, 1);
  sw_history_end (history);

  return item;
}

/**
 * sw_edit_insert:
 * @history: the programme's history
 * @list: a list of the programme
 * @position: where to; beyond the end counts as the end
 * @objects: (element-type GObject): what to insert; objects of another type than the list's are left out
 * @label: what undo will name
 *
 * Inserts new objects.
 */
void
sw_edit_insert (SwHistory  *history,
                GListStore *list,
                guint       position,
                GPtrArray  *objects,
                const char *label)
{
  g_autoptr (GPtrArray) fitting = g_ptr_array_new ();
  GType type;

  g_return_if_fail (SW_IS_HISTORY (history));
  g_return_if_fail (G_IS_LIST_STORE (list));

  type = g_list_model_get_item_type (G_LIST_MODEL (list));
  for (guint i = 0; i < objects->len; i++)
    {
      if (g_type_is_a (G_OBJECT_TYPE (objects->pdata[i]), type))
        g_ptr_array_add (fitting, objects->pdata[i]);
    }

  sw_history_splice (history, label, list,
                     MIN (position, g_list_model_get_n_items (G_LIST_MODEL (list))), 0,
                     fitting->pdata, fitting->len);
}

/**
 * sw_edit_remove:
 * @history: the programme's history
 * @programme: the programme
 * @objects: (element-type GObject): sessions, sections, items, limits, measurements or answers, anywhere in it
 * @label: what undo will name
 *
 * Removes them in one step.
 */
void
sw_edit_remove (SwHistory   *history,
                SwProgramme *programme,
                GPtrArray   *objects,
                const char  *label)
{
  g_autoptr (GPtrArray) ordered = NULL;
  g_autoptr (GPtrArray) lists = NULL;

  g_return_if_fail (SW_IS_HISTORY (history));
  g_return_if_fail (SW_IS_PROGRAMME (programme));

  ordered = sw_lists_in_order (programme, objects);
  lists = sw_lists_of (programme, ordered);
  sw_history_begin (history, label);
  for (guint i = 0; i < lists->len; i++)
    {
      g_autoptr (GPtrArray) wanted = sw_lists_dup_contents_without (lists->pdata[i], ordered);

      sw_lists_replace_contents (history, label, lists->pdata[i], wanted);
    }
  sw_history_end (history);
}

/* Leaves of @objects those that @to can hold: its type, no circuit in a circuit, nothing in itself. */
static GPtrArray *
movable (SwProgramme *programme,
         GPtrArray   *objects,
         GListStore  *to)
{
  g_autoptr (GPtrArray) ordered = sw_lists_in_order (programme, objects);
  GPtrArray *fitting = g_ptr_array_new_with_free_func (g_object_unref);
  gboolean into_circuit = sw_lists_is_circuit (programme, to);
  SwGap parent = { to, 0 };

  /* Nothing can move into what moves itself. */
  while (sw_lists_find_parent (programme, parent.list, &parent))
    {
      g_autoptr (GObject) owner = g_list_model_get_item (G_LIST_MODEL (parent.list), parent.position);

      if (sw_lists_contain (ordered, owner))
        return fitting;
    }

  for (guint i = 0; i < ordered->len; i++)
    {
      gpointer object = ordered->pdata[i];

      if (!g_type_is_a (G_OBJECT_TYPE (object), g_list_model_get_item_type (G_LIST_MODEL (to))))
        continue;
      if (into_circuit && sw_item_get_kind (object) == SW_ITEM_CIRCUIT)
        continue;
      g_ptr_array_add (fitting, g_object_ref (object));
    }

  return fitting;
}

/**
 * sw_edit_move:
 * @history: the programme's history
 * @programme: the programme
 * @objects: (element-type GObject): what to move, from one list or several
 * @to: the list to move to, in the programme; may hold some of them already
 * @position: the gap in @to, counted before the move: 0 is before the first, n after the last
 * @label: what undo will name
 *
 * Moves objects as a block that keeps the order of the document. What @to cannot hold stays where it is:
 * another type, a circuit in a circuit, a circuit in itself. No change is no step.
 */
void
sw_edit_move (SwHistory   *history,
              SwProgramme *programme,
              GPtrArray   *objects,
              GListStore  *to,
              guint        position,
              const char  *label)
{
  g_autoptr (GPtrArray) moved = NULL;
  g_autoptr (GPtrArray) lists = NULL;
  g_autoptr (GPtrArray) wanted = NULL;
  g_autoptr (GPtrArray) present = NULL;

  g_return_if_fail (SW_IS_HISTORY (history));
  g_return_if_fail (SW_IS_PROGRAMME (programme));
  g_return_if_fail (G_IS_LIST_STORE (to));

  moved = movable (programme, objects, to);
  if (moved->len == 0)
    return;

  present = sw_lists_dup_contents (to);
  wanted = g_ptr_array_new ();
  position = MIN (position, present->len);
  for (guint i = 0; i <= present->len; i++)
    {
      if (i == position)
        g_ptr_array_extend (wanted, moved, NULL, NULL);
      if (i < present->len && !sw_lists_contain (moved, present->pdata[i]))
        g_ptr_array_add (wanted, present->pdata[i]);
    }

  lists = sw_lists_of (programme, moved);
  sw_history_begin (history, label);
  for (guint i = 0; i < lists->len; i++)
    {
      if (lists->pdata[i] != to)
        {
          g_autoptr (GPtrArray) rest = sw_lists_dup_contents_without (lists->pdata[i], moved);

          sw_lists_replace_contents (history, label, lists->pdata[i], rest);
        }
    }
  sw_lists_replace_contents (history, label, to, wanted);
  sw_history_end (history);
}

/* The neighbour of @gap's list among its parent's other lists: the next section's items, or the one before. */
static gboolean
neighbour_list (SwProgramme *programme,
                GListStore  *list,
                int          by,
                SwGap       *found)
{
  SwGap parent;
  guint n;
  g_autoptr (GObject) neighbour = NULL;

  if (!sw_lists_find_parent (programme, list, &parent))
    return FALSE;

  /* A circuit's members leave it to stand beside it. */
  if (g_list_model_get_item_type (G_LIST_MODEL (parent.list)) == SW_TYPE_ITEM)
    {
      *found = (SwGap) { parent.list, by > 0 ? parent.position + 1 : parent.position };
      return TRUE;
    }

  n = g_list_model_get_n_items (G_LIST_MODEL (parent.list));
  if (by > 0 ? parent.position + 1 >= n : parent.position == 0)
    return FALSE;

  neighbour = g_list_model_get_item (G_LIST_MODEL (parent.list),
                                     by > 0 ? parent.position + 1 : parent.position - 1);
  if (SW_IS_SECTION (neighbour))
    found->list = sw_section_get_items (SW_SECTION (neighbour));
  else
    return FALSE;
  found->position = by > 0 ? 0 : g_list_model_get_n_items (G_LIST_MODEL (found->list));
  return TRUE;
}

static gboolean
any_circuit (GPtrArray *objects)
{
  for (guint i = 0; i < objects->len; i++)
    {
      if (SW_IS_ITEM (objects->pdata[i]) && sw_item_get_kind (objects->pdata[i]) == SW_ITEM_CIRCUIT)
        return TRUE;
    }

  return FALSE;
}

/* The gap one place on from the block's last object, or one place back from its first. */
static gboolean
find_next_gap (SwProgramme *programme,
               GPtrArray   *block,
               int          by,
               SwGap       *gap)
{
  gpointer edge = block->pdata[by > 0 ? block->len - 1 : 0];
  g_autoptr (GObject) beside = NULL;
  guint position;
  GListStore *list = sw_programme_find_list (programme, edge, &position);

  if (by > 0)
    beside = g_list_model_get_item (G_LIST_MODEL (list), position + 1);
  else if (position > 0)
    beside = g_list_model_get_item (G_LIST_MODEL (list), position - 1);

  if (beside == NULL)
    return neighbour_list (programme, list, by, gap);

  if (SW_IS_ITEM (beside) && sw_item_get_kind (SW_ITEM (beside)) == SW_ITEM_CIRCUIT && !any_circuit (block))
    {
      gap->list = sw_item_get_items (SW_ITEM (beside));
      gap->position = by > 0 ? 0 : g_list_model_get_n_items (G_LIST_MODEL (gap->list));
      return TRUE;
    }

  *gap = (SwGap) { list, by > 0 ? position + 2 : position - 1 };
  return TRUE;
}

/**
 * sw_edit_shift:
 * @history: the programme's history
 * @programme: the programme
 * @objects: (element-type GObject): the chosen items, or sections, or sessions
 * @by: how many places, negative for up
 * @label: what undo will name
 *
 * Moves a block by places as they are seen: from the end of a section to the start of the next, into a
 * circuit and out of it. Objects that did not stand together are gathered. Items stay in their session,
 * sections too.
 *
 * Returns: whether it could move; at the very top or bottom it cannot
 */
gboolean
sw_edit_shift (SwHistory   *history,
               SwProgramme *programme,
               GPtrArray   *objects,
               int          by,
               const char  *label)
{
  g_autoptr (GPtrArray) block = NULL;
  gboolean moved = FALSE;

  g_return_val_if_fail (SW_IS_HISTORY (history), FALSE);
  g_return_val_if_fail (SW_IS_PROGRAMME (programme), FALSE);

  block = sw_lists_in_order (programme, objects);
  if (block->len == 0)
    return FALSE;

  sw_history_begin (history, label);
  for (int i = 0; i < ABS (by); i++)
    {
      SwGap gap;

      if (!find_next_gap (programme, block, by, &gap))
        break;
      sw_edit_move (history, programme, block, gap.list, gap.position, label);
      moved = TRUE;
    }
  sw_history_end (history);

  return moved;
}

static gpointer
copy_object (gpointer object)
{
  if (SW_IS_SESSION (object))
    return sw_session_copy (object, TRUE);
  if (SW_IS_SECTION (object))
    return sw_section_copy (object, TRUE);
  if (SW_IS_ITEM (object))
    return sw_item_copy (object, TRUE);
  if (SW_IS_LIMIT (object))
    return sw_limit_copy (object);
  if (SW_IS_MEASUREMENT (object))
    return sw_measurement_copy (object);

  return NULL;
}

/**
 * sw_edit_duplicate:
 * @history: the programme's history
 * @programme: the programme
 * @objects: (element-type GObject): sessions, sections, items, limits or measurements
 * @label: what undo will name
 *
 * Puts copies with new ids behind the last of the originals, list by list.
 *
 * Returns: (transfer full) (element-type GObject): the copies in the order of the document
 */
GPtrArray *
sw_edit_duplicate (SwHistory   *history,
                   SwProgramme *programme,
                   GPtrArray   *objects,
                   const char  *label)
{
  g_autoptr (GPtrArray) ordered = NULL;
  g_autoptr (GPtrArray) lists = NULL;
  GPtrArray *copies;

  g_return_val_if_fail (SW_IS_HISTORY (history), NULL);
  g_return_val_if_fail (SW_IS_PROGRAMME (programme), NULL);

  ordered = sw_lists_in_order (programme, objects);
  lists = sw_lists_of (programme, ordered);
  copies = g_ptr_array_new_with_free_func (g_object_unref);

  sw_history_begin (history, label);
  for (guint i = 0; i < lists->len; i++)
    {
      g_autoptr (GPtrArray) additions = g_ptr_array_new_with_free_func (g_object_unref);
      guint after = 0;

      for (guint j = 0; j < ordered->len; j++)
        {
          guint position;
          gpointer copy;

          if (!g_list_store_find (lists->pdata[i], ordered->pdata[j], &position))
            continue;
          copy = copy_object (ordered->pdata[j]);
          if (copy == NULL)
            continue;
          after = MAX (after, position + 1);
          g_ptr_array_add (additions, copy);
          g_ptr_array_add (copies, g_object_ref (copy));
        }
      sw_history_splice (history, label, lists->pdata[i], after, 0, additions->pdata, additions->len);
    }
  sw_history_end (history);

  return copies;
}

/* The new exercise's default, with what was decided for this client rather than for the exercise. */
static SwDose
dose_after_swap (const SwDose          *dose,
                 const SwExerciseFacts *before,
                 const SwExerciseFacts *after)
{
  SwDose wanted = after->dose;

  wanted.days_a_week = dose->days_a_week;
  wanted.times_a_day = dose->times_a_day;
  wanted.effort_limit = dose->effort_limit;
  wanted.pain_limit = dose->pain_limit;

  /* One set in place of the usual three: it stands in a circuit, or was cut down on purpose. */
  if (dose->sets == 1 && (before == NULL || before->dose.sets > 1))
    wanted.sets = 1;

  /* A side means nothing to an exercise that both sides do together. */
  if (wanted.side != SW_SIDE_BOTH && dose->side != SW_SIDE_BOTH)
    {
      wanted.side = dose->side;
      wanted.extra_sets = dose->extra_sets;
      wanted.extra_side = dose->extra_side;
    }

  return wanted;
}

/**
 * sw_edit_arrange:
 * @history: the programme's history
 * @session: a session
 * @sections: (element-type GPtrArray): for each of its sections the items it has, in another order
 * @label: what undo will name
 *
 * Puts all items of the session in that order, in one step.
 */
void
sw_edit_arrange (SwHistory  *history,
                 SwSession  *session,
                 GPtrArray  *sections,
                 const char *label)
{
  GListModel *present;

  g_return_if_fail (SW_IS_HISTORY (history));
  g_return_if_fail (SW_IS_SESSION (session));

  present = G_LIST_MODEL (sw_session_get_sections (session));
  g_return_if_fail (g_list_model_get_n_items (present) == sections->len);

  sw_history_begin (history, label);
  for (guint i = 0; i < sections->len; i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (present, i);

      sw_lists_replace_contents (history, label, sw_section_get_items (section), sections->pdata[i]);
    }
  sw_history_end (history);
}

/**
 * sw_edit_swap_exercise:
 * @history: the programme's history
 * @programme: the programme the item belongs to
 * @item: an exercise item
 * @exercise: what it shall be instead; the programme's own snapshot of it is taken where there is one
 * @label: what undo will name
 *
 * Puts another exercise in an item's place. The dose becomes the new exercise's default, except what was
 * decided for the client: days, times a day, limits, and the side and its extra sets where the new one works
 * a side at a time. The load always is the new default, and the test it was
 * found by is forgotten: a load fit for one exercise is none for another.
 */
void
sw_edit_swap_exercise (SwHistory   *history,
                       SwProgramme *programme,
                       SwItem      *item,
                       SwExercise  *exercise,
                       const char  *label)
{
  g_auto (GValue) value = G_VALUE_INIT;
  SwExercise *before;
  SwDose dose;

  g_return_if_fail (SW_IS_HISTORY (history));
  g_return_if_fail (SW_IS_ITEM (item) && sw_item_get_kind (item) == SW_ITEM_EXERCISE);
  g_return_if_fail (SW_IS_EXERCISE (exercise));

  exercise = sw_programme_own_snapshot (programme, exercise);
  before = sw_item_get_exercise (item);
  dose = dose_after_swap (sw_item_get_dose (item),
                          before != NULL ? sw_exercise_get_facts (before) : NULL,
                          sw_exercise_get_facts (exercise));
  g_value_init (&value, SW_TYPE_EXERCISE);
  g_value_set_object (&value, exercise);

  sw_history_begin (history, label);
  sw_history_set (history, label, item, "exercise", &value);
  sw_history_set_boxed (history, label, item, "dose", &dose);
  sw_history_set_string (history, label, item, "test", "");
  sw_history_end (history);
}
