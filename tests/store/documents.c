/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Both documents: what is read is written again to the byte, what is unknown stays, what is wrong is told with its
 * line. xmllint, which shares no code with the readers but the parser, holds everything written against the schemas. */
#include "config.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#include "sw-data-dir.h"
#include "sw-exercise-xml.h"
#include "sw-file.h"
#include "sw-programme-xml.h"
#include "sw-schema.h"

static char *
read_case (const char *name)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "cases", name, NULL);
  g_autoptr (GError) error = NULL;
  char *text = NULL;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  return text;
}

static SwProgramme *
programme_from_text (const char  *text,
                     GError     **error)
{
  g_autoptr (GBytes) bytes = g_bytes_new (text, strlen (text));

  return sw_programme_from_bytes (bytes, "client.setwright", error);
}

static char *
programme_to_text (SwProgramme *programme)
{
  g_autoptr (GBytes) bytes = sw_programme_to_bytes (programme);

  return g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
}

static char *
replace (const char *text,
         const char *old,
         const char *new)
{
  const char *place = strstr (text, old);

  g_assert_nonnull (place);
  return g_strdup_printf ("%.*s%s%s", (int) (place - text), text, new, place + strlen (old));
}

/* Holds @text against a schema with xmllint, whose exit status 3 or 4 means "not valid". */
static void
assert_valid (const char *text,
              const char *schema)
{
  g_autofree char *xmllint = g_find_program_in_path ("xmllint");
  g_autofree char *schema_path = sw_data_path ("schema", schema, NULL);
  g_autofree char *path = NULL;
  g_autofree char *words = NULL;
  g_autoptr (GError) error = NULL;
  int fd, status;

  if (xmllint == NULL)
    {
      g_test_message ("xmllint is not there: not held against %s", schema);
      return;
    }

  fd = g_file_open_tmp ("setwright-XXXXXX.xml", &path, NULL);
  g_assert_cmpint (fd, >=, 0);
  g_close (fd, NULL);
  g_assert_true (g_file_set_contents (path, text, -1, NULL));
  g_spawn_sync (NULL, (char *[]){ xmllint, (char *) "--noout", (char *) "--relaxng", schema_path, path, NULL }, NULL,
                G_SPAWN_DEFAULT, NULL, NULL, NULL, &words, &status, &error);
  g_assert_no_error (error);
  if (status != 0)
    g_error ("%s\n%s", words, text);
  g_unlink (path);
}

static void
test_round_trip (gconstpointer name)
{
  g_autofree char *text = read_case (name);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwProgramme) programme = programme_from_text (text, &error);
  g_autoptr (SwProgramme) copy = NULL;
  g_autofree char *written = NULL;
  g_autofree char *copied = NULL;

  g_assert_no_error (error);
  written = programme_to_text (programme);
  g_assert_cmpstr (written, ==, text);

  copy = sw_programme_copy (programme);
  copied = programme_to_text (copy);
  g_assert_cmpstr (copied, ==, text);
  assert_valid (text, "programme.rng");
  g_assert_finalize_object (g_steal_pointer (&copy));
  g_assert_finalize_object (g_steal_pointer (&programme));
}

static void
assert_progress (SwProgramme *programme)
{
  SwProgression *progression = sw_programme_get_progression (programme);
  GListModel *diary = G_LIST_MODEL (sw_programme_get_diary (programme));
  g_autoptr (SwDiaryEntry) first = g_list_model_get_item (diary, 0);
  g_autoptr (SwDiaryEntry) second = g_list_model_get_item (diary, 1);
  g_autoptr (SwProgramme) other = sw_programme_new_from (programme);

  g_assert_false (sw_progression_get_steps_up (progression));
  g_assert_cmpint (sw_progression_get_number (progression, "sessions"), ==, 3);
  g_assert_cmpint (sw_progression_get_number (progression, "pain-limit"), ==, 4);
  g_assert_cmpint (sw_progression_get_number (progression, "step-percent"), ==, 5);
  g_assert_cmpint (sw_progression_get_number (progression, "weeks"), ==, 6);

  g_assert_cmpuint (g_list_model_get_n_items (diary), ==, 3);
  g_assert_cmpstr (sw_diary_entry_get_date (first), ==, "2026-11-23");
  g_assert_cmpstr (sw_diary_entry_get_item (first), ==, "i1");
  g_assert_cmpstr (sw_diary_entry_get_exercise (first), ==, "heel-raise-sitting");
  g_assert_cmpstr (sw_diary_entry_get_dose_line (first), ==, "2 x 8-12, 2.5 kg");
  g_assert_cmpint (sw_diary_entry_get_sets (first), ==, 2);
  g_assert_cmpint (sw_diary_entry_get_repetitions (first), ==, 14);
  g_assert_cmpint (sw_diary_entry_get_effort (first), ==, 6);
  g_assert_cmpint (sw_diary_entry_get_pain_before (first), ==, 1);
  g_assert_cmpint (sw_diary_entry_get_pain_during (first), ==, 2);
  g_assert_cmpint (sw_diary_entry_get_pain_after (first), ==, 2);
  g_assert_cmpint (sw_diary_entry_get_settled (first), ==, SW_SETTLED_YES);
  g_assert_false (sw_diary_entry_get_control_lost (first));
  g_assert_cmpint (sw_diary_entry_get_pain_after (second), ==, SW_DIARY_NOT_STATED);
  g_assert_cmpint (sw_diary_entry_get_settled (second), ==, SW_SETTLED_NO);
  g_assert_true (sw_diary_entry_get_control_lost (second));
  g_assert_cmpstr (sw_diary_entry_get_note (second), ==, "Knee felt loose\non the stairs.");

  /* The rules go with the work; what this client reports does not. */
  g_assert_cmpint (sw_progression_get_number (sw_programme_get_progression (other), "sessions"), ==, 3);
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (sw_programme_get_diary (other))), ==, 0);
}

