/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The documents as objects: words, notifications, copies, catalogue, finding things. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "sample.h"

static void
notify_cb (GObject    *object G_GNUC_UNUSED,
           GParamSpec *pspec G_GNUC_UNUSED,
           guint      *count)
{
  (*count)++;
}

/* A word for each value, each word once, and a set comes back from its words. */
static void
test_terms (void)
{
  const GType types[] = {
    SW_TYPE_REGION, SW_TYPE_POSITION, SW_TYPE_EQUIPMENT, SW_TYPE_AIM, SW_TYPE_MUSCLE, SW_TYPE_SIDE,
    SW_TYPE_BODY_SIDE, SW_TYPE_DIRECTION_KIND, SW_TYPE_CAUTION, SW_TYPE_PRECAUTION, SW_TYPE_UNITS,
    SW_TYPE_PAPER, SW_TYPE_COMPANY, SW_TYPE_SECTION_KIND, SW_TYPE_ITEM_KIND, SW_TYPE_MEASURE, SW_TYPE_BETTER,
    SW_TYPE_DAY, SW_TYPE_LOAD_UNIT,
  };

  for (guint i = 0; i < G_N_ELEMENTS (types); i++)
    {
      int n = sw_term_get_n_values (types[i]);
      SwSet all = n == 64 ? G_MAXUINT64 : SW_SET (n) - 1;
      SwSet read = 0;
      g_autofree char *nicks = sw_set_to_nicks (types[i], all);

      g_assert_cmpint (n, >=, 2);
      g_assert_cmpint (n, <=, 64);
      for (int value = 0; value < n; value++)
        {
          int back = -1;

          g_assert_nonnull (sw_term_to_nick (types[i], value));
          g_assert_true (sw_term_from_nick (types[i], sw_term_to_nick (types[i], value), &back));
          g_assert_cmpint (back, ==, value);
        }
      g_assert_null (sw_term_to_nick (types[i], n));
      g_assert_true (sw_set_from_nicks (types[i], nicks, &read, NULL));
      g_assert_cmpuint (read, ==, all);
    }
}

static void
test_words (void)
{
  g_autofree char *unknown = NULL;
  g_autofree char *nicks = NULL;
  SwSet set = 5;

  g_assert_cmpstr (sw_term_to_nick (SW_TYPE_MUSCLE, SW_MUSCLE_HIP_ABDUCTORS), ==, "hip-abductors");
  g_assert_cmpstr (sw_term_to_nick (SW_TYPE_REGION, SW_REGION_ELBOW_HAND), ==, "elbow-hand");
  g_assert_cmpstr (sw_term_to_nick (SW_TYPE_MEASURE, SW_MEASURE_RATING_0_TO_10), ==, "rating-0-to-10");
  g_assert_cmpstr (sw_term_to_nick (SW_TYPE_PAPER, SW_PAPER_A4), ==, "a4");
  g_assert_false (sw_set_from_nicks (SW_TYPE_EQUIPMENT, "chair sofa", &set, &unknown));
  g_assert_cmpstr (unknown, ==, "sofa");
  g_assert_cmpuint (set, ==, 5);
  g_assert_true (sw_set_from_nicks (SW_TYPE_EQUIPMENT, "  band\n chair ", &set, NULL));
  nicks = sw_set_to_nicks (SW_TYPE_EQUIPMENT, set);
  g_assert_cmpstr (nicks, ==, "chair band");
}

