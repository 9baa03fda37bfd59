/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is offered in an exercise's place, in which order, and what never is. */
#include "config.h"

#include <string.h>

#include "sample.h"
#include "sw-swap.h"

typedef struct
{
  SwProgramme *programme;
  SwClient *client;
  SwCatalogue *catalogue;
  SwSection *section;
  SwItem *item;
} Fixture;

/* A squat in the session, links to easier ones "sit" and by that "lean", to a harder one "jump". */
static void
set_up (Fixture       *fixture,
        gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (SwSession) session = sw_session_new ("Morning", SW_SET (SW_DAY_MONDAY));
  g_autoptr (GPtrArray) exercises = g_ptr_array_new_with_free_func (g_object_unref);
  g_autoptr (SwExercise) squat = NULL;
  static char *to_sit[] = { (char *) "sit", NULL };
  static char *to_lean[] = { (char *) "lean", NULL };
  static char *to_squat[] = { (char *) "squat", NULL };
  static char *to_jump[] = { (char *) "jump", NULL };
  SwExerciseFacts facts;

  fixture->programme = sw_programme_new (NULL);
  fixture->client = sw_programme_get_client (fixture->programme);
  fixture->catalogue = sw_catalogue_new ();
  g_list_store_append (sw_programme_get_sessions (fixture->programme), session);
  fixture->section = sample_section (session, SW_SECTION_MAIN);

  sample_facts_init (&facts, "squat");
  facts.muscles = SW_SET (SW_MUSCLE_QUADRICEPS) | SW_SET (SW_MUSCLE_GLUTEALS);
  facts.aims = SW_SET (SW_AIM_STRENGTH);
  facts.position = SW_POSITION_STANDING;
  facts.easier = to_sit;
  facts.harder = to_jump;
  squat = sample_exercise_from (&facts, "Squat");
  g_ptr_array_add (exercises, g_object_ref (squat));

  facts.id = (char *) "sit";
  facts.easier = to_lean;
  facts.harder = to_squat;
  facts.equipment = SW_SET (SW_EQUIPMENT_CHAIR);
  g_ptr_array_add (exercises, sample_exercise_from (&facts, "Sit down"));

  facts.id = (char *) "lean";
  facts.easier = NULL;
  facts.harder = to_sit;
  facts.equipment = SW_SET (SW_EQUIPMENT_WALL);
  facts.cautions = SW_SET (SW_CAUTION_LONG_HOLD);
  g_ptr_array_add (exercises, sample_exercise_from (&facts, "Lean on a wall"));

  facts.id = (char *) "jump";
  facts.easier = to_squat;
  facts.harder = NULL;
  facts.equipment = 0;
  facts.cautions = SW_SET (SW_CAUTION_IMPACT);
  g_ptr_array_add (exercises, sample_exercise_from (&facts, "Jump"));

  /* Not linked: one as alike as can be, one with half the muscles, one on the back, one of other muscles. */
  facts.easier = NULL;
  facts.cautions = 0;
  facts.id = (char *) "lunge";
  g_ptr_array_add (exercises, sample_exercise_from (&facts, "Lunge"));
  facts.id = (char *) "half";
  facts.muscles = SW_SET (SW_MUSCLE_QUADRICEPS);
  g_ptr_array_add (exercises, sample_exercise_from (&facts, "Half"));
  facts.id = (char *) "bridge";
  facts.position = SW_POSITION_ON_BACK;
  facts.muscles = SW_SET (SW_MUSCLE_QUADRICEPS) | SW_SET (SW_MUSCLE_GLUTEALS);
  g_ptr_array_add (exercises, sample_exercise_from (&facts, "Bridge"));
  facts.id = (char *) "curl";
  facts.muscles = SW_SET (SW_MUSCLE_BICEPS);
  g_ptr_array_add (exercises, sample_exercise_from (&facts, "Curl"));
  sw_catalogue_add (fixture->catalogue, exercises);

  fixture->item = sw_item_new_for_exercise (squat, "i1");
  sample_append (fixture->section, fixture->item);
}

static void
tear_down (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  g_assert_finalize_object (fixture->programme);
  g_assert_finalize_object (fixture->catalogue);
}

/* What is offered must be just these ids, in this order. */
static void
expect (Fixture    *fixture,
        SwSwapWish  wish,
        const char *ids)
{
  g_autoptr (SwSwaps) all = sw_swaps_new (fixture->programme, fixture->catalogue);
  g_autoptr (GPtrArray) swaps = sw_swaps_find (all, fixture->item, wish, 100);
  g_autoptr (GString) found = g_string_new (NULL);

  for (guint i = 0; i < swaps->len; i++)
    {
      const SwSwap *swap = swaps->pdata[i];

      g_string_append_printf (found, "%s%s", i > 0 ? " " : "", sw_exercise_get_id (swap->exercise));
      g_assert_cmpuint (strlen (swap->reason), >, 8);
    }
  g_assert_cmpstr (found->str, ==, ids);
}

static void
test_order (Fixture       *fixture,
            gconstpointer  data G_GNUC_UNUSED)
{
  expect (fixture, SW_SWAP_EASIER, "sit lean");
  expect (fixture, SW_SWAP_HARDER, "jump");
  expect (fixture, SW_SWAP_ALIKE, "lunge bridge half");
  expect (fixture, SW_SWAP_ANY, "sit jump lean lunge bridge half");
}

