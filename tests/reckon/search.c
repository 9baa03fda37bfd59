/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Search: every word, any order, typing errors, ranks and filters. */
#include "config.h"

#include <string.h>

#include "sample.h"
#include "sw-search.h"

typedef struct
{
  const char *id, *name, *synonym, *step;
  SwRegion region;
  SwPosition position;
  SwSet equipment, muscles;
  gboolean has_review;
  SwReviewState review;
} Row;

static const Row rows[] = {
  { "heel-counter", "Heel raise at the counter", "calf raise", "Rise onto your toes.",
    SW_REGION_ANKLE, SW_POSITION_STANDING, SW_SET (SW_EQUIPMENT_COUNTER), SW_SET (SW_MUSCLE_CALF),
    TRUE, SW_REVIEW_STATE_APPROVED },
  { "heel-sitting", "Heel raise sitting", NULL, "Lift both heels.",
    SW_REGION_ANKLE, SW_POSITION_SITTING, SW_SET (SW_EQUIPMENT_CHAIR), SW_SET (SW_MUSCLE_CALF),
    TRUE, SW_REVIEW_STATE_DRAFT },
  { "half-squat", "Half squat", "small knee bend", "Bend your knees.",
    SW_REGION_KNEE, SW_POSITION_STANDING, 0, SW_SET (SW_MUSCLE_QUADRICEPS), FALSE, SW_REVIEW_STATE_DRAFT },
  { "side-lift", "Leg lift on the side", NULL, "Keep the heel in line with the shoulder.",
    SW_REGION_HIP, SW_POSITION_ON_SIDE, SW_SET (SW_EQUIPMENT_MAT), SW_SET (SW_MUSCLE_HIP_ABDUCTORS),
    FALSE, SW_REVIEW_STATE_DRAFT },
  { "blades", "Shoulder blade squeeze", "retraction", "Draw your shoulder blades together.",
    SW_REGION_SHOULDER, SW_POSITION_SITTING, 0, SW_SET (SW_MUSCLE_RHOMBOIDS), TRUE, SW_REVIEW_STATE_DRAFT },
  { "epaule", "Élévation de l’épaule", NULL, "Levez le bras.",
    SW_REGION_SHOULDER, SW_POSITION_STANDING, 0, SW_SET (SW_MUSCLE_DELTOID), FALSE, SW_REVIEW_STATE_DRAFT },
};

static SwSearch *search;

static SwExercise *
make_exercise (const Row *row)
{
  SwExerciseFacts facts;
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_exercise_text_free);
  SwExerciseText *text = sw_exercise_text_new ("en");
  const char *synonyms[] = { row->synonym, NULL };
  const char *steps[] = { row->step, NULL };

  sample_facts_init (&facts, row->id);
  facts.region = row->region;
  facts.position = row->position;
  facts.equipment = row->equipment;
  facts.muscles = row->muscles;
  facts.has_review = row->has_review;
  facts.review = row->review;
  g_free (text->name);
  text->name = g_strdup (row->name);
  g_strfreev (text->synonyms);
  text->synonyms = g_strdupv ((char **) synonyms);
  g_strfreev (text->steps);
  text->steps = g_strdupv ((char **) steps);
  g_ptr_array_add (texts, text);
  return sw_exercise_new (&facts, texts, NULL, NULL);
}

/* The ids found, in order, a space between. */
static void
assert_filtered (const char           *query,
                 const SwSearchFilter *filter,
                 const char           *wanted)
{
  g_autoptr (GPtrArray) found = sw_search_find (search, query, filter);
  g_autoptr (GString) ids = g_string_new (NULL);

  for (guint i = 0; i < found->len; i++)
    g_string_append_printf (ids, "%s%s", i > 0 ? " " : "", sw_exercise_get_id (found->pdata[i]));
  if (strcmp (ids->str, wanted) != 0)
    g_error ("“%s” found “%s” instead of “%s”", query, ids->str, wanted);
}

