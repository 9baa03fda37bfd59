/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The one table of keyboard shortcuts: it feeds the keys and the window that lists them. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-shortcuts.h"

typedef struct
{
  const char *action;
  const char *keys[3];
  const char *group;
  const char *words;
  SwShortcutScope scope;
} Shortcut;

static const Shortcut shortcuts[] = {
  { "app.new", { "<Control>n" }, N_ ("Programme"), N_ ("New programme"), SW_SHORTCUT_EVERYWHERE },
  { "win.new-from-this", { "<Control><Shift>n" }, N_ ("Programme"), N_ ("New programme from this one, for another client"),
    SW_SHORTCUT_EVERYWHERE },
  { "win.open", { "<Control>o" }, N_ ("Programme"), N_ ("Open a programme"), SW_SHORTCUT_EVERYWHERE },
  { "win.save", { "<Control>s" }, N_ ("Programme"), N_ ("Save"), SW_SHORTCUT_EVERYWHERE },
  { "win.save-as", { "<Control><Shift>s" }, N_ ("Programme"), N_ ("Save a copy under another name"),
    SW_SHORTCUT_EVERYWHERE },
  { "win.close", { "<Control>w" }, N_ ("Programme"), N_ ("Close the window"), SW_SHORTCUT_EVERYWHERE },
  { "app.quit", { "<Control>q" }, N_ ("Programme"), N_ ("Quit"), SW_SHORTCUT_EVERYWHERE },

  { "win.print", { "<Control>p" }, N_ ("Handout"), N_ ("Print the handout"), SW_SHORTCUT_EVERYWHERE },
  { "win.save-pdf", { "<Control>e" }, N_ ("Handout"), N_ ("Save the handout as PDF"), SW_SHORTCUT_EVERYWHERE },
  { "win.preview", { "F9" }, N_ ("Handout"), N_ ("Pages or catalogue on the left"), SW_SHORTCUT_EVERYWHERE },
  { "preview.plan", { "<Shift>F9" }, N_ ("Handout"), N_ ("Layout and parts of the pages"), SW_SHORTCUT_PREVIEW },
  { "preview.zoom-in", { "<Control>plus", "<Control>equal" }, N_ ("Handout"), N_ ("Larger pages"),
    SW_SHORTCUT_PREVIEW },
  { "preview.zoom-out", { "<Control>minus", "<Control>KP_Subtract" }, N_ ("Handout"), N_ ("Smaller pages"),
    SW_SHORTCUT_PREVIEW },
  { "preview.zoom-fit", { "<Control>0", "<Control>KP_0" }, N_ ("Handout"), N_ ("Pages as wide as the pane"),
    SW_SHORTCUT_PREVIEW },
  { "win.copy-record", { "<Control><Shift>c" }, N_ ("Handout"), N_ ("Copy the entry for the clinic's record"),
    SW_SHORTCUT_EVERYWHERE },

  { "win.search", { "<Control>f" }, N_ ("Catalogue"), N_ ("Search the catalogue"), SW_SHORTCUT_EVERYWHERE },
  { "win.show-motion", { "F8" }, N_ ("Catalogue"), N_ ("Show the motion large, for the client to see"),
    SW_SHORTCUT_EVERYWHERE },
  { "catalogue.add", { "Return", "KP_Enter" }, N_ ("Catalogue"), N_ ("Add the chosen exercise to the session"),
    SW_SHORTCUT_CARDS },
  { "catalogue.play", { "space" }, N_ ("Catalogue"), N_ ("Play the motion on the card, or stop it"),
    SW_SHORTCUT_CARDS },
  { "catalogue.details", { "F4" }, N_ ("Catalogue"), N_ ("Details of the chosen exercise"), SW_SHORTCUT_CATALOGUE },
  { "catalogue.menu", { "Menu", "<Shift>F10" }, N_ ("Catalogue"), N_ ("Menu of the chosen exercise"),
    SW_SHORTCUT_CARDS },

  { "edit.undo", { "<Control>z" }, N_ ("Editing"), N_ ("Undo"), SW_SHORTCUT_EVERYWHERE },
  { "edit.redo", { "<Control><Shift>z", "<Control>y" }, N_ ("Editing"), N_ ("Redo"), SW_SHORTCUT_EVERYWHERE },
  { "edit.remove", { "Delete" }, N_ ("Editing"), N_ ("Remove the chosen items"), SW_SHORTCUT_CANVAS },
  { "edit.duplicate", { "<Control>d" }, N_ ("Editing"), N_ ("Duplicate the chosen items"), SW_SHORTCUT_EVERYWHERE },
  { "edit.cut", { "<Control>x" }, N_ ("Editing"), N_ ("Cut the chosen items"), SW_SHORTCUT_CANVAS },
  { "edit.copy", { "<Control>c" }, N_ ("Editing"), N_ ("Copy the chosen items"), SW_SHORTCUT_CANVAS },
  { "edit.paste", { "<Control>v" }, N_ ("Editing"), N_ ("Paste after the chosen item"), SW_SHORTCUT_CANVAS },
  { "edit.shift-up", { "<Alt>Up" }, N_ ("Editing"), N_ ("Move the chosen items up"), SW_SHORTCUT_EVERYWHERE },
  { "edit.shift-down", { "<Alt>Down" }, N_ ("Editing"), N_ ("Move the chosen items down"), SW_SHORTCUT_EVERYWHERE },
  { "edit.choose-all", { "<Control>a" }, N_ ("Editing"), N_ ("Choose all items of the session"), SW_SHORTCUT_CANVAS },
  { "edit.choose-none", { "Escape" }, N_ ("Editing"), N_ ("Choose nothing: the client is shown"), SW_SHORTCUT_CANVAS },
  { "edit.make-circuit", { "<Control>g" }, N_ ("Editing"), N_ ("Make a circuit of the chosen items"),
    SW_SHORTCUT_EVERYWHERE },
  { "edit.dissolve-circuit", { "<Control><Shift>g" }, N_ ("Editing"), N_ ("Dissolve the circuit"),
    SW_SHORTCUT_EVERYWHERE },
  { "edit.swap-easier", { "<Alt>Left" }, N_ ("Editing"), N_ ("Swap for an easier exercise"), SW_SHORTCUT_CANVAS },
  { "edit.swap-harder", { "<Alt>Right" }, N_ ("Editing"), N_ ("Swap for a harder exercise"), SW_SHORTCUT_CANVAS },
  { "win.choose-swap", { "<Control>r" }, N_ ("Editing"), N_ ("Choose another exercise in its place"),
    SW_SHORTCUT_EVERYWHERE },
  { "win.arrange", { "<Control><Shift>a" }, N_ ("Editing"), N_ ("Arrange the session so that less time is lost"),
    SW_SHORTCUT_EVERYWHERE },
  { "edit.swap-sides", { "<Alt>s" }, N_ ("Editing"), N_ ("Swap left and right"), SW_SHORTCUT_CANVAS },
  { "win.progress", { "<Control>j" }, N_ ("Editing"), N_ ("Diary, rules of progress and plan"), SW_SHORTCUT_EVERYWHERE },
  { "edit.add-rest", { "<Control><Shift>r" }, N_ ("Editing"), N_ ("Add a rest"), SW_SHORTCUT_EVERYWHERE },
  { "edit.add-self-check", { "<Control><Shift>k" }, N_ ("Editing"), N_ ("Add a self-check"), SW_SHORTCUT_EVERYWHERE },
  { "canvas.context-menu", { "Menu", "<Shift>F10" }, N_ ("Editing"), N_ ("Menu of the item or section"),
    SW_SHORTCUT_CANVAS },

  { "win.findings", { "F5" }, N_ ("Window"), N_ ("Show or hide the findings"), SW_SHORTCUT_EVERYWHERE },
  { "win.focus-canvas", { "F6" }, N_ ("Window"), N_ ("Go to the session"), SW_SHORTCUT_EVERYWHERE },
  { "win.show-course", { "<Control>m" }, N_ ("Window"), N_ ("Measurements over the visits"), SW_SHORTCUT_EVERYWHERE },
  { "win.focus-form", { "<Control>l" }, N_ ("Window"), N_ ("Write the dose line, or go to the client"),
    SW_SHORTCUT_EVERYWHERE },
  { "win.inspector", { "F7" }, N_ ("Window"), N_ ("Show or hide the dose and client pane"), SW_SHORTCUT_EVERYWHERE },
  { "win.shortcuts", { "<Control>question", "F1" }, N_ ("Window"), N_ ("Keyboard shortcuts"),
    SW_SHORTCUT_EVERYWHERE },
  { "win.menu", { "F10" }, N_ ("Window"), N_ ("Main menu"), SW_SHORTCUT_EVERYWHERE },
};

