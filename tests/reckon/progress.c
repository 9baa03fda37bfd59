/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Proposals from a diary: each rule both ways, the published example of two more repetitions in two sessions, and a year of
 * a thousand random diaries in which no limit is passed, no step is larger than its rule, and too much pain always eases. */
#include "config.h"

#include <string.h>

#include "sample.h"
#include "sw-finding.h"
#include "sw-loads.h"
#include "sw-progress.h"

typedef struct
{
  SwProgramme *programme;
  SwProgression *progression;
  SwCatalogue *catalogue;
  SwSection *section;
  SwItem *item;
} Fixture;

/* A squat with a weight of up to 20 kg, "sit" easier and "jump" harder. */
static void
set_up (Fixture       *fixture,
        gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (SwSession) session = sw_session_new ("Morning", SW_SET (SW_DAY_MONDAY));
  g_autoptr (GPtrArray) exercises = g_ptr_array_new_with_free_func (g_object_unref);
  g_autoptr (SwExercise) squat = NULL;
  static char *to_sit[] = { (char *) "sit", NULL };
  static char *to_squat[] = { (char *) "squat", NULL };
  static char *to_jump[] = { (char *) "jump", NULL };
  SwExerciseFacts facts;

  fixture->programme = sw_programme_new (NULL);
  fixture->progression = sw_programme_get_progression (fixture->programme);
  fixture->catalogue = sw_catalogue_new ();
  g_list_store_append (sw_programme_get_sessions (fixture->programme), session);
  fixture->section = sample_section (session, SW_SECTION_MAIN);

  sample_facts_init (&facts, "squat");
  facts.region = SW_REGION_KNEE;
  facts.muscles = SW_SET (SW_MUSCLE_QUADRICEPS);
  facts.aims = SW_SET (SW_AIM_STRENGTH);
  facts.load_limit = (SwLoad) { SW_LOAD_KG, 20.0 };
  facts.easier = to_sit;
  facts.harder = to_jump;
  squat = sample_exercise_from (&facts, "Squat");
  g_ptr_array_add (exercises, g_object_ref (squat));
  facts.id = (char *) "sit";
  facts.easier = NULL;
  facts.harder = to_squat;
  g_ptr_array_add (exercises, sample_exercise_from (&facts, "Sit"));
  facts.id = (char *) "jump";
  facts.easier = to_squat;
  facts.harder = NULL;
  g_ptr_array_add (exercises, sample_exercise_from (&facts, "Jump"));
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

static void
set_dose (Fixture    *fixture,
          const char *line)
{
  SwDose dose;

  sw_dose_init (&dose);
  g_assert_true (sw_dose_from_line (line, &dose, &dose, NULL));
  g_object_set (fixture->item, "dose", &dose, NULL);
}

/* A day at the present dose on which @repetitions were done in the last set. */
static SwDiaryEntry *
add_day (Fixture    *fixture,
         const char *date,
         int         repetitions,
         int         pain)
{
  g_autofree char *line = sw_dose_to_line (sw_item_get_dose (fixture->item));
  g_autoptr (SwDiaryEntry) entry
      = sw_diary_entry_new (date, "i1", sw_exercise_get_id (sw_item_get_exercise (fixture->item)), line);

  g_object_set (entry, "repetitions", repetitions, "pain-during", pain, NULL);
  g_list_store_append (sw_programme_get_diary (fixture->programme), entry);
  return entry;
}

static void
forget (Fixture *fixture)
{
  g_list_store_remove_all (sw_programme_get_diary (fixture->programme));
}

static void
expect_nothing (Fixture *fixture)
{
  g_autoptr (SwProgress) progress = sw_progress_suggest (fixture->programme, fixture->item);

  g_assert_null (progress);
}

/* @exercise: (nullable): the other exercise that is named */
static void
expect (Fixture            *fixture,
        SwProgressRuleKind  kind,
        const char         *dose_line,
        const char         *exercise)
{
  g_autoptr (SwProgress) progress = sw_progress_suggest (fixture->programme, fixture->item);
  g_autoptr (SwSwaps) swaps = sw_swaps_new (fixture->programme, fixture->catalogue);
  g_autofree char *line = NULL;

  g_assert_nonnull (progress);
  sw_progress_find_exercise (progress, swaps, fixture->item);
  line = sw_dose_to_line (&progress->dose);
  g_assert_cmpint (progress->rule->kind, ==, kind);
  g_assert_cmpstr (line, ==, dose_line);
  g_assert_cmpint (progress->eases, ==, kind < SW_PROGRESS_RULE_MORE);
  g_assert_cmpstr (progress->exercise != NULL ? sw_exercise_get_id (progress->exercise) : NULL, ==, exercise);
  g_assert_cmpuint (sw_working_get_n_lines (progress->working), >=, 1);
  g_assert_cmpuint (strlen (progress->reason), >, 10);
}

/* The rule as Baechle and Earle tell it (Essentials of Strength Training and Conditioning, rule of two for two): with 10
 * asked, 12 in the last set of two workouts running call for more weight at the next. */
static void
test_two_for_two (Fixture       *fixture,
                  gconstpointer  data G_GNUC_UNUSED)
{
  set_dose (fixture, "3 x 10, 10 kg");
  expect_nothing (fixture);

  add_day (fixture, "2026-11-02", 12, 0);
  expect_nothing (fixture);
  add_day (fixture, "2026-11-04", 12, 0);
  expect (fixture, SW_PROGRESS_RULE_MORE, "3 x 10, 10.5 kg", NULL);

  /* One day less in between breaks the run. */
  add_day (fixture, "2026-11-06", 11, 0);
  expect_nothing (fixture);
  add_day (fixture, "2026-11-09", 12, 0);
  expect_nothing (fixture);
  add_day (fixture, "2026-11-11", 13, 0);
  expect (fixture, SW_PROGRESS_RULE_MORE, "3 x 10, 10.5 kg", NULL);

  /* With the step taken, the days before it say nothing of the new load. */
  set_dose (fixture, "3 x 10, 10.5 kg");
  expect_nothing (fixture);
}

/* The numbers are the therapist's. */
static void
test_numbers (Fixture       *fixture,
              gconstpointer  data G_GNUC_UNUSED)
{
  set_dose (fixture, "3 x 10, 10 kg");
  add_day (fixture, "2026-11-02", 12, 0);
  add_day (fixture, "2026-11-04", 12, 0);

  g_object_set (fixture->progression, "step-percent", 10, NULL);
  expect (fixture, SW_PROGRESS_RULE_MORE, "3 x 10, 11 kg", NULL);
  g_object_set (fixture->progression, "extra-repetitions", 3, NULL);
  expect_nothing (fixture);
  g_object_set (fixture->progression, "extra-repetitions", 2, "sessions", 3, NULL);
  expect_nothing (fixture);
  add_day (fixture, "2026-11-06", 12, 0);
  expect (fixture, SW_PROGRESS_RULE_MORE, "3 x 10, 11 kg", NULL);
  g_object_set (fixture->progression, "steps-up", FALSE, NULL);
  expect_nothing (fixture);
}

/* What keeps from a step although enough was done. */
static void
test_no_step (Fixture       *fixture,
              gconstpointer  data G_GNUC_UNUSED)
{
  SwDiaryEntry *entry;

  set_dose (fixture, "3 x 10, 10 kg, effort 7");
  add_day (fixture, "2026-11-02", 12, 0);
  entry = add_day (fixture, "2026-11-04", 12, SW_DIARY_NOT_STATED);
  expect_nothing (fixture);
  g_object_set (entry, "pain-during", 3, NULL);
  expect_nothing (fixture);
  g_object_set (entry, "settled", SW_SETTLED_YES, NULL);
  expect (fixture, SW_PROGRESS_RULE_MORE, "3 x 10, 10.5 kg, effort 7", NULL);
  g_object_set (entry, "effort", 8, NULL);
  expect_nothing (fixture);
  g_object_set (entry, "effort", 7, "sets", 2, NULL);
  expect_nothing (fixture);
  g_object_set (entry, "sets", 3, NULL);
  expect (fixture, SW_PROGRESS_RULE_MORE, "3 x 10, 10.5 kg, effort 7", NULL);

  /* Of two entries of a day the lesser counts, and the day counts once. */
  add_day (fixture, "2026-11-04", 11, 0);
  expect_nothing (fixture);
  forget (fixture);
  add_day (fixture, "2026-11-04", 12, 0);
  add_day (fixture, "2026-11-04", 12, 0);
  expect_nothing (fixture);
}

/* Where no load lies within the percent or the limit: repetitions, then a set, then a harder exercise. */
static void
test_where_no_load (Fixture       *fixture,
                    gconstpointer  data G_GNUC_UNUSED)
{
  static const struct
  {
    const char *dose;
    const char *next;
    const char *exercise;
  } steps[] = {
    { "3 x 10, 2 kg", "3 x 12, 2 kg", NULL },
    { "3 x 10, 20 kg", "3 x 12, 20 kg", NULL },
    { "3 x 8-12", "3 x 10-14", NULL },
    { "3 x 14", "3 x 15", NULL },
    { "2 x 15", "3 x 11", NULL },
    { "1 x 13-15", "2 x 6-8", NULL },
    { "3 x 15", "3 x 15", "jump" },
    { "4 x 20", "4 x 20", "jump" },
    { "3 x 10, 22 lb", "3 x 10, 23 lb", NULL },
    { "3 x 10, 19.5 kg", "3 x 10, 20 kg", NULL },
  };

  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    {
      forget (fixture);
      set_dose (fixture, steps[i].dose);
      add_day (fixture, "2026-11-02", 30, 0);
      add_day (fixture, "2026-11-04", 30, 0);
      expect (fixture, SW_PROGRESS_RULE_MORE, steps[i].next, steps[i].exercise);
    }
}

/* What the client owns and may have counts as much as what the exercise allows. */
static void
test_owned (Fixture       *fixture,
            gconstpointer  data G_GNUC_UNUSED)
{
  SwClient *client = sw_programme_get_client (fixture->programme);
  g_autoptr (SwLimit) limit = sw_limit_new (SW_LIMIT_KIND_LOAD);

  g_object_set (client, "loads", "2, 5, 8, 10, 10.8 kg", NULL);
  g_object_set (fixture->progression, "step-percent", 10, NULL);
  set_dose (fixture, "3 x 10, 10 kg");
  add_day (fixture, "2026-11-02", 12, 0);
  add_day (fixture, "2026-11-04", 12, 0);
  expect (fixture, SW_PROGRESS_RULE_MORE, "3 x 10, 10.8 kg", NULL);
  g_object_set (client, "load-limit", "10.5 kg", NULL);
  expect (fixture, SW_PROGRESS_RULE_MORE, "3 x 12, 10 kg", NULL);

  /* So does what was set for this part of the body. */
  g_object_set (client, "load-limit", "", NULL);
  g_object_set (limit, "region", SW_REGION_KNEE, "kg", 10.2, NULL);
  g_list_store_append (sw_programme_get_limits (fixture->programme), limit);
  expect (fixture, SW_PROGRESS_RULE_MORE, "3 x 12, 10 kg", NULL);
  g_object_set (limit, "region", SW_REGION_SHOULDER, NULL);
  expect (fixture, SW_PROGRESS_RULE_MORE, "3 x 10, 10.8 kg", NULL);

  add_day (fixture, "2026-11-06", 10, 7);
  expect (fixture, SW_PROGRESS_RULE_PAIN, "3 x 10, 8 kg", "sit");
  forget (fixture);
  set_dose (fixture, "3 x 10, 2 kg");
  add_day (fixture, "2026-11-06", 10, 7);
  expect (fixture, SW_PROGRESS_RULE_PAIN, "3 x 10", "sit");
}

static void
test_pain (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  set_dose (fixture, "3 x 10, 10 kg");
  add_day (fixture, "2026-11-02", 10, 5);
  expect_nothing (fixture);
  add_day (fixture, "2026-11-04", 14, 6);
  expect (fixture, SW_PROGRESS_RULE_PAIN, "3 x 10, 9 kg", "sit");

  /* It counts until as many days went well as a step asks for. */
  add_day (fixture, "2026-11-06", 12, 0);
  expect (fixture, SW_PROGRESS_RULE_PAIN, "3 x 10, 9 kg", "sit");
  add_day (fixture, "2026-11-08", 12, 0);
  expect (fixture, SW_PROGRESS_RULE_MORE, "3 x 10, 10.5 kg", NULL);

  /* The lesser of both limits. */
  forget (fixture);
  set_dose (fixture, "3 x 10, 10 kg, pain 3");
  add_day (fixture, "2026-11-02", 10, 4);
  expect (fixture, SW_PROGRESS_RULE_PAIN, "3 x 10, 9 kg, pain 3", "sit");
  forget (fixture);
  add_day (fixture, "2026-11-02", 10, 3);
  expect_nothing (fixture);
  g_object_set (fixture->progression, "pain-limit", 2, NULL);
  expect (fixture, SW_PROGRESS_RULE_PAIN, "3 x 10, 9 kg, pain 3", "sit");
}

static void
test_other_easing (Fixture       *fixture,
                   gconstpointer  data G_GNUC_UNUSED)
{
  SwDiaryEntry *entry;

  set_dose (fixture, "3 x 10");
  entry = add_day (fixture, "2026-11-02", 10, 2);
  g_object_set (entry, "settled", SW_SETTLED_YES, NULL);
  expect_nothing (fixture);
  g_object_set (entry, "settled", SW_SETTLED_NO, NULL);
  expect (fixture, SW_PROGRESS_RULE_UNSETTLED, "2 x 10", "sit");

  g_object_set (entry, "settled", SW_SETTLED_UNKNOWN, "control-lost", TRUE, NULL);
  expect (fixture, SW_PROGRESS_RULE_CONTROL, "3 x 9", "sit");

  g_object_set (entry, "control-lost", FALSE, "pain-before", 1, "pain-after", 2, NULL);
  expect_nothing (fixture);
  g_object_set (entry, "pain-after", 3, NULL);
  expect (fixture, SW_PROGRESS_RULE_WORSE, "2 x 10", "sit");
  g_object_set (fixture->progression, "worse-by", 3, NULL);
  expect_nothing (fixture);

  /* Easing comes before a step. */
  forget (fixture);
  add_day (fixture, "2026-11-02", 12, 0);
  entry = add_day (fixture, "2026-11-04", 12, 0);
  expect (fixture, SW_PROGRESS_RULE_MORE, "3 x 12", NULL);
  g_object_set (entry, "control-lost", TRUE, NULL);
  expect (fixture, SW_PROGRESS_RULE_CONTROL, "3 x 9", "sit");
}

/* As little as can be asked for: the other exercise is left, or to leave it out. */
static void
test_least (Fixture       *fixture,
            gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) findings = NULL;
  gboolean found = FALSE;

  set_dose (fixture, "1 x 1");
  add_day (fixture, "2026-11-02", 1, 9);
  expect (fixture, SW_PROGRESS_RULE_PAIN, "1 x 1", "sit");

  findings = sw_findings_collect (fixture->programme, NULL, "2026-11-26");
  for (guint i = 0; i < findings->len; i++)
    {
      const SwFinding *finding = findings->pdata[i];

      if (!g_str_has_prefix (finding->key, "progress:pain:i1:2026-11-02"))
        continue;
      found = TRUE;
      g_assert_cmpint (finding->level, ==, SW_FINDING_ASK);
      g_assert_cmpint (finding->fix, ==, SW_FIX_REMOVE_ITEM);
    }
  g_assert_true (found);
}

