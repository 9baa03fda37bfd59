/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The published ranges of doses: what lies within, at the edges and outside, for one aim and for several. */
#include "config.h"

#include <string.h>

#include "sw-dose-range.h"

#define STRENGTH SW_SET (SW_AIM_STRENGTH)
#define ENDURANCE SW_SET (SW_AIM_ENDURANCE)
#define STRETCH SW_SET (SW_AIM_STRETCH)
#define MOBILITY SW_SET (SW_AIM_MOBILITY)

static void
test_ranges (void)
{
  static const struct
  {
    SwSet aims;
    const char *line;
    const char *fault; /* how it begins, or NULL */
  } cases[] = {
    { STRENGTH, "1 x 8, rest 60 s", NULL },
    { STRENGTH, "3 x 8-15, rest 180 s", NULL },
    { STRENGTH, "3 x 7-12, rest 60 s", "for strength: repetitions 7-12, not 8-15 (ACSM" },
    { STRENGTH, "3 x 12-16, rest 60 s", "for strength: repetitions 12-16, not 8-15 (ACSM" },
    { STRENGTH, "4 x 8, rest 60 s", "for strength: sets 4, not 1-3 (ACSM" },
    { STRENGTH, "2 x 8, rest 59 s", "for strength: rest 59 s, not 60-180 s (ACSM" },
    { STRENGTH, "1 x 8", NULL },
    { STRENGTH, "2 x 3, hold 10 s, rest 60 s", NULL },
    { STRENGTH, "3 x hold 20 s, rest 60 s", NULL },
    { ENDURANCE, "2 x 10-25, rest 30 s", NULL },
    { ENDURANCE, "1 x 30", "for endurance: sets 1, not 2-4; repetitions 30, not 10-25 (ACSM" },
    { STRENGTH | ENDURANCE, "2 x 20, rest 30 s", NULL },
    { STRENGTH | ENDURANCE, "2 x 30, rest 60 s", "for strength: repetitions 30" },
    { STRETCH, "3 x hold 20 s", NULL },
    { STRETCH, "2 x hold 30 s", NULL },
    { STRETCH, "2 x hold 20 s", "for a stretch: 40 s altogether, not 60 s (ACSM" },
    { STRETCH, "1 x hold 90 s", "for a stretch: held for 90 s, not 10-60 s; 1 times, not 2-4 times (ACSM" },
    { STRETCH, "1 x 10, hold 2 s", "for a stretch: held for 2 s" },
    { STRETCH | MOBILITY, "1 x 10, hold 2 s", NULL },
    { MOBILITY, "9 x 99, rest 1 s", NULL },
    { 0, "9 x 99, rest 1 s", NULL },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      SwDose dose;
      g_autofree char *fault = NULL;
      g_autoptr (GError) error = NULL;

      sw_dose_init (&dose);
      sw_dose_from_line (cases[i].line, NULL, &dose, &error);
      g_assert_no_error (error);
      fault = sw_dose_range_find_fault (&dose, cases[i].aims);
      g_test_message ("%s: %s", cases[i].line, fault);
      if (cases[i].fault == NULL)
        g_assert_null (fault);
      else
        g_assert_true (fault != NULL && g_str_has_prefix (fault, cases[i].fault));
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/reckon/dose-range/ranges", test_ranges);
  return g_test_run ();
}
