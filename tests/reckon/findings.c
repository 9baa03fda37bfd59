/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What checking finds, what would fix it, and that the fix does. */
#include "config.h"

#include <string.h>

#include "sample.h"
#include "sw-finding.h"
#include "sw-precautions.h"
#include "sw-units.h"

#define YEAR 2026
#define TODAY "2026-11-25"

typedef struct
{
  SwProgramme *programme;
  SwCatalogue *catalogue;
  SwClient *client;
  SwSession *session;
  SwSection *section;
  SwExerciseFacts facts;
  GPtrArray *findings;
} Fixture;

/* A programme with nothing to find, once it has an exercise and a self-check. */
static void
set_up (Fixture       *fixture,
        gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (SwSession) session = sw_session_new ("Morning", SW_SET (SW_DAY_MONDAY));

  fixture->programme = sw_programme_new (NULL);
  fixture->catalogue = sw_catalogue_new ();
  fixture->client = sw_programme_get_client (fixture->programme);
  g_list_store_append (sw_programme_get_sessions (fixture->programme), session);
  fixture->session = session;
  fixture->section = sample_section (session, SW_SECTION_MAIN);
  fixture->findings = NULL;
  sample_facts_init (&fixture->facts, "squat");
  fixture->facts.dose.sets = 3;
  g_object_set (fixture->client, "name", "Ada", NULL);
  g_object_set (sw_programme_get_clinic (fixture->programme), "phone", "0 123", NULL);
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
  g_autoptr (SwExercise) exercise = sample_exercise_from (&fixture->facts, "Squat");
  SwItem *item = sw_item_new_for_exercise (exercise, "i1");
  GListStore *items = sw_section_get_items (fixture->section);

  if (dose_line != NULL)
    {
      SwDose dose;

      g_assert_true (sw_dose_from_line (dose_line, NULL, &dose, NULL));
      g_object_set (item, "dose", &dose, NULL);
    }
  g_list_store_insert (items, 0, item);
  g_object_unref (item);
  if (g_list_model_get_n_items (G_LIST_MODEL (items)) == 1)
    sample_append (fixture->section, sw_item_new (SW_ITEM_SELF_CHECK, "check"));
  return item;
}

static void
check (Fixture *fixture)
{
  g_clear_pointer (&fixture->findings, g_ptr_array_unref);
  fixture->findings = sw_findings_collect (fixture->programme, fixture->catalogue, TODAY);
}

/* The finding whose key begins so, after a fresh check. */
static SwFinding *
found (Fixture    *fixture,
       const char *prefix)
{
  SwFinding *finding = NULL;

  check (fixture);
  for (guint i = 0; i < fixture->findings->len; i++)
    {
      SwFinding *other = g_ptr_array_index (fixture->findings, i);

      if (g_str_has_prefix (other->key, prefix))
        {
          g_assert_null (finding);
          finding = other;
        }
    }

  return finding;
}

static SwFinding *
expect (Fixture        *fixture,
        const char     *prefix,
        SwFindingLevel  level)
{
  SwFinding *finding = found (fixture, prefix);

  if (finding == NULL)
    g_error ("“%s” was not found", prefix);
  g_assert_cmpint (finding->level, ==, level);
  g_assert_cmpuint (strlen (finding->text), >, 10);
  g_assert_cmpuint (strlen (finding->why), >, 10);
  g_assert_true ((finding->fix == SW_FIX_NONE) == (finding->fix_label == NULL));
  return finding;
}

/* Applies a dose fix; the finding must be gone. */
static void
fix_dose (Fixture    *fixture,
          SwItem     *item,
          const char *prefix)
{
  SwFinding *finding = found (fixture, prefix);

  g_assert_cmpint (finding->fix, ==, SW_FIX_SET_DOSE);
  g_assert_true (sw_dose_check (&finding->fix_dose, NULL));
  g_assert_true (finding->item == item);
  g_object_set (item, "dose", &finding->fix_dose, NULL);
  g_assert_null (found (fixture, prefix));
}

static void
test_nothing (Fixture       *fixture,
              gconstpointer  data G_GNUC_UNUSED)
{
  add_item (fixture, NULL);
  check (fixture);
  for (guint i = 0; i < fixture->findings->len; i++)
    g_test_message ("%s", ((SwFinding *) fixture->findings->pdata[i])->key);
  g_assert_cmpuint (fixture->findings->len, ==, 0);
}