/* What the sample says arrives in the model, not only in the next file. */
static void
assert_limits (GListModel *limits)
{
  g_autoptr (SwLimit) load = g_list_model_get_item (limits, 0);
  g_autoptr (SwLimit) range = g_list_model_get_item (limits, 1);
  g_autoptr (SwLimit) weight = g_list_model_get_item (limits, 2);
  g_autoptr (SwLimit) surgery = g_list_model_get_item (limits, 3);

  g_assert_cmpuint (g_list_model_get_n_items (limits), ==, 4);
  g_assert_cmpint (sw_limit_get_kind (load), ==, SW_LIMIT_KIND_LOAD);
  g_assert_cmpint (sw_limit_get_region (load), ==, SW_REGION_SHOULDER);
  g_assert_cmpint (sw_limit_get_side (load), ==, SW_BODY_SIDE_RIGHT);
  g_assert_cmpfloat (sw_limit_get_kg (load), ==, 2.5);
  g_assert_true (isnan (sw_limit_get_to_deg (load)));
  g_assert_cmpstr (sw_limit_get_note (load), ==, "Letter of the surgeon, 3 November");
  g_assert_cmpint (sw_limit_get_movement (range), ==, SW_MOVEMENT_KNEE_BEND);
  g_assert_cmpfloat (sw_limit_get_from_deg (range), ==, 0.0);
  g_assert_cmpfloat (sw_limit_get_to_deg (range), ==, 90.0);
  g_assert_cmpint (sw_limit_get_precaution (range), ==, -1);
  g_assert_cmpint (sw_limit_get_bearing (weight), ==, SW_BEARING_PART);
  g_assert_cmpint (sw_limit_get_precaution (surgery), ==, SW_PRECAUTION_KNEE_REPLACEMENT);
  g_assert_cmpstr (sw_limit_get_date (surgery), ==, "2026-10-12");
  g_assert_cmpstr (sw_limit_get_name (surgery), ==, "New knee");
}