/* Every writable property of every document: notified when it becomes another, not when it stays. */
static void
assert_notifies (GObject *object)
{
  guint n_properties;
  g_autofree GParamSpec **properties = g_object_class_list_properties (G_OBJECT_GET_CLASS (object), &n_properties);
  guint n_tested = 0;

  for (guint i = 0; i < n_properties; i++)
    {
      g_auto (GValue) value = G_VALUE_INIT;
      g_autofree char *signal = g_strconcat ("notify::", properties[i]->name, NULL);
      static const char * const extras[] = { "<x/>", NULL };
      guint count = 0;
      g_autoptr (GBytes) bytes = g_bytes_new_static ("<svg/>", 6);
      g_autoptr (SwLogo) logo = sw_logo_new (SW_LOGO_SVG, bytes);
      SwDose dose;

      if ((properties[i]->flags & G_PARAM_WRITABLE) == 0 || (properties[i]->flags & G_PARAM_CONSTRUCT_ONLY) != 0)
        continue;

      g_value_init (&value, properties[i]->value_type);
      sw_dose_init (&dose);
      dose.sets = 7;
      if (G_VALUE_HOLDS_STRING (&value))
        g_value_set_string (&value, "other");
      else if (G_VALUE_HOLDS_INT (&value))
        g_value_set_int (&value, 20);
      else if (G_VALUE_HOLDS_UINT64 (&value))
        g_value_set_uint64 (&value, 6);
      else if (G_VALUE_HOLDS_DOUBLE (&value))
        g_value_set_double (&value, 20.0);
      else if (G_VALUE_HOLDS_ENUM (&value))
        g_value_set_enum (&value, 1);
      else if (G_VALUE_HOLDS (&value, SW_TYPE_DOSE))
        g_value_set_boxed (&value, &dose);
      else if (G_VALUE_HOLDS (&value, SW_TYPE_LOGO))
        g_value_set_boxed (&value, logo);
      else if (G_VALUE_HOLDS (&value, G_TYPE_STRV))
        g_value_set_boxed (&value, extras);
      else
        continue;

      g_signal_connect (object, signal, G_CALLBACK (notify_cb), &count);
      g_object_set_property (object, properties[i]->name, &value);
      g_object_set_property (object, properties[i]->name, &value);
      if (count != 1)
        g_error ("%s of %s is notified %u times", properties[i]->name, G_OBJECT_TYPE_NAME (object), count);
      n_tested++;
    }
  g_assert_cmpuint (n_tested, >=, 3);
}

static void
test_notify (void)
{
  g_autoptr (SwClient) client = sw_client_new ();
  g_autoptr (SwClinic) clinic = sw_clinic_new ();
  g_autoptr (SwMeasurement) measurement = sw_measurement_new ("2026-11-20", "Stand", SW_MEASURE_SECONDS);
  g_autoptr (SwLimit) limit = sw_limit_new (SW_LIMIT_KIND_LOAD);
  g_autoptr (SwItem) item = sw_item_new (SW_ITEM_CIRCUIT, NULL);
  g_autoptr (SwSection) section = sw_section_new (SW_SECTION_WARM_UP, NULL);
  g_autoptr (SwSession) session = sw_session_new (NULL, 0);

  assert_notifies (G_OBJECT (client));
  assert_notifies (G_OBJECT (clinic));
  assert_notifies (G_OBJECT (measurement));
  assert_notifies (G_OBJECT (limit));
  assert_notifies (G_OBJECT (item));
  assert_notifies (G_OBJECT (section));
  assert_notifies (G_OBJECT (session));
}

/* All readable properties that are no lists of their own. */
static void
assert_equal_objects (GObject *a,
                      GObject *b)
{
  guint n_properties;
  g_autofree GParamSpec **properties = g_object_class_list_properties (G_OBJECT_GET_CLASS (a), &n_properties);

  g_assert_true (a != b);
  for (guint i = 0; i < n_properties; i++)
    {
      g_auto (GValue) first = G_VALUE_INIT;
      g_auto (GValue) second = G_VALUE_INIT;

      g_value_init (&first, properties[i]->value_type);
      g_value_init (&second, properties[i]->value_type);
      g_object_get_property (a, properties[i]->name, &first);
      g_object_get_property (b, properties[i]->name, &second);
      if (G_VALUE_HOLDS (&first, G_TYPE_STRV))
        g_assert_cmpstrv (g_value_get_boxed (&first), g_value_get_boxed (&second));
      else if (G_VALUE_HOLDS (&first, SW_TYPE_DOSE))
        g_assert_true (sw_dose_equal (g_value_get_boxed (&first), g_value_get_boxed (&second)));
      else if (G_VALUE_HOLDS (&first, SW_TYPE_LOGO))
        g_assert_true (sw_logo_equal (g_value_get_boxed (&first), g_value_get_boxed (&second)));
      else if (G_VALUE_HOLDS (&first, G_TYPE_LIST_STORE))
        g_assert_true (g_value_get_object (&first) != g_value_get_object (&second));
      else if (G_VALUE_HOLDS_DOUBLE (&first) && isnan (g_value_get_double (&first)))
        g_assert_true (isnan (g_value_get_double (&second)));
      else if (g_param_values_cmp (properties[i], &first, &second) != 0)
        g_error ("%s is not copied", properties[i]->name);
    }
}

