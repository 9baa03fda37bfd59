/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * That whatever the checks find against a precaution is also told to the client, should the therapist keep it. */
#include "config.h"

#include <string.h>

#include "handout-sample.h"
#include "sw-care-limits.h"
#include "sw-care.h"
#include "sw-catalogue-folder.h"
#include "sw-handout.h"
#include "sw-precautions.h"

static SwPhrases *
load_english (void)
{
  g_autoptr (GError) error = NULL;
  SwPhrases *phrases = sw_phrases_new ("en", &error);

  g_assert_no_error (error);
  return phrases;
}

static void
test_covers_the_rules (void)
{
  g_autoptr (SwPhrases) phrases = load_english ();
  int n_precautions = sw_term_get_n_values (SW_TYPE_PRECAUTION);
  int n_cautions = sw_term_get_n_values (SW_TYPE_CAUTION);
  guint n_rules = 0;

  for (int precaution = 0; precaution < n_precautions; precaution++)
    for (int caution = 0; caution < n_cautions; caution++)
      {
        g_auto (GStrv) words = sw_care_words (phrases, SW_SET (precaution), SW_SET (caution));

        g_assert_cmpint (words[0] != NULL, ==, sw_care_covers (precaution, caution));
        if (sw_precautions_find_rule (precaution, caution) == NULL)
          continue;
        n_rules++;
        if (words[0] == NULL)
          {
            g_test_message ("%s with %s", sw_term_to_nick (SW_TYPE_PRECAUTION, precaution),
                            sw_term_to_nick (SW_TYPE_CAUTION, caution));
            g_test_fail ();
          }
      }
  g_assert_cmpuint (n_rules, >, 60);
}

static void
test_never_twice (void)
{
  g_autoptr (SwPhrases) phrases = load_english ();
  SwSet everything = ~(SwSet) 0;
  g_auto (GStrv) words = sw_care_words (phrases, everything, everything);
  g_auto (GStrv) none = sw_care_words (phrases, 0, everything);
  g_auto (GStrv) general = sw_care_general_words (phrases, everything);

  g_assert_null (none[0]);
  g_assert_nonnull (general[0]);
  for (guint i = 0; words[i] != NULL; i++)
    for (guint j = i + 1; words[j] != NULL; j++)
      g_assert_cmpstr (words[i], !=, words[j]);
}

/* The page may lie open on a table: it must not name what the client has. */
static void
test_names_no_condition (void)
{
  static const char *const conditions[]
      = { "blood pressure", "osteoporosis", "bone", "pregnan", "hernia", "diabet", "insulin", "fracture", "surgery" };
  g_autoptr (SwPhrases) phrases = load_english ();
  SwSet everything = ~(SwSet) 0;
  g_auto (GStrv) words = sw_care_words (phrases, everything, everything);
  g_auto (GStrv) general = sw_care_general_words (phrases, everything);
  g_autofree char *first = g_strjoinv (" ", words);
  g_autofree char *second = g_strjoinv (" ", general);
  g_autofree char *all = g_strjoin (" ", first, second, NULL);
  g_autofree char *lower = g_utf8_strdown (all, -1);

  for (guint i = 0; i < G_N_ELEMENTS (conditions); i++)
    g_assert_null (strstr (lower, conditions[i]));
}

/* What a limit makes the page say, sentence by sentence, whether or not an exercise comes near it. */
static char *
tell_weight (SwLimit *limit,
             SwUnits  units)
{
  g_autoptr (SwPhrases) phrases = load_english ();
  g_autoptr (GListStore) limits = g_list_store_new (SW_TYPE_LIMIT);
  g_auto (GStrv) words = NULL;

  g_list_store_append (limits, limit);
  words = sw_care_limit_words (phrases, G_LIST_MODEL (limits), NULL, NULL, units);
  return g_strjoinv (" ", words);
}

