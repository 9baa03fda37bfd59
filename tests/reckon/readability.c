/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How hard a programme is to read in its own language, which sentences make it so, and where they stand. */
#include "config.h"

#include <string.h>

#include "sample.h"
#include "sw-finding.h"
#include "sw-numbers.h"
#include "sw-readability-working.h"

#define HARD_ENGLISH "Maintaining lumbopelvic stability necessitates considerable neuromuscular coordination."

typedef struct
{
  SwProgramme *programme;
  SwSection *section;
} Fixture;

static void
set_up (Fixture       *fixture,
        gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (SwSession) session = sw_session_new ("Morning", SW_SET (SW_DAY_MONDAY));

  fixture->programme = sw_programme_new (NULL);
  g_list_store_append (sw_programme_get_sessions (fixture->programme), session);
  fixture->section = sample_section (session, SW_SECTION_MAIN);
}

static void
tear_down (Fixture       *fixture,
           gconstpointer  data G_GNUC_UNUSED)
{
  g_assert_finalize_object (fixture->programme);
}

static void
set_language (Fixture    *fixture,
              const char *language)
{
  g_object_set (sw_programme_get_client (fixture->programme), "language", language, NULL);
}

static SwExerciseText *
new_text (const char *language,
          const char *purpose,
          const char *first_step,
          const char *second_step)
{
  SwExerciseText *text = sw_exercise_text_new (language);

  g_free (text->name);
  text->name = g_strdup ("Bridge");
  g_free (text->purpose);
  text->purpose = g_strdup (purpose);
  g_strfreev (text->steps);
  text->steps = g_strdupv ((char *[]) { (char *) first_step, (char *) second_step, NULL });
  return text;
}

/* Takes over @text; the item's id is the exercise's. */
static SwItem *
add_exercise (Fixture        *fixture,
              const char     *id,
              SwExerciseText *text)
{
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_exercise_text_free);
  g_autoptr (SwExercise) exercise = NULL;
  SwExerciseFacts facts;
  SwItem *item;

  sample_facts_init (&facts, id);
  facts.dose.reps_low = facts.dose.reps_high = 10;
  g_ptr_array_add (texts, text);
  exercise = sw_exercise_new (&facts, texts, NULL, NULL);
  item = sw_item_new_for_exercise (exercise, id);
  sample_append (fixture->section, item);
  return item;
}

static const SwReadabilitySentence *
sentence_at (const SwReadabilityReport *report,
             guint                      i)
{
  return report->sentences->pdata[i];
}

static void
assert_described (const char *language,
                  double      value,
                  const char *words)
{
  g_autofree char *described = sw_readability_scale_describe (sw_readability_scale_get (language), value);

  g_assert_cmpstr (described, ==, words);
}

static void
test_scales (void)
{
  g_assert_null (sw_readability_scale_get (NULL));
  g_assert_null (sw_readability_scale_get (""));
  g_assert_null (sw_readability_scale_get ("ja"));
  g_assert_null (sw_readability_scale_get ("zh-Hant"));
  g_assert_true (sw_readability_scale_get ("es-MX") == sw_readability_scale_get ("ES"));
  g_assert_true (sw_readability_scale_get ("de_AT") == sw_readability_scale_get ("de"));
  g_assert_true (sw_readability_scale_get ("fr") == sw_readability_scale_get ("pl"));
  g_assert_true (sw_readability_scale_get ("est") != sw_readability_scale_get ("es"));

  assert_described ("en", 0.4, "school grade below 1 (Flesch-Kincaid)");
  assert_described ("en", 4.26, "school grade 4.3 (Flesch-Kincaid)");
  assert_described ("es", 80.0, "80.0 of 100 points, very easy (Szigriszt-Pazos, INFLESZ)");
  assert_described ("es", 65.0, "65.0 of 100 points, fairly easy (Szigriszt-Pazos, INFLESZ)");
  assert_described ("es", 55.0, "55.0 of 100 points, normal (Szigriszt-Pazos, INFLESZ)");
  assert_described ("es", 40.0, "40.0 of 100 points, hard (Szigriszt-Pazos, INFLESZ)");
  assert_described ("es", 39.9, "39.9 of 100 points, very hard (Szigriszt-Pazos, INFLESZ)");
  assert_described ("es", -12.0, "below 0 of 100 points, very hard (Szigriszt-Pazos, INFLESZ)");
  assert_described ("de", 3.9, "school year below 4 (first Wiener Sachtextformel)");
  assert_described ("de", 15.2, "school year above 15 (first Wiener Sachtextformel)");
  assert_described ("fr", 9.04, "9.0 words a sentence (no accepted formula known for this language)");
}

