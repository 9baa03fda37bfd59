/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Writes the programme document: the same bytes for equal programmes. What a reader would refuse is never written,
 * so that whatever was on the screen can be opened again. */
#include "config.h"

#include <math.h>

#include "sw-diary-xml.h"
#include "sw-dose-xml.h"
#include "sw-exercise-xml.h"
#include "sw-extras.h"
#include "sw-limit-xml.h"
#include "sw-logo-xml.h"
#include "sw-programme-xml.h"
#include "sw-progression-xml.h"
#include "sw-transition-xml.h"
#include "sw-xml-values.h"

typedef void (*WriteFunc) (gpointer     object,
                           SwXmlWriter *writer);

/* An element for each line; none for no text at all. */
static void
write_lines (SwXmlWriter        *writer,
             const char         *name,
             const char         *text,
             const char * const *extras)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    {
      g_autofree char *path = g_strdup_printf ("%s %u", name, i + 1);

      sw_extras_write_leaf (extras, path, name, lines[i], writer);
    }
}

static void
write_client (SwClient    *client,
              SwXmlWriter *writer)
{
  const char *const *extras = sw_client_get_extras (client);
  const char *language = sw_client_get_language (client);
  int birth_year = sw_client_get_birth_year (client);

  sw_xml_writer_open (writer, "client");
  sw_xml_write_string (writer, "name", sw_client_get_name (client));
  if (birth_year >= 1900 && birth_year <= 2100)
    sw_xml_writer_attribute_int (writer, "birth-year", birth_year);
  if (sw_client_get_dominant_side (client) != SW_BODY_SIDE_NONE)
    sw_xml_write_term (writer, "dominant-side", SW_TYPE_BODY_SIDE, sw_client_get_dominant_side (client));
  if (sw_client_get_minutes (client) > 0)
    sw_xml_writer_attribute_int (writer, "minutes", sw_client_get_minutes (client));
  sw_xml_write_term (writer, "units", SW_TYPE_UNITS, sw_client_get_units (client));
  sw_xml_write_term (writer, "paper", SW_TYPE_PAPER, sw_client_get_paper (client));
  sw_xml_writer_attribute_double (writer, "text-points", sw_client_get_text_points (client));
  sw_xml_writer_attribute (writer, "language", sw_is_language (language) ? language : "en");
  sw_xml_write_set (writer, "precautions", SW_TYPE_PRECAUTION, sw_client_get_precautions (client));
  sw_xml_write_set (writer, "equipment", SW_TYPE_EQUIPMENT, sw_client_get_equipment (client));
  sw_xml_write_set (writer, "avoided-positions", SW_TYPE_POSITION, sw_client_get_avoided_positions (client));
  sw_xml_write_string (writer, "loads", sw_client_get_loads (client));
  sw_xml_write_string (writer, "load-limit", sw_client_get_load_limit (client));
  sw_extras_write_attributes (extras, NULL, writer);
  write_lines (writer, "goal", sw_client_get_goals (client), extras);
  write_lines (writer, "other-precaution", sw_client_get_other_precautions (client), extras);
  sw_extras_write_nodes (extras, NULL, writer);
  sw_xml_writer_close (writer);
}

static void
write_clinic (SwClinic    *clinic,
              SwXmlWriter *writer)
{
  const char *const *extras = sw_clinic_get_extras (clinic);
  const SwLogo *logo = sw_clinic_get_logo (clinic);

  sw_xml_writer_open (writer, "clinic");
  sw_xml_write_string (writer, "name", sw_clinic_get_name (clinic));
  sw_xml_write_string (writer, "therapist", sw_clinic_get_therapist (clinic));
  sw_xml_write_string (writer, "qualification", sw_clinic_get_qualification (clinic));
  sw_xml_write_string (writer, "phone", sw_clinic_get_phone (clinic));
  sw_xml_write_string (writer, "email", sw_clinic_get_email (clinic));
  sw_xml_write_string (writer, "address", sw_clinic_get_address (clinic));
  sw_xml_write_string (writer, "emergency-number", sw_clinic_get_emergency_number (clinic));
  sw_xml_write_string (writer, "bands", sw_clinic_get_bands (clinic));
  if (sw_clinic_get_max_formula (clinic) != SW_MAX_FORMULA_BRZYCKI)
    sw_xml_write_term (writer, "max-formula", SW_TYPE_MAX_FORMULA, (int) sw_clinic_get_max_formula (clinic));
  if (sw_clinic_get_alike_percent (clinic) != SW_CLINIC_USUAL_ALIKE_PERCENT)
    sw_xml_writer_attribute_int (writer, "alike-percent", sw_clinic_get_alike_percent (clinic));
  sw_extras_write_attributes (extras, NULL, writer);
  if (logo != NULL)
    sw_logo_xml_write (logo, extras, writer);
  sw_transition_xml_write (clinic, extras, writer);
  sw_extras_write_nodes (extras, NULL, writer);
  sw_xml_writer_close (writer);
}

