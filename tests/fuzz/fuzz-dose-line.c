/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Any text at all as a dose line: refused with an error, or a dose within its limits whose own line means the same. */
#include "config.h"

#include "fuzz.h"
#include "sw-dose.h"

int
LLVMFuzzerTestOneInput (const uint8_t *data,
                        size_t         size)
{
  g_autofree char *raw = g_strndup ((const char *) data, size);
  g_autofree char *text = g_utf8_make_valid (raw, -1);
  g_autofree char *line = NULL;
  g_autoptr (GError) error = NULL;
  SwDose defaults, dose, again;

  sw_dose_init (&defaults);
  if (!sw_dose_from_line (text, &defaults, &dose, &error))
    {
      g_assert_nonnull (error);
      return 0;
    }

  g_assert_no_error (error);
  g_assert_true (sw_dose_check (&dose, NULL));
  line = sw_dose_to_line (&dose);
  g_assert_true (sw_dose_from_line (line, &defaults, &again, NULL));
  g_assert_true (sw_dose_equal (&dose, &again));
  return 0;
}