static void
test_copy (void)
{
  g_autoptr (SwClient) client = sw_client_new ();
  g_autoptr (SwClinic) clinic = sw_clinic_new ();
  g_autoptr (SwMeasurement) measurement = sw_measurement_new ("2026-11-20", "Stand", SW_MEASURE_DEGREES);
  g_autoptr (SwItem) item = sample_item ("a", "3 x 12");
  g_autoptr (SwClient) client_copy = NULL;
  g_autoptr (SwClinic) clinic_copy = NULL;
  g_autoptr (SwMeasurement) measurement_copy = NULL;
  g_autoptr (SwLimit) limit = sw_limit_new (SW_LIMIT_KIND_SURGERY);
  g_autoptr (SwLimit) limit_copy = NULL;
  g_autoptr (SwItem) item_copy = NULL;
  g_autoptr (SwItem) duplicate = NULL;

  assert_notifies (G_OBJECT (client));
  assert_notifies (G_OBJECT (clinic));
  assert_notifies (G_OBJECT (item));
  assert_notifies (G_OBJECT (limit));
  g_object_set (measurement, "left", 12.5, NULL);
  client_copy = sw_client_copy (client);
  clinic_copy = sw_clinic_copy (clinic);
  measurement_copy = sw_measurement_copy (measurement);
  item_copy = sw_item_copy (item, FALSE);
  assert_equal_objects (G_OBJECT (client), G_OBJECT (client_copy));
  assert_equal_objects (G_OBJECT (clinic), G_OBJECT (clinic_copy));
  assert_equal_objects (G_OBJECT (measurement), G_OBJECT (measurement_copy));
  limit_copy = sw_limit_copy (limit);
  assert_equal_objects (G_OBJECT (limit), G_OBJECT (limit_copy));
  assert_equal_objects (G_OBJECT (item), G_OBJECT (item_copy));
  g_assert_true (isnan (sw_measurement_get_right (measurement_copy)));
  duplicate = sw_item_copy (item, TRUE);
  g_assert_cmpstr (sw_item_get_id (duplicate), !=, sw_item_get_id (item));
}

static void
test_programme_copy (void)
{
  g_autoptr (SwProgramme) programme = sw_programme_new_standard ();
  g_autoptr (SwProgramme) copy = NULL;
  g_autoptr (SwSession) session = g_list_model_get_item (G_LIST_MODEL (sw_programme_get_sessions (programme)), 0);
  g_autoptr (SwSection) section = g_list_model_get_item (G_LIST_MODEL (sw_session_get_sections (session)), 1);
  g_autoptr (SwAnswer) answer = sw_answer_new ("k", "because", "2026-11-20", "T", NULL);
  SwItem *circuit = sw_item_new (SW_ITEM_CIRCUIT, "c");
  g_autoptr (SwItem) member = sample_item ("m", "3 x 12");
  g_autoptr (GPtrArray) items = NULL;

  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (sw_session_get_sections (session))), ==, 3);
  g_list_store_append (sw_item_get_items (circuit), member);
  sample_append (section, circuit);
  g_list_store_append (sw_programme_get_answers (programme), answer);
  g_object_set (sw_programme_get_client (programme), "name", "Ada", NULL);
  g_object_set (programme, "company", SW_COMPANY_AT_FIRST, "progress", "Add one", NULL);

  copy = sw_programme_copy (programme);
  g_assert_cmpstr (sw_programme_get_id (copy), ==, sw_programme_get_id (programme));
  g_assert_cmpstr (sw_client_get_name (sw_programme_get_client (copy)), ==, "Ada");
  g_assert_cmpint (sw_programme_get_company (copy), ==, SW_COMPANY_AT_FIRST);
  g_assert_cmpstr (sw_programme_get_progress (copy), ==, "Add one");
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (sw_programme_get_answers (copy))), ==, 1);
  items = sw_programme_dup_items (copy);
  g_assert_cmpuint (items->len, ==, 2);
  g_assert_cmpstr (sw_item_get_id (items->pdata[1]), ==, "m");
  g_assert_true (items->pdata[1] != member);

  /* What happens to the one does not reach the other. */
  g_object_set (member, "note", "changed", NULL);
  g_object_set (sw_programme_get_client (programme), "name", "Grace", NULL);
  g_assert_cmpstr (sw_item_get_note (items->pdata[1]), ==, "");
  g_assert_cmpstr (sw_client_get_name (sw_programme_get_client (copy)), ==, "Ada");
}

