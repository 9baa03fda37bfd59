/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Everything that can be done to what is chosen, as actions: menus, buttons, keys and tests run the same.
 * They are kept enabled exactly when they would do something. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-edit-actions-private.h"
#include "sw-edit-labels.h"
#include "sw-edits.h"
#include "sw-swap.h"

G_DEFINE_FINAL_TYPE (SwEditActions, sw_edit_actions, G_TYPE_SIMPLE_ACTION_GROUP)

/**
 * sw_edit_actions_enable:
 * @name: an action's name
 * @enabled: whether it can do something now
 */
void
sw_edit_actions_enable (SwEditActions *self,
                        const char    *name,
                        gboolean       enabled)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), name);

  g_return_if_fail (action != NULL);
  g_simple_action_set_enabled (G_SIMPLE_ACTION (action), enabled);
}

static void
add_in_order (GListModel *items,
              GPtrArray  *wanted,
              GPtrArray  *ordered)
{
  for (guint i = 0; i < g_list_model_get_n_items (items); i++)
    {
      g_autoptr (SwItem) item = g_list_model_get_item (items, i);

      if (wanted == NULL || g_ptr_array_find (wanted, item, NULL))
        g_ptr_array_add (ordered, g_object_ref (item));
      add_in_order (G_LIST_MODEL (sw_item_get_items (item)), wanted, ordered);
    }
}

/* The items of the session shown, of @wanted or all, as they stand one below the other. */
static GPtrArray *
dup_items (SwEditActions *self,
           GPtrArray     *wanted)
{
  GPtrArray *ordered = g_ptr_array_new_with_free_func (g_object_unref);
  SwSession *session = sw_document_get_session (self->document);
  GListModel *sections;

  if (session == NULL)
    return ordered;

  sections = G_LIST_MODEL (sw_session_get_sections (session));
  for (guint i = 0; i < g_list_model_get_n_items (sections); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);

      add_in_order (G_LIST_MODEL (sw_section_get_items (section)), wanted, ordered);
    }

  return ordered;
}

/**
 * sw_edit_actions_dup_chosen:
 *
 * Returns: (transfer full) (element-type SwItem): the chosen items of the session shown, from top to bottom
 */
GPtrArray *
sw_edit_actions_dup_chosen (SwEditActions *self)
{
  return dup_items (self, sw_document_get_chosen (self->document));
}

static SwHistory *
history_of (SwEditActions *self)
{
  return sw_document_get_history (self->document);
}

static SwProgramme *
programme_of (SwEditActions *self)
{
  return sw_document_get_programme (self->document);
}

static void
undo_activated_cb (GSimpleAction *action,
                   GVariant      *parameter,
                   gpointer       data)
{
  (void) action;
  (void) parameter;
  sw_history_undo (history_of (data));
}

static void
redo_activated_cb (GSimpleAction *action,
                   GVariant      *parameter,
                   gpointer       data)
{
  (void) action;
  (void) parameter;
  sw_history_redo (history_of (data));
}

/* Whether one of @chosen is the circuit that holds @item. */
static gboolean
is_held (GPtrArray *chosen,
         SwItem    *item)
{
  for (guint i = 0; i < chosen->len; i++)
    if (g_list_store_find (sw_item_get_items (chosen->pdata[i]), item, NULL))
      return TRUE;

  return FALSE;
}

/* What to choose when @chosen are gone: what follows them, else what stands before. */
static SwItem *
find_successor (SwEditActions *self,
                GPtrArray     *chosen)
{
  g_autoptr (GPtrArray) all = dup_items (self, NULL);
  SwItem *successor = NULL;
  gboolean passed = FALSE;

  for (guint i = 0; i < all->len; i++)
    {
      if (g_ptr_array_find (chosen, all->pdata[i], NULL) || is_held (chosen, all->pdata[i]))
        passed = TRUE;
      else if (passed)
        return all->pdata[i];
      else
        successor = all->pdata[i];
    }

  return successor;
}

static void
remove_chosen (SwEditActions *self,
               SwEditVerb     verb)
{
  g_autoptr (GPtrArray) chosen = sw_edit_actions_dup_chosen (self);
  g_autoptr (SwItem) successor = NULL;
  g_autofree char *label = NULL;

  if (chosen->len == 0)
    return;

  g_set_object (&successor, find_successor (self, chosen));
  label = sw_edit_label (verb, chosen);
  sw_edit_remove (history_of (self), programme_of (self), chosen, label);
  sw_document_choose_item (self->document, successor);
}