static void
test_values (void)
{
  g_autofree char *text = read_case ("gardener.setwright");
  g_autoptr (SwProgramme) programme = programme_from_text (text, NULL);
  SwClient *client = sw_programme_get_client (programme);
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
  g_autoptr (SwMeasurement) measurement
      = g_list_model_get_item (G_LIST_MODEL (sw_programme_get_measurements (programme)), 0);
  SwPagePlan *plan = sw_programme_get_page_plan (programme);
  const SwDose *dose = sw_item_get_dose (items->pdata[0]);
  const SwExerciseFacts *facts;
  int low_s, high_s;

  g_assert_cmpstr (sw_client_get_goals (client), ==, "Work in the garden for an hour\nClimb the ladder");
  g_assert_cmpint (sw_client_get_birth_year (client), ==, 1955);
  g_assert_cmpuint (sw_client_get_precautions (client), ==,
                    SW_SET (SW_PRECAUTION_HIGH_BLOOD_PRESSURE) | SW_SET (SW_PRECAUTION_FALL_RISK));
  g_assert_cmpuint (sw_client_get_avoided_positions (client), ==, SW_SET (SW_POSITION_KNEELING));
  g_assert_cmpfloat (sw_measurement_get_right (measurement), ==, 8.5);
  g_assert_true (isnan (sw_measurement_get_both (measurement)));

  assert_limits (G_LIST_MODEL (sw_programme_get_limits (programme)));

  g_assert_cmpint (sw_page_plan_get_layout (plan), ==, SW_LAYOUT_COMPACT);
  g_assert_cmpuint (sw_page_plan_get_parts (plan), ==,
                    (SW_PAGE_PARTS_USUAL & ~SW_SET (SW_PAGE_PART_KEY)) | SW_SET (SW_PAGE_PART_SIGNATURE));
  g_assert_true (sw_page_plan_get_save_ink (plan));
  g_assert_true (sw_page_plan_get_landscape (plan));
  g_assert_true (sw_page_plan_get_form (plan));
  g_assert_cmpstr (sw_page_plan_get_extras (plan)[0], ==, NULL);

  assert_progress (programme);

  facts = sw_exercise_get_facts (sw_item_get_exercise (items->pdata[0]));
  g_assert_cmpstr (facts->dose_reason, ==, "Older adults start with more repetitions and less load.");
  g_assert_true (facts->has_review);
  g_assert_cmpint (facts->review, ==, SW_REVIEW_STATE_IN_REVIEW);
  g_assert_cmpstr (facts->review_due, ==, "2027-05-31");

  g_assert_cmpuint (items->len, ==, 7);
  g_assert_cmpint (dose->sets, ==, 2);
  g_assert_cmpint (dose->reps_low, ==, 8);
  g_assert_cmpint (dose->reps_high, ==, 12);
  g_assert_cmpint (dose->tempo.lift_s, ==, -1);
  g_assert_cmpint (dose->load.unit, ==, SW_LOAD_KG);
  g_assert_cmpfloat (dose->load.value, ==, 2.5);
  g_assert_cmpint (dose->extra_side, ==, SW_BODY_SIDE_RIGHT);
  g_assert_cmpint (dose->pain_limit, ==, 3);
  g_assert_cmpstr (sw_item_get_note (items->pdata[0]), ==, "Hold the counter\nand breathe.");
  g_assert_cmpint (sw_item_get_kind (items->pdata[2]), ==, SW_ITEM_CIRCUIT);
  g_assert_cmpint (sw_item_get_rounds (items->pdata[2]), ==, 3);
  g_assert_true (sw_item_get_exercise (items->pdata[3]) == sw_item_get_exercise (items->pdata[0]));

  g_assert_true (sw_item_get_pinned (items->pdata[0]));
  g_assert_cmpstr (sw_item_get_after (items->pdata[0]), ==, "");
  g_assert_false (sw_item_get_pinned (items->pdata[2]));
  g_assert_cmpstr (sw_item_get_after (items->pdata[2]), ==, "i1");
  sw_clinic_get_transition (sw_programme_get_clinic (programme), SW_TRANSITION_FLOOR, &low_s, &high_s);
  g_assert_cmpint (low_s, ==, 30);
  g_assert_cmpint (high_s, ==, 80);
}

/* A newer version's elements and attributes outlive an edit next to them. */
static void
test_edit_keeps_unknown (void)
{
  g_autofree char *text = read_case ("newer.setwright");
  g_autofree char *expected = replace (text, "name=\"Alex Gardener\"", "name=\"Zoë &quot;Z&quot; &lt;G&gt;\"");
  g_autofree char *with_dose = replace (expected, "<dose sets=\"2\"", "<dose sets=\"4\"");
  g_autoptr (SwProgramme) programme = programme_from_text (text, NULL);
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);
  SwDose dose = *sw_item_get_dose (items->pdata[0]);
  g_autofree char *written = NULL;

  dose.sets = 4;
  g_object_set (sw_programme_get_client (programme), "name", "Zoë \"Z\" <G>", NULL);
  g_object_set (items->pdata[0], "dose", &dose, NULL);
  written = programme_to_text (programme);
  g_assert_cmpstr (written, ==, with_dose);
  assert_valid (written, "programme.rng");
}

/* Prefixes declared far out, comments outside the root and default namespaces come out as XML that means the same. */
static void
test_namespaces (void)
{
  g_autofree char *text = read_case ("gardener.setwright");
  g_autofree char *declared = replace (text, "<programme xmlns=", "<!-- first -->\n<programme xmlns:far=\"urn:far\" xmlns=");
  g_autofree char *used
      = replace (declared, "<rest id=\"i2\"", "<far:a far:b=\"1\"><c xmlns=\"urn:other\" far:d=\"2\"/></far:a><rest far:e=\"3\" id=\"i2\"");
  g_autoptr (GError) error = NULL;
  g_autoptr (SwProgramme) programme = programme_from_text (used, &error);
  g_autoptr (SwProgramme) again = NULL;
  g_autofree char *written = NULL;
  g_autofree char *rewritten = NULL;

  g_assert_no_error (error);
  written = programme_to_text (programme);
  g_assert_nonnull (strstr (written, "<far:a xmlns:far=\"urn:far\" far:b=\"1\"><c xmlns=\"urn:other\" far:d=\"2\"/></far:a>"));
  g_assert_nonnull (strstr (written, "seconds=\"90\" xmlns:far=\"urn:far\" far:e=\"3\"/>"));
  g_assert_nonnull (strstr (written, "  <!-- first -->\n</programme>\n"));

  again = programme_from_text (written, &error);
  g_assert_no_error (error);
  rewritten = programme_to_text (again);
  g_assert_cmpstr (rewritten, ==, written);
}

