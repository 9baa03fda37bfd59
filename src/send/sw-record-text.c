/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An entry for the clinic's record: what was given, in plain text that any record system takes, in lines of at most
 * 78 characters. */
#include "config.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n.h>

#include "sw-record-text.h"
#include "sw-day-name.h"
#include "sw-enum-types.h"
#include "sw-limit-name.h"
#include "sw-precautions.h"
#include "sw-time.h"

#define WIDEST 78

/* Appends @text with @lead before its first line and the same room before the others; breaks at spaces, and
 * within a word only when it fits no line. */
static void
append_wrapped (GString    *out,
                const char *lead,
                const char *text)
{
  glong indent = g_utf8_strlen (lead, -1);
  glong column = indent;
  g_auto (GStrv) words = g_strsplit_set (text, " \n\t", -1);
  gboolean first = TRUE;

  g_string_append (out, lead);
  for (guint i = 0; words[i] != NULL; i++)
    {
      const char *word = words[i];
      glong length = g_utf8_strlen (word, -1);

      if (length == 0)
        continue;
      if (!first && column + 1 + length > WIDEST)
        {
          g_string_append_printf (out, "\n%*s", (int) indent, "");
          column = indent;
          first = TRUE;
        }
      if (!first)
        {
          g_string_append_c (out, ' ');
          column++;
        }
      while (column + length > WIDEST)
        {
          const char *end = g_utf8_offset_to_pointer (word, WIDEST - column);

          g_string_append_len (out, word, end - word);
          g_string_append_printf (out, "\n%*s", (int) indent, "");
          word = end;
          length = g_utf8_strlen (word, -1);
          column = indent;
        }
      g_string_append (out, word);
      column += length;
      first = FALSE;
    }
  g_string_append_c (out, '\n');
}

static void
append_field (GString    *out,
              const char *label,
              const char *text)
{
  g_autofree char *lead = NULL;

  if (text == NULL || *text == '\0')
    return;
  lead = g_strdup_printf ("%s: ", label);
  append_wrapped (out, lead, text);
}

static void
append_lines (GString    *out,
              const char *heading,
              const char *lines)
{
  g_auto (GStrv) split = g_strsplit (lines, "\n", -1);

  if (*lines == '\0')
    return;
  append_wrapped (out, "", heading);
  for (guint i = 0; split[i] != NULL; i++)
    if (*g_strstrip (split[i]) != '\0')
      append_wrapped (out, "- ", split[i]);
}

static void
append_precautions (GString  *out,
                    SwClient *client)
{
  SwSet precautions = sw_client_get_precautions (client);
  GString *lines = g_string_new (NULL);

  for (int precaution = 0; precaution < sw_term_get_n_values (SW_TYPE_PRECAUTION); precaution++)
    if ((precautions & SW_SET (precaution)) != 0)
      g_string_append_printf (lines, "%s\n", sw_precaution_get_name ((SwPrecaution) precaution));
  g_string_append (lines, sw_client_get_other_precautions (client));
  append_lines (out, _("Precautions:"), lines->str);
  g_string_free (lines, TRUE);
}

/* "Weight on the leg, left: part of the weight, at most 20 kg (letter of 3 November)". */
static char *
tell_limit (SwLimit *limit,
            SwUnits  units)
{
  g_autofree char *what = sw_limit_dup_text (limit, units);
  const char *note = sw_limit_get_note (limit);

  return *note == '\0' ? g_steal_pointer (&what) : g_strdup_printf ("%s (%s)", what, note);
}

static void
append_limits (GString     *out,
               SwProgramme *programme)
{
  GListModel *limits = G_LIST_MODEL (sw_programme_get_limits (programme));
  SwUnits units = sw_client_get_units (sw_programme_get_client (programme));
  GString *lines = g_string_new (NULL);

  for (guint i = 0; i < g_list_model_get_n_items (limits); i++)
    {
      g_autoptr (SwLimit) limit = g_list_model_get_item (limits, i);
      g_autofree char *line = tell_limit (limit, units);

      g_string_append_printf (lines, "%s\n", g_strdelimit (line, "\n", ' '));
    }
  append_lines (out, _("Limits:"), lines->str);
  g_string_free (lines, TRUE);
}

static char *
tell_circuit (SwItem     *circuit,
              const char *name)
{
  int n_rounds = sw_item_get_rounds (circuit);
  int rest_s = sw_item_get_rest_s (circuit);
  g_autofree char *rounds = NULL;

  if (*name != '\0')
    rounds = g_strdup_printf (ngettext ("%s: circuit, %d round", "%s: circuit, %d rounds", (gulong) n_rounds), name,
                              n_rounds);
  else
    rounds = g_strdup_printf (ngettext ("Circuit: %d round", "Circuit: %d rounds", (gulong) n_rounds), n_rounds);
  if (rest_s == 0 || n_rounds < 2)
    return g_steal_pointer (&rounds);

  /* Translators: %s is a circuit and its rounds. */
  return g_strdup_printf (_("%s, rest %d s between rounds"), rounds, rest_s);
}

/* What the item is and how much of it, on one line. */
static char *
tell_item (SwItem *item)
{
  g_autofree char *name = sw_item_dup_name (item, "en");
  g_autofree char *line = NULL;

  switch (sw_item_get_kind (item))
    {
    case SW_ITEM_EXERCISE:
      line = sw_dose_to_line (sw_item_get_dose (item));
      return g_strdup_printf ("%s: %s", name, line);
    case SW_ITEM_REST:
      return *name != '\0' ? g_strdup_printf (_("%s: rest %d s"), name, sw_item_get_rest_s (item))
                           : g_strdup_printf (_("Rest %d s"), sw_item_get_rest_s (item));
    case SW_ITEM_CIRCUIT:
      return tell_circuit (item, name);
    case SW_ITEM_SELF_CHECK:
    default:
      return *name != '\0' ? g_strdup_printf (_("Self-check: %s"), name) : g_strdup (_("Self-check"));
    }
}

