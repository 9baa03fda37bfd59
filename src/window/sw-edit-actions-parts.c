/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The actions on whole sections and sessions. A section is named by its index in the session shown; -1 stands
 * for the section of the first chosen item. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-edit-actions-private.h"
#include "sw-edit-labels.h"
#include "sw-edits.h"

static GListStore *
sections_of (SwEditActions *self)
{
  return sw_session_get_sections (sw_document_get_session (self->document));
}

static gboolean
holds_item (SwSection *section,
            SwItem    *item)
{
  GListModel *items = G_LIST_MODEL (sw_section_get_items (section));

  for (guint i = 0; i < g_list_model_get_n_items (items); i++)
    {
      g_autoptr (SwItem) present = g_list_model_get_item (items, i);

      if (present == item || g_list_store_find (sw_item_get_items (present), item, NULL))
        return TRUE;
    }

  return FALSE;
}

static SwSection *
dup_section_of_chosen (SwEditActions *self)
{
  g_autoptr (GPtrArray) chosen = sw_edit_actions_dup_chosen (self);
  GListModel *sections;

  if (chosen->len == 0)
    return NULL;

  sections = G_LIST_MODEL (sections_of (self));
  for (guint i = 0; i < g_list_model_get_n_items (sections); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);

      if (holds_item (section, chosen->pdata[0]))
        return g_steal_pointer (&section);
    }

  return NULL;
}

static SwSection *
dup_section (SwEditActions *self,
             GVariant      *parameter)
{
  int index = g_variant_get_int32 (parameter);

  if (sw_document_get_session (self->document) == NULL)
    return NULL;
  return index < 0 ? dup_section_of_chosen (self)
                   : g_list_model_get_item (G_LIST_MODEL (sections_of (self)), (guint) index);
}

static void
add_section_activated_cb (GSimpleAction *action,
                          GVariant      *parameter,
                          gpointer       data)
{
  SwEditActions *self = data;
  g_autoptr (GPtrArray) sections = g_ptr_array_new ();
  g_autoptr (SwSection) after = dup_section_of_chosen (self);
  g_autoptr (SwSection) section = NULL;
  g_autofree char *label = NULL;
  guint position;
  int kind;

  (void) action;
  if (!sw_term_from_nick (SW_TYPE_SECTION_KIND, g_variant_get_string (parameter, NULL), &kind))
    return;

  section = sw_section_new ((SwSectionKind) kind, NULL);
  g_ptr_array_add (sections, section);
  label = sw_edit_label (SW_EDIT_VERB_ADD, sections);
  if (after != NULL && g_list_store_find (sections_of (self), after, &position))
    position++;
  else
    position = g_list_model_get_n_items (G_LIST_MODEL (sections_of (self)));
  sw_edit_insert (sw_document_get_history (self->document), sections_of (self), position, sections, label);
}

static void
shift_section (SwEditActions *self,
               GVariant      *parameter,
               int            by)
{
  g_autoptr (SwSection) section = dup_section (self, parameter);
  g_autoptr (GPtrArray) sections = g_ptr_array_new ();
  g_autofree char *label = NULL;

  if (section == NULL)
    return;

  g_ptr_array_add (sections, section);
  label = sw_edit_label (SW_EDIT_VERB_MOVE, sections);
  sw_edit_shift (sw_document_get_history (self->document), sw_document_get_programme (self->document), sections, by,
                 label);
}

static void
section_up_activated_cb (GSimpleAction *action,
                         GVariant      *parameter,
                         gpointer       data)
{
  (void) action;
  shift_section (data, parameter, -1);
}

static void
section_down_activated_cb (GSimpleAction *action,
                           GVariant      *parameter,
                           gpointer       data)
{
  (void) action;
  shift_section (data, parameter, 1);
}

static void
rename_section_activated_cb (GSimpleAction *action,
                             GVariant      *parameter,
                             gpointer       data)
{
  SwEditActions *self = data;
  g_autoptr (GVariant) index = g_variant_get_child_value (parameter, 0);
  g_autoptr (GVariant) title = g_variant_get_child_value (parameter, 1);
  g_autoptr (SwSection) section = dup_section (self, index);
  SwHistory *history = sw_document_get_history (self->document);

  (void) action;
  if (section == NULL)
    return;

  sw_history_set_string (history, _ ("Rename section"), section, "title", g_variant_get_string (title, NULL));
  sw_history_stop_merging (history);
}

