/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sketches as a PDF draws them. Pictures are most of a file and most of the work of writing one: places come as whole
 * numbers of a small unit, and what is set already is not set again. */
#include "config.h"

#include <math.h>

#include "sw-pdf-sketch.h"

#define UNKNOWN (-1)

/* What is set, in parts of a hundred where it is a tone, of ten where it is a length. */
typedef struct
{
  int fill;
  int opacity;
  int line;
  int width;
  int cap;
  int join;
  int dash;
  int gap;
} State;

/* @path: where in the text the lines begin that are kept; @opacities: in parts of a hundred, those that are named. */
typedef struct
{
  GString *out;
  GArray *saved;
  GArray *opacities;
  State state;
  gsize path;
  GString *kept;
  gboolean filled;
} Writer;

static void
add_whole (GString *out,
           int      number)
{
  char digits[12];
  char *first = digits + sizeof digits;
  unsigned int rest = (unsigned int) ABS (number);

  do
    *--first = (char) ('0' + rest % 10);
  while ((rest /= 10) > 0);
  if (number < 0)
    *--first = '-';
  g_string_append_len (out, first, digits + sizeof digits - first);
}

/* Adds a number of the parts of one, 10 or 100. */
static void
add_parts (GString *out,
           int      number,
           int      parts)
{
  int rest = number % parts;

  if (number == 0 || number >= parts)
    add_whole (out, number / parts);
  if (rest == 0)
    return;
  g_string_append_c (out, '.');
  for (parts /= 10; rest > 0; rest %= parts, parts /= 10)
    {
      g_string_append_c (out, (char) ('0' + rest / parts));
      if (parts == 1)
        break;
    }
}

static void
add_places (GString     *out,
            const float *values,
            int          n_values,
            char         operator)
{
  for (int i = 0; i < n_values; i++)
    {
      add_whole (out, (int) lrintf (values[i] * SW_SKETCH_STEPS_A_UNIT));
      g_string_append_c (out, ' ');
    }
  g_string_append_c (out, operator);
  g_string_append_c (out, '\n');
}

static int
count_parts (float value,
             int   parts)
{
  return (int) lrintf (value * (float) parts);
}

/* Writes a number before what sets it to that, unless it is so already. */
static void
set_number (Writer     *self,
            int        *what,
            int         number,
            int         parts,
            const char *operator)
{
  if (*what == number)
    return;

  *what = number;
  add_parts (self->out, number, parts);
  g_string_append (self->out, operator);
}

static void
set_opacity (Writer *self,
             int     opacity)
{
  gboolean named = FALSE;

  if (self->state.opacity == opacity)
    return;

  self->state.opacity = opacity;
  g_string_append_printf (self->out, "/o%d gs\n", opacity);
  for (guint i = 0; i < self->opacities->len; i++)
    named |= g_array_index (self->opacities, int, i) == opacity;
  if (!named)
    g_array_append_val (self->opacities, opacity);
}

static void
set_fill (Writer      *self,
          const float *values)
{
  set_opacity (self, count_parts (values[1], 100));
  set_number (self, &self->state.fill, count_parts (values[0], 100), 100, " g\n");
}

static void
set_stroke (Writer      *self,
            const float *values)
{
  int dash = count_parts (values[4], 10 * SW_SKETCH_STEPS_A_UNIT);
  int gap = count_parts (values[5], 10 * SW_SKETCH_STEPS_A_UNIT);

  set_number (self, &self->state.line, count_parts (values[0], 100), 100, " G\n");
  set_number (self, &self->state.width, count_parts (values[1], 10 * SW_SKETCH_STEPS_A_UNIT), 10, " w\n");
  set_number (self, &self->state.cap, (int) values[2], 1, " J\n");
  set_number (self, &self->state.join, (int) values[3], 1, " j\n");
  if (self->state.dash == dash && self->state.gap == gap)
    return;

  self->state.dash = dash;
  self->state.gap = gap;
  g_string_append_c (self->out, '[');
  if (dash > 0)
    {
      add_parts (self->out, dash, 10);
      g_string_append_c (self->out, ' ');
      add_parts (self->out, gap, 10);
    }
  g_string_append (self->out, "] 0 d\n");
}