/**
 * sw_shortcuts_add_to_application:
 * @application: gets the keys that work everywhere
 */
void
sw_shortcuts_add_to_application (GtkApplication *application)
{
  g_return_if_fail (GTK_IS_APPLICATION (application));

  for (gsize i = 0; i < G_N_ELEMENTS (shortcuts); i++)
    if (shortcuts[i].scope == SW_SHORTCUT_EVERYWHERE)
      gtk_application_set_accels_for_action (application, shortcuts[i].action,
                                             (const char *const *) shortcuts[i].keys);
}

/**
 * sw_shortcuts_add_to_widget:
 * @widget: gets the keys of @scope, for itself and its children
 * @scope: which keys
 */
void
sw_shortcuts_add_to_widget (GtkWidget       *widget,
                            SwShortcutScope  scope)
{
  GtkEventController *controller = gtk_shortcut_controller_new ();

  g_return_if_fail (GTK_IS_WIDGET (widget));

  for (gsize i = 0; i < G_N_ELEMENTS (shortcuts); i++)
    for (gsize k = 0; shortcuts[i].scope == scope && shortcuts[i].keys[k] != NULL; k++)
      gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (controller),
                                            gtk_shortcut_new (gtk_shortcut_trigger_parse_string (shortcuts[i].keys[k]),
                                                              gtk_named_action_new (shortcuts[i].action)));

  /* A card would take the space bar and Enter for itself, and a field the keys that undo. */
  if (scope == SW_SHORTCUT_CARDS || scope == SW_SHORTCUT_EVERYWHERE)
    gtk_event_controller_set_propagation_phase (controller, GTK_PHASE_CAPTURE);
  if (scope == SW_SHORTCUT_PREVIEW)
    gtk_shortcut_controller_set_scope (GTK_SHORTCUT_CONTROLLER (controller), GTK_SHORTCUT_SCOPE_GLOBAL);
  gtk_widget_add_controller (widget, controller);
}

