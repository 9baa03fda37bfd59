/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shows at a glance how often the client has to get up and down. */
#include "config.h"

#include "sw-position-ribbon.h"

#define N_LANES (SW_POSITION_FACE_DOWN + 1)
#define LANE_PX 6
#define EDGE_PX 6
#define LINE_PX 3
#define STEP_Y_PX 12 /* beside the word for the new position */

struct _SwPositionRibbon
{
  GtkWidget parent_instance;

  SwPosition before;
  SwPosition position;
};

G_DEFINE_FINAL_TYPE (SwPositionRibbon, sw_position_ribbon, GTK_TYPE_WIDGET)

static float
lane_x (SwPosition position)
{
  return (float) (EDGE_PX + LANE_PX * (int) position);
}

static void
sw_position_ribbon_measure (GtkWidget      *widget,
                            GtkOrientation  orientation,
                            int             for_size,
                            int            *minimum,
                            int            *natural,
                            int            *minimum_baseline,
                            int            *natural_baseline)
{
  (void) widget;
  (void) for_size;
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 2 * EDGE_PX + (N_LANES - 1) * LANE_PX : 24;
  *minimum_baseline = *natural_baseline = -1;
}

static void
append_bar (GtkSnapshot   *snapshot,
            const GdkRGBA *colour,
            float          x0,
            float          y0,
            float          x1,
            float          y1)
{
  gtk_snapshot_append_color (snapshot, colour,
                             &GRAPHENE_RECT_INIT (MIN (x0, x1) - LINE_PX / 2.0f, MIN (y0, y1) - LINE_PX / 2.0f,
                                                  ABS (x1 - x0) + LINE_PX, ABS (y1 - y0) + LINE_PX));
}

static void
sw_position_ribbon_snapshot (GtkWidget   *widget,
                             GtkSnapshot *snapshot)
{
  SwPositionRibbon *self = SW_POSITION_RIBBON (widget);
  float height = (float) gtk_widget_get_height (widget);
  float from = lane_x (self->before);
  float to = lane_x (self->position);
  GdkRGBA colour, guide;

  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &colour);
  guide = colour;
  guide.alpha *= 0.16f;
  for (int i = 0; i < N_LANES; i++)
    gtk_snapshot_append_color (snapshot, &guide,
                               &GRAPHENE_RECT_INIT (lane_x ((SwPosition) i) - 0.5f, 0.0f, 1.0f, height));

  gtk_snapshot_push_clip (snapshot, &GRAPHENE_RECT_INIT (0.0f, 0.0f, (float) gtk_widget_get_width (widget), height));
  if (self->before != self->position)
    {
      append_bar (snapshot, &colour, from, -LINE_PX, from, STEP_Y_PX);
      append_bar (snapshot, &colour, from, STEP_Y_PX, to, STEP_Y_PX);
      append_bar (snapshot, &colour, to, STEP_Y_PX, to, height + LINE_PX);
    }
  else
    {
      append_bar (snapshot, &colour, to, -LINE_PX, to, height + LINE_PX);
    }
  gtk_snapshot_pop (snapshot);
}

static void
sw_position_ribbon_class_init (SwPositionRibbonClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  widget_class->measure = sw_position_ribbon_measure;
  widget_class->snapshot = sw_position_ribbon_snapshot;

  gtk_widget_class_set_css_name (widget_class, "ribbon");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
sw_position_ribbon_init (SwPositionRibbon *self)
{
  (void) self;
}

/**
 * sw_position_ribbon_set_positions:
 * @before: where the body is at the upper edge
 * @position: where it is at the lower edge
 */
void
sw_position_ribbon_set_positions (SwPositionRibbon *self,
                                  SwPosition        before,
                                  SwPosition        position)
{
  g_return_if_fail (SW_IS_POSITION_RIBBON (self));

  if (self->before == before && self->position == position)
    return;

  self->before = before;
  self->position = position;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
