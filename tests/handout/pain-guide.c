/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * That what the pages say of pain agrees: the zones of the guide and the sign to do less with the exercises' limits. */
#include "config.h"

#include <string.h>

#include "handout-sample.h"
#include "sw-handout.h"

#define DAY "2026-11-20"
#define FEWEST 6
#define NONE -1

/* Everything on the pages of the sample, whose exercises have the limits in turn. @guide: whether with the guide */
static char *
tell (const int limits[2],
      gboolean  guide)
{
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
  g_autoptr (SwHandout) handout = NULL;
  g_autoptr (GError) error = NULL;
  SwHandoutOptions options;
  guint n = 0;

  for (guint i = 0; i < items->len; i++)
    if (sw_item_get_kind (items->pdata[i]) == SW_ITEM_EXERCISE)
      {
        SwDose dose = *sw_item_get_dose (items->pdata[i]);

        dose.pain_limit = limits[n++ % 2];
        g_object_set (items->pdata[i], "dose", &dose, NULL);
      }
  g_assert_cmpuint (n, >=, FEWEST);

  sw_handout_options_init (&options, programme, DAY);
  if (!guide)
    options.parts &= ~SW_SET (SW_PAGE_PART_PAIN_GUIDE);
  handout = sw_handout_new (programme, &options, &error);
  g_assert_no_error (error);
  return sw_handout_dump (handout);
}

static void
test_agrees (void)
{
  static const struct
  {
    int limits[2];
    const char *wanted[5];
    const char *sign;
    const char *unwanted[3];
  } rows[] = {
    { { NONE, NONE },
      { "\"0 to\302\2402\"", "\"3 to\302\2405\"", "\"6 to\302\24010\"" },
      "goes above 5\302\240out",
      { "always comes first", "own limit", "Keep pain at" } },
    { { 3, 3 },
      { "\"0 to\302\2403\"", "\"4 to\302\24010\"", "Stop that exercise" },
      "goes above 3\302\240out",
      { "always comes first", "own limit", "\"6 to" } },
    { { 2, 4 },
      { "\"0 to\302\2402\"", "\"3 to\302\2404\"", "\"5 to\302\24010\"", "always comes first" },
      "own limit or above 4\302\240out",
      { "\"6 to", "Fine. Carry on." } },
    { { 0, 1 },
      { "\"0\"", "\"Fine. Carry on.\"", "\"2 to\302\24010\"", "always comes first" },
      "own limit or above 1\302\240out",
      { "\"6 to" } },
    { { 0, 0 },
      { "\"0\"", "\"Fine. Carry on.\"", "\"1 to\302\24010\"" },
      "goes above 0\302\240out",
      { "own limit" } },
    { { 10, 10 },
      { "\"0 to\302\24010\"" },
      "goes above 10\302\240out",
      { "Stop that exercise" } },
    { { NONE, 3 },
      { "\"0 to\302\2402\"", "\"3 to\302\2405\"", "\"6 to\302\24010\"", "always comes first" },
      "own limit or above 5\302\240out",
      { "\"0 to\302\2403\"" } },
    { { NONE, 7 },
      { "\"6 to\302\24010\"", "always comes first" },
      "own limit or above 7\302\240out",
      { "above 5" } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *dump = tell (rows[i].limits, TRUE);
      g_autofree char *brief = tell (rows[i].limits, FALSE);

      for (guint k = 0; k < G_N_ELEMENTS (rows[i].wanted) && rows[i].wanted[k] != NULL; k++)
        if (strstr (dump, rows[i].wanted[k]) == NULL)
          {
            g_test_message ("limits %d and %d: no %s", rows[i].limits[0], rows[i].limits[1], rows[i].wanted[k]);
            g_test_fail ();
          }
      if (strstr (brief, rows[i].sign) == NULL || strstr (dump, rows[i].sign) != NULL)
        {
          g_test_message ("limits %d and %d: %s not without the guide alone", rows[i].limits[0], rows[i].limits[1],
                          rows[i].sign);
          g_test_fail ();
        }
      for (guint k = 0; k < G_N_ELEMENTS (rows[i].unwanted) && rows[i].unwanted[k] != NULL; k++)
        if (strstr (dump, rows[i].unwanted[k]) != NULL)
          {
            g_test_message ("limits %d and %d: %s", rows[i].limits[0], rows[i].limits[1], rows[i].unwanted[k]);
            g_test_fail ();
          }
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/pain-guide/agrees", test_agrees);

  return g_test_run ();
}