static char *
label_of_keys (const Shortcut *shortcut)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (gsize k = 0; shortcut->keys[k] != NULL; k++)
    {
      g_autofree char *label = NULL;
      GdkModifierType modifiers;
      guint key;

      gtk_accelerator_parse (shortcut->keys[k], &key, &modifiers);
      label = gtk_accelerator_get_label (key, modifiers);
      if (text->len > 0)
        /* Translators: between two keys that do the same */
        g_string_append (text, _ (" or "));
      g_string_append (text, label);
    }

  return g_string_free (g_steal_pointer (&text), FALSE);
}

static GtkWidget *
heading_new (const char *words)
{
  GtkWidget *label = gtk_label_new (words);

  gtk_widget_add_css_class (label, "heading");
  gtk_widget_set_halign (label, GTK_ALIGN_START);
  gtk_widget_set_margin_top (label, 12);
  return label;
}

/**
 * sw_shortcuts_window_new:
 * @parent: the window it belongs to
 *
 * Returns: (transfer none): a window that lists all shortcuts, by group
 */
GtkWidget *
sw_shortcuts_window_new (GtkWindow *parent)
{
  GtkWidget *window = gtk_window_new ();
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *grid = gtk_grid_new ();
  GtkEventController *keys = gtk_shortcut_controller_new ();
  const char *group = NULL;
  int row = 0;

  g_return_val_if_fail (GTK_IS_WINDOW (parent), NULL);

  gtk_grid_set_column_spacing (GTK_GRID (grid), 24);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  gtk_widget_set_margin_start (grid, 24);
  gtk_widget_set_margin_end (grid, 24);
  gtk_widget_set_margin_bottom (grid, 24);

  for (gsize i = 0; i < G_N_ELEMENTS (shortcuts); i++)
    {
      g_autofree char *key_text = label_of_keys (&shortcuts[i]);
      GtkWidget *key_label = gtk_label_new (key_text);
      GtkWidget *words = gtk_label_new (_ (shortcuts[i].words));

      if (g_strcmp0 (group, shortcuts[i].group) != 0)
        {
          group = shortcuts[i].group;
          gtk_grid_attach (GTK_GRID (grid), heading_new (_ (group)), 0, row++, 2, 1);
        }

      gtk_widget_set_halign (key_label, GTK_ALIGN_START);
      gtk_widget_set_halign (words, GTK_ALIGN_START);
      gtk_widget_add_css_class (key_label, "key");
      gtk_grid_attach (GTK_GRID (grid), key_label, 0, row, 1, 1);
      gtk_grid_attach (GTK_GRID (grid), words, 1, row++, 1, 1);
    }

  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), grid);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_window_set_child (GTK_WINDOW (window), scroller);
  gtk_window_set_title (GTK_WINDOW (window), _ ("Keyboard shortcuts"));
  gtk_window_set_default_size (GTK_WINDOW (window), 560, 640);
  gtk_window_set_transient_for (GTK_WINDOW (window), parent);
  gtk_window_set_destroy_with_parent (GTK_WINDOW (window), TRUE);

  gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (keys),
                                        gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                                                          gtk_named_action_new ("window.close")));
  gtk_widget_add_controller (window, keys);

  return window;
}
