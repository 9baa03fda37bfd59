/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The right pane: which form is shown follows from what is chosen. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-inspector.h"

#include "sw-client-form.h"
#include "sw-dose-form.h"
#include "sw-item-form.h"
#include "sw-several-form.h"

struct _SwInspector
{
  GtkWidget parent_instance;

  SwDocument *document;
  GtkWidget *focus;   /* where the focus was, if in here; only compared */
  GtkRoot *root;

  GtkStack *stack;
  GtkWidget *dose_page;
  GtkWidget *item_page;
  GtkWidget *several_page;
  GtkWidget *client_page;
  SwDoseForm *dose_form;
  SwItemForm *item_form;
  SwSeveralForm *several_form;
  SwClientForm *client_form;
};

G_DEFINE_FINAL_TYPE (SwInspector, sw_inspector, GTK_TYPE_WIDGET)

/* Another item, or none, in each form: a form that is not shown has none, and does no work. */
static void
show_chosen (SwInspector *self)
{
  GPtrArray *chosen = self->document != NULL ? sw_document_get_chosen (self->document) : NULL;
  SwItem *item = chosen != NULL && chosen->len == 1 ? g_ptr_array_index (chosen, 0) : NULL;
  gboolean several = chosen != NULL && chosen->len > 1;
  gboolean exercise = item != NULL && sw_item_get_kind (item) == SW_ITEM_EXERCISE
                      && sw_item_get_exercise (item) != NULL;
  GtkWidget *page = self->client_page;

  if (several)
    page = self->several_page;
  else if (exercise)
    page = self->dose_page;
  else if (item != NULL && sw_item_get_kind (item) != SW_ITEM_EXERCISE)
    page = self->item_page;

  sw_dose_form_set_item (self->dose_form, self->document, page == self->dose_page ? item : NULL);
  sw_item_form_set_item (self->item_form, self->document, page == self->item_page ? item : NULL);
  sw_several_form_set_document (self->several_form, several ? self->document : NULL);
  sw_several_form_refresh (self->several_form);
  if (page == self->client_page)
    sw_client_form_refresh (self->client_form);
  gtk_stack_set_visible_child (self->stack, page);
}

static void
document_changed_cb (SwInspector *self)
{
  GtkWidget *page = gtk_stack_get_visible_child (self->stack);

  if (page == self->dose_page)
    sw_dose_form_refresh (self->dose_form);
  else if (page == self->item_page)
    sw_item_form_refresh (self->item_form);
  else if (page == self->several_page)
    sw_several_form_refresh (self->several_form);
  else
    sw_client_form_refresh (self->client_form);
}

/* What is typed into one field undoes in one step, what is typed into the next in another. */
static void
focus_moved_cb (SwInspector *self)
{
  GtkWidget *focus = gtk_root_get_focus (self->root);
  gboolean was_inside = self->focus != NULL;

  if (focus == self->focus)
    return;

  self->focus = focus != NULL && gtk_widget_is_ancestor (focus, GTK_WIDGET (self)) ? focus : NULL;
  if (was_inside && self->document != NULL)
    sw_history_stop_merging (sw_document_get_history (self->document));
}

static void
sw_inspector_root (GtkWidget *widget)
{
  SwInspector *self = SW_INSPECTOR (widget);

  GTK_WIDGET_CLASS (sw_inspector_parent_class)->root (widget);

  self->root = gtk_widget_get_root (widget);
  g_signal_connect_object (self->root, "notify::focus-widget", G_CALLBACK (focus_moved_cb), self,
                           G_CONNECT_SWAPPED);
}

static void
sw_inspector_unroot (GtkWidget *widget)
{
  SwInspector *self = SW_INSPECTOR (widget);

  g_signal_handlers_disconnect_by_data (self->root, self);
  self->root = NULL;
  self->focus = NULL;

  GTK_WIDGET_CLASS (sw_inspector_parent_class)->unroot (widget);
}

static void
sw_inspector_dispose (GObject *object)
{
  SwInspector *self = SW_INSPECTOR (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  if (self->stack != NULL)
    gtk_widget_unparent (GTK_WIDGET (g_steal_pointer (&self->stack)));

  G_OBJECT_CLASS (sw_inspector_parent_class)->dispose (object);
}

static void
sw_inspector_class_init (SwInspectorClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_inspector_dispose;
  widget_class->root = sw_inspector_root;
  widget_class->unroot = sw_inspector_unroot;

  g_type_ensure (SW_TYPE_CLIENT_FORM);
  g_type_ensure (SW_TYPE_DOSE_FORM);
  g_type_ensure (SW_TYPE_ITEM_FORM);
  g_type_ensure (SW_TYPE_SEVERAL_FORM);

  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-inspector.ui");
  gtk_widget_class_bind_template_child (widget_class, SwInspector, stack);
  gtk_widget_class_bind_template_child (widget_class, SwInspector, dose_page);
  gtk_widget_class_bind_template_child (widget_class, SwInspector, item_page);
  gtk_widget_class_bind_template_child (widget_class, SwInspector, several_page);
  gtk_widget_class_bind_template_child (widget_class, SwInspector, client_page);
  gtk_widget_class_bind_template_child (widget_class, SwInspector, dose_form);
  gtk_widget_class_bind_template_child (widget_class, SwInspector, item_form);
  gtk_widget_class_bind_template_child (widget_class, SwInspector, several_form);
  gtk_widget_class_bind_template_child (widget_class, SwInspector, client_form);
  gtk_widget_class_set_css_name (widget_class, "inspector");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sw_inspector_init (SwInspector *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * sw_inspector_set_document:
 * @self: the inspector
 * @document: (nullable): what to show
 */
void
sw_inspector_set_document (SwInspector *self,
                           SwDocument  *document)
{
  g_return_if_fail (SW_IS_INSPECTOR (self));
  g_return_if_fail (document == NULL || SW_IS_DOCUMENT (document));

  if (self->document == document)
    return;

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  if (document != NULL)
    {
      g_signal_connect_object (document, "changed", G_CALLBACK (document_changed_cb), self, G_CONNECT_SWAPPED);
      g_signal_connect_object (document, "chosen-changed", G_CALLBACK (show_chosen), self, G_CONNECT_SWAPPED);
    }
  sw_client_form_set_document (self->client_form, document);
  show_chosen (self);
}

/**
 * sw_inspector_set_pictures:
 * @self: the inspector
 * @pictures: where figures come from
 */
void
sw_inspector_set_pictures (SwInspector *self,
                           SwPictures  *pictures)
{
  g_return_if_fail (SW_IS_INSPECTOR (self));

  sw_dose_form_set_pictures (self->dose_form, pictures);
}

/**
 * sw_inspector_focus_form:
 * @self: the inspector
 *
 * Puts the cursor where one begins to write: into the dose line, or the first field of another form.
 */
void
sw_inspector_focus_form (SwInspector *self)
{
  GtkWidget *page;

  g_return_if_fail (SW_IS_INSPECTOR (self));

  page = gtk_stack_get_visible_child (self->stack);
  if (page == self->dose_page)
    gtk_widget_grab_focus (GTK_WIDGET (self->dose_form));
  else
    gtk_widget_child_focus (page, GTK_DIR_TAB_FORWARD);
}
