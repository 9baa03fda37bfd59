/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The catalogue beside the session: finding the fitting exercise while talking with the client. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-catalogue-pane-private.h"
#include "sw-shortcuts.h"

G_DEFINE_FINAL_TYPE (SwCataloguePane, sw_catalogue_pane, GTK_TYPE_WIDGET)

static void
question_changed_cb (SwCataloguePane *self)
{
  if (self->clearing)
    return;

  sw_catalogue_pane_forget_related (self);
  sw_catalogue_pane_find (self, TRUE);
}

static void
search_stopped_cb (SwCataloguePane *self)
{
  gtk_editable_set_text (GTK_EDITABLE (self->search_entry), "");
}

static void
search_activated_cb (SwCataloguePane *self)
{
  sw_catalogue_pane_focus_results (self);
}

static gboolean
search_key_cb (SwCataloguePane *self,
               guint            key)
{
  if (key != GDK_KEY_Down && key != GDK_KEY_KP_Down)
    return GDK_EVENT_PROPAGATE;

  return sw_catalogue_pane_focus_results (self);
}

/* Escape leads back to the search, and a letter typed on a card begins another one. */
static gboolean
results_key_cb (SwCataloguePane       *self,
                guint                  key,
                guint                  code,
                GdkModifierType        state,
                GtkEventControllerKey *controller)
{
  gunichar letter = gdk_keyval_to_unicode (key);

  (void) code;
  if (key == GDK_KEY_Escape)
    {
      sw_catalogue_pane_focus_search (self);
      return GDK_EVENT_STOP;
    }
  if (!g_unichar_isalnum (letter) || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK)) != 0)
    return GDK_EVENT_PROPAGATE;

  sw_catalogue_pane_focus_search (self);
  return gtk_event_controller_key_forward (controller,
                                           GTK_WIDGET (gtk_editable_get_delegate (GTK_EDITABLE (self->search_entry))));
}

static void
card_activated_cb (SwCataloguePane *self,
                   guint            position)
{
  gtk_single_selection_set_selected (self->selection, position);
  gtk_widget_activate_action (GTK_WIDGET (self), "catalogue.add", NULL);
}

/* The menu took the focus from the card. */
static void
menu_closed_cb (SwCataloguePane *self)
{
  sw_catalogue_pane_focus_results (self);
}

static void
selected_cb (SwCataloguePane *self)
{
  sw_catalogue_pane_update_actions (self);
  sw_catalogue_pane_update_details (self);
}

/* Cards */

static void
menu_wanted_cb (SwExerciseCard *card,
                double          x,
                double          y,
                gpointer        data)
{
  SwCataloguePane *self = data;

  sw_catalogue_pane_choose (self, sw_exercise_card_get_exercise (card));
  sw_catalogue_pane_open_menu (self, GTK_WIDGET (card), x, y);
}

/* In GTK 4.8 a list item has lost its child when "teardown" comes. */
static void
card_destroyed_cb (SwCataloguePane *self,
                   SwExerciseCard  *card)
{
  if (self->cards != NULL)
    g_ptr_array_remove_fast (self->cards, card);
}

static void
setup_card_cb (SwCataloguePane *self,
               GtkListItem     *list_item)
{
  GtkWidget *card = sw_exercise_card_new (self->pictures);

  g_signal_connect (card, "menu-wanted", G_CALLBACK (menu_wanted_cb), self);
  g_signal_connect_object (card, "destroy", G_CALLBACK (card_destroyed_cb), self, G_CONNECT_SWAPPED);
  g_ptr_array_add (self->cards, card);
  gtk_list_item_set_child (list_item, card);
}

static void
name_card (SwExerciseCard *card)
{
  SwExercise *exercise = sw_exercise_card_get_exercise (card);
  GtkWidget *row = gtk_widget_get_parent (GTK_WIDGET (card));
  g_autofree char *description = NULL;

  if (exercise == NULL || row == NULL)
    return;

  description = sw_exercise_card_dup_description (card);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  sw_exercise_card_text_of (exercise)->name, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  description, -1);
}

