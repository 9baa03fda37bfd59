/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a therapist does to a programme, in terms of the two edits the history knows. Every change of a list
 * is first worked out as the whole list that is wanted; what differs becomes one splice over the smallest
 * range, so that selection and focus of everything else stay where they are. */
#include "config.h"

#include "sw-edits.h"

/* A place between the objects of a list. */
typedef struct
{
  GListStore *list;
  guint position;
} Gap;

static GPtrArray *
dup_contents (GListStore *list)
{
  GPtrArray *contents = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (list)); i++)
    g_ptr_array_add (contents, g_list_model_get_item (G_LIST_MODEL (list), i));

  return contents;
}

/* Makes @list hold what @wanted holds, by one splice over the smallest range that differs. */
static void
replace_contents (SwHistory  *history,
                  const char *label,
                  GListStore *list,
                  GPtrArray  *wanted)
{
  g_autoptr (GPtrArray) present = dup_contents (list);
  guint shorter = MIN (present->len, wanted->len);
  guint same_before = 0, same_after = 0;

  while (same_before < shorter && present->pdata[same_before] == wanted->pdata[same_before])
    same_before++;
  while (same_after < shorter - same_before
         && present->pdata[present->len - 1 - same_after] == wanted->pdata[wanted->len - 1 - same_after])
    same_after++;

  sw_history_splice (history, label, list, same_before, present->len - same_before - same_after,
                     wanted->pdata + same_before, wanted->len - same_before - same_after);
}

/* The list that holds @list's owner and where the owner stands in it; FALSE for lists of the programme. */
static gboolean
find_parent (SwProgramme *programme,
             GListStore  *list,
             Gap         *parent)
{
  GListModel *sessions = G_LIST_MODEL (sw_programme_get_sessions (programme));
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);

  for (guint i = 0; i < items->len; i++)
    {
      if (sw_item_get_items (items->pdata[i]) == list)
        {
          parent->list = sw_programme_find_list (programme, items->pdata[i], &parent->position);
          return TRUE;
        }
    }

  for (guint i = 0; i < g_list_model_get_n_items (sessions); i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (sessions, i);
      GListStore *sections = sw_session_get_sections (session);

      for (guint j = 0; j < g_list_model_get_n_items (G_LIST_MODEL (sections)); j++)
        {
          g_autoptr (SwSection) section = g_list_model_get_item (G_LIST_MODEL (sections), j);

          if (sw_section_get_items (section) == list)
            {
              *parent = (Gap) { sections, j };
              return TRUE;
            }
        }
    }

  return FALSE;
}

/* Whether @list holds the members of a circuit. */
static gboolean
is_circuit_list (SwProgramme *programme,
                 GListStore  *list)
{
  Gap parent;

  return find_parent (programme, list, &parent)
         && g_list_model_get_item_type (G_LIST_MODEL (parent.list)) == SW_TYPE_ITEM;
}

static gboolean
contains (GPtrArray *objects,
          gpointer   object)
{
  return g_ptr_array_find (objects, object, NULL);
}

static void
add_in_order (SwProgramme *programme,
              GListStore  *list,
              GPtrArray   *objects,
              GPtrArray   *ordered)
{
  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (list)); i++)
    {
      g_autoptr (GObject) object = g_list_model_get_item (G_LIST_MODEL (list), i);

      if (contains (objects, object))
        g_ptr_array_add (ordered, g_object_ref (object));
      else if (SW_IS_SESSION (object))
        add_in_order (programme, sw_session_get_sections (SW_SESSION (object)), objects, ordered);
      else if (SW_IS_SECTION (object))
        add_in_order (programme, sw_section_get_items (SW_SECTION (object)), objects, ordered);
      else if (SW_IS_ITEM (object))
        add_in_order (programme, sw_item_get_items (SW_ITEM (object)), objects, ordered);
    }
}

