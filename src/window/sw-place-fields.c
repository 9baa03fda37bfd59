/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What arranging the session has to keep to for one item. */
#include "config.h"

#include <string.h>

#include <glib/gi18n.h>

#include "sw-place-fields.h"

#include "sw-edit-labels.h"
#include "sw-field-row.h"

struct _SwPlaceFields
{
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkCheckButton *pinned;
  GtkDropDown *after;

  SwDocument *document;
  SwItem *item;
  GStrv ids;   /* of the rows of @after; the first is "" */
  GStrv names; /* the rows */
  gboolean refreshing;
};

G_DEFINE_FINAL_TYPE (SwPlaceFields, sw_place_fields, GTK_TYPE_WIDGET)

static char *
dup_label (SwPlaceFields *self)
{
  g_autofree char *name = sw_edit_object_name (self->item);

  /* Translators: %s is an exercise or circuit */
  return g_strdup_printf (_("Change place of “%s”"), name);
}

static void
pinned_toggled_cb (SwPlaceFields *self)
{
  g_auto (GValue) value = G_VALUE_INIT;
  g_autofree char *label = NULL;

  if (self->refreshing || self->item == NULL)
    return;

  label = dup_label (self);
  g_value_init (&value, G_TYPE_BOOLEAN);
  g_value_set_boolean (&value, gtk_check_button_get_active (self->pinned));
  sw_history_set (sw_document_get_history (self->document), label, self->item, "pinned", &value);
}

static void
after_selected_cb (SwPlaceFields *self)
{
  guint selected = gtk_drop_down_get_selected (self->after);
  g_autofree char *label = NULL;

  if (self->refreshing || self->item == NULL || self->ids == NULL || selected >= g_strv_length (self->ids))
    return;

  label = dup_label (self);
  sw_history_set_string (sw_document_get_history (self->document), label, self->item, "after", self->ids[selected]);
}

static SwSection *
dup_section (SwPlaceFields *self)
{
  SwSession *session = sw_document_get_session (self->document);
  GListModel *sections = session != NULL ? G_LIST_MODEL (sw_session_get_sections (session)) : NULL;

  for (guint i = 0; sections != NULL && i < g_list_model_get_n_items (sections); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);

      if (g_list_store_find (sw_section_get_items (section), self->item, NULL))
        return g_steal_pointer (&section);
    }
  return NULL;
}

/* What stands before it in its section, and what it is said to follow even when it does not now. */
static void
fill_after (SwPlaceFields *self,
            SwSection     *section)
{
  GListModel *items = G_LIST_MODEL (sw_section_get_items (section));
  const char *after = sw_item_get_after (self->item);
  g_autoptr (GStrvBuilder) names = g_strv_builder_new ();
  g_autoptr (GStrvBuilder) ids = g_strv_builder_new ();
  GStrv old_names = self->names;
  gboolean before = TRUE;
  guint n = 1;
  guint selected = 0;

  g_strv_builder_add (names, _("any"));
  g_strv_builder_add (ids, "");
  for (guint i = 0; i < g_list_model_get_n_items (items); i++)
    {
      g_autoptr (SwItem) other = g_list_model_get_item (items, i);
      SwItemKind kind = sw_item_get_kind (other);
      gboolean chosen = strcmp (sw_item_get_id (other), after) == 0;
      g_autofree char *name = sw_edit_object_name (other);

      before = before && other != self->item;
      if (other == self->item || (kind != SW_ITEM_EXERCISE && kind != SW_ITEM_CIRCUIT) || (!before && !chosen))
        continue;
      if (chosen)
        selected = n;
      g_strv_builder_add (names, name);
      g_strv_builder_add (ids, sw_item_get_id (other));
      n++;
    }
  g_strfreev (self->ids);
  self->ids = g_strv_builder_end (ids);
  self->names = g_strv_builder_end (names);
  /* A list that is open stays as it is when nothing in it changes. */
  if (old_names == NULL || !g_strv_equal ((const char *const *) old_names, (const char *const *) self->names))
    {
      g_autoptr (GtkStringList) list = gtk_string_list_new ((const char *const *) self->names);

      gtk_drop_down_set_model (self->after, G_LIST_MODEL (list));
    }
  if (gtk_drop_down_get_selected (self->after) != selected)
    gtk_drop_down_set_selected (self->after, selected);
  g_strfreev (old_names);
}

static void
sw_place_fields_dispose (GObject *object)
{
  SwPlaceFields *self = SW_PLACE_FIELDS (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->document);
  g_clear_object (&self->item);
  g_clear_pointer (&self->ids, g_strfreev);
  g_clear_pointer (&self->names, g_strfreev);

  G_OBJECT_CLASS (sw_place_fields_parent_class)->dispose (object);
}

static void
sw_place_fields_class_init (SwPlaceFieldsClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_place_fields_dispose;

  g_type_ensure (SW_TYPE_FIELD_ROW);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-place-fields.ui");
  gtk_widget_class_bind_template_child (widget_class, SwPlaceFields, box);
  gtk_widget_class_bind_template_child (widget_class, SwPlaceFields, pinned);
  gtk_widget_class_bind_template_child (widget_class, SwPlaceFields, after);
  gtk_widget_class_bind_template_callback (widget_class, pinned_toggled_cb);
  gtk_widget_class_bind_template_callback (widget_class, after_selected_cb);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sw_place_fields_init (SwPlaceFields *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * sw_place_fields_show:
 * @self: the fields
 * @document: the document of the item
 * @item: an item
 *
 * Shows the item as it is now. The fields hide themselves for what arranging does not move by itself: rests, self-checks
 * and the members of a circuit.
 */
void
sw_place_fields_show (SwPlaceFields *self,
                      SwDocument    *document,
                      SwItem        *item)
{
  g_autoptr (SwSection) section = NULL;
  SwItemKind kind;

  g_return_if_fail (SW_IS_PLACE_FIELDS (self));
  g_return_if_fail (SW_IS_DOCUMENT (document));
  g_return_if_fail (SW_IS_ITEM (item));

  g_set_object (&self->document, document);
  g_set_object (&self->item, item);
  kind = sw_item_get_kind (item);
  section = kind == SW_ITEM_EXERCISE || kind == SW_ITEM_CIRCUIT ? dup_section (self) : NULL;
  gtk_widget_set_visible (GTK_WIDGET (self), section != NULL);
  if (section == NULL)
    return;

  self->refreshing = TRUE;
  gtk_check_button_set_active (self->pinned, sw_item_get_pinned (item));
  fill_after (self, section);
  self->refreshing = FALSE;
}
