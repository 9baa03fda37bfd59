/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A field for more than one line. */
#include "config.h"

#include <string.h>

#include "sw-text-area.h"

struct _SwTextArea
{
  GtkWidget parent_instance;

  GtkTextView *view;
  gboolean setting;
};

G_DEFINE_FINAL_TYPE (SwTextArea, sw_text_area, GTK_TYPE_WIDGET)

enum
{
  CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
buffer_changed_cb (SwTextArea *self)
{
  if (!self->setting)
    g_signal_emit (self, signals[CHANGED], 0);
}

static gboolean
sw_text_area_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (SW_TEXT_AREA (widget)->view));
}

static void
sw_text_area_dispose (GObject *object)
{
  SwTextArea *self = SW_TEXT_AREA (object);

  if (self->view != NULL)
    gtk_widget_unparent (GTK_WIDGET (g_steal_pointer (&self->view)));

  G_OBJECT_CLASS (sw_text_area_parent_class)->dispose (object);
}

static void
sw_text_area_class_init (SwTextAreaClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_text_area_dispose;
  widget_class->grab_focus = sw_text_area_grab_focus;

  signals[CHANGED] = g_signal_new ("changed", SW_TYPE_TEXT_AREA, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);

  gtk_widget_class_set_css_name (widget_class, "textarea");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sw_text_area_init (SwTextArea *self)
{
  GtkTextBuffer *buffer;

  self->view = GTK_TEXT_VIEW (gtk_text_view_new ());
  gtk_text_view_set_wrap_mode (self->view, GTK_WRAP_WORD_CHAR);
  gtk_text_view_set_accepts_tab (self->view, FALSE);
  gtk_widget_set_parent (GTK_WIDGET (self->view), GTK_WIDGET (self));

  buffer = gtk_text_view_get_buffer (self->view);
  gtk_text_buffer_set_enable_undo (buffer, FALSE);
  g_signal_connect_object (buffer, "changed", G_CALLBACK (buffer_changed_cb), self, G_CONNECT_SWAPPED);
}

/**
 * sw_text_area_dup_text:
 * @self: a text area
 *
 * Returns: (transfer full): what is written
 */
char *
sw_text_area_dup_text (SwTextArea *self)
{
  GtkTextBuffer *buffer;
  GtkTextIter start, end;

  g_return_val_if_fail (SW_IS_TEXT_AREA (self), NULL);

  buffer = gtk_text_view_get_buffer (self->view);
  gtk_text_buffer_get_bounds (buffer, &start, &end);
  return gtk_text_buffer_get_text (buffer, &start, &end, TRUE);
}

/**
 * sw_text_area_set_text:
 * @self: a text area
 * @text: what to show; when it is shown already, the cursor stays where it is
 */
void
sw_text_area_set_text (SwTextArea *self,
                       const char *text)
{
  g_autofree char *shown = NULL;

  g_return_if_fail (SW_IS_TEXT_AREA (self));
  g_return_if_fail (text != NULL);

  shown = sw_text_area_dup_text (self);
  if (strcmp (shown, text) == 0)
    return;

  self->setting = TRUE;
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (self->view), text, -1);
  self->setting = FALSE;
}

/**
 * sw_text_area_set_name:
 * @self: a text area
 * @name: its name for assistive tools
 */
void
sw_text_area_set_name (SwTextArea *self,
                       const char *name)
{
  g_return_if_fail (SW_IS_TEXT_AREA (self));

  gtk_accessible_update_property (GTK_ACCESSIBLE (self->view), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}