static void
test_people (Fixture       *fixture,
             gconstpointer  data G_GNUC_UNUSED)
{
  add_item (fixture, NULL);
  g_object_set (fixture->client, "name", "", NULL);
  g_object_set (sw_programme_get_clinic (fixture->programme), "phone", "", NULL);
  expect (fixture, "client-name", SW_FINDING_ASK);
  expect (fixture, "clinic-phone", SW_FINDING_ASK);
  g_assert_cmpuint (sw_findings_count_open (fixture->findings, SW_FINDING_ASK), ==, 2);
  g_assert_cmpuint (sw_findings_count_open (fixture->findings, SW_FINDING_STOP), ==, 0);
}

static void
test_session (Fixture       *fixture,
              gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) none = NULL;

  expect (fixture, "empty:Morning", SW_FINDING_ASK);
  add_item (fixture, NULL);
  g_assert_null (found (fixture, "empty"));

  g_object_set (fixture->session, "days", G_GUINT64_CONSTANT (0), NULL);
  expect (fixture, "days:Morning", SW_FINDING_ASK);
  g_object_set (fixture->session, "days", SW_SET (SW_DAY_FRIDAY), NULL);
  g_assert_null (found (fixture, "days"));

  g_list_store_remove (sw_section_get_items (fixture->section), 1);
  expect (fixture, "self-check:Morning", SW_FINDING_TELL);
}

/* An exercise with its own days a week needs none of the session. */
static void
test_days_of_dose (Fixture       *fixture,
                   gconstpointer  data G_GNUC_UNUSED)
{
  g_object_set (fixture->session, "days", G_GUINT64_CONSTANT (0), NULL);
  add_item (fixture, "3 x 12, 5 days a week");
  g_assert_null (found (fixture, "days"));
}

/* 3 x 12 at four seconds with 60 s rest are 264 s, 3 x 10-14 are 240 to 288; the self-check is no part of them. */
static void
test_length (Fixture       *fixture,
             gconstpointer  data G_GNUC_UNUSED)
{
  SwItem *item = add_item (fixture, "3 x 12, rest 60 s");
  SwDose dose;

  g_assert_null (found (fixture, "length"));
  g_object_set (fixture->client, "minutes", 5, NULL);
  g_assert_null (found (fixture, "length"));
  g_object_set (fixture->client, "minutes", 4, NULL);
  expect (fixture, "length:Morning", SW_FINDING_ASK);
  g_assert_true (found (fixture, "length")->fix_item == item);
  g_assert_cmpint (found (fixture, "length")->fix, ==, SW_FIX_SET_DOSE);
  g_assert_cmpint (found (fixture, "length")->fix_dose.sets, ==, 2);
  g_assert_true (sw_dose_from_line ("3 x 10-14, rest 60 s", NULL, &dose, NULL));
  g_object_set (item, "dose", &dose, NULL);
  expect (fixture, "length:Morning", SW_FINDING_TELL);
}

/* What was answered for ten minutes too many is asked again when it is an hour too many. */
static void
test_length_answer (Fixture       *fixture,
                    gconstpointer  data G_GNUC_UNUSED)
{
  SwItem *item = add_item (fixture, "3 x 12, rest 60 s");
  g_autoptr (SwAnswer) answer = NULL;
  SwFinding *finding;
  SwDose dose;

  g_object_set (fixture->client, "minutes", 4, NULL);
  finding = expect (fixture, "length:Morning", SW_FINDING_ASK);
  answer = sw_answer_new (finding->key, "There is time.", "2026-11-20", "T", NULL);
  g_list_store_append (sw_programme_get_answers (fixture->programme), answer);
  g_assert_true (found (fixture, "length")->answer == answer);

  g_assert_true (sw_dose_from_line ("9 x 12, rest 60 s", NULL, &dose, NULL));
  g_object_set (item, "dose", &dose, NULL);
  g_assert_null (found (fixture, "length")->answer);
}

/* Common practice: after a repair of the rotator cuff what the hand holds is for the surgeon to allow, whatever joint the
 * exercise is for; a weight at the ankle hangs on no shoulder. */
