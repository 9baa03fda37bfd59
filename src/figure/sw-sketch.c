/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A drawing before it is drawn on anything: lines, and what is done with them, step by step. What a figure's picture is
 * made of is found once, in whatever thread, and then goes to the screen, the printer or a PDF. */
#include "config.h"

#include <math.h>

#include "sw-sketch.h"

#define FEW_STEPS 1024
/* Handles of a cubic curve for a quarter of a circle. */
#define QUARTER 0.5522847498

/**
 * State:
 * @matrix: to the sketch's own units
 * @n_clips: how many clips end with it
 *
 * What is saved and restored.
 */
typedef struct
{
  cairo_matrix_t matrix;
  double tone;
  double opacity;
  double width;
  cairo_line_cap_t cap;
  cairo_line_join_t join;
  double dash;
  double gap;
  int n_clips;
} State;

/* @path_step: where the lines begin that nothing has been done with for good; @begins: whether the next line begins anew;
 * @kept: whether the lines have been painted and kept. */
struct _SwSketch
{
  GByteArray *steps;
  GArray *values;
  GArray *states;
  guint path_step;
  guint path_value;
  gboolean begins;
  gboolean kept;
};

static const int n_values_of[] = {
  [SW_SKETCH_MOVE] = 2, [SW_SKETCH_LINE] = 2,   [SW_SKETCH_CURVE] = 6, [SW_SKETCH_CLOSE] = 0,
  [SW_SKETCH_FILL] = 3, [SW_SKETCH_STROKE] = 7, [SW_SKETCH_CLIP] = 0,  [SW_SKETCH_RESTORE] = 0,
};

/**
 * sw_sketch_new:
 *
 * Returns: (transfer full): nothing drawn yet
 */
SwSketch *
sw_sketch_new (void)
{
  const State first = { { 1, 0, 0, 1, 0, 0 }, 0, 1, 2, CAIRO_LINE_CAP_BUTT, CAIRO_LINE_JOIN_MITER, 0, 0, 0 };
  SwSketch *self = g_new0 (SwSketch, 1);

  self->steps = g_byte_array_sized_new (FEW_STEPS);
  self->values = g_array_sized_new (FALSE, FALSE, sizeof (float), 4 * FEW_STEPS);
  self->states = g_array_new (FALSE, FALSE, sizeof (State));
  g_array_append_val (self->states, first);
  self->begins = TRUE;
  return self;
}

void
sw_sketch_free (SwSketch *self)
{
  g_byte_array_unref (self->steps);
  g_array_unref (self->values);
  g_array_unref (self->states);
  g_free (self);
}

static State *
get_state (SwSketch *self)
{
  return &g_array_index (self->states, State, self->states->len - 1);
}

static void
add_step (SwSketch     *self,
          SwSketchStep  step,
          const float  *values)
{
  guint8 byte = (guint8) step;

  g_byte_array_append (self->steps, &byte, 1);
  if (n_values_of[step] > 0)
    g_array_append_vals (self->values, values, (guint) n_values_of[step]);
}

/* Adds a step of a line, whose places are given in the units that hold now. */
static void
add_places (SwSketch     *self,
            SwSketchStep  step,
            const double *places)
{
  const cairo_matrix_t *matrix = &get_state (self)->matrix;
  float values[SW_SKETCH_MOST_VALUES];

  for (int i = 0; i < n_values_of[step]; i += 2)
    {
      double x = places[i];
      double y = places[i + 1];

      values[i] = (float) (matrix->xx * x + matrix->xy * y + matrix->x0);
      values[i + 1] = (float) (matrix->yx * x + matrix->yy * y + matrix->y0);
    }
  add_step (self, step, values);
}

static void
end_path (SwSketch *self)
{
  self->path_step = self->steps->len;
  self->path_value = self->values->len;
  self->begins = TRUE;
  self->kept = FALSE;
}

/**
 * sw_sketch_save:
 *
 * Keeps what is set until the matching sw_sketch_restore().
 */
void
sw_sketch_save (SwSketch *self)
{
  State state = *get_state (self);

  state.n_clips = 0;
  g_array_append_val (self->states, state);
}

/**
 * sw_sketch_restore:
 *
 * What was set or clipped since the matching sw_sketch_save() holds no longer. Lines go on, unless something was clipped.
 */
void
sw_sketch_restore (SwSketch *self)
{
  int n_clips = get_state (self)->n_clips;

  for (int i = 0; i < n_clips; i++)
    add_step (self, SW_SKETCH_RESTORE, NULL);
  if (n_clips > 0)
    end_path (self);
  g_array_set_size (self->states, self->states->len - 1);
}

/**
 * sw_sketch_transform:
 * @matrix: what the following places and widths are multiplied by, before all that already holds
 */
void
sw_sketch_transform (SwSketch             *self,
                     const cairo_matrix_t *matrix)
{
  State *state = get_state (self);

  cairo_matrix_multiply (&state->matrix, matrix, &state->matrix);
}

/**
 * sw_sketch_new_path:
 *
 * Forgets the lines.
 */