/* Numbers stay in their ranges, whoever sets them. */
static void
test_progression (void)
{
  g_autoptr (SwProgression) progression = sw_progression_new ();
  g_autoptr (SwProgression) copy = NULL;
  const char * const *names = sw_progression_get_number_names ();

  g_assert_true (sw_progression_is_usual (progression));
  for (guint i = 0; names[i] != NULL; i++)
    {
      int lowest, highest, usual;

      sw_progression_get_range (names[i], &lowest, &highest, &usual);
      g_assert_cmpint (usual, >=, lowest);
      g_assert_cmpint (usual, <=, highest);
      g_assert_cmpint (sw_progression_get_number (progression, names[i]), ==, usual);
      g_object_set (progression, names[i], 10000, NULL);
      g_assert_cmpint (sw_progression_get_number (progression, names[i]), ==, highest);
      g_object_set (progression, names[i], -10000, NULL);
      g_assert_cmpint (sw_progression_get_number (progression, names[i]), ==, lowest);
      g_object_set (progression, names[i], usual, NULL);
      g_assert_true (sw_progression_is_usual (progression));
    }

  g_object_set (progression, "weeks", 1, NULL);
  g_assert_cmpint (sw_progression_get_number (progression, "weeks"), ==, SW_PROGRESSION_LEAST_WEEKS);
  g_assert_false (sw_progression_is_usual (progression));
  g_object_set (progression, "steps-up", FALSE, NULL);
  copy = sw_progression_copy (progression);
  g_object_set (progression, "weeks", 12, "steps-up", TRUE, NULL);
  g_assert_cmpint (sw_progression_get_number (copy, "weeks"), ==, SW_PROGRESSION_LEAST_WEEKS);
  g_assert_false (sw_progression_get_steps_up (copy));
}

static void
test_diary_entry (void)
{
  g_autoptr (SwDiaryEntry) entry = sw_diary_entry_new ("2026-11-20", "i1", "squat", "3 x 12");
  g_autoptr (SwDiaryEntry) copy = NULL;

  g_assert_true (sw_diary_entry_is_blank (entry));
  g_assert_cmpint (sw_diary_entry_get_pain_during (entry), ==, SW_DIARY_NOT_STATED);
  g_object_set (entry, "pain-during", 0, NULL);
  g_assert_false (sw_diary_entry_is_blank (entry));
  copy = sw_diary_entry_copy (entry);
  g_object_set (entry, "pain-during", SW_DIARY_NOT_STATED, "settled", SW_SETTLED_NO, NULL);
  g_assert_false (sw_diary_entry_is_blank (entry));
  g_assert_cmpint (sw_diary_entry_get_pain_during (copy), ==, 0);
  g_assert_cmpint (sw_diary_entry_get_settled (copy), ==, SW_SETTLED_UNKNOWN);
  g_assert_cmpstr (sw_diary_entry_get_dose_line (copy), ==, "3 x 12");
}