/* Those of @objects that are in the programme, in its order, without what another of them contains. */
static GPtrArray *
in_document_order (SwProgramme *programme,
                   GPtrArray   *objects)
{
  GPtrArray *ordered = g_ptr_array_new_with_free_func (g_object_unref);

  add_in_order (programme, sw_programme_get_sessions (programme), objects, ordered);
  add_in_order (programme, sw_programme_get_measurements (programme), objects, ordered);
  add_in_order (programme, sw_programme_get_answers (programme), objects, ordered);
  add_in_order (programme, sw_programme_get_issues (programme), objects, ordered);
  return ordered;
}

/* The lists that hold any of @objects, each once. */
static GPtrArray *
lists_of (SwProgramme *programme,
          GPtrArray   *objects)
{
  GPtrArray *lists = g_ptr_array_new ();

  for (guint i = 0; i < objects->len; i++)
    {
      GListStore *list = sw_programme_find_list (programme, objects->pdata[i], NULL);

      if (list != NULL && !contains (lists, list))
        g_ptr_array_add (lists, list);
    }

  return lists;
}

/* What @list holds without @objects. */
static GPtrArray *
dup_contents_without (GListStore *list,
                      GPtrArray  *objects)
{
  GPtrArray *contents = dup_contents (list);

  for (guint i = contents->len; i > 0; i--)
    {
      if (contains (objects, contents->pdata[i - 1]))
        g_ptr_array_remove_index (contents, i - 1);
    }

  return contents;
}

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
 * @objects: (element-type GObject): sessions, sections, items, measurements or answers, anywhere in it
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

  ordered = in_document_order (programme, objects);
  lists = lists_of (programme, ordered);
  sw_history_begin (history, label);
  for (guint i = 0; i < lists->len; i++)
    {
      g_autoptr (GPtrArray) wanted = dup_contents_without (lists->pdata[i], ordered);

      replace_contents (history, label, lists->pdata[i], wanted);
    }
  sw_history_end (history);
}

