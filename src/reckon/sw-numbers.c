/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Everything reckoned about a programme, as JSON with the units in the names. No word of the client's
 * person is in it. */
#include "config.h"

#include <math.h>

#include <json-glib/json-glib.h>

#include "sw-arrangement.h"
#include "sw-balance.h"
#include "sw-course.h"
#include "sw-finding.h"
#include "sw-limit-name.h"
#include "sw-numbers-private.h"
#include "sw-numbers.h"
#include "sw-readability-working.h"
#include "sw-starting-load.h"
#include "sw-time-working.h"
#include "sw-time.h"
#include "sw-units.h"
#include "sw-volume.h"

/* "length" becomes "length-low-seconds" and "length-high-seconds". */
static void
add_span (JsonBuilder *builder,
          const char  *name,
          SwSpan       span)
{
  g_autofree char *low = g_strconcat (name, "-low-seconds", NULL);
  g_autofree char *high = g_strconcat (name, "-high-seconds", NULL);

  add_double (builder, low, span.low_s);
  add_double (builder, high, span.high_s);
}

static void
add_dose (JsonBuilder *builder,
          SwItem      *item,
          SwSession   *session,
          int          rounds)
{
  const SwDose *dose = sw_item_get_dose (item);
  g_autofree char *line = sw_dose_to_line (dose);
  int left = sw_dose_get_sets_for (dose, SW_BODY_SIDE_LEFT);
  int right = sw_dose_get_sets_for (dose, SW_BODY_SIDE_RIGHT);
  int days = dose->days_a_week > 0 ? dose->days_a_week : sw_session_get_n_days (session);
  int times = days * dose->times_a_day * rounds;
  double kg = sw_load_to_kg (dose->load);

  add_string (builder, "dose-line", line);
  add_int (builder, "sets-left", left);
  add_int (builder, "sets-right", right);
  add_int (builder, "repetitions-low-in-a-set", dose->reps_low);
  add_int (builder, "repetitions-high-in-a-set", dose->reps_high);
  add_int (builder, "hold-seconds", dose->hold_s);
  add_int (builder, "rest-seconds", dose->rest_s);
  add_double (builder, "load-kilograms", kg);
  add_double (builder, "load-pounds", sw_lb_from_kg (kg));
  add_int (builder, "days-a-week", days);
  add_int (builder, "times-a-day", dose->times_a_day);
  add_int (builder, "sets-a-week-left", (gint64) left * times);
  add_int (builder, "sets-a-week-right", (gint64) right * times);
  add_int (builder, "repetitions-low-a-week-left", (gint64) left * times * dose->reps_low * dose->directions);
  add_int (builder, "repetitions-high-a-week-left", (gint64) left * times * dose->reps_high * dose->directions);
  add_int (builder, "repetitions-low-a-week-right", (gint64) right * times * dose->reps_low * dose->directions);
  add_int (builder, "repetitions-high-a-week-right", (gint64) right * times * dose->reps_high * dose->directions);
}

static void
add_starting_load (JsonBuilder   *builder,
                   SwProgramme   *programme,
                   SwItem        *item,
                   SwMeasurement *measurement)
{
  g_auto (SwStartingLoadQuestion) question = { 0 };
  g_autoptr (SwStartingLoad) answer = NULL;

  sw_starting_load_question_init (&question, programme, item);
  if (!sw_course_get_load (measurement, &question.tested))
    return;

  question.tested_repetitions = sw_measurement_get_repetitions (measurement);
  answer = sw_starting_load_new (&question);
  json_builder_set_member_name (builder, "starting-load");
  json_builder_begin_object (builder);
  add_string (builder, "formula", sw_term_to_nick (SW_TYPE_MAX_FORMULA, (int) question.formula));
  if (answer->refusal != NULL)
    add_string (builder, "refusal", answer->refusal);
  if (!isnan (answer->one_max_kg))
    {
      add_double (builder, "one-maximum-kilograms", answer->one_max_kg);
      add_double (builder, "one-maximum-least-kilograms", answer->one_max_low_kg);
      add_double (builder, "one-maximum-most-kilograms", answer->one_max_high_kg);
      add_double (builder, "percent-of-one-maximum", answer->percent);
      add_double (builder, "wanted-kilograms", answer->wanted_kg);
      add_double (builder, "wanted-least-kilograms", answer->low_kg);
      add_double (builder, "wanted-most-kilograms", answer->high_kg);
      add_double (builder, "kilograms", sw_load_to_kg (answer->load));
    }
  add_working (builder, answer->working);
  json_builder_end_object (builder);
}

