/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What can be done with the chosen card: one table for keys, menu, buttons and tests. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-catalogue-pane-private.h"
#include "sw-edits.h"

/* What the details want of the height; the cards keep what is left, at least a row of figures. */
#define DETAILS_PX 420

static void
add_activated_cb (GSimpleAction *action,
                  GVariant      *parameter,
                  gpointer       data)
{
  SwCataloguePane *self = data;
  SwExercise *exercise = sw_catalogue_pane_get_exercise (self);
  SwItem *item;
  g_autofree char *label = NULL;

  (void) action;
  (void) parameter;
  /* Translators: what undo will name; %s is the name of an exercise */
  label = g_strdup_printf (_("Add “%s”"), sw_exercise_card_text_of (exercise)->name);
  item = sw_edit_add_exercise (sw_document_get_history (self->document),
                               sw_document_get_programme (self->document),
                               sw_document_get_session (self->document), exercise, label);
  sw_document_choose_item (self->document, item);
}

static void
play_activated_cb (GSimpleAction *action,
                   GVariant      *parameter,
                   gpointer       data)
{
  SwCataloguePane *self = data;
  SwExerciseCard *card = sw_catalogue_pane_get_card (self);

  (void) action;
  (void) parameter;
  if (gtk_widget_get_visible (GTK_WIDGET (self->details)))
    sw_exercise_details_toggle_motion (self->details);
  else if (card != NULL)
    sw_exercise_card_toggle_motion (card);
}

static void
details_toggled_cb (GSimpleAction *action,
                    GVariant      *state,
                    gpointer       data)
{
  SwCataloguePane *self = data;
  gboolean shown = g_variant_get_boolean (state);

  if (shown && sw_catalogue_pane_get_exercise (self) == NULL)
    gtk_single_selection_set_selected (self->selection, 0);
  if (shown && sw_catalogue_pane_get_exercise (self) == NULL)
    return;

  if (shown && !gtk_widget_get_visible (GTK_WIDGET (self->details)))
    gtk_paned_set_position (self->paned,
                            MAX (gtk_widget_get_height (GTK_WIDGET (self->paned)) - DETAILS_PX, 0));
  if (!shown && gtk_widget_get_focus_child (GTK_WIDGET (self->paned)) == GTK_WIDGET (self->details))
    sw_catalogue_pane_focus_results (self);

  gtk_widget_set_visible (GTK_WIDGET (self->details), shown);
  g_simple_action_set_state (action, state);
  sw_catalogue_pane_update_details (self);
  if (shown)
    sw_catalogue_pane_choose (self, sw_catalogue_pane_get_exercise (self));
}

static void
menu_activated_cb (GSimpleAction *action,
                   GVariant      *parameter,
                   gpointer       data)
{
  SwCataloguePane *self = data;
  SwExerciseCard *card = sw_catalogue_pane_get_card (self);

  (void) action;
  (void) parameter;
  if (card != NULL)
    sw_catalogue_pane_open_menu (self, GTK_WIDGET (card), gtk_widget_get_width (GTK_WIDGET (card)) / 2.0,
                                 gtk_widget_get_height (GTK_WIDGET (card)) / 2.0);
}

/* The exercises of @ids that the catalogue has. */
static GPtrArray *
look_up (SwCataloguePane  *self,
         char            **ids)
{
  GPtrArray *exercises = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; ids != NULL && ids[i] != NULL; i++)
    {
      SwExercise *exercise = sw_catalogue_lookup (self->catalogue, ids[i]);

      if (exercise != NULL)
        g_ptr_array_add (exercises, g_object_ref (exercise));
    }

  return exercises;
}

static void
easier_activated_cb (GSimpleAction *action,
                     GVariant      *parameter,
                     gpointer       data)
{
  SwCataloguePane *self = data;
  SwExercise *exercise = sw_catalogue_pane_get_exercise (self);
  g_autoptr (GPtrArray) easier = look_up (self, sw_exercise_get_facts (exercise)->easier);

  (void) action;
  (void) parameter;
  sw_catalogue_pane_show_related (self, easier,
                                  /* Translators: a heading over exercises; %s is the name of another one */
                                  g_strdup_printf (_("Easier than “%s”"),
                                                   sw_exercise_card_text_of (exercise)->name));
}