static void
duplicate_section_activated_cb (GSimpleAction *action,
                                GVariant      *parameter,
                                gpointer       data)
{
  SwEditActions *self = data;
  g_autoptr (SwSection) section = dup_section (self, parameter);
  g_autoptr (GPtrArray) sections = g_ptr_array_new ();
  g_autoptr (GPtrArray) copies = NULL;
  g_autofree char *label = NULL;

  (void) action;
  if (section == NULL)
    return;

  g_ptr_array_add (sections, section);
  label = sw_edit_label (SW_EDIT_VERB_DUPLICATE, sections);
  copies = sw_edit_duplicate (sw_document_get_history (self->document), sw_document_get_programme (self->document),
                              sections, label);
}

static void
remove_section_activated_cb (GSimpleAction *action,
                             GVariant      *parameter,
                             gpointer       data)
{
  SwEditActions *self = data;
  g_autoptr (SwSection) section = dup_section (self, parameter);
  g_autoptr (GPtrArray) sections = g_ptr_array_new ();
  g_autofree char *label = NULL;

  (void) action;
  if (section == NULL)
    return;

  g_ptr_array_add (sections, section);
  label = sw_edit_label (SW_EDIT_VERB_REMOVE, sections);
  sw_edit_remove (sw_document_get_history (self->document), sw_document_get_programme (self->document), sections,
                  label);
}

static guint
index_of_session (SwEditActions *self)
{
  SwSession *session = sw_document_get_session (self->document);
  guint index = 0;

  if (session != NULL)
    g_list_store_find (sw_programme_get_sessions (sw_document_get_programme (self->document)), session, &index);
  return index;
}

static void
add_session_activated_cb (GSimpleAction *action,
                          GVariant      *parameter,
                          gpointer       data)
{
  SwEditActions *self = data;
  GListStore *list = sw_programme_get_sessions (sw_document_get_programme (self->document));
  guint n = g_list_model_get_n_items (G_LIST_MODEL (list));
  /* Translators: the title a new session gets, by its number */
  g_autofree char *title = g_strdup_printf (_ ("Session %u"), n + 1);
  g_autoptr (SwSession) session = sw_session_new_standard (title);
  g_autoptr (GPtrArray) sessions = g_ptr_array_new ();
  g_autofree char *label = NULL;

  (void) action;
  (void) parameter;
  g_ptr_array_add (sessions, session);
  label = sw_edit_label (SW_EDIT_VERB_ADD, sessions);
  sw_edit_insert (sw_document_get_history (self->document), list, n == 0 ? 0 : index_of_session (self) + 1, sessions,
                  label);
  sw_document_set_session (self->document, session);
}

static void
duplicate_session_activated_cb (GSimpleAction *action,
                                GVariant      *parameter,
                                gpointer       data)
{
  SwEditActions *self = data;
  SwHistory *history = sw_document_get_history (self->document);
  g_autoptr (GPtrArray) sessions = g_ptr_array_new ();
  g_autoptr (GPtrArray) copies = NULL;
  g_autofree char *label = NULL;
  g_autofree char *name = NULL;
  g_autofree char *title = NULL;

  (void) action;
  (void) parameter;
  g_ptr_array_add (sessions, sw_document_get_session (self->document));
  label = sw_edit_label (SW_EDIT_VERB_DUPLICATE, sessions);
  name = sw_edit_object_name (sessions->pdata[0]);
  /* Translators: the title of a session's duplicate */
  title = g_strdup_printf (_ ("%s, second"), name);

  sw_history_begin (history, label);
  copies = sw_edit_duplicate (history, sw_document_get_programme (self->document), sessions, label);
  if (copies->len == 1)
    sw_history_set_string (history, label, copies->pdata[0], "title", title);
  sw_history_end (history);
  if (copies->len == 1)
    sw_document_set_session (self->document, copies->pdata[0]);
}