/* Left out when it is the usual plan. */
static void
write_pages (SwPagePlan  *plan,
             SwXmlWriter *writer)
{
  const char *const *extras = sw_page_plan_get_extras (plan);
  SwSet parts = sw_page_plan_get_parts (plan);

  if (sw_page_plan_get_layout (plan) == SW_LAYOUT_FULL && parts == SW_PAGE_PARTS_USUAL
      && !sw_page_plan_get_save_ink (plan) && !sw_page_plan_get_landscape (plan) && !sw_page_plan_get_form (plan)
      && extras[0] == NULL)
    return;

  sw_xml_writer_open (writer, "pages");
  sw_xml_write_term (writer, "layout", SW_TYPE_LAYOUT, (int) sw_page_plan_get_layout (plan));
  sw_xml_write_set (writer, "leave-out", SW_TYPE_PAGE_PART, SW_PAGE_PARTS_USUAL & ~parts);
  sw_xml_write_set (writer, "add", SW_TYPE_PAGE_PART, parts & ~SW_PAGE_PARTS_USUAL);
  if (sw_page_plan_get_save_ink (plan))
    sw_xml_writer_attribute (writer, "save-ink", "yes");
  if (sw_page_plan_get_landscape (plan))
    sw_xml_writer_attribute (writer, "landscape", "yes");
  if (sw_page_plan_get_form (plan))
    sw_xml_writer_attribute (writer, "form", "yes");
  sw_extras_write_attributes (extras, NULL, writer);
  sw_extras_write_nodes (extras, NULL, writer);
  sw_xml_writer_close (writer);
}

static void
write_value (SwXmlWriter *writer,
             const char  *name,
             double       value)
{
  if (isfinite (value))
    sw_xml_writer_attribute_double (writer, name, CLAMP (value, -SW_PROGRAMME_MAX_MEASURED, SW_PROGRAMME_MAX_MEASURED));
}

static void
write_limit (gpointer     object,
             SwXmlWriter *writer)
{
  sw_limit_write (object, writer);
}

static void
write_measurement (gpointer     object,
                   SwXmlWriter *writer)
{
  SwMeasurement *measurement = object;
  const char *const *extras = sw_measurement_get_extras (measurement);

  sw_xml_writer_open (writer, "measurement");
  sw_xml_write_date (writer, "date", sw_measurement_get_date (measurement));
  sw_xml_write_string (writer, "test", sw_measurement_get_test (measurement));
  sw_xml_write_term (writer, "measure", SW_TYPE_MEASURE, sw_measurement_get_measure (measurement));
  if (sw_measurement_get_repetitions (measurement) > 0)
    sw_xml_writer_attribute_int (writer, "repetitions", sw_measurement_get_repetitions (measurement));
  if (sw_measurement_get_better (measurement) != SW_BETTER_NOT_STATED)
    sw_xml_write_term (writer, "better", SW_TYPE_BETTER, (int) sw_measurement_get_better (measurement));
  write_value (writer, "left", sw_measurement_get_left (measurement));
  write_value (writer, "right", sw_measurement_get_right (measurement));
  write_value (writer, "both", sw_measurement_get_both (measurement));
  sw_extras_write_attributes (extras, NULL, writer);
  sw_extras_write_nodes (extras, NULL, writer);
  sw_xml_writer_close (writer);
}

static void
write_entry (gpointer     object,
             SwXmlWriter *writer)
{
  sw_diary_xml_write (object, writer);
}

static void
write_all (GListStore  *list,
           WriteFunc    write,
           SwXmlWriter *writer)
{
  guint n = g_list_model_get_n_items (G_LIST_MODEL (list));

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (GObject) object = g_list_model_get_item (G_LIST_MODEL (list), i);

      write (object, writer);
    }
}

static void
write_note (SwItem      *item,
            SwXmlWriter *writer)
{
  if (*sw_item_get_note (item) != '\0')
    sw_extras_write_leaf (sw_item_get_extras (item), "note", "note", sw_item_get_note (item), writer);
}