static void
test_held_load (Fixture       *fixture,
                gconstpointer  data G_GNUC_UNUSED)
{
  fixture->facts.region = SW_REGION_ELBOW_HAND;
  fixture->facts.equipment = SW_SET (SW_EQUIPMENT_DUMBBELL);
  fixture->facts.load_limit = (SwLoad) { SW_LOAD_KG, 10.0 };
  add_item (fixture, "2 x 10, 3 kg");
  g_object_set (fixture->client, "equipment", SW_SET (SW_EQUIPMENT_DUMBBELL) | SW_SET (SW_EQUIPMENT_ANKLE_WEIGHT),
                "precautions", SW_SET (SW_PRECAUTION_ROTATOR_CUFF_REPAIR), NULL);
  expect (fixture, "precaution-load:rotator-cuff-repair:i1", SW_FINDING_ASK);

  g_list_store_remove_all (sw_section_get_items (fixture->section));
  fixture->facts.region = SW_REGION_KNEE;
  fixture->facts.equipment = SW_SET (SW_EQUIPMENT_ANKLE_WEIGHT);
  add_item (fixture, "2 x 10, 3 kg");
  g_assert_null (found (fixture, "precaution-load"));
}

/* The therapist reads words, not the vocabulary of the documents. */
static void
test_equipment_names (Fixture       *fixture,
                      gconstpointer  data G_GNUC_UNUSED)
{
  fixture->facts.equipment = SW_SET (SW_EQUIPMENT_TOWEL) | SW_SET (SW_EQUIPMENT_BAND);
  add_item (fixture, NULL);
  g_object_set (fixture->client, "equipment", SW_SET (SW_EQUIPMENT_CHAIR), NULL);
  g_assert_nonnull (strstr (expect (fixture, "equipment:i1", SW_FINDING_ASK)->text, "towel, elastic band"));
}

static void
test_many (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  SwFinding *finding;

  for (int i = 0; i < 4; i++)
    add_item (fixture, NULL);
  g_assert_null (found (fixture, "many"));
  add_item (fixture, NULL);
  finding = expect (fixture, "many:Morning:5", SW_FINDING_TELL);
  g_assert_cmpint (finding->fix, ==, SW_FIX_SPLIT_SESSION);
  g_assert_nonnull (strstr (finding->why, "Henry"));
}

/* Much too long: not set by set, but in two sessions, the second with what comes last. With one set each there is nothing
 * left to drop; with one exercise there is nothing to split. */
static void
test_split (Fixture       *fixture,
            gconstpointer  data G_GNUC_UNUSED)
{
  SwItem *last = add_item (fixture, "3 x 12, rest 60 s");
  SwFinding *finding;

  g_object_set (fixture->client, "minutes", 2, NULL);
  g_assert_cmpint (expect (fixture, "length", SW_FINDING_ASK)->fix, ==, SW_FIX_SET_DOSE);

  add_item (fixture, "3 x 12, rest 60 s");
  finding = expect (fixture, "length", SW_FINDING_ASK);
  g_assert_cmpint (finding->fix, ==, SW_FIX_SPLIT_SESSION);
  g_assert_true (finding->fix_session == fixture->session);
  g_assert_cmpuint (finding->fix_moving->len, ==, 1);
  g_assert_true (finding->fix_moving->pdata[0] == last);

  g_list_store_remove_all (sw_section_get_items (fixture->section));
  add_item (fixture, "1 x 40");
  g_object_set (fixture->client, "minutes", 1, NULL);
  g_assert_cmpint (expect (fixture, "length", SW_FINDING_ASK)->fix, ==, SW_FIX_SHOW_CLIENT);
}

static void
test_precaution (Fixture       *fixture,
                 gconstpointer  data G_GNUC_UNUSED)
{
  SwFinding *finding;

  fixture->facts.cautions = SW_SET (SW_CAUTION_SPINE_BEND) | SW_SET (SW_CAUTION_ONE_LEG_STANDING);
  add_item (fixture, NULL);
  g_assert_null (found (fixture, "precaution"));

  g_object_set (fixture->client, "precautions", SW_SET (SW_PRECAUTION_OSTEOPOROSIS), NULL);
  finding = expect (fixture, "precaution:osteoporosis:i1", SW_FINDING_STOP);
  g_assert_nonnull (strstr (finding->why, "Giangregorio"));
  g_assert_cmpint (finding->fix, ==, SW_FIX_REMOVE_ITEM);

  /* Only what the client has: the same exercise with fall risk is a question. */
  g_object_set (fixture->client, "precautions", SW_SET (SW_PRECAUTION_FALL_RISK), NULL);
  expect (fixture, "precaution:fall-risk:i1", SW_FINDING_ASK);
  g_assert_null (found (fixture, "precaution:osteoporosis"));
}