void
sw_sketch_new_path (SwSketch *self)
{
  if (self->kept)
    /* What was done with them last is where they end. */
    g_array_index (self->values, float, self->values->len - 1) = 0;
  else
    {
      g_byte_array_set_size (self->steps, self->path_step);
      g_array_set_size (self->values, self->path_value);
    }
  end_path (self);
}

void
sw_sketch_move (SwSketch *self,
                double    x,
                double    y)
{
  const double places[] = { x, y };

  add_places (self, SW_SKETCH_MOVE, places);
  self->begins = FALSE;
}

/**
 * sw_sketch_line:
 *
 * Goes on straight; begins a line where there is none.
 */
void
sw_sketch_line (SwSketch *self,
                double    x,
                double    y)
{
  const double places[] = { x, y };

  add_places (self, self->begins ? SW_SKETCH_MOVE : SW_SKETCH_LINE, places);
  self->begins = FALSE;
}

void
sw_sketch_curve (SwSketch *self,
                 double    x1,
                 double    y1,
                 double    x2,
                 double    y2,
                 double    x,
                 double    y)
{
  const double places[] = { x1, y1, x2, y2, x, y };

  if (self->begins)
    sw_sketch_move (self, x1, y1);
  add_places (self, SW_SKETCH_CURVE, places);
}

void
sw_sketch_close (SwSketch *self)
{
  add_step (self, SW_SKETCH_CLOSE, NULL);
}

void
sw_sketch_rectangle (SwSketch *self,
                     double    x,
                     double    y,
                     double    width,
                     double    height)
{
  sw_sketch_move (self, x, y);
  sw_sketch_line (self, x + width, y);
  sw_sketch_line (self, x + width, y + height);
  sw_sketch_line (self, x, y + height);
  sw_sketch_close (self);
}

void
sw_sketch_circle (SwSketch *self,
                  double    x,
                  double    y,
                  double    radius)
{
  double handle = QUARTER * radius;

  sw_sketch_move (self, x + radius, y);
  sw_sketch_curve (self, x + radius, y + handle, x + handle, y + radius, x, y + radius);
  sw_sketch_curve (self, x - handle, y + radius, x - radius, y + handle, x - radius, y);
  sw_sketch_curve (self, x - radius, y - handle, x - handle, y - radius, x, y - radius);
  sw_sketch_curve (self, x + handle, y - radius, x + radius, y - handle, x + radius, y);
  sw_sketch_close (self);
}

/**
 * sw_sketch_set_tone:
 * @tone: 0 black, 1 white
 */
void
sw_sketch_set_tone (SwSketch *self,
                    double    tone)
{
  get_state (self)->tone = tone;
}

/**
 * sw_sketch_set_opacity:
 * @opacity: of what is filled; 1 hides what is behind it
 */
void
sw_sketch_set_opacity (SwSketch *self,
                       double    opacity)
{
  get_state (self)->opacity = opacity;
}

void
sw_sketch_set_width (SwSketch *self,
                     double    width)
{
  get_state (self)->width = width;
}

void
sw_sketch_set_cap (SwSketch         *self,
                   cairo_line_cap_t  cap)
{
  get_state (self)->cap = cap;
}

void
sw_sketch_set_join (SwSketch          *self,
                    cairo_line_join_t  join)
{
  get_state (self)->join = join;
}

/**
 * sw_sketch_set_dash:
 * @dash: how much of a line is drawn; 0 for all of it
 * @gap: how much is left out then
 */
void
sw_sketch_set_dash (SwSketch *self,
                    double    dash,
                    double    gap)
{
  get_state (self)->dash = dash;
  get_state (self)->gap = gap;
}

static void
add_fill (SwSketch *self,
          gboolean  keep)
{
  const State *state = get_state (self);
  const float values[] = { (float) state->tone, (float) state->opacity, keep ? 1 : 0 };

  add_step (self, SW_SKETCH_FILL, values);
}

static void
add_stroke (SwSketch *self,
            gboolean  keep)
{
  const State *state = get_state (self);
  double scale = hypot (state->matrix.xx, state->matrix.yx);
  const float values[] = { (float) state->tone,           (float) (scale * state->width), (float) state->cap,
                           (float) state->join,           (float) (scale * state->dash),  (float) (scale * state->gap),
                           keep ? 1 : 0 };

  add_step (self, SW_SKETCH_STROKE, values);
}

/**
 * sw_sketch_fill:
 *
 * Fills what the lines enclose.
 */
void
sw_sketch_fill (SwSketch *self)
{
  add_fill (self, FALSE);
  end_path (self);
}

/**
 * sw_sketch_fill_preserve:
 *
 * Fills what the lines enclose and keeps them as they are for what is done with them next.
 */
void
sw_sketch_fill_preserve (SwSketch *self)
{
  add_fill (self, TRUE);
  self->kept = TRUE;
}

/**
 * sw_sketch_stroke:
 *
 * Draws the lines.
 */
void
sw_sketch_stroke (SwSketch *self)
{
  add_stroke (self, FALSE);
  end_path (self);
}

