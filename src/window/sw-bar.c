/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A number as a bar. */
#include "config.h"

#include "sw-bar.h"

#define WIDTH_PX 150
#define HEIGHT_PX 14
#define LIGHT_ALPHA 0.4f
#define BAND_ALPHA 0.22f
#define BAR_INSET_PX 4.0f

struct _SwBar
{
  GtkWidget parent_instance;

  double most;
  double value;
  double dark_part;
  double band_low;
  double band_high;
};

G_DEFINE_FINAL_TYPE (SwBar, sw_bar, GTK_TYPE_WIDGET)

static void
append_span (SwBar         *self,
             GtkSnapshot   *snapshot,
             const GdkRGBA *colour,
             double         from,
             double         to,
             float          inset_px)
{
  float width_px = (float) gtk_widget_get_width (GTK_WIDGET (self));
  float left_px = (float) (from / self->most) * width_px;
  float right_px = (float) (to / self->most) * width_px;

  if (gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL)
    {
      float swapped_px = width_px - right_px;

      right_px = width_px - left_px;
      left_px = swapped_px;
    }
  if (right_px > left_px)
    gtk_snapshot_append_color (snapshot, colour,
                               &GRAPHENE_RECT_INIT (left_px, inset_px, right_px - left_px,
                                                    (float) gtk_widget_get_height (GTK_WIDGET (self)) - 2.0f * inset_px));
}

static void
sw_bar_snapshot (GtkWidget   *widget,
                 GtkSnapshot *snapshot)
{
  SwBar *self = SW_BAR (widget);
  GdkRGBA dark;
  GdkRGBA light;
  GdkRGBA band;

  if (self->most <= 0.0)
    return;

  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &dark);
  light = dark;
  light.alpha *= LIGHT_ALPHA;
  band = dark;
  band.alpha *= BAND_ALPHA;
  append_span (self, snapshot, &band, self->band_low, MIN (self->band_high, self->most), 0.0f);
  append_span (self, snapshot, &dark, 0.0, self->dark_part, BAR_INSET_PX);
  append_span (self, snapshot, &light, self->dark_part, self->value, BAR_INSET_PX);
}

static void
sw_bar_measure (GtkWidget      *widget,
                GtkOrientation  orientation,
                int             for_size_px,
                int            *minimum_px,
                int            *natural_px,
                int            *minimum_baseline_px,
                int            *natural_baseline_px)
{
  (void) widget;
  (void) for_size_px;
  *minimum_px = *natural_px = orientation == GTK_ORIENTATION_HORIZONTAL ? WIDTH_PX : HEIGHT_PX;
  *minimum_baseline_px = *natural_baseline_px = -1;
}

static void
sw_bar_class_init (SwBarClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  widget_class->snapshot = sw_bar_snapshot;
  widget_class->measure = sw_bar_measure;
  gtk_widget_class_set_css_name (widget_class, "bar");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
sw_bar_init (SwBar *self)
{
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
}

/**
 * sw_bar_new:
 * @most: what fills the whole width; above 0
 *
 * Returns: (transfer floating): an empty bar
 */
GtkWidget *
sw_bar_new (double most)
{
  SwBar *self = g_object_new (SW_TYPE_BAR, NULL);

  self->most = most;
  return GTK_WIDGET (self);
}

/**
 * sw_bar_set_value:
 * @self: a bar
 * @value: how long it is, in the unit of what fills the width
 * @dark_part: how much of that is dark
 */
void
sw_bar_set_value (SwBar  *self,
                  double  value,
                  double  dark_part)
{
  g_return_if_fail (SW_IS_BAR (self));

  self->value = value;
  self->dark_part = dark_part;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/**
 * sw_bar_set_band:
 * @self: a bar
 * @low: where the band of what is usual begins
 * @high: where it ends
 */
void
sw_bar_set_band (SwBar  *self,
                 double  low,
                 double  high)
{
  g_return_if_fail (SW_IS_BAR (self));

  self->band_low = low;
  self->band_high = high;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
