/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The plan over the weeks: its phases, what each week asks for, and that no plan ever passes a limit. */
#include "config.h"

#include "sample.h"
#include "sw-plan.h"

static SwItem *
add_item (SwSection  *section,
          const char *id,
          SwAim       aim,
          const char *dose_line)
{
  SwExerciseFacts facts;
  g_autoptr (SwExercise) exercise = NULL;
  SwItem *item;
  SwDose dose;

  sample_facts_init (&facts, id);
  facts.aims = SW_SET (aim);
  facts.load_limit = (SwLoad) { SW_LOAD_KG, 12.0 };
  exercise = sample_exercise_from (&facts, id);
  item = sw_item_new_for_exercise (exercise, id);
  sw_dose_init (&dose);
  g_assert_true (sw_dose_from_line (dose_line, &dose, &dose, NULL));
  g_object_set (item, "dose", &dose, NULL);
  sample_append (section, item);
  return item;
}

static SwProgramme *
programme_new (SwSection **section)
{
  SwProgramme *programme = sw_programme_new (NULL);
  g_autoptr (SwSession) session = sw_session_new ("Morning", SW_SET (SW_DAY_MONDAY));

  g_list_store_append (sw_programme_get_sessions (programme), session);
  *section = sample_section (session, SW_SECTION_MAIN);
  return programme;
}

/* @lines: the doses of the weeks, in order */
static void
expect_row (const SwPlan       *plan,
            guint               row,
            const char * const *lines)
{
  const SwPlanRow *planned = plan->rows->pdata[row];

  for (int week = 0; week < plan->n_weeks; week++)
    {
      g_autofree char *line = sw_dose_to_line (&planned->weeks[week].dose);

      g_assert_cmpstr (line, ==, lines[week]);
      g_assert_cmpint (planned->weeks[week].rule->kind, ==, sw_plan_get_phase (plan, week));
      g_assert_cmpuint (sw_working_get_n_lines (planned->weeks[week].working), >=, 1);
      g_assert_cmpint (planned->weeks[week].change != SW_DOSE_CHANGE_NONE, ==,
                       week > 0 && g_strcmp0 (lines[week], lines[week - 1]) != 0);
    }
}

static void
test_weeks (void)
{
  static const char * const loaded[] = { "3 x 10, 11 kg", "3 x 10, 11.5 kg", "3 x 10, 12 kg", "3 x 12, 12 kg",
                                         "3 x 14, 12 kg", "3 x 14, 12 kg" };
  static const char * const plain[] = { "2 x 12", "2 x 14", "2 x 15", "3 x 11", "3 x 13", "3 x 13" };
  static const char * const stretch[] = { "2 x hold 20 s", "2 x hold 25 s", "2 x hold 30 s", "2 x hold 30 s",
                                          "2 x hold 30 s", "2 x hold 30 s" };
  static const char * const balance[] = { "2 x hold 20 s", "2 x hold 20 s", "2 x hold 20 s", "2 x hold 20 s",
                                          "2 x hold 20 s", "2 x hold 20 s" };
  SwSection *section;
  g_autoptr (SwProgramme) programme = programme_new (&section);
  SwProgression *progression = sw_programme_get_progression (programme);
  g_autoptr (SwPlan) plan = NULL;

  add_item (section, "a", SW_AIM_STRENGTH, "3 x 10, 11 kg");
  add_item (section, "b", SW_AIM_STRENGTH, "2 x 12");
  add_item (section, "c", SW_AIM_STRETCH, "2 x hold 20 s");
  add_item (section, "d", SW_AIM_BALANCE, "2 x hold 20 s");
  g_assert_null (sw_plan_new (programme));

  g_object_set (progression, "weeks", 6, NULL);
  plan = sw_plan_new (programme);
  g_assert_cmpint (plan->n_weeks, ==, 6);
  g_assert_cmpint (sw_plan_get_phase (plan, 0), ==, SW_PROGRESS_RULE_FIRST_WEEKS);
  g_assert_cmpint (sw_plan_get_phase (plan, 1), ==, SW_PROGRESS_RULE_PLANNED_STEP);
  g_assert_cmpint (sw_plan_get_phase (plan, 4), ==, SW_PROGRESS_RULE_PLANNED_STEP);
  g_assert_cmpint (sw_plan_get_phase (plan, 5), ==, SW_PROGRESS_RULE_LAST_WEEKS);
  expect_row (plan, 0, loaded);
  expect_row (plan, 1, plain);
  expect_row (plan, 2, stretch);
  expect_row (plan, 3, balance);
}

static void
test_step_weeks (void)
{
  static const char * const weeks[] = { "2 x 8", "2 x 8", "2 x 10", "2 x 10", "2 x 10", "2 x 12", "2 x 12", "2 x 12" };
  SwSection *section;
  g_autoptr (SwProgramme) programme = programme_new (&section);
  g_autoptr (SwPlan) plan = NULL;

  add_item (section, "a", SW_AIM_STRENGTH, "2 x 8");
  g_object_set (sw_programme_get_progression (programme), "weeks", 8, "first-weeks", 2, "last-weeks", 2, "step-weeks", 3,
                NULL);
  plan = sw_plan_new (programme);
  expect_row (plan, 0, weeks);
}