typedef struct
{
  const char *old;
  const char *new;
  SwXmlError code;
  long line;
  const char *words; /* part of the message */
} Bad;

static const Bad bad_programmes[] = {
  { "<programme xmlns=\"urn:setwright:programme\"", "<programme xmlns=\"urn:other\"", SW_XML_ERROR_INVALID, 2, "no programme" },
  { "version=\"1\" id=\"0b", "id=\"0b", SW_XML_ERROR_INVALID, 2, "version" },
  { "version=\"1\" id=\"0b", "version=\"0\" id=\"0b", SW_XML_ERROR_RANGE, 2, "version" },
  { "version=\"1\" id=\"0b", "version=\"one\" id=\"0b", SW_XML_ERROR_RANGE, 2, "one" },
  { "id=\"0b6d2a7e-53c4-4f1e-9a08-7c1e5d2f4b63\"", "id=\"../../etc/passwd\"", SW_XML_ERROR_INVALID, 2, "id" },
  { "birth-year=\"1955\"", "birth-year=\"1855\"", SW_XML_ERROR_RANGE, 3, "1855" },
  { "dominant-side=\"right\"", "dominant-side=\"upper\"", SW_XML_ERROR_INVALID, 3, "upper" },
  { "text-points=\"14\"", "text-points=\"200\"", SW_XML_ERROR_RANGE, 3, "200" },
  { "text-points=\"14\"", "text-points=\"nan\"", SW_XML_ERROR_RANGE, 3, "nan" },
  { "language=\"en\"", "language=\"\"", SW_XML_ERROR_INVALID, 3, "language" },
  { "fall-risk\" equip", "fall-risk flying\" equip", SW_XML_ERROR_INVALID, 3, "flying" },
  { "layout=\"compact\"", "layout=\"wide\"", SW_XML_ERROR_INVALID, 11, "wide" },
  { "leave-out=\"key\"", "leave-out=\"lock\"", SW_XML_ERROR_INVALID, 11, "lock" },
  { "kind=\"range\"", "kind=\"mood\"", SW_XML_ERROR_INVALID, 14, "mood" },
  { "kind=\"range\"", "", SW_XML_ERROR_INVALID, 14, "kind" },
  { "movement=\"knee-bend\"", "movement=\"flight\"", SW_XML_ERROR_INVALID, 14, "flight" },
  { "to-deg=\"90\"", "to-deg=\"900\"", SW_XML_ERROR_RANGE, 14, "900" },
  { "kg=\"20\"", "kg=\"-1\"", SW_XML_ERROR_RANGE, 15, "-1" },
  { "precaution=\"knee-replacement\"", "precaution=\"wings\"", SW_XML_ERROR_INVALID, 16, "wings" },
  { "date=\"2026-11-20\" test", "date=\"2026-02-30\" test", SW_XML_ERROR_RANGE, 19, "2026-02-30" },
  { "measure=\"seconds\" rep", "measure=\"years\" rep", SW_XML_ERROR_INVALID, 19, "years" },
  { "repetitions=\"8\" better", "repetitions=\"101\" better", SW_XML_ERROR_RANGE, 19, "101" },
  { "better=\"higher\" left", "better=\"more\" left", SW_XML_ERROR_INVALID, 19, "more" },
  { "max-formula=\"mayhew\"", "max-formula=\"guess\"", SW_XML_ERROR_INVALID, 8, "guess" },
  { "alike-percent=\"15\"", "alike-percent=\"0\"", SW_XML_ERROR_RANGE, 8, "0" },
  { "high-seconds=\"80\"", "high-seconds=\"601\"", SW_XML_ERROR_RANGE, 9, "601" },
  { "kind=\"floor\"", "kind=\"roof\"", SW_XML_ERROR_INVALID, 9, "roof" },
  { "left=\"22\"", "left=\"1e999\"", SW_XML_ERROR_RANGE, 19, "left" },
  { "monday wednesday", "monday someday", SW_XML_ERROR_INVALID, 23, "someday" },
  { "kind=\"warm-up\"", "kind=\"hot\"", SW_XML_ERROR_INVALID, 24, "hot" },
  { "exercise=\"heel-raise-sitting\"", "exercise=\"heel-raise\"", SW_XML_ERROR_INVALID, 25, "heel-raise" },
  { "id=\"i2\"", "id=\"i1\"", SW_XML_ERROR_INVALID, 30, "i1" },
  { "id=\"i2\"", "id=\"\"", SW_XML_ERROR_INVALID, 30, "id" },
  { "<dose sets=\"2\"", "<dose sets=\"-2\"", SW_XML_ERROR_RANGE, 26, "-2" },
  { "<dose sets=\"2\"", "<dose sets=\"2000000000\"", SW_XML_ERROR_RANGE, 26, "2000000000" },
  { "<dose sets=\"2\"", "<dose sets=\"99999999999999999999\"", SW_XML_ERROR_RANGE, 26, "sets" },
  { "<dose sets=\"2\"", "<dose sets=\"2.5\"", SW_XML_ERROR_RANGE, 26, "2.5" },
  { "repetitions=\"8-12\"", "repetitions=\"12-8\"", SW_XML_ERROR_RANGE, 26, "12-8" },
  { "repetitions=\"8-12\"", "repetitions=\"-5\"", SW_XML_ERROR_RANGE, 26, "-5" },
  { "repetitions=\"8-12\"", "repetitions=\"0-12\"", SW_XML_ERROR_RANGE, 26, "0-12" },
  { "tempo=\"2-0-X-1\"", "tempo=\"2-0\"", SW_XML_ERROR_RANGE, 26, "tempo" },
  { "tempo=\"2-0-X-1\"", "tempo=\"2-0-99-1\"", SW_XML_ERROR_RANGE, 26, "tempo" },
  { "load=\"2.5 kg\"", "load=\"-2.5 kg\"", SW_XML_ERROR_RANGE, 26, "-2.5 kg" },
  { "load=\"2.5 kg\"", "load=\"2.5 stone\"", SW_XML_ERROR_RANGE, 26, "stone" },
  { "load=\"2.5 kg\"", "load=\"0x10 kg\"", SW_XML_ERROR_RANGE, 26, "0x10" },
  { "load=\"2.5 kg\"", "load=\"inf kg\"", SW_XML_ERROR_RANGE, 26, "inf" },
  { "load=\"2.5 kg\"", "load=\"501 kg\"", SW_XML_ERROR_RANGE, 26, "501" },
  { " extra-side=\"right\"", "", SW_XML_ERROR_INVALID, 26, "extra-side" },
  { "pain-limit=\"3\"/>\n          <note>", "pain-limit=\"11\"/>\n          <note>", SW_XML_ERROR_RANGE, 26, "11" },
  { "<dose repetitions=\"0\" hold-seconds=\"30\"/>", "", SW_XML_ERROR_INVALID, 34, "dose" },
  { "rounds=\"3\"", "rounds=\"0\"", SW_XML_ERROR_RANGE, 33, "rounds" },
  { "<rest id=\"i6\" seconds=\"20\"/>", "<circuit id=\"i6\"/>", SW_XML_ERROR_INVALID, 37, "circuit" },
  { "seconds=\"90\"", "seconds=\"9000\"", SW_XML_ERROR_RANGE, 30, "9000" },
  { "<clinic name", "<client/><clinic name", SW_XML_ERROR_INVALID, 8, "second" },
  { "finding=\"precaution:fall-risk:i1\"", "", SW_XML_ERROR_INVALID, 55, "finding" },
  { "id=\"heel-raise-sitting\" revision", "id=\"Heel Raise\" revision", SW_XML_ERROR_INVALID, 67, "Heel Raise" },
  { "region=\"ankle\"", "region=\"moon\"", SW_XML_ERROR_INVALID, 68, "moon" },
  { "pace-seconds=\"4\"", "pace-seconds=\"0\"", SW_XML_ERROR_RANGE, 68, "pace-seconds" },
  { "state=\"in-review\"", "state=\"fine\"", SW_XML_ERROR_INVALID, 71, "fine" },
  { "state=\"in-review\" ", "", SW_XML_ERROR_INVALID, 71, "state" },
  { "due=\"2027-05-31\"", "due=\"2027-06-31\"", SW_XML_ERROR_RANGE, 71, "2027-06-31" },
  { "<review state", "<review state=\"draft\"/><review state", SW_XML_ERROR_INVALID, 71, "second" },
  { "<text xml:lang=\"en\">", "<text>", SW_XML_ERROR_INVALID, 75, "xml:lang" },
  { "<name>Heel raise in sitting</name>", "", SW_XML_ERROR_INVALID, 75, "name" },
  { "<pose base=\"sitting\"/>", "<pose base=\"flying\"/>", SW_XML_ERROR_INVALID, 99, "flying" },
  { "sessions=\"3\"", "sessions=\"1\"", SW_XML_ERROR_RANGE, 21, "sessions" },
  { "weeks=\"6\"", "weeks=\"13\"", SW_XML_ERROR_RANGE, 21, "13" },
  { "item=\"gone\"", "item=\"\"", SW_XML_ERROR_INVALID, 52, "item" },
  { "pain-during=\"4\"", "pain-during=\"11\"", SW_XML_ERROR_RANGE, 48, "pain-during" },
  { "pain-during=\"4\"", "pain-during=\"-1\"", SW_XML_ERROR_RANGE, 48, "-1" },
  { "settled=\"no\"", "settled=\"perhaps\"", SW_XML_ERROR_INVALID, 48, "perhaps" },
};

