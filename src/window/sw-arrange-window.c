/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A session in a better order, before it is taken. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-arrange-window.h"
#include "sw-arrangement-words.h"
#include "sw-edit-labels.h"
#include "sw-edits.h"
#include "sw-labels.h"

struct _SwArrangeWindow
{
  GtkWindow parent_instance;

  GtkLabel *saving;
  GtkLabel *limits;
  GtkWidget *order;
  GtkListBox *list;
  GtkButton *close;
  GtkButton *take;

  SwDocument *document;
  SwArrangement *arrangement;
};

G_DEFINE_FINAL_TYPE (SwArrangeWindow, sw_arrange_window, GTK_TYPE_WINDOW)

static GtkWidget *
label_new (const char *words,
           const char *css_class)
{
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static int
n_exercises_of (SwItem *item)
{
  GListModel *members = G_LIST_MODEL (sw_item_get_items (item));
  int n = sw_item_get_exercise (item) != NULL;

  for (guint i = 0; i < g_list_model_get_n_items (members); i++)
    {
      g_autoptr (SwItem) member = g_list_model_get_item (members, i);

      n += sw_item_get_exercise (member) != NULL;
    }
  return n;
}

/* The number on the handout of the item's first exercise, as the session stands. */
static int
find_number (SwArrangeWindow *self,
             SwItem          *item)
{
  GListModel *sections = G_LIST_MODEL (sw_session_get_sections (sw_document_get_session (self->document)));
  int number = 1;

  for (guint i = 0; i < g_list_model_get_n_items (sections); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);
      GListModel *items = G_LIST_MODEL (sw_section_get_items (section));

      for (guint k = 0; k < g_list_model_get_n_items (items); k++)
        {
          g_autoptr (SwItem) other = g_list_model_get_item (items, k);

          if (other == item)
            return number;
          number += n_exercises_of (other);
        }
    }
  g_return_val_if_reached (0);
}

/* A row of one item: its new number, what it is, and its old number where that is another. */
static GtkWidget *
row_new (SwArrangeWindow *self,
         SwItem          *item,
         int              number)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  GtkWidget *place, *name_label;
  g_autofree char *name = sw_edit_object_name (item);
  g_autofree char *digits = NULL;
  g_autofree char *was = NULL;
  g_autofree char *told = NULL;
  gboolean numbered = n_exercises_of (item) > 0;
  int before = find_number (self, item);
  gboolean moved = numbered && before != number;
  const char *position = "";

  digits = numbered ? g_strdup_printf ("%d", number) : g_strdup ("");
  /* Translators: the number that an exercise has now, before it moves */
  was = moved ? g_strdup_printf (_("now %d"), before) : g_strdup ("");
  told = moved ? g_strdup_printf (_("%d: %s, now %d"), number, name, before) : g_strdup_printf ("%s %s", digits, name);

  place = label_new (digits, "figures");
  gtk_label_set_width_chars (GTK_LABEL (place), 2);
  gtk_label_set_xalign (GTK_LABEL (place), 1.0f);
  name_label = label_new (name, moved ? "heading" : "body");
  gtk_widget_set_hexpand (name_label, TRUE);
  gtk_box_append (GTK_BOX (box), place);
  gtk_box_append (GTK_BOX (box), name_label);
  if (sw_item_get_exercise (item) != NULL)
    position = sw_label (SW_TYPE_POSITION, (int) sw_exercise_get_facts (sw_item_get_exercise (item))->position);
  gtk_box_append (GTK_BOX (box), label_new (position, "dim"));
  gtk_box_append (GTK_BOX (box), label_new (was, "dim"));
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, told, -1);
  return row;
}

static void
fill_list (SwArrangeWindow *self)
{
  GListModel *sections = G_LIST_MODEL (sw_session_get_sections (sw_document_get_session (self->document)));
  int number = 1;

  for (guint i = 0; i < self->arrangement->sections->len; i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);
      GPtrArray *items = self->arrangement->sections->pdata[i];
      g_autofree char *title = sw_edit_object_name (section);
      GtkWidget *head = gtk_list_box_row_new ();

      if (items->len == 0)
        continue;
      gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (head), label_new (title, "dim"));
      gtk_list_box_append (self->list, head);
      for (guint k = 0; k < items->len; k++)
        {
          gtk_list_box_append (self->list, row_new (self, items->pdata[k], number));
          number += n_exercises_of (items->pdata[k]);
        }
    }
}

