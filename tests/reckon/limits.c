/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is found at the limits that were set for a client, what would mend it, and how the days are counted. All shipped
 * exercises are tried in tests/reference/test-limits.c. */
#include "config.h"

#include <string.h>

#include "sample.h"
#include "sw-finding.h"
#include "sw-limit-check.h"
#include "sw-limit-name.h"
#include "sw-swap.h"

#define TODAY "2026-11-25"

typedef struct
{
  SwProgramme *programme;
  SwCatalogue *catalogue;
  SwSection *section;
  SwExerciseFacts facts;
  GPtrArray *findings;
} Fixture;

static void
set_up (Fixture       *fixture,
        gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (SwSession) session = sw_session_new ("Morning", SW_SET (SW_DAY_MONDAY));

  fixture->programme = sw_programme_new (NULL);
  fixture->catalogue = sw_catalogue_new ();
  g_list_store_append (sw_programme_get_sessions (fixture->programme), session);
  fixture->section = sample_section (session, SW_SECTION_MAIN);
  fixture->findings = NULL;
  sample_facts_init (&fixture->facts, "curl");
  fixture->facts.region = SW_REGION_ELBOW_HAND;
  fixture->facts.equipment = SW_SET (SW_EQUIPMENT_DUMBBELL);
  fixture->facts.muscles = SW_SET (SW_MUSCLE_BICEPS);
  fixture->facts.aims = SW_SET (SW_AIM_STRENGTH);
  fixture->facts.load_limit = (SwLoad) { SW_LOAD_KG, 20.0 };
  g_object_set (sw_programme_get_client (fixture->programme), "equipment",
                (guint64) SW_SET (SW_EQUIPMENT_DUMBBELL) | SW_SET (SW_EQUIPMENT_CHAIR), NULL);
}

static void
tear_down (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  g_clear_pointer (&fixture->findings, g_ptr_array_unref);
  g_assert_finalize_object (fixture->programme);
  g_assert_finalize_object (fixture->catalogue);
}

static SwItem *
add_item (Fixture    *fixture,
          const char *dose_line)
{
  g_autoptr (SwExercise) exercise = sample_exercise_from (&fixture->facts, "Curl");
  g_autoptr (SwItem) item = sw_item_new_for_exercise (exercise, "i1");
  SwDose dose;

  g_assert_true (sw_dose_from_line (dose_line, NULL, &dose, NULL));
  g_object_set (item, "dose", &dose, NULL);
  g_list_store_append (sw_section_get_items (fixture->section), item);
  return item;
}

static SwLimit *
add_limit (Fixture     *fixture,
           SwLimitKind  kind)
{
  g_autoptr (SwLimit) limit = sw_limit_new (kind);

  g_list_store_append (sw_programme_get_limits (fixture->programme), limit);
  return limit;
}

static const SwFinding *
check (Fixture    *fixture,
       const char *prefix)
{
  const SwFinding *found = NULL;

  g_clear_pointer (&fixture->findings, g_ptr_array_unref);
  fixture->findings = sw_findings_collect (fixture->programme, fixture->catalogue, TODAY);
  for (guint i = 0; i < fixture->findings->len; i++)
    {
      const SwFinding *finding = g_ptr_array_index (fixture->findings, i);

      if (!g_str_has_prefix (finding->key, prefix))
        continue;
      g_assert_null (found);
      found = finding;
    }

  return found;
}