static void
test_finding (Fixture       *fixture,
              gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) findings = NULL;
  const SwFinding *step = NULL;

  set_dose (fixture, "3 x 10, 10 kg");
  add_day (fixture, "2026-11-02", 12, 0);
  add_day (fixture, "2026-11-04", 12, 0);
  findings = sw_findings_collect (fixture->programme, fixture->catalogue, "2026-11-26");
  for (guint i = 0; i < findings->len; i++)
    {
      const SwFinding *finding = findings->pdata[i];

      if (g_str_has_prefix (finding->key, "progress:"))
        step = finding;
    }
  g_assert_nonnull (step);
  g_assert_cmpstr (step->key, ==, "progress:more:i1:2026-11-04:3 x 10, 10 kg");
  g_assert_cmpint (step->level, ==, SW_FINDING_TELL);
  g_assert_cmpint (step->fix, ==, SW_FIX_SET_DOSE);
  g_assert_cmpstr (step->fix_label, ==, "Take the next step: 10.5 kg");
  g_assert_cmpfloat (step->fix_dose.load.value, ==, 10.5);
  g_assert_nonnull (step->details[0]);
}

/* --- a year of random diaries --- */

#define N_CLIENTS 1000
#define N_DAYS 365

static void
make_random_start (Fixture *fixture,
                   GRand   *random)
{
  static const char * const doses[] = { "3 x 10, 10 kg", "2 x 8-12, 2.5 kg", "1 x 12, 5 lb", "3 x 15", "2 x 10",
                                        "1 x 5, 19.5 kg", "3 x 12, 15 kg, pain 3", "4 x 6, 20 kg" };

  forget (fixture);
  set_dose (fixture, doses[g_rand_int_range (random, 0, G_N_ELEMENTS (doses))]);
  g_object_set (fixture->progression,
                "extra-repetitions", g_rand_int_range (random, 1, 4),
                "sessions", g_rand_int_range (random, 2, 4),
                "step-percent", g_rand_int_range (random, 2, 11),
                "step-repetitions", g_rand_int_range (random, 1, 4),
                "pain-limit", g_rand_int_range (random, 1, 6),
                "ease-percent", g_rand_int_range (random, 5, 51), NULL);
}