static void
write_item (gpointer     object,
            SwXmlWriter *writer)
{
  static const char *const names[] = { "item", "rest", "circuit", "self-check" }; /* in the order of SwItemKind */
  SwItem *item = object;
  SwItemKind kind = sw_item_get_kind (item);
  const SwDose *dose = sw_item_get_dose (item);
  const char *const *extras = sw_item_get_extras (item);

  sw_xml_writer_open (writer, names[kind]);
  sw_xml_writer_attribute (writer, "id", sw_item_get_id (item));
  if (kind == SW_ITEM_EXERCISE)
    {
      sw_xml_writer_attribute (writer, "exercise", sw_exercise_get_id (sw_item_get_exercise (item)));
      sw_xml_write_string (writer, "test", sw_item_get_test (item));
    }
  else
    sw_xml_write_string (writer, "title", sw_item_get_title (item));

  if (kind == SW_ITEM_REST)
    {
      sw_xml_writer_attribute_int (writer, "seconds", sw_item_get_rest_s (item));
    }
  else if (kind == SW_ITEM_CIRCUIT)
    {
      sw_xml_writer_attribute_int (writer, "rounds", sw_item_get_rounds (item));
      sw_xml_writer_attribute_int (writer, "rest-seconds", sw_item_get_rest_s (item));
    }
  else if (kind == SW_ITEM_SELF_CHECK)
    {
      sw_xml_write_term (writer, "measure", SW_TYPE_MEASURE, sw_item_get_measure (item));
      if (sw_item_get_better (item) != SW_BETTER_NOT_STATED)
        sw_xml_write_term (writer, "better", SW_TYPE_BETTER, sw_item_get_better (item));
      sw_xml_write_string (writer, "exercise", sw_item_get_pictured (item));
      if (dose->side != SW_SIDE_BOTH)
        sw_xml_write_term (writer, "side", SW_TYPE_SIDE, dose->side);
    }

  if (kind == SW_ITEM_EXERCISE || kind == SW_ITEM_CIRCUIT)
    {
      if (sw_item_get_pinned (item))
        sw_xml_writer_attribute (writer, "pinned", "yes");
      sw_xml_write_string (writer, "after", sw_item_get_after (item));
    }
  sw_extras_write_attributes (extras, NULL, writer);
  if (kind == SW_ITEM_EXERCISE)
    sw_dose_write (dose, extras, writer);
  write_note (item, writer);
  if (kind == SW_ITEM_CIRCUIT)
    write_all (sw_item_get_items (item), write_item, writer);
  sw_extras_write_nodes (extras, NULL, writer);
  sw_xml_writer_close (writer);
}

static void
write_section (gpointer     object,
               SwXmlWriter *writer)
{
  SwSection *section = object;
  const char *const *extras = sw_section_get_extras (section);

  sw_xml_writer_open (writer, "section");
  sw_xml_write_term (writer, "kind", SW_TYPE_SECTION_KIND, sw_section_get_kind (section));
  sw_xml_write_string (writer, "title", sw_section_get_title (section));
  sw_extras_write_attributes (extras, NULL, writer);
  write_all (sw_section_get_items (section), write_item, writer);
  sw_extras_write_nodes (extras, NULL, writer);
  sw_xml_writer_close (writer);
}

static void
write_session (gpointer     object,
               SwXmlWriter *writer)
{
  SwSession *session = object;
  const char *const *extras = sw_session_get_extras (session);

  sw_xml_writer_open (writer, "session");
  sw_xml_write_string (writer, "title", sw_session_get_title (session));
  sw_xml_write_set (writer, "days", SW_TYPE_DAY, sw_session_get_days (session));
  sw_extras_write_attributes (extras, NULL, writer);
  write_all (sw_session_get_sections (session), write_section, writer);
  sw_extras_write_nodes (extras, NULL, writer);
  sw_xml_writer_close (writer);
}

static void
write_answer (gpointer     object,
              SwXmlWriter *writer)
{
  SwAnswer *answer = object;
  const char *const *extras = sw_answer_get_extras (answer);

  sw_xml_writer_open (writer, "answer");
  sw_xml_writer_attribute (writer, "finding", sw_answer_get_finding (answer));
  sw_xml_write_date (writer, "date", sw_answer_get_date (answer));
  sw_xml_write_string (writer, "by", sw_answer_get_by (answer));
  sw_extras_write_attributes (extras, NULL, writer);
  if (*sw_answer_get_reason (answer) != '\0')
    sw_extras_write_leaf (extras, "reason", "reason", sw_answer_get_reason (answer), writer);
  sw_extras_write_nodes (extras, NULL, writer);
  sw_xml_writer_close (writer);
}

