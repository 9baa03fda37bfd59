/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Three pages that share the document: what was done, by which rules, and what comes in the weeks ahead. */
#include "config.h"

#include "sw-progress-window.h"

#include "sw-diary-table.h"
#include "sw-edit-actions.h"
#include "sw-plan-table.h"
#include "sw-rules-form.h"
#include "sw-shortcuts.h"

struct _SwProgressWindow
{
  GtkWindow parent_instance;

  SwDiaryTable *diary;
  SwRulesForm *rules;
  SwPlanTable *plan;
};

G_DEFINE_FINAL_TYPE (SwProgressWindow, sw_progress_window, GTK_TYPE_WINDOW)

static void
sw_progress_window_class_init (SwProgressWindowClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  g_type_ensure (SW_TYPE_DIARY_TABLE);
  g_type_ensure (SW_TYPE_PLAN_TABLE);
  g_type_ensure (SW_TYPE_RULES_FORM);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-progress-window.ui");
  gtk_widget_class_bind_template_child (widget_class, SwProgressWindow, diary);
  gtk_widget_class_bind_template_child (widget_class, SwProgressWindow, rules);
  gtk_widget_class_bind_template_child (widget_class, SwProgressWindow, plan);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
sw_progress_window_init (SwProgressWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * sw_progress_window_new:
 * @parent: the window it belongs to
 * @document: whose diary, rules and plan are shown
 *
 * Returns: (transfer none): the window; it goes with its parent
 */
GtkWidget *
sw_progress_window_new (GtkWindow  *parent,
                        SwDocument *document)
{
  GActionGroup *edits;
  SwProgressWindow *self;

  g_return_val_if_fail (GTK_IS_WINDOW (parent), NULL);
  g_return_val_if_fail (SW_IS_DOCUMENT (document), NULL);

  self = g_object_new (SW_TYPE_PROGRESS_WINDOW, "transient-for", parent, NULL);
  /* Undo is to work here, too. */
  edits = sw_edit_actions_new (document);
  gtk_widget_insert_action_group (GTK_WIDGET (self), "edit", edits);
  g_object_unref (edits);
  sw_shortcuts_add_to_widget (GTK_WIDGET (self), SW_SHORTCUT_EVERYWHERE);
  sw_diary_table_set_document (self->diary, document);
  sw_rules_form_set_document (self->rules, document);
  sw_plan_table_set_document (self->plan, document);
  return GTK_WIDGET (self);
}