static void
add_random_day (Fixture *fixture,
                GRand   *random,
                int      day)
{
  g_autoptr (GDateTime) start = g_date_time_new_utc (2026, 1, 1, 12, 0, 0.0);
  g_autoptr (GDateTime) then = g_date_time_add_days (start, day);
  g_autofree char *date = g_date_time_format (then, "%Y-%m-%d");
  const SwDose *dose = sw_item_get_dose (fixture->item);
  gboolean bad = g_rand_int_range (random, 0, 8) == 0;
  int repetitions = dose->reps_high + g_rand_int_range (random, bad ? -3 : 1, 5);
  SwDiaryEntry *entry = add_day (fixture, date, MAX (0, repetitions), g_rand_int_range (random, 0, bad ? 11 : 3));

  g_object_set (entry,
                "pain-before", g_rand_int_range (random, -1, 4),
                "pain-after", g_rand_int_range (random, -1, bad ? 11 : 3),
                "settled", bad ? g_rand_int_range (random, 0, 3) : SW_SETTLED_YES,
                "control-lost", bad && g_rand_boolean (random), NULL);
}

static double
get_work (const SwDose *dose)
{
  return dose->sets * MAX (dose->reps_high, 1) * (100.0 + sw_load_to_kg (dose->load));
}

static void
assert_proposal (Fixture          *fixture,
                 const SwProgress *progress)
{
  const SwDose *now = sw_item_get_dose (fixture->item);
  int percent = sw_progression_get_number (fixture->progression, "step-percent");
  double now_kg = sw_load_to_kg (now->load);
  double next_kg = sw_load_to_kg (progress->dose.load);
  int changed = (next_kg > now_kg + 1e-9 || next_kg < now_kg - 1e-9)
                + (progress->dose.sets != now->sets || progress->dose.reps_high != now->reps_high);

  g_assert_true (sw_dose_check (&progress->dose, NULL));
  g_assert_cmpfloat (next_kg, <=, 20.0 + 1e-9);
  g_assert_cmpint (changed, ==, progress->change != SW_DOSE_CHANGE_NONE);
  if (progress->eases)
    {
      if (progress->change != SW_DOSE_CHANGE_NONE)
        g_assert_cmpfloat (get_work (&progress->dose), <, get_work (now));
      return;
    }

  g_assert_cmpfloat (next_kg, <=, now_kg * (1.0 + percent / 100.0) + 1e-9);
  g_assert_cmpint (progress->dose.sets, <=, now->sets + 1);
  g_assert_cmpint (progress->dose.reps_high, <=,
                   now->reps_high + sw_progression_get_number (fixture->progression, "step-repetitions"));
  if (progress->dose.sets > now->sets)
    g_assert_cmpfloat (progress->dose.sets * progress->dose.reps_high, <=, 1.1 * now->sets * now->reps_high);
  g_assert_cmpint (progress->dose.sets, <=, MAX (now->sets, 3));
  g_assert_cmpint (progress->dose.reps_high, <=, MAX (now->reps_high, 15));
}

