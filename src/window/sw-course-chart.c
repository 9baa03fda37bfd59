/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Measurements over time. Visits stand as far apart as their days; the sides differ by shape and line, not by colour.
 * */
#include "config.h"

#include <math.h>

#include "sw-course-chart.h"

#include "sw-course.h"
#include "sw-units.h"

#define LEFT_PX 52.0
#define RIGHT_PX 20.0
#define TOP_PX 14.0
#define BOTTOM_PX 26.0
#define MARK_PX 4.5
#define BAND_ALPHA 0.2
#define GRID_ALPHA 0.25
#define N_STEPS 4

/* What is drawn of a visit. */
typedef enum
{
  SERIES_RIGHT,
  SERIES_LEFT,
  SERIES_BOTH,
  N_SERIES,
} Series;

struct _SwCourseChart
{
  GtkWidget parent_instance;

  GPtrArray *course; /* SwMeasurement, the earliest first */
  int alike_percent;
  int marked;        /* the visit that is marked, or -1 */
};

G_DEFINE_FINAL_TYPE (SwCourseChart, sw_course_chart, GTK_TYPE_WIDGET)

/* The room for the values, and what its edges stand for. */
typedef struct
{
  double left_px;
  double width_px;
  double top_px;
  double height_px;
  double low;
  double high;
  double first_day;
  double n_days;
  gboolean mirrored;
} Frame;

static double
get_value (SwMeasurement *visit,
           Series         series)
{
  if (series == SERIES_RIGHT)
    return sw_measurement_get_right (visit);
  if (series == SERIES_LEFT)
    return sw_measurement_get_left (visit);
  return sw_measurement_get_both (visit);
}

/* Days since some day; without a date a visit stands by its number. */
static double
get_day (SwCourseChart *self,
         guint          visit)
{
  g_autofree char *time = g_strconcat (sw_measurement_get_date (self->course->pdata[visit]), "T12:00:00Z", NULL);
  g_autoptr (GDateTime) date = g_date_time_new_from_iso8601 (time, NULL);

  return date != NULL ? (double) g_date_time_to_unix (date) / 86400.0 : visit;
}

/* A round number of steps from 0 or below up to above the greatest value. */
static void
set_range (SwCourseChart *self,
           Frame         *frame)
{
  double low = 0.0;
  double high = 0.0;
  double step;

  for (guint i = 0; i < self->course->len; i++)
    {
      for (int series = 0; series < N_SERIES; series++)
        {
          double value = get_value (self->course->pdata[i], (Series) series);

          low = fmin (low, value);
          high = fmax (high, value);
        }
    }
  step = pow (10.0, floor (log10 (fmax (high - low, 1e-3) / N_STEPS)));
  while ((high - low) / step > 2.0 * N_STEPS)
    step *= 2.0;
  frame->low = floor (low / step) * step;
  frame->high = fmax (ceil (high / step), 1.0) * step;
}

static Frame
make_frame (SwCourseChart *self)
{
  Frame frame = {
    .left_px = LEFT_PX,
    .width_px = fmax (gtk_widget_get_width (GTK_WIDGET (self)) - LEFT_PX - RIGHT_PX, 1.0),
    .top_px = TOP_PX,
    .height_px = fmax (gtk_widget_get_height (GTK_WIDGET (self)) - TOP_PX - BOTTOM_PX, 1.0),
    .first_day = get_day (self, 0),
    .n_days = get_day (self, self->course->len - 1) - get_day (self, 0),
    .mirrored = gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL,
  };

  set_range (self, &frame);
  return frame;
}

static double
get_x (SwCourseChart *self,
       const Frame   *frame,
       guint          visit)
{
  double part = frame->n_days > 0.0 ? (get_day (self, visit) - frame->first_day) / frame->n_days : 0.5;

  return frame->left_px + (frame->mirrored ? 1.0 - part : part) * frame->width_px;
}

static double
get_y (const Frame *frame,
       double       value)
{
  return frame->top_px + (frame->high - value) / (frame->high - frame->low) * frame->height_px;
}

static void
set_colour (cairo_t       *cr,
            const GdkRGBA *colour,
            double         alpha)
{
  cairo_set_source_rgba (cr, colour->red, colour->green, colour->blue, colour->alpha * alpha);
}