/* Another client: the work goes over, nothing that is about the one before. */
static void
test_programme_new_from (void)
{
  g_autoptr (SwProgramme) programme = sw_programme_new_standard ();
  g_autoptr (SwProgramme) new = NULL;
  g_autoptr (SwSession) session = g_list_model_get_item (G_LIST_MODEL (sw_programme_get_sessions (programme)), 0);
  g_autoptr (SwSection) section = g_list_model_get_item (G_LIST_MODEL (sw_session_get_sections (session)), 1);
  g_autoptr (SwAnswer) answer = sw_answer_new ("k", "because", "2026-11-20", "T", NULL);
  g_autoptr (SwIssue) issue = sw_issue_new ("2026-11-20", "print", "", "", NULL);
  g_autoptr (SwMeasurement) measurement = sw_measurement_new ("2026-11-20", "stands", SW_MEASURE_SECONDS);
  g_autoptr (SwDiaryEntry) entry = sw_diary_entry_new ("2026-11-20", "m", "e", "3 x 12");
  g_autoptr (SwLimit) limit = sw_limit_new (SW_LIMIT_KIND_LOAD);
  SwItem *circuit = sw_item_new (SW_ITEM_CIRCUIT, "c");
  g_autoptr (SwItem) member = sample_item ("m", "3 x 12");
  g_autoptr (GPtrArray) items = NULL;
  g_autoptr (SwClient) expected = sw_client_new ();
  g_autoptr (SwClinic) nothing = sw_clinic_new ();

  g_list_store_append (sw_item_get_items (circuit), member);
  sample_append (section, circuit);
  g_list_store_append (sw_programme_get_answers (programme), answer);
  g_list_store_append (sw_programme_get_issues (programme), issue);
  g_list_store_append (sw_programme_get_measurements (programme), measurement);
  g_list_store_append (sw_programme_get_diary (programme), entry);
  g_object_set (sw_programme_get_progression (programme), "weeks", 8, NULL);
  g_list_store_append (sw_programme_get_limits (programme), limit);
  g_object_set (programme, "title", "Strong legs", "company", SW_COMPANY_ALWAYS, "progress", "Add one", NULL);
  g_object_set (sw_programme_get_page_plan (programme), "layout", SW_LAYOUT_COMPACT, NULL);
  g_object_set (sw_programme_get_clinic (programme), "phone", "555 0199", NULL);
  g_object_set (sw_programme_get_client (programme), "name", "Ada", "birth-year", 1950, "goals", "Stairs",
                "precautions", (guint64) SW_SET (SW_PRECAUTION_FALL_RISK), "other-precautions", "Dizzy at times",
                "minutes", 20, "equipment", (guint64) SW_SET (SW_EQUIPMENT_CHAIR),
                "avoided-positions", (guint64) SW_SET (SW_POSITION_KNEELING), "dominant-side", SW_BODY_SIDE_LEFT,
                "text-points", 20.0, "paper", SW_PAPER_LETTER, "units", SW_UNITS_LB, "language", "es", NULL);
  g_object_set (expected, "paper", SW_PAPER_LETTER, "units", SW_UNITS_LB, "language", "es", NULL);

  new = sw_programme_new_from (programme);
  g_assert_cmpstr (sw_programme_get_id (new), !=, sw_programme_get_id (programme));
  g_assert_cmpstr (sw_programme_get_title (new), ==, "Strong legs");
  g_assert_cmpint (sw_programme_get_company (new), ==, SW_COMPANY_NOT_STATED);
  g_assert_cmpstr (sw_programme_get_progress (new), ==, "Add one");
  g_assert_cmpint (sw_page_plan_get_layout (sw_programme_get_page_plan (new)), ==, SW_LAYOUT_COMPACT);
  assert_equal_objects (G_OBJECT (sw_programme_get_client (new)), G_OBJECT (expected));
  assert_equal_objects (G_OBJECT (sw_programme_get_clinic (new)), G_OBJECT (nothing));
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (sw_programme_get_answers (new))), ==, 0);
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (sw_programme_get_issues (new))), ==, 0);
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (sw_programme_get_measurements (new))), ==, 0);
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (sw_programme_get_diary (new))), ==, 0);
  g_assert_cmpint (sw_progression_get_number (sw_programme_get_progression (new), "weeks"), ==, 8);
  g_assert_true (sw_programme_find_list (programme, entry, NULL) == sw_programme_get_diary (programme));
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (sw_programme_get_limits (new))), ==, 0);

  items = sw_programme_dup_items (new);
  g_assert_cmpuint (items->len, ==, 2);
  g_assert_cmpstr (sw_item_get_id (items->pdata[0]), !=, "c");
  g_assert_cmpstr (sw_item_get_id (items->pdata[1]), !=, "m");
  g_assert_cmpint (sw_item_get_dose (items->pdata[1])->sets, ==, 3);
}