/* Leaves of @objects those that @to can hold: its type, no circuit in a circuit, nothing in itself. */
static GPtrArray *
movable (SwProgramme *programme,
         GPtrArray   *objects,
         GListStore  *to)
{
  g_autoptr (GPtrArray) ordered = in_document_order (programme, objects);
  GPtrArray *fitting = g_ptr_array_new_with_free_func (g_object_unref);
  gboolean into_circuit = is_circuit_list (programme, to);
  Gap parent = { to, 0 };

  /* Nothing can move into what moves itself. */
  while (find_parent (programme, parent.list, &parent))
    {
      g_autoptr (GObject) owner = g_list_model_get_item (G_LIST_MODEL (parent.list), parent.position);

      if (contains (ordered, owner))
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

  present = dup_contents (to);
  wanted = g_ptr_array_new ();
  position = MIN (position, present->len);
  for (guint i = 0; i <= present->len; i++)
    {
      if (i == position)
        g_ptr_array_extend (wanted, moved, NULL, NULL);
      if (i < present->len && !contains (moved, present->pdata[i]))
        g_ptr_array_add (wanted, present->pdata[i]);
    }

  lists = lists_of (programme, moved);
  sw_history_begin (history, label);
  for (guint i = 0; i < lists->len; i++)
    {
      if (lists->pdata[i] != to)
        {
          g_autoptr (GPtrArray) rest = dup_contents_without (lists->pdata[i], moved);

          replace_contents (history, label, lists->pdata[i], rest);
        }
    }
  replace_contents (history, label, to, wanted);
  sw_history_end (history);
}

/* The neighbour of @gap's list among its parent's other lists: the next section's items, or the one before. */
static gboolean
neighbour_list (SwProgramme *programme,
                GListStore  *list,
                int          by,
                Gap         *found)
{
  Gap parent;
  guint n;
  g_autoptr (GObject) neighbour = NULL;

  if (!find_parent (programme, list, &parent))
    return FALSE;

  /* A circuit's members leave it to stand beside it. */
  if (g_list_model_get_item_type (G_LIST_MODEL (parent.list)) == SW_TYPE_ITEM)
    {
      *found = (Gap) { parent.list, by > 0 ? parent.position + 1 : parent.position };
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
               Gap         *gap)
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

  *gap = (Gap) { list, by > 0 ? position + 2 : position - 1 };
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

  block = in_document_order (programme, objects);
  if (block->len == 0)
    return FALSE;

  sw_history_begin (history, label);
  for (int i = 0; i < ABS (by); i++)
    {
      Gap gap;

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
  if (SW_IS_MEASUREMENT (object))
    return sw_measurement_copy (object);

  return NULL;
}

/**
 * sw_edit_duplicate:
 * @history: the programme's history
 * @programme: the programme
 * @objects: (element-type GObject): sessions, sections, items or measurements
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

  ordered = in_document_order (programme, objects);
  lists = lists_of (programme, ordered);
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

/* The sets that all exercises among @items share, or 0 when they differ or there are none. */
static int
shared_sets (GPtrArray *items)
{
  int sets = 0;

  for (guint i = 0; i < items->len; i++)
    {
      const SwDose *dose = sw_item_get_dose (items->pdata[i]);

      if (sw_item_get_kind (items->pdata[i]) != SW_ITEM_EXERCISE)
        continue;
      if (sets != 0 && sets != dose->sets)
        return 0;
      sets = dose->sets;
    }

  return sets;
}

static void
set_sets (SwHistory  *history,
          const char *label,
          SwItem     *item,
          int         sets)
{
  SwDose dose = *sw_item_get_dose (item);

  dose.sets = sets;
  sw_history_set_boxed (history, label, item, "dose", &dose);
}

/* Sets become rounds where that leaves the amount of work as it is. */
static void
sets_to_rounds (SwHistory  *history,
                const char *label,
                SwItem     *circuit,
                GPtrArray  *members)
{
  int sets = shared_sets (members);
  int rest_s = 0;

  for (guint i = 0; i < members->len; i++)
    {
      if (sw_item_get_kind (members->pdata[i]) == SW_ITEM_EXERCISE)
        rest_s = MAX (rest_s, sw_item_get_dose (members->pdata[i])->rest_s);
    }
  g_object_set (circuit, "rest-seconds", rest_s, NULL);
  if (sets < 2)
    return;

  g_object_set (circuit, "rounds", sets, NULL);
  for (guint i = 0; i < members->len; i++)
    {
      if (sw_item_get_kind (members->pdata[i]) == SW_ITEM_EXERCISE)
        set_sets (history, label, members->pdata[i], 1);
    }
}

/**
 * sw_edit_make_circuit:
 * @history: the programme's history
 * @programme: the programme
 * @items: (element-type SwItem): the items to go through in rounds; circuits among them are left out
 * @label: what undo will name
 *
 * Makes a circuit of items, where the first of them stands. When all its exercises have the same number of
 * sets, that becomes the number of rounds of one set each; else it is one round and the doses stay as they
 * are: in no case does the amount of work change. The longest rest becomes the rest between rounds.
 *
 * Returns: (transfer none) (nullable): the circuit; NULL when @items holds nothing to put into one
 */
SwItem *
sw_edit_make_circuit (SwHistory   *history,
                      SwProgramme *programme,
                      GPtrArray   *items,
                      const char  *label)
{
  g_autoptr (GPtrArray) members = NULL;
  g_autoptr (GPtrArray) lists = NULL;
  g_autoptr (SwItem) circuit = NULL;
  Gap gap, parent;

  g_return_val_if_fail (SW_IS_HISTORY (history), NULL);
  g_return_val_if_fail (SW_IS_PROGRAMME (programme), NULL);

  members = in_document_order (programme, items);
  for (guint i = members->len; i > 0; i--)
    {
      if (!SW_IS_ITEM (members->pdata[i - 1]) || sw_item_get_kind (members->pdata[i - 1]) == SW_ITEM_CIRCUIT)
        g_ptr_array_remove_index (members, i - 1);
    }
  if (members->len == 0)
    return NULL;

  gap.list = sw_programme_find_list (programme, members->pdata[0], &gap.position);
  if (is_circuit_list (programme, gap.list) && find_parent (programme, gap.list, &parent))
    gap = (Gap) { parent.list, parent.position + 1 };

  circuit = sw_item_new (SW_ITEM_CIRCUIT, NULL);
  lists = lists_of (programme, members);
  if (!contains (lists, gap.list))
    g_ptr_array_add (lists, gap.list);

  sw_history_begin (history, label);
  sets_to_rounds (history, label, circuit, members);
  for (guint i = 0; i < lists->len; i++)
    {
      g_autoptr (GPtrArray) wanted = dup_contents_without (lists->pdata[i], members);

      /* No member stands before the gap in its list, so that the gap is the same without them. */
      if (lists->pdata[i] == gap.list)
        g_ptr_array_insert (wanted, (int) gap.position, g_object_ref (circuit));
      replace_contents (history, label, lists->pdata[i], wanted);
    }
  g_list_store_splice (sw_item_get_items (circuit), 0, 0, members->pdata, members->len);
  sw_history_end (history);

  return circuit;
}

/**
 * sw_edit_dissolve_circuit:
 * @history: the programme's history
 * @programme: the programme
 * @circuit: a circuit of the programme
 * @label: what undo will name
 *
 * Puts a circuit's members where it stands. Rounds become sets again, as far as a dose can have as many.
 */
void
sw_edit_dissolve_circuit (SwHistory   *history,
                          SwProgramme *programme,
                          SwItem      *circuit,
                          const char  *label)
{
  g_autoptr (GPtrArray) members = NULL;
  GListStore *list;
  guint position;

  g_return_if_fail (SW_IS_HISTORY (history));
  g_return_if_fail (SW_IS_PROGRAMME (programme));
  g_return_if_fail (SW_IS_ITEM (circuit) && sw_item_get_kind (circuit) == SW_ITEM_CIRCUIT);

  list = sw_programme_find_list (programme, circuit, &position);
  if (list == NULL)
    return;

  members = dup_contents (sw_item_get_items (circuit));
  sw_history_begin (history, label);
  for (guint i = 0; i < members->len; i++)
    {
      int sets = sw_item_get_dose (members->pdata[i])->sets * sw_item_get_rounds (circuit);

      if (sw_item_get_kind (members->pdata[i]) == SW_ITEM_EXERCISE)
        set_sets (history, label, members->pdata[i], MIN (sets, 20));
    }
  sw_history_splice (history, label, list, position, 1, members->pdata, members->len);
  sw_history_end (history);
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
 * sw_edit_swap_exercise:
 * @history: the programme's history
 * @item: an exercise item
 * @exercise: what it shall be instead
 * @label: what undo will name
 *
 * Puts another exercise in an item's place. The dose becomes the new exercise's default, except what was
 * decided for the client: days, times a day, limits, and the side and its extra sets where the new one works
 * a side at a time. The load always is the new default: a load fit for one exercise is none for another.
 */
void
sw_edit_swap_exercise (SwHistory  *history,
                       SwItem     *item,
                       SwExercise *exercise,
                       const char *label)
{
  g_auto (GValue) value = G_VALUE_INIT;
  SwExercise *before;
  SwDose dose;

  g_return_if_fail (SW_IS_HISTORY (history));
  g_return_if_fail (SW_IS_ITEM (item) && sw_item_get_kind (item) == SW_ITEM_EXERCISE);
  g_return_if_fail (SW_IS_EXERCISE (exercise));

  before = sw_item_get_exercise (item);
  dose = dose_after_swap (sw_item_get_dose (item),
                          before != NULL ? sw_exercise_get_facts (before) : NULL,
                          sw_exercise_get_facts (exercise));
  g_value_init (&value, SW_TYPE_EXERCISE);
  g_value_set_object (&value, exercise);

  sw_history_begin (history, label);
  sw_history_set (history, label, item, "exercise", &value);
  sw_history_set_boxed (history, label, item, "dose", &dose);
  sw_history_end (history);
}