static void
write_issue (gpointer     object,
             SwXmlWriter *writer)
{
  SwIssue *issue = object;
  const char *const *extras = sw_issue_get_extras (issue);

  sw_xml_writer_open (writer, "issue");
  sw_xml_write_date (writer, "date", sw_issue_get_date (issue));
  sw_xml_write_string (writer, "way", sw_issue_get_way (issue));
  sw_xml_write_string (writer, "hash", sw_issue_get_hash (issue));
  sw_extras_write_attributes (extras, NULL, writer);
  write_lines (writer, "dose-line", sw_issue_get_doses (issue), extras);
  sw_extras_write_nodes (extras, NULL, writer);
  sw_xml_writer_close (writer);
}

/* A list that is empty and holds nothing unknown either is left out. */
static void
write_list (SwProgramme *programme,
            const char  *name,
            GListStore  *list,
            WriteFunc    write,
            SwXmlWriter *writer)
{
  const char *const *extras = sw_programme_get_extras (programme);

  if (g_list_model_get_n_items (G_LIST_MODEL (list)) == 0 && !sw_extras_has (extras, name))
    return;

  sw_xml_writer_open (writer, name);
  sw_extras_write_attributes (extras, name, writer);
  write_all (list, write, writer);
  sw_extras_write_nodes (extras, name, writer);
  sw_xml_writer_close (writer);
}

static void
write_exercises (SwProgramme *programme,
                 SwXmlWriter *writer)
{
  g_autoptr (GPtrArray) exercises = sw_programme_dup_exercises (programme);
  const char *const *extras = sw_programme_get_extras (programme);

  if (exercises->len == 0 && !sw_extras_has (extras, "exercises"))
    return;

  sw_xml_writer_open (writer, "exercises");
  sw_extras_write_attributes (extras, "exercises", writer);
  for (guint i = 0; i < exercises->len; i++)
    sw_exercise_write (exercises->pdata[i], writer);
  sw_extras_write_nodes (extras, "exercises", writer);
  sw_xml_writer_close (writer);
}

/**
 * sw_programme_write:
 * @programme: a programme
 * @writer: where to
 *
 * Writes the programme element with its namespace.
 */
void
sw_programme_write (SwProgramme *programme,
                    SwXmlWriter *writer)
{
  const char *const *extras = sw_programme_get_extras (programme);

  sw_xml_writer_open (writer, "programme");
  sw_xml_writer_attribute (writer, "xmlns", SW_PROGRAMME_NS);
  sw_xml_write_version (writer, SW_PROGRAMME_VERSION, extras);
  sw_xml_writer_attribute (writer, "id", sw_programme_get_id (programme));
  sw_xml_write_string (writer, "title", sw_programme_get_title (programme));
  if (sw_programme_get_company (programme) != SW_COMPANY_NOT_STATED)
    sw_xml_write_term (writer, "company", SW_TYPE_COMPANY, (int) sw_programme_get_company (programme));
  sw_xml_write_string (writer, "progress", sw_programme_get_progress (programme));
  sw_extras_write_attributes (extras, NULL, writer);

  write_client (sw_programme_get_client (programme), writer);
  write_clinic (sw_programme_get_clinic (programme), writer);
  write_pages (sw_programme_get_page_plan (programme), writer);
  write_list (programme, "limits", sw_programme_get_limits (programme), write_limit, writer);
  write_list (programme, "measurements", sw_programme_get_measurements (programme), write_measurement, writer);
  sw_progression_xml_write (sw_programme_get_progression (programme), writer);
  write_list (programme, "sessions", sw_programme_get_sessions (programme), write_session, writer);
  write_list (programme, "diary", sw_programme_get_diary (programme), write_entry, writer);
  write_list (programme, "answers", sw_programme_get_answers (programme), write_answer, writer);
  write_list (programme, "issues", sw_programme_get_issues (programme), write_issue, writer);
  write_exercises (programme, writer);

  sw_extras_write_nodes (extras, NULL, writer);
  sw_xml_writer_close (writer);
}

/**
 * sw_programme_to_bytes:
 * @programme: a programme
 *
 * Returns: (transfer full): its file, the same bytes for equal programmes
 */
GBytes *
sw_programme_to_bytes (SwProgramme *programme)
{
  g_autoptr (SwXmlWriter) writer = sw_xml_writer_new ();

  sw_programme_write (programme, writer);
  return sw_xml_writer_end (writer);
}