static void
harder_activated_cb (GSimpleAction *action,
                     GVariant      *parameter,
                     gpointer       data)
{
  SwCataloguePane *self = data;
  SwExercise *exercise = sw_catalogue_pane_get_exercise (self);
  g_autoptr (GPtrArray) harder = look_up (self, sw_exercise_get_facts (exercise)->harder);

  (void) action;
  (void) parameter;
  sw_catalogue_pane_show_related (self, harder,
                                  /* Translators: a heading over exercises; %s is the name of another one */
                                  g_strdup_printf (_("Harder than “%s”"),
                                                   sw_exercise_card_text_of (exercise)->name));
}

static void
show_exercise_activated_cb (GSimpleAction *action,
                            GVariant      *parameter,
                            gpointer       data)
{
  SwCataloguePane *self = data;

  (void) action;
  if (self->catalogue != NULL)
    sw_catalogue_pane_choose (self, sw_catalogue_lookup (self->catalogue, g_variant_get_string (parameter, NULL)));
}

static void
clear_activated_cb (GSimpleAction *action,
                    GVariant      *parameter,
                    gpointer       data)
{
  (void) action;
  (void) parameter;
  sw_catalogue_pane_clear (SW_CATALOGUE_PANE (data));
}

static const GActionEntry entries[] = {
  { .name = "add", .activate = add_activated_cb },
  { .name = "play", .activate = play_activated_cb },
  { .name = "details", .state = "false", .change_state = details_toggled_cb },
  { .name = "menu", .activate = menu_activated_cb },
  { .name = "show-easier", .activate = easier_activated_cb },
  { .name = "show-harder", .activate = harder_activated_cb },
  { .name = "show-exercise", .activate = show_exercise_activated_cb, .parameter_type = "s" },
  { .name = "clear", .activate = clear_activated_cb },
};

/**
 * sw_catalogue_pane_add_actions:
 *
 * Makes the actions of the pane; to be called once, when the template is there.
 */
void
sw_catalogue_pane_add_actions (SwCataloguePane *self)
{
  self->actions = g_simple_action_group_new ();
  g_action_map_add_action_entries (G_ACTION_MAP (self->actions), entries, G_N_ELEMENTS (entries), self);
  gtk_widget_insert_action_group (GTK_WIDGET (self), "catalogue", G_ACTION_GROUP (self->actions));
  sw_catalogue_pane_update_actions (self);
}

static void
enable (SwCataloguePane *self,
        const char      *name,
        gboolean         enabled)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self->actions), name);

  g_simple_action_set_enabled (G_SIMPLE_ACTION (action), enabled);
}

static gboolean
has_any (SwCataloguePane  *self,
         char            **ids)
{
  for (guint i = 0; self->catalogue != NULL && ids != NULL && ids[i] != NULL; i++)
    if (sw_catalogue_lookup (self->catalogue, ids[i]) != NULL)
      return TRUE;

  return FALSE;
}

/**
 * sw_catalogue_pane_update_actions:
 *
 * Enables what can be done with the chosen card.
 */
void
sw_catalogue_pane_update_actions (SwCataloguePane *self)
{
  SwExercise *exercise = sw_catalogue_pane_get_exercise (self);
  const SwExerciseFacts *facts = exercise != NULL ? sw_exercise_get_facts (exercise) : NULL;

  enable (self, "add", exercise != NULL && self->document != NULL
                         && sw_document_get_session (self->document) != NULL);
  enable (self, "play", exercise != NULL);
  enable (self, "menu", exercise != NULL);
  enable (self, "show-easier", facts != NULL && has_any (self, facts->easier));
  enable (self, "show-harder", facts != NULL && has_any (self, facts->harder));
}

/**
 * sw_catalogue_pane_open_menu:
 * @widget: where the pointer is
 * @x: where, in pixels of @widget
 * @y: where, in pixels of @widget
 *
 * Opens the menu of the chosen card.
 */
void
sw_catalogue_pane_open_menu (SwCataloguePane *self,
                             GtkWidget       *widget,
                             double           x,
                             double           y)
{
  graphene_point_t point;

  if (!gtk_widget_compute_point (widget, GTK_WIDGET (self), &GRAPHENE_POINT_INIT ((float) x, (float) y), &point))
    return;

  gtk_popover_set_pointing_to (self->menu, &(GdkRectangle){ (int) point.x, (int) point.y, 1, 1 });
  gtk_popover_popup (self->menu);
}