static void
bind_card_cb (SwCataloguePane *self,
              GtkListItem     *list_item)
{
  SwExerciseCard *card = SW_EXERCISE_CARD (gtk_list_item_get_child (list_item));

  sw_exercise_card_set_precautions (card, sw_catalogue_pane_get_precautions (self));
  sw_exercise_card_set_exercise (card, gtk_list_item_get_item (list_item));
  name_card (card);
}

static void
unbind_card_cb (SwCataloguePane *self,
                GtkListItem     *list_item)
{
  (void) self;
  sw_exercise_card_set_exercise (SW_EXERCISE_CARD (gtk_list_item_get_child (list_item)), NULL);
}

/* The document */

static void
update_precautions (SwCataloguePane *self)
{
  SwSet precautions = sw_catalogue_pane_get_precautions (self);

  for (guint i = 0; i < self->cards->len; i++)
    {
      SwExerciseCard *card = g_ptr_array_index (self->cards, i);

      sw_exercise_card_set_precautions (card, precautions);
      name_card (card);
    }
}

static void
set_catalogue (SwCataloguePane *self,
               SwCatalogue     *catalogue)
{
  if (self->catalogue == catalogue)
    return;

  if (self->catalogue != NULL)
    g_clear_signal_handler (&self->catalogue_handler, self->catalogue);
  g_set_object (&self->catalogue, catalogue);
  if (catalogue != NULL)
    self->catalogue_handler = g_signal_connect_swapped (catalogue, "items-changed",
                                                        G_CALLBACK (sw_catalogue_pane_index), self);
  sw_catalogue_pane_index (self);
}

static void
document_changed_cb (SwCataloguePane *self)
{
  SwClient *client = sw_programme_get_client (sw_document_get_programme (self->document));

  set_catalogue (self, sw_document_get_catalogue (self->document));
  sw_filter_bar_set_client_equipment (self->filters, sw_client_get_equipment (client));
  update_precautions (self);
  sw_catalogue_pane_update_actions (self);
  sw_catalogue_pane_update_details (self);
}

static void
sw_catalogue_pane_dispose (GObject *object)
{
  SwCataloguePane *self = SW_CATALOGUE_PANE (object);
  GtkWidget *child;

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  if (self->catalogue != NULL)
    g_clear_signal_handler (&self->catalogue_handler, self->catalogue);
  if (self->selection != NULL)
    g_signal_handlers_disconnect_by_data (self->selection, self);

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);

  sw_catalogue_pane_stop_indexing (self);
  sw_catalogue_pane_forget_related (self);
  g_clear_object (&self->document);
  g_clear_object (&self->catalogue);
  g_clear_object (&self->pictures);
  g_clear_object (&self->selection);
  g_clear_object (&self->list);
  g_clear_object (&self->actions);
  g_clear_pointer (&self->search, sw_search_free);
  g_clear_pointer (&self->cards, g_ptr_array_unref);

  G_OBJECT_CLASS (sw_catalogue_pane_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/setwright/Setwright/ui/sw-catalogue-pane.ui");
  gtk_widget_class_bind_template_child (widget_class, SwCataloguePane, search_entry);
  gtk_widget_class_bind_template_child (widget_class, SwCataloguePane, filters);
  gtk_widget_class_bind_template_child (widget_class, SwCataloguePane, hits);
  gtk_widget_class_bind_template_child (widget_class, SwCataloguePane, clear);
  gtk_widget_class_bind_template_child (widget_class, SwCataloguePane, paned);
  gtk_widget_class_bind_template_child (widget_class, SwCataloguePane, stack);
  gtk_widget_class_bind_template_child (widget_class, SwCataloguePane, spinner);
  gtk_widget_class_bind_template_child (widget_class, SwCataloguePane, loading);
  gtk_widget_class_bind_template_child (widget_class, SwCataloguePane, results);
  gtk_widget_class_bind_template_child (widget_class, SwCataloguePane, nothing);
  gtk_widget_class_bind_template_child (widget_class, SwCataloguePane, nothing_words);
  gtk_widget_class_bind_template_child (widget_class, SwCataloguePane, grid);
  gtk_widget_class_bind_template_child (widget_class, SwCataloguePane, details);
  gtk_widget_class_bind_template_child (widget_class, SwCataloguePane, menu);
  gtk_widget_class_bind_template_callback (widget_class, question_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, search_stopped_cb);
  gtk_widget_class_bind_template_callback (widget_class, search_activated_cb);
  gtk_widget_class_bind_template_callback (widget_class, search_key_cb);
  gtk_widget_class_bind_template_callback (widget_class, results_key_cb);
  gtk_widget_class_bind_template_callback (widget_class, card_activated_cb);
  gtk_widget_class_bind_template_callback (widget_class, menu_closed_cb);
  gtk_widget_class_bind_template_callback (widget_class, setup_card_cb);
  gtk_widget_class_bind_template_callback (widget_class, bind_card_cb);
  gtk_widget_class_bind_template_callback (widget_class, unbind_card_cb);
}