static void
test_weight (void)
{
  static const struct
  {
    SwBearing bearing;
    SwBodySide side;
    double kg;
    const char *words;
  } rows[] = {
    { SW_BEARING_NONE, SW_BODY_SIDE_RIGHT, 0.0 / 0.0, "Put no weight on the right leg." },
    { SW_BEARING_NONE, SW_BODY_SIDE_NONE, 0.0 / 0.0, "Put no weight on the right leg. Put no weight on the left leg." },
    { SW_BEARING_TOUCH, SW_BODY_SIDE_LEFT, 0.0 / 0.0, "The left foot may rest on the floor. Put no weight on it." },
    { SW_BEARING_PART, SW_BODY_SIDE_LEFT, 20.0, "Put no more than 20\302\240kg of weight on the left leg." },
    { SW_BEARING_PART, SW_BODY_SIDE_LEFT, 0.0 / 0.0, "Put only as much weight on the left leg as you were told." },
    { SW_BEARING_AS_TOLERATED, SW_BODY_SIDE_RIGHT, 0.0 / 0.0,
      "Put as much weight on the right leg as feels comfortable." },
    { SW_BEARING_FULL, SW_BODY_SIDE_RIGHT, 0.0 / 0.0, "" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (SwLimit) limit = sw_limit_new (SW_LIMIT_KIND_WEIGHT_BEARING);
      g_autofree char *words = NULL;

      g_object_set (limit, "bearing", rows[i].bearing, "side", rows[i].side, "kg", rows[i].kg, NULL);
      words = tell_weight (limit, SW_UNITS_KG);
      g_assert_cmpstr (words, ==, rows[i].words);
    }
}

/* What the care box of an exercise says of a range, in the client's words; "" where the picture does not move that joint. */
static char *
tell_range (SwExercise *exercise,
            SwMovement  movement,
            SwBodySide  side,
            double      from_deg,
            double      to_deg,
            SwSide      worked)
{
  g_autoptr (SwPhrases) phrases = load_english ();
  g_autoptr (GListStore) limits = g_list_store_new (SW_TYPE_LIMIT);
  g_autoptr (SwLimit) limit = sw_limit_new (SW_LIMIT_KIND_RANGE);
  SwDose dose = sw_exercise_get_facts (exercise)->dose;
  g_auto (GStrv) words = NULL;

  dose.side = worked;
  g_object_set (limit, "movement", movement, "side", side, "from-deg", from_deg, "to-deg", to_deg, NULL);
  g_list_store_append (limits, limit);
  words = sw_care_limit_words (phrases, G_LIST_MODEL (limits), exercise, &dose, SW_UNITS_KG);
  return g_strjoinv (" ", words);
}

static void
test_range (void)
{
  static const struct
  {
    SwMovement movement;
    SwBodySide side;
    double from_deg;
    double to_deg;
    SwSide worked;
    const char *words;
  } rows[] = {
    { SW_MOVEMENT_KNEE_BEND, SW_BODY_SIDE_RIGHT, 0.0, 90.0, SW_SIDE_RIGHT, "Do not bend the right knee past 90\302\260." },
    { SW_MOVEMENT_KNEE_BEND, SW_BODY_SIDE_RIGHT, 30.0, 0.0 / 0.0, SW_SIDE_RIGHT,
      "Keep the right knee bent by at least 30\302\260." },
    { SW_MOVEMENT_KNEE_BEND, SW_BODY_SIDE_NONE, 0.0 / 0.0, 60.0, SW_SIDE_EACH,
      "Do not bend the right knee past 60\302\260. Do not bend the left knee past 60\302\260." },
    { SW_MOVEMENT_HIP_BEND, SW_BODY_SIDE_RIGHT, -10.0, 70.0, SW_SIDE_RIGHT,
      "Do not bend the right hip past 70\302\260. Do not take the right leg behind you past 10\302\260." },
    { SW_MOVEMENT_HIP_BEND, SW_BODY_SIDE_RIGHT, 20.0, 70.0, SW_SIDE_RIGHT, "Move only as far as you were told." },
    { SW_MOVEMENT_KNEE_BEND, SW_BODY_SIDE_LEFT, 0.0, 130.0, SW_SIDE_RIGHT, "" },
    { SW_MOVEMENT_NECK_TURN, SW_BODY_SIDE_NONE, 0.0 / 0.0, 45.0, SW_SIDE_EACH, "" },
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (SwExercise) slide = sw_catalogue_load_exercise ("heel-slide", &error);

  g_assert_no_error (error);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *words = tell_range (slide, rows[i].movement, rows[i].side, rows[i].from_deg, rows[i].to_deg,
                                           rows[i].worked);

      g_assert_cmpstr (words, ==, rows[i].words);
    }
}

/* The pages tell the limit, and neither who set it nor what was operated, or how long ago. */
static void
test_pages (void)
{
  g_autoptr (SwProgramme) programme = handout_sample_new (NULL);
  GListStore *limits = sw_programme_get_limits (programme);
  g_autoptr (SwLimit) weight = sw_limit_new (SW_LIMIT_KIND_WEIGHT_BEARING);
  g_autoptr (SwLimit) surgery = sw_limit_new (SW_LIMIT_KIND_SURGERY);
  g_autoptr (SwHandout) handout = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *told = NULL;
  SwHandoutOptions options;

  g_object_set (surgery, "date", "2026-10-12", "name", "New ankle", "note", "Dr Example", NULL);
  g_object_set (weight, "side", SW_BODY_SIDE_RIGHT, "note", "Dr Example", NULL);
  g_list_store_append (limits, weight);
  g_list_store_append (limits, surgery);
  sw_handout_options_init (&options, programme, "2026-11-20");
  handout = sw_handout_new (programme, &options, &error);
  g_assert_no_error (error);
  told = sw_handout_dump (handout);
  g_assert_nonnull (strstr (told, "\"Take care every time  Put no weight on the right leg."));
  g_assert_nonnull (strstr (told, "\"Take care  Put no weight on the right leg."));
  g_assert_null (strstr (told, "left leg."));
  g_assert_null (strstr (told, "New ankle"));
  g_assert_null (strstr (told, "Dr Example"));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/care/covers-the-rules", test_covers_the_rules);
  g_test_add_func ("/care/weight", test_weight);
  g_test_add_func ("/care/range", test_range);
  g_test_add_func ("/care/pages", test_pages);
  g_test_add_func ("/care/never-twice", test_never_twice);
  g_test_add_func ("/care/names-no-condition", test_names_no_condition);
  return g_test_run ();
}
