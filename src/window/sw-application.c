/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What all windows of the program share, and which window a file opens in. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-application.h"
#include "sw-catalogue-folder.h"
#include "sw-data-dir.h"
#include "sw-problem.h"
#include "sw-shortcuts.h"
#include "sw-window.h"

struct _SwApplication
{
  GtkApplication parent_instance;

  SwCatalogue *catalogue;
  SwPictures *pictures;
  GCancellable *cancellable;
  gboolean catalogue_asked_for;
  gboolean drafts_offered;
};

G_DEFINE_FINAL_TYPE (SwApplication, sw_application, GTK_TYPE_APPLICATION)

enum
{
  PROP_CATALOGUE = 1,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static const char *const style_sheets[] = {
  "setwright.css",
  "sw-session-canvas.css",
  "sw-findings-bar.css",
  "sw-catalogue-pane.css",
  "sw-inspector.css",
  "sw-preview.css",
};

static void
load_catalogue_in_thread (GTask        *task,
                          gpointer      source,
                          gpointer      data,
                          GCancellable *cancellable)
{
  g_autoptr (GPtrArray) problems = NULL;
  g_autofree char *folder = sw_data_path ("catalogue", NULL);
  GError *error = NULL;
  GPtrArray *exercises = sw_catalogue_folder_read (folder, &problems, cancellable, &error);

  (void) source;
  (void) data;
  for (guint i = 0; problems != NULL && i < problems->len; i++)
    {
      g_autofree char *line = sw_problem_to_string (g_ptr_array_index (problems, i));

      g_message ("%s", line);
    }

  if (exercises != NULL)
    g_task_return_pointer (task, exercises, (GDestroyNotify) g_ptr_array_unref);
  else
    g_task_return_error (task, error);
}

static void
catalogue_loaded_cb (GObject      *object,
                     GAsyncResult *result,
                     gpointer      data)
{
  SwApplication *self = SW_APPLICATION (object);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) exercises = g_task_propagate_pointer (G_TASK (result), &error);

  (void) data;
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;

  self->catalogue = sw_catalogue_new ();
  if (exercises != NULL)
    sw_catalogue_add (self->catalogue, exercises);
  else
    g_message ("%s", error->message);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_CATALOGUE]);
}

static SwWindow *
window_for_new_document (SwApplication *self)
{
  GtkWindow *active = gtk_application_get_active_window (GTK_APPLICATION (self));

  if (active != NULL && SW_IS_WINDOW (active) && sw_window_is_untouched (SW_WINDOW (active)))
    return SW_WINDOW (active);

  return sw_window_new (self);
}

static void
offer_drafts (SwApplication *self,
              SwWindow      *window)
{
  if (self->drafts_offered)
    return;

  self->drafts_offered = TRUE;
  sw_window_offer_drafts (window);
}

static void
new_activated_cb (GSimpleAction *action,
                  GVariant      *parameter,
                  gpointer       data)
{
  SwWindow *window = sw_window_new (SW_APPLICATION (data));

  (void) action;
  (void) parameter;
  gtk_window_present (GTK_WINDOW (window));
}

/* Closes one window after the other; one that has to ask stays, and with it the program. */
static void
quit_activated_cb (GSimpleAction *action,
                   GVariant      *parameter,
                   gpointer       data)
{
  g_autoptr (GList) windows = g_list_copy (gtk_application_get_windows (GTK_APPLICATION (data)));

  (void) action;
  (void) parameter;
  for (GList *link = windows; link != NULL; link = link->next)
    gtk_window_close (link->data);
}

static const GActionEntry entries[] = {
  { .name = "new", .activate = new_activated_cb },
  { .name = "quit", .activate = quit_activated_cb },
};