/* What is set may not stand between lines and what is done with them: the lines are moved behind it. */
static void
take_path (Writer *self)
{
  if (self->kept->len == 0)
    {
      g_string_append_len (self->kept, self->out->str + self->path, (gssize) (self->out->len - self->path));
      g_string_truncate (self->out, self->path);
    }
}

static void
put_path (Writer     *self,
          const char *operator)
{
  g_string_append_len (self->out, self->kept->str, (gssize) self->kept->len);
  g_string_append (self->out, operator);
}

static void
end_path (Writer *self)
{
  g_string_truncate (self->kept, 0);
  self->path = self->out->len;
  self->filled = FALSE;
}

/* What is filled and drawn next can be told at once, where nothing has to be set in between that would show in it. */
static void
fill (Writer      *self,
      const float *values)
{
  take_path (self);
  if (self->filled)
    put_path (self, "f\n");
  set_fill (self, values);
  self->filled = values[2] > 0;
  if (self->filled)
    return;
  put_path (self, "f\n");
  end_path (self);
}

static void
stroke (Writer      *self,
        const float *values)
{
  gboolean filled = self->filled && self->state.opacity == 100;

  take_path (self);
  if (self->filled && !filled)
    put_path (self, "f\n");
  self->filled = FALSE;
  set_stroke (self, values);
  put_path (self, filled ? "B\n" : "S\n");
  if (values[6] <= 0)
    end_path (self);
}

static void
clip (Writer *self)
{
  take_path (self);
  if (self->filled)
    put_path (self, "f\n");
  g_string_append (self->out, "q\n");
  g_array_append_val (self->saved, self->state);
  put_path (self, "W n\n");
  end_path (self);
}

static void
restore (Writer *self)
{
  g_string_append (self->out, "Q\n");
  self->state = g_array_index (self->saved, State, self->saved->len - 1);
  g_array_set_size (self->saved, self->saved->len - 1);
  end_path (self);
}

static void
write_step (gpointer      data,
            SwSketchStep  step,
            const float  *values)
{
  Writer *self = data;

  switch (step)
    {
    case SW_SKETCH_MOVE:
      add_places (self->out, values, 2, 'm');
      break;
    case SW_SKETCH_LINE:
      add_places (self->out, values, 2, 'l');
      break;
    case SW_SKETCH_CURVE:
      add_places (self->out, values, 6, 'c');
      break;
    case SW_SKETCH_CLOSE:
      g_string_append (self->out, "h\n");
      break;
    case SW_SKETCH_FILL:
      fill (self, values);
      break;
    case SW_SKETCH_STROKE:
      stroke (self, values);
      break;
    case SW_SKETCH_CLIP:
      clip (self);
      break;
    case SW_SKETCH_RESTORE:
      restore (self);
      break;
    default:
      g_assert_not_reached ();
    }
}

/**
 * sw_pdf_sketch_write:
 * @sketch: a sketch, its y going down
 * @states: grows by the entries of the resources' dictionary of graphics states that it needs
 *
 * Returns: (transfer full): the content stream that draws it, in parts of a point (%SW_PDF_SKETCH_UNIT)
 */
GString *
sw_pdf_sketch_write (const SwSketch *sketch,
                     GString        *states)
{
  g_autoptr (GArray) saved = g_array_new (FALSE, FALSE, sizeof (State));
  g_autoptr (GArray) opacities = g_array_new (FALSE, FALSE, sizeof (int));
  Writer writer = {
    .out = g_string_sized_new (8192),
    .saved = saved,
    .opacities = opacities,
    /* Whoever draws it may have set anything. */
    .state = { UNKNOWN, UNKNOWN, UNKNOWN, UNKNOWN, UNKNOWN, UNKNOWN, UNKNOWN, UNKNOWN },
    .kept = g_string_new (NULL),
  };

  g_string_append (writer.out, "10 M\n");
  end_path (&writer);
  sw_sketch_read (sketch, write_step, &writer);
  for (guint i = 0; i < opacities->len; i++)
    {
      int opacity = g_array_index (opacities, int, i);

      g_string_append_printf (states, "/o%d<</ca ", opacity);
      add_parts (states, opacity, 100);
      g_string_append (states, ">>");
    }
  g_string_free (writer.kept, TRUE);
  return writer.out;
}
