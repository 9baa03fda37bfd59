/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The loads there are to choose from, as someone writes them down. */
#include "config.h"

#include <math.h>

#include "sw-dose-words.h"
#include "sw-line.h"
#include "sw-loads.h"
#include "sw-units.h"

static int
compare_loads (gconstpointer a,
               gconstpointer b)
{
  double first = sw_load_to_kg (*(const SwLoad *) a);
  double second = sw_load_to_kg (*(const SwLoad *) b);

  return (first > second) - (first < second);
}

/* A unit holds for the numbers before it that have none. */
static void
set_unit (GArray    *loads,
          guint      from,
          SwLoadUnit unit)
{
  for (guint i = from; i < loads->len; i++)
    g_array_index (loads, SwLoad, i).unit = unit;
}

static gboolean
is_possible (SwLoad load)
{
  SwDose dose;

  sw_dose_init (&dose);
  dose.load = load;
  return load.value > 0.0 && sw_dose_check (&dose, NULL);
}

/**
 * sw_loads_from_text:
 * @text: such as "1, 2.5, 5 kg" or "2 lb and 5 lb"
 * @unit: of numbers behind which none is written
 *
 * Returns: (transfer full) (nullable) (element-type SwLoad): the loads, the least first; an empty array for an empty
 *   text; NULL when there is something else in it, or a load beyond what a dose may have
 */
GArray *
sw_loads_from_text (const char *text,
                    SwLoadUnit  unit)
{
  g_autoptr (GArray) loads = g_array_new (FALSE, FALSE, sizeof (SwLoad));
  g_autofree char *line = sw_line_simplify (text);
  const char *at = line;
  guint n_told = 0;

  for (;;)
    {
      SwLoad load = { unit, 0.0 };
      SwLoadUnit told;

      while (sw_line_take_char (&at, ',') || sw_line_take_char (&at, ';') || sw_line_take_word (&at, "and", NULL))
        ;
      sw_line_skip_spaces (&at);
      if (*at == '\0')
        break;
      if (!sw_line_take_decimal (&at, &load.value))
        return NULL;
      g_array_append_val (loads, load);
      if (sw_dose_words_take_load_unit (&at, &told))
        {
          set_unit (loads, n_told, told);
          n_told = loads->len;
        }
    }

  for (guint i = 0; i < loads->len; i++)
    {
      if (!is_possible (g_array_index (loads, SwLoad, i)))
        return NULL;
    }
  g_array_sort (loads, compare_loads);
  return g_steal_pointer (&loads);
}

/**
 * sw_load_to_text:
 * @load: a load
 *
 * Returns: (transfer full): such as "2.5 kg", for files and therapists; "" for none
 */
char *
sw_load_to_text (SwLoad load)
{
  static const char * const units[] = { "", "kg", "lb", "N" };
  g_autofree char *number = NULL;

  if (load.unit == SW_LOAD_NONE)
    return g_strdup ("");

  number = sw_number_to_string (load.value, 3);
  return g_strdup_printf ("%s %s", number, units[load.unit]);
}

/**
 * sw_loads_to_text:
 * @loads: (element-type SwLoad): loads
 *
 * Returns: (transfer full): such as "1 kg, 2.5 kg", which sw_loads_from_text() reads again
 */
char *
sw_loads_to_text (GArray *loads)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < loads->len; i++)
    {
      g_autofree char *load = sw_load_to_text (g_array_index (loads, SwLoad, i));

      g_string_append_printf (text, "%s%s", i > 0 ? ", " : "", load);
    }

  return g_string_free (g_steal_pointer (&text), FALSE);
}

/**
 * sw_load_in_unit:
 * @load: a load
 * @unit: the unit wanted
 *
 * Returns: the load in that unit, rounded down to what comes out well: quarters of a kilogram, half pounds, whole
 *   newtons; as it was when it has that unit or @unit is none
 */
SwLoad
sw_load_in_unit (SwLoad     load,
                 SwLoadUnit unit)
{
  double kg = sw_load_to_kg (load);

  if (unit == load.unit || load.unit == SW_LOAD_NONE)
    return load;

  switch (unit)
    {
    case SW_LOAD_KG:
      return (SwLoad) { unit, floor (kg * 4.0 + 1e-6) / 4.0 };
    case SW_LOAD_LB:
      return (SwLoad) { unit, floor (sw_lb_from_kg (kg) * 2.0 + 1e-6) / 2.0 };
    case SW_LOAD_NEWTON:
      return (SwLoad) { unit, floor (kg * SW_STANDARD_GRAVITY_M_PER_S2 + 1e-6) };
    case SW_LOAD_NONE:
    default:
      return load;
    }
}

/**
 * sw_load_get_at_most:
 * @loads: (element-type SwLoad): loads, the least first
 * @most_kg: the limit, kilograms
 * @load: (out): the greatest of @loads that is not above it; left alone when there is none
 *
 * Returns: whether there is one
 */
gboolean
sw_load_get_at_most (GArray *loads,
                     double  most_kg,
                     SwLoad *load)
{
  for (guint i = loads->len; i-- > 0;)
    {
      SwLoad candidate = g_array_index (loads, SwLoad, i);

      if (sw_load_to_kg (candidate) <= most_kg + 1e-9)
        {
          *load = candidate;
          return TRUE;
        }
    }

  return FALSE;
}
