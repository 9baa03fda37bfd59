/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The therapist's words for the days of the week. */
#include "config.h"

#include <glib/gi18n.h>

#include "sw-day-name.h"

static const char *const day_words[] = {
  [SW_DAY_MONDAY] = N_("Monday"),
  [SW_DAY_TUESDAY] = N_("Tuesday"),
  [SW_DAY_WEDNESDAY] = N_("Wednesday"),
  [SW_DAY_THURSDAY] = N_("Thursday"),
  [SW_DAY_FRIDAY] = N_("Friday"),
  [SW_DAY_SATURDAY] = N_("Saturday"),
  [SW_DAY_SUNDAY] = N_("Sunday"),
};

/**
 * sw_day_get_name:
 * @day: a day of the week
 *
 * Returns: (transfer none): its name for the therapist, translated, to stand within a sentence
 */
const char *
sw_day_get_name (SwDay day)
{
  g_return_val_if_fail ((guint) day < G_N_ELEMENTS (day_words), "");

  return _(day_words[day]);
}
