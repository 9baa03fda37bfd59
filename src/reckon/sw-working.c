/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The steps of a reckoning, so that nobody has to believe a number. */
#include "config.h"

#include "sw-working.h"

struct _SwWorking
{
  grefcount references;
  GPtrArray *lines;
};

static void
line_free (gpointer data)
{
  SwWorkingLine *line = data;

  g_free (line->words);
  g_free (line->figures);
  g_free (line->source);
  g_free (line);
}

/**
 * sw_working_new:
 *
 * Returns: (transfer full): a working without a line
 */
SwWorking *
sw_working_new (void)
{
  SwWorking *self = g_new (SwWorking, 1);

  g_ref_count_init (&self->references);
  self->lines = g_ptr_array_new_with_free_func (line_free);
  return self;
}

/**
 * sw_working_ref:
 * @self: a working
 *
 * Returns: (transfer full): the same
 */
SwWorking *
sw_working_ref (SwWorking *self)
{
  g_ref_count_inc (&self->references);
  return self;
}

/**
 * sw_working_unref:
 * @self: (transfer full): a working
 */
void
sw_working_unref (SwWorking *self)
{
  if (!g_ref_count_dec (&self->references))
    return;

  g_ptr_array_unref (self->lines);
  g_free (self);
}

/**
 * sw_working_add:
 * @self: a working
 * @words: what is reckoned in this step
 * @source: (nullable): where the rule comes from
 * @figures: printf() format of the figures, with their units
 * @...: its values
 *
 * Adds the next step.
 */
void
sw_working_add (SwWorking  *self,
                const char *words,
                const char *source,
                const char *figures,
                ...)
{
  SwWorkingLine *line = g_new (SwWorkingLine, 1);
  va_list values;

  va_start (values, figures);
  *line = (SwWorkingLine) { g_strdup (words), g_strdup_vprintf (figures, values), g_strdup (source) };
  va_end (values);
  g_ptr_array_add (self->lines, line);
}

/**
 * sw_working_get_n_lines:
 * @self: a working
 *
 * Returns: how many steps it has
 */
guint
sw_working_get_n_lines (const SwWorking *self)
{
  return self->lines->len;
}

/**
 * sw_working_get_line:
 * @self: a working
 * @number: which step, from 0
 *
 * Returns: (transfer none): the step
 */
const SwWorkingLine *
sw_working_get_line (const SwWorking *self,
                     guint            number)
{
  g_return_val_if_fail (number < self->lines->len, NULL);

  return g_ptr_array_index (self->lines, number);
}