static void
test_bad_programmes (void)
{
  g_autofree char *text = read_case ("gardener.setwright");

  for (guint i = 0; i < G_N_ELEMENTS (bad_programmes); i++)
    {
      const Bad *bad = &bad_programmes[i];
      g_autofree char *broken = replace (text, bad->old, bad->new);
      g_autoptr (GError) error = NULL;

      g_assert_null (programme_from_text (broken, &error));
      g_test_message ("%s", error->message);
      g_assert_error (error, SW_XML_ERROR, (int) bad->code);
      g_assert_cmpint (sw_xml_error_get_line (error), ==, bad->line);
      g_assert_true (g_str_has_prefix (error->message, "client.setwright, line "));
      g_assert_nonnull (strstr (error->message, bad->words));
    }
}

/* Cut off after any line, a programme is refused. */
static void
test_truncated (void)
{
  g_autofree char *text = read_case ("gardener.setwright");

  for (const char *end = strchr (text, '\n'); end != NULL && end[1] != '\0'; end = strchr (end + 1, '\n'))
    {
      g_autofree char *part = g_strndup (text, (gsize) (end - text));
      g_autoptr (GError) error = NULL;

      g_assert_null (programme_from_text (part, &error));
      g_assert_error (error, SW_XML_ERROR, SW_XML_ERROR_MALFORMED);
      g_assert_nonnull (strstr (error->message, "client.setwright~"));
    }
}