static void
show_words (SwArrangeWindow *self)
{
  SwClinic *clinic = sw_programme_get_clinic (sw_document_get_programme (self->document));
  g_autofree char *saving = sw_arrangement_describe (self->arrangement);
  g_auto (GStrv) costs = sw_arrangement_dup_limits (sw_document_get_session (self->document), clinic);
  g_autofree char *lines = g_strjoinv ("\n", costs);
  g_autofree char *limits = NULL;
  const char *rule = _("Each exercise stays in its section, with the rests and self-checks right behind it.");

  limits = *lines != '\0' ? g_strdup_printf ("%s\n%s", rule, lines) : g_strdup (rule);
  gtk_label_set_label (self->saving, saving);
  gtk_label_set_label (self->limits, limits);
}

static void
take_clicked_cb (SwArrangeWindow *self)
{
  SwSession *session = sw_document_get_session (self->document);
  g_autofree char *name = sw_edit_object_name (session);
  /* Translators: %s is a session's title */
  g_autofree char *label = g_strdup_printf (_("Arrange “%s”"), name);

  sw_edit_arrange (sw_document_get_history (self->document), session, self->arrangement->sections, label);
  gtk_window_destroy (GTK_WINDOW (self));
}

static void
close_clicked_cb (SwArrangeWindow *self)
{
  gtk_window_destroy (GTK_WINDOW (self));
}

static void
sw_arrange_window_dispose (GObject *object)
{
  SwArrangeWindow *self = SW_ARRANGE_WINDOW (object);

  g_clear_pointer (&self->arrangement, sw_arrangement_free);
  g_clear_object (&self->document);

  G_OBJECT_CLASS (sw_arrange_window_parent_class)->dispose (object);
}

static void
sw_arrange_window_class_init (SwArrangeWindowClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_arrange_window_dispose;

  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-arrange-window.ui");
  gtk_widget_class_bind_template_child (widget_class, SwArrangeWindow, saving);
  gtk_widget_class_bind_template_child (widget_class, SwArrangeWindow, limits);
  gtk_widget_class_bind_template_child (widget_class, SwArrangeWindow, order);
  gtk_widget_class_bind_template_child (widget_class, SwArrangeWindow, list);
  gtk_widget_class_bind_template_child (widget_class, SwArrangeWindow, close);
  gtk_widget_class_bind_template_child (widget_class, SwArrangeWindow, take);
  gtk_widget_class_bind_template_callback (widget_class, take_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, close_clicked_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
sw_arrange_window_init (SwArrangeWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * sw_arrange_window_new:
 * @parent: the window it belongs to
 * @document: a document that shows a session
 *
 * Returns: (transfer none): a window that offers a better order of the session, or says that there is none; it goes with
 *   its parent
 */
GtkWidget *
sw_arrange_window_new (GtkWindow  *parent,
                       SwDocument *document)
{
  SwArrangeWindow *self;
  SwSession *session;

  g_return_val_if_fail (GTK_IS_WINDOW (parent), NULL);
  g_return_val_if_fail (SW_IS_DOCUMENT (document), NULL);
  session = sw_document_get_session (document);
  g_return_val_if_fail (SW_IS_SESSION (session), NULL);

  self = g_object_new (SW_TYPE_ARRANGE_WINDOW, "transient-for", parent, NULL);
  self->document = g_object_ref (document);
  self->arrangement = sw_arrangement_new (session, sw_programme_get_clinic (sw_document_get_programme (document)));
  show_words (self);
  gtk_widget_set_visible (self->order, self->arrangement->better);
  gtk_widget_set_visible (GTK_WIDGET (self->take), self->arrangement->better);
  if (self->arrangement->better)
    {
      fill_list (self);
    }
  else
    {
      gtk_window_set_default_size (GTK_WINDOW (self), 460, -1);
      gtk_button_set_label (self->close, _("_Close"));
    }
  gtk_widget_grab_focus (GTK_WIDGET (self->arrangement->better ? self->take : self->close));
  return GTK_WIDGET (self);
}
