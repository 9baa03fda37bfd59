/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What could take an exercise's place, and why. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-edit-labels.h"
#include "sw-edits.h"
#include "sw-exercise-card.h"
#include "sw-figure-view.h"
#include "sw-swap-window.h"
#include "sw-swap.h"

/* More are not compared by anybody with a client waiting. */
#define MOST_SHOWN 24

#define PICTURE_WIDTH_PX 112
#define PICTURE_HEIGHT_PX 84

struct _SwSwapWindow
{
  GtkWindow parent_instance;

  GtkLabel *heading;
  GtkToggleButton *any;
  GtkToggleButton *easier;
  GtkToggleButton *alike;
  GtkToggleButton *harder;
  GtkStack *stack;
  GtkListBox *list;
  GtkButton *take;

  SwDocument *document;
  SwItem *item;
  SwPictures *pictures;
  GPtrArray *swaps; /* SwSwap, as the rows */
};

G_DEFINE_FINAL_TYPE (SwSwapWindow, sw_swap_window, GTK_TYPE_WINDOW)

static GtkWidget *
line_new (const char *words,
          const char *css_class)
{
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static GtkWidget *
row_new (SwSwapWindow *self,
         const SwSwap *swap)
{
  const SwExerciseText *text = sw_exercise_card_text_of (swap->exercise);
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  GtkWidget *figure = sw_figure_view_new (self->pictures, PICTURE_WIDTH_PX, PICTURE_HEIGHT_PX);
  g_autofree char *described = g_strdup_printf ("%s. %s", text->name, swap->reason);

  sw_figure_view_set_exercise (SW_FIGURE_VIEW (figure), swap->exercise, FALSE);
  sw_figure_view_set_play_on_hover (SW_FIGURE_VIEW (figure), TRUE);
  gtk_widget_set_valign (words, GTK_ALIGN_CENTER);
  gtk_widget_set_hexpand (words, TRUE);
  gtk_box_append (GTK_BOX (words), line_new (text->name, "heading"));
  gtk_box_append (GTK_BOX (words), line_new (swap->reason, "reason"));
  gtk_box_append (GTK_BOX (words), line_new (text->purpose, "dim"));
  gtk_box_append (GTK_BOX (box), figure);
  gtk_box_append (GTK_BOX (box), words);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, described, -1);
  return row;
}

static SwSwapWish
get_wish (SwSwapWindow *self)
{
  if (gtk_toggle_button_get_active (self->easier))
    return SW_SWAP_EASIER;
  if (gtk_toggle_button_get_active (self->alike))
    return SW_SWAP_ALIKE;
  if (gtk_toggle_button_get_active (self->harder))
    return SW_SWAP_HARDER;

  return SW_SWAP_ANY;
}

static void
fill (SwSwapWindow *self)
{
  g_autoptr (SwSwaps) swaps = sw_swaps_new (sw_document_get_programme (self->document),
                                           sw_document_get_catalogue (self->document));
  GtkListBoxRow *row;

  while ((row = gtk_list_box_get_row_at_index (self->list, 0)) != NULL)
    gtk_list_box_remove (self->list, GTK_WIDGET (row));
  g_clear_pointer (&self->swaps, g_ptr_array_unref);

  self->swaps = sw_swaps_find (swaps, self->item, get_wish (self), MOST_SHOWN);
  for (guint i = 0; i < self->swaps->len; i++)
    gtk_list_box_append (self->list, row_new (self, self->swaps->pdata[i]));

  gtk_stack_set_visible_child_name (self->stack, self->swaps->len > 0 ? "list" : "none");
  gtk_list_box_select_row (self->list, gtk_list_box_get_row_at_index (self->list, 0));
  gtk_widget_set_sensitive (GTK_WIDGET (self->take), self->swaps->len > 0);
}

/* Each change of the choice toggles two. */
static void
wish_toggled_cb (SwSwapWindow    *self,
                 GtkToggleButton *button)
{
  if (self->document != NULL && gtk_toggle_button_get_active (button))
    fill (self);
}

static void
take (SwSwapWindow *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->list);
  g_autofree char *label = NULL;
  const SwSwap *swap;

  if (row == NULL)
    return;

  swap = self->swaps->pdata[gtk_list_box_row_get_index (row)];
  label = sw_edit_label_for_swap (self->item, swap->exercise);
  sw_edit_swap_exercise (sw_document_get_history (self->document), sw_document_get_programme (self->document), self->item,
                         swap->exercise, label);
  gtk_window_destroy (GTK_WINDOW (self));
}

static void
close_clicked_cb (SwSwapWindow *self)
{
  gtk_window_destroy (GTK_WINDOW (self));
}

static void
sw_swap_window_dispose (GObject *object)
{
  SwSwapWindow *self = SW_SWAP_WINDOW (object);

  g_clear_object (&self->document);
  g_clear_object (&self->item);
  g_clear_object (&self->pictures);
  g_clear_pointer (&self->swaps, g_ptr_array_unref);

  G_OBJECT_CLASS (sw_swap_window_parent_class)->dispose (object);
}

static void
sw_swap_window_class_init (SwSwapWindowClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_swap_window_dispose;

  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-swap-window.ui");
  gtk_widget_class_bind_template_child (widget_class, SwSwapWindow, heading);
  gtk_widget_class_bind_template_child (widget_class, SwSwapWindow, any);
  gtk_widget_class_bind_template_child (widget_class, SwSwapWindow, easier);
  gtk_widget_class_bind_template_child (widget_class, SwSwapWindow, alike);
  gtk_widget_class_bind_template_child (widget_class, SwSwapWindow, harder);
  gtk_widget_class_bind_template_child (widget_class, SwSwapWindow, stack);
  gtk_widget_class_bind_template_child (widget_class, SwSwapWindow, list);
  gtk_widget_class_bind_template_child (widget_class, SwSwapWindow, take);
  gtk_widget_class_bind_template_callback (widget_class, wish_toggled_cb);
  gtk_widget_class_bind_template_callback (widget_class, take);
  gtk_widget_class_bind_template_callback (widget_class, close_clicked_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
sw_swap_window_init (SwSwapWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * sw_swap_window_new:
 * @parent: the window it belongs to
 * @document: a document that has a catalogue
 * @item: an exercise item of it
 * @pictures: where pictures come from
 *
 * Returns: (transfer none): a window that offers what could take the item's place; it goes with its parent
 */
GtkWidget *
sw_swap_window_new (GtkWindow  *parent,
                    SwDocument *document,
                    SwItem     *item,
                    SwPictures *pictures)
{
  SwSwapWindow *self;
  g_autofree char *name = NULL;
  g_autofree char *heading = NULL;

  g_return_val_if_fail (GTK_IS_WINDOW (parent), NULL);
  g_return_val_if_fail (SW_IS_DOCUMENT (document) && sw_document_get_catalogue (document) != NULL, NULL);
  g_return_val_if_fail (SW_IS_ITEM (item) && sw_item_get_exercise (item) != NULL, NULL);

  self = g_object_new (SW_TYPE_SWAP_WINDOW, "transient-for", parent, NULL);
  self->document = g_object_ref (document);
  self->item = g_object_ref (item);
  self->pictures = g_object_ref (pictures);
  name = sw_edit_object_name (item);
  /* Translators: %s is an exercise's name */
  heading = g_strdup_printf (_("In place of “%s”"), name);
  gtk_label_set_label (self->heading, heading);
  fill (self);
  if (self->swaps->len > 0)
    gtk_widget_grab_focus (GTK_WIDGET (gtk_list_box_get_row_at_index (self->list, 0)));
  return GTK_WIDGET (self);
}