/* What a therapist can type, and odder things, all come back. */
static void
test_hard_texts (void)
{
  g_autofree char *ruled = g_strnfill (16 * 1024, '=');
  const char *const texts[] = { "<&>\"'", " spaces \t around ", "two\nlines\n", "\n", "日本語 العربية", "a\rb", "]]>",
                                ruled };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (SwProgramme) programme = sw_programme_new_standard ();
      g_autoptr (SwItem) item = sw_item_new (SW_ITEM_REST, NULL);
      g_autoptr (SwSession) session = g_list_model_get_item (G_LIST_MODEL (sw_programme_get_sessions (programme)), 0);
      g_autoptr (SwSection) section = g_list_model_get_item (G_LIST_MODEL (sw_session_get_sections (session)), 0);
      g_autoptr (SwProgramme) again = NULL;
      g_autoptr (GPtrArray) items = NULL;
      g_autoptr (GError) error = NULL;
      g_autofree char *text = NULL;

      g_object_set (item, "title", texts[i], "note", texts[i], NULL);
      g_list_store_append (sw_section_get_items (section), item);
      g_object_set (sw_programme_get_client (programme), "name", texts[i], "goals", texts[i], NULL);
      text = programme_to_text (programme);
      again = programme_from_text (text, &error);
      g_assert_no_error (error);
      assert_valid (text, "programme.rng");

      items = sw_programme_dup_items (again);
      g_assert_cmpstr (sw_item_get_title (items->pdata[0]), ==, texts[i]);
      g_assert_cmpstr (sw_item_get_note (items->pdata[0]), ==, texts[i]);
      g_assert_cmpstr (sw_client_get_name (sw_programme_get_client (again)), ==, texts[i]);
      g_assert_cmpstr (sw_client_get_goals (sw_programme_get_client (again)), ==, texts[i]);
    }
}

/* Values no reader takes are left out rather than written: what was on the screen can always be opened again. */
static void
test_writer_is_safe (void)
{
  g_autoptr (SwProgramme) programme = sw_programme_new (NULL);
  g_autoptr (SwLimit) limit = sw_limit_new (SW_LIMIT_KIND_SURGERY);
  g_autoptr (SwMeasurement) measurement = sw_measurement_new ("yesterday", "Reach\x01", SW_MEASURE_CENTIMETRES);
  g_autoptr (SwProgramme) again = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;

  g_object_set (sw_programme_get_client (programme), "birth-year", 19, "language", "not a tag", NULL);
  g_object_set (measurement, "left", 1e300, NULL);
  g_object_set (limit, "kg", 1e300, "from-deg", -1e300, "date", "soon", "note", "\x02", NULL);
  g_list_store_append (sw_programme_get_limits (programme), limit);
  g_list_store_append (sw_programme_get_measurements (programme), measurement);
  text = programme_to_text (programme);
  assert_valid (text, "programme.rng");
  again = programme_from_text (text, &error);
  g_assert_no_error (error);
  g_assert_cmpint (sw_client_get_birth_year (sw_programme_get_client (again)), ==, 0);
  g_assert_cmpstr (sw_client_get_language (sw_programme_get_client (again)), ==, "en");
}

static int
pick (GRand *random,
      int    low,
      int    high)
{
  return g_rand_int_range (random, low, high + 1);
}