static void
test_position (Fixture       *fixture,
               gconstpointer  data G_GNUC_UNUSED)
{
  SwFinding *finding;

  fixture->facts.position = SW_POSITION_ON_BACK;
  add_item (fixture, NULL);
  g_assert_null (found (fixture, "position"));
  g_object_set (fixture->client, "avoided-positions", SW_SET (SW_POSITION_KNEELING), NULL);
  g_assert_null (found (fixture, "position"));

  g_object_set (fixture->client, "avoided-positions", SW_SET (SW_POSITION_KNEELING) | SW_SET (SW_POSITION_ON_BACK), NULL);
  finding = expect (fixture, "position:i1:squat", SW_FINDING_ASK);
  g_assert_nonnull (strstr (finding->text, "on the back"));
  g_assert_cmpint (finding->fix, ==, SW_FIX_REMOVE_ITEM);
}

/* The nearest easier exercise that is safe and possible, even if its own easier links lead there. */
static void
test_swap (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) others = g_ptr_array_new_with_free_func (g_object_unref);
  SwExerciseFacts facts;
  char *to_near[] = { (char *) "unsafe", (char *) "missing", (char *) "absent", NULL };
  char *to_far[] = { (char *) "squat", (char *) "far", NULL };
  SwFinding *finding;

  sample_facts_init (&facts, "unsafe");
  facts.cautions = SW_SET (SW_CAUTION_SPINE_TWIST);
  facts.easier = to_far;
  g_ptr_array_add (others, sample_exercise_from (&facts, "Unsafe"));
  sample_facts_init (&facts, "missing");
  facts.equipment = SW_SET (SW_EQUIPMENT_BALL);
  g_ptr_array_add (others, sample_exercise_from (&facts, "Missing"));
  sample_facts_init (&facts, "far");
  g_ptr_array_add (others, sample_exercise_from (&facts, "Far"));
  sw_catalogue_add (fixture->catalogue, others);

  fixture->facts.cautions = SW_SET (SW_CAUTION_SPINE_BEND);
  fixture->facts.easier = to_near;
  add_item (fixture, NULL);
  g_object_set (fixture->client,
                "precautions", SW_SET (SW_PRECAUTION_OSTEOPOROSIS),
                "equipment", SW_SET (SW_EQUIPMENT_CHAIR),
                NULL);
  finding = expect (fixture, "precaution:osteoporosis:i1", SW_FINDING_STOP);
  g_assert_cmpint (finding->fix, ==, SW_FIX_SWAP_EXERCISE);
  g_assert_cmpstr (sw_exercise_get_id (finding->fix_exercise), ==, "far");
}

/* An answer holds for this item and exercise; for another exercise in its place it does not. */
static void
test_answer (Fixture       *fixture,
             gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (SwAnswer) answer = NULL;
  g_autoptr (SwExercise) other = NULL;
  SwExerciseFacts facts;
  SwItem *item;

  fixture->facts.cautions = SW_SET (SW_CAUTION_SPINE_BEND);
  item = add_item (fixture, NULL);
  g_object_set (fixture->client, "precautions", SW_SET (SW_PRECAUTION_OSTEOPOROSIS), NULL);
  answer = sw_answer_new (expect (fixture, "precaution", SW_FINDING_STOP)->key,
                          "Small range only.", "2026-11-20", "T", NULL);
  g_assert_cmpuint (sw_findings_count_open (fixture->findings, SW_FINDING_STOP), ==, 1);
  g_list_store_append (sw_programme_get_answers (fixture->programme), answer);
  g_assert_true (found (fixture, "precaution")->answer == answer);
  g_assert_cmpuint (sw_findings_count_open (fixture->findings, SW_FINDING_STOP), ==, 0);

  facts = fixture->facts;
  facts.id = (char *) "roll-up";
  other = sample_exercise_from (&facts, "Roll up");
  g_object_set (item, "exercise", other, NULL);
  check (fixture);
  g_assert_cmpuint (sw_findings_count_open (fixture->findings, SW_FINDING_STOP), ==, 1);
}