static void
remove_activated_cb (GSimpleAction *action,
                     GVariant      *parameter,
                     gpointer       data)
{
  (void) action;
  (void) parameter;
  remove_chosen (data, SW_EDIT_VERB_REMOVE);
}

static void
cut_activated_cb (GSimpleAction *action,
                  GVariant      *parameter,
                  gpointer       data)
{
  (void) action;
  (void) parameter;
  g_action_group_activate_action (G_ACTION_GROUP (data), "copy", NULL);
  remove_chosen (data, SW_EDIT_VERB_CUT);
}

static void
duplicate_activated_cb (GSimpleAction *action,
                        GVariant      *parameter,
                        gpointer       data)
{
  SwEditActions *self = data;
  g_autoptr (GPtrArray) chosen = sw_edit_actions_dup_chosen (self);
  g_autofree char *label = sw_edit_label (SW_EDIT_VERB_DUPLICATE, chosen);
  g_autoptr (GPtrArray) copies = sw_edit_duplicate (history_of (self), programme_of (self), chosen, label);

  (void) action;
  (void) parameter;
  sw_document_choose (self->document, copies);
}

static void
shift_chosen (SwEditActions *self,
              int            by)
{
  g_autoptr (GPtrArray) chosen = sw_edit_actions_dup_chosen (self);
  g_autofree char *label = sw_edit_label (SW_EDIT_VERB_MOVE, chosen);

  sw_edit_shift (history_of (self), programme_of (self), chosen, by, label);
}

static void
shift_up_activated_cb (GSimpleAction *action,
                       GVariant      *parameter,
                       gpointer       data)
{
  (void) action;
  (void) parameter;
  shift_chosen (data, -1);
}

static void
shift_down_activated_cb (GSimpleAction *action,
                         GVariant      *parameter,
                         gpointer       data)
{
  (void) action;
  (void) parameter;
  shift_chosen (data, 1);
}

static void
choose_all_activated_cb (GSimpleAction *action,
                         GVariant      *parameter,
                         gpointer       data)
{
  SwEditActions *self = data;
  g_autoptr (GPtrArray) all = dup_items (self, NULL);

  (void) action;
  (void) parameter;
  sw_document_choose (self->document, all);
}

static void
choose_none_activated_cb (GSimpleAction *action,
                          GVariant      *parameter,
                          gpointer       data)
{
  (void) action;
  (void) parameter;
  sw_document_choose_item (SW_EDIT_ACTIONS (data)->document, NULL);
}

static guint
count_simple (GPtrArray *items)
{
  guint n = 0;

  for (guint i = 0; i < items->len; i++)
    n += sw_item_get_kind (items->pdata[i]) != SW_ITEM_CIRCUIT;

  return n;
}

static void
make_circuit_activated_cb (GSimpleAction *action,
                           GVariant      *parameter,
                           gpointer       data)
{
  SwEditActions *self = data;
  g_autoptr (GPtrArray) chosen = sw_edit_actions_dup_chosen (self);
  SwItem *circuit = sw_edit_make_circuit (history_of (self), programme_of (self), chosen, _ ("Make a circuit"));

  (void) action;
  (void) parameter;
  if (circuit != NULL)
    sw_document_choose_item (self->document, circuit);
}

/* The circuit that is chosen, or whose member is; NULL when there is none or more than one item is chosen. */
static SwItem *
find_circuit (SwEditActions *self)
{
  SwItem *chosen = sw_document_get_chosen_item (self->document);
  g_autoptr (GPtrArray) all = NULL;

  if (chosen == NULL || sw_item_get_kind (chosen) == SW_ITEM_CIRCUIT)
    return chosen;

  all = dup_items (self, NULL);
  for (guint i = 0; i < all->len; i++)
    if (g_list_store_find (sw_item_get_items (all->pdata[i]), chosen, NULL))
      return all->pdata[i];

  return NULL;
}

static void
dissolve_circuit_activated_cb (GSimpleAction *action,
                               GVariant      *parameter,
                               gpointer       data)
{
  SwEditActions *self = data;
  g_autoptr (SwItem) circuit = NULL;
  g_autoptr (GPtrArray) members = g_ptr_array_new_with_free_func (g_object_unref);

  (void) action;
  (void) parameter;
  if (!g_set_object (&circuit, find_circuit (self)))
    return;

  add_in_order (G_LIST_MODEL (sw_item_get_items (circuit)), NULL, members);
  sw_edit_dissolve_circuit (history_of (self), programme_of (self), circuit, _ ("Dissolve the circuit"));
  sw_document_choose (self->document, members);
}

