/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The actions that put something new into the session: after what is chosen, else where it fits. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-canvas-drag.h"
#include "sw-edit-actions-private.h"
#include "sw-edit-labels.h"
#include "sw-edits.h"

/* A minute: what a therapist most often asks for between two exercises (common practice). */
#define REST_S 60

/* The last section of the main work, else the last of all; made when the session has none. */
static SwSection *
dup_main_section (SwEditActions *self,
                  const char    *label)
{
  GListStore *sections = sw_session_get_sections (sw_document_get_session (self->document));
  guint n = g_list_model_get_n_items (G_LIST_MODEL (sections));
  SwSection *section;
  gpointer addition;

  for (guint i = n; i > 0; i--)
    {
      g_autoptr (SwSection) candidate = g_list_model_get_item (G_LIST_MODEL (sections), i - 1);

      if (sw_section_get_kind (candidate) == SW_SECTION_MAIN)
        return g_steal_pointer (&candidate);
    }
  if (n > 0)
    return g_list_model_get_item (G_LIST_MODEL (sections), n - 1);

  section = sw_section_new (SW_SECTION_MAIN, NULL);
  addition = section;
  sw_history_splice (sw_document_get_history (self->document), label, sections, 0, 0, &addition, 1);
  return section;
}

static gboolean
holds_circuit (GPtrArray *items)
{
  for (guint i = 0; i < items->len; i++)
    if (sw_item_get_kind (items->pdata[i]) == SW_ITEM_CIRCUIT)
      return TRUE;

  return FALSE;
}

/* After the last chosen item; what holds a circuit goes behind the circuit it would have come into. */
static GListStore *
find_place (SwEditActions *self,
            GPtrArray     *chosen,
            GPtrArray     *items,
            guint         *position)
{
  SwProgramme *programme = sw_document_get_programme (self->document);
  g_autoptr (GPtrArray) all = NULL;
  GListStore *list;

  if (chosen->len == 0)
    return NULL;

  list = sw_programme_find_list (programme, chosen->pdata[chosen->len - 1], position);
  if (holds_circuit (items))
    {
      all = sw_programme_dup_items (programme);
      for (guint i = 0; i < all->len; i++)
        if (sw_item_get_items (all->pdata[i]) == list)
          {
            list = sw_programme_find_list (programme, all->pdata[i], position);
            break;
          }
    }
  (*position)++;
  return list;
}

/* Puts new items into the session and chooses them. */
static void
insert_items (SwEditActions *self,
              GPtrArray     *items,
              SwEditVerb     verb)
{
  SwHistory *history = sw_document_get_history (self->document);
  g_autoptr (GPtrArray) chosen = sw_edit_actions_dup_chosen (self);
  g_autofree char *label = sw_edit_label (verb, items);
  g_autoptr (SwSection) section = NULL;
  GListStore *list;
  guint position;

  sw_history_begin (history, label);
  list = find_place (self, chosen, items, &position);
  if (list == NULL)
    {
      section = dup_main_section (self, label);
      list = sw_section_get_items (section);
      position = g_list_model_get_n_items (G_LIST_MODEL (list));
    }
  sw_edit_insert (history, list, position, items, label);
  sw_history_end (history);

  sw_document_choose (self->document, items);
}

static void
insert_item (SwEditActions *self,
             SwItem        *item)
{
  g_autoptr (GPtrArray) items = g_ptr_array_new ();

  g_ptr_array_add (items, item);
  insert_items (self, items, SW_EDIT_VERB_ADD);
}

static void
add_rest_activated_cb (GSimpleAction *action,
                       GVariant      *parameter,
                       gpointer       data)
{
  g_autoptr (SwItem) item = sw_item_new (SW_ITEM_REST, NULL);

  (void) action;
  (void) parameter;
  g_object_set (item, "rest-seconds", REST_S, NULL);
  insert_item (data, item);
}