static void
sw_catalogue_pane_class_init (SwCataloguePaneClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_catalogue_pane_dispose;

  g_type_ensure (SW_TYPE_FILTER_BAR);
  g_type_ensure (SW_TYPE_EXERCISE_DETAILS);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "catalogue");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  bind_template (widget_class);
}

static void
sw_catalogue_pane_init (SwCataloguePane *self)
{
  GtkLayoutManager *layout;

  self->cards = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);

  self->list = sw_exercise_list_new ();
  self->selection = g_object_new (GTK_TYPE_SINGLE_SELECTION, "model", self->list, "autoselect", FALSE,
                                  "can-unselect", TRUE, NULL);
  g_signal_connect_swapped (self->selection, "notify::selected-item", G_CALLBACK (selected_cb), self);
  gtk_grid_view_set_model (self->grid, GTK_SELECTION_MODEL (self->selection));

  sw_catalogue_pane_add_actions (self);
  sw_shortcuts_add_to_widget (GTK_WIDGET (self), SW_SHORTCUT_CATALOGUE);
  sw_shortcuts_add_to_widget (GTK_WIDGET (self->grid), SW_SHORTCUT_CARDS);
  sw_catalogue_pane_find (self, FALSE);
}

/**
 * sw_catalogue_pane_set_document:
 * @document: (nullable): whose session the exercises are added to, and whose catalogue is shown
 */
void
sw_catalogue_pane_set_document (SwCataloguePane *self,
                                SwDocument      *document)
{
  g_return_if_fail (SW_IS_CATALOGUE_PANE (self));

  if (self->document == document)
    return;

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  if (document == NULL)
    {
      sw_catalogue_pane_update_actions (self);
      return;
    }

  g_signal_connect_swapped (document, "changed", G_CALLBACK (document_changed_cb), self);
  document_changed_cb (self);
}

/**
 * sw_catalogue_pane_set_pictures:
 * @pictures: where the figures come from
 */
void
sw_catalogue_pane_set_pictures (SwCataloguePane *self,
                                SwPictures      *pictures)
{
  g_return_if_fail (SW_IS_CATALOGUE_PANE (self));

  g_set_object (&self->pictures, pictures);
  sw_exercise_details_set_pictures (self->details, pictures);
  for (guint i = 0; i < self->cards->len; i++)
    sw_exercise_card_set_pictures (g_ptr_array_index (self->cards, i), pictures);
}

/**
 * sw_catalogue_pane_focus_search:
 *
 * Puts the cursor into the search, with what stands there selected, so that typing begins a new one.
 */
void
sw_catalogue_pane_focus_search (SwCataloguePane *self)
{
  g_return_if_fail (SW_IS_CATALOGUE_PANE (self));

  gtk_widget_grab_focus (GTK_WIDGET (self->search_entry));
  gtk_editable_select_region (GTK_EDITABLE (self->search_entry), 0, -1);
}