/* The nearest easier or harder exercise for the chosen item that suits the client. */
static SwExercise *
find_swap (SwEditActions *self,
           gboolean       harder)
{
  SwItem *item = sw_document_get_chosen_item (self->document);
  SwCatalogue *catalogue = sw_document_get_catalogue (self->document);
  g_autoptr (SwSwaps) swaps = NULL;
  g_autoptr (GPtrArray) found = NULL;

  if (item == NULL || catalogue == NULL)
    return NULL;

  swaps = sw_swaps_new (programme_of (self), catalogue);
  found = sw_swaps_find (swaps, item, harder ? SW_SWAP_HARDER : SW_SWAP_EASIER, 1);
  return found->len == 0 ? NULL : g_object_ref (((SwSwap *) found->pdata[0])->exercise);
}

static void
enable_swap (SwEditActions *self,
             const char    *name,
             gboolean       harder)
{
  g_autoptr (SwExercise) exercise = find_swap (self, harder);

  sw_edit_actions_enable (self, name, exercise != NULL);
}

static void
swap_exercise (SwEditActions *self,
               gboolean       harder)
{
  g_autoptr (SwExercise) exercise = find_swap (self, harder);
  SwItem *item = sw_document_get_chosen_item (self->document);
  g_autofree char *label = NULL;

  if (exercise == NULL)
    return;

  label = sw_edit_label_for_swap (item, exercise);
  sw_edit_swap_exercise (history_of (self), programme_of (self), item, exercise, label);
}

static void
swap_easier_activated_cb (GSimpleAction *action,
                          GVariant      *parameter,
                          gpointer       data)
{
  (void) action;
  (void) parameter;
  swap_exercise (data, FALSE);
}

static void
swap_harder_activated_cb (GSimpleAction *action,
                          GVariant      *parameter,
                          gpointer       data)
{
  (void) action;
  (void) parameter;
  swap_exercise (data, TRUE);
}

/* @dose for the other side; FALSE when it speaks of no side in particular. */
static gboolean
swap_sides_of (SwDose *dose)
{
  gboolean has_side = dose->side == SW_SIDE_LEFT || dose->side == SW_SIDE_RIGHT;

  if (!has_side && dose->extra_side == SW_BODY_SIDE_NONE)
    return FALSE;

  if (has_side)
    dose->side = dose->side == SW_SIDE_LEFT ? SW_SIDE_RIGHT : SW_SIDE_LEFT;
  if (dose->extra_side != SW_BODY_SIDE_NONE)
    dose->extra_side = dose->extra_side == SW_BODY_SIDE_LEFT ? SW_BODY_SIDE_RIGHT : SW_BODY_SIDE_LEFT;
  return TRUE;
}

static void
swap_sides_activated_cb (GSimpleAction *action,
                         GVariant      *parameter,
                         gpointer       data)
{
  SwEditActions *self = data;
  g_autoptr (GPtrArray) chosen = sw_edit_actions_dup_chosen (self);
  SwHistory *history = history_of (self);

  (void) action;
  (void) parameter;
  sw_history_begin (history, _ ("Swap left and right"));
  for (guint i = 0; i < chosen->len; i++)
    {
      SwDose dose = *sw_item_get_dose (chosen->pdata[i]);

      if (swap_sides_of (&dose))
        sw_history_set_boxed (history, _ ("Swap left and right"), chosen->pdata[i], "dose", &dose);
    }
  sw_history_end (history);
}

static gboolean
any_has_side (GPtrArray *items)
{
  for (guint i = 0; i < items->len; i++)
    {
      SwDose dose = *sw_item_get_dose (items->pdata[i]);

      if (swap_sides_of (&dose))
        return TRUE;
    }

  return FALSE;
}

/* Only at the very top and the very bottom of the session there is no gap to go to. */
static gboolean
can_shift (SwEditActions *self,
           GPtrArray     *chosen,
           int            by)
{
  GListModel *sections;
  g_autoptr (SwSection) section = NULL;
  GListModel *items;
  guint position, edge = chosen->len;

  /* The block's first object is the first chosen; its last is not within a circuit that moves as a whole. */
  if (by < 0)
    edge = MIN (1, chosen->len);
  while (edge > 0 && is_held (chosen, chosen->pdata[edge - 1]))
    edge--;
  if (edge == 0)
    return FALSE;

  sections = G_LIST_MODEL (sw_session_get_sections (sw_document_get_session (self->document)));
  section = g_list_model_get_item (sections, by > 0 ? g_list_model_get_n_items (sections) - 1 : 0);
  items = G_LIST_MODEL (sw_section_get_items (section));
  return !g_list_store_find (G_LIST_STORE (items), chosen->pdata[edge - 1], &position)
         || position != (by > 0 ? g_list_model_get_n_items (items) - 1 : 0);
}