static void
test_find (void)
{
  g_autoptr (SwProgramme) programme = sw_programme_new (NULL);
  g_autoptr (SwSession) session = sw_session_new_standard ("Morning");
  g_autoptr (SwSection) section = NULL;
  g_autoptr (SwItem) circuit = sw_item_new (SW_ITEM_CIRCUIT, "c");
  g_autoptr (SwItem) member = sample_item ("m", "3 x 12");
  g_autoptr (SwItem) stranger = sample_item ("s", "3 x 12");
  guint position = 99;

  g_assert_cmpuint (strlen (sw_programme_get_id (programme)), ==, 36);
  g_list_store_append (sw_programme_get_sessions (programme), session);
  section = g_list_model_get_item (G_LIST_MODEL (sw_session_get_sections (session)), 2);
  g_list_store_append (sw_section_get_items (section), circuit);
  g_list_store_append (sw_item_get_items (circuit), member);

  g_assert_true (sw_programme_find_list (programme, member, &position) == sw_item_get_items (circuit));
  g_assert_cmpuint (position, ==, 0);
  g_assert_true (sw_programme_find_list (programme, section, &position) == sw_session_get_sections (session));
  g_assert_cmpuint (position, ==, 2);
  g_assert_true (sw_programme_find_list (programme, session, NULL) == sw_programme_get_sessions (programme));
  g_assert_null (sw_programme_find_list (programme, stranger, &position));
  g_assert_cmpuint (position, ==, 2);
}

static void
test_snapshots (void)
{
  g_autoptr (SwProgramme) programme = sw_programme_new_standard ();
  g_autoptr (SwSession) session = g_list_model_get_item (G_LIST_MODEL (sw_programme_get_sessions (programme)), 0);
  SwSection *section = sample_section (session, SW_SECTION_OWN);
  g_autoptr (SwExercise) newer = NULL;
  g_autoptr (GPtrArray) exercises = NULL;
  SwExerciseFacts facts;

  sample_facts_init (&facts, "b");
  facts.revision = 4;
  newer = sample_exercise_from (&facts, "B, newer");
  sample_append (section, sample_item ("b", "3 x 12"));
  sample_append (section, sample_item ("a", "3 x 12"));
  sample_append (section, sw_item_new_for_exercise (newer, "b2"));
  sample_append (section, sw_item_new (SW_ITEM_REST, "r"));
  exercises = sw_programme_dup_exercises (programme);
  g_assert_cmpuint (exercises->len, ==, 2);
  g_assert_cmpstr (sw_exercise_get_id (exercises->pdata[0]), ==, "a");
  g_assert_true (exercises->pdata[1] == newer);
}

static void
test_language (void)
{
  static const char * const languages[] = { "de", "en-GB", "pt-BR" };
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_exercise_text_free);
  g_autoptr (SwExercise) exercise = NULL;
  SwExerciseFacts facts;

  for (guint i = 0; i < G_N_ELEMENTS (languages); i++)
    g_ptr_array_add (texts, sw_exercise_text_new (languages[i]));
  sample_facts_init (&facts, "a");
  exercise = sw_exercise_new (&facts, texts, NULL, NULL);

  g_assert_cmpstr (sw_exercise_get_text (exercise, "de")->language, ==, "de");
  g_assert_cmpstr (sw_exercise_get_text (exercise, "de-AT")->language, ==, "de");
  g_assert_cmpstr (sw_exercise_get_text (exercise, "PT")->language, ==, "pt-BR");
  g_assert_cmpstr (sw_exercise_get_text (exercise, "fr")->language, ==, "en-GB");
  g_assert_cmpstr (sw_exercise_get_text (exercise, NULL)->language, ==, "en-GB");
  g_assert_true (sw_exercise_equal (exercise, exercise));
  g_assert_cmpstr (sw_exercise_get_facts (exercise)->easier[0], ==, NULL);
}

