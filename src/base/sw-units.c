/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Conversions between units, each from its defining constant. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "sw-units.h"

/**
 * sw_kg_from_lb:
 * @lb: a mass in pounds
 *
 * Returns: the mass in kilograms, by the exact definition 1 lb = 0.45359237 kg
 */
double
sw_kg_from_lb (double lb)
{
  return lb * SW_KG_PER_LB;
}

/**
 * sw_lb_from_kg:
 * @kg: a mass in kilograms
 *
 * Returns: the mass in pounds
 */
double
sw_lb_from_kg (double kg)
{
  return kg / SW_KG_PER_LB;
}

/**
 * sw_pt_from_mm:
 * @mm: a length in millimetres
 *
 * Returns: the length in points of 1/72 inch
 */
double
sw_pt_from_mm (double mm)
{
  return mm * SW_PT_PER_IN / SW_MM_PER_IN;
}

/**
 * sw_number_to_string:
 * @value: a finite number
 * @max_decimals: most digits behind the point, 0..6
 *
 * Writes a number for a file or the dose line: always with a point, whatever the locale, and without
 * zeros that say nothing ("2.5", "3", never "3.0" or "-0").
 *
 * Returns: (transfer full): the text
 */
char *
sw_number_to_string (double value,
                     int    max_decimals)
{
  char format[16];
  char text[G_ASCII_DTOSTR_BUF_SIZE * 2];

  g_return_val_if_fail (isfinite (value), NULL);
  g_return_val_if_fail (max_decimals >= 0 && max_decimals <= 6, NULL);

  g_snprintf (format, sizeof format, "%%.%df", max_decimals);
  g_ascii_formatd (text, sizeof text, format, value);

  if (strchr (text, '.') != NULL)
    {
      char *end = text + strlen (text);

      while (end[-1] == '0')
        *--end = '\0';
      if (end[-1] == '.')
        *--end = '\0';
    }

  return g_strdup (strcmp (text, "-0") == 0 ? "0" : text);
}