static void
draw_text (SwCourseChart *self,
           cairo_t       *cr,
           const char    *text,
           double         x_px,
           double         y_px,
           double         align)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), text);
  int width, height;
  double left_px;

  pango_layout_get_pixel_size (layout, &width, &height);
  left_px = CLAMP (x_px - align * width, 0.0, fmax (gtk_widget_get_width (GTK_WIDGET (self)) - width, 0.0));
  cairo_move_to (cr, left_px, y_px - 0.5 * height);
  pango_cairo_show_layout (cr, layout);
}

static void
draw_grid (SwCourseChart *self,
           cairo_t       *cr,
           const Frame   *frame,
           const GdkRGBA *colour)
{
  guint last = self->course->len - 1;

  cairo_set_line_width (cr, 1.0);
  for (int i = 0; i <= N_STEPS; i++)
    {
      double value = frame->low + (frame->high - frame->low) * i / N_STEPS;
      double y_px = floor (get_y (frame, value)) + 0.5;
      g_autofree char *text = sw_number_to_string (value, 2);

      set_colour (cr, colour, GRID_ALPHA);
      cairo_move_to (cr, frame->left_px, y_px);
      cairo_rel_line_to (cr, frame->width_px, 0.0);
      cairo_stroke (cr);
      set_colour (cr, colour, 1.0);
      draw_text (self, cr, text, frame->left_px - 8.0, y_px, 1.0);
    }

  draw_text (self, cr, sw_measurement_get_date (self->course->pdata[0]), get_x (self, frame, 0),
             frame->top_px + frame->height_px + 16.0, last > 0 && !frame->mirrored ? 0.0 : 0.5);
  if (last > 0)
    draw_text (self, cr, sw_measurement_get_date (self->course->pdata[last]), get_x (self, frame, last),
               frame->top_px + frame->height_px + 16.0, frame->mirrored ? 0.0 : 1.0);
}

/* From the better side to what is still alike to it. Where the sides cannot be compared there is none. */
static gboolean
get_band (SwCourseChart *self,
          guint          visit,
          double        *best,
          double        *edge)
{
  SwMeasurement *measurement = self->course->pdata[visit];
  double part = 1.0 - self->alike_percent / 100.0;
  gboolean lower = sw_course_get_better (measurement) == SW_BETTER_LOWER;
  SwSymmetry symmetry;

  if (!sw_course_compare (measurement, &symmetry))
    return FALSE;

  *best = lower ? fmin (sw_measurement_get_left (measurement), sw_measurement_get_right (measurement))
          : fmax (sw_measurement_get_left (measurement), sw_measurement_get_right (measurement));
  *edge = lower ? *best / part : *best * part;
  return TRUE;
}

static void
draw_band (SwCourseChart *self,
           cairo_t       *cr,
           const Frame   *frame,
           const GdkRGBA *colour)
{
  set_colour (cr, colour, BAND_ALPHA);
  for (guint i = 0; i < self->course->len; i++)
    {
      double best, edge, next_best, next_edge;
      double x_px = get_x (self, frame, i);

      if (!get_band (self, i, &best, &edge))
        continue;
      if (i + 1 < self->course->len && get_band (self, i + 1, &next_best, &next_edge))
        {
          double next_x_px = get_x (self, frame, i + 1);

          cairo_move_to (cr, x_px, get_y (frame, best));
          cairo_line_to (cr, next_x_px, get_y (frame, next_best));
          cairo_line_to (cr, next_x_px, get_y (frame, next_edge));
          cairo_line_to (cr, x_px, get_y (frame, edge));
          cairo_close_path (cr);
        }
      else if (self->course->len == 1)
        cairo_rectangle (cr, x_px - 3.0 * MARK_PX, fmin (get_y (frame, best), get_y (frame, edge)), 6.0 * MARK_PX,
                         fabs (get_y (frame, best) - get_y (frame, edge)));
    }
  cairo_fill (cr);
}

static void
add_mark (cairo_t *cr,
          Series   series,
          double   x_px,
          double   y_px)
{
  switch (series)
    {
    case SERIES_RIGHT:
      cairo_new_sub_path (cr);
      cairo_arc (cr, x_px, y_px, MARK_PX, 0.0, 2.0 * G_PI);
      break;
    case SERIES_LEFT:
      cairo_rectangle (cr, x_px - MARK_PX, y_px - MARK_PX, 2.0 * MARK_PX, 2.0 * MARK_PX);
      break;
    case SERIES_BOTH:
    case N_SERIES:
    default:
      cairo_move_to (cr, x_px, y_px - 1.3 * MARK_PX);
      cairo_line_to (cr, x_px + 1.3 * MARK_PX, y_px);
      cairo_line_to (cr, x_px, y_px + 1.3 * MARK_PX);
      cairo_line_to (cr, x_px - 1.3 * MARK_PX, y_px);
      cairo_close_path (cr);
      break;
    }
}