/**
 * sw_catalogue_pane_get_exercise:
 *
 * Returns: (transfer none) (nullable): the exercise whose card is chosen; with none chosen, the one whose
 *   details are shown
 */
SwExercise *
sw_catalogue_pane_get_exercise (SwCataloguePane *self)
{
  SwExercise *exercise;

  g_return_val_if_fail (SW_IS_CATALOGUE_PANE (self), NULL);

  exercise = gtk_single_selection_get_selected_item (self->selection);
  if (exercise == NULL && gtk_widget_get_visible (GTK_WIDGET (self->details)))
    exercise = sw_exercise_details_get_exercise (self->details);

  return exercise;
}

/**
 * sw_catalogue_pane_choose:
 * @exercise: an exercise of the catalogue
 *
 * Makes an exercise the chosen card; one that is not among the results is looked up in the whole catalogue.
 */
void
sw_catalogue_pane_choose (SwCataloguePane *self,
                          SwExercise      *exercise)
{
  guint position;

  if (exercise == NULL)
    return;
  if (!sw_exercise_list_find (self->list, exercise, &position))
    {
      sw_catalogue_pane_clear (self);
      if (!sw_exercise_list_find (self->list, exercise, &position))
        return;
    }

  gtk_single_selection_set_selected (self->selection, position);
  gtk_widget_activate_action (GTK_WIDGET (self->grid), "list.scroll-to-item", "u", position);
}

/**
 * sw_catalogue_pane_focus_results:
 *
 * Gives the chosen card the focus, else the first.
 *
 * Returns: FALSE when there is none
 */
gboolean
sw_catalogue_pane_focus_results (SwCataloguePane *self)
{
  SwExerciseCard *card;

  if (g_list_model_get_n_items (G_LIST_MODEL (self->list)) == 0)
    return FALSE;

  if (gtk_single_selection_get_selected_item (self->selection) == NULL)
    gtk_single_selection_set_selected (self->selection, 0);
  gtk_widget_activate_action (GTK_WIDGET (self->grid), "list.scroll-to-item", "u",
                              gtk_single_selection_get_selected (self->selection));

  card = sw_catalogue_pane_get_card (self);
  return card != NULL && gtk_widget_grab_focus (gtk_widget_get_parent (GTK_WIDGET (card)));
}

/**
 * sw_catalogue_pane_update_details:
 *
 * Fills the details when they are shown; with no card chosen they keep what they have.
 */
void
sw_catalogue_pane_update_details (SwCataloguePane *self)
{
  SwExercise *exercise = sw_catalogue_pane_get_exercise (self);

  if (exercise != NULL && gtk_widget_get_visible (GTK_WIDGET (self->details)))
    sw_exercise_details_show (self->details, exercise, self->catalogue,
                              sw_catalogue_pane_get_precautions (self));
}

/**
 * sw_catalogue_pane_get_card:
 *
 * Returns: (transfer none) (nullable): the card of the chosen exercise, or NULL while it is scrolled far away
 */
SwExerciseCard *
sw_catalogue_pane_get_card (SwCataloguePane *self)
{
  SwExercise *exercise = sw_catalogue_pane_get_exercise (self);

  for (guint i = 0; exercise != NULL && i < self->cards->len; i++)
    if (sw_exercise_card_get_exercise (g_ptr_array_index (self->cards, i)) == exercise)
      return g_ptr_array_index (self->cards, i);

  return NULL;
}

/**
 * sw_catalogue_pane_get_precautions:
 *
 * Returns: the client's precautions; none without a document
 */
SwSet
sw_catalogue_pane_get_precautions (SwCataloguePane *self)
{
  if (self->document == NULL)
    return 0;

  return sw_client_get_precautions (sw_programme_get_client (sw_document_get_programme (self->document)));
}
