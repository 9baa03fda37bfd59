/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The clinic's logo: what it looks like on paper, and the two things one can do with it. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-logo-field.h"

#include "sw-file-dialogs.h"
#include "sw-logo-file.h"
#include "sw-logo-picture.h"

struct _SwLogoField
{
  GtkWidget parent_instance;

  GtkDrawingArea *paper;
  GtkWidget *none;
  GtkWidget *remove_button;
  GtkLabel *complaint;

  SwLogo *logo;
  SwLogoPicture *picture;     /* NULL without a logo, or when it cannot be drawn */
  GCancellable *cancellable;  /* of the file that is being read, or NULL */
};

G_DEFINE_FINAL_TYPE (SwLogoField, sw_logo_field, GTK_TYPE_WIDGET)

enum
{
  CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
draw_cb (GtkDrawingArea *area,
         cairo_t        *cr,
         int             width_px,
         int             height_px,
         gpointer        data)
{
  SwLogoField *self = data;
  double width;
  double height;

  (void) area;
  if (self->picture == NULL)
    return;

  sw_logo_picture_fit (self->picture, width_px, height_px, &width, &height);
  cairo_translate (cr, (width_px - width) / 2.0, (height_px - height) / 2.0);
  sw_logo_picture_draw (self->picture, cr, width, height);
}

static void
complain (SwLogoField *self,
          const char  *words)
{
  gtk_label_set_label (self->complaint, words != NULL ? words : "");
  gtk_widget_set_visible (GTK_WIDGET (self->complaint), words != NULL);
}

static void
choose (SwLogoField  *self,
        const SwLogo *logo)
{
  complain (self, NULL);
  sw_logo_field_set_logo (self, logo);
  g_signal_emit (self, signals[CHANGED], 0);
}

/* Reading, in a thread: unpacking a picture may take a moment */

static void
read_in_thread (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  GError *error = NULL;
  SwLogo *logo = sw_logo_from_file (data, &error);

  (void) source;
  (void) cancellable;
  if (logo != NULL)
    g_task_return_pointer (task, logo, (GDestroyNotify) sw_logo_free);
  else
    g_task_return_error (task, error);
}

static void
read_cb (GObject      *object,
         GAsyncResult *result,
         gpointer      data)
{
  SwLogoField *self = SW_LOGO_FIELD (object);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwLogo) logo = g_task_propagate_pointer (G_TASK (result), &error);

  (void) data;
  if (g_task_get_cancellable (G_TASK (result)) != self->cancellable)
    return;

  g_clear_object (&self->cancellable);
  if (logo != NULL)
    choose (self, logo);
  else
    complain (self, error->message);
}

/* Whatever is still being read does not count any more. */
static void
stop_reading (SwLogoField *self)
{
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
}

/* Reads and checks the file; the field shows the logo, or what is wrong with it, when that is done. */
static void
begin_reading (SwLogoField *self,
               const char  *path)
{
  g_autoptr (GTask) task = NULL;

  stop_reading (self);
  self->cancellable = g_cancellable_new ();
  task = g_task_new (self, self->cancellable, read_cb, NULL);
  g_task_set_task_data (task, g_strdup (path), g_free);
  g_task_run_in_thread (task, read_in_thread);
}

static void
file_chosen_cb (GObject      *object,
                GAsyncResult *result,
                gpointer      data)
{
  g_autoptr (SwLogoField) self = data;
  g_autofree char *path = sw_file_dialog_finish (result, NULL);

  (void) object;
  if (path != NULL && gtk_widget_get_root (GTK_WIDGET (self)) != NULL)
    begin_reading (self, path);
}

static void
choose_clicked_cb (SwLogoField *self)
{
  sw_file_dialog_open_async (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))), SW_FILE_KIND_LOGO, NULL,
                             file_chosen_cb, g_object_ref (self));
}

static void
remove_clicked_cb (SwLogoField *self)
{
  stop_reading (self);
  choose (self, NULL);
}

static void
sw_logo_field_dispose (GObject *object)
{
  SwLogoField *self = SW_LOGO_FIELD (object);
  GtkWidget *child;

  stop_reading (self);
  g_clear_object (&self->picture);
  g_clear_pointer (&self->logo, sw_logo_free);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);

  G_OBJECT_CLASS (sw_logo_field_parent_class)->dispose (object);
}

static void
sw_logo_field_class_init (SwLogoFieldClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_logo_field_dispose;

  signals[CHANGED] = g_signal_new ("changed", SW_TYPE_LOGO_FIELD, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);

  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "logofield");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/setwright/Setwright/ui/sw-logo-field.ui");
  gtk_widget_class_bind_template_child (widget_class, SwLogoField, paper);
  gtk_widget_class_bind_template_child (widget_class, SwLogoField, none);
  gtk_widget_class_bind_template_child (widget_class, SwLogoField, remove_button);
  gtk_widget_class_bind_template_child (widget_class, SwLogoField, complaint);
  gtk_widget_class_bind_template_callback (widget_class, choose_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, remove_clicked_cb);
}

static void
sw_logo_field_init (SwLogoField *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_drawing_area_set_draw_func (self->paper, draw_cb, self, NULL);
}

/**
 * sw_logo_field_get_logo:
 * @self: a field
 *
 * Returns: (transfer none) (nullable): what is shown
 */
const SwLogo *
sw_logo_field_get_logo (SwLogoField *self)
{
  g_return_val_if_fail (SW_IS_LOGO_FIELD (self), NULL);

  return self->logo;
}

/**
 * sw_logo_field_set_logo:
 * @self: a field
 * @logo: (nullable): what to show
 *
 * A complaint about a file stays while the logo stays the same.
 */
void
sw_logo_field_set_logo (SwLogoField  *self,
                        const SwLogo *logo)
{
  g_autoptr (GError) error = NULL;
  SwLogo *old;

  g_return_if_fail (SW_IS_LOGO_FIELD (self));

  if (sw_logo_equal (self->logo, logo))
    return;

  old = self->logo;
  self->logo = logo != NULL ? sw_logo_copy (logo) : NULL;
  g_clear_object (&self->picture);
  if (logo != NULL)
    self->picture = sw_logo_picture_new (logo, &error);
  complain (self, error != NULL ? error->message : NULL);
  g_clear_pointer (&old, sw_logo_free);

  gtk_widget_set_visible (GTK_WIDGET (self->paper), self->picture != NULL);
  gtk_widget_set_visible (self->none, logo == NULL);
  gtk_widget_set_visible (self->remove_button, logo != NULL);
  gtk_widget_queue_draw (GTK_WIDGET (self->paper));
}