/* The aim itself is not hard yet. */
static void
test_aims (void)
{
  const struct
  {
    const char *language;
    double aim, harder;
    const char *words;
  } cases[] = {
    { "en", 6.0, 6.1, "aim: 6 or below" },
    { "es", 65.0, 64.9, "aim: 65 or above" },
    { "de", 6.0, 6.1, "aim: 6 or below" },
    { "tr", 15.0, 15.1, "aim: 15 or below" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const SwReadabilityScale *scale = sw_readability_scale_get (cases[i].language);
      g_autofree char *words = sw_readability_scale_describe_aim (scale);

      g_assert_false (sw_readability_scale_is_hard (scale, cases[i].aim));
      g_assert_true (sw_readability_scale_is_hard (scale, cases[i].harder));
      g_assert_cmpstr (words, ==, cases[i].words);
      g_assert_cmpuint (strlen (sw_readability_scale_get_source (scale)), >, 40);
    }
}

/* By leaving out: in the mean of 12 and 4 words a sentence of one syllable each, the longer adds 4 x 0.39, and the
 * shorter takes as much off. */
static void
test_adds (void)
{
  g_autoptr (SwExerciseText) text
      = new_text ("en", "You lift your foot and then let it go back down now.", "Lift your left foot.", NULL);
  g_autoptr (SwReadabilityReport) report = sw_readability_report_new_for_text (text);
  g_auto (GStrv) hardest = sw_readability_report_dup_hardest (report);

  g_assert_cmpuint (report->counts.sentences, ==, 2);
  g_assert_cmpuint (report->counts.words, ==, 16);
  g_assert_cmpuint (report->counts.syllables, ==, 16);
  g_assert_cmpfloat_with_epsilon (report->value, 0.39 * 8 + 11.8 - 15.59, 1e-9);
  g_assert_cmpfloat_with_epsilon (sentence_at (report, 0)->adds, 4 * 0.39, 1e-9);
  g_assert_cmpfloat_with_epsilon (sentence_at (report, 1)->adds, -4 * 0.39, 1e-9);
  g_assert_cmpuint (g_strv_length (hardest), ==, 1);
  g_assert_cmpstr (hardest[0], ==, "“You lift your foot and then let it go back down now.” (what it is for)");
}

static void
test_places (Fixture       *fixture,
             gconstpointer  data G_GNUC_UNUSED)
{
  SwItem *first = add_exercise (fixture, "first", new_text ("en", "It makes you strong.", "Lie down.", HARD_ENGLISH));
  SwItem *rest = sw_item_new (SW_ITEM_REST, "rest");
  g_autoptr (SwReadabilityReport) report = NULL;
  g_auto (GStrv) hardest = NULL;

  g_object_set (first, "note", "Sit. Subsequently discontinue the activity.", NULL);
  g_object_set (rest, "note", "Drink.", NULL);
  sample_append (fixture->section, rest);
  /* The same exercise again is read once. */
  sample_append (fixture->section, sw_item_new_for_exercise (sw_item_get_exercise (first), "again"));

  report = sw_readability_report_new_for_programme (fixture->programme);
  hardest = sw_readability_report_dup_hardest (report);
  g_assert_cmpuint (report->counts.sentences, ==, 6);
  g_assert_cmpuint (sw_readability_report_get_n_hardest (report), ==, 2);
  g_assert_cmpstr (hardest[0], ==, "“" HARD_ENGLISH "” (Bridge, step 2)");
  g_assert_cmpstr (hardest[1], ==, "“Subsequently discontinue the activity.” (Bridge, note to the client)");
  g_assert_true (sentence_at (report, 0)->item == first);
  g_assert_cmpint (sentence_at (report, 0)->field, ==, SW_READABILITY_STEP);
  g_assert_cmpuint (sentence_at (report, 0)->number, ==, 2);
}

/* Only what is written in the client's language is read. */
static void
test_other_language (Fixture       *fixture,
                     gconstpointer  data G_GNUC_UNUSED)
{
  SwReadabilityReport *report;

  add_exercise (fixture, "first", new_text ("en", HARD_ENGLISH, "Sit.", NULL));
  set_language (fixture, "es");
  g_assert_null (sw_readability_report_new_for_programme (fixture->programme));

  add_exercise (fixture, "second", new_text ("es-MX", "Esto le da fuerza.", "Siéntese.", NULL));
  report = sw_readability_report_new_for_programme (fixture->programme);
  g_assert_cmpuint (report->n_other, ==, 1);
  g_assert_cmpuint (report->counts.sentences, ==, 2);
  g_assert_cmpuint (report->counts.syllables, ==, 9);
  g_assert_false (sw_readability_report_is_hard (report));
  sw_readability_report_free (report);

  set_language (fixture, "ja");
  g_assert_null (sw_readability_report_new_for_programme (fixture->programme));
}

static const SwFinding *
find_reading (GPtrArray *findings)
{
  const SwFinding *reading = NULL;

  for (guint i = 0; i < findings->len; i++)
    {
      const SwFinding *finding = findings->pdata[i];

      if (g_str_has_prefix (finding->key, "reading:"))
        {
          g_assert_null (reading);
          reading = finding;
        }
    }

  return reading;
}

static void
assert_finding (Fixture    *fixture,
                const char *key,
                const char *text,
                const char *detail)
{
  g_autoptr (GPtrArray) findings = sw_findings_collect (fixture->programme, NULL, "2026-11-25");
  const SwFinding *finding = find_reading (findings);

  g_assert_nonnull (finding);
  g_assert_cmpint (finding->level, ==, SW_FINDING_ASK);
  g_assert_cmpstr (finding->key, ==, key);
  g_assert_cmpstr (finding->text, ==, text);
  g_assert_cmpstr (finding->details[0], ==, detail);
  g_assert_cmpint (finding->fix, ==, SW_FIX_SHOW_ITEM);
  g_assert_nonnull (finding->item);
}

/* 28 syllables in 8 words of one sentence, and 3 in 2 words of another: 206.835 - 62.3 x 31/10 - 10/2. */
static void
test_finding_spanish (Fixture       *fixture,
                      gconstpointer  data G_GNUC_UNUSED)
{
  set_language (fixture, "es");
  add_exercise (fixture, "hard",
                new_text ("es", "La recuperación funcional progresiva persigue la estabilización neuromuscular.",
                          "Pare ya.", NULL));
  assert_finding (fixture, "reading:szigriszt-pazos:9",
                  "The handout is hard to read: 8.7 of 100 points, very hard (Szigriszt-Pazos, INFLESZ); aim: 65 or "
                  "above.",
                  "“La recuperación funcional progresiva persigue la estabilización neuromuscular.” (Bridge, what it "
                  "is for)");
}

/* Of 8 words in two sentences 5 have three syllables or more, the same 5 are long, and 1 has one syllable:
 * 0.1935 x 62.5 + 0.1672 x 4 + 0.1297 x 62.5 - 0.0327 x 12.5 - 0.875 = 19.6. */
static void
test_finding_german (Fixture       *fixture,
                     gconstpointer  data G_GNUC_UNUSED)
{
  set_language (fixture, "de");
  add_exercise (fixture, "hard",
                new_text ("de", "Regelmäßiges Wiederholen verbessert die Beweglichkeit wesentlich.", "Bitte sitzen.",
                          NULL));
  assert_finding (fixture, "reading:wiener-sachtext-1:20",
                  "The handout is hard to read: school year above 15 (first Wiener Sachtextformel); aim: 6 or below.",
                  "“Regelmäßiges Wiederholen verbessert die Beweglichkeit wesentlich.” (Bridge, what it is for)");
}

/* Where all is easy to read but one exercise, that one is found. */
static void
test_finding_exercise (Fixture       *fixture,
                       gconstpointer  data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) findings = NULL;

  for (guint i = 0; i < 9; i++)
    {
      g_autofree char *id = g_strdup_printf ("easy-%u", i);

      add_exercise (fixture, id, new_text ("en", "You get strong.", "Lie on your back.", "Lift your leg up."));
    }
  findings = sw_findings_collect (fixture->programme, NULL, "2026-11-25");
  g_assert_null (find_reading (findings));

  add_exercise (fixture, "hard", new_text ("en", "You get strong.", HARD_ENGLISH, NULL));
  assert_finding (fixture, "reading:hard:flesch-kincaid:25",
                  "“Bridge” is hard to read: school grade 25.3 (Flesch-Kincaid); aim: 6 or below.",
                  "“" HARD_ENGLISH "” (Bridge, step 1)");
}