static void
assert_found (const char *query,
              const char *wanted)
{
  assert_filtered (query, NULL, wanted);
}

static void
test_words (void)
{
  assert_found ("squat", "half-squat");
  assert_found ("raise heel", "heel-counter heel-sitting");
  assert_found ("heel raise sitting", "heel-sitting");
  assert_found ("HEELS, raises!", "heel-counter heel-sitting");
  assert_found ("heel squat", "");
  assert_found ("knee bend", "half-squat");
  assert_found ("abductors", "side-lift");
  assert_found ("together blades", "blades");
  assert_found ("elevation epaule", "epaule");
}

static void
test_beginning (void)
{
  assert_found ("sho", "blades epaule side-lift");
  assert_found ("heel rai", "heel-counter heel-sitting");
  assert_found ("rai heel", ""); /* only the last word is unfinished */
  assert_found ("heel rai ", "");
  assert_found ("squats", "half-squat");
}

/* Name before synonym before term before text. */
static void
test_rank (void)
{
  assert_found ("heel", "heel-counter heel-sitting side-lift");
  assert_found ("calf", "heel-counter heel-sitting"); /* synonym before muscle; and “half” is no “calf” */
  assert_found ("shoulder", "blades epaule side-lift");
}

/* One error from four letters on, two from eight on; swapped neighbours are one. */
static void
test_typing_errors (void)
{
  assert_found ("sqaut", "half-squat");
  assert_found ("squt ", "half-squat");
  assert_found ("squt", "half-squat blades"); /* it may become “squeeze” yet */
  assert_found ("squaat", "half-squat");
  assert_found ("sqxat", "half-squat");
  assert_found ("sxxat", "");
  assert_found ("sholder", "blades epaule side-lift");
  assert_found ("shuolder blaed", "blades");
  assert_found ("quardiceps", "half-squat");
  assert_found ("qaudricesp", "half-squat");
  assert_found ("squeexe", "blades");
  assert_found ("hxl", ""); /* too short */
  assert_found ("quadrcie", "half-squat"); /* an unfinished word with an error */
}

/* By name; in this test's locale, C, an accent comes after all letters. */
static void
test_all (void)
{
  assert_found ("", "half-squat heel-counter heel-sitting side-lift blades epaule");
  assert_found ("  , ", "half-squat heel-counter heel-sitting side-lift blades epaule");
  /* Cut off in the middle of a letter: no word at all. */
  assert_found ("\xc3", "half-squat heel-counter heel-sitting side-lift blades epaule");
}

static void
test_filter (void)
{
  SwSearchFilter filter = { .regions = SW_SET (SW_REGION_ANKLE) };

  assert_filtered ("", &filter, "heel-counter heel-sitting");
  filter.positions = SW_SET (SW_POSITION_SITTING);
  assert_filtered ("heel", &filter, "heel-sitting");
  filter = (SwSearchFilter) { .limit_equipment = TRUE };
  assert_filtered ("", &filter, "half-squat blades epaule");
  filter.equipment = SW_SET (SW_EQUIPMENT_CHAIR) | SW_SET (SW_EQUIPMENT_MAT);
  assert_filtered ("", &filter, "half-squat heel-sitting side-lift blades epaule");
  filter = (SwSearchFilter) { .aims = SW_SET (SW_AIM_BALANCE) };
  assert_filtered ("", &filter, "");
  filter = (SwSearchFilter) { .reviews = SW_SET (SW_REVIEW_STATE_APPROVED) };
  assert_filtered ("", &filter, "heel-counter");
  filter.reviews |= SW_SET (SW_REVIEW_STATE_DRAFT);
  assert_filtered ("", &filter, "heel-counter heel-sitting blades");
}