/* The values only: what the therapist calls the test may be about the client's person. */
static void
add_sides (JsonBuilder *builder,
           SwProgramme *programme,
           const char  *test)
{
  g_autoptr (GPtrArray) course = sw_course_collect (programme, test);
  int alike_percent = sw_clinic_get_alike_percent (sw_programme_get_clinic (programme));
  SwMeasurement *latest = g_ptr_array_index (course, course->len - 1);
  SwSymmetry symmetry;
  g_autoptr (SwWorking) working = NULL;

  if (!sw_course_compare (latest, &symmetry))
    return;

  working = sw_course_explain (latest, alike_percent,
                               sw_client_get_dominant_side (sw_programme_get_client (programme)));
  json_builder_set_member_name (builder, "sides");
  json_builder_begin_object (builder);
  add_string (builder, "measure", sw_term_to_nick (SW_TYPE_MEASURE, (int) sw_measurement_get_measure (latest)));
  add_string (builder, "lesser-side", sw_term_to_nick (SW_TYPE_BODY_SIDE, (int) symmetry.lesser));
  add_double (builder, "symmetry-index-percent", symmetry.index_percent);
  add_double (builder, "difference-percent", symmetry.difference_percent);
  add_int (builder, "alike-percent", alike_percent);
  json_builder_set_member_name (builder, "visits");
  json_builder_begin_array (builder);
  for (guint i = 0; i < course->len; i++)
    {
      SwMeasurement *visit = g_ptr_array_index (course, i);

      if (!sw_course_compare (visit, &symmetry))
        continue;
      json_builder_begin_object (builder);
      add_double (builder, "left", sw_measurement_get_left (visit));
      add_double (builder, "right", sw_measurement_get_right (visit));
      add_double (builder, "symmetry-index-percent", symmetry.index_percent);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
  add_working (builder, working);
  json_builder_end_object (builder);
}

static void
add_test (JsonBuilder *builder,
          SwProgramme *programme,
          SwItem      *item)
{
  SwMeasurement *latest = sw_course_find_latest (programme, sw_item_get_test (item));

  if (latest == NULL)
    return;

  add_starting_load (builder, programme, item, latest);
  add_sides (builder, programme, sw_item_get_test (item));
}

static void
add_entry (JsonBuilder        *builder,
           SwProgramme        *programme,
           const SwClockEntry *entry,
           SwSession          *session)
{
  SwClinic *clinic = sw_programme_get_clinic (programme);
  g_autofree char *name = sw_item_dup_name (entry->item, NULL);
  g_autoptr (SwWorking) working = sw_time_working_of_item (entry->item, clinic);

  json_builder_begin_object (builder);
  add_string (builder, "id", sw_item_get_id (entry->item));
  add_string (builder, "kind", sw_term_to_nick (SW_TYPE_ITEM_KIND, (int) sw_item_get_kind (entry->item)));
  if (entry->circuit != NULL)
    add_string (builder, "circuit", sw_item_get_id (entry->circuit));
  if (sw_item_get_exercise (entry->item) != NULL)
    add_string (builder, "exercise", sw_exercise_get_id (sw_item_get_exercise (entry->item)));
  add_string (builder, "name", name);
  add_string (builder, "position", sw_term_to_nick (SW_TYPE_POSITION, (int) entry->position));
  add_span (builder, "start", entry->start);
  add_span (builder, "change", entry->change);
  add_span (builder, "length", entry->length);
  if (entry->apart)
    {
      json_builder_set_member_name (builder, "counted-in-a-usual-day");
      json_builder_add_boolean_value (builder, FALSE);
    }
  if (sw_item_get_kind (entry->item) == SW_ITEM_EXERCISE)
    {
      add_dose (builder, entry->item, session, entry->circuit != NULL ? sw_item_get_rounds (entry->circuit) : 1);
      add_test (builder, programme, entry->item);
    }
  if (sw_item_get_kind (entry->item) == SW_ITEM_CIRCUIT)
    {
      add_int (builder, "rounds", sw_item_get_rounds (entry->item));
      add_int (builder, "rest-between-rounds-seconds", sw_item_get_rest_s (entry->item));
    }
  add_working (builder, working);
  json_builder_end_object (builder);
}

/* What "Arrange" would save. */
static void
add_arrangement (JsonBuilder *builder,
                 SwSession   *session,
                 SwClinic    *clinic)
{
  g_autoptr (SwArrangement) found = sw_arrangement_new (session, clinic);

  json_builder_set_member_name (builder, "arranged");
  json_builder_begin_object (builder);
  add_span (builder, "changes", found->before);
  add_span (builder, "least-changes", found->after);
  add_int (builder, "same-small-muscles-in-a-row", found->together_before);
  add_int (builder, "least-in-a-row", found->together_after);
  add_double (builder, "seconds-less-without-kept-places",
              sw_arrangement_cost_of (session, clinic, SW_ARRANGEMENT_FREE_PLACES));
  add_double (builder, "seconds-less-without-what-comes-after",
              sw_arrangement_cost_of (session, clinic, SW_ARRANGEMENT_FREE_AFTER));
  add_double (builder, "seconds-less-without-small-muscles-apart",
              sw_arrangement_cost_of (session, clinic, SW_ARRANGEMENT_FREE_MUSCLES));
  json_builder_set_member_name (builder, "exact");
  json_builder_add_boolean_value (builder, found->exact);
  json_builder_set_member_name (builder, "order");
  json_builder_begin_array (builder);
  for (guint i = 0; i < found->sections->len; i++)
    {
      GPtrArray *items = found->sections->pdata[i];

      json_builder_begin_array (builder);
      for (guint k = 0; k < items->len; k++)
        json_builder_add_string_value (builder, sw_item_get_id (items->pdata[k]));
      json_builder_end_array (builder);
    }
  json_builder_end_array (builder);
  json_builder_end_object (builder);
}

static void
add_session (JsonBuilder *builder,
             SwProgramme *programme,
             SwSession   *session,
             SwSpan      *week)
{
  SwClinic *clinic = sw_programme_get_clinic (programme);
  g_autoptr (SwClock) clock = sw_clock_new (session, clinic);
  g_autoptr (SwWorking) working = sw_time_working_of_session (session, clinic);
  int n_days = sw_session_get_n_days (session);

  week->low_s += clock->total.low_s * n_days;
  week->high_s += clock->total.high_s * n_days;

  json_builder_begin_object (builder);
  add_string (builder, "title", sw_session_get_title (session));
  add_int (builder, "days-a-week", n_days);
  add_span (builder, "length", clock->total);
  add_span (builder, "self-checks", clock->checks);
  add_int (builder, "changes-of-position", clock->n_changes);
  add_double (builder, "changes-of-position-seconds", clock->change_s);
  add_working (builder, working);
  json_builder_set_member_name (builder, "items");
  json_builder_begin_array (builder);
  for (guint i = 0; i < clock->entries->len; i++)
    add_entry (builder, programme, &g_array_index (clock->entries, SwClockEntry, i), session);
  json_builder_end_array (builder);
  add_arrangement (builder, session, clinic);
  json_builder_end_object (builder);
}

/* "positions": { "sitting-sets": 3 } */
static void
add_balance (JsonBuilder *builder,
             SwProgramme *programme,
             SwBalance    balance)
{
  g_autoptr (GArray) parts = sw_balance_of_week (programme, balance);

  json_builder_set_member_name (builder, sw_term_to_nick (SW_TYPE_BALANCE, (int) balance));
  json_builder_begin_object (builder);
  for (guint i = 0; i < parts->len; i++)
    {
      const SwBalancePart *part = &g_array_index (parts, SwBalancePart, i);
      g_autofree char *name = g_strconcat (part->key, "-sets", NULL);

      add_double (builder, name, part->sets);
    }
  json_builder_end_object (builder);
}

static void
add_week (JsonBuilder *builder,
          SwProgramme *programme,
          SwSpan       week)
{
  g_autoptr (GArray) volumes = sw_volume_of_week (programme);

  json_builder_set_member_name (builder, "week");
  json_builder_begin_object (builder);
  add_span (builder, "sessions", week);
  json_builder_set_member_name (builder, "muscles");
  json_builder_begin_array (builder);
  for (guint i = 0; i < volumes->len; i++)
    {
      const SwVolume *volume = &g_array_index (volumes, SwVolume, i);

      json_builder_begin_object (builder);
      add_string (builder, "muscle", sw_term_to_nick (SW_TYPE_MUSCLE, (int) volume->muscle));
      add_double (builder, "sets-left", volume->sets_left);
      add_double (builder, "sets-right", volume->sets_right);
      add_double (builder, "strength-sets-left", volume->strength_left);
      add_double (builder, "strength-sets-right", volume->strength_right);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
  for (int balance = 0; balance < sw_term_get_n_values (SW_TYPE_BALANCE); balance++)
    add_balance (builder, programme, (SwBalance) balance);
  json_builder_end_object (builder);
}

static void
add_stated (JsonBuilder *builder,
            const char  *name,
            double       value)
{
  if (!isnan (value))
    add_double (builder, name, value);
}

/* Days are counted only from a day that was entered. */
static void
add_limit (JsonBuilder *builder,
           SwLimit     *limit,
           const char  *today)
{
  int n_days;

  json_builder_begin_object (builder);
  add_string (builder, "kind", sw_term_to_nick (SW_TYPE_LIMIT_KIND, (int) sw_limit_get_kind (limit)));
  add_string (builder, "side", sw_term_to_nick (SW_TYPE_BODY_SIDE, (int) sw_limit_get_side (limit)));
  switch (sw_limit_get_kind (limit))
    {
    case SW_LIMIT_KIND_LOAD:
      add_string (builder, "region", sw_term_to_nick (SW_TYPE_REGION, (int) sw_limit_get_region (limit)));
      add_stated (builder, "most-kg", sw_limit_get_kg (limit));
      break;
    case SW_LIMIT_KIND_RANGE:
      add_string (builder, "movement", sw_term_to_nick (SW_TYPE_MOVEMENT, (int) sw_limit_get_movement (limit)));
      add_stated (builder, "from-degrees", sw_limit_get_from_deg (limit));
      add_stated (builder, "to-degrees", sw_limit_get_to_deg (limit));
      break;
    case SW_LIMIT_KIND_WEIGHT_BEARING:
      add_string (builder, "bearing", sw_term_to_nick (SW_TYPE_BEARING, (int) sw_limit_get_bearing (limit)));
      if (sw_limit_get_bearing (limit) == SW_BEARING_PART)
        add_stated (builder, "most-kg", sw_limit_get_kg (limit));
      break;
    case SW_LIMIT_KIND_SURGERY:
    default:
      if (sw_limit_count_days (sw_limit_get_date (limit), today, &n_days))
        add_int (builder, "days-since", n_days);
      break;
    }
  json_builder_end_object (builder);
}

static void
add_limits (JsonBuilder *builder,
            SwProgramme *programme,
            const char  *today)
{
  GListModel *limits = G_LIST_MODEL (sw_programme_get_limits (programme));

  json_builder_set_member_name (builder, "limits");
  json_builder_begin_array (builder);
  for (guint i = 0; i < g_list_model_get_n_items (limits); i++)
    {
      g_autoptr (SwLimit) limit = g_list_model_get_item (limits, i);

      add_limit (builder, limit, today);
    }
  json_builder_end_array (builder);
}

static void
add_findings (JsonBuilder *builder,
              SwProgramme *programme,
              SwCatalogue *catalogue,
              const char  *today)
{
  g_autoptr (GPtrArray) findings = sw_findings_collect (programme, catalogue, today);

  json_builder_set_member_name (builder, "findings");
  json_builder_begin_array (builder);
  for (guint i = 0; i < findings->len; i++)
    {
      const SwFinding *finding = g_ptr_array_index (findings, i);

      json_builder_begin_object (builder);
      add_string (builder, "level", sw_term_to_nick (SW_TYPE_FINDING_LEVEL, (int) finding->level));
      add_string (builder, "key", finding->key);
      json_builder_set_member_name (builder, "answered");
      json_builder_add_boolean_value (builder, finding->answer != NULL);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

/* What stands in an exercise is quoted; the therapist's own words may be about the client's person, and are not. */
static void
add_sentence (JsonBuilder                 *builder,
              const SwReadabilitySentence *sentence,
              const char                  *unit)
{
  SwExercise *exercise = sw_item_get_exercise (sentence->item);
  g_autofree char *adds = g_strconcat ("adds-", unit, NULL);

  json_builder_begin_object (builder);
  add_string (builder, "item", sw_item_get_id (sentence->item));
  if (exercise != NULL)
    add_string (builder, "exercise", sw_exercise_get_id (exercise));
  add_string (builder, "field", sw_term_to_nick (SW_TYPE_READABILITY_FIELD, (int) sentence->field));
  if (sentence->number > 0)
    add_int (builder, "number", sentence->number);
  if (sentence->field != SW_READABILITY_NOTE && sentence->field != SW_READABILITY_QUESTION)
    add_string (builder, "sentence", sentence->text);
  add_int (builder, "words", sentence->counts.words);
  add_int (builder, "syllables", sentence->counts.syllables);
  add_double (builder, adds, sentence->adds);
  json_builder_end_object (builder);
}

static void
add_reading (JsonBuilder *builder,
             SwProgramme *programme)
{
  g_autoptr (SwReadabilityReport) report = sw_readability_report_new_for_programme (programme);
  g_autoptr (SwWorking) working = NULL;
  g_autofree char *value = NULL;
  g_autofree char *aim = NULL;

  if (report == NULL)
    return;

  value = g_strconcat ("value-", report->scale->unit, NULL);
  aim = g_strconcat ("aim-", report->scale->unit, NULL);
  json_builder_set_member_name (builder, "reading");
  json_builder_begin_object (builder);
  add_string (builder, "language", sw_client_get_language (sw_programme_get_client (programme)));
  add_string (builder, "scale", report->scale->name);
  add_double (builder, value, report->value);
  add_double (builder, aim, report->scale->aim);
  add_double (builder, "words-a-sentence", sw_readability_get_sentence_words (&report->counts));
  add_int (builder, "sentences", report->counts.sentences);
  add_int (builder, "words", report->counts.words);
  add_int (builder, "syllables", report->counts.syllables);
  add_int (builder, "exercises-in-another-language", report->n_other);
  working = sw_readability_working (report);
  add_working (builder, working);
  json_builder_set_member_name (builder, "hardest");
  json_builder_begin_array (builder);
  for (guint i = 0; i < sw_readability_report_get_n_hardest (report); i++)
    add_sentence (builder, report->sentences->pdata[i], report->scale->unit);
  json_builder_end_array (builder);
  json_builder_end_object (builder);
}

/**
 * sw_numbers_to_json:
 * @programme: a programme
 * @catalogue: (nullable): where findings look for other exercises
 * @today: the present day, YYYY-MM-DD
 *
 * Writes what sw_clock_new(), sw_volume_of_week() and sw_findings_collect() reckon, and how the handout
 * reads: an object with "programme", "sessions" (each with its "items", and how its length and theirs come about, as
 * "working"; an item that names a test with its "starting-load" and its "sides" as far as they were measured), "week",
 * "reading" (where something is written in the client's language, and can be counted), "limits" (what was set for the
 * client), "progress" (its rules, what the diary proposes and, where there is one, the plan) and "findings". Each name of
 * a quantity carries
 * its unit. The week counts each session once on each of its days.
 *
 * Returns: (transfer full): JSON text, indented, with a line feed at its end
 */
char *
sw_numbers_to_json (SwProgramme *programme,
                    SwCatalogue *catalogue,
                    const char  *today)
{
  g_autoptr (JsonBuilder) builder = NULL;
  g_autoptr (JsonGenerator) generator = NULL;
  g_autoptr (JsonNode) root = NULL;
  g_autofree char *text = NULL;
  GListModel *sessions;
  SwSpan week = { 0.0, 0.0 };

  g_return_val_if_fail (SW_IS_PROGRAMME (programme), NULL);

  builder = json_builder_new ();
  json_builder_begin_object (builder);
  add_string (builder, "programme", sw_programme_get_id (programme));
  json_builder_set_member_name (builder, "sessions");
  json_builder_begin_array (builder);
  sessions = G_LIST_MODEL (sw_programme_get_sessions (programme));
  for (guint i = 0; i < g_list_model_get_n_items (sessions); i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (sessions, i);

      add_session (builder, programme, session, &week);
    }
  json_builder_end_array (builder);
  add_week (builder, programme, week);
  add_reading (builder, programme);
  add_limits (builder, programme, today);
  sw_numbers_add_progress (builder, programme, catalogue);
  add_findings (builder, programme, catalogue, today);
  json_builder_end_object (builder);

  root = json_builder_get_root (builder);
  generator = json_generator_new ();
  json_generator_set_pretty (generator, TRUE);
  json_generator_set_root (generator, root);
  text = json_generator_to_data (generator, NULL);
  return g_strconcat (text, "\n", NULL);
}