/* More weeks at both ends than there are: the first ones come first. */
static void
test_short (void)
{
  SwSection *section;
  g_autoptr (SwProgramme) programme = programme_new (&section);
  g_autoptr (SwPlan) plan = NULL;

  g_object_set (sw_programme_get_progression (programme), "weeks", 3, "first-weeks", 2, "last-weeks", 6, NULL);
  plan = sw_plan_new (programme);
  g_assert_cmpint (plan->n_first, ==, 2);
  g_assert_cmpint (plan->n_last, ==, 1);
  g_assert_cmpint (sw_plan_get_phase (plan, 1), ==, SW_PROGRESS_RULE_FIRST_WEEKS);
  g_assert_cmpint (sw_plan_get_phase (plan, 2), ==, SW_PROGRESS_RULE_LAST_WEEKS);
}

static void
assert_weeks (const SwPlan    *plan,
              const SwPlanRow *row,
              SwProgression   *progression)
{
  int percent = sw_progression_get_number (progression, "step-percent");

  g_assert_true (sw_dose_equal (&row->weeks[0].dose, sw_item_get_dose (row->item)));
  for (int i = 1; i < plan->n_weeks; i++)
    {
      const SwDose *before = &row->weeks[i - 1].dose;
      const SwDose *now = &row->weeks[i].dose;
      double before_kg = sw_load_to_kg (before->load);
      double now_kg = sw_load_to_kg (now->load);
      int changed = (now_kg > before_kg + 1e-9) + (now->sets != before->sets || now->reps_high != before->reps_high)
                    + (now->hold_s != before->hold_s);

      g_assert_true (sw_dose_check (now, NULL));
      g_assert_cmpint (changed, ==, row->weeks[i].change != SW_DOSE_CHANGE_NONE);
      g_assert_cmpint (changed, <=, sw_plan_get_phase (plan, i) == SW_PROGRESS_RULE_PLANNED_STEP);
      g_assert_cmpfloat (now_kg, >=, before_kg - 1e-9);
      g_assert_cmpfloat (now_kg, <=, before_kg * (1.0 + percent / 100.0) + 1e-9);
      g_assert_cmpfloat (now_kg, <=, MAX (12.0, before_kg) + 1e-9);
      g_assert_cmpint (now->reps_high - before->reps_high, <=, sw_progression_get_number (progression, "step-repetitions"));
      g_assert_cmpint (now->sets - before->sets, <=, 1);
      if (now->sets > before->sets)
        g_assert_cmpfloat (now->sets * now->reps_high, <=, 1.1 * before->sets * before->reps_high);
      g_assert_cmpint (now->hold_s - before->hold_s, <=, 5);
    }
}

static void
test_random_plans (void)
{
  static const char * const doses[] = { "3 x 10, 10 kg", "2 x 8-12, 2.5 kg", "1 x 12, 5 lb", "3 x 15", "2 x hold 12 s",
                                        "1 x 5, 12 kg", "3 x 20, 14 kg", "4 x 30", "3 x 10, hold 5 s" };
  static const SwAim aims[] = { SW_AIM_STRENGTH, SW_AIM_ENDURANCE, SW_AIM_STRETCH, SW_AIM_BALANCE };
  guint32 seed = (guint32) g_test_rand_int ();
  GRand *random = g_rand_new_with_seed (seed);
  SwSection *section;
  g_autoptr (SwProgramme) programme = programme_new (&section);
  SwProgression *progression = sw_programme_get_progression (programme);

  g_test_message ("seed %u", seed);
  for (guint i = 0; i < G_N_ELEMENTS (doses); i++)
    {
      for (guint k = 0; k < G_N_ELEMENTS (aims); k++)
        {
          g_autofree char *id = g_strdup_printf ("e%u-%u", i, k);

          add_item (section, id, aims[k], doses[i]);
        }
    }
  for (int i = 0; i < 300; i++)
    {
      const char * const *names = sw_progression_get_number_names ();
      g_autoptr (SwPlan) plan = NULL;

      for (guint k = 0; names[k] != NULL; k++)
        {
          int lowest, highest, usual;

          sw_progression_get_range (names[k], &lowest, &highest, &usual);
          g_object_set (progression, names[k], g_rand_int_range (random, lowest, highest + 1), NULL);
        }
      plan = sw_plan_new (programme);
      if (plan == NULL)
        continue;
      for (guint k = 0; k < plan->rows->len; k++)
        assert_weeks (plan, plan->rows->pdata[k], progression);
    }
  g_rand_free (random);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/reckon/plan/weeks", test_weeks);
  g_test_add_func ("/reckon/plan/step-weeks", test_step_weeks);
  g_test_add_func ("/reckon/plan/short", test_short);
  g_test_add_func ("/reckon/plan/random", test_random_plans);

  return g_test_run ();
}