/* The neighbour is shown first: the document must not show what it no longer has. */
static void
remove_session_activated_cb (GSimpleAction *action,
                             GVariant      *parameter,
                             gpointer       data)
{
  SwEditActions *self = data;
  GListModel *list = G_LIST_MODEL (sw_programme_get_sessions (sw_document_get_programme (self->document)));
  guint index = index_of_session (self);
  g_autoptr (SwSession) neighbour = g_list_model_get_item (list, index > 0 ? index - 1 : 1);
  g_autoptr (GPtrArray) sessions = g_ptr_array_new_with_free_func (g_object_unref);
  g_autofree char *label = NULL;

  (void) action;
  (void) parameter;
  g_ptr_array_add (sessions, g_object_ref (sw_document_get_session (self->document)));
  label = sw_edit_label (SW_EDIT_VERB_REMOVE, sessions);
  if (neighbour != NULL)
    sw_document_set_session (self->document, neighbour);
  sw_edit_remove (sw_document_get_history (self->document), sw_document_get_programme (self->document), sessions,
                  label);
}

static void
show_session_changed_cb (GSimpleAction *action,
                         GVariant      *state,
                         gpointer       data)
{
  SwEditActions *self = data;
  GListModel *list = G_LIST_MODEL (sw_programme_get_sessions (sw_document_get_programme (self->document)));
  int index = g_variant_get_int32 (state);
  g_autoptr (SwSession) session = NULL;

  (void) action;
  if (index >= 0)
    session = g_list_model_get_item (list, (guint) index);
  if (session != NULL)
    sw_document_set_session (self->document, session);
}

/**
 * sw_edit_actions_update_parts:
 *
 * Enables what can be done to sections and sessions now.
 */
void
sw_edit_actions_update_parts (SwEditActions *self)
{
  SwSession *session = sw_document_get_session (self->document);
  guint n_sections = session != NULL ? g_list_model_get_n_items (G_LIST_MODEL (sections_of (self))) : 0;
  GListStore *sessions = sw_programme_get_sessions (sw_document_get_programme (self->document));
  guint n_sessions = g_list_model_get_n_items (G_LIST_MODEL (sessions));
  GAction *show = g_action_map_lookup_action (G_ACTION_MAP (self), "show-session");

  sw_edit_actions_enable (self, "add-section", session != NULL);
  sw_edit_actions_enable (self, "section-up", n_sections > 1);
  sw_edit_actions_enable (self, "section-down", n_sections > 1);
  sw_edit_actions_enable (self, "rename-section", n_sections > 0);
  sw_edit_actions_enable (self, "duplicate-section", n_sections > 0);
  sw_edit_actions_enable (self, "remove-section", n_sections > 0);
  sw_edit_actions_enable (self, "duplicate-session", session != NULL);
  sw_edit_actions_enable (self, "remove-session", n_sessions > 1);
  g_simple_action_set_state (G_SIMPLE_ACTION (show), g_variant_new_int32 ((int) index_of_session (self)));
}

static const GActionEntry entries[] = {
  { .name = "add-section", .activate = add_section_activated_cb, .parameter_type = "s" },
  { .name = "section-up", .activate = section_up_activated_cb, .parameter_type = "i" },
  { .name = "section-down", .activate = section_down_activated_cb, .parameter_type = "i" },
  { .name = "rename-section", .activate = rename_section_activated_cb, .parameter_type = "(is)" },
  { .name = "duplicate-section", .activate = duplicate_section_activated_cb, .parameter_type = "i" },
  { .name = "remove-section", .activate = remove_section_activated_cb, .parameter_type = "i" },
  { .name = "add-session", .activate = add_session_activated_cb },
  { .name = "duplicate-session", .activate = duplicate_session_activated_cb },
  { .name = "remove-session", .activate = remove_session_activated_cb },
  { .name = "show-session", .parameter_type = "i", .state = "0", .change_state = show_session_changed_cb },
};

/**
 * sw_edit_actions_add_parts:
 *
 * Adds the actions of this file.
 */
void
sw_edit_actions_add_parts (SwEditActions *self)
{
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
}