/* The latest day at the present dose, told apart from the entries without the code under test. */
static gboolean
had_too_much_pain_today (Fixture *fixture)
{
  GListModel *diary = G_LIST_MODEL (sw_programme_get_diary (fixture->programme));
  g_autoptr (SwDiaryEntry) last = g_list_model_get_item (diary, g_list_model_get_n_items (diary) - 1);
  int limit = sw_progression_get_number (fixture->progression, "pain-limit");
  const SwDose *dose = sw_item_get_dose (fixture->item);

  if (dose->pain_limit >= 0 && dose->pain_limit < limit)
    limit = dose->pain_limit;
  return sw_diary_entry_get_pain_during (last) > limit || sw_diary_entry_get_pain_after (last) > limit;
}

static void
test_year (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  guint32 seed = (guint32) g_test_rand_int ();
  GRand *random = g_rand_new_with_seed (seed);
  guint n_steps = 0, n_eased = 0, n_pains = 0;

  g_test_message ("seed %u", seed);
  for (int client = 0; client < N_CLIENTS; client++)
    {
      make_random_start (fixture, random);
      for (int day = 0; day < N_DAYS; day += g_rand_int_range (random, 1, 5))
        {
          g_autoptr (SwProgress) progress = NULL;

          add_random_day (fixture, random, day);
          progress = sw_progress_suggest (fixture->programme, fixture->item);
          if (had_too_much_pain_today (fixture))
            {
              n_pains++;
              g_assert_nonnull (progress);
              g_assert_cmpint (progress->rule->kind, ==, SW_PROGRESS_RULE_PAIN);
              g_assert_true (progress->eases);
            }
          if (progress == NULL)
            continue;

          assert_proposal (fixture, progress);
          n_steps += !progress->eases;
          n_eased += progress->eases;
          /* Mostly the therapist does what is proposed. */
          if (g_rand_int_range (random, 0, 5) > 0)
            g_object_set (fixture->item, "dose", &progress->dose, NULL);
        }
    }
  g_test_message ("%u steps, %u times eased, %u of these for pain over the limit", n_steps, n_eased, n_pains);
  g_assert_cmpuint (n_steps, >, N_CLIENTS);
  g_assert_cmpuint (n_pains, >, N_CLIENTS);
  g_rand_free (random);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

#define ADD(name, function) g_test_add ("/reckon/progress/" name, Fixture, NULL, set_up, function, tear_down)
  ADD ("two-for-two", test_two_for_two);
  ADD ("numbers", test_numbers);
  ADD ("no-step", test_no_step);
  ADD ("where-no-load", test_where_no_load);
  ADD ("owned", test_owned);
  ADD ("pain", test_pain);
  ADD ("other-easing", test_other_easing);
  ADD ("least", test_least);
  ADD ("finding", test_finding);
  ADD ("year", test_year);
#undef ADD

  return g_test_run ();
}