static void
draw_series (SwCourseChart *self,
             cairo_t       *cr,
             const Frame   *frame,
             Series         series)
{
  static const double dashes_px[] = { 6.0, 4.0 };
  gboolean drawing = FALSE;

  cairo_set_line_width (cr, 2.0);
  cairo_set_dash (cr, dashes_px, series == SERIES_LEFT ? 2 : 0, 0.0);
  for (guint i = 0; i < self->course->len; i++)
    {
      double value = get_value (self->course->pdata[i], series);

      if (isnan (value))
        continue;
      if (drawing)
        cairo_line_to (cr, get_x (self, frame, i), get_y (frame, value));
      else
        cairo_move_to (cr, get_x (self, frame, i), get_y (frame, value));
      drawing = TRUE;
    }
  cairo_stroke (cr);

  cairo_set_dash (cr, NULL, 0, 0.0);
  for (guint i = 0; i < self->course->len; i++)
    {
      double value = get_value (self->course->pdata[i], series);

      if (isnan (value))
        continue;
      add_mark (cr, series, get_x (self, frame, i), get_y (frame, value));
      if (series == SERIES_LEFT)
        {
          /* Open: the line behind it does not show through. */
          cairo_save (cr);
          cairo_set_operator (cr, CAIRO_OPERATOR_CLEAR);
          cairo_fill_preserve (cr);
          cairo_restore (cr);
          cairo_stroke (cr);
        }
      else
        cairo_fill (cr);
    }
}

static void
sw_course_chart_snapshot (GtkWidget   *widget,
                          GtkSnapshot *snapshot)
{
  SwCourseChart *self = SW_COURSE_CHART (widget);
  cairo_t *cr;
  Frame frame;
  GdkRGBA text;

  if (self->course == NULL || self->course->len == 0)
    return;

  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &text);
  frame = make_frame (self);
  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0.0f, 0.0f, (float) gtk_widget_get_width (widget),
                                                                 (float) gtk_widget_get_height (widget)));
  draw_grid (self, cr, &frame, &text);
  draw_band (self, cr, &frame, &text);
  if (self->marked >= 0)
    {
      set_colour (cr, &text, 2.0 * GRID_ALPHA);
      cairo_set_line_width (cr, 2.0);
      cairo_move_to (cr, get_x (self, &frame, (guint) self->marked), frame.top_px);
      cairo_rel_line_to (cr, 0.0, frame.height_px);
      cairo_stroke (cr);
    }
  set_colour (cr, &text, 1.0);
  for (int series = 0; series < N_SERIES; series++)
    draw_series (self, cr, &frame, (Series) series);
  cairo_destroy (cr);
}

static void
sw_course_chart_dispose (GObject *object)
{
  g_clear_pointer (&SW_COURSE_CHART (object)->course, g_ptr_array_unref);

  G_OBJECT_CLASS (sw_course_chart_parent_class)->dispose (object);
}

static void
sw_course_chart_class_init (SwCourseChartClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sw_course_chart_dispose;
  widget_class->snapshot = sw_course_chart_snapshot;
  gtk_widget_class_set_css_name (widget_class, "coursechart");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
sw_course_chart_init (SwCourseChart *self)
{
  self->marked = -1;
}

/**
 * sw_course_chart_show:
 * @self: a chart
 * @course: (element-type SwMeasurement): the visits, the earliest first
 * @alike_percent: the greatest difference between the sides that is called alike
 */
void
sw_course_chart_show (SwCourseChart *self,
                      GPtrArray     *course,
                      int            alike_percent)
{
  g_return_if_fail (SW_IS_COURSE_CHART (self));

  g_clear_pointer (&self->course, g_ptr_array_unref);
  self->course = g_ptr_array_ref (course);
  self->alike_percent = alike_percent;
  self->marked = -1;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/**
 * sw_course_chart_mark:
 * @self: a chart
 * @visit: which visit, from 0; -1 for none
 */
void
sw_course_chart_mark (SwCourseChart *self,
                      int            visit)
{
  g_return_if_fail (SW_IS_COURSE_CHART (self));
  g_return_if_fail (visit < 0 || (self->course != NULL && visit < (int) self->course->len));

  self->marked = visit;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