/**
 * sw_sketch_stroke_preserve:
 *
 * Draws the lines and keeps them as they are for what is done with them next.
 */
void
sw_sketch_stroke_preserve (SwSketch *self)
{
  add_stroke (self, TRUE);
  self->kept = TRUE;
}

/**
 * sw_sketch_clip:
 *
 * Leaves out what lies outside the lines, until the state is restored.
 */
void
sw_sketch_clip (SwSketch *self)
{
  add_step (self, SW_SKETCH_CLIP, NULL);
  get_state (self)->n_clips++;
  end_path (self);
}

/**
 * sw_sketch_get_n_bytes:
 *
 * Returns: how much memory it takes, about
 */
gsize
sw_sketch_get_n_bytes (const SwSketch *self)
{
  return sizeof *self + self->steps->len + self->values->len * sizeof (float);
}

/**
 * sw_sketch_read:
 * @reader: called for each step
 * @data: for @reader
 */
void
sw_sketch_read (const SwSketch *self,
                SwSketchReader  reader,
                gpointer        data)
{
  const float *values = (const float *) (gpointer) self->values->data;

  for (guint i = 0; i < self->steps->len; i++)
    {
      SwSketchStep step = (SwSketchStep) self->steps->data[i];

      reader (data, step, values);
      values += n_values_of[step];
    }
}

/* Where a sketch is drawn: its context, and the matrix that it has. */
typedef struct
{
  cairo_t *cr;
  cairo_matrix_t matrix;
} Sheet;

static void
place (const Sheet *sheet,
       const float *values,
       int          n_places,
       double      *places)
{
  for (int i = 0; i < n_places; i++)
    {
      double x = (double) values[2 * i];
      double y = (double) values[2 * i + 1];

      cairo_matrix_transform_point (&sheet->matrix, &x, &y);
      places[2 * i] = round (x * SW_SKETCH_STEPS_A_UNIT) / SW_SKETCH_STEPS_A_UNIT;
      places[2 * i + 1] = round (y * SW_SKETCH_STEPS_A_UNIT) / SW_SKETCH_STEPS_A_UNIT;
    }
}

static void
draw_fill (cairo_t     *cr,
           const float *values)
{
  double tone = (double) values[0];

  cairo_set_source_rgba (cr, tone, tone, tone, (double) values[1]);
  if (values[2] > 0)
    cairo_fill_preserve (cr);
  else
    cairo_fill (cr);
}

/* Lines are as wide as the sheet's own units say. */
static void
draw_stroke (const Sheet *sheet,
             const float *values)
{
  double tone = (double) values[0];
  const double dashes[] = { (double) values[4], (double) values[5] };
  cairo_t *cr = sheet->cr;

  cairo_set_matrix (cr, &sheet->matrix);
  cairo_set_source_rgb (cr, tone, tone, tone);
  cairo_set_line_width (cr, (double) values[1]);
  cairo_set_line_cap (cr, (cairo_line_cap_t) values[2]);
  cairo_set_line_join (cr, (cairo_line_join_t) values[3]);
  cairo_set_dash (cr, dashes, dashes[0] > 0 ? 2 : 0, 0);
  if (values[6] > 0)
    cairo_stroke_preserve (cr);
  else
    cairo_stroke (cr);
  cairo_identity_matrix (cr);
}

static void
draw_step (gpointer      data,
           SwSketchStep  step,
           const float  *values)
{
  const Sheet *sheet = data;
  cairo_t *cr = sheet->cr;
  double places[SW_SKETCH_MOST_VALUES];

  switch (step)
    {
    case SW_SKETCH_MOVE:
      place (sheet, values, 1, places);
      cairo_move_to (cr, places[0], places[1]);
      break;
    case SW_SKETCH_LINE:
      place (sheet, values, 1, places);
      cairo_line_to (cr, places[0], places[1]);
      break;
    case SW_SKETCH_CURVE:
      place (sheet, values, 3, places);
      cairo_curve_to (cr, places[0], places[1], places[2], places[3], places[4], places[5]);
      break;
    case SW_SKETCH_CLOSE:
      cairo_close_path (cr);
      break;
    case SW_SKETCH_FILL:
      draw_fill (cr, values);
      break;
    case SW_SKETCH_STROKE:
      draw_stroke (sheet, values);
      break;
    case SW_SKETCH_CLIP:
      cairo_save (cr);
      cairo_clip (cr);
      break;
    case SW_SKETCH_RESTORE:
      cairo_restore (cr);
      break;
    default:
      g_assert_not_reached ();
    }
}

/**
 * sw_sketch_draw:
 * @cr: where to draw; the caller's state is kept
 *
 * Draws it, its origin where that of @cr is.
 */
void
sw_sketch_draw (const SwSketch *self,
                cairo_t        *cr)
{
  Sheet sheet = { .cr = cr };

  cairo_save (cr);
  cairo_get_matrix (cr, &sheet.matrix);
  cairo_identity_matrix (cr);
  cairo_new_path (cr);
  sw_sketch_read (self, draw_step, &sheet);
  cairo_restore (cr);
}