static void
test_most (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (SwSwaps) all = sw_swaps_new (fixture->programme, fixture->catalogue);
  g_autoptr (GPtrArray) swaps = sw_swaps_find (all, fixture->item, SW_SWAP_ANY, 2);

  g_assert_cmpuint (swaps->len, ==, 2);
}

/* What has not been asked yet forbids nothing; a wall is in every home. */
static void
test_equipment (Fixture       *fixture,
                gconstpointer  data G_GNUC_UNUSED)
{
  g_object_set (fixture->client, "equipment", SW_SET (SW_EQUIPMENT_BAND), NULL);
  expect (fixture, SW_SWAP_EASIER, "lean");
  g_object_set (fixture->client, "equipment", SW_SET (SW_EQUIPMENT_CHAIR), NULL);
  expect (fixture, SW_SWAP_EASIER, "sit lean");
}

static void
test_position (Fixture       *fixture,
               gconstpointer  data G_GNUC_UNUSED)
{
  g_object_set (fixture->client, "avoided-positions", SW_SET (SW_POSITION_ON_BACK), NULL);
  expect (fixture, SW_SWAP_ALIKE, "lunge half");
}

/* High blood pressure and a long hold are to be asked about (reference/precautions.csv has the sources). */
static void
test_precaution (Fixture       *fixture,
                 gconstpointer  data G_GNUC_UNUSED)
{
  g_object_set (fixture->client, "precautions", SW_SET (SW_PRECAUTION_HIGH_BLOOD_PRESSURE), NULL);
  expect (fixture, SW_SWAP_EASIER, "sit");
}

static void
test_taken (Fixture       *fixture,
            gconstpointer  data G_GNUC_UNUSED)
{
  sample_append (fixture->section, sw_item_new_for_exercise (sw_catalogue_lookup (fixture->catalogue, "sit"), "i2"));
  expect (fixture, SW_SWAP_EASIER, "lean");
}

static void
test_retired (Fixture       *fixture,
              gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) exercises = g_ptr_array_new_with_free_func (g_object_unref);
  SwExerciseFacts facts = *sw_exercise_get_facts (sw_catalogue_lookup (fixture->catalogue, "lunge"));

  facts.id = (char *) "old";
  facts.has_review = TRUE;
  facts.review = SW_REVIEW_STATE_RETIRED;
  g_ptr_array_add (exercises, sample_exercise_from (&facts, "Old"));
  sw_catalogue_add (fixture->catalogue, exercises);
  expect (fixture, SW_SWAP_ALIKE, "lunge bridge half");
}

static void
test_no_exercise (Fixture       *fixture,
                  gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (SwItem) rest = sw_item_new (SW_ITEM_REST, "r");
  g_autoptr (SwSwaps) all = sw_swaps_new (fixture->programme, fixture->catalogue);
  g_autoptr (GPtrArray) swaps = sw_swaps_find (all, rest, SW_SWAP_ANY, 100);

  g_assert_cmpuint (swaps->len, ==, 0);
}

/* Two of three shared muscles, one of two aims, the same position: 0.5 * 2/3 + 0.4 * 1/2 + 0.1. */
static void
test_alikeness (Fixture       *fixture,
                gconstpointer  data G_GNUC_UNUSED)
{
  SwExerciseFacts a;
  SwExerciseFacts b;

  (void) fixture;
  sample_facts_init (&a, "a");
  a.muscles = SW_SET (SW_MUSCLE_QUADRICEPS) | SW_SET (SW_MUSCLE_GLUTEALS) | SW_SET (SW_MUSCLE_CALF);
  a.aims = SW_SET (SW_AIM_STRENGTH) | SW_SET (SW_AIM_BALANCE);
  b = a;
  g_assert_cmpfloat_with_epsilon (sw_swap_get_alikeness (&a, &b), 1.0, 1e-12);

  b.muscles = SW_SET (SW_MUSCLE_QUADRICEPS) | SW_SET (SW_MUSCLE_GLUTEALS);
  b.aims = SW_SET (SW_AIM_STRENGTH);
  g_assert_cmpfloat_with_epsilon (sw_swap_get_alikeness (&a, &b), 0.5 * 2.0 / 3.0 + 0.2 + 0.1, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_swap_get_alikeness (&b, &a), sw_swap_get_alikeness (&a, &b), 1e-12);

  b.position = a.position == SW_POSITION_SITTING ? SW_POSITION_STANDING : SW_POSITION_SITTING;
  b.muscles = SW_SET (SW_MUSCLE_NECK_FLEXORS);
  b.aims = SW_SET (SW_AIM_STRETCH);
  g_assert_cmpfloat_with_epsilon (sw_swap_get_alikeness (&a, &b), 0.0, 1e-12);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, function) g_test_add (name, Fixture, NULL, set_up, function, tear_down)
  ADD ("/reckon/swap/order", test_order);
  ADD ("/reckon/swap/most", test_most);
  ADD ("/reckon/swap/equipment", test_equipment);
  ADD ("/reckon/swap/position", test_position);
  ADD ("/reckon/swap/precaution", test_precaution);
  ADD ("/reckon/swap/taken", test_taken);
  ADD ("/reckon/swap/retired", test_retired);
  ADD ("/reckon/swap/no-exercise", test_no_exercise);
  ADD ("/reckon/swap/alikeness", test_alikeness);
#undef ADD
  return g_test_run ();
}
