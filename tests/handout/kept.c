/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is kept from one way of composing to the next, and from edit to edit. */
#include "config.h"

#include "handout-sample.h"
#include "sw-doses.h"
#include "sw-sketches.h"

/* Of more pictures than these the first has been forgotten: each takes several kilobytes. */
#define MANY 1000

/* A dose is told once, in the words that it has by itself. */
static void
test_doses (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwPhrases) phrases = sw_phrases_new ("en", &error);
  g_autoptr (SwDoses) doses = NULL;
  SwDose dose;

  g_assert_no_error (error);
  doses = sw_doses_new (phrases);
  sw_dose_init (&dose);
  dose.load = (SwLoad){ SW_LOAD_KG, 2.5 };
  for (int sets = 1; sets <= 3; sets++)
    for (SwUnits units = SW_UNITS_KG; units <= SW_UNITS_BOTH; units++)
      {
        g_autoptr (SwDoseWords) alone = NULL;
        const SwDoseWords *told;

        dose.sets = sets;
        alone = sw_dose_words_new (phrases, &dose, SW_DOSE_LIMB_NONE, units);
        told = sw_doses_tell (doses, &dose, SW_DOSE_LIMB_NONE, units);
        g_assert_cmpstr (told->amount, ==, alone->amount);
        g_assert_cmpstrv (told->how, alone->how);
        g_assert_true (sw_doses_tell (doses, &dose, SW_DOSE_LIMB_NONE, units) == told);
      }
}

/* The same picture is sketched once, another size is another picture, and what was not drawn for long is forgotten. */
static void
test_sketches (void)
{
  g_autoptr (SwFigureSpec) spec = handout_sample_new_figure (SW_FIGURE_MOTION_ONE_WAY, SW_FIGURE_BREATH_NONE);
  g_autoptr (SwFigure) figure = sw_figure_new (spec, FALSE, NULL);
  g_autoptr (SwSketches) sketches = sw_sketches_new ();
  g_autoptr (SwSketches) shared = sw_sketches_ref (sketches);
  const SwSketch *first = sw_sketches_get (sketches, figure, 100, 100);

  g_assert_true (sw_sketches_get (shared, figure, 100, 100) == first);
  g_assert_true (sw_sketches_get (sketches, figure, 100, 101) != first);
  g_assert_true (sw_sketches_get (sketches, figure, 100, 100) == first);

  for (int i = 0; i < MANY; i++)
    sw_sketches_get (sketches, figure, 50, 50 + i * 0.01);
  /* Each that is kept keeps the figure. */
  g_assert_cmpuint (G_OBJECT (figure)->ref_count, <, MANY);
  g_assert_cmpuint (G_OBJECT (figure)->ref_count, >, 50);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/kept/doses", test_doses);
  g_test_add_func ("/kept/sketches", test_sketches);
  return g_test_run ();
}