static void
append_items (GString    *out,
              GListModel *items,
              int         depth)
{
  for (guint i = 0; i < g_list_model_get_n_items (items); i++)
    {
      g_autoptr (SwItem) item = g_list_model_get_item (items, i);
      g_autofree char *lead = g_strdup_printf ("%*s- ", 2 * depth, "");
      g_autofree char *note = g_strdup_printf ("%*s%s", 2 * depth + 2, "", _("Note"));
      g_autofree char *text = tell_item (item);

      append_wrapped (out, lead, text);
      if (*sw_item_get_note (item) != '\0')
        append_field (out, note, sw_item_get_note (item));
      if (sw_item_get_kind (item) == SW_ITEM_CIRCUIT)
        append_items (out, G_LIST_MODEL (sw_item_get_items (item)), depth + 1);
    }
}

static char *
dup_days (SwSet days)
{
  GString *names = g_string_new (NULL);

  if (days == 0)
    g_string_append (names, _("not set"));
  for (int day = SW_DAY_MONDAY; day <= SW_DAY_SUNDAY; day++)
    if ((days & SW_SET (day)) != 0)
      {
        if (names->len > 0)
          /* Translators: between the words of a list. */
          g_string_append (names, C_("list", ", "));
        g_string_append (names, sw_day_get_name ((SwDay) day));
      }

  return g_string_free (names, FALSE);
}

/* They are no part of a day's minutes. */
static char *
dup_check_minutes (SwSpan checks)
{
  int high = sw_span_high_minutes (checks);

  return g_strdup_printf (ngettext ("on the first day and before the next visit, up to %d minute more",
                                    "on the first day and before the next visit, up to %d minutes more", (gulong) high),
                          high);
}

static void
append_session (GString   *out,
                SwSession *session,
                SwClinic  *clinic)
{
  GListModel *sections = G_LIST_MODEL (sw_session_get_sections (session));
  g_autoptr (SwClock) clock = sw_clock_new (session, clinic);
  const char *title = sw_session_get_title (session);
  g_autofree char *days = dup_days (sw_session_get_days (session));
  g_autofree char *text = NULL;
  int low = sw_span_low_minutes (clock->total);
  int high = sw_span_high_minutes (clock->total);

  if (*title != '\0')
    text = g_strdup_printf (_("%s; days: %s; %d to %d minutes"), title, days, low, high);
  else
    text = g_strdup_printf (_("days: %s; %d to %d minutes"), days, low, high);
  g_string_append_c (out, '\n');
  append_field (out, _("Session"), text);
  if (clock->checks.high_s > 0.0)
    {
      g_autofree char *more = dup_check_minutes (clock->checks);

      append_field (out, _("Self-checks"), more);
    }
  for (guint i = 0; i < g_list_model_get_n_items (sections); i++)
    {
      g_autoptr (SwSection) section = g_list_model_get_item (sections, i);

      append_items (out, G_LIST_MODEL (sw_section_get_items (section)), 0);
    }
}

static void
append_answers (GString    *out,
                GListModel *answers)
{
  for (guint i = 0; i < g_list_model_get_n_items (answers); i++)
    {
      g_autoptr (SwAnswer) answer = g_list_model_get_item (answers, i);
      g_autofree char *text = g_strdup_printf ("%s: %s (%s, %s)", sw_answer_get_finding (answer),
                                               sw_answer_get_reason (answer), sw_answer_get_by (answer),
                                               sw_answer_get_date (answer));

      if (i == 0)
        {
          g_string_append_c (out, '\n');
          append_wrapped (out, "", _("Findings kept, with reason:"));
        }
      append_wrapped (out, "- ", text);
    }
}

/**
 * sw_record_text:
 * @programme: what was given
 * @date: day, ISO 8601
 *
 * Writes the entry in the therapist's language; exercise names in English, doses as a therapist writes them.
 *
 * Returns: (transfer full): plain text, UTF-8, no line over 78 characters
 */
char *
sw_record_text (SwProgramme *programme,
                const char  *date)
{
  GString *out = g_string_new (NULL);
  SwClient *client = sw_programme_get_client (programme);
  GListModel *sessions = G_LIST_MODEL (sw_programme_get_sessions (programme));
  g_autofree char *code = sw_programme_dup_code (programme);

  append_wrapped (out, "", _("Home exercise programme"));
  append_field (out, _("Date"), date);
  append_field (out, _("Programme"), code);
  append_field (out, _("Title"), sw_programme_get_title (programme));
  append_field (out, _("Client"), sw_client_get_name (client));
  append_field (out, _("By"), sw_clinic_get_therapist (sw_programme_get_clinic (programme)));
  append_lines (out, _("Goals:"), sw_client_get_goals (client));
  append_precautions (out, client);
  append_limits (out, programme);
  for (guint i = 0; i < g_list_model_get_n_items (sessions); i++)
    {
      g_autoptr (SwSession) session = g_list_model_get_item (sessions, i);

      append_session (out, session, sw_programme_get_clinic (programme));
    }
  append_answers (out, G_LIST_MODEL (sw_programme_get_answers (programme)));

  return g_string_free (out, FALSE);
}