static void
make_dose (GRand  *random,
           SwDose *dose)
{
  sw_dose_init (dose);
  dose->sets = pick (random, 1, 20);
  dose->reps_low = pick (random, 0, 200);
  dose->reps_high = dose->reps_low == 0 ? 0 : pick (random, dose->reps_low, 200);
  dose->hold_s = pick (random, 0, 600);
  dose->tempo.set = pick (random, 0, 1) == 1;
  if (dose->tempo.set)
    dose->tempo = (SwTempo) { TRUE, pick (random, 0, 60), pick (random, 0, 60), pick (random, -1, 60), pick (random, 0, 60) };
  dose->load.unit = (SwLoadUnit) pick (random, SW_LOAD_NONE, SW_LOAD_NEWTON);
  dose->load.value = dose->load.unit == SW_LOAD_NONE ? 0.0 : pick (random, 0, 500000) / 1000.0;
  dose->rest_s = pick (random, 0, 900);
  dose->side = (SwSide) pick (random, SW_SIDE_BOTH, SW_SIDE_ALTERNATING);
  dose->directions = pick (random, 1, 8);
  dose->extra_sets = pick (random, 0, 10);
  dose->extra_side = dose->extra_sets == 0 ? SW_BODY_SIDE_NONE : (SwBodySide) pick (random, 1, 2);
  dose->days_a_week = pick (random, 0, 7);
  dose->times_a_day = pick (random, 1, 10);
  dose->effort_limit = pick (random, 0, 10);
  dose->pain_limit = pick (random, -1, 10);
}

/* Every dose that passes sw_dose_check() comes back as it was. */
static void
test_doses (void)
{
  guint32 seed = (guint32) g_test_rand_int ();
  GRand *random = g_rand_new_with_seed (seed);
  g_autofree char *text = read_case ("gardener.setwright");
  g_autoptr (SwProgramme) programme = programme_from_text (text, NULL);
  g_autoptr (GPtrArray) items = sw_programme_dup_items (programme);

  g_test_message ("seed %u", seed);
  for (int i = 0; i < 500; i++)
    {
      g_autoptr (SwProgramme) again = NULL;
      g_autoptr (GPtrArray) items_again = NULL;
      g_autoptr (GError) error = NULL;
      g_autofree char *written = NULL;
      SwDose dose;

      make_dose (random, &dose);
      g_assert_true (sw_dose_check (&dose, NULL));
      g_object_set (items->pdata[0], "dose", &dose, NULL);
      written = programme_to_text (programme);
      again = programme_from_text (written, &error);
      g_assert_no_error (error);
      items_again = sw_programme_dup_items (again);
      g_assert_true (sw_dose_equal (sw_item_get_dose (items_again->pdata[0]), &dose));
      if (i % 50 == 0)
        assert_valid (written, "programme.rng");
    }

  g_rand_free (random);
}

static void
test_shipped (void)
{
  g_autofree char *folder = sw_data_path ("catalogue", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_autoptr (GError) error = NULL;
      g_autoptr (GBytes) bytes = sw_file_read (path, SW_XML_MAX_BYTES, &error);
      g_autoptr (SwExercise) exercise = sw_exercise_from_bytes (bytes, name, &error);
      g_autoptr (SwExercise) again = NULL;
      g_autoptr (GBytes) written = NULL;
      g_autoptr (GBytes) rewritten = NULL;
      g_autofree char *text = NULL;

      g_assert_no_error (error);
      written = sw_exercise_to_bytes (exercise);
      g_assert_true (g_bytes_equal (written, bytes));
      text = g_strndup (g_bytes_get_data (written, NULL), g_bytes_get_size (written));
      assert_valid (text, "exercise.rng");
      again = sw_exercise_from_bytes (written, name, &error);
      g_assert_no_error (error);
      g_assert_true (sw_exercise_equal (exercise, again));
      rewritten = sw_exercise_to_bytes (again);
      g_assert_true (g_bytes_equal (written, rewritten));
    }
}

/* The words in the schemas are those of the vocabularies, in the same order. */
static void
assert_words (const char *schema,
              const char *define,
              GType       type)
{
  g_autofree char *path = sw_data_path ("schema", schema, NULL);
  g_autoptr (GBytes) bytes = sw_file_read (path, SW_XML_MAX_BYTES, NULL);
  g_autoptr (xmlDoc) doc = sw_xml_parse_bytes (bytes, schema, NULL);
  const xmlNode *node = xmlDocGetRootElement (doc)->children;
  int n = 0;

  for (; node != NULL; node = node->next)
    {
      g_autofree char *name = node->type == XML_ELEMENT_NODE ? sw_xml_dup_attribute (node, "name") : NULL;

      if (g_strcmp0 (name, define) == 0)
        break;
    }

  g_assert_nonnull (node);
  for (node = xmlFirstElementChild ((xmlNode *) node)->children; node != NULL; node = node->next)
    {
      g_autofree char *word = NULL;

      if (node->type != XML_ELEMENT_NODE)
        continue;
      word = sw_xml_dup_text (node);
      g_assert_cmpstr (word, ==, sw_term_to_nick (type, n));
      n++;
    }
  g_assert_cmpint (n, ==, sw_term_get_n_values (type));
}

