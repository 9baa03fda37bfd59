/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A page on the screen: drawn by the handout itself, as printer and PDF are. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-preview-page.h"

struct _SwPreviewPage
{
  GtkWidget parent_instance;

  SwHandout *handout;
  int page;
  int width_px;
  gboolean near_view;
  GskRenderNode *drawn;
};

G_DEFINE_FINAL_TYPE (SwPreviewPage, sw_preview_page, GTK_TYPE_WIDGET)

enum
{
  ITEM_PRESSED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
forget_drawn (SwPreviewPage *self)
{
  g_clear_pointer (&self->drawn, gsk_render_node_unref);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static double
get_scale (SwPreviewPage *self)
{
  return self->width_px / sw_handout_get_page_width_pt (self->handout);
}

static void
draw (SwPreviewPage *self,
      int            width,
      int            height)
{
  g_autoptr (GtkSnapshot) snapshot = gtk_snapshot_new ();
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));
  double scale = get_scale (self);

  cairo_scale (cr, scale, scale);
  sw_handout_draw_page (self->handout, self->page, cr);
  cairo_destroy (cr);
  self->drawn = gtk_snapshot_free_to_node (g_steal_pointer (&snapshot));
}

static void
released_cb (SwPreviewPage *self,
             int            n_presses,
             double         x,
             double         y)
{
  const char *id = NULL;

  (void) n_presses;
  if (self->handout != NULL && self->width_px > 0)
    id = sw_handout_find_item_at (self->handout, self->page, x / get_scale (self), y / get_scale (self));
  if (id != NULL)
    g_signal_emit (self, signals[ITEM_PRESSED], 0, id);
}

static void
sw_preview_page_snapshot (GtkWidget   *widget,
                          GtkSnapshot *snapshot)
{
  SwPreviewPage *self = SW_PREVIEW_PAGE (widget);
  int width = gtk_widget_get_width (widget);
  int height = gtk_widget_get_height (widget);

  gtk_snapshot_append_color (snapshot, &(GdkRGBA){ 1.0f, 1.0f, 1.0f, 1.0f },
                             &GRAPHENE_RECT_INIT (0, 0, width, height));
  if (self->handout == NULL || !self->near_view || width <= 0 || height <= 0)
    return;

  if (self->drawn == NULL)
    draw (self, width, height);
  if (self->drawn != NULL)
    gtk_snapshot_append_node (snapshot, self->drawn);
}

static GtkSizeRequestMode
sw_preview_page_get_request_mode (GtkWidget *widget)
{
  (void) widget;
  return GTK_SIZE_REQUEST_CONSTANT_SIZE;
}

static void
sw_preview_page_measure (GtkWidget      *widget,
                         GtkOrientation  orientation,
                         int             for_size,
                         int            *minimum,
                         int            *natural,
                         int            *minimum_baseline,
                         int            *natural_baseline)
{
  SwPreviewPage *self = SW_PREVIEW_PAGE (widget);
  int size = self->width_px;

  (void) for_size;
  if (orientation == GTK_ORIENTATION_VERTICAL)
    size = self->handout != NULL ? (int) (sw_handout_get_page_height_pt (self->handout) * get_scale (self) + 0.5)
                                 : 0;
  *minimum = *natural = size;
  *minimum_baseline = *natural_baseline = -1;
}

static void
sw_preview_page_dispose (GObject *object)
{
  SwPreviewPage *self = SW_PREVIEW_PAGE (object);

  g_clear_object (&self->handout);
  g_clear_pointer (&self->drawn, gsk_render_node_unref);

  G_OBJECT_CLASS (sw_preview_page_parent_class)->dispose (object);
}

static void
sw_preview_page_class_init (SwPreviewPageClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_preview_page_dispose;
  widget_class->snapshot = sw_preview_page_snapshot;
  widget_class->measure = sw_preview_page_measure;
  widget_class->get_request_mode = sw_preview_page_get_request_mode;

  signals[ITEM_PRESSED] = g_signal_new ("item-pressed", SW_TYPE_PREVIEW_PAGE, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                        NULL, G_TYPE_NONE, 1, G_TYPE_STRING);

  gtk_widget_class_set_css_name (widget_class, "page");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
sw_preview_page_init (SwPreviewPage *self)
{
  GtkGesture *click = gtk_gesture_click_new ();

  g_signal_connect_swapped (click, "released", G_CALLBACK (released_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_halign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
}

/**
 * sw_preview_page_new:
 *
 * Returns: (transfer floating): an empty page
 */
GtkWidget *
sw_preview_page_new (void)
{
  return g_object_new (SW_TYPE_PREVIEW_PAGE, NULL);
}

/**
 * sw_preview_page_set_page:
 * @handout: a handout
 * @page: which of its pages, from 0
 */
void
sw_preview_page_set_page (SwPreviewPage *self,
                          SwHandout     *handout,
                          int            page)
{
  g_autofree char *label = NULL;

  g_return_if_fail (SW_IS_PREVIEW_PAGE (self));
  g_return_if_fail (SW_IS_HANDOUT (handout));
  g_return_if_fail (page >= 0 && page < sw_handout_get_n_pages (handout));

  if (self->handout == handout && self->page == page)
    return;

  if (self->handout == NULL
      || sw_handout_get_page_width_pt (self->handout) != sw_handout_get_page_width_pt (handout)
      || sw_handout_get_page_height_pt (self->handout) != sw_handout_get_page_height_pt (handout))
    gtk_widget_queue_resize (GTK_WIDGET (self));
  g_set_object (&self->handout, handout);
  self->page = page;
  forget_drawn (self);

  label = g_strdup_printf (_("Page %d of %d"), page + 1, sw_handout_get_n_pages (handout));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

/**
 * sw_preview_page_set_width:
 * @width_px: logical pixels, above 0; the height follows
 */
void
sw_preview_page_set_width (SwPreviewPage *self,
                           int            width_px)
{
  g_return_if_fail (SW_IS_PREVIEW_PAGE (self));
  g_return_if_fail (width_px > 0);

  if (self->width_px == width_px)
    return;

  self->width_px = width_px;
  forget_drawn (self);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

/**
 * sw_preview_page_set_near:
 * @near_view: whether the page is scrolled into view, or nearly
 *
 * A page far away gives up what it drew.
 */
void
sw_preview_page_set_near (SwPreviewPage *self,
                          gboolean       near_view)
{
  g_return_if_fail (SW_IS_PREVIEW_PAGE (self));

  if (self->near_view == near_view)
    return;

  self->near_view = near_view;
  forget_drawn (self);
}