static void
test_load (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  SwItem *item = add_item (fixture, "3 x 12, 2 kg");

  expect (fixture, "load:i1", SW_FINDING_ASK);
  fix_dose (fixture, item, "load:i1");
  g_assert_cmpint (sw_item_get_dose (item)->load.unit, ==, SW_LOAD_NONE);
}

/* 10 kg are 22.046 lb: 22 lb pass, 22.5 lb do not, and the fix never lands above the limit. */
static void
test_load_limit (Fixture       *fixture,
                 gconstpointer  data G_GNUC_UNUSED)
{
  SwItem *item;
  SwDose dose;
  g_autofree char *key = NULL;

  fixture->facts.load_limit = (SwLoad) { SW_LOAD_KG, 10.0 };
  item = add_item (fixture, "3 x 12, 10 kg");
  g_assert_null (found (fixture, "load"));
  dose = *sw_item_get_dose (item);
  dose.load = (SwLoad) { SW_LOAD_LB, 22.0 };
  g_object_set (item, "dose", &dose, NULL);
  g_assert_null (found (fixture, "load"));
  dose.load.value = 22.5;
  g_object_set (item, "dose", &dose, NULL);
  key = g_strdup (expect (fixture, "load-limit:i1", SW_FINDING_STOP)->key);

  /* Another load is another finding: an answer does not cover more. */
  dose.load.value = 40.0;
  g_object_set (item, "dose", &dose, NULL);
  g_assert_cmpstr (expect (fixture, "load-limit:i1", SW_FINDING_STOP)->key, !=, key);
  fix_dose (fixture, item, "load-limit:i1");
  g_assert_cmpint (sw_item_get_dose (item)->load.unit, ==, SW_LOAD_LB);
  g_assert_cmpfloat (sw_item_get_dose (item)->load.value, ==, 22.0);
}

static void
test_load_and_precaution (Fixture       *fixture,
                          gconstpointer  data G_GNUC_UNUSED)
{
  SwItem *item;

  fixture->facts.load_limit = (SwLoad) { SW_LOAD_KG, 10.0 };
  fixture->facts.region = SW_REGION_SHOULDER;
  item = add_item (fixture, "3 x 12, 2 kg");
  g_object_set (fixture->client, "precautions", SW_SET (SW_PRECAUTION_LYMPHOEDEMA), NULL);
  expect (fixture, "precaution-load:lymphoedema:i1", SW_FINDING_ASK);
  fix_dose (fixture, item, "precaution-load");
}

static void
test_equipment (Fixture       *fixture,
                gconstpointer  data G_GNUC_UNUSED)
{
  SwFinding *finding;

  fixture->facts.equipment = SW_SET (SW_EQUIPMENT_STEP) | SW_SET (SW_EQUIPMENT_WALL);
  add_item (fixture, NULL);
  expect (fixture, "equipment-unknown", SW_FINDING_ASK);
  g_object_set (fixture->client, "equipment", SW_SET (SW_EQUIPMENT_CHAIR), NULL);
  finding = expect (fixture, "equipment:i1", SW_FINDING_ASK);
  g_assert_cmpint (finding->fix, ==, SW_FIX_ADD_EQUIPMENT);
  g_assert_cmpuint (finding->fix_equipment, ==, SW_SET (SW_EQUIPMENT_STEP));
  g_object_set (fixture->client,
                "equipment", sw_client_get_equipment (fixture->client) | finding->fix_equipment,
                NULL);
  g_assert_null (found (fixture, "equipment"));
}

static void
test_dose (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  SwItem *item = add_item (fixture, NULL);
  SwDose dose = *sw_item_get_dose (item);

  /* No line says so any more; an old document may. */
  dose.reps_low = dose.reps_high = dose.hold_s = 0;
  g_object_set (item, "dose", &dose, NULL);
  expect (fixture, "dose-missing:i1", SW_FINDING_STOP);
  fix_dose (fixture, item, "dose-missing");

  dose = *sw_item_get_dose (item);
  dose.sets = 0;
  g_object_set (item, "dose", &dose, NULL);
  expect (fixture, "dose-range:i1", SW_FINDING_STOP);
  fix_dose (fixture, item, "dose-range");

  dose.sets = 20;
  dose.reps_low = dose.reps_high = 200;
  g_object_set (item, "dose", &dose, NULL);
  expect (fixture, "dose-long:i1", SW_FINDING_ASK);
}

