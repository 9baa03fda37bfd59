/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A clinic's elastic bands by the force it measured, or its supplier states, at a stretch. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "sw-bands.h"
#include "sw-line.h"

#define MOST_FORCE_N 5000.0
#define MOST_STRETCH_PERCENT 400

static void
band_free (gpointer data)
{
  SwBand *band = data;

  g_free (band->name);
  g_free (band);
}

/* "25 N at 100 %"; without a stretch that at double length. */
static gboolean
take_force (const char **at,
            SwBand      *band)
{
  if (!sw_line_take_decimal (at, &band->force_n) || !sw_line_take_word (at, "n", "newton", "newtons", NULL))
    return FALSE;

  band->stretch_percent = SW_BAND_USUAL_STRETCH_PERCENT;
  if (sw_line_take_word (at, "at", NULL)
      && (!sw_line_take_int (at, &band->stretch_percent) || !sw_line_take_char (at, '%')))
    return FALSE;

  return band->force_n > 0.0 && band->force_n <= MOST_FORCE_N && band->stretch_percent > 0
         && band->stretch_percent <= MOST_STRETCH_PERCENT;
}

static gboolean
add_line (GPtrArray  *bands,
          const char *text)
{
  const char *colon = strchr (text, ':');
  g_autofree char *name = colon != NULL ? g_strstrip (g_strndup (text, (gsize) (colon - text))) : NULL;
  g_autofree char *line = colon != NULL ? sw_line_simplify (colon + 1) : NULL;
  const char *at = line;

  if (name == NULL || *name == '\0')
    return FALSE;
  do
    {
      SwBand band = { NULL, 0.0, 0 };

      if (!take_force (&at, &band))
        return FALSE;
      band.name = g_strdup (name);
      g_ptr_array_add (bands, g_memdup2 (&band, sizeof band));
    }
  while (sw_line_take_char (&at, ',') || sw_line_take_char (&at, ';'));

  sw_line_skip_spaces (&at);
  return *at == '\0';
}

/**
 * sw_bands_from_text:
 * @text: a band a line, such as "2: 15 N at 50 %, 25 N at 100 %"
 *
 * Returns: (transfer full) (nullable) (element-type SwBand): each band at each stretch, in the order of the text; NULL
 *   when a line says something else
 */
GPtrArray *
sw_bands_from_text (const char *text)
{
  g_autoptr (GPtrArray) bands = g_ptr_array_new_with_free_func (band_free);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    {
      if (*g_strstrip (lines[i]) != '\0' && !add_line (bands, lines[i]))
        return NULL;
    }

  return g_steal_pointer (&bands);
}

/**
 * sw_bands_get_at_most:
 * @bands: (element-type SwBand): bands
 * @stretch_percent: how much longer than at rest
 * @most_n: the limit, newtons
 *
 * Returns: (transfer none) (nullable): the one that pulls hardest at just that stretch and not above the limit; what it
 *   does between two stretches is not guessed
 */
const SwBand *
sw_bands_get_at_most (GPtrArray *bands,
                      int        stretch_percent,
                      double     most_n)
{
  const SwBand *best = NULL;

  for (guint i = 0; i < bands->len; i++)
    {
      const SwBand *band = g_ptr_array_index (bands, i);

      if (band->stretch_percent == stretch_percent && band->force_n <= most_n + 1e-9
          && (best == NULL || band->force_n > best->force_n))
        best = band;
    }

  return best;
}

/**
 * sw_bands_find_force:
 * @bands: (element-type SwBand): bands
 * @force_n: newtons
 *
 * Returns: (transfer none) (nullable): the first that pulls as hard at one of its stretches
 */
const SwBand *
sw_bands_find_force (GPtrArray *bands,
                     double     force_n)
{
  for (guint i = 0; i < bands->len; i++)
    {
      const SwBand *band = g_ptr_array_index (bands, i);

      if (fabs (band->force_n - force_n) < 5e-4)
        return band;
    }

  return NULL;
}