/* What the therapist wrote may name the client, and is not quoted. */
static void
test_numbers (Fixture       *fixture,
              gconstpointer  data G_GNUC_UNUSED)
{
  SwItem *item = add_exercise (fixture, "hard", new_text ("en", HARD_ENGLISH, "Sit.", NULL));
  g_autofree char *json = NULL;

  g_object_set (item, "note", "Considerable neuromuscular coordination necessitates Greta.", NULL);
  json = sw_numbers_to_json (fixture->programme, NULL, "2026-11-25");
  g_assert_nonnull (strstr (json, "\"value-school-grade\" : "));
  g_assert_nonnull (strstr (json, "\"aim-school-grade\" : 6.0"));
  g_assert_nonnull (strstr (json, "\"scale\" : \"flesch-kincaid\""));
  g_assert_nonnull (strstr (json, "\"sentence\" : \"" HARD_ENGLISH "\""));
  g_assert_nonnull (strstr (json, "\"field\" : \"note\""));
  g_assert_null (strstr (json, "Greta"));
}

/* What the window and sw_numbers_to_json() tell is what was reckoned, for each formula. */
static void
test_working (void)
{
  static const struct
  {
    const char *language;
    const char *text;
    guint n_lines;
  } cases[] = {
    { "en", "Lift your heel. Hold it for a moment and lower it slowly.", 5 },
    { "es", "Levante el talón. Manténgalo un momento.", 4 },
    { "de", "Heben Sie die Ferse. Halten Sie kurz.", 4 },
    { "pl", "Unieś piętę. Przytrzymaj chwilę.", 2 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (SwExerciseText) text = sw_exercise_text_new (cases[i].language);
      g_autoptr (SwReadabilityReport) report = NULL;
      g_autoptr (SwWorking) working = NULL;
      g_autofree char *result = NULL;

      g_free (text->purpose);
      text->purpose = g_strdup (cases[i].text);
      report = sw_readability_report_new_for_text (text);
      working = sw_readability_working (report);
      g_assert_cmpuint (sw_working_get_n_lines (working), ==, cases[i].n_lines);
      result = g_strdup_printf (report->scale->language != NULL ? " = %.1f" : " = %.2f", report->value);
      g_assert_true (g_str_has_suffix (sw_working_get_line (working, cases[i].n_lines > 3 ? 2 : 0)->figures, result));
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

#define ADD(name, function) g_test_add ("/readability/" name, Fixture, NULL, set_up, function, tear_down)
  g_test_add_func ("/readability/scales", test_scales);
  g_test_add_func ("/readability/aims", test_aims);
  g_test_add_func ("/readability/adds", test_adds);
  ADD ("places", test_places);
  ADD ("other-language", test_other_language);
  ADD ("finding/spanish", test_finding_spanish);
  ADD ("finding/german", test_finding_german);
  ADD ("finding/exercise", test_finding_exercise);
  ADD ("numbers", test_numbers);
  g_test_add_func ("/readability/working", test_working);
  return g_test_run ();
}
