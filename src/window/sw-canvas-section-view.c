/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where a section begins, and what can be done to it as a whole. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-canvas-section-view.h"
#include "sw-position-ribbon.h"

struct _SwCanvasSectionView
{
  GtkWidget parent_instance;

  SwDocument *document;
  SwSection *section;
  gboolean refreshing;

  SwPositionRibbon *ribbon;
  GtkText *title;
  GtkLabel *length;
  GtkMenuButton *menu;
};

G_DEFINE_FINAL_TYPE (SwCanvasSectionView, sw_canvas_section_view, GTK_TYPE_WIDGET)

static void
append_item (GMenu      *menu,
             const char *label,
             const char *action,
             guint       index)
{
  g_autoptr (GMenuItem) item = g_menu_item_new (label, NULL);

  g_menu_item_set_action_and_target (item, action, "i", (int) index);
  g_menu_append_item (menu, item);
}

static void
append_group (GMenu *menu,
              GMenu *group)
{
  g_menu_append_section (menu, NULL, G_MENU_MODEL (group));
  g_object_unref (group);
}

/**
 * sw_canvas_section_menu_new:
 * @document: a document
 * @section: a section of the session it shows
 *
 * Returns: (transfer full): what can be done to the section where it stands now
 */
GMenuModel *
sw_canvas_section_menu_new (SwDocument *document,
                            SwSection  *section)
{
  GMenu *menu = g_menu_new ();
  GMenu *title = g_menu_new ();
  GMenu *place = g_menu_new ();
  GMenu *whole = g_menu_new ();
  GListModel *sections;
  guint index = 0;

  g_return_val_if_fail (SW_IS_DOCUMENT (document), NULL);
  g_return_val_if_fail (SW_IS_SECTION (section), NULL);

  sections = G_LIST_MODEL (sw_session_get_sections (sw_document_get_session (document)));
  g_list_store_find (G_LIST_STORE (sections), section, &index);

  append_item (title, _ ("Re_name"), "canvas.rename-section", index);
  if (index > 0)
    append_item (place, _ ("Move _up"), "edit.section-up", index);
  if (index + 1 < g_list_model_get_n_items (sections))
    append_item (place, _ ("Move _down"), "edit.section-down", index);
  append_item (whole, _ ("_Duplicate"), "edit.duplicate-section", index);
  append_item (whole, _ ("_Remove"), "edit.remove-section", index);
  append_group (menu, title);
  append_group (menu, place);
  append_group (menu, whole);

  return G_MENU_MODEL (menu);
}

static void
create_popup (GtkMenuButton *button,
              gpointer       data)
{
  SwCanvasSectionView *self = SW_CANVAS_SECTION_VIEW (data);
  g_autoptr (GMenuModel) menu = NULL;

  if (self->section == NULL)
    return;

  menu = sw_canvas_section_menu_new (self->document, self->section);
  gtk_menu_button_set_menu_model (button, menu);
}

static void
title_changed_cb (SwCanvasSectionView *self)
{
  if (!self->refreshing && self->section != NULL)
    sw_history_set_string (sw_document_get_history (self->document), _ ("Rename section"), self->section, "title",
                           gtk_editable_get_text (GTK_EDITABLE (self->title)));
}

static void
title_left_cb (SwCanvasSectionView *self)
{
  sw_history_stop_merging (sw_document_get_history (self->document));
}

static void
sw_canvas_section_view_dispose (GObject *object)
{
  SwCanvasSectionView *self = SW_CANVAS_SECTION_VIEW (object);
  GtkWidget *child;

  g_clear_object (&self->section);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->document);

  G_OBJECT_CLASS (sw_canvas_section_view_parent_class)->dispose (object);
}

static void
sw_canvas_section_view_class_init (SwCanvasSectionViewClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_canvas_section_view_dispose;

  g_type_ensure (SW_TYPE_POSITION_RIBBON);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/setwright/Setwright/ui/sw-canvas-section-view.ui");
  gtk_widget_class_bind_template_child (widget_class, SwCanvasSectionView, ribbon);
  gtk_widget_class_bind_template_child (widget_class, SwCanvasSectionView, title);
  gtk_widget_class_bind_template_child (widget_class, SwCanvasSectionView, length);
  gtk_widget_class_bind_template_child (widget_class, SwCanvasSectionView, menu);
  gtk_widget_class_bind_template_callback (widget_class, title_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, title_left_cb);
  gtk_widget_class_set_css_name (widget_class, "canvas-section");
}

static void
sw_canvas_section_view_init (SwCanvasSectionView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_menu_button_set_create_popup_func (self->menu, create_popup, self, NULL);
}

/**
 * sw_canvas_section_view_new:
 * @document: the document whose sections it will show
 *
 * Returns: (transfer floating): a view that shows no row yet
 */
GtkWidget *
sw_canvas_section_view_new (SwDocument *document)
{
  SwCanvasSectionView *self = g_object_new (SW_TYPE_CANVAS_SECTION_VIEW, NULL);

  self->document = g_object_ref (document);
  return GTK_WIDGET (self);
}

/**
 * sw_canvas_section_view_show_row:
 * @row: a section's header
 *
 * Shows the row as it is now; a title that is being typed is left alone.
 */
void
sw_canvas_section_view_show_row (SwCanvasSectionView *self,
                                 SwCanvasRow         *row)
{
  const SwCanvasFace *face;

  g_return_if_fail (SW_IS_CANVAS_SECTION_VIEW (self));
  g_return_if_fail (SW_IS_CANVAS_ROW (row));

  face = sw_canvas_row_get_face (row);
  self->refreshing = TRUE;
  g_set_object (&self->section, sw_canvas_row_get_section (row));
  if (g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (self->title)), face->name) != 0)
    gtk_editable_set_text (GTK_EDITABLE (self->title), face->name);
  gtk_text_set_placeholder_text (self->title, face->dose);
  gtk_label_set_label (self->length, face->length);
  sw_position_ribbon_set_positions (self->ribbon, face->before, face->position);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->title), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Section title"), -1);
  self->refreshing = FALSE;
}

/**
 * sw_canvas_section_view_edit_title:
 *
 * Puts the cursor into the title.
 */
void
sw_canvas_section_view_edit_title (SwCanvasSectionView *self)
{
  g_return_if_fail (SW_IS_CANVAS_SECTION_VIEW (self));
  gtk_widget_grab_focus (GTK_WIDGET (self->title));
}