static void
update (SwEditActions *self)
{
  SwHistory *history = history_of (self);
  g_autoptr (GPtrArray) all = dup_items (self, NULL);
  g_autoptr (GPtrArray) chosen = sw_edit_actions_dup_chosen (self);

  sw_edit_actions_enable (self, "undo", sw_history_get_can_undo (history));
  sw_edit_actions_enable (self, "redo", sw_history_get_can_redo (history));
  sw_edit_actions_enable (self, "remove", chosen->len > 0);
  sw_edit_actions_enable (self, "duplicate", chosen->len > 0);
  sw_edit_actions_enable (self, "cut", chosen->len > 0 && self->clipboard != NULL);
  sw_edit_actions_enable (self, "shift-up", can_shift (self, chosen, -1));
  sw_edit_actions_enable (self, "shift-down", can_shift (self, chosen, 1));
  sw_edit_actions_enable (self, "choose-all", chosen->len < all->len);
  sw_edit_actions_enable (self, "choose-none", chosen->len > 0);
  sw_edit_actions_enable (self, "make-circuit", count_simple (chosen) > 1);
  sw_edit_actions_enable (self, "dissolve-circuit", find_circuit (self) != NULL);
  enable_swap (self, "swap-easier", FALSE);
  enable_swap (self, "swap-harder", TRUE);
  sw_edit_actions_enable (self, "swap-sides", any_has_side (chosen));
  sw_edit_actions_update_insertions (self);
  sw_edit_actions_update_parts (self);
}

static const GActionEntry entries[] = {
  { .name = "undo", .activate = undo_activated_cb },
  { .name = "redo", .activate = redo_activated_cb },
  { .name = "remove", .activate = remove_activated_cb },
  { .name = "duplicate", .activate = duplicate_activated_cb },
  { .name = "cut", .activate = cut_activated_cb },
  { .name = "shift-up", .activate = shift_up_activated_cb },
  { .name = "shift-down", .activate = shift_down_activated_cb },
  { .name = "choose-all", .activate = choose_all_activated_cb },
  { .name = "choose-none", .activate = choose_none_activated_cb },
  { .name = "make-circuit", .activate = make_circuit_activated_cb },
  { .name = "dissolve-circuit", .activate = dissolve_circuit_activated_cb },
  { .name = "swap-easier", .activate = swap_easier_activated_cb },
  { .name = "swap-harder", .activate = swap_harder_activated_cb },
  { .name = "swap-sides", .activate = swap_sides_activated_cb },
};

static void
sw_edit_actions_dispose (GObject *object)
{
  SwEditActions *self = SW_EDIT_ACTIONS (object);

  g_clear_object (&self->document);

  G_OBJECT_CLASS (sw_edit_actions_parent_class)->dispose (object);
}

static void
sw_edit_actions_class_init (SwEditActionsClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sw_edit_actions_dispose;
}

static void
sw_edit_actions_init (SwEditActions *self)
{
  GdkDisplay *display = gdk_display_get_default ();

  if (display != NULL)
    self->clipboard = gdk_display_get_clipboard (display);
}

/**
 * sw_edit_actions_new:
 * @document: what they act on
 *
 * Makes the actions that change a document, to be inserted under the prefix "edit".
 *
 * Returns: (transfer full): the actions
 */
GActionGroup *
sw_edit_actions_new (SwDocument *document)
{
  SwEditActions *self;

  g_return_val_if_fail (SW_IS_DOCUMENT (document), NULL);

  self = g_object_new (SW_TYPE_EDIT_ACTIONS, NULL);
  self->document = g_object_ref (document);
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  sw_edit_actions_add_insertions (self);
  sw_edit_actions_add_parts (self);

  g_signal_connect_object (document, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "chosen-changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  if (self->clipboard != NULL)
    g_signal_connect_object (self->clipboard, "changed", G_CALLBACK (sw_edit_actions_update_insertions), self,
                             G_CONNECT_SWAPPED);
  update (self);

  return G_ACTION_GROUP (self);
}
