/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Times in figures. */
#include "config.h"

#include <string.h>

#include "sw-span.h"

/**
 * sw_clock_to_words:
 * @seconds: from 0
 *
 * Returns: (transfer full): minutes and seconds, "2:10"; from an hour on "1:02:10"
 */
char *
sw_clock_to_words (double seconds)
{
  int whole_s = (int) lround (seconds);

  if (whole_s >= 3600)
    return g_strdup_printf ("%d:%02d:%02d", whole_s / 3600, whole_s / 60 % 60, whole_s % 60);

  return g_strdup_printf ("%d:%02d", whole_s / 60, whole_s % 60);
}

/**
 * sw_span_to_words:
 * @span: a time
 *
 * Returns: (transfer full): minutes and seconds, "4:24" or "2:04–2:20"
 */
char *
sw_span_to_words (SwSpan span)
{
  g_autofree char *low = sw_clock_to_words (span.low_s);
  g_autofree char *high = sw_clock_to_words (span.high_s);

  return strcmp (low, high) == 0 ? g_steal_pointer (&high) : g_strdup_printf ("%s–%s", low, high);
}