static void
test_sides (Fixture       *fixture,
            gconstpointer  data G_GNUC_UNUSED)
{
  SwItem *item = add_item (fixture, "3 x 12, +1 set left");
  SwDose dose;

  expect (fixture, "extra-side:i1", SW_FINDING_ASK);
  fix_dose (fixture, item, "extra-side");
  g_assert_true (sw_dose_from_line ("3 x 12, right, +1 set left", NULL, &dose, NULL));
  g_object_set (item, "dose", &dose, NULL);
  fix_dose (fixture, item, "extra-side");
  g_assert_true (sw_dose_from_line ("2 x 12, each side, +3 sets left", NULL, &dose, NULL));
  g_object_set (item, "dose", &dose, NULL);
  expect (fixture, "extra-many:i1", SW_FINDING_TELL);
}

/* Up to 5 of 10 is acceptable, above is too much (Thomee 1997; Silbernagel and others 2007). */
static void
test_pain (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  SwItem *item = add_item (fixture, "3 x 12, pain 5");
  SwDose dose = *sw_item_get_dose (item);

  g_assert_null (found (fixture, "pain"));
  dose.pain_limit = 6;
  g_object_set (item, "dose", &dose, NULL);
  expect (fixture, "pain-limit:i1", SW_FINDING_ASK);
  fix_dose (fixture, item, "pain-limit");
  g_assert_cmpint (sw_item_get_dose (item)->pain_limit, ==, 5);
}

static void
test_effort (Fixture       *fixture,
             gconstpointer  data G_GNUC_UNUSED)
{
  fixture->facts.aims = SW_SET (SW_AIM_STRENGTH);
  add_item (fixture, NULL);
  g_object_set (fixture->client, "precautions", SW_SET (SW_PRECAUTION_HEART_RATE_MEDICINE), NULL);
  expect (fixture, "effort-limit:i1", SW_FINDING_TELL);
}

static void
test_falls (Fixture       *fixture,
            gconstpointer  data G_GNUC_UNUSED)
{
  fixture->facts.cautions = SW_SET (SW_CAUTION_ONE_LEG_STANDING);
  add_item (fixture, NULL);
  g_object_set (fixture->client, "birth-year", YEAR - 64, NULL);
  g_assert_null (found (fixture, "falls"));
  g_object_set (fixture->client, "birth-year", YEAR - 65, NULL);
  expect (fixture, "falls", SW_FINDING_TELL);
  g_object_set (fixture->client, "precautions", SW_SET (SW_PRECAUTION_FALL_RISK), NULL);
  g_assert_null (found (fixture, "falls"));
}

/* An item read from a file that lacks its exercise. */
static void
test_missing (Fixture       *fixture,
              gconstpointer  data G_GNUC_UNUSED)
{
  sample_append (fixture->section, sw_item_new (SW_ITEM_EXERCISE, "i9"));
  expect (fixture, "exercise-missing:i9", SW_FINDING_STOP);
}

/* The most severe first, and no two findings with one key; without a catalogue all the same. */
static void
test_order (Fixture       *fixture,
            gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GHashTable) keys = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (GPtrArray) without = NULL;

  fixture->facts.cautions = G_MAXUINT64;
  fixture->facts.equipment = SW_SET (SW_EQUIPMENT_BALL);
  add_item (fixture, "3 x 12, 20 kg, pain 9, +4 sets left");
  g_object_set (fixture->client, "precautions", G_MAXUINT64, "minutes", 1, "name", "", NULL);
  check (fixture);
  g_assert_cmpuint (fixture->findings->len, >, 20);
  for (guint i = 0; i < fixture->findings->len; i++)
    {
      const SwFinding *finding = g_ptr_array_index (fixture->findings, i);

      if (!g_hash_table_add (keys, finding->key))
        g_error ("“%s” stands twice", finding->key);
      if (i > 0)
        g_assert_cmpint (finding->level, <=, ((SwFinding *) fixture->findings->pdata[i - 1])->level);
    }
  without = sw_findings_collect (fixture->programme, NULL, TODAY);
  g_assert_cmpuint (without->len, ==, fixture->findings->len);
}

