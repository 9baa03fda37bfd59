/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the clinic says to a client about an exercise: the band to take, why one side does more, the note. */
#include "config.h"

#include <math.h>

#include "sw-note-words.h"

static SwItem *
make_item (const char *dose_line)
{
  SwItem *item = sw_item_new (SW_ITEM_EXERCISE, "i1");
  g_autoptr (GError) error = NULL;
  SwDose dose;

  sw_dose_from_line (dose_line, NULL, &dose, &error);
  g_assert_no_error (error);
  g_object_set (item, "dose", &dose, "test", "Raises", "note", "Slowly.", NULL);
  return item;
}

static void
assert_words (SwProgramme *programme,
              SwItem      *item,
              const char  *wanted)
{
  g_autoptr (SwPhrases) phrases = sw_phrases_new ("en", NULL);
  g_autofree char *words = sw_note_words (phrases, programme, item);
  g_auto (GStrv) parts = g_strsplit (words, "\302\240", -1);
  g_autofree char *plain = g_strjoinv (" ", parts);

  g_assert_cmpstr (plain, ==, wanted);
}

static void
test_band (void)
{
  g_autoptr (SwProgramme) programme = sw_programme_new ("test");
  g_autoptr (SwItem) item = make_item ("2 x 10, 25 N, rest 60 s");

  assert_words (programme, item, "Slowly.");
  g_object_set (sw_programme_get_clinic (programme), "bands", "B 1: 15 N\nB 2: 25 N", NULL);
  assert_words (programme, item, "Use the band marked “B 2”.\nSlowly.");
  g_object_set (sw_programme_get_clinic (programme), "bands", "B 1: 15 N", NULL);
  assert_words (programme, item, "Slowly.");
}

/* Both sides are told only where one of them has extra sets: else it would worry without use. */
static void
test_sides (void)
{
  g_autoptr (SwProgramme) programme = sw_programme_new ("test");
  g_autoptr (SwItem) even = make_item ("2 x 10, each side, rest 60 s");
  g_autoptr (SwItem) uneven = make_item ("2 x 10, each side, +1 set left, rest 60 s");
  g_autoptr (SwMeasurement) measurement = sw_measurement_new ("2026-03-09", "Raises", SW_MEASURE_REPETITIONS);

  assert_words (programme, uneven, "Slowly.");
  g_object_set (measurement, "left", 12.0, "right", 15.0, NULL);
  g_list_store_append (sw_programme_get_measurements (programme), measurement);
  assert_words (programme, even, "Slowly.");
  assert_words (programme, uneven, "One side does more until both sides are alike.\n"
                "Measured on 9 March 2026: left 12 times, right 15 times.\nSlowly.");
  g_object_set (measurement, "right", NAN, NULL);
  assert_words (programme, uneven, "Slowly.");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/handout/note-words/band", test_band);
  g_test_add_func ("/handout/note-words/sides", test_sides);
  return g_test_run ();
}