static void
add_self_check_activated_cb (GSimpleAction *action,
                             GVariant      *parameter,
                             gpointer       data)
{
  g_autoptr (SwItem) item = sw_item_new (SW_ITEM_SELF_CHECK, NULL);

  (void) action;
  (void) parameter;
  g_object_set (item, "title", _ ("How does it feel now, from 0 to 10?"), "measure", SW_MEASURE_RATING_0_TO_10, NULL);
  insert_item (data, item);
}

/* Other programs get the same in words. */
static void
copy_activated_cb (GSimpleAction *action,
                   GVariant      *parameter,
                   gpointer       data)
{
  SwEditActions *self = data;
  g_autoptr (GPtrArray) chosen = sw_edit_actions_dup_chosen (self);
  g_autoptr (SwCanvasDrag) source = sw_canvas_drag_new (sw_document_get_programme (self->document), chosen);
  g_autoptr (GPtrArray) copies = sw_canvas_drag_dup_copies (source, sw_document_get_programme (self->document));
  g_autoptr (SwCanvasDrag) parcel = sw_canvas_drag_new (sw_document_get_programme (self->document), copies);
  g_autofree char *text = sw_canvas_drag_to_text (parcel);
  GdkContentProvider *kinds[2];
  GdkContentProvider *both;

  (void) action;
  (void) parameter;
  kinds[0] = gdk_content_provider_new_typed (SW_TYPE_CANVAS_DRAG, parcel);
  kinds[1] = gdk_content_provider_new_typed (G_TYPE_STRING, text);
  both = gdk_content_provider_new_union (kinds, G_N_ELEMENTS (kinds));
  gdk_clipboard_set_content (self->clipboard, both);
  g_object_unref (both);
}

/* What lies in the clipboard when it was copied in this program; NULL otherwise. */
static SwCanvasDrag *
dup_clipboard (SwEditActions *self)
{
  GdkContentProvider *content = self->clipboard != NULL ? gdk_clipboard_get_content (self->clipboard) : NULL;
  g_autoptr (GdkContentFormats) formats = NULL;
  g_auto (GValue) value = G_VALUE_INIT;

  if (content == NULL)
    return NULL;

  formats = gdk_content_provider_ref_formats (content);
  if (!gdk_content_formats_contain_gtype (formats, SW_TYPE_CANVAS_DRAG))
    return NULL;

  g_value_init (&value, SW_TYPE_CANVAS_DRAG);
  return gdk_content_provider_get_value (content, &value, NULL) ? g_value_dup_object (&value) : NULL;
}

static void
paste_activated_cb (GSimpleAction *action,
                    GVariant      *parameter,
                    gpointer       data)
{
  SwEditActions *self = data;
  g_autoptr (SwCanvasDrag) parcel = dup_clipboard (self);
  g_autoptr (GPtrArray) copies = NULL;

  (void) action;
  (void) parameter;
  if (parcel == NULL)
    return;

  copies = sw_canvas_drag_dup_copies (parcel, sw_document_get_programme (self->document));
  insert_items (self, copies, SW_EDIT_VERB_PASTE);
}

/**
 * sw_edit_actions_update_insertions:
 *
 * Enables what can put something in now.
 */
void
sw_edit_actions_update_insertions (SwEditActions *self)
{
  gboolean has_session = sw_document_get_session (self->document) != NULL;
  g_autoptr (SwCanvasDrag) parcel = dup_clipboard (self);

  sw_edit_actions_enable (self, "add-rest", has_session);
  sw_edit_actions_enable (self, "add-self-check", has_session);
  sw_edit_actions_enable (self, "copy",
                          self->clipboard != NULL && sw_document_get_chosen (self->document)->len > 0);
  sw_edit_actions_enable (self, "paste", has_session && parcel != NULL);
}

static const GActionEntry entries[] = {
  { .name = "add-rest", .activate = add_rest_activated_cb },
  { .name = "add-self-check", .activate = add_self_check_activated_cb },
  { .name = "copy", .activate = copy_activated_cb },
  { .name = "paste", .activate = paste_activated_cb },
};

/**
 * sw_edit_actions_add_insertions:
 *
 * Adds the actions of this file.
 */
void
sw_edit_actions_add_insertions (SwEditActions *self)
{
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
}