/* Each row of the reference has its rule, and each rule its row, equally severe. */
static void
test_reference (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "precautions.csv", NULL);
  g_autofree char *text = NULL;
  g_auto (GStrv) lines = NULL;
  g_autoptr (GError) error = NULL;
  int n = 0;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  lines = g_strsplit (text, "\n", -1);
  for (guint i = 1; lines[i] != NULL && *lines[i] != '\0'; i++)
    {
      g_auto (GStrv) fields = g_strsplit (lines[i], ";", 4);
      int precaution, caution, level;
      const SwPrecautionRule *rule;

      g_assert_true (sw_term_from_nick (SW_TYPE_PRECAUTION, fields[0], &precaution));
      g_assert_true (sw_term_from_nick (SW_TYPE_CAUTION, fields[1], &caution));
      g_assert_true (sw_term_from_nick (SW_TYPE_FINDING_LEVEL, fields[2], &level));
      rule = sw_precautions_find_rule ((SwPrecaution) precaution, (SwCaution) caution);
      if (rule == NULL || (int) rule->level != level)
        g_error ("%s and %s: no rule, or one of another level", fields[0], fields[1]);
      n++;
    }
  for (int i = 0; i < sw_term_get_n_values (SW_TYPE_PRECAUTION); i++)
    for (int k = 0; k < sw_term_get_n_values (SW_TYPE_CAUTION); k++)
      n -= sw_precautions_find_rule ((SwPrecaution) i, (SwCaution) k) != NULL;
  g_assert_cmpint (n, ==, 0);
}

/* No pair twice; each caution a client can meet and each value has a name. */
static void
test_table (void)
{
  SwSet met = sw_precautions_get_cautions (G_MAXUINT64, SW_FINDING_TELL);
  SwSet stop = sw_precautions_get_cautions (SW_SET (SW_PRECAUTION_FALL_RISK), SW_FINDING_STOP);

  for (int caution = 0; caution < sw_term_get_n_values (SW_TYPE_CAUTION); caution++)
    {
      g_assert_cmpuint (strlen (sw_caution_get_name ((SwCaution) caution)), >, 3);
      if ((met & SW_SET (caution)) == 0)
        g_error ("no precaution speaks against %s", sw_term_to_nick (SW_TYPE_CAUTION, caution));
    }
  for (int precaution = 0; precaution < sw_term_get_n_values (SW_TYPE_PRECAUTION); precaution++)
    g_assert_cmpuint (strlen (sw_precaution_get_name ((SwPrecaution) precaution)), >, 3);
  g_assert_cmpuint (stop, ==, SW_SET (SW_CAUTION_UNSUPPORTED_STANDING) | SW_SET (SW_CAUTION_EYES_CLOSED));
}

int
main (int   argc,
      char *argv[])
{
  static const struct { const char *path; void (*run) (Fixture *, gconstpointer); } tests[] = {
    { "/reckon/findings/nothing", test_nothing },
    { "/reckon/findings/people", test_people },
    { "/reckon/findings/session", test_session },
    { "/reckon/findings/days-of-dose", test_days_of_dose },
    { "/reckon/findings/length", test_length },
    { "/reckon/findings/many", test_many },
    { "/reckon/findings/split", test_split },
    { "/reckon/findings/precaution", test_precaution },
    { "/reckon/findings/position", test_position },
    { "/reckon/findings/swap", test_swap },
    { "/reckon/findings/answer", test_answer },
    { "/reckon/findings/length-answer", test_length_answer },
    { "/reckon/findings/held-load", test_held_load },
    { "/reckon/findings/equipment-names", test_equipment_names },
    { "/reckon/findings/load", test_load },
    { "/reckon/findings/load-limit", test_load_limit },
    { "/reckon/findings/load-and-precaution", test_load_and_precaution },
    { "/reckon/findings/equipment", test_equipment },
    { "/reckon/findings/dose", test_dose },
    { "/reckon/findings/sides", test_sides },
    { "/reckon/findings/pain", test_pain },
    { "/reckon/findings/effort", test_effort },
    { "/reckon/findings/falls", test_falls },
    { "/reckon/findings/missing", test_missing },
    { "/reckon/findings/order", test_order },
  };

  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (tests); i++)
    g_test_add (tests[i].path, Fixture, NULL, set_up, tests[i].run, tear_down);
  g_test_add_func ("/reckon/findings/reference", test_reference);
  g_test_add_func ("/reckon/findings/table", test_table);

  return g_test_run ();
}