/* Whatever is typed: no crash, nothing twice, and each word longer finds no more. */
static void
test_random (void)
{
  guint32 seed = g_random_int ();
  g_autoptr (GRand) rand = g_rand_new_with_seed (seed);

  g_test_message ("seed %u", seed);
  for (int i = 0; i < 3000; i++)
    {
      g_autoptr (GString) query = g_string_new (NULL);

      for (int n = g_rand_int_range (rand, 0, 60); n > 0; n--)
        g_string_append_unichar (query, g_rand_int_range (rand, 0, 4) == 0 ? ' '
                                        : (gunichar) g_rand_int_range (rand, 0x20, 0x250));
      for (int n = 0; n < 2; n++)
        {
          g_autoptr (GPtrArray) found = sw_search_find (search, query->str, NULL);
          g_autoptr (GHashTable) seen = g_hash_table_new (NULL, NULL);

          for (guint j = 0; j < found->len; j++)
            g_assert_true (g_hash_table_add (seen, found->pdata[j]));
          g_string_append (query, " zzz");
          if (n == 1)
            g_assert_cmpuint (found->len, ==, 0);
        }
    }
}

/* What is called by the very word comes before what has it among others, whatever the alphabet says. */
static void
test_whole_name (void)
{
  static const Row named[] = {
    { "ball-bridge", "Ball bridge", NULL, "Lift.", SW_REGION_HIP, SW_POSITION_ON_BACK, 0, 0, FALSE,
      SW_REVIEW_STATE_DRAFT },
    { "bridge", "Bridge", NULL, "Lift.", SW_REGION_HIP, SW_POSITION_ON_BACK, 0, 0, FALSE, SW_REVIEW_STATE_DRAFT },
  };
  g_autoptr (SwCatalogue) catalogue = sw_catalogue_new ();
  g_autoptr (GPtrArray) exercises = g_ptr_array_new_with_free_func (g_object_unref);
  g_autoptr (SwSearch) bridges = NULL;
  g_autoptr (GPtrArray) found = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (named); i++)
    g_ptr_array_add (exercises, make_exercise (&named[i]));
  sw_catalogue_add (catalogue, exercises);
  bridges = sw_search_new (catalogue, "en");
  found = sw_search_find (bridges, "bridge", NULL);

  g_assert_cmpuint (found->len, ==, 2);
  g_assert_cmpstr (sw_exercise_get_id (found->pdata[0]), ==, "bridge");
}

static void
test_empty_catalogue (void)
{
  g_autoptr (SwCatalogue) catalogue = sw_catalogue_new ();
  g_autoptr (SwSearch) empty = sw_search_new (catalogue, "en");
  g_autoptr (GPtrArray) all = sw_search_find (empty, "", NULL);
  g_autoptr (GPtrArray) found = sw_search_find (empty, "heel", NULL);

  g_assert_cmpuint (all->len, ==, 0);
  g_assert_cmpuint (found->len, ==, 0);
}

int
main (int   argc,
      char *argv[])
{
  g_autoptr (SwCatalogue) catalogue = NULL;
  g_autoptr (GPtrArray) exercises = NULL;
  int status;

  g_test_init (&argc, &argv, NULL);

  catalogue = sw_catalogue_new ();
  exercises = g_ptr_array_new_with_free_func (g_object_unref);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    g_ptr_array_add (exercises, make_exercise (&rows[i]));
  sw_catalogue_add (catalogue, exercises);
  search = sw_search_new (catalogue, "en");

  g_test_add_func ("/reckon/search/words", test_words);
  g_test_add_func ("/reckon/search/beginning", test_beginning);
  g_test_add_func ("/reckon/search/rank", test_rank);
  g_test_add_func ("/reckon/search/typing-errors", test_typing_errors);
  g_test_add_func ("/reckon/search/whole-name", test_whole_name);
  g_test_add_func ("/reckon/search/all", test_all);
  g_test_add_func ("/reckon/search/filter", test_filter);
  g_test_add_func ("/reckon/search/random", test_random);
  g_test_add_func ("/reckon/search/empty-catalogue", test_empty_catalogue);

  status = g_test_run ();
  sw_search_free (search);
  return status;
}