static void
test_exercise_equal (void)
{
  g_autoptr (SwExercise) a = sample_exercise ("a", "A", "3 x 12");
  g_autoptr (SwExercise) same = sample_exercise ("a", "A", "3 x 12");
  g_autoptr (SwExercise) other_name = sample_exercise ("a", "B", "3 x 12");
  g_autoptr (SwExercise) other_dose = sample_exercise ("a", "A", "3 x 13");
  g_autoptr (SwExercise) other_limit = NULL;
  SwExerciseFacts facts = *sw_exercise_get_facts (a);

  facts.load_limit = (SwLoad) { SW_LOAD_KG, 5.0 };
  other_limit = sample_exercise_from (&facts, "A");
  g_assert_true (sw_exercise_equal (a, same));
  g_assert_false (sw_exercise_equal (a, other_name));
  g_assert_false (sw_exercise_equal (a, other_dose));
  g_assert_false (sw_exercise_equal (a, other_limit));
}

static void
test_catalogue (void)
{
  g_autoptr (SwCatalogue) catalogue = sw_catalogue_new ();
  g_autoptr (GPtrArray) shipped = g_ptr_array_new_with_free_func (g_object_unref);
  g_autoptr (GPtrArray) clinic = g_ptr_array_new_with_free_func (g_object_unref);

  g_ptr_array_add (shipped, sample_exercise ("m", "M", "3 x 12"));
  g_ptr_array_add (shipped, sample_exercise ("a", "A", "3 x 12"));
  g_ptr_array_add (shipped, sample_exercise ("z", "Z", "3 x 12"));
  g_ptr_array_add (clinic, sample_exercise ("m", "Our own M", "3 x 12"));
  g_ptr_array_add (clinic, sample_exercise ("b", "B", "3 x 12"));
  sw_catalogue_add (catalogue, shipped);
  sw_catalogue_add (catalogue, clinic);

  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (catalogue)), ==, 4);
  g_assert_true (sw_catalogue_lookup (catalogue, "m") == clinic->pdata[0]);
  g_assert_true (sw_catalogue_lookup (catalogue, "z") == shipped->pdata[2]);
  g_assert_null (sw_catalogue_lookup (catalogue, "c"));
  for (guint i = 1; i < 4; i++)
    {
      g_autoptr (SwExercise) before = g_list_model_get_item (G_LIST_MODEL (catalogue), i - 1);
      g_autoptr (SwExercise) exercise = g_list_model_get_item (G_LIST_MODEL (catalogue), i);

      g_assert_cmpstr (sw_exercise_get_id (before), <, sw_exercise_get_id (exercise));
    }
  g_assert_null (g_list_model_get_item (G_LIST_MODEL (catalogue), 4));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/model/documents/terms", test_terms);
  g_test_add_func ("/model/documents/words", test_words);
  g_test_add_func ("/model/documents/notify", test_notify);
  g_test_add_func ("/model/documents/copy", test_copy);
  g_test_add_func ("/model/documents/programme-copy", test_programme_copy);
  g_test_add_func ("/model/documents/progression", test_progression);
  g_test_add_func ("/model/documents/diary-entry", test_diary_entry);
  g_test_add_func ("/model/documents/programme-new-from", test_programme_new_from);
  g_test_add_func ("/model/documents/find", test_find);
  g_test_add_func ("/model/documents/snapshots", test_snapshots);
  g_test_add_func ("/model/documents/language", test_language);
  g_test_add_func ("/model/documents/exercise-equal", test_exercise_equal);
  g_test_add_func ("/model/documents/catalogue", test_catalogue);

  return g_test_run ();
}