static void
test_vocabularies (void)
{
  assert_words ("exercise.rng", "region", SW_TYPE_REGION);
  assert_words ("exercise.rng", "position", SW_TYPE_POSITION);
  assert_words ("exercise.rng", "equipment", SW_TYPE_EQUIPMENT);
  assert_words ("exercise.rng", "aim", SW_TYPE_AIM);
  assert_words ("exercise.rng", "muscle", SW_TYPE_MUSCLE);
  assert_words ("exercise.rng", "side", SW_TYPE_SIDE);
  assert_words ("exercise.rng", "review-state", SW_TYPE_REVIEW_STATE);
  assert_words ("exercise.rng", "direction-kind", SW_TYPE_DIRECTION_KIND);
  assert_words ("exercise.rng", "caution", SW_TYPE_CAUTION);
  assert_words ("exercise.rng", "section-kind", SW_TYPE_SECTION_KIND);
  assert_words ("programme.rng", "one-side", SW_TYPE_BODY_SIDE);
  assert_words ("programme.rng", "precaution", SW_TYPE_PRECAUTION);
  assert_words ("programme.rng", "units", SW_TYPE_UNITS);
  assert_words ("programme.rng", "paper", SW_TYPE_PAPER);
  assert_words ("programme.rng", "company", SW_TYPE_COMPANY);
  assert_words ("programme.rng", "measure", SW_TYPE_MEASURE);
  assert_words ("programme.rng", "better", SW_TYPE_BETTER);
  assert_words ("programme.rng", "limit-kind", SW_TYPE_LIMIT_KIND);
  assert_words ("programme.rng", "movement", SW_TYPE_MOVEMENT);
  assert_words ("programme.rng", "bearing", SW_TYPE_BEARING);
  assert_words ("programme.rng", "day", SW_TYPE_DAY);
}

/* What a schema can see, and a reader too, both refuse. */
static void
test_schema_refuses (void)
{
  static const Bad bad[] = {
    { "sets=\"2\"", "sets=\"0\"", 0, 0, NULL },
    { "kind=\"warm-up\"", "kind=\"hot\"", 0, 0, NULL },
    { "<dose repetitions=\"0\" hold-seconds=\"30\"/>", "", 0, 0, NULL },
    { " extra-side=\"right\"", "", 0, 0, NULL },
    { "region=\"ankle\"", "region=\"moon\"", 0, 0, NULL },
  };
  g_autofree char *text = read_case ("gardener.setwright");
  g_autoptr (GBytes) good = g_bytes_new (text, strlen (text));
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) none = sw_schema_check (good, "client.setwright", "programme.rng", &error);

  g_assert_no_error (error);
  g_assert_cmpuint (none->len, ==, 0);
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autofree char *broken = replace (text, bad[i].old, bad[i].new);
      g_autoptr (GBytes) bytes = g_bytes_new (broken, strlen (broken));
      g_autoptr (GPtrArray) problems = sw_schema_check (bytes, "client.setwright", "programme.rng", &error);

      g_assert_no_error (error);
      g_assert_cmpuint (problems->len, >, 0);
      g_assert_null (programme_from_text (broken, NULL));
    }
}

static void
test_find_line (void)
{
  g_autofree char *text = read_case ("gardener.setwright");
  g_autoptr (GBytes) bytes = g_bytes_new (text, strlen (text));

  g_assert_cmpint (sw_programme_find_line (bytes, "i1"), ==, 25);
  g_assert_cmpint (sw_programme_find_line (bytes, "i7"), ==, 38);
  g_assert_cmpint (sw_programme_find_line (bytes, "heel-raise-sitting"), ==, 0);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_data_func ("/store/documents/round-trip", "gardener.setwright", test_round_trip);
  g_test_add_data_func ("/store/documents/newer", "newer.setwright", test_round_trip);
  g_test_add_func ("/store/documents/values", test_values);
  g_test_add_func ("/store/documents/edit-keeps-unknown", test_edit_keeps_unknown);
  g_test_add_func ("/store/documents/namespaces", test_namespaces);
  g_test_add_func ("/store/documents/bad", test_bad_programmes);
  g_test_add_func ("/store/documents/truncated", test_truncated);
  g_test_add_func ("/store/documents/hard-texts", test_hard_texts);
  g_test_add_func ("/store/documents/writer-is-safe", test_writer_is_safe);
  g_test_add_func ("/store/documents/doses", test_doses);
  g_test_add_func ("/store/documents/shipped", test_shipped);
  g_test_add_func ("/store/documents/vocabularies", test_vocabularies);
  g_test_add_func ("/store/documents/schema-refuses", test_schema_refuses);
  g_test_add_func ("/store/documents/find-line", test_find_line);
  return g_test_run ();
}