static void
sw_application_startup (GApplication *application)
{
  SwApplication *self = SW_APPLICATION (application);

  G_APPLICATION_CLASS (sw_application_parent_class)->startup (application);

  for (gsize i = 0; i < G_N_ELEMENTS (style_sheets); i++)
    {
      g_autoptr (GtkCssProvider) provider = gtk_css_provider_new ();
      g_autofree char *path = g_strconcat ("/org/setwright/Setwright/ui/", style_sheets[i], NULL);

      gtk_css_provider_load_from_resource (provider, path);
      gtk_style_context_add_provider_for_display (gdk_display_get_default (), GTK_STYLE_PROVIDER (provider),
                                                  GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
    }

  gtk_icon_theme_add_resource_path (gtk_icon_theme_get_for_display (gdk_display_get_default ()),
                                    "/org/setwright/Setwright/icons");
  gtk_window_set_default_icon_name ("org.setwright.Setwright");
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  sw_shortcuts_add_to_application (GTK_APPLICATION (self));
}

static void
sw_application_activate (GApplication *application)
{
  SwApplication *self = SW_APPLICATION (application);
  SwWindow *window = window_for_new_document (self);

  gtk_window_present (GTK_WINDOW (window));
  offer_drafts (self, window);
}

static void
sw_application_open (GApplication  *application,
                     GFile        **files,
                     int            n_files,
                     const char    *hint)
{
  SwApplication *self = SW_APPLICATION (application);

  (void) hint;
  for (int i = 0; i < n_files; i++)
    {
      SwWindow *window = window_for_new_document (self);
      g_autofree char *path = g_file_get_path (files[i]);

      gtk_window_present (GTK_WINDOW (window));
      if (path != NULL)
        sw_window_open (window, path);
      offer_drafts (self, window);
    }
}

static void
sw_application_shutdown (GApplication *application)
{
  SwApplication *self = SW_APPLICATION (application);

  g_cancellable_cancel (self->cancellable);
  G_APPLICATION_CLASS (sw_application_parent_class)->shutdown (application);
}

static void
sw_application_get_property (GObject    *object,
                             guint       id,
                             GValue     *value,
                             GParamSpec *pspec)
{
  if (id == PROP_CATALOGUE)
    g_value_set_object (value, SW_APPLICATION (object)->catalogue);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
sw_application_dispose (GObject *object)
{
  SwApplication *self = SW_APPLICATION (object);

  g_clear_object (&self->catalogue);
  g_clear_object (&self->pictures);
  g_clear_object (&self->cancellable);

  G_OBJECT_CLASS (sw_application_parent_class)->dispose (object);
}

static void
sw_application_class_init (SwApplicationClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);
  GApplicationClass *application_class = G_APPLICATION_CLASS (class);

  object_class->get_property = sw_application_get_property;
  object_class->dispose = sw_application_dispose;
  application_class->startup = sw_application_startup;
  application_class->activate = sw_application_activate;
  application_class->open = sw_application_open;
  application_class->shutdown = sw_application_shutdown;

  props[PROP_CATALOGUE] = g_param_spec_object ("catalogue", NULL, NULL, SW_TYPE_CATALOGUE,
                                               G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
sw_application_init (SwApplication *self)
{
  self->pictures = sw_pictures_new ();
  self->cancellable = g_cancellable_new ();
}

/**
 * sw_application_new:
 *
 * Returns: (transfer full): the program, not yet running
 */
SwApplication *
sw_application_new (void)
{
  return g_object_new (SW_TYPE_APPLICATION, "application-id", "org.setwright.Setwright", "flags",
                       G_APPLICATION_HANDLES_OPEN, "resource-base-path", "/org/setwright/Setwright", NULL);
}

/**
 * sw_application_load_catalogue:
 *
 * Begins to load the catalogue, once; "catalogue" is notified when it is there.
 */
void
sw_application_load_catalogue (SwApplication *self)
{
  g_autoptr (GTask) task = NULL;

  g_return_if_fail (SW_IS_APPLICATION (self));

  if (self->catalogue_asked_for)
    return;

  self->catalogue_asked_for = TRUE;
  task = g_task_new (self, self->cancellable, catalogue_loaded_cb, NULL);
  g_task_run_in_thread (task, load_catalogue_in_thread);
}

/**
 * sw_application_get_catalogue:
 *
 * Returns: (transfer none) (nullable): the catalogue, NULL while it is being loaded
 */
SwCatalogue *
sw_application_get_catalogue (SwApplication *self)
{
  g_return_val_if_fail (SW_IS_APPLICATION (self), NULL);
  return self->catalogue;
}

/**
 * sw_application_get_pictures:
 *
 * Returns: (transfer none): the cache of pictures
 */
SwPictures *
sw_application_get_pictures (SwApplication *self)
{
  g_return_val_if_fail (SW_IS_APPLICATION (self), NULL);
  return self->pictures;
}