static void
test_load (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  SwItem *item = add_item (fixture, "3 x 12, 3 kg, each side");
  SwLimit *limit = add_limit (fixture, SW_LIMIT_KIND_LOAD);
  g_autofree char *key = NULL;
  g_autoptr (SwAnswer) answer = NULL;
  const SwFinding *finding;
  SwDose dose;

  g_object_set (limit, "region", SW_REGION_SHOULDER, "side", SW_BODY_SIDE_RIGHT, "kg", 3.0, "note", "Letter", NULL);
  g_assert_null (check (fixture, "limit-"));

  g_object_set (limit, "kg", 2.5, NULL);
  finding = check (fixture, "limit-load:");
  g_assert_nonnull (finding);
  g_assert_cmpint (finding->level, ==, SW_FINDING_STOP);
  g_assert_nonnull (strstr (finding->why, "Letter"));
  g_assert_cmpint (finding->fix, ==, SW_FIX_SET_DOSE);
  g_assert_cmpfloat (finding->fix_dose.load.value, ==, 2.5);

  /* The reason holds for this load, and for no other. */
  key = g_strdup (finding->key);
  answer = sw_answer_new (key, "agreed on the phone", TODAY, "T", NULL);
  g_list_store_append (sw_programme_get_answers (fixture->programme), answer);
  g_assert_nonnull (check (fixture, "limit-load:")->answer);
  g_assert_true (sw_dose_from_line ("3 x 12, 4 kg, each side", NULL, &dose, NULL));
  g_object_set (item, "dose", &dose, NULL);
  g_assert_null (check (fixture, "limit-load:")->answer);

  /* The other arm, and another region, are not meant. */
  g_assert_true (sw_dose_from_line ("3 x 12, 4 kg, left side", NULL, &dose, NULL));
  g_object_set (item, "dose", &dose, NULL);
  g_assert_null (check (fixture, "limit-"));
  g_object_set (limit, "side", SW_BODY_SIDE_NONE, NULL);
  g_assert_nonnull (check (fixture, "limit-load:"));
  g_object_set (limit, "region", SW_REGION_KNEE, NULL);
  g_assert_null (check (fixture, "limit-"));
  g_object_set (limit, "region", SW_REGION_WHOLE_BODY, "kg", 0.0, NULL);
  finding = check (fixture, "limit-load:");
  g_assert_cmpint (finding->fix_dose.load.unit, ==, SW_LOAD_NONE);

  /* In pounds it comes out in pounds, and not above the limit. */
  g_assert_true (sw_dose_from_line ("3 x 12, 10 lb", NULL, &dose, NULL));
  g_object_set (item, "dose", &dose, NULL);
  g_object_set (limit, "kg", 2.5, NULL);
  finding = check (fixture, "limit-load:");
  g_assert_cmpint (finding->fix_dose.load.unit, ==, SW_LOAD_LB);
  g_assert_cmpfloat (finding->fix_dose.load.value, ==, 5.5);
}

/* Two limits that say the same are found once; one without a value is asked about and stops nothing. */
static void
test_values (Fixture       *fixture,
             gconstpointer  data G_GNUC_UNUSED)
{
  SwLimit *first, *second, *range;

  add_item (fixture, "3 x 12, 3 kg");
  first = add_limit (fixture, SW_LIMIT_KIND_LOAD);
  g_assert_cmpint (check (fixture, "limit-")->level, ==, SW_FINDING_ASK);
  second = add_limit (fixture, SW_LIMIT_KIND_LOAD);
  g_object_set (first, "kg", 2.0, NULL);
  g_object_set (second, "kg", 2.0, NULL);
  g_assert_nonnull (check (fixture, "limit-load:"));

  range = add_limit (fixture, SW_LIMIT_KIND_RANGE);
  g_assert_false (sw_limit_is_complete (range));
  g_assert_null (check (fixture, "limit-range:"));
  g_object_set (range, "from-deg", 10.0, NULL);
  g_assert_true (sw_limit_is_complete (range));
  /* The exercise has no picture to hold against it. */
  g_assert_cmpint (check (fixture, "limit-range:")->level, ==, SW_FINDING_ASK);
  g_object_set (range, "to-deg", 5.0, NULL);
  g_assert_false (sw_limit_is_complete (range));
  g_object_set (range, "movement", SW_MOVEMENT_NECK_TURN, NULL);
  g_assert_true (sw_limit_is_complete (range));
}

/* Nothing is offered in the place of what is beyond a limit that is beyond it as well. */
static void
test_swap (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) exercises = g_ptr_array_new_with_free_func (g_object_unref);
  SwExerciseFacts facts = fixture->facts;
  SwLimit *limit = add_limit (fixture, SW_LIMIT_KIND_WEIGHT_BEARING);
  SwItem *item;

  facts.id = (char *) "curl-standing";
  facts.cautions = SW_SET (SW_CAUTION_FULL_WEIGHT_BEARING);
  g_ptr_array_add (exercises, sample_exercise_from (&facts, "Curl in standing"));
  sw_catalogue_add (fixture->catalogue, exercises);
  item = add_item (fixture, "3 x 12");
  g_object_set (limit, "bearing", SW_BEARING_FULL, NULL);
  {
    g_autoptr (SwSwaps) among = sw_swaps_new (fixture->programme, fixture->catalogue);
    g_autoptr (GPtrArray) swaps = sw_swaps_find (among, item, SW_SWAP_ANY, 9);

    g_assert_cmpuint (swaps->len, ==, 1);
  }
  g_object_set (limit, "bearing", SW_BEARING_PART, NULL);
  {
    g_autoptr (SwSwaps) among = sw_swaps_new (fixture->programme, fixture->catalogue);
    g_autoptr (GPtrArray) swaps = sw_swaps_find (among, item, SW_SWAP_ANY, 9);

    g_assert_cmpuint (swaps->len, ==, 0);
  }
}

