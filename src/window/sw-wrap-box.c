/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A row of controls that may need more than one line. */
#include "config.h"

#include "sw-wrap-box.h"

struct _SwWrapBox
{
  GtkWidget parent_instance;

  int spacing_px;
};

G_DEFINE_FINAL_TYPE (SwWrapBox, sw_wrap_box, GTK_TYPE_WIDGET)

enum
{
  PROP_SPACING = 1,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static GtkSizeRequestMode
sw_wrap_box_get_request_mode (GtkWidget *widget)
{
  (void) widget;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

/* A child's width: what it would like, but no more than there is. */
static int
width_of (GtkWidget *child,
          int        available_px)
{
  int minimum, natural;

  gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &minimum, &natural, NULL, NULL);
  return MAX (minimum, MIN (natural, available_px));
}

static int
height_of (GtkWidget *child,
           int        width_px)
{
  int natural;

  gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, width_px, NULL, &natural, NULL, NULL);
  return natural;
}

/* The children from @first that share a line, and how high it is; returns the first of the next line. */
static GtkWidget *
measure_line (SwWrapBox *self,
              GtkWidget *first,
              int        available_px,
              int       *line_height)
{
  GtkWidget *child;
  int x = 0;

  *line_height = 0;
  for (child = first; child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      int width;

      if (!gtk_widget_should_layout (child))
        continue;
      width = width_of (child, available_px);
      if (x > 0 && x + width > available_px)
        break;
      x += width + self->spacing_px;
      *line_height = MAX (*line_height, height_of (child, width));
    }

  return child;
}

static int
height_for_width (SwWrapBox *self,
                  int        width_px)
{
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self));
  int height = 0;

  while (child != NULL)
    {
      int line_height;

      child = measure_line (self, child, width_px, &line_height);
      if (line_height > 0)
        height += (height > 0 ? self->spacing_px : 0) + line_height;
    }

  return height;
}

static void
sw_wrap_box_measure (GtkWidget      *widget,
                     GtkOrientation  orientation,
                     int             for_size,
                     int            *minimum,
                     int            *natural,
                     int            *minimum_baseline,
                     int            *natural_baseline)
{
  SwWrapBox *self = SW_WRAP_BOX (widget);
  int widest = 0, sum = 0;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      int child_minimum, child_natural;

      if (!gtk_widget_should_layout (child))
        continue;
      gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &child_minimum, &child_natural, NULL, NULL);
      widest = MAX (widest, child_minimum);
      sum += (sum > 0 ? self->spacing_px : 0) + child_natural;
    }

  *minimum_baseline = *natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = widest;
      *natural = MAX (widest, sum);
    }
  else
    {
      *minimum = *natural = height_for_width (self, for_size < 0 ? MAX (widest, sum) : for_size);
    }
}

static void
place_line (SwWrapBox *self,
            GtkWidget *first,
            GtkWidget *end,
            int        width_px,
            int        y,
            int        line_height)
{
  gboolean right_to_left = gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL;
  int x = 0;

  for (GtkWidget *child = first; child != end; child = gtk_widget_get_next_sibling (child))
    {
      GtkAllocation place;

      if (!gtk_widget_should_layout (child))
        continue;
      place.width = width_of (child, width_px);
      place.height = line_height;
      place.x = right_to_left ? width_px - x - place.width : x;
      place.y = y;
      gtk_widget_size_allocate (child, &place, -1);
      x += place.width + self->spacing_px;
    }
}

static void
sw_wrap_box_size_allocate (GtkWidget *widget,
                           int        width,
                           int        height,
                           int        baseline)
{
  SwWrapBox *self = SW_WRAP_BOX (widget);
  GtkWidget *child = gtk_widget_get_first_child (widget);
  int y = 0;

  (void) height;
  (void) baseline;
  while (child != NULL)
    {
      int line_height;
      GtkWidget *next = measure_line (self, child, width, &line_height);

      place_line (self, child, next, width, y, line_height);
      if (line_height > 0)
        y += line_height + self->spacing_px;
      child = next;
    }
}

static void
sw_wrap_box_set_property (GObject      *object,
                          guint         id,
                          const GValue *value,
                          GParamSpec   *pspec)
{
  SwWrapBox *self = SW_WRAP_BOX (object);

  if (id != PROP_SPACING)
    {
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
      return;
    }

  self->spacing_px = g_value_get_int (value);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

static void
sw_wrap_box_get_property (GObject    *object,
                          guint       id,
                          GValue     *value,
                          GParamSpec *pspec)
{
  if (id == PROP_SPACING)
    g_value_set_int (value, SW_WRAP_BOX (object)->spacing_px);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
sw_wrap_box_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);

  G_OBJECT_CLASS (sw_wrap_box_parent_class)->dispose (object);
}

static void
sw_wrap_box_class_init (SwWrapBoxClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  object_class->set_property = sw_wrap_box_set_property;
  object_class->get_property = sw_wrap_box_get_property;
  object_class->dispose = sw_wrap_box_dispose;
  widget_class->get_request_mode = sw_wrap_box_get_request_mode;
  widget_class->measure = sw_wrap_box_measure;
  widget_class->size_allocate = sw_wrap_box_size_allocate;

  props[PROP_SPACING] = g_param_spec_int ("spacing", NULL, NULL, 0, 100, 6,
                                          G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
  gtk_widget_class_set_css_name (widget_class, "wrapbox");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
sw_wrap_box_init (SwWrapBox *self)
{
  self->spacing_px = 6;
}