static void
test_days (void)
{
  static const struct
  {
    const char *date;
    const char *since;
  } days[] = {
    { "2026-11-25", "today" },
    { "2026-11-24", "1 day ago" },
    { "2026-11-19", "6 days ago" },
    { "2026-11-18", "1 week ago" },
    { "2026-10-12", "6 weeks and 2 days ago" },
    { "2026-11-17", "1 week and 1 day ago" },
    { "2026-12-01", "in 6 days" },
    { "2024-02-29", "142 weeks and 6 days ago" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (days); i++)
    {
      g_autofree char *since = sw_limit_dup_since (days[i].date, TODAY);

      g_assert_cmpstr (since, ==, days[i].since);
    }
  g_assert_null (sw_limit_dup_since ("", TODAY));
  g_assert_null (sw_limit_dup_since ("2026-02-30", TODAY));
}

static void
test_surgery (Fixture       *fixture,
              gconstpointer  data G_GNUC_UNUSED)
{
  SwLimit *limit;
  const SwFinding *finding;

  fixture->facts.cautions = SW_SET (SW_CAUTION_KNEELING);
  add_item (fixture, "3 x 12");
  g_assert_null (check (fixture, "surgery"));

  /* Nothing is assumed where no day was entered. */
  g_object_set (sw_programme_get_client (fixture->programme), "precautions",
                (guint64) SW_SET (SW_PRECAUTION_KNEE_REPLACEMENT) | SW_SET (SW_PRECAUTION_KNEELING_PAIN), NULL);
  finding = check (fixture, "surgery");
  g_assert_cmpstr (finding->key, ==, "surgery-day:knee-replacement");
  g_assert_cmpint (finding->level, ==, SW_FINDING_TELL);
  g_assert_null (check (fixture, "precaution:knee-replacement:")->details);

  limit = add_limit (fixture, SW_LIMIT_KIND_SURGERY);
  g_object_set (limit, "precaution", SW_PRECAUTION_KNEE_REPLACEMENT, NULL);
  g_assert_nonnull (check (fixture, "surgery-day:"));
  g_object_set (limit, "date", "2026-10-12", "name", "New knee", NULL);
  finding = check (fixture, "surgery");
  g_assert_cmpstr (finding->text, ==, "“New knee”: 6 weeks and 2 days ago.");
  g_assert_cmpstr (check (fixture, "precaution:knee-replacement:")->details[0], ==,
                   "The operation was 6 weeks and 2 days ago.");
  g_assert_null (check (fixture, "precaution:kneeling-pain:")->details);
}

static void
test_angles (void)
{
  g_autofree char *out = sw_movement_dup_angle (SW_MOVEMENT_HIP_TURN_OUT, 20.4);
  g_autofree char *in = sw_movement_dup_angle (SW_MOVEMENT_HIP_TURN_OUT, -30.0);

  g_assert_cmpstr (out, ==, "20° of hip external rotation");
  g_assert_cmpstr (in, ==, "30° of hip internal rotation");
}

int
main (int   argc,
      char *argv[])
{
  static const struct { const char *path; void (*run) (Fixture *, gconstpointer); } tests[] = {
    { "/reckon/limits/load", test_load },
    { "/reckon/limits/values", test_values },
    { "/reckon/limits/swap", test_swap },
    { "/reckon/limits/surgery", test_surgery },
  };

  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (tests); i++)
    g_test_add (tests[i].path, Fixture, NULL, set_up, tests[i].run, tear_down);
  g_test_add_func ("/reckon/limits/days", test_days);
  g_test_add_func ("/reckon/limits/angles", test_angles);

  return g_test_run ();
}
